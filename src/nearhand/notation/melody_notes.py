"""A melody as a row of note names, with or without octaves: ``E4 F#4 G4``, ``E, F#, G``."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.notation.notes import read_pitch_class, write_pitch_class
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple

_OCTAVES = "0123456789"
_HINT = "write note names with blanks between, for example E4 F#4 G4, or E F# G"


class MelodyNote(NamedTuple):
    """A note of a melody; ``octave`` (middle C is C4) is None where none is written."""

    pitch_class: PitchClass
    octave: int | None = None

    def __str__(self) -> str:
        return write_melody_note(self, plain=True)


def parse_melody(text: str) -> tuple[MelodyNote, ...]:
    """Read note names with blanks or commas between.

    Raises InputError with the place of the first character that cannot be read, and when there is no note.

    >>> [str(note) for note in parse_melody("E4 F#4, G")]
    ['E4', 'F#4', 'G']
    """
    notes, at = [], 0
    while at < len(text):
        if _separates(text[at]):
            at += 1
            continue
        note, at = _read_note(text, at)
        notes.append(note)
        if at < len(text) and not _separates(text[at]):
            shown = text[at] if text[at].isprintable() else "this character"
            raise InputError(f"{shown} cannot follow a note", text, at, at + 1, wanted="a blank", hint=_HINT)
    if not notes:
        raise InputError("there are no notes here", text, len(text), wanted="notes", hint=_HINT)
    return tuple(notes)


def _separates(character: str) -> bool:
    return character.isspace() or character == ","


def _read_note(text: str, start: int) -> tuple[MelodyNote, int]:
    note, end = read_pitch_class(text, start)
    if end < len(text) and text[end] in _OCTAVES:
        return MelodyNote(note, int(text[end])), end + 1
    return MelodyNote(note), end


def write_melody_note(note: MelodyNote, plain: bool = False) -> str:
    """Write a note of a melody, with its octave where it has one.

    >>> write_melody_note(MelodyNote(PitchClass(6), 4))
    'F♯4'
    """
    return write_pitch_class(note.pitch_class, plain) + ("" if note.octave is None else str(note.octave))
