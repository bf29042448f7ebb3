"""Chart files as other programs leave them: line ends, marks, signs, numbers; and fields that look like others."""

from __future__ import annotations

import pytest
from verbs.session_words import symbols
from verbs.test_chart_file_places import refusal, with_chords

from nearhand.verbs.files import decode, tune_from_file_text
from nearhand.verbs.session import Session

TWO_SECTIONS = 'key = "C"\n[[sections]]\nchords = """\n| C | F |\n"""\n[[sections]]\nchords = """\n| G7 |\n| C |\n"""\n'


def test_line_ends_of_another_system_are_read():
    tune = tune_from_file_text(TWO_SECTIONS.replace("\n", "\r\n"), "it.toml")

    assert tune == tune_from_file_text(TWO_SECTIONS, "it.toml")
    assert symbols(Session().with_tune(tune)) == "C F G7 C"


def test_line_ends_of_another_system_do_not_move_the_place_of_a_fault():
    error = refusal(TWO_SECTIONS.replace("| C |\n", "| Hm |\n").replace("\n", "\r\n"))

    assert (error.what, error.line, error.start) == ("H is no chord root", 9, 2)


def test_a_byte_order_mark_is_no_part_of_the_chart():
    data = b"\xef\xbb\xbf" + TWO_SECTIONS.encode()

    assert tune_from_file_text(decode(data, "it.toml"), "it.toml") == tune_from_file_text(TWO_SECTIONS, "it.toml")


@pytest.mark.parametrize("sign", ["\u2028", "\u2029", "\x85"])
def test_a_line_separator_in_a_title_does_not_move_the_place_of_a_fault(sign):
    error = refusal(f'title = "Two{sign}Doors"\nkey = "C"\n[[sections]]\nchords = "| C | Hm |"\n')

    assert (error.line, error.start, error.text) == (4, 16, 'chords = "| C | Hm |"')


@pytest.mark.parametrize(
    ("text", "line", "column"),
    [
        ('[[sections]]\nchords = "h"', 2, 10),
        ('key = "y"\n[[sections]]\nchords = "C"', 1, 7),
        ('meter = "t"\n[[sections]]\nchords = "C"', 1, 9),
        ('[[sections]]\nchords = "C" # c\n[[sections]]\nchords = "c"', 4, 10),
    ],
)
def test_a_short_value_is_not_looked_for_in_the_name_of_its_field(text, line, column):
    error = refusal(text)

    assert (error.line, error.start) == (line, column)


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ('meter = "3/4"\n[[sections]]\nmeter = 3\nchords = "C"', 3),
        ('[[sections]]\nchords = "C"\n[[sections]]\nname = 5\nchords = "C"\n[[sections]]\nname = "C"\nchords = "C"', 4),
        ('[[sections]]\nmeter = "3/5"\nchords = "C"\n[[sections]]\nmeter = "3/4"\nchords = "C"', 2),
        ('[[sections]]\nchords = "C"\n[[sections]]\nmeter = "3"\nchords = "C"\n[[sections]]\nmeter = "3/4"', 4),
        ('notes = """\nname = of the tune\n"""\n[[sections]]\nname = 5\nchords = "C"', 5),
    ],
)
def test_a_field_that_stands_in_some_sections_alone_is_told_with_its_own_line(text, line):
    assert refusal(text).line == line


@pytest.mark.parametrize("field", ["tempo", "title"])
def test_a_number_of_thousands_of_digits_is_refused(field):
    for number in ("9" * 5000, "0x" + "f" * 5000):
        assert refusal(with_chords(f"{field} = {number}")).source == "it.toml"


def test_a_section_may_have_its_own_meter_and_the_next_has_the_charts_again():
    text = 'key = "C"\nmeter = "3/4"\n[[sections]]\nmeter = "6/8"\nchords = "C"\n[[sections]]\nchords = "F"\n'

    assert [str(bar.meter) for bar in tune_from_file_text(text, "it.toml").progression.bars] == ["6/8", "3/4"]


def test_a_file_without_a_key_has_it_inferred():
    tune = tune_from_file_text('[[sections]]\nchords = "| Am | Dm | E7 | Am |"', "it.toml")

    assert (str(tune.key), tune.key_source) == ("A minor", "inferred")


def test_a_file_needs_nothing_but_chords():
    tune = tune_from_file_text('[[sections]]\nchords = "C: | 1 | 4 |"', "it.toml")

    assert (tune.title, tune.tempo_bpm, tune.notes) == ("", None, "")
    assert symbols(Session().with_tune(tune)) == "C F"


def test_a_title_with_escape_signs_is_kept_as_it_is():
    tune = tune_from_file_text(with_chords('title = "red \\u001b[31m door"'), "it.toml")

    assert tune.title == "red \x1b[31m door"  # made harmless where it is drawn, not where it is read
