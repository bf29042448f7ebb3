"""Close position: the right hand's tones as near together as they can be, in every inversion that a register holds."""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.record import NamedTuple


class Register(NamedTuple):
    """Where a hand may play: lowest and highest MIDI number, and the centre it keeps near when nothing else decides."""

    low: int
    high: int
    centre: int


RIGHT_HAND = Register(55, 76, 65)
"""G3 to E5 around F4 (common practice, no source)."""
LEFT_HAND = Register(36, 54, 46)
"""C2 to F#3: one bass note below the right hand, with room for a bass that walks by step (common practice)."""


@lru_cache(maxsize=4096)
def close_positions(semitones: tuple[int, ...], register: Register) -> tuple[tuple[int, ...], ...]:
    """All close positions of pitch classes (given as semitones above C) in a register, as ascending MIDI numbers.

    Each spans less than an octave. They are in order of their lowest note.

    >>> close_positions((0, 4, 7), Register(60, 72, 66))
    ((60, 64, 67), (64, 67, 72))
    """
    tones = sorted({tone % 12 for tone in semitones})
    found = []
    for bottom in range(register.low, register.high + 1):
        if bottom % 12 in tones:
            position = tuple(sorted(bottom + (tone - bottom) % 12 for tone in tones))
            if position[-1] <= register.high:
                found.append(position)
    return tuple(found)
