"""What instruments read, and where a capo goes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import instrument as music21_instrument
from music21 import interval
from music21.pitch import Pitch

from nearhand.melody.capo import HIGHEST_FRET, OPEN_CHORDS, capos
from nearhand.melody.instruments import INSTRUMENTS
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.conventions import PLAIN
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.verbs.parts import part_of

# Ours, and the class of music21 10.5.1 (module instrument) whose transposition is that of the sounding note.
OF_MUSIC21 = [
    ("clarinet", "Clarinet"), ("bass clarinet", "BassClarinet"), ("trumpet", "Trumpet"),
    ("soprano sax", "SopranoSaxophone"), ("alto sax", "AltoSaxophone"), ("tenor sax", "TenorSaxophone"),
    ("baritone sax", "BaritoneSaxophone"), ("horn", "Horn"), ("English horn", "EnglishHorn"), ("piccolo", "Piccolo"),
    ("bass", "Contrabass"), ("banjo", "Banjo"), ("piano", "Piano"), ("flute", "Flute"),
    ("oboe", "Oboe"), ("bassoon", "Bassoon"), ("violin", "Violin"), ("viola", "Viola"), ("cello", "Violoncello"),
    ("trombone", "Trombone"), ("tuba", "Tuba"),
]  # fmt: skip
LETTERS = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}


@pytest.mark.parametrize(("name", "of_music21"), OF_MUSIC21)
def test_the_written_note_lies_as_far_from_the_sounding_one_as_music21_says(name, of_music21):
    theirs = getattr(music21_instrument, of_music21)().transposition or interval.Interval("P1")
    sounding = theirs.transposePitch(Pitch("C4"))
    places = LETTERS[sounding.step] + 7 * int(sounding.alter)
    ours = INSTRUMENTS[name]

    assert ours.semitones == -theirs.semitones
    assert ours.fifths == -places


# Common practice, no source: clarinet in A, in E flat, trumpet in D, alto flute in G, oboe d'amore in A.
OTHERS = [
    ("clarinet in A", "Eb"), ("clarinet in Eb", "A"), ("trumpet in D", "Bb"), ("alto flute", "F"),
    ("oboe d'amore", "Eb"), ("cornet", "D"), ("flugelhorn", "D"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "key"), OTHERS)
def test_for_c_major_the_other_instruments_read_these_keys(name, key):
    assert INSTRUMENTS[name].written(parse_key("C")) == parse_key(key)


def test_a_guitar_is_written_an_octave_higher_than_it_sounds():
    # Common practice, no source; music21's Guitar has no transposition.
    assert INSTRUMENTS["guitar"].semitones == 12


# Computed: sounding chords, the instrument, what it reads.
READ = [
    ("Eb", "| Eb |", "trumpet", "F"), ("Eb", "| Eb |", "alto sax", "C"), ("Eb", "| Eb |", "horn", "Bb"),
    ("E", "| E |", "trumpet", "F#"), ("E", "| E |", "alto sax", "Db"), ("E", "| E |", "horn", "B"),
    ("Bb", "| Cm7 | F7 | Bbmaj7 |", "trumpet", "Dm7 G7 Cmaj7"),
    ("Bb", "| Cm7 | F7 | Bbmaj7 |", "alto sax", "Am7 D7 Gmaj7"),
    ("Bb", "| Cm7 | F7 | Bbmaj7 |", "horn", "Gm7 C7 Fmaj7"), ("Bb", "| Cm7/Eb |", "guitar", "Cm7/Eb"),
]  # fmt: skip


def tune(text, key):
    return resolve(read_chart(text), parse_key(key))


def symbols(progression):
    from nearhand.notation.chord_symbols import write_chord

    return " ".join(write_chord(chord, PLAIN) for chord in progression.chords())


@pytest.mark.parametrize(("key", "chords", "name", "read"), READ)
def test_a_part_is_spelled_in_its_own_key(key, chords, name, read):
    assert symbols(part_of(tune(chords, key), INSTRUMENTS[name]).written) == read


# Fret for a sounding key and the shapes, as far as the seventh: arithmetic, target minus shape.
FRETS = {
    "C": {"C": 0, "G": 5, "A": 3}, "Db": {"C": 1, "G": 6, "A": 4}, "D": {"C": 2, "G": 7, "D": 0, "A": 5},
    "Eb": {"C": 3, "D": 1, "A": 6}, "E": {"C": 4, "D": 2, "A": 7, "E": 0}, "F": {"C": 5, "D": 3, "E": 1},
    "F#": {"C": 6, "D": 4, "E": 2}, "G": {"C": 7, "G": 0, "D": 5, "E": 3}, "Ab": {"G": 1, "D": 6, "E": 4},
    "A": {"G": 2, "D": 7, "A": 0, "E": 5}, "Bb": {"G": 3, "A": 1, "E": 6}, "B": {"G": 4, "A": 2, "E": 7},
}  # fmt: skip


@pytest.mark.parametrize("key", FRETS)
def test_the_frets_of_every_major_key(key):
    found = capos(tune("| I |", key))

    assert {str(capo.shapes.tonic): capo.fret for capo in found} == FRETS[key]
    assert all(capo.fret <= HIGHEST_FRET for capo in found)


def test_a_song_in_e_flat_is_played_as_in_d_or_in_c():
    # Common practice, no source: D G A Bm sounding a half step higher, C F G Am three.
    first, second, *_ = capos(tune("| Eb | Ab | Bb | Cm |", "Eb"))

    assert (first.fret, " ".join(str(chord.root) for chord in first.chords)) == (1, "D G A B")
    assert (second.fret, str(second.shapes)) == (3, "C major")


@given(st.integers(-6, 6).map(PitchClass), st.sampled_from([MAJOR, MINOR]), st.sampled_from(["i iv V", "I vi ii7 V7"]))
def test_the_shapes_sound_in_the_key_and_the_open_ones_are_counted(tonic, mode, numerals):
    progression = resolve(read_chart(f"| {' | '.join(numerals.split())} |"), Key(tonic, mode))
    for capo in capos(progression):
        assert (capo.shapes.tonic.semitones + capo.fret) % 12 == tonic.semitones
        sounding = list(dict.fromkeys(progression.chords()))
        for shape, chord in zip(capo.chords, sounding, strict=True):
            assert (shape.root.semitones + capo.fret) % 12 == chord.root.semitones
            assert shape.quality == chord.quality
        assert capo.open_chords == sum((shape.root, shape.quality) in OPEN_CHORDS for shape in capo.chords)
    counts = [(-capo.open_chords, capo.fret) for capo in capos(progression)]
    assert counts == sorted(counts)
