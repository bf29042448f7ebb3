"""Progressions under two hands: what sounds, how it is spelled, and how far it moves."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from voicing_examples import best_path, close_positions, keys, least_motion, midi, path_cost, progressions, tune

from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.hands import LEFT_HAND, RIGHT_HAND
from nearhand.voicing.reduction import right_hand_intervals
from nearhand.voicing.voice import voice_progression

C_MINOR = Key(PitchClass(0), MINOR)


def sounding(pitches):
    return tuple(pitch.midi for pitch in pitches)


def tones_of(chord):
    return tuple(chord.root.up(place) for place in right_hand_intervals(chord.quality, 4, chord.bass == chord.root))


def layers_of(progression):
    return [
        close_positions(tuple(tone.semitones for tone in tones_of(chord)), RIGHT_HAND) for chord in progression.chords()
    ]


@settings(max_examples=50)
@given(progressions(), st.booleans())
def test_the_right_hand_plays_close_positions_of_the_chord_spelled_as_its_tones(progression, loop):
    voiced = voice_progression(progression, loop=loop)
    for chord, voicing, layer in zip(progression.chords(), voiced.voicings, layers_of(progression), strict=True):
        assert sounding(voicing.right) in layer
        assert {pitch.pitch_class for pitch in voicing.right} <= set(chord.tones)
        assert {tone.semitones for tone in tones_of(chord)} == {pitch.midi % 12 for pitch in voicing.right}


@settings(max_examples=50)
@given(progressions(), st.booleans())
def test_the_left_hand_plays_the_bass_alone_below_the_right_hand(progression, loop):
    voiced = voice_progression(progression, loop=loop)
    for chord, voicing in zip(progression.chords(), voiced.voicings, strict=True):
        (bass,) = voicing.left
        assert bass.pitch_class == chord.bass
        assert LEFT_HAND.low <= bass.midi <= LEFT_HAND.high
        assert bass.midi < voicing.right[0].midi
        assert all(RIGHT_HAND.low <= pitch.midi <= RIGHT_HAND.high for pitch in voicing.right)


@settings(max_examples=50)
@given(progressions(), st.booleans())
def test_the_motion_of_each_chord_is_that_from_the_chord_before_and_a_loop_leads_back(progression, loop):
    voicings = voice_progression(progression, loop=loop).voicings
    rights = [sounding(voicing.right) for voicing in voicings]
    before = [rights[-1] if loop else None, *rights[:-1]]
    for voicing, old, new in zip(voicings, before, rights, strict=True):
        if old is None:
            assert voicing.motion is None
        else:
            assert voicing.motion.size == least_motion(old, new)
            came_from = [note - move for note, move in zip(new, voicing.motion.moves, strict=True) if move is not None]
            assert sorted([*came_from, *voicing.motion.left]) == list(old)
            assert all(note in old for note, held in zip(new, voicing.motion.held, strict=True) if held)


@settings(max_examples=50)
@given(progressions(), st.booleans())
def test_the_movement_is_the_sum_of_all_moves_and_the_way_back_counts_in_a_loop(progression, loop):
    voiced = voice_progression(progression, loop=loop)
    rights = [sounding(voicing.right) for voicing in voiced.voicings]
    steps = [*pairwise(rights), *([(rights[-1], rights[0])] if loop else [])]

    assert voiced.movement == sum(least_motion(*step) for step in steps)
    assert voiced.loops == loop
    assert voiced.pitches == tuple(voicing.left + voicing.right for voicing in voiced.voicings)


@settings(max_examples=25)
@given(progressions(most=3), st.booleans())
def test_both_hands_take_the_shortest_way_of_all(progression, loop):
    voiced, layers = voice_progression(progression, loop=loop), layers_of(progression)
    best = best_path(layers, RIGHT_HAND.centre, loop)
    basses = [close_positions((chord.bass.semitones,), LEFT_HAND) for chord in progression.chords()]
    played = [sounding(voicing.left) for voicing in voiced.voicings]
    best_bass = best_path(basses, LEFT_HAND.centre, loop)

    assert voiced.movement == path_cost(layers, best, RIGHT_HAND.centre, loop)[0]
    assert played == [layer[place] for layer, place in zip(basses, best_bass, strict=True)]


@given(progressions(most=4), keys)
def test_in_every_key_the_chords_are_spelled_from_the_same_degrees(progression, home):
    moved = progression.in_key(Key(home.tonic, progression.key.mode))
    shift = home.tonic.fifths - progression.key.tonic.fifths
    here, there = (
        [{pitch.pitch_class.fifths for pitch in voicing.right} for voicing in voice_progression(each).voicings]
        for each in (progression, moved)
    )

    assert there == [{place + shift for place in places} for places in here]


def names(pitches):
    return " ".join(map(str, pitches))


def test_the_lament_in_c_minor_moves_eleven_semitones():
    # Chords: Open Music Theory, harmonicSyntax2, lament, with a seventh on G. 3 + 6 + 2 semitones by hand, and the
    # least of all paths.
    progression = tune("| Cm | Gm/Bb | Fm/Ab | G7 |", C_MINOR)
    voiced = voice_progression(progression)

    assert [names(voicing.left) for voicing in voiced.voicings] == ["C3", "Bb2", "Ab2", "G2"]
    assert [names(voicing.right) for voicing in voiced.voicings] == [
        "Eb4 G4 C5",
        "D4 G4 Bb4",
        "C4 F4 Ab4",
        "B3 D4 F4 G4",
    ]
    assert [voicing.motion and voicing.motion.moves for voicing in voiced.voicings] == [
        None,
        (-1, 0, -2),
        (-2, -2, -2),
        (-1, None, 0, -1),
    ]
    assert voiced.movement == 11
    layers = layers_of(progression)
    assert path_cost(layers, best_path(layers, RIGHT_HAND.centre, False), RIGHT_HAND.centre, False)[0] == 11


@pytest.mark.parametrize(
    ("chart", "home", "expected"),
    [
        # every tone as the chord spells it, across the octave line at C
        ("| Cb | Fb |", Key(PitchClass(-7), MINOR), {"Cb", "Eb", "Gb", "Fb", "Ab"}),
        ("| G# | D#7 |", Key(PitchClass(8), MINOR), {"G#", "B#", "D#", "F##", "A#", "C#"}),
        ("| C#dim7 |", Key(PitchClass(2), MINOR), {"C#", "E", "G", "Bb"}),
        ("| C7#9 |", Key(PitchClass(-1), MINOR), {"E", "G", "Bb", "D#"}),
    ],
)
def test_notes_are_named_as_chord_tones(chart, home, expected):
    voiced = voice_progression(tune(chart, home))

    assert {str(pitch.pitch_class) for voicing in voiced.voicings for pitch in voicing.right} == expected
    for voicing in voiced.voicings:
        assert [midi(str(pitch)) for pitch in voicing.right] == list(sounding(voicing.right))


def test_a_foreign_bass_is_played_by_the_left_hand_alone():
    (voicing,) = voice_progression(tune("| C/F# |")).voicings

    assert names(voicing.left) == "F#2"
    assert {str(pitch.pitch_class) for pitch in voicing.right} == {"C", "E", "G"}


def test_rests_are_left_out_and_a_progression_of_rests_has_no_voicings():
    assert len(voice_progression(tune("| C | N.C. | F |")).voicings) == 2
    for loop in (False, True):
        empty = voice_progression(tune("| N.C. |"), loop=loop)
        assert (empty.voicings, empty.movement) == ((), 0)


def test_one_chord_in_a_loop_stands_still():
    voiced = voice_progression(tune("| C |"), loop=True)

    assert voiced.movement == 0
    assert voiced.voicings[0].motion.held == (True, True, True)


def test_a_style_that_does_not_exist_is_refused_with_the_styles_that_do():
    with pytest.raises(ValueError, match=r"^style must be one of close, open, .*, four-part \(got 'drop'\)$"):
        voice_progression(tune("| C |"), "drop")
