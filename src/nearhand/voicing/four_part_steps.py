"""Steps between two whole layers of four voices: the sums of ``costs.between``, worked out fast."""

from __future__ import annotations

from itertools import combinations

from nearhand.voicing.candidates import Candidate, Layer
from nearhand.voicing.costs import FREE_LEAP, Pull, allowed
from nearhand.voicing.weights import BASS, COST, Weights

_PAIRS = tuple(combinations(range(4), 2))
_BOTH_MOVE = tuple(
    sum(65 << bit for bit, (low, high) in enumerate(_PAIRS) if moving >> low & moving >> high & 1)
    for moving in range(16)
)
"""For each set of moving voices, the bits of the pairs in which both move."""
_Voices = tuple[int, ...]
_Bound = tuple[tuple[tuple[int, frozenset[int]], ...], ...]
"""For each pull of a chord, the voices that have its tone, and where they may go."""
_Barred = tuple[tuple[int, tuple[int, ...]], ...]
"""Voices, and the notes they should not go to."""


def four_part_table(  # noqa: PLR0912  # one loop, written out
    before: Layer, after: Layer, weights: Weights, pulls: tuple[Pull, ...]
) -> tuple[tuple[int, ...], ...]:
    """For each candidate of ``after`` the weighted cost from every candidate of ``before``, in units of COST and BASS.

    A voicing's perfect intervals are one number, a bit for each pair of voices and kind, so that most steps are seen at
    one glance to hold no parallels. The loop is written out: a thousand chords ask for half a million steps.
    """
    movement, bass_weight, leap, top_weight = weights.movement, weights.bass, weights.leap, weights.top
    parallels, hidden, overlap = weights.parallels, weights.hidden, weights.overlap
    tendency, melody = weights.tendency, weights.melody
    has_more = bool(weights.shift or weights.common)
    facts = [
        (each.voices, _perfect(each.voices), _bound(each.voices, pulls), _barred(each.voices, pulls), each)
        for each in before
    ]
    kept: dict[int, int] = {}  # one object a cost: tables are large
    rows = []
    for candidate in after:
        bass, tenor, alto, soprano = new = candidate.voices
        mask = _perfect(new)
        outer_is_perfect = bool(mask & _OUTER)
        row = []
        for (old_bass, old_tenor, old_alto, old_soprano), old_mask, bound, barred, old in facts:
            top, low = abs(soprano - old_soprano), abs(bass - old_bass)
            cost = movement * (abs(tenor - old_tenor) + abs(alto - old_alto) + top) + bass_weight * low
            if top > FREE_LEAP:
                cost += leap * (top - FREE_LEAP)
            if top_weight:
                cost += top_weight * top
            if (
                bass > old_tenor
                or tenor > old_alto
                or alto > old_soprano
                or tenor < old_bass
                or alto < old_tenor
                or soprano < old_alto
            ):
                cost += overlap * (
                    (bass > old_tenor or tenor < old_bass)
                    + (tenor > old_alto or alto < old_tenor)
                    + (alto > old_soprano or soprano < old_alto)
                )
            shared = mask & old_mask
            if shared:
                moving = (
                    (bass != old_bass)
                    + 2 * (tenor != old_tenor)
                    + 4 * (alto != old_alto)
                    + 8 * (soprano != old_soprano)
                )
                cost += parallels * (shared & _BOTH_MOVE[moving]).bit_count()
            if (
                outer_is_perfect
                and top > FREE_LEAP
                and (bass - old_bass) * (soprano - old_soprano) > 0
                and not shared & _OUTER
            ):
                cost += hidden
            for voices in bound:
                for voice, reached in voices:
                    if new[voice] not in reached:
                        cost += tendency
                        break
            for voice, notes in barred:
                if new[voice] in notes:
                    cost += melody
            if has_more:
                cost += _more(old, candidate, weights)
            value = COST * cost + BASS * low
            row.append(kept.setdefault(value, value))
        rows.append(tuple(row))
    return tuple(rows)


_OUTER = 65 << _PAIRS.index((0, 3))


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


def _bound(voices: _Voices, pulls: tuple[Pull, ...]) -> _Bound:
    return tuple(
        tuple(
            (voice, allowed(note, pull, is_outer=voice in (0, 3)))
            for voice, note in enumerate(voices)
            if note % 12 == pull.tone
        )
        for pull in pulls
        if pull.goals and pull.tone in [note % 12 for note in voices]
    )


def _barred(voices: _Voices, pulls: tuple[Pull, ...]) -> _Barred:
    return tuple(
        (voice, tuple(note + step for step in pull.never))
        for pull in pulls
        if pull.never
        for voice, note in enumerate(voices)
        if note % 12 == pull.tone
    )


def _more(old: Candidate, new: Candidate, weights: Weights) -> int:
    """The costs that four parts leave at nothing unless a player weighs them."""
    moved = abs(old.upper[0] + old.upper[-1] - new.upper[0] - new.upper[-1]) // 2
    shared = {note % 12 for note in old.upper} & {note % 12 for note in new.upper}
    held = {note % 12 for note in set(old.upper) & set(new.upper)}
    return weights.shift * moved + weights.common * len(shared - held)
