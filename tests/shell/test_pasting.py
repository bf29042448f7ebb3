"""Pasted lines become bars of one line."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from nearhand.notation.errors import InputError
from nearhand.shell.pasting import MOST_CHARACTERS, joined
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

PASTES = [
    ("| Em | Bm/D |\n| Am/C | B7 |", "| Em | Bm/D | Am/C | B7 |"),
    ("Em | Bm/D\nAm/C | B7", "Em | Bm/D | Am/C | B7"), ("| Em | Bm/D\n| Am/C |", "| Em | Bm/D | Am/C |"),
    ("C F\nG C", "C F G C"), ("E minor:\n| Em |\n| B7 |", "E minor: | Em | B7 |"),
    ("|: C | F :|\n|: G | C :|", "|: C | F :|: G | C :|"), ("| C ||\n| F ||", "| C || F ||"),
    ("|: C |\n| F :|\n| G |", "|: C | F :| G |"), ("\r\n| C |\r\n\r\n| F |\r\n", "| C | F |"),
    ("# verse\n| C |\n#\n| F |", "| C | F |"), ('"| C |\n| F |"', "| C | F |"), ('"| C |"\n"| F |"', "| C | F |"),
    ("“| C |\n| F |”", "| C | F |"), ("| (Am) |\n| [3/4] D7 |", "| (Am) | [3/4] D7 |"), ("C\tF\n", "C F"),
    ("| C |\n#4o7 |", "| C | #4o7 |"), ("", ""), ("\n", ""), ("Em", "Em"), ("  Em ", "  Em "),
]  # fmt: skip


@pytest.mark.parametrize(("pasted", "line"), PASTES)
def test_lines_are_joined_with_a_bar_line_between(pasted, line):
    assert joined(pasted) == line


def bars_of(line):
    return [[slot.chord for slot in bar.slots] for bar in respond(Session(), line).session.tune.progression.bars]


@given(
    st.lists(
        st.lists(st.sampled_from(["C", "F", "Am7", "G7/B", "(Dm)"]), min_size=1, max_size=4), min_size=2, max_size=6
    )
)
def test_every_line_is_a_group_of_bars(groups):
    open_bars = "\n".join(" | ".join(group) for group in groups)
    closed_bars = "\n".join(f"| {' | '.join(group)} |" for group in groups)
    chords = [[chord] for group in bars_of("C: " + " | ".join(c for g in groups for c in g)) for chord in group]

    assert bars_of(f"C: {joined(closed_bars)}") == chords
    assert bars_of(f"C: {joined(open_bars)}") == chords


@given(st.text('ABCDEFG|: \n"#%[]/37m', max_size=60))
def test_a_paste_is_one_line_whatever_it_holds(pasted):
    assert not set(joined(pasted)) & set("\n\r")


def test_a_paste_too_long_for_a_line_is_refused_in_a_sentence():
    assert len(joined("C" * MOST_CHARACTERS)) == MOST_CHARACTERS
    with pytest.raises(InputError, match="a paste of 1,000,000 characters is too long for a line") as caught:
        joined("| C |\n" * 166_666 + "| C ")
    assert caught.value.hint == "save it as a chart file, and write open FILE"
