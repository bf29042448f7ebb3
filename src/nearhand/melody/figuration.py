"""A melody's notes beside one another and over harmonies: which of them touch, which lie a step apart, which resolve.

A step is a minor or major second by the letters, or a chromatic half step on one letter (C to C♯). So a diminished
third is none, though it sounds as one. For passing tones alone the augmented second between the lowered sixth and the
raised seventh degree of a minor key is a step, for there they are neighbours in harmonic minor. Notes of one pitch that
follow at once are taken as one; a rest resolves nothing.
"""

from __future__ import annotations

from bisect import bisect_left
from collections.abc import Iterator

from nearhand.melody.harmonies import TimeLine
from nearhand.melody.standing import member_of, tension_of
from nearhand.theory.interval import Interval
from nearhand.theory.melody import SoundingNote
from nearhand.theory.mode import LOWERED_SIXTH, RAISED_SEVENTH
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


class Figuration(NamedTuple):
    """The notes of a melody as they sound, in order, over harmonies; ``has_two_forms``: whether the key is minor."""

    notes: tuple[SoundingNote, ...]
    line: TimeLine
    has_two_forms: bool = False

    def end(self, index: int) -> Beats:
        """The beat at which a note ends."""
        return self.notes[index].onset + self.notes[index].beats

    def beside(self, index: int, way: int) -> int | None:
        """The note right after (1) or right before (-1) a note; None where there is a rest, or nothing."""
        other = index + way
        if not 0 <= other < len(self.notes):
            return None
        touches = self.end(min(index, other)) == self.notes[max(index, other)].onset
        return other if touches else None

    def next_pitch(self, index: int, way: int) -> int | None:
        """As ``beside``, past all notes of the same pitch."""
        found = self.beside(index, way)
        while found is not None and self.is_same(found, index):
            found = self.beside(found, way)
        return found

    def sounding_through(self, index: int) -> tuple[Beats, Beats]:
        """From which beat to which the pitch of a note sounds, struck again or not, without another or a rest."""
        first = last = index
        while (other := self.beside(first, -1)) is not None and self.is_same(other, index):
            first = other
        while (other := self.beside(last, 1)) is not None and self.is_same(other, index):
            last = other
        return self.notes[first].onset, self.end(last)

    def is_same(self, index: int, other: int) -> bool:
        """Whether two notes sound alike."""
        return self.notes[index].pitch.midi == self.notes[other].pitch.midi

    def step(self, index: int, other: int | None) -> int:
        """1 where another note lies a step above, -1 where a step below, 0 where it is none or there is no note."""
        if other is None:
            return 0
        interval = -self.notes[index].interval + self.notes[other].interval
        size, letters = abs(interval.semitones), abs(interval.steps)
        is_second = letters == 1 and size in (1, 2) and interval.steps * interval.semitones > 0
        is_half_step = letters == 0 and size == 1
        return _direction(interval) if is_second or is_half_step else 0

    def wide_step(self, index: int, other: int | None) -> int:
        """As ``step``; in minor also between the lowered sixth and the raised seventh."""
        if other is None or not self.has_two_forms:
            return self.step(index, other)
        places = {self.notes[index].interval.fifths, self.notes[other].interval.fifths}
        interval = -self.notes[index].interval + self.notes[other].interval
        is_augmented = places == {LOWERED_SIXTH, RAISED_SEVENTH} and abs(interval.semitones) == 3
        return _direction(interval) if is_augmented else self.step(index, other)

    def is_tone_at(self, index: int, onset: Beats, or_stands: bool = False) -> bool:
        """Whether a note is a tone of the harmony at a beat; ``or_stands``: or may stand over it."""
        harmony = self.line.at(onset)
        if harmony is None or harmony.chord is None:
            return False
        place = self.notes[index].interval.fifths
        return bool(member_of(harmony.chord, place) or (or_stands and tension_of(harmony.chord, place)))

    def is_tone(self, index: int, or_stands: bool = False) -> bool:
        """Whether a pitch is a tone of any of the harmonies that it sounds through; ``or_stands``: or stands there."""
        begin, end = self.sounding_through(index)
        onsets = (max(begin, self.line.harmonies[each].onset) for each in self._harmonies(begin, end))
        return any(self.is_tone_at(index, onset, or_stands) for onset in onsets)

    def over(self, index: int) -> range:
        """The indexes of the harmonies that a note sounds with."""
        return self._harmonies(self.notes[index].onset, self.end(index))

    def _harmonies(self, onset: Beats, end: Beats) -> range:
        """The indexes of the harmonies between two beats."""
        first = self.line.index_at(max(onset, 0)) if end > 0 else None
        if first is None:
            return range(0)
        return range(first, bisect_left(self.line.harmonies, end, key=lambda harmony: harmony.onset))

    def is_light(self, index: int) -> bool:
        """Whether a note is short, or a little longer and off the beat."""
        return self.line.is_light(self.notes[index].onset, self.end(index))

    def resolution(self, index: int, or_stands: bool = False) -> int | None:
        """The tone of its chord to which a note goes on by steps in one direction, through light notes; else None.

        ``or_stands``: or the first note on that way which may stand over its chord.
        """
        after = self.next_pitch(index, 1)
        direction = self.step(index, after)
        if not direction:
            return None
        while after is not None and not self.is_tone_at(after, self.notes[after].onset, or_stands):
            further = self.next_pitch(after, 1)
            goes_on = self.is_light(after) and self.step(after, further) == direction
            after = further if goes_on else None
        return after


class Place(NamedTuple):
    """One note over one harmony: the indexes of both, and from which beat to which both sound."""

    note: int
    harmony: int
    onset: Beats
    end: Beats


def places(music: Figuration) -> Iterator[Place | None]:
    """Every note over every harmony that it sounds with, in order; None for a note that sounds with none of them."""
    for index, note in enumerate(music.notes):
        numbers = music.over(index)
        if not numbers:
            yield None
        for number in numbers:
            harmony = music.line.harmonies[number]
            yield Place(index, number, max(note.onset, harmony.onset), min(music.end(index), harmony.end))


def _direction(interval: Interval) -> int:
    return 1 if interval.semitones > 0 else -1
