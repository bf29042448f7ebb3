"""Sharps, flats and naturals in text, read in any usual spelling and written in signs or in keyboard characters."""

from __future__ import annotations

SIGNS = {"#": 1, "♯": 1, "𝄪": 2, "b": -1, "♭": -1, "𝄫": -2}
_NATURAL = "♮"
MOST_ACCIDENTALS = 3
_WRITTEN = {0: "", 1: "♯", 2: "𝄪", -1: "♭", -2: "𝄫"}


def read_accidentals(text: str, start: int) -> tuple[int | None, int]:
    """Read accidentals of one kind from ``start``; answer the alteration in semitones and the offset behind them.

    No accidental is None (an explicit natural sign is 0). Reading stops where sharps would turn into flats.

    >>> read_accidentals("bb7", 0), read_accidentals("♮7", 0), read_accidentals("7", 0)
    ((-2, 2), (0, 1), (None, 0))
    """
    if text.startswith(_NATURAL, start):
        return 0, start + 1
    total, at = 0, start
    while at < len(text) and (sign := SIGNS.get(text[at])) is not None and sign * total >= 0:
        total += sign
        at += 1
    return (total if at > start else None), at


def write_accidental(alteration: int, plain: bool = False) -> str:
    """Write an alteration in signs (♯ ♭ 𝄪 𝄫), or in ``#`` and ``b``.

    >>> write_accidental(-1), write_accidental(2, plain=True)
    ('♭', '##')
    """
    if plain or alteration not in _WRITTEN:
        sharp, flat = ("#", "b") if plain else ("♯", "♭")
        return sharp * alteration if alteration > 0 else flat * -alteration
    return _WRITTEN[alteration]
