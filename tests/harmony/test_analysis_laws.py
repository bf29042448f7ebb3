"""Laws of the analysis: the same in all keys, and every numeral reads back to its chord."""

from __future__ import annotations

import pytest
from harmony_examples import in_bars, key, key_free, keys, lines_of_chords, modes, numerals
from hypothesis import example, given
from hypothesis import strategies as st

from nearhand.harmony.analysis import Analysis, analyse
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.conventions import Conventions
from nearhand.notation.numbers import parse_number
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

CONVENTIONS = [Conventions(degrees, plain) for degrees in ("mode", "major") for plain in (False, True)]


def sound(place):
    """Semitones above the tonic, whatever the spelling."""
    return place * 7 % 12


def facts(analyses: tuple[Analysis, ...]):
    """What a player is told of each chord."""
    return [(each.numeral(), each.number(), each.source, each.function, each.target) for each in analyses]


@given(lines_of_chords, keys, st.integers(-6, 6).map(PitchClass))
def test_the_analysis_of_a_progression_is_the_same_in_all_keys(chords, home, tonic):
    # The moved progression is written out in its new key and read again, so that spelling takes part.
    moved = in_bars(chords, home).in_key(Key(tonic, home.mode))
    read = resolve(read_chart(write_chart(moved)), moved.key)

    assert facts(analyse(read.relative_chords, home.mode)) == facts(analyse(chords, home.mode))


@given(lines_of_chords, modes)
@example(list(key_free("C E7b9/G# Am", key("C"))), MAJOR)
@example(list(key_free("C5/E", key("C"))), MAJOR)
def test_every_numeral_written_in_its_context_reads_back_to_the_chord_as_it_is_named(chords, mode):
    for analysis in analyse(chords, mode):
        named = analysis.chord if analysis.named_as is None else analysis.named_as
        assert analysis.reading == named
        for conventions in CONVENTIONS:
            assert parse_numeral(analysis.numeral(conventions), mode, conventions) == named


@given(lines_of_chords, modes)
@example(list(key_free("C/Bb F/A", key("C"))), MAJOR)
@example(list(key_free("Em C#dim7 B7", key("e"))), MINOR)
@example(list(key_free("Am F7 E", key("a"))), MINOR)
def test_another_name_never_changes_what_is_played_but_for_a_seventh_that_its_bass_already_has(chords, mode):
    for analysis in analyse(chords, mode):
        chord, named = analysis.chord, analysis.reading
        played = {sound(place) for place in (*chord.places, chord.bass)}

        assert {sound(place) for place in (*named.places, named.bass)} == played
        assert sound(named.bass) == sound(chord.bass)


@pytest.mark.parametrize(
    ("symbols", "expected"),
    [
        ("E7b9/G# Am", "V7♭9/vi/♯5 vi"),  # the 9th leaves no room for a figure: the bass degree stands last
        ("A9/C# Dm", "V9/ii/♯1 ii"),
        ("D13/A G", "V13/V/6 V"),
        ("E7/D Am", "V42/vi vi"),
        ("E7/F Am", "V7/vi/4 vi"),  # a foreign bass
    ],
)
def test_the_bass_of_an_applied_chord_is_a_figure_or_a_degree_of_the_home_key_behind_its_target(symbols, expected):
    # Design of this project's notation: after the last slash a digit is the degree in the bass. No source.
    assert numerals(symbols, key("C")) == expected


def test_a_power_chord_over_its_third_is_not_written_as_the_figure_of_a_triad():
    # 5/3 is the full figure of a triad on its root (Open Music Theory, thoroughbassFigures).
    chord = key_free("C5/E", key("C"))[0]
    numeral = analyse([chord], MAJOR)[0].numeral()

    assert numeral != "I5/3"
    assert parse_numeral(numeral, MAJOR) == chord


@given(lines_of_chords, modes)
def test_every_number_written_in_its_context_reads_back_to_the_same_chord(chords, mode):
    for analysis in analyse(chords, mode):
        for conventions in CONVENTIONS:
            assert parse_number(analysis.number(conventions), mode, conventions) == analysis.chord


@given(lines_of_chords, modes)
def test_every_chord_is_analysed_in_order_with_the_one_that_follows(chords, mode):
    analyses = analyse(chords, mode)

    assert [analysis.chord for analysis in analyses] == list(chords)
    assert [analysis.after for analysis in analyses] == [*chords[1:], None]
    assert [analysis.before for analysis in analyses] == [None, *chords[:-1]][: len(chords)]
    assert all((analysis.target is not None) == (analysis.source == "applied") for analysis in analyses)


@given(lines_of_chords, modes)
def test_an_applied_chord_leads_to_a_major_or_minor_chord_of_the_key_other_than_the_tonic(chords, mode):
    # R. Hutchinson, Music Theory for the 21st-Century Classroom, SecondaryDominantsInMajorAndMinor
    for target in [analysis.target for analysis in analyse(chords, mode) if analysis.target is not None]:
        assert target.place != 0
        # or of a lowered degree that a parallel mode lends (common practice, no source)
        assert {target.place, target.place + 1} <= set(mode.degrees) or target.place in (-2, -3, -4, -5)


def test_no_chords_have_no_analyses():
    assert analyse([], MAJOR) == ()
