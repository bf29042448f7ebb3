"""The one error a player meets: what was typed, where it went wrong, what was wanted, and what to write instead."""

from __future__ import annotations

WINDOW = 60
"""Characters of a long line that are shown around the place."""


class InputError(ValueError):
    """Something that cannot be read, with its place.

    ``what`` is the sentence; ``text`` the input as typed; ``start`` and ``end`` offsets into it (end not included);
    ``wanted`` what should stand there; ``hint`` what to write. ``source`` and ``line`` (from 1) name a file's line,
    which ``text`` then holds.
    """

    def __init__(  # noqa: PLR0913  # six facts make one refusal
        self,
        what: str,
        text: str = "",
        start: int = 0,
        end: int | None = None,
        *,
        wanted: str = "",
        hint: str = "",
        source: str = "",
        line: int = 0,
    ) -> None:
        super().__init__(what)
        self.what, self.text, self.start, self.wanted, self.hint = what, text, start, wanted, hint
        self.end = len(text) if end is None else end
        self.source, self.line = source, line

    def within(self, text: str, offset: int) -> InputError:
        """The same error, placed in a longer text in which the read part begins at ``offset``.

        >>> error = InputError("no such chord", "Hm", 0, 1).within("| Em | Hm |", 7)
        >>> error.start, error.end
        (7, 8)
        """
        return InputError(self.what, text, self.start + offset, self.end + offset, wanted=self.wanted, hint=self.hint)

    def __str__(self) -> str:
        """The sentence, the line with a caret under the first bad character, and the hint.

        >>> print(InputError("H is no chord root", "| Em | Hm |", 7, 8, hint="write B for B natural"))
        H is no chord root
          | Em | Hm |
                 ^
        write B for B natural
        """
        what = self.what
        if self.source:
            place = f", line {self.line}, column {self.start + 1}" if self.line else ""
            what = f"{self.source}{place}: {what}"
        lines = [printable(what)]
        if self.text:
            shown, column = excerpt(self.text, self.start)
            lines += [f"  {shown}", "  " + " " * column + "^"]
        if self.hint:
            lines.append(printable(self.hint))
        return "\n".join(lines)


def printable(text: str) -> str:
    """A text on one line of the same length, without characters that could steer a terminal.

    >>> printable("red \\x1b[31m\\ttitle")
    'red ?[31m title'
    """
    return "".join(character if character.isprintable() else " " if character.isspace() else "?" for character in text)


def excerpt(text: str, start: int) -> tuple[str, int]:
    """The part of a text that is shown around a place, on one line, and the column of the place in it.

    >>> excerpt("x" * 100 + "H" + "y" * 100, 100)[0].count("...")
    2
    """
    clean = printable(text)
    low = max(0, min(start - WINDOW // 2, len(clean) - WINDOW))
    high = min(len(clean), low + WINDOW)
    before, after = ("..." if low else ""), ("..." if high < len(clean) else "")
    return before + clean[low:high] + after, len(before) + start - low
