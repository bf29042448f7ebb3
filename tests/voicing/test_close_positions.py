"""Close positions in a register, against all sets of notes."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import open_bases
from voicing_examples import TAILS, close_positions, midi, tune

from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import BASES, CHANGES, apply_change
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.hands import LEFT_HAND, RIGHT_HAND, Register
from nearhand.voicing.reduction import right_hand_intervals

tone_sets = st.sets(st.integers(0, 11), min_size=1, max_size=5)
registers = st.builds(
    lambda low, width: Register(low, low + width, low + width // 2), st.integers(52, 65), st.integers(0, 24)
)


def all_close_positions(tones, register):
    """Every set of notes in a register that holds each tone once and spans less than an octave."""
    notes = [note for note in range(register.low, register.high + 1) if note % 12 in tones]
    return {
        chosen
        for chosen in combinations(notes, len(tones))
        if {note % 12 for note in chosen} == tones and chosen[-1] - chosen[0] < 12
    }


@given(tone_sets, registers)
def test_they_are_all_the_close_positions_there_are(tones, register):
    found = close_positions(tuple(tones), register)

    assert set(found) == all_close_positions(tones, register)
    assert len(set(found)) == len(found)


@given(tone_sets, registers)
def test_each_ascends_within_an_octave_and_they_come_in_order(tones, register):
    found = close_positions(tuple(tones), register)

    assert all(position == tuple(sorted(position)) for position in found)
    assert all(register.low <= position[0] and position[-1] <= register.high for position in found)
    assert [position[0] for position in found] == sorted(position[0] for position in found)


@given(st.permutations(range(5)), tone_sets)
def test_neither_order_nor_octave_nor_repetition_of_the_tones_matters(order, tones):
    plain = tuple(sorted(tones))
    shuffled = tuple(plain[place] + 12 * place for place in order if place < len(plain)) + plain[:1]

    assert close_positions(shuffled, RIGHT_HAND) == close_positions(plain, RIGHT_HAND)


@pytest.mark.parametrize("root", range(12))
def test_the_right_hand_finds_a_position_for_every_chord_that_can_be_read(root):
    changes = set(CHANGES.values())
    qualities = set(BASES.values()) | {apply_change(base, change) for base in open_bases for change in changes}
    qualities |= {read_tail(tail) for tail in TAILS}
    for quality in qualities:
        tones = tuple((root + 7 * interval) % 12 for interval in right_hand_intervals(quality))
        found = close_positions(tones, RIGHT_HAND)

        assert found
        assert all(position[-1] - position[0] < 12 for position in found)


@pytest.mark.parametrize("place", range(-6, 6))
def test_the_left_hand_finds_every_bass_note(place):
    bass = PitchClass(place).semitones

    assert close_positions((bass,), LEFT_HAND) == tuple((note,) for note in range(36, 55) if note % 12 == bass)


def test_the_two_hands_never_meet():
    assert (LEFT_HAND.low, LEFT_HAND.high) == (midi("C2"), midi("F#3"))
    assert (RIGHT_HAND.low, RIGHT_HAND.high) == (midi("G3"), midi("E5"))
    assert LEFT_HAND.high < RIGHT_HAND.low


@pytest.mark.parametrize(
    ("symbol", "expected"),
    [
        ("C", ["G3 C4 E4", "C4 E4 G4", "E4 G4 C5", "G4 C5 E5"]),
        ("Cmaj7", ["G3 B3 C4 E4", "B3 C4 E4 G4", "C4 E4 G4 B4", "E4 G4 B4 C5", "G4 B4 C5 E5"]),
        ("C5", ["G3 C4", "C4 G4", "G4 C5"]),
    ],
)
def test_the_inversions_of_a_chord_between_g3_and_e5(symbol, expected):
    # Close position: members as near together as possible (Open Music Theory, triads)
    tones = tuple(tone.semitones for tone in next(tune(symbol).chords()).tones)

    assert close_positions(tones, RIGHT_HAND) == tuple(tuple(map(midi, row.split())) for row in expected)
