"""Columns of texts as systems: bars side by side as the page's width allows, rows below one another."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.errors import printable
from nearhand.render.keyboard import Strip, draw_strips
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line
from nearhand.theory.progression import COMMON_TIME
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import View

_LABEL_WIDTH = 9
_CLOSING_WIDTH = 3


class Column(NamedTuple):
    """One chord as it will be drawn: its rows' texts, and its bar's number if it opens the bar.

    ``sign`` is the bar sign before it; ``opening`` the same where it begins a line of music, and ``closing`` the sign
    behind it where it ends one.
    """

    texts: tuple[str, ...]
    sign: str
    opening: str
    closing: str
    bar_number: str
    strip: Strip | None
    section: str

    @property
    def width(self) -> int:
        """Columns it takes, its bar sign and a blank behind it included."""
        return len(self.sign) + max(map(len, (*self.texts, self.bar_number))) + 1


def draw_systems(columns: Sequence[Column], rows: Sequence[str], page: Page) -> list[Line]:
    """Draw all systems, each with the keyboards of its chords; rows that are empty everywhere are left out.

    ``rows`` are the labels of the columns' texts, and their roles.
    """
    kept = [place for place in range(len(rows)) if place == 0 or any(column.texts[place] for column in columns)]
    columns = [column._replace(texts=tuple(column.texts[place] for place in kept)) for column in columns]
    labels = [rows[place] for place in kept]
    labelled = page.width >= WIDE_ENOUGH_FOR_LABELS
    room = page.width - (_LABEL_WIDTH if labelled else 0)
    lines: list[Line] = []
    for system in _systems(columns, room):
        if lines:
            lines.append(line())
        if system[0].section:
            lines.append(line(Cell(printable(system[0].section), "title")))
        system[0] = system[0]._replace(sign=system[0].opening)
        lines += _draw_system(system, labels, labelled)
        strips = [column.strip for column in system if column.strip is not None]
        lines += draw_strips(strips, page)
    return lines


def column_of(view: View, place: int, texts: tuple[str, ...], strip: Strip | None = None) -> Column:
    """The column of a view's chord or rest, with its bar signs."""
    moment = view.chords[place].moment
    opens = moment.is_first
    sign, opening = _signs(view, moment.bar) if opens else (" ", "  ")
    number = _bar_number(view, moment.bar) if opens else ""
    section = view.bars[moment.bar - 1].section if opens else ""
    return Column(texts, sign, opening, _closing(view, moment.bar), number, strip, section)


def _bar_number(view: View, bar_number: int) -> str:
    """A bar's number, with the meter where it changes, and at the start where it is not four quarters."""
    before = view.bars[bar_number - 2].meter if bar_number > 1 else COMMON_TIME
    meter = view.bars[bar_number - 1].meter
    return str(bar_number) if meter == before else f"{bar_number} ({meter})"


def _signs(view: View, bar_number: int) -> tuple[str, str]:
    """The bar sign before a bar, from the edges of the two bars that meet there; and as it begins a line of music."""
    opens = ":" * view.bars[bar_number - 1].opens_repeat
    if bar_number == 1:
        return f"|{opens} ", f"|{opens} "
    before = view.bars[bar_number - 2]
    lines = "||" if before.ends_section else "|"
    return f"{':' * before.closes_repeat}{lines}{opens} ", f"|{opens} "


def _closing(view: View, bar_number: int) -> str:
    """The sign behind a bar that ends a line of music."""
    bar = view.bars[bar_number - 1]
    double = bar.ends_section or (bar_number == len(view.bars) and not bar.closes_repeat)
    return ":" * bar.closes_repeat + ("||" if double else "|")


def _systems(columns: Sequence[Column], room: int) -> list[list[Column]]:
    """Columns in systems: whole bars as long as they fit, a bar too wide for the page broken between its chords."""
    systems: list[list[Column]] = []
    for bar in _bars(columns):
        width = sum(column.width for column in bar)
        used = sum(column.width for column in systems[-1]) if systems else room + 1
        if systems and used + width + _CLOSING_WIDTH <= room and not bar[0].section:
            systems[-1] += bar
        elif width + _CLOSING_WIDTH <= room:
            systems.append(bar)
        else:
            systems += _broken(bar, room)
    return systems


def _bars(columns: Sequence[Column]) -> list[list[Column]]:
    bars: list[list[Column]] = []
    for column in columns:
        if column.bar_number:
            bars.append([])
        bars[-1].append(column)
    return bars


def _broken(bar: list[Column], room: int) -> list[list[Column]]:
    parts: list[list[Column]] = [[]]
    for column in bar:
        if parts[-1] and sum(other.width for other in parts[-1]) + column.width + _CLOSING_WIDTH > room:
            parts.append([])
        parts[-1].append(column)
    return parts


def _draw_system(system: list[Column], rows: Sequence[str], labelled: bool) -> list[Line]:
    lines, closing = [_bar_numbers(system, labelled)], system[-1].closing
    for place, row in enumerate(rows):
        cells = [Cell(row.ljust(_LABEL_WIDTH), "label")] if labelled else []
        for column in system:
            cells.append(Cell(column.sign if place == 0 or not column.bar_number else _thin(column.sign), "bar"))
            cells.append(Cell(column.texts[place].ljust(column.width - len(column.sign)), row))
        cells.append(Cell(closing if place == 0 else _thin(closing).rstrip("|") + "|", "bar"))
        lines.append(tuple(cells))
    return lines


def _thin(sign: str) -> str:
    """A bar line below the first row: a plain line at the same place."""
    return sign.replace(":", " ")


def _bar_numbers(system: list[Column], labelled: bool) -> Line:
    text = "bar".ljust(_LABEL_WIDTH) if labelled else ""
    for column in system:
        text += (" " * len(column.sign) + column.bar_number).ljust(column.width)
    return line(Cell(text, "label"))
