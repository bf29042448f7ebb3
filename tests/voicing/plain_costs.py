"""What voicings cost, counted plainly by the sentences of ``voicing/weights.py``; the best path by trying them all."""

from __future__ import annotations

from functools import lru_cache
from itertools import combinations, pairwise, product

from nearhand.voicing.layers import layer_at
from nearhand.voicing.searches import search_for

PARTS = (lambda each: each.left + each.right, lambda each: each.upper, lambda each: each.right)
COMFORTABLE = ((42, 58), (50, 65), (57, 70), (62, 77))
"""Bass E2-C4, tenor C3-G4, alto G3-C5, soprano C4-G5 (three course pages agree, second-hand), less 2 at either end."""


@lru_cache(maxsize=65536)
def matched(before, after):
    """Pairs of old and new notes, the upper voices of two chords: no voice crosses, and the sum of moves is least.

    Of equal matchings the one that leaves out the highest notes.
    """
    if len(before) > len(after):
        return tuple((old, new) for new, old in matched(after, before))
    ways = [tuple(zip(before, chosen, strict=True)) for chosen in combinations(after, len(before))]
    return min(ways, key=lambda way: sum(abs(new - old) for old, new in way))


def step_amounts(before, after, pulls=()):
    """How much of each cost the step between two candidates holds."""
    pairs = list(matched(before.upper, after.upper))
    has_bass = bool(before.bass) and bool(after.bass)
    voices = [(before.bass[0], after.bass[0]), *pairs] if has_bass else pairs
    top = abs(before.upper[-1] - after.upper[-1])
    held = [note % 12 for note in before.upper if note in after.upper]
    common = {old % 12 for old in before.upper for new in after.upper if (new - old) % 12 == 0}
    middles = [(each.upper[0] + each.upper[-1]) / 2 for each in (before, after)]
    return {
        "movement": sum(abs(new - old) for old, new in pairs),
        "bass": abs(voices[0][1] - voices[0][0]) if has_bass else 0,
        "leap": top - 2 if top > 2 else 0,
        "shift": int(abs(middles[1] - middles[0])),
        "common": len([tone for tone in common if tone not in held]),
        "parallels": sum(are_parallel(low, high) for low, high in combinations(voices, 2)),
        "hidden": int(has_bass and is_hidden(before, after)),
        "tendency": sum(not is_resolved(voices, pull) for pull in pulls if pull.goals),
        "melody": sum(
            old % 12 == pull.tone and new in [old + step for step in pull.never]
            for pull in pulls
            for old, new in voices
        ),
        "overlap": sum(low[1] > high[0] or high[1] < low[0] for low, high in pairwise(voices)),
        "top": top,
    }


def are_parallel(low, high):
    """Whether two voices, each old and new note, go from a fifth, octave or unison to the same, and both move."""
    intervals = [(high[time] - low[time]) % 12 for time in (0, 1)]
    return intervals in ([0, 0], [7, 7]) and low[0] != low[1] and high[0] != high[1]


def is_hidden(before, after):
    """Whether the outer voices go the same way to a new fifth or octave, the top voice by more than a step."""
    (low, high), (new_low, new_high) = ((each.bass[0], each.upper[-1]) for each in (before, after))
    upwards = new_low > low and new_high > high + 2
    downwards = new_low < low and new_high < high - 2
    return (
        (upwards or downwards) and (new_high - new_low) % 12 in (0, 7) and (high - low - new_high + new_low) % 12 != 0
    )


def is_resolved(voices, pull):
    """Whether each voice with a pulling tone stays, steps to a goal, or, a leading tone within, falls to the fifth."""
    for place, (old, new) in enumerate(voices):
        steps = new != old and abs(new - old) <= 2 and new % 12 in pull.goals
        within = 0 < place < len(voices) - 1
        falls = pull.is_leading and within and old - new == 4
        if old % 12 == pull.tone and not (new == old or steps or falls):
            return False
    return True


def own_amounts(candidate, makeup=None):
    """How much of each cost a candidate holds by itself."""
    notes = candidate.bass[:1] + candidate.upper
    tones = [note % 12 for note in notes]
    grades, expected = ((), ()) if makeup is None else (makeup.grades, makeup.expected)
    outside = [
        max(low - note, note - high, 0)
        for note, (low, high) in zip(notes, COMFORTABLE, strict=False)
        if len(notes) == 4
    ]
    return {
        "doubling": sum(price * max(0, tones.count(tone) - 1) for tone, price in grades)
        + len([tone for tone in expected if tone not in tones]),
        "range": sum(outside),
        "spacing": len([gap for gap in pairwise(candidate.upper) if gap[1] - gap[0] > 12]),
    }


def weighed(amounts, weights):
    """Amounts times weights, summed."""
    return sum(amount * getattr(weights, name) for name, amount in amounts.items())


def step_cost(before, after, weights, pulls=()):
    """What a step costs: the weighed amounts, then the semitones of the bass, which decide between equals."""
    amounts = step_amounts(before, after, pulls)
    return weighed(amounts, weights), amounts["bass"]


def drift(candidate, centre):
    """Half semitones from the middle of the upper notes to a centre."""
    return abs(candidate.upper[0] + candidate.upper[-1] - 2 * centre)


def whole_cost(path, weights, loop, makeups=None, pulls=None):
    """What a path costs, and the semitones of its bass."""
    makeups, pulls = makeups or [None] * len(path), pulls or [()] * len(path)
    own = sum(weighed(own_amounts(*each), weights) for each in zip(path, makeups, strict=True))
    places = [*pairwise(range(len(path))), *([(len(path) - 1, 0)] if loop else [])]
    steps = [step_cost(path[old], path[new], weights, pulls[old]) for old, new in places]
    return own + sum(cost for cost, _ in steps), sum(bass for _, bass in steps)


def layers_of(task):
    """What register and span leave of each chord, pins and top line not yet asked: one strand for both hands."""
    return [layer_at(place, task)[0] for place in range(len(task.progression.relative_chords))]


def wanted(layers, wishes):
    """The layers with only the candidates that pins and melody name: by all notes, else by some of them."""
    pins = dict(wishes.pins)
    found = []
    for place, layer in enumerate(layers):
        pin, top = pins.get(place), wishes.melody[place] if place < len(wishes.melody) else None
        named = [[each for each in layer if pin in (None, part(each))] for part in PARTS]
        found.append([each for each in next(filter(None, named), []) if top is None or each.upper[-1] == top])
    return found


def count_of(layers):
    """How many paths there are."""
    count = 1
    for layer in layers:
        count *= len(layer)
    return count


def all_paths(layers, task, makeups=None, pulls=None):
    """Every path that the top line allows, as (cost, bass, drift, the places from the last chord back, the path)."""
    weights, top, loop, count = task.weights, task.wishes.top, task.loop, len(layers)
    makeups, pulls = makeups or [None] * count, pulls or [()] * count
    own = [
        [weighed(own_amounts(each, makeup), weights) for each in layer]
        for layer, makeup in zip(layers, makeups, strict=True)
    ]
    far = [[drift(each, task.register.centre) for each in layer] for layer in layers]
    ways = [(place, place + 1) for place in range(count - 1)] + [(count - 1, 0)] * loop
    tables = {
        way: [[_step(old, new, weights, pulls[way[0]], top) for new in layers[way[1]]] for old in layers[way[0]]]
        for way in ways
    }
    for choice in product(*(range(len(layer)) for layer in layers)):
        steps = [tables[way][choice[way[0]]][choice[way[1]]] for way in ways]
        if None not in steps:
            cost = sum(step[0] for step in steps) + sum(row[place] for row, place in zip(own, choice, strict=True))
            bass = sum(step[1] for step in steps)
            yield cost, bass, sum(row[place] for row, place in zip(far, choice, strict=True)), choice[::-1], choice


def _step(old, new, weights, pulls, top):
    change = new.upper[-1] - old.upper[-1]
    if (top == "rising" and change < 0) or (top == "falling" and change > 0):
        return None
    return step_cost(old, new, weights, pulls)


def rules_of(task):
    """What the chords of a search in four parts ask of doublings and tendency tones: (makeups, pulls)."""
    strand = search_for(task._replace(wishes=task.wishes._replace(pins=(), melody=()))).strands[0]
    return strand.makeups or None, strand.pulls or None


def best_of_all(task):
    """The best path of a task, found by trying every one: (cost, bass, path); None where there is no path."""
    layers = wanted(layers_of(task), task.wishes)
    if not all(layers):
        return None
    found = min(all_paths(layers, task, *rules_of(task)), default=None)
    if found is None:
        return None
    return found[0], found[1], tuple(layer[place] for layer, place in zip(layers, found[4], strict=True))
