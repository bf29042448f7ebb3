"""The quality that a numeral's case, mark, figures and brackets name, and the tone in its bass.

Two grammars meet here. **Figures** with square brackets are those of RomanText: ``V65``, ``viio7[no5]``, ``IV[add9]``.
**Tails** are those of chord symbols: ``IVmaj7``, ``V7(b9)``, ``i(add6)``. Where a bare 7 (9, 11, 13) could be either,
``Conventions.sevenths`` decides. Sources: M. Gotham et al., When in Rome corpus, syntax.md; RomanText, ISMIR 2019.
"""

from __future__ import annotations

from nearhand.notation.accidentals import read_accidentals
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import AUGMENTED_WORDS, DIMINISHED_WORDS, MAJOR_WORDS
from nearhand.notation.errors import InputError
from nearhand.notation.figures import Figures, read_figures
from nearhand.theory.mode import Mode
from nearhand.theory.quality import NATURAL_INTERVALS, Quality, alteration, quality
from nearhand.theory.record import NamedTuple

_MARKS = {"ø": "ø", "Ø": "ø", "/o": "ø", "/°": "ø", "/ø": "ø", "o": "°", "°": "°", "º": "°", "+": "+", "d": "d"}
_MARKED_TRIADS = {"ø": (-3, -6), "°": (-3, -6), "+": (4, 8), "d": (4, 1)}
_MARKED_SEVENTHS = {"ø": -2, "°": -9, "d": -2}
_EXTENDED = frozenset((7, 9, 11, 13))
_SAME_AS = {2: 9, 4: 11, 8: 1, 10: 3, 12: 5}
"""An added 2 or 4 beside a third is a ninth or an eleventh; 8, 10 and 12 double a tone of the triad."""

_MOST_ALTERED = 2
_OTHER_DEGREE = "write the numeral of another degree"


class Degree(NamedTuple):
    """Where a chord stands: the number of its degree, its root in fifths above the tonic, the mode, its case."""

    number: int
    root: int
    mode: Mode
    is_small: bool

    def scale_interval(self, tone: int) -> int:
        """The scale's own tone of a number, in fifths above the root."""
        return self.mode.degrees[(self.number + tone - 2) % 7] - self.root


def read_quality(tail: str, degree: Degree, sevenths_of_scale: bool) -> tuple[Quality, int]:
    """Read what follows a numeral; answer the quality, and the bass in fifths above the root.

    Raises InputError, placed in the tail.

    >>> from nearhand.theory.mode import MAJOR
    >>> read_quality("65", Degree(5, 1, MAJOR, False), False)[1]
    4
    >>> [read_quality("7", Degree(1, 0, MAJOR, False), of_scale)[0].intervals for of_scale in (False, True)]
    [(0, 4, 1, -2), (0, 4, 1, 5)]
    """
    mark_size = next((size for size in (2, 1) if tail[:size] in _MARKS), 0)
    mark = _MARKS[tail[:mark_size]] if mark_size else ""
    figures, end = read_figures(tail, mark_size)
    if not mark and tail[end:] == "+":  # III6+ for III+6
        mark, end = "+", len(tail)
    if tail in ("5", "4") and not sevenths_of_scale:
        return _by_symbol(tail, degree)
    is_figured = figures.is_known and (figures.inversion > 0 or not figures.accidentals)
    changes = _brackets(tail, end) if is_figured else None
    if changes is None:
        try:
            return _by_symbol(tail, degree)
        except InputError as error:
            changes = _brackets(tail, end) if end > mark_size else None
            if changes is None:
                behind = max(error.start, end if figures.is_known else 0)  # the figures themselves were good
                raise InputError(error.what, tail, behind, wanted=error.wanted, hint=error.hint) from None
    tones = _tones(figures, degree, mark, sevenths_of_scale)
    kept = _changed(tones, changes, degree)
    if not kept or any(abs(alteration(*tone)) > _MOST_ALTERED for tone in kept):
        what = "a tone is altered too far to be spelled" if kept else "no tone is left in this chord"
        raise InputError(what, tail, end - 1, wanted="a chord", hint="leave out a bracket or an accidental")
    if any(number == 1 and place for number, place in kept):
        raise InputError("the root of a chord cannot be altered", tail, end - 1, wanted="a chord", hint=_OTHER_DEGREE)
    changed = quality(kept)
    if changes and not _has_a_symbol(changed):
        raise InputError("no chord symbol says this chord", tail, end - 1, wanted="a chord", hint="leave out a bracket")
    return changed, _lowest(kept, figures.numbers[figures.inversion])


def _has_a_symbol(changed: Quality) -> bool:
    from nearhand.notation.chord_tail_writing import symbol_tail

    try:
        symbol_tail(changed)
    except ValueError:
        return False
    return True


def _lowest(tones: list[tuple[int, int]], number: int) -> int:
    """The tone of a number, altered or not; where it is left out, the next one of the chord above it."""
    return min(tones, key=lambda tone: ((tone[0] - number) % 7 > 0 and tone[0] > 7, (tone[0] - number) % 7))[1]


def _tones(figures: Figures, degree: Degree, mark: str, sevenths_of_scale: bool) -> dict[int, int]:
    """The intervals of a figured chord by tone number."""
    third, fifth = _MARKED_TRIADS.get(mark, (-3 if degree.is_small else 4, 1))
    tones: dict[int, int] = {}
    accidentals = dict(figures.accidentals)
    for number in figures.numbers:
        if number == 1:
            tones[1] = 0
        elif number in accidentals:
            tones[number] = degree.scale_interval(number) + 7 * accidentals[number]
        elif number in (3, 5):
            tones[number] = third if number == 3 else fifth
        elif number == 7 and mark in _MARKED_SEVENTHS:
            tones[7] = _MARKED_SEVENTHS[mark]
        elif (sevenths_of_scale and mark != "d") or number not in _EXTENDED:
            place = degree.scale_interval(number)
            is_minor_major = number == 7 and place == 5 and degree.is_small and not mark
            tones[number] = -2 if is_minor_major else place  # i7 in major keeps a minor seventh
        else:
            tones[number] = NATURAL_INTERVALS[number]
    return tones


def _brackets(tail: str, start: int) -> list[tuple[str, int, int]] | None:
    """The changes in square brackets from ``start`` to the end; None where something else stands there.

    Each is (what to do, tone number, semitones): ``no``, ``add`` or ``alter``.
    """
    changes: list[tuple[str, int, int]] = []
    at = start
    while at < len(tail):
        close = tail.find("]", at)
        if tail[at] != "[" or close < 0:
            return None
        at += 1
        while at < close:
            act = next((word for word in ("no", "omit", "add", ",") if tail.startswith(word, at)), "")
            accidental, digit = read_accidentals(tail, at + len(act))
            if act == ",":
                at += 1
                continue
            size = 2 if tail[digit : digit + 2] in ("10", "11", "12", "13") else 1
            number = tail[digit : digit + size]
            if not number.isdecimal() or number == "0" or (not act and accidental is None):
                return None
            changes.append(("no" if act == "omit" else act or "alter", int(number), accidental or 0))
            at = digit + size
        at = close + 1
    return changes


def _changed(tones: dict[int, int], changes: list[tuple[str, int, int]], degree: Degree) -> list[tuple[int, int]]:
    """The tones with the changes of square brackets applied, as pairs of number and interval."""
    kept = dict(tones)
    added: list[tuple[int, int]] = []
    for act, number, accidental in changes:
        same = [tone for tone in kept if (tone - number) % 7 == 0]
        if act == "no":
            for tone in same:
                del kept[tone]
        elif act == "alter" and same:
            for tone in same:
                kept[tone] += 7 * accidental
        else:
            added.append((number, degree.scale_interval(number) + 7 * accidental))
    found = list(kept.items())
    for number, place in added:
        if place not in (other for _, other in found):
            found.append((number if number in (2, 4) and 3 not in kept else _SAME_AS.get(number, number), place))
    return [(_plain_number(number, place), place) for number, place in found]


def _plain_number(number: int, place: int) -> int:
    """The number that chord symbols give a tone: 2 and 4 are plain suspensions, any other form of them a 9 or 11."""
    return _SAME_AS[number] if number in (2, 4) and place != NATURAL_INTERVALS[number] else number


def _by_symbol(tail: str, degree: Degree) -> tuple[Quality, int]:
    """The quality of a tail that is written as in a chord symbol, with a figure for its seventh perhaps: ``maj65``."""
    for word in MAJOR_WORDS:
        head = tail.removeprefix("dim").removeprefix("(").removeprefix("+").removeprefix("aug")
        if head.startswith(word):
            before = tail[: len(tail) - len(head) + len(word)]
            figures, end = read_figures(tail, len(before))
            if figures.inversion and tail[end:] in ("", ")") and not figures.accidentals:
                found = _symbol_quality(before + ("7" if 7 in figures.numbers else "") + tail[end:], degree)
                return found, found.intervals[figures.inversion]
    found = _symbol_quality(tail, degree)
    return found, 0 if 0 in found.intervals else found.intervals[0]


def _symbol_quality(tail: str, degree: Degree) -> Quality:
    """A small numeral is minor where its tail allows that; a mark (°, ø, +), 5 or sus speaks for itself."""
    if degree.is_small and not tail.startswith((*AUGMENTED_WORDS, *DIMINISHED_WORDS)):
        try:
            return read_tail("m" + tail)
        except InputError:
            pass
    return read_tail(tail)
