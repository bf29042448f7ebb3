"""Putting the notes of a melody in bars: between the bar lines that are written, or by the meter where none are.

The first bar may be short: a pickup. The last may be, too.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from nearhand.notation.counting import counted
from nearhand.notation.errors import InputError
from nearhand.notation.melody_signs import Grace, Sign, whole
from nearhand.theory.interval import Interval
from nearhand.theory.melody import MelodyBar, MelodyNote
from nearhand.theory.progression import Meter

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_MOST_SHARES = 999_999
"""Shares of a beat that lengths may be told in: as many as the lengths that are written have digits for."""
Read = tuple[Interval | None, tuple[Interval, ...]] | None
"""What a note sign was read as: its interval (None for a rest) and its grace notes. None for any other sign."""


def each_note(sign: Sign, read: Read) -> Iterator[tuple[Grace, Interval]]:
    """The grace notes of a sign and then its own note, as written and as read; nothing of a rest or another sign."""
    if read is not None and read[0] is not None:
        yield from zip((*sign.graces, Grace(sign.text, sign.start)), (*read[1], read[0]), strict=True)


def bars_of_melody(
    text: str,
    signs: Sequence[tuple[Sign, Read]],
    meters: Sequence[Meter],
    meter: Meter,
    held: Interval | None = None,
) -> tuple[MelodyBar, ...]:
    """Bars of ``meters`` in turn, then of ``meter``, until a sign sets another; ``held`` sounds when they begin.

    Raises InputError, placed in ``text``: at a hold without a note before it, at a bar that is too long, and at one
    that is too short and neither first nor last.
    """
    by_lines = any(sign.kind == "bar" for sign, _ in signs)
    builder = (_ByLines if by_lines else _ByMeter)(text, meters, meter, held)
    for sign, read in signs:
        if isinstance(builder, _ByLines) and sign.kind == "bar":
            builder.bar_line(sign)
        elif sign.kind == "meter":
            builder.change_meter(sign)
        else:
            builder.add(sign, read)
    return builder.end()


class _ByMeter:
    """Bars so far, and the notes of the bar that is being filled; a pickup is none of the ``full_bars``.

    Bars are full when their meter is; a note that does not fit is held over, and there are no bar lines.
    """

    def __init__(self, text: str, meters: Sequence[Meter], meter: Meter, held: Interval | None) -> None:
        self.text, self.meters, self.meter = text, meters, meter
        self.bars: list[MelodyBar] = []
        self.notes: list[MelodyNote] = []
        self.filled: Beats = 0
        self.full_bars = 0
        self.sounds = held
        self.has_begun = held is not None
        self.opens_repeat = False
        self.shares = 1

    def meter_now(self) -> Meter:
        """The meter of the bar that is being filled."""
        return self.meters[self.full_bars] if self.full_bars < len(self.meters) else self.meter

    def change_meter(self, sign: Sign) -> None:
        assert sign.meter is not None
        if self.notes:
            raise self._refusal(sign, "a meter stands at the head of a bar", "put [3/4] behind the bar line")
        if self.full_bars < len(self.meters) and self.meters[self.full_bars] != sign.meter:
            own = self.meters[self.full_bars]
            raise self._refusal(sign, f"the chords here are in {own}", "leave the meter to the chords")
        self.meter = sign.meter

    def add(self, sign: Sign, read: Read) -> None:
        """Add a note, a rest or a hold."""
        if sign.beats.denominator > 1:
            self._count_shares(sign)
        if read is not None:
            self.sounds, graces = read
            self.has_begun = True
            self._put(MelodyNote(self.sounds, sign.beats, False, graces, sign.ornament), sign)
        elif not self.has_begun:
            raise self._refusal(sign, "there is no note before this one to hold", "begin with a note, or r for a rest")
        else:
            self._put(MelodyNote(self.sounds, sign.beats, self.sounds is not None), sign)

    def _count_shares(self, sign: Sign) -> None:
        """Keep the shares of a beat in which all lengths can be told: they must be few enough to be written."""
        from math import lcm

        self.shares = lcm(self.shares, sign.beats.denominator)
        if self.shares > _MOST_SHARES:
            what = "this length and the ones before it have no common measure that could be counted"
            raise self._refusal(sign, what, "write lengths that divide a beat alike, as 1/3 and 1/6, or 1/4 and 3/8")

    def _put(self, note: MelodyNote, sign: Sign) -> None:
        rest = note.beats
        while rest:
            part = min(rest, self.meter_now().beats - self.filled)
            is_first = rest == note.beats
            held = note if is_first else MelodyNote(note.interval, rest, note.interval is not None)
            self._append(held._replace(beats=whole(part)))
            rest = whole(rest - part)
            if self.filled == self.meter_now().beats:
                self._close()

    def _append(self, note: MelodyNote) -> None:
        """Add a note to the bar; a hold inside a bar makes the note before it longer."""
        last = self.notes[-1] if self.notes else None
        if last is not None and (note.is_held or (note.interval is None and last.interval is None)):
            self.notes[-1] = last._replace(beats=whole(last.beats + note.beats))
        else:
            self.notes.append(note)
        self.filled = whole(self.filled + note.beats)

    def _close(self) -> None:
        meter = self.meter_now()
        self.full_bars += bool(self.bars) or self.filled == meter.beats
        self.bars.append(MelodyBar(tuple(self.notes), meter, self.opens_repeat))
        self.notes, self.filled, self.opens_repeat = [], 0, False

    def end(self) -> tuple[MelodyBar, ...]:
        if self.notes:
            self._close()
        return tuple(self.bars)

    def _refusal(self, sign: Sign, what: str, hint: str) -> InputError:
        end = sign.start + len(sign.text)
        return InputError(what, self.text, sign.start, end, wanted="a bar of notes", hint=hint)


class _ByLines(_ByMeter):
    """Bars stand between lines, and must be full but for the first and the last."""

    def __init__(self, text: str, meters: Sequence[Meter], meter: Meter, held: Interval | None) -> None:
        super().__init__(text, meters, meter, held)
        self._short: Sign | None = None

    def _put(self, note: MelodyNote, sign: Sign) -> None:
        if self._short is not None:
            bar = self.bars[-1]
            number = len(self.bars) - self.bars[0].is_short
            what = f"bar {number} has {counted(bar.beats, 'beat')} where {bar.meter} has {bar.meter.beats}"
            hint = "hold a note with -, write its length as 5:2, add rests with r, or set a meter: [3/4]"
            raise self._refusal(self._short, what, hint)
        meter = self.meter_now()
        if self.filled + note.beats > meter.beats:
            number = self.full_bars + 1
            what = f"bar {number} is longer than the {counted(meter.beats, 'beat')} of {meter}"
            raise self._refusal(sign, what, "let notes share a beat: [5 6], set a bar line, or a meter: [3/4]")
        self._append(note)

    def bar_line(self, sign: Sign) -> None:
        """Close the bar that is open, if one is, and keep what the line says."""
        if self.notes:
            is_short = self.filled < self.meter_now().beats
            self._close()
            if is_short and len(self.bars) > 1:
                self._short = sign
        self._mark(sign.text)

    def _mark(self, line: str) -> None:
        """Keep what a bar line says of the bar before it, and of the one behind it."""
        if self.bars:
            last = self.bars[-1]
            self.bars[-1] = last._replace(
                closes_repeat=last.closes_repeat or line.startswith(":"),
                ends_section=last.ends_section or "||" in line or "]" in line,
            )
        self.opens_repeat = self.opens_repeat or line.endswith(":")
