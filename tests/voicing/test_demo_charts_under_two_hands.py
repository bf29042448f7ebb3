"""Every demo chart in all twelve keys and every family: playable, clear, and of the tones it should have."""

from __future__ import annotations

import re
from functools import cache
from itertools import pairwise

import pytest
from voicing_examples import CHARTS, demo, least_motion, midi

from nearhand.harmony.moving import all_keys
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.errors import InputError
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.hands import LEFT_HAND, RIGHT_HAND
from nearhand.voicing.voice import voice_progression
from nearhand.voicing.wishes import Wishes

BY_STEM = {path.stem: path for path in CHARTS}


def test_there_are_demo_charts():
    assert len(CHARTS) >= 14


@cache
def in_all_keys(stem):
    """A demo chart in its twelve keys."""
    tune = demo(BY_STEM[stem])
    return tuple(tune.in_key(home) for home in all_keys(tune))


@cache
def voiced(stem, style, loop=False):
    """Chords of a chart with their voicings, in all twelve keys."""
    return tuple(
        tuple(zip(each.chords(), voice_progression(each, style, loop).voicings, strict=True))
        for each in in_all_keys(stem)
    )


@pytest.mark.parametrize("stem", BY_STEM)
@pytest.mark.parametrize("loop", [False, True], ids=["open", "loop"])
def test_a_demo_chart_lies_under_two_hands_in_all_twelve_keys(stem, loop):
    # At most an octave in one hand (common practice, no source).
    for chord, voicing in (pair for pairs in voiced(stem, "close", loop) for pair in pairs):
        (bass,) = voicing.left
        right = [pitch.midi for pitch in voicing.right]

        assert right == sorted(set(right))
        assert right[-1] - right[0] < 12
        assert LEFT_HAND.low <= bass.midi < right[0]
        assert RIGHT_HAND.low <= right[0] and right[-1] <= RIGHT_HAND.high
        assert bass.pitch_class == chord.bass
        assert {pitch.pitch_class for pitch in voicing.right} <= set(chord.tones)


@pytest.mark.parametrize("stem", BY_STEM)
def test_a_demo_chart_keeps_the_tones_that_two_chords_share_where_nothing_is_nearer(stem):
    own_key, *_ = voiced(stem, "close")
    for (_, before), (_, after) in pairwise(own_key):
        old, new = ([pitch.midi for pitch in each.right] for each in (before, after))

        assert after.motion.size == least_motion(old, new)
        assert set(old) != set(new) or all(after.motion.held)


# The lowest place of the lower note of an interval of so many semitones: a retailer's glossary, "Low interval limit",
# second-hand, with middle C as C4.
CLEAR = {
    1: "E3", 2: "Eb3", 3: "C3", 4: "B2", 5: "A2", 6: "B1", 7: "C#2", 8: "F2", 9: "F2", 10: "F2", 11: "F2",
}  # fmt: skip
LOWEST = {size: midi(name) for size, name in CLEAR.items()}
# Soprano, alto, tenor and bass: three course pages agree, second-hand.
PARTS = [("E2", "C4"), ("C3", "G4"), ("G3", "C5"), ("C4", "G5")]
RANGES = [(midi(low), midi(high)) for low, high in PARTS]
# Lowest and highest bass note by where the bass lies: below the other hand a single note or a pattern, or in one hand
# with other notes. Ours.
BASSES = {"alone": ("C2", "F#3"), "pattern": ("C2", "E3"), "together": ("C2", "Bb3")}
# Third, seventh and what stands for them may not be missing (common practice; course pages, second-hand); only stacks
# of fourths may do without the seventh.
GUIDES = (3, 7)
NATURAL, FLAT, SHARP = {"9": 2, "11": -1, "13": 3}, {"9": -5, "13": -4}, {"9": 9, "11": 6}
MINOR_SEVENTH = -2
"""Added tones in fifths above the root: common practice, no source (M. Levine, *The Jazz Theory Book*, from memory)."""


def allowed_tones(chord, style):
    """Names that a family may add to a chord."""
    quality, root = chord.quality, chord.root
    is_dominant = quality.is_dominant_seventh
    places = {
        "rootless": {NATURAL["9"], *([NATURAL["13"], FLAT["9"], FLAT["13"]] if is_dominant else [])},
        "spread": {NATURAL["9"], *([FLAT["9"]] if is_dominant else [])},
        "quartal": {NATURAL["9"], *([FLAT["9"], FLAT["13"]] if is_dominant else [])}
        | ({NATURAL["11"], MINOR_SEVENTH} if quality.has_minor_third else {NATURAL["13"]}),
        "upper-structure": {*NATURAL.values(), *FLAT.values(), *SHARP.values()} - {NATURAL["11"]},
    }
    return {root.up(place) for place in places.get(style, ())}


def check(chord, voicing, span, left="bass"):
    """Asserts all that must hold of one voicing."""
    family = FAMILIES[voicing.style]
    hands = [[pitch.midi for pitch in hand] for hand in (voicing.left, voicing.right)]
    notes = hands[0] + hands[1]
    check_hands(hands, notes, span)
    assert notes == list(voicing.candidate.notes)

    upper = [pitch.midi for pitch in voicing.upper]
    assert upper == sorted(set(upper)) and set(upper) <= set(notes) and len(upper) > 1
    assert family.register.low <= upper[0] and upper[-1] <= family.register.high

    own = {chord.bass, *chord.tones} | ({chord.root} if left == "root" else set())
    sounding = {pitch.pitch_class for pitch in voicing.pitches}
    allowed = own | allowed_tones(chord, voicing.style)
    assert {pitch.semitones for pitch in sounding} <= {pitch.semitones for pitch in allowed}
    if voicing.style != "upper-structure":  # where the triad on top is written as a triad
        assert sounding <= allowed
    if not voicing.candidate.bass:  # another player has it
        sounding.add(chord.bass)
    if family.bass == "stacked" and voicing.style != "four-part":
        assert chord.root in sounding, f"the root of {write_chord(chord)} is missing"
    for number in GUIDES[: 1 if voicing.style == "quartal" else 2]:
        place = chord.quality.interval(number)

        assert place is None or chord.root.up(place) in sounding, f"{number} of {write_chord(chord)} is missing"
    check_bass(chord, voicing, family, left)


def check_hands(hands, notes, span):
    """Rising notes, hands apart, each in its span with five fingers, no interval too low."""
    assert notes == sorted(set(notes)) and notes
    for hand in hands:
        assert len(hand) <= 5
        assert not hand or hand[-1] - hand[0] <= span
    for low, high in pairwise(notes):
        assert low >= LOWEST.get(high - low, 0)


def check_bass(chord, voicing, family, left):
    """The bass as the chart says, as the pattern asks, in its register."""
    bass = voicing.candidate.bass
    if family.name == "four-part":
        assert all(low <= note <= high for note, (low, high) in zip(voicing.candidate.notes, RANGES, strict=True))
        assert voicing.left[0].pitch_class == chord.bass
        return
    if family.bass == "none" or left == "none":
        assert bass == ()
        return
    lowest = chord.root if left == "root" else chord.bass
    where = "together" if family.bass != "free" else "alone" if left in ("bass", "root") else "pattern"
    low, high = map(midi, BASSES[where])

    assert voicing.left[0].pitch_class == lowest
    assert voicing.left[0].midi == bass[0] and low <= bass[0] <= high
    assert tuple(note - bass[0] for note in bass) == pattern_of(chord, left)
    assert family.bass != "free" or tuple(pitch.midi for pitch in voicing.left) == bass
    assert bass[0] <= voicing.candidate.upper[0]


def pattern_of(chord, left):
    """A pattern's notes in semitones above its lowest; over a slash bass a fifth and a tenth are its octave alone."""
    quality = chord.quality
    if left in ("bass", "root"):
        return (0,)
    member = quality.interval({"fifth": 5, "tenth": 3}.get(left, 0))
    if member is None or chord.bass != chord.root:
        return (0, 12)
    size = member * 7 % 12
    return (0, size, 12) if left == "fifth" else (0, size + 12)


@pytest.mark.parametrize("style", FAMILIES)
@pytest.mark.parametrize("stem", BY_STEM)
def test_a_demo_chart_is_playable_in_every_family_and_key(stem, style):
    # A hand's span: an octave and a whole tone, less than the tenth that most women's hands do not reach (R. Boyle and
    # others, "Pianist hand spans", 2015, second-hand).
    for pairs in voiced(stem, style):
        for chord, voicing in pairs:
            check(chord, voicing, span=14)


@pytest.mark.parametrize("style", FAMILIES)
def test_most_chords_of_the_demo_charts_have_a_voicing_of_the_family_asked_for(style):
    pairs = [pair for stem in BY_STEM for pairs in voiced(stem, style) for pair in pairs]
    own = [chord for chord, voicing in pairs if voicing.style == style]
    if style == "upper-structure":
        pairs = [(chord, voicing) for chord, voicing in pairs if chord.quality.is_dominant_seventh]

    assert {voicing.style for _, voicing in pairs} <= {style, FAMILIES[style].otherwise, "close"}
    assert 3 * len(own) >= 2 * len(pairs)


SOME = ("a-thread-pulled-loose", "gravel-under-snow")
SINGLE, WIDE = ("bass", "root", "none"), ("octave", "fifth", "tenth")
WITH_PATTERNS = [
    (style, left)
    for style, family in FAMILIES.items()
    for left in (*SINGLE, *WIDE)
    if left == "bass" or (style not in ("rootless", "four-part") and (left in SINGLE or family.bass == "free"))
]
"""Families and the patterns that they have room for: a wide one only where the left hand plays nothing else."""


@pytest.mark.parametrize("span", [12, 14, 17])
@pytest.mark.parametrize(("style", "left"), WITH_PATTERNS)
def test_so_it_is_with_every_pattern_of_the_left_hand_and_for_smaller_and_larger_hands(style, left, span):
    for progression in (each for stem in SOME for each in in_all_keys(stem)):
        reach, voicings = voiced_within(progression, Wishes(style=style, left=left, span=span))
        for chord, voicing in zip(progression.chords(), voicings, strict=True):
            check(chord, voicing, reach, left)


def voiced_within(progression, wishes):
    """The span that the chart needs, which is that of the wishes or what a refusal names, and the voicings."""
    try:
        return wishes.span, voice_progression(progression, wishes).voicings
    except InputError as error:
        wider = int(re.search(r"a span of (\d+) would do", str(error))[1])
        if wishes.left == "tenth":
            assert wider == 16
        elif wider > wishes.span + 1:  # the named span is the least that will do
            with pytest.raises(InputError):
                voice_progression(progression, wishes._replace(span=wider - 1))
        return wider, voice_progression(progression, wishes._replace(span=wider)).voicings


@pytest.mark.parametrize(
    ("style", "left"),
    [(style, left) for style in FAMILIES for left in (*SINGLE, *WIDE) if (style, left) not in WITH_PATTERNS],
)
def test_a_family_that_has_no_room_for_a_pattern_is_played_without_it(style, left):
    for home, progression in zip(voiced(SOME[1], style), in_all_keys(SOME[1]), strict=True):
        played = voice_progression(progression, Wishes(style=style, left=left)).voicings

        assert [each.pitches for each in played] == [voicing.pitches for _, voicing in home]
