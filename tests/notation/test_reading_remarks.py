"""Remarks on forms that another reader would take otherwise."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import chords, conventions, key

from nearhand.notation.chart import read_chart
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import parse_key
from nearhand.notation.remarks import has_other_readings, remarks_on

# Key, chart, remarks. That charts differ on a bare 2, 3 or 6: number charts of session players
# (second-hand). That IV/V may mean a chord over a degree: R. Hutchinson, *Music Theory for the 21st-Century
# Classroom*, "The IV/5 Sus Chord". The words are ours.
SIXTH = "6 is read as a major chord; the minor chord is written 6-"
SECOND = "2 is read as a major chord; the minor chord is written 2-"
REMARKS = [
    ("C", "| 1 | 4 | 5 |", []),
    ("C", "| 1 | 6 |", [SIXTH]),
    ("C", "| 6 | 6 | 2 |", [SIXTH, SECOND]),
    ("C", "7", ["7 is read as a major chord; the diminished chord is written 7°"]),
    ("C", "| 6- | 27 | b7 | 5/7 |", []),
    ("a", "| 5 | 57 |", []),
    ("a", "1", ["1 is read as a major chord; the minor chord is written 1-"]),
    ("a", "2", ["2 is read as a major chord; the diminished chord is written 2°"]),
    ("a", "| 3 | 6 | 7 |", []),
    ("C", "IV/V", ["IV/V is read as IV of V; the chord IV over the 5th degree is written IV/5"]),
    ("C", "I/III", ["I/III is read as I of III; the chord I over the 3rd degree is written I/3"]),
    ("C", "| V7/V | vii°7/ii | IV/5 | ii7/V | V/vi |", []),
    ("C", "V/3", ["V/3 is read as V over the 3rd degree; over its own 3rd it is written V6 or V/3rd"]),
    ("C", "| V6/5 | V7/3rd | V43 | I6 | I/3 |", []),
    ("C", "| C/E | G7 | N.C. |", []),
    ("C", "(F)", ["(F) may be left out: its brackets are kept"]),
    ("C", "(2)", [SECOND, "(2) may be left out: its brackets are kept"]),
]

# Symbol, and the reading that is named: R. Hutchinson, "Jazz Chord Basics", "Chord Symbol Specifics", "Simple
# Sus Chords" (2 is add 2, sus9 is sus2, ° is the triad); MusicXML 4.0, use-symbols (the triangle for a major
# triad); the others: common practice, no source. The words are ours.
SYMBOLS = [
    ("C2", "C2 is read as C(add9), with its third; some charts mean Csus2"),
    ("Bb4", "Bb4 is read as Bbsus4; Bb(add4) keeps the third"),
    ("Csus9", "Csus9 is read as Csus2; some charts mean C9sus4"),
    ("C11", "C11 is read as a full eleventh chord; in playing its third is left out"),
    ("C13", "C13 is read as a full thirteenth chord; in playing its eleventh is left out"),
    ("C7+", "C7+ is read as C7#5; some charts write 7+ for a major seventh, which is Cmaj7 here"),
    ("C9+", "C9+ is read as C9#5; some charts write 9+ for a raised ninth, which is C7#9 here"),
    ("C+9", "C+9 is read as a ninth chord with a raised fifth; a raised ninth is written C7(#9)"),
    ("Caug9", "Caug9 is read as a ninth chord with a raised fifth; a raised ninth is written C7(#9)"),
    ("F7M", "F7M is read as Fmaj7"),
    ("Cm#7", "Cm#7 is read as Cm(maj7)"),
    ("C-5", "C-5 is read as C(b5), a major third and a lowered fifth; C- alone is minor"),
    ("C−5", "C−5 is read as C(b5), a major third and a lowered fifth; C- alone is minor"),
    ("G°", "G° is read as a diminished triad; many jazz charts mean Gdim7"),
    ("Go", "Go is read as a diminished triad; many jazz charts mean Gdim7"),
    ("Bø", "Bø is read as Bm7b5: half-diminished has its seventh"),
    ("EbΔ", "EbΔ is read as Ebmaj7; some charts write the triangle for the triad"),
    ("Eb^", "Eb^ is read as Ebmaj7; some charts write the triangle for the triad"),
    ("Cj", "Cj is read as Cmaj7; some charts write the triangle for the triad"),
    ("Cb5", "Cb5 is read as a power chord on Cb; an altered tone is put in brackets: C(b5)"),
    ("C♭9", "C♭9 is read as a chord on C♭; an altered tone is put in brackets: C(♭9)"),
    ("E#11", "E#11 is read as a chord on E#; an altered tone is put in brackets: E(#11)"),
    (
        "C7alt",
        "C7alt is read as a dominant seventh with fifth and ninth lowered or raised; which of them is left to the "
        "player",
    ),
    ("(C2)", "C2 is read as C(add9), with its third; some charts mean Csus2"),
    ("C2/E", "C2/E is read as C(add9), with its third; some charts mean Csus2"),
    ("C²", "C² is read as C(add9), with its third; some charts mean Csus2"),
]

# Symbols that are read in one way only, as their rivals above are written.
PLAIN = """
C Cm C7 Cm7 Cmaj7 C6 Csus4 Csus2 C9sus4 C(add9) C(add4) C7#5 C9#5 C7#9 C(b5) Cdim Cdim7 C°7 Cm7b5 Cø7 CΔ7 Cm(maj7)
C(b9) C9 Bb9 F#9 C#9 Cadd9 C5 C/E C6/9 C7sus C- C-7 C+ D//C7 N.C. Eb/Bb C7(b9,#11)
"""


@pytest.mark.parametrize(("home", "text", "expected"), REMARKS)
def test_a_form_with_another_reading_is_remarked_once(home, text, expected):
    assert list(remarks_on(read_chart(text), key(home))) == expected


@pytest.mark.parametrize(("symbol", "remark"), SYMBOLS, ids=[symbol for symbol, _ in SYMBOLS])
def test_a_symbol_with_another_reading_says_how_it_is_read(symbol, remark):
    assert remarks_on(read_chart(symbol), key("C"))[0] == remark
    assert has_other_readings(symbol.strip("()"))


@pytest.mark.parametrize(("symbol", "remark"), SYMBOLS, ids=[symbol for symbol, _ in SYMBOLS])
def test_the_reading_that_a_remark_names_is_the_reading(symbol, remark):
    named = remark.partition(" is read as ")[2].replace(",", ";").replace(":", ";").partition(";")[0]
    if not named.startswith("a "):
        assert parse_chord(named).quality == parse_chord(symbol.strip("()")).quality


@pytest.mark.parametrize("symbol", PLAIN.split())
def test_nothing_is_remarked_on_what_can_be_read_in_one_way(symbol):
    assert remarks_on(read_chart(symbol), key("C")) == ()
    assert not has_other_readings(symbol)


@given(chords, conventions)
def test_what_we_write_has_no_other_reading_but_those_of_its_style(chord, choice):
    written = write_chord(chord, choice)
    own = ("11", "13", "alt", "°", "o", "Δ")  # 11 and 13 are full chords; jazz and compact write triads with °

    if has_other_readings(written):
        assert written.partition("/")[0].endswith(own) or written[1:2] in ("b", "#", "♭", "♯")


def test_remarks_follow_the_counting_of_degrees():
    against_major = Conventions(degrees="major")

    assert remarks_on(read_chart("b3 b6 b7"), key("a"), against_major) == ()
    assert remarks_on(read_chart("| 6- | 1 | 4 | 5 |"), key("a"), Conventions(degrees="relative")) == ()
    assert remarks_on(read_chart("6"), key("a"), Conventions(degrees="relative")) == (SIXTH,)
    assert remarks_on(read_chart("1"), key("a"), against_major) == (
        "1 is read as a major chord; the minor chord is written 1-",
    )


@pytest.mark.parametrize("mode", ["dorian", "mixolydian", "aeolian"])
def test_the_major_dominant_is_at_home_in_minor_and_foreign_to_a_church_mode(mode):
    assert remarks_on(read_chart("5"), key("d")) == ()
    assert remarks_on(read_chart("5"), parse_key(f"D {mode}")) == (
        "5 is read as a major chord; the minor chord is written 5-",
    )
