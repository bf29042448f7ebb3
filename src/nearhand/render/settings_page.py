"""Settings as a page: each with its value, whether it is kept, and what it means."""

from __future__ import annotations

from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.setting import SettingRow, SettingsAnswer

_INDENT = 4


def draw_settings(answer: SettingsAnswer, page: Page) -> list[Line]:
    """Each setting with its value and its meaning, then where they are kept."""
    lines: list[Line] = []
    for row in answer.rows:
        value = row.value + _kept_in_words(row)
        if len(row.name) + 2 + len(value) <= page.width:
            lines.append(line(Cell(row.name, "key"), "  ", Cell(value, "number")))
        else:
            lines += [line(Cell(row.name, "key")), *wrapped(value, page.width, _INDENT, role="number")]
        lines += wrapped(row.meaning, page.width, _INDENT, role="label")
    if answer.broken:
        return lines + wrapped(answer.broken, page.width, role="error")
    where = f"What is kept lies in {answer.path}"
    who = "the shell on a terminal starts with it, pipes and one-shot commands do not."
    return lines + wrapped(f"{where}; {who}", page.width, role="hint")


def _kept_in_words(row: SettingRow) -> str:
    if row.kept is None:
        return "" if row.value == row.default else f", here alone; {row.default} is the default"
    return ", kept" if row.kept == row.value else f", here alone; {row.kept} is kept"
