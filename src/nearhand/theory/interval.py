"""Spelled intervals: two whole numbers, fifths and octaves, hold size, name and spelling at once."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple

_NUMBER_NAMES = ("unison", "second", "third", "fourth", "fifth", "sixth", "seventh", "octave")


class Interval(NamedTuple):
    """A directed spelled interval: ``fifths`` along the line of fifths and ``octaves`` on top.

    >>> minor_third, major_third = Interval(-3, 2), Interval(4, -2)
    >>> minor_third + major_third == Interval(1, 0)          # together a perfect fifth
    True
    """

    fifths: int
    octaves: int

    @property
    def semitones(self) -> int:
        """Signed size in semitones."""
        return 7 * self.fifths + 12 * self.octaves

    @property
    def steps(self) -> int:
        """Signed size in steps of the staff: unison 0, second 1, octave 7."""
        return 4 * self.fifths + 7 * self.octaves

    def __add__(self, other: Interval) -> Interval:  # type: ignore[override]  # intervals add up, tuples do not
        return Interval(self.fifths + other.fifths, self.octaves + other.octaves)

    def __neg__(self) -> Interval:
        return Interval(-self.fifths, -self.octaves)

    @property
    def is_downward(self) -> bool:
        """Whether it leads down: by its steps first, by its semitones when it has none."""
        return (self.steps, self.semitones) < (0, 0)

    @property
    def name(self) -> str:
        """The English name without direction, compound intervals by their simple part and octaves.

        >>> Interval(-3, 2).name, Interval(9, -5).name, Interval(-9, 6).name
        ('minor third', 'augmented second', 'diminished seventh')
        """
        if self.is_downward:
            return (-self).name
        octaves, step = divmod(self.steps, 7)
        if octaves and not step:
            octaves, step = octaves - 1, 7
        simple = f"{interval_class_quality(self.fifths)} {_NUMBER_NAMES[step]}"
        return simple + (f" and {octaves} octave{'s' * (octaves > 1)}" if octaves else "")


def interval_class_quality(fifths: int) -> str:
    """Perfect, major, minor, or (doubly ...) augmented or diminished, read off the distance in fifths.

    >>> [interval_class_quality(fifths) for fifths in (1, 4, -3, 6, -6, 14)]
    ['perfect', 'major', 'minor', 'augmented', 'diminished', 'doubly augmented']
    """
    if -1 <= fifths <= 1:
        return "perfect"
    if 2 <= fifths <= 5:
        return "major"
    if -5 <= fifths <= -2:
        return "minor"
    times = (abs(fifths) + 1) // 7
    word = "augmented" if fifths > 0 else "diminished"
    return {1: word, 2: f"doubly {word}"}.get(times, f"{times}-fold {word}")


def shortest(fifths: int) -> Interval:
    """The shortest interval, up or down, between two pitch classes ``fifths`` apart (a tritone goes up).

    >>> shortest(1), shortest(-4)          # up a fifth is down a fourth; down a major third
    (Interval(fifths=1, octaves=-1), Interval(fifths=-4, octaves=2))
    """
    up = 7 * fifths % 12
    semitones = up if up <= 6 else up - 12
    return Interval(fifths, (semitones - 7 * fifths) // 12)
