"""What is wrong in an ABC file is told with its line and column; whatever a file holds, there is nothing worse."""

from __future__ import annotations

import pytest
from exchange.abc_words import NAME, abc, refusal

from nearhand.exchange.abc_files import read_abc
from nearhand.notation.errors import InputError

MUSIC = "notes are the letters A to G and a to g, a rest is z"
LENGTHS = "write lengths as C2, C/2 or C3/2"
ACCIDENTALS = "write ^F, =F or _B"
OCTAVES = "write c'2 and C,2"
TUPLETS = "write (3 before three notes, or (5:4:5 for five in the time of four"
BROKEN = "write C>D for a dotted note and a short one"
CHORD = "write a chord as [CEG]"
GRACES = "write grace notes as {d}c"
DECORATION = "write a decoration as !trill!"
KEY = "write a key such as K:G, K:Em, K:Bb or K:D dorian"
METER = "write for example M:4/4, M:6/8, M:C or M:none"
TUNE = "a tune begins with X:1 and its title T:, and its header ends with K:"
KEY_LINE = "end the header with the key, for example K:G"

# Music under a header, with ¶ before the first bad character; sentence; hint.
BODIES = [
    ("C D ¶? E|", "'?' has no place here", MUSIC),
    ("C D E F|\nC ¶é|", "'é' has no place here", MUSIC),
    ("C D ¶\0|", "this character has no place here", MUSIC),
    ("C D ¶#F|", "'#' has no place here", MUSIC),
    ("C D ¶Y|", "'Y' has no place here", MUSIC),
    ("C ¶2|", "this number belongs to no note", LENGTHS),
    ("¶3 C|", "this number belongs to no note", LENGTHS),
    ("C/2¶/2|", "this length cannot be read", LENGTHS),
    ("C2/3¶/|", "this length cannot be read", LENGTHS),
    ("C¶0|", "0 is no length", LENGTHS),
    ("C¶/0|", "/0 is no length", LENGTHS),
    ("[CE]¶0|", "0 is no length", LENGTHS),
    ("C¶12345|", "12345 is no length", LENGTHS),
    ("z¶/0|", "/0 is no length", LENGTHS),
    ("C D ¶E999|", "E999 lasts more than 64 whole notes", LENGTHS),
    ("C|¶Z1000|", "Z1000 is no rest: it lasts 1 to 999 bars", "write Z4 for four bars"),
    ("C|¶Z0|", "Z0 is no rest: it lasts 1 to 999 bars", "write Z4 for four bars"),
    ("C ¶^|", "an accidental stands right before a note", ACCIDENTALS),
    ("C ¶= F|", "an accidental stands right before a note", ACCIDENTALS),
    ("C ¶^^^F|", "an accidental stands right before a note", ACCIDENTALS),
    ("C2¶'|", "an octave sign stands right behind its letter", OCTAVES),
    ("¶,C|", "an octave sign stands right behind its letter", OCTAVES),
    ('C ¶"Am D|', "this text is never closed", 'close it with another "'),
    ("C ¶[CE D|", "this [ is never closed", "write a chord as [CEG], a field as [K:G]"),
    ("C ¶[K:G D|", "this [ is never closed", "write a chord as [CEG], a field as [K:G]"),
    ("C ¶{de D|", "this { is never closed", GRACES),
    ("C ¶!trill D|", "this ! is never closed", DECORATION),
    ("C ¶!no name! D|", "this ! is never closed", DECORATION),
    ("C ¶+trill D|", "this + is never closed", DECORATION),
    ("C ¶] D|", "this ] closes nothing", CHORD),
    ("C ¶} D|", "this } closes nothing", GRACES),
    ("C ¶: D|", "a : stands here without a bar line", "write |: and :| around what is repeated"),
    ("C ¶\\ D|", "a \\ stands at the end of its line", "write it last in the line, or leave it out"),
    ("C ¶[] D|", "these brackets hold no note", CHORD),
    ("C ¶[z] D|", "these brackets hold no note", CHORD),
    ("C [C¶>E] D|", "'>' has no place here", MUSIC),
    ("C [C ¶? E] D|", "'?' has no place here", MUSIC),
    ("C {d¶|} D|", "'|' has no place here", MUSIC),
    ("C {d ¶[}]} D|", "this [ is never closed", "write a chord as [CEG], a field as [K:G]"),
    ("C¶>|D|", "> stands between two notes of a bar", BROKEN),
    ("¶>C D|", "> stands between two notes of a bar", BROKEN),
    ("C|¶<D E|", "< stands between two notes of a bar", BROKEN),
    ("C>¶<D|", "< stands between two notes of a bar", BROKEN),
    ("C D¶>>", ">> stands between two notes of a bar", BROKEN),
    ("C¶>>>>D|", "a broken rhythm has 3 signs at most", "write C>D, C>>D or C>>>D"),
    ("C ¶(3", "this tuplet has 0 of its 3 notes", TUPLETS),
    ("C ¶(3DE|", "this tuplet has 2 of its 3 notes", TUPLETS),
    ("(3C¶(3DEF|", "a tuplet cannot begin within another", TUPLETS),
    ("C ¶(1D|", "(1 is no tuplet", TUPLETS),
    ("C ¶(0D|", "(0 is no tuplet", TUPLETS),
    ("C ¶(11DEF|", "(11 is no tuplet", TUPLETS),
    ("C ¶(3:99DEF|", "(3:99 is no tuplet", TUPLETS),
    ("C ¶(9999999DEF|", "(9999999 is no tuplet", TUPLETS),
    ("C ¶C,,,,,,|", "C-2 lies outside the MIDI numbers 0 to 127", "write it in a nearer octave; C is middle C"),
    ("C ¶c''''''|", "C11 lies outside the MIDI numbers 0 to 127", "write it in a nearer octave; C is middle C"),
    ("C [M:¶3/5] D|", "'3/5' is no meter", METER),
    ("C|\nM:¶waltz\nD|", "'waltz' is no meter", METER),
    ("C|\nM: ¶0/4\nD|", "'0/4' is no meter", METER),
    ("C [L:¶1/x] D|", "'1/x' is no note length", "write for example L:1/8"),
    ("C|\nL:¶0\nD|", "'0' is no note length", "write for example L:1/8"),
    ("C [K:¶H] D|", "'H' is no key", KEY),
    ("C|\nK: ¶X\nD|", "'X' is no key", KEY),
]  # fmt: skip

# Whole files, with ¶ before the first bad character; sentence; hint.
FILES = [
    ("¶C D E F|\n", "there is no tune here", TUNE),
    ("\n\n  ¶hello, this is a letter\n", "there is no tune here", TUNE),
    ("¶T:Two Doors\nM:4/4\n", "there is no tune here", TUNE),
    ("X:¶one\nK:C\nC|", "'one' is no number", "write X:1"),
    ("X:1\nT:x¶\n", "this tune has no key", KEY_LINE),
    ("X:1¶", "this tune has no key", KEY_LINE),
    ("X:1\nT:x¶\n\n\nX:2\nK:C\nC|", "this tune has no key", KEY_LINE),
    ("X:1\n¶C D E F|\n", "the notes begin before the key is named", KEY_LINE),
    ("X:1\nT:x\n  ¶C D E F|\nK:C\nC|", "this line of the header is no field",
     "a field is a letter and a colon; the notes begin below K:"),
    ("¶T:Two Doors\nX:1\nK:C\nC|", "T: stands before the number of the tune", "put the X: line above it"),
    ("M:4/4\n¶K:C\nL:1/4\nX:1\nC|", "K: stands before the number of the tune", "put the X: line above it"),
    ("X:1\nM:¶3/7\nK:C\nC|", "'3/7' is no meter", METER),
    ("X:1\nM:¶4\nK:C\nC|", "'4' is no meter", METER),
    ("X:1\nM:  ¶x/4\nK:C\nC|", "'x/4' is no meter", METER),
    ("X:1\nL:¶1/G\nK:C\nC|", "'1/G' is no note length", "write for example L:1/8"),
    ("X:1\nK:¶H\nC|", "'H' is no key", KEY),
    ("X:1\nK:C ¶klingon\nC|", "'klingon' is no mode",
     "the modes are major, minor, ionian, dorian, phrygian, lydian, mixolydian, aeolian, locrian"),
    ("X:1\nK:E¶s\nC|", "'s' is no mode",
     "the modes are major, minor, ionian, dorian, phrygian, lydian, mixolydian, aeolian, locrian"),
    ("X:1\nK:¶a\nC|", "'a' may be a major or a minor key", "write K:A for major, K:Am for minor"),
    ("X:1\nK:C ^f ¶^h\nC|", "'^h' is no accidental of a key", "write them as in K:D dorian ^c _e"),
    ("X:1\nK:C¶\n", "this tune has no notes", "write them below: C D E F |"),
    ("X:1\nK:C¶\nz4|z4|]\n", "this tune has no notes", "write them below: C D E F |"),
    ("X:1\nK:C¶\n{CDE}|\n", "this tune has no notes", "write them below: C D E F |"),
    ("X:1\nK:C¶\n\nC D E F|\n", "this tune has no notes", "write them below: C D E F |"),
    ("X:1\nK:C# major\n¶__F4|\n", "Fbb4 lies too far from C# major to be spelled", "use a name nearer to the key"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence", "hint"), [*((abc(body), *rest) for body, *rest in BODIES), *FILES])
def test_a_fault_is_told_with_its_line_and_column(text, sentence, hint):
    plain, place = text.replace("¶", ""), text.index("¶")
    line, column = plain[:place].count("\n") + 1, place - (plain.rfind("\n", 0, place) + 1)

    error = refusal(plain)

    assert (error.what, error.hint) == (sentence, hint)
    assert (error.source, error.line, error.start) == (NAME, line, column)
    assert error.text == plain.split("\n")[line - 1]
    assert error.start < error.end
    assert str(error).startswith(f"{NAME}, line {line}, column {column + 1}: {sentence}\n")


def test_the_caret_stands_under_the_first_bad_character():
    assert str(refusal(abc("C D E F|G A H? B|"))) == (
        "it.abc, line 6, column 14: '?' has no place here\n"
        "  C D E F|G A H? B|\n"
        "               ^\n"
        "notes are the letters A to G and a to g, a rest is z"
    )


@pytest.mark.parametrize("text", ["", "\n", "   \n\t\n", "% a comment\n", "\ufeff"])
def test_an_empty_file_is_refused_without_a_place(text):
    error = refusal(text.replace("\ufeff", ""))

    assert (error.what, error.hint, error.source, error.line) == ("there is no tune here", TUNE, NAME, 0)


def test_an_unread_sign_in_front_of_a_note_is_told():
    tune = read_abc(abc("kC QD E F|]"), NAME)

    assert tune.remarks == ("k and Q stand for nothing in this file, and are left out.",)


DEEP = ["[" * 100_000, "{" * 100_000, "(" * 100_000 + "C", "(3" * 10_000, "!" * 9_999, '"' * 9_999, "[K:" * 9_999,
        "C" + ">" * 100_000 + "D", "C" + "'" * 100_000, "C" + "/" * 100_000, "C" + "9" * 100_000, "|" * 100_000 + "C",
        "^" * 100_000, "C" + "-" * 100_000, "&" * 100_000 + "C", "{d}" * 10_000 + "C", '"Am"' * 10_000 + "C",
        "C D E F|\n" * 60_000, "[CE]" * 10_000, "V:x\n" * 10_000 + "C", "[V:1]C[V:2]D" * 5_000]  # fmt: skip


@pytest.mark.parametrize("body", DEEP, ids=lambda body: body[:8])
def test_beyond_all_measure_there_is_an_answer_or_a_refusal(body):
    try:
        tune = read_abc(abc(body), NAME)
    except InputError as error:
        assert error.source == NAME
    else:
        assert tune.melody.bars


def test_a_tune_beyond_all_measure_is_refused():
    error = refusal(abc("CDEF|" * 30_000))

    assert (error.what, error.line) == ("this tune is longer than 100,000 signs", 6)
