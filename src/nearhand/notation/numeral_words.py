"""The words that Roman numerals are made of, shared by their readers and writers."""

from __future__ import annotations

from nearhand.notation.accidentals import SIGNS

NUMERALS = {"I": 1, "II": 2, "III": 3, "IV": 4, "V": 5, "VI": 6, "VII": 7}
NEAPOLITAN = "N"
NEAPOLITAN_PLACE = -5
OVER = "//"
"""Between a chord and the one below it."""
SIXTH_NAMES = {"It": "It", "Fr": "Fr", "Ger": "Ger", "Gr": "Ger", "Sw": "Sw"}
TONES_OF_SIXTH = {"It": (6, -4, 0), "Fr": (2, 6, -4, 0), "Ger": (6, -4, 0, -3), "Sw": (9, 6, -4, 0)}
"""The augmented sixths from the root that their figures count from, in fifths above the tonic.

Ger7 has the raised fourth degree in the bass, Ger65 the lowered sixth, where all four usually stand.
"""


def starts_numeral(text: str) -> bool:
    """Whether a token's first characters are those of a numeral (after any accidental)."""
    bare = text.lstrip("".join(SIGNS) + "♮")
    is_neapolitan = text[:1] == NEAPOLITAN and text[1:2] in ("", "6", "5", "/", "⁶")
    return bare[:1] in ("I", "V", "i", "v") or is_neapolitan or text.startswith((*SIXTH_NAMES, "Cad6"))
