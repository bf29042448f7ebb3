"""The degree in the bass behind a slash, of a numeral or a number."""

from __future__ import annotations

from nearhand.notation.accidentals import MOST_ACCIDENTALS, read_accidentals
from nearhand.notation.chord_tails import plain_digits
from nearhand.notation.degrees import bass_place
from nearhand.notation.errors import InputError
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import Mode


def read_bass_degree(text: str, start: int, mode: Mode, chord: RelativeChord) -> int:
    """Read a bass degree 1 to 7 with its accidentals to the end of the text; answer its place above the tonic.

    Raises InputError.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> read_bass_degree("v/7", 2, MINOR, parse_numeral("v", MINOR))
    -2
    """
    accidental, at = read_accidentals(text, start)
    digits = plain_digits(text[at:])
    if len(digits) != 1 or digits not in "1234567":
        raise InputError(
            f"{digits[:12]!r} is no bass degree" if digits else "a bass degree is missing",
            text,
            at,
            max(len(text), at + 1),
            wanted="a bass degree 1 to 7",
            hint="a slash and a digit name the scale degree in the bass, as in v/7",
        )
    if accidental is not None and abs(accidental) > MOST_ACCIDENTALS:
        raise InputError("a degree takes three accidentals at most", text, start, at, wanted="a bass degree", hint="")
    return bass_place(int(digits), accidental, mode, chord.places)
