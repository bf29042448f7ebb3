"""Pitches of an ABC tune's notes: the key signature, accidentals that hold through a bar, and ties put into each.

ABC standard 2.1, sections 4.2, 4.11 and 11.3, from memory: an accidental holds to the end of its bar, for its letter in
all octaves unless the file asks for less. That a tie carries an accidental over the bar line is common practice.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.exchange.abc_key_fields import KeyField, octaves_of, read_key_field
from nearhand.exchange.abc_signs import Sign, WrittenNote
from nearhand.exchange.abc_text import Field
from nearhand.notation.chart import FARTHEST_PLACE
from nearhand.theory.melody import HIGHEST, LOWEST
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS, pitch_class
from nearhand.theory.record import NamedTuple

PITCH, OCTAVE, NOT = "pitch", "octave", "not"
"""What an accidental holds for: its letter in all octaves, its letter in one octave, or its note alone."""
_HOLDS_FOR = "propagate-accidentals"


def holding_of(field: Field) -> str | None:
    """What accidentals hold for, where a field or an instruction sets it; else None.

    >>> from nearhand.exchange.abc_text import Row, instruction_of
    >>> holding_of(instruction_of(Row("it.abc", 1, "%%propagate-accidentals octave")))
    'octave'
    """
    words = field.value.split()
    sets = field.letter == "I" and words[:1] == [_HOLDS_FOR] and words[-1] in (PITCH, OCTAVE, NOT)
    return words[-1] if sets else None


class Pitched(NamedTuple):
    """A sign with the pitches of its notes in written order; ``is_held`` where a tie leads to its highest note."""

    sign: Sign
    pitches: tuple[Pitch, ...] = ()
    is_held: bool = False

    @property
    def highest(self) -> Pitch | None:
        """The highest pitch; None for what is no note."""
        return max(self.pitches, key=lambda pitch: pitch.midi) if self.pitches else None


def pitched(signs: Sequence[Sign], key: KeyField, holds_for: str = PITCH) -> tuple[Pitched, ...]:
    """The signs with the pitches of their notes.

    Raises InputError at a note outside the MIDI numbers, or too far from the key to be spelled.

    >>> from nearhand.exchange.abc_key_fields import alterations_of
    >>> from nearhand.exchange.abc_signs import signs_of
    >>> from nearhand.exchange.abc_text import Row
    >>> from nearhand.notation.keys import parse_key
    >>> g = KeyField(parse_key("G"), alterations_of(parse_key("G")))
    >>> [str(each.highest) for each in pitched(signs_of([Row("it.abc", 1, "F ^C c-|c C")]), g) if each.pitches]
    ['F#4', 'C#4', 'C#5', 'C#5', 'C4']
    """
    reader = _Reader(key, holds_for)
    return tuple([reader.read(sign) for sign in signs])


class _Reader:
    """Reads signs one after another: what a letter means depends on those before."""

    def __init__(self, key: KeyField, holds_for: str) -> None:
        self._home, self._signature, self._holds_for = key.key, key.alterations, holds_for
        self._key_octaves, self._voice_octaves = key.octaves, 0
        self._held: dict[object, int] = {}
        self._last: Pitch | None = None
        self._tied: Pitch | None = None

    def read(self, sign: Sign) -> Pitched:
        if sign.kind == "note":
            return self._note(sign)
        if sign.kind == "grace":
            return Pitched(sign, tuple([self._pitch(note, sign) for note in sign.notes]))
        if sign.kind in ("rest", "bars"):
            self._last = self._tied = None
        if sign.kind == "tie":
            self._tied = self._last
        elif sign.kind in ("bar", "bars"):
            self._held = {}
        elif sign.field is not None and sign.field.letter == "K":
            changed = read_key_field(sign.field)
            self._signature, self._held = changed.alterations, {}
            self._key_octaves = changed.octaves or self._key_octaves
        elif sign.field is not None and sign.field.letter == "V":
            self._voice_octaves = octaves_of(sign.field.value) or self._voice_octaves
        elif sign.field is not None:
            self._holds_for = holding_of(sign.field) or self._holds_for
        return Pitched(sign)

    def _note(self, sign: Sign) -> Pitched:
        found = Pitched(sign, tuple([self._pitch(note, sign, self._tied) for note in sign.notes]))
        is_held = self._tied is not None and found.highest == self._tied
        self._last, self._tied = found.highest, None
        return found._replace(is_held=is_held)

    def _pitch(self, note: WrittenNote, sign: Sign, tied: Pitch | None = None) -> Pitch:
        octave = note.octave + self._key_octaves + self._voice_octaves
        if note.alteration is None and tied and (tied.pitch_class.letter, tied.octave) == (note.letter, octave):
            return tied
        place = note.letter if self._holds_for == PITCH else (note.letter, octave)
        alteration = note.alteration
        if alteration is None:
            alteration = self._held.get(place, self._signature.get(note.letter, 0))
        elif self._holds_for != NOT:
            self._held[place] = alteration
        pitch = Pitch(pitch_class(LETTERS_IN_FIFTHS.index(note.letter) - 1 + 7 * alteration), octave)
        self._check(pitch, sign)
        return pitch

    def _check(self, pitch: Pitch, sign: Sign) -> None:
        if not LOWEST <= pitch.midi <= HIGHEST:
            what, hint = f"{pitch} lies outside the MIDI numbers 0 to 127", "write it in a nearer octave; C is middle C"
            raise sign.refusal(what, "a note from C-1 to G9", hint)
        if abs(pitch.pitch_class.fifths - self._home.tonic.fifths) > FARTHEST_PLACE:
            what = f"{pitch} lies too far from {self._home} to be spelled"
            raise sign.refusal(what, "a note", "use a name nearer to the key")
