"""How a tune lies for one singer: what of it is comfortable, what room it leaves, how long it stays at the top."""

from __future__ import annotations

from nearhand.harmony.percents import percent
from nearhand.melody.ranges import Voice
from nearhand.melody.spans import Span
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

TOP = 2
"""Semitones below the highest note of a singer, from which on a note lies at the top."""
MARGIN = 2
"""Semitones of room at both ends that are enough (both common practice, no source)."""
_TENTH = 10
_WHOLE_TONE = 4
"""Half semitones of a whole tone."""


class Place(NamedTuple):
    """Where one singer sings a tune, as MIDI numbers, and how it lies there.

    ``octaves``: how many octaves above the written melody, in the key of the place. ``below``, ``above``: semitones of
    room at the ends of the singer's range, below 0 where the tune passes it. ``comfortable``, ``at_top``: percent of
    its time, None where only its ends are known. ``strained``: semitones by which its ends pass the comfortable part.
    ``off_middle``: half semitones from the middle of the comfortable part to the middle of the tune, which is the mean
    of its notes by their time, and the middle between its ends where only these are known.
    """

    low: int
    high: int
    octaves: int
    below: int
    above: int
    strained: int
    off_middle: int
    comfortable: int | None = None
    at_top: int | None = None

    @property
    def too_far(self) -> int:
        """Semitones by which it passes the range at its worse end; 0 where it fits."""
        return max(-self.below, -self.above, 0)

    @property
    def strain(self) -> tuple[int, ...]:
        """How hard it is to sing, less being better: what an octave or a key must not add to."""
        if self.comfortable is None or self.at_top is None:
            return self.too_far, self.strained
        cramped = max(0, MARGIN - min(self.below, self.above))
        return self.too_far, _tenths(100 - self.comfortable), cramped, _tenths(self.at_top)

    @property
    def rank(self) -> tuple[int, ...]:
        """What places are compared by, less being better, and the first difference deciding.

        Of a melody: semitones too far; tenths of the time that are not comfortable; semitones that the narrower end
        lacks to MARGIN; tenths of the time at the top; whole tones from the mean to the middle of the comfortable part.
        Of two ends: semitones too far, and half semitones from middle to middle.
        """
        if self.comfortable is None:
            return self.too_far, self.off_middle
        return *self.strain, self.off_middle // _WHOLE_TONE


def place_of(span: Span, voice: Voice, low: int) -> Place:
    """How a tune lies for a singer where its lowest note sounds at ``low``; octaves are left at 0.

    >>> from nearhand.melody.ranges import voice_of
    >>> place = place_of(Span(60, 72, times=((0, 1), (4, 6), (12, 1))), voice_of(57, 72), 57)
    >>> place.above, place.comfortable, place.at_top, place.strain
    (3, 88, 0, (0, 1, 2, 0))
    """
    high = low + span.width
    strained = max(0, voice.comfort_low - low) + max(0, high - voice.comfort_high)
    place = Place(low, high, 0, low - voice.low, voice.high - high, strained, 0)
    if not span.times:
        return place._replace(off_middle=abs(low + high - voice.comfort_low - voice.comfort_high))
    total = sum(beats for _, beats in span.times)
    easy = sum(beats for above, beats in span.times if voice.comfort_low <= low + above <= voice.comfort_high)
    top = sum(beats for above, beats in span.times if low + above >= voice.high - TOP)
    middle = voice.comfort_low + voice.comfort_high
    ways: list[Beats] = [(2 * (low + above) - middle) * beats for above, beats in span.times]
    way = sum(ways)
    off = max(way, -way)
    return place._replace(off_middle=int(off // total), comfortable=percent(easy, total), at_top=percent(top, total))


def _tenths(percent: int) -> int:
    """Percent in steps of ten, rounded: a percent more or less decides nothing."""
    return (percent + _TENTH // 2) // _TENTH
