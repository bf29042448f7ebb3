"""Chord symbols against mingus; where it is wrong its answer is pinned, so that the list stays honest."""

from __future__ import annotations

import pytest
from mingus.core import chords as mingus_chords
from strategies import MAJOR_TONICS

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.errors import InputError

# Tails that mingus 0.6.1 and we read alike.
AGREED = """
m M dim aug + 7#5 sus4 sus2 sus sus4b9 susb9 m7 M7 7 m7b5 dim7 mM7 m6 M6 6 6/9 69 9 7b9 7#9 M9 m9 7#11 7b5 5
M7+ dom7 m/M7
"""

# Tail, mingus' answer on C, and what we hold against it.
DIFFERENT = [
    ("11", "C G Bb F", "third and ninth are left out, which MusicXML 4.0 has in an eleventh chord"),
    ("m11", "C Eb G Bb F", "the ninth is left out, same source"),
    ("13", "C E G Bb D A", "the eleventh is left out, same source; so it is played (R. Hutchinson)"),
    ("M13", "C E G B D A", "the eleventh is left out, same source"),
    ("m13", "C Eb G Bb D A", "the eleventh is left out, same source"),
    ("M7+5", "C E G# Bb", "the seventh is minor though the symbol says major"),
    ("7+", "C E G# B", "7+ is an augmented seventh, as +7 is; its own +7 is not known there"),
    ("m7+", "C E G# Bb", "the third is major though the symbol says minor"),
]

# Tails that mingus reads and we refuse: its own names, or forms that charts read in two ways.
OWN = ["sus47", "6/7", "67", "hendrix", "7b12"]


def their_tones(symbol):
    return " ".join(mingus_chords.from_shorthand(symbol))


@pytest.mark.parametrize("tail", ["", *AGREED.split()])
def test_a_chord_symbol_has_the_tones_that_mingus_gives(tail):
    for root in MAJOR_TONICS:
        theirs = their_tones(root + tail).split()

        assert sorted(str(tone) for tone in parse_chord(root + tail).tones) == sorted(theirs)


@pytest.mark.parametrize(("tail", "their_answer", "fault"), DIFFERENT)
def test_the_list_of_what_mingus_reads_otherwise_is_honest(tail, their_answer, fault):
    assert their_tones("C" + tail) == their_answer, fault
    assert {str(tone) for tone in parse_chord("C" + tail).tones} != set(their_answer.split())


@pytest.mark.parametrize("tail", OWN)
def test_names_of_mingus_own_making_are_refused(tail):
    with pytest.raises(InputError):
        parse_chord("C" + tail)


def test_every_shorthand_of_mingus_is_in_one_of_the_lists():
    listed = {"", *AGREED.split(), *OWN, *(tail for tail, *_ in DIFFERENT)}

    assert set(mingus_chords.chord_shorthand) == listed


@pytest.mark.parametrize(("symbol", "their_answer"), [("Am7/G", "G A C E G"), ("C/F#", "F# C E G")])
def test_mingus_writes_a_slash_bass_as_the_lowest_tone_of_the_chord(symbol, their_answer):
    chord = parse_chord(symbol)

    assert their_tones(symbol) == their_answer
    assert " ".join(map(str, (chord.bass, *chord.tones))) == their_answer
