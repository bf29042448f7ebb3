"""The two conventions for a bare 7, 9, 11 or 13 behind a numeral: of the scale, or of a chord symbol."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from music21 import key as m21_key
from music21 import roman
from strategies import MAJOR_TONICS, MINOR_TONICS, key, modes, names, note, qualities, relative_chords

from nearhand.notation.chart import FARTHEST_PLACE
from nearhand.notation.conventions import DEFAULT, FIGURES, SEVENTHS, Conventions
from nearhand.notation.numeral_writing import write_applied, write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.quality import QUALITIES

OF_THE_SCALE = Conventions(sevenths="scale")
IN_ROMANTEXT = Conventions(sevenths="scale", plain=True)

# Diatonic sevenths of three major and three minor keys, natural form, then the chords with the raised seventh and
# sixth; the numeral in RomanText is that of a chord symbol without its maj. Spelled by arithmetic and with music21
# 10.5.1, which agreed.
SEVENTHS_OF_MAJOR = "Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7"
SEVENTHS_OF_MINOR = "i7 iiø7 IIImaj7 iv7 v7 VImaj7 VII7"
RAISED_SEVENTHS = "III+maj7 V7 vii°7 ii7 IV7 viø7 viiø7"
DIATONIC = [
    ("C", SEVENTHS_OF_MAJOR, "C E G B, D F A C, E G B D, F A C E, G B D F, A C E G, B D F A"),
    ("Db", SEVENTHS_OF_MAJOR, "Db F Ab C, Eb Gb Bb Db, F Ab C Eb, Gb Bb Db F, Ab C Eb Gb, Bb Db F Ab, C Eb Gb Bb"),
    ("F#", SEVENTHS_OF_MAJOR, "F# A# C# E#, G# B D# F#, A# C# E# G#, B D# F# A#, C# E# G# B, D# F# A# C#, E# G# B D#"),
    ("a", SEVENTHS_OF_MINOR, "A C E G, B D F A, C E G B, D F A C, E G B D, F A C E, G B D F"),
    ("c", SEVENTHS_OF_MINOR, "C Eb G Bb, D F Ab C, Eb G Bb D, F Ab C Eb, G Bb D F, Ab C Eb G, Bb D F Ab"),
    ("g#", SEVENTHS_OF_MINOR, "G# B D# F#, A# C# E G#, B D# F# A#, C# E G# B, D# F# A# C#, E G# B D#, F# A# C# E"),
    ("a", RAISED_SEVENTHS, "C E G# B, E G# B D, G# B D F, B D F# A, D F# A C, F# A C E, G# B D F#"),
    ("c", RAISED_SEVENTHS, "Eb G B D, G B D F, B D F Ab, D F A C, F A C Eb, A C Eb G, B D F A"),
    ("eb", RAISED_SEVENTHS, "Gb Bb D F, Bb D F Ab, D F Ab Cb, F Ab C Eb, Ab C Eb Gb, C Eb Gb Bb, D F Ab C"),
]

# Key, numeral, tones where the 7 or 9 is that of the scale, tones where it is that of a chord symbol. RomanText: When
# in Rome corpus, syntax.md, and music21 10.5.1 (compared below); the other is common practice, no source. A small
# numeral in major keeps its minor seventh, as music21 has it.
BOTH = [
    ("C", "I7", "C E G B", "C E G Bb"), ("C", "IV7", "F A C E", "F A C Eb"), ("C", "V7", "G B D F", "G B D F"),
    ("C", "i7", "C Eb G Bb", "C Eb G Bb"), ("C", "II7", "D F# A C", "D F# A C"),
    ("C", "iv7", "F Ab C Eb", "F Ab C Eb"), ("C", "bVII7", "Bb D F A", "Bb D F Ab"),
    ("C", "bVI7", "Ab C Eb G", "Ab C Eb Gb"), ("C", "bIII7", "Eb G Bb D", "Eb G Bb Db"),
    ("C", "N65", "Db F Ab C", "Db F Ab Cb"), ("C", "I9", "C E G B D", "C E G Bb D"),
    ("C", "iii9", "E G B D F", "E G B D F#"), ("C", "V9", "G B D F A", "G B D F A"),
    ("c", "V9", "G B D F Ab", "G B D F A"), ("c", "III7", "Eb G Bb D", "Eb G Bb Db"),
    ("c", "VI42", "Ab C Eb G", "Ab C Eb Gb"), ("c", "VII7", "Bb D F Ab", "Bb D F Ab"),
    ("c", "I7", "C E G Bb", "C E G Bb"), ("c", "III+7", "Eb G B D", "Eb G B Db"),
    ("c", "V13", "G B D F Ab C Eb", "G B D F A C E"), ("C", "V7/V", "D F# A C", "D F# A C"),
    ("C", "IV7/V", "C E G B", "C E G Bb"), ("C", "I7/V", "G B D F#", "G B D F"), ("C", "Id7", "C E G Bb", "C E G Bb"),
    ("C", "IVd65", "F A C Eb", "F A C Eb"), ("C", "V+7", "G B D# F", "G B D# F"),
]  # fmt: skip

# How the same quality on a degree is written in either: mode, root in fifths, quality, in RomanText, by chord symbol.
# RomanText's d for a dominant seventh that is not the scale's: When in Rome corpus, syntax.md (second-hand).
WRITTEN = [
    (MAJOR, 0, "major-seventh", "I7", "Imaj7"), (MAJOR, 0, "dominant", "Id7", "I7"),
    (MAJOR, -1, "dominant", "IVd7", "IV7"), (MAJOR, -1, "major-seventh", "IV7", "IVmaj7"),
    (MAJOR, 1, "dominant", "V7", "V7"), (MAJOR, 2, "minor-seventh", "ii7", "ii7"),
    (MAJOR, -2, "dominant", "bVIId7", "bVII7"), (MAJOR, -2, "major-seventh", "bVII7", "bVIImaj7"),
    (MINOR, -3, "major-seventh", "III7", "IIImaj7"), (MINOR, -2, "dominant", "VII7", "VII7"),
    (MINOR, 1, "dominant-ninth", "Vd9", "V9"), (MAJOR, 1, "dominant-ninth", "V9", "V9"),
    (MAJOR, 1, "dominant-13th", "V13", "V13"), (MAJOR, 5, "half-diminished", "vii/o7", "vii/o7"),
    (MINOR, 5, "diminished-seventh", "viio7", "viio7"), (MINOR, 0, "major-minor", "i(maj7)", "i(maj7)"),
    (MAJOR, 0, "power", "I(no3)", "I5"),
]  # fmt: skip


def theirs(figure, home):
    cautionary = roman.Minor67Default.CAUTIONARY
    tonic = str(home.tonic).replace("b", "-")
    their_home = m21_key.Key(tonic, home.mode.name)
    chord = roman.RomanNumeral(figure, their_home, sixthMinor=cautionary, seventhMinor=cautionary)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


@pytest.mark.parametrize(("home", "numerals", "tones"), DIATONIC)
def test_a_bare_seven_is_the_seventh_of_the_scale_where_that_is_the_convention(home, numerals, tones):
    mode = key(home).mode
    for numeral, chord_tones in zip(numerals.split(), tones.split(", "), strict=True):
        bare = numeral.replace("maj", "")
        for place, figure in enumerate(("7", "65", "43", "42")):
            chord = parse_numeral(bare[:-1] + figure, mode, OF_THE_SCALE).in_key(key(home))

            assert names(chord.tones) == chord_tones
            assert str(chord.bass) == chord_tones.split()[place]
        assert parse_numeral(bare, mode, OF_THE_SCALE) == parse_numeral(numeral, mode)
        assert write_numeral(parse_numeral(numeral, mode), mode, OF_THE_SCALE) == bare


@pytest.mark.parametrize(("home", "numeral", "of_scale", "of_chord"), BOTH)
def test_each_convention_has_its_own_seventh(home, numeral, of_scale, of_chord):
    mode = key(home).mode

    assert names(parse_numeral(numeral, mode, OF_THE_SCALE).in_key(key(home)).tones) == of_scale
    assert names(parse_numeral(numeral, mode).in_key(key(home)).tones) == of_chord
    assert theirs(numeral, key(home))[0] == set(of_scale.split())


@pytest.mark.parametrize(("mode", "root", "kind", "in_romantext", "by_symbol"), WRITTEN)
def test_a_seventh_is_written_so_that_the_convention_reads_it(mode, root, kind, in_romantext, by_symbol):
    chord = RelativeChord(root, QUALITIES[kind], root)

    assert write_numeral(chord, mode, IN_ROMANTEXT) == in_romantext
    assert write_numeral(chord, mode, Conventions(plain=True)) == by_symbol


def test_a_chord_symbol_behind_a_numeral_means_the_same_in_both():
    # what is spelled out is no matter of the convention: ours
    for numeral in "Imaj7 IVmaj65 Vsus4 V7sus4 V7(b9) Iadd9 V7#5 i(maj7) vii°7 viiø43 I(add6) bVIImaj7".split():  # noqa: SIM905
        for mode in (MAJOR, MINOR):
            assert parse_numeral(numeral, mode, OF_THE_SCALE) == parse_numeral(numeral, mode, DEFAULT), numeral


def test_triads_mean_the_same_in_both():
    for numeral in "I i ii° iii IV6 V64 III+ vi bVII #iv° N6 It6 Ger65 Cad64 V/V vii°6/ii V[no5]".split():  # noqa: SIM905
        for mode in (MAJOR, MINOR):
            assert parse_numeral(numeral, mode, OF_THE_SCALE) == parse_numeral(numeral, mode, DEFAULT), numeral


PLAIN_KINDS = "major minor diminished augmented dominant major-seventh minor-seventh half-diminished diminished-seventh"


@pytest.mark.parametrize("kind", PLAIN_KINDS.split())
def test_what_is_written_for_romantext_is_read_by_music21_as_the_same_chord(kind):
    quality = QUALITIES[kind]
    for home in (key("C"), key("c"), key("f#"), key("Bb")):
        for root in range(-5, 7):
            for interval in quality.intervals:
                relative = RelativeChord(root, quality, root + interval)
                chord = relative.in_key(home)
                written = write_numeral(relative, home.mode, IN_ROMANTEXT)
                if "m" not in written:  # m7 and maj7 are words of chord symbols, where no bare 7 says it
                    assert theirs(written, home) == ({str(tone) for tone in chord.tones}, str(chord.bass)), written


@settings(max_examples=300)
@given(relative_chords, modes, st.sampled_from(SEVENTHS), st.sampled_from(FIGURES), st.booleans())
def test_any_chord_reads_back_in_the_convention_it_is_written_in(chord, mode, sevenths, figures, plain):
    conventions = Conventions(sevenths=sevenths, figures=figures, plain=plain)

    assert parse_numeral(write_numeral(chord, mode, conventions), mode, conventions) == chord


@given(qualities, st.integers(-5, 6), st.integers(-4, 5), st.booleans(), modes)
def test_any_chord_applied_to_any_degree_reads_back_with_sevenths_of_the_scale(quality, root, target, is_small, mode):
    for bass in quality.intervals:
        chord = RelativeChord(root, quality, root + bass)
        if abs(chord.bass) > FARTHEST_PLACE:  # a degree with more than three accidentals
            continue

        written = write_applied(chord, target, is_small, mode, OF_THE_SCALE)
        assert parse_numeral(written, mode, OF_THE_SCALE) == chord, written


@given(relative_chords, modes)
def test_only_the_tail_is_written_otherwise(chord, mode):
    assume(len(chord.quality.numbers) <= 3)
    if chord.quality != QUALITIES["power"]:
        assert write_numeral(chord, mode, OF_THE_SCALE) == write_numeral(chord, mode)


# RomanText as it is found: a slash at the end names no degree. It stands seventeen times in the analyses of music21's
# package, which reads the chord before it.
@pytest.mark.parametrize("numeral", ["V/", "V6/", "V7/V/", "viio6/5/", "It6/"])
def test_a_slash_at_the_end_is_read_over_in_romantext_alone(numeral):
    for mode in (MAJOR, MINOR):
        assert parse_numeral(numeral, mode, OF_THE_SCALE) == parse_numeral(numeral[:-1], mode, OF_THE_SCALE)
        assert theirs(numeral, key("C")) == theirs(numeral[:-1], key("C"))


@pytest.mark.parametrize("tonic", [*MAJOR_TONICS, *MINOR_TONICS])
def test_bare_ninths_elevenths_and_thirteenths_are_those_of_the_scale_and_of_music21(tonic):
    home = key(tonic)
    for numeral in ("V9", "I9", "IV9", "ii9", "V11", "ii11", "V13", "vi9", "bVII9", "V9/V", "V7653", "V6432"):
        chord = parse_numeral(numeral, home.mode, OF_THE_SCALE).in_key(home)

        assert ({str(tone) for tone in chord.tones}, str(chord.bass)) == theirs(numeral, home)
    assert parse_numeral("V9", home.mode, OF_THE_SCALE).in_key(home).tones[-1] == home.scale()[5]
    assert parse_numeral("V7532", home.mode, OF_THE_SCALE).in_key(home).bass == home.scale()[5]
    assert note(str(home.scale()[5])) == home.scale()[5]
