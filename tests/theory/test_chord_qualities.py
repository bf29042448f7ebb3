"""The kinds of chords: their tones, their names, and what a quality answers about itself."""

from __future__ import annotations

from pathlib import Path
from xml.etree import ElementTree

import music21.musicxml
import pytest
from hypothesis import given
from strategies import note, notes, qualities

from nearhand.theory.chord import Chord
from nearhand.theory.quality import (
    AUGMENTED_SIXTHS,
    NATURAL_INTERVALS,
    QUALITIES,
    Quality,
    alteration,
    quality,
    quality_name,
    stacked,
)

# Kind and tones on C. MusicXML 4.0 schema, kind-value: names and intervals; spelling computed two ways that
# agreed. The schema gives no intervals for the last five. The augmented sixths are those of R. Hutchinson,
# *Music Theory for the 21st-Century Classroom*, "Types of Augmented Sixth Chords", on their lowest note, the
# lowered sixth degree; Tristan is F B D# G# (Wagner, second bar, from memory); a pedal is its note alone.
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
    ("Italian", "C E A#"),
    ("French", "C E F# A#"),
    ("German", "C E G A#"),
    ("pedal", "C"),
    ("Tristan", "C F# A# D#"),
]

# Tonic, and the tones of the augmented sixths that lead to its dominant: Italian, French, German, and the
# German one spelled for the major six-four. Open Music Theory, "Altered subdominants", and the textbook
# above; spelling computed two ways that agreed, but the last column: one way.
SIXTHS = [
    ("C", "Ab C F#", "Ab C D F#", "Ab C Eb F#", "Ab C D# F#"),
    ("G", "Eb G C#", "Eb G A C#", "Eb G Bb C#", "Eb G A# C#"),
    ("D", "Bb D G#", "Bb D E G#", "Bb D F G#", "Bb D E# G#"),
    ("A", "F A D#", "F A B D#", "F A C D#", "F A B# D#"),
    ("E", "C E A#", "C E F# A#", "C E G A#", "C E F## A#"),
    ("F#", "D F# B#", "D F# G# B#", "D F# A B#", "D F# G## B#"),
    ("Eb", "Cb Eb A", "Cb Eb F A", "Cb Eb Gb A", "Cb Eb F# A"),
    ("Bb", "Gb Bb E", "Gb Bb C E", "Gb Bb Db E", "Gb Bb C# E"),
    ("F", "Db F B", "Db F G B", "Db F Ab B", "Db F G# B"),
    ("Ab", "Fb Ab D", "Fb Ab Bb D", "Fb Ab Cb D", "Fb Ab B D"),
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


def kinds_of_the_schema():
    """The values of kind-value, from the MusicXML schema that music21 ships."""
    schema = ElementTree.parse(Path(music21.musicxml.__file__).with_name("musicxml.xsd"))
    names = "{http://www.w3.org/2001/XMLSchema}"
    simple = next(each for each in schema.iter(f"{names}simpleType") if each.get("name") == "kind-value")
    return {each.get("value") for each in simple.iter(f"{names}enumeration")}


def test_every_kind_that_is_built_on_a_root_is_in_the_table_and_no_other():
    assert sorted(QUALITIES) == sorted(kind for kind, _ in KINDS)


def test_the_kinds_are_those_of_the_musicxml_schema():
    # Neapolitan is a major chord by its degree, other has no tones of its own, none is no chord
    assert set(QUALITIES) | {"Neapolitan", "other", "none"} == kinds_of_the_schema()
    assert len(kinds_of_the_schema()) == 33


@pytest.mark.parametrize(("tonic", "sixths"), [(tonic, sixths) for tonic, *sixths in SIXTHS])
def test_an_augmented_sixth_stands_on_the_lowered_sixth_degree(tonic, sixths):
    root = note(tonic).up(-4)

    for name, expected in zip(("It", "Fr", "Ger", "Sw"), sixths, strict=True):
        found = Chord(root, AUGMENTED_SIXTHS[name], root).tones
        assert found[0] == root
        assert set(found) == set(notes(expected)), name
        assert note(tonic).up(6) in found  # the raised fourth degree


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


# Lower kind, upper root above C, upper kind, the tones on C, the name. Both chords whole, from the lower root up:
# R. Hutchinson, "Polychords"; the order and the name are ours.
STACKED = [
    ("dominant", "D", "major", "C E G Bb D F# A", "major over dominant"),
    ("major", "D", "major", "C E G D F# A", "major over major"),
    ("major", "E", "major", "C E G G# B", "major over major"),
    ("major-seventh", "E", "minor", "C E G B", "minor over major-seventh"),
    ("major", "F#", "major", "C E G C# F# A#", "major over major"),
    ("minor", "G", "dominant", "C Eb G B D F", "dominant over minor"),
    ("pedal", "C", "major", "C E G", "major over pedal"),
]


@pytest.mark.parametrize(("lower", "root", "upper", "tones", "name"), STACKED)
def test_a_chord_over_a_chord_has_the_tones_of_both_each_once(lower, root, upper, tones, name):
    found = stacked(QUALITIES[lower], note(root).fifths, QUALITIES[upper])
    spelled = Chord(note("C"), found, note("C")).tones

    assert sorted(map(str, spelled)) == sorted(tones.split())
    assert spelled[0] == note("C")
    assert quality_name(found) == name
    assert all((number - 1) % 7 == tone.step for number, tone in zip(found.numbers, spelled, strict=True))


def test_a_chord_over_a_chord_is_another_chord_than_one_of_the_same_tones():
    both = stacked(QUALITIES["major-seventh"], 4, QUALITIES["minor"])

    assert both.tones == QUALITIES["major-seventh"].tones
    assert both != QUALITIES["major-seventh"]
    assert both.layers == (QUALITIES["major-seventh"], 4, QUALITIES["minor"])


def test_a_number_that_a_chord_does_not_hold_has_no_interval():
    assert QUALITIES["major"].interval(7) is None
    assert {number: QUALITIES["dominant"].interval(number) for number in (1, 3, 5, 7)} == {
        number: NATURAL_INTERVALS[number] for number in (1, 3, 5, 7)
    }
