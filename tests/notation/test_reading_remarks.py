"""Remarks on forms that another reader would take otherwise."""

from __future__ import annotations

import pytest
from strategies import key

from nearhand.notation.chart import read_chart
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import parse_key
from nearhand.notation.remarks import remarks_on

# Key, chart, remarks. That charts differ on a bare 2, 3 or 6: number charts of session players
# (second-hand). That IV/V may mean a chord over a degree: R. Hutchinson, *Music Theory for the 21st-Century
# Classroom*, "The IV/5 Sus Chord". The words are ours.
SIXTH = "6 is read as a major chord; the minor chord is written 6-"
SECOND = "2 is read as a major chord; the minor chord is written 2-"
REMARKS = [
    ("C", "| 1 | 4 | 5 |", []),
    ("C", "| 1 | 6 |", [SIXTH]),
    ("C", "| 6 | 6 | 2 |", [SIXTH, SECOND]),
    ("C", "7", ["7 is read as a major chord; the diminished chord is written 7°"]),
    ("C", "| 6- | 27 | b7 | 5/7 |", []),
    ("a", "| 5 | 57 |", []),
    ("a", "1", ["1 is read as a major chord; the minor chord is written 1-"]),
    ("a", "2", ["2 is read as a major chord; the diminished chord is written 2°"]),
    ("a", "| 3 | 6 | 7 |", []),
    ("C", "IV/V", ["IV/V is read as IV of V; the chord IV over the 5th degree is written IV/5"]),
    ("C", "I/III", ["I/III is read as I of III; the chord I over the 3rd degree is written I/3"]),
    ("C", "| V7/V | vii°7/ii | IV/5 | ii7/V | V/vi |", []),
    ("C", "| C/E | G7 | N.C. |", []),
]


@pytest.mark.parametrize(("home", "text", "expected"), REMARKS)
def test_a_form_with_another_reading_is_remarked_once(home, text, expected):
    assert list(remarks_on(read_chart(text), key(home))) == expected


def test_remarks_follow_the_counting_of_degrees():
    against_major = Conventions(degrees="major")

    assert remarks_on(read_chart("b3 b6 b7"), key("a"), against_major) == ()
    assert remarks_on(read_chart("1"), key("a"), against_major) == (
        "1 is read as a major chord; the minor chord is written 1-",
    )


@pytest.mark.parametrize("mode", ["dorian", "mixolydian", "aeolian"])
def test_the_major_dominant_is_at_home_in_minor_and_foreign_to_a_church_mode(mode):
    assert remarks_on(read_chart("5"), key("d")) == ()
    assert remarks_on(read_chart("5"), parse_key(f"D {mode}")) == (
        "5 is read as a major chord; the minor chord is written 5-",
    )
