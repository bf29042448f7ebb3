"""How a tune is voiced: the family, the hands, the register, the top line, pinned chords, weights; one verb each."""

from __future__ import annotations

from collections.abc import Callable

from nearhand.notation.errors import InputError
from nearhand.verbs.answers import ViewsAnswer, view_in
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.options import SWITCHES, VOICINGS
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.pinning import joined_pins, read_pins, shift_home, with_pins
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.settings import choice_of, shown_or_kept
from nearhand.verbs.verb import Arguments
from nearhand.verbs.wishing import OFF, read_left, read_register, read_span, read_top, read_weights
from nearhand.voicing.wishes import Wishes

_PINS_GO = "The pins are let go: they were voicings of another family. undo brings them back."


def voice(session: Session, arguments: Arguments) -> Outcome:
    """Choose the family that chords are voiced in, or none for the chord tones alone.

    Raises InputError.
    """
    chosen, wishes = choice_of("voice", arguments, VOICINGS), session.wishes
    if chosen == wishes.style or not wishes.pins:
        return _wishing(session, wishes._replace(style=chosen))
    outcome = _wishing(session, wishes._replace(style=chosen, pins=()))
    if isinstance(outcome.answer, ViewsAnswer):
        advice = f"{_PINS_GO} {outcome.answer.advice}".strip()
        outcome = outcome._replace(answer=outcome.answer._replace(advice=advice))
    return outcome


def loop(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether the voicing closes to a loop, so that the last chord leads back to the first.

    Raises InputError.
    """
    return shown_or_kept(session._replace(loop=choice_of("loop", arguments, SWITCHES) == "on"))


def left(session: Session, arguments: Arguments) -> Outcome:
    """Choose what the left hand plays below. Raises InputError."""
    return _read(session, arguments, read_left)


def span(session: Session, arguments: Arguments) -> Outcome:
    """Say how far a hand reaches. Raises InputError."""
    return _read(session, arguments, read_span)


def register(session: Session, arguments: Arguments) -> Outcome:
    """Choose the lowest and the highest note of the upper voices. Raises InputError."""
    return _read(session, arguments, read_register)


def top(session: Session, arguments: Arguments) -> Outcome:
    """Choose what the top line does, or give its notes. Raises InputError."""
    return _read(session, arguments, read_top)


def weigh(session: Session, arguments: Arguments) -> Outcome:
    """Change what a cost weighs. Raises InputError."""
    return _read(session, arguments, read_weights)


def pin(session: Session, arguments: Arguments) -> Outcome:
    """Pin a chord to the notes that follow, or to those it is shown with; ``off`` lets it go, or all of them.

    Raises InputError.
    """
    words, wishes = arguments.words, session.wishes
    if words == (OFF,):
        return _wishing(session, wishes._replace(pins=()))
    if len(words) == 2 and words[1] == OFF and ends_in_a_number(words[:1]):
        place = int(words[0][:6]) - 1
        return _wishing(session, wishes._replace(pins=tuple(pinned for pinned in wishes.pins if pinned[0] != place)))
    if len(words) == 1 and ends_in_a_number(words):
        return _wishing(session, _pinned_as_shown(session, words[0], arguments.line))
    return _read(session, arguments, _read_new_pins)


def _read_new_pins(text: str, session: Session) -> Wishes:
    """Pins that take the place of older ones of the same chords."""
    new = read_pins(text, session._replace(wishes=session.wishes._replace(pins=()))).pins
    return with_pins(session, joined_pins(session.wishes.pins, new))


def _pinned_as_shown(session: Session, number: str, line: str) -> Wishes:
    tune, key = session.stand
    view = view_in(tune.progression, key, session.wishes, session.loops, tops_in(session, key))
    if view.voiced is None:
        raise InputError("nothing is voiced that could be pinned", line, hint="write voice close first")
    place = picked_place(number, len(view.voiced.voicings), line)
    shift = shift_home(session)
    notes = tuple(pitch.midi + shift for pitch in view.voiced.voicings[place].pitches)
    return with_pins(session, joined_pins(session.wishes.pins, ((place, notes),)))


def _read(session: Session, arguments: Arguments, reader: Callable[[str, Session], Wishes]) -> Outcome:
    text = arguments.line[arguments.start :]
    try:
        return _wishing(session, reader(text, session))
    except InputError as error:
        raise error.within(arguments.line, arguments.start) if error.text == text else error from None


def _wishing(session: Session, wishes: Wishes) -> Outcome:
    """The session with other wishes, from the best path on."""
    return shown_or_kept(session._replace(wishes=wishes._replace(path=1)))
