"""Harmonic function: tonic, predominant, dominant, or colour where none of the three is meant.

Tables: Open Music Theory, "Harmonic functions"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*,
"Harmonic function". Where they differ (vi and iii: tonic, or tonic prolongation) both come out as tonic here.
"""

from __future__ import annotations

from nearhand.harmony.applied import Target
from nearhand.harmony.sources import BORROWED, CHROMATIC
from nearhand.notation.degrees import degree_number
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT as DOMINANT_PLACE
from nearhand.theory.mode import LEADING_TONE, LOWERED_SIXTH, RAISED_SIXTH, SUBDOMINANT, SUBTONIC, SUPERTONIC

TONIC, PREDOMINANT, DOMINANT, COLOUR = "tonic", "predominant", "dominant", "colour"
_BY_DEGREE = {1: TONIC, 2: PREDOMINANT, 3: TONIC, 4: PREDOMINANT, 5: DOMINANT, 6: TONIC, 7: DOMINANT}


def is_cadential(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """Whether a tonic six-four stands over the dominant's bass and resolves to it."""
    return (
        chord.root == 0
        and chord.bass == DOMINANT_PLACE
        and after is not None
        and (after.root, after.bass) == (DOMINANT_PLACE, DOMINANT_PLACE)
    )


def leads_to_mediant(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """Whether VII7 of minor goes to III, whose dominant it is (VII7 and V7/III are one chord)."""
    is_subtonic = chord.root == SUBTONIC and chord.quality.is_dominant_seventh
    return is_subtonic and after is not None and after.root == SUBTONIC - 1


def is_suspended_over_dominant(chord: RelativeChord) -> bool:
    """Whether IV or ii stands over the fifth degree, in place of a suspended dominant seventh (F/G for G7sus4).

    R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "IV over 5 sus chord".
    """
    stands_over = chord.bass == DOMINANT_PLACE and chord.bass not in chord.places
    return stands_over and chord.root in (SUBDOMINANT, SUPERTONIC)


def function_of(chord: RelativeChord, source: str, target: Target | None, after: RelativeChord | None) -> str:
    """The function of a chord in its key.

    An applied chord to V prepares the dominant; any other is the dominant of its own target. The subtonic chord and
    chromatic chords count as colour; a borrowed chord on the lowered sixth prepares the dominant.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> [function_of(parse_numeral(text, MINOR), "", None, None) for text in ("i", "iv", "V7", "vii°7", "VII")]
    ['tonic', 'predominant', 'dominant', 'dominant', 'colour']
    """
    if target is not None:
        prepares = target.place == DOMINANT_PLACE or chord.root - target.place == SUPERTONIC
        return PREDOMINANT if prepares else DOMINANT
    if is_cadential(chord, after) or is_suspended_over_dominant(chord):
        return DOMINANT
    if leads_to_mediant(chord, after):
        return DOMINANT
    if _is_colour(chord, source):
        return COLOUR
    borrowed_sixth = chord.root == LOWERED_SIXTH and source.startswith(BORROWED)
    raised_sixth = chord.root == RAISED_SIXTH and chord.quality.interval(5) == -6  # vi° is IV without its root
    return PREDOMINANT if borrowed_sixth or raised_sixth else _BY_DEGREE[degree_number(chord.root)]


def _is_colour(chord: RelativeChord, source: str) -> bool:
    """Whether a chord stands on the subtonic or on a raised degree, or is chromatic without being a dominant."""
    on_subtonic = degree_number(chord.root) == 7 and chord.root != LEADING_TONE
    return on_subtonic or chord.root > LEADING_TONE or (source == CHROMATIC and chord.root != DOMINANT_PLACE)
