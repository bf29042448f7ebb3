"""The many ways in which players write one and the same chord."""

from __future__ import annotations

from itertools import permutations, product

import pytest
from strategies import names

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN

# Tones on C, and what may follow the root. Rules of reading: R. Hutchinson, *Music Theory for the 21st-Century
# Classroom*, "Jazz Chord Basics", "Chord Symbol Specifics", "Altered Dominant Seventh Chords"; that these
# spellings are in use: common practice, no source. Spelling computed.
VARIANTS = [
    ("C E G", "maj Maj ma Ma M"),
    ("C E G B", "maj7 Maj7 ma7 Ma7 M7 Δ7 △7 ∆7 ^7 j7 Δ △ ∆ ^ j 7M (maj7)"),
    ("C E G B D", "maj9 Maj9 ma9 Ma9 M9 Δ9 △9 ∆9 ^9 j9 9M maj7(9)"),
    ("C Eb G", "m min Min mi - −"),
    ("C Eb G Bb", "m7 min7 Min7 mi7 -7 −7 m⁷"),
    ("C Eb Gb", "dim ° º o mb5 -b5 m(b5)"),
    ("C Eb Gb Bbb", "dim7 °7 º7 o7"),
    ("C Eb Gb Bb", "ø Ø ø7 Ø7 m7b5 -7b5 min7b5 mi7b5 m7(b5) -7(b5) m7-5 -7-5 m7♭5"),
    ("C Eb Gb Bb D", "ø9 Ø9 m9b5 -9b5 m9(b5) m7b5(9) ø7(add9)"),
    ("C E G#", "aug + (#5) (+5)"),
    ("C E G# Bb", "aug7 +7 7+ 7#5 7+5 7(#5) 7(+5)"),
    ("C E G# Bb D", "aug9 +9 9+ 9#5 9+5 9(#5)"),
    ("C E G# Bb Db", "7#5b9 7b9#5 +7b9 7(#5,b9) 7(b9#5) 7+5-9 7#5(b9) aug7(b9)"),
    ("C F G", "sus sus4 4 (sus4)"),
    ("C D G", "sus2 sus9 (sus2)"),
    ("C F G Bb", "7sus 7sus4 7(sus4) sus7"),
    ("C F G Bb D", "9sus 9sus4 9(sus4)"),
    ("C F G Bb D A", "13sus 13sus4 sus13"),
    ("C F G Bb Db", "7susb9 7sus4b9 7b9sus 7b9sus4 7sus(b9) 7(b9)sus4 7sus4-9"),
    ("C D F G", "sus2sus4 sus4sus2"),
    ("C E G D", "2 add2 add9 (add9) (add2)"),
    ("C E G F", "add4 add11 (add4) (add11)"),
    ("C Eb G D", "madd9 madd2 m(add9) -add9 min(add9)"),
    ("C E G A", "6 maj6 M6 (add6) add6"),
    ("C E G A D", "6/9 69 6add9 6(9) 6(add9) maj6/9 ⁶⁹"),
    ("C Eb G A", "m6 min6 mi6 -6 m(add6)"),
    ("C Eb G A D", "m6/9 m69 -6/9 min69 m6add9 m6(9)"),
    ("C G", "5 (no3) no3 omit3 (omit3) no3rd (no3rd)"),
    ("C E", "(no5) no5 omit5 (omit5) no5th"),
    ("C E Bb", "7(no5) 7no5 7omit5 7(omit5) 7(no5th)"),
    ("C G Bb", "7(no3) 7no3 7omit3 7(omit3)"),
    ("C E G Bb Db F#", "7(b9,#11) 7b9#11 7#11b9 7(#11,b9) 7(b9)(#11) 7-9+11 7[b9,#11] 7b9(#11) 7⁽♭⁹⁾♯11"),
    ("C E G Bb D#", "7#9 7+9 7(#9) 7(+9) 7♯9 7[#9]"),
    ("C E G Bb Db Ab", "7b9b13 7(b9,b13) 7b13b9 7-9-13 7(b13)(b9)"),
    ("C E Gb Bb D#", "7b5#9 7(b5,#9) 7#9b5 7-5+9"),
    ("C E Gb G# Bb Db D#", "alt 7alt"),
    ("C Eb G B", "m(maj7) mMaj7 mmaj7 mM7 -Δ7 -Δ mΔ7 m(M7) m#7 m+7 min(maj7) -(maj7)"),
    ("C Eb G B D", "m(maj9) mM9 mMaj9 m9(maj7) -Δ9 m(maj7)(9)"),
    ("C Eb Gb B", "dim(maj7) °(maj7) °M7 °Δ7 o(maj7) dimM7 mb5(maj7)"),
    ("C Eb G#", "m#5 m(#5) m+5 m+ -#5 m(+5)"),
    ("C Eb G Ab", "mb6 m(b6) m(addb6) -b6"),
    ("C E G# B", "maj7#5 maj7+5 maj7(#5) +maj7 +M7 M7#5 M7+ Δ7#5 augmaj7 (#5)maj7"),
    ("C E Gb B", "maj7b5 maj7-5 M7b5 Δ7(b5)"),
    ("C E G B F#", "maj7#11 maj7+11 maj7(#11) M7#11 Δ#11 Δ7#11 Δ7(#11)"),
    ("C E G Bb D F#", "9#11 9+11 9(#11) 7(9,#11)"),
    ("C E G Bb D F# A", "13#11 13+11 13(#11)"),
    ("C E G Bb Db F A", "13b9 13(b9) 13-9"),
    ("C E G Bb A", "7(13) 7add13 7(add13)"),
    ("C Eb G Bb F", "m7add11 m7(add11) m7(11) m7add4"),
    ("C E Gb", "(b5) -5 (-5)"),
]
ROWS = [(tones, tail) for tones, tails in VARIANTS for tail in tails.split()]


@pytest.mark.parametrize(("tones", "tail"), ROWS, ids=[tail for _, tail in ROWS])
def test_a_variant_is_the_chord_it_stands_for(tones, tail):
    assert sorted(names(parse_chord("C" + tail).tones).split()) == sorted(tones.split())


@pytest.mark.parametrize(("tones", "tails"), VARIANTS, ids=[tails.split()[0] for _, tails in VARIANTS])
def test_all_variants_of_a_row_are_one_chord_and_are_written_alike(tones, tails):
    chords = {parse_chord("F#" + tail) for tail in tails.split()}

    assert len(chords) == 1
    assert parse_chord(write_chord(*chords, PLAIN)) in chords


ALTERATIONS = ("b5", "#5", "b9", "#9", "#11", "b13")


@pytest.mark.parametrize("base", ["7", "9", "13", "maj7", "m7"])
def test_alterations_in_any_order_and_any_brackets_are_one_chord(base):
    # common practice, no source: a set of alterations
    for first, second in permutations(ALTERATIONS, 2):
        expected = parse_chord(f"C{base}({first},{second})")
        shapes = ["{}{}", "({}{})", "({},{})", "({})({})", "{}({})", "({}){}", "[{},{}]", "{},{}", "({},){}"]
        for shape, order in product(shapes, ((first, second), (second, first))):
            assert parse_chord(f"C{base}" + shape.format(*order)) == expected


@pytest.mark.parametrize("base", ["7", "13", "maj9"])
def test_signs_before_a_number_are_sharps_and_flats_however_written(base):
    # R. Hutchinson, "Chord Symbol Specifics": a dash before 9, 11, 13 is a flat, a plus a sharp
    for number in (5, 9, 11, 13):
        flat, sharp = parse_chord(f"C{base}(b{number})"), parse_chord(f"C{base}(#{number})")

        assert {parse_chord(f"C{base}{sign}{number}") for sign in ("b", "♭", "-", "−")} == {flat}
        assert {parse_chord(f"C{base}{sign}{number}") for sign in ("#", "♯", "+")} == {sharp}
        assert flat != sharp


def test_the_case_of_letters_counts_after_the_root_and_not_in_the_bass():
    # common practice, no source
    assert parse_chord("CM7") != parse_chord("Cm7")
    assert parse_chord("C/g") == parse_chord("C/G")
    assert parse_chord("Am7/eb") == parse_chord("Am7/Eb")


RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


@pytest.mark.parametrize("tail", ["7", "6", "6/9", "69", "m7", "maj7", "9", "11", "13", "7b9", "m7b5", "dim7", "sus4"])
def test_raised_digits_are_those_on_the_line(tail):
    # print raises them: common practice, no source
    assert parse_chord("C" + tail.translate(RAISED)) == parse_chord("C" + tail)
    assert parse_chord("C" + tail.translate(RAISED) + "/E") == parse_chord(f"C{tail}/E")


# Common practice, no source: capital suffixes as copyists letter them by hand, and words in full.
@pytest.mark.parametrize(
    ("form", "plain"),
    [
        ("CMI7", "Cm7"), ("CMi7", "Cm7"), ("CMIN7", "Cm7"), ("CMA7", "Cmaj7"), ("CMAJ7", "Cmaj7"), ("CMA9", "Cmaj9"),
        ("Cmj7", "Cmaj7"), ("C7(alt)", "C7alt"), ("C7altered", "C7alt"), ("C7aug", "C7#5"), ("Cm/maj7", "Cm(maj7)"),
        ("Cm/M7/G", "Cm(maj7)/G"), ("Cpedal", "Cped"),
    ],
)  # fmt: skip
def test_a_suffix_in_capitals_or_in_full_is_read(form, plain):
    assert write_chord(parse_chord(form), PLAIN) == plain
