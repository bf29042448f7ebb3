"""The exact least-cost path through a trellis (Viterbi), open or closed to a loop. Costs are whole numbers."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from nearhand.theory.record import NamedTuple

Table = tuple[tuple[int, ...], ...]
"""For each choice of a layer, the cost of coming there from each choice of the layer before."""
NEVER = 1 << 90
"""The cost of what is forbidden: more than any path costs."""


class Trellis(NamedTuple):
    """Layers of choices by their costs alone.

    ``statics``: per layer, what each choice costs by itself. ``steps``: the table of the way into layer ``i`` from the
    one before; in a loop, 0 asks for the way from the last layer back to the first.
    """

    statics: Sequence[Sequence[int]]
    steps: Callable[[int], Table]
    loop: bool = False


def least_path(trellis: Trellis) -> tuple[int, tuple[int, ...]]:
    """The cost of the cheapest path, and which choice it takes in each layer.

    A path costs the sum of its choices and its steps (in a loop also the step from the last layer to the first). Of
    equal paths the one whose last choice, then the one before, and so on, comes first in its layer. A cost of NEVER or
    more means that every path is forbidden.

    >>> least_path(Trellis([(0, 0), (5, 0)], lambda i: ((1, 9), (2, 3))))
    (2, (0, 1))
    """
    if not trellis.statics:
        return 0, ()
    if not trellis.loop:
        return cheapest_from(trellis, None)
    best: tuple[int, tuple[int, ...]] | None = None
    for bound, first in bounds_of_loops(trellis):
        if best is not None and bound > best[0]:
            break
        found = cheapest_from(trellis, first)
        if best is None or (found[0], found[1][::-1]) < (best[0], best[1][::-1]):
            best = found
    assert best is not None
    return best


def cheapest_from(trellis: Trellis, first: int | None) -> tuple[int, tuple[int, ...]]:
    """The cheapest path from one first choice back to itself, or from any (None) and open."""
    statics, steps = trellis.statics, trellis.steps
    costs: Sequence[int] = statics[0]
    if first is not None:
        costs = [cost if place == first else NEVER for place, cost in enumerate(costs)]
    came_from: list[list[int]] = []
    for layer in range(1, len(statics)):
        sources, new_costs = [], []
        for step, own in zip(steps(layer), statics[layer], strict=True):
            totals = list(map(int.__add__, costs, step))
            cheapest = min(totals)
            sources.append(totals.index(cheapest))
            new_costs.append(cheapest + own)
        came_from.append(sources)
        costs = new_costs
    if first is not None:
        costs = list(map(int.__add__, costs, steps(0)[first]))
    total = min(costs)
    path = [costs.index(total)]
    for sources in reversed(came_from):
        path.append(sources[path[-1]])
    return total, tuple(reversed(path))


def costs_to_the_end(trellis: Trellis) -> list[list[int]]:
    """For each layer and choice, the least cost of everything behind it (its own cost not counted), open at the end."""
    statics, steps = trellis.statics, trellis.steps
    behind: list[list[int]] = [[0] * len(statics[-1])]
    for layer in range(len(statics) - 1, 0, -1):
        beyond = list(map(int.__add__, behind[-1], statics[layer]))
        behind.append([min(map(int.__add__, column, beyond)) for column in zip(*steps(layer), strict=True)])
    return behind[::-1]


def bounds_of_loops(trellis: Trellis) -> list[tuple[int, int]]:
    """For each first choice a bound that no loop through it undercuts, and the choice: lowest bound first."""
    behind = costs_to_the_end(trellis)[0]
    closing = trellis.steps(0)
    bounds = zip(trellis.statics[0], behind, map(min, closing), strict=True)
    return sorted((own + rest + back, first) for first, (own, rest, back) in enumerate(bounds))
