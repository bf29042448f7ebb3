"""Moved chords, compared with music21 pitch by pitch."""

from __future__ import annotations

from harmony_examples import in_bars, relative_chords
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import interval as m21_interval
from music21 import pitch as m21_pitch

from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

# Intervals as music21 names them, and their distances on the line of fifths (by arithmetic and by music21).
INTERVALS = {
    "P1": 0, "A1": 7, "m2": -5, "M2": 2, "A2": 9, "d3": -10, "m3": -3, "M3": 4, "d4": -8, "P4": -1, "A4": 6,
    "d5": -6, "P5": 1, "A5": 8, "m6": -4, "M6": 3, "d7": -9, "m7": -2, "M7": 5, "d8": -7, "P8": 0,
}  # fmt: skip
DIRECTED = [*INTERVALS, *(f"-{name}" for name in INTERVALS if name != "P1")]
"""A dash leads down; music21 knows no descending unison."""
tonics = st.integers(-3, 4).map(PitchClass)


def their_name(note):
    return str(note).replace("b", "-")


@settings(max_examples=150)
@given(
    st.lists(relative_chords(), min_size=1, max_size=3),
    tonics,
    st.sampled_from([MAJOR, MINOR]),
    st.sampled_from(DIRECTED),
)
def test_every_tone_and_bass_moves_as_music21_moves_it(chords, tonic, mode, name):
    way = m21_interval.Interval(name)
    fifths = -INTERVALS[name[1:]] if name.startswith("-") else INTERVALS[name]
    tune = in_bars(chords, Key(tonic, mode))
    moved = tune.in_key(tune.key.moved(fifths))

    for old, new in zip(tune.chords(), moved.chords(), strict=True):
        for before, after in zip((*old.tones, old.bass), (*new.tones, new.bass), strict=True):
            if abs(after.alteration) <= 4 and abs(before.alteration) <= 4:  # music21 refuses more
                assert m21_pitch.Pitch(their_name(before) + "4").transpose(way).name == their_name(after)


@given(tonics, st.sampled_from(sorted(INTERVALS)))
def test_the_new_tonic_lies_where_music21_puts_it(tonic, name):
    moved = m21_pitch.Pitch(their_name(tonic) + "4").transpose(m21_interval.Interval(name))

    assert their_name(tonic.up(INTERVALS[name])) == moved.name
