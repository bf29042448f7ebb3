"""Steps between two whole layers of four voices: the sums of ``costs.between``, worked out fast."""

from __future__ import annotations

from itertools import combinations

from nearhand.voicing.candidates import Layer
from nearhand.voicing.costs import FREE_LEAP, Pull, allowed
from nearhand.voicing.weights import BASS, COST, Weights

_PAIRS = tuple(combinations(range(4), 2))
_Voices = tuple[int, ...]
_Bound = tuple[tuple[tuple[int, frozenset[int]], ...], ...]
"""For each pull of a chord, the voices that have its tone, and where they may go."""


def four_part_table(
    before: Layer, after: Layer, weights: Weights, pulls: tuple[Pull, ...]
) -> tuple[tuple[int, ...], ...]:
    """For each candidate of ``after`` the weighted cost from every candidate of ``before``, in units of COST and BASS.

    A voicing's perfect intervals are one number, a bit for each pair of voices and kind, so that most steps are seen at
    one glance to hold no parallels.
    """
    olds = [each.voices for each in before]
    facts = [(voices, _perfect(voices), _bound(voices, pulls)) for voices in olds]
    kept: dict[int, int] = {}  # one object a cost: tables are large
    rows = []
    for new in (each.voices for each in after):
        mask = _perfect(new)
        outer_is_perfect = (new[3] - new[0]) % 12 in (0, 7)
        row = []
        for old, old_mask, bound in facts:
            cost = _motion(old, new, weights)
            if mask & old_mask:
                cost += weights.parallels * _parallels(old, new, mask & old_mask)
            if outer_is_perfect and _is_hidden(old, new):
                cost += weights.hidden
            for voices in bound:
                for voice, reached in voices:
                    if new[voice] not in reached:
                        cost += weights.tendency
                        break
            value = COST * cost + BASS * abs(new[0] - old[0])
            row.append(kept.setdefault(value, value))
        rows.append(tuple(row))
    return tuple(rows)


def _motion(old: _Voices, new: _Voices, weights: Weights) -> int:
    """What the voices' ways cost, each by itself and against its neighbours."""
    bass, tenor, alto, soprano = new
    old_bass, old_tenor, old_alto, old_soprano = old
    top = abs(soprano - old_soprano)
    cost = weights.movement * (abs(tenor - old_tenor) + abs(alto - old_alto) + top)
    cost += weights.bass * abs(bass - old_bass) + weights.top * top
    if top > FREE_LEAP:
        cost += weights.leap * (top - FREE_LEAP)
    if bass > old_tenor or tenor > old_alto or alto > old_soprano:
        cost += weights.overlap * ((bass > old_tenor) + (tenor > old_alto) + (alto > old_soprano))
    if tenor < old_bass or alto < old_tenor or soprano < old_alto:
        cost += weights.overlap * (
            (tenor < old_bass and not bass > old_tenor)
            + (alto < old_tenor and not tenor > old_alto)
            + (soprano < old_alto and not alto > old_soprano)
        )
    if weights.shift:
        cost += weights.shift * (abs(tenor + soprano - old_tenor - old_soprano) // 2)
    if weights.common:
        shared = {note % 12 for note in old[1:]} & {note % 12 for note in new[1:]}
        cost += weights.common * len(shared - {note % 12 for note in set(old[1:]) & set(new[1:])})
    return cost


def _perfect(voices: _Voices) -> int:
    """A bit for each pair of voices that form a fifth (the lower six) or an octave or unison (the higher six)."""
    mask = 0
    for bit, (low, high) in enumerate(_PAIRS):
        interval = (voices[high] - voices[low]) % 12
        if interval == 7:
            mask |= 1 << bit
        elif interval == 0:
            mask |= 64 << bit
    return mask


def _parallels(old: _Voices, new: _Voices, shared: int) -> int:
    """How many of the perfect intervals that both voicings have were reached with both voices moving."""
    return sum(
        bool(shared & (65 << bit)) and old[low] != new[low] and old[high] != new[high]
        for bit, (low, high) in enumerate(_PAIRS)
    )


def _is_hidden(old: _Voices, new: _Voices) -> bool:
    low, high = new[0] - old[0], new[3] - old[3]
    same = (old[3] - old[0]) % 12 == (new[3] - new[0]) % 12
    return low * high > 0 and abs(high) > FREE_LEAP and not same


def _bound(voices: _Voices, pulls: tuple[Pull, ...]) -> _Bound:
    return tuple(
        tuple(
            (voice, allowed(note, pull, is_outer=voice in (0, 3)))
            for voice, note in enumerate(voices)
            if note % 12 == pull.tone
        )
        for pull in pulls
    )
