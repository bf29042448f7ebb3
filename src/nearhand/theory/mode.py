"""Modes as seven neighbouring places on the line of fifths.

A major scale is the seven places from one below its tonic to five above. Every church mode is the same window, moved:
``brightness`` says by how many places (Lydian +1, major 0 ... Locrian -5). Degrees of a scale are read off the window.
Scale forms: Open Music Theory, "Scales"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, table of scales.
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.record import NamedTuple

MAJOR_DEGREES = (0, 2, 4, -1, 1, 3, 5)
"""Degrees 1 to 7 of a major scale in fifths above the tonic."""


class Mode(NamedTuple):
    """A mode: its name, and how many places its window lies above that of major on the line of fifths."""

    name: str
    brightness: int

    @property
    def degrees(self) -> tuple[int, ...]:
        """Degrees 1 to 7 in fifths above the tonic.

        >>> MODES["minor"].degrees
        (0, 2, -3, -1, 1, -4, -2)
        """
        return _degrees(self.brightness)

    @property
    def has_minor_third(self) -> bool:
        """Whether the tonic chord is minor (or, in Locrian, diminished)."""
        return self.brightness <= -2

    @property
    def is_minor(self) -> bool:
        """Whether this is the minor mode proper, whose sixth and seventh degree have two forms."""
        return self.name == "minor"


@lru_cache
def _degrees(brightness: int) -> tuple[int, ...]:
    low = brightness - 1
    return tuple(low + (degree - low) % 7 for degree in MAJOR_DEGREES)


MODES = {
    mode.name: mode
    for mode in (
        Mode("major", 0),
        Mode("minor", -3),
        Mode("ionian", 0),
        Mode("dorian", -2),
        Mode("phrygian", -4),
        Mode("lydian", 1),
        Mode("mixolydian", -1),
        Mode("aeolian", -3),
        Mode("locrian", -5),
    )
}
MAJOR = MODES["major"]
MINOR = MODES["minor"]

SUPERTONIC, SUBDOMINANT, DOMINANT = 2, -1, 1
LOWERED_SIXTH, RAISED_SIXTH, RAISED_FOURTH = -4, 3, 6
SUBTONIC, RAISED_SEVENTH = -2, 5
LEADING_TONE = RAISED_SEVENTH
"""Degrees by name, in fifths above the tonic."""
MINOR_FORMS = {
    "natural": MINOR.degrees,
    "harmonic": (*MINOR.degrees[:6], RAISED_SEVENTH),
    "melodic": (*MINOR.degrees[:5], RAISED_SIXTH, RAISED_SEVENTH),
}
"""The three forms of minor (melodic: rising), degrees 1 to 7 in fifths above the tonic."""
