"""Progressions: key-free chords in bars, their beats, and moving the whole to another key."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import meter
from strategies import chords, key, keys, note, relative_chords, signature_keys

from nearhand.theory.chord import Chord, RelativeChord, relative_to
from nearhand.theory.progression import COMMON_TIME, Bar, Meter, Progression, Slot, even_beats, shared_beats
from nearhand.theory.quality import QUALITIES

meters = st.builds(Meter, st.integers(1, 16), st.sampled_from([2, 4, 8]))
TONIC = RelativeChord(0, QUALITIES["minor"], 0)
DOMINANT = RelativeChord(1, QUALITIES["dominant"], 5)

# Chords in the bar, meter, beats of each: whole beats, the earlier chords longer; equal parts where there
# are more chords than beats. Common practice, no source.
SHARES = [
    (1, Meter(4, 4), (4,)), (2, Meter(4, 4), (2, 2)), (3, Meter(4, 4), (2, 1, 1)), (4, COMMON_TIME, (1,) * 4),
    (2, Meter(3, 4), (2, 1)), (3, Meter(3, 4), (1, 1, 1)), (1, Meter(7, 8), (7,)), (2, Meter(7, 8), (4, 3)),
    (3, Meter(7, 8), (3, 2, 2)), (2, Meter(5, 4), (3, 2)),
]  # fmt: skip
TOO_MANY = [
    (5, Meter(4, 4), Fraction(4, 5)), (2, Meter(1, 4), Fraction(1, 2)), (6, Meter(3, 4), Fraction(1, 2)),
    (4, Meter(3, 4), Fraction(3, 4)), (8, Meter(4, 4), Fraction(1, 2)),
]  # fmt: skip


@pytest.mark.parametrize(("count", "meter", "beats"), SHARES)
def test_chords_share_a_bar_in_whole_beats_the_earlier_ones_longer(count, meter, beats):
    assert even_beats(count, meter) == beats


@pytest.mark.parametrize(("count", "meter", "beats"), TOO_MANY)
def test_more_chords_than_beats_share_a_bar_equally(count, meter, beats):
    assert even_beats(count, meter) == (beats,) * count


@pytest.mark.parametrize(
    ("shares", "meter", "beats"),
    [
        ([3, 1], Meter(4, 4), (3, 1)),
        ([1, 1], Meter(3, 4), (Fraction(3, 2), Fraction(3, 2))),
        ([2, 1], Meter(3, 4), (2, 1)),
        ([1, 2, 1], Meter(4, 4), (1, 2, 1)),
        ([1, 1, 1], Meter(4, 4), (Fraction(4, 3),) * 3),
    ],
)
def test_beats_go_by_shares(shares, meter, beats):
    assert shared_beats(shares, meter) == beats


@given(st.integers(1, 40), meters)
def test_even_beats_sum_to_the_bar_and_never_grow(count, meter):
    beats = even_beats(count, meter)

    assert len(beats) == count
    assert sum(beats) == meter.beats
    assert list(beats) == sorted(beats, reverse=True)
    assert beats[-1] > 0


@given(st.lists(st.integers(1, 9), min_size=1, max_size=12), meters)
def test_shared_beats_sum_to_the_bar_and_keep_the_proportion(shares, meter):
    beats = shared_beats(shares, meter)

    assert sum(beats) == meter.beats
    assert [beat * sum(shares) for beat in beats] == [share * meter.beats for share in shares]
    assert all(isinstance(beat, int) or beat.denominator > 1 for beat in beats)


@given(chords, keys)
def test_taking_a_chords_key_away_and_giving_it_back_changes_nothing(chord, any_key):
    assert relative_to(chord, any_key).in_key(any_key) == chord


@given(relative_chords, keys, keys)
def test_a_chord_moved_there_and_back_is_the_same_chord(chord, home, away):
    there = chord.in_key(away)

    assert relative_to(there, away).in_key(home) == chord.in_key(home)


@given(relative_chords, keys)
def test_the_tones_of_a_chord_lie_as_its_places_say(chord, any_key):
    assert [tone.fifths - any_key.tonic.fifths for tone in chord.in_key(any_key).tones] == list(chord.places)


@given(relative_chords, st.integers(-7, 7), st.integers(-7, 7))
def test_counting_from_another_tonic_and_back_changes_nothing(chord, one, other):
    assert chord.above(0) == chord
    assert chord.above(one).above(-one) == chord
    assert chord.above(one).above(other) == chord.above(one + other)


@given(relative_chords, signature_keys, st.integers(-12, 12))
def test_moving_a_key_moves_every_tone_as_far(chord, any_key, fifths):
    moved = chord.in_key(any_key.moved(fifths))

    assert moved.tones == tuple(tone.up(fifths) for tone in chord.in_key(any_key).tones)
    assert moved.bass == chord.in_key(any_key).bass.up(fifths)


def test_a_progression_lists_its_chords_with_bar_and_beats():
    bars = (Bar((Slot(TONIC, 3), Slot(DOMINANT, 1))), Bar((Slot(None, 4),)), Bar((Slot(TONIC, 4),)))
    tune = Progression(key("e"), bars)

    assert [(moment.bar, moment.slot.beats, moment.is_first) for moment in tune.moments] == [
        (1, 3, True), (1, 1, False), (2, 4, True), (3, 4, True),
    ]  # fmt: skip
    assert tune.relative_chords == (TONIC, DOMINANT, TONIC)
    assert [str(chord.root) for chord in tune.chords()] == ["E", "B", "E"]


def test_another_key_changes_the_names_and_nothing_else():
    tune = Progression(key("e"), (Bar((Slot(TONIC, 2), Slot(DOMINANT, 2))),))
    moved = tune.in_key(key("f#"))

    assert moved.bars == tune.bars
    assert list(moved.chords()) == [
        Chord(note("F#"), QUALITIES["minor"], note("F#")),
        Chord(note("C#"), QUALITIES["dominant"], note("E#")),
    ]


# Whether each bar opens and closes a repeat, and whether one pair encloses all: common practice, no source.
OPENS, CLOSES, BOTH, NEITHER = (True, False), (False, True), (True, True), (False, False)
REPEATS = [
    ([BOTH], True), ([OPENS, CLOSES], True), ([NEITHER, CLOSES], True), ([OPENS, NEITHER, CLOSES], True),
    ([], False), ([NEITHER], False), ([OPENS, NEITHER], False), ([BOTH, BOTH], False),
    ([NEITHER, BOTH], False),
    ([BOTH, NEITHER], False), ([CLOSES, CLOSES], False),
]  # fmt: skip


@pytest.mark.parametrize(("signs", "whole"), REPEATS)
def test_a_progression_knows_whether_one_repeat_encloses_everything(signs, whole):
    slots = (Slot(TONIC, 4),)
    bars = tuple(Bar(slots, opens_repeat=opens, closes_repeat=closes) for opens, closes in signs)

    assert Progression(key("a"), bars).repeats_as_a_whole is whole


def test_a_meter_is_shown_as_a_fraction():
    assert str(COMMON_TIME) == "4/4"
    assert str(Meter(7, 8)) == "7/8"


@pytest.mark.parametrize("beats", [2, 3, 4, 5, 6, 7, 9, 12])
@pytest.mark.parametrize("unit", [4, 8])
def test_meters_are_compound_where_music21_says_so(beats, unit):
    # 3/8 alone is compound there, one beat of three eighths: a bar of that kind is no bar of beats in threes
    theirs = meter.TimeSignature(f"{beats}/{unit}").beatDivisionCountName

    assert Meter(beats, unit).is_compound == (theirs == "Compound" and beats > 3)
