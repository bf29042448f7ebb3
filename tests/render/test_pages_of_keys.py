"""The page of ``keys`` with a melody: elimination, the relative key, the ranking, and the profile, in this order."""

from __future__ import annotations

from pathlib import Path

import pytest
from render.page_words import WIDTHS, page

from nearhand.harmony.key_profiles import PROFILES

CHARTS = Path(__file__).parents[2] / "progressions"
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
    assert "D and A are 38 percent of the notes, F and C 13 percent." in text
    assert text.endswith("The profile is that of Temperley 2007.")
    assert "%" not in text


def test_a_church_mode_is_named_first_and_told_from_the_key_of_its_third():
    # dorian is minor with a raised sixth (Open Music Theory, "Diatonic Modes")
    lines = page('keys --melody "E4 F# G A B C#5 D E B A F# E4"', width=200).split("\n")

    assert lines[0] == "F♯ and C♯, but no G♯: two sharps."
    assert lines[1].startswith("E dorian rather than E minor: every note fits, C♯ is its raised sixth, no C sounds")
    assert lines[2].startswith("E dorian")


def test_altered_notes_leave_the_signature_of_the_key_that_is_ranked_first():
    text = page(f"keys {CHARTS / 'tangerine-ferry.toml'}", width=400)

    assert "The melody\nB♭ and E♭, but A as well as A♭: two flats. G♭, D♭, A♭, E and B lie outside.\nB♭ major" in text
    assert "A, its leading tone, sounds 6 times in chords and melody" in text


def test_in_sentences_percents_are_words_and_never_part_from_their_number():
    text = page(f"keys --melody {MELODY}")
    sentences = [each for each in text.split("\n") if "%" in each]

    assert all(each.split()[-1] == "%" and len(each.split()) == 4 for each in sentences)  # the columns


@pytest.mark.parametrize("width", WIDTHS)
def test_the_page_fits_its_width(width):
    for line in ("keys --melody C4", f'keys "| C | F |" --melody {MELODY}'):
        assert max(map(len, page(line, width=width).split("\n"))) <= width
        assert page(line, width=width, plain=True).isascii()


def test_no_key_is_certain():
    line = 'keys --melody "E4 F# G A B D# E F# G E D# E"'

    assert " 99 %" in page(line) and "100 %" not in page(line)
    assert "E minor: 99 percent." in page("layout spoken", line)
