"""Number charts: degrees with the tails of chord symbols, in major and in both countings of minor."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import key, modes, names, relative_chords

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.notation.keys import parse_key
from nearhand.notation.numbers import parse_number, write_number
from nearhand.theory.chord import relative_to
from nearhand.theory.mode import MAJOR, MODES

AGAINST_MAJOR = PLAIN._replace(degrees="major")
FROM_RELATIVE = PLAIN._replace(degrees="relative")
RAISED = DEFAULT._replace(figures="raised")

# Key, numbers, chords. Session players' number charts (second-hand, from articles on them); chords
# computed. Minor is always marked by a dash, a bare number is major (strict reading). A minor tune written
# from its relative major is in that major key.
VECTORS = [
    ("G", "1 5/7 6- 4", "G D/F# Em C"),
    ("Eb", "6- 4 1/3 5sus", "Cm Ab Eb/G Bbsus4"),
    ("C", "6- 4 1 5", "Am F C G"),
    ("E", "b7 4 1", "D A E"),
    ("Bb", "2-7 57 1", "Cm7 F7 Bb"),
    ("Bb", "1/3 5/7 6-/5 4/5", "Bb/D F/A Gm/F Eb/F"),
    ("A", "b6 b7 1 #4", "F G A D#"),
    ("C", "2- 3- 6- 7° 2m 3m 6m", "Dm Em Am Bdim Dm Em Am"),
    ("C", "4maj7 1Δ7 1^ 5sus 1add2 52", "Fmaj7 Cmaj7 Cmaj7 Gsus4 C(add9) G(add9)"),
    ("C", "2 3 6 7", "D E A B"),
    ("C", "16/9 169 1m6/9 6/5 6-/5", "C6/9 C6/9 Cm6/9 A/G Am/G"),
    ("F#", "7ø7 7-7b5 7o7 7°7", "E#m7b5 E#m7b5 E#dim7 E#dim7"),
    ("G", "1 4Δ7 2-⁷ 5⁷ 6-⁷/5", "G Cmaj7 Am7 D7 Em7/D"),
    ("D", "1+ 5+7 7ø 4-6 1-(maj7)", "Daug A7#5 C#m7b5 Gm6 Dm(maj7)"),
    ("C", "57(b9,#11) 57b9 5alt 5sus 57sus 59 513", "G7(b9,#11) G7b9 G7alt Gsus4 G7sus4 G9 G13"),
    ("C", "#4° #4-7b5 b3+ b6/1 bb7", "F#dim F#m7b5 Ebaug Ab/C Bbb"),
    ("C", "1(no3) 15 5/b7 5/#4 2//17", "C5 C5 G/Bb G/F# D//C7"),
]

# Key, numbers counted from its relative major, chords. Minor tunes are usually written so, the tonic a 6-:
# number charts of session players (second-hand); the first two rows are worked examples there, the others
# computed. For a church mode: the major scale of the same notes, ours.
RELATIVE = [
    ("A minor", "6- 4 1 5", "Am F C G"),
    ("C minor", "6- 4 1/3 5sus4", "Cm Ab Eb/G Bbsus4"),
    ("E minor", "6- 3-/5 2-/4 37", "Em Bm/D Am/C B7"),
    ("E minor", "6- 37/#5 6-/5 #4-7b5", "Em B7/D# Em/D C#m7b5"),
    ("F# minor", "6- b7 4maj7 7-7b5 37b9", "F#m G Dmaj7 G#m7b5 C#7b9"),
    ("Eb minor", "6- 1 4 #5o7", "Ebm Gb Cb Ddim7"),
    ("D dorian", "2-7 57 1maj7", "Dm7 G7 Cmaj7"),
    ("G mixolydian", "5 4 1 2-", "G F C Dm"),
    ("F lydian", "4 5 4maj7", "F G Fmaj7"),
]

# Key, numbers counted in minor's own scale, numbers counted against major, chords. Both countings are in
# use: common practice, no source; chords computed. In the own scale a bare 6 and 7 follow the chord: raised
# under a minor or diminished chord, as with numerals (When in Rome corpus, syntax.md, "cautionary").
MINOR = [
    ("a", "1- 6 3 7", "1- b6 b3 b7", "Am F C G"),
    ("a", "1-/3 4-/6 57/7 5-/7", "1-/b3 4-/b6 57/7 5-/b7", "Am/C Dm/F E7/G# Em/G"),
    ("a", "4/6 2-/6 4-7 57", "4/6 2-/6 4-7 57", "D/F# Bm/F# Dm7 E7"),
    ("e", "1- 5-/7 4-/6 57", "1- 5-/b7 4-/b6 57", "Em Bm/D Am/C B7"),
    ("c", "1- 2-7b5 57 6maj7", "1- 2-7b5 57 b6maj7", "Cm Dm7b5 G7 Abmaj7"),
    ("c", "7o7 7o 7 77", "7o7 7o b7 b77", "Bdim7 Bdim Bb Bb7"),
    ("c", "1-/#7 1-(maj7) 3+ b7-", "1-/7 1-(maj7) b3+ b7-", "Cm/B Cm(maj7) Ebaug Bbm"),
    ("f#", "3 4 b2 5/7", "b3 4 b2 5/7", "A B G C#/E#"),
]


def chords_of(numbers, home, choice=PLAIN):
    return [parse_number(text, home.mode, choice).in_key(home) for text in numbers.split()]


@pytest.mark.parametrize(("home", "numbers", "symbols"), VECTORS)
def test_a_number_names_a_chord_of_the_key(home, numbers, symbols):
    found = chords_of(numbers, key(home))

    assert found == [parse_chord(symbol) for symbol in symbols.split()]
    assert " ".join(write_chord(chord, PLAIN) for chord in found) == symbols


@pytest.mark.parametrize(("home", "own", "against_major", "symbols"), MINOR)
def test_minor_is_counted_in_its_own_scale_or_against_major(home, own, against_major, symbols):
    expected = [parse_chord(symbol) for symbol in symbols.split()]

    assert chords_of(own, key(home)) == expected
    assert chords_of(against_major, key(home), AGAINST_MAJOR) == expected


@pytest.mark.parametrize(("home", "own", "against_major", "symbols"), MINOR)
def test_both_countings_are_written_as_they_are_read(home, own, against_major, symbols):
    mode = key(home).mode
    relative = [relative_to(parse_chord(symbol), key(home)) for symbol in symbols.split()]

    assert " ".join(write_number(chord, mode, PLAIN) for chord in relative) == own
    assert " ".join(write_number(chord, mode, AGAINST_MAJOR) for chord in relative) == against_major


@pytest.mark.parametrize(("home", "numbers", "symbols"), RELATIVE)
def test_numbers_may_be_counted_from_the_relative_major(home, numbers, symbols):
    tonic = parse_key(home)
    found = chords_of(numbers, tonic, FROM_RELATIVE)

    assert found == [parse_chord(symbol) for symbol in symbols.split()]
    relative = [relative_to(chord, tonic) for chord in found]
    assert " ".join(write_number(chord, tonic.mode, FROM_RELATIVE) for chord in relative) == numbers


@given(relative_chords, modes)
def test_numbers_from_the_relative_major_are_those_in_its_own_key(chord, mode):
    moved = chord.above(-mode.brightness)  # the tonic of the major scale with the same notes

    assert write_number(chord, mode, FROM_RELATIVE) == write_number(moved, MAJOR, PLAIN)


@pytest.mark.parametrize("mode", MODES.values(), ids=MODES)
def test_seven_numbers_from_the_relative_major_name_the_scale(mode):
    roots = {parse_number(str(number), mode, FROM_RELATIVE).root for number in range(1, 8)}

    assert roots == set(mode.degrees)


# Number as typed, and with its extensions raised, as number charts print them: common practice, no source.
@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("57", "5⁷"), ("2-7", "2-⁷"), ("4maj7", "4maj⁷"), ("7-7b5", "7ø⁷"), ("7o7", "7°⁷"), ("16/9", "1⁶/⁹"),
        ("57b9", "5⁷♭⁹"), ("513", "5¹³"), ("57/7", "5⁷/7"), ("1", "1"), ("b7", "♭7"), ("5sus4", "5sus⁴"),
        ("16/9/3", "1⁶/⁹/3"), ("1(add9)", "1(add⁹)"), ("2//17", "2//1⁷"),
    ],
)  # fmt: skip
def test_extensions_may_be_raised(text, written):
    chord = parse_number(text, MAJOR)

    assert write_number(chord, MAJOR, RAISED) == written
    assert parse_number(written, MAJOR) == chord
    assert write_number(chord, MAJOR, RAISED._replace(plain=True)).isascii()


@pytest.mark.parametrize(
    ("text", "signs", "plain"),
    [
        ("b7maj7", "♭7maj7", "b7maj7"), ("6m/5", "6-/5", "6-/5"), ("7o", "7°", "7o"), ("7dim7", "7°7", "7o7"),
        ("7ø", "7ø7", "7-7b5"), ("1+", "1+", "1+"), ("5aug7", "5+7", "5+7"), ("57b9", "57♭9", "57b9"),
        ("#4-7b5", "♯4ø7", "#4-7b5"), ("1maj7/b7", "1maj7/♭7", "1maj7/b7"),
        ("5(b9,#11)", "5(♭9,♯11)", "5(b9,#11)"),
    ],
)  # fmt: skip
def test_a_number_is_written_with_marks_and_signs_or_in_keyboard_characters(text, signs, plain):
    chord = parse_number(text, key("C").mode)

    assert write_number(chord, key("C").mode) == signs
    assert write_number(chord, key("C").mode, PLAIN) == plain


def test_a_bare_number_is_a_major_chord_whatever_its_degree():
    assert [names(chord.tones) for chord in chords_of("1 2 3 4 5 6 7", key("C"))] == [
        "C E G", "D F# A", "E G# B", "F A C", "G B D", "A C# E", "B D# F#",
    ]  # fmt: skip
