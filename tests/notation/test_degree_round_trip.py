"""Law: numerals and numbers as we write them read back to the same chord, in every mode and convention."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import conventions, modes, qualities, relative_chords

from nearhand.notation.chord_words import BASES
from nearhand.notation.conventions import SEVENTHS, Conventions
from nearhand.notation.numbers import parse_number, starts_number, write_number
from nearhand.notation.numeral_words import starts_numeral
from nearhand.notation.numeral_writing import write_applied, write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.quality import QUALITIES, Quality

CHOICES = [
    Conventions(degrees, plain, sevenths)
    for degrees in ("mode", "major")
    for plain in (False, True)
    for sevenths in SEVENTHS
]
BASE_OF = {quality: word for word, quality in reversed(BASES.items())}
ROOTS = range(-6, 7)


@pytest.mark.parametrize("quality", BASE_OF, ids=BASE_OF.values())
def test_every_base_on_every_degree_with_every_own_bass_reads_back_as_a_numeral(quality):
    for mode in MODES.values():
        for choice in CHOICES:
            for root in ROOTS:
                for interval in quality.intervals:
                    chord = RelativeChord(root, quality, root + interval)
                    written = write_numeral(chord, mode, choice)

                    assert parse_numeral(written, mode, choice) == chord, written
                    assert starts_numeral(written)


@pytest.mark.parametrize("quality", BASE_OF, ids=BASE_OF.values())
def test_every_base_on_every_degree_with_every_own_bass_reads_back_as_a_number(quality):
    for mode in MODES.values():
        for choice in CHOICES:
            for root in ROOTS:
                for interval in quality.intervals:
                    chord = RelativeChord(root, quality, root + interval)
                    written = write_number(chord, mode, choice)

                    assert parse_number(written, mode, choice) == chord, written
                    assert starts_number(written)


@pytest.mark.parametrize("mode", [MAJOR, MINOR], ids=["major", "minor"])
@pytest.mark.parametrize("choice", CHOICES, ids=lambda choice: "-".join(map(str, choice[:3])))
def test_every_bass_under_every_plain_chord_reads_back(mode, choice):
    for kind in ("major", "minor", "diminished", "dominant", "minor-seventh", "suspended-fourth"):
        for root in ROOTS:
            for bass in range(-9, 10):
                chord = RelativeChord(root, QUALITIES[kind], bass)

                assert parse_numeral(write_numeral(chord, mode, choice), mode, choice) == chord
                assert parse_number(write_number(chord, mode, choice), mode, choice) == chord


@settings(max_examples=400)
@given(relative_chords, modes, conventions)
def test_any_chord_reads_back_as_a_numeral_and_as_a_number(chord, mode, choice):
    numeral, number = write_numeral(chord, mode, choice), write_number(chord, mode, choice)

    assert parse_numeral(numeral, mode, choice) == chord
    assert parse_number(number, mode, choice) == chord
    assert not choice.plain or (numeral + number).isascii()


def test_a_power_chord_over_its_third_degree_is_not_taken_for_a_figure():
    # the tail 5 before /3 looks like the figure 5/3
    for mode in (MAJOR, MINOR):
        for root in ROOTS:
            chord = RelativeChord(root, QUALITIES["power"], mode.degrees[2])

            assert parse_numeral(write_numeral(chord, mode), mode) == chord


@given(relative_chords, st.integers(-4, 5), st.booleans(), modes, conventions)
def test_any_chord_written_as_applied_reads_back(chord, target, is_small, mode, choice):
    written = write_applied(chord, target, is_small, mode, choice)

    assert parse_numeral(written, mode, choice) == chord, written


# Chord as a quality and a bass counted from the target, the target V in major. Ours.
APPLIED = [
    (QUALITIES["dominant"], 1, "V7/V"),
    (QUALITIES["dominant"], 5, "V65/V"),
    (QUALITIES["major"], 2, "V64/V"),
    (QUALITIES["dominant-ninth"], 1, "V9/V"),
]


@pytest.mark.parametrize(("quality", "bass", "written"), APPLIED)
def test_an_applied_chord_is_written_before_the_numeral_of_its_target(quality, bass, written):
    chord = RelativeChord(1, quality, bass).above(1)

    assert write_applied(chord, 1, is_small=False, mode=MAJOR) == written


@pytest.mark.parametrize("tail", ["9", "7b9", "7sus4", "9sus4", "13", "7#5", "6"])
def test_an_applied_chord_that_figures_cannot_invert_reads_back_over_each_of_its_tones(tail):
    quality = BASES.get(tail) or parse_number("1" + tail, MAJOR).quality

    for interval in quality.intervals:
        chord = RelativeChord(2, quality, 2 + interval)
        written = write_applied(chord, 1, is_small=False, mode=MAJOR)

        assert parse_numeral(written, MAJOR) == chord, written


@given(qualities.filter(lambda quality: quality.interval(3) is not None))
def test_the_case_of_a_numeral_tells_its_third(quality):
    numeral = write_numeral(RelativeChord(0, quality, 0), MAJOR)

    assert numeral[0] == ("i" if quality.has_minor_third else "I")


def test_a_chord_without_third_is_small_where_the_scale_has_a_minor_chord_there():
    power = Quality((1, 5), (0, 1))  # ours; the fifth degree stands for the dominant

    written = [write_numeral(RelativeChord(root, power, root), MAJOR) for root in (0, 2, 4, -1, 1, 3)]
    assert written == ["I5", "ii5", "iii5", "IV5", "V5", "vi5"]
    assert write_numeral(RelativeChord(1, power, 1), MINOR) == "V5"
