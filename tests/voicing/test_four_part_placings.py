"""Which placings of one chord four parts may take: ranges, spacing, completeness and doubling, against all notes."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from four_part_examples import HOMES, TWELVE_KEYS, place_of, searched
from voicing_examples import midi

from nearhand.voicing.costs import RANGES, alone
from nearhand.voicing.hands import SPAN

# Bass, tenor, alto, soprano: three course pages agree, second-hand. MT21C is R. Hutchinson, *Music Theory for the
# 21st-Century Classroom*.
IN_RANGE = (("E2", "C4"), ("C3", "G4"), ("G3", "C5"), ("C4", "G5"))
CLEAR = {
    1: "E3", 2: "Eb3", 3: "C3", 4: "B2", 5: "A2", 6: "B1", 7: "C#2", 8: "F2", 9: "F2", 10: "F2", 11: "F2",
}  # fmt: skip
"""Interval in semitones to its lowest place: a retailer's glossary, second-hand, with middle C as C4."""

# A chart in C, its tones from the root up, its bass, tones that never sound twice. Never twice: leading tones (MT21C,
# "V7 to I voice leading", "Voicing first inversion"), chordal sevenths, suspended fourths (common practice, no source),
# both tones of an augmented sixth (MT21C, "Voice leading augmented sixth chords").
CHORDS = [
    ("I", "major", "C E G", "C", ""),
    ("I6", "major", "C E G", "E", ""),
    ("I64", "major", "C E G", "G", ""),
    ("ii", "major", "D F A", "D", ""),
    ("IV6", "major", "F A C", "A", ""),
    ("V", "major", "G B D", "G", "B"),
    ("V6", "major", "G B D", "B", "B"),
    ("V64", "major", "G B D", "D", "B"),
    ("viio6", "major", "B D F", "D", "B"),
    ("viio", "major", "B D F", "B", "B"),
    ("V7", "major", "G B D F", "G", "B F"),
    ("V65", "major", "G B D F", "B", "B F"),
    ("V43", "major", "G B D F", "D", "B F"),
    ("V42", "major", "G B D F", "F", "B F"),
    ("ii7", "major", "D F A C", "D", "C"),
    ("Imaj7", "major", "C E G B", "C", "B"),
    ("viiø7", "major", "B D F A", "B", "B A"),
    ("V7/V", "major", "D F# A C", "D", "F# C"),
    ("V7sus4", "major", "G C D F", "G", "C F"),
    ("I+", "major", "C E G#", "C", ""),
    ("i", "minor", "C Eb G", "C", ""),
    ("V", "minor", "G B D", "G", "B"),
    ("iio6", "minor", "D F Ab", "F", ""),
    ("VI", "minor", "Ab C Eb", "Ab", ""),
    ("viio7", "minor", "B D F Ab", "B", "B Ab"),
    ("III+", "minor", "Eb G B", "Eb", "B"),
    ("N6", "minor", "Db F Ab", "F", ""),
    ("It6", "minor", "Ab C F#", "Ab", "Ab F#"),
    ("Fr43", "minor", "Ab C D F#", "Ab", "Ab F#"),
    ("Ger65", "minor", "Ab C Eb F#", "Ab", "Ab F#"),
]
PERFECT_FIFTH = 1


def sounds(names, key):
    """Plain names in C as pitch classes in a key, in semitones."""
    return [7 * (place_of(name) + key.tonic.fifths) % 12 for name in names.split()]


def may_lack(tones, bass):
    """The tones that may be left out: a perfect fifth, of a seventh chord in root position alone.

    "Never the third, the fifth may go" stands in course lists, second-hand; MT21C lets V7 alone lose its fifth. Ours:
    all sevenths in root position may, for those in a row alternate so; a fifth that lies in the bass never goes.
    """
    root, fifth = tones[0], tones[2] if len(tones) == 3 else tones[-2]
    is_perfect = place_of(fifth) - place_of(root) == PERFECT_FIFTH
    return {fifth} if is_perfect and (bass == root or len(tones) == 3) else set()


def allowed_placings(tones, bass, single, key):
    """Every placing of a chord that the rules of this page allow."""
    names = tones.split()
    classes, (low,) = set(sounds(tones, key)), sounds(bass, key)
    essential = classes - set(sounds(" ".join(may_lack(names, bass)), key))
    ranges = [range(midi(first), midi(last) + 1) for first, last in IN_RANGE]
    parts = [[note for note in each if note % 12 in classes] for each in ranges]
    found = set()
    for notes in product([note for note in parts[0] if note % 12 == low], *parts[1:]):
        sounding = [note % 12 for note in notes]
        gaps = [high - low for low, high in pairwise(notes)]
        root = sounds(names[0], key)[0]
        if (
            min(gaps) > 0  # no voice crosses, and two hands play no unison (ours: choirs do)
            and max(gaps[1:]) <= 12  # MT21C, "Rules of spacing"
            and essential <= set(sounding)
            and all(sounding.count(tone) == 1 for tone in sounds(single, key))
            and (len(names) == 3 or set(sounding) == classes or sounding.count(root) == 2)
            and is_played(notes)
            and all(low >= midi(CLEAR.get(high - low, "C2")) for low, high in pairwise(notes))
        ):
            found.add(notes)
    return found


def is_played(notes):
    """Whether two hands play it: the left one takes the bass, or bass and tenor (ours)."""
    return notes[3] - notes[1] <= SPAN or (notes[1] - notes[0] <= SPAN and notes[3] - notes[2] <= SPAN)


def test_the_ranges_are_those_of_the_course_pages():
    assert tuple((midi(low), midi(high)) for low, high in IN_RANGE) == RANGES


@pytest.mark.parametrize(("text", "mode", "tones", "bass", "single"), CHORDS)
def test_the_placings_are_all_that_ranges_spacing_and_doubling_allow_in_all_keys(text, mode, tones, bass, single):
    for key in TWELVE_KEYS[mode]:
        (layer,) = searched(f"| {text} |", key)[0].strands[0].layers
        found = [each.voices for each in layer]

        assert set(found) == allowed_placings(tones, bass, single, key)
        assert len(found) == len(set(found))


def test_two_hands_play_every_placing_and_the_left_hand_has_the_bass():
    for text, mode, *_ in CHORDS:
        (layer,) = searched(f"| {text} |", HOMES[mode])[0].strands[0].layers
        for each in layer:
            assert each.left[0] == each.bass[0]
            assert each.left + each.right == each.voices
            assert all(hand[-1] - hand[0] <= SPAN for hand in (each.left, each.right))


# The tones in C whose doubling costs nothing. MT21C, "Summary of doubling rules": in root position the root, in first
# inversion root or fifth, in vii°6 and ii°6 the bass, in second inversion the bass. N6: its bass (Open Music Theory,
# "Altered subdominants"). The Italian sixth: its only free tone, 1 (MT21C, "Voice leading augmented sixth chords").
DOUBLED = [
    ("| I |", "major", 0, "C"),
    ("| ii |", "major", 0, "D"),
    ("| IV |", "major", 0, "F"),
    ("| V |", "major", 0, "G"),
    ("| vi |", "major", 0, "A"),
    ("| I6 |", "major", 0, "C G"),
    ("| ii6 |", "major", 0, "D A"),
    ("| IV6 |", "major", 0, "F C"),
    ("| V6 |", "major", 0, "G D"),
    ("| viio6 |", "major", 0, "D"),
    ("| I64 |", "major", 0, "G"),
    ("| IV64 |", "major", 0, "C"),
    ("| V64 |", "major", 0, "D"),
    ("| i |", "minor", 0, "C"),
    ("| V6 |", "minor", 0, "G D"),
    ("| iio6 |", "minor", 0, "F"),
    ("| viio6 |", "minor", 0, "D"),
    ("| i64 |", "minor", 0, "G"),
    ("| N6 | V |", "minor", 0, "F"),
    ("| It6 | V |", "minor", 0, "C"),
]


@pytest.mark.parametrize(("text", "mode", "place", "doubled"), DOUBLED)
def test_a_complete_triad_that_doubles_what_the_textbook_asks_costs_nothing_and_no_other_does(
    text, mode, place, doubled
):
    for key in TWELVE_KEYS[mode]:
        (strand,) = searched(text, key)[0].strands
        twice = {
            next(tone for tone in range(12) if [note % 12 for note in each.voices].count(tone) == 2)
            for each in strand.layers[place]
            if not alone(each, strand.makeups[place]).doubling
        }
        assert twice == set(sounds(doubled, key))
        for each in strand.layers[place]:
            sounding = [note % 12 for note in each.voices]
            is_good = len(set(sounding)) == 3 and any(sounding.count(tone) == 2 for tone in sounds(doubled, key))
            assert is_good == (not alone(each, strand.makeups[place]).doubling)


@pytest.mark.parametrize("text", ["| ii7 |", "| V7 |", "| Imaj7 |", "| viio7/V |", "| V65 |", "| V43 |", "| V42 |"])
def test_a_complete_seventh_chord_costs_nothing_and_one_without_its_fifth_does(text):
    # MT21C, "Summary of doubling rules": seventh chords are complete; V7 may lose its fifth and double its root.
    for key in TWELVE_KEYS["major"]:
        (strand,) = searched(text, key)[0].strands
        for each in strand.layers[0]:
            is_complete = len({note % 12 for note in each.voices}) == 4
            assert is_complete == (not alone(each, strand.makeups[0]).doubling)
