"""What a page is made of: cells of text that say what they are, in lines. Colour is one table, applied last."""

from __future__ import annotations

from collections.abc import Iterable

from nearhand.notation.errors import printable
from nearhand.theory.record import NamedTuple

WIDE_ENOUGH_FOR_LABELS = 60


class Cell(NamedTuple):
    """A piece of text and its role (``chord``, ``numeral``, ``held`` ...; empty for plain text)."""

    text: str
    role: str = ""


Line = tuple[Cell, ...]


class Page(NamedTuple):
    """Where to draw: columns, whether only plain keyboard characters may be used, and how the note C is named."""

    width: int = 80
    plain: bool = False
    name_of_c: str = "C"


def line(*cells: Cell | str) -> Line:
    """A line of cells; a bare text is a cell without role."""
    return tuple(cell if isinstance(cell, Cell) else Cell(cell) for cell in cells)


def text_of(lines: Iterable[Line]) -> str:
    """Lines as plain text, without blanks at their ends.

    >>> text_of([line(Cell("C", "chord"), "  "), line()])
    'C\\n'
    """
    return "\n".join("".join(cell.text for cell in cells).rstrip() for cells in lines)


def wrapped(text: str, width: int, indent: int = 0, role: str = "") -> list[Line]:
    """Words broken into lines of at most ``width`` columns, all indented; a longer word stands alone.

    >>> [cells[0].text for cells in wrapped("one two three", 8, indent=1)]
    [' one two', ' three']
    """
    lines, current = [], ""
    for word in printable(text).split():
        if current and indent + len(current) + 1 + len(word) > width:
            lines.append(current)
            current = word
        else:
            current = f"{current} {word}" if current else word
    lines += [current] if current else []
    return [line(Cell(" " * indent + part, role)) for part in lines]
