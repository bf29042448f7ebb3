"""ABC files under the verbs: opened and shown like charts, a tune of many by its number, and never written."""

from __future__ import annotations

import json
import os

import pytest
from verbs.session_words import after, answer_to, refusal, symbols

from nearhand.notation.keys import parse_key
from nearhand.render.json_answers import json_answer
from nearhand.verbs.files import LARGEST_FILE, read_tune, with_suffix
from nearhand.verbs.recent import remember
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

BOOK = """X:1
T:Two Doors
M:6/8
L:1/8
Q:1/8=180
K:G
D|"G"G2B "D7"A2F|"G"{AB}G3- G2 D|"Am"E2A "D7"(3FGA F|"G"~G3- G2|]

X:2
T:The Turning Wheel
M:3/4
L:1/4
K:Ador
A2 c|B A G|A3|]
"""


@pytest.fixture
def book(desk):
    """A book of two tunes, one with chords, in an empty folder."""
    (desk / "jigs.abc").write_text(BOOK, encoding="utf-8")
    return desk / "jigs.abc"


def heard(tune):
    """The notes of a tune as they sound."""
    return [(str(note.pitch), note.bar, note.onset, note.beats, note.ornament) for note in tune.melody.sounding()]


def test_the_first_tune_of_a_file_is_opened_with_its_chords_and_its_melody(book):
    session = after("open jigs.abc")

    assert (session.tune.title, str(session.tune.key), session.tune.tempo_bpm) == ("Two Doors", "G major", 180)
    assert symbols(session) == "G D7 G Am D7 G"
    assert [name for name, *_ in heard(session.tune)][:5] == ["D4", "G4", "B4", "A4", "F#4"]
    assert session.tune.remarks[0].startswith("The file holds 2 tunes; this is the first.")


@pytest.mark.parametrize("line", ["open jigs.abc 2", "open jigs.abc  2", "show jigs.abc 2", "show 'jigs.abc 2'"])
def test_another_tune_is_opened_by_its_number(line, book):
    tune = after(line).tune

    assert (tune.title, str(tune.key), tune.remarks) == ("The Turning Wheel", "A dorian", ())
    assert tune.progression.bars == ()
    assert tune.bar_count == 3


@pytest.mark.parametrize("verb", ["show", "open", "lines", "explain", "keys", "melody", "parts", "difficulty"])
def test_every_verb_that_takes_a_chart_takes_an_abc_file(verb, book):
    answer_to(f"{verb} jigs.abc")


def test_a_singers_key_is_found_for_an_abc_file(book):
    answer_to('singer jigs.abc --range "A3 D5"')


def test_a_tune_moves_to_other_keys_with_its_melody(book):
    session = after("open jigs.abc", "to A")

    assert symbols(session) == "A E7 A Bm E7 A"


def test_a_key_that_is_given_counts_the_same_notes_anew(book):
    tune = read_tune("jigs.abc", parse_key("D"))

    assert str(tune.key) == "D major"
    assert tune.symbols()[:2] == ("G", "D7")
    assert tune.numerals()[0] == "IV"
    assert heard(tune) == heard(read_tune("jigs.abc"))


def test_an_abc_file_may_come_by_standard_input(book):
    assert answer_to(f"show '{BOOK}'").tune.title == "Two Doors"


@pytest.mark.parametrize("number", [1, 2])
def test_what_is_saved_is_a_chart_of_ours_that_reads_back(number, book):
    session = after(f"open jigs.abc {number}", "save kept")
    tune, again = session.tune, read_tune("kept.toml")

    assert sorted(os.listdir()) == ["jigs.abc", "kept.toml"]
    assert again.progression.bars == tune.progression.bars
    assert heard(again) == heard(tune)
    assert (again.key, again.title, again.tempo_bpm) == (tune.key, tune.title, tune.tempo_bpm)


@pytest.mark.parametrize("line", ["save jigs.abc", "save jigs.abc --over", "save new.abc", "save jigs.ABC"])
def test_an_abc_file_is_never_written(line, book):
    before = book.read_bytes()
    error = refusal(line, after("open jigs.abc"))

    assert error.what == "ABC files are read, not written"
    assert error.hint in ("write  save jigs.toml", "write  save new.toml")
    assert (book.read_bytes(), os.listdir()) == (before, ["jigs.abc"])


def test_the_suffix_may_be_left_out_where_there_is_no_chart_of_that_name(book):
    assert with_suffix("jigs") == "jigs.abc"
    assert after("open jigs").tune.title == "Two Doors"

    after("open jigs", "save jigs")
    assert with_suffix("jigs") == "jigs.toml"
    assert sorted(os.listdir()) == ["jigs.abc", "jigs.toml"]


def test_a_folder_lists_abc_files_with_their_bars(book):
    (row,) = answer_to("list").rows

    assert (os.path.basename(row.path), row.tune.title, row.tune.bar_count) == ("jigs.abc", "Two Doors", 4)


def test_an_abc_file_that_cannot_be_read_is_listed_with_the_reason(book):
    book.write_text("X:1\nK:G\nG ? A|", encoding="utf-8")

    (row,) = answer_to("list").rows
    assert str(row.error) == (
        "./jigs.abc, line 3, column 3: '?' has no place here\n"
        "  G ? A|\n"
        "    ^\n"
        "notes are the letters A to G and a to g, a rest is z"
    )


@pytest.mark.parametrize(
    ("content", "sentence"),
    [
        (b"", "there is no tune here"),
        (b"X:1\nK:G\nGAB\xe9|", "this is not UTF-8 text"),
        (b"\x00\x01\x02\x03", "there is no tune here"),
        (bytes(range(256)), "this is not UTF-8 text"),
        (b"C" * (LARGEST_FILE + 1), "jigs.abc is too large for a chart"),
        (b"X:1\nK:G\n", "this tune has no notes"),
    ],
)
def test_what_is_no_abc_file_is_refused(content, sentence, book):
    book.write_bytes(content)

    assert refusal("open jigs.abc").what == sentence


def test_a_file_or_a_number_that_is_not_there_is_refused(book):
    assert refusal("open reels.abc").what == "there is no file reels.abc"
    assert refusal("open reels.abc 2").what == "there is no file reels.abc"
    assert str(refusal("open jigs.abc 3")) == ("jigs.abc: there is no tune 3 here\nthe tunes here are numbered 1, 2")


def test_a_byte_order_mark_and_a_suffix_in_capitals_are_nothing_special(desk):
    (desk / "JIGS.ABC").write_bytes(b"\xef\xbb\xbf" + BOOK.encode())

    assert after("open JIGS.ABC 2").tune.title == "The Turning Wheel"


def test_an_abc_file_is_one_of_the_recent_charts(book):
    remember(respond(Session(), "open jigs.abc 2").chart)
    (row,) = answer_to("recent").rows
    assert (row.tune.title, os.path.basename(row.path)) == ("The Turning Wheel", "jigs.abc 2")

    book.write_text("X:1\n", encoding="utf-8")
    (row,) = answer_to("recent").rows
    assert row.error.what == "there is no tune 2 here"


def test_documents_count_the_bars_of_a_melody(book):
    book.write_text(BOOK[BOOK.index("X:2") :], encoding="utf-8")
    (row,) = json.loads(json_answer(answer_to("list")))["charts"]
    assert row["bars"] == 3
