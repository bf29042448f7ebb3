"""Line clichés: one voice walks by steps while the chord stays (common practice, no source)."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from nearhand.harmony.special_chords import sound
from nearhand.theory.chord import RelativeChord

LINE_CLICHE = "line cliche"
_SHORTEST_LINE = 3


def line_cliches(chords: Sequence[RelativeChord]) -> dict[int, tuple[int, ...]]:
    """For each chord within a line cliché, by its place in the row, the whole line in places above the tonic.

    A line cliché is three chords or more of one root whose third stays while a single voice walks by half or whole
    steps in one direction.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> row = [parse_numeral(text, MINOR) for text in ("i", "i(maj7)", "i7", "i(add6)", "V")]
    >>> line_cliches(row)[1]
    (0, 5, -2, 3)
    """
    found: dict[int, tuple[int, ...]] = {}
    start = 0
    while start < len(chords):
        end = start + 1
        while end < len(chords) and _goes_on(chords[end - 1], chords[end]):
            end += 1
        line = _walking_line(chords[start:end]) if end - start >= _SHORTEST_LINE else ()
        found.update(dict.fromkeys(range(start, start + len(line)), line))
        start = end
    return found


def _goes_on(chord: RelativeChord, after: RelativeChord) -> bool:
    same_third = chord.quality.interval(3) == after.quality.interval(3)
    return chord.root == after.root and same_third and chord != after


def _walking_line(chords: Sequence[RelativeChord]) -> tuple[int, ...]:
    """The longest line of steps in one direction from the first chord on; empty when it is shorter than three."""
    rows = [tuple(dict.fromkeys((*chord.places, chord.bass))) for chord in chords]
    best: tuple[int, ...] = ()
    for direction in (-1, 1):
        lines: list[tuple[int, ...]] = [(place,) for place in rows[0]]
        for before, row in pairwise(rows):
            new = [
                (*line, place)
                for line in lines
                for place in row
                if place not in before and sound(direction * (place - line[-1])) in (1, 2)
            ]
            if not new:
                break
            lines = new[:_MOST_LINES]
            best = max((best, *lines), key=len)
    return best if len(best) >= _SHORTEST_LINE and _has_half_steps(best) else ()


_MOST_LINES = 8


def _has_half_steps(line: tuple[int, ...]) -> bool:
    steps = [sound(after - before) for before, after in pairwise(line)]
    return sum(step in (1, 11) for step in steps) >= len(line) - 2
