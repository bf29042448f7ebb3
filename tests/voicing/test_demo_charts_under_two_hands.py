"""Every demo chart in all twelve keys: playable, and spelled as its chords are."""

from __future__ import annotations

from itertools import pairwise

import pytest
from voicing_examples import CHARTS, demo, least_motion

from nearhand.harmony.moving import all_keys
from nearhand.voicing.hands import LEFT_HAND, RIGHT_HAND
from nearhand.voicing.voice import voice_progression


def test_there_are_demo_charts():
    assert len(CHARTS) >= 14


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
@pytest.mark.parametrize("loop", [False, True], ids=["open", "loop"])
def test_a_demo_chart_lies_under_two_hands_in_all_twelve_keys(path, loop):
    # At most an octave in one hand (common practice, no source).
    tune = demo(path)
    for home in all_keys(tune):
        progression = tune.in_key(home)
        voicings = voice_progression(progression, loop=loop).voicings
        for chord, voicing in zip(progression.chords(), voicings, strict=True):
            (bass,) = voicing.left
            right = [pitch.midi for pitch in voicing.right]

            assert right == sorted(set(right))
            assert right[-1] - right[0] < 12
            assert LEFT_HAND.low <= bass.midi < right[0]
            assert RIGHT_HAND.low <= right[0] and right[-1] <= RIGHT_HAND.high
            assert bass.pitch_class == chord.bass
            assert {pitch.pitch_class for pitch in voicing.right} <= set(chord.tones)


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_a_demo_chart_keeps_the_tones_that_two_chords_share_where_nothing_is_nearer(path):
    tune = demo(path)
    voicings = voice_progression(tune).voicings
    for before, after in pairwise(voicings):
        old, new = ([pitch.midi for pitch in each.right] for each in (before, after))

        assert after.motion.size == least_motion(old, new)
        assert set(old) != set(new) or all(after.motion.held)
