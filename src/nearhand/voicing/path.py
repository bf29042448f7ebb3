"""The exact least-cost path through layers of candidates (Viterbi), open or closed to a loop."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import lru_cache
from itertools import pairwise

Candidate = tuple[int, ...]
Layer = tuple[Candidate, ...]
Cost = Callable[[Candidate, Candidate], int]

_MOVEMENT = 1 << 40
"""Weight of a semitone of movement against one unit of drift: the sum of all drift stays far below it."""


def least_path(layers: Sequence[Layer], move_cost: Cost, centre: int, loop: bool = False) -> tuple[int, ...]:
    """For each layer, which of its candidates the cheapest path takes.

    A path costs the sum of ``move_cost`` between neighbours (in a loop also from the last back to the first). Among
    paths of equal cost the one nearest to ``centre`` is taken: the sum over its chords of the distance between
    ``centre`` and the middle of lowest and highest note. If that is equal too, the path whose last chord, then the
    one before, and so on, comes first in its layer.

    >>> layers = (((60, 64, 67), (64, 67, 72)), ((60, 65, 69), (65, 69, 72)))
    >>> from nearhand.voicing.motion import motion_size
    >>> least_path(layers, motion_size, centre=69)
    (1, 1)
    """
    if not layers:
        return ()
    firsts = range(len(layers[0])) if loop else (None,)
    paths = [_cheapest_from(layers, move_cost, centre, first) for first in firsts]
    return min(paths, key=lambda path: (path[0], path[1][::-1]))[1]


def _cheapest_from(
    layers: Sequence[Layer], move_cost: Cost, centre: int, first: int | None
) -> tuple[int, tuple[int, ...]]:
    """The cost and the choices of the cheapest path, from one first candidate back to itself, or from any (None)."""
    costs = _drifts(layers[0], centre)
    if first is not None:
        costs = tuple(cost if place == first else _NEVER for place, cost in enumerate(costs))
    came_from: list[tuple[int, ...]] = []
    for before, layer in pairwise(layers):
        drifts = _drifts(layer, centre)
        steps = _steps(before, layer, move_cost)
        sources, new_costs = [], []
        for place, step in enumerate(steps):
            totals = list(map(int.__add__, costs, step))
            cheapest = min(totals)
            sources.append(totals.index(cheapest))
            new_costs.append(cheapest + drifts[place])
        came_from.append(tuple(sources))
        costs = tuple(new_costs)
    if first is not None:
        back = _steps(layers[-1], layers[0], move_cost)[first]
        costs = tuple(map(int.__add__, costs, back))
    total = min(costs)
    path = [costs.index(total)]
    for sources_of_layer in reversed(came_from):
        path.append(sources_of_layer[path[-1]])
    return total, tuple(reversed(path))


_NEVER = 1 << 80


@lru_cache(maxsize=4096)
def _drifts(layer: Layer, centre: int) -> tuple[int, ...]:
    return tuple(abs(candidate[0] + candidate[-1] - 2 * centre) for candidate in layer)


@lru_cache(maxsize=4096)
def _steps(before: Layer, after: Layer, move_cost: Cost) -> tuple[tuple[int, ...], ...]:
    """For each candidate of ``after`` the weighted cost from every candidate of ``before``."""
    return tuple(tuple(_MOVEMENT * move_cost(old, new) for old in before) for new in after)
