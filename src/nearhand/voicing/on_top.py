"""What of a melody may lie on top of chords, and what does."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple


class Tops(NamedTuple):
    """For each chord, rests left out, the notes of the melody that may lie on top of it, as MIDI numbers, best first.

    They are those that sound in the key that is voiced. ``has_octaves``: whether the melody's octave is known.
    """

    notes: tuple[tuple[int, ...], ...]
    has_octaves: bool = True


class OnTop(NamedTuple):
    """What lies on top of each chord, as MIDI numbers, None where it is no note of the melody.

    ``octaves``: how many octaves above its own place the melody lies. ``register``: the lowest and the highest upper
    note that were allowed, None for the register of the family or of the wishes.
    """

    notes: tuple[int | None, ...]
    octaves: int
    register: tuple[int, int] | None
