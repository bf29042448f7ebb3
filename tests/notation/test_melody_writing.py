"""Writing melodies: what is written is read back as the same, in degrees, in syllables and in names of notes."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from melody_strategies import LENGTHS, bars_of_notes, melodies_in, notes_above_a_tonic
from strategies import key, signature_keys

from nearhand.notation.conventions import DEGREES, PLAIN, SING, Conventions
from nearhand.notation.melody_degrees import interval_of, read_degree, read_syllable, write_degree
from nearhand.notation.melody_reading import parse_melody, read_melody, resolve_melody
from nearhand.notation.melody_writing import (
    groups_of,
    stored,
    write_as_degrees,
    write_as_notes,
    write_bar,
    write_melody,
)
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import MelodyBar, MelodyNote
from nearhand.theory.mode import MAJOR, MODES
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Meter

keys_of_all_modes = st.builds(
    lambda start, mode: Key(start.tonic, mode), signature_keys, st.sampled_from(list(MODES.values()))
)
ways_of_writing = st.builds(
    lambda degrees, sing, plain: Conventions(degrees, plain, sing=sing),
    st.sampled_from(DEGREES),
    st.sampled_from(SING),
    st.booleans(),
)

# A melody, and how it is written in degrees: lengths in whole beats where they are, else in the beats they share.
# Ours: what is the same is written in one way.
WRITTEN = [
    ("1 2 3 4", "| 1 2 3 4 |"), ("1:2 2:2", "| 1 - 2 - |"), ("1:3/2 2:1/2 3:2", "| 1 [- 2] 3 - |"),
    ("[1:1 2:1] r r:2", "| [1 2] r r r |"), ("[1 2]:1 [3 4]", "| [1 2] [3 4] |"), ("5_ | 1 2 3 4", "5_ | 1 2 3 4 |"),
    ("1:2/3 2:2/3 3:2/3", "| [1 2 3]:2 |"), ("[1 2 3]:4", "| [1 2 3]:4 |"),
    ("[1 2 3 4 5 6]:4", "| [1 2 3]:2 [4 5 6]:2 |"), ("1:9", "| 1 - - - | - - - - | - |"),
    ("[3/4] 1:3 | [2/4] 2:2", "| [3/4] 1 - - | [2/4] 2 - |"), ("[6/8] 1:3 [2 3]:3", "| [6/8] 1 - - [2 3]:3 |"),
    ("{7_}1(tr) {1 2}3", "| {7_}1(tr) {1 2}3 |"), ("1:1/2", "| 1:1/2 |"), ("1:1/3 2:1/6 3:1/2", "| [1 - 2 3 - -] |"),
    ("[r 1] 2 3 4", "| [r 1] 2 3 4 |"), ("1:5/4 2:3/4", "| 1 [- 2 - -] |"),
    ("1:4 | 2:4 | 3:4 | 4:4 | 5:4", "| 1 - - - | 2 - - - | 3 - - - | 4 - - - |\n| 5 - - - |"),
    ("1 | 1:4 | 2:4 | 3:4 | 4:4 | 5:4", "1 | 1 - - - | 2 - - - | 3 - - - | 4 - - - |\n| 5 - - - |"),
    ("1:1/29 2:28/29 3 4 5", "| 1:1/29 2:28/29 3 4 5 |"), ("1:3 - | - 2 r:2", "| 1 - - - | - 2 r r |"),
]  # fmt: skip

# A pitch and how it is written: one digit for its octave; what lies below octave 0 has a mark as well (ours).
PITCHES = [("Bb3", "Bb3"), ("C0", "C0"), ("C-1", "C0_"), ("G9", "G9"), ("B#-2", "B#0__"), ("F##4", "F##4")]


@pytest.mark.parametrize(("text", "expected"), WRITTEN)
def test_a_melody_is_written_in_beats_and_bars(text, expected):
    assert write_melody(parse_melody(text, key("C")), write_as_degrees(MAJOR, PLAIN)) == expected


@pytest.mark.parametrize(("text", "expected"), WRITTEN)
def test_what_is_written_is_read_back(text, expected):
    assert parse_melody(expected, key("C")) == parse_melody(text, key("C"))


@pytest.mark.parametrize(("name", "expected"), PITCHES)
def test_a_pitch_is_written_with_the_octave_in_one_digit(name, expected):
    letter = name.rstrip("-0123456789")
    pitch = Pitch(key(letter).tonic, int(name[len(letter) :]))

    assert write_as_notes(pitch, PLAIN)(Interval(0, 0)) == expected


@settings(max_examples=100)
@given(melodies_in(keys_of_all_modes), ways_of_writing)
def test_degrees_and_syllables_of_any_convention_are_read_back_as_the_same_bars(start, conventions):
    where, melody = start
    text = write_melody(melody, write_as_degrees(where.mode, conventions))
    read = resolve_melody(read_melody(text), where, conventions=conventions)

    assert read.bars == melody.bars
    assert read.tonic == melody.tonic
    assert write_melody(read, write_as_degrees(where.mode, conventions)) == text


@settings(max_examples=100)
@given(melodies_in(keys_of_all_modes), st.booleans())
def test_names_are_read_back_as_the_same_bars(start, plain):
    where, melody = start
    text = write_melody(melody, write_as_notes(melody.tonic, Conventions(plain=plain)))

    assert parse_melody(text, where)._replace(has_octaves=True) == melody


plain_keys = st.sampled_from([key(name) for name in ("C", "G", "F", "D", "Bb", "a", "e", "d", "b", "g")])


@settings(max_examples=60)
@given(melodies_in(plain_keys), plain_keys)
def test_what_is_stored_says_the_same_in_any_key_it_is_read_in(start, other):
    where, melody = start
    text = stored(melody)

    assert text.isascii()
    assert parse_melody(text, where).bars == melody.bars
    assert parse_melody(text, other).pitches() == melody.pitches()


@settings(max_examples=60)
@given(melodies_in(signature_keys, meters=[Meter(3, 4)]))
def test_meters_that_the_chords_tell_are_left_out(start):
    where, melody = start
    text = stored(melody, is_alone=False)
    meters = [bar.meter for bar in melody.bars[melody.has_pickup :]]

    assert "/4]" not in text
    assert resolve_melody(read_melody(text), where, meters).bars == melody.bars


@settings(max_examples=60)
@given(melodies_in(keys_of_all_modes), signature_keys, ways_of_writing)
def test_degrees_do_not_change_when_a_melody_moves(start, new, conventions):
    where, melody = start
    moved = melody.in_key(Key(new.tonic, where.mode))

    assert write_melody(moved, write_as_degrees(where.mode, conventions)) == write_melody(
        melody, write_as_degrees(where.mode, conventions)
    )


@settings(max_examples=60)
@given(melodies_in(keys_of_all_modes), ways_of_writing)
def test_every_row_of_a_melody_has_the_same_words_at_the_same_places(start, conventions):
    where, melody = start
    for bar in melody.bars:
        rows = [write_bar(bar, write) for write in
                (write_as_degrees(where.mode, conventions), write_as_notes(melody.tonic, conventions))]  # fmt: skip
        shapes = [[word[0] in "[{r-" for word in row.split()] for row in rows]
        assert shapes[0] == shapes[1] or conventions.sing == "syllables"  # re and ra begin with an r
        assert len(rows[0].split()) == len(rows[1].split())


bars = st.sampled_from([Meter(4, 4), Meter(3, 4), Meter(7, 8), Meter(1, 2)]).flatmap(bars_of_notes)


@given(bars)
def test_groups_follow_one_another_and_fill_their_bar(bar):
    groups = groups_of(bar)
    ends = [group.onset + group.beats for group in groups]

    assert [group.onset for group in groups] == [0, *ends[:-1]]
    assert ends[-1] == bar.beats
    assert all(group.beats == int(group.beats) for group in groups[:-1])


plain_lengths = st.sampled_from([length for length in LENGTHS if 24 % length.denominator == 0])


@given(st.lists(plain_lengths, min_size=1, max_size=6))
def test_lengths_that_share_beats_are_written_in_brackets_and_whole_ones_without(lengths):
    missing = -sum(lengths) % 1
    notes = tuple(MelodyNote(Interval(0, 0), each) for each in lengths + [missing] * bool(missing))
    text = write_bar(MelodyBar(notes, Meter(99, 4)), write_as_degrees(MAJOR))

    assert ("[" in text) == any(each.denominator > 1 for each in lengths)
    assert "/" not in text


@given(notes_above_a_tonic, st.sampled_from(list(MODES.values())), ways_of_writing)
def test_every_degree_is_read_back_as_its_interval(interval, mode, conventions):
    text = write_degree(interval, mode, conventions)

    if conventions.sing == "numbers":
        degree, end = read_degree(text, 0)
        assert (interval_of(degree, mode, conventions), end) == (interval, len(text))
    else:
        assert read_syllable(text, 0, mode, conventions) == (interval, len(text))


def test_a_melody_of_grace_notes_and_ornaments_is_written_word_for_word():
    text = "| {C#4 D4}E4(mordent) [{Bb3}C4 - - G4(tr)] r F4(turn) | E4(inverted-mordent) - F4(inverted-turn) - |"

    assert stored(parse_melody(text)) == text


@pytest.mark.parametrize(
    "text",
    [
        "|: 1 2 3 4 :| 5 - - - |", "1 |: 1 2 3 4 | 5 6 7 1' :|: 1 - - - :|", "| 1 2 3 4 || 5 6 7 1' ||",
        "|: 1 2 3 4 | 1 2 3 4 | 1 2 3 4 | 1 2 3 4 :|\n|: 5 - - - :|",
    ],
)  # fmt: skip
def test_repeats_of_a_melody_alone_are_written_as_they_were_read(text):
    melody = parse_melody(text, key("C"))
    write = write_as_degrees(key("C").mode, PLAIN)

    assert write_melody(melody, write) == text
    assert ":" not in write_melody(melody, write, is_alone=False)
    assert [note.pitch for note in melody.in_key(key("D")).sounding()] != [note.pitch for note in melody.sounding()]
