"""``parts``: what the instruments of a band read, which keys are friendly to them, and where a guitar's capo goes."""

from __future__ import annotations

from nearhand.melody.capo import Capo, capos
from nearhand.melody.compass import in_compass
from nearhand.melody.friendly_keys import FriendlyKey, SharedKey, friendly_keys, shared_keys
from nearhand.melody.instrument_names import find_instrument, nearest_instruments
from nearhand.melody.instruments import INSTRUMENTS, VOICES, Instrument
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import listed
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.care import CARE_OF_VOICES
from nearhand.verbs.loading import loaded
from nearhand.verbs.melodies import melody_in
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

USUAL = ("trumpet", "alto sax", "horn", "guitar", "bass")
"""One of each kind: in B flat, in E flat, in F, with frets, an octave up."""
_HINT = "write names with commas between: alto sax, trumpet in Bb, guitar; help parts lists them all"


class Part(NamedTuple):
    """What one instrument reads: chords and melody (None where there is none) in its written key.

    ``friendly``: the sounding keys that lie well for it, easiest first. With frets, the capos that help, best first.
    ``octaves``: how many octaves the melody was moved to lie inside the compass; ``outside``: the written notes that
    lie outside it all the same, each once.
    """

    instrument: Instrument
    written: Progression
    capos: tuple[Capo, ...]
    friendly: tuple[FriendlyKey, ...]
    melody: Melody | None = None
    octaves: int = 0
    outside: tuple[Pitch, ...] = ()


class PartsAnswer(NamedTuple):
    """A tune in the key it sounds in, the parts, and the sounding keys that lie well for all, nearest first.

    ``advice``: the usual caution where a singer is given a melody.
    """

    tune: Tune
    key: Key
    parts: tuple[Part, ...]
    shared: tuple[SharedKey, ...]
    conventions: Conventions
    advice: str = ""
    introduces: bool = True


def parts(session: Session, arguments: Arguments) -> Outcome:
    """Write the tune, sounding in the shown key, for the instruments of ``--for``.

    Raises InputError; also where a note of the melody would lie outside the MIDI numbers.
    """
    _refuse_lost_quotes(arguments)
    is_new = bool(arguments.words)
    session = loaded(session, arguments)
    tune, key = session.stand
    text = arguments.option("for")
    try:
        instruments = tuple(INSTRUMENTS[name] for name in USUAL) if text is None else read_instruments(text)
    except InputError as error:
        raise arguments.placed(error, "for") from None
    sounding = tune._replace(progression=tune.progression.in_key(key), melody=melody_in(session, key))
    found = tuple(part_of(sounding, instrument) for instrument in instruments)
    shared = shared_keys(instruments, sounding.progression)
    return Outcome(session, PartsAnswer(tune, key, found, shared, session.conventions, _advice(found), is_new))


def _refuse_lost_quotes(arguments: Arguments) -> None:
    """Names of more than one word after --for, all but the first of which have become words of their own."""
    text, others = arguments.option("for"), [word for word in arguments.words if "|" not in word]
    if not text or not others:
        return
    whole = " ".join((text, *others))
    try:
        read_instruments(whole)
    except InputError:
        return
    raise arguments.unquoted("for", "only one word is read here", whole)


def _advice(found: tuple[Part, ...]) -> str:
    is_sung = any(part.melody is not None and part.instrument.family == VOICES for part in found)
    return CARE_OF_VOICES if is_sung else ""


def part_of(sounding: Tune, instrument: Instrument) -> Part:
    """The part of an instrument in a tune that sounds in its key, its melody in an octave that it can play.

    Raises InputError where a note of the melody would be written outside the MIDI numbers in every octave.
    """
    progression = sounding.progression
    key = instrument.written_key(progression, sounding.melody)
    try:
        register = None if sounding.melody is None else in_compass(instrument, sounding.melody, key)
    except ValueError as error:
        what, hint = f"for {instrument.name}, the written {error}", "bring the ends of the melody nearer together"
        raise InputError(what, wanted="a narrower melody", hint=hint) from None
    found = capos(progression) if instrument.has_frets else ()
    part = Part(instrument, progression.in_key(key), found, friendly_keys(instrument, progression))
    if register is None:
        return part
    return part._replace(melody=register.melody, octaves=register.octaves, outside=register.outside)


def read_instruments(text: str) -> tuple[Instrument, ...]:
    """Read names of instruments with commas or semicolons between, in any order of their words. Raises InputError.

    >>> [instrument.name for instrument in read_instruments("sax alto, Guitars; Bb trumpet")]
    ['alto sax', 'guitar', 'trumpet']
    """
    found, start = [], 0
    for part in text.replace(";", ",").split(","):
        word = part.strip()
        instrument = find_instrument(word)
        if instrument is None:
            at = start + len(part) - len(part.lstrip())
            what = f"{word[:30]!r} is no instrument here" if word else "an instrument is missing"
            raise InputError(what, text, at, at + len(word), wanted="an instrument", hint=_hint(word))
        found.append(instrument)
        start += len(part) + 1
    return tuple(found)


def _hint(word: str) -> str:
    near = nearest_instruments(word) if word else ()
    return f"did you mean {listed(near, 'or')}?" if near else _HINT
