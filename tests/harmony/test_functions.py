"""Tonic, predominant, dominant and colour."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, key, relative_chords
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.theory.mode import MAJOR, MINOR

# Open Music Theory, harmonic functions; R. Hutchinson, Music Theory for the 21st-Century Classroom, harmonic
# function. Of vi and iii the first says tonic, the second tonic prolongation: both are tonic here.
IN_MAJOR = "C tonic, Am tonic, Em tonic, Dm predominant, F predominant, G dominant, G7 dominant, Bdim dominant"
IN_MINOR = (
    "Cm tonic, Ab tonic, Eb tonic, Ddim predominant, Dm7b5 predominant, Fm predominant, G dominant, G7 dominant, "
    "Bdim dominant, Bdim7 dominant"
)
# N6, V/V and vii°/V are predominants (as above). The subtonic chord may stand before tonic, dominant or
# predominant (MT21C, SubtonicVIIinPopMusic), so that it is none of the three. The rest is common practice, no
# source: a borrowed chord on the lowered sixth prepares the dominant; vi° is IV without its root. Between two tonics
# F#dim7 holds their root and is a common-tone diminished seventh (handouts of N. Rogers and S. Birch, second-hand);
# Bb7 before the tonic of major is the backdoor dominant (common practice, no source).
CHROMATIC_IN_MAJOR = (
    "D predominant, D7 predominant, F#dim predominant, F#dim7 colour, Db/F predominant, Fm predominant, "
    "Ab predominant, Bb colour, Bb7 dominant, Bbm colour, Db predominant, A7 dominant, E7 dominant, Bdim7 dominant, "
    "Gm dominant, F#7 colour, C#m colour, G7#5 dominant, G7b9 dominant"
)
CHROMATIC_IN_MINOR = (
    "Bb colour, Bb7 colour, D7 predominant, F#dim7 colour, Db/F predominant, F predominant, Dm predominant, "
    "Adim predominant, Gm dominant, C tonic, G7#9 dominant, A7 colour"
)
ROWS = [
    (home, *row.split())
    for home, table in (("C", IN_MAJOR), ("c", IN_MINOR), ("C", CHROMATIC_IN_MAJOR), ("c", CHROMATIC_IN_MINOR))
    for row in table.split(",")
]


@pytest.mark.parametrize(("home", "symbol", "function"), ROWS)
def test_a_chord_has_the_function_of_its_degree(home, symbol, function):
    tonic = "Cm" if home == "c" else "C"

    assert analysed(f"{tonic} {symbol} {tonic}", key(home))[1].function == function


@pytest.mark.parametrize(
    ("home", "symbols", "function"),
    [
        ("C", "C F#dim7 G", "predominant"),  # vii°7 of V
        ("c", "Cm F#dim7 G", "predominant"),
        ("C", "C Bb7 F", "colour"),
        ("C", "C Ab7 G", "predominant"),  # augmented sixth
        ("C", "C Ab7 G7", "predominant"),  # tritone substitute of V7/V
        ("C", "C Db7 C", "dominant"),
        ("C", "C Eb7 Dm", "dominant"),
        ("C", "C F/G C", "dominant"),  # suspended dominant: MT21C, IV over 5
        ("C", "C Dm7/G C", "dominant"),
    ],
)
def test_what_follows_may_decide_the_function(home, symbols, function):
    # augmented sixths and applied chords to V are predominants (as above); the substitutes: common practice, no source
    assert analysed(symbols, key(home))[1].function == function


@pytest.mark.parametrize(("home", "symbols"), [("C", "C F C"), ("c", "Cm Fm Cm")])
def test_the_subdominant_before_the_tonic_stays_a_predominant(home, symbols):
    # MT21C calls IV before I a tonic prolongation (plagal); Open Music Theory keeps it among the predominants.
    assert analysed(symbols, key(home))[1].function == "predominant"


@pytest.mark.parametrize(
    ("home", "symbols", "function"),
    [
        ("C", "C/G G", "dominant"),
        ("C", "C/G G7", "dominant"),
        ("c", "Cm/G G7", "dominant"),
        ("C", "C/G Gsus4", "dominant"),
        ("C", "C/G", "tonic"),  # nothing behind it
        ("C", "C/G F/A", "tonic"),  # a passing six-four
        ("C", "C/G G/B", "tonic"),  # the bass does not stay
        ("C", "C/E G", "tonic"),
        ("C", "F/C C", "predominant"),  # a pedal six-four
        ("C", "C/G Em/G", "tonic"),
    ],
)
def test_a_tonic_six_four_is_dominant_where_the_dominant_follows_on_the_same_bass(home, symbols, function):
    # Open Music Theory, cadenceTypes; MT21C, TheCadentialSixFourChord and TypesOfSixFourChords
    assert analysed(symbols, key(home))[0].function == function


FUNCTIONS = {"tonic", "predominant", "dominant", "colour"}


@given(st.lists(relative_chords(), min_size=1, max_size=4), st.sampled_from([MAJOR, MINOR]))
def test_every_chord_has_one_of_four_functions_and_an_applied_chord_is_never_at_rest(chords, mode):
    for analysis in analyse(chords, mode):
        assert analysis.function in FUNCTIONS
        if analysis.target is not None:
            assert analysis.function in ("predominant", "dominant")


@given(relative_chords(), relative_chords(), st.sampled_from([MAJOR, MINOR]))
def test_the_inversion_changes_the_function_of_the_tonic_alone(chord, after, mode):
    on_root, inverted = (analyse([form, after], mode)[0] for form in (chord._replace(bass=chord.root), chord))
    if chord.root != 0 and chord.bass in chord.places:  # over a foreign bass F/G is a suspended dominant
        assert on_root.function == inverted.function
