"""The shell on a terminal: its history, and the loop that reads, answers and prints."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError, printable
from nearhand.notation.keys import key_name
from nearhand.render.output import Output, output_to
from nearhand.render.page import Cell, Line, line, wrapped
from nearhand.shell.journal import NOT_SAVED, Journal
from nearhand.shell.prompt import Desk, prompt_session
from nearhand.shell.starting import started
from nearhand.verbs.session import Session

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.history import History
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output as TerminalOutput

WELCOME = (
    "Type chords: | Em | Bm/D | Am/C | B7 |",
    "then: to C minor, next, explain",
    "or: list, open FILE, help; Ctrl-D leaves",
)
FIRST_WELCOME = (*WELCOME[:2], "or: tour shows around, help; Ctrl-D leaves")
"""For those who have no history yet."""


def run(
    input_: Input | None = None,
    terminal: TerminalOutput | None = None,
    history_path: str | None = None,
    vi: bool = False,
) -> int:
    """Run the shell until Ctrl-D or ``quit``; ``input_`` and ``terminal`` are for tests that type keys into a pipe.

    ``vi`` begins with the editing keys of vi.
    """
    output = output_to(sys.stdout, dict(os.environ))
    session, told = started(Session(conventions=Conventions(plain=not output.signs)))
    holder, journal = [session], Journal()
    path = default_history_path() if history_path is None else history_path
    welcome = WELCOME if os.path.exists(path) else FIRST_WELCOME
    history, warning = _history(path)
    desk = Desk(holder)
    prompt = _prompt_session(desk, history, input_, terminal, vi)
    output.write(
        [part for text in (*welcome, *warning) for part in wrapped(text, output.width)]
        + [part for text in told for part in wrapped(text, output.width, role="hint")]
    )
    while True:
        try:
            text = desk.read(prompt, _prompt(holder[0]))
        except KeyboardInterrupt:  # Ctrl-C clears the line
            continue
        except EOFError:  # Ctrl-D leaves; a terminal that was closed ends here as well, and its journal stays
            if input_ is not None or sys.stdin.isatty():
                output.write(_farewell(journal))
            return 0
        output = output_to(sys.stdout, dict(os.environ), holder[0].colours)  # the window may have changed its size
        if _answer(text, desk, output, journal, prompt):
            output.write(_farewell(journal))
            return 0


def _farewell(journal: Journal) -> list[Line]:
    """Close the journal; a sentence where something was not saved."""
    return [line(Cell(NOT_SAVED, "hint"))] if journal.close() else []


def _answer(text: str, desk: Desk, output: Output, journal: Journal, prompt: PromptSession[str]) -> bool:
    """Answer one line, keep the session; say whether the shell is left."""
    holder = desk.holder
    from nearhand.shell.paging import show_outcome
    from nearhand.verbs.respond import respond  # after the first prompt, which should not wait for it

    try:
        outcome = respond(holder[0], text)
    except InputError as error:
        from nearhand.verbs.words import asks_for_json

        desk.refused.add(text)
        output.refuse(error, asks_for_json(text))
        return False
    desk.refused.discard(text)  # as when a key was missing before
    told = journal.note(holder[0], outcome, text)
    if outcome.session.colours != holder[0].colours:
        output = output_to(sys.stdout, dict(os.environ), outcome.session.colours)
    holder[0] = outcome.session
    show_outcome(output, outcome, prompt.input, prompt.output)
    output.write([part for sentence in told for part in wrapped(sentence, output.width, role="hint")])
    return outcome.leaves


def _prompt(session: Session) -> str:
    if session.shown_key is None:
        return "chords> "
    return f"{key_name(session.shown_key, session.conventions)}> "


def _prompt_session(
    desk: Desk, history: History, input_: Input | None, terminal: TerminalOutput | None, vi: bool
) -> PromptSession[str]:
    return prompt_session(desk, history, input_, terminal, vi)


def default_history_path() -> str:
    """Where the lines typed are kept."""
    from platformdirs import user_data_dir

    return os.path.join(user_data_dir("nearhand", appauthor=False), "history")


def _history(path: str) -> tuple[History, tuple[str, ...]]:
    """The history kept in a file; in memory alone, with a sentence that says so, where the file cannot be used."""
    from prompt_toolkit.history import FileHistory, InMemoryHistory

    try:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        with open(path, "ab"):
            pass
    except OSError as error:
        return InMemoryHistory(), (f"The history cannot be kept: {error.strerror} ({printable(path)}).",)
    return FileHistory(path), ()
