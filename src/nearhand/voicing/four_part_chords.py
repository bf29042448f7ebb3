"""Four parts: what a chord asks of them, its doublings and where its tones go in the next chord.

Rules: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Summary of doubling rules", "V7 to I voice
leading", "V to VI in minor", "Rules of melody".
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

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
from nearhand.voicing.costs import Makeup, Pull
from nearhand.voicing.reduction import right_hand_intervals

_LEADING = (KEY_LEADING_TONE, APPLIED_LEADING_TONE)
_NEVER_DOUBLED = (*_LEADING, RAISED_FOURTH, CHORDAL_SEVENTH, SUSPENDED_FOURTH)
_PULLING = (*_NEVER_DOUBLED, FOURTH_OVER_BASS, SIXTH_OVER_BASS, LOWERED_SECOND, FALLING_SIXTH)
_LOWERED_SECOND, _MAJOR_THIRD = -5, 4
_SUBMEDIANTS = (3, LOWERED_SIXTH)
PARTS = 4
_AUGMENTED_SECOND, _AUGMENTED_FOURTH = 9, 6
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
        Makeup(() if is_sixth else _grades(chord, before, tones, sound(chord.bass)), () if fifth is None else (fifth,)),
        pulls,
    )


def _four_tones(quality: Quality) -> tuple[int, ...]:
    """The tones of a chord that four parts have room for: of a large one root, third, seventh and colour."""
    if len(quality.intervals) <= PARTS or quality.layers is not None:
        return right_hand_intervals(quality)
    return (0, *right_hand_intervals(quality, PARTS - 1))


def _essential(tones: tuple[int, ...], fifth: int | None, bass: int) -> tuple[int, ...]:
    """The tones that must sound: all but the fifth, and but the root where a foreign bass leaves no room for it."""
    needed = tuple(tone for tone in tones if tone != fifth)
    return needed[1:] if len({bass, *needed}) > PARTS else needed


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
    is_triad = after.quality.interval(7) is None
    if chord.root == chord.bass == DOMINANT and after.root == after.bass and after.root in _SUBMEDIANTS and is_triad:
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
