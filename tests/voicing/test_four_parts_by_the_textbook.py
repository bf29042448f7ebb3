"""Four parts on the progressions that textbooks explain: what doubles, where tendency tones go, what must be broken.

MT21C is R. Hutchinson, *Music Theory for the 21st-Century Classroom*, with the section; OMT is Open Music Theory, first
edition. Names of notes are those in C; every row is held in all twelve keys.
"""

from __future__ import annotations

from itertools import pairwise

import pytest
from four_part_examples import HOMES, TWELVE_KEYS, all_costs, cost_of, place_of, places_in, searched
from hypothesis import example, given, settings
from hypothesis import strategies as st
from voicing_examples import midi

from nearhand.notation.errors import InputError
from nearhand.voicing.account import broken_rules
from nearhand.voicing.costs import alone, between, total
from nearhand.voicing.part_writing import (
    HIDDEN_FIFTHS,
    HIDDEN_OCTAVES,
    OVERLAP,
    PARALLEL_FIFTHS,
    RULES,
    UNEQUAL_FIFTHS,
    faults,
)

LEADING_TONE, AUGMENTED_SECOND = place_of("B"), 9
TENDENCY = "a tendency tone does not go where it pulls"
AUGMENTED = "an augmented step or leap"
OF_RULES = ("parallels", "hidden", "tendency", "melody", "overlap", "spacing")
"""The costs that are broken rules."""

# Progressions that can be written without a fault.
FAULTLESS = {
    "major": [
        "| I | V | I |",  # MT21C, "V to I"; a bass by fourth or fifth: one tone kept, the others by step
        "| I | IV | V | I |",  # bass by second: the upper voices the other way
        "| I | vi | IV | ii | V | I |",  # bass by third: two tones kept
        "| I | iii | IV | I |",
        "| I | ii6 | V7 | I |",
        "| I | ii65 | V7 | I |",
        "| ii7 | V7 | I |",  # MT21C, "V7 to I voice leading"
        "| I | V65 | I | V43 | I | V42 | I6 |",
        "| I | V43 | I6 | V43 | I |",
        "| I | viio6 | I6 |",
        "| I | viiø7 | I |",
        "| I | V7 | vi |",
        "| I | IV | I64 | V7 | I |",  # MT21C, "Types of six-four chords": cadential, passing, pedal
        "| I | V64 | I6 | IV | I64 | IV6 |",
        "| I | IV64 | I |",
        "| I6 | ii6 | iii6 | IV6 | V6 | vi6 |",  # MT21C, "Summary of doubling rules": consecutive first inversions
        "| vi6 | V6 | IV6 | iii6 | ii6 | I6 |",
        "| I | V7/V | V7 | I |",  # applied chords
        "| I | V7/ii | ii | V | I |",
        "| I | viio7/V | V | I |",
        "| I | V42/IV | IV6 | V | I |",
        "| I | bVI | V | I |",
        "| I | V7sus4 | V7 | I |",  # common practice, no source
    ],
    "minor": [
        "| i | iv | V | i |",
        "| i | iio6 | V | i |",
        "| i | iiø65 | V7 | i |",
        "| i | iv6 | V | i |",
        "| i | V | VI |",  # MT21C, "V to VI in minor"
        "| i | V7 | VI | iv | V | i |",
        "| i | VI | V | i |",
        "| i | viio7 | i | viio65 | i6 |",  # MT21C, "Special resolution of vii°7"
        "| i | viio43 | i6 |",
        "| i | iv | i64 | V7 | i |",
        "| i | N6 | V | i |",  # OMT, "Altered subdominants"
        "| i | N6 | i64 | V7 | i |",
        "| i | It6 | V | i |",  # MT21C, "Voice leading augmented sixth chords"
        "| i | Fr43 | V | i |",
        "| i | Ger65 | i64 | V | i |",
        "| i7 | iv7 | VII7 | IIImaj7 | VImaj7 | iiø7 | V7 | i |",
    ],
}
ALL_FAULTLESS = [(text, mode) for mode, texts in FAULTLESS.items() for text in texts]


@pytest.mark.parametrize(("text", "mode"), ALL_FAULTLESS)
def test_what_the_textbook_writes_without_a_fault_has_none_in_any_key(text, mode):
    # A diminished fifth that goes to a perfect one is no cost of ours: course lists avoid it, second-hand.
    for key in TWELVE_KEYS[mode]:
        search, path = searched(text, key)
        found = {fault.rule for step in pairwise(path) for fault in faults(step[0].voices, step[1].voices)}

        assert broken_rules(search, path) == ()
        assert found <= {UNEQUAL_FIFTHS}


@pytest.mark.parametrize(("text", "mode"), ALL_FAULTLESS)
def test_no_voice_sings_an_augmented_second_between_the_lowered_sixth_and_the_leading_tone(text, mode):
    # MT21C, "Rules of melody": no augmented intervals.
    for key in TWELVE_KEYS[mode]:
        for (old, _), (new, _) in pairwise(places_in(text, key)):
            moves = [(at, to) for at, to in zip(old, new, strict=True) if abs(to - at) == AUGMENTED_SECOND]
            assert moves == []


# Chart, the place of a chord in it, and where its tendency tones go: in every voice, in inner voices as well.
EVERYWHERE = [
    (
        "| I | V | I |",
        "major",
        1,
        "B",
        "C",
        "G",
    ),  # MT21C, "V7 to I voice leading": 7 rises to 1, within it may fall to 5
    ("| I | V7 | I |", "major", 1, "B", "C", "G"),
    ("| I | V7 | I |", "major", 1, "F", "E", ""),  # the seventh falls
    ("| i | V7 | i |", "minor", 1, "F", "Eb", ""),
    ("| I | V65 | I |", "major", 1, "B", "C", ""),
    ("| I | V65 | I |", "major", 1, "F", "E", ""),
    ("| I | V42 | I6 |", "major", 1, "F", "E", ""),
    ("| I | V43 | I6 |", "major", 1, "F", "E G", ""),  # here the seventh may rise
    ("| I6 | V43 | I |", "major", 1, "F", "E", ""),
    ("| i | V7 | VI |", "minor", 1, "B", "C", ""),  # MT21C, "V to VI in minor": the third of V rises, the others fall
    ("| i | V7 | VI |", "minor", 1, "F", "Eb", ""),
    ("| i | V7 | VI |", "minor", 1, "D", "C", ""),
    ("| i | V | VI |", "minor", 1, "B", "C", ""),
    ("| i | V | VI |", "minor", 1, "D", "C", ""),
    ("| I | V7 | vi |", "major", 1, "B", "C", ""),
    ("| I | V7 | vi |", "major", 1, "F", "E", ""),
    ("| I | V7 | vi |", "major", 1, "D", "C", ""),
    ("| I | viio6 | I |", "major", 1, "B", "C", "G"),
    ("| i | viio7 | i |", "minor", 1, "B", "C", ""),
    ("| i | viio7 | i |", "minor", 1, "Ab", "G", ""),
    ("| i | viio43 | i6 |", "minor", 1, "B", "C", "G"),
    ("| i | viio43 | i6 |", "minor", 1, "Ab", "G", ""),
    ("| ii7 | V7 | I |", "major", 0, "C", "B", ""),
    ("| I | ii65 | V7 | I |", "major", 1, "C", "B", ""),
    ("| I | IV | I64 | V7 | I |", "major", 2, "C", "B", ""),  # OMT, "Cadence types": 6 and 4 fall by step
    ("| I | IV | I64 | V7 | I |", "major", 2, "E", "D", ""),
    ("| i | iv | i64 | V7 | i |", "minor", 2, "C", "B", ""),
    ("| i | iv | i64 | V7 | i |", "minor", 2, "Eb", "D", ""),
    ("| i | N6 | V | i |", "minor", 1, "Db", "B", ""),  # OMT, "Altered subdominants": to the nearest tone
    ("| i | N6 | i64 | V7 | i |", "minor", 1, "Db", "C", ""),
    ("| i | It6 | V | i |", "minor", 1, "F#", "G", ""),  # MT21C, "Voice leading augmented sixth chords"
    ("| i | It6 | V | i |", "minor", 1, "Ab", "G", ""),
    ("| i | Fr43 | V | i |", "minor", 1, "F#", "G", ""),
    ("| i | Fr43 | V | i |", "minor", 1, "Ab", "G", ""),
    ("| i | Ger65 | i64 | V | i |", "minor", 1, "F#", "G", ""),
    ("| i | Ger65 | i64 | V | i |", "minor", 1, "Ab", "G", ""),
    ("| i | iv | V | i |", "minor", 1, "Ab", "G", ""),  # MT21C, "Rules of melody": not to B
    ("| i | iio6 | V | i |", "minor", 1, "Ab", "G", ""),
    ("| i | VI | V | i |", "minor", 1, "Ab", "G", ""),
    ("| I | V7/V | V7 | I |", "major", 1, "F#", "F G", "D"),  # in a chain it slips (common practice, no source)
    ("| I | V7/V | V7 | I |", "major", 1, "C", "B", ""),
    ("| I | viio7/V | V | I |", "major", 1, "Eb", "D", ""),
    ("| I | V7/ii | ii | V | I |", "major", 1, "C#", "D", "A"),
    ("| I | V42/IV | IV6 | V | I |", "major", 1, "Bb", "A", ""),
    ("| I | V7sus4 | V7 | I |", "major", 1, "C", "B", ""),  # common practice, no source
]


@pytest.mark.parametrize("row", EVERYWHERE, ids=lambda row: f"{row[0]} {row[3]}")
def test_tendency_tones_go_where_the_textbook_sends_them_in_every_key(row):
    text, mode, place, tone, goals, within = row
    anywhere, inside = ([place_of(name) for name in names.split()] for names in (goals, within))
    for key in TWELVE_KEYS[mode]:
        (old, old_notes), (new, notes) = places_in(text, key)[place : place + 2]
        ways = [
            (voice, new[voice], notes[voice] - old_notes[voice]) for voice in range(4) if old[voice] == place_of(tone)
        ]

        assert ways
        for voice, goal, move in ways:
            by_step = goal in anywhere and abs(move) <= 2
            assert by_step or (voice in (1, 2) and goal in inside and move == -4)


# What doubles in the voicing that is found: MT21C, "Summary of doubling rules", "V to VI in minor"; OMT for N6.
FOUND_DOUBLED = [
    ("| I | IV | V | I |", "major", 0, "C"),
    ("| I | IV | V | I |", "major", 1, "F"),
    ("| I | IV | V | I |", "major", 2, "G"),
    ("| I | ii6 | V | I |", "major", 1, "D A"),
    ("| I | V6 | I |", "major", 1, "D G"),
    ("| I | viio6 | I6 |", "major", 1, "D"),
    ("| I | V43 | I6 |", "major", 2, "C G"),
    ("| i | iio6 | V | i |", "minor", 1, "F"),
    ("| I | IV | I64 | V7 | I |", "major", 2, "G"),
    ("| I | V64 | I6 |", "major", 1, "D"),
    ("| I | IV64 | I |", "major", 1, "C"),
    ("| i | V | VI |", "minor", 2, "C"),
    ("| i | V7 | VI |", "minor", 2, "C"),
    ("| I | V7 | vi |", "major", 2, "C"),
    ("| i | N6 | V | i |", "minor", 1, "F"),
    ("| i | It6 | V | i |", "minor", 1, "C"),
]


@pytest.mark.parametrize(("text", "mode", "place", "doubled"), FOUND_DOUBLED)
def test_the_tone_that_doubles_is_the_textbooks_in_every_key(text, mode, place, doubled):
    for key in TWELVE_KEYS[mode]:
        tones, _ = places_in(text, key)[place]
        twice = {tone for tone in tones if tones.count(tone) == 2}

        assert len(set(tones)) == 3
        assert twice <= {place_of(name) for name in doubled.split()}


@pytest.mark.parametrize("text", ["| ii7 | V7 | I |", "| I | IV | V7 | I |", "| I | ii65 | V7 | I |"])
def test_of_v7_and_i_one_lacks_its_fifth_or_the_leading_tone_falls_within(text):
    # MT21C, "V7 to I voice leading".
    for key in TWELVE_KEYS["major"]:
        (dominant, _), (tonic, _) = places_in(text, key)[-2:]
        falls = tonic[dominant.index(LEADING_TONE)] == place_of("G")
        lacks = [place_of("D") not in dominant, place_of("G") not in tonic]

        assert [*lacks, falls].count(True) == 1
        assert {place_of(name) for name in "GBF"} <= set(dominant)
        assert {place_of(name) for name in "CE"} <= set(tonic)


CIRCLES = [
    ("| Imaj7 | IVmaj7 | viiø7 | iii7 | vi7 | ii7 | V7 | Imaj7 |", "major", "C F B E A D G C"),
    ("| III7 | VI7 | II7 | V7 |", "major", "E A D G"),
    ("| i7 | iv7 | VII7 | IIImaj7 | VImaj7 | iiø7 | V7 |", "minor", "C F Bb Eb Ab D G"),
]


@pytest.mark.parametrize(("text", "mode", "roots"), CIRCLES)
def test_sevenths_in_root_position_round_the_circle_alternate_complete_and_without_fifth(text, mode, roots):
    # MT21C, "Summary of doubling rules". A chord with a diminished fifth is complete, and its neighbours may be, too.
    for key in TWELVE_KEYS[mode]:
        chords = [tones for tones, _ in places_in(text, key)]
        complete = [len(set(tones)) == 4 for tones in chords]
        for root, tones, is_complete in zip(roots.split(), chords, complete, strict=True):
            assert tones[0] == place_of(root)
            assert is_complete or (tones.count(tones[0]) == 2 and tones[0] + 1 not in tones)
        assert all(before or after for before, after in pairwise(complete))
        for (old, old_notes), (new, notes) in pairwise(places_in(text, key)):
            sevenths = [voice for voice in range(1, 4) if old[voice] - old[0] in (-2, 5)]
            assert [(notes[voice] - old_notes[voice]) in (-1, -2) for voice in sevenths] == [True]
            assert new[sevenths[0]] - new[0] in (4, -3)  # a seventh becomes a third


def test_the_german_sixth_alone_has_its_fifths_avoided_and_pinned_they_are_told():
    # MT21C, "Voice leading augmented sixth chords": straight to V it makes parallel fifths, through the six-four none.
    straight = searched("| Ger65 | V |", HOMES["minor"])
    pinned = searched("| Ger65 | V |", HOMES["minor"], pins=((0, notes("Ab2 C4 Eb4 F#4")), (1, notes("G2 B3 D4 G4"))))

    assert broken_rules(*straight) == ()
    assert [each[:3] for each in broken_rules(*pinned)] == [(1, PARALLEL_FIFTHS, (0, 2))]


def notes(names):
    return tuple(map(midi, names.split()))


# Where a given top line, bass or pin leaves no way without a fault: chart, top line, pins, the rules that are told.
FORCED = [
    ("| I | ii | iii |", "G4 A4 B4", {}, {"parallels": 2}),  # the fifth on top of each: common practice, no source
    ("| I | ii | V |", "C5 D5 B4", {}, {"parallels": 1}),
    ("| IV | V7 | I |", "A4 B4 G4", {}, {"tendency": 1}),  # the leading tone on top falls
    ("| ii7 | V7 | I |", "A4 F4 G4", {}, {"tendency": 1}),  # the seventh on top rises
    ("| I | IV | I |", "C4 C5 C5", {}, {"overlap": 2}),
    ("| I | IV | V |", "", {0: "C3 G3 E4 C5", 1: "F3 C4 A4 F5"}, {"parallels": 2}),
    ("| I | iii | vi |", "", {0: "C3 G3 C4 E4", 1: "E3 G3 B3 B4"}, {"hidden": 1}),
]


def counts(search, path):
    """How often each rule is broken on a path, summed over its steps."""
    (strand,) = search.strands
    found = [between(old, new, pulls) for (old, new), pulls in zip(pairwise(path), strand.pulls, strict=False)]
    return {name: sum(getattr(each, name) for each in found) for name in OF_RULES}


@pytest.mark.parametrize(("text", "top", "pins", "expected"), FORCED)
def test_a_rule_that_cannot_hold_is_told_and_no_path_breaks_fewer(text, top, pins, expected):
    search, path = searched(text, melody=notes(top), pins=tuple((place, notes(names)) for place, names in pins.items()))
    told = [each.rule for each in broken_rules(search, path)]
    (strand,) = search.strands

    def broken(place, old, new=None):
        if new is None:
            return alone(old).spacing
        amounts = between(old, new, strand.pulls[place])
        return sum(getattr(amounts, name) for name in OF_RULES)

    assert {name: count for name, count in counts(search, path).items() if count} == expected
    assert {cost_named(rule) for rule in told} == set(expected)
    assert len(told) == sum(expected.values()) == min(all_costs(search, broken))


def cost_named(rule):
    """The cost that counts a rule."""
    others = {
        OVERLAP: "overlap",
        HIDDEN_FIFTHS: "hidden",
        HIDDEN_OCTAVES: "hidden",
        TENDENCY: "tendency",
        AUGMENTED: "melody",
    }
    return others.get(rule, "parallels")


# Numerals in C, and where their tendency tones go if the next chord has the goal. Left out are chords whose tendencies
# hang on more than the two chords (six-fours), or lie in the bass.
TENDENCIES = {
    "I": "", "IV": "", "ii": "", "ii6": "", "vi": "", "iii": "", "I6": "", "IV6": "",
    "V": "B>C", "V7": "B>C F>E", "viio6": "B>C", "ii7": "C>B", "vi7": "G>F", "IVmaj7": "E>D",
}  # fmt: skip
TONES = {
    "I": "C E G", "IV": "F A C", "ii": "D F A", "ii6": "D F A", "vi": "A C E", "iii": "E G B", "I6": "C E G",
    "IV6": "F A C", "V": "G B D", "V7": "G B D F", "viio6": "B D F", "ii7": "D F A C", "vi7": "A C E G",
    "IVmaj7": "F A C E",
}  # fmt: skip


def broken_by_hand(numerals, path):
    """Triples of a chord's place, a rule and its voices, from the checks between voices and the table of tendencies."""
    found = []
    for place, (old, new) in enumerate(pairwise([each.voices for each in path]), 1):
        found += [(place, rule, (low, high)) for rule, low, high in faults(old, new) if rule != UNEQUAL_FIFTHS]
        is_deceptive = numerals[place - 1] in ("V", "V7") and numerals[place] == "vi"  # its fifth falls, too
        found += [
            (place, AUGMENTED, (voice,))
            for voice in range(4)
            if (old[voice] % 12, new[voice] - old[voice]) in ((5, 6), (11, -6))  # F up to B, B down to F
        ]
        for row in f"{TENDENCIES[numerals[place - 1]]} {'D>C' if is_deceptive else ''}".split():
            tone, goal = (7 * place_of(name) % 12 for name in row.split(">"))
            voices = [voice for voice in range(4) if old[voice] % 12 == tone]
            if row[-1] in TONES[numerals[place]].split():
                found += [
                    (place, TENDENCY, (voice,))
                    for voice in voices
                    if new[voice] != old[voice]
                    and not (new[voice] % 12 == goal and abs(new[voice] - old[voice]) <= 2)
                    and not (row[0] == "B" and voice in (1, 2) and new[voice] == old[voice] - 4)
                ]
    return found


@st.composite
def lines(draw, size):
    """Numerals in C with a top line that chords can carry, here and there free."""
    numerals = draw(st.lists(st.sampled_from(sorted(TENDENCIES)), min_size=size, max_size=size))
    layers = searched(f"| {' | '.join(numerals)} |")[0].strands[0].layers
    tops = [sorted({each.upper[-1] for each in layer}) for layer in layers]
    return numerals, tuple(draw(st.none() | st.sampled_from(each)) for each in tops)


@settings(max_examples=150)
@example((["V", "vi7"], (62, 64)))
@given(st.integers(2, 6).flatmap(lines))
def test_the_rules_that_are_told_are_those_found_by_hand(line):
    numerals, melody = line
    search, path = searched(f"| {' | '.join(numerals)} |", melody=melody)

    told = [each[:3] for each in broken_rules(search, path)]

    assert set(told) == set(broken_by_hand(numerals, path))
    assert {rule for _, rule, _ in told} <= {*RULES, TENDENCY, AUGMENTED}


@settings(max_examples=25)
@given(lines(3))
def test_of_all_paths_none_costs_less_and_none_breaks_rules_that_weigh_less(line):
    numerals, melody = line
    search, path = searched(f"| {' | '.join(numerals)} |", melody=melody)
    (strand,), weights = search.strands, search.task.weights

    def whole(place, old, new=None):
        if new is None:
            return total(alone(old, strand.makeups[place]), weights)
        return total(between(old, new, strand.pulls[place]), weights)

    def of_rules(place, old, new=None):
        amounts = alone(old) if new is None else between(old, new, strand.pulls[place])
        return sum(getattr(amounts, name) * getattr(weights, name) for name in OF_RULES)

    broken = sum(count * getattr(weights, name) for name, count in counts(search, path).items())
    assert cost_of(search, path) == min(all_costs(search, whole))
    assert broken == min(all_costs(search, of_rules))


def test_in_a_loop_the_way_back_is_told_at_the_first_chord():
    found = searched("| I | ii |", loop=True, melody=notes("G4 A4"))

    assert [each.place for each in broken_rules(*found)] == [0, 1]


def test_a_rule_whose_weight_is_nothing_is_not_told():
    found = searched("| I | ii | iii |", melody=notes("G4 A4 B4"), weights=(("parallels", 0),))

    assert broken_rules(*found) == ()


@pytest.mark.parametrize(("top", "nearest"), [("F4", "E4"), ("C6", "G5")])
def test_a_top_note_that_is_no_tone_of_the_chord_or_no_soprano_is_refused(top, nearest):
    with pytest.raises(InputError) as error:
        searched("| I | V |", melody=(midi(top),))

    assert nearest in error.value.hint
