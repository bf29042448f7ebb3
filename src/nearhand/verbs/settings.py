"""How a tune is voiced, read and drawn: ``voice``, ``loop``, ``degrees``, ``plain``."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.table import DEGREES, SWITCHES, VOICINGS
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
    """Choose what degrees are counted in: the mode's own scale, or the major scale of the tonic.

    Raises InputError.
    """
    chosen = _choice("degrees", arguments, DEGREES)
    return _shown(session._replace(conventions=session.conventions._replace(degrees=chosen)))


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
    raise InputError(
        what, arguments.line, arguments.start, wanted=wanted, hint=f"write {verb} {choices[0]}, or {verb} {choices[-1]}"
    )


def _shown(session: Session) -> Outcome:
    if session.tune is None:
        return Outcome(session, NoteAnswer(("Kept for the next progression.",)))
    return shown(session)
