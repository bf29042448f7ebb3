"""Changes in square brackets behind figures: tones added, left out and altered, as RomanText writes them."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from music21 import key as m21_key
from music21 import roman
from strategies import conventions, key, names, note

from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.quality import QUALITIES

OF_THE_SCALE = Conventions(sevenths="scale")

# Key, figure, tones from the root up, bass. The first is worked out in When in Rome corpus, syntax.md: "#ivo6[add9]" in
# D minor has the root G#, the triad G# B D, B in the bass, and an added A. The second and third are named there as ways
# to write a suspension. The others stand in the analyses of music21's package; spelled by arithmetic.
WORKED = [
    ("d", "#ivo6[add9]", "G# B D A", "B"), ("C", "V[add4][no3]", "G C D", "G"), ("C", "V54", "G C D", "G"),
    ("C", "V7[no5]", "G B F", "G"), ("a", "v[no1]", "G B", "G"), ("a", "i[no3][no5]", "A", "A"),
    ("C", "I[no3no5]", "C", "C"), ("C", "V9[no7]", "G B D A", "G"), ("C", "I[#5]", "C E G#", "C"),
    ("C", "I6/4/V[no6]", "G B D", "D"), ("C", "V2[no3]", "G D F", "F"), ("c", "viio6[no5]", "B D", "D"),
]  # fmt: skip

# Behind each of these each change is compared with music21.
HEADS = [
    "I", "V", "V7", "ii", "ii6", "viio6", "viio7", "viiø7", "V65", "V43", "V42", "IV", "i", "iv", "VI", "VII", "III+",
    "I64", "V9", "#ivo7", "bVII",
]  # fmt: skip
CHANGES = [
    "[no1]", "[no3]", "[no5]", "[no7]", "[no3][no5]", "[no3no5]", "[add9]", "[add2]", "[add4]", "[add6]", "[add11]",
    "[add13]", "[addb9]", "[add#9]", "[add#11]", "[add#4]", "[addb6]", "[addb13]", "[add7]", "[add#7]", "[addb7]",
    "[b5]", "[#5]", "[b3]", "[#3]", "[add2][no3]", "[b5][add9]", "[add9][no5]", "[add10]", "[add12]",
]  # fmt: skip

# The tone in the bass is altered, or left out: then the next tone of the chord above it. music21 10.5.1 has the same.
BASSES = [
    ("V43[b5]", "Db"), ("I64[#5]", "G#"), ("ii6[b3]", "Fb"), ("V42[b7]", "Fb"), ("V43[no5]", "F"), ("V65[no3]", "D"),
    ("ii6[no3]", "A"), ("I64[no5]", "C"), ("V42[no7]", "G"), ("ii6[add4][no3]", "G"), ("V7[no1]", "B"),
    ("V6[b3]/V", "F"), ("V43[no5]/V", "C"), ("V43[b5]/ii", "Eb"),
]  # fmt: skip

# Key, figure, music21's tones, ours: an alteration of a tone that the chord does not have. music21 passes over it;
# behind a chord symbol it adds the tone (C7b9), so it does here.
ALTERED_WITHOUT_BEING_THERE = [
    ("C", "I[b7]", "C E G", "C E G Bb"), ("C", "V7[b9]", "G B D F", "G B D F Ab"), ("C", "V[#11]", "G B D", "G B D C#"),
    ("c", "V[b9]", "G B D", "G B D Abb"), ("C", "I[#6]", "C E G", "C E G A#"),
]  # fmt: skip

# Text, what is wrong, place.
REFUSED = [
    ("V[", "a bracket is not closed", 1), ("V[no5", "a bracket is not closed", 1),
    ("V[x]", "'x]' is no part of a chord", 2), ("V[5]", "'5]' is no part of a chord", 2),
    ("V[b0]", "'b0]' is no part of a chord", 2), ("V[b14]", "'b14]' is no part of a chord", 2),
    ("V[add]", "'add]' is no part of a chord", 2), ("V[no5]x", "'x' is no part of a chord", 6),
    ("V[no5]]", "']' is no part of a chord", 6), ("V]", "']' is no part of a chord", 1),
    ("[no5]", "'[no5]' is no numeral", 0), ("V/[no5]", "'[no5]' is no numeral", 2),
]  # fmt: skip
TOO_FAR = ["V[###5]", "V[bbb5]", "V7[no1][no3][no5][no7]", "I[no1][no3][no5]", "III+[##5]"]


def ours(figure, home, choice=OF_THE_SCALE):
    chord = parse_numeral(figure, home.mode, choice).in_key(home)
    return {str(tone) for tone in chord.tones}, str(chord.bass)


def theirs(figure, tonic):
    cautionary = roman.Minor67Default.CAUTIONARY
    chord = roman.RomanNumeral(figure, m21_key.Key(tonic), sixthMinor=cautionary, seventhMinor=cautionary)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


@pytest.mark.parametrize(("home", "figure", "tones", "bass"), WORKED)
def test_a_bracket_adds_leaves_out_or_alters_a_tone(home, figure, tones, bass):
    chord = parse_numeral(figure, key(home).mode, OF_THE_SCALE).in_key(key(home))

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


@pytest.mark.parametrize("tonic", ["C", "c", "E", "f"])
@pytest.mark.parametrize("change", CHANGES)
def test_every_change_behind_every_figure_is_the_one_that_music21_makes(change, tonic):
    home = key(tonic)
    figures = [head + change for head in HEADS] + [f"V6{change}/V", f"V7{change}/ii"]

    assert {figure: ours(figure, home) for figure in figures} == {figure: theirs(figure, tonic) for figure in figures}


@pytest.mark.parametrize(("figure", "bass"), BASSES)
def test_a_bass_that_a_bracket_changes_stays_the_bass(figure, bass):
    assert ours(figure, key("C"))[1] == theirs(figure, "C")[1] == bass


@pytest.mark.parametrize(("home", "figure", "their_tones", "our_tones"), ALTERED_WITHOUT_BEING_THERE)
def test_an_altered_tone_that_is_not_there_is_added(home, figure, their_tones, our_tones):
    assert theirs(figure, home)[0] == set(their_tones.split())
    assert ours(figure, key(home))[0] == set(our_tones.split())


def test_a_fourth_that_is_no_perfect_one_is_an_eleventh_and_leaves_the_bass_to_the_chord():
    # music21 puts it into the bass in place of the third; a suspension that is no plain fourth has no name among chord
    # symbols, so here it is a tone above the chord: ours
    assert ours("bII6[add4][no3]", key("C")) == ({"Db", "G", "Ab"}, "Ab")
    assert theirs("bII6[add4][no3]", "C") == ({"Db", "G", "Ab"}, "G")


@pytest.mark.parametrize(("figure", "letters", "their_tones"), [("I[omit5]", "o", "C E G"), ("V[maj7]", "", "G B D F")])
def test_what_romantext_does_not_write_in_brackets_is_read_as_in_a_chord_symbol(figure, letters, their_tones):
    assert theirs(figure, "C")[0] == set(their_tones.split()), letters
    assert ours(figure, key("C"))[0] == {"I[omit5]": {"C", "E"}, "V[maj7]": {"G", "B", "D", "F#"}}[figure]


def test_several_changes_may_share_a_bracket():
    for mode in (MAJOR, MINOR):
        for together, apart in (
            ("[no3no5]", "[no3][no5]"), ("[no3,no5]", "[no3][no5]"), ("[add4,add9]", "[add4][add9]"),
            ("[b5add9]", "[b5][add9]"), ("[omit5]", "[no5]"),
        ):  # fmt: skip
            assert parse_numeral("V7" + together, mode) == parse_numeral("V7" + apart, mode)


def test_brackets_give_the_chords_that_have_names():
    # the same tones as a chord symbol writes them: MusicXML 4.0, kind-value
    for figure, kind in (
        ("I[no3]", "power"), ("I[no3][add4]", "suspended-fourth"), ("I[add2][no3]", "suspended-second"),
        ("I[add6]", "major-sixth"), ("ii[add6]", "minor-sixth"), ("I[#5]", "augmented"), ("ii[b5]", "diminished"),
        ("V7[add9]", "dominant-ninth"), ("V7[#5]", "augmented-seventh"), ("ii7[b5]", "half-diminished"),
    ):  # fmt: skip
        assert parse_numeral(figure, MAJOR).quality == QUALITIES[kind], figure


@pytest.mark.parametrize(("text", "sentence", "start"), REFUSED)
@pytest.mark.parametrize("choice", [DEFAULT, OF_THE_SCALE], ids=["chord", "scale"])
def test_a_bracket_that_says_nothing_is_refused_in_its_place(text, sentence, start, choice):
    for mode in (MAJOR, MINOR):
        with pytest.raises(InputError) as caught:
            parse_numeral(text, mode, choice)
        assert (caught.value.what, caught.value.start) == (sentence, start)


@pytest.mark.parametrize("text", TOO_FAR)
def test_a_chord_without_tones_or_with_a_tone_that_cannot_be_spelled_is_refused(text):
    for mode in (MAJOR, MINOR):
        with pytest.raises(InputError) as caught:
            parse_numeral(text, mode)
        assert caught.value.hint == "leave out a bracket or an accidental"


# An altered root is the root of another degree. Ours: music21 alters it and keeps the numeral.
@pytest.mark.parametrize("text", ["V[#1]", "V[b8]", "V[addb8]", "#ivo7[add8]", "V6[##1]"])
def test_an_altered_root_is_refused(text):
    with pytest.raises(InputError):
        write_numeral(parse_numeral(text, MAJOR), MAJOR)


def test_an_added_octave_third_or_fifth_doubles_a_tone():
    for figure in ("V[add8]", "V[add10]", "V[add12]", "V[add1]", "V[add3]", "V[add5]"):
        assert parse_numeral(figure, MAJOR).quality == QUALITIES["major"]
        assert ours(figure, key("C")) == theirs(figure, "C")


@settings(max_examples=400)
@example("VI", "[no1][no3][no5][add6]", MAJOR, Conventions())
@given(
    st.sampled_from(HEADS),
    st.lists(st.sampled_from([*CHANGES, "[add8]", "[#1]", "[b8]"]), max_size=3).map("".join),
    st.sampled_from([MAJOR, MINOR]),
    conventions,
)
def test_a_chord_with_changes_is_written_so_that_it_reads_back(head, changes, mode, choice):
    try:
        chord = parse_numeral(head + changes, mode, choice)
    except InputError:
        return
    assert chord.bass in chord.places
    for written_as in (choice, PLAIN):
        assert parse_numeral(write_numeral(chord, mode, written_as), mode, written_as) == chord
