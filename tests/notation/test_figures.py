"""Figures behind numerals: full and short forms, with slashes and without, ninth chords, suspensions, accidentals."""

from __future__ import annotations

import pytest
from music21 import key as m21_key
from music21 import roman
from strategies import key, names, note

from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.notation.figures import SLASHED, Figures, read_figures
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.quality import QUALITIES

OF_THE_SCALE = Conventions(sevenths="scale")

# Full figures, short ones, bass on V and on V7 in C. Open Music Theory (first edition), "Thoroughbass figures"; R.
# Hutchinson, *Music Theory for the 21st-Century Classroom*, "Figured Bass Inversion Symbols".
TRIADS = [("5/3", ("",), "G"), ("6/3", ("6",), "B"), ("6/4", ("6/4", "64"), "D")]
SEVENTHS = [("7/5/3", ("7",), "G"), ("6/5/3", ("6/5", "65"), "B"), ("6/4/3", ("4/3", "43"), "D")]
SEVENTHS += [("6/4/2", ("4/2", "42", "2"), "F")]

# Mode, numeral as printed there, tones in C, bass: behind a numeral the 7 is dropped in inversions; M, ° and ø stay.
# R. Hutchinson, as above ("IM4/3", "vii°4/2", "iiø6/5").
PRINTED = [
    ("C", "IM4/3", "C E G B", "G"), ("C", "vii°4/2", "B D F Ab", "Ab"), ("c", "iiø6/5", "D F Ab C", "F"),
    ("C", "IVM7", "F A C E", "F"), ("C", "IM43", "C E G B", "G"),
]  # fmt: skip

# Figures with slashes that part nothing, and what they are without: "slashes between figures are optional". When in
# Rome corpus, syntax.md.
SLASHES = [(figure, figure.replace("/", "")) for figure in sorted(SLASHED)]

# Ninth chords in C: figures, bass. RomanText counts the bass up; music21 10.5.1 has the first four (7532: ours).
NINTHS = [("9", "G"), ("9753", "G"), ("7653", "B"), ("6543", "D"), ("6432", "F"), ("7532", "A")]

# Cadential suspension: 5/4 before 5/3. When in Rome corpus, syntax.md ("V54 at a cadence").
SUSPENSIONS = [("V54", "G C D"), ("V5/4", "G C D"), ("V4", "G C D"), ("I54", "C F G"), ("ii54", "D G A")]

# Key, figure, tones from the root up, bass: an accidental before a figure alters the tone of the signature that the
# figure names above the bass. Open Music Theory (first edition), "Thoroughbass figures"; music21 gives the same.
WITH_ACCIDENTALS = [
    ("c", "i#3", "C E G", "C"), ("c", "v#3", "G B D", "G"), ("C", "iib3", "D Fb A", "D"),
    ("C", "V6#5", "G B D F#", "B"), ("C", "V4#3", "G B D F#", "D"), ("C", "viiøb7", "B D F Ab", "B"),
    ("c", "V#42", "G B D F", "F"), ("C", "ii#7", "D F A C#", "D"), ("C", "V7#3", "G B# D F", "G"),
]  # fmt: skip


@pytest.mark.parametrize("mode", MODES.values(), ids=MODES)
@pytest.mark.parametrize("conventions", [DEFAULT, OF_THE_SCALE], ids=["chord", "scale"])
def test_full_and_short_figures_are_the_same_inversion(mode, conventions):
    for full, short, _ in (*TRIADS, *SEVENTHS):
        for head in ("V", "i", "vii°", "iiø", "III+", "bII", "#iv°"):
            if not (head in ("iiø", "III+") and (full, short, _) in TRIADS):
                chords = {parse_numeral(head + figure, mode, conventions) for figure in (full, *short)}
                chords.add(parse_numeral(head + full.replace("/", ""), mode, conventions))

                assert len(chords) == 1, (head, full)


@pytest.mark.parametrize(("full", "short", "bass"), [*TRIADS, *SEVENTHS])
def test_a_figure_names_the_tone_in_the_bass_of_the_dominant(full, short, bass):
    for home in (key("C"), key("c")):
        for figure in (full, *short):
            chord = parse_numeral(f"V{figure}", home.mode).in_key(home)

            assert names(chord.tones) == ("G B D" if (full, short, bass) in TRIADS else "G B D F")
            assert chord.bass == note(bass)


@pytest.mark.parametrize(("home", "numeral", "tones", "bass"), PRINTED)
def test_a_mark_stays_before_the_figure_of_an_inversion(home, numeral, tones, bass):
    chord = parse_numeral(numeral, key(home).mode).in_key(key(home))

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


@pytest.mark.parametrize(("slashed", "plain"), SLASHES)
def test_slashes_between_figures_part_nothing(slashed, plain):
    for head in ("V", "ii", "bVI", "vii°", "viiø"):
        for tail in ("", "/V", "/V/ii", "/6"):
            for mode in (MAJOR, MINOR):
                assert parse_numeral(head + slashed + tail, mode) == parse_numeral(head + plain + tail, mode)


def test_a_digit_that_completes_no_figure_is_a_bass_degree():
    # the figures of RomanText have no 3/6, 5/7 or 7/5: ours
    for numeral, bass in (("V3/6", "A"), ("V7/5", "G"), ("V5/7", "B"), ("V7/3", "E"), ("V65/4", "F"), ("V43/1", "C")):
        assert parse_numeral(numeral, MAJOR).in_key(key("C")).bass == note(bass)


@pytest.mark.parametrize(("figure", "bass"), NINTHS)
def test_every_tone_of_a_ninth_chord_may_lie_in_the_bass(figure, bass):
    chord = parse_numeral(f"V{figure}", MAJOR)

    assert chord.quality == QUALITIES["dominant-ninth"]
    assert chord.in_key(key("C")).bass == note(bass)
    assert parse_numeral(write_numeral(chord, MAJOR), MAJOR) == chord
    if figure != "7532":
        theirs = roman.RomanNumeral(f"V{figure}", m21_key.Key("C"))
        assert {pitch.name for pitch in theirs.pitches} == set("GBDFA")
        assert theirs.bass().name == bass


@pytest.mark.parametrize(("numeral", "tones"), SUSPENSIONS)
def test_five_four_is_a_suspended_fourth(numeral, tones):
    chord = parse_numeral(numeral, MAJOR, OF_THE_SCALE)

    assert names(chord.in_key(key("C")).tones) == tones
    assert chord.quality == QUALITIES["suspended-fourth"]


@pytest.mark.parametrize(("home", "numeral", "tones", "bass"), WITH_ACCIDENTALS)
def test_an_accidental_before_a_figure_alters_the_tone_that_it_names(home, numeral, tones, bass):
    chord = parse_numeral(numeral, key(home).mode, OF_THE_SCALE).in_key(key(home))

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


def test_figures_with_an_eight_name_the_chord_without_it():
    # the octave doubles the root: common practice, no source
    for figure, plain in (("8", ""), ("85", ""), ("853", ""), ("86", "6"), ("864", "64"), ("87", "7"), ("8/5/3", "")):
        for mode in (MAJOR, MINOR):
            assert parse_numeral(f"V{figure}", mode) == parse_numeral(f"V{plain}", mode)


@pytest.mark.parametrize("figure", ["84", "98", "48", "82", "813", "568", "1386"])
def test_a_row_of_figures_with_an_eight_in_it_can_be_written_and_read_back(figure):
    # a 9 8 or 8 4 under a suspension: common practice, no source
    for mode in (MAJOR, MINOR):
        for conventions in (DEFAULT, PLAIN, OF_THE_SCALE):
            chord = parse_numeral(f"V{figure}", mode, conventions)

            assert 8 not in chord.quality.numbers
            assert parse_numeral(write_numeral(chord, mode, conventions), mode, conventions) == chord


# Text, offset to read from; figures and the offset behind them. Ours.
READ = [
    ("V", 1, Figures(0, (1, 3, 5), (), True), 1),
    ("V6/5/V", 1, Figures(1, (1, 3, 5, 7), (), True), 4),
    ("V65/V", 1, Figures(1, (1, 3, 5, 7), (), True), 3),
    ("V4#3", 1, Figures(2, (1, 3, 5, 7), ((7, 1),), True), 4),
    ("V13", 1, Figures(0, (1, 3, 5, 7, 9, 11, 13), (), True), 3),
    ("V97[no5]", 1, Figures(0, (1, 3, 5, 7, 9), (), True), 3),
    ("V32", 1, Figures(0, (1, 2, 3), (), False), 3),
    ("V1", 1, Figures(0, (1, 3, 5), (), True), 1),
    ("V####6", 1, Figures(0, (1, 3, 5), (), True), 1),
]


@pytest.mark.parametrize(("text", "start", "figures", "end"), READ)
def test_figures_are_read_as_far_as_they_go(text, start, figures, end):
    assert read_figures(text, start) == (figures, end)
