"""How far the voices of a hand move from one chord to the next.

The size of a voice leading is the sum of the semitones moved by all voices (taxicab norm; D. Tymoczko, "The Geometry of
Musical Chords", *Science* 313, 2006). Voices never cross. Where a chord has more voices than its neighbour, the voices
that enter or leave are those that make the sum smallest, and entering or leaving costs nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations

from nearhand.theory.record import NamedTuple


class Motion(NamedTuple):
    """How the voices of a chord came there from the chord before.

    ``moves``: per voice, low to high, the signed semitones, None for a voice that enters. ``left``: the notes of the
    chord before that no voice takes up, as MIDI numbers.
    """

    moves: tuple[int | None, ...]
    left: tuple[int, ...]

    @property
    def size(self) -> int:
        """Semitones moved by all voices together."""
        return sum(abs(move) for move in self.moves if move is not None)

    @property
    def held(self) -> tuple[bool, ...]:
        """Which voices stay where they were."""
        return tuple(move == 0 for move in self.moves)


def motion(before: Sequence[int], after: Sequence[int]) -> Motion:
    """The least motion between two chords given as ascending MIDI numbers.

    >>> motion((60, 65, 68), (59, 62, 65, 67))       # the second voice enters
    Motion(moves=(-1, None, 0, -1), left=())
    """
    if len(before) <= len(after):
        moving = min(
            combinations(range(len(after)), len(before)), key=lambda chosen: _size(before, [after[i] for i in chosen])
        )
        came_from = dict(zip(moving, before, strict=True))
        return Motion(tuple(note - came_from[i] if i in came_from else None for i, note in enumerate(after)), ())
    kept = min(combinations(before, len(after)), key=lambda chosen: _size(chosen, after))
    moves = tuple(new - old for old, new in zip(kept, after, strict=True))
    return Motion(moves, tuple(note for note in before if note not in kept))


def _size(before: Sequence[int], after: Sequence[int]) -> int:
    return sum([abs(new - old) for old, new in zip(before, after, strict=True)])


@lru_cache(maxsize=65536)
def motion_size(before: tuple[int, ...], after: tuple[int, ...]) -> int:
    """Semitones of the least motion between two chords given as ascending MIDI numbers.

    >>> motion_size((60, 64, 67), (59, 62, 67))
    3
    """
    if len(before) == len(after):
        return _size(before, after)
    small, large = sorted((before, after), key=len)
    return min(_size(small, chosen) for chosen in combinations(large, len(small)))
