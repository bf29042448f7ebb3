"""Spelled pitch classes as places on the line of fifths."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import note, notes, pitch_classes

from nearhand.theory.pitch_class import BLACK_KEYS, PitchClass, accidental, nearest_on_line, pitch_class

# Name, place, semitones above C. Concept: D. Temperley, *The Cognition of Basic Musical Structures*, 2001,
# ch. 5 (from memory). Numbers: two ways of computing agreed, arithmetic on the line and music21 10.5.1.
PLACES = """
Fbb -15 3   Cbb -14 10  Gbb -13 5   Dbb -12 0   Abb -11 7   Ebb -10 2   Bbb -9 9
Fb  -8  4   Cb  -7  11  Gb  -6  6   Db  -5  1   Ab  -4  8   Eb  -3  3   Bb  -2 10
F   -1  5   C    0  0   G    1  7   D    2  2   A    3  9   E    4  4   B    5 11
F#   6  6   C#   7  1   G#   8  8   D#   9  3   A#  10 10   E#  11  5   B#  12 0
F## 13  7   C## 14  2   G## 15  9   D## 16  4   A## 17 11   E## 18  6   B## 19 1
"""
CELLS = iter(PLACES.split())
TABLE = [(name, int(place), int(tones)) for name, place, tones in zip(CELLS, CELLS, CELLS, strict=True)]

# Same sources. Two names of one key on the keyboard lie twelve places apart.
ENHARMONIC = [("Gb", "F#"), ("Cb", "B"), ("Fb", "E"), ("C", "B#"), ("F", "E#"), ("Dbb", "C"), ("B", "A##")]

STEPS = {letter: step for step, letter in enumerate("CDEFGAB")}


def test_the_table_holds_five_rows_of_seven():
    assert sorted(place for _, place, _ in TABLE) == list(range(-15, 20))


@pytest.mark.parametrize(("name", "place", "semitones"), TABLE)
def test_a_place_on_the_line_gives_name_letter_alteration_and_semitones(name, place, semitones):
    found = PitchClass(place)

    assert str(found) == name
    assert found.letter == name[0]
    assert found.alteration == name.count("#") - name.count("b")
    assert found.semitones == semitones
    assert found.step == STEPS[name[0]]


@pytest.mark.parametrize(("flatter", "sharper"), ENHARMONIC)
def test_enharmonic_names_lie_twelve_places_apart_and_sound_alike(flatter, sharper):
    low, high = note(flatter), note(sharper)

    assert high.fifths - low.fifths == 12
    assert low.semitones == high.semitones
    assert low.up(12) == high


def test_a_sharp_adds_seven_places_and_a_flat_takes_seven_away():
    for letter in "CDEFGAB":
        assert note(letter).up(7) == note(letter + "#")
        assert note(letter).up(-7) == note(letter + "b")


def test_black_keys_are_the_five_sharps_or_flats_of_every_octave():
    # common practice, no source: the keyboard
    for names in ("F# C# G# D# A#", "Gb Db Ab Eb Bb"):
        assert {note(name).semitones for name in names.split()} == BLACK_KEYS
    assert {note(letter).semitones for letter in STEPS} == set(range(12)) - BLACK_KEYS


@pytest.mark.parametrize(
    ("alteration", "written"), [(-3, "bbb"), (-2, "bb"), (-1, "b"), (0, ""), (1, "#"), (2, "##"), (3, "###")]
)
def test_accidentals_are_written_in_plain_characters(alteration, written):
    assert accidental(alteration) == written


@given(pitch_classes)
def test_adding_zero_fifths_changes_nothing(found):
    assert found.up(0) == found


@given(pitch_classes, st.integers(-12, 12))
def test_going_up_and_coming_back_gives_the_same_name(found, fifths):
    assert found.up(fifths).up(-fifths) == found


@given(pitch_classes, st.integers(-12, 12), st.integers(-12, 12))
def test_two_moves_are_one_move_in_either_order(found, one, other):
    assert found.up(one).up(other) == found.up(one + other) == found.up(other).up(one)


@given(pitch_classes, st.integers(-12, 12))
def test_each_fifth_adds_seven_semitones_and_four_steps(found, fifths):
    moved = found.up(fifths)

    assert moved.semitones == (found.semitones + 7 * fifths) % 12
    assert moved.step == (found.step + 4 * fifths) % 7


@given(pitch_classes)
def test_a_name_read_back_by_letter_and_accidentals_is_the_same_place(found):
    assert note(str(found)) == found
    assert pitch_class(found.fifths) == found


@given(pitch_classes, st.integers(-12, 12))
def test_the_nearest_name_sounds_alike_and_none_lies_nearer(found, centre):
    nearest = nearest_on_line(found, centre)

    assert nearest.semitones == found.semitones
    assert -6 <= nearest.fifths - centre <= 5


def test_of_two_names_as_near_the_flatter_one_is_taken():
    assert nearest_on_line(note("F#"), 0) == note("Gb")  # common practice, no source
    assert [nearest_on_line(name, 0) for name in notes("B# E# Fb Cb G# A#")] == list(notes("C F E B Ab Bb"))
