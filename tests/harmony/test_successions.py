"""What commonly follows a chord: falling fifths, the usual steps, and what applied dominants lead to."""

from __future__ import annotations

import pytest

from nearhand.harmony.successions import likely_next
from nearhand.notation.conventions import PLAIN
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR, MODES


def following(numeral, mode):
    chord = None if numeral is None else parse_numeral(numeral, mode)
    return [write_numeral(each, mode, PLAIN) for each in likely_next(chord, mode)]


# R. Hutchinson, Music Theory for the 21st-Century Classroom, "The circle of fifths progression":
# I IV viio iii vi ii V I.
@pytest.mark.parametrize(
    ("chord", "after"), [("I", "IV"), ("viio", "iii"), ("iii", "vi"), ("vi", "ii"), ("ii", "V"), ("V", "I")]
)
def test_a_chord_is_followed_by_the_one_a_fifth_below(chord, after):
    assert after in following(chord, MAJOR)


# Common practice, no source.
STEPS = [
    (MAJOR, None, "I IV V vi"), (MAJOR, "ii7", "V7 V viio"), (MAJOR, "V7", "I vi IV"), (MAJOR, "IV", "V V7 I ii"),
    (MAJOR, "iv", "V V7 I ii"), (MINOR, None, "i iv VI V"), (MINOR, "iio", "V7 V"), (MINOR, "V7", "i VI iv"),
    (MINOR, "viio7", "i VI iv"), (MINOR, "VII", "III i VI"), (MINOR, "v6", "i VI iv"),
]  # fmt: skip
APPLIED = [
    (MAJOR, "V7/ii", "ii"),
    (MAJOR, "V7/V", "V"),
    (MAJOR, "viio7/V", "V"),
    (MINOR, "V7/iv", "iv"),
    (MINOR, "VII7", "III"),
]


@pytest.mark.parametrize(("mode", "chord", "expected"), STEPS, ids=str)
def test_these_steps_are_usual(mode, chord, expected):
    assert " ".join(following(chord, mode)) == expected


@pytest.mark.parametrize(("mode", "chord", "goal"), APPLIED, ids=str)
def test_an_applied_chord_leads_to_its_goal(mode, chord, goal):
    assert following(chord, mode)[0] == goal


@pytest.mark.parametrize("mode", MODES.values(), ids=lambda mode: mode.name)
def test_something_follows_every_chord_in_every_mode_and_nothing_twice(mode):
    for numeral in (
        "I",
        "bII",
        "ii",
        "bIII",
        "iii7",
        "IV",
        "#IV",
        "V",
        "bVI7",
        "vio7",
        "bVII",
        "viio",
        "I7",
        "#vo7",
        None,
    ):
        found = following(numeral, mode)
        assert found and len(found) == len(set(found))
