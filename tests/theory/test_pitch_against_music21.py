"""Transposition of spelled pitches, compared with music21."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import interval as m21_interval
from music21 import pitch as m21_pitch
from strategies import note

from nearhand.theory.interval import Interval
from nearhand.theory.pitch import Pitch

# Short names as music21 writes them, with the interval's distance on the line of fifths and its steps. The
# starting notes have one accidental at most, for music21 10.5.1 refuses names of more than four
# accidentals.
SHORT_NAMES = [
    (quality + str(steps + 1), fifths, steps)
    for steps, row in enumerate(
        [
            {"P": 0, "A": 7, "AA": 14},
            {"d": -12, "m": -5, "M": 2, "A": 9, "AA": 16},
            {"dd": -17, "d": -10, "m": -3, "M": 4, "A": 11},
            {"dd": -15, "d": -8, "P": -1, "A": 6, "AA": 13},
            {"dd": -13, "d": -6, "P": 1, "A": 8, "AA": 15},
            {"dd": -18, "d": -11, "m": -4, "M": 3, "A": 10},
            {"dd": -16, "d": -9, "m": -2, "M": 5, "A": 12},
            {"d": -7, "P": 0, "A": 7},
        ]
    )
    for quality, fifths in row.items()
]
natural_or_once_altered = st.builds(
    lambda letter, sign, octave: Pitch(note(letter + sign), octave),
    st.sampled_from("CDEFGAB"), st.sampled_from(["", "#", "b"]), st.integers(1, 7),
)  # fmt: skip


def m21_name(pitch):
    return str(pitch).replace("b", "-")


@settings(max_examples=300)
@given(natural_or_once_altered, st.sampled_from(SHORT_NAMES), st.booleans())
def test_moving_by_an_interval_gives_the_pitch_that_music21_gives(start, named, downward):
    short, fifths, steps = named
    interval = Interval(fifths, (steps - 4 * fifths) // 7)
    ours = start.up(-interval if downward else interval)
    their_interval = m21_interval.Interval(short)  # turned round, not read as "-P1", which music21 refuses
    their_interval = their_interval.reverse() if downward else their_interval
    theirs = m21_pitch.Pitch(m21_name(start)).transpose(their_interval)

    assert m21_name(ours) == theirs.nameWithOctave
    assert ours.midi == theirs.ps


@settings(max_examples=200)
@given(natural_or_once_altered, natural_or_once_altered)
def test_the_interval_between_two_pitches_has_the_size_that_music21_finds(low, high):
    theirs = m21_interval.Interval(m21_pitch.Pitch(m21_name(low)), m21_pitch.Pitch(m21_name(high)))
    fifths = high.pitch_class.fifths - low.pitch_class.fifths
    octaves = (high.midi - low.midi - 7 * fifths) // 12
    ours = Interval(fifths, octaves)

    assert ours.semitones == theirs.semitones
    assert abs(ours.steps) + 1 == abs(theirs.generic.value)
    assert low.up(ours) == high


@given(natural_or_once_altered)
def test_the_frequency_is_the_one_that_music21_gives(pitch):
    assert pitch.frequency_hz() == pytest.approx(m21_pitch.Pitch(m21_name(pitch)).frequency, rel=1e-9)
