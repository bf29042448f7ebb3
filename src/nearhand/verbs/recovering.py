"""``recover``: bring back a session that ended early, from the lines its shell had kept."""

from __future__ import annotations

import os
from contextlib import suppress

from nearhand.notation.errors import InputError
from nearhand.verbs.answers import MelodyAnswer, NoteAnswer, ViewsAnswer
from nearhand.verbs.journals import Leftover, discard, last_session, leftovers, working_folder
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments
from nearhand.verbs.wishing import OFF

_NOTHING = "There is nothing to bring back."
_NEVER_AGAIN = ("recover", "save", "set")
"""Verbs that a journal has no lines of, as they write files: such a line is not ours."""


def recover(session: Session, arguments: Arguments) -> Outcome:
    """Answer the lines of the newest journal left over once more, so that undo works; ``off`` takes it away.

    Where none is left over it is the journal of the last session that was left without saving.

    Raises InputError for any other word.
    """
    if arguments.words and arguments.text != OFF:
        what = f"{arguments.text[:30]!r} cannot follow recover"
        hint = "write recover, or recover off"
        raise InputError(what, arguments.line, arguments.start, wanted="the end of the line", hint=hint)
    found = leftovers() or last_session()
    if not found:
        return Outcome(session, NoteAnswer((_NOTHING,)))
    if arguments.words:
        discard(found[0].path)
        return Outcome(session, NoteAnswer(("That session is let go.",)))
    return _replayed(session, found[0])


def _replayed(session: Session, leftover: Leftover) -> Outcome:
    here, (session, refused) = working_folder(), _at(leftover.folder, session, leftover.lines)
    with suppress(OSError):
        os.chdir(here)
    lines = tuple(line for line in leftover.lines if line not in refused)
    count = len(leftover.lines) - len(refused)
    told = [f"Brought back: {count} line{'s' * (count != 1)}; undo takes them back one at a time."]
    told += [f"Not brought back: {line} ({reason})." for line, reason in refused.items()]
    outcome = Outcome(session, NoteAnswer(tuple(told)))
    if session.tune is not None:
        outcome = shown(session, introduces=True)
        assert isinstance(outcome.answer, ViewsAnswer | MelodyAnswer)  # a tune is shown
        outcome = outcome._replace(answer=outcome.answer._replace(advice=" ".join(told)))
    return outcome._replace(lines=lines, settles=leftover.path)


def _at(folder: str, session: Session, lines: tuple[str, ...]) -> tuple[Session, dict[str, str]]:
    """The session after lines that were typed in a folder, and those that are refused now, each with the reason."""
    from nearhand.verbs.respond import respond

    with suppress(OSError, ValueError):  # files are looked for here where that folder is gone
        os.chdir(folder)
    refused = {}
    for line in lines:
        try:
            if line.split(maxsplit=1)[:1] and line.split(maxsplit=1)[0] in _NEVER_AGAIN:
                raise InputError("it writes files")
            session = respond(session, line).session
        except InputError as error:
            refused[line] = error.what
    return session, refused
