"""``recover``: the lines of a shell that ended early are answered once more; undo walks back through them."""

from __future__ import annotations

import os

import pytest
from verbs.session_words import FALLING_BASS, after, numerals, refusal, symbols

from nearhand.verbs import journals
from nearhand.verbs.answers import NoteAnswer, ViewsAnswer
from nearhand.verbs.kept_lines import parsed_lines, read_lines, written_lines
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

LINES = (FALLING_BASS, "to C minor", "voice drop2", "next", "undo")


MELODIES = [
    (FALLING_BASS, "melody 1' - 5 3 | 2 - [5 4] {4}5(tr) | 4 -- r | #7_:2 2 -", "to C minor", "octave up", "way down",
     "next"),
    ("melody G: 5_ | 1 2 3 1 | 3 - 2 -", "to Eb", "octave down", "sing syllables"),
    ('show "| Em | B7 |" --melody "1:2 5_ - | #7_:4"', "up", "way up", "octave up"),
    ("melody [3/4] E4 - F#4 --meter 3/4", "way up", "to all", "melody do re mi", "undo", "redo"),
    (FALLING_BASS, "to G", "melody 1 2 3", "octave up", "melody off", "undo"),
]  # fmt: skip


@pytest.fixture
def folder(desk):
    """The folder of the journals, in a home of its own."""
    path = journals.journals_folder()
    os.makedirs(path)
    return path


def leave_behind(folder, *lines, where=".", name="1", torn=""):
    """A journal as a shell that ended early leaves it."""
    path = os.path.join(folder, f"{name}{journals.SUFFIX}")
    with open(path, "w", encoding="ascii") as file:
        file.write(written_lines([str(where), *lines]) + torn)
    return path


def test_a_session_comes_back_as_it_was(folder):
    leave_behind(folder, *LINES)

    outcome = respond(Session(), "recover")

    assert symbols(outcome.session) == symbols(after(*LINES)) == "Cm Gm/Bb Fm/Ab G7"
    assert outcome.session == after(*LINES)
    assert isinstance(outcome.answer, ViewsAnswer)
    assert outcome.answer.advice == "Brought back: 5 lines; undo takes them back one at a time."


@pytest.mark.parametrize("lines", MELODIES, ids=lambda lines: lines[0])
def test_a_melody_comes_back_with_its_octaves_and_its_way(lines, folder):
    leave_behind(folder, *lines)
    before = after(*lines)

    outcome = respond(Session(), "recover")

    assert outcome.session == before
    assert before.tune.melody is not None
    assert (before.way, before.octaves) != ("nearest", 0) or "undo" in lines
    assert outcome.answer.advice.startswith(f"Brought back: {len(lines)} lines")
    assert respond(outcome.session, "melody").answer == respond(before, "melody").answer


def test_undo_walks_back_through_the_lines_and_then_to_what_was_before(folder):
    leave_behind(folder, "E minor: | i | V7 |", "to C minor")
    session = respond(after("| D | A7 |"), "recover").session

    back = [symbols(session)]
    for _ in range(2):
        session = after("undo", start=session)
        back.append(symbols(session))

    assert back == ["Cm G7", "Em B7", "D A7"]
    assert symbols(after("redo", "redo", start=session)) == "Cm G7"


def test_the_lines_and_the_journal_are_handed_on(folder):
    path = leave_behind(folder, *LINES)

    outcome = respond(Session(), "recover")

    assert (outcome.lines, outcome.settles) == (LINES, path)
    assert os.path.exists(path)  # until another journal has the lines


def test_a_paste_of_several_lines_comes_back_as_one_chart(folder):
    leave_behind(folder, "E minor: | Em | Bm/D |\n| Am/C | B7 |")

    assert numerals(respond(Session(), "recover").session) == "i v6 iv6 V7"


def test_files_are_found_where_the_shell_ran(folder, desk, tmp_path_factory):
    there = tmp_path_factory.mktemp("there")
    (there / "a.toml").write_text('title = "A"\nkey = "C"\n[[sections]]\nchords = "| C | F |"\n')
    leave_behind(folder, "open a", "to Eb", where=there)

    session = respond(Session(), "recover").session

    assert symbols(session) == "Eb Ab"
    assert os.getcwd() == str(desk)


def test_what_is_refused_now_is_told_and_the_rest_comes_back(folder):
    leave_behind(folder, FALLING_BASS, "open gone.toml", "to C minor", where="/nowhere/at/all")

    outcome = respond(Session(), "recover")

    assert symbols(outcome.session) == "Cm Gm/Bb Fm/Ab G7"
    assert outcome.answer.advice == (
        "Brought back: 2 lines; undo takes them back one at a time. "
        "Not brought back: open gone.toml (there is no file gone.toml)."
    )
    assert outcome.lines == (FALLING_BASS, "to C minor")


@pytest.mark.parametrize("line", ["save stolen", "set symbols jazz", "recover", "recover off"])
def test_no_line_that_writes_files_is_run_again(line, folder, desk):
    leave_behind(folder, FALLING_BASS, line)

    outcome = respond(Session(), "recover")

    assert f"Not brought back: {line} (it writes files)." in outcome.answer.advice
    assert list(desk.iterdir()) == []


def test_a_line_that_was_torn_is_left_out(folder):
    leave_behind(folder, FALLING_BASS, torn="to C min")

    assert symbols(respond(Session(), "recover").session) == "Em Bm/D Am/C B7"


def test_settings_alone_come_back_without_a_tune(folder):
    leave_behind(folder, "symbols jazz")

    outcome = respond(Session(), "recover")

    assert outcome.session.conventions.symbols == "jazz"
    assert outcome.answer == NoteAnswer(("Brought back: 1 line; undo takes them back one at a time.",))


def test_the_newest_comes_first(folder):
    older = leave_behind(folder, "| C |", name="2")
    leave_behind(folder, "| D |", name="1")
    os.utime(older, (1, 1))

    assert symbols(respond(Session(), "recover").session) == "D"


def test_off_lets_it_go(folder):
    leave_behind(folder, FALLING_BASS)

    assert respond(Session(), "recover off").answer == NoteAnswer(("That session is let go.",))
    assert os.listdir(folder) == []
    assert respond(Session(), "recover").answer == NoteAnswer(("There is nothing to bring back.",))


@pytest.mark.parametrize("line", ["recover", "recover off"])
def test_nothing_to_bring_back_is_a_sentence(line, desk):
    session = after(FALLING_BASS)
    outcome = respond(session, line)

    assert outcome.answer == NoteAnswer(("There is nothing to bring back.",))
    assert outcome.session is session
    assert outcome.lines == ()


def test_another_word_is_refused(folder):
    leave_behind(folder, FALLING_BASS)

    assert refusal("recover on").hint == "write recover, or recover off"


def test_a_journal_that_is_held_is_not_left_over(folder):
    path = leave_behind(folder, FALLING_BASS)
    with open(path, "rb+") as file:
        assert journals.hold(file.fileno())
        assert journals.leftovers() == ()

    assert [found.path for found in journals.leftovers()] == [path]


def test_what_is_no_journal_is_passed_over(folder):
    leave_behind(folder)  # not a line in it
    os.mkdir(os.path.join(folder, f"folder{journals.SUFFIX}"))
    with open(os.path.join(folder, f"binary{journals.SUFFIX}"), "wb") as file:
        file.write(bytes(range(256)))
    with open(os.path.join(folder, "notes.txt"), "w", encoding="ascii") as file:
        file.write("one\ntwo\n")

    assert journals.leftovers() == ()


@pytest.mark.parametrize(
    "texts", [[], [""], ["a\nb"], ["a\\nb", "\\"], ["♭♯𝄪", "\udc80", "\0\x1b\r\n\x85\u2028"], ["x" * 100_000]]
)
def test_any_texts_come_back_from_a_file(texts, desk):
    (desk / "kept").write_text(written_lines(texts), encoding="ascii")

    assert read_lines("kept") == texts
    assert parsed_lines(written_lines(texts).encode("ascii")[:-1]) == texts[:-1]
