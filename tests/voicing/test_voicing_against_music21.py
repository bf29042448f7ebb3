"""The right hand's notes, compared with the chords of music21."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import chord as m21_chord
from music21 import harmony as m21_harmony
from voicing_examples import C_MAJOR

from nearhand.notation.chord_tails import read_tail
from nearhand.theory.chord import RelativeChord
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.voicing.voice import voice_progression

# Tails as we read them, and the kinds as music21 10.5.1 names them.
KINDS = {
    "": "major",
    "m": "minor",
    "dim": "diminished",
    "aug": "augmented",
    "sus4": "suspended-fourth",
    "6": "major-sixth",
    "m6": "minor-sixth",
    "7": "dominant-seventh",
    "maj7": "major-seventh",
    "m7": "minor-seventh",
    "m7b5": "half-diminished-seventh",
    "dim7": "diminished-seventh",
    "m(maj7)": "minor-major-seventh",
    "7#5": "augmented-seventh",
}
ROOTS = range(-6, 8)


def right_hands(chords):
    progression = Progression(C_MAJOR, tuple(Bar((Slot(chord, 4),)) for chord in chords))
    return [[str(pitch).replace("b", "-") for pitch in each.right] for each in voice_progression(progression).voicings]


def their_chord(root, tail):
    name = str(RelativeChord(root, read_tail(tail), root).in_key(C_MAJOR).root).replace("b", "-")
    return m21_harmony.ChordSymbol(root=name, kind=KINDS[tail])


@pytest.mark.parametrize("tail", KINDS)
def test_every_chord_is_spelled_as_music21_spells_it(tail):
    for root in ROOTS:
        (right,) = right_hands([RelativeChord(root, read_tail(tail), root)])

        assert {name.rstrip("0123456789") for name in right} == {p.name for p in their_chord(root, tail).pitches}


named = st.tuples(st.sampled_from(ROOTS), st.sampled_from(sorted(KINDS)))


@settings(max_examples=40)
@given(st.lists(named, min_size=1, max_size=5))
def test_in_a_progression_every_chord_sounds_as_music21_hears_it(rows):
    chords = [RelativeChord(root, read_tail(tail), root) for root, tail in rows]
    for (root, tail), right in zip(rows, right_hands(chords), strict=True):
        heard = m21_chord.Chord(right)

        assert set(heard.pitchClasses) == set(their_chord(root, tail).pitchClasses)
        assert [pitch.midi for pitch in heard.pitches] == sorted(pitch.midi for pitch in heard.pitches)


TERTIAN = ["", "m", "dim", "7", "maj7", "m7", "m7b5", "dim7"]


@settings(max_examples=40)
@given(st.sampled_from(ROOTS), st.sampled_from(TERTIAN))
def test_music21_finds_the_root_of_what_the_right_hand_plays(root, tail):
    # By spelling alone, whatever the inversion: so a diminished seventh keeps its root, too.
    chord = RelativeChord(root, read_tail(tail), root)
    (right,) = right_hands([chord])

    assert m21_chord.Chord(right).root().name == str(chord.in_key(C_MAJOR).root).replace("b", "-")
