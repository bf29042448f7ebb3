"""Long answers: where they are cut, which key does what, and that nothing is cut where nobody can press one."""

from __future__ import annotations

import os

import pytest
from hypothesis import given
from hypothesis import strategies as st
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput
from render.page_words import CHARTS, LAMENT, Pipe, Screen, last_answer, without_codes

from nearhand.render.answers import draw
from nearhand.render.output import Output, output_to
from nearhand.render.page import Page, line, text_of
from nearhand.shell import paging
from nearhand.shell.paging import GOES_ON, LEAVES, SHOWS_REST, rows_of, screens, show_outcome, show_paged
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Outcome, Session

SIZES = [(80, 24), (40, 20)]


def lines_of(text):
    return [line(part) if part else line() for part in text.split("\n")]


def texts_of(cut):
    return [text_of(screen) for screen in cut]


pages = st.lists(st.sampled_from(["", "a", "  b", "    c", "long " * 12, "|"]), max_size=80)


@given(pages, st.integers(1, 60), st.integers(1, 30))
def test_no_screen_is_longer_than_the_terminal_and_no_line_is_lost(texts, width, rows):
    lines = [line(text) if text else line() for text in texts]
    cut = screens(lines, width, rows)

    shown = [text for screen in cut for text in text_of(screen).split("\n") if text]
    assert shown == [text.rstrip() for text in texts if text]
    for screen in cut:
        taken = sum(max(1, -(-len(text_of([cells])) // width)) for cells in screen)
        assert taken <= max(rows - 1, 1) or len(screen) == 1


def test_a_page_that_fits_is_one_screen():
    lines = lines_of("\n".join("abcdefgh"))

    assert screens(lines, 80, 9) == [lines]
    assert len(screens(lines, 80, 8)) == 2
    assert screens([], 80, 24) == []


def test_a_block_that_fits_is_never_split():
    block = "one\ntwo\nthree\nfour"
    cut = screens(lines_of("\n\n".join([block] * 5)), 80, 12)

    assert texts_of(cut) == [f"{block}\n\n{block}", f"{block}\n\n{block}", block]


def test_a_block_longer_than_a_screen_is_cut_where_something_new_begins():
    text = "\n".join(f" {number}  C\n    a sentence\n    another" for number in range(1, 10))
    cut = texts_of(screens(lines_of(text), 80, 12))

    assert [part.split("\n")[0] for part in cut] == [" 1  C", " 4  C", " 7  C"]


def test_a_short_head_before_a_long_list_does_not_stand_alone():
    cut = screens(lines_of("head\n\n" + "\n".join(f"  verb {number}" for number in range(40))), 80, 24)

    assert len(cut[0]) > 12


@pytest.mark.parametrize(("columns", "rows"), SIZES)
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_no_system_of_a_chart_is_split(chart, columns, rows):
    lines = draw(last_answer(f"open {chart}", "to all"), Page(columns))
    blocks = text_of(lines).split("\n\n")
    shown = [block for screen in screens(lines, columns, rows) for block in text_of(screen).split("\n\n")]

    assert [block for block in blocks if block.count("\n") < rows - 1 and block not in shown] == []


class Asked(list):
    """Answers choices in turn, and keeps what it was asked."""

    def __init__(self, *choices):
        super().__init__()
        self.choices = list(choices)

    def __call__(self, number, count):
        self.append((number, count))
        return self.choices.pop(0)


def shown(asked, blocks=4):
    stream = Screen()
    lines = lines_of("\n\n".join(f"block {number}\nend" for number in range(1, blocks + 1)))
    show_paged(Output(stream, 80, colours=False, signs=True), lines, 4, asked)
    return stream.written


def test_going_on_shows_every_screen_and_asks_between_them():
    asked = Asked(GOES_ON, GOES_ON, GOES_ON)

    assert shown(asked) == "".join(f"block {number}\nend\n" for number in (1, 2, 3, 4))
    assert asked == [(1, 4), (2, 4), (3, 4)]


def test_leaving_shows_no_more():
    assert shown(Asked(GOES_ON, LEAVES)) == "block 1\nend\nblock 2\nend\n"


def test_the_rest_is_shown_at_once():
    asked = Asked(SHOWS_REST)

    assert shown(asked).replace("\n\n", "\n") == "".join(f"block {number}\nend\n" for number in (1, 2, 3, 4))
    assert len(asked) == 1


KEYS = [
    (" ", GOES_ON), ("\r", GOES_ON), ("\x1b[6~", GOES_ON), ("\x1b[B", GOES_ON), ("q", LEAVES), ("Q", LEAVES),
    ("\x03", LEAVES), ("\x04", LEAVES), ("t", SHOWS_REST), ("|", SHOWS_REST), ("\x1b[A", SHOWS_REST),
]  # fmt: skip


@pytest.mark.parametrize(("key", "choice"), KEYS)
def test_a_key_between_two_screens_does_what_the_line_says(key, choice):
    with create_pipe_input() as pipe:
        pipe.send_text(key)

        assert paging._ask(1, 2, pipe, DummyOutput()) == choice


def test_a_key_that_means_nothing_to_the_pager_is_typed_on_the_next_line():
    from prompt_toolkit import PromptSession

    with create_pipe_input() as pipe:
        pipe.send_text("to G\r")
        assert paging._ask(1, 2, pipe, DummyOutput()) == SHOWS_REST

        assert PromptSession(input=pipe, output=DummyOutput()).prompt("> ") == "to G"


class Sized(Screen):
    """A terminal that has a size."""

    def fileno(self):
        return 1


@pytest.fixture
def screen(monkeypatch):
    monkeypatch.setattr(os, "get_terminal_size", lambda *_: os.terminal_size((80, 24)))
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("COLUMNS", "80")
    return Sized()


def long_answer(*lines):
    session = Session()
    for text in (LAMENT, *lines):
        session = respond(session, text).session
    return respond(session, "show --to all --voicing none")


def written(stream, outcome: Outcome, keys=""):
    with create_pipe_input() as pipe:
        pipe.send_text(keys)
        show_outcome(output_to(stream, dict(os.environ)), outcome, pipe, DummyOutput())
    return without_codes(stream.written)


def test_a_long_answer_stops_at_the_screen(screen):
    text = written(screen, long_answer(), "q")

    assert text.count("\n") <= 23
    assert text.startswith("E minor") and "G minor" not in text


def test_a_long_answer_is_shown_whole_when_one_goes_on(screen):
    outcome = long_answer()
    whole = text_of(draw(outcome.answer, Page(80)))

    assert written(screen, outcome, " " * 9).split() == whole.split()


@pytest.mark.parametrize("term", ["dumb", ""])
def test_a_terminal_that_cannot_take_a_line_back_is_not_paged(screen, term, monkeypatch):
    monkeypatch.setenv("TERM", term)

    assert "B minor" in written(screen, long_answer())


def test_a_pipe_is_not_paged(screen):
    assert rows_of(output_to(Pipe(), dict(os.environ)), dict(os.environ)) == 0
    assert "B minor" in written(Pipe(), long_answer())


def test_paging_off_lets_answers_run_through(screen):
    assert "B minor" in written(screen, long_answer("paging off"))


def test_a_short_answer_asks_for_no_key(screen):
    outcome = respond(Session(), LAMENT)

    assert written(screen, outcome).split() == text_of(draw(outcome.answer, Page(80))).split()
