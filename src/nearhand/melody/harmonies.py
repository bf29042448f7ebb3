"""The chords of a progression as a time line: from which beat to which each of them sounds."""

from __future__ import annotations

from bisect import bisect_right

from nearhand.theory.chord import RelativeChord
from nearhand.theory.progression import Meter, Progression
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_EIGHTH = 8
_COMPOUND = 3
"""Units of the meter in one beat of a compound meter: 6/8 has two beats of three eighths."""
_GROUPS = {4: 2, 6: 3}
"""Beats in a bar to the beats from one strong place to the next; in all other meters only the first beat is strong."""


class Harmony(NamedTuple):
    """One chord for as long as it does not change, written once or several times in a row; None where there is none.

    ``place``: that of its first chord among the chords of the progression, from 0, rests left out. ``onset`` and
    ``end`` are beats from the start of bar 1.
    """

    chord: RelativeChord | None
    place: int
    onset: Beats
    end: Beats


class TimeLine(NamedTuple):
    """The harmonies of a progression in order, and the onset of each of its bars with the meter."""

    harmonies: tuple[Harmony, ...]
    bars: tuple[tuple[Beats, Meter], ...]

    def index_at(self, onset: Beats) -> int | None:
        """Which harmony sounds at a beat; None before the first bar and after the last."""
        if not self.harmonies or not 0 <= onset < self.harmonies[-1].end:
            return None
        return bisect_right(self.harmonies, onset, key=lambda harmony: harmony.onset) - 1

    def at(self, onset: Beats) -> Harmony | None:
        """The harmony that sounds at a beat; None before the first bar and after the last."""
        index = self.index_at(onset)
        return None if index is None else self.harmonies[index]

    def bar_at(self, onset: Beats) -> int:
        """The number of the bar, from 1, in which a beat lies; the last bar where it lies behind that."""
        return max(1, bisect_right(self.bars, onset, key=lambda bar: bar[0]))

    def pulse_at(self, onset: Beats) -> int:
        """Units of the meter in a beat as it is felt there: three in compound meters, else one.

        Charts in 6/4 and 9/4 are counted in quarters, chord by chord, though books call these meters compound as well.
        """
        meter = self.bars[self.bar_at(onset) - 1][1]
        return _COMPOUND if meter.is_compound and meter.unit >= _EIGHTH else 1

    def is_on_the_beat(self, onset: Beats) -> bool:
        """Whether a beat as it is felt begins there."""
        return self._into_its_bar(onset) % self.pulse_at(onset) == 0

    def is_strong(self, onset: Beats) -> bool:
        """Whether a beat is a strong place: a bar, its third beat of four or fourth of six, or a chord begins there."""
        meter, pulse = self.bars[self.bar_at(onset) - 1][1], self.pulse_at(onset)
        group = _GROUPS.get(meter.beats // pulse, meter.beats // pulse)
        harmony = self.at(onset)
        return self._into_its_bar(onset) % (group * pulse) == 0 or (harmony is not None and harmony.onset == onset)

    def is_light(self, onset: Beats, end: Beats) -> bool:
        """Whether what sounds from one beat to another is short, or a little longer and off the beat."""
        beats, pulse = end - onset, self.pulse_at(onset)
        return beats <= pulse or (beats < 2 * pulse and not self.is_on_the_beat(onset))

    def _into_its_bar(self, onset: Beats) -> Beats:
        return onset - self.bars[self.bar_at(onset) - 1][0]


def time_line(progression: Progression) -> TimeLine:
    """The harmonies of a progression in time; a chord that is written again right away goes on.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> line = time_line(resolve(read_chart("| C | C F | N.C. |"), parse_key("C")))
    >>> [(harmony.place, harmony.onset, harmony.end) for harmony in line.harmonies]
    [(0, 0, 6), (2, 6, 8), (3, 8, 12)]
    """
    found: list[Harmony] = []
    bars: list[tuple[Beats, Meter]] = []
    onset: Beats = 0
    place = 0
    for bar in progression.bars:
        bars.append((onset, bar.meter))
        for slot in bar.slots:
            end = onset + slot.beats
            if found and found[-1].chord == slot.chord:
                found[-1] = found[-1]._replace(end=end)
            else:
                found.append(Harmony(slot.chord, place, onset, end))
            onset, place = end, place + (slot.chord is not None)
    return TimeLine(tuple(found), tuple(bars))


def chord_spans(progression: Progression) -> tuple[tuple[Beats, Beats], ...]:
    """From which beat to which each chord of a progression is written, rests left out.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> chord_spans(resolve(read_chart("| C | C F | N.C. | G |"), parse_key("C")))
    ((0, 4), (4, 6), (6, 8), (12, 16))
    """
    found: list[tuple[Beats, Beats]] = []
    onset: Beats = 0
    for bar in progression.bars:
        for slot in bar.slots:
            end = onset + slot.beats
            if slot.chord is not None:
                found.append((onset, end))
            onset = end
    return tuple(found)
