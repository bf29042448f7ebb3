"""From the bars of an ABC tune as written to a melody, bar by bar."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction
from itertools import pairwise

from nearhand.exchange.abc_bars import Event, WrittenBar
from nearhand.exchange.abc_meters import full_length, own_meter
from nearhand.notation.melody_signs import whole
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote, home_tonic
from nearhand.theory.pitch import Pitch, interval_between
from nearhand.theory.progression import Meter
from nearhand.theory.record import NamedTuple


class Divided(NamedTuple):
    """A bar in two, by the number of its first part: whether a repeat sign parts them, or a double bar line."""

    number: int
    by_repeat: bool


class Fitted(NamedTuple):
    """A melody, and which bars (by number, a pickup is none) do not fill the meter that the file sets.

    ``divided``: those that a line within them parts; the two parts together fill their meter.
    """

    melody: Melody
    odd_bars: tuple[int, ...]
    divided: tuple[Divided, ...] = ()


def melody_of(bars: Sequence[WrittenBar], key: Key) -> Fitted:
    """The melody of bars as written, counted from the tonic in whose octave most of its notes lie.

    A first bar that is short is a pickup, a last one may be short; the halves of a bar that a repeat or a double bar
    line parts are no fault, but have meters of their own, like bars that are too short or too long.
    """
    tonic = home_tonic(key)
    has_pickup = len(bars) > 1 and _is_short(bars[0])
    fitted: list[MelodyBar] = []
    odd: list[int] = []
    for place, bar in enumerate(bars):
        meter = bar.meter
        may_be_short = _is_short(bar) and place in (0, len(bars) - 1)
        if meter is None or (bar.length != full_length(meter) and not may_be_short):
            own = own_meter(bar.length, meter)
            if meter is not None and not (_is_short(bar) and (bar.begins_anew or bar.ends_section)):
                odd.append(place + (not has_pickup))
            meter = own
        fitted.append(_bar(bar, meter, tonic, fills=not may_be_short))
    if has_pickup:
        fitted[0] = _like_the_next(bars[0], fitted, tonic)
    melody = Melody(tonic, tuple(fitted)).well_counted()
    return Fitted(melody, tuple(odd), tuple(_divided(bars[has_pickup:])))


def _divided(bars: Sequence[WrittenBar]) -> Iterator[Divided]:
    """The bars, without a pickup, that a repeat sign or a double bar line parts."""
    is_second = False
    for number, (first, second) in enumerate(pairwise(bars), start=1):
        are_short = not is_second and _is_short(first) and _is_short(second) and first.meter == second.meter
        fills = first.length + second.length == full_length(first.meter)
        is_second = are_short and fills and (first.ends_section or second.begins_anew)
        if is_second:
            yield Divided(number, first.closes_repeat or second.opens_repeat)


def _is_short(bar: WrittenBar) -> bool:
    return bar.meter is not None and bar.length < full_length(bar.meter)


def _bar(bar: WrittenBar, meter: Meter, tonic: Pitch, fills: bool) -> MelodyBar:
    """A bar in a meter; one that must fill it and does not quite ends with a rest."""
    notes = [_note(event, meter.unit, tonic) for event in bar.events]
    missing = Fraction(meter.beats, meter.unit) - bar.length
    if fills and missing > 0:
        notes.append(MelodyNote(None, whole(missing * meter.unit)))
    return MelodyBar(tuple(notes), meter, bar.opens_repeat, bar.closes_repeat, bar.ends_section)


def _note(event: Event, unit: int, tonic: Pitch) -> MelodyNote:
    beats = whole(event.length * unit)
    if event.pitch is None:
        return MelodyNote(None, beats)
    graces = tuple(interval_between(tonic, grace) for grace in event.graces)
    return MelodyNote(interval_between(tonic, event.pitch), beats, event.is_held, graces, event.ornament)


def _like_the_next(pickup: WrittenBar, bars: list[MelodyBar], tonic: Pitch) -> MelodyBar:
    """The pickup in the meter of the bar behind it, where it is shorter than that: one meter is written for both."""
    meter = bars[1].meter
    return _bar(pickup, meter, tonic, fills=False) if pickup.length < full_length(meter) else bars[0]
