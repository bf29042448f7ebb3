"""No page is wider than it may be; plain pages are of plain characters; nothing on a page steers a terminal."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.page_words import CHARTS, LAMENT, WIDTHS, last_answer, page

from nearhand.notation.errors import InputError
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of, wrapped
from nearhand.verbs.answers import NoteAnswer, ViewsAnswer, view_in
from nearhand.verbs.list_charts import ChartRow, ListAnswer
from nearhand.verbs.table import VERBS
from nearhand.verbs.tune import tune_from_text
from nearhand.voicing.wishes import DEFAULT_WISHES, STYLES

LINES_OF_CHARTS = [
    ("to all",), ("voice none", "to all"), ("voice drop2", "to all"), ("voice four-part", "show"),
    ("explain",), ("keys",), ("borrow",), ("instead 2",), ("lines",), ("why 2",), ("others",),
]  # fmt: skip
HELP = ["help", *(f"help {verb.name}" for verb in VERBS)]


@cache
def pages(chart, line, plain):
    """The pages of a chart at all widths: line by line."""
    answer = last_answer(f"open {chart}", *line, plain=plain)
    return {width: text_of(draw(answer, Page(width, plain))).split("\n") for width in WIDTHS}


def too_wide(lines, width):
    return [line for line in lines if len(line) > width]


@pytest.mark.parametrize("line", LINES_OF_CHARTS, ids=" ".join)
@pytest.mark.parametrize("plain", [False, True], ids=["signs", "plain"])
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_no_line_of_any_chart_in_any_key_is_wider_than_its_page(chart, plain, line):
    for width, lines in pages(chart, line, plain).items():
        assert too_wide(lines, width) == []


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_all_twelve_keys_are_on_the_page(chart):
    for lines in pages(chart, ("to all",), False).values():
        assert len([line for line in lines if "sharp" in line.split(", ")[0] or "flat" in line.split(", ")[0]]) >= 12


@pytest.mark.parametrize("line", LINES_OF_CHARTS, ids=" ".join)
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_a_plain_page_of_a_chart_is_of_keyboard_characters_alone(chart, line):
    for lines in pages(chart, line, True).values():
        assert all(text.isascii() for text in lines)


@pytest.mark.parametrize("line", HELP)
def test_help_fits_its_page_and_is_plain_where_it_must_be(line):
    for width in WIDTHS:
        assert too_wide(page(line, width=width).split("\n"), width) == []
        assert page(line, width=width, plain=True).isascii()


@pytest.mark.parametrize("width", [1, 2, 10, 20, 30])
@pytest.mark.parametrize(
    "line",
    [
        LAMENT,
        "keys | Am | F |",
        "explain | Am | F |",
        "borrow C",
        "instead | Am | E7 | 2",
        "lines | Am | E7 |",
        "why | Am | E7 | 2",
        "others | Am | E7 |",
        "show | Am | F | E7 | --voicing four-part --top 'A4 - G#4'",
        "help",
        "help show",
        "list .",
    ],
)
def test_a_page_of_hardly_any_columns_is_drawn_all_the_same(line, width):
    assert page(line, width=width)
    assert page(line, width=width, plain=True)


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("left", ["left none", "left fifth", "left tenth"])
def test_no_family_under_no_left_hand_is_wider_than_a_narrow_page(style, left):
    for chart in ("C: | C | F | G7 | C |", "C: | Dm7 G7 | Cmaj7 Am |", "C: | C/E F | G7 C | Bb Eb |"):
        for line in ("show", "lines", "others", "why 2"):
            text = page(chart, f"voice {style}", "span tenth", left, line, width=40)
            assert too_wide(text.split("\n"), 40) == []


def test_a_bar_too_wide_for_the_page_is_broken_between_its_chords():
    text = page("C: | C Dm7 Em7 Fmaj7 G7 Am7 Bm7b5 Cmaj7 | F |", width=40)

    assert too_wide(text.split("\n"), 40) == []
    assert [text.count(symbol) >= 1 for symbol in ("C ", "Dm7", "Em7", "Fmaj7", "G7", "Am7", "Bm7♭5", "Cmaj7")] == [
        True
    ] * 8


@given(st.text(st.characters(exclude_categories=["Zs", "Cc"]), max_size=300), st.integers(1, 100), st.integers(0, 20))
def test_wrapped_lines_are_no_wider_than_told_unless_one_word_is(text, width, indent):
    for (cell,) in wrapped(text, width, indent):
        assert len(cell.text) <= width or " " not in cell.text.strip()
        assert cell.text.startswith(" " * indent)


@given(st.text(max_size=200), st.integers(1, 60))
def test_wrapping_loses_no_word(text, width):
    words = "".join(character if character.isprintable() else " " for character in text).split()
    shown = " ".join(cell.text for (cell,) in wrapped(text, width)).replace("?", "").split()

    assert "".join(shown) == "".join(words).replace("?", "")


def steering(text):
    """Characters of a page that a terminal would act on."""
    return [character for character in text if not character.isprintable() and character != "\n"]


names = st.text(max_size=40) | st.sampled_from(
    ["\x1b[31mred", "\x1b]0;title\x07", "\x9b2J", "a\rb", "a\u202eb", "\ud800"]
)


@given(title=names, section=names, plain=st.booleans(), width=st.sampled_from(WIDTHS))
def test_no_title_and_no_section_name_steers_the_terminal(title, section, plain, width):
    tune = tune_from_text("C: | C | F |")._replace(title=title, tempo_bpm=90)
    bars = (tune.progression.bars[0]._replace(section=section), tune.progression.bars[1])
    tune = tune._replace(progression=tune.progression._replace(bars=bars))
    conventions = last_answer(LAMENT, plain=plain).conventions
    answer = ViewsAnswer(tune, (view_in(tune.progression, tune.key, DEFAULT_WISHES, loop=False),), conventions)

    assert steering(text_of(draw(answer, Page(width, plain)))) == []


@given(path=names, title=names, sentence=names)
def test_no_file_name_and_no_reason_in_a_list_steers_the_terminal(path, title, sentence):
    conventions = last_answer(LAMENT).conventions
    rows = (
        ChartRow(path, tune_from_text("C: C")._replace(title=title), None),
        ChartRow(path, None, InputError(sentence)),
    )

    assert steering(text_of(draw(ListAnswer(path, rows, conventions), Page(80)))) == []
    assert steering(text_of(draw(ListAnswer(path, (), conventions), Page(80)))) == []
    assert steering(text_of(draw(NoteAnswer((sentence,)), Page(80)))) == []


@given(sentence=names, text=names, hint=names, source=names)
def test_no_part_of_a_refusal_steers_the_terminal(sentence, text, hint, source):
    assert steering(str(InputError(sentence, text, 0, 1, hint=hint, source=source, line=1))) == []
