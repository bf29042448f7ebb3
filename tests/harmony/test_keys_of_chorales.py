"""Keys of the chorales by J. S. Bach whose analyses music21's package ships, against the keys that the analysts name.

The analysts mark short passages as keys of their own that we take for applied chords, so agreement cannot be whole.
"""

from __future__ import annotations

from itertools import groupby

from romantext import FILES, tokens
from strategies import key

from nearhand.harmony.key_finding import rank_keys
from nearhand.harmony.modulation import regions_of
from nearhand.notation.conventions import Conventions
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import relative_to
from nearhand.theory.progression import Bar, Progression, Slot

OF_THE_SCALE = Conventions(sevenths="scale")
LONG_ENOUGH = 6
"""Chords of a passage from which a key can be told."""


SLIP = "viii"
"""How a figure with an i too many begins."""


def chord_of(figure, home):
    return parse_numeral(figure, home.mode, OF_THE_SCALE).in_key(home)


def chorales():
    """Each chorale as pairs of chord and key."""
    found = []
    for path in FILES:
        if "bach" in str(path):
            rows = tokens(path.read_text(encoding="utf-8"))
            figures = [(figure, key(home)) for figure, home in rows if not figure.startswith(SLIP)]
            found.append([(chord_of(figure, home), home) for figure, home in figures])
    return found


def test_nine_of_ten_passages_are_in_the_key_that_the_analyst_names():
    passages = [list(rows) for chorale in chorales() for _, rows in groupby(chorale, key=lambda row: row[1])]
    long = [rows for rows in passages if len(rows) >= LONG_ENOUGH]
    right = [rows for rows in long if rank_keys([chord for chord, _ in rows])[0].key == rows[0][1]]

    assert len(long) >= 80
    assert len(right) >= 0.9 * len(long)


def test_three_of_four_chords_lie_in_a_region_of_the_key_that_the_analyst_names():
    right = total = changes = marked = 0
    for rows in chorales():
        home = rows[0][1]
        progression = Progression(home, tuple(Bar((Slot(relative_to(chord, home), 1),)) for chord, _ in rows))
        regions = regions_of(progression)
        changes, marked = changes + len(regions), marked + len(list(groupby(row[1] for row in rows)))
        for region in regions:
            keys = [own for _, own in rows[region.first_chord : region.last_chord + 1]]
            total, right = total + len(keys), right + keys.count(region.key)

    assert right >= 0.75 * total
    assert marked / 3 <= changes <= marked  # no more turns than an analyst hears
