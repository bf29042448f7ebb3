"""The notes of a melody one after another: names, degrees and syllables as intervals above the tonic.

A name without an octave is the note nearest to the one before it (a fourth at most; the first lies in the octave from
middle C up). With a mark it is the next one above (``'``) or below (``_``), and an octave on for each further mark.
Degrees and syllables are read as in ``melody_degrees``.
"""

from __future__ import annotations

from nearhand.notation.accidentals import read_accidentals
from nearhand.notation.chart import FARTHEST_PLACE
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import MODE_WORDS
from nearhand.notation.melody_bars import Read, each_note
from nearhand.notation.melody_degrees import interval_of, read_degree, read_octaves, read_syllable
from nearhand.notation.melody_signs import Sign
from nearhand.notation.note_names import SYLLABLES
from nearhand.notation.notes import read_pitch_class
from nearhand.notation.syllables import NATURAL, SUNG_ELSEWHERE, read_fixed, read_movable
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import HIGHEST, LOWEST, home_tonic
from nearhand.theory.pitch import Pitch, interval_between
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS, PitchClass, pitch_class

RESTS = ("r", "R", "0")
HINT = "write notes: E4 F#4 G, degrees: 1 b3 5', syllables: do re mi, or r for a rest"
_FIRST_OCTAVE = 4
_OCTAVES = "0123456789"
_NEAR = 3
"""Steps of the staff within which a name without an octave is looked for: a fourth."""


def needs_key(text: str) -> bool:
    """Whether a note is a degree or a movable syllable, which mean nothing without a key.

    >>> [needs_key(text) for text in ("b7", "sol'", "Sol", "E4", "r")]
    [True, True, False, False, False]
    """
    return read_degree(text, 0) is not None or read_movable(text, 0) is not None


class NoteReader:
    """Reads notes one after another: a name without an octave depends on the note before it."""

    def __init__(self, text: str, key: Key, conventions: Conventions) -> None:
        self.text, self.mode, self.conventions = text, key.mode, conventions
        self.tonic = home_tonic(key)
        self.has_octaves = False
        self._before: Pitch | None = None
        self._known: dict[str, tuple[Interval, Pitch]] = {}

    def note(self, sign: Sign) -> tuple[Interval | None, tuple[Interval, ...]]:
        """The interval from the tonic to a note, None for a rest, and those of its grace notes. Raises InputError."""
        if sign.text in RESTS:
            if sign.graces or sign.ornament:
                what = "grace notes and ornaments belong to a note, not to a rest"
                raise InputError(what, self.text, sign.start, sign.start + 1, wanted="a note", hint=HINT)
            return None, ()
        graces = tuple([self._interval(grace.text, grace.start) for grace in sign.graces])
        return self._interval(sign.text, sign.start), graces

    def check(self, sign: Sign, read: Read) -> None:
        """Raise InputError where a note as it was read at last lies outside the MIDI numbers."""
        for written, interval in each_note(sign, read):
            self._check(written.text, written.start, interval, self.tonic.up(interval))

    def _interval(self, text: str, start: int) -> Interval:
        known = self._known.get(text)
        if known is None:
            interval, is_fixed = self._read(text, start)
            pitch = self.tonic.up(interval)
            self._check(text, start, interval, pitch)
            if is_fixed:
                self._known[text] = interval, pitch
        else:
            interval, pitch = known
        self._before = pitch
        return interval

    def _check(self, text: str, start: int, interval: Interval, pitch: Pitch) -> None:
        end = start + len(text)
        if abs(interval.fifths) > FARTHEST_PLACE:
            what, hint = f"{text[:24]!r} lies too far from the key to be spelled", "use a name nearer to the key"
            raise InputError(what, self.text, start, end, wanted="a note", hint=hint)
        if not LOWEST <= pitch.midi <= HIGHEST:
            what, hint = (
                f"{pitch} lies outside the MIDI numbers 0 to 127",
                "write it in a nearer octave; middle C is C4",
            )
            raise InputError(what, self.text, start, end, wanted="a note from C0_ to G9", hint=hint)

    def _read(self, text: str, start: int) -> tuple[Interval, bool]:
        """The interval to a note, and whether it is the same wherever the text stands."""
        fixed = read_fixed(text, 0)
        if fixed is not None or text[0] in LETTERS_IN_FIFTHS:
            place, end = fixed if fixed is not None else self._name(text, start)
            return self._named(text, start, pitch_class(place), end)
        degree = read_degree(text, 0)
        if degree is not None:
            interval, end = interval_of(degree[0], self.mode, self.conventions), degree[1]
        else:
            syllable = read_syllable(text, 0, self.mode, self.conventions)
            if syllable is None:
                raise self._no_note(text, start)
            interval, end = syllable
        self._all_read(text, start, end)
        return interval, True

    def _name(self, text: str, start: int) -> tuple[int, int]:
        try:
            note, end = read_pitch_class(text, 0)
        except InputError as error:
            raise error.within(self.text, start) from None
        return note.fifths, end

    def _named(self, text: str, start: int, note: PitchClass, end: int) -> tuple[Interval, bool]:
        has_octave = text[end : end + 1] != "" and text[end] in _OCTAVES
        if has_octave:
            self.has_octaves = True
            marks, after = read_octaves(text, end + 1)
            octave = int(text[end]) + marks
        else:
            marks, after = read_octaves(text, end)
            octave = self._near(note, marks)
        self._all_read(text, start, after)
        return interval_between(self.tonic, Pitch(note, octave)), has_octave

    def _near(self, note: PitchClass, marks: int) -> int:
        """The octave of a name nearest to the note before, or where its marks lead to from there."""
        if self._before is None:
            return _FIRST_OCTAVE + marks
        before = self._before
        steps = (note.step - before.pitch_class.step + _NEAR) % 7 - _NEAR
        is_there = steps * marks > 0  # the nearest one lies where the first mark points
        octaves = marks - is_there if marks > 0 else marks + is_there
        return (7 * before.octave + before.pitch_class.step + steps) // 7 + octaves

    def _all_read(self, text: str, start: int, end: int) -> None:
        if end < len(text):
            if _is_sung_elsewhere(text):
                raise self._no_note(text, start)
            what = f"{text[end]} cannot follow a note"
            raise InputError(what, self.text, start + end, start + end + 1, wanted="a blank", hint=HINT)

    def _no_note(self, text: str, start: int) -> InputError:
        end = start + len(text)
        if _is_sung_elsewhere(text):
            what, hint = f"{text} is no syllable here", f"write {' '.join(NATURAL)}, or {' '.join(SYLLABLES.values())}"
            return InputError(what, self.text, start, end, wanted="a note", hint=hint)
        digit = text[read_accidentals(text, 0)[1] :]
        if digit in ("8", "9"):
            simple = text.replace(digit, str(int(digit) - 7))
            hint = f"write {simple}' for the {'octave' if digit == '8' else 'ninth'}"
            return InputError(f"{text} is no degree", self.text, start, end, wanted="a degree 1 to 7", hint=hint)
        if text.lower() in MODE_WORDS:
            hint = f"put a colon behind the key, as in E {text}: 1 2 3"
            return InputError(f"{text[:20]!r} is no note", self.text, start, end, wanted="a note", hint=hint)
        capital = text[0].upper()
        if capital in LETTERS_IN_FIFTHS and text[1:2] in ("", "b", "#", "♭", "♯", *_OCTAVES):
            hint = f"write the letter as a capital: {capital}{text[1:3]}"
            return InputError(f"{text[:20]} is no note", self.text, start, end, wanted="a note", hint=hint)
        if text[0] in "hH":
            hint = "write B for B natural and Bb for B flat"
            return InputError(f"{text[:20]} is no note", self.text, start, end, wanted="a note", hint=hint)
        return InputError(f"{text[:20]!r} is no note", self.text, start, end, wanted="a note", hint=HINT)


def _is_sung_elsewhere(text: str) -> bool:
    return text.lower().rstrip(f"'_{_OCTAVES}") in SUNG_ELSEWHERE
