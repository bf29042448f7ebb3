"""Steps between two whole layers: the weighted sums of ``costs.between``."""

from __future__ import annotations

from functools import lru_cache

from nearhand.voicing.candidates import Layer
from nearhand.voicing.costs import Pull, between, total
from nearhand.voicing.weights import BASS, COST, Weights


@lru_cache(maxsize=1024)
def step_table(before: Layer, after: Layer, weights: Weights, pulls: tuple[Pull, ...]) -> tuple[tuple[int, ...], ...]:
    """For each candidate of ``after`` the weighted cost from each of ``before``, in units of COST and BASS."""
    if {len(candidate.voices) for candidate in before + after} == {4} and all(each.bass for each in before + after):
        from nearhand.voicing.four_part_steps import four_part_table

        return four_part_table(before, after, weights, pulls)
    return tuple(
        tuple(
            COST * total(between(old, new, pulls), weights)
            + BASS * (abs(new.bass[0] - old.bass[0]) if new.bass and old.bass else 0)
            for old in before
        )
        for new in after
    )
