"""The chords of a scale: thirds stacked on each of its degrees."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.theory.chord import RelativeChord
from nearhand.theory.quality import Quality

TRIAD, SEVENTH_CHORD = 3, 4
"""Tones of a chord in thirds."""
_NUMBERS = (1, 3, 5, 7)


def chord_on(scale: Sequence[int], number: int, size: int = TRIAD) -> RelativeChord:
    """The chord of ``size`` tones on degree ``number`` (from 1, counted round) of a scale, in root position.

    ``scale`` holds degrees 1 to 7 in fifths above the tonic.

    >>> from nearhand.theory.mode import MODES
    >>> chord_on(MODES["dorian"].degrees, 7, SEVENTH_CHORD).places          # Bb D F A on C
    (-2, 2, -1, 3)
    """
    places = [scale[(number - 1 + 2 * third) % 7] for third in range(size)]
    root = places[0]
    return RelativeChord(root, Quality(_NUMBERS[:size], tuple(place - root for place in places)), root)


def chords_of(scale: Sequence[int], size: int = TRIAD) -> tuple[RelativeChord, ...]:
    """The seven chords of a scale from its first degree on."""
    return tuple(chord_on(scale, number, size) for number in range(1, 8))
