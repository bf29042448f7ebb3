"""The page of ``keys`` with a melody: elimination, the relative key, the ranking, and the profile, in this order."""

from __future__ import annotations

import pytest
from render.page_words import WIDTHS, page

from nearhand.harmony.key_profiles import PROFILES

MELODY = '"D4 E F G A Bb C#5 D"'


def test_elimination_and_relative_stand_before_the_ranking_and_the_profile_behind_it():
    # one flat and a raised seventh are D minor (Open Music Theory, key signatures and minor scales)
    lines = page(f"keys --melody {MELODY}", width=200).split("\n")

    assert lines[0] == "B♭, but no E♭: one flat. C♯ is the raised seventh of D minor."
    assert lines[1].startswith("D minor rather than F major: it begins and ends on D, D's leading tone C♯ sounds")
    assert lines[2].startswith("D minor")
    assert lines[-1] == "r: correlation with the profile of Albrecht-Shanahan 2013"


@pytest.mark.parametrize("name", PROFILES)
def test_the_page_names_the_profile_that_was_chosen(name):
    text = page(f"keys --melody {MELODY} --profile {name}")

    assert text.endswith(f"r: correlation with the profile of {PROFILES[name].source}")


def test_beside_chords_the_melody_has_a_head_of_its_own():
    lines = page(f'keys "| C F | G7 C | Am D7 | G | G | G |" --melody {MELODY}', width=400).split("\n")
    heads = [lines.index("The melody"), lines.index("Taken as one key throughout")]

    assert lines[0] == "Bars 1 to 2: C major."
    assert heads == sorted(heads)
    assert lines[heads[0] + 1] == "B♭, but no E♭: one flat. C♯ is the raised seventh of D minor."


def test_without_a_melody_nothing_is_said_of_one():
    text = page("keys | Am | F | C | G |")

    assert "melody" not in text
    assert "profile" not in text


def test_for_ears_percents_are_words():
    text = " ".join(page("layout spoken", f"keys --melody {MELODY} --profile temperley").split())

    assert text.startswith("B flat, but no E flat: one flat. C sharp is the raised seventh of D minor. D minor rather")
    assert "D and A are 38 percent of the notes, F and C 12 percent." in text
    assert text.endswith("The profile is that of Temperley 2007.")
    assert "%" not in text


@pytest.mark.parametrize("width", WIDTHS)
def test_the_page_fits_its_width(width):
    for line in ("keys --melody C4", f'keys "| C | F |" --melody {MELODY}'):
        assert max(map(len, page(line, width=width).split("\n"))) <= width
        assert page(line, width=width, plain=True).isascii()
