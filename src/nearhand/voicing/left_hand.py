"""What the left hand plays below the upper notes: the bass as written, the root, or a pattern on it."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.errors import InputError
from nearhand.theory.chord import Chord
from nearhand.theory.quality import Quality
from nearhand.voicing.families import FREE
from nearhand.voicing.hands import LEFT_HAND, Register, is_clear, lies_in_hand

PATTERNS = {
    "bass": "the bass as written, a slash bass included",
    "root": "the root, also under a slash bass",
    "octave": "the bass and its octave",
    "fifth": "root, fifth and octave; over a slash bass its octave alone",
    "tenth": "the bass and the third a tenth above; over a slash bass its octave",
    "none": "nothing, because a bass player has the bass",
}
"""Patterns of the left hand (common practice, no source)."""
ON_ROOT = "root"
SINGLE_NOTES = ("bass", ON_ROOT)
SINGLE_OR_NO_NOTES = (*SINGLE_NOTES, "none")
_OCTAVE = 12
_WIDEST = {"octave": 12, "fifth": 12, "tenth": 16}
"""Semitones of the wider patterns, at the most: a tenth may be major."""
_REACHED_REGISTER = Register(36, 58, 47)
"""C2 to A#3: a bass that lies in the hand together with other notes."""
_PATTERN_REGISTER = Register(36, 52, 44)
"""C2 to E3 for the lowest note of a pattern."""


def bass_register(bass: str, pattern: str) -> Register:
    """Where the bass of a family may lie, by how the family treats it and by the pattern."""
    if bass != FREE:
        return _REACHED_REGISTER
    return LEFT_HAND if pattern in SINGLE_NOTES else _PATTERN_REGISTER


def left_patterns(chord: Chord, pattern: str, register: Register, span: int) -> tuple[tuple[int, ...], ...]:
    """All placings of a pattern whose lowest note lies in a register, as ascending MIDI numbers.

    Raises InputError where the pattern is wider than the hand.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> left_patterns(parse_chord("C"), "fifth", Register(36, 50, 44), span=14), left_patterns(
    ...     parse_chord("C/E"), "fifth", Register(36, 50, 44), span=14)
    (((48, 55, 60),), ((40, 52),))
    """
    if pattern == "none":
        return ((),)
    on_root = pattern == ON_ROOT or chord.bass == chord.root
    lowest = chord.root if pattern == ON_ROOT else chord.bass
    heights = _heights(chord.quality, pattern, on_root)
    if heights[-1] > span:
        widest = _WIDEST[pattern]
        raise InputError(
            f"the left hand's pattern {pattern} is up to {widest} semitones wide, and a hand spans {span}",
            hint=f"choose another pattern; a span of {widest} would do, if your hand reaches that without strain",
        )
    return _placed(lowest.semitones, heights, register, span)


def _heights(quality: Quality, pattern: str, on_root: bool) -> tuple[int, ...]:
    """The pattern's notes in semitones above its lowest."""
    if pattern in SINGLE_NOTES:
        return (0,)
    member = {"fifth": quality.interval(5), "tenth": quality.interval(3)}.get(pattern)
    if member is None or not on_root:
        return (0, _OCTAVE)
    height = member * 7 % 12
    return (0, height, _OCTAVE) if pattern == "fifth" else (0, height + _OCTAVE)


@lru_cache(maxsize=4096)
def _placed(lowest: int, heights: tuple[int, ...], register: Register, span: int) -> tuple[tuple[int, ...], ...]:
    found = []
    for bottom in range(register.low + (lowest - register.low) % 12, register.high + 1, 12):
        notes = tuple(bottom + height for height in heights)
        if is_clear(notes) and lies_in_hand(notes, span):
            found.append(notes)
    return tuple(found)
