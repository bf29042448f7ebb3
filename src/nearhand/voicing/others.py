"""The best paths in order, not the best alone: the same exact search, with a list in place of each optimum."""

from __future__ import annotations

from heapq import merge
from itertools import islice

from nearhand.notation.errors import InputError
from nearhand.voicing.account import total_of
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.path import NEVER, Trellis, bounds_of_loops
from nearhand.voicing.search import Search, merged

MOST_PATHS = 50
_Entry = tuple[int, int, int]
"""Cost, the choice before, and which of the paths to it."""


def least_paths(trellis: Trellis, count: int) -> tuple[tuple[int, tuple[int, ...]], ...]:
    """The ``count`` cheapest paths, each with its cost, no two alike: fewer where there are no more.

    In order of cost; equal ones in the order of ``path.least_path``. Forbidden paths are left out.

    >>> least_paths(Trellis([(0, 0), (5, 0)], lambda i: ((1, 9), (2, 3))), 3)
    ((2, (0, 1)), (3, (1, 1)), (6, (0, 0)))
    """
    if not trellis.statics:
        return ()
    if not trellis.loop:
        return _paths_from(trellis, count, None)
    best: list[tuple[int, tuple[int, ...]]] = []
    for bound, first in bounds_of_loops(trellis):
        if len(best) >= count and bound > best[-1][0]:
            break
        best += _paths_from(trellis, count, first)
        best = sorted(best, key=lambda path: (path[0], path[1][::-1]))[:count]
    return tuple(best)


def _paths_from(trellis: Trellis, count: int, first: int | None) -> tuple[tuple[int, tuple[int, ...]], ...]:
    """The cheapest paths from one first choice back to itself, or from any (None) and open."""
    statics, steps = trellis.statics, trellis.steps
    layers: list[list[list[_Entry]]] = [
        [[(own, -1, 0)] if first in (None, place) else [] for place, own in enumerate(statics[0])]
    ]
    for layer in range(1, len(statics)):
        entries = [
            [(cost + own, before, rank) for cost, before, rank in _cheapest(layers[-1], step, count)]
            for step, own in zip(steps(layer), statics[layer], strict=True)
        ]
        layers.append(entries)
    back = (0,) * len(statics[-1]) if first is None else steps(0)[first]
    return tuple((cost, _traced(layers, last, rank)) for cost, last, rank in _cheapest(layers[-1], back, count))


def _cheapest(entries: list[list[_Entry]], step: tuple[int, ...], count: int) -> list[_Entry]:
    """The cheapest ways through any choice of a layer: cost with the step, the choice, and which of its paths."""
    ways = [
        [(path[0] + cost, place, rank) for rank, path in enumerate(paths)]
        for place, (paths, cost) in enumerate(zip(entries, step, strict=True))
    ]
    return [way for way in islice(merge(*ways), count) if way[0] < NEVER]


def _traced(layers: list[list[list[_Entry]]], last: int, rank: int) -> tuple[int, ...]:
    path = [last]
    for layer in range(len(layers) - 1, 0, -1):
        _, last, rank = layers[layer][last][rank]
        path.append(last)
    return tuple(reversed(path))


def other_paths(search: Search, count: int) -> tuple[tuple[int, tuple[Candidate, ...]], ...]:
    """The best paths of a search, each with its cost; hands that are searched apart differ in the right hand alone.

    Raises InputError where no path can be found.
    """
    strand = search.strands[0]
    found = [strand.taking(choices) for _, choices in least_paths(strand.trellis, count)]
    if not found:
        search.best_of(0)  # says why
    rest = [search.best_of(place) for place in range(1, len(search.strands))]
    paths = [merged([path, *rest]) for path in found]
    return tuple((total_of(search, path), path) for path in paths)


def numbered_path(search: Search, number: int) -> tuple[Candidate, ...]:
    """The path of a number, 1 for the best.

    Raises InputError where there are not so many.
    """
    if number > MOST_PATHS:
        raise InputError(f"paths are counted up to {MOST_PATHS} (got {number})", hint="write a smaller number")
    found = other_paths(search, number)
    if len(found) < number:
        have = "there is only one path" if len(found) == 1 else f"there are only {len(found)} paths"
        raise InputError(f"{have}, so there is no path {number}", hint="others lists them")
    return found[number - 1][1]
