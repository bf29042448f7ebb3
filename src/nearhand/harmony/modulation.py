"""Where the key turns: the division of a progression into regions of one key each that explains its chords best.

Exact dynamic programming over keys. A path of keys, one a chord, gains by chords that fit, by cadences inside a region,
and by opening and closing on the tonic; it pays for every change of key, more for a distant one, and for a region that
neither a cadence nor the opening of the piece confirms (``key_worth`` holds the numbers). So an applied chord is no new
key, unless a cadence confirms it or the music stays there.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.key_finding import keys_of
from nearhand.harmony.key_worth import (
    CHANGE,
    CHANGE_PER_FIFTH,
    CIRCLE,
    NO_PIVOT,
    UNCONFIRMED,
    Worth,
    is_own,
    may_be_pivot,
    worth_of,
)
from nearhand.theory.chord import Chord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Progression

_NEVER = -(10**12)
_Arrival = tuple[int, int]
"""A score, and the state it comes from."""


class Pivot(NamedTuple):
    """A chord that belongs to the key before and to the key behind: its place among the chords, from 0, and its bar."""

    place: int
    bar: int
    chord: Chord


class Region(NamedTuple):
    """Chords in one key: the first and the last by their places among the chords, from 0, and their bars, from 1.

    ``pivot`` belongs to the key before as well; None in the first region, and where no chord does.
    """

    key: Key
    first_chord: int
    last_chord: int
    first_bar: int
    last_bar: int
    pivot: Pivot | None


def regions_of(progression: Progression) -> tuple[Region, ...]:
    """The regions of a progression in order; its only region has the key that ``rank_keys`` finds first.

    Raises ValueError when there are no chords.

    >>> from nearhand.verbs.tune import tune_from_text
    >>> tune = tune_from_text("| C | F | G7 | C | Am | D7 | G | G |")
    >>> for region in regions_of(tune.progression):
    ...     print(region.key, region.first_bar, region.last_bar, region.pivot and region.pivot.chord.root)
    C major 1 4 None
    G major 5 8 A
    """
    chords = tuple(progression.chords())
    bars = [moment.bar for moment in progression.moments if moment.slot.chord is not None]
    path = best_path(worth_of(chords))
    starts = [place for place in range(len(path)) if place == 0 or path[place] != path[place - 1]]
    if len(starts) == 1:
        return (Region(keys_of(progression)[0].key, 0, len(chords) - 1, bars[0], bars[-1], None),)
    found = []
    for start, end in zip(starts, [*starts[1:], len(path)], strict=True):
        place = _pivot_place(chords, start, path[start - 1], path[start]) if start else None
        pivot = None if place is None else Pivot(place, bars[place], chords[place])
        found.append(Region(path[start], start, end - 1, bars[start], bars[end - 1], pivot))
    return tuple(found)


def _pivot_place(chords: Sequence[Chord], start: int, old: Key, new: Key) -> int | None:
    """The first chord of the new region or the last of the old one, if at home in both; no dominant where another is.

    The dominant of the new key, and the six-four before it, are what a pivot leads to.
    """
    shared = [place for place in (start, start - 1) if all(_owns(chords[place], key) for key in (old, new))]
    best = [place for place in shared if may_be_pivot(relative_to(chords[place], new), new.mode)]
    return next(iter(best + shared), None)


def _owns(chord: Chord, key: Key) -> bool:
    return is_own(relative_to(chord, key), key.mode)


def best_path(worth: Worth) -> tuple[Key, ...]:
    """The key of each chord on the path that is worth most; of equal paths, one that enters its last keys latest.

    A state is a key and whether its region is confirmed yet: states 0 to n - 1 are not, n to 2n - 1 are. Work grows as
    chords times keys, for what a change costs depends on two signatures alone, and the circle has twelve of these.
    """
    keys, count = worth.keys, len(worth.keys)
    rows = (worth.fits[0], worth.opening, worth.entry)
    first = [fit + opening - entry for fit, opening, entry in zip(*rows, strict=True)]
    doubtful = [_NEVER if opening else score for score, opening in zip(first, worth.opening, strict=True)]
    confirmed = [score if opening else _NEVER for score, opening in zip(first, worth.opening, strict=True)]
    scores, steps = doubtful + confirmed, []
    for place in range(1, len(worth.fits)):
        scores, sources = _step(scores, worth, place)
        steps.append(sources)
    ends = [score + worth.closing[state % count] - UNCONFIRMED * (state < count) for state, score in enumerate(scores)]
    path = [ends.index(max(ends))]
    for sources in reversed(steps):
        path.append(sources[path[-1]])
    return tuple(keys[state % count] for state in reversed(path))


def _step(scores: list[int], worth: Worth, place: int) -> tuple[list[int], list[int]]:
    """The best score of every state at a place, and the state before from which it comes."""
    count = len(worth.keys)
    arrivals = _arrivals(scores, worth, place)
    doubtful, confirmed = [], []
    rows = (worth.fits[place], worth.cadences[place], worth.entered[place], worth.signatures, worth.entry)
    for key, (fit, cadence, is_pivot, signature, entry) in enumerate(zip(*rows, strict=True)):
        score, source = arrivals[is_pivot][signature]
        entered = (score - entry + fit, source)
        stayed = (scores[key] + fit + cadence, key)
        sure = (scores[key + count] + fit + cadence, key + count)
        if cadence:  # it confirms the region
            doubtful.append(entered)
            confirmed.append(sure if sure[0] >= stayed[0] else stayed)
        else:
            doubtful.append(entered if entered[0] >= stayed[0] else stayed)
            confirmed.append(sure)
    new_scores, sources = zip(*doubtful, *confirmed, strict=True)
    return list(new_scores), list(sources)


def _arrivals(scores: list[int], worth: Worth, place: int) -> tuple[list[_Arrival], list[_Arrival]]:
    """By the signature (0 to 11) that is entered: the best score left there, and the state it comes from.

    The first of the two rows is for keys in which the chord is no pivot, the second for those in which it may be one.
    """
    count = len(worth.keys)
    any_, by_pivot = [(_NEVER, 0)] * CIRCLE, [(_NEVER, 0)] * CIRCLE
    for key, (signature, owns) in enumerate(zip(worth.signatures, worth.owned[place], strict=True)):
        doubtful, confirmed = scores[key] - UNCONFIRMED, scores[key + count]
        score, state = (confirmed, key + count) if confirmed >= doubtful else (doubtful, key)
        score -= CHANGE
        any_[signature] = max(any_[signature], (score - NO_PIVOT, state))
        by_pivot[signature] = max(by_pivot[signature], (score if owns else score - NO_PIVOT, state))
    return _spread(any_), _spread(by_pivot)


def _spread(row: list[_Arrival]) -> list[_Arrival]:
    """The best way to reach each place of the circle from any other, each step at its price: a lap each way twice."""
    for lap in (range(2 * CIRCLE), range(2 * CIRCLE, 0, -1)):
        best = row[lap[0] % CIRCLE]
        for place in lap:
            best = max((best[0] - CHANGE_PER_FIFTH, best[1]), row[place % CIRCLE])
            row[place % CIRCLE] = best
    return row
