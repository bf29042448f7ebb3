"""What two hands can do: registers, the span of a hand, and how low an interval still sounds clear."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.theory.record import NamedTuple


class Register(NamedTuple):
    """Where notes may lie: lowest and highest MIDI number, and the centre to keep near when nothing else decides."""

    low: int
    high: int
    centre: int


RIGHT_HAND = Register(55, 76, 65)
"""G3 to E5 around F4 (common practice, no source)."""
LEFT_HAND = Register(36, 54, 46)
"""C2 to F#3: one bass note below the right hand, with room for a bass that walks by step (common practice)."""

SPAN = 14
"""Semitones that a hand spans: an octave and a whole tone. Smaller hands ask for less (R. Boyle and others, "Pianist
hand spans", 2015: most women's hands do not reach a tenth)."""
LEAST_SPAN = 7
"""A fifth: a hand that spans less plays no chord."""
FINGERS = 5

LOW_INTERVAL_LIMITS = {1: 52, 2: 51, 3: 48, 4: 47, 5: 45, 6: 35, 7: 37, 8: 41, 9: 41, 10: 41, 11: 41}
"""Interval in semitones to the lowest MIDI number its lower note may have; an octave and more have no limit.

Source: a retailer's glossary, "Low Interval Limit", second-hand, raised by an octave name to C4 as middle C. Lists
differ by a tone or more (D. Lowell and K. Pullig, *Arranging for Large Jazz Ensemble*, has the same minor
third, from memory).
"""


def is_clear(notes: Sequence[int]) -> bool:
    """Whether no two neighbours of ascending MIDI numbers form an interval that is muddy so low.

    >>> is_clear((48, 51, 55)), is_clear((36, 40, 43))      # C3 Eb3 G3; C2 E2 G2
    (True, False)
    """
    for place in range(len(notes) - 1):
        low = notes[place]
        if low < LOW_INTERVAL_LIMITS.get(notes[place + 1] - low, 0):
            return False
    return True


def lies_in_hand(notes: Sequence[int], span: int = SPAN) -> bool:
    """Whether one hand plays ascending MIDI numbers: within its span, one finger a note.

    >>> lies_in_hand((60, 64, 67, 74)), lies_in_hand((60, 76))
    (True, False)
    """
    return not notes or (notes[-1] - notes[0] <= span and len(notes) <= FINGERS)
