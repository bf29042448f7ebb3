"""A progression in one key as systems: bars side by side as the page's width allows, rows below one another."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.chart_writing import NO_CHORD, bracketed
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import printable
from nearhand.notation.notes import write_pitch, write_pitch_class
from nearhand.render.keyboard import Strip, draw_strips, strip_of
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line
from nearhand.theory.progression import COMMON_TIME
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import ChordView, View

ROWS = ("chord", "numeral", "number", "right", "left", "moves")
ROWS_WITHOUT_VOICING = ("chord", "numeral", "number", "notes")
_LABEL_WIDTH = 9
_CLOSING_WIDTH = 3
MOVES_LEGEND = "moves: semitones per voice, = held, + enters"


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


def draw_view(view: View, conventions: Conventions, page: Page) -> list[Line]:
    """Draw all systems of a view, each with its keyboards."""
    rows = ROWS if view.voiced else ROWS_WITHOUT_VOICING
    columns = _columns(view, rows, conventions)
    labelled = page.width >= WIDE_ENOUGH_FOR_LABELS
    room = page.width - (_LABEL_WIDTH if labelled else 0)
    lines: list[Line] = []
    for system in _systems(columns, room):
        if lines:
            lines.append(line())
        if system[0].section:
            lines.append(line(Cell(printable(system[0].section), "title")))
        system[0] = system[0]._replace(sign=system[0].opening)
        lines += _draw_system(system, rows, labelled)
        strips = [column.strip for column in system if column.strip is not None]
        lines += draw_strips(strips, page)
    return lines


def _columns(view: View, rows: Sequence[str], conventions: Conventions) -> list[Column]:
    columns: list[Column] = []
    before: ChordView | None = None
    for chord_view in view.chords:
        moment = chord_view.moment
        bar = view.bars[moment.bar - 1]
        opens = moment.is_first
        sign, opening = _signs(view, moment.bar) if opens else (" ", "  ")
        texts = tuple(_row(row, chord_view, before, conventions) for row in rows)
        strip = None
        if chord_view.voicing is not None:
            left_before = [pitch.midi for pitch in before.voicing.left] if before and before.voicing else []
            strip = strip_of(texts[0], chord_view.voicing, left_before)
        number = _bar_number(view, moment.bar) if opens else ""
        closing = _closing(view, moment.bar)
        columns.append(Column(texts, sign, opening, closing, number, strip, bar.section if opens else ""))
        before = chord_view if chord_view.chord is not None else before
    return columns


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


def _row(row: str, chord_view: ChordView, before: ChordView | None, conventions: Conventions) -> str:
    if chord_view.chord is None or chord_view.analysis is None:
        return NO_CHORD if row == "chord" else ""
    if row == "chord":
        return bracketed(write_chord(chord_view.chord, conventions), chord_view.moment.slot)
    if row == "numeral":
        return chord_view.analysis.numeral(conventions)
    if row == "number":
        return chord_view.analysis.number(conventions)
    if row == "notes":
        tones, bass = chord_view.chord.tones, chord_view.chord.bass
        foreign = "" if bass in tones else "/" + write_pitch_class(bass, conventions.plain)
        return " ".join(write_pitch_class(tone, conventions.plain) for tone in tones) + foreign
    return _hand_row(row, chord_view, before, conventions)


def _hand_row(row: str, chord_view: ChordView, before: ChordView | None, conventions: Conventions) -> str:
    voicing = chord_view.voicing
    if voicing is None:
        return ""
    if row == "right":
        return " ".join(write_pitch(pitch, conventions.plain) for pitch in voicing.right)
    if row == "left":
        names = " ".join(write_pitch(pitch, conventions.plain) for pitch in voicing.left)
        if before is None or before.voicing is None:
            return names
        return f"{names} {_move(voicing.left[0].midi - before.voicing.left[0].midi)}"
    return "" if voicing.motion is None else " ".join(map(_move, voicing.motion.moves))


def _move(semitones: int | None) -> str:
    return "+" if semitones is None else "=" if semitones == 0 else f"{semitones:+d}"


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
