"""What instruments read, how their names are read, and where a capo goes."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import instrument as music21_instrument
from music21 import interval
from music21.pitch import Pitch
from strategies import signature_keys

from nearhand.melody.capo import HIGHEST_FRET, OPEN_CHORDS, capos, lowest_fret
from nearhand.melody.instrument_names import find_instrument, nearest_instruments
from nearhand.melody.instruments import INSTRUMENTS
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.conventions import PLAIN
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import parse_melody
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote, home_tonic
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression
from nearhand.verbs.parts import part_of
from nearhand.verbs.tune import Tune

# Ours, and the class of music21 10.5.1 (module instrument) whose transposition is that of the sounding note.
OF_MUSIC21 = [
    ("clarinet", "Clarinet"), ("bass clarinet", "BassClarinet"), ("trumpet", "Trumpet"),
    ("soprano sax", "SopranoSaxophone"), ("alto sax", "AltoSaxophone"), ("tenor sax", "TenorSaxophone"),
    ("baritone sax", "BaritoneSaxophone"), ("horn", "Horn"), ("English horn", "EnglishHorn"), ("piccolo", "Piccolo"),
    ("bass", "Contrabass"), ("double bass", "Contrabass"), ("banjo", "Banjo"), ("piano", "Piano"), ("flute", "Flute"),
    ("oboe", "Oboe"), ("bassoon", "Bassoon"), ("violin", "Violin"), ("viola", "Viola"), ("cello", "Violoncello"),
    ("trombone", "Trombone"), ("tuba", "Tuba"), ("recorder", "Recorder"), ("harp", "Harp"), ("mandolin", "Mandolin"),
    ("ukulele", "Ukulele"), ("accordion", "Accordion"), ("marimba", "Marimba"), ("vibraphone", "Vibraphone"),
    ("voice", "Vocalist"),
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


# Names, then MusicXML's transpose (diatonic, chromatic, octave-change), which is added to written notes to get sounding
# ones (MusicXML 4.0, element transpose), then the key to write for C major. The rows that music21 has are checked
# above; the others are common practice, no source.
TRANSPOSED = [
    ("B flat clarinet, Bb trumpet, trumpet in Bb, cornet, flugelhorn, soprano sax", -1, -2, 0, "D"),
    ("A clarinet, clarinet in A, oboe d'amore", -2, -3, 0, "Eb"),
    ("E flat clarinet, clarinet in Eb, Eb soprano cornet, cornet in Eb, trumpet in Eb", 2, 3, 0, "A"),
    ("D trumpet, trumpet in D", 1, 2, 0, "Bb"),
    ("alto sax, sax alto, Eb alto horn, E-flat tenor horn, alto clarinet", -5, -9, 0, "A"),
    ("tenor sax, bass clarinet, euphonium treble clef, baritone in treble clef", -1, -2, -1, "D"),
    ("baritone sax, bari sax, Eb tuba in treble clef", -5, -9, -1, "A"),
    ("bass sax, Bb tuba in treble clef", -1, -2, -2, "D"),
    ("horn in F, F horn, French horn, English horn, cor anglais, basset horn", -4, -7, 0, "G"),
    ("alto flute, alto flute in G, G alto flute", -3, -5, 0, "F"),
    ("piccolo, celesta, xylophone, descant recorder", 0, 0, 1, "C"),
    ("glockenspiel", 0, 0, 2, "C"),
    ("piccolo trumpet", 6, 10, 0, "D"), ("A piccolo trumpet", 5, 9, 0, "Eb"),
    ("guitar, bass guitar, double bass, contrabass, banjo, contrabassoon, tenor voice in 8vb clef", 0, 0, -1, "C"),
    ("flute, oboe, bassoon, trombone, tuba, violin, viola, cello, piano, C trumpet", 0, 0, 0, "C"),
]  # fmt: skip
ROWS = [(name.strip(), *row) for names, *row in TRANSPOSED for name in names.split(",")]


@pytest.mark.parametrize(("name", "diatonic", "chromatic", "octaves", "key"), ROWS)
def test_every_instrument_is_transposed_as_musicxml_tells_it(name, diatonic, chromatic, octaves, key):
    instrument = find_instrument(name)
    sounding = -instrument.interval

    assert (sounding.steps, sounding.semitones) == (diatonic + 7 * octaves, chromatic + 12 * octaves)
    assert instrument.written(parse_key("C")) == parse_key(key)


NAMES = [
    ("Bb trumpet", "trumpet"), ("B♭ Trumpets", "trumpet"), ("trumpet in B-flat", "trumpet"), ("TRUMPET", "trumpet"),
    ("saxes, alto", "alto sax"), ("Alto Saxophones", "alto sax"), ("Eb alto sax", "alto sax"),
    ("guitars", "guitar"), ("electric guitar", "guitar"), ("steel string guitar", "guitar"), ("basses", "bass"),
    ("double basses", "double bass"), ("keys", "piano"), ("celli", None), ("cellos", "cello"), ("vibes", "vibraphone"),
    ("oboe d’amore", "oboe d'amore"), ("clarinets in A", "clarinet in A"), ("the horns", "horn"),
    ("flute in C", "flute"), ("horn in Eb", "tenor horn"), ("horn in D", None),
    ("alto", None), ("", None), ("flat", None), ("kazoo", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "name"), NAMES)
def test_names_are_read_as_players_write_them(text, name):
    found = find_instrument(text)

    assert (found and found.name) == name


def test_no_two_instruments_answer_to_one_name():
    for instrument in INSTRUMENTS.values():
        for name in (instrument.name, *instrument.aliases):
            assert find_instrument(name) is find_instrument(name.upper()) is instrument
            longest = max(name.split(), key=len)
            plural = longest if longest.endswith("s") else f"{longest}s"
            assert find_instrument(name.replace(longest, plural)) is instrument
            assert find_instrument(" ".join(reversed(name.split()))) is instrument


NEAREST = [
    ("altosax", ("alto sax",)), ("hron", ("horn",)), ("tubba", ("tuba",)), ("Tennor Sax", ("tenor sax",)),
    ("sax", ("soprano sax", "alto sax", "tenor sax", "baritone sax", "bass sax")),
    ("trumpet in F", ("trumpet", "trumpet in C")), ("flute in G#", ("flute", "alto flute")),
    ("nose flute", ("bass flute",)), ("kazoo", ()), ("", ()), ("in", ()),
]  # fmt: skip


@pytest.mark.parametrize(("text", "nearest"), NEAREST)
def test_a_name_that_is_none_is_answered_with_the_nearest(text, nearest):
    assert nearest_instruments(text)[: len(nearest) or None] == nearest


@given(st.text(max_size=30))
def test_any_text_is_an_instrument_or_none(text):
    found = find_instrument(text)

    assert found is None or found in INSTRUMENTS.values()
    assert all(name in INSTRUMENTS for name in nearest_instruments(text))


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
    assert symbols(part_of(Tune(tune(chords, key)), INSTRUMENTS[name]).written) == read


# The sounding melody, the instrument, the notes it reads: by the intervals of the table above, counted by hand.
MELODIES = [
    ("Eb: Eb4 G4 Bb4 A4", "alto sax", "C5 E5 G5 F#5"), ("Eb: Eb4 G4 Bb4 A4", "tenor sax", "F5 A5 C6 B5"),
    ("Eb: Eb4 G4 Bb4 A4", "trumpet", "F4 A4 C5 B4"), ("Eb: Eb4 G4 Bb4 A4", "horn", "Bb4 D5 F5 E5"),
    ("Eb: Eb4 G4 Bb4 A4", "guitar", "Eb5 G5 Bb5 A5"), ("Eb: Eb4 G4 Bb4 A4", "flute", "Eb4 G4 Bb4 A4"),
    ("Eb: Eb5 G5 Bb5 A5", "piccolo", "Eb4 G4 Bb4 A4"), ("Eb: Eb6 G6 Bb6 A6", "glockenspiel", "Eb4 G4 Bb4 A4"),
    ("E: E4 G#4 B4 D#5", "alto sax", "Db5 F5 Ab5 C6"), ("C# minor: C#4 B#3 C#4 r", "trumpet", "Eb4 D4 Eb4 None"),
    ("B: B2 D#3 F#3 A#3", "baritone sax", "Ab4 C5 Eb5 G5"),
]  # fmt: skip


@pytest.mark.parametrize(("sounding", "name", "read"), MELODIES)
def test_a_melody_is_written_for_the_instrument_in_its_octave(sounding, name, read):
    key = parse_key(sounding.partition(":")[0])
    part = part_of(Tune(Progression(key, ()), melody=parse_melody(sounding)), INSTRUMENTS[name])

    assert " ".join(map(str, part.melody.pitches())) == read
    assert part.melody.bars == parse_melody(sounding).bars  # its numbers are kept


near_intervals = st.builds(
    lambda fifths, octaves: Interval(fifths, octaves - 4 * fifths // 7), st.integers(-6, 6), st.integers(-1, 1)
)
melody_notes = st.builds(MelodyNote, st.none() | near_intervals, st.sampled_from([1, 2]))
bars = st.lists(st.builds(MelodyBar, st.lists(melody_notes, min_size=1, max_size=4).map(tuple)), max_size=3).map(tuple)


@given(signature_keys, bars, st.sampled_from(list(INSTRUMENTS.values())))
def test_what_is_written_sounds_as_the_melody_did(key, bars, instrument):
    sounding = Melody(home_tonic(key), bars)
    read = instrument.written_key(Progression(key, ()), sounding)
    written = instrument.written_melody(sounding, read)
    pairs = [pair for pair in zip(sounding.pitches(), written.pitches(), strict=True) if pair[0] is not None]

    assert all(there.midi - here.midi == instrument.semitones for here, there in pairs)
    assert [note.interval for note in written.notes] == [note.interval for note in sounding.notes]
    straight = key.moved(instrument.fifths)
    if read == straight:
        assert all(there.up(-instrument.interval) == here for here, there in pairs)
    else:
        assert read.tonic.semitones == straight.tonic.semitones
        assert abs(read.signature) <= abs(straight.signature)


def test_a_melody_decides_between_six_sharps_and_six_flats():
    # C sharp minor sounds, a trumpet reads D sharp or E flat minor; only the former needs C double sharp.
    key, trumpet = parse_key("C# minor"), INSTRUMENTS["trumpet"]

    assert str(trumpet.written_key(Progression(key, ()))) == "D# minor"
    assert str(trumpet.written_key(Progression(key, ()), parse_melody("C# minor: 1 #7 1"))) == "Eb minor"


def test_a_note_outside_the_midi_numbers_is_not_written():
    low = parse_melody("C: C0 D0 E0")

    with pytest.raises(ValueError, match="outside the MIDI numbers"):
        INSTRUMENTS["glockenspiel"].written_melody(low, parse_key("C"))


def test_every_way_is_an_interval_of_the_scale_or_an_octave():
    # A wrong octave would show as an interval that no instrument has: each is within three octaves, and its name plain.
    for instrument in INSTRUMENTS.values():
        assert -24 <= instrument.semitones <= 26
        assert instrument.interval.name.split()[0] in ("perfect", "major", "minor")
        assert instrument.interval == Interval(instrument.fifths, (instrument.semitones - 7 * instrument.fifths) // 12)


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
    assert lowest_fret(parse_key(key)) == min(FRETS[key].values())


# The same for A minor, E minor and D minor shapes.
MINOR_FRETS = {
    "A": {"A": 0, "E": 5, "D": 7}, "Bb": {"A": 1, "E": 6}, "B": {"A": 2, "E": 7}, "C": {"A": 3}, "C#": {"A": 4},
    "D": {"A": 5, "D": 0}, "D#": {"A": 6, "D": 1}, "E": {"A": 7, "E": 0, "D": 2}, "F": {"E": 1, "D": 3},
    "F#": {"E": 2, "D": 4}, "G": {"E": 3, "D": 5}, "G#": {"E": 4, "D": 6},
}  # fmt: skip


@pytest.mark.parametrize("key", MINOR_FRETS)
def test_the_frets_of_every_minor_key(key):
    found = capos(tune("| i |", f"{key} minor"))

    assert {str(capo.shapes.tonic): capo.fret for capo in found} == MINOR_FRETS[key]
    assert lowest_fret(parse_key(f"{key} minor")) == min(MINOR_FRETS[key].values())


@pytest.mark.parametrize("key", FRETS)
def test_shapes_of_relative_keys_stand_at_the_same_fret(key):
    """A minor ones where those of C do, E minor ones where those of G do."""
    minor = {str(capo.shapes.tonic): capo.fret for capo in capos(tune("| i |", str(parse_key(key).relative)))}

    assert [minor.get("A"), minor.get("E")] == [FRETS[key].get("C"), FRETS[key].get("G")]


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
