"""Number charts: scale degrees with the tails of chord symbols, minor by a dash, the bass as a degree after a slash.

A bare number is a major chord whatever its degree: what is written is what is read. (Some charts let a bare 2, 3, 6
take the quality of the scale; docs/why.md names that convention.) In minor numbers count from the key's own tonic, or
from that of the relative major (``Conventions.degrees``). Raised digits are read as those on the line.
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import MOST_ACCIDENTALS, SIGNS, read_accidentals, write_accidental
from nearhand.notation.bass_degrees import read_bass_degree
from nearhand.notation.chord_tail_writing import mark_tail, raised, signed
from nearhand.notation.chord_tails import bass_slash, plain_digits, read_tail
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import root_place, written_root
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_words import OVER
from nearhand.notation.numeral_writing import written_bass_degree
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, Mode

_HINT = "write a number 1 to 7 such as 1, 6-, 2-7, 57, b7 or 5/7"


@lru_cache(maxsize=8192)
def parse_number(text: str, mode: Mode, conventions: Conventions = DEFAULT) -> RelativeChord:
    """Read one number of a number chart in a mode.

    Raises InputError with the place of the first character that cannot be read.

    >>> from nearhand.theory.mode import MINOR
    >>> parse_number("5-/7", MINOR).bass, parse_number("57/7", MINOR).bass
    (-2, 5)
    """
    if conventions.degrees == "relative":
        return parse_number(text, MAJOR).above(mode.brightness)
    mode = conventions.counting_mode(mode)
    if OVER in text:
        return _over(text, mode)
    accidental, at = read_accidentals(text, 0)
    if accidental is not None and abs(accidental) > MOST_ACCIDENTALS:
        raise InputError("a number takes three accidentals at most", text, 0, at, wanted="a number 1 to 7", hint=_HINT)
    digit = text[at : at + 1]
    if not digit or digit not in "1234567":
        what = f"{digit} is no scale degree" if digit.isprintable() and digit else "a scale degree is missing"
        raise InputError(what, text, at, at + 1, wanted="a number 1 to 7", hint=_HINT)
    slash = bass_slash(plain_digits(text), at + 1)
    end = len(text) if slash < 0 else slash
    try:
        quality = read_tail(text[at + 1 : end])
    except InputError as error:
        raise error.within(text, at + 1) from None
    root = root_place(int(digit), accidental, mode, quality.has_minor_third)
    chord = RelativeChord(root, quality, root)
    chord = chord._replace(bass=chord.own_bass)
    return chord if slash < 0 else chord._replace(bass=read_bass_degree(text, slash + 1, mode, chord))


def _over(text: str, mode: Mode) -> RelativeChord:
    """A chord over a chord, separated by two slashes."""
    over = text.index(OVER)
    start = over + len(OVER)
    if OVER in text[start:]:
        what, hint = "only two chords can stand over each other", "write two chords, as in 2//17"
        raise InputError(what, text, text.find(OVER, start), wanted="the end of the chord", hint=hint)
    try:
        lower, upper = parse_number(text[start:], mode), parse_number(text[:over], mode)
    except InputError as error:
        raise error.within(text, start if error.text == text[start:] else 0) from None
    if upper.bass != upper.own_bass:
        what, hint = "the upper chord has no bass of its own", "write the bass behind the lower chord, as in 2//17/3"
        raise InputError(what, text, over, wanted="the end of the chord", hint=hint)
    return upper.over(lower)


@lru_cache(maxsize=8192)
def write_number(chord: RelativeChord, mode: Mode, conventions: Conventions = DEFAULT) -> str:
    """Write a chord as a number; it reads back to the same chord.

    >>> from nearhand.theory.mode import MAJOR
    >>> [write_number(parse_number(text, MAJOR), MAJOR) for text in ("6m/5", "b7maj7", "57", "7o")]
    ['6-/5', '♭7maj7', '57', '7°']
    """
    if conventions.degrees == "relative":
        return write_number(chord.above(-mode.brightness), MAJOR, conventions._replace(degrees="major"))
    mode = conventions.counting_mode(mode)
    if chord.stack is not None:
        return OVER.join(write_number(part, mode, conventions) for part in chord.stack)
    number, accidental = written_root(chord.root, mode, chord.quality.has_minor_third)
    tail = signed(mark_tail(chord.quality, conventions.plain, numeral=False), conventions)
    tail = raised(tail) if conventions.figures == "raised" and not conventions.plain else tail
    bass = "" if chord.bass == chord.own_bass else "/" + written_bass_degree(chord, mode, conventions)
    return f"{write_accidental(accidental, conventions.plain)}{number}{tail}{bass}"


def starts_number(text: str) -> bool:
    """Whether a token begins (after any accidental) with a digit."""
    return text.lstrip("".join(SIGNS) + "♮")[:1].isdigit()
