"""Columns of texts as systems: bars side by side as the page's width allows, rows below one another."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.render.keyboard import Strip, draw_strips
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line, wrapped
from nearhand.theory.progression import COMMON_TIME, Bar
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import View

_LABEL_WIDTH = 9
CLOSING_WIDTH = 3


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


class Row(NamedTuple):
    """A row of texts: its label, and the role of its texts."""

    label: str
    role: str


def draw_systems(
    columns: Sequence[Column], rows: Sequence[str], page: Page, labels: Sequence[str] | None = None
) -> list[Line]:
    """Draw all systems, each with the keyboards of its chords; rows that are empty everywhere are left out.

    ``rows`` are the roles of the columns' texts, and their labels, which narrow pages leave out. Other ``labels`` are
    always drawn.
    """
    kept = [place for place in range(len(rows)) if place == 0 or any(column.texts[place] for column in columns)]
    columns = [column._replace(texts=tuple(column.texts[place] for place in kept)) for column in columns]
    width = label_width(page, labels)
    kept_rows = [Row((rows if labels is None else labels)[place], rows[place]) for place in kept]
    room = page.width - width
    lines: list[Line] = []
    for system in _systems(columns, room):
        if lines:
            lines.append(line())
        if system[0].section:
            lines += wrapped(system[0].section, page.width, role="title")
        system[0] = system[0]._replace(sign=system[0].opening)
        lines += _draw_system(system, kept_rows, width)
        strips = [column.strip for column in system if column.strip is not None]
        lines += draw_strips(strips, page)
    return lines


def label_width(page: Page, labels: Sequence[str] | None = None) -> int:
    """Columns that the labels of rows take, with the blank behind them."""
    if labels is not None:
        return max(map(len, labels)) + 1
    return _LABEL_WIDTH if page.width >= WIDE_ENOUGH_FOR_LABELS else 0


def column_of(view: View, place: int, texts: tuple[str, ...], strip: Strip | None = None) -> Column:
    """The column of a view's chord or rest, with its bar signs."""
    moment = view.chords[place].moment
    return column_in(view.bars, moment.bar, moment.is_first, texts, strip)


def column_in(
    bars: Sequence[Bar], bar_number: int, opens: bool, texts: tuple[str, ...], strip: Strip | None = None
) -> Column:
    """The column of texts in a bar (numbered from 1), with its bar signs; ``opens`` when it is the first there."""
    sign, opening = _signs(bars, bar_number) if opens else (" ", "  ")
    number = _bar_number(bars, bar_number) if opens else ""
    section = bars[bar_number - 1].section if opens else ""
    return Column(texts, sign, opening, _closing(bars, bar_number), number, strip, section)


def _bar_number(bars: Sequence[Bar], bar_number: int) -> str:
    """A bar's number, with the meter where it changes, and at the start where it is not four quarters."""
    before = bars[bar_number - 2].meter if bar_number > 1 else COMMON_TIME
    meter = bars[bar_number - 1].meter
    return str(bar_number) if meter == before else f"{bar_number} ({meter})"


def _signs(bars: Sequence[Bar], bar_number: int) -> tuple[str, str]:
    """The bar sign before a bar, from the edges of the two bars that meet there; and as it begins a line of music."""
    opens = ":" * bars[bar_number - 1].opens_repeat
    if bar_number == 1:
        return f"|{opens} ", f"|{opens} "
    before = bars[bar_number - 2]
    lines = "||" if before.ends_section else "|"
    return f"{':' * before.closes_repeat}{lines}{opens} ", f"|{opens} "


def _closing(bars: Sequence[Bar], bar_number: int) -> str:
    """The sign behind a bar that ends a line of music."""
    bar = bars[bar_number - 1]
    double = bar.ends_section or (bar_number == len(bars) and not bar.closes_repeat)
    return ":" * bar.closes_repeat + ("||" if double else "|")


def _systems(columns: Sequence[Column], room: int) -> list[list[Column]]:
    """Columns in systems: whole bars as long as they fit, a bar too wide for the page broken between its chords.

    Where a bar is broken there is no bar line.
    """
    systems: list[list[Column]] = []
    for bar in _bars(columns):
        width = sum(column.width for column in bar)
        used = sum(column.width for column in systems[-1]) if systems else room + 1
        if systems and used + width + CLOSING_WIDTH <= room and not bar[0].section:
            systems[-1] += bar
        elif width + CLOSING_WIDTH <= room:
            systems.append(bar)
        else:
            systems += _broken(bar, room)
    return systems


def _bars(columns: Sequence[Column]) -> list[list[Column]]:
    bars: list[list[Column]] = []
    for column in columns:
        if column.bar_number or not bars:
            bars.append([])
        bars[-1].append(column)
    return bars


def _broken(bar: list[Column], room: int) -> list[list[Column]]:
    parts: list[list[Column]] = [[]]
    for column in bar:
        used = sum(other.width for other in parts[-1]) + (len(parts) > 1)  # behind a break, a sign is a blank wider
        if parts[-1] and used + column.width + CLOSING_WIDTH > room:
            parts.append([])
        parts[-1].append(column)
    return [*([*part[:-1], part[-1]._replace(closing="")] for part in parts[:-1]), parts[-1]]


def _draw_system(system: list[Column], rows: Sequence[Row], label_width: int) -> list[Line]:
    lines, closing = [_bar_numbers(system, label_width)], system[-1].closing
    for place, row in enumerate(rows):
        cells = [Cell(row.label.ljust(label_width), "label")] if label_width else []
        for column in system:
            cells.append(Cell(column.sign if place == 0 or not column.bar_number else _thin(column.sign), "bar"))
            cells.append(Cell(column.texts[place].ljust(column.width - len(column.sign)), row.role))
        cells.append(Cell(closing if place == 0 or not closing else _thin(closing).rstrip("|") + "|", "bar"))
        lines.append(tuple(cells))
    return lines


def _thin(sign: str) -> str:
    """A bar line below the first row: a plain line at the same place."""
    return sign.replace(":", " ")


def _bar_numbers(system: list[Column], label_width: int) -> Line:
    text = "bar".ljust(label_width) if label_width else ""
    for column in system:
        text += (" " * len(column.sign) + column.bar_number).ljust(column.width)
    return line(Cell(text, "label"))
