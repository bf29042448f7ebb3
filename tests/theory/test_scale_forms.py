"""Scales: major, the three forms of minor, the church modes."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import key, keys, note, notes, signature_keys

from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MINOR_FORMS, MODES

# Semitones above the tonic, and the scale on A and on C. Open Music Theory (first edition), "Scales"; R.
# Hutchinson, *Music Theory for the 21st-Century Classroom*, table of scales. Melodic minor is the rising
# form; falling it is natural.
FORMS = [
    ("major", "natural", "0 2 4 5 7 9 11", "A B C# D E F# G#", "C D E F G A B"),
    ("minor", "natural", "0 2 3 5 7 8 10", "A B C D E F G", "C D Eb F G Ab Bb"),
    ("minor", "harmonic", "0 2 3 5 7 8 11", "A B C D E F G#", "C D Eb F G Ab B"),
    ("minor", "melodic", "0 2 3 5 7 9 11", "A B C D E F# G#", "C D Eb F G A B"),
]

# The church modes on C; computed two ways that agreed, arithmetic on the line of fifths and music21 10.5.1.
CHURCH_MODES = [
    ("ionian", "C D E F G A B"),
    ("dorian", "C D Eb F G A Bb"),
    ("phrygian", "C Db Eb F G Ab Bb"),
    ("lydian", "C D E F# G A B"),
    ("mixolydian", "C D E F G A Bb"),
    ("aeolian", "C D Eb F G Ab Bb"),
    ("locrian", "C Db Eb F Gb Ab Bb"),
]
# The same modes on the white keys, each from its own note: common practice, no source.
WHITE_KEYS = dict(zip((mode for mode, _ in CHURCH_MODES), "CDEFGAB", strict=True))


@pytest.mark.parametrize(("mode", "form", "semitones", "on_a", "on_c"), FORMS)
def test_a_scale_has_its_steps_and_its_spelling(mode, form, semitones, on_a, on_c):
    for tonic, scale in (("A", on_a), ("C", on_c)):
        found = Key(note(tonic), MODES[mode]).scale(form)

        assert found == notes(scale)
        sizes = [(tone.semitones - found[0].semitones) % 12 for tone in found]
        assert sizes == [int(size) for size in semitones.split()]


@pytest.mark.parametrize(("mode", "scale"), CHURCH_MODES)
def test_a_church_mode_has_its_scale(mode, scale):
    assert Key(note("C"), MODES[mode]).scale() == notes(scale)


@pytest.mark.parametrize(("mode", "tonic"), WHITE_KEYS.items())
def test_a_church_mode_on_its_own_white_key_has_no_accidental(mode, tonic):
    church = Key(note(tonic), MODES[mode])

    assert church.signature == 0
    assert all(tone.alteration == 0 for tone in church.scale())


@pytest.mark.parametrize(("mode", "third"), [(mode, scale.split()[2]) for mode, scale in CHURCH_MODES])
def test_a_mode_knows_whether_its_third_is_minor(mode, third):
    assert MODES[mode].has_minor_third == (third == "Eb")


def test_only_the_minor_mode_proper_has_two_forms_of_six_and_seven():
    assert [name for name, mode in MODES.items() if mode.is_minor] == ["minor"]


def test_the_aeolian_mode_has_the_degrees_of_natural_minor():
    assert MODES["aeolian"].degrees == MINOR.degrees == MINOR_FORMS["natural"]
    assert MODES["ionian"].degrees == MAJOR.degrees


@pytest.mark.parametrize("form", ["natural", "harmonic", "melodic"])
@given(any_key=keys)
def test_a_scale_uses_each_letter_once_from_the_tonic_up(form, any_key):
    scale = any_key.scale(form)

    assert scale[0] == any_key.tonic
    assert [tone.step for tone in scale] == [(any_key.tonic.step + step) % 7 for step in range(7)]


@given(signature_keys)
def test_forms_other_than_natural_matter_in_minor_only(any_key):
    assert (any_key.scale("harmonic") != any_key.scale()) == any_key.mode.is_minor
    assert (any_key.scale("melodic") != any_key.scale()) == any_key.mode.is_minor


@given(keys)
def test_degrees_are_those_of_the_natural_scale(any_key):
    assert tuple(any_key.degree(number) for number in range(1, 8)) == any_key.scale()


def test_a_form_that_minor_does_not_have_is_refused():
    with pytest.raises(KeyError):
        key("a").scale("hungarian")
