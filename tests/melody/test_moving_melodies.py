"""Melodies moved to other keys, beside music21: every note by spelling and octave, its MIDI number, hertz, syllable."""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from melody_strategies import melodies_in
from music21 import corpus, scale
from music21 import interval as m21_interval
from music21 import note as m21_note
from music21 import pitch as m21_pitch
from music21 import stream as m21_stream
from strategies import MAJOR_TONICS, MINOR_TONICS, key, note

from nearhand.harmony.moving import ORDERS, keys_in_order
from nearhand.notation.conventions import DEGREES, Conventions
from nearhand.notation.melody_reading import parse_melody, read_melody, resolve_melody
from nearhand.notation.melody_writing import stored, write_as_degrees, write_melody
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import NEAREST, WAYS, home_tonic
from nearhand.theory.mode import MODES
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Meter, Progression

TWELVE = ("C", "F", "Bb", "Eb", "Ab", "Db", "F#", "B", "E", "A", "D", "G")
DEGREES_IN_EVERY_MODE = "1 2 3 4 5 6 7 1' b7 6 #5 b3 #4 7_ b6_ 5_ #1 b2 2 r 1"
TUNES = (
    "TidalWaveJig", "VillageBellsHornpipe", "LanigansBallJig", "SpirvinsFancy", "EmpressClog", "DarkHairedLassReel",
    "MollyBawnsReel", "MissKellysReel", "LondonLassesReel",
)  # fmt: skip
"""Fiddle tunes in six modes from Ryan's Mammoth Collection, 1883, as music21's package ships them."""


def their_name(pitch):
    return str(pitch).replace("b", "-")


def between(old, new):
    """The interval that leads from one of our pitches to another, found by music21."""
    return m21_interval.Interval(m21_pitch.Pitch(their_name(old)), m21_pitch.Pitch(their_name(new)))


def names(melody):
    return [their_name(pitch) for pitch in melody.pitches() if pitch is not None]


@pytest.mark.parametrize("mode", MODES)
def test_every_degree_of_every_mode_moves_between_all_keys_as_music21_moves_it(mode):
    for start in TWELVE:
        melody = parse_melody(DEGREES_IN_EVERY_MODE, Key(note(start), MODES[mode]))
        theirs = [m21_pitch.Pitch(name) for name in names(melody)]
        for place, name in enumerate(TWELVE):
            moved = melody.in_key(Key(note(name), MODES[mode]), WAYS[place % 3])
            way = between(melody.tonic, moved.tonic)

            assert names(moved) == [pitch.transpose(way).nameWithOctave for pitch in theirs]


signature_keys = st.sampled_from([key(name) for name in (*MAJOR_TONICS, *MINOR_TONICS)])
modest = st.sampled_from([Interval(fifths, (4 * fifths % 7 + 7 * octave - 4 * fifths) // 7)
                          for fifths in range(-8, 11) for octave in (-1, 0, 1)])  # fmt: skip


@settings(max_examples=60)
@given(melodies_in(signature_keys, notes=modest), signature_keys, st.sampled_from(WAYS), st.integers(-1, 1))
def test_a_stream_of_any_notes_moves_as_music21_transposes_it(start, new, way, octaves):
    _, melody = start
    moved = melody.in_key(new, way, octaves)
    theirs = m21_stream.Stream()
    for heard in melody.sounding():
        theirs.append(m21_note.Note(their_name(heard.pitch), quarterLength=Fraction(heard.beats)))
    transposed = theirs.transpose(between(melody.tonic, moved.tonic)).notes

    assert [their_name(heard.pitch) for heard in moved.sounding()] == [each.nameWithOctave for each in transposed]
    assert [heard.pitch.midi for heard in moved.sounding()] == [each.pitch.midi for each in transposed]
    for heard, each in zip(moved.sounding(), transposed, strict=True):
        assert heard.pitch.frequency_hz() == pytest.approx(
            each.pitch.frequency, rel=1e-9
        )  # both by ISO 16: A4 is 440 Hz


@lru_cache
def tune(name):
    """A tune as music21 reads it, its notes and rests in order; its key; and the same as ours, read from names."""
    score = corpus.parse(f"ryansMammoth/{name}.abc", forceSource=True).flatten()
    signature = score.getElementsByClass("KeySignature").first()
    meter = score.getElementsByClass("TimeSignature").first()
    where = Key(note(signature.tonic.name.replace("-", "b")), MODES[signature.mode])
    flat = m21_stream.Stream([each for each in score.notesAndRests if each.quarterLength])
    words = []
    for each in flat:
        beats = Fraction(each.quarterLength) * meter.denominator / 4
        words.append(f"{'r' if each.isRest else each.nameWithOctave.replace('-', 'b')}:{beats}")
    return (
        flat,
        where,
        resolve_melody(read_melody(" ".join(words)), where, (), Meter(meter.numerator, meter.denominator)),
    )


def heard_names(melody):
    return [their_name(heard.pitch) for heard in melody.sounding()]


@pytest.mark.parametrize("name", TUNES)
def test_a_fiddle_tune_is_read_with_its_notes_and_lengths(name):
    flat, _, melody = tune(name)
    beat = Fraction(4, melody.bars[0].meter.unit)

    assert heard_names(melody) == [each.nameWithOctave for each in flat.notes]
    assert [heard.beats * beat for heard in melody.sounding()] == [each.quarterLength for each in flat.notes]
    assert len(melody.sounding()) > 60


@pytest.mark.parametrize("name", TUNES)
def test_a_fiddle_tune_moves_to_twelve_keys_as_music21_transposes_its_stream(name):
    flat, where, melody = tune(name)
    degrees = write_melody(melody, write_as_degrees(where.mode))
    for new in keys_in_order(Progression(where, ())):
        moved = melody.in_key(new)

        assert heard_names(moved) == [
            each.nameWithOctave for each in flat.transpose(between(melody.tonic, moved.tonic)).notes
        ]
        assert abs(moved.tonic.midi - melody.tonic.midi) <= 6
        assert write_melody(moved, write_as_degrees(new.mode)) == degrees


@pytest.mark.parametrize("name", TUNES)
@pytest.mark.parametrize("degrees", DEGREES)
def test_a_fiddle_tune_in_degrees_or_syllables_is_the_same_tune(name, degrees):
    _, where, melody = tune(name)
    for sing in ("numbers", "syllables"):
        conventions = Conventions(degrees, sing=sing)
        text = write_melody(melody, write_as_degrees(where.mode, conventions))

        assert parse_melody(text, where, conventions).bars == melody.bars
    assert parse_melody(stored(melody), where) == melody


@pytest.mark.parametrize("name", TUNES)
def test_a_fiddle_tune_is_sung_on_the_syllables_that_music21_gives_it(name):
    flat, where, melody = tune(name)
    for conventions, do in (
        (Conventions(sing="syllables"), where.tonic),
        (Conventions("relative", sing="syllables"), where.tonic.up(where.mode.brightness)),
    ):
        write = write_as_degrees(where.mode, conventions)
        theirs = scale.MajorScale(str(do).replace("b", "-"))

        assert [write(heard.interval).rstrip("'_") for heard in melody.sounding()] == [
            theirs.solfeg(each.name) for each in flat.notes
        ]


# Orders of the twelve keys from C. Falling and rising fifths, semitones, whole tones: common practice, no source;
# which name a key takes: fewest accidentals, of six sharps and six flats those one comes from, flats from C.
ORDERS_FROM_C = {
    "falling": "C F Bb Eb Ab Db Gb B E A D G",
    "rising": "C G D A E B F# Db Ab Eb Bb F",
    "semitones": "C Db D Eb E F Gb G Ab A Bb B",
    "tones": "C D E Gb Ab Bb Db Eb F G A B",
}


@pytest.mark.parametrize(("order", "expected"), ORDERS_FROM_C.items())
def test_a_melody_goes_through_the_twelve_keys_in_each_order(order, expected):
    keys = keys_in_order(Progression(key("C"), ()), order)

    assert " ".join(str(each.tonic) for each in keys) == expected


@given(signature_keys, st.sampled_from(ORDERS), st.integers(0, 10**9))
def test_every_order_begins_at_home_and_passes_all_twelve_keys_of_the_mode_once(where, order, seed):
    keys = keys_in_order(Progression(where, ()), order, seed)

    assert keys[0] == where
    assert sorted(each.tonic.semitones for each in keys) == list(range(12))
    assert {each.mode for each in keys} == {where.mode}
    assert keys == keys_in_order(Progression(where, ()), order, seed)
    assert all(abs(each.signature) <= 6 for each in keys[1:])


def test_orders_by_chance_differ_with_their_seeds():
    orders = {keys_in_order(Progression(key("C"), ()), "random", seed) for seed in range(20)}

    assert len(orders) > 15


def test_the_a_of_iso_16_sounds_at_440_hertz_in_every_key_it_is_read_in():
    for where in (key("C"), key("F"), key("f#"), key("Db")):
        heard = parse_melody("A4 A3 A5", where).sounding()

        assert [each.pitch.frequency_hz() for each in heard] == [440.0, 220.0, 880.0]
        assert [each.pitch.midi for each in heard] == [69, 57, 81]


def test_a_melody_near_middle_c_stays_within_a_tritone_of_where_it_was():
    melody = parse_melody("1 2 3 5", key("C"))
    tonics = [str(melody.in_key(key(name), NEAREST).tonic) for name in TWELVE]

    assert " ".join(tonics) == "C4 F4 Bb3 Eb4 Ab3 Db4 F#4 B3 E4 A3 D4 G3"
    assert melody.tonic == home_tonic(key("C")) == Pitch(note("C"), 4)


@pytest.mark.parametrize(
    ("start", "text", "expected"),
    [("e", "1 3 5 7", "D#"), ("e", "1 3 5 #7", "Eb"), ("G", "1 3 5 b7", "F#"), ("F", "1 3 5", "Gb"),
     ("F", "1 b3 5", "F#"), ("F", "{b3}1", "F#"), ("e", "r", "D#")],
)  # fmt: skip
def test_of_six_sharps_and_six_flats_a_melody_takes_those_that_need_no_double_accidentals(start, text, expected):
    """Else those one comes from; the notes of both keys counted by hand."""
    where = key(start)
    keys = keys_in_order(Progression(where, ()), "semitones", melody=parse_melody(text, where))

    assert [str(each.tonic) for each in keys if abs(each.signature) == 6] == [expected]
