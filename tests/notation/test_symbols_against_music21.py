"""Chord symbols against music21, where it can read them."""

from __future__ import annotations

import pytest
from music21 import harmony
from strategies import MAJOR_TONICS

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.chord_words import BASES
from nearhand.notation.errors import InputError

# Tails that music21 10.5.1 and we read alike, on every root; flats of the root are written as "-" for it.
# Left out: tails with a dash for minor, which it takes for a flat of the root; all below in REFUSED and
# DIFFERENT.
AGREED = """
M maj m min 5 6 m6 min6 7 9 11 13 M7 maj7 m7 min7 M9 Maj9 m9 min9 M11 Maj11 m11 min11 M13 Maj13 m13 min13
mM7 dim o dim7 o7 aug + aug7 +7 aug9 +9 aug11 +11 aug13 +13 ø7 m7b5 ø9 ø11 ø13 sus sus4 sus2 7sus4 7b9 7#9
7#11 9#11 7b5 7#5 7b13 add9 madd9 maj7#11 maj7#5 6add9 omit5
7+ minmaj7 mM9 minmaj9 mM11 minmaj11 mM13 minmaj13 +M7 augmaj7 +M9 augmaj9 +M11 augmaj11 +M13 augmaj13 9#5
pedal dom7 dom9 dom11 dom13 o9 dim9 o11 dim11 7sus øb9 dimb9
"""
BASS = ["/E", "m/Eb", "7/Bb", "/F#", "m7/Bb", "maj7/B", "/D#", "/Eb"]

# What music21 10.5.1 refuses on C, and we read: it has no such abbreviations in its table.
REFUSED = """
6/9 m6/9 m69 Δ Δ7 △7 ^7 j7 mi mi7 ma7 maj9 maj11 maj13 maj6 ° °7 ø m(maj7) (add9)
9sus4 7(b9) maj9#11 (no3) no5
"""

# What music21 10.5.1 reads otherwise without a word: symbol as it must be written for it, ours, its tones
# from the lowest up, what is wrong there.
DIFFERENT = [
    ("C2", "C2", "C D", "the third and fifth are lost"),
    ("C4", "C4", "C F", "the fifth is lost"),
    ("C69", "C69", "C D A", "the third and fifth are lost"),
    ("C13b9", "C13b9", "C D E F G A Bb", "the plain ninth stays"),
    ("C13#11", "C13#11", "C D E F G A Bb", "the plain eleventh stays"),
    ("C11b9", "C11b9", "C D E F G Bb", "the plain ninth stays"),
    ("Cob9", "Cob9", "C Db Eb Gb Bbb", "an altered ninth brings a seventh there, a plain one here"),
    ("Em#7", "Em#7", "E G B Eb", "the major seventh is spelled with a flat"),
    ("CIt", "CIt", "C F# Ab", "the lowered sixth degree is counted from the root, as if that were the tonic"),
    ("CFr", "CFr", "C D F# Ab", "the same"),
    ("CGer", "CGer", "C Eb F# Ab", "the same"),
    ("C-7", "C-7", "Cb Eb Gb Bbb", "the dash is read as a flat of the root"),
    ("Bb7", "Bb7", "B D# F# A", "the flat is lost: it must be written B-7"),
]


def their_tones(symbol):
    chord = harmony.ChordSymbol(symbol)
    return {pitch.name.replace("-", "b") for pitch in chord.pitches}, chord.bass().name.replace("-", "b")


def our_tones(symbol):
    chord = parse_chord(symbol)
    return {str(tone) for tone in (*chord.tones, chord.bass)}, str(chord.bass)


@pytest.mark.parametrize("tail", ["", *AGREED.split()])
def test_a_chord_symbol_has_the_notes_that_music21_gives(tail):
    for root in MAJOR_TONICS:
        assert our_tones(root + tail) == their_tones(root.replace("b", "-") + tail)


@pytest.mark.parametrize("tail", BASS)
def test_a_slash_bass_is_the_one_that_music21_gives(tail):
    assert our_tones("C" + tail) == their_tones("C" + tail.replace("b", "-"))


@pytest.mark.parametrize("tail", REFUSED.split())
def test_what_music21_refuses_is_still_a_chord_here(tail):
    with pytest.raises(ValueError, match=r"Invalid chord abbreviation|not a supported accidental"):
        harmony.ChordSymbol("C" + tail)
    assert len(parse_chord("C" + tail).tones) >= 2


@pytest.mark.parametrize(("theirs", "ours", "their_notes", "fault"), DIFFERENT)
def test_the_list_of_what_music21_reads_otherwise_is_honest(theirs, ours, their_notes, fault):
    assert their_tones(theirs)[0] == set(their_notes.split()), fault
    assert our_tones(ours)[0] != their_tones(theirs)[0]


# Abbreviations of music21's table that we do not read: its own, but for power and pedal names of kinds.
OWN = ["dom7dim5", "N6", "It+6", "Fr+6", "Gr+6", "power", "tristan"]


def test_every_abbreviation_of_music21_is_in_one_of_the_lists():
    theirs = {word for _, words in harmony.CHORD_TYPES.values() for word in words}
    different = {symbol[1:] for symbol, *_ in DIFFERENT}

    assert theirs <= {"", *AGREED.split(), *OWN, *different}


@pytest.mark.parametrize("tail", OWN)
def test_abbreviations_of_music21s_own_are_refused(tail):
    with pytest.raises(InputError):
        parse_chord("C" + tail)


def test_every_base_spelling_without_a_dash_is_compared_or_known_to_be_refused():
    different = {symbol[1:] for symbol, *_ in DIFFERENT}
    left = [base for base in BASES if not base.startswith("-")]
    left = [base for base in left if base not in ("", *AGREED.split(), *REFUSED.split(), *different)]

    for base in left:
        if base.endswith("altered"):  # music21 drops the word
            assert harmony.ChordSymbol("C" + base).pitches == harmony.ChordSymbol("C" + base[:-7]).pitches
            continue
        with pytest.raises(ValueError, match="Invalid chord abbreviation"):
            harmony.ChordSymbol("C" + base)
