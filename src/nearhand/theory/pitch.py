"""Spelled pitches: a pitch class in an octave, with its MIDI number and its frequency."""

from __future__ import annotations

from nearhand.theory.interval import Interval
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple

A4_MIDI = 69
_NATURAL_SEMITONES = (0, 2, 4, 5, 7, 9, 11)


class Pitch(NamedTuple):
    """A spelled pitch. ``octave`` counts by letter, middle C is C4; so B♯3 sounds as C4.

    >>> str(Pitch(PitchClass(-2), 4)), Pitch(PitchClass(-2), 4).midi
    ('Bb4', 70)
    """

    pitch_class: PitchClass
    octave: int

    @property
    def midi(self) -> int:
        """The MIDI number: 60 is middle C.

        >>> Pitch(PitchClass(12), 3).midi, Pitch(PitchClass(-7), 4).midi     # B#3, Cb4
        (60, 59)
        """
        natural = _NATURAL_SEMITONES[self.pitch_class.step]
        return 12 * (self.octave + 1) + natural + self.pitch_class.alteration

    def frequency_hz(self, a4_hz: float = 440.0) -> float:
        """Frequency in hertz in equal temperament; ISO 16:1975 sets A4 to 440 Hz.

        >>> round(Pitch(PitchClass(0), 4).frequency_hz(), 4)
        261.6256
        """
        return float(a4_hz * 2 ** ((self.midi - A4_MIDI) / 12))

    def up(self, interval: Interval) -> Pitch:
        """Move by a spelled interval (a downward one moves down).

        >>> str(Pitch(PitchClass(4), 4).up(Interval(4, -2)))      # a major third above E4
        'G#4'
        """
        octave = (7 * self.octave + self.pitch_class.step + interval.steps) // 7
        return Pitch(self.pitch_class.up(interval.fifths), octave)

    def __str__(self) -> str:
        return f"{self.pitch_class}{self.octave}"


def interval_between(low: Pitch, high: Pitch) -> Interval:
    """The spelled interval that leads from one pitch to another (downward where the other is lower).

    >>> interval_between(Pitch(PitchClass(0), 4), Pitch(PitchClass(4), 4)).name      # C4 to E4
    'major third'
    """
    fifths = high.pitch_class.fifths - low.pitch_class.fifths
    steps = 7 * (high.octave - low.octave) + high.pitch_class.step - low.pitch_class.step
    return Interval(fifths, (steps - 4 * fifths) // 7)


def pitch_at(spelling: PitchClass, midi: int) -> Pitch:
    """The pitch of a given spelling at a MIDI number.

    Raises ValueError when the spelling does not sound at that number.

    >>> str(pitch_at(PitchClass(-7), 59)), str(pitch_at(PitchClass(12), 60))
    ('Cb4', 'B#3')
    """
    octave, offset = divmod(midi - spelling.alteration - _NATURAL_SEMITONES[spelling.step], 12)
    if offset:
        raise ValueError(f"{spelling} does not sound at MIDI number {midi}")
    return Pitch(spelling, octave - 1)
