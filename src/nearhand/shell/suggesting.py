"""What is suggested while a line is begun: the last line of the history that begins so and is not refused."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from prompt_toolkit.auto_suggest import AutoSuggest, Suggestion
    from prompt_toolkit.buffer import Buffer
    from prompt_toolkit.document import Document

    from nearhand.verbs.session import Session

MOST_READ = 20
"""Melodies that are read to find one, so that nobody waits."""
_MELODY = "melody"


def suggest_answered(refused: set[str], session_now: Callable[[], Session]) -> AutoSuggest:
    """Suggestions from the history without the lines that this shell has refused, and melodies that it would refuse.

    Whether a melody is read depends on the chords and the key that are there when it is sent.
    """
    from itertools import islice

    from prompt_toolkit.auto_suggest import AutoSuggest, Suggestion

    class Answered(AutoSuggest):
        """Looks through the history, newest first."""

        def get_suggestion(self, buffer: Buffer, document: Document) -> Suggestion | None:
            """The rest of the newest line that goes on from the text."""
            text = document.text
            if not text.strip():
                return None
            lines = reversed(list(buffer.history.get_strings()))
            begun = (line for line in lines if line.startswith(text) and line not in refused)
            for line in islice(begun, MOST_READ):
                if not _would_be_refused(line, session_now()):
                    return Suggestion(line[len(text) :])
            return None

    return Answered()


def _would_be_refused(line: str, session: Session) -> bool:
    if _MELODY not in line:
        return False
    from nearhand.shell.typed_melody import is_refused  # most lines hold no melody

    try:
        return is_refused(line, session)
    except Exception:  # what helps while one types must not end the shell; the answer will tell
        return True
