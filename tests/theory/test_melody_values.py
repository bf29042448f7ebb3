"""Melodies as values: intervals above a tonic, moved by another tonic, heard in beats."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from melody_strategies import melodies_in, notes_above_a_tonic
from strategies import key, note, signature_keys
from strategies import keys as any_keys

from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import DOWNWARD, NEAREST, UPWARD, WAYS, Melody, MelodyBar, MelodyNote, home_tonic
from nearhand.theory.mode import MAJOR
from nearhand.theory.pitch import Pitch, interval_between
from nearhand.theory.progression import Meter

DO, RE, MI, FA, SOL = Interval(0, 0), Interval(2, -1), Interval(4, -2), Interval(-1, 1), Interval(1, 0)
LOW_SOL = Interval(1, -1)

# Where a tonic near C4 goes to: the nearest way (a tritone up), up, and down. Semitones counted on a keyboard.
WAYS_FROM_C4 = [
    ("C", "C4", "C4", "C4"), ("Db", "Db4", "Db4", "Db3"), ("D", "D4", "D4", "D3"), ("Eb", "Eb4", "Eb4", "Eb3"),
    ("E", "E4", "E4", "E3"), ("F", "F4", "F4", "F3"), ("F#", "F#4", "F#4", "F#3"), ("Gb", "Gb4", "Gb4", "Gb3"),
    ("G", "G3", "G4", "G3"), ("Ab", "Ab3", "Ab4", "Ab3"), ("A", "A3", "A4", "A3"), ("Bb", "Bb3", "Bb4", "Bb3"),
    ("B", "B3", "B4", "B3"), ("Cb", "Cb4", "Cb5", "Cb4"), ("C#", "C#4", "C#4", "C#3"),
]  # fmt: skip


def pitch(name):
    return Pitch(note(name.rstrip("0123456789")), int(name[-1]))


def melody_of(*bars, tonic="C4", meter=None):
    meter = meter or Meter(4, 4)
    return Melody(pitch(tonic), tuple(MelodyBar(tuple(MelodyNote(*each) for each in bar), meter) for bar in bars))


@pytest.mark.parametrize(("name", "nearest", "up", "down"), WAYS_FROM_C4)
def test_a_melody_goes_to_another_key_the_nearest_way_or_always_up_or_always_down(name, nearest, up, down):
    melody = melody_of([(DO, 4)])

    assert [str(melody.in_key(key(name), way).tonic) for way in (NEAREST, UPWARD, DOWNWARD)] == [nearest, up, down]


@settings(max_examples=60)
@given(melodies_in(signature_keys), signature_keys, st.sampled_from(WAYS), st.integers(-1, 1))
def test_moving_changes_the_tonic_and_nothing_else(start, new, way, octaves):
    _, melody = start
    moved = melody.in_key(new, way, octaves)
    shift = moved.tonic.midi - melody.tonic.midi

    assert moved.bars == melody.bars
    assert moved.tonic.pitch_class == new.tonic
    assert {NEAREST: -5 <= shift - 12 * octaves <= 6, UPWARD: 0 <= shift - 12 * octaves < 12,
            DOWNWARD: -12 < shift - 12 * octaves <= 0}[way]  # fmt: skip
    for before, after in zip(melody.pitches(), moved.pitches(), strict=True):
        assert (before is None) == (after is None)
        if before is not None and after is not None:
            assert after.midi - before.midi == shift


@settings(max_examples=60)
@given(melodies_in(signature_keys), signature_keys)
def test_moving_up_and_then_down_to_the_first_key_gives_the_same_melody(start, new):
    own, melody = start

    assert melody.in_key(new, UPWARD).in_key(own, DOWNWARD) == melody
    assert melody.in_key(new, DOWNWARD).in_key(own, UPWARD) == melody


@settings(max_examples=60)
@given(melodies_in(signature_keys), signature_keys)
def test_moving_the_nearest_way_and_back_gives_the_same_melody_but_for_a_tritone(start, new):
    own, melody = start
    back = melody.in_key(new).in_key(own)
    is_tritone = (new.tonic.semitones - own.tonic.semitones) % 12 == 6

    assert back.bars == melody.bars
    assert back.tonic.midi - melody.tonic.midi == 12 * is_tritone


@settings(max_examples=60)
@given(melodies_in(signature_keys), any_keys)
def test_reading_in_another_key_keeps_every_note_and_every_length(start, new):
    _, melody = start
    read = melody.read_in(new)

    assert read.pitches() == melody.pitches()
    assert read.sounding() == tuple(
        heard._replace(interval=interval_between(read.tonic, heard.pitch)) for heard in melody.sounding()
    )
    assert [read.tonic.up(grace) for each in read.notes for grace in each.graces] == [
        melody.tonic.up(grace) for each in melody.notes for grace in each.graces
    ]
    assert [each._replace(interval=None, graces=()) for each in read.notes] == [
        each._replace(interval=None, graces=()) for each in melody.notes
    ]


@settings(max_examples=60)
@given(melodies_in(signature_keys), any_keys, any_keys)
def test_reading_by_way_of_a_third_key_is_the_same_as_reading_at_once_but_for_octaves(start, between, last):
    _, melody = start

    assert melody.read_in(between).read_in(last).pitches() == melody.read_in(last).pitches()


@settings(max_examples=60)
@given(melodies_in(signature_keys))
def test_what_is_heard_lasts_as_long_as_what_is_written_less_its_rests(start):
    _, melody = start
    heard = melody.sounding()
    rests = sum(each.beats for each in melody.notes if each.interval is None)

    assert sum(each.beats for each in heard) == sum(bar.beats for bar in melody.bars) - rests
    assert len(heard) == sum(each.interval is not None and not each.is_held for each in melody.notes)
    for before, after in pairwise(heard):
        assert before.onset + before.beats <= after.onset


@settings(max_examples=60)
@given(melodies_in(signature_keys))
def test_every_full_bar_lasts_as_long_as_its_meter(start):
    _, melody = start

    assert [bar.is_short for bar in melody.bars[1:-1]] == [False] * len(melody.bars[1:-1])
    assert all(bar.beats == bar.meter.beats for bar in melody.bars if not bar.is_short)
    assert melody.has_pickup == (len(melody.bars) > 1 and melody.bars[0].is_short)


def test_notes_that_are_held_over_bar_lines_are_heard_as_one():
    melody = melody_of([(LOW_SOL, 1)], [(DO, 2), (MI, 2)], [(MI, 4, True)], [(MI, 1, True), (None, 1), (MI, 2)])
    heard = [(str(each.pitch), each.bar, each.onset, each.beats) for each in melody.sounding()]

    # bar 0 is the pickup, and beat 0 the first beat of bar 1
    assert heard == [("G3", 0, -1, 1), ("C4", 1, 0, 2), ("E4", 1, 2, 7), ("E4", 3, 10, 2)]


def test_a_melody_without_pickup_begins_at_bar_1_and_beat_0():
    heard = melody_of([(DO, Fraction(1, 3)), (RE, Fraction(11, 3))]).sounding()

    assert [(each.bar, each.onset, each.beats) for each in heard] == [
        (1, 0, Fraction(1, 3)), (1, Fraction(1, 3), Fraction(11, 3)),
    ]  # fmt: skip


def test_a_single_short_bar_is_no_pickup():
    melody = melody_of([(DO, 1)])

    assert not melody.has_pickup
    assert melody.sounding()[0].bar == 1


def test_the_span_is_that_of_all_notes_and_grace_notes():
    melody = melody_of([(DO, 1), (SOL, 1, False, (LOW_SOL,)), (FA, 2)])

    assert tuple(map(str, melody.span)) == ("G3", "G4")
    assert melody_of([(None, 4)]).span is None


@pytest.mark.parametrize(
    ("tonic", "name", "way", "octaves"),
    [("C9", "Ab", UPWARD, 0), ("G9", "Ab", NEAREST, 0), ("C0", "B", NEAREST, -1), ("C0", "Db", DOWNWARD, -1)],
)
def test_no_melody_goes_where_a_note_would_lie_outside_the_midi_numbers(tonic, name, way, octaves):
    melody = melody_of([(DO, 2), (None, 2)], tonic=tonic)
    melody.check_range()

    with pytest.raises(ValueError, match="lies outside the MIDI numbers 0 to 127"):
        melody.in_key(key(name), way, octaves)


def test_the_lowest_and_the_highest_midi_number_are_reached():
    lowest, highest = Pitch(note("C"), -1), Pitch(note("G"), 9)  # 0 and 127: MIDI 1.0 Specification

    assert (lowest.midi, highest.midi) == (0, 127)
    for tonic in (lowest, highest):
        Melody(tonic, (MelodyBar((MelodyNote(DO, 4),)),)).check_range()


def test_grace_notes_have_to_lie_inside_the_midi_numbers_too():
    melody = Melody(Pitch(note("C"), 9), (MelodyBar((MelodyNote(DO, 4, False, (Interval(3, -1),)),)),))

    with pytest.raises(ValueError, match="A9 lies outside"):
        melody.check_range()


@given(any_keys)
def test_the_home_tonic_lies_nearest_to_middle_c(where):
    assert 55 <= home_tonic(where).midi <= 66  # G3 to F#4
    assert home_tonic(where).pitch_class == where.tonic


@given(st.builds(Pitch, st.integers(-12, 12).map(lambda fifths: Key(note("C"), MAJOR).moved(fifths).tonic),
                 st.integers(1, 7)), notes_above_a_tonic)  # fmt: skip
def test_the_interval_between_a_pitch_and_one_that_lies_an_interval_away_is_that_interval(low, interval):
    assert interval_between(low, low.up(interval)) == interval
    assert interval_between(low.up(interval), low) == -interval


@given(st.data())
def test_a_melody_is_counted_from_the_octave_in_which_most_of_its_notes_lie(data):
    _, melody = data.draw(melodies_in(st.sampled_from([key("C"), key("f#"), key("Eb")])))
    counted = melody.well_counted()
    octaves = [note.interval.steps // 7 for note in counted.notes if note.interval is not None]

    assert [note.pitch for note in counted.sounding()] == [note.pitch for note in melody.sounding()]
    assert counted.tonic.pitch_class == melody.tonic.pitch_class
    assert counted.well_counted() == counted
    assert not octaves or not counted.has_octaves or octaves.count(0) == max(map(octaves.count, octaves))
