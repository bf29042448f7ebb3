"""Which form of minor a chord of a minor key belongs to."""

from __future__ import annotations

import pytest
from harmony_examples import key, key_free, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.sources import own_source, source_of
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MINOR

# Numeral; its tones in A minor; in C minor; which of the two movable degrees it uses ("6" raised sixth, "b6"
# lowered, 7 likewise); the form of minor that it is said to come from: lowered degrees alone natural, the
# leading tone harmonic, the raised sixth melodic, neither plainly diatonic. Chords: R. Hutchinson, Music Theory
# for the 21st-Century Classroom, DiatonicChordsInMinor, thirteen triads (iii° apart); Open Music Theory, triads.
# Spelled by arithmetic and by music21.
TABLE = """
i ; A C E ; C Eb G ; ; diatonic
ii° ; B D F ; D F Ab ; b6 ; natural minor
ii ; B D F# ; D F A ; 6 ; melodic minor
III ; C E G ; Eb G Bb ; b7 ; natural minor
III+ ; C E G# ; Eb G B ; 7 ; harmonic minor
iv ; D F A ; F Ab C ; b6 ; natural minor
IV ; D F# A ; F A C ; 6 ; melodic minor
v ; E G B ; G Bb D ; b7 ; natural minor
V ; E G# B ; G B D ; 7 ; harmonic minor
VI ; F A C ; Ab C Eb ; b6 ; natural minor
vi° ; F# A C ; A C Eb ; 6 ; melodic minor
VII ; G B D ; Bb D F ; b7 ; natural minor
vii° ; G# B D ; B D F ; 7 ; harmonic minor
i7 ; A C E G ; C Eb G Bb ; b7 ; natural minor
i(maj7) ; A C E G# ; C Eb G B ; 7 ; harmonic minor
iiø7 ; B D F A ; D F Ab C ; b6 ; natural minor
ii7 ; B D F# A ; D F A C ; 6 ; melodic minor
IIImaj7 ; C E G B ; Eb G Bb D ; b7 ; natural minor
III+maj7 ; C E G# B ; Eb G B D ; 7 ; harmonic minor
iv7 ; D F A C ; F Ab C Eb ; b6 ; natural minor
IV7 ; D F# A C ; F A C Eb ; 6 ; melodic minor
v7 ; E G B D ; G Bb D F ; b7 ; natural minor
V7 ; E G# B D ; G B D F ; 7 ; harmonic minor
VImaj7 ; F A C E ; Ab C Eb G ; b6 ; natural minor
viø7 ; F# A C E ; A C Eb G ; 6 ; melodic minor
VII7 ; G B D F ; Bb D F Ab ; b6 b7 ; natural minor
vii°7 ; G# B D F ; B D F Ab ; b6 7 ; harmonic minor
viiø7 ; G# B D F# ; B D F A ; 6 7 ; melodic minor
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in TABLE.strip().splitlines()]
MOVABLE = {"b6": -4, "6": 3, "b7": -2, "7": 5}


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "degrees", "source"), ROWS)
def test_every_chord_of_minor_comes_from_the_form_whose_degrees_it_uses(numeral, in_a, in_c, degrees, source):
    chord = parse_numeral(numeral, MINOR)

    assert chord.in_key(key("a")).tones == tuple(map(note, in_a.split()))
    assert chord.in_key(key("c")).tones == tuple(map(note, in_c.split()))
    assert {name for name, place in MOVABLE.items() if place in chord.places} == set(degrees.split())
    assert source_of(chord, MINOR) == own_source(chord, MINOR) == source


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "degrees", "source"), ROWS)
def test_every_chord_of_minor_keeps_its_numeral_and_its_source_in_a_piece(numeral, in_a, in_c, degrees, source):
    tonic, chord = parse_numeral("i", MINOR), parse_numeral(numeral, MINOR)
    analysis = analyse([tonic, chord, tonic], MINOR)[1]

    assert (analysis.numeral(), analysis.source) == (numeral, source)


@given(st.sampled_from(ROWS), st.integers(0, 6))
def test_the_bass_does_not_change_where_a_chord_comes_from(row, place):
    chord = parse_numeral(row[0], MINOR)

    assert source_of(chord._replace(bass=MINOR.degrees[place]), MINOR) == row[4]


@pytest.mark.parametrize(
    ("symbol", "source"),
    [
        ("Am", "borrowed from major"),  # vi with minor third: raised sixth and raised third, not diatonic to minor
        ("C", "borrowed from major"),  # the Picardy third: the one chord that minor borrows from major (MT21C)
        ("Cmaj7", "borrowed from major"),
        ("Db", "borrowed from phrygian"),
        ("A7", "chromatic"),
        ("F#m", "chromatic"),
    ],
)
def test_chords_from_outside_all_three_forms_are_borrowed_or_chromatic(symbol, source):
    # MT21C, Picardy3rd; Open Music Theory, modalMixture: raised sixth and seventh are no mixture, a raised third is.
    chord = key_free(symbol, key("c"))[0]

    assert own_source(chord, MINOR) is None
    assert source_of(chord, MINOR) == source
