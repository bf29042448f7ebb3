"""``open`` and ``save``, ``undo`` and ``redo``, ``help`` and ``quit``."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.files import read_tune, with_suffix, write_tune
from nearhand.verbs.session import Outcome, Session, redo, undo
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.verb import Verb


class HelpAnswer(NamedTuple):
    """Help on one verb, or on all."""

    verb: Verb | None
    in_shell: bool


def open_chart(session: Session, arguments: Arguments) -> Outcome:
    """Open a chart file and show it in its own key.

    Raises InputError.
    """
    if not arguments.words:
        raise InputError(
            "open needs a file", arguments.line, len(arguments.line), hint="write for example  open waltz.toml"
        )
    session = session.with_tune(read_tune(with_suffix(arguments.text), conventions=session.conventions))
    return shown(session, introduces=True)


def save(session: Session, arguments: Arguments) -> Outcome:
    """Save the tune in the shown key as a chart file.

    Raises InputError.
    """
    tune, key = session.stand
    if not arguments.words:
        raise InputError(
            "save needs a file name", arguments.line, len(arguments.line), hint="write for example  save waltz.toml"
        )
    path = with_suffix(arguments.text)
    write_tune(path, tune.in_key(key), replace=arguments.has("over"))
    return Outcome(session, NoteAnswer((f"Saved in {key} as {path}.",)))


def undo_change(session: Session, arguments: Arguments) -> Outcome:
    """Take back the last change."""
    return _restored(undo(session), "there is nothing to undo")


def redo_change(session: Session, arguments: Arguments) -> Outcome:
    """Make the change again that was taken back last."""
    return _restored(redo(session), "there is nothing to redo")


def _restored(session: Session | None, otherwise: str) -> Outcome:
    if session is None:
        raise InputError(otherwise)
    if session.tune is None:
        return Outcome(session, NoteAnswer(("There is no progression now.",)))
    return shown(session)


def give_help(session: Session, arguments: Arguments) -> Outcome:
    """Explain all verbs in short, or one of them.

    Raises InputError at a verb that does not exist.
    """
    from nearhand.verbs.table import find_verb

    verb = find_verb(arguments.text, arguments.line, arguments.start) if arguments.words else None
    return Outcome(session, HelpAnswer(verb, in_shell=True))


def leave(session: Session, arguments: Arguments) -> Outcome:
    """Leave the shell."""
    return Outcome(session, NoteAnswer(()), leaves=True)
