"""The chord symbols of an ABC tune as a progression: each sounds until the next one, over bar lines too."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.exchange.abc_bars import WrittenBar
from nearhand.notation.chart import FARTHEST_PLACE
from nearhand.notation.chart_bars import NO_CHORD_WORDS, is_optional, without_brackets
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.errors import InputError
from nearhand.notation.melody_signs import whole
from nearhand.theory.chord import RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Bar, Meter, Progression, Slot
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_NOTHING = Slot(None, 0)
_MAY_BE_ROOTS = tuple("ABCDEFGH")
"""A text that begins otherwise is a word or a fingering, and needs no remark."""


class Chords(NamedTuple):
    """The progression of a tune, None where it has no chord symbol; quoted texts that are none; chords left out."""

    progression: Progression | None
    unread: tuple[str, ...]
    left_out: tuple[str, ...]


def chords_of(bars: Sequence[WrittenBar], melody: Melody, key: Key) -> Chords:
    """The chords over the bars of a melody, from bar 1 on; a chord over the pickup goes on into bar 1.

    Left out is a chord over the pickup that another follows in bar 1, and one that another stands on top of.
    """
    unread: list[str] = []
    left_out: list[str] = []
    made: list[Bar] = []
    sounding, before = _NOTHING, ""
    for place, (bar, fitted) in enumerate(zip(bars, melody.bars, strict=True)):
        changes: list[tuple[Beats, Slot, str]] = []
        for onset, sign in bar.chords:
            text = sign.text[1:-1].strip()
            slot = _slot(text, key)
            if slot is None:
                unread += [text] if text.lstrip("(")[:1].upper() in _MAY_BE_ROOTS else []
                continue
            beats = whole(onset * fitted.meter.unit)
            if changes and changes[-1][0] == beats:
                left_out.append(changes.pop()[2])
            changes.append((beats, slot, text))
        if place == 0 and melody.has_pickup:
            sounding, before = (changes[-1][1], changes[-1][2]) if changes else (_NOTHING, "")
            left_out += [text for _, _, text in changes[:-1]]
            continue
        if before and changes and changes[0][:2] != (0, sounding) and changes[0][0] == 0:
            left_out.append(before)
        before = ""
        slots = _slots(sounding, changes, fitted.meter)
        sounding = slots[-1]
        made.append(_bar(bar, slots, fitted.meter))
    if not any(slot.chord for bar in made for slot in bar.slots):
        return Chords(None, tuple(dict.fromkeys(unread)), ())
    progression = Progression(key, tuple(_paired(made)))
    return Chords(progression, tuple(dict.fromkeys(unread)), tuple(dict.fromkeys(left_out)))


def _slot(text: str, key: Key) -> Slot | None:
    """A quoted text as a chord, in round brackets for one that may be left out; None where it is no chord symbol."""
    name = without_brackets(text).strip()
    if name.upper() in NO_CHORD_WORDS:
        return _NOTHING
    chord = _relative(name, key)
    return None if chord is None else Slot(chord, 0, is_optional(text))


def _relative(name: str, key: Key) -> RelativeChord | None:
    try:
        chord = relative_to(parse_chord(name), key)
    except InputError:
        return None
    return chord if max(abs(chord.root), abs(chord.bass)) <= FARTHEST_PLACE else None


def _slots(sounding: Slot, changes: list[tuple[Beats, Slot, str]], meter: Meter) -> tuple[Slot, ...]:
    """The chords of a bar: what sounds before goes on to the first change, the last one to the end of the meter."""
    starts: list[tuple[Beats, Slot]] = [(beats, slot) for beats, slot, _ in changes]
    if not starts or starts[0][0] > 0:
        starts.insert(0, (0, sounding))
    ends = [beats for beats, _ in starts[1:]] + [meter.beats]
    slots: list[Slot] = []
    for (start, slot), end in zip(starts, ends, strict=True):
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
