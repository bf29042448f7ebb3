"""Which name a key takes, and the walk round the circle of fifths."""

from __future__ import annotations

import pytest
from harmony_examples import in_bars, key, key_free
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.moving import all_keys, best_spelling, double_accidentals, neighbour
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

# Common practice, no source, here and below: fewest accidentals in the signature; at six against six the name that
# spares double accidentals, then the side one comes from; in minor the leading tone counts.
MAJOR_NAMES = "C Db D Eb E F F#/Gb G Ab A Bb B"
MINOR_NAMES = "c c# d eb/d# e f f# g g# a bb b"
SPELLINGS = "C B# Dbb, C# Db B##, D C## Ebb, D# Eb, E Fb D##, F E#, F# Gb, G F## Abb, G# Ab, A G## Bbb, A# Bb, B Cb A##"
PLAIN_MINOR, WITH_DOMINANT = "i iv v i", "i iv V7 i"


def tune(numerals, home):
    return in_bars([parse_numeral(numeral, home.mode) for numeral in numerals.split()], home)


def as_in_tables(home):
    return str(home.tonic) if home.mode == MAJOR else str(home.tonic)[0].lower() + str(home.tonic)[1:]


@pytest.mark.parametrize("names", [MAJOR_NAMES, MINOR_NAMES], ids=["major", "minor"])
@pytest.mark.parametrize("come_from", ["F", "G"])
def test_a_key_takes_the_name_with_fewest_accidentals_whatever_it_was_called(names, come_from):
    mode = MAJOR if names is MAJOR_NAMES else MINOR
    plain = tune("I IV V" if mode == MAJOR else PLAIN_MINOR, Key(PitchClass(0), mode))
    for sound, spelled in enumerate(SPELLINGS.split(",")):
        flat_or_sharp = {"F": "b", "G": "#"}[come_from]
        allowed = names.split()[sound].split("/")
        expected = allowed[0] if len(allowed) == 1 else next(name for name in allowed if flat_or_sharp in name)
        for name in spelled.split():
            asked = Key(key(name).tonic, mode)
            assert as_in_tables(best_spelling(plain, asked, key(come_from))) == expected


@pytest.mark.parametrize(("come_from", "expected"), [("C", "Gb"), ("Bb", "Gb"), ("D", "F#"), ("a", "Gb"), ("e", "F#")])
def test_six_sharps_or_six_flats_follow_the_side_one_comes_from(come_from, expected):
    for name in ("F#", "Gb"):
        assert best_spelling(tune("I IV V", key("C")), key(name), key(come_from)) == key(expected)


@pytest.mark.parametrize(
    ("numerals", "from_sharps"),
    [
        (PLAIN_MINOR, "d#"),
        (WITH_DOMINANT, "eb"),  # the leading tone of D sharp minor is C##
        ("i N6 V7", "eb"),
        ("i N6 v", "d#"),  # E G# B and Fb Ab Cb: neither needs one
    ],
)
def test_a_double_accidental_decides_between_d_sharp_and_e_flat_minor(numerals, from_sharps):
    music = tune(numerals, key("a"))

    assert best_spelling(music, key("d#"), key("e")) == key(from_sharps)
    assert best_spelling(music, key("eb"), key("e")) == key(from_sharps)


def test_double_accidentals_are_counted_tone_by_tone():
    music = tune("i V V7", key("a"))

    assert double_accidentals(music, key("d#")) == 2  # C## in A# C## E# and in A# C## E# G#
    assert double_accidentals(music, key("eb")) == 0
    assert double_accidentals(music, key("g#")) == 2  # F##


def test_music_with_borrowed_chords_takes_f_sharp_rather_than_g_flat_where_that_spares_double_flats():
    # iv of G flat major is Cb Ebb Gb, that of F sharp major B D F#.
    music = in_bars(key_free("C F Fm C", key("C")), key("C"))

    assert best_spelling(music, key("Gb"), key("F")) == key("F#")


# The circle: sharpwards by rising fifths, flatwards by falling fifths (Open Music Theory, keySignatures; the order
# of practice is common practice, no source). A walk comes to six against six from Db or bb on the flat side, from B
# or g# on the sharp side.
FALLING = {
    "major": "C F Bb Eb Ab Db Gb B E A D G",
    "minor": "a d g c f bb eb g# c# f# b e",
}
RISING = {
    "major": "C G D A E B F# Db Ab Eb Bb F",
    "minor": "a e b f# c# g# d# bb f c g d",
}


@pytest.mark.parametrize("mode", ["major", "minor"])
@pytest.mark.parametrize(("falling", "orders"), [(True, FALLING), (False, RISING)], ids=["falling", "rising"])
def test_the_twelve_keys_follow_the_circle_from_every_start(mode, falling, orders):
    order = orders[mode].split()
    for place, start in enumerate(order):
        music = tune("I IV V" if mode == "major" else PLAIN_MINOR, key(start))

        assert [as_in_tables(home) for home in all_keys(music, falling)] == order[place:] + order[:place]


@pytest.mark.parametrize("falling", [True, False])
def test_music_with_the_leading_tone_goes_round_through_e_flat_minor_either_way(falling):
    for start in FALLING["minor"].split():
        names = [as_in_tables(home) for home in all_keys(tune(WITH_DOMINANT, key(start)), falling)]

        assert names[0] == start
        assert "eb" in names
        assert "d#" not in names


@pytest.mark.parametrize("start", ["Cb", "Gb", "F#", "C#", "ab", "d#", "a#"])
def test_the_walk_begins_with_the_name_the_music_came_with(start):
    names = [as_in_tables(home) for home in all_keys(tune("I V" if start[0].isupper() else "i V", key(start)))]

    assert names[0] == start
    assert len({key(name).tonic.semitones for name in names}) == 12


@given(st.integers(-6, 6), st.sampled_from([MAJOR, MINOR]), st.booleans())
def test_a_neighbour_lies_a_fifth_away_and_has_at_most_six_accidentals(fifths, mode, falling):
    home = Key(PitchClass(fifths - mode.brightness), mode)
    near = neighbour(tune("V7", home), home, falling)

    assert (near.tonic.semitones - home.tonic.semitones) % 12 == (5 if falling else 7)
    assert near.mode == mode
    assert abs(near.signature) <= 6
