"""What the key itself has in the place of a foreign chord, and which notes differ."""

from __future__ import annotations

import pytest
from harmony_examples import common_qualities, key, key_free, modes, note, relative_chords
from hypothesis import given
from music21 import roman

from nearhand.harmony.replacement import diatonic_replacement, differing_tones, unmatched_tones
from nearhand.harmony.sources import own_source
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.degrees import degree_number
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR

PLAIN = Conventions(plain=True)


def told(symbol, home):
    """The replacement's symbol, and the differing notes as pairs such as ``Ab/A``."""
    home = key(home)
    chord = key_free(symbol, home)[0]
    other = diatonic_replacement(chord, home.mode)
    pairs = [f"{home.tonic.up(place)}/{home.tonic.up(partner)}" for place, partner in differing_tones(chord, other)]
    return write_chord(other.in_key(home), PLAIN), " ".join(pairs)


# Key; foreign chord; the key's own chord on that degree; the notes that differ. Borrowed chords: R. Hutchinson, Music
# Theory for the 21st-Century Classroom, ModeMixtureSection, AnalyzingAndWritingBorrowedChords (A: bVI = F A C; G:
# iiø65 = Am7b5/C), SubtonicVIIinPopMusic; Open Music Theory, modalMixture, alteredSubdominants (N6),
# popRockHarmony-plagal (E: C G D). Applied chords: MT21C, SecondaryDominantsInMajorAndMinor. The own chords are the
# tables of diatonic chords by arithmetic and by music21; minor chords on V and vii°: common practice.
ROWS = """
C ; Fm ; F ; Ab/A
C ; Cm ; C ; Eb/E
C ; Ddim ; Dm ; Ab/A
C ; Eb ; Em ; Eb/E Bb/B
C ; Gm ; G ; Bb/B
C ; Ab ; Am ; Ab/A Eb/E
C ; Bb ; Bdim ; Bb/B
C ; Bdim7 ; Bm7b5 ; Ab/A
C ; Dm7b5 ; Dm7 ; Ab/A
C ; Bb7 ; Bm7b5 ; Bb/B Ab/A
C ; Db/F ; Dm/F ; Db/D Ab/A
C ; Fm6 ; F6 ; Ab/A
C ; Fm/Ab ; F/A ; Ab/A
A ; F ; F#m ; F/F# C/C#
G ; Am7b5/C ; Am7/C ; Eb/E
E ; C ; C#m ; C/C# G/G#
E ; G ; G#m ; G/G# D/D#
E ; D ; D#dim ; D/D#
C ; E7 ; Em7 ; G#/G
C ; D7 ; Dm7 ; F#/F
C ; A7 ; Am7 ; C#/C
C ; E ; Em ; G#/G
C ; C7/Bb ; Cmaj7/B ; Bb/B
C ; F#dim7 ; Fmaj7 ; F#/F Eb/E
Db ; Gbm6 ; Gb6 ; Bbb/Bb
c ; C ; Cm ; E/Eb
c ; Db/F ; Ddim/F ; Db/D
c ; D7 ; Dm7b5 ; F#/F A/Ab
c ; Am ; Ab ; A/Ab E/Eb
c ; Gm7b5 ; G7 ; Bb/B Db/D
c ; Bbm ; Bb ; Db/D
c ; Bm7 ; Bdim7 ; F#/F A/Ab
g# ; A ; A#dim ; A/A#
"""
CASES = [tuple(field.strip() for field in line.split(";")) for line in ROWS.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbol", "own", "differing"), CASES)
def test_the_keys_own_chord_in_the_place_and_the_notes_that_differ(home, symbol, own, differing):
    assert told(symbol, home) == (own, differing)


# The numerals of major and of minor (natural, with V and vii° as dominants) as music21 reads them.
OWN_NUMERALS = {
    MAJOR: ["I", "ii", "iii", "IV", "V", "vi", "viio", "I7", "ii7", "iii7", "IV7", "V7", "vi7", "viiø7"],
    MINOR: ["i", "iio", "III", "iv", "V", "VI", "viio", "i7", "iiø7", "III7", "iv7", "V7", "VI7", "viio7"],
}
TONICS = ["Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#"]


@pytest.mark.parametrize("mode", [MAJOR, MINOR], ids=lambda mode: mode.name)
@pytest.mark.parametrize("tonic", TONICS)
def test_the_replacements_are_the_chords_that_music21_has_on_the_degrees(tonic, mode):
    home = key(tonic)._replace(mode=mode)
    if mode is MINOR:
        home = home._replace(tonic=home.tonic.up(3))
    name = str(home.tonic).replace("b", "-")
    for at, numeral in enumerate(OWN_NUMERALS[mode]):
        published = roman.RomanNumeral(numeral, name.lower() if mode is MINOR else name)
        tones = tuple(note(pitch.name.replace("-", "b")) for pitch in published.pitches)
        foreign = ("aug", "maj7#5")[at >= 7]
        chord = key_free(f"{tones[0]}{foreign}", home)[0]
        own = diatonic_replacement(chord, mode)
        if numeral.startswith("III"):  # III+ is minor's own, the one degree with that chord
            assert own is None
        else:
            assert own.in_key(home).tones == tones


def test_an_own_chord_needs_no_replacement():
    for mode, numerals in ((MAJOR, "I ii V7 viiø7"), (MINOR, "i v V IV vii°7 VII7 III+")):
        for numeral in numerals.split():
            assert diatonic_replacement(parse_numeral(numeral, mode), mode) is None


def test_tones_without_a_partner_are_told_apart():
    # common practice, no source: a suspended fourth stands where the third will be
    suspended, own = key_free("Bbsus4", key("C"))[0], key_free("Bdim", key("C"))[0]

    assert diatonic_replacement(suspended, MAJOR) == own
    assert differing_tones(suspended, own) == ((-2, 5),)
    assert unmatched_tones(suspended, own) == (-3,)
    assert unmatched_tones(own, suspended) == (2,)


def test_a_tone_that_both_chords_have_is_no_difference():
    # C7(b9,#9) holds two tones of the letter D; against Cadd9 only the altered ones differ
    chord, other = key_free("C7(b9,#9) Cadd9", key("C"))

    assert differing_tones(chord, other) == ((-5, 2), (9, 2))


@given(relative_chords(), modes)
def test_a_replacement_is_a_chord_of_the_key_on_the_same_degree(chord, mode):
    own = diatonic_replacement(chord, mode)

    assert (own is None) == (own_source(chord, mode) is not None)
    if own is not None:
        assert own_source(own, mode) is not None
        assert degree_number(own.root) == degree_number(chord.root)
        assert degree_number(own.bass) == degree_number(chord.bass)
        assert (7 in own.quality.numbers) == (7 in chord.quality.numbers)


@given(relative_chords(common_qualities), modes)
def test_a_replacement_has_as_many_tones_and_another_note(chord, mode):
    own = diatonic_replacement(chord, mode)

    if own is not None:
        assert len(own.places) == len(chord.places)
        assert differing_tones(chord, own)
        assert unmatched_tones(chord, own) == unmatched_tones(own, chord) == ()


@given(relative_chords(), relative_chords())
def test_every_tone_is_shared_differs_or_has_no_partner(chord, other):
    pairs = differing_tones(chord, other)
    shared = {place for place in chord.places if place in other.places}
    altered = {place for place, _ in pairs}
    alone = set(unmatched_tones(chord, other))

    assert shared | altered | alone == set(chord.places)
    assert len(shared) + len(altered) + len(alone) == len(set(chord.places))
    assert all(place != partner and (place - partner) % 7 == 0 for place, partner in pairs)
    assert {partner for _, partner in pairs} <= set(other.places)
