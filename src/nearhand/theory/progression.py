"""A progression: bars of key-free chords, and the key they are shown in."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from fractions import Fraction

    Beats = int | Fraction


class Meter(NamedTuple):
    """Beats in a bar, and the note value of one beat (4 a quarter, 8 an eighth)."""

    beats: int
    unit: int

    @property
    def is_compound(self) -> bool:
        """Whether its units go in threes: 6/8, 9/8, 12/8, 6/4 and so on (common practice; tested beside music21's)."""
        return self.beats > 3 and self.beats % 3 == 0

    def __str__(self) -> str:
        return f"{self.beats}/{self.unit}"


COMMON_TIME = Meter(4, 4)


class Slot(NamedTuple):
    """One chord for some beats; ``chord`` is None where there is no chord. An optional chord may be left out."""

    chord: RelativeChord | None
    beats: Beats
    is_optional: bool = False


class Bar(NamedTuple):
    """One bar: its chords in time order, its meter and the signs at its edges."""

    slots: tuple[Slot, ...]
    meter: Meter = COMMON_TIME
    opens_repeat: bool = False
    closes_repeat: bool = False
    ends_section: bool = False
    section: str = ""


class Moment(NamedTuple):
    """One chord of a progression with its place: bar number from 1, beats, and whether it opens its bar."""

    bar: int
    slot: Slot
    is_first: bool


class Progression(NamedTuple):
    """Bars of key-free chords in a key. Another key is another ``key``: nothing else changes."""

    key: Key
    bars: tuple[Bar, ...]

    def in_key(self, key: Key) -> Progression:
        """The same progression in another key."""
        return self._replace(key=key)

    @property
    def moments(self) -> tuple[Moment, ...]:
        """All chords and rests in written order."""
        return tuple(
            Moment(number, slot, place == 0)
            for number, bar in enumerate(self.bars, start=1)
            for place, slot in enumerate(bar.slots)
        )

    @property
    def relative_chords(self) -> tuple[RelativeChord, ...]:
        """The key-free chords in written order, rests left out."""
        return tuple(slot.chord for bar in self.bars for slot in bar.slots if slot.chord is not None)

    def chords(self) -> Iterator[Chord]:
        """The chords as they are named in the key, in written order, rests left out."""
        return (chord.in_key(self.key) for chord in self.relative_chords)

    @property
    def repeats_as_a_whole(self) -> bool:
        """Whether one pair of repeat signs encloses everything."""
        opened = [bar.opens_repeat for bar in self.bars]
        closed = [bar.closes_repeat for bar in self.bars]
        return bool(self.bars) and closed[-1] and sum(closed) == 1 and not any(opened[1:])


def even_beats(count: int, meter: Meter) -> tuple[Beats, ...]:
    """Beats of ``count`` chords that share a bar: whole beats, the earlier ones longer; else equal parts.

    Common practice, no source.

    >>> even_beats(2, Meter(3, 4)), even_beats(3, COMMON_TIME), even_beats(4, COMMON_TIME)
    ((2, 1), (2, 1, 1), (1, 1, 1, 1))
    """
    if count > meter.beats:
        return shared_beats([1] * count, meter)
    whole, rest = divmod(meter.beats, count)
    return tuple(whole + (place < rest) for place in range(count))


def shared_beats(shares: Sequence[int], meter: Meter) -> tuple[Beats, ...]:
    """Beats of chords in proportion to their shares of a bar.

    >>> shared_beats([3, 1], COMMON_TIME)
    (3, 1)
    """
    total = sum(shares)
    return tuple(_beats(share * meter.beats, total) for share in shares)


def _beats(parts: int, of: int) -> Beats:
    if parts % of == 0:
        return parts // of
    from fractions import Fraction  # 8 ms of import, and most charts have whole beats

    return Fraction(parts, of)
