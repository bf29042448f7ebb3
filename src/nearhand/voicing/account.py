"""What a path costs, by name: chord by chord and in sum; and what it would cost in root positions."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from nearhand.theory.chord import Chord
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.costs import Makeup, Pull, alone, augmented, between, paired_voices, strays
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
STRAYING = "a tendency tone does not go where it pulls"
AUGMENTED = "an augmented step or leap"
WIDE = "more than an octave between upper voices"


class Broken(NamedTuple):
    """A broken rule: the place (from 0) of the chord it leads into, its name, and the voices, counted from the bass.

    ``pull``: that of the tendency tone, where one does not go where it pulls.
    """

    place: int
    rule: str
    voices: tuple[int, ...] = ()
    pull: Pull | None = None


def where_it_pulls(broken: Broken, chords: Sequence[Chord]) -> tuple[PitchClass, tuple[PitchClass, ...]] | None:
    """A tendency tone that goes astray, and where it should go, spelled as the chords are; None for other rules."""
    if broken.pull is None:
        return None
    before, after = (
        {tone.semitones: tone for tone in (chord.bass, *chord.tones)}
        for chord in (chords[broken.place - 1], chords[broken.place])
    )
    return before[broken.pull.tone], tuple(after[goal] for goal in broken.pull.goals if goal in after)


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


def ties_of(search: Search, path: Sequence[Candidate]) -> tuple[int, int]:
    """What decides between paths of equal cost: semitones of the bass, then half semitones from the register's centre.

    The last resort, which these two leave open, is the order of the voicings from low to high.
    """
    basses = [candidate.bass[0] for candidate in path if candidate.bass]
    steps = [*pairwise(basses), *([(basses[-1], basses[0])] if search.task.loop and basses else [])]
    centre = search.strands[0].centre
    drift = sum(abs(sum((each.upper[0], each.upper[-1])) - 2 * centre) for each in path if each.upper)
    return sum(abs(after - before) for before, after in steps), drift


def broken_rules(search: Search, path: Sequence[Candidate]) -> tuple[Broken, ...]:
    """Rules of part-writing that a path breaks, as far as the style's weights ask for them."""
    found: list[Broken] = []
    weights = search.task.weights
    asked = {rule for name, rules in _PART_RULES.items() if getattr(weights, name) for rule in rules}
    pulls = search.strands[0].pulls if weights.tendency or weights.melody else ()
    for place, candidate in enumerate(path):
        if place or search.task.loop:
            old, new = paired_voices(path[place - 1], candidate)
            found += [
                Broken(place, fault.rule, (fault.lower, fault.upper))
                for fault in faults(old, new)
                if fault.rule in asked
            ]
            for pull in pulls[place - 1] if pulls else ():
                found += [Broken(place, STRAYING, (voice,), pull) for voice in strays(old, new, pull)]
                found += [Broken(place, AUGMENTED, (voice,)) for voice in augmented(old, new, pull)]
        if weights.spacing and alone(candidate).spacing:
            found.append(Broken(place, WIDE))
    return tuple(found)
