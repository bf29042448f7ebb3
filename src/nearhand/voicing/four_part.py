"""Four parts, soprano, alto, tenor and bass: which placings of a chord the textbook allows, and what it asks of them.

Rules: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Rules of spacing", "Summary of doubling rules",
"Objectionable parallels", "V7 to I voice leading"; ranges as three course pages give them, second-hand. Every placing
lies under two hands, the left hand taking the bass, or bass and tenor.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import lru_cache
from itertools import combinations_with_replacement, permutations

from nearhand.harmony.analysis import Analysis
from nearhand.harmony.tendencies import (
    APPLIED_LEADING_TONE,
    CHORDAL_SEVENTH,
    FALLING_SIXTH,
    FOURTH_OVER_BASS,
    KEY_LEADING_TONE,
    LOWERED_SECOND,
    RAISED_FOURTH,
    SIXTH_OVER_BASS,
    SUSPENDED_FOURTH,
    Tendency,
    is_augmented_sixth,
    tendencies,
)
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, LOWERED_SIXTH, SUPERTONIC
from nearhand.theory.quality import Quality
from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate, Layer
from nearhand.voicing.costs import RANGES, Makeup, Pull
from nearhand.voicing.hands import Register, is_clear, lies_in_hand
from nearhand.voicing.reduction import right_hand_intervals

_LEADING = (KEY_LEADING_TONE, APPLIED_LEADING_TONE)
_NEVER_DOUBLED = (*_LEADING, RAISED_FOURTH, CHORDAL_SEVENTH, SUSPENDED_FOURTH)
_PULLING = (*_NEVER_DOUBLED, FOURTH_OVER_BASS, SIXTH_OVER_BASS, LOWERED_SECOND, FALLING_SIXTH)
_LOWERED_SECOND, _MAJOR_THIRD = -5, 4
_SUBMEDIANTS = (3, LOWERED_SIXTH)
_PARTS = 4
_AUGMENTED_SECOND, _AUGMENTED_FOURTH = 9, 6
_WIDEST = 12
"""Semitones between soprano and alto, and between alto and tenor."""
_DIMINISHED_FIFTH = -6
_POOR, _ALLOWED, _FINE = 3, 1, 0
"""Prices of a doubling: what the textbook does not want, what it lets pass, what it asks for."""


class PartChord(NamedTuple):
    """A chord as four parts see it, pitch classes in semitones above C.

    ``tones`` from the root up, four at most, without a foreign bass; ``essential``: those that must sound; ``makeup``:
    how it is doubled; ``pulls``: where its tendency tones go in the next chord.
    """

    bass: int
    tones: tuple[int, ...]
    essential: tuple[int, ...]
    single: tuple[int, ...]
    makeup: Makeup
    pulls: tuple[Pull, ...]


def part_chords(analyses: Sequence[Analysis], key: Key, loop: bool = False) -> tuple[PartChord, ...]:
    """What four parts need to know of each chord of a progression."""
    count = len(analyses)
    chords = [each.chord for each in analyses]
    return tuple(
        _part_chord(
            each,
            chords[place - 1] if loop or place else None,
            chords[(place + 1) % count] if loop or place + 1 < count else None,
            key,
        )
        for place, each in enumerate(analyses)
    )


def _part_chord(analysis: Analysis, before: RelativeChord | None, after: RelativeChord | None, key: Key) -> PartChord:
    chord, quality = analysis.chord, analysis.chord.quality
    found = tendencies(chord, after, key.mode, analysis.target)
    tonic = key.tonic.fifths

    def sound(place: int) -> int:
        return (place + tonic) * 7 % 12

    root = chord.root
    kept = _four_tones(quality)
    tones = tuple(sound(root + place) for place in kept)
    fifth = sound(root + 1) if quality.interval(5) == 1 and len(kept) > 2 else None
    single = {sound(each.place) for each in found if each.kind in _NEVER_DOUBLED}
    is_sixth = is_augmented_sixth(chord, after)
    if is_sixth:
        single.add(sound(LOWERED_SIXTH))
    pulls = tuple(
        Pull(sound(place), tuple(map(sound, goals)), is_leading)
        for place, goals, is_leading in _pulls(chord, after, found)
        if place != chord.bass or (after is not None and after.bass in goals)
    ) + tuple(Pull(sound(place), (), never=never) for place, never in _augmented(chord, after))
    return PartChord(
        sound(chord.bass),
        tones,
        _essential(tones, fifth, sound(chord.bass)),
        tuple(sorted(single)),
        Makeup(() if is_sixth else _grades(chord, before, tones, sound(chord.bass)), _expected(fifth)),
        pulls,
    )


def _four_tones(quality: Quality) -> tuple[int, ...]:
    """The tones of a chord that four parts have room for: of a large one root, third, seventh and colour."""
    if len(quality.intervals) <= _PARTS or quality.layers is not None:
        return right_hand_intervals(quality)
    return (0, *right_hand_intervals(quality, _PARTS - 1))


def _essential(tones: tuple[int, ...], fifth: int | None, bass: int) -> tuple[int, ...]:
    """The tones that must sound: all but the fifth, and but the root where a foreign bass leaves no room for it."""
    needed = tuple(tone for tone in tones if tone != fifth)
    return needed[1:] if len({bass, *needed}) > _PARTS else needed


def _pulls(
    chord: RelativeChord, after: RelativeChord | None, found: Sequence[Tendency]
) -> Iterator[tuple[int, tuple[int, ...], bool]]:
    """Where tendency tones go: place, goals, and whether it is a leading tone.

    The seventh of V43 may rise into I6; the lowered sixth falls before the leading tone in minor, too, where it is the
    root of VI, for an augmented second is not sung ("Voice leading V7 to I", "Rules of melody").
    """
    if after is None:
        return
    rises = (chord.root, chord.bass) == (DOMINANT, SUPERTONIC) and after.root == 0 and after.bass in (_MAJOR_THIRD, -3)
    for each in found:
        if each.is_resolved and each.kind in _PULLING:
            goals = (*each.expected, DOMINANT) if rises and each.kind == CHORDAL_SEVENTH else each.expected
            yield each.place, goals, each.kind in _LEADING
    if chord.root == chord.bass == DOMINANT and after.root == after.bass and after.root in _SUBMEDIANTS:
        yield SUPERTONIC, (0,), False  # the third of V rises, the others fall ("V to VI in minor")
    is_free = LOWERED_SIXTH in chord.places and LOWERED_SIXTH not in [each.place for each in found]
    if is_free and {LEADING_TONE, DOMINANT} <= set(after.places):
        yield LOWERED_SIXTH, (DOMINANT,), False


def _augmented(chord: RelativeChord, after: RelativeChord | None) -> Iterator[tuple[int, tuple[int, ...]]]:
    """Tones from which a voice could go by an augmented second or fourth, and by how many semitones, up or down.

    Source: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Rules of melody".
    """
    if after is None:
        return
    reached = {after.bass, *after.places}
    for place in dict.fromkeys((chord.bass, *chord.places)):
        steps = [(_AUGMENTED_SECOND, 3), (-_AUGMENTED_SECOND, -3), (_AUGMENTED_FOURTH, 6), (-_AUGMENTED_FOURTH, -6)]
        never = tuple(semitones for fifths, semitones in steps if place + fifths in reached)
        if never:
            yield place, never


def _expected(fifth: int | None) -> tuple[int, ...]:
    return () if fifth is None else (fifth,)


def _grades(
    chord: RelativeChord, before: RelativeChord | None, tones: tuple[int, ...], bass: int
) -> tuple[tuple[int, int], ...]:
    """The price of doubling each tone ("Summary of doubling rules").

    Root position: the root, in VI after V the third, too. First inversion: root or fifth, of a diminished triad and the
    Neapolitan the bass. Second inversion: the bass. The Italian sixth has the tonic twice, for the rest is single.
    """
    fifth = chord.quality.interval(5)
    sound_of_root = tones[0]
    is_diminished = fifth == _DIMINISHED_FIFTH
    is_deceptive = before is not None and before.root == before.bass == DOMINANT and chord.root in _SUBMEDIANTS
    is_neapolitan = chord.root == _LOWERED_SECOND and chord.quality.interval(3) == _MAJOR_THIRD
    prices = {}
    for tone in tones:
        if bass == sound_of_root:
            is_fine = (tone == sound_of_root and not is_diminished) or (is_deceptive and tone == tones[1])
            prices[tone] = _FINE if is_fine else _ALLOWED
        elif len(tones) > 2 and bass == tones[1]:
            is_fine = (tone == bass) == (is_diminished or is_neapolitan)
            prices[tone] = _FINE if is_fine else _ALLOWED if is_diminished or is_neapolitan else _POOR
        else:
            prices[tone] = _FINE if tone == bass else _ALLOWED
    return tuple((tone, price) for tone, price in prices.items() if price)


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
        room = _PARTS - len({chord.bass, *chord.tones})
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
