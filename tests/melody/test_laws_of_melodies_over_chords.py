"""Laws of what notes are over chords, for melodies and chords of any kind."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import given
from hypothesis import strategies as st
from strategies import note, notes, qualities

from nearhand.melody.against import ADDED, CHORD_TONE, CLASH, FREE, NO_CHORD, OUTSIDE, TENSION, against
from nearhand.melody.figures import FIGURES
from nearhand.melody.tone_words import clash_in_words, clashes, count_in_words, kind_in_words
from nearhand.notation.chord_words import BASES
from nearhand.theory.chord import RelativeChord
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.verbs.tune import Tune

KINDS = {CHORD_TONE, TENSION, ADDED, CLASH, FREE, NO_CHORD, OUTSIDE, *FIGURES}
TONICS = notes("C Db D Eb E F Gb F# G Ab A Bb B")

lengths = st.sampled_from([Fraction(1, 2), 1, 1, 2, 3])
scale = st.sampled_from([0, 2, 4, -1, 1, 3, 5, -3, -2, -4, 6])
"""Degrees in fifths above the tonic: all of major, and the usual altered ones."""


def interval_to(fifths: int, octaves: int = 0) -> Interval:
    """The interval to a degree within the octave above the tonic, or some octaves above that."""
    return Interval(fifths, -((7 * fifths) // 12) + octaves)


usual_qualities = st.sampled_from(sorted(set(BASES.values())))
slots = st.builds(
    Slot,
    st.none() | st.builds(RelativeChord, scale, usual_qualities | qualities, scale),
    st.sampled_from([1, 2, 4, 4]),
)
plain_slots = st.builds(
    lambda root, quality, beats: Slot(RelativeChord(root, quality, root), beats),
    scale,
    usual_qualities,
    st.sampled_from([2, 4]),
)
melody_notes = st.builds(
    MelodyNote,
    st.none() | st.builds(interval_to, scale, st.sampled_from([0, 0, 0, 1])),
    lengths,
    st.sampled_from([False, False, False, True]),
)


@st.composite
def tunes(draw: st.DrawFn) -> Tune:
    """A melody in one bar after the other over chords, in major or minor on C."""
    key = Key(note("C"), draw(st.sampled_from([MAJOR, MINOR])))
    row = draw(st.lists(slots | plain_slots, min_size=1, max_size=6))
    melody = Melody(Pitch(note("C"), 4), (MelodyBar(tuple(draw(st.lists(melody_notes, min_size=1, max_size=12)))),))
    return Tune(Progression(key, tuple(Bar((slot,)) for slot in row)), melody=melody)


def tones_of(tune):
    return against(tune.melody, tune.progression)


@given(tunes(), st.sampled_from(TONICS))
def test_another_key_changes_no_kind(tune, tonic):
    moved = tune.in_key(Key(tonic, tune.key.mode))

    for before, after in zip(tones_of(tune), tones_of(moved), strict=True):
        assert before._replace(note=after.note) == after
        assert before.note.interval == after.note.interval


@given(tunes())
def test_every_note_has_one_kind_for_each_chord_that_it_sounds_with(tune):
    found = tones_of(tune)
    sounding = tune.melody.sounding()

    assert {tone.kind for tone in found} <= KINDS
    assert [tone.note for tone in found] == sorted((tone.note for tone in found), key=lambda each: each.onset)
    assert {tone.note for tone in found} == set(sounding)
    end = sum(bar.slots[0].beats for bar in tune.progression.bars)
    for each in sounding:
        row = [tone for tone in found if tone.note == each]
        inside = max(0, min(each.onset + each.beats, end) - each.onset)
        covered = sum(tone.beats for tone in row)
        assert covered == (inside or each.beats)
        assert (row[0].kind == OUTSIDE) == (inside == 0)
        for before, after in pairwise(row):
            assert before.onset + before.beats == after.onset
            assert before.chord != after.chord


def moment_at(tune, onset):
    """The chord that sounds at a beat, found by walking along the bars."""
    at = 0
    for slot in (slot for bar in tune.progression.bars for slot in bar.slots):
        if at <= onset < at + slot.beats:
            return slot.chord
        at += slot.beats
    raise AssertionError("there is no chord there")


@given(tunes())
def test_a_chord_tone_sounds_in_its_chord_and_no_other_note_does(tune):
    for tone in tones_of(tune):
        if tone.kind == OUTSIDE:
            continue
        chord = moment_at(tune, tone.onset)
        assert tone.chord == chord
        assert (tone.kind == NO_CHORD) == (chord is None)
        if chord is None:
            continue
        sounds = {place * 7 % 12 for place in (*chord.places, chord.bass)}
        is_thirteenth = {(3, 4), (11, -1), (13, 3)} <= set(chord.quality.tones)
        eleventh = (chord.root - 1) * 7 % 12
        sound = tone.note.pitch.midi % 12
        if not (is_thirteenth and sound == eleventh):  # which a thirteenth chord leaves out
            assert (tone.kind == CHORD_TONE) == (sound in sounds)


@st.composite
def tunes_of_chord_tones(draw: st.DrawFn) -> Tune:
    """Melodies that have tones of their chords alone, in notes of one or two beats."""
    row = draw(st.lists(plain_slots, min_size=1, max_size=6))
    notes_ = []
    for slot in row:
        assert slot.chord is not None
        tones = st.sampled_from(tuple(dict.fromkeys((*slot.chord.places, slot.chord.bass))))
        count = draw(st.sampled_from([1, 2]))
        notes_ += [MelodyNote(interval_to(draw(tones)), slot.beats // count) for _ in range(count)]
    melody = Melody(Pitch(note("C"), 4), (MelodyBar(tuple(notes_)),))
    return Tune(Progression(Key(note("C"), MAJOR), tuple(Bar((slot,)) for slot in row)), melody=melody)


@given(tunes_of_chord_tones())
def test_a_melody_of_chord_tones_has_no_clash(tune):
    eleventh_of_thirteenth = {
        (slot.chord.root - 1) % 12
        for slot in (bar.slots[0] for bar in tune.progression.bars)
        if slot.chord and {(3, 4), (11, -1), (13, 3)} <= set(slot.chord.quality.tones)
    }
    found = [tone for tone in tones_of(tune) if tone.note.interval.fifths % 12 not in eleventh_of_thirteenth]

    assert {tone.kind for tone in found} <= {CHORD_TONE}


@given(tunes())
def test_everything_can_be_told(tune):
    found = tones_of(tune)

    for tone in found:
        assert kind_in_words(tone, tune.key)
    for tone in clashes(found):
        assert clash_in_words(tone, tune.key).endswith(".")
    assert len(count_in_words(found)) == 2 - ({tone.kind for tone in found} <= {NO_CHORD, OUTSIDE}) - (
        not {tone.kind for tone in found} & {NO_CHORD, OUTSIDE}
    )
