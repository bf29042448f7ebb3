"""The charts of a folder as a page."""

from __future__ import annotations

from nearhand.notation.errors import printable
from nearhand.notation.keys import write_key
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.list_charts import ListAnswer


def draw_list(answer: ListAnswer, page: Page) -> list[Line]:
    """Each chart with its title, key and length, or why it cannot be read."""
    if not answer.rows:
        return [*wrapped(f"there are no charts in {answer.folder}", page.width)]
    lines: list[Line] = []
    for row in answer.rows:
        lines.append(line(Cell(printable(row.path), "chord")))
        if row.tune is None:
            lines += wrapped(row.error.what if row.error else "", page.width, 4, role="error")
        else:
            bars = len(row.tune.progression.bars)
            key = write_key(row.tune.key, answer.conventions.plain)
            lines += wrapped(f"{row.tune.title or 'untitled'}, {key}, {bars} bars", page.width, 4)
    return lines
