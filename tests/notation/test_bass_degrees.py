"""What a slash means: a bass note, a bass degree, a figure, an applied chord, a ninth."""

from __future__ import annotations

import pytest
from strategies import key, note

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.numbers import parse_number
from nearhand.notation.numerals import parse_numeral

# Key, token, bass. In minor a bare 6 or 7 in the bass follows the chord above it: under v the lowered
# seventh, under V the raised one; an accidental forces it. The rule is ours, after the same rule for roots
# (When in Rome corpus, syntax.md, "cautionary").
BASSES = [
    ("a", "v/7", "G"), ("a", "V/7", "G#"), ("a", "iv/6", "F"), ("a", "IV/6", "F#"), ("a", "i/#7", "G#"),
    ("a", "i/7", "G"), ("a", "i/b7", "G"), ("a", "i/♮7", "G"), ("a", "v/#7", "G#"), ("a", "V/b7", "G"),
    ("a", "i/6", "F"), ("a", "i/#6", "F#"), ("a", "i/b6", "F"), ("a", "IV/b6", "F"), ("a", "iv/#6", "F#"),
    ("a", "vii°/7", "G#"), ("a", "VII/7", "G"), ("a", "III+/7", "G#"), ("a", "ii/6", "F#"),
    ("a", "ii°/6", "F"),
    ("a", "V7/6", "F"), ("a", "i/bb7", "Gb"), ("a", "i/##7", "G##"), ("a", "i/b3", "Cb"), ("a", "i/3", "C"),
    ("a", "5-/7", "G"), ("a", "57/7", "G#"), ("a", "5/7", "G#"), ("a", "4-/6", "F"), ("a", "4/6", "F#"),
    ("a", "1-/#7", "G#"), ("a", "1-/7", "G"), ("a", "57/b7", "G"), ("a", "1-/5", "E"),
    ("C", "v/7", "B"), ("C", "V/7", "B"), ("C", "I/b7", "Bb"), ("C", "IV/5", "G"), ("C", "I/#4", "F#"),
    ("C", "5/7", "B"), ("C", "6-/5", "G"), ("C", "4/5", "G"), ("C", "1/b7", "Bb"), ("C", "1/#4", "F#"),
    ("eb", "v/7", "Db"), ("eb", "V/7", "D"), ("g#", "V/7", "F##"), ("g#", "v/7", "F#"), ("g#", "IV/6", "E#"),
]  # fmt: skip

# Token, chord in C, what the slash means. Applied chords: Open Music Theory (first edition), "Applied
# chords". Bass notes and 6/9: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Slash Chords",
# "Jazz Chord Basics", "The IV/5 Sus Chord". Degrees: number charts (second-hand). Figures: When in Rome
# corpus, syntax.md. V/3 is ambiguous elsewhere; a degree here: ours. Ordinals are the chord's own tones: R. Hutchinson,
# "Roman Numeral Chord Symbols" (I/3rd, V7/5th).
MEANINGS = [
    ("C/E", "C/E", "a bass note"), ("C/F#", "C/F#", "a bass note foreign to the chord"),
    ("V/V", "D", "an applied chord"), ("vii°7/ii", "C#dim7", "an applied chord"),
    ("IV/V", "C", "an applied chord"),
    ("1/3", "C/E", "a bass degree"), ("5/7", "G/B", "a bass degree"), ("6-/5", "Am/G", "a bass degree"),
    ("4/5", "F/G", "a bass degree"), ("IV/5", "F/G", "a bass degree"),
    ("V/3", "G/E", "a bass degree of the key"),
    ("V4/2", "G7/F", "a figure"), ("viio4/3", "Bdim7/F", "a figure"), ("V6/5", "G7/B", "a figure"),
    ("V6/4", "G/D", "a figure"), ("V5/3", "G", "a figure"), ("vii/o7", "Bm7b5", "a mark for half-diminished"),
    ("C6/9", "C6/9", "one chord"), ("C69", "C6/9", "one chord"), ("16/9", "C6/9", "one chord"),
    ("C6/9/G", "C6/9/G", "one chord, and a bass note"), ("16/9/5", "C6/9/G", "one chord, and a bass degree"),
    ("V7/V/6", "D7/A", "an applied chord, and a bass degree"),
    ("V6/5/V", "D7/F#", "a figure, and an applied chord"),
    ("V2", "G7/F", "no slash at all"), ("V7/5/3", "G7", "a figure"), ("V6/4/2", "G7/F", "a figure"),
    ("I/3rd", "C/E", "a tone of the chord"), ("V7/5th", "G7/D", "a tone of the chord"),
    ("V7/7th", "G7/F", "a tone of the chord"), ("I/1st", "C", "a tone of the chord"),
    ("vii°7/7th", "Bdim7/Ab", "a tone of the chord"), ("V9/9th", "G9/A", "a tone of the chord"),
    ("V7/V/3rd", "D7/F#", "an applied chord, and a tone of it"), ("IV/IV", "Bb", "an applied chord"),
    ("D//C7", "D//C7", "a chord over a chord"), ("II//I7", "D//C7", "a chord over a chord"),
]  # fmt: skip


# What a slash means does not hang on the convention for a bare 7: a minor or dominant seventh in each row.
@pytest.mark.parametrize(("token", "symbol", "meaning"), [row for row in MEANINGS if row[0][0] in "IViv"])
def test_a_slash_means_the_same_with_sevenths_of_the_scale(token, symbol, meaning):
    of_scale = PLAIN._replace(sevenths="scale")
    if token not in ("II//I7",):  # a seventh of its own: I7 is Cmaj7 there
        assert parse_numeral(token, key("C").mode, of_scale).in_key(key("C")) == parse_chord(symbol), meaning


@pytest.mark.parametrize(("home", "token", "bass"), BASSES)
def test_a_bass_degree_is_counted_in_the_key_and_follows_its_chord(home, token, bass):
    read = parse_number if token[0].isdigit() else parse_numeral

    assert read(token, key(home).mode).in_key(key(home)).bass == note(bass)


@pytest.mark.parametrize(("token", "symbol", "meaning"), MEANINGS)
def test_a_slash_means_what_stands_around_it(token, symbol, meaning):
    progression = resolve(read_chart(token), key("C"))
    (chord,) = progression.chords()

    assert chord == parse_chord(symbol), meaning
    assert write_chord(chord, PLAIN) == symbol


def test_a_slash_between_blanks_is_a_beat_and_not_a_bass():
    bar = resolve(read_chart("| Eb / Bb / |"), key("Eb")).bars[0]  # common practice, no source

    assert [slot.beats for slot in bar.slots] == [2, 2]
    assert [slot.chord.bass for slot in bar.slots] == [0, 1]


def test_against_major_a_bass_degree_in_minor_needs_its_flat():
    against_major = PLAIN._replace(degrees="major")
    home = key("a")

    for token, bass in (("v/b7", "G"), ("V/7", "G#"), ("iv/b6", "F"), ("i/b3", "C"), ("i/7", "G#")):
        assert parse_numeral(token, home.mode, against_major).in_key(home).bass == note(bass)
