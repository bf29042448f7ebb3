"""What is searched as one: a layer of candidates for each chord, and what they and the steps between them cost."""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate, Layer
from nearhand.voicing.motion import motion_size
from nearhand.voicing.path import NEVER, Table, Trellis
from nearhand.voicing.weights import BASS, COST, KEYBOARD, Weights
from nearhand.voicing.wishes import FALLING, RISING

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.costs import Makeup, Pull


class Strand(NamedTuple):
    """What is searched as one: a layer for each chord, the centre it keeps near, and what ties its chords together."""

    layers: tuple[Layer, ...]
    centre: int
    weights: Weights
    top: str
    loop: bool
    makeups: tuple[Makeup, ...] = ()
    pulls: tuple[tuple[Pull, ...], ...] = ()

    @property
    def trellis(self) -> Trellis:
        """The costs of the strand's candidates and steps."""
        layers, pulls = self.layers, self.pulls or ((),) * len(self.layers)

        def steps(place: int) -> Table:
            return _steps(layers[place - 1], layers[place], self.weights, pulls[place - 1], self.top)

        if self.makeups:
            statics = [_statics(*each, self.centre, self.weights) for each in zip(layers, self.makeups, strict=True)]
        else:
            statics = [_statics(layer, None, self.centre, self.weights) for layer in layers]
        return Trellis(statics, steps, self.loop)

    def taking(self, choices: tuple[int, ...]) -> tuple[Candidate, ...]:
        """The candidates of a path."""
        return tuple(layer[choice] for layer, choice in zip(self.layers, choices, strict=True))


@lru_cache(maxsize=4096)
def _statics(layer: Layer, makeup: Makeup | None, centre: int, weights: Weights) -> tuple[int, ...]:
    """What each candidate costs by itself: how far its middle is from the centre, and what its style asks of it."""
    drifts = tuple(abs(sum(each.outer) - 2 * centre) for each in layer)
    if not (weights.doubling or weights.range or weights.spacing):
        return drifts
    from nearhand.voicing.costs import Makeup, alone, total

    own = makeup or Makeup()
    return tuple(drift + COST * total(alone(each, own), weights) for drift, each in zip(drifts, layer, strict=True))


@lru_cache(maxsize=2048)
def _steps(before: Layer, after: Layer, weights: Weights, pulls: tuple[Pull, ...], top: str) -> Table:
    """For each candidate of ``after`` the cost of coming from every candidate of ``before``."""
    if weights == KEYBOARD:
        table = tuple(
            tuple(
                [
                    COST * motion_size(old.upper, new.upper)
                    + (BASS * abs(new.bass[0] - old.bass[0]) if new.bass and old.bass else 0)
                    for old in before
                ]
            )
            for new in after
        )
    else:
        from nearhand.voicing.steps import step_table

        table = step_table(before, after, weights, pulls)
    if top not in (FALLING, RISING):
        return table
    sign = 1 if top == RISING else -1
    return tuple(
        tuple(
            NEVER if sign * (new.upper[-1] - old.upper[-1]) < 0 else cost for cost, old in zip(row, before, strict=True)
        )
        for row, new in zip(table, after, strict=True)
    )
