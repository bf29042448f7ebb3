"""Random melodies for laws: bars as the reader makes them, in any meter, with all that the notation can write."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import strategies as st

from nearhand.theory.interval import Interval
from nearhand.theory.melody import ORNAMENTS, Melody, MelodyBar, MelodyNote, home_tonic
from nearhand.theory.progression import COMMON_TIME, Meter

METERS = [COMMON_TIME, Meter(3, 4), Meter(6, 8), Meter(2, 2), Meter(5, 4), Meter(7, 8), Meter(1, 4)]
LENGTHS = [
    1, 1, 1, 2, 3, *(Fraction(part, of) for part, of in [
        (1, 2), (1, 2), (1, 3), (1, 3), (2, 3), (1, 4), (3, 4), (3, 2), (4, 3), (1, 6), (1, 5), (2, 5), (2, 7), (5, 8),
        (7, 16), (1, 25), (11, 30),
    ]),
]  # fmt: skip
NOTE, GRACED, REST, HELD = "note", "graced", "rest", "held"
_EVENTS = [
    (length, *event)
    for length in LENGTHS
    for event in [(NOTE, ""), (NOTE, ""), (NOTE, ""), (REST, ""), (HELD, ""), (GRACED, ""),
                  *((NOTE, ornament) for ornament in ORNAMENTS)]
]  # fmt: skip
"""What may come next: its length, its kind, its ornament. One table, for a draw takes time."""


def _whole(beats):
    return int(beats) if beats == int(beats) else beats


def _interval(fifths, octave):
    return Interval(fifths, (4 * fifths % 7 + 7 * octave - 4 * fifths) // 7)


notes_above_a_tonic = st.sampled_from(
    [_interval(fifths, octave) for fifths in range(-12, 13) for octave in range(-2, 2)]
)
"""Intervals within two octaves of the tonic, of at most two accidentals beside the major scale."""


def _note_in_a_bar(draw, made, sounds, left, notes):
    """The next note of a bar: no rest follows a rest, and a held note stands first."""
    length, kind, ornament = draw(st.sampled_from(_EVENTS))
    beats = _whole(min(length, left))
    if kind == REST and (not made or made[-1].interval is not None):
        return MelodyNote(None, beats)
    if kind == HELD and not made and sounds is not None:
        return MelodyNote(sounds, beats, is_held=True)
    graces = tuple(draw(st.lists(notes, min_size=1, max_size=2))) if kind == GRACED else ()
    return MelodyNote(draw(notes), beats, False, graces, ornament)


@st.composite
def bars_of_notes(draw, meter, sounds=None, beats=None, notes=notes_above_a_tonic):
    """A bar that is full, or lasts some beats; ``sounds`` is the note before it, which may be held on."""
    left = meter.beats if beats is None else beats
    made: list[MelodyNote] = []
    while left:
        made.append(_note_in_a_bar(draw, made, sounds, left, notes))
        left -= made[-1].beats
    return MelodyBar(tuple(made), meter)


_SHORT = [Fraction(1, 2), 1, Fraction(3, 2)]


@st.composite
def melody_bars(draw, meters=METERS, notes=notes_above_a_tonic, most=3):
    """Bars of a melody: a pickup before them or none, the last one full or short, and meters that change or do not."""
    meter = draw(st.sampled_from(meters))
    pickup, *lengths = draw(st.lists(st.sampled_from([None, *_SHORT]), min_size=2, max_size=most + 1))
    if pickup is not None and len(lengths) > 1:
        lengths = [pickup, *lengths]
    bars: list[MelodyBar] = []
    for place, length in enumerate(lengths):
        is_short = length is not None and (place == len(lengths) - 1 or (place == 0 and lengths[0] is pickup))
        if length == 1 and not is_short:
            meter = draw(st.sampled_from(meters))
        beats = length if is_short and length < meter.beats else meter.beats
        sounds = bars[-1].notes[-1].interval if bars else None
        bars.append(draw(bars_of_notes(meter, sounds, beats, notes)))
    return tuple(bars)


@st.composite
def melodies_in(draw, keys, meters=METERS, notes=notes_above_a_tonic):
    """A key and a melody above its tonic near middle C."""
    key = draw(keys)
    return key, Melody(home_tonic(key), draw(melody_bars(meters, notes)))
