"""The shell on a terminal: prompt, history, completion, and the loop that reads, answers and prints."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from typing import TYPE_CHECKING

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError, printable
from nearhand.notation.keys import write_key
from nearhand.render.output import Output, output_to
from nearhand.render.page import line
from nearhand.verbs.session import Session

if TYPE_CHECKING:
    from prompt_toolkit import PromptSession
    from prompt_toolkit.completion import CompleteEvent, Completer, Completion
    from prompt_toolkit.document import Document
    from prompt_toolkit.history import History
    from prompt_toolkit.input import Input
    from prompt_toolkit.output import Output as TerminalOutput

WELCOME = (
    "Type chords: | Em | Bm/D | Am/C | B7 |",
    "then: to C minor, next, explain",
    "or: list, open FILE, help; Ctrl-D leaves",
)


def run(input_: Input | None = None, terminal: TerminalOutput | None = None, history_path: str | None = None) -> int:
    """Run the shell until Ctrl-D or ``quit``; ``input_`` and ``terminal`` are for tests that type keys into a pipe."""
    output = output_to(sys.stdout, dict(os.environ))
    session = Session(conventions=Conventions(plain=not output.signs))
    holder = [session]
    history, warning = _history(default_history_path() if history_path is None else history_path)
    prompt = _prompt_session(holder, history, input_, terminal)
    output.write([line(text) for text in (*WELCOME, *warning)])
    while True:
        try:
            text = prompt.prompt(_prompt(holder[0]))
        except KeyboardInterrupt:  # Ctrl-C clears the line
            continue
        except EOFError:  # Ctrl-D leaves
            return 0
        output = output_to(sys.stdout, dict(os.environ))  # the window may have changed its size
        if _answer(text, holder, output):
            return 0


def _answer(text: str, holder: list[Session], output: Output) -> bool:
    """Answer one line, keep the session; say whether the shell is left."""
    from nearhand.verbs.respond import respond  # after the first prompt, which should not wait for it

    try:
        outcome = respond(holder[0], text)
    except InputError as error:
        output.refuse(error)
        return False
    holder[0] = outcome.session
    output.show(outcome.answer, outcome.plain)
    return outcome.leaves


def _prompt(session: Session) -> str:
    if session.shown_key is None:
        return "chords> "
    return f"{write_key(session.shown_key, session.conventions.plain)}> "


def _prompt_session(
    holder: list[Session], history: History, input_: Input | None, terminal: TerminalOutput | None
) -> PromptSession[str]:
    from prompt_toolkit import PromptSession

    return PromptSession(
        history=history,
        completer=_completer(holder),
        complete_while_typing=False,
        input=input_,
        output=terminal,
    )


def _completer(holder: list[Session]) -> Completer:
    from prompt_toolkit.completion import Completer, Completion

    class VerbCompleter(Completer):
        """Hands ``candidates`` to the terminal."""

        def get_completions(self, document: Document, complete_event: CompleteEvent) -> Iterable[Completion]:
            """Complete the text before the cursor."""
            from nearhand.shell.completion import candidates

            before = document.text_before_cursor
            for candidate in candidates(before, holder[0]):
                yield Completion(candidate.text, candidate.start - len(before), display_meta=candidate.meaning)

    return VerbCompleter()


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
