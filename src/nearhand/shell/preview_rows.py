"""The rows below a line that is typed: texts broken to them, and what is left out where there is no room."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import printable
from nearhand.notation.keys import key_name
from nearhand.render.page import text_of, wrapped
from nearhand.theory.key import Key

MOST_ROWS = 3
_LEFT_OUT = "..."


def in_rows(text: str, width: int, rows: int = MOST_ROWS) -> str:
    """A text broken into rows; what does not fit is cut, and three dots say so.

    >>> in_rows("one two three four five", 9, rows=2)
    'one two\\nthree ...'
    """
    lines = text_of(wrapped(text, width)).split("\n")
    kept = [line[:width] for line in lines[:rows]]
    if len(lines) > rows:
        last = kept[-1][: width - len(_LEFT_OUT)]
        kept[-1] = f"{last.rpartition(' ')[0] or last.rstrip()} {_LEFT_OUT}".lstrip()[:width]
    return "\n".join(kept)


def row_of(key: Key, written: tuple[str, ...], conventions: Conventions, width: int) -> str:
    """A key and what is written in it; the last chords or notes where not all find room."""
    head = f"{key_name(key, conventions)}: "
    row = " ".join(written)
    if len(head) + len(row) > width:
        start = len(row) - max(width - len(head) - len(_LEFT_OUT) - 1, 0)
        row = f"{_LEFT_OUT} {row[row.find(' ', start - 1) + 1 :] if start < len(row) else ''}"
    return printable(head + row)[:width]
