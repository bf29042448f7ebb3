"""Layers of candidates: all voicings of a chord that a task leaves, whatever is pinned."""

from __future__ import annotations

from nearhand.theory.chord import RelativeChord
from nearhand.voicing.candidates import Layer, orders_in, whole_layer
from nearhand.voicing.families import FAMILIES, FOUR_PART
from nearhand.voicing.hands import SPAN
from nearhand.voicing.left_hand import left_patterns
from nearhand.voicing.strands import Strand
from nearhand.voicing.task import Task


def all_layers(task: Task) -> tuple[Layer, ...]:
    """All voicings of every chord that register and span leave, whatever is pinned."""
    if task.wishes.style == FOUR_PART:
        return four_part_strand(task).layers
    return tuple(layer_of(*step, task)[0] for step in task.steps)


def layer_at(place: int, task: Task) -> tuple[Layer, str]:
    """All voicings of one chord that register and span leave, whatever is pinned, and the family they are from."""
    if task.wishes.style == FOUR_PART:
        return four_part_strand(task).layers[place], FOUR_PART
    return layer_of(*task.steps[place], task)


def layer_of(relative: RelativeChord, after: RelativeChord | None, task: Task) -> tuple[Layer, str]:
    """Both hands' candidates for one chord, and the family they come from: the wished one, or that which stands in."""
    wishes, key, family = task.wishes, task.progression.key, task.family
    chord = relative.in_key(key)
    for each in (family, FAMILIES[family.otherwise], FAMILIES["close"]):
        orders = orders_in(each, relative, key, after)
        patterns = left_patterns(chord, task.left, task.bass_register_of(each), wishes.span)
        layer = whole_layer(orders, task.register_of(each), wishes.span, each.bass, patterns)
        if layer or (orders and whole_layer(orders, each.register, SPAN, each.bass, patterns)):
            return layer, each.name
    return (), family.name


def four_part_strand(task: Task) -> Strand:
    """Four parts: every placing that the textbook allows, with its doublings and tendency tones."""
    from nearhand.harmony.analysis import analyse
    from nearhand.voicing.four_part import four_part_layer
    from nearhand.voicing.four_part_chords import part_chords

    progression, wishes = task.progression, task.wishes
    register = task.register_of(FAMILIES[FOUR_PART])
    parts = part_chords(analyse(progression.relative_chords, progression.key.mode), progression.key, task.loop)
    layers = tuple(four_part_layer(part, register, wishes.span) for part in parts)
    strand = Strand(layers, register.centre, task.weights, wishes.top, task.loop)
    return strand._replace(makeups=tuple(part.makeup for part in parts), pulls=tuple(part.pulls for part in parts))
