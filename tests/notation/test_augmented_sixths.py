"""Chords with names of their own: augmented sixths, the Neapolitan, the cadential six-four."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import key as m21_key
from music21 import roman
from strategies import MAJOR_TONICS, MINOR_TONICS, conventions, key, modes, names, note

from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_words import TONES_OF_SIXTH
from nearhand.notation.numeral_writing import augmented_sixth, write_applied, write_neapolitan, write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LOWERED_SIXTH, MAJOR, MINOR
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES

# Tonic; the Neapolitan sixth, the Italian, French, German and Swiss sixth from the bass up; the dominant they lead to.
# N6 = 4 b6 b2; It = b6 1 #4; Fr = b6 1 2 #4; Ger = b6 1 b3 #4; Swiss = b6 1 #2 #4: Open Music Theory (first edition),
# "Altered subdominants"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Types of Augmented Sixth
# Chords". Spelled by arithmetic and with music21 10.5.1, which agreed. The same in major and minor.
TABLE = """
C  | F Ab Db   | Ab C F#   | Ab C D F#   | Ab C Eb F#   | Ab C D# F#   | G B D
G  | C Eb Ab   | Eb G C#   | Eb G A C#   | Eb G Bb C#   | Eb G A# C#   | D F# A
D  | G Bb Eb   | Bb D G#   | Bb D E G#   | Bb D F G#    | Bb D E# G#   | A C# E
A  | D F Bb    | F A D#    | F A B D#    | F A C D#     | F A B# D#    | E G# B
E  | A C F     | C E A#    | C E F# A#   | C E G A#     | C E F## A#   | B D# F#
F# | B D G     | D F# B#   | D F# G# B#  | D F# A B#    | D F# G## B#  | C# E# G#
Eb | Ab Cb Fb  | Cb Eb A   | Cb Eb F A   | Cb Eb Gb A   | Cb Eb F# A   | Bb D F
Bb | Eb Gb Cb  | Gb Bb E   | Gb Bb C E   | Gb Bb Db E   | Gb Bb C# E   | F A C
F  | Bb Db Gb  | Db F B    | Db F G B    | Db F Ab B    | Db F G# B    | C E G
Ab | Db Fb Bbb | Fb Ab D   | Fb Ab Bb D  | Fb Ab Cb D   | Fb Ab B D    | Eb G Bb
"""
ROWS = [[cell.strip() for cell in line.split("|")] for line in TABLE.strip().splitlines()]
KINDS = {"It6": "It", "Fr43": "Fr", "Ger65": "Ger", "Sw43": "Sw"}

# Figures, the tone in the bass in C. Figures count from the bass, as of any seventh chord whose root is the raised
# fourth degree (the second in the French and the Swiss). music21 10.5.1 reads each the same.
INVERSIONS = {
    "It": {"": "Ab", "6": "Ab", "63": "Ab", "53": "F#", "64": "C"},
    "Fr": {"": "Ab", "6": "Ab", "43": "Ab", "643": "Ab", "7": "D", "753": "D", "65": "F#", "653": "F#"}
    | {"42": "C", "642": "C", "2": "C"},
    "Ger": {"": "Ab", "6": "Ab", "65": "Ab", "653": "Ab", "7": "F#", "753": "F#", "43": "C", "643": "C"}
    | {"42": "Eb", "642": "Eb", "2": "Eb"},
    "Sw": {"": "Ab", "43": "Ab", "643": "Ab", "7": "D#", "753": "D#", "65": "F#", "653": "F#"}
    | {"42": "C", "642": "C", "2": "C"},
}
FIGURES = [(name, figure, bass) for name, by_figure in INVERSIONS.items() for figure, bass in by_figure.items()]
KEYS = [*MAJOR_TONICS, *MINOR_TONICS]


def theirs(figure, tonic):
    cautionary = roman.Minor67Default.CAUTIONARY
    home = m21_key.Key(tonic[0] + tonic[1:].replace("b", "-"))
    chord = roman.RomanNumeral(figure, home, sixthMinor=cautionary, seventhMinor=cautionary)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


def ours(figure, tonic):
    chord = parse_numeral(figure, key(tonic).mode).in_key(key(tonic))
    return {str(tone) for tone in chord.tones}, str(chord.bass)


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_augmented_sixths_are_spelled_as_in_the_table(row):
    tonic, _, *sixths, _ = row
    for home in (key(tonic), key(tonic.lower())):
        for numeral, tones in zip(KINDS, sixths, strict=True):
            relative = parse_numeral(numeral, home.mode)
            chord = relative.in_key(home)

            assert names(chord.tones) == tones
            assert chord.bass == note(tones.split()[0])
            assert write_numeral(relative, home.mode) == numeral


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_every_augmented_sixth_opens_to_the_octave_of_the_dominant(row):
    tonic, _, *sixths, dominant = row
    assert names(parse_numeral("V", MAJOR).in_key(key(tonic)).tones) == dominant
    for tones in sixths:
        low, high = note(tones.split()[0]).fifths, note(tones.split()[-1]).fifths
        root = note(dominant.split()[0]).fifths

        assert (low - root, high - root) == (-5, 5)  # a minor second above and below it
        assert high - low == 10  # an augmented sixth, turned over a diminished third (MT21C)


@pytest.mark.parametrize("row", ROWS, ids=[row[0] for row in ROWS])
def test_the_neapolitan_has_the_lowered_second_degree_as_its_root(row):
    tonic, sixth, *_ = row
    fourth, flat_sixth, root = sixth.split()
    for home in (key(tonic), key(tonic.lower())):
        for figure, bass in (("", fourth), ("6", fourth), ("63", fourth), ("53", root), ("64", flat_sixth)):
            chord = parse_numeral(f"N{figure}", home.mode).in_key(home)

            assert names(chord.tones) == f"{root} {fourth} {flat_sixth}"
            assert chord.bass == note(bass)
        assert write_neapolitan(parse_numeral("N", home.mode)) == "N6"


@pytest.mark.parametrize(("name", "figure", "bass"), FIGURES)
def test_each_inversion_of_an_augmented_sixth_is_the_one_that_music21_gives(name, figure, bass):
    assert ours(name + figure, "C")[1] == bass
    for tonic in KEYS:
        assert ours(name + figure, tonic) == theirs(name + figure, tonic)


@pytest.mark.parametrize("figure", ["N", "N6", "N63", "N53", "N64", "Cad64", "Cad64/V", "Cad64/ii", "Cad64/III"])
def test_the_neapolitan_and_the_cadential_six_four_are_those_of_music21(figure):
    for tonic in KEYS:
        assert ours(figure, tonic) == theirs(figure, tonic)


# Key, numeral, tones, bass; spelled as the same chord in the key of its target. The cadential six-four is that of the
# key's own mode: When in Rome corpus, syntax.md ("Cad64 and I64 are both legal").
APPLIED = [
    ("C", "Cad64", "C E G", "G"), ("c", "Cad64", "C Eb G", "G"), ("C", "Cad6/4", "C E G", "G"),
    ("C", "Cad", "C E G", "G"), ("C", "Cad64/V", "G B D", "D"), ("C", "Cad64/ii", "D F A", "A"),
    ("c", "Cad64/III", "Eb G Bb", "Bb"), ("c", "Cad64/iv", "F Ab C", "C"),
    ("C", "It6/V", "Eb G C#", "Eb"), ("C", "Ger65/V", "Eb G Bb C#", "Eb"), ("C", "Fr43/V", "Eb G A C#", "Eb"),
    ("C", "Ger65/ii", "Bb D F G#", "Bb"), ("c", "It6/iv", "Db F B", "Db"), ("C", "Sw43/V", "Eb G A# C#", "Eb"),
    ("C", "N6/V", "Ab C Eb", "C"), ("C", "N6/ii", "Eb G Bb", "G"), ("C", "V7/N", "Ab C Eb Gb", "Ab"),
    ("C", "V7/N6", "Ab C Eb Gb", "Ab"), ("C", "Gr65", "Ab C Eb F#", "Ab"), ("C", "Ger6/5", "Ab C Eb F#", "Ab"),
    ("C", "Fr4/3", "Ab C D F#", "Ab"), ("C", "It+6", "Ab C F#", "Ab"),
]  # fmt: skip


@pytest.mark.parametrize(("home", "numeral", "tones", "bass"), APPLIED)
def test_chords_with_names_may_be_applied(home, numeral, tones, bass):
    chord = parse_numeral(numeral, key(home).mode).in_key(key(home))

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


@pytest.mark.parametrize("numeral", ["It64", "It53", "Ger43", "Ger7", "Ger42", "Fr7", "Fr65", "Fr42", "Sw7", "Sw65"])
def test_an_inversion_of_an_augmented_sixth_is_written_as_it_was_read(numeral):
    for mode in (MAJOR, MINOR):
        chord = parse_numeral(numeral, mode)

        assert write_numeral(chord, mode) == write_numeral(chord, mode, PLAIN) == augmented_sixth(chord) == numeral


def test_augmented_sixths_are_written_with_their_usual_figures():
    assert [write_numeral(parse_numeral(name, MAJOR), MAJOR) for name in AUGMENTED_SIXTHS] == [*KINDS]
    assert [
        write_numeral(parse_numeral(name, MAJOR), MAJOR, Conventions(figures="raised")) for name in AUGMENTED_SIXTHS
    ] == ["It⁶", "Fr⁴₃", "Ger⁶₅", "Sw⁴₃"]


@given(st.sampled_from(sorted(AUGMENTED_SIXTHS)), st.integers(-8, 10), st.integers(-6, 6), modes, conventions)
def test_an_augmented_sixth_on_any_degree_over_any_bass_reads_back(name, bass, root, mode, choice):
    chord = RelativeChord(root, AUGMENTED_SIXTHS[name], bass)

    assert parse_numeral(write_numeral(chord, mode, choice), mode, choice) == chord


@given(st.sampled_from(FIGURES), st.integers(-4, 5), st.booleans(), modes, conventions)
def test_an_applied_augmented_sixth_reads_back(row, target, is_small, mode, choice):
    name, figure, _ = row
    chord = parse_numeral(name + figure, mode).above(target)

    assert parse_numeral(write_applied(chord, target, is_small, mode, choice), mode, choice) == chord


def test_a_german_sixth_sounds_as_the_dominant_seventh_on_its_bass_and_is_not_spelled_so():
    # enharmonic: G7 in C is the German sixth of B minor, spelled G B D E# (MT21C, "Enharmonic Modulation")
    german = parse_numeral("Ger65", MINOR).in_key(key("b"))
    dominant = parse_numeral("V7", MAJOR).in_key(key("C"))

    assert names(german.tones) == "G B D E#"
    assert [tone.semitones for tone in german.tones] == [tone.semitones for tone in dominant.tones]
    assert german.quality != QUALITIES["dominant"]


@pytest.mark.parametrize("numeral", ["It9", "It42", "Fr53", "Fr9", "Ger9", "Sw9", "Cad6", "Cad7", "Gerx", "Swiss"])
def test_an_inversion_that_a_named_chord_does_not_have_is_refused(numeral):
    for mode in (MAJOR, MINOR):
        with pytest.raises(InputError):
            parse_numeral(numeral, mode)


def test_the_table_of_basses_names_tones_of_the_chords():
    for name, tones in TONES_OF_SIXTH.items():
        places = {LOWERED_SIXTH + interval for interval in AUGMENTED_SIXTHS[name].intervals}

        assert set(tones) == places
