"""The chords of every mode as numerals: counted against major, and in the mode's own scale."""

from __future__ import annotations

import pytest
from strategies import MAJOR_TONICS, note, notes

from nearhand.notation.conventions import Conventions
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MODES

AGAINST_MAJOR = Conventions(degrees="major")

# Scale on C, triads, sevenths as numerals against C major; computed two ways that agreed, arithmetic on the
# line of fifths and music21 10.5.1.
LOCRIAN_SEVENTHS = "iø7 bIImaj7 biii7 iv7 bVmaj7 bVI7 bvii7"
TABLE = [
    ("ionian", "C D E F G A B", "I ii iii IV V vi vii°", "Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7"),
    ("dorian", "C D Eb F G A Bb", "i ii bIII IV v vi° bVII", "i7 ii7 bIIImaj7 IV7 v7 viø7 bVIImaj7"),
    ("phrygian", "C Db Eb F G Ab Bb", "i bII bIII iv v° bVI bvii", "i7 bIImaj7 bIII7 iv7 vø7 bVImaj7 bvii7"),
    ("lydian", "C D E F# G A B", "I II iii #iv° V vi vii", "Imaj7 II7 iii7 #ivø7 Vmaj7 vi7 vii7"),
    ("mixolydian", "C D E F G A Bb", "I ii iii° IV v vi bVII", "I7 ii7 iiiø7 IVmaj7 v7 vi7 bVIImaj7"),
    ("aeolian", "C D Eb F G Ab Bb", "i ii° bIII iv v bVI bVII", "i7 iiø7 bIIImaj7 iv7 v7 bVImaj7 bVII7"),
    ("locrian", "C Db Eb F Gb Ab Bb", "i° bII biii iv bV bVI bvii", LOCRIAN_SEVENTHS),
    ("minor", "C D Eb F G Ab B", "i ii° bIII+ iv V bVI vii°", "i(maj7) iiø7 bIII+maj7 iv7 V7 bVImaj7 vii°7"),
    ("minor", "C D Eb F G A B", "i ii bIII+ IV V vi° vii°", "i(maj7) ii7 bIII+maj7 IV7 V7 viø7 viiø7"),
]  # the last two are the harmonic and the melodic form of minor
ROWS = [
    (mode, degree, numeral, [scale.split()[(degree + 2 * third) % 7] for third in range(count)])
    for mode, scale, triads, sevenths in TABLE
    for count, numerals in ((3, triads), (4, sevenths))
    for degree, numeral in enumerate(numerals.split())
]


def test_the_table_holds_seven_triads_and_seven_sevenths_for_each_scale():
    assert len(ROWS) == len(TABLE) * 14


@pytest.mark.parametrize("mode", dict.fromkeys(mode for mode, *_ in TABLE))
def test_every_chord_of_a_mode_is_read_against_major_and_in_its_own_scale(mode):
    home = Key(note("C"), MODES[mode])
    for _, _, numeral, tones in (row for row in ROWS if row[0] == mode):
        chord = parse_numeral(numeral, home.mode, AGAINST_MAJOR)

        assert chord.in_key(home).tones == notes(" ".join(tones))
        assert chord == parse_numeral(numeral, MAJOR)
        assert chord == parse_numeral(numeral.lstrip("b#"), home.mode)


@pytest.mark.parametrize("mode", dict.fromkeys(mode for mode, *_ in TABLE))
def test_every_chord_of_a_mode_is_written_against_major_and_in_its_own_scale(mode):
    for _, _, numeral, _ in (row for row in ROWS if row[0] == mode):
        chord = parse_numeral(numeral, MAJOR)
        with_signs = numeral.replace("b", "♭").replace("#", "♯")

        assert write_numeral(chord, MODES[mode], AGAINST_MAJOR) == with_signs
        assert write_numeral(chord, MODES[mode]) == numeral.lstrip("b#")


@pytest.mark.parametrize("mode", [mode for mode in MODES if mode != "minor"])
def test_with_sevenths_of_the_scale_a_bare_seven_is_the_seventh_of_the_mode(mode):
    of_scale, home = Conventions(sevenths="scale"), Key(note("C"), MODES[mode])
    for _, _, numeral, tones in (row for row in ROWS if row[0] == mode):
        bare = numeral.lstrip("b#").replace("maj", "")
        chord = parse_numeral(bare, home.mode, of_scale)

        assert chord.in_key(home).tones == notes(" ".join(tones))
        assert write_numeral(chord, home.mode, of_scale) == bare


@pytest.mark.parametrize("mode", [mode for mode in MODES if mode != "minor"])
def test_numerals_without_accidentals_are_the_scale_of_the_mode_on_every_tonic(mode):
    for tonic in MAJOR_TONICS:
        home = Key(note(tonic), MODES[mode])
        for number, numeral in enumerate("I II III IV V VI VII".split()):  # noqa: SIM905  # reads as a scale
            assert parse_numeral(numeral, home.mode).in_key(home).root == home.scale()[number]
