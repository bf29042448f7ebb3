"""The pages and the JSON of ``borrow`` and ``instead``."""

from __future__ import annotations

import json

import pytest
from render.page_words import WIDTHS, last_answer, page

from nearhand.render.json_answers import json_answer

KEYS = ["Cb", "Gb", "Ab", "C", "E", "C#", "ab", "c", "a#", "D dorian", "F# phrygian", "Bb lydian", "E locrian"]
CHARTS = [
    "C: | C | Am | Dm7 | G7 | C |", "Cb: | Ebm7b5 | Abm7 | Gb7 | Cb |", "a#: | A#m | E#7 | A#m |",
    "C: | C7 | F7 | C7 | G7sus4 | C5 |", "E: | E | Cdim7/D# | F13(b9,#11)/B | Eaug | E |",
]  # fmt: skip


def document(*lines):
    return json.loads(json_answer(last_answer(*lines)))


def test_a_palette_says_which_notes_are_foreign_and_who_else_lends_the_chord():
    # F minor in C: R. Hutchinson, Music Theory for the 21st-Century Classroom, "Mode mixture"
    lines = page("borrow C").split("\n")

    assert "  iv         Fm        F [A♭] C          also in harmonic minor, phrygian" in lines
    assert "  II         D         D [F♯] A          heard first as V/V" in lines
    assert lines[-1] == "[ ] is a note that C major has not."


def test_a_palette_tells_the_songwriter_what_to_try():
    # Hutchinson, "The deceptive cadence with the flat sixth", "Mode mixture", "Subtonic VII in pop music"
    text = page("borrow C", width=120)

    for words in (
        "V ♭VI (G A♭): a deceptive cadence",
        "♭VI ♭VII I (A♭ B♭ C): ",
        "IV iv I (F Fm C): ",
        "♭VII IV I (B♭ F C): ",
    ):
        assert words in text


def test_a_narrow_palette_puts_the_words_below_the_chord():
    lines = page("borrow C", width=40).split("\n")

    at = lines.index("  iv         Fm        F [A♭] C")
    assert lines[at + 1 : at + 3] == ["      also in harmonic minor, phrygian", "  v          Gm        G [B♭] D"]


def test_degrees_are_counted_as_asked():
    assert "  ♯iii " in page("borrow c")
    assert "  iii " in page("borrow c --degrees major")


@pytest.mark.parametrize("key", KEYS)
def test_a_palette_of_any_key_fits_its_page(key):
    for width in WIDTHS:
        for plain in (False, True):
            text = page(f"borrow {key}", width=width, plain=plain)
            assert [line for line in text.split("\n") if len(line) > width] == []
            assert text.isascii() or not plain


@pytest.mark.parametrize("chart", CHARTS)
def test_the_substitutes_of_any_chord_fit_their_page(chart):
    for number in range(1, chart.count("|")):
        for width in WIDTHS:
            for plain in (False, True):
                text = page(f"instead {chart} {number}", width=width, plain=plain)
                assert [line for line in text.split("\n") if len(line) > width] == []
                assert text.isascii() or not plain


def test_a_palette_as_json():
    found = document("borrow C major")

    assert list(found) == ["schema", "key", "modes"]
    assert (found["schema"], found["key"]) == (1, "C major")
    assert [mode["mode"] for mode in found["modes"]] == [
        "natural minor", "harmonic minor", "dorian", "mixolydian", "phrygian", "lydian", "melodic minor",
    ]  # fmt: skip
    natural_minor = found["modes"][0]
    assert natural_minor["scale"] == ["C", "D", "Eb", "F", "G", "Ab", "Bb"]
    assert natural_minor["triads"][3] == {
        "numeral": "iv",
        "symbol": "Fm",
        "notes": ["F", "Ab", "C"],
        "foreign": ["Ab"],
        "shared_with": ["harmonic minor", "phrygian"],
        "heard_first_as": None,
    }
    assert natural_minor["sevenths"][1]["symbol"] == "Dm7b5"
    assert natural_minor["use"][1] == "bVI bVII I (Ab Bb C): a climb to the tonic by whole steps."
    assert found["modes"][5]["triads"][0]["heard_first_as"] == "V/V"
    assert json_answer(last_answer("borrow Gb major")).isascii()


def test_substitutes_as_json():
    # Db7 for G7, guide tones F and Cb (B): Hutchinson, "Turnaround progression", "Guide tones"
    found = document('instead "| Dm7 | G7 | C |" 2 --key C')

    assert list(found) == ["schema", "key", "chord", "symbol", "numeral", "motion", "instead"]
    assert [found[name] for name in ("key", "chord", "symbol", "numeral")] == ["C major", 2, "G7", "V7"]
    (tritone,) = (offer for offer in found["instead"] if offer["kind"] == "tritone")
    assert tritone == {
        "kind": "tritone",
        "placed": "instead",
        "chords": [{"symbol": "Db7", "numeral": "bII7", "notes": ["Db", "F", "Ab", "Cb"], "sounds_as": None}],
        "shared": ["F"],
        "shared_by_sound": [{"note": "Cb", "sounds_as": "B"}],
        "new": 2,
        "motion": 6,  # D F A C to Db F Ab Cb moves three voices by one, so does Db F Ab to C E G; one voice leaves
        "function": "dominant",
        "source": "tritone substitute",
        "sentence": "It keeps the function: dominant. It slides down a half step.",
    }
    (pair,) = (offer for offer in found["instead"] if offer["placed"] == "before")
    assert [chord["numeral"] for chord in pair["chords"]] == ["vi7", "V7/V"]
    distances = [(offer["new"], offer["motion"]) for offer in found["instead"]]
    assert distances == sorted(distances)


def test_substitutes_in_json_are_in_plain_characters():
    for number in (1, 2, 3):
        assert json_answer(last_answer(f"instead Ab: | Fm7 | Bbm7b5 | Eb7 | {number}")).isascii()


def test_a_substitute_with_double_flats_says_what_it_sounds_as():
    line = "instead Ab: | Ab | Eb7 | Ab | 2"

    assert "It sounds as A7, and is often written so." in page(line)
    (tritone,) = (offer for offer in document(line)["instead"] if offer["kind"] == "tritone")
    assert [(chord["symbol"], chord["sounds_as"]) for chord in tritone["chords"]] == [("Bbb7", "A7")]


def test_a_page_of_substitutes_names_the_chord_its_motion_and_the_order():
    text = page("instead C: | Dm7 | G7 | C | 2")

    assert text.startswith("in C major\n 2  G7  V7\n    5 semitones of motion to and from its neighbours.\n")
    assert "Instead, in root position unless a figure says otherwise: fewest new tones" in text
    assert "F stays; C♭ sounds as B; 2 new tones: D♭ A♭; " in text


def test_a_chord_without_substitutes_says_so():
    assert page("instead C: C5 1").endswith("Nothing here stands in for C5.")
    assert document("instead C: C5 1")["instead"] == []
