"""Reading melodies: names, degrees and syllables, their lengths, bars, pickups, meters and the key in front."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import key, signature_keys
from timing import seconds_of

from nearhand.notation.conventions import DEGREES, Conventions
from nearhand.notation.melody_reading import parse_melody, read_melody, resolve_melody
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.mode import MODES
from nearhand.theory.progression import Meter


def told(melody):
    """Bars as text: ``~`` before what is held, grace notes in braces, the ornament behind, beats that are not 1."""
    return " | ".join(" ".join(_note(melody, note) for note in bar.notes) for bar in melody.bars)


def _note(melody, note):
    name = "r" if note.interval is None else str(melody.tonic.up(note.interval))
    graces = "".join(f"{{{melody.tonic.up(grace)}}}" for grace in note.graces)
    ornament = f"({note.ornament})" if note.ornament else ""
    return f"{'~' * note.is_held}{graces}{name}{ornament}{'' if note.beats == 1 else f':{note.beats}'}"


# A melody and its notes. Names with octaves as in scientific pitch notation, middle C is C4; a name without one is the
# nearest to the note before it, a fourth at most, and the first lies in the octave from middle C up; with a mark it is
# the next one above or below (ours).
NAMES = [
    ("E4 F#4 G4", "E4 F#4 G4"), ("C4 E G C E G", "C4 E4 G4 C5 | E5 G5"), ("E4 F# G A", "E4 F#4 G4 A4"),
    ("C4 G C G", "C4 G3 C4 G3"), ("G A B C", "G4 A4 B4 C5"), ("C4 F B E", "C4 F4 B4 E5"), ("C C B C", "C4 C4 B3 C4"),
    ("C4 G4 C", "C4 G4 C5"), ("B", "B4"), ("Cb", "Cb4"), ("Cb4 B# C", "Cb4 B#3 C4"), ("Fb4 E#", "Fb4 E#4"),
    ("E4 r B", "E4 r B3"), ("E4, F#4,G4", "E4 F#4 G4"), ("D♭4 F♯5 E𝄫4 G𝄪4", "Db4 F#5 Ebb4 G##4"),
    ("C0 C0_ G9", "C0 C-1 G9"), ("C4' D_", "C5 D4"), ("C E G C'", "C4 E4 G4 C5"),
    ("C5 B A G F E D C_", "C5 B4 A4 G4 | F4 E4 D4 C4"), ("Do4 Re Mi Fa Sol La Si Do'", "C4 D4 E4 F4 | G4 A4 B4 C5"),
    ("C4 C' C_ C#'", "C4 C5 C4 C#5"), ("C4 G' G_ C_", "C4 G4 G3 C3"),
    ("C4 E'' E__ E''_", "C4 E5 E3 E4"), ("C' C#_", "C5 C#4"), ("C♮4 Bb", "C4 Bb3"),
    ("Do4 Re Mi Fa Sol La Si Do", "C4 D4 E4 F4 | G4 A4 B4 C5"), ("Sib4 Fa#4 Ti So", "Bb4 F#4 B4 G4"),
    ("{F#4}G4 A", "{F#4}G4 A4"), ("{C4 D}E F", "{C4}{D4}E4 F4"), ("{C5}B A", "{C5}B4 A4"),
    ("E4\nF#4\tG4\r\nA4", "E4 F#4 G4 A4"), ("  C4  ", "C4"), ("F B", "F4 B4"), ("B F", "B4 F4"),
]  # fmt: skip

# A key, degrees in it, and their notes. A degree without mark lies in the octave from the tonic up, which sounds
# between G3 and F#4 (ours); degrees of the modes: as in theory.mode; the rest counted by hand.
IN_KEYS = [
    ("G major", "5_ | 1 2 [3 4] 5", "D3 | G3 A3 B3:1/2 C4:1/2 D4"), ("C major", "1 b3 #4 b7", "C4 Eb4 F#4 Bb4"),
    ("F# major", "1 3 7 1'", "F#4 A#4 E#5 F#5"), ("Gb major", "1 4 b7 1_", "Gb4 Cb5 Fb5 Gb3"),
    ("A minor", "1 3 6 7", "A3 C4 F4 G4"), ("A minor", "#6 #7 b6 b7", "F#4 G#4 F4 G4"),
    ("A minor", "b3 #3 ♮7 b2", "Cb4 C#4 G4 Bb3"), ("A minor", "bb7 ##7", "Gb4 G##4"),
    ("C major", "bb7 ##1", "Bbb4 C##4"), ("D dorian", "1 3 6 7 b6", "D4 F4 B4 C5 | Bb4"),
    ("E phrygian", "1 2 3 #7", "E4 F4 G4 D#5"), ("F lydian", "1 4 b4", "F4 B4 Bb4"), ("G mixolydian", "7 #7", "F4 F#4"),
    ("B locrian", "2 5 #5", "C4 F4 F#4"), ("A aeolian", "7 b7 #7", "G4 Gb4 G#4"), ("C ionian", "7 b7", "B4 Bb4"),
    ("Bb major", "1'' 1__ 2' 7_", "Bb5 Bb1 C5 A3"), ("Bb major", "1’ 1′ 1'_", "Bb4 Bb4 Bb3"),
    ("C major", "5 0 r R", "G4 r:3"), ("C major", "{7_}1 {2 3}4", "{B3}C4 {D4}{E4}F4"),
    ("D major", "do re mi fa sol la ti do'", "D4 E4 F#4 G4 | A4 B4 C#5 D5"), ("D major", "so sol, so_", "A4 A4 A3"),
    ("C minor", "do re me fa sol le te ti", "C4 D4 Eb4 F4 | G4 Ab4 Bb4 B4"),
    ("C major", "di ri fi si li ra me se le te", "C#4 D#4 F#4 G#4 | A#4 Db4 Eb4 Gb4 | Ab4 Bb4"),
    ("C major", "ti# fab do''", "B#4 Fb4 C6"), ("G major", "1 F# 5", "G3 F#3 D4"),
    ("G major", "Do 1 do Re", "C4 G3 G3 D3"),
]  # fmt: skip

AGAINST_MAJOR = [
    ("A minor", "1 b3 6 b7", "A3 C4 F#4 G4"), ("A minor", "#4 7 1'", "D#4 G#4 A4"), ("D dorian", "b3 6 b7", "F4 B4 C5"),
    ("E phrygian", "b2 b6", "F4 C5"), ("F lydian", "4 #4", "Bb4 B4"),
]  # fmt: skip
FROM_THE_RELATIVE_MAJOR = [
    ("A minor", "6 1' 3' #5'", "A4 C5 E5 G#5"), ("A minor", "1 6_ 5", "C4 A3 G4"),
    ("D dorian", "2 4 6 1'", "D4 F4 A4 C5"), ("A minor", "la_ do mi si", "A3 C4 E4 G#4"),
    ("G major", "1 5 5_", "G3 D4 D3"), ("D minor", "la_ ti_ do", "D4 E4 F4"),
]  # fmt: skip

# A melody in C major and its notes with their lengths; all of it ours.
LENGTHS = [
    ("1 - 2 - - -", "C4:2 D4:2 | ~D4:2"), ("1:2 2:3 3", "C4:2 D4:2 | ~D4 E4"),
    ("1:1/2 2:3/2 3:1.5 4:.5", "C4:1/2 D4:3/2 E4:3/2 F4:1/2"), ("[1 2] [3 4 5]", "C4:1/2 D4:1/2 E4:1/3 F4:1/3 G4:1/3"),
    ("[1:3 2] [3 4:2]", "C4:3/4 D4:1/4 E4:1/3 F4:2/3"), ("[1 2 3]:2", "C4:2/3 D4:2/3 E4:2/3"),
    ("[1 [2 3]]", "C4:1/2 D4:1/4 E4:1/4"), ("[1 [2 3]:2]", "C4:1/3 D4:1/3 E4:1/3"),
    ("[[1 2 3] 4]:3", "C4:1/2 D4:1/2 E4:1/2 F4:3/2"), ("[1]", "C4"), ("[1 -] 2", "C4 D4"), ("1 [- 2]", "C4:3/2 D4:1/2"),
    ("1 [- - 2] 3", "C4:5/3 D4:1/3 E4"), ("1 -:2 2", "C4:3 D4"), ("1 – — 2", "C4:3 D4"), ("r - 1 r", "r:2 C4 r"),
    ("[1 r] [r 2] r", "C4:1/2 r D4:1/2 r"), ("[r 1]", "r:1/2 C4:1/2"), ("[1:1/2 2:1/2]", "C4:1/2 D4:1/2"),
    ("[1 2],[3 4]", "C4:1/2 D4:1/2 E4:1/2 F4:1/2"), ("[1 2][3 4]", "C4:1/2 D4:1/2 E4:1/2 F4:1/2"),
    ("1-2-", "C4:2 D4:2"), ("1(tr)-", "C4(tr):2"),
    ("{7_}1(mordent):3/2 2(turn):1/2", "{B3}C4(mordent):3/2 D4(turn):1/2"), ("{ 7_ , 1 } 2", "{B3}{C4}D4"),
    ("1(inverted-mordent)-2(inverted-turn):2", "C4(inverted-mordent):2 D4(inverted-turn):2"),
    ("5(tr)5", "G4(tr) G4"), ("1:0.25 2:3.75", "C4:1/4 D4:15/4"), ("1:002 2", "C4:2 D4"),
]  # fmt: skip

# A melody in C major in bars: between its lines, or by its meter where it has none. A short first bar is a pickup.
BARS = [
    ("| 1 2 3 4 | 5 - - - |", "C4 D4 E4 F4 | G4:4"), ("1 2 3 4 5", "C4 D4 E4 F4 | G4"),
    ("1:4 - - 2 3", "C4:4 | ~C4:2 D4 E4"), ("5_ | 1 2 3 4", "G3 | C4 D4 E4 F4"),
    ("5_ | - 2 3 4 | 1", "G3 | ~G3 D4 E4 F4 | C4"), ("| 1 2 |", "C4 D4"),
    ("| 1 2 3 4 || 5 - - - |]", "C4 D4 E4 F4 | G4:4"), ("|: 1 2 3 4 :|", "C4 D4 E4 F4"), ("1:4 :| 2:4", "C4:4 | D4:4"),
    ("1:4 | | 2:4", "C4:4 | D4:4"), ("|\n1:4\n|\n2:4", "C4:4 | D4:4"), ("1:4|2:4", "C4:4 | D4:4"),
    ("1:9", "C4:4 | ~C4:4 | ~C4"), ("[3/4] 1 2 3 4", "C4 D4 E4 | F4"),
    ("| 1:4 | [3/4] 1:3 | 2:3 |", "C4:4 | C4:3 | D4:3"), ("[6/8] [1 2 3]:3 4:3", "C4 D4 E4 F4:3"),
    ("5_ | [3/4] 1:3", "G3 | C4:3"), ("1 2 3 4 [2/4] 5 6 7", "C4 D4 E4 F4 | G4 A4 | B4"),
    ("[ 3/4 ] 1 2 3 | 4", "C4 D4 E4 | F4"), ("[7/8] 1:7 | 2:7 | 3:2", "C4:7 | D4:7 | E4:2"),
    ("1 2 3 4 [3/4]", "C4 D4 E4 F4"), ("r - - 5_ | 1:4", "r:3 G3 | C4:4"), ("[r 5_] | 1:4", "r:1/2 G3:1/2 | C4:4"),
    ("1:4 r:4 - -", "C4:4 | r:4 | r:2"), ("[1 2 3]:8", "C4:8/3 D4:4/3 | ~D4:4/3 E4:8/3"),
]  # fmt: skip

# A key in front ends with a colon: a blank, a bar line or a bracket follows it (ours, as in charts).
IN_FRONT = [
    ("G: 1 2", "G major", "G3 A3"), ("E minor: 1 3", "E minor", "E4 G4"), ("bb: 1 3", "Bb minor", "Bb3 Db4"),
    ("C:\n1 2", "C major", "C4 D4"), ("G:| 1:4 |", "G major", "G3:4"), ("D dorian:[3/4] 1 3 6", "D dorian", "D4 F4 B4"),
    ("A minor : 1 3", "A minor", "A3 C4"), ("  F: 1:2 3:2", "F major", "F4:2 A4:2"), ("C:{7_}1", "C major", "{B3}C4"),
    ("F#m: 1 [3 5]:2", "F# minor", "F#4 A4 C#5"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected"), NAMES)
def test_names_of_notes_are_read_with_their_octaves(text, expected):
    melody = parse_melody(text)

    assert told(melody) == expected
    assert read_melody(text).keyless is None


@pytest.mark.parametrize(("name", "text", "expected"), IN_KEYS)
def test_degrees_and_syllables_are_read_in_a_key(name, text, expected):
    assert told(parse_melody(f"{name}: {text}")) == expected


@pytest.mark.parametrize(("name", "text", "expected"), AGAINST_MAJOR)
def test_degrees_may_be_counted_against_the_major_scale_of_the_tonic(name, text, expected):
    assert told(parse_melody(f"{name}: {text}", conventions=Conventions(degrees="major"))) == expected


@pytest.mark.parametrize(("name", "text", "expected"), FROM_THE_RELATIVE_MAJOR)
def test_degrees_and_syllables_may_be_those_of_the_relative_major(name, text, expected):
    assert told(parse_melody(f"{name}: {text}", conventions=Conventions(degrees="relative"))) == expected


@pytest.mark.parametrize(("text", "expected"), LENGTHS)
def test_notes_last_a_beat_are_held_and_share_beats(text, expected):
    assert told(parse_melody(text, key("C"))) == expected


@pytest.mark.parametrize(("text", "expected"), BARS)
def test_bars_lie_between_lines_or_are_filled_by_the_meter(text, expected):
    assert told(parse_melody(text, key("C"))) == expected


@pytest.mark.parametrize(("text", "name", "expected"), IN_FRONT)
def test_a_key_in_front_is_read_and_goes_before_any_other(text, name, expected):
    melody = parse_melody(text, key("Eb"))

    assert str(read_melody(text).key) == name
    assert told(melody) == expected


@pytest.mark.parametrize("text", ["G4:2 A4", "G:2 A", "C4 D4 :| E4", "C:1 2", "[1 2]:2 3", "1:2", "5:| 1", "C4:| D4"])
def test_other_colons_are_lengths_and_repeats(text):
    assert read_melody(text).key is None


def test_a_name_with_an_octave_tells_where_the_melody_sounds():
    assert parse_melody("E F#4 G").has_octaves
    assert not parse_melody("E F# G").has_octaves
    assert not parse_melody("1 2 3", key("C")).has_octaves


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("E4 5 G4", "5"),
        ("C: b7 1", "b7"),
        ("E4 do", "do"),
        ("{7_}C4", "7_"),
        ("Do Re", None),
        ("r 0 R", None),
        ("x", None),
    ],
)
def test_the_first_note_that_needs_a_key_is_known(text, first):
    found = read_melody(text).keyless

    assert (found and found.text) == first
    assert found is None or text[found.start :].startswith(found.text)


def test_bars_take_the_meters_of_chords_in_turn_and_then_the_last_one():
    meters = [Meter(3, 4), Meter(2, 4)]
    for text in ("1 2 3 4 5 6 7 1' 2'", "| 1 2 3 | 4 5 | 6 7 1' 2' |"):
        melody = resolve_melody(read_melody(text), key("C"), meters, Meter(4, 4))

        assert [bar.meter for bar in melody.bars] == [*meters, Meter(4, 4)]
        assert told(melody) == "C4 D4 E4 | F4 G4 | A4 B4 C5 D5"


def test_a_pickup_takes_the_meter_of_the_bar_behind_it_and_is_none_of_the_bars_of_the_chords():
    melody = resolve_melody(read_melody("5_ | 1 2 3 | 4 5"), key("C"), [Meter(3, 4), Meter(2, 4)])

    assert [bar.meter for bar in melody.bars] == [Meter(3, 4), Meter(3, 4), Meter(2, 4)]


def test_a_hold_at_the_beginning_holds_on_what_sounds_before():
    sounds = parse_melody("5", key("C")).notes[0].interval
    melody = resolve_melody(read_melody("- 2 | 3:4"), key("C"), held=sounds)

    assert told(melody) == "~G4 D4 | E4:4"


texts = st.lists(
    st.sampled_from(["1", "b3", "#4'", "7_", "r", "-", "[1 2]", "[3:2 -]", "[5 [6 7]]:2", "2:3/2", "{1}2", "5(tr)"]),
    min_size=1,
    max_size=20,
).map(lambda words: " ".join(["1", *words]))  # fmt: skip
meters = st.builds(Meter, st.integers(1, 9), st.sampled_from([2, 4, 8]))


@given(texts, meters)
@example("1:1000", Meter(1, 4))
def test_all_bars_but_the_last_are_full_where_no_line_is_written(text, meter):
    bars = resolve_melody(read_melody(text), key("C"), meter=meter).bars

    assert all(bar.beats == meter.beats for bar in bars[:-1])
    assert 0 < bars[-1].beats <= meter.beats
    assert sum(bar.beats for bar in bars) == sum(sign.beats for sign in read_melody(text).signs)


@given(texts, meters, meters)
def test_the_same_notes_sound_as_long_in_any_meter(text, one, other):
    first, second = (resolve_melody(read_melody(text), key("C"), meter=meter) for meter in (one, other))
    heard = [[(note.pitch, note.onset, note.beats) for note in each.sounding()] for each in (first, second)]

    assert heard[0] == heard[1]


all_modes = st.builds(Key, st.integers(-6, 6).map(key("C").tonic.up), st.sampled_from(list(MODES.values())))


@given(texts, all_modes, all_modes, st.sampled_from(DEGREES))
def test_degrees_are_read_alike_in_every_key_of_a_mode(text, one, other, degrees):
    conventions = Conventions(degrees)
    first = parse_melody(text, one, conventions)
    second = parse_melody(text, Key(other.tonic, one.mode), conventions)

    assert first.bars == second.bars


@settings(max_examples=50)
@given(texts, signature_keys)
def test_commas_line_ends_and_blanks_only_part(text, where):
    parted = text.replace(" ", " ,\n ")

    assert parse_melody(parted, where) == parse_melody(text, where)


def test_reading_takes_as_long_again_for_twice_the_notes():
    row = "C: | 1 2 [3 4] 5:1/2 6:1/2 | b7 - {6}5(tr) r |\n"
    short, long = (row + row[3:] * count for count in (200, 400))
    parse_melody(short)

    assert seconds_of(lambda: parse_melody(long)) < 6 * seconds_of(lambda: parse_melody(short)) + 0.01
    assert isinstance(parse_melody(long), Melody)
