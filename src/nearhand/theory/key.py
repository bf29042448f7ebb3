"""Keys: a tonic and a mode; signatures, scales, and the circle of fifths both ways."""

from __future__ import annotations

from nearhand.theory.mode import MAJOR, MINOR, MINOR_FORMS, Mode
from nearhand.theory.pitch import Pitch, pitch_at
from nearhand.theory.pitch_class import PitchClass, nearest_on_line, pitch_class
from nearhand.theory.record import NamedTuple

SHARP_ORDER = "FCGDAEB"
_MIDDLE_OF_SCALE = 2
"""Fifths from the tonic of a major key to the middle of its scale: D in C."""


class Key(NamedTuple):
    """A key: the pitch class of its tonic and its mode.

    >>> str(Key(PitchClass(-2), MINOR)), Key(PitchClass(-2), MINOR).signature
    ('Bb minor', -5)
    """

    tonic: PitchClass
    mode: Mode

    @property
    def signature(self) -> int:
        """Accidentals of the key signature: sharps above zero, flats below."""
        return self.tonic.fifths + self.mode.brightness

    @property
    def altered_letters(self) -> tuple[PitchClass, ...]:
        """The altered notes of the signature in their written order; from the eighth on letters are altered twice.

        >>> [str(note) for note in Key(PitchClass(-3), MAJOR).altered_letters]
        ['Bb', 'Eb', 'Ab']
        """
        if self.signature >= 0:
            places = range(6, 6 + self.signature)
            return tuple(pitch_class(place) for place in places if place + 7 not in places)
        places = range(-1 + self.signature, -1)
        return tuple(pitch_class(place) for place in reversed(places) if place - 7 not in places)

    def degree(self, number: int) -> PitchClass:
        """Scale degree 1 to 7 of the mode's own scale (natural form in minor)."""
        return self.tonic.up(self.mode.degrees[number - 1])

    def scale(self, form: str = "natural") -> tuple[PitchClass, ...]:
        """The seven notes from the tonic up; ``form`` (natural, harmonic, melodic) matters in minor only.

        Raises KeyError for another form.

        >>> [str(note) for note in Key(PitchClass(3), MINOR).scale("harmonic")]
        ['A', 'B', 'C', 'D', 'E', 'F', 'G#']
        """
        degrees = MINOR_FORMS[form] if self.mode.is_minor else self.mode.degrees
        return tuple(self.tonic.up(degree) for degree in degrees)

    @property
    def relative(self) -> Key:
        """The major or minor key of the same signature."""
        mode = MAJOR if self.mode.has_minor_third else MINOR
        return Key(self.tonic.up(self.mode.brightness - mode.brightness), mode)

    @property
    def parallel(self) -> Key:
        """The minor key on the tonic of a major one, and the reverse."""
        return Key(self.tonic, MAJOR if self.mode.has_minor_third else MINOR)

    def moved(self, fifths: int) -> Key:
        """The key ``fifths`` up the circle, spelled straight on along the line."""
        return Key(self.tonic.up(fifths), self.mode)

    def __str__(self) -> str:
        return f"{self.tonic} {self.mode.name}"


C_MAJOR = Key(pitch_class(0), MAJOR)
"""The key of the white keys, for what is read or named alike in every key."""


def pitch_in(key: Key, number: int) -> Pitch:
    """A MIDI number as the note that lies nearest to a key's scale on the line of fifths.

    >>> str(pitch_in(Key(PitchClass(-3), MAJOR), 63)), str(pitch_in(Key(PitchClass(4), MAJOR), 63))
    ('Eb4', 'D#4')
    """
    return pitch_at(nearest_on_line(pitch_class(number * 7 % 12), key.signature + _MIDDLE_OF_SCALE), number)


def spellings(key: Key) -> tuple[Key, ...]:
    """The enharmonic names of a key with fewest accidentals in the signature: one, or two where six meets six.

    >>> [str(name) for name in spellings(Key(PitchClass(11), MAJOR))]       # E# major
    ['F major']
    >>> [str(name) for name in spellings(Key(PitchClass(6), MAJOR))]
    ['Gb major', 'F# major']
    """
    flatter = Key(nearest_on_line(key.tonic, -key.mode.brightness), key.mode)
    return (flatter, flatter.moved(12)) if flatter.signature == -6 else (flatter,)


def nearest_spelling(key: Key, come_from: Key) -> Key:
    """One of ``spellings``: of two, that on the side (sharps or flats) one comes from, flats if from neither.

    >>> str(nearest_spelling(Key(PitchClass(6), MAJOR), come_from=Key(PitchClass(5), MAJOR)))
    'F# major'
    """
    names = spellings(key)
    return names[-1] if come_from.signature > 0 else names[0]


def circle(start: Key, falling: bool = True) -> tuple[Key, ...]:
    """The twelve keys of one mode from ``start``, by falling fifths (or rising), each in its nearest spelling.

    The first key keeps the name it came with; the side of the key before decides between two equal names.

    >>> [str(key.tonic) for key in circle(Key(PitchClass(0), MAJOR))]
    ['C', 'F', 'Bb', 'Eb', 'Ab', 'Db', 'Gb', 'B', 'E', 'A', 'D', 'G']
    """
    keys = [start]
    for _ in range(11):
        keys.append(nearest_spelling(keys[-1].moved(-1 if falling else 1), keys[-1]))
    return tuple(keys)
