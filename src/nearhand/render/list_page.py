"""The charts of a folder as a page."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import printable
from nearhand.notation.keys import key_name
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.list_charts import ChartRow, ListAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.recent import RecentAnswer


def draw_list(answer: ListAnswer, page: Page) -> list[Line]:
    """Each chart with its title, key and length, or why it cannot be read."""
    if not answer.rows:
        return [*wrapped(f"there are no charts in {answer.folder}", page.width)]
    return [part for row in answer.rows for part in _chart_lines("", row, answer.conventions, page)]


def draw_recent(answer: RecentAnswer, page: Page) -> list[Line]:
    """The charts of late with their numbers."""
    if not answer.rows:
        return wrapped("No chart has been opened or saved yet.", page.width)
    lines: list[Line] = []
    for number, row in enumerate(answer.rows, start=1):
        lines += _chart_lines(f"{number:2d}  ", row, answer.conventions, page)
    return lines + wrapped("recent 1 opens the first of these.", page.width, role="hint")


def _chart_lines(number: str, row: ChartRow, conventions: Conventions, page: Page) -> list[Line]:
    name = printable(row.path)
    lines = [line(Cell(number, "label"), Cell(name, "chord")) if number else line(Cell(name, "chord"))]
    if row.tune is None:
        return lines + wrapped(row.error.what if row.error else "", page.width, 4, role="error")
    key, bars = key_name(row.tune.key, conventions), row.tune.bar_count
    return lines + wrapped(f"{row.tune.title or 'untitled'}, {key}, {bars} bars", page.width, 4)
