"""Spelled intervals: sizes, names, inversion, and their laws."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import intervals, note

from nearhand.theory.interval import Interval, interval_class_quality, shortest

# Number, then semitones / distance on the line of fifths for each quality. Computed two ways that agreed:
# arithmetic on the line of fifths and music21 10.5.1.
QUALITIES = ("diminished", "minor", "perfect", "major", "augmented")
SIZES = """
unison  -     -      0/0    -    1/7
second  0/-12 1/-5   -      2/2  3/9
third   2/-10 3/-3   -      4/4  5/11
fourth  4/-8  -      5/-1   -    6/6
fifth   6/-6  -      7/1    -    8/8
sixth   7/-11 8/-4   -      9/3  10/10
seventh 9/-9  10/-2  -      11/5 12/12
octave  11/-7 -      12/0   -    13/7
"""
NAMED = [
    (f"{quality} {line.split()[0]}", steps, *map(int, cell.split("/")))
    for steps, line in enumerate(SIZES.strip().splitlines())
    for quality, cell in zip(QUALITIES, line.split()[1:], strict=True)
    if cell != "-"
]

# Semitones of compound intervals; source as above.
COMPOUND = [
    ("minor second", 13), ("major second", 14), ("augmented second", 15), ("minor third", 15),
    ("major third", 16), ("perfect fourth", 17), ("augmented fourth", 18), ("perfect fifth", 19),
    ("minor sixth", 20), ("major sixth", 21),
]  # fmt: skip

# Interval, from, to; source as above.
SPELLED = [
    ("minor sixth", "C", "Ab"), ("augmented sixth", "Ab", "F#"), ("diminished seventh", "F#", "Eb"),
    ("augmented second", "C", "D#"), ("diminished fourth", "B", "Eb"), ("augmented fourth", "F", "B"),
    ("diminished fifth", "B", "F"), ("minor third", "Db", "Fb"), ("major third", "G#", "B#"),
    ("major third", "D#", "F##"), ("minor seventh", "Gb", "Fb"), ("diminished seventh", "G#", "F"),
    ("perfect fifth", "B#", "F##"),
]  # fmt: skip

OCTAVE = Interval(0, 1)
UNISON = Interval(0, 0)
BY_NAME = {name: Interval(fifths, (steps - 4 * fifths) // 7) for name, steps, _, fifths in NAMED}


def test_the_table_holds_twenty_seven_simple_intervals():
    assert len(NAMED) == len(BY_NAME) == 27


@pytest.mark.parametrize(("name", "steps", "semitones", "fifths"), NAMED)
def test_fifths_and_octaves_give_steps_semitones_and_name(name, steps, semitones, fifths):
    interval = Interval(fifths, (steps - 4 * fifths) // 7)

    assert interval.steps == steps
    assert interval.semitones == semitones
    assert interval.name == name


@pytest.mark.parametrize("name", [name for name, *_ in NAMED if name != "perfect unison"])
def test_a_downward_interval_bears_the_name_of_the_upward_one(name):
    interval = BY_NAME[name]

    assert (-interval).name == name
    assert (-interval).is_downward
    assert not interval.is_downward


@pytest.mark.parametrize(("simple", "semitones"), COMPOUND)
def test_a_compound_interval_is_an_octave_more(simple, semitones):
    compound = BY_NAME[simple] + OCTAVE

    assert compound.semitones == semitones
    assert compound.name == f"{simple} and 1 octave"
    assert (compound + OCTAVE).name == f"{simple} and 2 octaves"


@pytest.mark.parametrize(("name", "steps", "semitones", "fifths"), NAMED)
def test_an_interval_and_its_inversion_make_an_octave(name, steps, semitones, fifths):
    inversion = OCTAVE + -BY_NAME[name]
    swapped = {"perfect": "perfect", "major": "minor", "augmented": "diminished"}
    swapped |= {after: before for before, after in swapped.items()}

    assert inversion.semitones == 12 - semitones
    assert steps + 1 + inversion.steps + 1 == 9
    assert inversion.fifths == -fifths
    assert interval_class_quality(inversion.fifths) == swapped[name.split()[0]]


@pytest.mark.parametrize(("name", "start", "end"), SPELLED)
def test_an_interval_leads_from_note_to_note_by_letter_and_accidental(name, start, end):
    assert note(start).up(BY_NAME[name].fifths) == note(end)


@pytest.mark.parametrize(
    ("fifths", "words"),
    [
        (14, "doubly augmented"),
        (-13, "doubly diminished"),
        (20, "3-fold augmented"),
        (-20, "3-fold diminished"),
    ],
)
def test_beyond_augmented_and_diminished_the_quality_is_counted(fifths, words):
    assert interval_class_quality(fifths) == words  # common practice, no source


@given(intervals)
def test_adding_a_unison_changes_nothing(interval):
    assert interval + UNISON == interval == UNISON + interval


@given(intervals, intervals)
def test_adding_and_taking_away_gives_the_interval_back(one, other):
    assert one + other + -other == one


@given(intervals)
def test_an_interval_and_its_inverse_make_a_unison(interval):
    inverse = -interval

    assert interval + inverse == UNISON
    assert -inverse == interval


@given(intervals, intervals, intervals)
def test_the_order_of_adding_does_not_matter(one, other, third):
    assert one + other == other + one
    assert (one + other) + third == one + (other + third)


@given(intervals, intervals)
def test_steps_and_semitones_add_up(one, other):
    assert (one + other).steps == one.steps + other.steps
    assert (one + other).semitones == one.semitones + other.semitones


@given(intervals.filter(lambda interval: interval != UNISON))
def test_of_an_interval_and_its_inverse_exactly_one_leads_down(interval):
    assert interval.is_downward != (-interval).is_downward


@given(st.integers(-20, 20))
def test_the_shortest_way_keeps_the_spelling_and_stays_within_a_tritone(fifths):
    way = shortest(fifths)

    assert way.fifths == fifths
    assert -6 < way.semitones <= 6
