"""The JSON of ``keys``, ``explain`` and ``list``, and of a refusal."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from render.page_words import last_answer

from nearhand.notation.errors import InputError
from nearhand.render.json_answers import json_answer, json_error
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

CHORD_FIELDS = {
    "chord", "bar", "beats", "symbol", "numeral", "number", "function", "root", "quality", "bass", "notes", "source",
    "altered_degrees", "sentences",
}  # fmt: skip


def document(*lines):
    return json.loads(json_answer(last_answer(*lines)))


def test_keys_are_ranked_with_a_probability_and_reasons():
    found = document("keys | Am | Dm | E7 | Am |")

    assert list(found) == ["schema", "keys", "regions"]
    assert found["keys"][0]["key"] == "A minor"  # its dominant leads to its tonic (common practice, no source)
    assert found["keys"][0]["reasons"] == [
        "all chords belong to it", "its signature, no sharps or flats, fits every note but G#",
        "G#, its leading tone, sounds once", "it cadences iv-V7-i once", "it opens and closes on its tonic",
    ]  # fmt: skip
    shares = [fit["probability"] for fit in found["keys"]]
    assert shares == sorted(shares, reverse=True)
    assert 0 < sum(shares) <= 1
    assert all(set(fit) == {"key", "probability", "reasons"} for fit in found["keys"])
    (region,) = found["regions"]
    assert region == {
        "key": "A minor", "first_bar": 1, "last_bar": 4, "first_chord": 1, "last_chord": 4, "pivot": None,
    }  # fmt: skip


def test_a_key_that_turns_is_told_with_its_pivot():
    # Am is vi in C and ii in G (common practice, no source); chords are counted without rests, bars with them
    found = document("keys | C F | N.C. | G7 C | Am D7 | G | G |")
    first, second = found["regions"]

    assert [region["key"] for region in found["regions"]] == ["C major", "G major"]
    assert (first["first_bar"], first["last_bar"], first["first_chord"], first["last_chord"]) == (1, 3, 1, 4)
    assert (second["first_bar"], second["last_bar"], second["first_chord"], second["last_chord"]) == (4, 6, 5, 8)
    assert first["pivot"] is None
    assert second["pivot"] == {
        "chord": 5, "bar": 4, "symbol": "Am", "numeral_before": "vi", "numeral_after": "ii",
    }  # fmt: skip


def test_a_melody_is_given_back_as_it_was_written():
    alone, both = document('keys --melody "E4 F#4, Bb"'), document('keys "| Em | B7 |" --melody "E D♯5"')

    assert list(alone) == list(both) == ["schema", "keys", "regions", "melody"]
    assert (alone["melody"], both["melody"]) == (["E4", "F#4", "Bb"], ["E", "D#5"])
    assert (alone["regions"], len(both["regions"])) == ([], 1)
    assert any("melody" in reason for reason in both["keys"][0]["reasons"])


def test_an_explanation_tells_what_a_chord_is_and_does():
    # E7 in C is the dominant of A minor; its G# is the raised fifth degree (common practice, no source)
    found = document('explain "| C | E7 | Am |" 2 --key C')

    assert (found["key"], found["key_source"]) == ("C major", "given")
    (chord,) = found["chords"]
    assert set(chord) == CHORD_FIELDS
    assert (chord["chord"], chord["bar"], chord["symbol"], chord["numeral"]) == (2, 2, "E7", "V7/vi")
    assert chord["notes"] == ["E", "G#", "B", "D"]
    assert chord["altered_degrees"] == [{"degree": "#5", "note": "G#"}]
    assert chord["sentences"][0] == "It is the dominant of vi, an applied chord: G# leads to A."


def test_explanations_leave_rests_out_and_number_the_chords():
    found = document("explain | C | N.C. | F G |")

    assert [(chord["chord"], chord["bar"]) for chord in found["chords"]] == [(1, 1), (2, 3), (3, 3)]


def test_explanations_are_in_plain_characters():
    assert json_answer(last_answer("explain C: | bVI | viio7 | bII6 | i |")).isascii()


def test_a_list_names_each_chart_and_the_fault_of_a_broken_one(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.toml").write_text(
        'title = "Zwei Türen"\n[[sections]]\nchords = "| Bb | F7 | Bb |"', encoding="utf-8"
    )
    (tmp_path / "b.toml").write_text("[[")

    found = document("list .")

    assert found["folder"] == "."
    assert found["charts"][0] == {"path": "./a.toml", "title": "Zwei Türen", "key": "Bb major", "bars": 3}
    assert set(found["charts"][1]) == {"path", "error"}
    assert found["charts"][1]["error"].startswith("this is no TOML: ")


def test_an_empty_folder_is_an_empty_list(tmp_path):
    assert document(f"list {tmp_path}") == {"schema": 1, "folder": str(tmp_path), "charts": []}


def refused(line):
    with pytest.raises(InputError) as caught:
        respond(Session(), line)
    return json.loads(json_error(caught.value))


def test_a_refusal_tells_its_text_its_place_and_what_was_wanted():
    assert refused("| Em | Hm |") == {
        "error": {
            "text": "| Em | Hm |",
            "start": 7,
            "end": 8,
            "wanted": "a chord root",
            "hint": "write B for B natural and Bb for B flat",
            "what": "H is no chord root",
        }
    }


def test_a_refusal_in_a_file_tells_the_file_and_the_line(tmp_path):
    (tmp_path / "a.toml").write_text('key = "C"\n[[sections]]\nchords = "| C | H |"')
    path = f"{tmp_path}/a.toml"

    error = refused(f"open {path}")["error"]

    assert (error["source"], error["line"], error["text"]) == (path, 3, 'chords = "| C | H |"')
    assert error["text"][error["start"] : error["end"]] == "H"


@given(st.text(), st.text(), st.text(), st.integers(0, 50))
def test_any_refusal_is_a_document(sentence, text, hint, start):
    error = json.loads(json_error(InputError(sentence, text, start, hint=hint, source="x", line=1)))["error"]

    assert (error["what"], error["text"], error["start"], error["end"]) == (sentence, text, start, len(text))
