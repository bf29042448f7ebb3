"""Laws of the checks between voices, cases from textbooks, and refusals."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from voicing_examples import midi

from nearhand.voicing.part_writing import (
    CONTRARY,
    CONTRARY_FIFTHS,
    CONTRARY_OCTAVES,
    CROSSING,
    HIDDEN_FIFTHS,
    HIDDEN_OCTAVES,
    OBLIQUE,
    OVERLAP,
    PARALLEL_FIFTHS,
    PARALLEL_OCTAVES,
    PARALLEL_UNISONS,
    RULES,
    SIMILAR,
    STILL,
    UNEQUAL_FIFTHS,
    Fault,
    faults,
    motion_kind,
)

HIDDEN = {HIDDEN_FIFTHS, HIDDEN_OCTAVES}
OF_PLACE = {CROSSING, OVERLAP}
OF_INTERVALS = set(RULES) - OF_PLACE


def chords_of(size):
    """A chord by parts: mostly rising, as parts lie, or in any order, so that parts cross."""
    notes = st.lists(st.integers(48, 74), min_size=size, max_size=size)
    return notes.map(sorted).map(tuple) | notes.map(tuple)


pairs_of_chords = st.integers(1, 5).flatmap(lambda size: st.tuples(chords_of(size), chords_of(size)))


def moved(chord, by):
    return tuple(note + by for note in chord)


@given(pairs_of_chords, st.integers(-36, 36))
def test_moving_both_chords_alike_changes_no_fault(chords, by):
    before, after = chords

    assert faults(moved(before, by), moved(after, by)) == faults(before, after)


@given(pairs_of_chords)
def test_two_voices_alone_have_the_faults_they_have_among_the_others(chords):
    # Alone any two voices are outer voices and neighbours; among others hidden intervals and overlap need that.
    before, after = chords
    expected = [
        Fault(rule, lower, upper)
        for lower, upper in combinations(range(len(before)), 2)
        for rule, _, _ in faults((before[lower], before[upper]), (after[lower], after[upper]))
        if (rule not in HIDDEN or (lower, upper) == (0, len(before) - 1)) and (rule != OVERLAP or upper == lower + 1)
    ]

    assert faults(before, after) == tuple(expected)


@given(pairs_of_chords)
def test_a_chord_that_stays_has_its_crossings_and_no_other_fault(chords):
    for chord in chords:
        crossed = [pair for pair in combinations(range(len(chord)), 2) if chord[pair[1]] < chord[pair[0]]]

        assert faults(chord, chord) == tuple(Fault(CROSSING, *pair) for pair in crossed)


@given(pairs_of_chords)
def test_a_voice_that_stays_makes_no_forbidden_interval(chords):
    before, after = chords

    for rule, lower, upper in faults(before, after):
        if before[lower] == after[lower] or before[upper] == after[upper]:
            assert rule in OF_PLACE


@given(pairs_of_chords)
def test_faults_come_in_the_order_of_their_voices_and_of_the_rules_and_once(chords):
    found = faults(*chords)
    places = [(lower, upper, RULES.index(rule)) for rule, lower, upper in found]

    assert places == sorted(set(places))
    assert all(0 <= lower < upper < len(chords[0]) for _, lower, upper in found)


@given(pairs_of_chords)
def test_parallels_are_parallels_backwards_too(chords):
    before, after = chords
    repeated = {PARALLEL_FIFTHS, PARALLEL_OCTAVES, PARALLEL_UNISONS, CONTRARY_FIFTHS, CONTRARY_OCTAVES}

    assert [fault for fault in faults(before, after) if fault.rule in repeated] == [
        fault for fault in faults(after, before) if fault.rule in repeated
    ]


@given(pairs_of_chords)
def test_upside_down_all_faults_stay_but_the_hidden_ones(chords):
    # Which look at the top voice alone. The bass becomes the soprano, and what rose falls.
    before, after = (tuple(-note for note in reversed(chord)) for chord in chords)
    top = len(before) - 1
    turned = {Fault(rule, top - upper, top - lower) for rule, lower, upper in faults(before, after)}

    assert {fault for fault in turned if fault.rule not in HIDDEN} == {
        fault for fault in faults(*chords) if fault.rule not in HIDDEN
    }


@given(pairs_of_chords)
def test_two_voices_break_one_rule_of_intervals_and_one_of_places_or_two_by_a_hidden_unequal_fifth(chords):
    by_pair = {}
    for rule, lower, upper in faults(*chords):
        by_pair.setdefault((lower, upper), []).append(rule)

    for rules in by_pair.values():
        of_intervals = [rule for rule in rules if rule in OF_INTERVALS]
        assert len(of_intervals) <= 1 or of_intervals == [HIDDEN_FIFTHS, UNEQUAL_FIFTHS]
        assert len(rules) - len(of_intervals) <= 1


@given(st.integers(0, 127), st.integers(0, 127))
def test_one_voice_alone_has_no_fault(before, after):
    assert faults((before,), (after,)) == ()


@given(st.integers(-24, 24), st.integers(-24, 24))
def test_the_kind_of_motion_is_that_of_the_signs(lower, upper):
    # R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Types of motion" (from memory)
    kind = motion_kind(lower, upper)

    assert kind == motion_kind(upper, lower) == motion_kind(-lower, -upper)
    assert (kind == STILL) == (lower == 0 and upper == 0)
    assert (kind == OBLIQUE) == ((lower == 0) != (upper == 0))
    assert (kind == SIMILAR) == (lower * upper > 0)
    assert (kind == CONTRARY) == (lower * upper < 0)


# Chords low to high, and all their faults.
HUTCHINSON = {  # R. Hutchinson, *Music Theory for the 21st-Century Classroom*; the notes of the examples are ours
    # "Objectionable parallels": unisons, fifths, octaves, compound ones included
    "fifths": ("C3 G3", "D3 A3", [(PARALLEL_FIFTHS, 0, 1)]),
    "twelfths": ("C3 G4", "D3 A4", [(PARALLEL_FIFTHS, 0, 1)]),
    "octaves": ("F3 F4", "E3 E4", [(PARALLEL_OCTAVES, 0, 1)]),
    "fifteenths": ("F2 F4", "E2 E4", [(PARALLEL_OCTAVES, 0, 1)]),
    "unisons": ("F3 F3", "E3 E3", [(PARALLEL_UNISONS, 0, 1), (OVERLAP, 0, 1)]),
    "inner fifths": ("C3 E3 B3 G4", "C3 F3 C4 A4", [(PARALLEL_FIFTHS, 1, 2)]),
    "thirds and sixths": ("C3 E3 C4", "D3 F3 D4", [(PARALLEL_OCTAVES, 0, 2)]),
    # a bass that rises by a second: the upper voices go the other way
    "IV V, all up": ("F2 C4 F4 A4", "G2 D4 G4 B4", [(PARALLEL_FIFTHS, 0, 1), (PARALLEL_OCTAVES, 0, 2)]),
    "IV V, contrary": ("F2 C4 F4 A4", "G2 B3 D4 G4", []),
    # V VI in minor: the third of V rises, the others fall, VI has its third twice
    "V VI, all up": ("G2 D4 G4 B4", "Ab2 Eb4 Ab4 C5", [(PARALLEL_FIFTHS, 0, 1), (PARALLEL_OCTAVES, 0, 2)]),
    "V VI, contrary": ("G2 D4 G4 B4", "Ab2 C4 Eb4 C5", []),
    # a bass that moves by a fourth: one note kept, the others by step; by a third: two notes kept
    "I IV": ("C3 G3 E4 C5", "F3 A3 F4 C5", []),
    "I vi": ("C3 C4 E4 G4", "A2 C4 E4 A4", []),
    # "Voice leading augmented sixth chords": the German sixth goes to the six-four first, or fifths arise
    "Ger65 V": ("Ab2 C4 Eb4 F#4", "G2 B3 D4 G4", [(PARALLEL_FIFTHS, 0, 2)]),
    "Ger65 i64": ("Ab2 C4 Eb4 F#4", "G2 C4 Eb4 G4", []),
    "i64 V": ("G2 C4 Eb4 G4", "G2 B3 D4 G4", []),
    # "Special resolution of vii°7": with the seventh above the third, 2 rises to avoid fifths
    "vii°7 i, 2 falls": ("B2 D4 F4 Ab4", "C3 C4 Eb4 G4", [(UNEQUAL_FIFTHS, 1, 3)]),
    "vii°7 i, 2 rises": ("B2 D4 F4 Ab4", "C3 Eb4 Eb4 G4", []),
    # I V43 I6: the seventh may rise; the course lists name the fifths all the same
    "V43 I6": ("D3 G3 B3 F4", "E3 G3 C4 G4", [(UNEQUAL_FIFTHS, 2, 3)]),
}
COURSE_LISTS = {  # lists of part-writing rules of harmony courses, second-hand; the notes are ours
    "5-12 contrary": ("C3 G3", "B2 F#4", [(CONTRARY_FIFTHS, 0, 1)]),
    "12-5 contrary": ("C3 G4", "F3 C4", [(CONTRARY_FIFTHS, 0, 1)]),
    "8-15 contrary": ("C3 C4", "G2 G4", [(CONTRARY_OCTAVES, 0, 1)]),
    "15-8 contrary": ("G2 G4", "C3 C4", [(CONTRARY_OCTAVES, 0, 1)]),
    "8-1 contrary": ("A3 A4", "D4 D4", [(CONTRARY_OCTAVES, 0, 1)]),
    "8-1 similar": ("C3 C4", "A4 A4", [(PARALLEL_OCTAVES, 0, 1), (OVERLAP, 0, 1)]),
    "perfect to diminished fifth": ("C4 G4", "D4 Ab4", []),
    "diminished to perfect fifth": ("B3 F4", "C4 G4", [(UNEQUAL_FIFTHS, 0, 1)]),
    "both in contrary motion": ("B3 F4", "C3 G4", []),
    "diminished to perfect fifth, leaping": ("B3 F4", "E4 B4", [(HIDDEN_FIFTHS, 0, 1), (UNEQUAL_FIFTHS, 0, 1)]),
    "direct fifth, soprano leaps": ("E3 A4", "G3 D5", [(HIDDEN_FIFTHS, 0, 1)]),
    "direct fifth, soprano steps": ("E3 C5", "G3 D5", []),
    "direct octave, soprano leaps": ("G3 F4", "C4 C5", [(HIDDEN_OCTAVES, 0, 1)]),
    "direct octave, soprano steps": ("G3 D5", "C3 C5", []),
    "direct octave, soprano leaps a minor third": ("G3 A4", "C4 C5", [(HIDDEN_OCTAVES, 0, 1)]),
    "direct fifths below the soprano": ("C3 E3 A3 G4", "C3 G3 D4 G4", []),
    "direct fifth above the bass": ("E2 A2 G4", "G2 D3 G4", []),
    "crossing": ("C4 E4", "F4 E4", [(CROSSING, 0, 1)]),
    "overlap of the lower": ("C4 E4", "F4 A4", [(OVERLAP, 0, 1)]),
    "overlap of the upper": ("C4 E4", "A3 B3", [(OVERLAP, 0, 1)]),
    "onto the neighbour's note": ("C4 E4", "E4 G4", []),
    "overlap is of neighbours": ("C3 E3 G3", "A3 B3 D4", [(OVERLAP, 0, 1), (OVERLAP, 1, 2)]),
}
MUSIC21 = {  # documentation of music21 10.5.1, VoiceLeadingQuartet, whose answers are the same unless said
    "5th to 12th": ("C4 G4", "D4 A5", [(PARALLEL_FIFTHS, 0, 1)]),
    "antiparallel": ("C4 G4", "D3 A4", [(CONTRARY_FIFTHS, 0, 1)]),
    "not a parallel fifth": ("C#4 G4", "D4 A4", [(UNEQUAL_FIFTHS, 0, 1)]),
    "nor that": ("C4 G4", "D4 Ab4", []),
    "octave": ("C4 C5", "D4 D5", [(PARALLEL_OCTAVES, 0, 1)]),
    "two octaves": ("C4 C6", "D4 D6", [(PARALLEL_OCTAVES, 0, 1)]),
    "hidden fifth": ("C4 B4", "G4 D5", [(HIDDEN_FIFTHS, 0, 1)]),
    "fifth, not hidden": ("E4 B4", "G4 D5", [(PARALLEL_FIFTHS, 0, 1)]),
    "no overlap": ("F4 A4", "G4 B4", []),
    "motion to the same note": ("F4 A4", "A4 B4", []),
    "upper overlaps lower": ("F4 A4", "D4 E4", [(OVERLAP, 0, 1)]),
    "overlap there, here a crossing alone": ("F4 A4", "Bb4 C4", [(CROSSING, 0, 1)]),
    "nothing crossed": ("G4 A4", "G4 A4", []),
    "second interval is crossed": ("G4 A4", "G4 F4", [(CROSSING, 0, 1)]),
    "first interval crossed, here a fault of the chord before": ("G4 F4", "G4 A4", []),
}
COMMON_PRACTICE = {  # common practice, no source
    "repeated fifth and octave": ("C3 G3 C4", "C3 G3 C4", []),
    "one voice holds": ("C3 G3", "C3 G4", []),
    "a fourth under a crossing is no fifth": ("E4 B3", "F4 C4", [(CROSSING, 0, 1)]),
    "a fifth under a crossing is one": ("B3 E3", "C4 F3", [(PARALLEL_FIFTHS, 0, 1), (CROSSING, 0, 1)]),
    "parts exchange their notes": ("C4 G4", "G4 C4", [(CONTRARY_FIFTHS, 0, 1), (CROSSING, 0, 1)]),
    "crossing of voices that are no neighbours": ("C3 E3 G3", "D3 D3 C3", [(CROSSING, 0, 2), (CROSSING, 1, 2)]),
    "back from a crossing": ("G4 C4", "C4 E4", []),
    "direct unison": ("E3 A3", "C4 C4", [(HIDDEN_OCTAVES, 0, 1), (OVERLAP, 0, 1)]),
}
CASES = [
    pytest.param(*case, id=name)
    for table in (HUTCHINSON, COURSE_LISTS, MUSIC21, COMMON_PRACTICE)
    for name, case in table.items()
]


@pytest.mark.parametrize(("before", "after", "expected"), CASES)
def test_textbook_cases(before, after, expected):
    old, new = (tuple(map(midi, text.split())) for text in (before, after))

    assert faults(old, new) == tuple(Fault(*row) for row in expected)


def test_the_cases_show_every_rule():
    assert {rule for case in CASES for rule, _, _ in case.values[2]} == set(RULES)


@pytest.mark.parametrize(
    ("before", "after", "numbers"),
    [((), (), "0 and 0"), ((60,), (), "1 and 0"), ((), (60,), "0 and 1"), ((48, 55, 60), (48, 55, 60, 64), "3 and 4")],
)
def test_chords_of_other_sizes_are_refused(before, after, numbers):
    with pytest.raises(ValueError) as error:
        faults(before, after)

    assert str(error.value) == f"both chords must have the same number of voices, one at least (got {numbers})"
