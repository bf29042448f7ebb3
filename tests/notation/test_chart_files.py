"""Chart files: what is read from them, and refusals with file, line and column."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from strategies import key

from nearhand.notation.chart import resolve
from nearhand.notation.chart_files import ChartFile, read_chart_file
from nearhand.notation.errors import InputError
from nearhand.theory.progression import Meter

FILES = sorted((Path(__file__).parents[2] / "progressions").glob("*.toml"))
WHOLE = '''title = "Two Doors"
key = "G minor"
meter = "3/4"
tempo = 90
notes = """
Leave by the other one.
"""

[[sections]]
name = "In"
chords = """
|: Gm | D7 :|
"""

[[sections]]
meter = "4/4"
chords = "| Cm | D7 ||"
'''
CHORDS = '\n[[sections]]\nchords = "C"\n'

# File, line and column of its refusal, sentence. They are ours, but for what tomllib says of bad TOML.
REFUSED = [
    ("title = 3" + CHORDS, 1, 1, "title must be text in quotes (got 3)"),
    ("tempo = 5" + CHORDS, 1, 1, "tempo must be 10 to 400 beats a minute (got 5)"),
    ("tempo = true" + CHORDS, 1, 1, "tempo must be a whole number (got True)"),
    ("tempo = 9.5" + CHORDS, 1, 1, "tempo must be a whole number (got 9.5)"),
    ('titel = "a"' + CHORDS, 1, 1, "there is no field 'titel' in a chart"),
    ('key = "H minor"' + CHORDS, 1, 8, "'H minor' is no key"),
    ('meter = "3/5"' + CHORDS, 1, 10, "'3/5' is no meter"),
    ("sections = 3", 1, 1, "sections must be [[sections]] tables (got 3)"),
    ("sections = [1]", 1, 1, "sections must be [[sections]] tables"),
    (CHORDS + '[[sections]]\nchord = "C"', 5, 1, "there is no field 'chord' in a chart"),
    (CHORDS + '[[sections]]\nchords = "|: C"', 5, 11, "this repeat is never closed"),
    (CHORDS + 'meter = "x"', 4, 10, "'x' is no meter"),
    (CHORDS + '[[sections]]\nchords = "C"\nmeter = "x"', 6, 10, "'x' is no meter"),
    ('[[sections]]\nchords = """\n| C |\n| G | | A |\n"""', 4, 7, "this bar is empty"),
    ('[[sections]]\nname = "A"', 1, 1, "section 1 has no chords"),
    (CHORDS + CHORDS + '[[sections]]\nname = "A"', 7, 1, "section 3 has no chords"),
    ("x", 1, 2, "this is no TOML: Expected '=' after a key in a key/value pair"),
]
# File, and its refusal where no line can be named.
REFUSED_AS_A_WHOLE = [
    ("", "f.toml: this chart has no chords"),
    ('title = "a"', "f.toml: this chart has no chords"),
    ("sections = []", "f.toml: this chart has no chords"),
    ("a = " + "[" * 5000, "f.toml: this file cannot be a chart"),
    ("tempo = " + "9" * 5000, "f.toml: this file cannot be a chart"),
]
HINTS = [
    ('titel = "a"' + CHORDS, "did you mean title?"),
    ('[[sections]]\nchord = "C"', "did you mean chords?"),
    ("title = 3" + CHORDS, "write text in quotes"),
    ("", 'add  [[sections]]  and under it  chords = "| C | F G7 | C |"'),
    ("xyz = 3" + CHORDS, "the fields are title, key, meter, tempo, notes, sections"),
]


def test_a_chart_file_holds_title_key_tempo_notes_and_sections():
    found = read_chart_file(WHOLE, "doors.toml")

    assert (found.title, found.key, found.tempo_bpm) == ("Two Doors", key("g"), 90)
    assert found.notes == "Leave by the other one."
    assert [section.name for section in found.sections] == ["In", ""]
    assert [bar.meter for section in found.sections for bar in section.chart.bars] == [
        Meter(3, 4), Meter(3, 4), Meter(4, 4), Meter(4, 4),
    ]  # fmt: skip


def test_only_chords_are_needed():
    found = read_chart_file(CHORDS, "bare.toml")

    assert (found.title, found.key, found.tempo_bpm, found.notes) == ("", None, None, "")
    assert len(found.sections) == 1


@pytest.mark.parametrize("path", FILES, ids=[path.stem for path in FILES])
def test_every_demo_chart_has_all_its_fields(path):
    found = read_chart_file(path.read_text(encoding="utf-8"), path.name)

    assert found.title
    assert found.key is not None
    assert found.tempo_bpm is not None
    assert found.notes
    assert all(section.name for section in found.sections)


@pytest.mark.parametrize(("text", "line", "column", "sentence"), REFUSED)
def test_a_refusal_names_file_line_and_column(text, line, column, sentence):
    with pytest.raises(InputError) as caught:
        read_chart_file(text, "f.toml")

    assert str(caught.value).splitlines()[:3] == [
        f"f.toml, line {line}, column {column}: {sentence}",
        "  " + text.splitlines()[line - 1],
        " " * (column + 1) + "^",
    ]


@pytest.mark.parametrize(("text", "sentence"), REFUSED_AS_A_WHOLE, ids=range(len(REFUSED_AS_A_WHOLE)))
def test_a_file_without_chords_is_refused_as_a_whole(text, sentence):
    with pytest.raises(InputError) as caught:
        read_chart_file(text, "f.toml")

    assert str(caught.value).splitlines()[0] == sentence
    assert len(str(caught.value).splitlines()) == 2


@pytest.mark.parametrize(("text", "hint"), HINTS)
def test_a_refusal_says_what_to_write_in_the_file(text, hint):
    with pytest.raises(InputError) as caught:
        read_chart_file(text, "f.toml")

    assert str(caught.value).splitlines()[-1] == hint


def test_an_error_found_when_the_chords_are_read_is_placed_in_the_file():
    found = read_chart_file(WHOLE.replace("| Cm | D7", "| Cm | Hm"), "doors.toml")
    section = found.sections[1]
    with pytest.raises(InputError) as caught:
        resolve(section.chart, key("g"))

    assert str(found.placed(caught.value)).splitlines()[:3] == [
        "doors.toml, line 17, column 18: H is no chord root",
        '  chords = "| Cm | Hm ||"',
        "                   ^",
    ]


@pytest.mark.parametrize("end", range(len(WHOLE) + 1))
def test_every_prefix_of_a_chart_file_is_read_or_refused(end):
    try:
        assert isinstance(read_chart_file(WHOLE[:end], "f.toml"), ChartFile)
    except InputError as error:
        assert error.source == "f.toml"


FIELDS = ["title", "key", "meter", "tempo", "chords", "sections", "[[sections]]"]
pieces = st.sampled_from([*FIELDS, *'[]="C|1. \n\x00', '"""', "3/4"])


@settings(max_examples=300)
@given(st.text() | st.lists(pieces, max_size=15).map("".join))
def test_any_text_as_a_chart_file_is_read_or_refused(text):
    try:
        assert isinstance(read_chart_file(text, "f.toml"), ChartFile)
    except InputError as error:
        assert all(character.isprintable() for line in str(error).splitlines() for character in line)
