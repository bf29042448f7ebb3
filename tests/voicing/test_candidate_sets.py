"""Candidates of each family, against all notes that its definition allows."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from voicing_examples import C_MAJOR, keys, midi, progressions, relative_chords, triads_and_sevenths, tune

from nearhand.voicing.candidates import orders_in, uppers
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.hands import Register
from nearhand.voicing.layers import layer_at
from nearhand.voicing.reduction import right_hand_intervals
from nearhand.voicing.task import Task
from nearhand.voicing.wishes import Wishes

# How many notes the close chord has, and which of them, counted from the top, lie an octave lower: Levine, *The Jazz
# Theory Book*, 1995, from memory. Open position of three notes: common practice (Open Music Theory, "Triads", has
# gaps that hold another chord tone).
LOWERED = {"close": (0, ()), "open": (3, (2,)), "drop2": (4, (2,)), "drop3": (4, (3,)), "drop2and4": (4, (2, 4))}
FROM_CLOSE = {**{style: [row] for style, row in LOWERED.items()}, "any": [(4, ()), (4, (2,)), (4, (3,)), (4, (2, 4))]}
CLEAR = {
    1: "E3", 2: "Eb3", 3: "C3", 4: "B2", 5: "A2", 6: "B1", 7: "C#2", 8: "F2", 9: "F2", 10: "F2", 11: "F2",
}  # fmt: skip
"""Interval in semitones to its lowest place: a retailer's glossary, second-hand, with middle C as C4."""
registers = st.tuples(st.integers(43, 60), st.integers(12, 31)).map(lambda row: Register(row[0], sum(row), 62))
spans = st.integers(10, 19)


def is_playable(hands, span):
    """Whether each hand reaches its notes with five fingers, and no two neighbours are muddy."""
    notes = [note for hand in hands for note in hand]
    return all(not hand or (hand[-1] - hand[0] <= span and len(hand) <= 5) for hand in hands) and all(
        low >= midi(CLEAR.get(high - low, "C0")) for low, high in pairwise(notes)
    )


def doubled(chord):
    """Which tones of a triad may sound twice: root and fifth, of a diminished triad the third (common practice)."""
    third, fifth = (chord.quality.interval(number) for number in (3, 5))
    return {-3} if (third, fifth) == (-3, -6) else {0, fifth}


def by_definition(style, chord, register, span):
    """Notes low to high with the left hand's share: successive chord tones, some of them an octave lower."""
    found = set()
    for size, lowered in FROM_CLOSE[style]:
        intervals = right_hand_intervals(chord.quality, size or 4, chord.bass == chord.root)
        kept = {(chord.root + place) * 7 % 12: place for place in intervals}
        notes = [note for note in range(register.low - 12, register.high + 13) if note % 12 in kept]
        count = max(size, len(kept))
        for start in range(len(notes) - count + 1):
            close = notes[start : start + count]
            again = {kept[note % 12] for note in close[len(kept) :]}
            left = sorted(close[-place] - 12 for place in lowered)
            right = [note for place, note in enumerate(close) if count - place not in lowered]
            both = left + right
            is_in_register = register.low <= both[0] and both[-1] <= register.high
            if is_in_register and again <= doubled(chord) and both == sorted(set(both)):
                found |= {(tuple(both), len(left))} if is_playable((left, right), span) else set()
    return found


@pytest.mark.parametrize("style", FROM_CLOSE)
@settings(max_examples=40)
@given(relative_chords(triads_and_sevenths), registers, spans)
def test_drop_voicings_are_close_chords_with_the_named_notes_an_octave_lower(style, chord, register, span):
    found = uppers(orders_in(FAMILIES[style], chord, C_MAJOR), register, span)

    assert set(found) == by_definition(style, chord, register, span)
    assert list(found) == sorted(set(found))


@pytest.mark.parametrize("style", FROM_CLOSE)
@settings(max_examples=20)
@given(relative_chords(), registers)
def test_so_are_those_of_large_chords_of_which_the_hands_keep_what_they_need(style, chord, register):
    if len(chord.quality.intervals) > 3:
        found = uppers(orders_in(FAMILIES[style], chord, C_MAJOR), register, 14)

        assert set(found) == by_definition(style, chord, register, 14)


@pytest.mark.parametrize("span", [14, 19])
def test_a_chord_of_two_tones_has_no_drop_2_for_two_notes_would_meet(span):
    # C G C G: the second note from the top, an octave lower, is the lowest C itself.
    (power,) = tune("| C5 |").relative_chords

    assert uppers(orders_in(FAMILIES["drop2"], power, C_MAJOR), Register(36, 84, 60), span) == ()


def basses(style, tone):
    """Where a single bass note may lie: C2 to F#3 below the other hand, C2 to A#3 where it lies in the same hand."""
    highest = midi("F#3") if FAMILIES[style].bass == "free" else midi("Bb3")
    return [note for note in range(midi("C2"), highest + 1) if note % 12 == tone.semitones]


def goes_under(bass, notes, reached, style):
    """Whether a bass note lies where its family wants it, with the notes of the left hand left of the right hand's."""
    left, right = sorted({bass, *notes[:reached]}), notes[reached:]
    where = FAMILIES[style].bass
    if where == "stacked":
        is_placed = bass < notes[0] <= bass + 12
    else:
        is_placed = bass < notes[0] if where == "free" else bass <= notes[0]
    return is_placed and (not right or left[-1] < right[0])


@pytest.mark.parametrize("style", [style for style in FAMILIES if style != "four-part"])
@settings(max_examples=25)
@given(progressions(most=1), st.integers(12, 17))
def test_both_hands_together_take_every_bass_that_goes_under_every_placing(style, progression, span):
    found, taken_from = layer_at(0, Task(progression, Wishes(style=style, span=span)))
    family = FAMILIES[taken_from]
    (chord,), (relative,) = progression.chords(), progression.relative_chords
    expected = set()
    for notes, reached in uppers(orders_in(family, relative, progression.key), family.register, span):
        for bass in basses(taken_from, chord.bass) if family.bass != "none" else [None]:
            hands = sorted({bass, *notes[:reached]} if bass else notes[:reached]), list(notes[reached:])
            if bass is None or (goes_under(bass, notes, reached, taken_from) and is_playable(hands, span)):
                expected.add(((bass,) if bass else (), notes, reached))

    assert {tuple(candidate) for candidate in found} == expected
    assert len(found) == len(expected)


@pytest.mark.parametrize("style", FAMILIES)
@settings(max_examples=25)
@given(progressions(most=1), keys, st.integers(12, 17))
def test_no_hand_is_asked_for_more_than_it_spans_nor_for_muddy_notes(style, progression, home, span):
    # Hands: R. Boyle and others, "Pianist hand spans", 2015, second-hand: below 8.5 inches no tenth.
    for candidate in layer_at(0, Task(progression.in_key(home), Wishes(style=style, span=span)))[0]:
        assert is_playable((candidate.left, candidate.right), span)
        assert sorted(candidate.left + candidate.right) == sorted({*candidate.bass, *candidate.upper})
