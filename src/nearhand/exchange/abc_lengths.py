"""Lengths of an ABC tune's notes and rests: the unit note length, broken rhythm and tuplets put into each of them.

ABC standard 2.1, sections 3.1.7, 4.4 and 4.13, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from nearhand.exchange.abc_fields import read_meter, read_unit
from nearhand.exchange.abc_signs import Sign
from nearhand.notation.errors import InputError
from nearhand.theory.progression import Meter
from nearhand.theory.record import NamedTuple

_IN_THE_TIME_OF = {2: 3, 3: 2, 4: 3, 6: 2, 8: 3}
"""Notes of a tuplet and those whose time they take; five, seven and nine take that of two, in compound meters three."""
_USUAL = range(2, 10)
_MOST_IN_A_TUPLET, _MOST_DIGITS = 64, 3
_LONGEST = 64
"""Whole notes that one note or rest may last."""
_MOST_BROKEN = 3
_TUPLET_HINT = "write (3 before three notes, or (5:4:5 for five in the time of four"


class Tuplet(NamedTuple):
    """A tuplet that is being filled: its sign, what its notes are multiplied by, how many it has and still lacks."""

    sign: Sign
    ratio: Fraction
    notes: int
    lacks: int


def timed(signs: Sequence[Sign], unit: Fraction, meter: Meter | None) -> tuple[Sign, ...]:
    """The signs with the lengths of notes and rests as parts of a whole note.

    Raises InputError at a tuplet or a broken rhythm that lacks its notes, and at a note beyond all measure.

    >>> from nearhand.exchange.abc_signs import signs_of
    >>> from nearhand.exchange.abc_text import Row
    >>> signs = timed(signs_of([Row("it.abc", 1, "C>D (3EFG")]), Fraction(1, 8), None)
    >>> [str(sign.length) for sign in signs if sign.kind == "note"]
    ['3/16', '1/16', '1/12', '1/12', '1/12']
    """
    reader = _Reader(unit, meter)
    for sign in signs:
        reader.add(sign)
    return reader.end()


class _Reader:
    """Reads signs one after another: how long a note is depends on those before, and on a broken rhythm behind it."""

    def __init__(self, unit: Fraction, meter: Meter | None) -> None:
        self._unit, self._meter = unit, meter
        self._signs: list[Sign] = []
        self._before: int | None = None
        self._broken: Sign | None = None
        self._tuplet: Tuplet | None = None

    def add(self, sign: Sign) -> None:
        if sign.kind in ("note", "rest"):
            self._note(sign)
            return
        if sign.kind == "broken":
            self._break(sign)
        elif sign.kind == "tuplet":
            if self._tuplet is not None:
                raise sign.refusal("a tuplet cannot begin within another", "a note", _TUPLET_HINT)
            self._tuplet = _tuplet(sign, self._meter)
        elif sign.kind in ("bar", "bars"):
            self._close()
        elif sign.field is not None and sign.field.letter == "L":
            self._unit = read_unit(sign.field)
        elif sign.field is not None and sign.field.letter == "M":
            self._meter = read_meter(sign.field)
        self._signs.append(sign)

    def _note(self, sign: Sign) -> None:
        length = sign.length * self._unit
        if self._broken is not None:
            length *= _shares(self._broken)[1]
        if self._tuplet is not None:
            length *= self._tuplet.ratio
            lacks = self._tuplet.lacks - 1
            self._tuplet = self._tuplet._replace(lacks=lacks) if lacks else None
        if length > _LONGEST:
            what = f"{sign.text[:20]} lasts more than {_LONGEST} whole notes"
            raise sign.refusal(what, "a shorter note", "write lengths as C2, C/2 or C3/2")
        self._before, self._broken = len(self._signs), None
        self._signs.append(sign._replace(length=length))

    def _break(self, sign: Sign) -> None:
        if self._before is None or self._broken is not None:
            raise _not_between(sign)
        note = self._signs[self._before]
        self._signs[self._before] = note._replace(length=note.length * _shares(sign)[0])
        self._broken = sign

    def _close(self) -> None:
        if self._broken is not None:
            raise _not_between(self._broken)
        self._before = None

    def end(self) -> tuple[Sign, ...]:
        self._close()
        if self._tuplet is not None:
            has = self._tuplet.notes - self._tuplet.lacks
            what = f"this tuplet has {has} of its {self._tuplet.notes} notes"
            raise self._tuplet.sign.refusal(what, "notes", _TUPLET_HINT)
        return tuple(self._signs)


def _shares(broken: Sign) -> tuple[Fraction, Fraction]:
    """What the notes before and behind a broken rhythm are multiplied by: ``>`` dots the first, ``>>`` doubly."""
    if len(broken.text) > _MOST_BROKEN:
        raise broken.refusal(f"a broken rhythm has {_MOST_BROKEN} signs at most", "a note", "write C>D, C>>D or C>>>D")
    short = Fraction(1, 2 ** len(broken.text))
    return (2 - short, short) if broken.text[0] == ">" else (short, 2 - short)


def _not_between(sign: Sign) -> InputError:
    what = f"{sign.text[:20]} stands between two notes of a bar"
    return sign.refusal(what, "a note", "write C>D for a dotted note and a short one")


def _tuplet(sign: Sign, meter: Meter | None) -> Tuplet:
    """A tuplet ``(p:q:r``: p notes in the time of q, for the next r notes."""
    numbers = [int(text) if text and len(text) <= _MOST_DIGITS else 0 for text in sign.text[1:].split(":")]
    notes, time, following = (*numbers, 0, 0)[:3]
    usual = _IN_THE_TIME_OF.get(notes, 3 if meter is not None and meter.is_compound else 2) if notes in _USUAL else 0
    time, following = time or usual, following or notes
    if min(notes, time) < 1 or max(notes, time, following) > _MOST_IN_A_TUPLET:
        raise sign.refusal(f"{sign.text[:20]} is no tuplet", "a tuplet", _TUPLET_HINT)
    return Tuplet(sign, Fraction(time, notes), following, following)
