"""Refusals: what cannot be read is refused in one sentence, with a caret under the first bad character."""

from __future__ import annotations

import pytest
from strategies import key

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.errors import InputError, excerpt
from nearhand.notation.keys import parse_key
from nearhand.notation.notes import parse_pitch_class
from nearhand.notation.numbers import parse_number
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR

# In each table: text, first line of the refusal, column of the caret in the text. All sentences are ours.
NOTES = [
    ("", "a note is missing", 0),
    ("H", "H is no note", 0),
    ("b", "b is no note", 0),
    ("ä", "ä is no note", 0),
    ("\x00", "this character is no note", 0),
    ("Cx", "'Cx' goes on after the note name", 1),
    ("C#b", "'C#b' goes on after the note name", 2),
    ("C####", "a note takes three sharps or flats at most", 4),
    ("B♭♭♭♭", "a note takes three sharps or flats at most", 4),
    ("C𝄪𝄪", "a note takes three sharps or flats at most", 2),
    ("B𝄫♭♭", "a note takes three sharps or flats at most", 3),
]
KEYS = [
    ("", "a key is missing", 0),
    ("   ", "a key is missing", 3),
    ("H", "'H' is no key", 0),
    ("7", "'7' is no key", 0),
    ("ß", "'ß' is no key", 0),
    ("\x00", r"'\x00' is no key", 0),
    ("X minor", "'X minor' is no key", 0),
    ("Em7", "'m7' is no mode", 1),
    ("E minr", "'minr' is no mode", 2),
    (" C ionic", "'ionic' is no mode", 3),
    ("Cm minor", "'m minor' is no mode", 1),
    ("E minor x", "'minor x' is no mode", 2),
    ("C####", "a key takes three sharps or flats at most", 4),
]
CHORDS = [
    ("", "a chord root is missing", 0),
    ("H", "H is no chord root", 0),
    ("cm", "c is no chord root", 0),
    ("\x00", "this character is no chord root", 0),
    ("C\x00", r"'\x00' is no part of a chord", 1),
    ("Cq", "'q' is no part of a chord", 1),
    ("CC", "'C' is no part of a chord", 1),
    ("C7al", "'al' is no part of a chord", 2),
    ("Cm7b", "'b' is no part of a chord", 3),
    ("C7#15", "'#15' is no part of a chord", 2),
    ("C(no2)", "'no2)' is no part of a chord", 2),
    ("C7(b9,#11", "a bracket is not closed", 2),
    ("C7[b9", "a bracket is not closed", 2),
    ("C7((b9))", "'(b9))' is no part of a chord", 3),
    ("C7(b9))", "')' is no part of a chord", 6),
    ("Csus3", "'3' is no part of a chord", 4),
    ("Cmaj7maj", "'maj' is no part of a chord", 5),
    ("C,b9", "',b9' is no part of a chord", 1),
    ("CTrist", "'Trist' is no part of a chord", 1),
    ("Cm7ø", "'ø' is no part of a chord", 3),
    ("C²⁵", "'⁵' is no part of a chord", 2),
    ("C pedal", "' pedal' is no part of a chord", 1),
    ("Ger65", "'er65' is no part of a chord", 1),
    ("C)", "')' is no part of a chord", 1),
    ("C7(b9", "a bracket is not closed", 2),
    ("Cb####", "'####' is no part of a chord", 2),
    ("C####", "a chord root takes three sharps or flats at most", 4),
    ("C/", "a bass note is missing", 2),
    ("C/H", "H is no bass note", 2),
    ("C//", "a chord root is missing", 3),
    ("C//H", "H is no chord root", 3),
    ("C///E", "/ is no chord root", 3),
    ("D//C//E", "only two chords can stand over each other", 3),
    ("D/F#//C7", "nothing may follow the bass note", 4),
    ("D//C7x", "'x' is no part of a chord", 5),
    ("Cm/M6", "M is no bass note", 3),
    ("C/e7", "nothing may follow the bass note", 3),
    ("C/E7x", "nothing may follow the bass note", 4),
    ("C/E/G", "nothing may follow the bass note", 3),
    ("C/E####", "a bass note takes three sharps or flats at most", 6),
    ("Em/3", "after a chord symbol the bass is a note, not a degree", 3),
    ("C6/9/9", "after a chord symbol the bass is a note, not a degree", 5),
]
NUMERALS = [
    ("", "a numeral is missing", 0),
    ("H", "'H' is no numeral", 0),
    ("X", "'X' is no numeral", 0),
    ("6", "'6' is no numeral", 0),
    ("/V", "'/V' is no numeral", 0),
    ("\x00", r"'\x00' is no numeral", 0),
    ("Cad7", "'Cad7' is no numeral", 0),
    ("Gerx", "'Gerx' is no numeral", 0),
    ("[no5]", "'[no5]' is no numeral", 0),
    ("bbb", "a numeral is missing", 3),
    ("#bV", "'bV' is no numeral", 1),
    ("bN", "'N' is no numeral", 1),
    ("####V", "a numeral takes three accidentals at most", 0),
    ("VIII", "'I' is no part of a chord", 3),
    ("Iv", "'v' is no part of a chord", 1),
    ("It9", "'t9' is no part of a chord", 1),
    ("V\x00", r"'\x00' is no part of a chord", 1),
    ("v(", "a bracket is not closed", 1),
    ("V11111", "'1' is no part of a chord", 5),
    ("V[no5", "a bracket is not closed", 1),
    ("V[x]", "'x]' is no part of a chord", 2),
    ("V[no5]x", "'x' is no part of a chord", 6),
    ("V]", "']' is no part of a chord", 1),
    ("V65x", "'x' is no part of a chord", 3),
    ("vii/oo7", "'o7' is no part of a chord", 5),
    ("vii°x/V", "'x' is no part of a chord", 4),
    ("V(65)", "'65)' is no part of a chord", 2),
    ("V7/o", "'/o' is no part of a chord", 2),
    ("i65)", "')' is no part of a chord", 3),
    ("V/", "a numeral is missing", 2),
    ("V//", "a numeral is missing", 3),
    ("V//X", "'X' is no numeral", 3),
    ("V///V", "'/V' is no numeral", 3),
    ("//V", "'/' is no numeral", 0),
    ("I//II//V", "only two chords can stand over each other", 5),
    ("/".join("V" * 14), "applied chords are nested too deep", 25),
    ("V/b", "a numeral is missing", 3),
    ("V7/Q", "'Q' is no numeral", 3),
    ("V/vix", "'x' is no part of a chord", 4),
    ("V7/3/V", "'3' is no numeral", 3),
    ("V/9", "'9' is no bass degree", 2),
    ("V/0", "'0' is no bass degree", 2),
    ("V6/9", "'9' is no bass degree", 3),
    ("V/77", "'77' is no bass degree", 2),
    ("I/7th", "this chord has no 7th", 2),
    ("V7/9th", "this chord has no 9th", 3),
    ("V/3rd/V", "'3rd' is no numeral", 2),
    ("i/####7", "a degree takes three accidentals at most", 2),
]
NUMBERS = [
    ("", "a scale degree is missing", 0),
    ("8", "8 is no scale degree", 0),
    ("0", "0 is no scale degree", 0),
    ("H", "H is no scale degree", 0),
    ("-1", "- is no scale degree", 0),
    ("²", "² is no scale degree", 0),
    ("\x00", "a scale degree is missing", 0),
    ("b", "a scale degree is missing", 1),
    ("b8", "8 is no scale degree", 1),
    ("####1", "a number takes three accidentals at most", 0),
    ("1x", "'x' is no part of a chord", 1),
    ("1(b9", "a bracket is not closed", 1),
    ("1/", "a bass degree is missing", 2),
    ("1/b", "a bass degree is missing", 3),
    ("1/8", "'8' is no bass degree", 2),
    ("6/9", "'9' is no bass degree", 2),
    ("1//2//3", "only two chords can stand over each other", 4),
    ("2//", "a scale degree is missing", 3),
    ("2//8", "8 is no scale degree", 3),
    ("8//1", "8 is no scale degree", 0),
    ("1⁸", "'⁸' is no part of a chord", 1),
    ("57(b9", "a bracket is not closed", 2),
    ("1/V", "'V' is no bass degree", 2),
    ("5/7x", "'7x' is no bass degree", 2),
    ("1/6/9", "'6/9' is no bass degree", 2),
]
METERS = [
    ("", "'' is no meter", 0),
    ("4", "'4' is no meter", 0),
    ("4/3", "'4/3' is no meter", 0),
    ("0/4", "'0/4' is no meter", 0),
    ("65/4", "'65/4' is no meter", 0),
    ("٣/4", "'٣/4' is no meter", 0),
    ("00649/4", "'00649/4' is no meter", 0),
    ("0001" + "0" * 5000 + "/4", "'00010000000000000000' is no meter", 0),
]
CHARTS = [
    ("", "there are no chords here", 0),
    ("   ", "there are no chords here", 3),
    ("||", "there are no chords here", 2),
    ("E minor:", "there are no chords here", 8),
    ("| |", "this bar is empty", 2),
    ("| C | | F |", "this bar is empty", 6),
    ("| C | |\n| F |", "this bar is empty", 6),
    ("C | F :", "a colon stands beside a bar line", 6),
    ("|: C", "this repeat is never closed", 0),
    ("| C |: F |", "this repeat is never closed", 4),
    ("|: C |: F :|", "this repeat is never closed", 0),
    ("|:C:|:", "this repeat is never closed", 3),
    ("C |: :| D", "this repeat holds no bar", 5),
    ("|::C:|", "'|::' is no bar line", 0),
    ("% | C", "there is no bar before this one to repeat", 0),
    ("| C % |", "% stands alone in its bar", 4),
    ("| C / % |", "% stands alone in its bar", 6),
    ("/ C", "a / lengthens the chord before it, and there is none", 0),
    ("| C | / |", "a / lengthens the chord before it, and there is none", 6),
    ("| C [3/4] F |", "a meter stands at the head of a bar", 4),
    ("| [3/4 | C", "a bracket is not closed", 2),
    ("| [3/x] C |", "'3/x' is no meter", 3),
    ("[] C", "'' is no meter", 1),
    ("| Em | Hm |", "H is no chord root", 7),
    ("| C | V/9 |", "'9' is no bass degree", 8),
    ("| C | 8 |", "8 is no scale degree", 6),
    ("bVII | b", "b is no chord root", 7),
    (";", "a chord root is missing", 0),
    ("C]", "']' is no part of a chord", 1),
    ("C\x00", "there is a character here that cannot be shown", 1),
    ("C \x1b[2J F", "there is a character here that cannot be shown", 2),
    ("C\u200bF", "there is a character here that cannot be shown", 1),
    ("E mino: C", "'mino' is no mode", 2),
    ("minor: C", "'minor' is no key", 0),
    ("#: C", "'#' is no key", 0),
    ("E: e", "e is no chord root", 3),
    ("| ###VII |", "'###VII' lies too far from the key to be spelled", 2),
]
READERS = {
    "note": (parse_pitch_class, NOTES),
    "key": (parse_key, KEYS),
    "chord": (parse_chord, CHORDS),
    "numeral in major": (lambda text: parse_numeral(text, MAJOR), NUMERALS),
    "numeral in minor": (lambda text: parse_numeral(text, MINOR), NUMERALS),
    "number in major": (lambda text: parse_number(text, MAJOR), NUMBERS),
    "number in minor": (lambda text: parse_number(text, MINOR), NUMBERS),
    "meter": (parse_meter, METERS),
    "chart": (lambda text: resolve(read_chart(text), key("C")), CHARTS),
}
ROWS = [(reader, *row) for reader, (_, rows) in READERS.items() for row in rows]

# Reader, text, last line of the refusal: what to write instead.
HINTS = [
    (parse_chord, "H", "write B for B natural and Bb for B flat"),
    (parse_chord, "C/h", "write B for B natural and Bb for B flat"),
    (parse_chord, "em", "write the letter as a capital: E"),
    (parse_chord, "Em/3", "write the note, as in Em/G; degrees follow numerals and numbers, as in i/3"),
    (parse_chord, "C7(b9", "write a closing )"),
    (parse_chord, "C7[b9", "write a closing ]"),
    (parse_chord, "D//C//E", "write two chords, as in D//C7"),
    (parse_chord, "C/E7x", "write a bass note, as in C/E, or a whole chord, as in D//C7"),
    (
        parse_chord,
        "C7x",
        "a chord goes on for example with m, 7, maj7, m7, m7b5, dim7, 6, sus4, add9, 9, 13 or 7b9",
    ),
    (parse_key, "E minr", "did you mean minor?"),
    (parse_key, "D doriann", "did you mean dorian?"),
    (parse_key, "C ionic", "did you mean ionian?"),
    (read_chart, "|: C", "write :| where the repeat ends"),
    (read_chart, "| C | | F |", "write % to repeat the bar before, or N.C."),
    (read_chart, "| [3/4 C |", "write a meter as [3/4], chords that share a bar as [5 1]"),
    (parse_meter, "4/3", "write for example 4/4, 3/4 or 7/8"),
]


@pytest.mark.parametrize(("reader", "text", "sentence", "column"), ROWS)
def test_a_refusal_says_what_is_wrong_and_points_at_it(reader, text, sentence, column):
    with pytest.raises(InputError) as caught:
        READERS[reader][0](text)
    lines = str(caught.value).splitlines()

    assert lines[0] == sentence
    assert caught.value.start == column
    assert column <= caught.value.end <= len(text) + 1
    if text:
        assert lines[2].rstrip("^").strip() == ""
        assert lines[2].index("^") == column + 2
        assert all(character.isprintable() for line in lines for character in line)


@pytest.mark.parametrize("reader", READERS)
def test_an_empty_text_is_refused_without_a_caret(reader):
    with pytest.raises(InputError) as caught:
        READERS[reader][0]("")

    assert len(str(caught.value).splitlines()) == 2
    assert caught.value.wanted
    assert caught.value.hint


@pytest.mark.parametrize(("read", "text", "hint"), HINTS)
def test_a_refusal_says_what_to_write_instead(read, text, hint):
    with pytest.raises(InputError) as caught:
        read(text)

    assert str(caught.value).splitlines()[-1] == hint


def test_a_refusal_from_a_file_names_file_line_and_column():
    error = InputError("H is no chord root", "| Em | Hm |", 7, 8, source="tune.toml", line=12)

    assert str(error).splitlines() == [
        "tune.toml, line 12, column 8: H is no chord root",
        "  | Em | Hm |",
        "         ^",
    ]


def test_a_refusal_within_a_longer_text_keeps_its_words_and_moves_its_place():
    inner = InputError("no such chord", "Hm", 0, 1, wanted="a chord", hint="write B")
    outer = inner.within("| Em | Hm |", 7)

    assert (outer.what, outer.wanted, outer.hint) == (inner.what, inner.wanted, inner.hint)
    assert (outer.text, outer.start, outer.end) == ("| Em | Hm |", 7, 8)


@pytest.mark.parametrize("length", [0, 1, 29, 30, 31, 59, 60, 61, 1000])
@pytest.mark.parametrize("behind", [0, 5, 60, 1000])
def test_a_long_line_is_cut_around_its_place(length, behind):
    text = "x" * length + "H" + "y" * behind
    shown, column = excerpt(text, length)

    assert shown[column] == "H"
    assert len(shown) <= 60 + 2 * len("...")
    kept = shown.removeprefix("...").removesuffix("...")
    assert len(kept) == min(60, len(text))
    assert kept in text
