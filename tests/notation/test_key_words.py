"""Keys in words."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import MAJOR_TONICS, MINOR_TONICS, key, keys, note

from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key, write_key
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES

# Capital alone for major, small letter alone for minor, as RomanText writes keys: When in Rome corpus,
# syntax.md. The other forms: common practice, no source; dur and moll are the German words.
FORMS = [
    ("E minor", "e"), ("Em", "e"), ("e", "e"), ("E min", "e"), ("Emin", "e"), ("E m", "e"), ("E-", "e"),
    ("E moll", "e"),
    ("e minor", "e"), ("e moll", "e"), ("E MINOR", "e"), (" E  minor ", "e"), ("E\tminor", "e"),
    ("E", "E"), ("E major", "E"), ("Emaj", "E"), ("E maj", "E"), ("EM", "E"), ("E M", "E"), ("E dur", "E"),
    ("e major", "E"),
    ("eM", "E"), ("E Major", "E"),
    ("Bb", "Bb"), ("B♭", "Bb"), ("bb", "bb"), ("b", "b"), ("B", "B"), ("b♭", "bb"), ("Bbm", "bb"),
    ("B♭ minor", "bb"),
    ("f# minor", "f#"), ("F♯m", "f#"), ("F#", "F#"), ("C♮", "C"), ("ab", "ab"), ("Abb", "Abb"),
    ("F## minor", "f##"),
]  # fmt: skip

CHURCH = [
    ("D dorian", "D", "dorian"), ("d dorian", "D", "dorian"), ("E Phrygian", "E", "phrygian"),
    ("Bb lydian", "Bb", "lydian"),
    ("G MIXOLYDIAN", "G", "mixolydian"), ("A aeolian", "A", "aeolian"), ("B locrian", "B", "locrian"),
    ("C ionian", "C", "ionian"), ("Eb  dorian", "Eb", "dorian"), ("Ddorian", "D", "dorian"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "name"), FORMS)
def test_a_key_is_read_in_every_usual_form(text, name):
    assert parse_key(text) == key(name)


@pytest.mark.parametrize(("text", "tonic", "mode"), CHURCH)
def test_a_church_mode_is_read_whatever_the_size_of_its_letter(text, tonic, mode):
    assert parse_key(text) == Key(note(tonic), MODES[mode])


@pytest.mark.parametrize("tonic", [*MAJOR_TONICS, *MINOR_TONICS])
def test_a_letter_alone_is_major_as_a_capital_and_minor_when_small(tonic):
    mode = MAJOR if tonic[0].isupper() else MINOR

    assert parse_key(tonic) == Key(note(tonic[0].upper() + tonic[1:]), mode)


@given(keys, st.booleans())
def test_a_written_key_reads_back(any_key, plain):
    assert parse_key(write_key(any_key, plain)) == any_key


@given(keys)
def test_keyboard_characters_are_ascii_and_those_of_the_value_itself(any_key):
    assert write_key(any_key, plain=True).isascii()
    assert write_key(any_key, plain=True) == str(any_key)


def test_a_key_is_written_with_signs_and_its_mode_in_full():
    assert [write_key(key(name)) for name in ("Bb", "f#", "C")] == ["B♭ major", "F♯ minor", "C major"]


@pytest.mark.parametrize(
    ("text", "key"),
    [
        ("E flat", "Eb major"), ("e flat", "Eb minor"), ("E-flat minor", "Eb minor"), ("Bflat", "Bb major"),
        ("F Sharp minor", "F# minor"), ("g-sharp", "G# minor"), (" C sharp dorian ", "C# dorian"),
    ],
)  # fmt: skip
def test_flat_and_sharp_may_be_words(text, key):
    assert str(parse_key(text)) == key


@pytest.mark.parametrize(("text", "start"), [("E flatt", 2), ("E  flat", 3), ("Eb flat", 3), ("H flat", 0)])
def test_words_that_are_nearly_flat_are_refused_at_their_place(text, start):
    with pytest.raises(InputError) as caught:
        parse_key(text)

    assert caught.value.start == start
