"""``melody``: put a melody on the stand, or show the one that is there, in numbers and in notes, in one key or several.

``octave`` takes it an octave up or down, ``way`` says how it goes to other keys.
"""

from __future__ import annotations

from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.conventions import NATURAL
from nearhand.notation.errors import InputError
from nearhand.theory.melody import WAYS
from nearhand.theory.progression import COMMON_TIME, Meter
from nearhand.verbs.answers import MelodyAnswer
from nearhand.verbs.loading import is_chart_file, is_file_name, loaded, option_key, with_conventions
from nearhand.verbs.melodies import OTHER_KEY_HINT, melody_tune, melody_views, put_over_chords
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.settings import choice_of, shown_or_kept
from nearhand.verbs.show import read_keys, seeded, shown
from nearhand.verbs.verb import Arguments

_HINT = "write for example  melody C: 5_ | 1 2 3 1 | 3 - 2 -  or  melody E4 F#4 G4"
_METER_HINT = "leave it out, or add --alone to put the chords away"
OFF = "off"
OCTAVES = ("up", "down", "nearest")


def melody(session: Session, arguments: Arguments) -> Outcome:
    """Put a melody on the stand, over the chords there or alone, or show the one that is there; ``off`` takes it away.

    Raises InputError.
    """
    if arguments.text == OFF:
        return _without(session)
    is_new = bool(arguments.words)
    is_chart = is_new and (is_file_name(arguments.text) or is_chart_file(arguments.text))
    if is_chart or not is_new:
        _refuse(arguments, "meter", "is the meter of notes that are typed behind melody", _HINT)
    if not is_new:
        _refuse(arguments, "minor", "says how the notes behind melody are read, and there are none", _HINT)
    new = with_notes(session, arguments) if is_new and not is_chart else loaded(session, arguments)
    _refuse_form(new, arguments)
    return Outcome(new, _views(new, arguments, is_new))


def _refuse(arguments: Arguments, name: str, why: str, hint: str) -> None:
    """Raise InputError at an option that means nothing here; nothing happens where it is not given."""
    value = arguments.option(name)
    if value is not None:
        start = arguments.starts.get(name, 0)
        what = f"--{name} {why}"
        raise InputError(what, arguments.line, start, start + len(value), wanted="notes", hint=hint)


def _refuse_form(session: Session, arguments: Arguments) -> None:
    """Raise InputError where there are no bare sixths and sevenths that a form of minor could raise."""
    key = session.stand[1]
    if arguments.option("minor") == NATURAL:
        return
    if not key.mode.is_minor:
        hint = "leave it out, or write the key in front: A minor: 5 6 7 1'"
        _refuse(arguments, "minor", f"is a form of a minor key, and this is {key}", hint)
    if session.conventions.degrees != "mode":
        counted = f"with degrees {session.conventions.degrees} every degree says by itself what it is"
        _refuse(arguments, "minor", f"goes with degrees mode: {counted}", "leave one of the two out")


def with_notes(session: Session, arguments: Arguments) -> Session:
    """The session with the melody that the words of ``melody`` are, over the chords on the stand or alone.

    Raises InputError.
    """
    way, session = session.way, with_conventions(session, arguments)
    text, key = arguments.text, option_key(arguments, "key")
    if session.tune is not None and session.tune.progression.bars and not arguments.has("alone"):
        if key != session.shown_key:
            _refuse(arguments, "key", f"is another key than that of the chords, {session.shown_key}", OTHER_KEY_HINT)
        _refuse(arguments, "meter", "is the meter of a melody alone, and here it is that of the chords", _METER_HINT)
        return put_over_chords(session, text, way)
    return session.with_tune(melody_tune(text, key, session.conventions, session.shown_key, _meter(arguments)))


def _meter(arguments: Arguments) -> Meter:
    text = arguments.option("meter")
    if text is None:
        return COMMON_TIME
    try:
        return parse_meter(text)
    except InputError as error:
        raise arguments.placed(error, "meter") from None


def _without(session: Session) -> Outcome:
    tune, _ = session.stand
    refuse_without_melody(session)
    if not tune.progression.bars:
        what = "the melody stands alone: there would be nothing left"
        raise InputError(what, wanted="chords", hint="write chords, or another melody")
    return shown(session.under_another_melody()._replace(tune=tune._replace(melody=None, melody_remarks=())))


def refuse_without_melody(session: Session) -> None:
    """Raise InputError where the tune on the stand has no melody."""
    if session.stand[0].melody is None:
        raise InputError("there is no melody yet", wanted="a melody", hint=_HINT)


def _views(session: Session, arguments: Arguments, introduces: bool) -> MelodyAnswer:
    refuse_without_melody(session)
    text = arguments.option("to")
    if text is None:
        return melody_views(session, (session.stand[1],), introduces)
    try:
        text, note = seeded(text)
        answer = melody_views(session, read_keys(text, session), introduces)
    except InputError as error:
        raise arguments.placed(error, "to") from None
    return answer._replace(advice=f"{note} {answer.advice}".strip())


def octave(session: Session, arguments: Arguments) -> Outcome:
    """Take the melody an octave up or down; ``nearest`` brings it back.

    Raises InputError.
    """
    refuse_without_melody(session)
    choice = choice_of("octave", arguments, OCTAVES)
    octaves = 0 if choice == "nearest" else session.octaves + (1 if choice == "up" else -1)
    lift = 0 if choice == "nearest" else session.lift
    session = session.under_another_melody()._replace(octaves=octaves, lift=lift)
    return Outcome(session, melody_views(session, (session.stand[1],), introduces=False))


def way(session: Session, arguments: Arguments) -> Outcome:
    """Choose how melodies go to other keys.

    Raises InputError.
    """
    session = session.under_another_melody()
    return shown_or_kept(session._replace(way=choice_of("way", arguments, WAYS), lift=0))
