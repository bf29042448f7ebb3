"""What a path costs, by name: chord by chord and in sum; and what it would cost in root positions."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.costs import Makeup, alone, between, paired_voices
from nearhand.voicing.costs import total as total_cost
from nearhand.voicing.part_writing import faults
from nearhand.voicing.search import Search
from nearhand.voicing.weights import NAMES, Weights

_PART_RULES = {
    "parallels": (
        "parallel fifths",
        "parallel octaves",
        "parallel unisons",
        "fifths by contrary motion",
        "octaves by contrary motion",
    ),
    "hidden": ("hidden fifths", "hidden octaves"),
    "overlap": ("overlapping voices",),
}
"""Costs that count faults between voices, and the faults of ``part_writing`` they count."""
_OWN_RULES = {
    "tendency": "a tendency tone does not go where it pulls",
    "spacing": "more than an octave between upper voices",
}


class Broken(NamedTuple):
    """A broken rule: the place (from 0) of the chord it leads into, its name, and the voices, counted from the bass."""

    place: int
    rule: str
    voices: tuple[int, ...] = ()


def amounts_of(search: Search, path: Sequence[Candidate]) -> tuple[Weights, ...]:
    """How much of each cost every chord adds: its own, and that of the step into it, which in a loop the first has."""
    pulls = search.strands[0].pulls or ((),) * len(path)
    makeups = search.strands[0].makeups or (Makeup(),) * len(path)
    rows = []
    for place, candidate in enumerate(path):
        own = alone(candidate, makeups[place])
        if place or search.task.loop:
            step = between(path[place - 1], candidate, pulls[place - 1])
            own = Weights(*map(int.__add__, own, step))
        rows.append(own)
    return tuple(rows)


def costs_of(search: Search, path: Sequence[Candidate]) -> Weights:
    """Amounts times weights, summed over the path."""
    weights = search.task.weights
    rows = [tuple(map(int.__mul__, amounts, weights)) for amounts in amounts_of(search, path)]
    return Weights(*map(sum, zip(*rows, strict=True))) if rows else Weights()


def parts_of(costs: Weights) -> tuple[tuple[str, int], ...]:
    """The costs that are not nothing, by name; ``top`` is that of a top line that should stay still."""
    return tuple((name, value) for name, value in zip((*NAMES, "top"), costs, strict=True) if value)


def total_of(search: Search, path: Sequence[Candidate]) -> int:
    """What a path costs in all."""
    return sum(total_cost(amounts, search.task.weights) for amounts in amounts_of(search, path))


def broken_rules(search: Search, path: Sequence[Candidate]) -> tuple[Broken, ...]:
    """Rules of part-writing that a path breaks, as far as the style's weights ask for them."""
    found: list[Broken] = []
    weights = search.task.weights
    asked = {rule for name, rules in _PART_RULES.items() if getattr(weights, name) for rule in rules}
    for place, amounts in enumerate(amounts_of(search, path)):
        if place or search.task.loop:
            old, new = paired_voices(path[place - 1], path[place])
            found += [
                Broken(place, fault.rule, (fault.lower, fault.upper))
                for fault in faults(old, new)
                if fault.rule in asked
            ]
        found += [
            Broken(place, rule)
            for name, rule in _OWN_RULES.items()
            if getattr(amounts, name) and getattr(weights, name)
        ]
    return tuple(found)
