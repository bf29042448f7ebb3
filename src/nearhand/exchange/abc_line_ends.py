"""Bar lines that are missing at the ends of lines.

A line of an ABC file may end within a bar. Many files leave out the bar line at a line's end, though; so where a bar
would be longer than its meter, and is just full where a line ends, it ends there (common practice, no source). No line
is written there, and accidentals hold on.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from nearhand.exchange.abc_fields import read_meter
from nearhand.exchange.abc_meters import full_length
from nearhand.exchange.abc_signs import Sign
from nearhand.theory.progression import Meter

LINE_END = "line end"
"""The kind of a sign that ends a bar without a bar line."""


def with_line_ends(signs: Sequence[Sign], meter: Meter | None) -> tuple[Sign, ...]:
    """The signs, whose lengths are known, with one more wherever the end of a line ends a bar.

    >>> from nearhand.exchange.abc_lengths import timed
    >>> from nearhand.exchange.abc_signs import signs_of
    >>> from nearhand.exchange.abc_text import Row
    >>> signs = signs_of([Row("it.abc", 1, "C D|E F"), Row("it.abc", 2, "G A|B c|")])
    >>> [sign.text for sign in with_line_ends(timed(signs, Fraction(1, 4), None), Meter(2, 4))]
    ['C', 'D', '|', 'E', 'F', '', 'G', 'A', '|', 'B', 'c', '|']
    """
    found: list[Sign] = []
    bar: list[Sign] = []
    for sign in signs:
        if sign.kind == "bar":
            found += [*_parted(bar, meter), sign]
            bar = []
        else:
            bar.append(sign)
        if sign.field is not None and sign.field.letter == "M":
            found += _parted(bar, meter)
            bar = []
            meter = read_meter(sign.field)
    return (*found, *_parted(bar, meter))


def _parted(bar: Sequence[Sign], meter: Meter | None) -> Iterator[Sign]:
    """The signs of a bar, parted where it is too long, and full at the end of a line."""
    full = full_length(meter)
    is_long = meter is not None and sum((sign.length for sign in bar), Fraction(0)) > full
    filled = Fraction(0)
    for place, sign in enumerate(bar):
        yield sign
        filled += sign.length
        if is_long and filled == full and place + 1 < len(bar) and bar[place + 1].row.number > sign.row.number:
            yield Sign(LINE_END, "", sign.row, sign.start + len(sign.text))
            filled = Fraction(0)
