"""What a tune asks of a voice: its lowest and highest note, and how long it stays at each note between them."""

from __future__ import annotations

from nearhand.theory.key import Key, pitch_in
from nearhand.theory.melody import Melody
from nearhand.theory.pitch import Pitch, pitch_at
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_SHARES_OF_A_WHOLE_NOTE = 32
"""Every unit of a meter is so many of them, or a whole number of times fewer: time is added up in these."""


class Span(NamedTuple):
    """The lowest and the highest note of a tune as MIDI numbers; ``is_free``: its octave is not known.

    ``times``: semitones above the lowest note, and how long notes sound there (in 32nd notes), from the lowest up;
    empty where only the two ends of the tune are known. ``spellings``: semitones above the lowest note, and the fifths
    from the tonic to the note that is written there.
    """

    low: int
    high: int
    is_free: bool = False
    times: tuple[tuple[int, Beats], ...] = ()
    spellings: tuple[tuple[int, int], ...] = ()

    @property
    def width(self) -> int:
        """Semitones from the lowest to the highest note."""
        return self.high - self.low

    @property
    def middle_half(self) -> tuple[int, int] | None:
        """Semitones above the lowest note between which the tune lies for the middle half of its time, at least.

        A quarter of the time at most lies below them, and a quarter above. None where times are not known.

        >>> Span(60, 72, times=((0, 8), (4, 8), (7, 8), (12, 8))).middle_half
        (4, 7)
        """
        if not self.times:
            return None
        total = sum(beats for _, beats in self.times)
        passed: Beats = 0
        low = high = None
        for semitones, beats in self.times:
            passed += beats
            low = semitones if low is None and 4 * passed > total else low
            high = semitones if high is None and 4 * passed >= 3 * total else high
        return None if low is None or high is None else (low, high)

    def pitch(self, above: int, low: int, key: Key) -> Pitch:
        """The note so many semitones above the lowest, spelled as in the tune, where that sounds at ``low`` in a key.

        >>> from nearhand.notation.keys import parse_key
        >>> span = Span(61, 74, spellings=((0, 5), (13, 0)))                       # C sharp and D in D minor
        >>> str(span.pitch(0, 57, parse_key("Bb minor"))), str(span.pitch(13, 57, parse_key("Bb minor")))
        ('A3', 'Bb4')
        """
        for semitones, fifths in self.spellings:
            if semitones == above:
                return pitch_at(key.tonic.up(fifths), low + above)
        return pitch_in(key, low + above)


def span_of(melody: Melody) -> Span | None:
    """The span of a melody, grace notes included, and the time at each of its notes; None for a melody of rests.

    >>> from nearhand.notation.melody_reading import parse_melody
    >>> span = span_of(parse_melody("C4 - E4 r"))
    >>> span.low, span.high, span.times, span.spellings
    (60, 64, ((0, 16), (4, 8)), ((0, 0), (4, 4)))
    """
    ends = melody.span
    if ends is None:
        return None
    low, high = (pitch.midi for pitch in ends)
    bottom = melody.tonic.midi - low
    times: dict[int, Beats] = {}
    spellings: dict[int, int] = {}
    for bar in melody.bars:
        share = _SHARES_OF_A_WHOLE_NOTE // bar.meter.unit
        for note in bar.notes:
            for interval in (*note.graces, note.interval):
                if interval is not None:
                    spellings.setdefault(bottom + interval.semitones, interval.fifths)
            if note.interval is not None:
                above = bottom + note.interval.semitones
                times[above] = times.get(above, 0) + share * note.beats
    return Span(low, high, not melody.has_octaves, tuple(sorted(times.items())), tuple(sorted(spellings.items())))
