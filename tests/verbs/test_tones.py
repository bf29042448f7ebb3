"""``tones``: what the notes of the melody are over their chords; pages, documents, sentences and refusals."""

from __future__ import annotations

import json

import pytest
from verbs.session_words import CHARTS, after, answer_to, picture, refusal

import nearhand
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of

CHORDS = "C: | C | G7b9 | Am F | N.C. |"
MELODY = "melody 5_ | 3 4 3 1 | [7_ 6_] 7_ 3 2 | 6 1' b7 - | 1' - - -"
SUNG = (CHORDS, MELODY)


def page(*lines, width=80, plain=False):
    answer = answer_to(lines[-1], after(*(("plain on",) if plain else ()), *lines[:-1]))
    return text_of(draw(answer, Page(width, plain))).rstrip("\n").split("\n")


def test_a_page_has_a_row_a_note_then_clashes_and_the_count():
    assert page(*SUNG, "tones") == [
        "in C major",
        "bar  chord  note  degree",
        "  0         G3    5_      outside the chords",
        "  1  C      E4    3       chord tone: third",
        "            F4    4       upper neighbour",
        "            E4    3       chord tone: third",
        "            C4    1       chord tone: root",
        "  2  G7♭9   B3    7_      chord tone: third",
        "            A3    6_      lower neighbour",
        "            B3    7_      chord tone: third",
        "            E4    3       appoggiatura",
        "            D4    2       chord tone: fifth",
        "  3  Am     A4    6       chord tone: root",
        "            C5    1'      chord tone: third",
        "     F      B♭4   ♭7      clash with A",
        "  4  N.C.   C5    1'      no chord here",
        "Bar 3: B♭4 against the A of F: a minor ninth above its third.",
        "8 of 12 notes over chords are chord tones.",
        "2 notes sound without a chord.",
        "' an octave up, _ an octave down",
    ]


def test_the_narrow_page_says_the_same_in_40_columns():
    lines = page(*SUNG, "tones", width=40, plain=True)

    assert max(map(len, lines)) <= 40
    assert "\n".join(lines).isascii()
    assert lines[:4] == [
        "in C major",
        "bar chord note degree",
        "  0       G3   5_     outside the chords",
        "  1 C     E4   3      chord tone: third",
    ]
    assert lines[14:19] == [
        "    F     Bb4  b7     clash with A",
        "  4 N.C.  C5   1'     no chord here",
        "Bar 3: Bb4 against the A of F: a minor",
        "ninth above its third.",
        "8 of 12 notes over chords are chord",
    ]


def test_a_number_picks_one_chord_with_what_sounds_over_it():
    assert page(*SUNG, "tones 4") == [
        "in C major",
        "bar  chord  note  degree",
        "  3  F      B♭4   ♭7      clash with A",
        "Bar 3: B♭4 against the A of F: a minor ninth above its third.",
        "0 of 1 note over chords is a chord tone.",
    ]
    held = after("C: | C | C | F |", "melody 1 - - - | - - 3 - | - - - -")
    assert [str(tone.note.pitch) for tone in answer_to("tones 2", held).tones] == ["C4", "E4"]
    silent = after("C: | C | F |", "melody 1 - - - | r - - -")
    assert page("C: | C | F |", "melody 1 - - - | r - - -", "tones 2")[1:] == ["No note of the melody sounds here."]
    assert answer_to("tones 2", silent).tones == ()


def test_the_melody_moves_with_the_shown_key():
    answer = answer_to("tones", after(*SUNG, "to Eb"))
    at_home = answer_to("tones", after(*SUNG))

    assert str(answer.key) == "Eb major"
    assert [str(tone.note.pitch) for tone in answer.tones][:4] == ["Bb3", "G4", "Ab4", "G4"]  # C up to E flat
    assert [(tone.kind, tone.tone) for tone in answer.tones] == [(tone.kind, tone.tone) for tone in at_home.tones]
    assert "Bar 3: D♭5 against the C of A♭: a minor ninth above its third." in page(*SUNG, "to Eb", "tones")


def test_the_melody_is_where_octave_and_way_have_taken_it():
    assert str(answer_to("tones", after(*SUNG, "octave up")).tones[1].note.pitch) == "E5"
    assert str(answer_to("tones", after(*SUNG, "way down", "to D")).tones[1].note.pitch) == "F#3"


def test_one_line_is_enough():
    line = 'tones "| C | G7 |" --key C --melody "E4 F E C | B3 A3 B3 -"'
    kinds = [tone.kind for tone in answer_to(line).tones]

    assert " ".join(kind.split()[-1] for kind in kinds) == "tone neighbour tone tone tone neighbour tone"
    assert [tone.bar for tone in answer_to(line.replace('" --key', '" 2 --key')).tones] == [2, 2, 2]


def test_notes_and_degrees_are_named_as_the_player_likes():
    assert page(*SUNG, "names german", "tones")[16] == "Bar 3: B4 against the A of F: a minor ninth above its third."
    assert page(*SUNG, "sing syllables", "tones")[3] == "  1  C      E4    mi      chord tone: third"
    assert any("te" in line and "clash" in line for line in page(*SUNG, "sing syllables", "tones"))


def test_the_document_has_every_note_and_every_clash():
    found = json.loads(json_answer(answer_to("tones", after(*SUNG))))

    assert (found["key"], found["key_source"], found["chord"]) == ("C major", "given", None)
    assert (found["notes_over_chords"], found["chord_tones"]) == (12, 8)
    assert found["tones"][0] == {
        "bar": 0, "onset": -1, "beats": 1, "chord": None, "symbol": None, "note": "G3", "degree": "5_",
        "kind": "outside the chords", "tone": None, "against": None,
    }  # fmt: skip
    assert found["tones"][5] == {
        "bar": 2, "onset": 4, "beats": 0.5, "chord": 2, "symbol": "G7b9", "note": "B3", "degree": "7_",
        "kind": "chord tone", "tone": "third", "against": None,
    }  # fmt: skip
    assert found["tones"][12]["against"] == {"note": "A", "member": "third", "how": "semitone above"}
    assert found["tones"][13]["symbol"] == "N.C."
    assert found["clashes"] == [
        {"bar": 3, "note": "Bb4", "sentence": "Bb4 against the A of F: a minor ninth above its third."}
    ]
    assert json.loads(json_answer(answer_to("tones 2", after(*SUNG))))["chord"] == 2


def test_for_ears_one_fact_a_sentence():
    lines = page("layout spoken", *SUNG, "tones")

    assert lines[:5] == [
        "In C major.",
        "Pickup, outside the chords.",
        "G3, degree 5 below: outside the chords.",
        "Bar 1, chord 1: C, C major.",
        "E4, degree 3: chord tone, third.",
    ]
    assert "B flat 4, degree flat 7: clash with A." in lines
    assert "Bar 4: no chord." in lines
    assert lines[-2:] == ["8 of 12 notes over chords are chord tones.", "2 notes sound without a chord."]
    assert not set("♭♯_'|") & set("".join(lines))
    assert page("layout spoken", "C: | C | F |", "melody 1 - - - | r - - -", "tones 2") == [
        "In C major.",
        "No note of the melody sounds here.",
    ]


TONES_HINT = "put one over the chords: melody E4 F#4 G4 (or --melody); a chart file holds one beside its chords"
CHORDS_HINT = "write chords, for example | C | F G7 | C |, and put the melody over them: melody E4 F#4 G4"
NO_MELODY = "there is no melody to hold against the chords"


@pytest.mark.parametrize(
    ("lines", "line", "expected"),
    [
        ((CHORDS,), "tones", (NO_MELODY, "tones^", TONES_HINT)),
        ((), 'tones "| C | F |"', (NO_MELODY, 'tones "| C | F |"^', TONES_HINT)),
        (("melody C: 1 2 3 4",), "tones", ("there are no chords here, only a melody", "^tones", CHORDS_HINT)),
        (SUNG, "tones 5", ("there is no chord 5", "tones ^5", "the chords are numbered 1 to 4")),
        (SUNG, "tones 0", ("there is no chord 0", "tones ^0", "the chords are numbered 1 to 4")),
        (
            (),
            "tones | C | --melody H",
            ("H is no note", "tones | C | --melody ^H", "write B for B natural and Bb for B flat"),
        ),
    ],
)
def test_what_cannot_be_answered_is_refused_at_its_place(lines, line, expected):
    assert picture(refusal(line, after(*lines))) == expected


def test_without_a_tune_there_is_nothing_to_tell():
    assert refusal("tones").what == "there is no progression yet"


@pytest.mark.parametrize("plain", [False, True])
@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize("key", ["C", "Gb", "F#", "Db"])
def test_every_page_fits(width, plain, key):
    chords = "C: | Cmaj7#11/G | F#m7b5 Bb13(b9,#11) | Em//Am7 |"
    lines = page(
        chords, "melody b3 #4 b6 7 | 1 4 b2 b7 | [5 6 #1] b5 -", f"to {key}", "tones", width=width, plain=plain
    )

    assert max(map(len, lines)) <= width
    assert not plain or "\n".join(lines).isascii()


@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_the_melodies_of_the_demo_charts_lie_well_over_their_chords(chart):
    session = after(f"open {chart}")
    if session.tune.melody is None:
        assert refusal("tones", session).what == NO_MELODY
        return
    found = answer_to("tones", session).tones
    clashes = [tone for tone in found if tone.kind == "clash"]

    assert len(found) > 10
    assert sum(tone.kind == "chord tone" for tone in found) >= len(found) // 2
    assert len(clashes) <= len(found) // 20


def test_the_library_gives_the_same():
    tune = nearhand.with_melody(nearhand.parse_progression(CHORDS), "5_ | 3 4 3 1")

    assert [(str(each.note.pitch), each.kind) for each in nearhand.tones(tune)] == [
        ("G3", "outside the chords"),
        ("E4", "chord tone"),
        ("F4", "upper neighbour"),
        ("E4", "chord tone"),
        ("C4", "chord tone"),
    ]
    with pytest.raises(nearhand.InputError) as caught:
        nearhand.tones(nearhand.parse_progression(CHORDS))
    assert caught.value.what == "this tune has no melody"
    assert caught.value.hint == 'put one over its chords: with_melody(tune, "E4 F#4 G4")'
