"""Chords that a major key borrows from the other modes on its tonic."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, key, note, signs

from nearhand.harmony.analysis import analyse
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MODES

# Mode; its scale on C; its triads; its sevenths, as numerals of C major (a capital with bare 7 is a dominant
# seventh). Scales: Open Music Theory, scales; R. Hutchinson, Music Theory for the 21st-Century Classroom,
# TableOfScales. Chords by arithmetic and by music21.
SCALES = """
ionian ; C D E F G A B ; I ii iii IV V vi vii° ; Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7
dorian ; C D Eb F G A Bb ; i ii bIII IV v vi° bVII ; i7 ii7 bIIImaj7 IV7 v7 viø7 bVIImaj7
phrygian ; C Db Eb F G Ab Bb ; i bII bIII iv v° bVI bvii ; i7 bIImaj7 bIII7 iv7 vø7 bVImaj7 bvii7
lydian ; C D E F# G A B ; I II iii #iv° V vi vii ; Imaj7 II7 iii7 #ivø7 Vmaj7 vi7 vii7
mixolydian ; C D E F G A Bb ; I ii iii° IV v vi bVII ; I7 ii7 iiiø7 IVmaj7 v7 vi7 bVIImaj7
aeolian ; C D Eb F G Ab Bb ; i ii° bIII iv v bVI bVII ; i7 iiø7 bIIImaj7 iv7 v7 bVImaj7 bVII7
locrian ; C Db Eb F Gb Ab Bb ; i° bII biii iv bV bVI bvii ; iø7 bIImaj7 biii7 iv7 bVmaj7 bVI7 bvii7
harmonic ; C D Eb F G Ab B ; i ii° bIII+ iv V bVI vii° ; i(maj7) iiø7 bIII+maj7 iv7 V7 bVImaj7 vii°7
melodic ; C D Eb F G A B ; i ii bIII+ IV V vi° vii° ; i(maj7) ii7 bIII+maj7 IV7 V7 viø7 viiø7
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in SCALES.strip().splitlines()]
SCALE_OF = {row[0]: set(row[1].split()) for row in ROWS}


@pytest.mark.parametrize(("mode", "scale", "triads", "sevenths"), ROWS)
def test_the_numerals_of_every_mode_are_the_thirds_of_its_scale(mode, scale, triads, sevenths):
    tones = [note(name) for name in scale.split()]
    if mode in MODES:
        assert list(key(f"C {mode}").scale()) == tones
    for count, numerals in ((3, triads), (4, sevenths)):
        for degree, numeral in enumerate(numerals.split()):
            thirds = tuple(tones[(degree + 2 * third) % 7] for third in range(count))
            assert parse_numeral(numeral, MAJOR).in_key(key("C")).tones == thirds


# Symbol in C, numeral, source. Ordinary mixture: MT21C, ModeMixtureSection; Open Music Theory, modalMixture. Of
# several modes that hold a chord the first in the order natural minor, harmonic minor, dorian, mixolydian,
# phrygian, lydian is named (common practice, no source).
BORROWED = """
Cm i natural minor
Ddim ii° natural minor
Eb bIII natural minor
Fm iv natural minor
Gm v natural minor
Ab bVI natural minor
Bb bVII natural minor
Cm7 i7 natural minor
Dm7b5 iiø7 natural minor
Ebmaj7 bIIImaj7 natural minor
Fm7 iv7 natural minor
Gm7 v7 natural minor
Abmaj7 bVImaj7 natural minor
Bb7 bVII7 natural minor
Bdim7 vii°7 harmonic minor
Ebaug bIII+ harmonic minor
Cm(maj7) i(maj7) harmonic minor
Adim vi° dorian
Am7b5 viø7 dorian
F7 IV7 dorian
Bbmaj7 bVIImaj7 dorian
Db bII phrygian
Dbmaj7 bIImaj7 phrygian
Gdim v° phrygian
Gm7b5 vø7 phrygian
Bbm bvii phrygian
Bbm7 bvii7 phrygian
Eb7 bIII7 phrygian
Bm vii lydian
Bm7 vii7 lydian
Gmaj7 Vmaj7 lydian
"""
CHORDS = [tuple(line.split(maxsplit=2)) for line in BORROWED.strip().splitlines()]


@pytest.mark.parametrize(("symbol", "numeral", "mode"), CHORDS)
def test_a_borrowed_chord_of_major_is_named_with_the_mode_it_comes_from(symbol, numeral, mode):
    after = "F" if symbol == "Bb7" else "C"  # before the tonic Bb7 is the backdoor dominant
    analysis = analysed(f"C {symbol} {after}", key("C"))[1]

    assert analysis.numeral() == signs(numeral)
    assert analysis.source == f"borrowed from {mode}"
    assert analysis.target is None


@pytest.mark.parametrize(("symbol", "numeral", "mode"), CHORDS)
def test_the_named_mode_holds_the_chord_and_major_does_not(symbol, numeral, mode):
    scale = SCALE_OF[{"natural minor": "aeolian", "harmonic minor": "harmonic"}.get(mode, mode)]
    tones = {str(tone) for tone in analysed(symbol, key("C"))[0].chord.in_key(key("C")).tones}

    assert tones <= scale
    assert not tones <= SCALE_OF["ionian"]


@pytest.mark.parametrize("symbol", ["Ebm", "Gb", "Ab7"])
def test_nothing_is_borrowed_from_locrian(symbol):
    # It holds these chords, but nobody hears them as taken from there (common practice, no source).
    assert analysed(f"C {symbol} F", key("C"))[1].source == "chromatic"


# The three chords below stand in the Lydian and Mixolydian rows, too; a piece in major hears them as applied
# first (MT21C, SecondaryDominantsInMajorAndMinor and SecondaryDiminishedChordsInMajorAndMinor).
@pytest.mark.parametrize(
    ("symbol", "numeral"),
    [("D", "V/V"), ("D7", "V7/V"), ("F#dim", "vii°/V"), ("F#m7b5", "viiø7/V"), ("Edim", "vii°/IV")],
)
def test_chords_of_lydian_and_mixolydian_that_lead_to_a_degree_are_applied_rather_than_borrowed(symbol, numeral):
    analysis = analysed(f"C {symbol} C", key("C"))[1]

    assert (analysis.numeral(), analysis.source) == (numeral, "applied")


@pytest.mark.parametrize(
    ("home", "symbol", "numeral"),
    [("A", "F", "bVI"), ("G", "Am7b5/C", "iiø65"), ("E", "D", "bVII"), ("Db", "Gbm6", "iv(add6)")],
)
def test_borrowed_chords_of_other_keys_are_spelled_on_their_own_degrees(home, symbol, numeral):
    # bVI of A is F A C, and the half-diminished ii of G (MT21C, AnalyzingAndWritingBorrowedChords)
    analysis = analysed(symbol, key(home))[0]

    assert (analysis.numeral(), analysis.source) == (signs(numeral), "borrowed from natural minor")


@pytest.mark.parametrize("row", [row for row in ROWS if row[0] in MODES])
@pytest.mark.parametrize("degree", range(7))
def test_no_chord_of_a_mode_is_foreign_to_its_own_key(row, degree):
    mode = MODES[row[0]]
    for numerals in row[2:]:
        chord = parse_numeral(numerals.split()[degree], MAJOR)
        source = analyse([chord], mode)[0].source

        assert source == "diatonic"
