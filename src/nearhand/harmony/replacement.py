"""What the key itself has in the place of a foreign chord, and which notes differ.

Source of the comparison: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Mode mixture": a borrowed chord
stands in the place of the key's own chord on the same degree, with some of its notes altered.
"""

from __future__ import annotations

from nearhand.harmony.scale_chords import SEVENTH_CHORD, TRIAD, chord_on
from nearhand.harmony.sources import own_source
from nearhand.notation.degrees import degree_number
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LEADING_TONE, MINOR_FORMS, Mode
from nearhand.theory.quality import NATURAL_INTERVALS, quality

_SIXTH = (6, NATURAL_INTERVALS[6])


def diatonic_replacement(chord: RelativeChord, mode: Mode) -> RelativeChord | None:
    """The key's own chord on the same degree, a triad or a seventh chord as the given one is; None for an own chord.

    An added sixth stays where the key has it; other added tones are left out, and a suspended tone gives way to the
    third. The bass keeps its degree. In minor the replacement is that of the natural form, but on the fifth degree and
    on the leading tone the key's own dominant chords stand, V and vii° (common practice, no source).

    >>> from nearhand.notation.numeral_writing import write_numeral
    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> replacements = [diatonic_replacement(parse_numeral(text, MAJOR), MAJOR) for text in ("iv", "III7", "N6")]
    >>> [write_numeral(replacement, MAJOR) for replacement in replacements if replacement]
    ['IV', 'iii7', 'ii6']
    """
    if own_source(chord, mode) is not None:
        return None
    number = degree_number(chord.root)
    scale = _scale_under(chord.root, number, mode)
    own = chord_on(scale, number, SEVENTH_CHORD if 7 in chord.quality.numbers else TRIAD)
    if 6 in chord.quality.numbers and own.root + _SIXTH[1] in scale:
        own = own._replace(quality=quality([*own.quality.tones, _SIXTH]))
    return own._replace(bass=scale[degree_number(chord.bass) - 1])


def _scale_under(root: int, number: int, mode: Mode) -> tuple[int, ...]:
    """The mode's own scale; in minor the harmonic form under the dominant chords."""
    is_dominant = number == 5 or (number == 7 and root >= LEADING_TONE)
    return MINOR_FORMS["harmonic"] if mode.is_minor and is_dominant else mode.degrees


def differing_tones(chord: RelativeChord, other: RelativeChord) -> tuple[tuple[int, int], ...]:
    """Pairs of a chord's tone and another chord's tone of the same letter that differ, as places above the tonic.

    Tones that have no partner of their letter are not among them: ``unmatched_tones`` tells those.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> differing_tones(parse_numeral("iv", MAJOR), parse_numeral("IV", MAJOR))         # in C: Ab for A
    ((-4, 3),)
    """
    partners = {degree_number(place): place for place in other.places}
    foreign = [place for place in chord.places if place not in other.places]
    return tuple((place, partners[degree_number(place)]) for place in foreign if degree_number(place) in partners)


def unmatched_tones(chord: RelativeChord, other: RelativeChord) -> tuple[int, ...]:
    """A chord's tones whose letter another chord has not, as places above the tonic; ask the other way round for its.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> suspended, plain = parse_numeral("bVIIsus4", MAJOR), parse_numeral("vii°", MAJOR)
    >>> unmatched_tones(suspended, plain), unmatched_tones(plain, suspended)            # in C: Eb, and D
    ((-3,), (2,))
    """
    letters = {degree_number(place) for place in other.places}
    return tuple(place for place in chord.places if degree_number(place) not in letters)
