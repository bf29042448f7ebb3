"""``difficulty``: what is hard about each key, and the few that teach most."""

from __future__ import annotations

import json

import pytest
from verbs.session_words import after, answer_to, picture, refusal

import nearhand
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.care import CARE_IN_TWELVE_KEYS

TWO_FIVE_ONE = "| Dm7 | G7 | Cmaj7 |"


def page(line, width=80, plain=False, session=None):
    return text_of(draw(answer_to(line, session), Page(width, plain))).split("\n")


def test_twelve_keys_by_falling_fifths_with_the_usual_caution():
    answer = answer_to(f"difficulty '{TWO_FIVE_ONE}'")

    circle = ["C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G"]  # common practice, no source
    assert [str(row.key.tonic) for row in answer.difficulty.keys] == circle
    assert [row.is_known for row in answer.difficulty.keys] == [True] + [False] * 11
    assert answer.advice == CARE_IN_TWELVE_KEYS
    assert len(answer.difficulty.to_learn) == 3


def test_a_key_has_a_row_of_figures_and_what_it_brings():
    # By hand: in E flat Fm7 B♭7 E♭maj7 C7 has A♭ E♭, B♭ A♭, E♭ B♭, B♭ on black keys, and E natural beside three flats;
    # in D (D known too) Em7 A7 Dmaj7 B7 has C♯, F♯ C♯, D♯ F♯, where A7 is in C's own chords.
    assert page('difficulty "C: | Dm7 | G7 | Cmaj7 | A7 |" --to "C,Eb,D" --choose 1') == [
        "Known: C.",
        "In every key 1 of 16 tones needs an accidental beside the signature.",
        "",
        "key  signature  double  black    new",
        "C    none       -       1 of 16  known",
        "    beside: C♯",
        "E♭   3 flats    -       7 of 16  4",
        "    beside: E; new: Fm7 B♭7 E♭maj7 C7",
        "D    2 sharps   -       5 of 16  3",
        "    beside: D♯; new: Em7 Dmaj7 B7",
        "",
        "The key that teaches most, with 4 of 7 new chords:",
        "E♭: brings Fm7, B♭7, E♭maj7 and C7, in none of the keys you know.",
        "double: tones with a double sharp or flat; black: tones on black keys; new:",
        "chords in none of the keys you know; beside: notes with an accidental of their",
        "own, beside the signature",
    ]


def test_in_minor_double_sharps_are_told():
    lines = page('difficulty "A minor: | Am | E7 |" --to "G# minor"')

    # G sharp minor: its dominant D♯7 has F double sharp; G♯ D♯, D♯ A♯ C♯ on black keys
    assert "G♯m  5 sharps   1       5 of 7  2" in lines
    assert "    beside: F𝄪; new: G♯m D♯7" in lines
    assert "Known: A minor." in lines


@pytest.mark.parametrize("plain", [False, True])
@pytest.mark.parametrize("width", [40, 80, 120])
@pytest.mark.parametrize("names", ["english", "german", "solfege"])
def test_every_page_fits(width, plain, names):
    line = f'difficulty "Bb minor: | i | iv7 | V7b9 | bII6 | vii°7/V |" --melody "5_ | 1 #7_ {{2}}1" --names {names}'
    lines = page(line, width, plain, after("plain on") if plain else None)

    assert max(map(len, lines)) <= width
    assert not plain or "\n".join(lines).isascii()


def test_the_tunes_own_key_is_the_known_one_wherever_it_is_shown():
    answer = answer_to("difficulty --to C,F", after(f"C: {TWO_FIVE_ONE}", "to F"))

    assert [row.is_known for row in answer.difficulty.keys] == [True, False]


def test_the_melody_on_the_stand_counts():
    chords = after(f"C: {TWO_FIVE_ONE}")
    with_melody = after("melody 1 #4 5 r", start=chords)
    rows = [answer_to("difficulty --to D", session).difficulty.keys[0] for session in (chords, with_melody)]

    assert rows[1].tones == rows[0].tones + 3
    assert [str(note) for note in rows[1].beside] == ["G#"]


def test_a_melody_alone_has_steps_to_learn_instead_of_chords():
    lines = page("difficulty --to D,A", session=after("melody C: C4 E4 G4 C5"))

    # 1 3, 3 5 and 5 1 lie on white keys in C; in D and in A the 3 is black, which makes two of the three steps new
    assert lines[2:10] == [
        "",
        "key  signature  double  black   steps",
        "D    2 sharps   -       1 of 4  2",
        "A    3 sharps   -       1 of 4  2",
        "",
        "The key that teaches most, with all 2 new steps:",
        "D: brings D to F♯ and F♯ to A.",
        "A step from note to note is new where its notes lie otherwise on black and white",
    ]
    assert "new:" not in " ".join(lines)


def test_a_melody_that_lies_alike_in_all_the_keys_brings_nothing():
    lines = page("difficulty --to G,C", session=after("melody C: C4 E4 G4 C5"))

    assert "These keys bring no new step." in lines
    assert "C    none       -       0 of 4  known" in lines
    assert "G    1 sharp    -       0 of 4  0" in lines


def test_a_melody_alone_has_the_document_of_its_steps():
    found = json.loads(json_answer(answer_to("difficulty --to D,A", after("melody C: C4 E4 G4 C5"))))

    assert (found["steps"], found["new_steps"], found["new_chords"]) == (3, 2, 0)
    assert [row["new_steps"] for row in found["keys"]] == [[["D", "F#"], ["F#", "A"]], [["A", "C#"], ["C#", "E"]]]
    assert found["to_learn"] == [{"key": "D major", "brings": [], "steps": [["D", "F#"], ["F#", "A"]]}]


def test_for_ears_the_new_steps_of_a_melody_are_told():
    lines = page("difficulty --to D,G --layout spoken", 200, session=after("melody C: C4 E4 G4 C5"))

    assert "New steps: D to F sharp and F sharp to A." in lines
    assert "No step is new." in lines
    assert "D: brings D to F sharp and F sharp to A." in lines
    assert sum(line.startswith("A step from note to note is new") for line in lines) == 1


# Tunes, and what their own key is called in the narrow column: chord symbols have m for minor; other modes in full.
@pytest.mark.parametrize(("tune", "name"), [
    ("D minor: | Dm | A7 |", "Dm"), ("D dorian: | Dm | G |", "D dorian"), ("G: | G | D |", "G"),
    ("F# mixolydian: | F# | E |", "F♯ mixolydian"),
])  # fmt: skip
def test_a_key_is_listed_with_its_mode(tune, name):
    lines = page(f'difficulty "{tune}" --choose 1', 80)

    assert any(line.startswith(f"{name} ") and line.endswith(" known") for line in lines)
    assert max(map(len, page(f'difficulty "{tune}"', 40))) <= 40


def test_where_there_is_no_room_a_mode_is_left_to_the_opening_sentence():
    lines = page('difficulty "F# mixolydian: | F# | E |" --to "F# mixolydian" --choose 1', 40)

    assert lines[0] == "Known: F♯ mixolydian."
    assert any(line.startswith("F♯   ") for line in lines)


def test_the_document():
    found = json.loads(json_answer(answer_to(f"difficulty '{TWO_FIVE_ONE}' --key C --to F,Gb --known C,G --choose 2")))

    assert found == {
        "schema": 1,
        "key": "C major",
        "known": ["C major", "G major"],
        "tones_beside_signature": 0,
        "new_chords": 6,
        "steps": None,
        "new_steps": 0,
        "keys": [
            {
                "key": "F major", "signature": -1, "beside_signature": [], "double_accidentals": 0, "tones": 12,
                "on_black_keys": 2, "new": ["Gm7", "C7", "Fmaj7"], "new_steps": [], "known": False,
            },
            {
                "key": "Gb major", "signature": -6, "beside_signature": [], "double_accidentals": 0, "tones": 12,
                "on_black_keys": 8, "new": ["Abm7", "Db7", "Gbmaj7"], "new_steps": [], "known": False,
            },
        ],
        "to_learn": [
            {"key": "F major", "brings": ["Gm7", "C7", "Fmaj7"], "steps": []},
            {"key": "Gb major", "brings": ["Abm7", "Db7", "Gbmaj7"], "steps": []},
        ],
    }  # fmt: skip


def test_for_ears_one_fact_a_sentence():
    lines = page('difficulty "A minor: | Am | E7 |" --to "A,G#" --layout spoken', 200)

    assert lines == [
        "Known: A minor.",
        "In every key 1 of 7 tones needs an accidental beside the signature.",
        "",
        "A minor: no sharps or flats.",
        "Beside the signature: G sharp.",
        "Tones on black keys: 1 of 7.",
        "You know this key.",
        "",
        "G sharp minor: five sharps.",
        "Beside the signature: F double sharp.",
        "Tones with a double sharp or flat: 1.",
        "Tones on black keys: 5 of 7.",
        "New chords: G sharp m, D sharp 7.",
        "",
        "The key that teaches most, with all 2 new chords:",
        "G sharp minor: brings G sharp m and D sharp 7, in none of the keys you know.",
    ]


C_MAJOR = f"C: {TWO_FIVE_ONE}"
REFUSED = [
    ("difficulty --to H", "'H' is no key", "difficulty --to ^H"),
    ('difficulty --known "C, Q"', "'Q' is no key", 'difficulty --known "C, ^Q"'),
    ("difficulty --known Am", "the tune is in C major, so it cannot move to A minor", "difficulty --known ^Am"),
    ("difficulty --choose many", "'many' is no number of keys to choose", "difficulty --choose ^many"),
    ("difficulty --choose 0", "'0' is no number of keys to choose", "difficulty --choose ^0"),
    ("difficulty --choose 13", "'13' is no number of keys to choose", "difficulty --choose ^13"),
    ("difficulty --choose ²", "'²' is no number of keys to choose", "difficulty --choose ^²"),
]


@pytest.mark.parametrize(("line", "sentence", "marked"), REFUSED)
def test_what_cannot_be_read_is_refused_at_its_place(line, sentence, marked):
    found = picture(refusal(line, after(C_MAJOR)))

    assert (found[0], found[1]) == (sentence, marked)


def test_without_a_tune_there_is_nothing_to_weigh():
    assert refusal("difficulty").what == "there is no progression yet"


def test_the_library_gives_the_same():
    tune = nearhand.parse_progression(C_MAJOR)
    keys = [nearhand.parse_key(name) for name in ("Eb", "A")]

    assert nearhand.difficulty(tune).keys == answer_to("difficulty", after(C_MAJOR)).difficulty.keys
    found = nearhand.difficulty(tune, keys, known=keys[:1], choose=1)
    assert [str(each.key) for each in found.to_learn] == ["A major"]
    with pytest.raises(ValueError, match="can only move to a key in major"):
        nearhand.difficulty(tune, [nearhand.parse_key("A minor")])
    with pytest.raises(ValueError, match="choose must be 1 or more"):
        nearhand.difficulty(tune, choose=0)


def test_the_library_writes_a_tune_for_one_instrument():
    tune = nearhand.parse_progression("Eb: | Eb | Bb7 |")
    melody = answer_to("melody Eb: Eb4 G4 Bb4 D5").tune.melody
    written = nearhand.written_for(tune._replace(melody=melody), "Bb tenor saxes")

    assert written.symbols() == ("F", "C7")
    assert " ".join(map(str, written.melody.pitches())) == "F5 A5 C6 E6"
    with pytest.raises(nearhand.InputError) as caught:
        nearhand.written_for(tune, "oboe, flute")
    assert picture(caught.value)[:2] == ("one instrument is wanted here", "oboe^, flute")
