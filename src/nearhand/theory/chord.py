"""Chords by name, and the same chords without a key: what stays the same in all keys."""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.key import Key
from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.quality import Quality, stacked
from nearhand.theory.record import NamedTuple


class Chord(NamedTuple):
    """A chord: root, quality and bass (the root itself when there is no slash bass)."""

    root: PitchClass
    quality: Quality
    bass: PitchClass

    @property
    def tones(self) -> tuple[PitchClass, ...]:
        """The spelled chord tones from the root up; a foreign bass is not among them.

        >>> from nearhand.theory.quality import QUALITIES
        >>> [str(tone) for tone in Chord(PitchClass(5), QUALITIES["dominant"], PitchClass(5)).tones]
        ['B', 'D#', 'F#', 'A']
        """
        return spelled(self.root.fifths, self.quality)


class RelativeChord(NamedTuple):
    """A chord without its key: root and bass are places in fifths above the tonic."""

    root: int
    quality: Quality
    bass: int

    def in_key(self, key: Key) -> Chord:
        """The chord in a key: one addition, and the spelling comes out right by itself.

        >>> from nearhand.theory.mode import MINOR
        >>> from nearhand.theory.quality import QUALITIES
        >>> dominant = RelativeChord(1, QUALITIES["major"], 5)
        >>> [str(tone) for tone in dominant.in_key(Key(PitchClass(-1), MINOR)).tones]
        ['C', 'E', 'G']
        """
        tonic = key.tonic.fifths
        return Chord(pitch_class(tonic + self.root), self.quality, pitch_class(tonic + self.bass))

    @property
    def places(self) -> tuple[int, ...]:
        """The chord tones from the root up, in fifths above the tonic."""
        root = self.root
        return tuple([root + interval for interval in self.quality.intervals])

    @property
    def own_bass(self) -> int:
        """The bass where none is written: the root, or the lowest tone of a chord without root."""
        return self.root if 0 in self.quality.intervals else self.root + self.quality.intervals[0]

    @property
    def stack(self) -> tuple[RelativeChord, RelativeChord] | None:
        """The upper and the lower chord of a chord over a chord; None for any other."""
        if self.quality.layers is None:
            return None
        lower, interval, upper = self.quality.layers
        alone = RelativeChord(self.root + interval, upper, self.root + interval)
        return alone._replace(bass=alone.own_bass), self._replace(quality=lower)

    def over(self, lower: RelativeChord) -> RelativeChord:
        """A chord over a chord, this one above: root and bass are those of the lower one.

        >>> from nearhand.theory.quality import QUALITIES
        >>> two, one = (RelativeChord(root, QUALITIES["major"], root) for root in (2, 0))
        >>> two.over(one).places
        (0, 4, 1, 2, 6, 3)
        """
        return lower._replace(quality=stacked(lower.quality, self.root - lower.root, self.quality))

    def above(self, fifths: int) -> RelativeChord:
        """The same chord counted from a tonic that lies ``fifths`` below."""
        return RelativeChord(self.root + fifths, self.quality, self.bass + fifths)


@lru_cache(maxsize=4096)
def spelled(root: int, quality: Quality) -> tuple[PitchClass, ...]:
    """The spelled tones of a quality on a root given as a place on the line of fifths."""
    return tuple(pitch_class(root + interval) for interval in quality.intervals)


def relative_to(chord: Chord, key: Key) -> RelativeChord:
    """Take a chord's key away: its degree, quality and bass.

    >>> from nearhand.theory.mode import MAJOR
    >>> from nearhand.theory.quality import QUALITIES
    >>> chord = Chord(PitchClass(5), QUALITIES["major"], PitchClass(5))
    >>> relative_to(chord, Key(PitchClass(4), MAJOR)).root           # B in E major: a fifth above the tonic
    1
    """
    tonic = key.tonic.fifths
    return RelativeChord(chord.root.fifths - tonic, chord.quality, chord.bass.fifths - tonic)
