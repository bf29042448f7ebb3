"""What a player asks of the voicings, read from words: the same readers for options and for the shell's verbs."""

from __future__ import annotations

from collections.abc import Callable

from nearhand.notation.errors import InputError
from nearhand.verbs.choices import read_choice
from nearhand.verbs.pinning import joined_pins, read_first, read_last, read_pins, shift_home
from nearhand.verbs.pitches import read_number, read_pitches, read_top_notes
from nearhand.verbs.session import Session
from nearhand.verbs.verb import Arguments
from nearhand.voicing.hands import LEAST_SPAN, SPAN
from nearhand.voicing.wishes import DEFAULT_WISHES, FREE_TOP, LEFT_PATTERNS, MELODY_TOP, TOP_LINES, Wishes

SPANS = {"fifth": 7, "sixth": 9, "seventh": 11, "octave": 12, "ninth": 14, "tenth": 16, "eleventh": 17}
"""Spans of a hand by the interval it reaches, in semitones: a tenth is the major one."""
WIDEST_SPAN = 19
MOST_WEIGHT = 100000
OFF = "off"
REGISTERS = ("moves", "stays")


def wished(session: Session, arguments: Arguments) -> Session:
    """The session with what the options of a verb ask of the voicings.

    Raises InputError, placed in the whole line.
    """
    pins = session.wishes.pins
    session = session._replace(wishes=session.wishes._replace(pins=()))
    for name, reader in _READERS.items():
        text = arguments.option(name)
        if text is not None:
            try:
                session = session._replace(wishes=reader(text, session))
            except InputError as error:
                raise arguments.placed(error, name) from None
    return session._replace(wishes=session.wishes._replace(pins=joined_pins(pins, session.wishes.pins)))


def read_left(text: str, session: Session) -> Wishes:
    """Read the name of a left-hand pattern. Raises InputError."""
    if text.strip() == OFF:
        return session.wishes._replace(left=DEFAULT_WISHES.left)
    return session.wishes._replace(left=read_choice(text, LEFT_PATTERNS, "a pattern of the left hand"))


def read_span(text: str, session: Session) -> Wishes:
    """Read how far a hand reaches: an interval's name, or semitones. Raises InputError.

    >>> read_span("octave", Session()).span
    12
    """
    word = text.strip()
    if word == OFF:
        return session.wishes._replace(span=SPAN)
    span = SPANS.get(word) or read_number(word, "a span", "write octave, ninth, tenth, or semitones, such as 14")
    if span < LEAST_SPAN:
        raise InputError(
            "a hand that spans less than a fifth plays no chord",
            text,
            wanted="a span from a fifth on",
            hint=f"write {LEAST_SPAN} or more",
        )
    if span > WIDEST_SPAN:
        raise InputError(
            f"no hand spans {min(span, 999)} semitones", text, wanted="a span", hint=f"write {WIDEST_SPAN} or less"
        )
    return session.wishes._replace(span=span)


def read_register(text: str, session: Session) -> Wishes:
    """Read the lowest and the highest note of the upper voices, ``off`` for the family's own, ``moves`` or ``stays``.

    A register that moves goes along with the key, so that every key has the same positions. Raises InputError.

    >>> read_register("C4 C6", Session()).low
    60
    """
    word = text.strip()
    if word == OFF:
        return session.wishes._replace(low=None, high=None, moves=False)
    if word in REGISTERS:
        return _moving(session, word == "moves")
    notes = read_pitches(text)
    hint = "write the lowest and the highest note, for example G3 E5"
    if len(notes) != 2:
        raise InputError("a register has two notes", text, len(text), wanted="two notes", hint=hint)
    low, high = (note.midi for note in notes)
    if low >= high:
        raise InputError(f"{notes[0]} is not below {notes[1]}", text, wanted="the lower note first", hint=hint)
    shift = shift_home(session) if session.wishes.moves and session.tune is not None else 0
    return session.wishes._replace(low=low + shift, high=high + shift)


def _moving(session: Session, moves: bool) -> Wishes:
    """Wishes whose register moves with the key, or stays: as it sounds now, but kept as at home where it moves."""
    wishes = session.wishes
    shift = 0 if session.tune is None or moves == wishes.moves else shift_home(session) * (1 if moves else -1)
    low, high = (None if note is None else note + shift for note in (wishes.low, wishes.high))
    return wishes._replace(moves=moves, low=low, high=high)


def read_top(text: str, session: Session) -> Wishes:
    """Read what the top line does: one of its words, or its notes, one a chord, ``-`` where it is free.

    Raises InputError; also where the melody is to lie on top and there is none.
    """
    word = text.strip()
    if word == MELODY_TOP and session.stand[0].melody is None:
        what, hint = "there is no melody to put on top", "put one over the chords first: melody E4 F#4 G4"
        raise InputError(what, text, len(text) - len(text.lstrip()), wanted="a melody", hint=hint)
    if word in (OFF, *TOP_LINES):
        return session.wishes._replace(top=FREE_TOP if word == OFF else word, melody=())
    if not word or word[0].islower():
        read_choice(text, TOP_LINES, "a top line", "or one note a chord, for example E5 D5 - C5")
    shift = shift_home(session)
    notes = tuple(None if note is None else note.midi + shift for note in read_top_notes(text))
    return session.wishes._replace(top=FREE_TOP, melody=notes, octaves=session.wishes.octaves or shift != 0)


def read_weights(text: str, session: Session) -> Wishes:
    """Read weights: a cost's name and a whole number, several with commas between; ``off`` for the style's own.

    Raises InputError.

    >>> read_weights("leap 3, hidden 5", Session()).weights
    (('leap', 3), ('hidden', 5))
    """
    if text.strip() == OFF:
        return session.wishes._replace(weights=())
    from nearhand.voicing.weights import NAMES

    weights = dict(session.wishes.weights)
    start = 0
    for part in text.split(","):
        name, number = (*part.split(maxsplit=1), "", "")[:2]
        at = start + len(part) - len(part.lstrip())
        try:
            known = read_choice(name, NAMES, "a cost")
            at = start + len(part) - len(number)
            hint = f"write {known} 3; 0 switches a cost off, commas part several"
            weight = read_number(number.strip(), "a weight", hint)
        except InputError as error:
            raise error.within(text, at) from None
        weights[known] = min(weight, MOST_WEIGHT)
        start += len(part) + 1
    return session.wishes._replace(weights=tuple(weights.items()))


def read_path(text: str, session: Session) -> Wishes:
    """Read the number of a path, 1 for the best. Raises InputError."""
    number = read_number(text.strip(), "a path's number", "write 1 for the best path, 2 for the next best")
    if number < 1:
        raise InputError("paths are numbered from 1", text, wanted="a path's number", hint="write 1 for the best path")
    return session.wishes._replace(path=number)


_READERS: dict[str, Callable[[str, Session], Wishes]] = {
    "left": read_left,
    "span": read_span,
    "register": read_register,
    "top": read_top,
    "pin": read_pins,
    "first": read_first,
    "last": read_last,
    "weights": read_weights,
    "path": read_path,
}
"""Option to its reader."""
