"""Writing Roman numerals. What is written reads back to the same chord."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import write_accidental
from nearhand.notation.chord_tail_writing import mark_tail, signed
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import written_bass, written_root
from nearhand.notation.numerals import FIGURES, NEAPOLITAN, NEAPOLITAN_PLACE, NUMERALS
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR, Mode
from nearhand.theory.quality import QUALITIES, Quality

_NUMERAL_OF = {number: numeral for numeral, number in NUMERALS.items()}
_FIGURE_OF = {
    (7 if tail else 5, inversion): figure
    for figure, (tail, inversion) in FIGURES.items()
    if figure in ("6", "64", "65", "43", "42")
}


@lru_cache(maxsize=8192)
def write_numeral(chord: RelativeChord, mode: Mode, conventions: Conventions = DEFAULT) -> str:
    """Write a chord as a numeral of the key it stands in.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> [write_numeral(parse_numeral(text, MINOR), MINOR) for text in ("v6", "bVII", "#viio7", "N6", "iv/5")]
    ['v6', 'VII', 'vii°7', '♭II6', 'iv/5']
    """
    mode = conventions.counting_mode(mode)
    head = _written_root(chord.root, mode, is_small_numeral(chord, mode), conventions)
    return head + _tail_and_bass(chord, mode, conventions)


def write_applied(
    chord: RelativeChord, target: int, is_small: bool, mode: Mode, conventions: Conventions = DEFAULT
) -> str:
    """Write a chord as applied to the degree at place ``target``, whose own chord is minor if ``is_small``.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> write_applied(parse_numeral("II65", MAJOR), 1, is_small=False, mode=MAJOR)
    'V65/V'
    """
    degree = write_degree(target, is_small, mode, conventions)
    inner = chord.above(-target)
    inner_mode = MINOR if is_small else MAJOR
    own = inner if _inversion(inner) else inner._replace(bass=inner.root)
    written = f"{write_numeral(own, inner_mode, conventions._replace(degrees='mode'))}/{degree}"
    return written if own == inner else written + _slash_bass(chord, conventions.counting_mode(mode), conventions)


def write_neapolitan(chord: RelativeChord) -> str:
    """Write a major chord on the lowered second degree, in first inversion, by its own name."""
    assert chord.root == NEAPOLITAN_PLACE
    return NEAPOLITAN + "6"


def is_small_numeral(chord: RelativeChord, mode: Mode) -> bool:
    """Whether a chord's numeral is small: by its third; without one, as the scale's own chord on that degree.

    A fifth degree without third is a capital: it stands for the dominant.
    """
    if chord.quality.interval(3) is not None:
        return chord.quality.has_minor_third
    third_above = chord.root - 3
    return chord.root != 1 and chord.root in mode.degrees and third_above in mode.degrees


def write_degree(place: int, is_small: bool, mode: Mode, conventions: Conventions = DEFAULT) -> str:
    """Write a degree as a bare numeral: what an applied chord belongs to.

    >>> write_degree(3, is_small=True, mode=MAJOR)
    'vi'
    """
    return _written_root(place, conventions.counting_mode(mode), is_small, conventions)


def _written_root(place: int, mode: Mode, is_small: bool, conventions: Conventions) -> str:
    number, accidental = written_root(place, mode, is_small)
    numeral = _NUMERAL_OF[number]
    return write_accidental(accidental, conventions.plain) + (numeral.lower() if is_small else numeral)


def _tail_and_bass(chord: RelativeChord, mode: Mode, conventions: Conventions) -> str:
    tail = mark_tail(chord.quality, conventions.plain, numeral=True)
    inversion = _inversion(chord)
    if not inversion:
        if chord.bass == chord.root:
            return signed(tail, conventions)
        tail = "(no3)" if tail == "5" else tail  # 5/3 would be a figure
        return signed(tail, conventions) + _slash_bass(chord, mode, conventions)
    figure = _FIGURE_OF[len(chord.quality.numbers) * 2 - 1, inversion]
    return tail.replace("7", figure) if len(chord.quality.numbers) == 4 else tail + figure


def _inversion(chord: RelativeChord) -> int:
    """Which chord tone lies in the bass, where figures can say it; else 0."""
    if chord.bass == chord.root or chord.bass not in chord.places or chord.quality not in _WITH_FIGURES:
        return 0
    return chord.places.index(chord.bass)


_TRIADS = {QUALITIES[kind] for kind in ("major", "minor", "augmented", "diminished")}
_SEVENTHS = {Quality((1, 3, 5, 7), (*triad.intervals, seventh)) for triad in _TRIADS for seventh in (-2, 5)}
_WITH_FIGURES = {*_TRIADS, *_SEVENTHS, QUALITIES["diminished-seventh"]}
"""Plain triads and seventh chords, the only chords that the short figures stand for."""


def _slash_bass(chord: RelativeChord, mode: Mode, conventions: Conventions) -> str:
    return "/" + written_bass_degree(chord, mode, conventions)


def written_bass_degree(chord: RelativeChord, mode: Mode, conventions: Conventions) -> str:
    """The bass degree with its accidental, as it follows a slash."""
    number, accidental = written_bass(chord.bass, mode, chord.places)
    return f"{write_accidental(accidental, conventions.plain)}{number}"
