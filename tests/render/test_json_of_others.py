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
    "chord", "bar", "beats", "symbol", "numeral", "number", "function", "root", "quality", "bass", "notes",
    "source", "forms_of_minor", "lenders", "applied_to", "altered_degrees", "tendency_tones", "own_chord", "sentences",
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
    alone, both = document('keys --melody "E4 F#4, Bb"'), document('keys "| Em | B7 |" --melody "E D♯"')

    fields = ["schema", "keys", "regions", "melody", "signatures", "elimination", "mode", "relative", "profile"]
    assert list(alone) == list(both) == fields
    assert (alone["melody"], both["melody"]) == (["E4", "F#4", "Bb4"], ["E", "D#"])
    assert (alone["regions"], len(both["regions"])) == ([], 1)
    assert any("melody" in reason for reason in both["keys"][0]["reasons"])


def test_a_melody_tells_its_signature_and_its_relative():
    # D is the raised seventh's goal, Bb the one flat (Open Music Theory, key signatures and minor scales)
    found = document('keys --melody "D4 E F G A Bb C# D" --profile temperley')

    assert found["signatures"] == [{"accidentals": -1, "name": "one flat", "outside": ["C#"]}]
    assert found["elimination"] == "Bb, but no Eb: one flat. C# is the raised seventh of D minor."
    assert found["mode"] is None
    assert found["relative"]["key"] == "F major"
    assert found["relative"]["sentence"].startswith("D minor rather than F major: it begins and ends on D, ")
    assert 0 <= found["relative"]["probability"] < found["keys"][0]["probability"]
    assert found["profile"] == "temperley"


def test_an_explanation_tells_what_a_chord_is_and_does():
    # E7 in C is the dominant of A minor; its G# is the raised fifth degree (common practice, no source)
    found = document('explain "| C | E7 | Am |" 2 --key C')

    assert (found["key"], found["key_source"]) == ("C major", "given")
    (chord,) = found["chords"]
    assert set(chord) == CHORD_FIELDS
    assert (chord["chord"], chord["bar"], chord["symbol"], chord["numeral"]) == (2, 2, "E7", "V7/vi")
    assert chord["notes"] == ["E", "G#", "B", "D"]
    assert chord["altered_degrees"] == [{"degree": "#5", "note": "G#"}]
    assert chord["applied_to"] == "A"
    assert (chord["forms_of_minor"], chord["lenders"]) == ([], [])
    assert chord["tendency_tones"] == [
        {"note": "G#", "kind": "applied leading tone", "expected": ["A"], "went": "A", "how": "rises"},
        {"note": "D", "kind": "chordal seventh", "expected": ["C"], "went": "C", "how": "falls"},
    ]  # R. Hutchinson, Music Theory for the 21st-Century Classroom, Tonicization
    assert chord["own_chord"] == {"symbol": "Em7", "differs": [{"note": "G#", "for": "G"}]}
    assert chord["sentences"] == [
        "It is the dominant of vi, an applied chord: G# leads to A.",
        "It pulls towards vi: a dominant of that degree.",
        "G#, the applied leading tone, rises to A; D, the chordal seventh, falls to C.",
        "The key itself has Em7 (iii7) in its place: this chord has G# for G.",
        "It stands between C (I) and Am (vi).",
    ]


def test_an_explanation_names_all_lenders_and_every_form_of_minor():
    # Fm in C: natural and harmonic minor and Phrygian hold it; V7 in minor: Hutchinson, "Diatonic chords in minor"
    (borrowed,) = document('explain "| C | Fm | C |" 2 --key C')["chords"]
    minor = document('explain "| Am | Dm | E7 | Am |" --key "A minor"')["chords"]

    assert borrowed["lenders"] == ["natural minor", "harmonic minor", "phrygian"]
    assert borrowed["own_chord"] == {"symbol": "F", "differs": [{"note": "Ab", "for": "A"}]}
    assert [chord["forms_of_minor"] for chord in minor[:3]] == [
        ["natural", "harmonic", "melodic"],
        ["natural", "harmonic"],
        ["harmonic", "melodic"],
    ]
    assert all(chord["lenders"] == [] and chord["own_chord"] is None for chord in minor)


def test_an_augmented_sixth_keeps_its_symbol_and_gets_its_name_and_its_notes():
    # R. Hutchinson, Music Theory for the 21st-Century Classroom, ExamplesWithAugmentedSixthChords: F7 is F A C D#
    (chord,) = document('explain "| Am | F7 | E | Am |" 2 --key "A minor"')["chords"]

    assert (chord["symbol"], chord["numeral"], chord["source"]) == ("F7", "Ger65", "augmented sixth")
    assert (chord["function"], chord["applied_to"]) == ("predominant", None)
    assert [(tone["note"], tone["went"]) for tone in chord["tendency_tones"]] == [("D#", "E"), ("F", "E")]
    assert chord["altered_degrees"] == [{"degree": "#4", "note": "D#"}]


def test_what_happens_along_a_progression_is_told_at_its_bars():
    # the turn and the lament cadence: Open Music Theory, scales and harmonicSyntax2; the name Phrygian from memory
    found = document('explain "| Am | Em/G | Dm/F | E |" --key "A minor"')

    assert list(found) == [
        "schema", "key", "key_source", "chords", "remarks", "phrases", "cadences", "turns", "cross_relations", "along",
    ]  # fmt: skip
    assert found["phrases"] == [{"first_bar": 1, "last_bar": 4}]
    (cadence,) = found["cadences"]
    assert cadence == {
        "bar": 4, "kind": "Phrygian half", "from_chord": 3, "to_chord": 4,
        "reason": "the bass falls a half step to the dominant",
    }  # fmt: skip
    assert found["turns"] == [{"bar": 4, "chord": 4, "degree": 7, "from": "G", "to": "G#"}]
    assert len(found["along"]) == len(found["cadences"]) + len(found["turns"]) + len(found["cross_relations"])
    assert "along" not in document('explain "| Am | Em/G | Dm/F | E |" 2 --key "A minor"')


def test_explanations_leave_rests_out_and_number_the_chords():
    found = document("explain | C | N.C. | F G |")

    assert [(chord["chord"], chord["bar"]) for chord in found["chords"]] == [(1, 1), (2, 3), (3, 3)]


def test_explanations_are_in_plain_characters():
    assert json_answer(last_answer("explain C: | bVI | viio7 | bII6 | i |")).isascii()
    assert json_answer(last_answer("explain a: | Am | Am(maj7) | Am7 | Am6 |")).isascii()


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
