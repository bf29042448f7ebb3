"""The tonic as a dominant seventh, at home in a blues and applied elsewhere; and the ii of an applied dominant."""

from __future__ import annotations

from itertools import pairwise

import pytest
from harmony_examples import analysed, common_qualities, falling_fifths, key, key_free, numerals, signs
from hypothesis import example, given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.sources import own_source
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.quality import QUALITIES

# Open Music Theory, popRockHarmony-blues: I I I I, IV IV I I, V IV I I. MT21C below: R. Hutchinson, Music Theory for
# the 21st-Century Classroom.
TWELVE_BARS = "C7 C7 C7 C7 F7 F7 C7 C7 G7 F7 C7 C7"
DIMINISHED_SEVENTH, MINOR_KINDS = (-3, -6, -9), ("minor", "minor-seventh", "half-diminished")


def test_a_blues_stays_on_its_three_degrees():
    assert numerals(TWELVE_BARS, key("C")) == "I7 I7 I7 I7 IV7 IV7 I7 I7 V7 IV7 I7 I7"
    assert {analysis.function for analysis in analysed(TWELVE_BARS, key("C"))} == {"tonic", "predominant", "dominant"}


@pytest.mark.parametrize(
    ("symbols", "expected"),
    [
        ("C7 F7 C7 G7", "I7 IV7 I7 V7"),  # opens on the seventh
        ("C F7 G7 C7", "I IV7 V7 I7"),  # closes on it
        ("C9 F9 C9 G9", "I9 IV9 I9 V9"),
        ("C C7 F C", "I V7/IV IV I"),  # neither
        ("C C7/Bb F/A C", "I V42/IV IV6 I"),
        ("C C9 F C", "I V9/IV IV I"),
        ("C7/E F G7 C", "V65/IV IV V7 I"),  # an inversion is no home chord
    ],
)
def test_the_tonic_seventh_is_applied_unless_the_piece_begins_or_ends_on_it(symbols, expected):
    # Common practice, no source.
    assert numerals(symbols, key("C")) == expected


@pytest.mark.parametrize(
    ("home", "symbols", "expected"),
    [
        ("Eb", "Bbm7 Eb7 Abmaj7", "ii7/IV V7/IV IVmaj7"),
        ("C", "Gm7 C7 F", "ii7/IV V7/IV IV"),
        ("C", "Em7b5 A7 Dm", "iiø7/ii V7/ii ii"),
        ("C", "F#m7b5 B7 Em", "iiø7/iii V7/iii iii"),
        ("C", "Gm7/F C7/E F", "ii42/IV V65/IV IV"),
        ("c", "Bbm7 Eb7 Ab", "ii7/VI V7/VI VI"),
        ("g", "Dm7b5 G7b9 Cm7", "iiø7/iv V7b9/iv iv7"),
        ("C", "Am7 D7 G", "vi7 V7/V V"),  # chords of the key keep their own numeral
        ("C", "Bm7b5 E7 Am", "iiø7/vi V7/vi vi"),
        ("C", "Gm7 F", "v7 IV"),  # no dominant behind it
        ("C", "F#m7b5 G", "viiø7/V V"),
    ],
)
def test_a_foreign_minor_chord_before_an_applied_dominant_is_its_ii(home, symbols, expected):
    # Common practice, no source.
    assert numerals(symbols, key(home)) == signs(expected)


def test_the_ii_of_a_degree_prepares_its_dominant():
    assert [analysis.function for analysis in analysed("Bbm7 Eb7 Abmaj7", key("Eb"))] == [
        "predominant",
        "dominant",
        "predominant",
    ]


def test_a_half_diminished_chord_before_the_dominant_is_ii_in_dorian_too():
    # Common practice, no source.
    assert numerals("Dm7 Em7b5 A7 Dm7", key("D dorian")) == signs("i7 iiø7 V7 i7")


def is_ii(analysis):
    return analysis.target is not None and analysis.reading.root - analysis.target.place == 2


def is_dominant_of(analysis, target):
    return analysis.target == target and analysis.reading.root - target.place == 1


lines = falling_fifths() | st.lists(
    st.builds(lambda root, kind: RelativeChord(root, kind, root), st.integers(-6, 8), common_qualities), max_size=6
)


@given(lines, st.sampled_from([MAJOR, MINOR]))
@example(list(key_free("C7 Gm7 C7 F7 C7", key("C"))), MAJOR)  # the C7 of a blues is no applied dominant
def test_behind_the_ii_of_a_degree_stands_the_dominant_of_that_degree(chords, mode):
    analyses = analyse(chords, mode)
    for analysis, after in pairwise(analyses):
        if is_ii(analysis):
            assert is_dominant_of(after, analysis.target)
    assert not (analyses and is_ii(analyses[-1]))


@given(lines, st.sampled_from([MAJOR, MINOR]))
@example(list(key_free("Cm Gm7b5 C Fm", key("c"))), MINOR)  # C is applied because Fm follows
def test_before_an_applied_dominant_a_foreign_minor_or_half_diminished_chord_is_its_ii(chords, mode):
    analyses = analyse(chords, mode)
    kinds = [QUALITIES[kind] for kind in MINOR_KINDS]
    for analysis, after in pairwise(analyses):
        chord, dominant = analysis.chord, after.chord
        if own_source(chord, mode) is None and chord.quality in kinds and chord.root == dominant.root + 1:
            target = after.target
            if target is not None and is_dominant_of(after, target):
                assert analysis.target == target


@given(lines, st.sampled_from([MAJOR, MINOR]))
@example(list(key_free("C F#dim7 B7 Em", key("C"))), MAJOR)
def test_a_diminished_seventh_is_nobodys_ii(chords, mode):
    # MT21C, SecondaryDiminishedChordsInMajorAndMinor: it is a leading-tone chord; a ii is minor or half-diminished.
    for analysis in analyse(chords, mode):
        if analysis.chord.quality == QUALITIES["diminished-seventh"]:
            assert not is_ii(analysis)
