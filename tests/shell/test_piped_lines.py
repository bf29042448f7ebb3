"""The shell without a terminal: lines from a pipe, the same answers."""

from __future__ import annotations

import json

import pytest

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

TOUR = ["| Em | Bm/D | Am/C | B7 |", "to C minor", "next", "explain 2", "degrees major", "voice none", "undo", "keys"]


def answers(lines):
    """The pages that lines are answered with in one session."""
    session, pages = Session(), []
    for line in lines:
        outcome = respond(session, line)
        session = outcome.session
        pages.append(text_of(draw(outcome.answer, Page(80))))
    return pages


def test_lines_from_a_pipe_get_the_answers_of_the_shell_with_a_blank_line_between(program):
    shown = program.run(given="\n".join(TOUR) + "\n")

    assert (shown.status, shown.err) == (0, "")
    assert shown.out == "\n\n".join(answers(TOUR)) + "\n"


def test_a_line_that_asks_for_json_is_answered_by_a_document_and_the_session_goes_on(program):
    given = "melody G: 5_ | 1 2 b7 -\nmelody --json\nparts --for horn --json\nsinger --range alto --json\nnext\n"
    shown = program.run(given=given)
    melody, parts, singer = (json.loads(line) for line in shown.out.splitlines() if line.startswith("{"))

    assert (shown.status, shown.err) == (0, "")
    assert [note["note"] for note in melody["views"][0]["melody"]] == ["D3", "G3", "A3", "F4"]
    assert parts["parts"][0]["key"] == "D major"
    assert singer["singers"][0]["name"] == "alto"
    assert "C major" in shown.out.splitlines()[-5]


def test_a_refused_line_that_asks_for_json_is_told_by_a_document(program):
    shown = program.run(given="melody G: 1 x --json\nmelody G: 1 x\n")
    document, *page = shown.err.splitlines()

    assert shown.status == 2
    assert json.loads(document)["error"]["what"] == page[0] == "'x' is no note"


@pytest.mark.parametrize("end", ["\n", "\r\n"])
def test_line_ends_of_any_system_are_read(program, end):
    assert program.run(given=end.join(TOUR)).out == program.run(given="\n".join(TOUR)).out


def test_notes_and_empty_lines_are_passed_over(program):
    given = "# a tour\n\n   \n#\n" + TOUR[0] + "\n  # the end\n"

    assert program.run(given=given) == program.run(given=TOUR[0])


def test_a_sharp_alone_is_a_note_but_a_sharp_on_a_degree_is_music(program):
    shown = program.run(given="#4o7\nC: I\nC: | #4o7 | 5 |\n")

    assert shown.status == 2  # the first line knows no key
    assert "#4o7 needs a key to be read in" in shown.err
    assert "♯4°7" in shown.out


def test_quit_ends_the_reading(program):
    shown = program.run(given=f"{TOUR[0]}\nquit\nH\n")

    assert shown == program.run(given=TOUR[0])
    assert program.run(given="exit\nH\n") == (0, "", "")


def test_a_refused_line_makes_the_status_two_and_later_lines_are_answered(program):
    shown = program.run(given=f"{TOUR[0]}\nto H\nshwo\nto C minor\n")

    assert shown.status == 2
    assert shown.out == "\n\n".join(answers([TOUR[0], "to C minor"])) + "\n"
    assert [line for line in shown.err.splitlines() if "is n" in line] == [
        "'H' is no key",
        "'shwo' is neither a verb nor a chord",
    ]


def test_a_refused_line_changes_nothing_for_the_next(program):
    assert program.run(given=f"{TOUR[0]}\nto H\nshow\n").out == program.run(given=f"{TOUR[0]}\nshow\n").out


def test_nothing_in_gives_nothing_out(program):
    assert program.run(given="") == (0, "", "")


def test_bytes_that_are_no_text_are_refused_by_their_line_and_the_rest_is_read(program):
    shown = program.run(given=b"| C |\n\n| F \xff |\nC\0F\nvoice none\n")

    assert shown.status == 2
    assert shown.out == "\n\n".join(answers(["| C |", "voice none"])) + "\n"
    assert shown.err.splitlines()[0] == "line 3, column 5: this is not UTF-8 text"
    assert "\0" not in shown.err


def test_a_chart_can_be_saved_and_opened_from_a_pipe(program):
    shown = program.run(given=f"{TOUR[0]}\nto C minor\nsave lament\nopen lament.toml\n")

    assert (shown.status, shown.err) == (0, "")
    assert "Saved in C minor as lament.toml." in shown.out
    assert [path.name for path in program.folder.iterdir()] == ["lament.toml"]


def test_a_byte_order_mark_before_the_first_line_is_passed_over(program):
    assert program.run(given=f"\ufeff{TOUR[0]}\n") == program.run(given=TOUR[0])


def test_a_last_line_without_an_end_is_answered(program):
    assert program.run(given=TOUR[0]) == program.run(given=TOUR[0] + "\n")


def test_a_poor_locale_gets_plain_characters(program):
    shown = program.run(given="Eb: I bVII\n", PYTHONUTF8="0", PYTHONIOENCODING="ascii")

    assert (shown.status, shown.err) == (0, "")
    assert "Eb major: 3 flats (Bb Eb Ab)" in shown.out
    assert shown.out.isascii() and "?" not in shown.out
