"""Solfège syllables: movable ones, by which degrees are sung, and fixed ones, which are names of notes.

Movable do: do is the tonic in every key, in minor too (do re me fa sol le te); where numbers are those of the relative
major, minor begins on la. Both are taught; the first agrees with degrees counted from the tonic. Raised syllables end
on i, lowered ones on e (ra but for re). Common practice, no source; the tests hold the table beside music21's.
"""

from __future__ import annotations

from nearhand.notation.accidentals import read_accidentals, write_accidental
from nearhand.notation.note_names import SYLLABLES
from nearhand.theory.mode import MAJOR_DEGREES
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS

NATURAL = ("do", "re", "mi", "fa", "sol", "la", "ti")
"""The syllables of degrees 1 to 7 of a major scale."""
_ALTERED = {
    "di": ("do", 1), "ri": ("re", 1), "fi": ("fa", 1), "si": ("sol", 1), "li": ("la", 1),
    "ra": ("re", -1), "me": ("mi", -1), "se": ("sol", -1), "le": ("la", -1), "te": ("ti", -1),
}  # fmt: skip
_PLACES = dict(zip(NATURAL, MAJOR_DEGREES, strict=True))
MOVABLE = _PLACES | {name: _PLACES[base] + 7 * sign for name, (base, sign) in _ALTERED.items()}
"""Movable syllable to its place in fifths above do."""
_NAMES = {place: name for name, place in MOVABLE.items()}
_READ = MOVABLE | {"so": MOVABLE["sol"]}
_FIXED = {name: LETTERS_IN_FIFTHS.index(letter) - 1 for letter, name in SYLLABLES.items()} | {"Ti": 5, "So": 1}
SUNG_ELSEWHERE = frozenset(("doh", "ray", "fah", "soh", "lah", "ut"))
"""Other spellings, which would hide the lowered syllables: me is mi to those who write doh ray."""
SYLLABLE_NAMES = (*_READ, *_FIXED)
"""All syllables that are read, movable and fixed ones."""
_LONGEST = 3


def read_movable(text: str, start: int) -> tuple[int, int] | None:
    """The place in fifths above do of the syllable that stands at ``start``, and the offset behind it; None for none.

    >>> read_movable("fi", 0), read_movable("sol'", 0), read_movable("hum", 0)
    ((6, 2), (1, 3), None)
    """
    return _read(text, start, _READ)


def read_fixed(text: str, start: int) -> tuple[int, int] | None:
    """The place in fifths above C of a fixed syllable, which has a capital, and the offset behind it; None for none.

    >>> read_fixed("Si♭4", 0), read_fixed("Do", 0), read_fixed("D4", 0)
    ((-2, 3), (0, 2), None)
    """
    return _read(text, start, _FIXED)


def _read(text: str, start: int, table: dict[str, int]) -> tuple[int, int] | None:
    for length in range(_LONGEST, 1, -1):
        place = table.get(text[start : start + length])
        if place is not None and len(text[start : start + length]) == length:
            alteration, end = read_accidentals(text, start + length)
            return place + 7 * (alteration or 0), end
    return None


def write_movable(place: int, plain: bool = False) -> str:
    """The movable syllable of a place in fifths above do; with a sign where it has no syllable of its own.

    >>> [write_movable(place) for place in (0, 6, -2, 12)]
    ['do', 'fi', 'te', 'ti♯']
    """
    if place in _NAMES:
        return _NAMES[place]
    number = place * 4 % 7
    return NATURAL[number] + write_accidental((place - MAJOR_DEGREES[number]) // 7, plain)
