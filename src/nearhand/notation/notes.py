"""Note names: a letter and its accidentals, with an octave where a pitch is meant."""

from __future__ import annotations

from nearhand.notation.accidentals import MOST_ACCIDENTALS, read_accidentals, write_accidental
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS, PitchClass, pitch_class


def read_pitch_class(text: str, start: int, what: str = "note") -> tuple[PitchClass, int]:
    """Read a capital letter and its accidentals from ``start``; answer the pitch class and the offset behind it.

    Raises InputError when no letter A to G stands there or more than three accidentals follow.

    >>> read_pitch_class("Bb7", 0)
    (PitchClass(fifths=-2), 2)
    """
    letter = text[start : start + 1]
    if not letter or letter not in LETTERS_IN_FIFTHS:
        raise InputError(
            _not_a_letter(letter, what), text, start, start + 1, wanted=f"a {what}", hint=_letter_hint(letter)
        )
    alteration, end = read_accidentals(text, start + 1)
    alteration = alteration or 0
    if abs(alteration) > MOST_ACCIDENTALS:
        raise InputError(
            f"a {what} takes three sharps or flats at most",
            text,
            min(start + 1 + MOST_ACCIDENTALS, end - 1),
            end,
            wanted=f"a {what}",
            hint="write an enharmonic name with fewer accidentals",
        )
    return pitch_class(LETTERS_IN_FIFTHS.index(letter) - 1 + 7 * alteration), end


def _not_a_letter(letter: str, what: str) -> str:
    shown = letter if letter.isprintable() else "this character"
    return f"{shown} is no {what}" if letter else f"a {what} is missing"


def _letter_hint(letter: str) -> str:
    if letter in ("H", "h"):
        return "write B for B natural and Bb for B flat"
    if letter and letter.upper() in LETTERS_IN_FIFTHS:
        return f"write the letter as a capital: {letter.upper()}"
    return "write a capital letter A to G, then # or b if needed"


def write_pitch_class(note: PitchClass, plain: bool = False) -> str:
    """Write a note name in signs, or in keyboard characters.

    >>> write_pitch_class(PitchClass(-2)), write_pitch_class(PitchClass(-2), plain=True)
    ('B♭', 'Bb')
    """
    return note.letter + write_accidental(note.alteration, plain)


def write_pitch(pitch: Pitch, plain: bool = False) -> str:
    """Write a note name with its octave: middle C is C4."""
    return f"{write_pitch_class(pitch.pitch_class, plain)}{pitch.octave}"


def note_name(note: PitchClass, conventions: Conventions) -> str:
    """A note's name as pages list it: English, German or solfege.

    >>> [note_name(PitchClass(-2), Conventions(names=names)) for names in ("english", "german", "solfege")]
    ['B♭', 'B', 'Si♭']
    """
    if conventions.names == "english":
        return write_pitch_class(note, conventions.plain)
    from nearhand.notation.note_names import NAMERS

    return NAMERS[conventions.names](note, conventions.plain)


def pitch_name(pitch: Pitch, conventions: Conventions) -> str:
    """A note's name as pages list it, with its octave: middle C is C4, and Do4.

    >>> pitch_name(Pitch(PitchClass(5), 3), Conventions(names="german"))
    'H3'
    """
    return f"{note_name(pitch.pitch_class, conventions)}{pitch.octave}"


def parse_pitch_class(text: str) -> PitchClass:
    """Read a whole text as one note name.

    Raises InputError.

    >>> str(parse_pitch_class("F♯"))
    'F#'
    """
    note, end = read_pitch_class(text, 0)
    if end < len(text):
        raise InputError(
            f"{text[:60]!r} goes on after the note name", text, end, wanted="a note", hint=_letter_hint("")
        )
    return note
