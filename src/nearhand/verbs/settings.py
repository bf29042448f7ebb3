"""How a tune is read, written and drawn: one verb a setting."""

from __future__ import annotations

from nearhand.notation.conventions import DEGREES, FIGURES, LAYOUTS, NAMES, SEVENTHS, SING, SYMBOLS
from nearhand.notation.errors import InputError
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.choices import hint_of
from nearhand.verbs.options import COLOURS, SWITCHES
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments


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


def names(session: Session, arguments: Arguments) -> Outcome:
    """Choose in which language notes and keys are named on pages.

    Raises InputError.
    """
    return _written("names", session, arguments, NAMES)


def sing(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether the degrees of a melody are numbers or syllables.

    Raises InputError.
    """
    return _written("sing", session, arguments, SING)


def layout(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether answers are drawn, or written for ears.

    Raises InputError.
    """
    return _written("layout", session, arguments, LAYOUTS)


def paging(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether an answer longer than the screen stops at every screen.

    Raises InputError.
    """
    chosen = choice_of("paging", arguments, SWITCHES) == "on"
    told = "Long answers stop at every screen." if chosen else "Long answers run through."
    return Outcome(session._replace(paging=chosen), NoteAnswer((told,)))


def colours(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether pages are coloured; ``auto`` where the terminal says that it can.

    Raises InputError.
    """
    return shown_or_kept(session._replace(colours=choice_of("colours", arguments, COLOURS)))


def _written(name: str, session: Session, arguments: Arguments, choices: tuple[str, ...]) -> Outcome:
    """Choose one of the conventions."""
    chosen = choice_of(name, arguments, choices)
    return shown_or_kept(session._replace(conventions=session.conventions.choosing(name, chosen)))


def plain(session: Session, arguments: Arguments) -> Outcome:
    """Choose whether to write and draw with keyboard characters alone.

    Raises InputError.
    """
    chosen = choice_of("plain", arguments, SWITCHES) == "on"
    return shown_or_kept(session._replace(conventions=session.conventions._replace(plain=chosen)))


def choice_of(verb: str, arguments: Arguments, choices: tuple[str, ...]) -> str:
    """The one of some words that follows a verb. Raises InputError at any other."""
    if arguments.text in choices:
        return arguments.text
    wanted = " or ".join(choices)
    what = f"{arguments.text[:30]!r} cannot follow {verb}" if arguments.text else f"{verb} needs a word"
    hint = hint_of(arguments.text, choices, f"{verb} ")
    raise InputError(what, arguments.line, arguments.start, wanted=wanted, hint=hint)


def shown_or_kept(session: Session) -> Outcome:
    """The tune under its new settings; without one, a sentence that they are kept."""
    if session.tune is None:
        return Outcome(session, NoteAnswer(("Kept for the next progression.",)))
    return shown(session)
