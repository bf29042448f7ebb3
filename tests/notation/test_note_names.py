"""Note names and accidentals in text."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import note, pitch_classes, pitches

from nearhand.notation.accidentals import read_accidentals, write_accidental
from nearhand.notation.notes import parse_pitch_class, read_pitch_class, write_pitch, write_pitch_class

# Spellings of one note that are read alike; signs and keyboard characters: common practice, no source.
SPELLINGS = [
    ("B♭", "Bb"), ("Bb", "Bb"), ("F♯", "F#"), ("F#", "F#"), ("C𝄪", "C##"), ("C♯♯", "C##"), ("C##", "C##"),
    ("A𝄫", "Abb"), ("A♭♭", "Abb"), ("Abb", "Abb"), ("A♭b", "Abb"), ("E♮", "E"), ("E", "E"), ("F𝄪#", "F###"),
    ("B𝄫♭", "Bbbb"),
]  # fmt: skip

# Text, start, alteration in semitones, offset behind: reading stops where sharps would turn into flats.
READ = [
    ("", 0, None, 0), ("7", 0, None, 0), ("b", 0, -1, 1), ("bb7", 0, -2, 2), ("𝄫5", 0, -2, 1),
    ("#b", 0, 1, 1),
    ("b#", 0, -1, 1), ("♮b", 0, 0, 1), ("Cb", 1, -1, 2), ("♯♭", 0, 1, 1), ("###", 0, 3, 3), ("C", 5, None, 5),
]  # fmt: skip

WRITTEN = [
    (-3, "♭♭♭", "bbb"), (-2, "𝄫", "bb"), (-1, "♭", "b"), (0, "", ""), (1, "♯", "#"), (2, "𝄪", "##"),
    (3, "♯♯♯", "###"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "name"), SPELLINGS)
def test_a_note_is_read_in_any_usual_spelling(text, name):
    assert parse_pitch_class(text) == note(name)


@pytest.mark.parametrize(("text", "start", "alteration", "end"), READ)
def test_accidentals_of_one_kind_are_read_together(text, start, alteration, end):
    assert read_accidentals(text, start) == (alteration, end)


@pytest.mark.parametrize(("alteration", "signs", "plain"), WRITTEN)
def test_accidentals_are_written_in_signs_or_in_keyboard_characters(alteration, signs, plain):
    assert write_accidental(alteration) == signs
    assert write_accidental(alteration, plain=True) == plain


@given(pitch_classes, st.booleans())
def test_a_written_note_reads_back(pitch_class, plain):
    assert parse_pitch_class(write_pitch_class(pitch_class, plain)) == pitch_class


@given(pitch_classes)
def test_keyboard_characters_are_ascii_and_those_of_the_value_itself(pitch_class):
    assert write_pitch_class(pitch_class, plain=True).isascii()
    assert write_pitch_class(pitch_class, plain=True) == str(pitch_class)


@given(pitches)
def test_a_pitch_is_a_note_name_with_its_octave(pitch):
    assert write_pitch(pitch, plain=True) == str(pitch)
    assert write_pitch(pitch) == write_pitch_class(pitch.pitch_class) + str(pitch.octave)


@pytest.mark.parametrize(
    ("text", "start", "name", "end"), [("Bb7", 0, "Bb", 2), ("C/F#", 2, "F#", 4), ("Gm", 0, "G", 1)]
)
def test_a_note_is_read_out_of_a_longer_text(text, start, name, end):
    assert read_pitch_class(text, start) == (note(name), end)
