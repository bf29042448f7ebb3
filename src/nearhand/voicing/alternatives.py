"""Why a voicing was taken: what the whole path would cost with another voicing of the same chord."""

from __future__ import annotations

from nearhand.voicing.candidates import Candidate
from nearhand.voicing.path import NEVER, Trellis, cheapest_from, costs_to_the_end, least_path
from nearhand.voicing.search import Search, merged


def alternatives(search: Search, place: int, taken: Candidate, count: int = 2) -> tuple[tuple[Candidate, ...], ...]:
    """The best paths that take another voicing of the chord at a place (from 0), best first, no two alike at it.

    ``taken`` is the voicing that is not asked about. Where the hands are searched apart it is the right hand's that
    differs. Fewer than ``count`` where the chord has no more.
    """
    strand = search.strands[0]
    layer = strand.layers[place]
    through = costs_through(strand.trellis, place)
    ranked = sorted(
        (cost, choice)
        for choice, cost in enumerate(through)
        if cost < NEVER and (layer[choice].upper, layer[choice].bass[:1]) != _own(taken, layer[choice])
    )
    rest = [search.best_of(other) for other in range(1, len(search.strands))]
    found = []
    for _, choice in ranked[:count]:
        only = (*strand.layers[:place], (layer[choice],), *strand.layers[place + 1 :])
        narrowed = strand._replace(layers=only)
        found.append(merged([narrowed.taking(least_path(narrowed.trellis)[1]), *rest]))
    return tuple(found)


def _own(taken: Candidate, like: Candidate) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """What tells a taken voicing apart, as far as the other one has it."""
    return taken.upper, taken.bass[:1] if like.bass else ()


def costs_through(trellis: Trellis, place: int) -> list[int]:
    """For each choice of a layer, what the cheapest path through it costs.

    >>> costs_through(Trellis([(0, 0), (5, 0)], lambda i: ((1, 9), (2, 3))), 1)
    [6, 2]
    """
    if trellis.loop:
        turned = _turned(trellis, place)
        return [cheapest_from(turned, choice)[0] for choice in range(len(trellis.statics[place]))]
    before = list(trellis.statics[0])
    for layer in range(1, place + 1):
        before = [
            min(map(int.__add__, before, step)) + own
            for step, own in zip(trellis.steps(layer), trellis.statics[layer], strict=True)
        ]
    return list(map(int.__add__, before, costs_to_the_end(trellis)[place]))


def _turned(trellis: Trellis, place: int) -> Trellis:
    """A loop that begins at another layer."""
    count = len(trellis.statics)
    statics = [trellis.statics[(place + layer) % count] for layer in range(count)]
    return Trellis(statics, lambda layer: trellis.steps((place + layer) % count), loop=True)
