"""The keyboard as a strip of one character a key, one strip a chord: ``L`` left hand, ``R`` right hand, ``=`` held."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from nearhand.render.page import Cell, Line, Page, line
from nearhand.theory.pitch_class import BLACK_KEYS
from nearhand.theory.record import NamedTuple
from nearhand.voicing.voice import Voicing

_KEYS = {False: ("▁", "▀"), True: ("_", "'")}
"""White and black key, in signs and in plain characters."""
_NARROW = 3
"""Semitones between two marks that are not worth a cut."""
LEGEND = "keys: L left, R right, = held"


class Strip(NamedTuple):
    """What a strip marks: MIDI number to (letter, role)."""

    label: str
    marks: dict[int, tuple[str, str]]


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
    return Strip(label, marks)


def draw_strips(strips: Sequence[Strip], page: Page) -> list[Line]:
    """Strips below one another under a line of octave marks, cut to the keys they need.

    Where the page is too narrow, keys between those that are played are left out; then the labels stand above their
    strips.
    """
    if not strips:
        return []
    label_width = max(len(strip.label) for strip in strips) + 1
    keys = _whole_range(strips)
    if label_width + len(keys) > page.width:
        keys = _without_gaps(strips, page.width)
    above = label_width + len(keys) > page.width
    indent = 0 if above else label_width
    lines = [line(Cell(" " * indent + _octave_marks(keys, page.width - indent, page.name_of_c), "label"))]
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


def _without_gaps(strips: Sequence[Strip], room: int) -> list[int | None]:
    """The keys from the lowest mark to the highest, the widest gaps cut out until they fit; None stands for a cut."""
    marked = sorted({note for strip in strips for note in strip.marks})
    gaps = sorted(pairwise(marked), key=lambda gap: (gap[0] - gap[1], gap))
    cut: set[tuple[int, int]] = set()
    for gap in gaps:
        if cut and len(_kept(marked, cut)) <= room:
            break
        if gap[1] - gap[0] > _NARROW:
            cut.add(gap)
    return _kept(marked, cut)


def _kept(marked: Sequence[int], cut: set[tuple[int, int]]) -> list[int | None]:
    keys: list[int | None] = [marked[0]]
    for low, high in pairwise(marked):
        keys += [None, high] if (low, high) in cut else [*range(low + 1, high + 1)]
    return keys


def _octave_marks(keys: Sequence[int | None], room: int, name_of_c: str) -> str:
    """Names of the Cs above their keys, as far as the room goes: C4 is middle C."""
    marks = ""
    for column, note in enumerate(keys):
        name = f"{name_of_c}{note // 12 - 1}" if note is not None and note % 12 == 0 else ""
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
            cells.append(Cell(black, "black") if note % 12 in BLACK_KEYS else Cell(white, "white"))
    return cells
