"""A progression in one key as systems: bars side by side as the page's width allows, rows below one another."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.chart_writing import NO_CHORD
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.notes import write_pitch, write_pitch_class
from nearhand.render.keyboard import Strip, draw_strips, strip_of
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, clean, line
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import ChordView, View

ROWS = ("chord", "numeral", "number", "right", "left", "moves")
ROWS_WITHOUT_VOICING = ("chord", "numeral", "number", "notes")
_LABEL_WIDTH = 9
MOVES_LEGEND = "moves: semitones per voice, = held, + enters"


class Column(NamedTuple):
    """One chord as it will be drawn: its rows' texts, the bar sign before it, its bar's number if it opens it."""

    texts: tuple[str, ...]
    sign: str
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
            lines.append(line(Cell(clean(system[0].section), "title")))
        lines += _draw_system(system, rows, labelled, _closing(view, system[-1] is columns[-1]))
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
        sign = _sign(view, moment.bar) if opens else " "
        texts = tuple(_row(row, chord_view, before, conventions) for row in rows)
        strip = None
        if chord_view.voicing is not None:
            left_before = [pitch.midi for pitch in before.voicing.left] if before and before.voicing else []
            strip = strip_of(texts[0], chord_view.voicing, left_before)
        number = str(moment.bar) if opens else ""
        columns.append(Column(texts, sign, number, strip, bar.section if opens else ""))
        before = chord_view if chord_view.chord is not None else before
    return columns


def _sign(view: View, bar_number: int) -> str:
    """The bar sign before a bar, from the edges of the two bars that meet there."""
    opens = view.bars[bar_number - 1].opens_repeat
    before = view.bars[bar_number - 2] if bar_number > 1 else None
    closes = before is not None and before.closes_repeat
    double = before is not None and before.ends_section
    return (":" if closes else "") + ("||" if double and not closes else "|") + (":" if opens else "") + " "


def _closing(view: View, is_last: bool) -> str:
    if not is_last:
        return "|"
    return ":|" if view.bars[-1].closes_repeat else "||"


def _row(row: str, chord_view: ChordView, before: ChordView | None, conventions: Conventions) -> str:
    if chord_view.chord is None or chord_view.analysis is None:
        return NO_CHORD if row == "chord" else ""
    if row == "chord":
        return write_chord(chord_view.chord, conventions)
    if row == "numeral":
        return chord_view.analysis.numeral(conventions)
    if row == "number":
        return chord_view.analysis.number(conventions)
    if row == "notes":
        return " ".join(write_pitch_class(tone, conventions.plain) for tone in chord_view.chord.tones)
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
        if systems and used + width + 2 <= room and not bar[0].section:
            systems[-1] += bar
        elif width + 2 <= room:
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
        if parts[-1] and sum(other.width for other in parts[-1]) + column.width + 2 > room:
            parts.append([])
        parts[-1].append(column)
    return parts


def _draw_system(system: list[Column], rows: Sequence[str], labelled: bool, closing: str) -> list[Line]:
    lines = [_bar_numbers(system, labelled)]
    for place, row in enumerate(rows):
        cells = [Cell(row.ljust(_LABEL_WIDTH), "label")] if labelled else []
        for column in system:
            cells.append(Cell(column.sign if place == 0 or not column.bar_number else _thin(column.sign), "bar"))
            cells.append(Cell(column.texts[place].ljust(column.width - len(column.sign)), row))
        cells.append(Cell(closing if place == 0 else "|", "bar"))
        lines.append(tuple(cells))
    return lines


def _thin(sign: str) -> str:
    """A bar line below the first row: a plain line at the same place."""
    return "".join("|" if character == "|" else " " for character in sign)


def _bar_numbers(system: list[Column], labelled: bool) -> Line:
    text = "bar".ljust(_LABEL_WIDTH) if labelled else ""
    for column in system:
        text += (" " * len(column.sign) + column.bar_number).ljust(column.width)
    return line(Cell(text, "label"))
