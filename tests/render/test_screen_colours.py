"""Colours on a terminal: one table, and never the only thing that tells something."""

from __future__ import annotations

import pytest
from render.page_words import CHARTS, LAMENT, Screen, last_answer, without_codes
from rich.color import ColorType
from rich.style import Style

from nearhand.render.answers import draw
from nearhand.render.page import Cell, Page, line, text_of
from nearhand.render.screen import STYLES, print_lines
from nearhand.verbs.table import VERBS

LINES = [
    [LAMENT], [LAMENT, "to all"], [LAMENT, "voice none"], ["keys | Am | F |"], ["explain | Am | F | E7 |"], ["help"],
    *([f"help {verb.name}"] for verb in VERBS), [f"list {CHARTS[0].parent}"], [f"open {CHARTS[0]}"],
    ["A minor: 1 | 6 |"],
]  # fmt: skip


@pytest.fixture(autouse=True)
def _colourful(monkeypatch):
    for name in ("NO_COLOR", "FORCE_COLOR", "COLORTERM", "COLUMNS", "TTY_COMPATIBLE", "TTY_INTERACTIVE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")


def on_screen(lines, width):
    screen = Screen()
    print_lines(lines, screen, width)
    return screen.written


@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize("lines", LINES, ids=" ; ".join)
def test_without_its_codes_a_screen_is_the_text(lines, width):
    drawn = draw(last_answer(*lines), Page(width))

    written = on_screen(drawn, width)

    assert "\x1b[" in written
    assert [text.rstrip() for text in without_codes(written).split("\n")] == [*text_of(drawn).split("\n"), ""]


@pytest.mark.parametrize("lines", LINES, ids=" ; ".join)
def test_every_role_on_a_page_is_in_the_table(lines):
    roles = {cell.role for cells in draw(last_answer(*lines), Page(80)) for cell in cells} - {""}

    assert roles <= {*STYLES, "total", "notes"}  # these two are plain text by choice


def test_every_style_is_one_that_the_colour_library_knows():
    assert all(Style.parse(style) for style in STYLES.values())


def test_every_style_is_one_of_the_sixteen_colours_of_any_terminal(monkeypatch):
    colours = [style.color for style in map(Style.parse, STYLES.values()) if style.color is not None]
    assert colours
    assert all(colour.type is ColorType.STANDARD and 0 <= colour.number < 16 for colour in colours)

    monkeypatch.setenv("TERM", "xterm-16color")
    few = on_screen(draw(last_answer(LAMENT), Page(80)), 80)
    monkeypatch.setenv("TERM", "xterm-256color")
    assert on_screen(draw(last_answer(LAMENT), Page(80)), 80) == few


def test_square_brackets_and_colons_are_no_markup():
    text = "[red] not red [/red] :smile: http://example.org 'x' 42"

    assert without_codes(on_screen([line(Cell(text, "title"))], 80)) == text + "\n"
    assert on_screen([line(text)], 80) == text + "\n"


def test_a_line_too_wide_for_the_screen_is_not_broken():
    assert without_codes(on_screen([line(Cell("x" * 100, "chord"))], 40)) == "x" * 100 + "\n"


def test_marks_on_the_keyboard_differ_by_letter_as_well_as_colour():
    drawn = draw(last_answer(LAMENT), Page(80))
    letters = {
        (cell.role, cell.text)
        for cells in drawn
        for cell in cells
        if cell.role in ("left", "right", "held") and len(cell.text) == 1
    }

    assert letters == {("left", "L"), ("right", "R"), ("held", "=")}
