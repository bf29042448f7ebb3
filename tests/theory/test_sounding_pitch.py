"""Pitches: MIDI numbers, frequencies, octaves by letter, and moving by an interval."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import common_pitch_classes, intervals, note, pitches

from nearhand.theory.interval import Interval
from nearhand.theory.pitch import Pitch, pitch_at

# MIDI number, name, hertz to four places. ISO 16:1975 sets A4 to 440 Hz (from memory); computed by
# 440 * 2 ** ((m - 69) / 12). Middle C is C4 here, as in scientific pitch notation; some makers call it C3.
PITCHES = """
21 A0 27.5000   28 E1 41.2034    33 A1 55.0000
36 C2 65.4064   40 E2 82.4069    45 A2 110.0000
48 C3 130.8128  52 E3 164.8138   55 G3 195.9977
57 A3 220.0000  60 C4 261.6256   61 C#4 277.1826
64 E4 329.6276  65 F4 349.2282   67 G4 391.9954
69 A4 440.0000  70 A#4 466.1638  72 C5 523.2511
76 E5 659.2551  84 C6 1046.5023  108 C8 4186.0090
"""
CELLS = iter(PITCHES.split())
TABLE = [(int(midi), name, hertz) for midi, name, hertz in zip(CELLS, CELLS, CELLS, strict=True)]

# The octave number goes with the letter, whatever its accidental: common practice, no source.
ACROSS_THE_OCTAVE = [("Cb", 4, 59), ("B#", 3, 60), ("B#", 4, 72), ("Cbb", 4, 58), ("B##", 3, 61)]

UNISON = Interval(0, 0)


def pitch(name):
    return Pitch(note(name[:-1]), int(name[-1]))


@pytest.mark.parametrize(("midi", "name", "hertz"), TABLE)
def test_a_pitch_has_its_midi_number_and_frequency(midi, name, hertz):
    assert pitch(name).midi == midi
    assert f"{pitch(name).frequency_hz():.4f}" == hertz
    assert str(pitch(name)) == name


@pytest.mark.parametrize(("name", "octave", "midi"), ACROSS_THE_OCTAVE)
def test_the_octave_number_goes_with_the_letter(name, octave, midi):
    assert Pitch(note(name), octave).midi == midi
    assert pitch_at(note(name), midi) == Pitch(note(name), octave)


@pytest.mark.parametrize(("a4", "name", "hertz"), [(442, "A4", 442), (415, "A3", 207.5), (432, "A5", 864)])
def test_another_tuning_of_a4_moves_every_pitch(a4, name, hertz):
    assert pitch(name).frequency_hz(a4) == pytest.approx(hertz, rel=1e-12)


def test_a_fifth_in_equal_temperament_is_seven_hundred_cents():
    ratio = pitch("E5").frequency_hz() / pitch("A4").frequency_hz()

    assert ratio == pytest.approx(2 ** (700 / 1200), rel=1e-12)


@given(pitches)
def test_moving_by_a_unison_changes_nothing(start):
    assert start.up(UNISON) == start


@given(pitches, intervals)
def test_moving_there_and_back_gives_the_pitch_back(start, interval):
    assert start.up(interval).up(-interval) == start


@given(pitches, intervals, intervals)
def test_two_moves_are_one_move_in_either_order(start, one, other):
    assert start.up(one).up(other) == start.up(one + other) == start.up(other).up(one)


@given(pitches, intervals)
def test_a_move_adds_its_semitones_to_the_midi_number(start, interval):
    assert start.up(interval).midi == start.midi + interval.semitones


@given(pitches)
def test_a_midi_number_and_a_spelling_give_the_pitch_back(start):
    assert pitch_at(start.pitch_class, start.midi) == start


@given(common_pitch_classes, st.integers(0, 127))
def test_a_spelling_that_does_not_sound_at_the_number_is_refused(spelling, midi):
    if spelling.semitones == midi % 12:
        assert pitch_at(spelling, midi).midi == midi
    else:
        with pytest.raises(ValueError, match=f"{spelling} does not sound at MIDI number {midi}$"):
            pitch_at(spelling, midi)
