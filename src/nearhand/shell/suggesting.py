"""What is suggested while a line is begun: the last line of the history that begins so and was not refused."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from prompt_toolkit.auto_suggest import AutoSuggest, Suggestion
    from prompt_toolkit.buffer import Buffer
    from prompt_toolkit.document import Document


def suggest_answered(refused: set[str]) -> AutoSuggest:
    """Suggestions from the history without the lines that this shell has refused."""
    from prompt_toolkit.auto_suggest import AutoSuggest, Suggestion

    class Answered(AutoSuggest):
        """Looks through the history, newest first."""

        def get_suggestion(self, buffer: Buffer, document: Document) -> Suggestion | None:
            """The rest of the newest line that goes on from the text."""
            text = document.text
            if not text.strip():
                return None
            for line in reversed(list(buffer.history.get_strings())):
                if line.startswith(text) and line not in refused:
                    return Suggestion(line[len(text) :])
            return None

    return Answered()
