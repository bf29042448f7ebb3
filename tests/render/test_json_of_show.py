"""The JSON of ``show``: stable names, notes in plain spelling."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.page_words import CHARTS, last_answer

from nearhand.render.json_answers import json_answer
from nearhand.verbs.answers import NoteAnswer

EXAMPLE = 'show "| Em | Bm/D | Am/C | B7 |" --key "E minor" --to "C minor" --voicing close --json'
FIELDS = [
    "bar", "beats", "symbol", "numeral", "number", "function", "root", "quality", "bass", "notes", "source", "voicing",
    "moves",
]  # fmt: skip


def document(*lines):
    return json.loads(json_answer(last_answer(*lines)))


def column(found, field):
    return [chord[field] for chord in found["views"][0]["chords"]]


def test_the_example_gives_exactly_its_document():
    # Chords, numerals and spelling: common practice, no source. Total: taxicab norm, Tymoczko, Science 313, 2006;
    # the voices move 1 0 2, 2 2 2, 1 0 1, and one enters.
    row = {"beats": 4, "quality": "minor"}
    assert document(EXAMPLE) == {
        "schema": 1,
        "key": "E minor",
        "key_source": "given",
        "views": [
            {
                "key": "C minor",
                "chords": [
                    row
                    | {"bar": 1, "symbol": "Cm", "numeral": "i", "number": "1-", "function": "tonic", "root": "C"}
                    | {"bass": "C", "notes": ["C", "Eb", "G"], "source": "diatonic", "moves": None}
                    | {"voicing": {"left": ["C3"], "right": ["Eb4", "G4", "C5"]}},
                    row
                    | {"bar": 2, "symbol": "Gm/Bb", "numeral": "v6", "number": "5-/7", "function": "dominant"}
                    | {"root": "G", "bass": "Bb", "notes": ["G", "Bb", "D"], "source": "natural minor"}
                    | {"voicing": {"left": ["Bb2"], "right": ["D4", "G4", "Bb4"]}, "moves": [-1, 0, -2]},
                    row
                    | {"bar": 3, "symbol": "Fm/Ab", "numeral": "iv6", "number": "4-/6", "function": "predominant"}
                    | {"root": "F", "bass": "Ab", "notes": ["F", "Ab", "C"], "source": "natural minor"}
                    | {"voicing": {"left": ["Ab2"], "right": ["C4", "F4", "Ab4"]}, "moves": [-2, -2, -2]},
                    row
                    | {"bar": 4, "symbol": "G7", "numeral": "V7", "number": "57", "function": "dominant"}
                    | {"root": "G", "quality": "dominant", "bass": "G", "notes": ["G", "B", "D", "F"]}
                    | {"source": "harmonic minor", "moves": [-1, None, 0, -1]}
                    | {"voicing": {"left": ["G2"], "right": ["B3", "D4", "F4", "G4"]}},
                ],
                "voicing": {"style": "close", "cost": {"total": 11, "movement": 11}},
            }
        ],
    }


def test_the_fields_come_in_one_order():
    found = document(EXAMPLE)

    assert list(found) == ["schema", "key", "key_source", "views"]
    assert list(found["views"][0]) == ["key", "chords", "voicing"]
    assert all(list(chord) == FIELDS for chord in found["views"][0]["chords"])


def test_no_chord_is_an_entry_with_its_bar_and_beats_alone():
    chords = document("C: | C | N.C. F | N.C. |")["views"][0]["chords"]

    assert [chord["symbol"] for chord in chords] == ["C", "N.C.", "F", "N.C."]
    assert sorted(chords[1]) == sorted(FIELDS)
    assert {name: value for name, value in chords[1].items() if value is not None} == {
        "bar": 2,
        "beats": 2,
        "symbol": "N.C.",
    }


def test_the_first_chord_behind_a_rest_moves_from_the_chord_before_it():
    assert column(document("C: | C | N.C. | F |"), "moves") == [None, None, [0, 1, 2]]


def test_beats_are_numbers_whole_or_with_a_fraction():
    # chords that share a bar by / signs have equal shares of it (the chart's own rule)
    found = document("C: | C F G | C / F / G / | [3/4] C F | C / / F | [6/8] C |")

    assert column(found, "beats") == [
        2, 1, 1, pytest.approx(4 / 3), pytest.approx(4 / 3), pytest.approx(4 / 3), 2, 1, 2.25, 0.75, 6,
    ]  # fmt: skip
    assert all(isinstance(beats, int) for beats in column(found, "beats")[:3])


def test_without_voicing_there_is_none_anywhere():
    found = document('show "| C | F |" --key C --voicing none')

    assert found["views"][0]["voicing"] is None
    assert column(found, "voicing") == column(found, "moves") == [None, None]


def test_a_loop_moves_into_its_first_chord():
    assert column(document('show "| C | F |" --key C --loop'), "moves") == [[0, -1, -2], [0, 1, 2]]


def test_a_key_that_was_inferred_says_so():
    assert document("| Am | Dm | E7 | Am |")["key_source"] == "inferred"


def test_every_key_has_a_view_of_its_own():
    found = document("E minor: i V7", "to all")

    assert " ".join(view["key"].split()[0] for view in found["views"]) == "E A D G C F Bb Eb G# C# F# B"
    assert column(found, "symbol") == ["Em", "B7"]


def test_degrees_against_the_major_scale_are_told_as_they_are_shown():
    assert column(document("C minor: | i | III | VII |", "degrees major"), "number") == ["1-", "b3", "b7"]


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_every_note_of_every_chart_in_every_key_is_spelled_in_plain_characters(chart):
    text = json_answer(last_answer(f"open {chart}", "to all"))

    assert text.isascii()
    assert json.loads(text)["views"][11]["chords"]


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_what_is_told_of_each_chord_belongs_together(chart):
    for view in document(f"open {chart}", "to all")["views"]:
        moved = 0
        for chord in view["chords"]:
            if chord["symbol"] == "N.C.":
                continue
            assert chord["notes"][0] == chord["root"]
            assert chord["voicing"]["left"][0].rstrip("0123456789") == chord["bass"]
            assert {name.rstrip("0123456789") for name in chord["voicing"]["right"]} <= set(chord["notes"])
            if chord["moves"]:
                assert len(chord["moves"]) == len(chord["voicing"]["right"])
                moved += sum(abs(move) for move in chord["moves"] if move is not None)
        assert view["voicing"]["cost"] == {"total": moved, "movement": moved}


@given(st.text(max_size=60))
def test_plain_sentences_are_lines(text):
    assert json.loads(json_answer(NoteAnswer((text,)))) == {"schema": 1, "lines": [text]}


def test_what_is_no_answer_has_no_document():
    with pytest.raises(TypeError, match="no JSON for str"):
        json_answer("C")
