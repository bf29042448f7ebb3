"""The named costs of coming from one voicing to the next, and of a voicing by itself.

``between`` and ``alone`` say plainly what is counted; ``steps.py`` gives the same sums for two whole layers at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from itertools import combinations, pairwise

from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.motion import motion
from nearhand.voicing.weights import Weights

FREE_LEAP = 2
"""Semitones that the top voice may move without a leap: a step."""
_PERFECT = (0, 7)


class Pull(NamedTuple):
    """A tone that pulls: its pitch class, the pitch classes it should reach by step, whether it is a leading tone.

    ``never``: semitones, up or down, that a voice with the tone should not move, for the interval would be augmented; a
    tone may have such ways and no goals.
    A leading tone in an inner voice may also fall a major third, to the fifth of the tonic (R. Hutchinson, *Music
    Theory for the 21st-Century Classroom*, "Voice leading V7 to I").
    """

    tone: int
    goals: tuple[int, ...]
    is_leading: bool = False
    never: tuple[int, ...] = ()


class Makeup(NamedTuple):
    """What a chord asks of its doublings, as pitch classes in semitones above C.

    ``grades``: pairs of a pitch class and the price of its second sounding; others cost nothing. ``expected``: tones
    whose absence is counted.
    """

    grades: tuple[tuple[int, int], ...] = ()
    expected: tuple[int, ...] = ()


RANGES = ((40, 60), (48, 67), (55, 72), (60, 79))
"""Bass E2-C4, tenor C3-G4, alto G3-C5, soprano C4-G5: three course pages agree, second-hand."""
_COMFORT = 2
"""Semitones at either end of a range that are not comfortable (common practice, no source)."""


def between(before: Candidate, after: Candidate, pulls: tuple[Pull, ...] = ()) -> Weights:
    """How much of each cost one step holds; ``pulls`` are those of the chord ``before``.

    >>> from nearhand.voicing.candidates import Candidate
    >>> amounts = between(Candidate((48,), (60, 64, 67)), Candidate((50,), (62, 66, 69)))
    >>> amounts.movement, amounts.bass, amounts.parallels
    (6, 2, 3)
    """
    old, new = paired_voices(before, after)
    moves = [to - at for at, to in zip(old, new, strict=True)]
    shared = {note % 12 for note in before.upper} & {note % 12 for note in after.upper}
    held = {note % 12 for note in set(before.upper) & set(after.upper)}
    has_bass = bool(before.bass and after.bass)
    top = abs(after.upper[-1] - before.upper[-1]) if before.upper and after.upper else 0
    return Weights(
        movement=sum(map(abs, moves[has_bass:])),
        bass=abs(moves[0]) if has_bass else 0,
        leap=max(0, top - FREE_LEAP),
        shift=abs(_middle(after) - _middle(before)) // 2,
        common=len(shared - held),
        parallels=sum(_is_parallel(old, new, pair) for pair in combinations(range(len(old)), 2)),
        hidden=_is_hidden(before, after),
        tendency=sum(bool(strays(old, new, pull)) for pull in pulls),
        melody=sum(len(augmented(old, new, pull)) for pull in pulls),
        overlap=sum(new[voice] > old[voice + 1] or new[voice + 1] < old[voice] for voice in range(len(old) - 1)),
        top=top,
    )


def alone(candidate: Candidate, makeup: Makeup = Makeup()) -> Weights:  # noqa: B008  # a frozen value
    """How much of each cost a voicing holds by itself.

    >>> alone(Candidate((48,), (64, 67, 84))).spacing
    1
    """
    notes, upper = candidate.voices, candidate.upper
    sounding = [note % 12 for note in notes]
    doubling = sum(price * (sounding.count(tone) - 1) for tone, price in makeup.grades if sounding.count(tone) > 1)
    outside = 0
    if len(notes) == len(RANGES):
        for note, (low, high) in zip(notes, RANGES, strict=True):
            outside += max(0, low + _COMFORT - note) + max(0, note - high + _COMFORT)
    return Weights(
        doubling=doubling + sum(tone not in sounding for tone in makeup.expected),
        range=outside,
        spacing=sum(high - low > 12 for low, high in pairwise(upper)),
    )


def paired_voices(before: Candidate, after: Candidate) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The voices that both have, bass first, matched so that they move least."""
    if len(before.upper) == len(after.upper):
        old_upper, new_upper = before.upper, after.upper
    else:
        found = motion(before.upper, after.upper)
        new_upper = tuple(note for note, move in zip(after.upper, found.moves, strict=True) if move is not None)
        stays = [move for move in found.moves if move is not None]
        old_upper = tuple(note - move for note, move in zip(new_upper, stays, strict=True))
    bass = (before.bass[:1], after.bass[:1]) if before.bass and after.bass else ((), ())
    return bass[0] + old_upper, bass[1] + new_upper


def _middle(candidate: Candidate) -> int:
    return candidate.upper[0] + candidate.upper[-1] if candidate.upper else 0


def _is_parallel(old: Sequence[int], new: Sequence[int], pair: tuple[int, int]) -> bool:
    low, high = pair
    kind = (new[high] - new[low]) % 12
    return kind in _PERFECT and (old[high] - old[low]) % 12 == kind and old[low] != new[low] and old[high] != new[high]


def _is_hidden(before: Candidate, after: Candidate) -> bool:
    """Whether the outer voices move the same way into a perfect interval they did not have, the top voice by leap."""
    if not (before.bass and after.bass and before.upper and after.upper):
        return False
    low, high = after.bass[0] - before.bass[0], after.upper[-1] - before.upper[-1]
    kind, kind_before = (after.upper[-1] - after.bass[0]) % 12, (before.upper[-1] - before.bass[0]) % 12
    return low * high > 0 and abs(high) > FREE_LEAP and kind in _PERFECT and kind != kind_before


def strays(old: Sequence[int], new: Sequence[int], pull: Pull) -> tuple[int, ...]:
    """The voices, counted from the lowest, that have the pulling tone and neither hold it nor go where it pulls."""
    if not pull.goals:
        return ()
    return tuple(
        voice
        for voice, (at, to) in enumerate(zip(old, new, strict=True))
        if at % 12 == pull.tone and to not in allowed(at, pull, is_outer=voice in (0, len(old) - 1))
    )


def augmented(old: Sequence[int], new: Sequence[int], pull: Pull) -> tuple[int, ...]:
    """The voices, counted from the lowest, that go from the tone by an interval it should not."""
    if not pull.never:
        return ()
    return tuple(
        voice
        for voice, (at, to) in enumerate(zip(old, new, strict=True))
        if at % 12 == pull.tone and to - at in pull.never
    )


@lru_cache(maxsize=4096)
def allowed(note: int, pull: Pull, is_outer: bool) -> frozenset[int]:
    """Where a voice with a pulling tone may go: it stays, steps to a goal, or, inner leading tone, falls to the 5th."""
    near = {note + step for step in (-2, -1, 1, 2) if (note + step) % 12 in pull.goals}
    return frozenset({note} | near | ({note - 4} if pull.is_leading and not is_outer else set()))


def total(amounts: Weights, weights: Weights) -> int:
    """Amounts times weights, summed."""
    return sum(map(int.__mul__, amounts, weights))
