"""The keyboard strips: each mark stands on the key that is played."""

from __future__ import annotations

import re

import pytest
from render.page_words import CHARTS, last_answer, page

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.voicing.wishes import STYLES

SEMITONES = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
BLACK = (1, 3, 6, 8, 10)
KEYS = {False: ("▁", "▀"), True: ("_", "'")}


def key_number(name):
    """The number of a named key: C4 is middle C, 60 (MIDI 1.0; scientific pitch notation), B#3 too."""
    letter, accidentals, octave = re.fullmatch(r"([A-G])([#b]*)(-?\d)", name).groups()
    return 12 * (int(octave) + 1) + SEMITONES[letter] + accidentals.count("#") - accidentals.count("b")


def blocks(text, plain):
    """Each block of strips: the line of octave marks above it, and of each strip its first column and its keys."""
    keys = f"[{''.join(KEYS[plain])}LR=]+"
    found, before, octaves = [], None, ""
    for line in text.split("\n"):
        strip = re.fullmatch(rf"\S+ +({keys}(?: {keys})?)", line)
        if strip and before is None:
            before = octaves
            found.append((octaves, []))
        if strip:
            found[-1][1].append((strip.start(1), strip.group(1)))
        else:
            before, octaves = None, line
    return found


def played(view):
    """The key numbers of the left and the right hand, chord by chord."""
    return [
        (
            [key_number(str(pitch)) for pitch in chord.voicing.left],
            [key_number(str(pitch)) for pitch in chord.voicing.right],
        )
        for chord in view.chords
        if chord.voicing is not None
    ]


@pytest.mark.parametrize("plain", [False, True], ids=["signs", "plain"])
@pytest.mark.parametrize("width", [30, 40, 80, 120])
@pytest.mark.parametrize("chart", CHARTS, ids=lambda path: path.stem)
def test_every_mark_stands_on_the_key_that_is_played(chart, width, plain):
    answer = last_answer(f"open {chart}", plain=plain)
    white, black = KEYS[plain]
    hands = iter(played(answer.views[0]))
    drawn = 0

    for octaves, strips in blocks(text_of(draw(answer, Page(width, plain))), plain):
        block = [(indent, strip, *next(hands)) for indent, strip in strips]
        numbers = columns_of(block)
        for match in re.finditer(r"C(\d)", octaves):
            assert numbers[match.start()] == 12 * (int(match.group(1)) + 1)
        for indent, strip, left, right in block:
            for column, character in enumerate(strip, start=indent):
                number = numbers.get(column)
                if number in left:
                    assert character in "L="
                elif number in right:
                    assert character in "R="
                else:
                    assert character == (" " if number is None else black if number % 12 in BLACK else white)
            drawn += 1

    assert drawn == len(played(answer.views[0]))


def columns_of(block):
    """Column to key number, counted from the lowest marked key of each hand: one column a key, one blank between."""
    numbers = {}
    indent, strip, left, right = block[0]
    gap = strip.find(" ")
    parts = [(0, len(strip), left[0])] if gap < 0 else [(0, gap, left[0]), (gap + 1, len(strip), right[0])]
    for start, end, number in parts:
        marked = next(at for at in range(start, end) if strip[at] in "LR=")
        numbers |= {indent + at: number + at - marked for at in range(start, end)}
    return numbers


def test_a_narrow_page_leaves_out_the_keys_between_the_hands():
    text = text_of(draw(last_answer("C: | C |"), Page(20)))  # from C3 to G4 are 20 keys, and a label is two columns

    ((octaves, strips),) = blocks(text, False)
    assert [strip.count(" ") for _, strip in strips] == [1]
    assert octaves == "  C3C4"
    assert max(map(len, text.split("\n"))) <= 20


def test_a_page_narrower_still_has_the_names_above_the_keys():
    lines = text_of(draw(last_answer("C: | C#m7b5/G# | F |"), Page(20))).split("\n")

    assert set(lines[lines.index("C♯m7♭5/G♯") + 1]) == {"L", " ", "R", "▁", "▀"}
    assert max(map(len, lines)) <= 20


def test_held_keys_are_marked_in_both_hands():
    # Em7 to Em7/E: nothing moves; C to F: the C is held (common practice, no source)
    (_, strips), *_ = blocks(text_of(draw(last_answer("C: | C | F/C |"), Page(80))), False)

    assert [strip.count("=") for _, strip in strips] == [0, 2]
    assert [strip.count("L") for _, strip in strips] == [1, 0]
    assert [strip.count("R") for _, strip in strips] == [3, 2]


SEVENTHS = "C: | Dm7 | G7 | N.C. | Cmaj7 | A7 |"
SAME_NUMBER_OF_VOICES = [style for style in STYLES if style not in ("quartal", "upper-structure")]


def strips_of(text):
    """All strips of a page, with their labels beside them or above."""
    return [
        found[1]
        for line in text.split("\n")
        if (found := re.fullmatch(r"(?:[A-G]\S* +)?([▁▀LR=]+(?: [▁▀LR=]+)?)", line))
    ]


def marked(chord, before):
    """The marks of a chord's keys, low to high, worked out here: keys, letters, and those of each hand."""
    hands = [[key_number(str(pitch)) for pitch in hand] for hand in (chord.left, chord.right)]
    marks = dict.fromkeys(hands[0], "L") | dict.fromkeys(hands[1], "R")
    if before is not None:
        marks |= {key: "=" for key in hands[0] if key in [pitch.midi for pitch in before.left]}
        voices = zip(chord.upper, before.upper, strict=True)
        marks |= {pitch.midi: "=" for pitch, old in voices if pitch.midi == old.midi}
    return sorted(marks.items()), *hands


@pytest.mark.parametrize("width", [40, 80])
@pytest.mark.parametrize("style", SAME_NUMBER_OF_VOICES)
def test_in_every_family_each_key_is_marked_by_its_hand_and_a_held_one_as_held(style, width):
    text = page(SEVENTHS, f"voice {style}", width=width)
    voicings = [
        chord.voicing for chord in last_answer(SEVENTHS, f"voice {style}").views[0].chords if chord.voicing is not None
    ]
    strips = strips_of(text)

    assert len(strips) == len(voicings) == 4
    for strip, chord, before in zip(strips, voicings, [None, *voicings], strict=False):
        marks, left, right = marked(chord, before)
        assert [sign for sign in strip if sign in "LR="] == [letter for _, letter in marks]
        columns = [at for at, sign in enumerate(strip) if sign in "LR="]
        for hand in (left, right) if " " in strip else (left + right,):
            places = [column for column, (key, _) in zip(columns, marks, strict=True) if key in hand]
            assert [place - places[0] for place in places] == [key - hand[0] for key in hand]


@pytest.mark.parametrize("style", STYLES)
@pytest.mark.parametrize("left", ["left bass", "left fifth", "left tenth"])
@pytest.mark.parametrize("width", [40, 80])
def test_no_key_is_marked_twice_where_the_hands_come_near_each_other(style, left, width):
    lines = ("C: | C | F | G7 | C |", f"voice {style}", "span tenth", left)
    strips = strips_of(page(*lines, width=width))
    voicings = [chord.voicing for chord in last_answer(*lines).views[0].chords]

    assert [sum(sign in "LR=" for sign in strip) for strip in strips] == [len(set(each.pitches)) for each in voicings]
    assert all(len(strip) <= width for strip in strips)


def test_drop_2_shows_which_note_the_left_hand_reaches_up_for():
    # C E G B with the second from the top, G, an octave lower: G3 over the bass C3, and C4 E4 B4 (common practice)
    strips = strips_of(page("C: | Cmaj7 | Dm7 |", "voice drop2", "pin 1 G3 C4 E4 B4", width=120))
    first = strips[0][strips[0].index("L") :]

    assert [(at, sign) for at, sign in enumerate(first) if sign in "LR="] == [
        (0, "L"), (7, "L"), (12, "R"), (16, "R"), (23, "R"),
    ]  # fmt: skip
