"""Streams as other programs leave them: closed early, in another encoding, with bytes that are no text."""

from __future__ import annotations

import json
import os
import subprocess

import pytest

LAMENT = "| Em | Bm/D | Am/C | B7 |"


def read_and_leave(program, *words, given=b"", lines=1):
    """Run it into a pipe whose reader leaves after some lines: exit status and standard error."""
    (program.folder / "given").write_bytes(given)
    reader, writer = os.pipe()
    with open(program.folder / "given", "rb") as standard_input:
        process = subprocess.Popen(
            [*program.command, *words],
            stdin=standard_input,
            stdout=writer,
            stderr=subprocess.PIPE,
            cwd=program.folder,
            env=program.environment(),
        )
    os.close(writer)
    with os.fdopen(reader, "rb") as pipe:
        for _ in range(lines):
            pipe.readline()
    _, err = process.communicate(timeout=60)
    return process.returncode, err.decode()


@pytest.mark.parametrize("lines", [0, 1])
@pytest.mark.parametrize(
    "words",
    [
        ("--version",),
        ("--help",),
        ("help", "show"),
        ("show", LAMENT),
        ("show", " ".join(["C", "F"] * 500), "--to", "all"),
        ("show", " ".join(["C", "F"] * 500), "--to", "all", "--json"),
    ],
    ids=["version", "help", "help on a verb", "one page", "many pages", "a long document"],
)
def test_a_reader_that_leaves_early_is_no_fault(program, words, lines):
    status, err = read_and_leave(program, *words, lines=lines)

    assert (status, err) == (0, "")


def test_a_reader_of_the_piped_shell_may_leave_early_too(program):
    status, err = read_and_leave(program, given=b"| C | F |\nto all\n" * 200)

    assert (status, err) == (0, "")


@pytest.mark.parametrize(
    "settings",
    [
        {"PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii"},
        {"PYTHONUTF8": "0", "PYTHONIOENCODING": "latin-1"},
        {"PYTHONUTF8": "0", "LC_ALL": "C", "PYTHONCOERCECLOCALE": "0"},
        {"PYTHONUTF8": "0", "LC_ALL": "POSIX"},
        {"PYTHONUTF8": "0", "LC_ALL": "C", "PYTHONCOERCECLOCALE": "0", "PYTHONIOENCODING": "ascii"},
    ],
    ids=" ".join,
)
def test_a_poor_locale_gets_the_page_in_characters_it_has(program, settings):
    status, out, err = program.bytes_of("show", LAMENT, "--to", "C minor", **settings)

    assert (status, err) == (0, b"")
    assert b"Gm/Bb" in out or "Gm/B♭".encode() in out
    assert b"?" not in out


def test_a_refusal_in_a_poor_locale_keeps_what_it_can(program):
    status, out, err = program.bytes_of("show", "| B♭ | Hä |", PYTHONUTF8="0", PYTHONIOENCODING="ascii")

    assert (status, out) == (2, b"")
    assert err == b"H is no chord root\n  | B? | H? |\n         ^\nwrite B for B natural and Bb for B flat\n"


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "utf-8"])
def test_json_is_utf_8_whatever_the_locale(program, encoding):
    poor = {"PYTHONUTF8": "0", "PYTHONIOENCODING": encoding}
    (program.folder / "türen.toml").write_text(
        'title = "Zwei Türen"\n[[sections]]\nchords = "| C | G7 |"', encoding="utf-8"
    )

    _, out, _ = program.bytes_of("list", ".", "--json", **poor)
    _, _, err = program.bytes_of("show", "| B♭ | Hä |", "--json", **poor)

    assert json.loads(out.decode("utf-8"))["charts"][0]["title"] == "Zwei Türen"
    assert json.loads(err.decode("utf-8"))["error"]["text"] == "| B♭ | Hä |"


@pytest.mark.parametrize("word", [b"\xff\xfe", b"| C \xff |", b"\xed\xa0\x80", b"caf\xe9.toml"])
def test_words_that_are_no_text_are_refused(program, word):
    for words in ((word,), ("show", word), ("open", word), ("show", "| C |", "--to", word), ("list", word)):
        status, out, err = program.bytes_of(*words)
        assert (status, out) == (2, b"")
        assert b"Traceback" not in err
        err.decode("utf-8")

        status, out, err = program.bytes_of(*words, "--json")
        assert (status, out) == (2, b"")
        assert "error" in json.loads(err)


@pytest.mark.parametrize("given", [b"\xff\xfe", b"| C \xff |", b"| C \0 | F |", b"\0", bytes(range(256)), b"\x1b[31m"])
def test_standard_input_that_is_no_text_is_refused(program, given):
    status, out, err = program.bytes_of("show", "-", given=given)

    assert (status, out) == (2, b"")
    assert b"Traceback" not in err
    assert b"\x1b" not in err and b"\0" not in err


def test_bytes_that_are_no_text_are_told_with_their_place(program):
    _, _, err = program.bytes_of("show", "-", given=b"| C |\n| F \xff |\n")

    assert err.decode() == (
        "standard input, line 2, column 5: this is not UTF-8 text\n  | F \ufffd\n      ^\nsave the file as UTF-8 text\n"
    )


def test_colours_stay_out_of_pipes_even_where_a_terminal_is_named(program):
    shown = program.run("show", LAMENT, TERM="xterm-256color", COLORTERM="truecolor")

    assert shown.status == 0
    assert "\x1b" not in shown.out


def test_the_width_of_a_page_is_that_of_the_environment(program):
    narrow = program.run("show", LAMENT, COLUMNS="40").out.splitlines()

    assert max(map(len, narrow)) <= 40
    assert program.run("show", LAMENT, COLUMNS="80").out == program.run("show", LAMENT).out
