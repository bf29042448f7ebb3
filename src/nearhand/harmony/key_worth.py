"""What each chord of a progression is worth in each key: the numbers that the search for regions adds up.

The weights are ours (common practice, no source). They are whole numbers, hundredths of one chord that fits, so that
equal paths are equal.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache

from nearhand.harmony.applied import Target, applied_target
from nearhand.harmony.key_finding import (
    candidate_keys,
    chord_fit,
    has_telling_seventh,
    is_cadence,
    is_predominant,
    is_tonic,
)
from nearhand.harmony.sources import own_source
from nearhand.theory.chord import Chord, RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR, Mode
from nearhand.theory.record import NamedTuple

EXPLAINED = 60
"""What a chord is worth that the key explains by the chord behind it (its own chords: 100)."""
OPENING, CLOSING = 70, 50
SEVENTH_CADENCE, TRIAD_CADENCE, PREPARED_CADENCE = 50, 10, 40
CHANGE, CHANGE_PER_FIFTH, NO_PIVOT, UNCONFIRMED, CHURCH_MODE = 100, 5, 5, 80, 60
"""Costs of a change of key, of each step it goes round the circle of fifths, of a change without a pivot chord, of a
region without cadence, and of a region in another mode than major or minor."""
_LONGEST_DOMINANT = 4
"""Chords before the goal of a cadence among which its dominant is held, and what prepares it is looked for."""
CIRCLE = 12
"""Signatures on the circle of fifths."""


class Worth(NamedTuple):
    """What the search adds up.

    By chord, each a row of one value a key: how well it fits, what a cadence that ends on it tells, whether it belongs
    to the key, and whether the key may be entered by it as by a pivot. By key: its signature (0 to 11), the cost of a
    region in it, and what opening and closing the piece in it are worth.
    """

    keys: tuple[Key, ...]
    fits: tuple[tuple[int, ...], ...]
    cadences: tuple[tuple[int, ...], ...]
    owned: tuple[tuple[bool, ...], ...]
    entered: tuple[tuple[bool, ...], ...]
    signatures: tuple[int, ...]
    entry: tuple[int, ...]
    opening: tuple[int, ...]
    closing: tuple[int, ...]


def worth_of(chords: Sequence[Chord]) -> Worth:
    """What each chord is worth in each key that comes into question.

    Raises ValueError when there are no chords.
    """
    keys = tuple(candidate_keys(chords))
    columns = [_column([relative_to(chord, key) for chord in chords], key.mode) for key in keys]
    fits, cadences, owned, entered, opening, closing = zip(*columns, strict=True)
    by_chord = [tuple(zip(*rows, strict=True)) for rows in (fits, cadences, owned, entered)]
    signatures, entry = tuple(key.signature % CIRCLE for key in keys), tuple(entry_cost(key) for key in keys)
    return Worth(keys, by_chord[0], by_chord[1], by_chord[2], by_chord[3], signatures, entry, opening, closing)


_Column = tuple[list[int], list[int], list[bool], list[bool], int, int]


def _column(chords: list[RelativeChord], mode: Mode) -> _Column:
    fits: list[int] = []
    after, target = None, None
    for chord in reversed(chords):  # from the end, for what a chord is applied to may depend on the one behind it
        fit, target = _fit(chord, mode, after, target)
        fits.append(fit)
        after = chord
    cadences = [cadence_ending_at(chords, place, mode) for place in range(len(chords))]
    owned = [is_own(chord, mode) for chord in chords]
    entered = [may_be_pivot(chord, mode) for chord in chords]
    closing = _is_at_rest(chords[-1], mode) or (mode == MINOR and _is_at_rest(chords[-1], MAJOR))
    return fits[::-1], cadences, owned, entered, OPENING * _is_at_rest(chords[0], mode), CLOSING * closing


def _is_at_rest(chord: RelativeChord, mode: Mode) -> bool:
    return is_tonic(chord, mode) and not chord.quality.is_dominant_seventh


@lru_cache(maxsize=16384)
def _fit(
    chord: RelativeChord, mode: Mode, after: RelativeChord | None, target_after: Target | None
) -> tuple[int, Target | None]:
    """What one chord is worth before the chord that follows, and what it is applied to. No stranger costs extra."""
    target = applied_target(chord, mode, after, target_after)
    fit = max(round(100 * chord_fit(chord, mode)), 0)
    return (fit if target is None else max(fit, EXPLAINED)), target


def cadence_ending_at(chords: Sequence[RelativeChord], place: int, mode: Mode) -> int:
    """What a cadence is worth whose goal is the chord at a place; 0 where there is none.

    A dominant with its seventh tells most; ii, IV or a six-four on the dominant's bass before it confirm it.
    """
    if place == 0 or not is_cadence(chords[place - 1], chords[place], mode) or _moves_on(chords, place):
        return 0
    telling = prepared = False
    for before in range(place - 1, max(place - 1 - _LONGEST_DOMINANT, -1), -1):
        chord = chords[before]
        if chord.root == 0 and chord.bass == DOMINANT:
            prepared = True
            break
        if before < place - 1 and chord.root != DOMINANT:
            prepared = is_predominant(chord)
            break
        telling = telling or has_telling_seventh(chord)
    return (SEVENTH_CADENCE if telling else TRIAD_CADENCE) + PREPARED_CADENCE * prepared


def _moves_on(chords: Sequence[RelativeChord], place: int) -> bool:
    """Whether a tonic is no goal: on the dominant's bass, or in minor as the ii of a dominant that follows at once."""
    after = chords[place + 1] if place + 1 < len(chords) else None
    is_second = after is not None and after.root == -1 and after.quality.is_dominant_seventh
    return chords[place].bass == DOMINANT or (is_second and chords[place].quality.has_minor_third)


def entry_cost(key: Key) -> int:
    """What a region costs by its mode alone."""
    return 0 if key.mode in (MAJOR, MINOR) else CHURCH_MODE


@lru_cache(maxsize=16384)
def is_own(chord: RelativeChord, mode: Mode) -> bool:
    """Whether a chord belongs to a key as a pivot must: in minor without the raised sixth degree."""
    return own_source(chord, mode) not in (None, "melodic minor")


def may_be_pivot(chord: RelativeChord, mode: Mode) -> bool:
    """Whether a key may be entered by a chord: one of its own, but not its dominant nor the six-four before that."""
    is_six_four = chord.root == 0 and chord.bass == DOMINANT
    return is_own(chord, mode) and chord.root not in (DOMINANT, LEADING_TONE) and not is_six_four
