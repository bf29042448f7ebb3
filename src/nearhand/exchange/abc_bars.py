"""The bars of an ABC tune as they are written: what sounds in them, for how long, and what stands at their edges."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from nearhand.exchange.abc_fields import read_meter, read_shorthand
from nearhand.exchange.abc_line_ends import LINE_END
from nearhand.exchange.abc_meters import full_length, own_meter
from nearhand.exchange.abc_pitches import Pitched
from nearhand.exchange.abc_signs import Sign
from nearhand.exchange.abc_text import Field
from nearhand.notation.chart_bars import MOST_BEATS
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Meter
from nearhand.theory.record import NamedTuple

_MOST_BARS_OF_REST = 999
_ANNOTATIONS = "^_<>@"
_PLAIN_LINES = ("|", ".|")
ORNAMENT_OF = {
    **dict.fromkeys(("trill", "trill("), "tr"),
    **dict.fromkeys(("mordent", "lowermordent"), "mordent"),
    **dict.fromkeys(("uppermordent", "pralltriller"), "inverted-mordent"),
    **dict.fromkeys(("turn", "turnx"), "turn"),
    **dict.fromkeys(("invertedturn", "invertedturnx"), "inverted-turn"),
}
"""Decorations that are ornaments of a melody."""
_ROLL = "roll"


class Event(NamedTuple):
    """A note or a rest (``pitch`` None) of a bar; ``length`` as a part of a whole note."""

    pitch: Pitch | None
    length: Fraction
    is_held: bool = False
    graces: tuple[Pitch, ...] = ()
    ornament: str = ""


class WrittenBar(NamedTuple):
    """A bar as written; ``meter`` None in free meter. ``chords`` are quoted texts with their onsets in the bar.

    ``length`` is how long its events last together; it and the onsets are parts of a whole note. ``begins_anew`` and
    ``ends_section``: whether the line before or behind it is more than a plain bar line.
    """

    events: tuple[Event, ...]
    chords: tuple[tuple[Fraction, Sign], ...]
    meter: Meter | None
    length: Fraction = Fraction(0)
    begins_anew: bool = False
    ends_section: bool = False
    opens_repeat: bool = False
    closes_repeat: bool = False
    section: str = ""


class WrittenTune(NamedTuple):
    """Bars in order; where the key changes (the place of the bar, the field); and whether it has several endings.

    ``unknown`` are signs in front of notes that stand for nothing; ``has_rolls``: whether some stand for an Irish roll,
    which no ornament of a melody is; ``is_cut``: whether a very long bar was cut.
    """

    bars: tuple[WrittenBar, ...]
    key_changes: tuple[tuple[int, Field], ...]
    has_endings: bool
    unknown: tuple[str, ...]
    has_rolls: bool
    is_cut: bool


def written_bars(signs: Sequence[Pitched], meter: Meter | None, shorthands: dict[str, str]) -> WrittenTune:
    """Put a tune's signs in bars: between its bar lines, and nowhere else.

    Raises InputError at a meter that cannot be read, and at a rest of too many bars.
    """
    builder = _Builder(meter, shorthands)
    for each in signs:
        builder.add(each)
    return builder.end()


class _Builder:
    """Bars so far, the bar that is being filled, and what waits for the next note."""

    def __init__(self, meter: Meter | None, shorthands: dict[str, str]) -> None:
        self._meter, self._shorthands = meter, dict(shorthands)
        self._bars: list[WrittenBar] = []
        self._events: list[Event] = []
        self._filled = Fraction(0)
        self._open = WrittenBar((), (), meter)
        self._chords: list[tuple[Fraction, Sign]] = []
        self._texts: list[Sign] = []
        self._graces: tuple[Pitch, ...] = ()
        self._ornament = ""
        self._key_changes: list[tuple[int, Field]] = []
        self._unknown: list[str] = []
        self._has_endings = self._has_rolls = self._is_cut = False

    def add(self, each: Pitched) -> None:
        sign = each.sign
        if sign.kind == "note":
            graces, ornament = ((), "") if each.is_held else (self._graces, self._ornament)
            self._put(Event(each.highest, sign.length, each.is_held, graces, ornament))
            self._graces = ()
        elif sign.kind == "rest":
            self._put(Event(None, sign.length))
        elif sign.kind == "bars":
            self._bars_of_rest(sign)
        elif sign.kind == "grace":
            self._graces += each.pitches
        elif sign.kind == "decoration":
            self._decorate(sign.text)
        elif sign.kind == "quoted" and sign.text[1:2] not in _ANNOTATIONS:
            self._texts.append(sign)
        elif sign.kind == "bar":
            self._bar_line(sign.text)
        elif sign.kind == LINE_END:
            self._close()
        elif sign.kind == "ending":
            self._has_endings = True
            self._open = self._open._replace(begins_anew=True)
        elif sign.field is not None:
            self._change(sign.field)

    def _put(self, event: Event) -> None:
        """Add a note or a rest; a tied note inside a bar makes the one before it longer, and so does a rest a rest."""
        if not self._events:
            self._open = self._open._replace(meter=self._meter)
        self._chords += [(self._filled, text) for text in self._texts]
        self._texts, self._ornament = [], ""
        last = self._events[-1] if self._events else None
        if last is not None and (event.is_held or (event.pitch is None and last.pitch is None)):
            self._events[-1] = last._replace(length=last.length + event.length)
        else:
            self._events.append(event)
        self._filled += event.length

    def _bars_of_rest(self, sign: Sign) -> None:
        count = int(sign.text[1:] or 1) if len(sign.text) < 5 else 0
        if not 1 <= count <= _MOST_BARS_OF_REST:
            what = f"{sign.text[:20]} is no rest: it lasts 1 to {_MOST_BARS_OF_REST} bars"
            raise sign.refusal(what, "a rest", "write Z4 for four bars")
        for place in range(count):
            if place:
                self._close()
            self._put(Event(None, full_length(self._meter)))

    def _decorate(self, text: str) -> None:
        name = self._shorthands.get(text) if len(text) == 1 else text[1:-1]
        if name is None:
            self._unknown.append(text)
        self._has_rolls |= name == _ROLL
        self._ornament = ORNAMENT_OF.get(name or "", self._ornament)

    def _change(self, field: Field) -> None:
        if field.letter == "M":
            self._meter = read_meter(field)
        elif field.letter == "K":
            self._key_changes.append((len(self._bars), field))
        elif field.letter == "U":
            self._shorthands |= read_shorthand(field.value)
        elif field.letter == "P":
            self._open = self._open._replace(section=self._open.section if self._events else field.value[:40])

    def _bar_line(self, line: str) -> None:
        inner = line.strip(".[]")
        is_plain = line in _PLAIN_LINES
        if self._events:
            self._close()
        if self._bars:
            last = self._bars[-1]
            self._bars[-1] = last._replace(
                closes_repeat=last.closes_repeat or inner.startswith(":"),
                ends_section=last.ends_section or not is_plain,
            )
        self._open = self._open._replace(
            opens_repeat=self._open.opens_repeat or inner.endswith(":"),
            begins_anew=self._open.begins_anew or not is_plain,
        )
        self._ornament = ""

    def _close(self) -> None:
        bar = self._open._replace(events=tuple(self._events), chords=tuple(self._chords), length=self._filled)
        if own_meter(bar.length, bar.meter).beats > MOST_BEATS:
            self._is_cut = True
            self._bars += _cut(bar)
        else:
            self._bars.append(bar)
        self._open = WrittenBar((), (), self._meter)
        self._events, self._chords, self._filled = [], [], Fraction(0)

    def end(self) -> WrittenTune:
        if self._events:
            self._close()
        unknown = tuple(dict.fromkeys(self._unknown))
        key_changes = tuple(self._key_changes)
        return WrittenTune(tuple(self._bars), key_changes, self._has_endings, unknown, self._has_rolls, self._is_cut)


def _cut(bar: WrittenBar) -> list[WrittenBar]:
    """A bar beyond all measure, cut into bars of its meter; what goes on over a cut is held."""
    full = full_length(bar.meter)
    parts: list[list[Event]] = [[]]
    room = full
    for event in bar.events:
        rest = event
        while rest.length > 0:
            if not room:
                parts.append([])
                room = full
            part = min(room, rest.length)
            parts[-1].append(rest._replace(length=part))
            room -= part
            rest = Event(rest.pitch, rest.length - part, is_held=rest.pitch is not None)
    cut = []
    for place, events in enumerate(parts):
        begin = place * full
        chords = tuple((onset - begin, sign) for onset, sign in bar.chords if begin <= onset < begin + full)
        length = min(full, bar.length - begin)
        cut.append(WrittenBar(tuple(events), chords, bar.meter, length))
    first = cut[0]._replace(begins_anew=bar.begins_anew, opens_repeat=bar.opens_repeat, section=bar.section)
    return [first, *cut[1:]]
