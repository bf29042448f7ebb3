"""Tunes and voicings as HTML tables: well formed, escaped, readable by ear, and the same facts as the page."""

from __future__ import annotations

from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.page_words import CHARTS, page

import nearhand
from nearhand.notation.conventions import PLAIN
from nearhand.render.html_tables import tune_table, voiced_table
from nearhand.verbs.files import read_tune
from nearhand.voicing.wishes import STYLES

LAMENT = nearhand.parse_progression("| Em | Bm/D | Am/C | B7 |", nearhand.parse_key("E minor"))
SECTIONS = [read_tune(str(path)) for path in CHARTS]


def cells(table):
    """The texts of a table's rows, its head among them; the table must be well formed."""
    return [["".join(cell.itertext()) for cell in row] for row in ElementTree.fromstring(table).iter("tr")]


def test_a_tune_is_a_table_of_chords_numerals_numbers_and_notes():
    # common practice, no source: i v6 iv6 V7 of E minor
    assert cells(LAMENT._repr_html_()) == [
        ["bar", "chord", "numeral", "number", "notes"],
        ["1", "Em", "i", "1-", "E G B"],
        ["2", "Bm/D", "v6", "5-/7", "B D F♯"],
        ["3", "Am/C", "iv6", "4-/6", "A C E"],
        ["4", "B7", "V7", "57", "B D♯ F♯ A"],
    ]


def test_voicings_have_their_hands_and_their_keyboards():
    voiced = nearhand.voice(LAMENT.in_key(nearhand.parse_key("C minor")))

    assert cells(voiced._repr_html_()) == [
        ["bar", "chord", "numeral", "number", "right", "left", "moves", "keyboard      C3          C4          C5"],
        ["1", "Cm", "i", "1-", "E♭4 G4 C5", "C3", "", "▀▁▀▁▀▁L▀▁▀▁▁▀▁▀▁▀▁▁▀▁R▁▁▀R▀▁▀▁R▀"],
        ["2", "Gm/B♭", "v6", "5-/7", "D4 G4 B♭4", "B♭2 -2", "-1 = -2", "▀▁▀▁L▁▁▀▁▀▁▁▀▁▀▁▀▁▁▀R▀▁▁▀=▀▁R▁▁▀"],
        ["3", "Fm/A♭", "iv6", "4-/6", "C4 F4 A♭4", "A♭2 -2", "-2 -2 -2", "▀▁L▁▀▁▁▀▁▀▁▁▀▁▀▁▀▁R▀▁▀▁R▀▁R▁▀▁▁▀"],
        ["4", "G7", "V7", "57", "B3 D4 F4 G4", "G2 -1", "-1 + = -1", "▀L▀▁▀▁▁▀▁▀▁▁▀▁▀▁▀R▁▀R▀▁=▀R▀▁▀▁▁▀"],
    ]


def test_the_keyboards_are_those_of_the_page():
    shown = page("E minor: | Em | Bm/D | Am/C | B7 |", width=200).splitlines()
    strips = [line.split()[-1] for line in shown if "▀" in line]

    assert [row[-1] for row in cells(nearhand.voice(LAMENT)._repr_html_())[1:]] == strips


def test_a_table_can_be_heard():
    table = ElementTree.fromstring(nearhand.voice(LAMENT)._repr_html_())

    heads = [cell.get("scope") for cell in table.find("thead/tr")]
    assert set(heads) == {"col"}
    assert [row.find("th").get("scope") for row in table.iterfind("tbody/tr")] == ["row"] * 4
    assert table.find("caption").text == "E minor, close; keys: L left, R right, = held"
    assert all(strip.get("aria-hidden") == "true" for strip in table.iter("code"))
    assert len(list(table.iter("code"))) == 5


@pytest.mark.parametrize("style", STYLES)
def test_every_family_has_a_table(style):
    voiced = nearhand.voice(LAMENT, style)
    rows = cells(voiced._repr_html_())

    assert len(rows) == 5
    assert len({len(row) for row in rows}) == 1
    for row, pitches in zip(rows[1:], voiced.pitches, strict=True):
        assert sum(row[-1].count(sign) for sign in "LR=") == len(pitches)


@pytest.mark.parametrize("tune", SECTIONS, ids=lambda tune: tune.title)
def test_every_demo_chart_is_a_table_with_its_sections_and_bars(tune):
    html = ElementTree.fromstring(tune._repr_html_())
    table, *of_melody = html.iter("table")
    rows = cells(ElementTree.tostring(table, encoding="unicode"))[1:]
    sections = [bar.section for bar in tune.progression.bars if bar.section]

    assert [row[0] for row in rows if len(row) == 1] == sections
    assert [row[0] for row in rows if len(row) > 1] == [str(moment.bar) for moment in tune.progression.moments]
    assert all(tune.title in table.find("caption").text for table in html.iter("table"))
    assert len(of_melody) == (tune.melody is not None)


def test_a_melody_is_a_table_of_its_bars_in_degrees_and_notes():
    # common practice, no source: the fifth below the tonic of G is D3, its lowered seventh F
    assert cells(nearhand.parse_melody("G: 5_ | 1 2 [3 4] b7")._repr_html_()) == [
        ["bar", "degrees", "notes"],
        ["0", "5_", "D3"],
        ["1", "1 2 [3 4] ♭7", "G3 A3 [B3 C4] F4"],
    ]


def test_rests_are_shown_and_have_no_keyboard():
    tune = nearhand.parse_progression("C: | C | N.C. | G |")

    assert cells(tune._repr_html_())[2] == ["2", "N.C.", "", "", ""]
    assert cells(nearhand.voice(tune)._repr_html_())[2] == ["2", "N.C.", "", "", "", "", "", ""]
    assert cells(nearhand.parse_progression("C: | N.C. |")._repr_html_())[1:] == [["1", "N.C.", "", "", ""]]
    assert len(cells(nearhand.voice(nearhand.parse_progression("C: | N.C. |"))._repr_html_())) == 2


def test_plain_characters_are_written_where_they_are_asked_for():
    tune = nearhand.parse_progression("Bb minor: | Bbm | Gb |")

    assert cells(tune_table(tune, PLAIN))[1][1:] == ["Bbm", "i", "1-", "Bb Db F"]
    assert cells(voiced_table(nearhand.voice(tune), PLAIN))[1][4:6] == ["Db4 F4 Bb4", "Bb2"]
    assert voiced_table(nearhand.voice(tune), PLAIN).isascii()


@given(st.text(max_size=30), st.text(max_size=30))
def test_no_text_of_a_chart_becomes_html(title, section):
    progression = LAMENT.progression
    bars = (progression.bars[0]._replace(section=section), *progression.bars[1:])
    tune = LAMENT._replace(title=title, progression=progression._replace(bars=bars))

    table = tune._repr_html_()
    root = ElementTree.fromstring(table)

    assert {element.tag for element in root.iter()} <= {"table", "caption", "thead", "tbody", "tr", "th", "td"}
    assert all(character.isprintable() or character == "\n" for character in table)
    assert len(root.findall("tbody/tr")) == 4 + bool(section)


def test_signs_of_html_are_shown_as_they_are():
    tune = LAMENT._replace(title="<script>alert('x')</script> & \"y\"")

    assert "<script>" not in tune._repr_html_()
    told = ElementTree.fromstring(tune._repr_html_()).find("caption").text
    assert told == "<script>alert('x')</script> & \"y\", E minor"
