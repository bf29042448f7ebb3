"""``open`` and ``save``, ``undo`` and ``redo``, and ``quit``."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.notation.keys import key_name
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.files import chart_name, from_home, read_tune, with_suffix, write_tune
from nearhand.verbs.session import Outcome, Session, redo, undo
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments


def open_chart(session: Session, arguments: Arguments) -> Outcome:
    """Open a chart file and show it in its own key.

    Raises InputError.
    """
    if not arguments.words:
        raise InputError(
            "open needs a file", arguments.line, len(arguments.line), hint="write for example  open waltz.toml"
        )
    path = with_suffix(arguments.text)
    session = session.with_tune(read_tune(path, conventions=session.conventions))
    return shown(session, introduces=True)._replace(chart=from_home(path))


def save(session: Session, arguments: Arguments) -> Outcome:
    """Save the tune in the shown key as a chart file.

    Raises InputError.
    """
    tune, key = session.stand
    if not arguments.words:
        raise InputError(
            "save needs a file name", arguments.line, len(arguments.line), hint="write for example  save waltz.toml"
        )
    path = chart_name(arguments.text)
    from nearhand.verbs.melodies import melody_in  # most tunes are chords alone

    moved = tune._replace(progression=tune.progression.in_key(key), melody=melody_in(session, key))
    write_tune(path, moved, replace=arguments.has("over"))
    return Outcome(
        session, NoteAnswer((f"Saved in {key_name(key, session.conventions)} as {path}.",)), chart=from_home(path)
    )


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


def leave(session: Session, arguments: Arguments) -> Outcome:
    """Leave the shell."""
    return Outcome(session, NoteAnswer(()), leaves=True)
