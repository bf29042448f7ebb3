"""Chord symbols: a root, a tail, and a bass after a slash."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_tail_writing import signed, symbol_tail
from nearhand.notation.chord_tails import bass_slash, read_tail
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.notes import read_pitch_class, write_pitch_class
from nearhand.theory.chord import Chord
from nearhand.theory.pitch_class import PitchClass


@lru_cache(maxsize=4096)
def parse_chord(text: str) -> Chord:
    """Read one chord symbol.

    Raises InputError with the place of the first character that cannot be read.

    >>> [str(tone) for tone in parse_chord("Bbm7b5/Fb").tones]
    ['Bb', 'Db', 'Fb', 'Ab']
    """
    root, end = read_pitch_class(text, 0, "chord root")
    slash = bass_slash(text, end)
    tail = text[end:] if slash < 0 else text[end:slash]
    try:
        quality = read_tail(tail)
    except InputError as error:
        raise error.within(text, end) from None
    return Chord(root, quality, root if slash < 0 else _read_bass(text, slash + 1))


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
    tail = signed(symbol_tail(chord.quality), conventions)
    bass = "" if chord.bass == chord.root else "/" + write_pitch_class(chord.bass, plain)
    return write_pitch_class(chord.root, plain) + tail + bass
