"""Chords moved from key to key, in the spelling the new key needs."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import chords, key, note, signature_keys

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.chord import relative_to

# From, to, chords, expected: every chord moves by the same interval, letter and accidental. Computed two
# ways that agreed, arithmetic on the line of fifths and music21 10.5.1.
VECTORS = [
    ("C", "Db", "C F#dim7 G7 C/E", "Db Gdim7 Ab7 Db/F"),
    ("C", "B", "C F#dim7 G7 C/E", "B E#dim7 F#7 B/D#"),
    ("C", "Gb", "C F#dim7 G7 C/E", "Gb Cdim7 Db7 Gb/Bb"),
    ("C", "F#", "C F#dim7 G7 C/E", "F# B#dim7 C#7 F#/A#"),
    ("a", "f", "Am Dm/F E7 G#dim7", "Fm Bbm/Db C7 Edim7"),
    ("a", "c#", "Am Dm/F E7 G#dim7", "C#m F#m/A G#7 B#dim7"),
    ("a", "g#", "Am Dm/F E7 G#dim7", "G#m C#m/E D#7 F##dim7"),
    ("Eb", "A", "Eb Cm7 Fm7 Bb7", "A F#m7 Bm7 E7"),
    ("G", "Ab", "G Em7 Am7 D7/F#", "Ab Fm7 Bbm7 Eb7/G"),
    ("D", "Eb", "D D/F# G A7", "Eb Eb/G Ab Bb7"),
    ("E", "F", "E A B7 C#m", "F Bb C7 Dm"),
    ("C", "Eb", "C E7/G# Am Ab7", "Eb G7/B Cm Cb7"),
    ("e", "c", "Em Bm/D Am/C B7", "Cm Gm/Bb Fm/Ab G7"),
]

# Tonic to move to from C, and the tone that must come out right: the third of the dominant in minor is a
# double sharp where the signature is sharp enough. Computed.
LEADING_TONES = [("g#", "F##"), ("d#", "C##"), ("a#", "G##"), ("c#", "B#"), ("eb", "D"), ("ab", "G")]


@pytest.mark.parametrize(("start", "end", "symbols", "expected"), VECTORS)
def test_a_chart_moves_to_another_key_and_back(start, end, symbols, expected):
    there = resolve(read_chart(symbols), key(start)).in_key(key(end))
    back = resolve(read_chart(expected), key(end)).in_key(key(start))

    assert " ".join(write_chord(chord, PLAIN) for chord in there.chords()) == expected
    assert " ".join(write_chord(chord, PLAIN) for chord in back.chords()) == symbols


@pytest.mark.parametrize(("home", "tone"), LEADING_TONES)
def test_the_dominant_of_a_minor_key_has_its_raised_seventh_spelled(home, tone):
    (dominant,) = resolve(read_chart("G7"), key("c")).in_key(key(home)).chords()

    assert dominant.tones[1] == note(tone)


@given(chords, signature_keys, signature_keys)
def test_a_chord_keeps_its_intervals_in_every_key(chord, start, end):
    moved = relative_to(chord, start).in_key(end)
    fifths = end.tonic.fifths - start.tonic.fifths

    assert moved.quality == chord.quality
    assert moved.root == chord.root.up(fifths)
    assert moved.bass == chord.bass.up(fifths)
    assert parse_chord(write_chord(chord)) == chord
