"""How a tune is voiced, read, written and drawn: one verb a setting."""

from __future__ import annotations

from nearhand.notation.conventions import DEGREES, FIGURES, SEVENTHS, SYMBOLS
from nearhand.notation.errors import InputError
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.table import SWITCHES, VOICINGS
from nearhand.verbs.verb import Arguments


def voice(session: Session, arguments: Arguments) -> Outcome:
    """Choose how chords are voiced: close, or none for the chord tones alone.

    Raises InputError.
    """
    return _shown(session._replace(voicing=_choice("voice", arguments, VOICINGS)))


def loop(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether the voicing closes to a loop, so that the last chord leads back to the first.

    Raises InputError.
    """
    return _shown(session._replace(loop=_choice("loop", arguments, SWITCHES) == "on"))


def degrees(session: Session, arguments: Arguments) -> Outcome:
    """Choose what degrees are counted in: the mode's own scale, the major scale of the tonic, or the relative major.

    Raises InputError.
    """
    return _written("degrees", session, arguments, DEGREES)


def sevenths(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether a bare 7 behind a numeral is that of a chord symbol or that of the scale.

    Raises InputError.
    """
    return _written("sevenths", session, arguments, SEVENTHS)


def symbols(session: Session, arguments: Arguments) -> Outcome:
    """Choose the style of chord symbols.

    Raises InputError.
    """
    return _written("symbols", session, arguments, SYMBOLS)


def figures(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether figures and extensions stand on the line or are raised.

    Raises InputError.
    """
    return _written("figures", session, arguments, FIGURES)


def _written(name: str, session: Session, arguments: Arguments, choices: tuple[str, ...]) -> Outcome:
    """Choose one of the conventions."""
    chosen = _choice(name, arguments, choices)
    return _shown(session._replace(conventions=session.conventions.choosing(name, chosen)))


def plain(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether to write and draw with keyboard characters alone.

    Raises InputError.
    """
    chosen = _choice("plain", arguments, SWITCHES) == "on"
    return _shown(session._replace(conventions=session.conventions._replace(plain=chosen)))


def _choice(verb: str, arguments: Arguments, choices: tuple[str, ...]) -> str:
    if arguments.text in choices:
        return arguments.text
    wanted = " or ".join(choices)
    what = f"{arguments.text[:30]!r} cannot follow {verb}" if arguments.text else f"{verb} needs a word"
    hint = "write " + ", or ".join(f"{verb} {choice}" for choice in choices)
    raise InputError(what, arguments.line, arguments.start, wanted=wanted, hint=hint)


def _shown(session: Session) -> Outcome:
    if session.tune is None:
        return Outcome(session, NoteAnswer(("Kept for the next progression.",)))
    return shown(session)
