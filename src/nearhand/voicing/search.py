"""From a progression and a player's wishes to strands of candidates, and the path that costs least through them.

Where no cost and no wish ties the hands together, each hand is a strand of its own and takes its own shortest way; else
both are searched as one.
"""

from __future__ import annotations

from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate, Layer, left_layer, orders_in, upper_layer
from nearhand.voicing.families import FAMILIES, FOUR_PART, FREE
from nearhand.voicing.layers import four_part_strand, layer_of
from nearhand.voicing.left_hand import SINGLE_NOTES, left_patterns
from nearhand.voicing.path import NEVER, least_path
from nearhand.voicing.strands import Strand
from nearhand.voicing.task import Task
from nearhand.voicing.weights import BETWEEN_HANDS, KEYBOARD

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.on_top import OnTop


class Search(NamedTuple):
    """The strands of a task; ``styles``: the family of each chord; ``on_top``: what of the melody lies on top."""

    task: Task
    strands: tuple[Strand, ...]
    styles: tuple[str, ...]
    on_top: OnTop | None = None

    def path(self) -> tuple[Candidate, ...]:
        """The candidate of each chord on the best path.

        Raises InputError where there is none.
        """
        return merged([self.best_of(place) for place in range(len(self.strands))])

    def best_of(self, place: int) -> tuple[Candidate, ...]:
        """The best path of one strand.

        Raises InputError where there is none.
        """
        strand = self.strands[place]
        total, choices = least_path(strand.trellis)
        if total >= NEVER:
            from nearhand.voicing.refusals import refuse_top_line

            refuse_top_line(strand, self.task)
        return strand.taking(choices)


def merged(paths: list[tuple[Candidate, ...]]) -> tuple[Candidate, ...]:
    """The candidates of both hands from those of each."""
    if len(paths) == 1:
        return paths[0]
    rights, lefts = paths
    return tuple(Candidate(left.bass, right.upper, right.reached) for right, left in zip(rights, lefts, strict=True))


def plain_search(task: Task) -> Search:
    """The search that a task asks for, a melody on top left aside.

    Raises ValueError for a style that does not exist, InputError for wishes that some chord cannot meet.
    """
    if task.wishes.style not in FAMILIES:
        raise ValueError(f"style must be one of {', '.join(FAMILIES)} (got {task.wishes.style!r})")
    strands, styles = _apart(task) if _is_apart(task) else _as_one(task)
    return Search(task, strands, styles)


def _is_apart(task: Task) -> bool:
    """Whether nothing ties the hands together."""
    family, wishes, weights = task.family, task.wishes, task.weights
    return (
        family.bass == FREE
        and family.otherwise == family.name
        and task.left in SINGLE_NOTES
        and task.register.low > task.bass_register_of(family).high
        and not (wishes.pins or task.linked)
        and not (weights != KEYBOARD and any(getattr(weights, name) for name in BETWEEN_HANDS))
    )


def _apart(task: Task) -> tuple[tuple[Strand, ...], tuple[str, ...]]:
    """A strand for each hand."""
    family, wishes, key = task.family, task.wishes, task.progression.key
    left = task.bass_register_of(family)
    register = task.register
    uppers, lefts = [], []
    for relative, after in task.steps:
        uppers.append(upper_layer(orders_in(family, relative, key, after), register, wishes.span))
        lefts.append(left_layer(left_patterns(relative.in_key(key), task.left, left, wishes.span)))
    right = Strand(_wished(tuple(uppers), task), register.centre, task.weights, wishes.top, task.loop)
    return (right, Strand(tuple(lefts), left.centre, KEYBOARD, "free", task.loop)), (family.name,) * len(uppers)


def _as_one(task: Task) -> tuple[tuple[Strand, ...], tuple[str, ...]]:
    """One strand for both hands."""
    if task.wishes.style == FOUR_PART:
        strand = four_part_strand(task)
        return (strand._replace(layers=_wished(strand.layers, task)),), (FOUR_PART,) * len(strand.layers)
    found = [layer_of(*step, task) for step in task.steps]
    layers = _wished(tuple(layer for layer, _ in found), task)
    strand = Strand(layers, task.register.centre, task.weights, task.wishes.top, task.loop)
    if task.weights.tendency or task.weights.melody or task.weights.doubling:
        rules = four_part_strand(task)
        strand = strand._replace(makeups=rules.makeups, pulls=rules.pulls)
    return (strand,), tuple(style for _, style in found)


def _wished(layers: tuple[Layer, ...], task: Task) -> tuple[Layer, ...]:
    """The layers with only those candidates that pins and a given top line leave.

    Raises InputError, which says what is missing, where nothing is left.
    """
    if all(layers) and not (task.wishes.melody or task.wishes.pins):
        return layers
    from nearhand.voicing.narrowing import narrowed

    return narrowed(layers, task)
