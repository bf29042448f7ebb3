"""Chord symbols: a root, a tail, and a bass after a slash."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import write_accidental
from nearhand.notation.chord_tail_writing import symbol_tail
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.notes import read_pitch_class, write_pitch_class
from nearhand.theory.chord import Chord
from nearhand.theory.pitch_class import PitchClass

_SIGNS = str.maketrans({"b": write_accidental(-1), "#": write_accidental(1)})


@lru_cache(maxsize=4096)
def parse_chord(text: str) -> Chord:
    """Read one chord symbol.

    Raises InputError with the place of the first character that cannot be read.

    >>> [str(tone) for tone in parse_chord("Bbm7b5/Fb").tones]
    ['Bb', 'Db', 'Fb', 'Ab']
    """
    root, end = read_pitch_class(text, 0, "chord root")
    slash = _bass_slash(text, end)
    tail = text[end:] if slash < 0 else text[end:slash]
    try:
        quality = read_tail(tail)
    except InputError as error:
        raise error.within(text, end) from None
    return Chord(root, quality, root if slash < 0 else _read_bass(text, slash + 1))


def _bass_slash(text: str, start: int) -> int:
    """Where the slash before a bass stands, -1 if nowhere: not the one in 6/9."""
    slash = text.find("/", start)
    while slash >= 0 and text[slash - 1 : slash + 2] == "6/9":
        slash = text.find("/", slash + 1)
    return slash


def _read_bass(text: str, start: int) -> PitchClass:
    letter = text[start : start + 1]
    if letter.isdigit():
        raise InputError(
            "after a chord symbol the bass is a note, not a degree",
            text,
            start,
            wanted="a bass note",
            hint="write the note, as in Em/G; degrees follow numerals and numbers, as in i/3",
        )
    capital = text[:start] + letter.upper() + text[start + 1 :] if letter in "abcdefg" else text
    try:
        bass, end = read_pitch_class(capital, start, "bass note")
    except InputError as error:
        raise error.within(text, 0) from None
    if end < len(text):
        raise InputError("nothing may follow the bass note", text, end, wanted="the end of the chord", hint="")
    return bass


def write_chord(chord: Chord, conventions: Conventions = DEFAULT) -> str:
    """Write one chord symbol; it reads back to the same chord.

    >>> write_chord(parse_chord("Bbmin7/Ab")), write_chord(parse_chord("C+7"), Conventions(plain=True))
    ('B♭m7/A♭', 'C7#5')
    """
    plain = conventions.plain
    tail = symbol_tail(chord.quality)
    if not plain:
        tail = tail.translate(_SIGNS)
    bass = "" if chord.bass == chord.root else "/" + write_pitch_class(chord.bass, plain)
    return write_pitch_class(chord.root, plain) + tail + bass
