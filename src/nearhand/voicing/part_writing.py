"""What goes wrong between voices from one chord to the next: parallels, hidden fifths and octaves, crossing, overlap.

Chords are MIDI numbers, low to high by part: the bass first, the soprano last, also where a lower part sounds above a
higher one. A harmonic interval is the distance that sounds between two parts, whichever lies on top, less all octaves.
MIDI numbers have no spelling: any 7 semitones are taken as a perfect fifth, any 6 as a diminished one, and so an
augmented fourth that moves to a fifth is named with the diminished fifths.

Parallels are forbidden by R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Objectionable parallels". The
other rules stand in course lists that were read second-hand; where those leave a choice, the docstring says which.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations

from nearhand.theory.record import NamedTuple

PARALLEL_FIFTHS, PARALLEL_OCTAVES, PARALLEL_UNISONS = "parallel fifths", "parallel octaves", "parallel unisons"
CONTRARY_FIFTHS, CONTRARY_OCTAVES = "fifths by contrary motion", "octaves by contrary motion"
HIDDEN_FIFTHS, HIDDEN_OCTAVES = "hidden fifths", "hidden octaves"
UNEQUAL_FIFTHS = "diminished fifth to perfect fifth"
CROSSING, OVERLAP = "crossing voices", "overlapping voices"
RULES = (
    PARALLEL_FIFTHS,
    PARALLEL_OCTAVES,
    PARALLEL_UNISONS,
    CONTRARY_FIFTHS,
    CONTRARY_OCTAVES,
    HIDDEN_FIFTHS,
    HIDDEN_OCTAVES,
    UNEQUAL_FIFTHS,
    CROSSING,
    OVERLAP,
)
"""All rules, in the order in which the faults of two voices are named."""

STILL, OBLIQUE, CONTRARY, SIMILAR = "still", "oblique", "contrary", "similar"

_OCTAVE, _DIMINISHED_FIFTH, _PERFECT_FIFTH = 0, 6, 7
_LARGEST_STEP = 2
_REPEATED = {
    (SIMILAR, _PERFECT_FIFTH): PARALLEL_FIFTHS,
    (SIMILAR, _OCTAVE): PARALLEL_OCTAVES,
    (CONTRARY, _PERFECT_FIFTH): CONTRARY_FIFTHS,
    (CONTRARY, _OCTAVE): CONTRARY_OCTAVES,
}
"""What it is called when two voices move from a perfect interval to the same one, by their motion and the interval."""
_HIDDEN = {_PERFECT_FIFTH: HIDDEN_FIFTHS, _OCTAVE: HIDDEN_OCTAVES}


class Fault(NamedTuple):
    """One broken rule of RULES, and the two voices, counted from the bass (0).

    >>> Fault(PARALLEL_FIFTHS, 0, 1).rule
    'parallel fifths'
    """

    rule: str
    lower: int
    upper: int


def faults(before: Sequence[int], after: Sequence[int]) -> tuple[Fault, ...]:
    """The faults between any two voices of two chords, in order of the voices, then of RULES.

    * Parallel fifths, octaves: both voices move in the same direction from the interval to itself, with or without
      octaves between (5-5, 5-12, 8-8, 8-1); parallel unisons: from unison to unison. By contrary motion: 5-12, 8-15,
      8-1 and the like; also where two parts exchange their notes. Notes that both voices repeat are no fault.
    * Hidden fifths, octaves: the outer parts move in the same direction from another interval to a fifth, an octave or
      a unison, and the top part leaps (more than 2 semitones). Strict counterpoint forbids them at a step, too (from
      memory); that is not checked.
    * Diminished fifth to perfect fifth: in the same direction, in any two voices. It is worst with the bass (lower 0);
      in the upper voices of I V43 I6 it is usually let pass (common practice, no source). Outer parts may break this
      rule and that of hidden fifths at once.
    * Crossing: a higher part lies below a lower part in the chord ``after``; on one note they do not cross.
    * Overlap: of two neighbouring parts one goes beyond the note that the other had just before; to reach that note is
      none. Parts that cross in one of the two chords do not overlap as well: the lists keep the two apart, and a
      crossing would else be named again at every move until it ends. (music21 10.5.1 counts those, too.)

    Raises ValueError unless both chords have the same number of voices, one at least.

    >>> for fault in faults((48, 55, 64, 72), (50, 57, 65, 74)):       # C3 G3 E4 C5 to D3 A3 F4 D5
    ...     print(*fault)
    parallel fifths 0 1
    parallel octaves 0 3
    >>> faults((53, 60, 65, 69), (55, 59, 62, 67))                     # the upper voices against the bass
    ()
    """
    if not before or len(before) != len(after):
        numbers = f"{len(before)} and {len(after)}"
        raise ValueError(f"both chords must have the same number of voices, one at least (got {numbers})")
    top = len(before) - 1
    return tuple(
        Fault(rule, lower, upper)
        for lower, upper in combinations(range(len(before)), 2)
        for rule in (
            *_by_interval(before, after, lower, upper, (lower, upper) == (0, top)),
            *_by_place(before, after, lower, upper),
        )
    )


def motion_kind(lower_move: int, upper_move: int) -> str:
    """How two voices move against each other, from the signed semitones of each: STILL, OBLIQUE, CONTRARY or SIMILAR.

    Similar is any motion in the same direction, parallel motion included.

    >>> motion_kind(0, 0), motion_kind(0, 2), motion_kind(-1, 2), motion_kind(5, 2)
    ('still', 'oblique', 'contrary', 'similar')
    """
    if lower_move == upper_move == 0:
        return STILL
    if lower_move == 0 or upper_move == 0:
        return OBLIQUE
    return SIMILAR if (lower_move > 0) == (upper_move > 0) else CONTRARY


def _by_interval(before: Sequence[int], after: Sequence[int], lower: int, upper: int, are_outer: bool) -> Iterator[str]:
    """The rules on which intervals may follow each other that two voices break."""
    upper_move = after[upper] - before[upper]
    kind = motion_kind(after[lower] - before[lower], upper_move)
    old_distance, distance = abs(before[upper] - before[lower]), abs(after[upper] - after[lower])
    old_interval, interval = old_distance % 12, distance % 12
    if old_interval == interval:
        if kind == SIMILAR and old_distance == distance == 0:
            yield PARALLEL_UNISONS
        elif (kind, interval) in _REPEATED:
            yield _REPEATED[kind, interval]
    elif kind == SIMILAR:
        if are_outer and abs(upper_move) > _LARGEST_STEP and interval in _HIDDEN:
            yield _HIDDEN[interval]
        if (old_interval, interval) == (_DIMINISHED_FIFTH, _PERFECT_FIFTH):
            yield UNEQUAL_FIFTHS


def _by_place(before: Sequence[int], after: Sequence[int], lower: int, upper: int) -> Iterator[str]:
    """The rules on where a voice may lie that two voices break."""
    crossed_before, crosses = before[upper] < before[lower], after[upper] < after[lower]
    if crosses:
        yield CROSSING
    goes_beyond = after[lower] > before[upper] or after[upper] < before[lower]
    if upper == lower + 1 and goes_beyond and not (crossed_before or crosses):
        yield OVERLAP
