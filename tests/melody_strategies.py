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


def _whole(beats):
    return int(beats) if beats == int(beats) else beats


def _interval(fifths, steps):
    return Interval(fifths, (steps - 4 * fifths) // 7)


@st.composite
def intervals_of_melodies(draw):
    """Intervals within two octaves of the tonic, of at most two accidentals beside the major scale."""
    fifths = draw(st.integers(-12, 12))
    return _interval(fifths, 4 * fifths % 7 + 7 * draw(st.integers(-2, 1)))


notes_above_a_tonic = intervals_of_melodies()


@st.composite
def bars_of_notes(draw, meter, sounds=None, beats=None, notes=notes_above_a_tonic):
    """A bar that is full, or lasts some beats; ``sounds`` is the note before it, which may be held on.

    As the reader makes bars, no rest follows a rest and a held note stands first.
    """
    left = meter.beats if beats is None else beats
    made: list[MelodyNote] = []
    while left:
        length = min(draw(st.sampled_from(LENGTHS)), left)
        kinds = ["note", "note", "note"]
        kinds += ["rest"] if not made or made[-1].interval is not None else []
        kinds += ["held", "held"] if not made and sounds is not None else []
        kind = draw(st.sampled_from(kinds))
        if kind == "rest":
            made.append(MelodyNote(None, _whole(length)))
        elif kind == "held":
            made.append(MelodyNote(sounds, _whole(length), is_held=True))
        else:
            graces = tuple(draw(st.lists(notes, max_size=2))) if draw(st.integers(0, 5)) == 0 else ()
            ornament = draw(st.sampled_from(["", "", "", "", *ORNAMENTS]))
            made.append(MelodyNote(draw(notes), _whole(length), False, graces, ornament))
        left -= length
    return MelodyBar(tuple(made), meter)


@st.composite
def melody_bars(draw, meters=METERS, notes=notes_above_a_tonic, most=5):
    """Bars of a melody: a pickup before them or none, the last one full or short, and meters that change or do not."""
    meter = draw(st.sampled_from(meters))
    count = draw(st.integers(1, most))
    has_pickup = count > 1 and meter.beats > 1 and draw(st.booleans())
    bars: list[MelodyBar] = []
    for place in range(count):
        meter = draw(st.sampled_from([meter, meter, meter, *meters])) if place > has_pickup else meter
        is_short = (place == 0 and has_pickup) or (place == count - 1 and draw(st.booleans()))
        part = draw(st.sampled_from([Fraction(1, 2), 1, Fraction(3, 2)])) if is_short else meter.beats
        beats = part if part < meter.beats else meter.beats
        sounds = bars[-1].notes[-1].interval if bars else None
        bars.append(draw(bars_of_notes(meter, sounds, beats, notes)))
    return tuple(bars)


@st.composite
def melodies_in(draw, keys, meters=METERS, notes=notes_above_a_tonic):
    """A key and a melody above its tonic near middle C."""
    key = draw(keys)
    return key, Melody(home_tonic(key), draw(melody_bars(meters, notes)))
