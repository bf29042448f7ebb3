"""Pages of melodies: drawn, spoken and as JSON, at any width."""

from __future__ import annotations

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from melody_strategies import melodies_in
from render.page_words import last_answer, page
from strategies import keys as keys_of_all_modes

from nearhand.notation.conventions import DEGREES, NAMES, SING, Conventions
from nearhand.notation.melody_writing import write_as_degrees, write_as_notes, write_bar
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.melody_page import melody_lines
from nearhand.render.page import Page, text_of
from nearhand.render.spoken_melody import melody_sentences
from nearhand.theory.melody import ORNAMENTS
from nearhand.verbs.answers import MelodyView

WALTZ = ("A minor: [3/4] | Am | E7 | Am |", "melody 5 | 1' - [7 6] | {6}5(tr):3/2 [#4 3]:1/2 r | - 1:2 |")
IN_THREE_KEYS = ("melody 'Eb: 5_ | 1 2 [3 4 5 6]:1 b7' --to 'Eb,B,F#'",)

PAGES = [
    (WALTZ, 80, False, """\
A minor: no sharps or flats
bar           1 (3/4)               2                             3
chord       | Am                  | E7                          | Am        ||
degree   5  | 1'       -  [7 6]   | {6}5(tr)    [- - ♯4 3]    r | r   1   - |
note     E4 | A4       -  [G4 F4] | {F4}E4(tr)  [- - D♯4 C4]  r | r   A3  - |
- holds on, r rests, [ ] share a beat, ' an octave up, _ an octave down"""),
    (WALTZ, 40, True, """\
A minor: no sharps or flats
     1 (3/4)
   | Am                  |
5  | 1'       -  [7 6]   |
E4 | A4       -  [G4 F4] |

  2
| E7                          |
| {6}5(tr)    [- - #4 3]    r |
| {F4}E4(tr)  [- - D#4 C4]  r |

  3
| Am        ||
| r   1   - |
| r   A3  - |
rows: chord, degree, note
- holds on, r rests, [ ] share a beat, '
an octave up, _ an octave down"""),
    (IN_THREE_KEYS, 80, False, """\
bar            1
degree   5_  | 1    2    [3 4 5 6]         ♭7  ||
E♭ major B♭3 | E♭4  F4   [G4 A♭4 B♭4 C5]   D♭5 |
B major  F♯3 | B3   C♯4  [D♯4 E4 F♯4 G♯4]  A4  |
F♯ major C♯4 | F♯4  G♯4  [A♯4 B4 C♯5 D♯5]  E5  |
- holds on, r rests, [ ] share a beat, ' an octave up, _ an octave down"""),
    (IN_THREE_KEYS, 24, True, """\
bar
   5_  |
Eb Bb3 |
B  F#3 |
F# C#4 |

bar  1
   | 1    2
Eb | Eb4  F4
B  | B3   C#4
F# | F#4  G#4

bar
     [3 4 5
Eb   [G4 Ab4 Bb4
B    [D#4 E4 F#4
F#   [A#4 B4 C#5

bar
     6]    b7  ||
Eb   C5]   Db5 |
B    G#4]  A4  |
F#   D#5]  E5  |
- holds on, r rests, [ ]
share a beat, ' an
octave up, _ an octave
down"""),
    (("melody 'E minor: E4 F# G A B D# E4' --sing syllables",), 80, False, """\
E minor: 1 sharp (F♯)
bar        1                 2
sing     | do  re   me  fa | sol  ti   do ||
note     | E4  F♯4  G4  A4 | B4   D♯5  E4 |
- holds on, r rests, [ ] share a beat, ' an octave up, _ an octave down; do is
the tonic in every key, in minor too"""),
    (("layout spoken", "melody 'F minor: 5_ | {#7_}1(tr):3/2 [b2 3]:1/2 - r | - 5:4/3 #6′′:2/3 -' --to C"),
     80, False, """\
The melody in C minor.
Pickup:
5 below, G3, 1 beat.
Bar 1:
grace note B3.
1, C4, 1 and a half beats, with a trill.
flat 2, D flat 4, 1 quarter of a beat.
3, E flat 4, 1 and 1 quarter beats.
rest, 1 beat.
Bar 2:
rest, 1 beat.
5, G4, 1 and 1 third beats.
sharp 6 two octaves up, A6, 1 and 2 thirds beats."""),
]  # fmt: skip


@pytest.mark.parametrize(("lines", "width", "plain", "expected"), PAGES)
def test_a_page_of_a_melody_is_drawn_whole(lines, width, plain, expected):
    assert page(*lines, width=width, plain=plain).rstrip() == expected


HARD = (
    "F# major: {1' 2'}#3''(mordent):3/2 [#4 [#5 #6 7] b3]:1/2 [1 2 3 4 5 6 7 1']:2 | [1 2 3 4 5] - - - | "
    "[7/8] r:7 | [5:3/29 6:26/29] 5 6 7:4 | [12/16] b6'(turn):6 b6'(inverted-mordent):6"
)
DRAWN = [
    (f'melody "{HARD}"',), (f'melody "{HARD}" --to "C#,Db,B major"',), (f'melody "{HARD}" --to all',),
    (f'melody "{HARD}" --sing syllables --degrees major --names solfege',),
    (f'melody "{HARD}" --names german --to "B,Bb"',), (f'melody "{HARD}" --names solfege --to "C#,Db"',),
    (f'melody "{HARD}" --layout spoken',),
    ("C: | Cmaj7 | Dm7 G7 | Bb13 C |", 'melody "5_ | 1 2 [3 4 5 6 7 1\'] 5 | - - [b3:3 2] 1 | r r"'),
    ("voice none", "C: | Cmaj7 | Dm7 G7 |", 'melody "1 2 [3 4 5 6 7] 5 | 1"', "to Gb"),
    ("voice none", "C: | C | N.C. (F) G7 |", "sing syllables", 'show --melody "[1 2 3 4 5 6 7 1\']:4"'),
    ("melody E4 F# G A B D# E4",), ("melody 'A minor: 1 b3 5'",), ("melody r C4 D4 E4",),
]  # fmt: skip


@pytest.mark.parametrize("lines", DRAWN)
@pytest.mark.parametrize("plain", [False, True], ids=["signs", "plain"])
def test_no_line_of_a_melody_is_wider_than_its_page_from_20_to_120_columns(lines, plain):
    answer = last_answer(*lines, plain=plain)
    for width in range(20, 121):
        text = text_of(draw(answer, Page(width, plain)))

        assert [line for line in text.split("\n") if len(line) > width] == []
        assert not plain or text.isascii()


@pytest.mark.parametrize("width", [1, 5, 10, 15])
def test_a_melody_is_drawn_on_hardly_any_columns_all_the_same(width):
    for lines in DRAWN:
        assert page(*lines, width=width)


ways_of_writing = st.builds(
    lambda degrees, sing, plain, names: Conventions(degrees, plain, sing=sing, names=names),
    st.sampled_from(DEGREES), st.sampled_from(SING), st.booleans(), st.sampled_from(NAMES),
)  # fmt: skip


def without_signs(text):
    """A row's words put together, without bar lines and blanks."""
    return "".join(character for character in text if character not in " |")


@settings(max_examples=60)
@given(melodies_in(keys_of_all_modes), ways_of_writing, st.integers(20, 100))
def test_both_rows_of_a_page_put_together_are_the_whole_melody(start, conventions, width):
    where, melody = start
    lines = melody_lines([MelodyView(where, melody)], (), where, conventions, Page(width, conventions.plain))
    systems = [system.split("\n") for system in text_of(lines).split("\n\n")]
    label = 9 if width >= 60 else 0  # the columns of "degree   "
    rows = ["".join(without_signs(system[place][label:]) for system in systems) for place in (1, 2)]

    assert {len(system) for system in systems} == {3}
    assert max(map(len, text_of(lines).split("\n"))) <= width
    for row, write in zip(rows, (write_as_degrees(where.mode, conventions), write_as_notes(melody.tonic, conventions)),
                          strict=True):  # fmt: skip
        assert row == "".join(without_signs(write_bar(bar, write)) for bar in melody.bars)


@settings(max_examples=60)
@given(melodies_in(keys_of_all_modes), st.sampled_from([20, 40, 80, 120]))
def test_the_numbers_stand_once_and_each_key_has_its_row_of_notes(start, width):
    where, melody = start
    moved = [where._replace(tonic=where.tonic.up(fifths)) for fifths in (0, 1, -2)]
    views = [MelodyView(each, melody.in_key(each)) for each in moved]
    lines = melody_lines(views, (), where, Conventions(), Page(width))
    systems = text_of(lines).split("\n\n")

    assert {len(system.split("\n")) for system in systems} == {5}
    assert all(len(line) <= width for system in systems for line in system.split("\n"))


def test_json_tells_every_note_of_every_key():
    document = json.loads(json_answer(last_answer(*WALTZ, "melody --to 'A,C'")))
    first, second = document["views"]
    notes = first["melody"]

    assert (document["schema"], document["key"], first["key"], second["key"]) == (1, "A minor", "A minor", "C minor")
    assert [note["note"] for note in notes] == ["E4", "A4", "G4", "F4", "E4", "D#4", "C4", None, None, "A3"]
    assert [note["midi"] for note in notes] == [64, 69, 67, 65, 64, 63, 60, None, None, 57]
    assert [note["bar"] for note in notes] == [0, 1, 1, 1, 2, 2, 2, 2, 3, 3]
    assert [note["onset"] for note in notes] == [-1, 0, 2, 2.5, 3, 4.5, 4.75, 5, 6, 7]
    assert [note["beats"] for note in notes] == [1, 2, 0.5, 0.5, 1.5, 0.25, 0.25, 1, 1, 2]
    assert [note["degree"] for note in notes][:7] == ["5", "1'", "7", "6", "5", "#4", "3"]
    assert [note["syllable"] for note in notes][:7] == ["sol", "do'", "te", "le", "sol", "fi", "me"]
    assert (notes[4]["ornament"], notes[4]["graces"], notes[5]["graces"]) == ("tr", ["F4"], [])
    assert [note["degree"] for note in second["melody"]] == [note["degree"] for note in notes]
    assert [note["note"] for note in second["melody"]][:4] == ["G4", "C5", "Bb4", "Ab4"]


def test_json_tells_what_is_held_over_a_bar_line_and_names_notes_in_english():
    notes = json.loads(json_answer(last_answer("melody Bb: 1:5 r 7_ --names german --sing syllables")))["views"][0][
        "melody"
    ]

    assert [(note["note"], note["held"], note["degree"]) for note in notes] == [
        ("Bb3", False, "1"), ("Bb3", True, "1"), (None, False, None), ("A3", False, "7_"),
    ]  # fmt: skip


def test_json_of_show_has_the_melody_in_every_key_beside_its_chords():
    document = json.loads(json_answer(last_answer('show "| C | F |" --melody "1 2 3 4 | 5" --to "C,D"')))

    assert [[note["note"] for note in view["melody"]] for view in document["views"]] == [
        ["C4", "D4", "E4", "F4", "G4"], ["D4", "E4", "F#4", "G4", "A4"],
    ]  # fmt: skip
    assert "melody" not in json.loads(json_answer(last_answer('show "| C | F |"')))["views"][0]


@settings(max_examples=60)
@given(melodies_in(keys_of_all_modes))
def test_a_spoken_melody_says_every_note_once_and_bar_by_bar(start):
    where, melody = start
    said = list(melody_sentences(melody, where.mode, Conventions(plain=True)))

    assert sum(each.startswith(("Bar ", "Pickup")) for each in said) == len(melody.bars)
    assert sum(each.startswith("rest, ") for each in said) == sum(note.interval is None for note in melody.notes)
    assert sum(each.startswith("held on: ") for each in said) == sum(note.is_held for note in melody.notes)
    assert sum(each.startswith("grace note") for each in said) == sum(bool(note.graces) for note in melody.notes)
    assert len(said) == len(melody.bars) + len(melody.notes) + sum(bool(note.graces) for note in melody.notes)


LENGTHS = [
    ("1", "1 beat"), ("2", "2 beats"), ("1/2", "half a beat"), ("3/2", "1 and a half beats"),
    ("5/2", "2 and a half beats"), ("1/3", "1 third of a beat"), ("2/3", "2 thirds of a beat"),
    ("3/4", "3 quarters of a beat"), ("1/8", "1 eighth of a beat"), ("4/3", "1 and 1 third beats"),
    ("7/4", "1 and 3 quarters beats"), ("2/7", "2 over 7 of a beat"), ("5/6", "5 sixths of a beat"),
]  # fmt: skip


@pytest.mark.parametrize(("beats", "words"), LENGTHS)
def test_lengths_are_said_in_words(beats, words):
    assert f"1, C4, {words}." in page("layout spoken", f"melody C: 1:{beats}").split("\n")


# MusicXML 4.0, ornaments, from memory: its words, and ours; the mordent is the one with the stroke, and goes below.
ORNAMENTS_TOLD = [
    ("tr", "with a trill"), ("mordent", "with a mordent"), ("inverted-mordent", "with an inverted mordent"),
    ("turn", "with a turn"), ("inverted-turn", "with an inverted turn"),
]  # fmt: skip


@pytest.mark.parametrize(("ornament", "words"), ORNAMENTS_TOLD)
def test_every_ornament_is_drawn_spoken_and_in_documents(ornament, words):
    line = f"melody G: 5({ornament}):2 1 -"

    assert f"5({ornament})" in page(line) and f"D4({ornament})" in page(line)
    assert f"5, D4, 2 beats, {words}." in page("layout spoken", line).split("\n")
    first = json.loads(json_answer(last_answer(line)))["views"][0]["melody"][0]
    assert first["ornament"] == ornament


def test_ornaments_are_told_without_exception():
    assert [ornament for ornament, _ in ORNAMENTS_TOLD] == list(ORNAMENTS)


# Lines, and what the last answer says of the way there. A melody that stands alone goes one way; over chords, theirs is
# told first, and the melody's where it goes another.
ALONE = "melody C: 1 2 3"
OVER = ("C: | C | F |", "melody 1 - 3 -")
DISTANCES = [
    ((ALONE, "to B"), "down a minor second from C major"),
    ((ALONE, "way up", "to B"), "up a major seventh from C major"),
    ((ALONE, "way down", "to D"), "down a minor seventh from C major"),
    ((ALONE, "to G", "octave down"), "down a perfect fourth and 1 octave from C major"),
    ((ALONE, "octave up"), "up an octave from C major"),
    ((ALONE, "octave up", "octave down"), "no sharps or flats"),
    ((*OVER, "to D"), "up a major second from C major"),
    ((*OVER, "way down", "to D"), "up a major second from C major, the melody down a minor seventh"),
    ((*OVER, "octave down"), "no sharps or flats, the melody down an octave"),
]


@pytest.mark.parametrize(("lines", "told"), DISTANCES)
def test_the_head_says_which_way_the_notes_went(lines, told):
    shown = text_of(draw(last_answer(*lines), Page(200))).split("\n")

    assert shown[0].endswith((f": {told}", f", {told}"))


def test_the_head_says_so_in_spoken_words():
    spoken = text_of(draw(last_answer("layout spoken", *OVER, "way down", "to D"), Page(200)))

    assert "up a major second from C major, the melody down a minor seventh." in spoken


# A last bar that ends early: its chords go on to the end of the bar.
SHORT_ENDS = [
    ('show "| C | F G Am/C D |" --melody "C: 1 2 3 4 | 4:3/2" --voicing none', "F G Am/C D"),
    ('parts "| C | F G |" --melody "C: 1 2 3 4 | 4 5" --for flute', "F G"),
    ('parts "| C | F G |" --melody "C: 1 2 3 4 | 4 - 5" --for flute', "F G"),
]


@pytest.mark.parametrize(("line", "names"), SHORT_ENDS)
def test_chords_after_the_last_note_of_a_short_bar_are_shown(line, names):
    row = [row for row in page(line, width=120).split("\n") if row.startswith("chord")][-1]

    assert row.split("|")[2].split() == names.split()


def test_the_degrees_of_parts_are_counted_as_elsewhere():
    given = "'A minor: 1 3 6 7' --degrees major"
    alone, part = (
        json.loads(json_answer(last_answer(f"{line} {given}"))) for line in ("melody", "parts --for flute --melody")
    )

    degrees = [note["degree"] for note in alone["views"][0]["melody"]]
    assert degrees == ["1", "3", "6", "7"]
    assert [note["degree"] for note in part["parts"][0]["melody"]] == degrees
