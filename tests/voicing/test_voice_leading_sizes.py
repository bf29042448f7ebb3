"""How far it is from chord to chord: published sizes."""

from __future__ import annotations

import pytest
from voicing_examples import close_positions, midi, tune

from nearhand.voicing.hands import Register
from nearhand.voicing.motion import motion, motion_size

# From, to, semitones moved by all voices when every voice of one chord goes to one of the other. D. Tymoczko, "The
# Geometry of Musical Chords", Science 313, 2006 (second-hand), gives the measure; the sizes by exhaustive search.
# The relations called P and L are 1, R is 2 (from memory: R. Cohn 1997).
SIZES = """
C Cm 1, C Em 1, C Am 2, C Fm 2, C C#m 2, C Abm 3, C F 3, C G 3, C Dm 5, C D 6, C Ab 2, C E 2, C Eb 3, C A 3, C Db 3,
C F# 6, C Caug 1, Caug Am 1, Dm7 G7 3, G7 Cmaj7 3, Cmaj7 Am7 2, C7 F7 4, Dm7b5 G7 2, C7 Gb7 2, C7 Eb7 2, C7 A7 2,
Bdim7 G7 1, Bdim7 Bb7 1, Bdim7 E7 1, Bdim7 Db7 1, Bdim7 Bm7b5 1, C7 Cm7b5 2, Cmaj7 Emaj7 4
"""
ROWS = [tuple(row.split()) for row in SIZES.replace("\n", " ").split(",")]
WIDE = Register(36, 96, 66)


def positions(symbol):
    chord = next(tune(symbol).chords())
    return close_positions(tuple(tone.semitones for tone in chord.tones), WIDE)


@pytest.mark.parametrize(("old", "new", "size"), ROWS)
def test_the_nearest_close_position_is_as_far_as_the_literature_says(old, new, size):
    # Tymoczko 2006 (from memory): sorted close positions without crossings always hold a least bijective motion.
    middle = [notes for notes in positions(old) if 55 <= notes[0] <= 76]
    assert middle
    for start in middle:
        assert min(motion_size(start, end) for end in positions(new)) == int(size)
        assert min(motion(start, end).size for end in positions(new)) == int(size)


def test_a_doubled_root_moves_as_in_print():
    # Tymoczko 2006 (second-hand): (C, C, E, G) to (B, D, F, G) by C-B, C-D, E-F, G-G
    before, after = (60, 60, 64, 67), (59, 62, 65, 67)

    assert motion(before, after).moves == (-1, 2, 1, 0)
    assert motion_size(before, after) == 4


def test_a_seventh_chord_and_a_triad_count_the_voices_they_share():
    # The printed size of G7 to C is 4, with two voices on C: B-C, D-C, F-E. Here the seventh chord has four voices
    # and the triad three: the voice that leaves costs nothing, so that 2 are left.
    before, after = tuple(map(midi, ("G3", "B3", "D4", "F4"))), tuple(map(midi, ("G3", "C4", "E4")))

    assert motion_size(before, after) == 2
    assert motion(before, after).left == (midi("D4"),)


def test_the_way_between_a_chord_and_itself_an_octave_higher_counts_every_voice():
    assert motion_size((60, 64, 67), (72, 76, 79)) == 36
