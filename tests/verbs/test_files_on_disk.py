"""Files that are missing, no files, no text, or too much."""

from __future__ import annotations

import os

import pytest
from verbs.session_words import FALLING_BASS, after, picture, refusal, symbols

from nearhand.notation.errors import InputError
from nearhand.verbs.files import LARGEST_FILE, decode, read_text, read_tune

HINT = "list shows the charts of a folder"
CHART = b'key = "C"\n[[sections]]\nchords = "| C | F |"\n'


@pytest.mark.parametrize("verb", ["open", "show", "keys", "explain"])
def test_a_missing_file_is_named(verb, desk):
    assert picture(refusal(f"{verb} none.toml")) == ("there is no file none.toml", "^none.toml", HINT)


@pytest.mark.parametrize("verb", ["open", "show"])
def test_a_folder_is_no_chart(verb, desk):
    (desk / "attic.toml").mkdir()

    assert picture(refusal(f"{verb} attic.toml")) == (
        "attic.toml is a folder, not a chart",
        "^attic.toml",
        "list attic.toml shows its charts",
    )


def test_an_empty_file_has_no_chords(desk):
    (desk / "it.toml").write_bytes(b"")

    assert refusal("open it.toml").what == "this chart has no chords"


# Bytes, line and column from 1 of the first byte that is no UTF-8 (RFC 3629).
NOT_UTF_8 = [
    (b"\xff", 1, 1),
    (b"title = \"Caf\xe9\"\n", 1, 13),
    (b"\n\nkey\xc3", 3, 4),
    ("name = \"é\"\n".encode() + b"\xe9", 2, 1),
    ("é".encode() + b"\xe9", 1, 2),
    (b"\x89PNG\r\n\x1a\n\x00\x00", 1, 1),
    (b"abc\r\n\xc0\xaf", 2, 1),
    ("| C |".encode("utf-16"), 1, 1),
]  # fmt: skip


@pytest.mark.parametrize(("data", "line", "column"), NOT_UTF_8)
def test_bytes_that_are_no_utf_8_are_told_with_line_and_column(data, line, column, desk):
    (desk / "it.toml").write_bytes(data)

    error = refusal("open it.toml")

    assert error.what == "this is not UTF-8 text"
    assert (error.source, error.line, error.start + 1) == ("it.toml", line, column)
    assert error.hint == "save the file as UTF-8 text"


@pytest.mark.parametrize("data", [bytes(range(1, 128)) * 20, b"\0" * 500, b"PK\x03\x04" + b"\0" * 30])
def test_binary_files_that_happen_to_be_text_are_refused_too(data, desk):
    (desk / "it.toml").write_bytes(data)

    assert "this is no TOML" in str(refusal("open it.toml"))


@pytest.mark.parametrize("data", [CHART, b"\xef\xbb\xbf" + CHART, CHART.replace(b"\n", b"\r\n")])
def test_a_chart_is_read_with_a_byte_order_mark_and_any_line_ends(data, desk):
    (desk / "it.toml").write_bytes(data)

    assert symbols(after("open it.toml")) == "C F"


def test_a_file_too_large_for_a_chart_is_refused(desk):
    with open("it.toml", "wb") as file:
        file.truncate(LARGEST_FILE + 1)

    assert picture(refusal("open it.toml")) == (
        "it.toml is too large for a chart",
        "^it.toml",
        "a chart holds at most 5 MB",
    )


def test_a_file_of_the_largest_size_is_read(desk):
    (desk / "it.toml").write_bytes(CHART + b"#" * (LARGEST_FILE - len(CHART)))

    assert symbols(after("open it.toml")) == "C F"


@pytest.mark.parametrize("path", ["a\0b.toml", "\ud800.toml", "x" * 300 + ".toml", "it.toml/it.toml"])
def test_a_path_that_no_file_can_have_is_refused(path, desk):
    (desk / "it.toml").write_bytes(CHART)

    with pytest.raises(InputError) as caught:
        read_text(path)

    assert caught.value.hint == HINT


def test_a_file_that_cannot_be_read_says_why(desk, monkeypatch):
    (desk / "it.toml").write_bytes(CHART)

    def refuse(*_):
        raise PermissionError(13, "Permission denied")

    monkeypatch.setattr("builtins.open", refuse)
    with pytest.raises(InputError) as caught:
        read_text("it.toml")

    assert caught.value.what == "it.toml cannot be read: Permission denied"


@pytest.mark.parametrize("target", ["it.toml", "elsewhere.toml"])
def test_a_link_is_followed_and_a_dangling_one_is_a_missing_file(target, desk):
    (desk / "it.toml").write_bytes(CHART)
    os.symlink(target, "link.toml")

    if target == "it.toml":
        assert read_tune("link.toml") == read_tune("it.toml")
    else:
        assert refusal("open link.toml").what == "there is no file link.toml"


def test_a_text_file_with_plain_chords_may_be_shown(desk):
    (desk / "chords.txt").write_text('[[sections]]\nchords = "| Am | E7 |"')

    assert symbols(after("show chords.txt")) == "Am E7"


def test_a_chart_is_not_taken_for_a_file_because_a_file_has_its_name(desk):
    (desk / "Am").write_bytes(b"\xff")

    assert symbols(after("Am")) == "Am"


def test_decoding_keeps_every_sign_of_good_text():
    assert decode("| B♭ | F♯ |\r\n".encode(), "it.toml") == "| B♭ | F♯ |\r\n"


def test_a_refused_file_leaves_the_tune(desk):
    session = after(FALLING_BASS)
    (desk / "it.toml").write_bytes(b"\xff")
    refusal("open it.toml", session)

    assert symbols(session) == "Em Bm/D Am/C B7"


def test_a_file_that_begins_with_chords_is_read_as_chords(desk):
    (desk / "plain.txt").write_text("\n| C | Fm |\n| G7 | C |\n", encoding="utf-8")
    (desk / "numerals.txt").write_text("i iv V7", encoding="utf-8")

    assert symbols(after("show plain.txt")) == "C Fm G7 C"
    assert symbols(after("show plain.txt --key F")) == "C Fm G7 C"
    assert symbols(after("show numerals.txt --key Am")) == "Am Dm E7"


@pytest.mark.parametrize(
    ("text", "line", "column", "what"),
    [
        ("| C | F |\n| Hm | C |\n", 2, 3, "H is no chord root"),
        ("| C |\n\n  | F | Q |", 3, 9, "Q is no chord root"),
        ("i iv V", 1, 1, "i needs a key to be read in"),
    ],
)
def test_its_faults_are_placed_by_line_and_column(text, line, column, what, desk):
    (desk / "plain.txt").write_text(text, encoding="utf-8")
    error = refusal("show plain.txt")

    assert (error.what, error.line, error.start + 1) == (what, line, column)
    assert str(error).startswith(f"plain.txt, line {line}, column {column}: ")
