"""The list of keys as a page."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.render.page import Cell, Line, line, wrapped

_NARROWEST_MEANING = 20


def draw_keys(keys: Sequence[tuple[str, str]], remark: str, width: int) -> list[Line]:
    """Keys and what they do, one a line, and a remark below; broken where the page is narrow.

    >>> from nearhand.render.page import text_of
    >>> print(text_of(draw_keys([("F2 or =", "home")], "Signs act while the line is empty.", 40)))
    F2 or =  home
    Signs act while the line is empty.
    """
    column = max((len(name) for name, _ in keys), default=0) + 2
    lines: list[Line] = []
    for name, meaning in keys:
        if width < column + _NARROWEST_MEANING:
            lines += [line(Cell(name, "chord")), *wrapped(meaning, width, 2)]
            continue
        first, *rest = wrapped(meaning, max(width - column, 1)) or [line()]
        lines.append(line(Cell(name.ljust(column), "chord"), *first))
        lines += [line(" " * column, *cells) for cells in rest]
    return [*lines, *wrapped(remark, width, role="hint")]
