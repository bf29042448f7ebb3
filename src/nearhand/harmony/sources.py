"""Where a chord comes from: the key's own scale, one form of minor, a parallel mode, or outside all of them."""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MINOR_FORMS, MODES, Mode

DIATONIC = "diatonic"
CHROMATIC = "chromatic"
BORROWED = "borrowed from "

PARALLEL_SCALES = {
    "natural minor": MINOR_FORMS["natural"],
    "major": MODES["major"].degrees,
    "harmonic minor": MINOR_FORMS["harmonic"],
    "dorian": MODES["dorian"].degrees,
    "mixolydian": MODES["mixolydian"].degrees,
    "phrygian": MODES["phrygian"].degrees,
    "lydian": MODES["lydian"].degrees,
    "melodic minor": MINOR_FORMS["melodic"],
}
"""Scales on one tonic in the order in which a borrowed chord is looked for (common practice, no source)."""


@lru_cache(maxsize=8192)
def source_of(chord: RelativeChord, mode: Mode) -> str:
    """Name where a chord's tones come from; its bass is not asked.

    In minor a chord without sixth and seventh degree is plainly diatonic; one with the lowered forms is natural
    minor, one with the leading tone harmonic minor, one with the raised sixth melodic minor.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR, MINOR
    >>> [source_of(parse_numeral(text, MINOR), MINOR) for text in ("i", "v", "V7", "IV")]
    ['diatonic', 'natural minor', 'harmonic minor', 'melodic minor']
    >>> source_of(parse_numeral("iv", MAJOR), MAJOR)
    'borrowed from natural minor'
    """
    own = own_source(chord, mode)
    if own is not None:
        return own
    lenders = lenders_of(chord, mode)
    return BORROWED + lenders[0] if lenders else CHROMATIC


def lenders_of(chord: RelativeChord, mode: Mode) -> tuple[str, ...]:
    """The parallel modes that hold a chord which the key itself does not, the likeliest first.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> lenders_of(parse_numeral("bVII", MAJOR), MAJOR)
    ('natural minor', 'dorian', 'mixolydian')
    """
    if own_source(chord, mode) is not None:
        return ()
    places = set(chord.places)
    return tuple(name for name, scale in PARALLEL_SCALES.items() if places.issubset(scale))


def is_borrowed(chord: RelativeChord, mode: Mode) -> bool:
    """Whether a parallel mode lends a chord."""
    return bool(lenders_of(chord, mode))


@lru_cache(maxsize=8192)
def own_source(chord: RelativeChord, mode: Mode) -> str | None:
    """As ``source_of`` for a chord of the key itself; None for any other."""
    places = set(chord.places)
    if not mode.is_minor:
        return DIATONIC if places.issubset(mode.degrees) else None
    forms = [form for form, scale in MINOR_FORMS.items() if places.issubset(scale)]
    if not forms:
        return None
    return DIATONIC if len(forms) == len(MINOR_FORMS) else f"{forms[0]} minor"
