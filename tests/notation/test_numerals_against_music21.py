"""Every numeral of the common practice in all thirty keys, compared with music21."""

from __future__ import annotations

from itertools import product

import pytest
from music21 import key as m21_key
from music21 import roman
from strategies import MAJOR_TONICS, MINOR_TONICS, key

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import degree_number
from nearhand.notation.numeral_words import NUMERALS
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.quality import quality

# Numerals as we write them. music21 10.5.1 writes "o" for "°"; its bare 7 on a capital is the seventh of
# the scale, so that it writes I7 where we write Imaj7. Its setting for the sixth and seventh of minor is
# set to "cautionary", which is what we do. Left out is i(maj7), which it refuses.
TRIADS = {"major": "I ii iii IV V vi vii°", "minor": "i ii° ii III III+ iv IV v V VI vi° vi VII vii°"}
SEVENTHS = {
    "major": "Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7 vii°7",
    "minor": "i7 iiø7 ii7 IIImaj7 III+maj7 iv7 IV7 v7 V7 VImaj7 viø7 VII7 vii°7 viiø7",
}
TARGETS = {"major": "ii iii IV V vi", "minor": "III iv v V VI VII"}
APPLIED = "V V6 V64 V7 V65 V43 V42 vii° vii°6 vii°64 vii°7 vii°65 vii°43 vii°42 viiø7 viiø65 viiø43 viiø42"
CHROMATIC = {
    "major": "bII bII6 bII64 N6 bIII bIII6 bVI bVI6 bVI64 bVII bVII6 i iv v II III VI VII biii bvi bvii bV "
    "ii° I+ V+ bIII+ #iv° #iv°7 #ivø7 #ii°7 #vi° #vi°7 #I° #V",
    "minor": "bII bII6 bII64 N6 bVI bVI6 bVII bVII6 I II vi #vi #vi° #viø7 #vii #vii° #vii°7 #VI #VII bvi "
    "bvii bii biii bV #III #iv° #iv°7",
}


def inverted(mode):
    """All numerals to compare: triads, sevenths, applied chords with their inversions, chromatic chords."""
    triads = [numeral + figure for numeral in TRIADS[mode].split() for figure in ("", "6", "64")]
    sevenths = [chord[:-1] + figure for chord in SEVENTHS[mode].split() for figure in ("7", "65", "43", "42")]
    applied = [f"{chord}/{target}" for target in TARGETS[mode].split() for chord in APPLIED.split()]
    return [*triads, *sevenths, *applied, *CHROMATIC[mode].split()]


OF_THE_SCALE = Conventions(sevenths="scale")
TONICS = (*MAJOR_TONICS, *MINOR_TONICS)


def ours(numeral, home, conventions=DEFAULT):
    chord = parse_numeral(numeral, home.mode, conventions).in_key(home)
    return {str(tone) for tone in chord.tones}, str(chord.bass)


def their_key(tonic):
    return m21_key.Key(tonic[0] + tonic[1:].replace("b", "-"))


def theirs(numeral, home):
    figure = numeral.replace("°", "o").replace("maj", "")
    cautionary = roman.Minor67Default.CAUTIONARY
    chord = roman.RomanNumeral(figure, home, sixthMinor=cautionary, seventhMinor=cautionary)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


@pytest.mark.parametrize("tonic", TONICS)
def test_every_numeral_has_the_tones_and_the_bass_that_music21_gives(tonic):
    home = key(tonic)
    their_home = their_key(tonic)
    compared = inverted(home.mode.name)

    assert {numeral: ours(numeral, home) for numeral in compared} == {
        numeral: theirs(numeral, their_home) for numeral in compared
    }
    assert their_home.sharps == home.signature


# Every degree in both cases with every mark, figure and accidental: 2,688 numerals. All are asked in one major and one
# minor key, and a sixth of them in each other key, the next sixth in the next, so that each is asked in five keys at
# least; that every key gives the same chords, moved, is a law of its own.
FIGURES = ("", "6", "64", "7", "65", "43", "42", "2", "9", "53", "63", "753", "653", "643", "642", "54")
GRID = [
    accidental + (numeral.lower() if is_small else numeral) + mark + figure
    for numeral, is_small, mark, figure, accidental in product(
        NUMERALS,
        (False, True),
        ("", "°", "ø", "+"),
        FIGURES,
        ("", "b", "#"),
    )
]


def with_fourth_altered_like_the_root(numeral, home):
    """A suspension as music21 reads it: what alters the root alters the fourth as well (vi54 in C minor is A D♯ E).

    Ours is the fourth of the scale, as the sevenths and ninths of altered degrees are, in music21 too.
    """
    chord = parse_numeral(numeral, home.mode, OF_THE_SCALE)
    shift = chord.root - home.mode.degrees[degree_number(chord.root) - 1]
    tones = [(number, place if number in (1, 5) else place + shift) for number, place in chord.quality.tones]
    moved = chord._replace(quality=quality(tones)).in_key(home)
    return {str(tone) for tone in moved.tones}, str(moved.bass)


def asked_in(tonic):
    """The numerals of the grid that are asked in a key."""
    return GRID if tonic in ("C", "c") else GRID[TONICS.index(tonic) % 6 :: 6]


@pytest.mark.parametrize("tonic", TONICS)
def test_every_figure_with_every_mark_on_every_degree_is_the_chord_that_music21_gives(tonic):
    home, their_home = key(tonic), their_key(tonic)
    expected = {
        numeral: with_fourth_altered_like_the_root(numeral, home)
        if numeral.endswith("54")
        else ours(numeral, home, OF_THE_SCALE)
        for numeral in asked_in(tonic)
    }

    assert {numeral: theirs(numeral, their_home) for numeral in expected} == expected


# Applied chords, once, twice and three times: each of the first row over each of the second, in the keys named.
HEADS = "I7 i iiø7 III iv65 V V65 V42 vi° VII vii° vii°43 viiø65 IV7 bII6 N6 It6 Ger65 Cad64 V9 III+6 V[no5]".split()  # noqa: SIM905
TARGETS_OF_ALL_KINDS = (
    "I II III IV V VI VII i ii iii iv v vi vii ii° vii° III+ bII bIII bVI bVII N #iv #iv° bvii biii".split()  # noqa: SIM905
)
CHAINS = ("V/V", "ii/V", "V/ii", "V7/vi", "bVI/iv", "N/V", "V/iv/III", "VI/v/V", "V/V/V")


@pytest.mark.parametrize("head", HEADS)
def test_an_applied_chord_of_any_depth_is_the_chord_that_music21_gives(head):
    for tonic in ("C", "c"):
        numerals = [f"{head}/{target}" for target in (*TARGETS_OF_ALL_KINDS, *CHAINS)]

        assert {numeral: ours(numeral, key(tonic), OF_THE_SCALE) for numeral in numerals} == {
            numeral: theirs(numeral, their_key(tonic)) for numeral in numerals
        }


# Triads and sevenths on degrees with flats and sharps, counted against the major scale of the tonic as pop charts count
# them (Open Music Theory, first edition, "Pop-rock harmony: minor-key", writes bVI bVII I in minor).
POP = [
    accidental + numeral + tail
    for accidental in ("", "b", "#")
    for numeral in "I i II ii III iii IV iv V v VI vi VII vii".split()  # noqa: SIM905
    for tail in ("", "6", "64", "°", "°7", "ø65", "+")
]


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_counted_against_major_a_numeral_in_minor_is_that_of_the_major_key_on_the_tonic(tonic):
    against_major = Conventions(degrees="major")
    numerals = POP[MINOR_TONICS.index(tonic) % 5 :: 5]
    major = their_key(tonic[0].upper() + tonic[1:])

    assert {numeral: ours(numeral, key(tonic), against_major) for numeral in numerals} == {
        numeral: theirs(numeral, major) for numeral in numerals
    }


# Key, figure as music21 takes it, its answer, our numeral and its tones, what differs. Its answers are
# asserted, so that the list stays honest when music21 changes. "-" is its flat.
DIFFERENT = [
    ("c", "iM7", "C E- G B-", ("i(maj7)", "C Eb G B"), "the seventh stays lowered"),
    ("C", "VM7", "G B D F", ("Vmaj7", "G B D F#"), "the seventh is that of the scale"),
    ("C", "IVm6", "F A C", ("IVm(add6)", "F Ab C D"), "the m is lost, the 6 is a figure"),
    ("C", "V7b9", "F G A-", ("V7b9", "G B D F Ab"), "third and fifth are lost"),
    ("C", "Vsus4", "C G", ("Vsus4", "G C D"), "the fifth is lost"),
    ("C", "I7", "C E G B", ("I7", "C E G Bb"), "the seventh is that of the scale: a convention"),
    ("C", "bVII7", "A B- D F", ("bVII7", "Bb D F Ab"), "a major seventh, where players read a dominant one"),
]


@pytest.mark.parametrize(("home", "figure", "their_tones", "our_answer", "what"), DIFFERENT)
def test_the_list_of_what_music21_reads_otherwise_is_honest(home, figure, their_tones, our_answer, what):
    chord = roman.RomanNumeral(figure, m21_key.Key(home))
    numeral, tones = our_answer

    assert {pitch.name for pitch in chord.pitches} == set(their_tones.split()), what
    assert ours(numeral, key(home))[0] == set(tones.split())


def test_its_default_setting_reads_cautionary_accidentals_in_minor_as_alterations():
    home = m21_key.Key("a")

    assert roman.RomanNumeral("bVI", home).root().name == "F-"
    assert roman.RomanNumeral("#viio", home).root().name == "G##"
    assert [ours(numeral, key("a"))[1] for numeral in ("bVI", "#vii°")] == ["F", "G#"]


# Key, figure, what music21 answers (bass first), what we do where a bare 7 is the seventh of the scale, what differs.
DIFFERENT_FIGURES = [
    ("C", "V4", "G C", "G C D", "a 4 alone: it leaves out the fifth"),
    ("C", "V97", "G F A", "G A B D F", "part of the full figures: it takes only the tones that are written"),
    ("C", "V75", "G D F", "G B D F", "the same"),
    ("C", "V85", "G D", "G B D", "the same"),
    ("C", "V87", "G F", "G B D F", "the same"),
    ("C", "V86", "G E", "B D G", "the same, and the root stays in the bass"),
    ("C", "V7532", "G B D F A", "A B D F G", "it does not know the ninth in the bass"),
    ("C", "N7", "Db C Bb", "Db Ab C F", "it loses third and fifth"),
    ("C", "Vb9", "G B D F Ab", "G Ab B D", "an accidental on a 9: we read the added ninth of a chord symbol"),
    ("C", "V65b3", "B D F G", "B Db F G", "an accidental on a figure of an inversion: it drops it"),
    ("C", "V7/5th", "G D F", "D F G B", "an ordinal after a slash: it takes the 5 for a figure"),
    ("C", "II//I7", "D F# A", "C E G B D F# A", "a chord over a chord: it reads the upper one"),
    ("d", "III6+", "A C F", "A C# F", "a plus behind the figure: it drops it"),
]
REFUSED_BY_MUSIC21 = ["Cad", "Cad6/4", "Gr65", "I/3rd", "i(maj7)"]


@pytest.mark.parametrize(("home", "figure", "their_answer", "our_answer", "what"), DIFFERENT_FIGURES)
def test_the_list_of_figures_that_music21_reads_otherwise_is_honest(home, figure, their_answer, our_answer, what):
    for answer, expected in (
        (theirs(figure, their_key(home)), their_answer),
        (ours(figure, key(home), OF_THE_SCALE), our_answer),
    ):
        assert answer == (set(expected.split()), expected.split()[0]), what


@pytest.mark.parametrize("figure", REFUSED_BY_MUSIC21)
def test_music21_refuses_some_that_are_written(figure):
    with pytest.raises(Exception) as caught:
        roman.RomanNumeral(figure, m21_key.Key("C"))
    assert "music21" in type(caught.value).__module__


def test_its_bare_neapolitan_is_a_sixth_chord_as_ours_is():
    assert theirs("N", their_key("C")) == ours("N", key("C")) == ({"Db", "F", "Ab"}, "F")
