"""Solfège syllables: movable ones beside music21's, and fixed ones, which are names of notes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import scale
from strategies import MAJOR_TONICS, MINOR_TONICS, key, note

from nearhand.notation.conventions import Conventions
from nearhand.notation.melody_degrees import write_degree
from nearhand.notation.melody_reading import parse_melody
from nearhand.notation.syllables import MOVABLE, read_fixed, read_movable, write_movable
from nearhand.theory.interval import Interval

SUNG = Conventions(sing="syllables", plain=True)
OF_RELATIVE_MAJOR = Conventions("relative", plain=True, sing="syllables")
# The seventeen places above do that have a syllable of their own, and names of notes above C. Common practice, no
# source; beside music21's table (scale.ConcreteScale.solfeg) below.
CHROMATIC = {
    "do": "C", "di": "C#", "ra": "Db", "re": "D", "ri": "D#", "me": "Eb", "mi": "E", "fa": "F", "fi": "F#", "se": "Gb",
    "sol": "G", "si": "G#", "le": "Ab", "la": "A", "li": "A#", "te": "Bb", "ti": "B",
}  # fmt: skip
FIXED = [
    ("Do", "C"), ("Re", "D"), ("Mi", "E"), ("Fa", "F"), ("Sol", "G"), ("So", "G"), ("La", "A"), ("Si", "B"),
    ("Ti", "B"), ("Sib", "Bb"), ("Si♭", "Bb"), ("Fa#", "F#"), ("Fa♯♯", "F##"), ("Solbb", "Gbb"), ("Mi♮", "E"),
    ("Do𝄪", "C##"),
]  # fmt: skip


def theirs(tonic, place):
    """The syllable that music21 gives to a place in fifths above a tonic."""
    name = str(note(tonic).up(place)).replace("b", "-")
    return scale.MajorScale(tonic.replace("b", "-")).solfeg(name)


def test_the_table_of_movable_syllables_is_that_of_seventeen_notes():
    assert {name: str(note("C").up(place)) for name, place in MOVABLE.items()} == CHROMATIC


@pytest.mark.parametrize("tonic", [*MAJOR_TONICS, "D#", "G#"])
def test_movable_syllables_are_those_of_music21_in_every_key(tonic):
    assert {name: theirs(tonic, place) for name, place in MOVABLE.items()} == {name: name for name in MOVABLE}


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_do_is_the_tonic_in_minor_too_and_its_thirds_sixths_and_sevenths_have_their_own_syllables(tonic):
    written = " ".join(
        write_degree(Interval(place, 0), key(tonic).mode, SUNG).rstrip("'_") for place in key(tonic).mode.degrees
    )

    assert written == "do re me fa sol le te"  # common practice, no source
    assert [theirs(tonic.capitalize(), place) for place in key(tonic).mode.degrees] == written.split()


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_minor_begins_on_la_where_do_is_the_tonic_of_the_relative_major(tonic):
    places = [*key(tonic).mode.degrees, 3, 5]  # the raised sixth and seventh as well
    relative = str(key(tonic).relative.tonic)
    written = [write_degree(Interval(place, 0), key(tonic).mode, OF_RELATIVE_MAJOR).rstrip("'_") for place in places]

    assert written == ["la", "ti", "do", "re", "mi", "fa", "sol", "fi", "si"]  # common practice, no source
    assert written == [theirs(relative, place + 3) for place in places]


@pytest.mark.parametrize(("text", "name"), FIXED)
def test_fixed_syllables_are_names_of_notes(text, name):
    place, end = read_fixed(text, 0)

    assert (str(note("C").up(place)), end) == (name, len(text))
    for where in ("C", "Eb", "f#"):
        assert str(parse_melody(f"{text}5", key(where)).sounding()[0].pitch) == f"{name}5"


@given(st.integers(-21, 26), st.booleans())
def test_every_syllable_that_is_written_is_read_back(place, plain):
    text = write_movable(place, plain)

    assert read_movable(text, 0) == (place, len(text))
    assert not plain or text.isascii()


@given(st.sampled_from(sorted(MOVABLE)), st.sampled_from(["", "'", "''", "_", "__"]), st.sampled_from(["G", "f", "Db"]))
def test_a_movable_syllable_with_marks_is_read_and_written_as_the_same(name, marks, tonic):
    note_read = parse_melody(name + marks, key(tonic)).notes[0]

    assert write_degree(note_read.interval, key(tonic).mode, SUNG) == name + marks


def test_capitals_part_fixed_syllables_from_movable_ones():
    melody = parse_melody("G: Do do Si si Re re")

    assert " ".join(str(each.pitch.pitch_class) for each in melody.sounding()) == "C G B D# D A"


@pytest.mark.parametrize("text", ["du", "DO", "dO", "dob4", "Dó", "solb4", "s", "d", "fe", "de"])
def test_what_is_no_syllable_is_not_taken_for_one(text):
    found = read_movable(text, 0) or read_fixed(text, 0)

    assert found is None or found[1] < len(text)
