"""Sopranos of chorales by J. S. Bach over the chords that analysts name, held against music21's own readings."""

from __future__ import annotations

from itertools import pairwise

import pytest
from melody.chorales import ANALYSED, chorale
from music21.pitch import Pitch as TheirPitch
from music21.voiceLeading import ThreeNoteLinearSegment

from nearhand.melody.against import CHORD_TONE, CLASH, against
from nearhand.melody.figures import ANTICIPATION, LOWER_NEIGHBOUR, PASSING, SUSPENSION, UPPER_NEIGHBOUR

NEIGHBOURS = (UPPER_NEIGHBOUR, LOWER_NEIGHBOUR)


def pitches_around(tones, place):
    """The pitch before a note, its own and the one after it, as music21's; None at the ends and beside rests."""
    notes = list(dict.fromkeys(tone.note for tone in tones))
    lines: list[list] = [[notes[0]]]
    for before, after in pairwise(notes):
        if before.pitch.midi == after.pitch.midi and before.onset + before.beats == after.onset:
            lines[-1].append(after)
        else:
            lines.append([after])
    at = next(number for number, row in enumerate(lines) if tones[place].note in row)
    three = lines[max(at - 1, 0) : at + 2]
    if len(three) < 3 or any(a[-1].onset + a[-1].beats != b[0].onset for a, b in pairwise(three)):
        return None
    return [TheirPitch(str(row[0].pitch).replace("b", "-")) for row in three]


@pytest.mark.parametrize("number", ANALYSED)
def test_the_chord_tones_are_those_in_the_chords_that_music21_reads(number):
    music = chorale(number)
    tones = against(music.melody, music.progression)

    assert len(tones) > 20
    for tone in tones:
        sounds = set(music.numeral_at(tone.onset).pitchClasses)
        assert (tone.note.pitch.midi % 12 in sounds) == (tone.kind == CHORD_TONE), (tone, sounds)


@pytest.mark.parametrize("number", ANALYSED)
def test_all_passing_tones_and_neighbours_pass_the_tests_of_music21(number):
    music = chorale(number)
    tones = against(music.melody, music.progression)

    for place, tone in enumerate(tones):
        if tone.kind == PASSING:
            assert ThreeNoteLinearSegment(pitches_around(tones, place)).couldBePassingTone()
        if tone.kind in NEIGHBOURS:
            assert ThreeNoteLinearSegment(pitches_around(tones, place)).couldBeNeighborTone()


@pytest.mark.parametrize("number", ANALYSED)
def test_what_passes_the_tests_of_music21_and_is_no_chord_tone_is_a_figure(number):
    music = chorale(number)
    tones = against(music.melody, music.progression)

    for place, tone in enumerate(tones):
        around = pitches_around(tones, place)
        if tone.kind == CHORD_TONE or around is None:
            continue
        segment = ThreeNoteLinearSegment(around)
        if segment.couldBePassingTone():
            assert tone.kind in (PASSING, SUSPENSION, ANTICIPATION)
        elif segment.couldBeNeighborTone():
            assert tone.kind in NEIGHBOURS


def test_enough_figures_are_met_to_say_so():
    kinds = [tone.kind for number in ANALYSED for tone in against(*chorale(number)[:2])]

    assert kinds.count(CHORD_TONE) >= 300
    assert kinds.count(PASSING) >= 20
    assert sum(kinds.count(kind) for kind in NEIGHBOURS) >= 3
    assert kinds.count(SUSPENSION) >= 2


def test_no_soprano_of_these_chorales_clashes_with_its_chords():
    # four-part writing of the style resolves every dissonance by step (common practice, no source)
    for number in ANALYSED:
        assert CLASH not in {tone.kind for tone in against(*chorale(number)[:2])}
