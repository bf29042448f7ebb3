"""Notes with their octaves, read from words, and plain numbers."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.notation.notes import read_pitch_class
from nearhand.theory.pitch import Pitch

_FREE = "-"
_HINT = "write notes with their octaves, for example E4 G4 B4; middle C is C4"


def read_pitches(text: str) -> tuple[Pitch, ...]:
    """Read note names with octaves. Raises InputError.

    >>> [str(pitch) for pitch in read_pitches("E4 G#4")]
    ['E4', 'G#4']
    """
    notes = read_top_notes(text)
    if None in notes:
        raise InputError("a note is missing", text, text.index(_FREE), wanted="a note", hint=_HINT)
    return tuple(note for note in notes if note is not None)


def read_top_notes(text: str) -> tuple[Pitch | None, ...]:
    """Read note names with octaves, ``-`` where there is none (None). Raises InputError.

    >>> [str(pitch) for pitch in read_top_notes("E5 - D5")]
    ['E5', 'None', 'D5']
    """
    notes: list[Pitch | None] = []
    at = 0
    while at < len(text):
        if text[at].isspace() or text[at] == ",":
            at += 1
        elif text[at] == _FREE:
            notes.append(None)
            at += 1
        else:
            name, end = read_pitch_class(text, at)
            if end >= len(text) or text[end] not in "012345678":
                is_far = text[end : end + 1] in ("9", "-") and text[end : end + 2] != "- "
                what = f"{name} lies outside the octaves 0 to 8" if is_far else f"{name} needs its octave"
                raise InputError(what, text, end, wanted="an octave", hint=_HINT)
            notes.append(Pitch(name, int(text[end])))
            at = end + 1
    if not notes:
        raise InputError("there are no notes here", text, len(text), wanted="notes", hint=_HINT)
    return tuple(notes)


def read_number(text: str, wanted: str, hint: str) -> int:
    """Read a whole number; ``wanted`` says what it is. Raises InputError."""
    if text.isascii() and text.isdigit() and len(text) <= 9:
        return int(text)
    what = f"{text[:30]!r} is not {wanted}" if text else f"{wanted} is missing"
    raise InputError(what, text, wanted=wanted, hint=hint)
