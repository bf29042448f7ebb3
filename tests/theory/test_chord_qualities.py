"""The kinds of chords: their tones, their names, and what a quality answers about itself."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import note, notes, qualities

from nearhand.theory.chord import Chord
from nearhand.theory.quality import NATURAL_INTERVALS, QUALITIES, Quality, alteration, quality, quality_name

# Kind and tones on C. MusicXML 4.0 schema, kind-value: names and intervals; spelling computed two ways that
# agreed. The kinds without intervals of their own (Neapolitan, Italian, French, German, pedal, Tristan,
# other, none) are left out.
KINDS = [
    ("major", "C E G"),
    ("minor", "C Eb G"),
    ("augmented", "C E G#"),
    ("diminished", "C Eb Gb"),
    ("dominant", "C E G Bb"),
    ("major-seventh", "C E G B"),
    ("minor-seventh", "C Eb G Bb"),
    ("diminished-seventh", "C Eb Gb Bbb"),
    ("augmented-seventh", "C E G# Bb"),
    ("half-diminished", "C Eb Gb Bb"),
    ("major-minor", "C Eb G B"),
    ("major-sixth", "C E G A"),
    ("minor-sixth", "C Eb G A"),
    ("dominant-ninth", "C E G Bb D"),
    ("major-ninth", "C E G B D"),
    ("minor-ninth", "C Eb G Bb D"),
    ("dominant-11th", "C E G Bb D F"),
    ("major-11th", "C E G B D F"),
    ("minor-11th", "C Eb G Bb D F"),
    ("dominant-13th", "C E G Bb D F A"),
    ("major-13th", "C E G B D F A"),
    ("minor-13th", "C Eb G Bb D F A"),
    ("suspended-second", "C D G"),
    ("suspended-fourth", "C F G"),
    ("power", "C G"),
]

# Number, name of the tone above C, semitones by which it differs from the plain tone of a dominant chord.
# MusicXML 4.0 schema, degree-alter: an added degree is counted from a dominant chord.
ALTERATIONS = [
    (3, "Eb", -1), (5, "Gb", -1), (5, "G#", 1), (7, "Bb", 0), (7, "B", 1), (7, "Bbb", -1), (9, "Db", -1),
    (9, "D#", 1), (11, "F#", 1), (13, "Ab", -1), (6, "A", 0), (2, "D", 0), (4, "F", 0),
]  # fmt: skip

# Tones on C, and the name made up for a quality that MusicXML has no kind for: the naming is ours.
DESCRIBED = [
    ("1 3 5 7 9", "C E G Bb Db", "dominant add b9"),
    ("1 3 5 7 9", "C E G Bb D#", "dominant add #9"),
    ("1 3 5 9", "C E G D", "major add 9"),
    ("1 3 5 7 11", "C E G B F#", "major-seventh add #11"),
    ("1 4 5 7", "C F G Bb", "suspended-fourth add 7"),
]


def test_every_kind_that_is_built_on_a_root_is_in_the_table_and_no_other():
    assert sorted(QUALITIES) == sorted(kind for kind, _ in KINDS)


@pytest.mark.parametrize(("kind", "tones"), KINDS)
def test_a_kind_has_its_tones_and_its_name(kind, tones):
    assert Chord(note("C"), QUALITIES[kind], note("C")).tones == notes(tones)
    assert quality_name(QUALITIES[kind]) == kind


@pytest.mark.parametrize(("kind", "tones"), KINDS)
def test_the_numbers_of_a_chords_tones_are_their_letters_counted_from_the_root(kind, tones):
    for number, tone in zip(QUALITIES[kind].numbers, notes(tones), strict=True):
        assert (number - 1) % 7 == tone.step


@pytest.mark.parametrize(("kind", "tones"), KINDS)
def test_a_quality_knows_its_third_and_its_triad(kind, tones):
    found = QUALITIES[kind]
    up_to_the_fifth = sum(number <= 5 for number in found.numbers)

    assert found.has_minor_third == ("Eb" in tones.split())
    assert Chord(note("C"), found.triad, note("C")).tones == notes(tones)[:up_to_the_fifth]


@pytest.mark.parametrize(("number", "name", "semitones"), ALTERATIONS)
def test_an_alteration_is_counted_from_the_plain_tone_of_a_dominant_chord(number, name, semitones):
    assert alteration(number, note(name).fifths) == semitones


@pytest.mark.parametrize(("numbers", "tones", "name"), DESCRIBED)
def test_a_quality_without_a_kind_is_named_by_what_is_added(numbers, tones, name):
    pairs = zip(map(int, numbers.split()), (tone.fifths for tone in notes(tones)), strict=True)

    assert quality_name(quality(list(pairs))) == name


def test_a_tone_left_out_is_named():
    assert quality_name(Quality((1, 3, 7), (0, 4, -2))) == "dominant omit 5"


@given(qualities)
def test_a_quality_is_made_again_from_its_tones_in_any_order(found):
    assert quality(list(reversed(found.tones))) == found
    assert all(found.interval(number) is not None for number in found.numbers)


@given(qualities)
def test_qualities_of_one_name_are_one_quality(found):
    if quality_name(found) in QUALITIES:
        assert QUALITIES[quality_name(found)] == found
    else:
        assert found not in QUALITIES.values()


def test_a_number_that_a_chord_does_not_hold_has_no_interval():
    assert QUALITIES["major"].interval(7) is None
    assert {number: QUALITIES["dominant"].interval(number) for number in (1, 3, 5, 7)} == {
        number: NATURAL_INTERVALS[number] for number in (1, 3, 5, 7)
    }
