"""The checks between voices, compared with the voice-leading quartets of music21 10.5.1 (module voiceLeading).

music21 reads spelled notes, we read MIDI numbers. Here the notes of a quartet get names from twelve neighbours on the
line of fifths whose two ends are not both in use. Then 7 semitones are always spelled as a fifth and 0 as a unison or
octave, so that every difference below is one of definition. What spelling alone decides is in the last tests.
"""

from __future__ import annotations

from itertools import combinations
from random import Random

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from music21.voiceLeading import VoiceLeadingQuartet
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

FIFTH, OCTAVE = 7, 0
HIDDEN = {HIDDEN_FIFTHS, HIDDEN_OCTAVES}


def spelled(numbers):
    """Names of MIDI numbers, as music21 writes them, from D flat to D sharp at the widest."""
    used = {number % 12 for number in numbers}
    first = next(start for start in (-3, -4, -2, -5) if not {7 * start % 12, 7 * (start + 11) % 12} <= used)
    names = []
    for number in numbers:
        signs, letter = divmod(first + (7 * number - first) % 12 + 1, 7)
        names.append(f"{'FCGDAEB'[letter]}{'#' * signs or '-' * -signs}{number // 12 - 1}")
    return names


def quartet(before, after):
    """The quartet of two voices: music21 wants the upper voice first, each voice in order of time."""
    lower, next_lower, upper, next_upper = spelled((before[0], after[0], before[1], after[1]))
    return VoiceLeadingQuartet(upper, next_upper, lower, next_lower)


def interval(pair):
    return abs(pair[1] - pair[0]) % 12


def is_hidden(theirs, before, after, goal, said):
    """Our hidden fifths and octaves of two outer voices, from what music21 says.

    Theirs are all similar motion into the interval, whatever the top voice does; with us it must leap. Theirs leave out
    motion between intervals of one number (a diminished to a perfect fifth), ours between perfect ones alone. They tell
    unison from octave, so that 1-8 and 8-1 are hidden there and parallel here.
    """
    leaps = abs(after[1] - before[1]) > 2
    altered = theirs.parallelMotion(allowOctaveDisplacement=True) and interval(after) == goal
    return leaps and interval(before) != goal and (said or altered)


def has_parallel_octaves(theirs, before):
    """1-8 and 8-1 in similar motion are hidden octaves there, and parallel octaves here."""
    from_unison_or_octave = theirs.hiddenOctave() and interval(before) == OCTAVE
    return theirs.parallelMotion("P8", allowOctaveDisplacement=True) or from_unison_or_octave


def has_unequal_fifths(theirs):
    """The tritone may be spelled either way: MIDI numbers do not tell a diminished fifth from an augmented fourth."""
    old, new = (each.simpleName for each in theirs.vIntervals)
    return theirs.similarMotion() and old in ("d5", "A4") and new == "P5"


THEIRS = {  # each of our rules for two voices that are outer voices and neighbours
    PARALLEL_FIFTHS: lambda theirs, _, __: theirs.parallelMotion("P5", allowOctaveDisplacement=True),
    PARALLEL_OCTAVES: lambda theirs, old, _: has_parallel_octaves(theirs, old),
    PARALLEL_UNISONS: lambda theirs, _, __: theirs.parallelMotion("P1"),
    CONTRARY_FIFTHS: lambda theirs, _, __: theirs.antiParallelMotion("P5"),
    CONTRARY_OCTAVES: lambda theirs, _, __: theirs.antiParallelMotion("P1"),  # the simple name of an octave, too
    HIDDEN_FIFTHS: lambda theirs, old, new: is_hidden(theirs, old, new, FIFTH, theirs.hiddenFifth()),
    HIDDEN_OCTAVES: lambda theirs, old, new: is_hidden(theirs, old, new, OCTAVE, theirs.hiddenOctave()),
    UNEQUAL_FIFTHS: lambda theirs, _, __: has_unequal_fifths(theirs),
    CROSSING: lambda theirs, _, new: quartet(new, new).voiceCrossing(),  # theirs looks at both chords
    OVERLAP: lambda theirs, _, __: theirs.voiceOverlap() and not theirs.voiceCrossing(),
}


def told_by_music21(before, after):
    """All faults of two chords, in our order."""
    top = len(before) - 1
    for lower, upper in combinations(range(len(before)), 2):
        old, new = (before[lower], before[upper]), (after[lower], after[upper])
        theirs = quartet(old, new)
        for rule in RULES:
            if (rule in HIDDEN and (lower, upper) != (0, top)) or (rule == OVERLAP and upper > lower + 1):
                continue
            if THEIRS[rule](theirs, old, new):
                yield Fault(rule, lower, upper)


def rules(before, after):
    return {fault.rule for fault in faults(before, after)}


distances = st.sampled_from([-12, -7, -6, -5, 0, 6, 7, 11, 12, 13, 18, 19, 24]) | st.integers(-14, 26)
pairs = st.builds(lambda low, distance: (low, low + distance), st.integers(55, 66), distances)
quartets = settings(max_examples=400)


def test_every_quartet_has_names_that_sound_it():
    for numbers in combinations(range(60, 72), 4):
        names = spelled(numbers)

        assert tuple(midi(name.replace("-", "b")) for name in names) == numbers
        for (low, low_name), (high, high_name) in combinations(zip(numbers, names, strict=True), 2):
            fifth = VoiceLeadingQuartet(high_name, high_name, low_name, low_name).vIntervals[0].simpleName == "P5"
            assert fifth == (high - low == FIFTH)


@quartets
@given(pairs, pairs)
def test_the_kinds_of_motion_are_those_of_music21(before, after):
    theirs = quartet(before, after)
    kind = motion_kind(after[0] - before[0], after[1] - before[1])

    assert theirs.noMotion() == (kind == STILL)
    assert theirs.obliqueMotion() == (kind == OBLIQUE)
    assert theirs.contraryMotion() == (kind == CONTRARY)
    assert theirs.similarMotion() == (kind == SIMILAR)


@quartets
@given(pairs, pairs)
@example((60, 67), (62, 69)).via("similar")
@example((60, 67), (50, 69)).via("contrary")
def test_parallel_fifths_of_music21_are_our_parallel_fifths_and_those_by_contrary_motion(before, after):
    theirs, ours = quartet(before, after), rules(before, after)

    assert theirs.parallelFifth() == (PARALLEL_FIFTHS in ours or CONTRARY_FIFTHS in ours)


@quartets
@given(pairs, pairs)
@example((60, 72), (69, 69)).via("8-1 by similar motion: hidden there, parallel here")
@example((60, 60), (62, 74)).via("1-8 by similar motion")
@example((57, 69), (62, 62)).via("8-1 by contrary motion: parallel octaves and unisons there")
def test_parallel_octaves_and_unisons_of_music21(before, after):
    theirs, ours = quartet(before, after), rules(before, after)
    has_unison = before[0] == before[1] or after[0] == after[1]

    assert theirs.parallelOctave() == ((PARALLEL_OCTAVES in ours and not has_unison) or CONTRARY_OCTAVES in ours)
    assert theirs.parallelUnison() == (PARALLEL_UNISONS in ours or CONTRARY_OCTAVES in ours)


@quartets
@given(pairs, pairs)
@example((52, 69), (55, 74)).via("soprano leaps")
@example((52, 72), (55, 74)).via("soprano steps: hidden there alone")
@example((59, 65), (64, 71)).via("diminished to perfect fifth, leaping: hidden here alone")
@example((61, 72), (65, 77)).via("diminished to perfect octave, leaping: hidden here alone")
def test_hidden_fifths_and_octaves_of_music21(before, after):
    # Where the top voice leaps; where it steps we name none.
    theirs, ours = quartet(before, after), rules(before, after)
    altered = theirs.parallelMotion(allowOctaveDisplacement=True)

    if abs(after[1] - before[1]) <= 2:
        assert not ours & HIDDEN
    else:
        fifth_from_another = HIDDEN_FIFTHS in ours and not altered
        octave_from_another = (HIDDEN_OCTAVES in ours and not altered) or (
            PARALLEL_OCTAVES in ours and (before[0] == before[1]) != (after[0] == after[1])
        )
        assert theirs.hiddenFifth() == fifth_from_another
        assert theirs.hiddenOctave() == octave_from_another


@quartets
@given(pairs, pairs)
def test_crossing_of_music21_is_ours_in_one_of_the_two_chords(before, after):
    crossed = CROSSING in rules(before, after) or CROSSING in rules(before, before)

    assert quartet(before, after).voiceCrossing() == crossed


@quartets
@given(pairs, pairs)
@example((65, 69), (70, 60)).via("both there, crossing alone here")
@example((67, 60), (60, 64)).via("back from a crossing: both there, nothing here")
def test_overlap_of_music21_is_ours_where_nothing_crosses(before, after):
    theirs = quartet(before, after)

    assert (OVERLAP in rules(before, after)) == (theirs.voiceOverlap() and not theirs.voiceCrossing())


@pytest.mark.parametrize("rule", RULES)
@settings(max_examples=300)
@given(before=pairs, after=pairs)
def test_two_voices_break_a_rule_where_music21_says_so(rule, before, after):
    assert (rule in rules(before, after)) == THEIRS[rule](quartet(before, after), before, after)


def drawn(seed):
    """Two chords of three or four parts, mostly in order and moving little, now and then with parts that cross."""
    random = Random(seed)
    size = random.choice((3, 4, 4, 4))
    before = sorted(random.sample(range(43, 76), size))
    after = [note + random.choice((-7, -5, -4, -3, -2, -2, -1, 0, 0, 1, 2, 2, 3, 4, 5, 7, 12)) for note in before]
    if random.random() < 0.5:  # a fifth or an octave between two of the parts
        lower, upper = sorted(random.sample(range(size), 2))
        for chord in (before, after):
            chord[upper] = chord[lower] + random.choice((0, 6, 7, 7, 12, 12, 19, 24))
    return before, after


@pytest.fixture(scope="module")
def drawn_chords():
    return [drawn(seed) for seed in range(300)]


def test_whole_chords_have_the_faults_that_music21_finds_pair_by_pair(drawn_chords):
    for before, after in drawn_chords:
        assert faults(before, after) == tuple(told_by_music21(before, after))


def test_the_drawn_chords_break_every_rule_and_some_break_none(drawn_chords):
    found = [faults(*chords) for chords in drawn_chords]

    assert {fault.rule for each in found for fault in each} == set(RULES)
    assert () in found


# Where the spelling decides: music21 hears the interval that is written, we the one that sounds.
def test_a_diminished_sixth_is_no_fifth_for_music21_and_a_fifth_here():
    assert not VoiceLeadingQuartet("E-4", "F4", "G#3", "A#3").parallelFifth()
    assert rules((56, 63), (58, 65)) == {PARALLEL_FIFTHS}


def test_fifths_from_an_augmented_fourth_are_named_here_with_those_from_a_diminished_fifth():
    diminished, augmented = (VoiceLeadingQuartet(top, "G4", "B3", "C4") for top in ("F4", "E#4"))

    assert [each.vIntervals[0].simpleName for each in (diminished, augmented)] == ["d5", "A4"]
    assert (diminished.hiddenFifth(), augmented.hiddenFifth()) == (False, True)
    assert rules((59, 65), (60, 67)) == {UNEQUAL_FIFTHS}
