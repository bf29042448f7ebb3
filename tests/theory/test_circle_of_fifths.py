"""The circle of fifths both ways, and which name of a key to write."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import key, keys, note, notes, signature_keys

from nearhand.theory.key import Key, circle, nearest_spelling, spellings
from nearhand.theory.mode import MAJOR, MINOR, MODES

# The order of keys, both ways; computed. Where two names are equal, the side one comes from decides:
# common practice, no source.
ORDERS = [
    ("C", True, "C F Bb Eb Ab Db Gb B E A D G"),
    ("C", False, "C G D A E B F# Db Ab Eb Bb F"),
    ("a", True, "a d g c f bb eb g# c# f# b e"),
    ("a", False, "a e b f# c# g# d# bb f c g d"),
    ("E", True, "E A D G C F Bb Eb Ab Db Gb B"),
    ("E", False, "E B F# Db Ab Eb Bb F C G D A"),
    ("F#", True, "F# B E A D G C F Bb Eb Ab Db"),
    ("Gb", False, "Gb Db Ab Eb Bb F C G D A E B"),
    ("d#", True, "d# g# c# f# b e a d g c f bb"),
    ("Cb", True, "Cb E A D G C F Bb Eb Ab Db Gb"),
    ("a#", False, "a# f c g d a e b f# c# g# d#"),
]

# Semitones of the tonic above C, majors and minors to write, names to avoid. Fewest accidentals first:
# common practice, no source; every row computed.
CHOICES = [
    (0, "C", "c", "B# b#"),
    (1, "Db", "c#", "C# db"),
    (2, "D", "d", "C## Ebb"),
    (3, "Eb", "eb d#", "D#"),
    (4, "E", "e", "Fb"),
    (5, "F", "f", "E#"),
    (6, "Gb F#", "f#", "gb"),
    (7, "G", "g", "F##"),
    (8, "Ab", "g#", "G# ab"),
    (9, "A", "a", "G## Bbb"),
    (10, "Bb", "bb", "A# a#"),
    (11, "B", "b", "Cb"),
]


@pytest.mark.parametrize(("start", "falling", "order"), ORDERS)
def test_the_circle_runs_through_twelve_keys_in_their_usual_names(start, falling, order):
    assert circle(key(start), falling) == tuple(key(name) for name in order.split())


def test_the_circle_falls_by_fifths_unless_told_otherwise():
    assert circle(key("C")) == circle(key("C"), falling=True)


@pytest.mark.parametrize(("semitones", "majors", "minors", "avoid"), CHOICES)
def test_a_key_is_written_with_fewest_accidentals(semitones, majors, minors, avoid):
    for name in [*majors.split(), *avoid.split()]:
        if name[0].isupper():
            assert key(name).tonic.semitones == semitones
            assert spellings(key(name)) == tuple(key(written) for written in majors.split())
    for name in [*minors.split(), *avoid.split()]:
        if name[0].islower():
            assert key(name).tonic.semitones == semitones
            assert spellings(key(name)) == tuple(key(written) for written in minors.split())


# Asked for, come from, answer. Of two names with six accidentals the side one comes from decides, flats if
# from neither: common practice, no source.
SIDES = [
    ("F#", "B", "F#"), ("Gb", "B", "F#"), ("F#", "Db", "Gb"), ("Gb", "Db", "Gb"), ("F#", "C", "Gb"),
    ("F#", "a", "Gb"), ("eb", "g#", "d#"), ("d#", "bb", "eb"), ("d#", "a", "eb"), ("eb", "e", "d#"),
    ("C#", "A", "Db"), ("Cb", "Gb", "B"),
]  # fmt: skip


@pytest.mark.parametrize(("asked", "come_from", "answer"), SIDES)
def test_the_side_one_comes_from_decides_between_two_equal_names(asked, come_from, answer):
    assert nearest_spelling(key(asked), come_from=key(come_from)) == key(answer)


@given(keys)
def test_every_name_of_a_key_keeps_sound_and_mode_and_has_six_accidentals_at_most(any_key):
    for name in spellings(any_key):
        assert name.mode == any_key.mode
        assert name.tonic.semitones == any_key.tonic.semitones
        assert -6 <= name.signature <= 6


@given(keys)
def test_only_keys_with_six_accidentals_have_two_names(any_key):
    names = spellings(any_key)

    if len(names) == 2:
        assert [name.signature for name in names] == [-6, 6]
    else:
        assert len(names) == 1
        assert abs(names[0].signature) <= 5


@given(keys)
def test_the_names_of_a_key_do_not_hang_on_the_name_it_came_with(any_key):
    assert spellings(any_key.moved(12)) == spellings(any_key) == spellings(any_key.moved(-12))


@given(keys, st.booleans())
def test_the_circle_returns_to_where_it_began(start, falling):
    walk = circle(start, falling)

    assert walk[0] == start
    assert len({walked.tonic.semitones for walked in walk}) == 12
    assert spellings(walk[-1].moved(-1 if falling else 1)) == spellings(start)


@given(keys, st.booleans())
def test_every_step_of_the_circle_is_a_fifth(start, falling):
    semitones = -7 if falling else 7

    for before, after in pairwise(circle(start, falling)):
        assert (after.tonic.semitones - before.tonic.semitones - semitones) % 12 == 0
        assert after.mode == start.mode


@given(signature_keys)
def test_after_the_first_key_the_circle_uses_practical_names_alone(start):
    assert all(walked in spellings(walked) for walked in circle(start)[1:])


@given(keys, st.integers(-12, 12))
def test_moving_a_key_moves_its_signature_as_far(any_key, fifths):
    assert any_key.moved(fifths).signature == any_key.signature + fifths
    assert any_key.moved(fifths).moved(-fifths) == any_key


def test_the_circle_of_a_church_mode_keeps_the_mode():
    walk = circle(Key(note("D"), MODES["dorian"]))

    # signatures 0 -1 -2 ... -6, then 5 4 ...: computed
    assert tuple(walked.tonic for walked in walk) == notes("D G C F Bb Eb Ab C# F# B E A")
    assert {walked.mode for walked in walk} == {MODES["dorian"]}


def test_major_and_minor_keys_of_one_name_are_two_keys():
    assert Key(note("C"), MAJOR) != Key(note("C"), MINOR)
