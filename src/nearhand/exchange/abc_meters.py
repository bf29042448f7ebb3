"""Bars that do not fill their meter, and meters of their own for them.

A first bar may be short (a pickup), and so may the last. Any other bar that is shorter or longer than its meter gets
one of its own.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

from nearhand.theory.progression import COMMON_TIME, Meter

_FINEST = 32


def full_length(meter: Meter | None) -> Fraction:
    """How long a bar of a meter is, as a part of a whole note; in free meter that of 4/4."""
    beats, unit = meter or COMMON_TIME
    return Fraction(beats, unit)


def own_meter(length: Fraction, meter: Meter | None) -> Meter:
    """The meter of a bar that lasts so long, in beats of ``meter`` or finer; rounded up to thirty-seconds.

    >>> own_meter(Fraction(5, 8), Meter(4, 4)), own_meter(Fraction(1, 3), Meter(4, 4)), own_meter(Fraction(3, 2), None)
    (Meter(beats=5, unit=8), Meter(beats=11, unit=32), Meter(beats=6, unit=4))
    """
    unit = (meter or COMMON_TIME).unit
    while (length * unit).denominator > 1 and unit < _FINEST:
        unit *= 2
    return Meter(ceil(length * unit), unit)
