"""How far instruments reach, and the octave in which they are given a melody."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import instrument as music21_instrument

from nearhand.melody.compass import COMPASSES, compass_of, in_compass, kind_of_voice
from nearhand.melody.instruments import INSTRUMENTS
from nearhand.melody.instruments import VOICES as VOICE_FAMILY
from nearhand.melody.ranges import VOICES
from nearhand.melody.singers_key import ranked_keys
from nearhand.melody.spans import span_of
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import parse_melody
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote
from nearhand.theory.pitch import Pitch, interval_between
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression

# Ours, the class of music21 10.5.1 (module instrument), and the octaves by which its lowestNote, said to be a written
# note, is to be moved: it tells sounding notes of some that are written an octave higher (guitar, bass guitar, banjo).
OF_MUSIC21 = [
    ("piccolo", "Piccolo", 0), ("flute", "Flute", 0), ("recorder", "Recorder", 0), ("oboe", "Oboe", 0),
    ("English horn", "EnglishHorn", 0), ("clarinet", "Clarinet", 0), ("bass clarinet", "BassClarinet", 0),
    ("bassoon", "Bassoon", 0), ("contrabassoon", "Contrabassoon", 0), ("soprano sax", "SopranoSaxophone", 0),
    ("alto sax", "AltoSaxophone", 0), ("tenor sax", "TenorSaxophone", 0), ("baritone sax", "BaritoneSaxophone", 0),
    ("trumpet", "Trumpet", 0), ("trombone", "Trombone", 0), ("bass trombone", "BassTrombone", 0), ("tuba", "Tuba", 0),
    ("violin", "Violin", 0), ("viola", "Viola", 0), ("cello", "Violoncello", 0), ("double bass", "Contrabass", 0),
    ("bass", "Contrabass", 0), ("bass guitar", "ElectricBass", 1), ("guitar", "Guitar", 1), ("banjo", "Banjo", 1),
    ("mandolin", "Mandolin", 0), ("ukulele", "Ukulele", 0), ("harp", "Harp", 0), ("piano", "Piano", 0),
    ("organ", "PipeOrgan", 0), ("harpsichord", "Harpsichord", 0), ("accordion", "Accordion", 0),
]  # fmt: skip
HIGHEST_OF_MUSIC21 = [("harp", "Harp"), ("piano", "Piano"), ("harpsichord", "Harpsichord"), ("accordion", "Accordion")]
"""All that have a highestNote but the organ: music21 stops at C6, where small manuals of 49 keys do; ours at G6."""


@pytest.mark.parametrize(("name", "of_music21", "octaves"), OF_MUSIC21)
def test_the_lowest_note_is_that_of_music21(name, of_music21, octaves):
    theirs = getattr(music21_instrument, of_music21)().lowestNote

    assert COMPASSES[name].low.midi == theirs.midi + 12 * octaves


@pytest.mark.parametrize(("name", "of_music21"), HIGHEST_OF_MUSIC21)
def test_the_highest_note_is_that_of_music21(name, of_music21):
    assert COMPASSES[name].high.midi == getattr(music21_instrument, of_music21)().highestNote.midi


def test_where_we_differ_from_music21_it_goes_further_down_or_less_far_up():
    horn, organ = music21_instrument.Horn(), music21_instrument.PipeOrgan()

    assert COMPASSES["horn"].low.midi > horn.lowestNote.midi
    assert COMPASSES["organ"].high.midi > organ.highestNote.midi


# Open strings, sounding (music21 10.5.1, stringPitches): the lowest one is the lowest note.
@pytest.mark.parametrize(("name", "of_music21"), [
    ("violin", "Violin"), ("viola", "Viola"), ("cello", "Violoncello"), ("guitar", "Guitar"), ("mandolin", "Mandolin"),
    ("bass guitar", "ElectricBass"), ("ukulele", "Ukulele"),
])  # fmt: skip
def test_the_lowest_note_of_a_string_instrument_is_its_lowest_open_string(name, of_music21):
    strings = getattr(music21_instrument, of_music21)().stringPitches

    assert COMPASSES[name].low.midi - INSTRUMENTS[name].semitones == min(each.midi for each in strings)


def test_every_instrument_has_a_compass_of_an_octave_and_a_half_at_least():
    voices = {name for name, instrument in INSTRUMENTS.items() if instrument.family == VOICE_FAMILY}

    assert set(COMPASSES) == set(INSTRUMENTS) - voices
    assert {f"{kind} voice" for kind in VOICES} | {"voice"} == voices
    for instrument in INSTRUMENTS.values():
        low, high = compass_of(instrument)
        assert 18 <= high.midi - low.midi <= 87


# Sounding ends from handbooks of instrumentation, from memory: those of the transposing instruments, counted back.
SOUNDING = [
    ("piccolo", "D5", "C8"), ("clarinet", "D3", "F6"), ("clarinet in A", "C#3", "E6"), ("horn", "B1", "D5"),
    ("alto sax", "Db3", "A5"), ("tenor sax", "Ab2", "E5"), ("baritone sax", "Db2", "A4"), ("trumpet", "E3", "Bb5"),
    ("euphonium treble clef", "E2", "Bb4"), ("glockenspiel", "G5", "C8"), ("celesta", "C4", "C8"),
    ("double bass", "E1", "C4"), ("tenor voice", "C3", "C5"), ("descant recorder", "C5", "D7"),
    ("bass voice", "E2", "E4"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "low", "high"), SOUNDING)
def test_a_compass_sounds_where_handbooks_say(name, low, high):
    instrument = INSTRUMENTS[name]
    ends = [note.pitch for note in parse_melody(f"C: {low} {high}").sounding()]

    assert [end.midi - instrument.semitones for end in compass_of(instrument)] == [end.midi for end in ends]


def register(name, text):
    instrument, melody = INSTRUMENTS[name], parse_melody(text)
    key = instrument.written_key(Progression(parse_key(text.partition(":")[0]), ()), melody)
    found = in_compass(instrument, melody, key)
    return " ".join(map(str, found.melody.pitches())), found.octaves, " ".join(map(str, found.outside))


# By hand: where the part would be written, moved by octaves into the compass of the table.
MOVED = [
    ("baritone sax", "Eb: Eb4 G Bb Eb5", "C5 E5 G5 C6", -1, ""), ("piccolo", "Eb: Eb4 Eb5", "Eb4 Eb5", 1, ""),
    ("double bass", "Eb: Eb4 G Bb Eb5", "Eb3 G3 Bb3 Eb4", -2, ""), ("guitar", "Eb: Eb4 Eb5", "Eb5 Eb6", 0, ""),
    ("flute", "C: C4 C7", "C4 C7", 0, ""), ("flute", "C: B3 C5", "B4 C6", 1, ""),
    ("flute", "C: C4 C#7", "C4 C#7", 0, "C#7"),
    ("tuba", "C: C6 E6", "C4 E4", -2, ""), ("violin", "C: G3 {F#3}G3", "G4 G4", 1, ""),
    # three beats too low, one too high: the longer part comes inside
    ("oboe", "C: C3:3 C6 C3:3 r", "C4 C7 C4 None", 1, "C7"), ("oboe", "C: C3 C6:3", "C3 C6", 0, "C3"),
    # two beats outside, here and an octave lower, are no reason to move
    ("piccolo trumpet in A", "F: C5 C5 G6 E5 A5 Bb6 G5 E6", "Eb4 Eb4 Bb5 G4 C5 Db6 Bb4 G5", 0, "Bb5 Db6"),
    # one note outside is better than two
    ("alto flute", "F: F3 A6", "Bb2 D6", -1, "Bb2"), ("trumpet", "C: r", "None", 0, ""),
]  # fmt: skip


@pytest.mark.parametrize(("name", "sounding", "read", "octaves", "outside"), MOVED)
def test_a_melody_is_moved_by_as_few_octaves_as_bring_it_inside(name, sounding, read, octaves, outside):
    assert register(name, sounding) == (read, octaves, outside)


# Men sing an octave below what stands in the treble clef. A tenor is at ease from D3 to F4, a baritone from A2 to D4, a
# bass from G2 to B3, an alto from G3 to B4, a soprano from D4 to F5 (common practice, no source): of the octaves in the
# range it is the one in which more of the time lies there. A tenor reads an octave above where he sounds.
TUNE = "C: C4 E G A | A C5 A F | E - C -"
SUNG = [
    ("tenor voice", TUNE, "C4", -1), ("baritone voice", TUNE, "C3", -1), ("bass voice", TUNE, "C3", -1),
    ("alto voice", TUNE, "C4", 0), ("mezzo-soprano voice", TUNE, "C4", 0), ("soprano voice", TUNE, "C4", 0),
    ("voice", TUNE, "C4", 0), ("trumpet in C", TUNE, "C4", 0),
    ("tenor voice", "G: G3 B D4 G4", "G4", 0),  # a tenor's own octave: lower down it would leave the range
    ("tenor voice", "C: D3 F A3 F", "D4", 0),
    ("tenor voice", "F: F4 A C5 A", "F4", -1),
    ("soprano voice", "C: D4 F A D5", "D4", 0),
    ("alto voice", "G: C5 D E D", "C4", -1),  # A3 to B4 is where an alto sings with ease
    ("bass voice", "C: C6 E6 G6 r", "C3", -3),
    # without octaves: D to A lies about the middle of what is comfortable as D3 to A3, not as D4 to A4
    ("tenor voice", "D: 1 3 5", "D4", None), ("soprano voice", "D: 1 3 5", "D4", None),
]  # fmt: skip


@pytest.mark.parametrize(("name", "sounding", "first", "octaves"), SUNG)
def test_a_voice_sings_in_the_octave_that_is_comfortable(name, sounding, first, octaves):
    read, moved, outside = register(name, sounding)

    assert (read.split()[0], outside) == (first, "")
    assert octaves in (None, moved)


# The octave whose middle lies nearest to the middle of the compass (by hand: oboe B flat 3 to F6, middle D5).
FREE = [
    ("oboe", "C: 1 3 5", "C5 E5 G5"), ("double bass", "C: 1 3 5", "C3 E3 G3"), ("tuba", "F: 1 3 5", "F2 A2 C3"),
    ("violin", "C: E F# G", "E5 F#5 G5"), ("piano", "C: 1 5 1'", "C4 G4 C5"), ("baritone sax", "Eb: 1 5", "C5 G5"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "sounding", "read"), FREE)
def test_a_melody_without_octaves_goes_to_the_middle_of_the_compass(name, sounding, read):
    assert register(name, sounding)[::2] == (read, "")


notes = st.builds(lambda letter, octave: Pitch(PitchClass(letter), octave), st.integers(-4, 8), st.integers(1, 7))
pitches = st.lists(notes, min_size=1, max_size=5)


def melody_of(pitches, beats, has_octaves):
    tonic = Pitch(PitchClass(0), 4)
    found = [MelodyNote(interval_between(tonic, pitch), length) for pitch, length in zip(pitches, beats, strict=False)]
    return Melody(tonic, (MelodyBar(tuple(found)),), has_octaves)


@given(st.sampled_from(list(INSTRUMENTS.values())), pitches, st.lists(st.integers(1, 4), min_size=5), st.booleans())
def test_no_fewer_octaves_and_no_other_octave_would_leave_less_outside(instrument, pitches, beats, has_octaves):
    melody = melody_of(pitches, beats, has_octaves)
    compass = compass_of(instrument)
    key = instrument.written(parse_key("C"))
    found = in_compass(instrument, melody, key)

    def left_out(octaves):
        numbers = [pitch.midi + instrument.semitones + 12 * octaves for pitch in pitches]
        return sum(
            length
            for number, length in zip(numbers, beats, strict=False)
            if not compass.low.midi <= number <= compass.high.midi
        )

    assert {pitch.midi for pitch in found.outside} == {
        note.pitch.midi
        for note in found.melody.sounding()
        if not compass.low.midi <= note.pitch.midi <= compass.high.midi
    }
    assert bool(found.outside) == bool(left_out(found.octaves))
    assert [note.interval for note in found.melody.notes] == [note.interval for note in melody.notes]
    if has_octaves:
        for octaves in range(-4, 5):
            moved = [pitch.midi + instrument.semitones + 12 * octaves for pitch in pitches]
            if min(moved) >= 0 and max(moved) <= 127:
                assert left_out(found.octaves) <= left_out(octaves)
                if left_out(found.octaves) == left_out(octaves) and kind_of_voice(instrument) is None:
                    assert abs(found.octaves) <= abs(octaves)
    elif any(not left_out(octaves) for octaves in range(-9, 10)):
        assert not found.outside


@given(st.sampled_from(list(VOICES)), pitches, st.lists(st.integers(1, 4), min_size=5))
def test_a_voice_that_the_tune_fits_sings_where_the_best_keys_for_singers_put_it(kind, pitches, beats):
    instrument, melody = INSTRUMENTS[f"{kind} voice"], melody_of(pitches, beats, True)
    span, music = span_of(melody), Progression(parse_key("C"), ())
    own = next(fit for fit in ranked_keys(span, [VOICES[kind]], music) if fit.key == music.key)

    assert kind_of_voice(instrument) == VOICES[kind]
    if not own.too_far:
        assert 12 * in_compass(instrument, melody, music.key).octaves == own.places[0].low - span.low
