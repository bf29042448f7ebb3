"""Reading Roman numerals: degree, quality by case and mark, figures of inversion, applied chords, bass degrees.

After a slash a numeral names the degree an applied chord belongs to (``V7/V``, ``V42/V7/vi``), a digit the degree in
the bass (``v/7``), an ordinal the chord's own tone (``V7/5th``). Digits that are figures stay figures (``V6/5``). Two
slashes stand between a chord and the one below it. Some chords have names: ``N6``, ``It6``, ``Fr43``, ``Ger65``,
``Sw43``, ``Cad64``. Sources: Open Music Theory, "Thoroughbass figures"; When in Rome corpus, syntax.md (RomanText).
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import MOST_ACCIDENTALS, read_accidentals
from nearhand.notation.bass_degrees import read_bass_degree
from nearhand.notation.chord_tails import plain_digits
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS, root_place
from nearhand.notation.errors import InputError
from nearhand.notation.figures import figure_slashes, read_figures
from nearhand.notation.numeral_qualities import Degree, read_quality
from nearhand.notation.numeral_words import NEAPOLITAN, NEAPOLITAN_PLACE, NUMERALS, OVER, SIXTH_NAMES, TONES_OF_SIXTH
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LOWERED_SIXTH, MAJOR, MINOR, Mode
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES

MOST_PARTS = 12
"""Applied chords may be nested this deep."""
_CADENTIAL = ("Cad64", "Cad")
_BEFORE_FIGURE = frozenset("IVivN°ºoøØ+dmajMΔ△∆^(rtw")
"""What may stand before a figure: a numeral, a mark or a name, not the number of an added or suspended tone."""
_AFTER_SLASH = ("o", "ø", "°")
"""What follows a slash in /o, the half-diminished mark in keyboard characters."""
_DIMINISHED = ("o", "°", "º", "ø", "Ø", "/o", "/°", "/ø")
"""Marks of diminished chords, which stand on the raised sixth or seventh degree of minor as minor chords do."""
_HINT = "write a numeral such as i, V7, vii°7, bVII, V65 or V7/V"


@lru_cache(maxsize=8192)
def parse_numeral(text: str, mode: Mode, conventions: Conventions = DEFAULT) -> RelativeChord:
    """Read one numeral in a mode.

    Raises InputError with the place of the first character that cannot be read.

    >>> parse_numeral("V65", MINOR).bass, parse_numeral("v6", MINOR).bass      # leading tone, subtonic
    (5, -2)
    """
    line = plain_digits(text)
    over = line.find(OVER)
    if over > 0:
        return _over(text, over, mode, conventions)
    mode = conventions.counting_mode(mode)
    parts = _parts(text, line, lenient=conventions.sevenths_of_scale)
    bass_start = parts[-1][0] if len(parts) > 1 and _is_bass(line, *parts[-1]) else None
    chain = parts if bass_start is None else parts[:-1]
    chord_mode, chord, above = mode, None, 0
    for start, end in reversed(chain):
        if chord is not None:
            above, chord_mode = above + chord.root, MINOR if chord.quality.has_minor_third else MAJOR
        chord = _read_chord(text, line[start:end], start, chord_mode, conventions.sevenths_of_scale)
    assert chord is not None  # there is always a part
    chord = chord.above(above)
    if bass_start is None:
        return chord
    if line[bass_start:].endswith(("st", "nd", "rd", "th")):
        return chord._replace(bass=_own_tone(text, line, bass_start, chord))
    return chord._replace(bass=read_bass_degree(text, bass_start, mode, chord))


def _over(text: str, over: int, mode: Mode, conventions: Conventions) -> RelativeChord:
    """A chord over a chord, separated by two slashes at ``over``."""
    start = over + len(OVER)
    if OVER in text[start:]:
        what, hint = "only two chords can stand over each other", "write two chords, as in II//I7"
        raise InputError(what, text, text.find(OVER, start), wanted="the end of the chord", hint=hint)
    upper = parse_numeral(text[:over], mode, conventions)
    try:
        lower = parse_numeral(text[start:], mode, conventions)
    except InputError as error:
        raise error.within(text, start) from None
    if upper.bass != upper.own_bass:
        what, hint = "the upper chord has no bass of its own", "write the bass behind the lower chord, as in II//I7/3"
        raise InputError(what, text, over, wanted="the end of the chord", hint=hint)
    return upper.over(lower)


def _parts(text: str, line: str, lenient: bool) -> list[tuple[int, int]]:
    """Offsets of the parts between slashes; slashes of figures, of brackets and of /o part nothing."""
    of_figures = figure_slashes(line, _BEFORE_FIGURE)
    cuts, depth = [], 0
    for at, character in enumerate(line):
        depth += (character in "([") - (character in ")]")
        is_mark = line[at + 1 : at + 2] in _AFTER_SLASH
        if character == "/" and at > 0 and at not in of_figures and depth <= 0 and not is_mark:
            cuts.append(at)
    end = len(line)
    if lenient and cuts and cuts[-1] == len(line) - 1:  # RomanText as it is found: V/
        end = cuts.pop()
    if len(cuts) > MOST_PARTS:
        what, at = "applied chords are nested too deep", cuts[MOST_PARTS]
        raise InputError(what, text, at, at + 1, wanted="the end of the chord", hint=_HINT)
    return list(zip([0] + [cut + 1 for cut in cuts], [*cuts, end], strict=True))


def _is_bass(line: str, start: int, end: int) -> bool:
    _, at = read_accidentals(line, start)
    return at < end and line[at].isdigit()


def _read_chord(text: str, part: str, start: int, mode: Mode, sevenths_of_scale: bool) -> RelativeChord:
    """One part of a numeral, which begins at ``start`` in the whole text; its root and bass above its own tonic."""
    named = _named_chord(part, mode)
    if named is not None:
        return named
    degree, at = _read_degree(text, part, start, mode)
    try:
        quality, bass = read_quality(part[at:], degree, sevenths_of_scale)
    except InputError as error:
        raise _no_part(text, start + at, part[at:], error) from None
    return RelativeChord(degree.root, quality, degree.root + bass)


def _named_chord(part: str, mode: Mode) -> RelativeChord | None:
    """A chord with a name of its own; None for any other, and for an augmented sixth with figures it does not have."""
    if part.replace("/", "") in _CADENTIAL:
        return RelativeChord(0, QUALITIES["minor" if mode.has_minor_third else "major"], 1)
    if part[:1] == NEAPOLITAN:
        bass = {"": 4, "6": 4, "63": 4, "53": 0, "64": 1}.get(part[1:].replace("/", ""))
        return None if bass is None else RelativeChord(NEAPOLITAN_PLACE, QUALITIES["major"], NEAPOLITAN_PLACE + bass)
    name = next((name for name in SIXTH_NAMES if part.startswith(name)), "")
    if not name:
        return None
    kind, figures = SIXTH_NAMES[name], part[len(name) :].removeprefix("+")
    tones = TONES_OF_SIXTH[kind]
    if figures in ("", "6"):
        return RelativeChord(LOWERED_SIXTH, AUGMENTED_SIXTHS[kind], LOWERED_SIXTH)
    read, end = read_figures(figures, 0)
    if end < len(figures) or not read.is_known or read.accidentals or len(read.numbers) != len(tones):
        return None
    return RelativeChord(LOWERED_SIXTH, AUGMENTED_SIXTHS[kind], tones[read.inversion])


def _read_degree(text: str, part: str, start: int, mode: Mode) -> tuple[Degree, int]:
    """The degree a part of a numeral begins with, and the offset behind it."""
    if part[:1] == NEAPOLITAN:
        return Degree(2, NEAPOLITAN_PLACE, mode, is_small=False), 1
    accidental, at = read_accidentals(part, 0)
    if accidental is not None and abs(accidental) > MOST_ACCIDENTALS:
        what = "a numeral takes three accidentals at most"
        raise InputError(what, text, start, start + len(part), wanted="a numeral", hint=_HINT)
    for size in (3, 2, 1):
        word = part[at : at + size]
        if word.upper() in NUMERALS and word in (word.upper(), word.lower()):
            number, is_small = NUMERALS[word.upper()], word.islower()
            after = at + len(word)
            is_marked = part.startswith(_DIMINISHED, after) and not part.startswith("omit", after)
            is_raised = is_marked or (is_small and not part.startswith("+", after))
            return Degree(number, root_place(number, accidental, mode, is_raised), mode, is_small), after
    shown = part[at:][:24]
    what, end = f"{shown!r} is no numeral" if shown else "a numeral is missing", start + max(len(part), at + 1)
    raise InputError(what, text, start + at, end, wanted="a numeral I to VII or i to vii", hint=_HINT)


def _no_part(text: str, start: int, tail: str, error: InputError) -> InputError:
    """The refusal of a tail, placed in the whole numeral."""
    place = start + min(error.start, len(tail))
    if error.wanted in (")", "]") or "no part" not in error.what:
        return InputError(error.what, text, place, place + 1, wanted=error.wanted, hint=error.hint)
    what = f"{text[place : start + len(tail)][:12]!r} is no part of a chord"
    return InputError(what, text, place, place + 1, wanted="a chord quality or a figure", hint=_HINT)


def _own_tone(text: str, line: str, start: int, chord: RelativeChord) -> int:
    """The chord's own tone that an ordinal names (R. Hutchinson, as in ``I/3rd``), as a place above the tonic."""
    numbers = [number for number in chord.quality.numbers if line[start:] == ordinal(number)]
    if not numbers:
        what, hint = f"this chord has no {line[start:][:12]}", "write a tone of the chord, as in I/3rd or V7/7th"
        raise InputError(what, text, start, wanted="a tone of the chord", hint=hint)
    interval = chord.quality.interval(numbers[0])
    assert interval is not None  # the number is one of the chord's
    return chord.root + interval


def ordinal(number: int) -> str:
    """A number's ordinal in digits.

    >>> ordinal(3), ordinal(9)
    ('3rd', '9th')
    """
    return ORDINALS[number - 1] if number <= len(ORDINALS) else f"{number}th"
