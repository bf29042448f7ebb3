"""Writing a melody: its bars cut into beats, each as the text that is read back as the same notes."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache

from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.notation.melody_degrees import HIGHER, LOWER, write_degree
from nearhand.notation.melody_signs import whole
from nearhand.notation.notes import pitch_name
from nearhand.theory.interval import Interval
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote
from nearhand.theory.mode import Mode
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import COMMON_TIME
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

    WriteInterval = Callable[[Interval], str]

BARS_IN_A_LINE = 4
REST, HOLD = "r", "-"
_MOST_SIGNS = 4
"""Shares that are told by as many signs; more are told by a number."""
_FINEST = 24
"""The most shares that a beat is written in; notes that need more have their lengths written."""
_LOWEST_OCTAVE, _HIGHEST_OCTAVE = 0, 9
"""Octaves that one digit tells; lower ones have a mark as well."""


class Piece(NamedTuple):
    """A note or a part of one: whether it begins here (or was sounding before), and its shares of its group."""

    note: MelodyNote
    begins: bool
    shares: Beats


class Group(NamedTuple):
    """What is written as one: a whole beat, or the notes that share one beat or more. ``onset`` within the bar.

    ``is_split``: whether brackets hold it. Where neither holds (a length that beats cannot tell), shares are beats.
    """

    onset: Beats
    beats: Beats
    pieces: tuple[Piece, ...]
    is_split: bool

    def write(self, write: WriteInterval) -> str:
        """The group as text, each note by ``write``."""
        texts = [_piece(piece, write) for piece in self.pieces]
        if not self.is_split:
            return " ".join(texts)
        return f"[{' '.join(texts)}]" + (f":{self.beats}" if self.beats != 1 else "")


def _piece(piece: Piece, write: WriteInterval) -> str:
    note = piece.note
    length = _length(piece.shares, REST if note.interval is None else HOLD)
    if note.interval is None:
        return REST + length
    if note.is_held or not piece.begins:
        return HOLD + length
    graces = f"{{{' '.join(map(write, note.graces))}}}" if note.graces else ""
    ornament = f"({note.ornament})" if note.ornament else ""
    return f"{graces}{write(note.interval)}{ornament}{length}"


def _length(shares: Beats, more: str) -> str:
    """What makes a note longer than one share: a sign more for each further one, or a number where they are many."""
    if shares == int(shares) and shares <= _MOST_SIGNS:
        return f" {more}" * (int(shares) - 1)
    return f":{shares}"


@lru_cache(maxsize=4096)
def groups_of(bar: MelodyBar) -> tuple[Group, ...]:
    """A bar cut into groups, each a whole beat where that is possible.

    >>> from fractions import Fraction
    >>> bar = MelodyBar((MelodyNote(Interval(1, 0), Fraction(3, 2)), MelodyNote(Interval(0, 0), Fraction(1, 2))))
    >>> [group.write(lambda interval: str(interval.steps + 1)) for group in groups_of(bar)]
    ['5', '[- 1]']
    """
    rest = [Piece(note, True, note.beats) for note in bar.notes]
    groups: list[Group] = []
    onset: Beats = 0
    while rest:
        group, rest = _next_group(onset, rest)
        groups.append(group)
        onset = whole(onset + group.beats)
    return tuple(groups)


def _next_group(onset: Beats, rest: list[Piece]) -> tuple[Group, list[Piece]]:
    first = rest[0]
    even = _even_group(rest)
    if even > 1:
        beats = whole(sum(piece.shares for piece in rest[:even]))
        return Group(onset, beats, tuple(piece._replace(shares=1) for piece in rest[:even]), True), rest[even:]
    if first.shares >= 1:
        left = whole(first.shares - 1)
        after = [Piece(first.note, False, left), *rest[1:]] if left else rest[1:]
        return Group(onset, 1, (first._replace(shares=1),), False), after
    return _beat(onset, rest)


def _even_group(rest: list[Piece]) -> int:
    """How many notes of one length, which is no number of whole beats, fill whole beats together; 0 where none do."""
    first = rest[0].shares
    if first == int(first):
        return 0
    count = first.denominator
    pieces = rest[:count]
    is_even = len(pieces) == count and all(piece.shares == first and _sounds_anew(piece) for piece in pieces)
    return count if is_even and count <= _FINEST else 0


def _sounds_anew(piece: Piece) -> bool:
    return piece.begins and not piece.note.is_held


def _beat(onset: Beats, rest: list[Piece]) -> tuple[Group, list[Piece]]:
    """The pieces that fill the next beat, the last one cut where it goes on; or all that is left where none do."""
    pieces: list[Piece] = []
    filled: Beats = 0
    for place, piece in enumerate(rest):
        if filled + piece.shares >= 1:
            left = whole(filled + piece.shares - 1)
            pieces.append(piece._replace(shares=piece.shares - left))
            after = [Piece(piece.note, False, left), *rest[place + 1 :]] if left else rest[place + 1 :]
            finest = max(each.shares.denominator for each in pieces)
            finest = _common(pieces) if finest <= _FINEST else finest
            if finest > _FINEST:
                return Group(onset, 1, tuple(pieces), False), after
            shared = tuple(each._replace(shares=whole(each.shares * finest)) for each in pieces)
            return Group(onset, 1, shared, True), after
        pieces.append(piece)
        filled += piece.shares
    return Group(onset, filled, tuple(pieces), False), []


def _common(pieces: list[Piece]) -> int:
    from math import lcm

    return lcm(*(piece.shares.denominator for piece in pieces))


def write_as_degrees(mode: Mode, conventions: Conventions = DEFAULT) -> WriteInterval:
    """What writes intervals as degrees: numbers, or the syllables that the conventions ask for."""
    known: dict[Interval, str] = {}

    def write(interval: Interval) -> str:
        if interval not in known:
            known[interval] = write_degree(interval, mode, conventions)
        return known[interval]

    return write


def write_as_notes(tonic: Pitch, conventions: Conventions = DEFAULT) -> WriteInterval:
    """What writes intervals above a tonic as names of notes with their octaves."""
    known: dict[Interval, str] = {}

    def write(interval: Interval) -> str:
        if interval not in known:
            known[interval] = _name(tonic.up(interval), conventions)
        return known[interval]

    return write


def _name(pitch: Pitch, conventions: Conventions) -> str:
    octave = min(max(pitch.octave, _LOWEST_OCTAVE), _HIGHEST_OCTAVE)
    marks = HIGHER * (pitch.octave - octave) + LOWER * (octave - pitch.octave)
    return pitch_name(pitch._replace(octave=octave), conventions) + marks


def write_bar(bar: MelodyBar, write: WriteInterval) -> str:
    """A bar's notes as text, without bar lines."""
    return " ".join(group.write(write) for group in groups_of(bar))


def write_melody(melody: Melody, write: WriteInterval, is_alone: bool = True) -> str:
    """A melody as the text that is read back as the same, four bars a line.

    ``is_alone``: whether its meters and repeats are written; over chords they are those of the chords.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> melody = parse_melody("5_ |: 3 2 [1 7_] 6_ | - r 1 - :|", parse_key("F"))
    >>> print(write_melody(melody, write_as_notes(melody.tonic)))
    C4 |: A4 G4 [F4 E4] D4 | - r F4 - :|
    """
    lines: list[str] = []
    meter = COMMON_TIME
    for place, bar in enumerate(melody.bars):
        sign = f"[{bar.meter}] " if is_alone and bar.meter != meter else ""
        meter = bar.meter
        number = place - melody.has_pickup
        if not lines or (number > 0 and number % BARS_IN_A_LINE == 0):
            opens = "|:" if is_alone and bar.opens_repeat else "|"
            lines.append("" if melody.has_pickup and place == 0 else opens)
        ends_line = (number + 1) % BARS_IN_A_LINE == 0 and number >= 0
        after = melody.bars[place + 1] if place + 1 < len(melody.bars) and not ends_line else None
        lines[-1] += f" {sign}{write_bar(bar, write)} {_closing(bar, after) if is_alone else '|'}"
    return "\n".join(line.strip() for line in lines)


def _closing(bar: MelodyBar, after: MelodyBar | None) -> str:
    """The sign behind a bar, with what it says of the next one in the line."""
    opens = after is not None and after.opens_repeat
    return ":" * bar.closes_repeat + ("||" if bar.ends_section else "|") + ":" * opens


def stored(melody: Melody, is_alone: bool = True) -> str:
    """A melody as a chart file keeps it: names with octaves, which are the same however degrees are counted."""
    return write_melody(melody, write_as_notes(melody.tonic, PLAIN), is_alone)
