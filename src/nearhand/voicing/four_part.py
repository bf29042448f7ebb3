"""Four parts, soprano, alto, tenor and bass: every placing of a chord that the textbook allows.

Rules: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Rules of spacing", "Summary of doubling rules";
ranges as three course pages give them, second-hand. Every placing lies under two hands, the left hand taking the bass,
or bass and tenor.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import combinations_with_replacement, permutations

from nearhand.voicing.candidates import Candidate, Layer
from nearhand.voicing.costs import RANGES
from nearhand.voicing.four_part_chords import PARTS, PartChord
from nearhand.voicing.hands import Register, is_clear, lies_in_hand

_WIDEST = 12
"""Semitones between soprano and alto, and between alto and tenor."""


@lru_cache(maxsize=4096)
def four_part_layer(chord: PartChord, register: Register, span: int) -> Layer:
    """Every placing of a chord in four parts: complete or without its fifth, in range, well spaced, under two hands."""
    found = []
    for bass in range(RANGES[0][0], RANGES[0][1] + 1):
        if bass % 12 == chord.bass:
            for upper in _upper_parts(chord, bass, register):
                reached = _reach((bass, *upper), span)
                if reached is not None and is_clear((bass, *upper)):
                    found.append(Candidate((bass,), upper, reached))
    return tuple(sorted(found))


def _upper_parts(chord: PartChord, bass: int, register: Register) -> list[tuple[int, int, int]]:
    placed = []
    for tones in _upper_tones(chord):
        for tenor in _in_part(tones[0], 1, bass, register):
            for alto in _in_part(tones[1], 2, tenor, register):
                if alto - tenor <= _WIDEST:
                    placed += [
                        (tenor, alto, soprano)
                        for soprano in _in_part(tones[2], 3, alto, register)
                        if soprano - alto <= _WIDEST
                    ]
    return placed


def _in_part(tone: int, part: int, above: int, register: Register) -> range:
    low, high = RANGES[part]
    low, high = max(low, above + 1, register.low), min(high, register.high)
    return range(low + (tone - low) % 12, high + 1, 12)


@lru_cache(maxsize=4096)
def _upper_tones(chord: PartChord) -> tuple[tuple[int, ...], ...]:
    """Tenor, alto and soprano tones that make the chord complete, or leave out its fifth; no single tone twice."""
    essential = set(chord.essential)
    found: dict[tuple[int, ...], None] = {}
    for three in combinations_with_replacement(sorted(chord.tones), 3):
        sounding = (chord.bass, *three)
        room = PARTS - len({chord.bass, *chord.tones})
        if essential - set(sounding):
            continue
        if any(sounding.count(tone) > 1 for tone in chord.single) or any(sounding.count(tone) > 3 for tone in three):
            continue
        if room <= 0 and len(set(sounding)) < 4 and not _lacks_fifth_alone(chord, sounding):
            continue
        found.update(dict.fromkeys(permutations(three)))
    return tuple(found)


def _lacks_fifth_alone(chord: PartChord, sounding: tuple[int, ...]) -> bool:
    """A seventh chord in root position without its fifth, the root doubled."""
    root = chord.tones[0]
    lacking = set(chord.tones) - set(sounding)
    return lacking <= set(chord.makeup.expected) and chord.bass == root and sounding.count(root) == 2


def _reach(notes: tuple[int, int, int, int], span: int) -> int | None:
    """How many upper parts the left hand takes so that both hands reach theirs; None when none does."""
    if lies_in_hand(notes[1:], span):
        return 0
    return 1 if lies_in_hand(notes[:2], span) and lies_in_hand(notes[2:], span) else None
