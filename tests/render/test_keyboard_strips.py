"""The keyboard strips: each mark stands on the key that is played."""

from __future__ import annotations

import re

import pytest
from render.page_words import CHARTS, last_answer

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of

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
