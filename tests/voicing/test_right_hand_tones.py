"""Which tones of a large chord the right hand keeps."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from strategies import open_bases

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import BASES, CHANGES, apply_change
from nearhand.theory.quality import NATURAL_INTERVALS, alteration
from nearhand.voicing.reduction import right_hand_intervals

# Tail; tones kept. R. Hutchinson, Music Theory for the 21st-Century Classroom: over the root in the left hand the right
# one has third, fifth or thirteenth, seventh and ninth (JazzVoicings, the second kind), a sus chord is voiced with the
# fourth in the third's place, a sixth in the seventh's (there); C13 omits the 11, for it rubs against the third
# (ChordSymbolSpecifics). C11 is played as C9sus: its third goes. The root goes next, then the plain ninth (common
# practice, no source).
KEPT = """
 ; 1 3 5
m ; 1 b3 5
dim ; 1 b3 b5
aug ; 1 3 #5
sus2 ; 1 2 5
sus4 ; 1 4 5
5 ; 1 5
6 ; 1 3 5 6
m6 ; 1 b3 5 6
6/9 ; 3 5 6 9
m6/9 ; b3 5 6 9
7 ; 1 3 5 7
maj7 ; 1 3 5 #7
m7 ; 1 b3 5 7
m7b5 ; 1 b3 b5 7
dim7 ; 1 b3 b5 b7
m(maj7) ; 1 b3 5 #7
7#5 ; 1 3 #5 7
7sus4 ; 1 4 5 7
add9 ; 1 3 5 9
9 ; 3 5 7 9
maj9 ; 3 5 #7 9
m9 ; b3 5 7 9
7b9 ; 3 5 7 b9
7#9 ; 3 5 7 #9
9sus4 ; 4 5 7 9
7#11 ; 1 3 7 #11
7b13 ; 1 3 7 b13
9#5 ; 3 #5 7 9
9b5 ; 3 b5 7 9
m9b5 ; b3 b5 7 9
9#11 ; 3 7 9 #11
maj9#11 ; 3 #7 9 #11
7(b9,b13) ; 3 7 b9 b13
7(b9,#11) ; 3 7 b9 #11
7(#9,b13) ; 3 7 #9 b13
7(#5,#9) ; 3 #5 7 #9
7(b5,b9) ; 3 b5 7 b9
11 ; 1 7 9 11
maj11 ; 1 #7 9 11
m11 ; b3 7 9 11
13 ; 3 7 9 13
maj13 ; 3 #7 9 13
13b9 ; 3 7 b9 13
13#9 ; 3 7 #9 13
13#11 ; 3 7 #11 13
13sus4 ; 4 7 9 13
m13 ; b3 7 11 13
13(b9,#11) ; 3 7 b9 #11
13(#9,#11) ; 3 7 #9 #11
13(b5,b9) ; 3 b5 7 b9
7alt ; 3 #5 7 #9
7(It6) ; 1 3 #6
7(Ger65) ; 1 3 5 #6
Tristan ; 1 #4 #6 #9
ped ; 1
"""
ROWS = [tuple(line.split(";")) for line in KEPT.strip("\n").splitlines()]


def places(tones):
    found = []
    for tone in tones.split():
        number = int(tone.lstrip("#b"))
        found.append(NATURAL_INTERVALS[number] + 7 * (tone.count("#") - tone.count("b")))
    return found


@pytest.mark.parametrize(("tail", "kept"), ROWS)
def test_the_right_hand_keeps_third_seventh_and_colour(tail, kept):
    assert sorted(right_hand_intervals(read_tail(tail.strip()))) == sorted(places(kept))


# Chord over a chord, and the notes kept: the upper chord whole, then third and seventh of the lower one as far as four
# fingers go. Common practice, no source.
OVER = [("D//C7", "D F# A E"), ("D//C", "D F# A E"), ("Bb5//C7", "Bb F E"), ("Em7//Am7", "E G B D"), ("F//C5", "F A C")]


@pytest.mark.parametrize(("symbol", "kept"), OVER)
def test_of_a_chord_over_a_chord_the_right_hand_plays_the_upper_one(symbol, kept):
    chord = parse_chord(symbol)
    played = {str(chord.root.up(interval)) for interval in right_hand_intervals(chord.quality)}

    assert played == set(kept.split())


def every_quality(changes):
    """Every tail of one base and up to two of the changes; some bases take none."""
    yield from BASES.values()
    for base in open_bases:
        for change in changes:
            yield apply_change(base, change)
        for first, second in combinations(changes, 2):
            yield apply_change(apply_change(base, first), second)


ALL_CHANGES = sorted(set(CHANGES.values()))
USUAL_CHANGES = [
    (act, number, place)
    for act, number, place in ALL_CHANGES
    if act != "add" or (number in (6, 9, 11, 13) and not alteration(number, place))
]
"""All but what is seldom added: a second third, fifth or seventh, and additions that are altered."""
QUALITIES = sorted(set(every_quality(ALL_CHANGES)))
USUAL = sorted(set(every_quality(USUAL_CHANGES)))


def third_gives_way(quality):
    """A major third under the plain eleventh of an eleventh chord: the pair rubs, and the third goes."""
    return {(3, 4), (11, -1)} <= set(quality.tones) and 13 not in quality.numbers


def needed(quality):
    """Third (or what is suspended in its place), seventh, and altered tones: what tells one chord from another.

    Of two forms of one tone, as alt has them, the upper one will do: ours.
    """
    lower_twins = {tone for tone, above in pairwise(quality.tones) if tone[0] == above[0]}
    return {
        place
        for number, place in quality.tones
        if number in (2, 3, 4, 7) or (number in (5, 9, 11, 13) and alteration(number, place))
        if not (number == 3 and third_gives_way(quality)) and (number, place) not in lower_twins
    }


def test_no_chord_gives_the_right_hand_more_than_four_tones_or_any_that_is_not_its_own():
    for quality in QUALITIES:
        kept = right_hand_intervals(quality)

        assert len(kept) == min(4, len(quality.intervals))
        assert set(kept) <= set(quality.intervals)


def test_a_chord_of_four_tones_or_fewer_is_played_whole():
    for quality in QUALITIES:
        if len(quality.intervals) <= 4:
            assert right_hand_intervals(quality) == quality.intervals


def test_what_tells_a_chord_from_another_is_kept_where_four_fingers_can_hold_it():
    lost = [
        quality
        for quality in USUAL
        if len(needed(quality)) <= 4 and not needed(quality) <= set(right_hand_intervals(quality))
    ]

    assert lost == []


def test_third_and_seventh_are_kept_however_many_tones_are_altered():
    # The third is never omitted (course pages on part-writing, second-hand); guide tones are 3 and 7 (MT21C).
    lost = [
        quality
        for quality in QUALITIES
        for number in (3, 7)
        if quality.interval(number) is not None and quality.interval(number) not in right_hand_intervals(quality)
        if not (number == 3 and third_gives_way(quality))
    ]

    assert lost == []


def test_a_plain_fifth_is_the_first_tone_to_go_but_for_the_root_of_a_ninth_chord_that_the_bass_has():
    for quality in QUALITIES:
        if len(quality.intervals) > 4 and (5, 1) in quality.tones and quality.layers is None:
            assert 1 not in right_hand_intervals(quality, bass_has_root=False)
            if quality.numbers[-1] == 9 and 0 in quality.intervals:
                assert 0 not in right_hand_intervals(quality)
            else:
                assert 1 not in right_hand_intervals(quality)
