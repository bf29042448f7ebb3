"""The degrees of a melody: numbers and syllables with octave marks, read as intervals above the tonic and written.

A degree without a mark lies in the octave from the tonic up; each ``'`` lifts it by an octave, each ``_`` lowers it.
Degrees are counted as the conventions say: in the mode's own scale (``mode``), against the major scale (``major``), or
in the relative major (``relative``, where do is its tonic too). In minor a bare 7 is that of natural minor, ``#7`` the
leading tone; ``b7`` is a caution and means no more than 7, as with numerals.
"""

from __future__ import annotations

from nearhand.notation.accidentals import read_accidentals, write_accidental
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import degree_number, melody_place, written_melody
from nearhand.notation.syllables import read_movable, write_movable
from nearhand.theory.interval import Interval
from nearhand.theory.mode import MAJOR_DEGREES, Mode
from nearhand.theory.record import NamedTuple

HIGHER, LOWER = "'", "_"
_HIGHER_READ = (HIGHER, "’", "′")
_NEAR = 3
"""Steps of the staff within which 1 lies from the tonic, above or below."""
SYLLABLES, NUMBERS = "syllables", "numbers"


class Degree(NamedTuple):
    """A degree as written: a number from 1 with its accidental (None for none), and the octaves of its marks."""

    number: int
    accidental: int | None
    octaves: int


def read_degree(text: str, start: int) -> tuple[Degree, int] | None:
    """The degree in numbers that stands at ``start``, and the offset behind it; None where none stands there.

    >>> read_degree("#4''", 0)
    (Degree(number=4, accidental=1, octaves=2), 4)
    """
    accidental, at = read_accidentals(text, start)
    digit = text[at : at + 1]
    if not digit or digit not in "1234567":
        return None
    octaves, end = read_octaves(text, at + 1)
    return Degree(int(digit), accidental, octaves), end


def read_octaves(text: str, start: int) -> tuple[int, int]:
    """The octaves of the marks that stand at ``start``, and the offset behind them.

    >>> read_octaves("''", 0), read_octaves("_", 0)
    ((2, 2), (-1, 1))
    """
    at, octaves = start, 0
    while at < len(text) and (text[at] in _HIGHER_READ or text[at] == LOWER):
        octaves += -1 if text[at] == LOWER else 1
        at += 1
    return octaves, at


def interval_of(degree: Degree, mode: Mode, conventions: Conventions = DEFAULT) -> Interval:
    """The interval from the tonic to a degree.

    >>> from nearhand.theory.mode import MINOR
    >>> interval_of(Degree(7, None, 0), MINOR).name, interval_of(Degree(7, 1, 0), MINOR).name
    ('minor seventh', 'major seventh')
    """
    if conventions.degrees == "mode":
        place = melody_place(degree.number, degree.accidental, mode)
    else:
        place = MAJOR_DEGREES[degree.number - 1] + 7 * (degree.accidental or 0) + _origin(mode, conventions)
    return _interval(place, degree.number - 1 + _origin_steps(mode, conventions) + 7 * degree.octaves)


def read_syllable(text: str, start: int, mode: Mode, conventions: Conventions) -> tuple[Interval, int] | None:
    """The interval from the tonic to the movable syllable at ``start``, and the offset behind it; None for none."""
    found = read_movable(text, start)
    if found is None:
        return None
    above_do, end = found
    octaves, end = read_octaves(text, end)
    steps = degree_number(above_do) - 1 + _origin_steps(mode, conventions) + 7 * octaves
    return _interval(above_do + _origin(mode, conventions), steps), end


def _interval(place: int, steps: int) -> Interval:
    return Interval(place, (steps - 4 * place) // 7)


def _origin(mode: Mode, conventions: Conventions) -> int:
    """Where 1, or do, lies in fifths above the tonic."""
    return mode.brightness if conventions.degrees == "relative" else 0


def _origin_steps(mode: Mode, conventions: Conventions) -> int:
    """Steps of the staff from the tonic to the nearest 1, or do; below 0 where that lies under the tonic."""
    return (degree_number(_origin(mode, conventions)) - 1 + _NEAR) % 7 - _NEAR


def write_degree(interval: Interval, mode: Mode, conventions: Conventions = DEFAULT) -> str:
    """The degree that an interval above the tonic leads to, as a number or, where they are sung, as a syllable.

    >>> from nearhand.theory.mode import MAJOR
    >>> write_degree(Interval(1, 0), MAJOR), write_degree(Interval(-2, 1), MAJOR), write_degree(Interval(0, 1), MAJOR)
    ('5', '♭7_', "1'")
    """
    above = interval.fifths - _origin(mode, conventions)
    if conventions.sing == SYLLABLES:
        number, name = degree_number(above), write_movable(above, conventions.plain)
    elif conventions.degrees == "mode":
        number, accidental = written_melody(interval.fifths, mode)
        name = write_accidental(accidental, conventions.plain) + str(number)
    else:
        number = degree_number(above)
        name = write_accidental((above - MAJOR_DEGREES[number - 1]) // 7, conventions.plain) + str(number)
    octaves = (interval.steps - (number - 1) - _origin_steps(mode, conventions)) // 7
    return name + (HIGHER * octaves if octaves > 0 else LOWER * -octaves)
