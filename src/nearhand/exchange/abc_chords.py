"""The chord symbols of an ABC tune as a progression: each sounds until the next one, over bar lines too."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from nearhand.exchange.abc_bars import WrittenBar
from nearhand.exchange.abc_chord_texts import (
    NO_CHORD,
    SLIP,
    WORDS,
    Quoted,
    is_meant_as_chord,
    may_be_taken_for_chord,
    read_quoted,
)
from nearhand.notation.melody_signs import whole
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Bar, Meter, Progression, Slot
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


class Chords(NamedTuple):
    """The progression of a tune, None where it has no chord symbol, and the texts that need a remark.

    ``words`` are no chords, ``slips`` chords that cannot be read, ``alternates`` those in parentheses behind others.
    Chords ``over_pickup`` and ``stacked`` have no room: before bar 1, and where another stands on top of them.
    """

    progression: Progression | None
    words: tuple[str, ...]
    slips: tuple[str, ...]
    alternates: tuple[str, ...]
    over_pickup: tuple[str, ...]
    stacked: tuple[str, ...]


def chords_of(bars: Sequence[WrittenBar], melody: Melody, key: Key) -> Chords:
    """The chords over the bars of a melody, from bar 1 on.

    A chord over the pickup goes on into bar 1 where no other begins there, and has no room else. A chord that cannot be
    read leaves its place without any.
    """
    meters = [fitted.meter for fitted in melody.bars]
    read = [
        [(whole(onset * meter.unit), read_quoted(sign.text[1:-1].strip(), key)) for onset, sign in bar.chords]
        for bar, meter in zip(bars, meters, strict=True)
    ]
    changes = [{beats: quoted for beats, quoted in own if quoted.kind != WORDS} for own in read]
    standing = {id(quoted) for own in changes for quoted in own.values()}
    over_pickup = _moved_into_bar_1(changes) if melody.has_pickup else []
    full = slice(int(melody.has_pickup), None)
    texts = [quoted for own in read for _, quoted in own]
    behind = [quoted.behind for quoted in texts if quoted.behind]
    words = [quoted.text for quoted in texts if quoted.kind == WORDS and may_be_taken_for_chord(quoted.text)]
    return Chords(
        _progression(bars[full], meters[full], changes[full], key),
        _once([*words, *(text for text in behind if not is_meant_as_chord(text[1:]))]),
        _once(quoted.text for own in changes[full] for quoted in own.values() if quoted.kind == SLIP),
        _once(text for text in behind if is_meant_as_chord(text[1:])),
        _once(quoted.text for quoted in over_pickup),
        _once(quoted.text for quoted in texts if quoted.kind != WORDS and id(quoted) not in standing),
    )


def _moved_into_bar_1(changes: list[dict[Beats, Quoted]]) -> list[Quoted]:
    """Move the last chord over the pickup to the head of bar 1 unless another stands there; those that have no room."""
    over_pickup = list(changes[0].values())
    first = changes[1].get(0)
    if over_pickup and (first is None or first.slot == over_pickup[-1].slot):
        head: dict[Beats, Quoted] = {0: over_pickup.pop()}
        changes[1] = head | changes[1]
    return over_pickup


def _progression(
    bars: Sequence[WrittenBar], meters: Sequence[Meter], changes: Sequence[Mapping[Beats, Quoted]], key: Key
) -> Progression | None:
    made: list[Bar] = []
    sounding = NO_CHORD
    for bar, meter, own in zip(bars, meters, changes, strict=True):
        slots = _slots(sounding, own, meter)
        sounding = slots[-1]
        made.append(_bar(bar, slots, meter))
    has_chord = any(slot.chord for bar in made for slot in bar.slots)
    return Progression(key, tuple(_paired(made))) if has_chord else None


def _once(texts: Iterable[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(texts))


def _slots(sounding: Slot, changes: Mapping[Beats, Quoted], meter: Meter) -> tuple[Slot, ...]:
    """The chords of a bar: what sounds before goes on to the first change, the last one to the end of the meter."""
    starts = {0: sounding} | {beats: quoted.slot for beats, quoted in changes.items()}
    ends = [*list(starts)[1:], meter.beats]
    slots: list[Slot] = []
    for (start, slot), end in zip(starts.items(), ends, strict=True):
        lasting = slot._replace(beats=whole(end - start))
        if slots and slots[-1]._replace(beats=0) == slot._replace(beats=0):
            slots[-1] = slot._replace(beats=whole(slots[-1].beats + lasting.beats))
        else:
            slots.append(lasting)
    return tuple(slots)


def _bar(bar: WrittenBar, slots: tuple[Slot, ...], meter: Meter) -> Bar:
    return Bar(slots, meter, bar.opens_repeat, bar.closes_repeat, bar.ends_section, bar.section)


def _paired(bars: list[Bar]) -> list[Bar]:
    """The bars without the beginnings of repeats that nothing closes."""
    paired = list(bars)
    opened: int | None = None
    for place, bar in enumerate(bars):
        if bar.opens_repeat:
            if opened is not None:
                paired[opened] = paired[opened]._replace(opens_repeat=False)
            opened = place
        if bar.closes_repeat:
            opened = None
    if opened is not None:
        paired[opened] = paired[opened]._replace(opens_repeat=False)
    return paired
