"""The keyboard as a strip of one character a key, one strip a chord: ``L`` left hand, ``R`` right hand, ``=`` held."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.render.page import Cell, Line, Page, line
from nearhand.theory.record import NamedTuple
from nearhand.voicing.voice import Voicing

_BLACK = (1, 3, 6, 8, 10)
_KEYS = {False: ("▁", "▀"), True: ("_", "'")}
"""White and black key, in signs and in plain characters."""
LEGEND = "keys: L left, R right, = held"


class Strip(NamedTuple):
    """What a strip marks: MIDI number to (letter, role)."""

    label: str
    marks: dict[int, tuple[str, str]]
    split: int


def strip_of(label: str, voicing: Voicing, left_before: Sequence[int]) -> Strip:
    """The marks of one voicing; ``left_before`` are the left hand's notes of the chord before, as MIDI numbers."""
    marks = {}
    for pitch in voicing.left:
        marks[pitch.midi] = ("=", "held") if pitch.midi in left_before else ("L", "left")
    for pitch in voicing.right:
        marks[pitch.midi] = ("R", "right")
    if voicing.motion:
        for pitch, is_held in zip(voicing.upper, voicing.motion.held, strict=True):
            if is_held:
                marks[pitch.midi] = ("=", "held")
    return Strip(label, marks, voicing.right[0].midi if voicing.right else voicing.left[-1].midi + 1)


def draw_strips(strips: Sequence[Strip], page: Page) -> list[Line]:
    """Strips below one another under a line of octave marks, cut to the keys they need.

    Where the page is too narrow, the keys between the hands are left out; then the labels stand above their strips.
    """
    if not strips:
        return []
    label_width = max(len(strip.label) for strip in strips) + 1
    keys = _whole_range(strips)
    if label_width + len(keys) > page.width:
        keys = _both_hands(strips)
    above = label_width + len(keys) > page.width
    indent = 0 if above else label_width
    lines = [line(Cell(" " * indent + _octave_marks(keys, page.width - indent), "label"))]
    for strip in strips:
        cells = _draw(strip, keys, page)
        if above:
            lines += [line(Cell(strip.label, "chord")), line(*cells)]
        else:
            lines.append(line(Cell(strip.label.ljust(label_width), "chord"), *cells))
    return lines


def _whole_range(strips: Sequence[Strip]) -> list[int | None]:
    notes = [note for strip in strips for note in strip.marks]
    return [*range(min(notes) - 1, max(notes) + 2)]


def _both_hands(strips: Sequence[Strip]) -> list[int | None]:
    """Only the keys that the hands use; None stands for the cut between them."""
    left = [note for strip in strips for note in strip.marks if note < strip.split]
    right = [note for strip in strips for note in strip.marks if note >= strip.split]
    if not left or not right:
        return [*range(min(left + right), max(left + right) + 1)]
    return [*range(min(left), max(left) + 1), None, *range(min(right), max(right) + 1)]


def _octave_marks(keys: Sequence[int | None], room: int) -> str:
    """Names of the Cs above their keys, as far as the room goes: C4 is middle C."""
    marks = ""
    for column, note in enumerate(keys):
        name = f"C{note // 12 - 1}" if note is not None and note % 12 == 0 else ""
        if name and column + len(name) <= room:
            marks = marks.ljust(column) + name
    return marks


def _draw(strip: Strip, keys: Sequence[int | None], page: Page) -> list[Cell]:
    white, black = _KEYS[page.plain]
    cells = []
    for note in keys:
        if note is None:
            cells.append(Cell(" "))
        elif note in strip.marks:
            cells.append(Cell(*strip.marks[note]))
        else:
            cells.append(Cell(black, "black") if note % 12 in _BLACK else Cell(white, "white"))
    return cells
