"""In which keys a tune lies well for a singer."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nearhand.melody.ranges import VOICES, Voice, voice_of
from nearhand.melody.singers_key import Span, fitting_keys, lacking, nearest_misfit
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression

SEMITONES = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}


def midi(name):
    """A plain note such as ``Bb3`` as its MIDI number (MIDI 1.0; C4 is middle C, 60)."""
    return 12 * (int(name[-1]) + 1) + SEMITONES[name[0]] + name.count("#") - name.count("b")


def span(names):
    return Span(*map(midi, names.split()))


def voice(names):
    return voice_of(*map(midi, names.split()))


def alone(key):
    """A tune of no chords in a key."""
    return Progression(parse_key(key), ())


# Tune, its key, the singer's range, the shifts that are possible, the key that is best. Computed by hand by two rules:
# both ends must lie in the range; then middle to middle, fewer accidentals, the smaller shift (common practice, no
# source).
CHOSEN = [
    ("C4 D5", "C", "G3 A4", {-5}, "G major"),
    ("C4 D5", "C", "A3 C5", {-3, -2}, "Bb major"),
    ("G3 C5", "G", "C3 G4", {-7, -6, -5}, "Db major"),
    ("E4 E5", "A", "E3 G4", {-12, -11, -10, -9}, "Bb major"),
]


@pytest.mark.parametrize(("tune", "key", "singer", "shifts", "best"), CHOSEN)
def test_the_keys_that_fit_and_the_best_of_them(tune, key, singer, shifts, best):
    fits = fitting_keys(span(tune), [voice(singer)], alone(key))

    assert {fit.shift for fit in fits} == shifts
    assert str(fits[0].key) == best


def test_a_tune_wider_than_the_range_fits_nowhere_and_is_told_by_how_much():
    tune, singer = span("C4 F5"), voice("A3 B4")

    assert fitting_keys(tune, [singer], alone("F")) == ()
    assert lacking(tune, [singer]) == 3  # 17 semitones against 14
    nearest = nearest_misfit(tune, [singer], alone("F"))
    assert sorted(nearest.room[0]) == [-2, -1]


# Ranges of voices: pages on voice types, second-hand; they differ by a third and more.
RANGES = [
    ("soprano", "C4 C6"), ("mezzo-soprano", "A3 A5"), ("alto", "F3 F5"), ("tenor", "C3 C5"), ("baritone", "G2 F4"),
    ("bass", "E2 E4"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "names"), RANGES)
def test_the_kinds_of_voices_have_the_usual_ranges_and_their_comfort_within(name, names):
    found = VOICES[name]

    assert (found.low, found.high) == tuple(map(midi, names.split()))
    assert found.low < found.comfort_low < found.comfort_high < found.high
    assert found.name == name
    assert len(VOICES) == len(RANGES)


keys = st.builds(Key, st.integers(-6, 6).map(PitchClass), st.sampled_from([MAJOR, MINOR]))
voices = st.tuples(st.integers(36, 60), st.integers(0, 30)).map(lambda pair: voice_of(pair[0], pair[0] + pair[1]))
spans = st.tuples(st.integers(40, 72), st.integers(0, 24), st.booleans()).map(
    lambda row: Span(row[0], row[0] + row[1], row[2])
)


@given(spans, st.lists(voices, min_size=1, max_size=3), keys)
def test_each_key_that_fits_does_and_none_that_fits_is_left_out(tune, singers, key):
    fits = fitting_keys(tune, singers, Progression(key, ()))
    width = tune.high - tune.low
    possible = {
        (low - tune.low) % 12
        for low in range(128)
        if all(one.low <= low and low + width <= one.high for one in singers)
    }

    assert {(fit.key.tonic.semitones - key.tonic.semitones) % 12 for fit in fits} == possible
    assert len(fits) == len(possible)
    for fit in fits:
        assert fit.high - fit.low == width
        assert fit.room == tuple((fit.low - one.low, one.high - fit.high) for one in singers)
        assert min(min(room) for room in fit.room) >= 0
        assert (fit.shift - fit.low + tune.low) % 12 == 0
        assert fit.key.mode == key.mode
        assert abs(fit.key.signature) <= max(6, abs(key.signature))
    assert bool(fits) == (lacking(tune, singers) <= 0)


@given(spans, voices, keys)
def test_they_come_in_order_of_how_near_the_middle_they_lie(tune, singer, key):
    fits = fitting_keys(tune, [singer], Progression(key, ()))
    distances = [abs(fit.low + fit.high - singer.comfort_low - singer.comfort_high) for fit in fits]

    assert distances == sorted(distances) == [fit.off_middle for fit in fits]


@given(spans, st.lists(voices, min_size=2, max_size=3), keys)
def test_of_several_singers_the_one_who_is_worst_off_decides(tune, singers, key):
    progression = Progression(key, ())
    for fit in fitting_keys(tune, singers, progression):
        middles = [abs(fit.low + fit.high - one.comfort_low - one.comfort_high) for one in singers]
        assert fit.off_middle == max(middles)


@given(st.integers(30, 80), st.integers(0, 40), st.lists(voices, min_size=1, max_size=3), keys)
def test_where_nothing_fits_no_place_passes_the_ranges_by_less_than_the_nearest(low, width, singers, key):
    tune = Span(low, low + width)
    nearest = nearest_misfit(tune, singers, Progression(key, ()))

    def worst(bottom):
        return max(max(one.low - bottom, bottom + width - one.high) for one in singers)

    assert worst(nearest.low) == min(map(worst, range(128 - width)))


def test_the_name_of_a_key_is_the_one_that_its_chords_are_written_in():
    # six sharps or six flats: that which needs fewer double accidentals (ours)
    tune = resolve(read_chart("| I | bVI | bVII | I |"), parse_key("C"))
    (fit,) = fitting_keys(span("C4 C5"), [voice("F#3 F#4")], tune)

    assert str(fit.key) == "F# major"


def test_comfort_is_the_middle_of_a_range():
    assert voice("C3 C5") == Voice("", 48, 72, 52, 68)  # four of six parts (common practice, no source)
