"""Writing Roman numerals. What is written reads back to the same chord."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import write_accidental
from nearhand.notation.chord_tail_writing import mark_tail, raised, signed, symbol_tail
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import written_bass, written_root
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_words import NEAPOLITAN, NEAPOLITAN_PLACE, NUMERALS, OVER, TONES_OF_SIXTH
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LOWERED_SIXTH, MAJOR, MINOR, Mode
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES, Quality

_NUMERAL_OF = {number: numeral for numeral, number in NUMERALS.items()}
_FIGURES = {5: ("", "6", "64"), 7: ("7", "65", "43", "42")}
"""Figures by the highest tone, root position first."""
_SIXTH_NAMES = {quality: name for name, quality in AUGMENTED_SIXTHS.items()}
_SIXTH_FIGURES = {3: ("53", "6", "64"), 4: ("7", "65", "43", "42")}
"""Figures of augmented sixths by the number of their tones, from the bass they count as root position."""


@lru_cache(maxsize=8192)
def write_numeral(chord: RelativeChord, mode: Mode, conventions: Conventions = DEFAULT) -> str:
    """Write a chord as a numeral of the key it stands in.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> [write_numeral(parse_numeral(text, MINOR), MINOR) for text in ("v6", "bVII", "#viio7", "N6", "iv/5")]
    ['v6', 'VII', 'vii°7', '♭II6', 'iv/5']
    """
    if chord.stack is not None:
        return OVER.join(write_numeral(part, mode, conventions) for part in chord.stack)
    if name := augmented_sixth(chord):
        return _figured(name, conventions)
    counted = conventions.counting_mode(mode)
    head = _written_root(chord.root, counted, is_small_numeral(chord, counted), conventions)
    if conventions.sevenths_of_scale and len(chord.quality.numbers) > len(_TRIAD_NUMBERS):
        return _of_scale(chord, head, mode, conventions)
    return head + _tail_and_bass(chord, counted, conventions)


def augmented_sixth(chord: RelativeChord) -> str:
    """The name of an augmented sixth with its figures; empty for any other chord.

    >>> augmented_sixth(RelativeChord(LOWERED_SIXTH, AUGMENTED_SIXTHS["Ger"], 6))
    'Ger7'
    """
    name = _SIXTH_NAMES.get(chord.quality, "") if chord.root == LOWERED_SIXTH else ""
    if not name:
        return ""
    tones = TONES_OF_SIXTH[name]
    if chord.bass not in tones:
        return ""
    return name + _SIXTH_FIGURES[len(tones)][tones.index(chord.bass)]


def _of_scale(chord: RelativeChord, head: str, mode: Mode, conventions: Conventions) -> str:
    """A numeral whose bare 7 is the seventh of the scale: the shortest writing that is read so."""
    usual = _tail_and_bass(chord, conventions.counting_mode(mode), conventions._replace(figures="line"))
    spelled_out = signed(symbol_tail(chord.quality), conventions) + _slash_bass_unless_root(chord, mode, conventions)
    candidates = (usual.replace("maj", "", 1), usual, "d" + usual, spelled_out)
    for candidate in candidates:
        if _is_read_as(head + candidate, chord, mode, conventions):
            return head + _figured(candidate, conventions)
    return head + usual


def _figured(tail: str, conventions: Conventions) -> str:
    """A tail with raised figures where they are wanted; a bass degree behind its slash stays on the line."""
    if conventions.figures != "raised" or conventions.plain:
        return tail
    cut = tail.rfind("/") if tail[-1:] in "1234567" and "6/9" not in tail else -1
    return raised(tail) if cut < 0 else raised(tail[:cut]) + tail[cut:]


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
    own_degrees = conventions._replace(degrees="mode")
    if _inversion(inner) or augmented_sixth(inner) or inner.bass == inner.own_bass:
        written = f"{write_numeral(inner, inner_mode, own_degrees)}/{degree}"
        if not conventions.sevenths_of_scale or _is_read_as(written, chord, mode, conventions):
            return written
    above_root = write_numeral(inner._replace(bass=inner.own_bass), inner_mode, own_degrees)
    return f"{above_root}/{degree}" + _slash_bass(chord, conventions.counting_mode(mode), conventions)


def _is_read_as(written: str, chord: RelativeChord, mode: Mode, conventions: Conventions) -> bool:
    from nearhand.notation.numerals import parse_numeral  # only where sevenths are those of the scale

    try:
        return parse_numeral(written, mode, conventions) == chord
    except InputError:
        return False


def write_neapolitan(chord: RelativeChord, conventions: Conventions = DEFAULT) -> str:
    """Write a major chord on the lowered second degree, in first inversion, by its own name."""
    assert chord.root == NEAPOLITAN_PLACE
    return NEAPOLITAN + _figured("6", conventions)


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
    if inversion := _inversion(chord):
        figure = _FIGURES[chord.quality.numbers[-1]][inversion]
        tail = tail.replace("7", figure) if 7 in chord.quality.numbers else tail + figure
        return _figured(tail, conventions)
    if tail == "5" and (chord.bass != chord.own_bass or conventions.sevenths_of_scale):  # 5 and 5/3 would be figures
        tail = "(no3)"
    return _figured(signed(tail, conventions), conventions) + _slash_bass_unless_root(chord, mode, conventions)


def _slash_bass_unless_root(chord: RelativeChord, mode: Mode, conventions: Conventions) -> str:
    return "" if chord.bass == chord.own_bass else _slash_bass(chord, conventions.counting_mode(mode), conventions)


def _inversion(chord: RelativeChord) -> int:
    """Which chord tone lies in the bass, where figures can say it; else 0."""
    if chord.bass == chord.own_bass or chord.bass not in chord.places or chord.quality not in _WITH_FIGURES:
        return 0
    return chord.places.index(chord.bass)


_TRIAD_NUMBERS = (1, 3, 5)
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
