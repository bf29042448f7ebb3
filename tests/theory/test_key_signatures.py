"""Key signatures, theoretical keys, relative and parallel keys."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import key, keys, note, notes

from nearhand.theory.key import SHARP_ORDER, Key, spellings
from nearhand.theory.mode import MAJOR, MINOR, MODES

# Fifths, major, minor, altered letters. Open Music Theory (first edition), "Key signatures"; all rows
# computed.
SIGNATURES = [
    (-7, "Cb", "ab", "Bb Eb Ab Db Gb Cb Fb"),
    (-6, "Gb", "eb", "Bb Eb Ab Db Gb Cb"),
    (-5, "Db", "bb", "Bb Eb Ab Db Gb"),
    (-4, "Ab", "f", "Bb Eb Ab Db"),
    (-3, "Eb", "c", "Bb Eb Ab"),
    (-2, "Bb", "g", "Bb Eb"),
    (-1, "F", "d", "Bb"),
    (0, "C", "a", ""),
    (1, "G", "e", "F#"),
    (2, "D", "b", "F# C#"),
    (3, "A", "f#", "F# C# G#"),
    (4, "E", "c#", "F# C# G# D#"),
    (5, "B", "g#", "F# C# G# D# A#"),
    (6, "F#", "d#", "F# C# G# D# A# E#"),
    (7, "C#", "a#", "F# C# G# D# A# E# B#"),
]

# Fifths, major and minor, doubly altered letters, partners with a plain signature; computed two ways that
# agreed. Such keys occur in print: Reger, *Modulation*, 1903, nos. 8, 11, 20 (When in Rome corpus,
# Textbooks/Reger).
THEORETICAL = [
    (-12, "Dbb bbb", "Bbb Ebb Abb Dbb Gbb", "C a"),
    (-11, "Abb fb", "Bbb Ebb Abb Dbb", "G e"),
    (-10, "Ebb cb", "Bbb Ebb Abb", "D b"),
    (-9, "Bbb gb", "Bbb Ebb", "A f#"),
    (-8, "Fb db", "Bbb", "E c#"),
    (8, "G# e#", "F##", "Ab f"),
    (9, "D# b#", "F## C##", "Eb c"),
    (10, "A# f##", "F## C## G##", "Bb g"),
    (11, "E# c##", "F## C## G## D##", "F d"),
    (12, "B# g##", "F## C## G## D## A##", "C a"),
]


@pytest.mark.parametrize(("fifths", "major", "minor", "altered"), SIGNATURES)
def test_relative_keys_share_signature_and_altered_letters(fifths, major, minor, altered):
    for name in (major, minor):
        assert key(name).signature == fifths
        assert key(name).altered_letters == notes(altered)
    assert key(major).relative == key(minor)
    assert key(minor).relative == key(major)


@pytest.mark.parametrize(("fifths", "major", "minor", "altered"), SIGNATURES)
def test_the_scale_of_a_key_has_the_altered_letters_of_its_signature(fifths, major, minor, altered):
    for name in (major, minor):
        assert {tone for tone in key(name).scale() if tone.alteration} == set(notes(altered))


def test_flats_are_written_in_the_reverse_order_of_sharps():
    assert [str(letter)[0] for letter in key("C#").altered_letters] == list(SHARP_ORDER)
    assert [str(letter)[0] for letter in key("Cb").altered_letters] == list(reversed(SHARP_ORDER))


@pytest.mark.parametrize(("fifths", "names", "double", "partners"), THEORETICAL)
def test_a_theoretical_key_has_doubly_altered_letters(fifths, names, double, partners):
    for name in names.split():
        assert key(name).signature == fifths
        assert len(key(name).altered_letters) == 7
        assert {tone for tone in key(name).scale() if abs(tone.alteration) == 2} == set(notes(double))


@pytest.mark.parametrize(("fifths", "names", "double", "partners"), THEORETICAL)
def test_a_theoretical_key_has_one_practical_name(fifths, names, double, partners):
    for name, partner in zip(names.split(), partners.split(), strict=True):
        assert spellings(key(name)) == (key(partner),)
        assert abs(key(partner).signature) == 12 - abs(fifths)


@pytest.mark.parametrize(("fifths", "major", "minor", "altered"), SIGNATURES)
def test_the_parallel_minor_key_has_three_flats_more(fifths, major, minor, altered):
    assert key(major).parallel == Key(key(major).tonic, MINOR)
    assert key(major).parallel.signature == fifths - 3
    assert key(minor).parallel == Key(key(minor).tonic, MAJOR)
    assert key(minor).parallel.signature == fifths + 3


@pytest.mark.parametrize(
    ("mode", "relative"),
    [
        ("dorian", "C"),
        ("phrygian", "Bb"),
        ("aeolian", "F"),
        ("locrian", "Eb"),
        ("lydian", "f#"),
        ("mixolydian", "e"),
        ("ionian", "b"),
    ],
)
def test_a_church_mode_is_related_to_the_key_of_its_signature_and_other_third(mode, relative):
    assert Key(note("D"), MODES[mode]).relative == key(relative)


@given(keys)
def test_a_relative_key_has_the_same_signature_and_the_other_kind_of_third(any_key):
    assert any_key.relative.signature == any_key.signature
    assert any_key.relative.mode.has_minor_third != any_key.mode.has_minor_third


@given(keys)
def test_a_parallel_key_has_the_same_tonic_and_the_other_kind_of_third(any_key):
    assert any_key.parallel.tonic == any_key.tonic
    assert any_key.parallel.mode.has_minor_third != any_key.mode.has_minor_third


def test_a_key_is_shown_by_its_plain_name():
    assert [str(key(name)) for name in ("Bb", "f#", "C")] == ["Bb major", "F# minor", "C major"]
    assert str(Key(note("Eb"), MODES["dorian"])) == "Eb dorian"
