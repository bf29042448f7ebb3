"""Applied dominants and leading-tone chords of every degree that can have them, in every key."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, chords, key, note, numerals, signs
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.chord import relative_to
from nearhand.theory.key import Key

# Target; its chord; V7 of it; its tones; vii7 of it; its tones. R. Hutchinson, Music Theory for the 21st-Century
# Classroom, SecondaryDominantsInMajorAndMinor and SecondaryDiminishedChordsInMajorAndMinor; Open Music Theory,
# appliedChords. Tones by arithmetic and by music21. Minor targets take vii°7; major targets viiø7 (or vii°7).
IN_C = """
ii ; Dm ; A7 ; A C# E G ; C#dim7 ; C# E G Bb
iii ; Em ; B7 ; B D# F# A ; D#dim7 ; D# F# A C
IV ; F ; C7 ; C E G Bb ; Em7b5 ; E G Bb D
V ; G ; D7 ; D F# A C ; F#m7b5 ; F# A C E
vi ; Am ; E7 ; E G# B D ; G#dim7 ; G# B D F
"""
IN_C_MINOR = """
III ; Eb ; Bb7 ; Bb D F Ab ; Dm7b5 ; D F Ab C
iv ; Fm ; C7 ; C E G Bb ; Edim7 ; E G Bb Db
V ; G ; D7 ; D F# A C ; F#dim7 ; F# A C Eb
VI ; Ab ; Eb7 ; Eb G Bb Db ; Gm7b5 ; G Bb Db F
VII ; Bb ; F7 ; F A C Eb ; Am7b5 ; A C Eb G
"""
FIGURES = ("7", "65", "43", "42")


def rows():
    """Home key, target, target's chord, the applied chord, its tones, its numeral without figure."""
    for home, table in (("C", IN_C), ("c", IN_C_MINOR)):
        for line in table.strip().splitlines():
            target, goal, dominant, tones, leading, leading_tones = (field.strip() for field in line.split(";"))
            mark = "vii°" if "dim7" in leading else "viiø"
            yield home, target, goal, dominant, tones, "V"
            yield home, target, goal, leading, leading_tones, mark


ROWS = list(rows())
# In minor two of them are chords of the key itself and keep its numerals (MT21C: VII7 and V7/III are both right).
OWN = {("c", "III", "V"): "VII", ("c", "III", "viiø"): "iiø"}


def expected(home, target, mark, inversion):
    own = OWN.get((home, target, mark))
    return own + FIGURES[inversion] if own else f"{mark}{FIGURES[inversion]}/{target}"


def test_the_table_holds_two_chords_for_each_of_ten_degrees():
    assert len(ROWS) == 20
    assert [tuple(map(str, chords(row[3])[0].tones)) for row in ROWS] == [tuple(row[4].split()) for row in ROWS]


@given(st.sampled_from(ROWS), st.integers(-7, 7), st.integers(0, 3))
def test_an_applied_chord_is_named_for_its_degree_in_every_key_and_inversion(row, fifths, inversion):
    home, target, goal, symbol, tones, mark = row
    old, new = key(home), key(home).moved(fifths)
    applied, goal_chord = (chord_moved(name, old, new) for name in (symbol, goal))
    applied = applied._replace(bass=applied.tones[inversion])
    tonic = parse_chord(write_chord(chord_moved(home[0].upper() + "m" * home.islower(), old, new), PLAIN))
    line = [relative_to(chord, new) for chord in (tonic, applied, goal_chord)]

    assert applied.tones == tuple(note(tone).up(fifths) for tone in tones.split())
    assert analyse(line, new.mode)[1].numeral() == expected(home, target, mark, inversion)


def chord_moved(symbol, old: Key, new: Key):
    """A chord symbol, moved to another key and read again as it is written there."""
    return parse_chord(write_chord(relative_to(parse_chord(symbol), old).in_key(new), PLAIN))


@pytest.mark.parametrize("row", ROWS)
def test_the_function_of_an_applied_chord_is_to_lead_to_its_degree(row):
    # Open Music Theory, appliedChords; MT21C: an applied chord to V is predominant in the home key.
    home, target, goal, symbol, _, mark = row
    tonic = "Cm" if home == "c" else "C"
    analysis = analysed(f"{tonic} {symbol} {goal}", key(home))[1]

    if (home, target, mark) in OWN:
        assert (analysis.source, analysis.target) == ("natural minor", None)
    else:
        assert analysis.source == "applied"
        assert analysis.function == ("predominant" if target == "V" else "dominant")


# Triads, too, are recognised: a major triad a fifth above, a diminished one a semitone below (MT21C, as above).
@pytest.mark.parametrize(
    ("home", "symbols", "expected_numerals"),
    [
        ("C", "A Dm", "V/ii ii"),
        ("C", "B Em", "V/iii iii"),
        ("C", "C#dim Dm", "vii°/ii ii"),
        ("C", "F#dim/A G", "vii°6/V V"),
        ("c", "D G", "V/V V"),
        ("c", "Eb Ab", "III VI"),
        ("c", "F Bb", "V/VII VII"),
        ("c", "Adim Bb", "vii°/VII VII"),
        ("c", "Cm C Fm", "i V/iv iv"),
        # Irregular but common resolutions (MT21C, IrregularResoltionsOfSecondaryDominants).
        ("C", "D F", "V/V IV"),
        ("C", "E F", "V/vi IV"),
        ("C", "C7/Bb A7", "V42/IV V7/ii"),
        ("C", "D Bb", "V/V bVII"),
    ],
)
def test_applied_triads_and_irregular_resolutions_keep_the_numeral_of_their_degree(home, symbols, expected_numerals):
    assert numerals(symbols, key(home)) == signs(expected_numerals)


@pytest.mark.parametrize(
    ("home", "symbols"), [("C", "F#7 Bdim"), ("C", "F# Bdim"), ("c", "A7 Ddim"), ("C", "A#dim7 Bdim")]
)
def test_no_chord_is_applied_to_a_diminished_one(home, symbols):
    # Only major and minor triads can stand for a tonic (MT21C, SecondaryDominantsInMajorAndMinor).
    assert analysed(symbols, key(home))[0].target is None


@pytest.mark.parametrize(
    ("home", "symbols", "expected_numerals"),
    [
        ("c", "F7 Bb", "V7/VII VII"),  # MT21C: V/VII if it moves to B flat, IV if it moves to G or B°
        ("c", "F7 G7", "IV7 V7"),
        ("c", "F Bdim", "IV vii°"),
        ("c", "F7", "IV7"),
        ("c", "Am7b5 Bb", "viiø7/VII VII"),
        ("c", "Am7b5 Bdim", "viø7 vii°"),
    ],
)
def test_a_chord_with_the_raised_sixth_is_applied_only_before_the_subtonic(home, symbols, expected_numerals):
    assert numerals(symbols, key(home)) == signs(expected_numerals)
