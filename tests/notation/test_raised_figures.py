"""Numerals on paper: raised figures, the second of two lowered; and in keyboard characters alone."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import modes, relative_chords

from nearhand.notation.chord_tail_writing import raised
from nearhand.notation.chord_tails import plain_digits
from nearhand.notation.conventions import SEVENTHS, Conventions
from nearhand.notation.numeral_words import starts_numeral
from nearhand.notation.numeral_writing import write_applied, write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR

RAISED = Conventions(figures="raised")

# Typed, raised, in keyboard characters. Figures stand raised one above the other (Open Music Theory, first edition,
# "Thoroughbass figures"); a line of text has raised and lowered digits for that, Unicode blocks Superscripts and
# Subscripts. A bass degree behind a slash is no figure and stays on the line: ours.
WRITTEN = [
    ("V7", "V⁷", "V7"), ("V65", "V⁶₅", "V65"), ("V43", "V⁴₃", "V43"), ("V42", "V⁴₂", "V42"), ("I64", "I⁶₄", "I64"),
    ("I6", "I⁶", "I6"), ("vii°7", "vii°⁷", "viio7"), ("vii°65", "vii°⁶₅", "viio65"), ("viiø43", "viiø⁴₃", "vii/o43"),
    ("iiø7", "iiø⁷", "ii/o7"), ("V9", "V⁹", "V9"), ("V13", "V¹³", "V13"), ("Imaj7", "Imaj⁷", "Imaj7"),
    ("IVmaj65", "IVmaj⁶₅", "IVmaj65"), ("bII6", "♭II⁶", "bII6"), ("#iv°7", "♯iv°⁷", "#ivo7"),
    ("V7(b9)", "V⁷♭⁹", "V7b9"), ("V7sus4", "V⁷sus⁴", "V7sus4"), ("I(add9)", "I(add⁹)", "I(add9)"),
    ("V7/6", "V⁷/6", "V7/6"), ("IV/5", "IV/5", "IV/5"), ("It6", "It⁶", "It6"), ("Ger65", "Ger⁶₅", "Ger65"),
    ("Fr43", "Fr⁴₃", "Fr43"), ("II//I7", "II//I⁷", "II//I7"), ("V+7", "V+⁷", "V+7"), ("I5", "I⁵", "I5"),
    ("III+6", "III+⁶", "III+6"), ("i(maj7)", "i(maj⁷)", "i(maj7)"), ("V13/b7", "V¹³/♭7", "V13/b7"),
    ("I(add6,add9)/5", "I(add⁶,add⁹)/5", "I(add6,add9)/5"),
]  # fmt: skip

# Tail, raised. Ours: only a pair that is a figure has a lowered digit.
TAILS = [
    ("65", "⁶₅"), ("64", "⁶₄"), ("43", "⁴₃"), ("42", "⁴₂"), ("13", "¹³"), ("11", "¹¹"), ("7", "⁷"), ("", ""),
    ("maj7", "maj⁷"), ("ø65", "ø⁶₅"), ("97", "⁹⁷"), ("7♯11", "⁷♯¹¹"), ("164", "¹⁶⁴"),
]  # fmt: skip

# What a keyboard or a score program may put in: raised, lowered and plain digits, signs and letters.
TYPED = [
    ("V⁶₅", "V65"), ("V⁶⁵", "V65"), ("V₆₅", "V65"), ("V⁶5", "V65"), ("V⁶/₅", "V6/5"), ("vii°⁷", "viio7"),
    ("♭VI", "bVI"), ("♯iv°⁷", "#ivo7"), ("𝄫VII", "bbVII"), ("V⁷/V", "V7/V"), ("viiº7", "viio7"), ("vii/o⁶₅", "viiø65"),
    ("I⁶₄", "I64"), ("V⁽♭⁹⁾", "V(b9)"), ("N⁶", "N6"), ("Ger⁶₅", "Ger65"), ("Cad⁶₄", "Cad64"), ("V⁷⁄V", None),
    ("III⁺", "III+"),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "on_paper", "plain"), WRITTEN)
def test_a_numeral_is_written_with_raised_figures_and_in_keyboard_characters(typed, on_paper, plain):
    chord = parse_numeral(typed, MAJOR)

    assert write_numeral(chord, MAJOR, RAISED) == on_paper
    assert write_numeral(chord, MAJOR, Conventions(plain=True)) == plain
    assert write_numeral(chord, MAJOR, Conventions(plain=True, figures="raised")) == plain
    assert parse_numeral(on_paper, MAJOR) == parse_numeral(plain, MAJOR) == chord
    assert starts_numeral(on_paper)
    assert starts_numeral(plain)


@pytest.mark.parametrize(("tail", "expected"), TAILS)
def test_of_the_two_digits_of_a_figure_the_second_is_lowered(tail, expected):
    assert raised(tail) == expected
    assert plain_digits(expected) == tail


@pytest.mark.parametrize(("typed", "plain"), [row for row in TYPED if row[1]])
def test_raised_and_lowered_digits_are_read_as_the_plain_ones(typed, plain):
    for mode in (MAJOR, MINOR):
        for sevenths in SEVENTHS:
            choice = Conventions(sevenths=sevenths)

            assert parse_numeral(typed, mode, choice) == parse_numeral(plain, mode, choice)


def test_an_applied_chord_has_raised_figures_before_its_slash():
    chord = parse_numeral("V65/V", MAJOR)

    assert write_applied(chord, 1, False, MAJOR, RAISED) == "V⁶₅/V"
    assert write_applied(parse_numeral("vii°7/ii", MAJOR), 2, True, MAJOR, RAISED) == "vii°⁷/ii"


@settings(max_examples=300)
@given(relative_chords, modes, st.sampled_from(SEVENTHS))
def test_raised_figures_read_back_and_are_the_plain_ones_on_another_line(chord, mode, sevenths):
    on_line = write_numeral(chord, mode, Conventions(sevenths=sevenths))
    written = write_numeral(chord, mode, Conventions(sevenths=sevenths, figures="raised"))

    assert plain_digits(written) == on_line
    assert parse_numeral(written, mode, Conventions(sevenths=sevenths)) == chord
    assert not any(digit in written.rpartition("/")[0] for digit in "0123456789") or "/" in written


@settings(max_examples=300)
@given(relative_chords, st.integers(-4, 5), st.booleans(), modes, st.sampled_from(SEVENTHS))
def test_plain_writing_is_ascii_whatever_the_figures(chord, target, is_small, mode, sevenths):
    for figures in ("line", "raised"):
        plain = Conventions(plain=True, sevenths=sevenths, figures=figures)

        assert write_numeral(chord, mode, plain).isascii()
        assert write_applied(chord, target, is_small, mode, plain).isascii()
