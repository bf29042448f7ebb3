"""Bars side by side: their signs, their numbers, and where a line of music ends."""

from __future__ import annotations

import pytest
from render.page_words import page

SECTIONS = (
    'title = "Two Doors"\nkey = "C"\n[[sections]]\nname = "Front"\nchords = "|: C | F :|"\n'
    '[[sections]]\nname = "Back"\nchords = "| G7 | C ||"\n[[sections]]\nname = "Yard"\nchords = "| F | C |"\n'
)


def chord_rows(text):
    """The rows that hold chord symbols, without the label."""
    return [line.removeprefix("chord    ") for line in text.split("\n") if line.startswith("chord")]


def test_bar_signs_stand_where_they_were_written():
    assert chord_rows(page("C: |: C | F :| G || C |: F :|: G :|", "voice none", width=120)) == [
        "|: C     | F     :| G     || C     |: F     :|: G     :|"
    ]


def test_the_last_bar_closes_with_a_double_line():
    assert chord_rows(page("C: C F", "voice none")) == ["| C     | F     ||"]


def test_bars_are_numbered_through():
    numbers = [line for line in page("C: " + "| C | F G | C |\n" * 4, width=80).split("\n") if line.startswith("bar")]

    assert " ".join(numbers).replace("bar", "").split() == [str(number) for number in range(1, 13)]


def test_a_meter_stands_at_the_bar_where_it_changes():
    text = page("C: | C | [3/4] F | G | [4/4] C |", "voice none", width=120)

    (numbers,) = [line for line in text.split("\n") if line.startswith("bar")]
    assert numbers.removeprefix("bar").split() == ["1", "2", "(3/4)", "3", "4", "(4/4)"]


def test_a_section_begins_a_line_of_its_own_under_its_name(tmp_path):
    (tmp_path / "doors.toml").write_text(SECTIONS)
    lines = page(f"open {tmp_path}/doors.toml", width=120).split("\n")

    for name in ("Front", "Back", "Yard"):
        assert lines[lines.index(name) + 1].startswith("bar")


def test_a_repeat_closes_at_the_end_of_its_own_line_of_music(tmp_path):
    # common practice, no source: a closing sign is never the first thing on the next line
    (tmp_path / "doors.toml").write_text(SECTIONS)

    rows = chord_rows(page(f"open {tmp_path}/doors.toml", "voice none", width=120))

    assert [row[:2].strip() for row in rows] == ["|:", "|", "|"]
    assert [row.rstrip()[-2:].strip() for row in rows] == [":|", "||", "||"]


@pytest.mark.parametrize("width", [60, 80, 120])
def test_every_row_of_a_line_of_music_has_its_bar_lines_at_the_same_places(width):
    text = page("G minor: |: i v6 | iv6 V7 :| [3/4] VI N.C. | V7/V || i |", width=width)
    labels = ("chord", "numeral", "number", "right", "left", "moves")
    rows = [line for line in text.split("\n") if line.split(" ")[0] in labels and "|" in line]

    for start in range(0, len(rows), len(labels)):
        system = rows[start : start + len(labels)]
        first = {at for at, character in enumerate(system[0].rstrip("|") + "|") if character == "|"}
        assert all({at for at, character in enumerate(row) if character == "|"} <= first for row in system[1:])


def test_a_rest_is_written_and_has_no_voicing():
    text = page("C: | C | N.C. | F |", width=80)

    assert chord_rows(text) == ["| C        | N.C. | F        ||"]
    assert "\nN.C." not in text  # no keyboard for it


def test_signs_and_plain_characters_say_the_same():
    translated = str.maketrans({"♭": "b", "♯": "#", "°": "o", "▀": "'", "▁": "_"})
    lines = ("Eb minor: | i | ii°6 | V7 | bVI |", "to C, F#, Eb")  # double sharps are one sign or two characters

    assert page(*lines).translate(translated) == page(*lines, plain=True)
