"""Figures behind a Roman numeral: which inversion they name, and which tones of the chord.

Figures count from the bass; here they are turned into tone numbers counted from the root. Groups: Open Music Theory,
"Thoroughbass figures"; ninth chords as RomanText writes them (M. Gotham et al., When in Rome corpus, syntax.md).
"""

from __future__ import annotations

from collections.abc import Collection

from nearhand.notation.accidentals import MOST_ACCIDENTALS, read_accidentals
from nearhand.theory.record import NamedTuple

_TRIAD, _SEVENTH, _NINTH = (1, 3, 5), (1, 3, 5, 7), (1, 3, 5, 7, 9)
_ELEVENTH, _THIRTEENTH = (*_NINTH, 11), (*_NINTH, 11, 13)
_GROUPS = {
    **dict.fromkeys(((), (3,), (5, 3), (5,), (8, 5, 3), (8, 5), (8, 3), (8,)), (0, _TRIAD)),
    **dict.fromkeys(((6,), (6, 3), (8, 6), (8, 6, 3)), (1, _TRIAD)),
    **dict.fromkeys(((6, 4), (8, 6, 4)), (2, _TRIAD)),
    **dict.fromkeys(((7,), (7, 5), (7, 3), (7, 5, 3), (8, 7), (8, 7, 3), (8, 7, 5, 3)), (0, _SEVENTH)),
    **dict.fromkeys(((6, 5), (6, 5, 3)), (1, _SEVENTH)),
    **dict.fromkeys(((4, 3), (6, 4, 3)), (2, _SEVENTH)),
    **dict.fromkeys(((2,), (4, 2), (6, 4, 2)), (3, _SEVENTH)),
    **dict.fromkeys(((9,), (9, 7), (9, 7, 3), (9, 7, 5), (9, 7, 5, 3)), (0, _NINTH)),
    (7, 6, 5, 3): (1, _NINTH),
    (6, 5, 4, 3): (2, _NINTH),
    (6, 4, 3, 2): (3, _NINTH),
    (7, 5, 3, 2): (4, _NINTH),
    **dict.fromkeys(((11,), (11, 9, 7), (11, 9, 7, 5, 3)), (0, _ELEVENTH)),
    **dict.fromkeys(((13,), (13, 11, 9, 7), (13, 11, 9, 7, 5, 3)), (0, _THIRTEENTH)),
    (4,): (0, (1, 4, 5)),
}
"""Figures from the highest down to (which tone lies in the bass, the tones counted from the root)."""
SLASHED = frozenset(
    ("6/3", "6/4", "6/5", "4/3", "4/2", "5/3", "5/4", "7/5/3", "8/5/3", "6/5/3", "6/4/3", "6/4/2", "9/7/5/3")
)
"""Figures whose slashes part nothing; any other digit behind a slash is a bass degree."""
LONGEST_SLASHED = max(map(len, SLASHED))


class Figures(NamedTuple):
    """Figures as read: the tone in the bass (0 the root), tone numbers, accidentals by tone number.

    ``is_known`` is whether they are one of the usual groups, not a row of intervals over the root.
    """

    inversion: int
    numbers: tuple[int, ...]
    accidentals: tuple[tuple[int, int], ...]
    is_known: bool


def read_figures(text: str, start: int) -> tuple[Figures, int]:
    """Read figures from ``start`` as far as they go; answer them and the offset behind.

    >>> read_figures("V65", 1)
    (Figures(inversion=1, numbers=(1, 3, 5, 7), accidentals=(), is_known=True), 3)
    >>> read_figures("V5/4", 1)[0].numbers
    (1, 4, 5)
    """
    written: list[tuple[int, int | None]] = []
    at = start
    while at < len(text):
        slash = bool(written) and text[at] == "/" and text[at + 1 : at + 2].isdigit()
        accidental, digit = read_accidentals(text, at + slash)
        size = 2 if text[digit : digit + 2] in ("11", "13") else 1
        number = text[digit : digit + size]
        if not number.isdecimal() or number in ("0", "1") or abs(accidental or 0) > MOST_ACCIDENTALS:
            break
        written.append((int(number), accidental))
        at = digit + size
    group = tuple(sorted({number for number, _ in written}, reverse=True))
    is_known = group in _GROUPS
    inversion, numbers = _GROUPS.get(group, (0, (1, *sorted(set(group) - {8}))))
    accidentals = tuple(
        (_from_root(number, inversion, numbers), accidental) for number, accidental in written if accidental is not None
    )
    return Figures(inversion, numbers, accidentals, is_known), at


def _from_root(figure: int, inversion: int, numbers: tuple[int, ...]) -> int:
    """The tone number of a figure that counts from the bass."""
    above_root = figure + numbers[inversion] - 1
    return above_root if above_root in numbers else (above_root - 1) % 7 + 1


def figure_slashes(text: str, before: Collection[str]) -> frozenset[int]:
    """The places of slashes that stand between figures; ``before`` holds what may stand before a figure.

    >>> sorted(figure_slashes("V6/5/V", "V"))
    [2]
    """
    found: set[int] = set()
    at = 1
    while at < len(text):
        if text[at].isdigit() and text[at - 1] in before:
            size = LONGEST_SLASHED
            while size > 1 and text[at : at + size] not in SLASHED:
                size -= 2
            found.update(place for place in range(at, min(at + size, len(text))) if text[place] == "/")
            at += max(size, 1)
        else:
            at += 1
    return frozenset(found)
