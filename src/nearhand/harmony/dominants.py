"""Dominants, leading-tone chords and what they lead to, applied ones and tritone substitutes among them."""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis
from nearhand.harmony.applied import Target
from nearhand.harmony.functions import DOMINANT as DOMINANT_FUNCTION
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, SUBTONIC

LOWERED_SECOND = -5
"""Where a tritone substitute stands above its target, in fifths."""


def dominant_target(analysis: Analysis) -> Target | None:
    """The degree that a dominant (a major triad or dominant seventh) leads to; None for any other chord.

    A dominant seventh outside the key's own counts as one when its root falls a fifth, or a half step as that of a
    tritone substitute does.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> row = [parse_numeral(text, MAJOR) for text in ("bII7", "I", "II7", "V")]
    >>> [target and target.place for target in map(dominant_target, analyse(row, MAJOR))]
    [0, None, 1, 0]
    """
    chord, after = analysis.reading, analysis.after
    if chord.quality.interval(3) != 4 or (chord.quality.interval(7) or SUBTONIC) != SUBTONIC:
        return None
    if analysis.target is not None:
        return analysis.target if chord.root - analysis.target.place == DOMINANT else None
    if chord.root == DOMINANT and analysis.function == DOMINANT_FUNCTION:
        return Target(0, analysis.mode.has_minor_third)
    falls = after is not None and after.root in (chord.root - DOMINANT, chord.root - LOWERED_SECOND)
    if after is not None and falls and chord.quality.is_dominant_seventh:
        return Target(after.root, after.quality.has_minor_third)
    return None


def leading_tone_target(analysis: Analysis) -> Target | None:
    """The degree a half step above, to which a diminished or half-diminished chord leads; None for any other chord.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> row = [parse_numeral(text, MINOR) for text in ("iiø7", "vii°7")]
    >>> [target and target.place for target in map(leading_tone_target, analyse(row, MINOR))]
    [None, 0]
    """
    chord, target = analysis.reading, analysis.target
    if (chord.quality.interval(3), chord.quality.interval(5)) != (-3, -6):
        return None
    if target is None:
        return Target(0, analysis.mode.has_minor_third) if chord.root == LEADING_TONE else None
    return target if chord.root - target.place == LEADING_TONE else None


def is_suspended_dominant(analysis: Analysis) -> bool:
    """Whether a chord with a fourth for its third stands on the dominant, or falls a fifth.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> row = [parse_numeral(text, MAJOR) for text in ("V7sus4", "I", "Isus4")]
    >>> [is_suspended_dominant(analysis) for analysis in analyse(row, MAJOR)]
    [True, False, False]
    """
    chord, after = analysis.chord, analysis.after
    falls = after is not None and after.root == chord.root - DOMINANT
    return chord.quality.interval(4) is not None and (chord.root == DOMINANT or falls)


def is_dominant_of(before: RelativeChord | None, chord: RelativeChord) -> bool:
    """Whether a chord a fifth above another is its dominant: a dominant seventh, or the key's own V.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> tonic, fourth, seventh = (parse_numeral(text, MAJOR) for text in ("I", "IV", "I7"))
    >>> is_dominant_of(tonic, fourth), is_dominant_of(seventh, fourth)
    (False, True)
    """
    if before is None or before.root != chord.root + DOMINANT:
        return False
    is_fifth_degree = before.root == DOMINANT and before.quality.interval(3) == 4
    return before.quality.is_dominant_seventh or is_fifth_degree
