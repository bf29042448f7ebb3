"""A spelled pitch class is one place on the line of fifths.

... B♭ -2, F -1, C 0, G 1, D 2, A 3, E 4, B 5, F♯ 6 ...: each sharp adds seven places, each flat takes seven away.
Concept: D. Temperley, *The Cognition of Basic Musical Structures*, 2001, ch. 5.
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.record import NamedTuple

LETTERS_IN_FIFTHS = "FCGDAEB"
BLACK_KEYS = frozenset((1, 3, 6, 8, 10))
"""Semitones above C of the black keys."""


def accidental(alteration: int) -> str:
    """Write an alteration in semitones in plain characters.

    >>> accidental(-2), accidental(0), accidental(1)
    ('bb', '', '#')
    """
    return "#" * alteration if alteration >= 0 else "b" * -alteration


class PitchClass(NamedTuple):
    """A spelled pitch class: ``fifths`` steps from C on the line of fifths.

    Adding or taking away whole numbers of fifths moves it, and the spelling follows.

    >>> str(PitchClass(6)), str(PitchClass(-6))
    ('F#', 'Gb')
    """

    fifths: int

    @property
    def letter(self) -> str:
        """The letter name, ``A`` to ``G``."""
        return LETTERS_IN_FIFTHS[(self.fifths + 1) % 7]

    @property
    def alteration(self) -> int:
        """Semitones by which the accidental alters the letter: sharps above zero, flats below."""
        return (self.fifths + 1) // 7

    @property
    def semitones(self) -> int:
        """Semitones above C, 0 to 11: equal for enharmonic names."""
        return self.fifths * 7 % 12

    @property
    def step(self) -> int:
        """Places of the letter above C in the alphabet of the staff: C 0, D 1 ... B 6."""
        return self.fifths * 4 % 7

    def up(self, fifths: int) -> PitchClass:
        """Move along the line of fifths; the spelling comes out right by itself.

        >>> str(PitchClass(4).up(4))       # a major third (four fifths) above E
        'G#'
        """
        return pitch_class(self.fifths + fifths)

    def __str__(self) -> str:
        return self.letter + accidental(self.alteration)


@lru_cache(maxsize=256)
def pitch_class(fifths: int) -> PitchClass:
    """The pitch class at a place on the line of fifths, made once and kept.

    >>> [str(pitch_class(place)) for place in range(-2, 3)]
    ['Bb', 'F', 'C', 'G', 'D']
    """
    return PitchClass(fifths)


def nearest_on_line(pitch_class_: PitchClass, centre: int) -> PitchClass:
    """The enharmonic name that lies nearest to a place on the line of fifths (the flatter one of two as near).

    >>> str(nearest_on_line(PitchClass(6), -4))    # F# among flat keys
    'Gb'
    """
    offset = (pitch_class_.fifths - centre + 6) % 12 - 6
    return pitch_class(centre + offset)
