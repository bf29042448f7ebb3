"""Which chords commonly follow a chord, likeliest first: what a player may be offered while typing.

Falling fifths through the scale (I IV vii° iii vi ii V I): R. Hutchinson, *Music Theory for the 21st-Century
Classroom*, "The circle of fifths progression". The other steps: common practice, no source. It is an offer, not a rule.
"""

from __future__ import annotations

from nearhand.harmony.scale_chords import SEVENTH_CHORD, TRIAD, chord_on
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MINOR_FORMS, SUPERTONIC, Mode
from nearhand.theory.quality import QUALITIES

_AFTER_IN_MAJOR = {
    0: "1 4 5 6", 1: "4 5 6 2 57", 2: "57 5 7", 3: "6 4 2", 4: "5 57 1 2", 5: "1 6 4", 6: "2 4 57 5", 7: "1 3",
}  # fmt: skip
_AFTER_IN_MINOR = {
    0: "1 4 6 5", 1: "4 57 6 5 m7", 2: "57 5", 3: "6 4 m7", 4: "57 5 1 m7", 5: "1 6 4", 6: "2 4 57 m7", 7: "3 1 6",
}  # fmt: skip
"""Degree to the degrees that follow, 0 for the beginning; ``57`` is V7, ``m7`` the chord on the low seventh degree."""
_LOW_SEVENTH = "m7"
_STEP_UP = -5
"""A minor second up, in fifths."""


def likely_next(chord: RelativeChord | None, mode: Mode) -> tuple[RelativeChord, ...]:
    """The chords that commonly follow a chord in a mode, likeliest first; None stands for the beginning.

    The dominant of minor has its leading tone. A dominant seventh on another degree, and a diminished chord that is not
    the scale's own, lead to the chord they are applied to.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.notation.numeral_writing import write_numeral
    >>> from nearhand.theory.mode import MAJOR, MINOR
    >>> [write_numeral(each, MINOR) for each in likely_next(parse_numeral("iv6", MINOR), MINOR)]
    ['V7', 'V', 'i', 'VII']
    >>> [write_numeral(each, MAJOR) for each in likely_next(parse_numeral("V7/ii", MAJOR), MAJOR)]
    ['ii', 'ii7', 'II7']
    """
    table = _AFTER_IN_MINOR if mode.has_minor_third else _AFTER_IN_MAJOR
    if chord is None:
        return tuple(_chord(word, mode) for word in table[0].split())
    goal = _goal(chord, mode)
    if goal is not None:
        return _on(goal, mode)
    return tuple(_chord(word, mode) for word in table[_degree(chord.root, mode)].split())


def _degree(root: int, mode: Mode) -> int:
    """The degree a root stands on; a root outside the scale goes on as the subdominant does."""
    if root in mode.degrees:
        return mode.degrees.index(root) + 1
    if root == LEADING_TONE:
        return 5  # a diminished chord on the leading tone of minor does what the dominant does
    return 4


def _goal(chord: RelativeChord, mode: Mode) -> int | None:
    """The root that a chord is applied to, in fifths above the tonic; None for chords of the key itself."""
    if chord.quality.is_dominant_seventh and chord.root not in (DOMINANT, *_own_sevenths(mode)):
        return chord.root - DOMINANT
    is_diminished = (chord.quality.interval(3), chord.quality.interval(5)) == (-3, -6)
    if is_diminished and chord.root not in (LEADING_TONE, SUPERTONIC):
        return chord.root + _STEP_UP
    return None


def _own_sevenths(mode: Mode) -> tuple[int, ...]:
    """Roots of dominant sevenths that lie in the scale, besides V: they are not applied."""
    return (
        ()
        if mode.is_minor
        else tuple(root for root in mode.degrees if {root, root + 4, root + 1, root - 2} <= set(mode.degrees))
    )


def _on(goal: int, mode: Mode) -> tuple[RelativeChord, ...]:
    """The chords on a goal: the scale's own triad and seventh chord, and one more dominant of the chain."""
    dominant = RelativeChord(goal, QUALITIES["dominant"], goal)
    if goal not in mode.degrees:
        return RelativeChord(goal, QUALITIES["major"], goal), dominant
    number = mode.degrees.index(goal) + 1
    own = (_chord(str(number), mode), chord_on(mode.degrees, number, SEVENTH_CHORD), dominant)
    return tuple(dict.fromkeys(own))


def _chord(word: str, mode: Mode) -> RelativeChord:
    """The chord of a word of the tables."""
    if word == _LOW_SEVENTH:
        return chord_on(mode.degrees, 7)
    number = int(word[0])
    raised = mode.is_minor and number == 5
    scale = MINOR_FORMS["harmonic"] if raised else mode.degrees
    return chord_on(scale, number, SEVENTH_CHORD if len(word) > 1 else TRIAD)
