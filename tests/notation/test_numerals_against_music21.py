"""Every numeral of the common practice in all thirty keys, compared with music21."""

from __future__ import annotations

import pytest
from music21 import key as m21_key
from music21 import roman
from strategies import MAJOR_TONICS, MINOR_TONICS, key

from nearhand.notation.numerals import parse_numeral

# Numerals as we write them. music21 10.5.1 writes "o" for "°"; its bare 7 on a capital is the seventh of
# the scale, so that it writes I7 where we write Imaj7. Its setting for the sixth and seventh of minor is
# set to "cautionary", which is what we do. N6 is compared with its bII6. Left out is i(maj7), which it
# refuses.
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


def ours(numeral, home):
    chord = parse_numeral(numeral, home.mode).in_key(home)
    return {str(tone) for tone in chord.tones}, str(chord.bass)


def theirs(numeral, home):
    figure = numeral.replace("°", "o").replace("maj", "").replace("N6", "bII6")
    cautionary = roman.Minor67Default.CAUTIONARY
    chord = roman.RomanNumeral(figure, home, sixthMinor=cautionary, seventhMinor=cautionary)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


@pytest.mark.parametrize("tonic", [*MAJOR_TONICS, *MINOR_TONICS])
def test_every_numeral_has_the_tones_and_the_bass_that_music21_gives(tonic):
    home = key(tonic)
    their_home = m21_key.Key(tonic[0] + tonic[1:].replace("b", "-"))
    compared = inverted(home.mode.name)

    assert {numeral: ours(numeral, home) for numeral in compared} == {
        numeral: theirs(numeral, their_home) for numeral in compared
    }
    assert their_home.sharps == home.signature


# Key, numeral as music21 takes it, its answer, ours for the same chord, what differs. Its answers are
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


def test_its_bare_neapolitan_is_a_sixth_chord_and_ours_stands_on_its_root():
    assert roman.RomanNumeral("N", m21_key.Key("C")).bass().name == "F"
    assert ours("N", key("C"))[1] == "Db"
