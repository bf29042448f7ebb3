"""Chord symbols: a root, a tail, and a bass after a slash; or a chord over a chord."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_tail_writing import written_tail
from nearhand.notation.chord_tails import bass_slash, plain_digits, read_tail
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.notes import read_pitch_class, write_pitch_class
from nearhand.theory.chord import Chord
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.quality import stacked

OVER = "//"
"""Between the upper and the lower chord of a chord over a chord, where print has a horizontal line."""


@lru_cache(maxsize=4096)
def parse_chord(text: str) -> Chord:
    """Read one chord symbol.

    After a slash a bare note is the bass; a whole chord, or two slashes, make a chord over a chord. Raises InputError
    with the place of the first character that cannot be read.

    >>> [str(tone) for tone in parse_chord("Bbm7b5/Fb").tones]
    ['Bb', 'Db', 'Fb', 'Ab']
    >>> [str(tone) for tone in parse_chord("D//C7").tones]
    ['C', 'E', 'G', 'Bb', 'D', 'F#', 'A']
    """
    root, end = read_pitch_class(text, 0, "chord root")
    slash = bass_slash(plain_digits(text), end)
    tail = text[end:] if slash < 0 else text[end:slash]
    try:
        quality = read_tail(tail)
    except InputError as error:
        raise error.within(text, end) from None
    upper = Chord(root, quality, root)
    if slash < 0:
        return upper
    if text.startswith(OVER, slash):
        return _over(text, upper, slash + len(OVER))
    return upper._replace(bass=bass) if (bass := _bass(text, slash + 1)) else _over(text, upper, slash + 1)


def _bass(text: str, start: int) -> PitchClass | None:
    """The bass note that stands from ``start`` to the end; None where a whole chord stands there."""
    letter = text[start : start + 1]
    if plain_digits(letter).isdigit():
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
    if end == len(text):
        return bass
    if capital is not text or text[end] == "/":
        raise InputError("nothing may follow the bass note", text, end, wanted="the end of the chord", hint="")
    return None


_MOST_SLASHES = 2
"""In a lower chord: that of its bass, and that of a 6/9."""


def _over(text: str, upper: Chord, start: int) -> Chord:
    """A chord over the one that stands from ``start`` to the end."""
    if upper.bass != upper.root:
        what, hint = "the upper chord has no bass of its own", "write the bass behind the lower chord, as in D//C7/E"
        raise InputError(what, text, start, wanted="the end of the chord", hint=hint)
    slashes = text.count("/", start)
    try:
        lower = upper if slashes > _MOST_SLASHES else parse_chord(text[start:])
    except InputError as error:
        if text.startswith(OVER, start - len(OVER)):
            raise error.within(text, start) from None
        what, place = "nothing may follow the bass note", start + error.start
        hint = "write a bass note, as in C/E, or a whole chord, as in D//C7"
        raise InputError(what, text, place, wanted="the end of the chord", hint=hint) from None
    if slashes > _MOST_SLASHES or lower.quality.layers is not None:
        what, hint = "only two chords can stand over each other", "write two chords, as in D//C7"
        raise InputError(what, text, start, wanted="the end of the chord", hint=hint)
    quality = stacked(lower.quality, upper.root.fifths - lower.root.fifths, upper.quality)
    return Chord(lower.root, quality, lower.bass)


def write_chord(chord: Chord, conventions: Conventions = DEFAULT) -> str:
    """Write one chord symbol; it reads back to the same chord.

    >>> write_chord(parse_chord("Bbmin7/Ab")), write_chord(parse_chord("C+7"), Conventions(plain=True))
    ('B♭m7/A♭', 'C7#5')
    >>> write_chord(parse_chord("Em/Am7"))
    'Em//Am7'
    """
    plain = conventions.plain or conventions.symbols == "ascii"
    if chord.quality.layers is not None:
        lower, interval, upper = chord.quality.layers
        root = chord.root.up(interval)
        below = write_chord(chord._replace(quality=lower), conventions)
        return f"{write_chord(Chord(root, upper, root), conventions)}{OVER}{below}"
    bass = "" if chord.bass == chord.root else "/" + write_pitch_class(chord.bass, plain)
    return write_pitch_class(chord.root, plain) + written_tail(chord.quality, conventions) + bass
