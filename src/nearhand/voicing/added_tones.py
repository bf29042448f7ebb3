"""Tones that a family may add to a chord: which ninth and thirteenth, by where the chord goes and by the key."""

from __future__ import annotations

from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LEADING_TONE, Mode

ADDED = (2, -5, 9, -1, 6, 3, -4, -2)
"""Tones that a family may add, in fifths above the root: ninths, elevenths, thirteenths, a minor seventh."""
_NATURAL_NINTH, _FLAT_NINTH = 2, -5
_NATURAL_THIRTEENTH, _FLAT_THIRTEENTH = 3, -4
_FOURTH, _MAJOR_THIRD = -1, 4


def added_tones(chord: RelativeChord, after: RelativeChord | None, mode: Mode) -> tuple[int, int]:
    """The ninth and the thirteenth that may be added to a chord, in fifths above its root.

    Over a dominant that falls a fifth they are those of the chord it leads to, major or minor; major chords have the
    natural ones, as have minor chords from outside the key; all others have those of the key (common practice, no
    source).

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> added_tones(parse_numeral("V7/ii", MAJOR), parse_numeral("ii", MAJOR), MAJOR)
    (-5, -4)
    """
    quality = chord.quality
    if quality.is_dominant_seventh:
        if after is not None and _sound(after.root - chord.root) == _sound(_FOURTH):
            is_minor = after.quality.has_minor_third
            return (_FLAT_NINTH, _FLAT_THIRTEENTH) if is_minor else (_NATURAL_NINTH, _NATURAL_THIRTEENTH)
    elif quality.interval(3) == _MAJOR_THIRD or not {*mode.degrees, LEADING_TONE}.issuperset(chord.places):
        return _NATURAL_NINTH, _NATURAL_THIRTEENTH
    return _key_tone(chord, mode, _NATURAL_NINTH), _key_tone(chord, mode, _NATURAL_THIRTEENTH)


def _key_tone(chord: RelativeChord, mode: Mode, plain: int) -> int:
    """The ninth or thirteenth that the key has above a root, in fifths above it; ``plain`` is the natural one.

    Where the key's tone is neither the plain nor the flat one, as above most roots outside the key, the plain one.
    """
    letter = (chord.root + plain) * 4 % 7
    own = next(degree for degree in mode.degrees if degree * 4 % 7 == letter) - chord.root
    return own if own in (plain, plain - 7) else plain


def _sound(place: int) -> int:
    return place * 7 % 12
