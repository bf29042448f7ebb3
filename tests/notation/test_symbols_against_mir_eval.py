"""Chord symbols against mir_eval's pitch-class sets, for the qualities it knows."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from mir_eval import chord as mir_chord
from strategies import MAJOR_TONICS, note, qualities

from nearhand.notation.chord_symbols import parse_chord
from nearhand.theory.chord import Chord

# Our tail, and mir_eval 0.8's shorthand with added or omitted (*) degrees, after C. Harte, *Towards
# Automatic Extraction of Harmony Information from Music Signals*, 2010. Left out: maj11 and aug7, which its
# grammar names and its table lacks.
QUALITIES = [
    ("", "maj"), ("m", "min"), ("aug", "aug"), ("dim", "dim"), ("sus4", "sus4"), ("sus2", "sus2"), ("5", "5"),
    ("7", "7"), ("maj7", "maj7"), ("m7", "min7"), ("m(maj7)", "minmaj7"), ("6", "maj6"), ("m6", "min6"),
    ("dim7", "dim7"), ("m7b5", "hdim7"), ("ø7", "hdim7"), ("9", "9"), ("maj9", "maj9"), ("m9", "min9"),
    ("11", "11"),
    ("m11", "min11"), ("13", "13"), ("maj13", "maj13"), ("m13", "min13"), ("7b9", "7(b9)"), ("7#9", "7(#9)"),
    ("7(#9,b13)", "7(#9,b13)"), ("add9", "maj(9)"), ("m(add9)", "min(9)"), ("7sus4", "sus4(b7)"),
    ("9sus4", "sus4(b7,9)"), ("6/9", "maj6(9)"), ("m6/9", "min6(9)"), ("7#5", "aug(b7)"), ("+maj7", "aug(7)"),
    ("dim(maj7)", "dim(7)"), ("maj7#11", "maj7(#11)"), ("(b5)", "maj(*5,b5)"), ("7b5", "7(*5,b5)"),
    ("(no3)", "maj(*3)"),
    ("7(no5)", "7(*5)"), ("maj11", "maj7(9,11)"), ("13#11", "7(9,#11,13)"), ("11b9", "7(b9,11)"),
    ("13b9", "13(*9,b9)"),
    ("13sus4", "sus4(b7,9,13)"), ("ped", "1"), ("7alt", "7(*5,b5,#5,b9,#9)"), ("7(It6)", "maj(*5,b7)"),
    ("7(Fr43)", "maj(*5,b5,b7)"), ("7(Ger65)", "maj(b7)"), ("7(Sw43)", "maj(b7)"), ("Tristan", "hdim7"),
    ("m11b5", "hdim7(9,11)"), ("m(maj9)", "minmaj7(9)"), ("m9b5", "hdim7(9)"), ("dim9", "dim7(9)"),
    ("7#5b9", "aug(b7,b9)"), ("9#11", "9(#11)"), ("maj9#11", "maj9(#11)"), ("13(b9,#11)", "7(b9,#11,13)"),
    ("7sus2", "sus2(b7)"), ("m(b6)", "min(b6)"), ("m#5", "min(*5,#5)"), ("maj7b5", "maj7(*5,b5)"),
    ("2", "maj(9)"), ("4", "sus4"), ("9+", "aug(b7,9)"), ("m7add11", "min7(11)"), ("+", "aug"), ("-", "min"),
]  # fmt: skip

# Our tail with a bass as a note above C, and mir_eval's bass degree.
BASSES = [
    ("/E", "maj/3"), ("/G", "maj/5"), ("7/Bb", "7/b7"), ("m/Eb", "min/b3"), ("maj7/B", "maj7/7"),
    ("/F#", "maj/#4"),
]  # fmt: skip


def pitch_classes_of(label):
    """Semitones above C, and those of the bass, as mir_eval has them."""
    root, bitmap, bass = mir_chord.encode(label, reduce_extended_chords=True)
    return {int(root + place) % 12 for place in bitmap.nonzero()[0]}, int(root + bass) % 12


@pytest.mark.parametrize("root", [*MAJOR_TONICS, "G#", "D#", "A#", "E#", "B#", "Fb"])
def test_every_quality_has_the_pitch_classes_that_mir_eval_gives(root):
    for tail, shorthand in QUALITIES:
        chord = parse_chord(root + tail)

        theirs, bass = pitch_classes_of(f"{root}:{shorthand}")
        assert {tone.semitones for tone in chord.tones} == theirs, root + tail
        assert chord.bass.semitones == bass


@pytest.mark.parametrize(("tail", "shorthand"), BASSES)
def test_a_slash_bass_sounds_as_the_bass_degree_of_mir_eval(tail, shorthand):
    chord = parse_chord("C" + tail)

    theirs, bass = pitch_classes_of("C:" + shorthand)
    assert {tone.semitones for tone in (*chord.tones, chord.bass)} == theirs | {bass}
    assert chord.bass.semitones == bass


def test_no_chord_of_mir_evals_table_is_left_out():
    known = set(mir_chord.QUALITIES) - {""}  # no chord

    assert known <= {shorthand for _, shorthand in QUALITIES}


def in_degrees(quality):
    """A quality in mir_eval's degrees: on C an accidental of the name is one of the degree."""
    tones = zip(quality.numbers, Chord(note("C"), quality, note("C")).tones, strict=True)
    degrees = [str(tone)[1:] + str(number) for number, tone in tones if number > 1]
    return f"C:1({','.join(degrees)})" if degrees else "C:1"


@settings(max_examples=300)
@given(qualities.filter(lambda quality: 1 in quality.numbers))  # mir_eval counts its bass, the root, in any case
def test_every_chord_has_the_pitch_classes_that_mir_eval_gives_to_its_degrees(quality):
    theirs, _ = pitch_classes_of(in_degrees(quality))

    assert {tone.semitones for tone in Chord(note("C"), quality, note("C")).tones} == theirs
