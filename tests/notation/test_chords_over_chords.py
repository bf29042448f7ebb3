"""A chord over a chord: read, written, refused, and its notes."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from mingus.core import chords as mingus_chords
from strategies import base_qualities, chords, common_pitch_classes, conventions, key, modes, names, qualities

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.errors import InputError
from nearhand.notation.numbers import parse_number, write_number
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.mode import MAJOR
from nearhand.theory.quality import stacked

# Symbol, its tones from the lower root up, its bass, and how it is written. Both chords whole, one over the
# other: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Polychords"; spelling computed. The signs
# on one line are ours: two slashes, or one before a chord that is more than a note.
OVER = [
    ("D//C", "C E G D F# A", "C", "D//C"),
    ("D//C7", "C E G Bb D F# A", "C", "D//C7"),
    ("D/C7", "C E G Bb D F# A", "C", "D//C7"),
    ("E//A", "A C# E G# B", "A", "E//A"),
    ("Em/Am7", "A C E G B", "A", "Em//Am7"),
    ("F#//C", "C E G F# A# C#", "C", "F#//C"),
    ("Ab/C7", "C E G Bb Ab Eb", "C", "Ab//C7"),
    ("D//C/E", "C E G D F# A", "E", "D//C/E"),
    ("D/C7/Bb", "C E G Bb D F# A", "Bb", "D//C7/Bb"),
    ("Gm7//C6/9", "C E G A D Bb F", "C", "Gm7//C6/9"),
    ("Gm7/C6/9/E", "C E G A D Bb F", "E", "Gm7//C6/9/E"),
    ("C6/9//D", "D F# A C E G", "D", "C6/9//D"),
    ("Bb5/C5", "C G Bb F", "C", "Bb5//C5"),
    ("B♭//F♯m", "F# A C# Bb D F", "F#", "Bb//F#m"),
    ("C//Cm", "C Eb G E", "C", "C//Cm"),
    ("Dsus4//C+", "C E G# D G A", "C", "Dsus4//Caug"),
]

# Text, the first line of the refusal, the column of its caret. The sentences are ours.
REFUSED = [
    ("D//C//E", "only two chords can stand over each other", 3),
    ("D//C7//E//F", "only two chords can stand over each other", 3),
    ("D/C7//E", "only two chords can stand over each other", 2),
    ("D/C7/E7", "only two chords can stand over each other", 2),
    ("D//", "a chord root is missing", 3),
    ("//C", "/ is no chord root", 0),
    ("D///C", "/ is no chord root", 3),
    ("D//H", "H is no chord root", 3),
    ("D//c", "c is no chord root", 3),
    ("D//C7x", "'x' is no part of a chord", 5),
    ("D//C(b9", "a bracket is not closed", 4),
    ("D/F#//C7", "nothing may follow the bass note", 4),
    ("D/c7", "nothing may follow the bass note", 3),
    ("D/C7x", "nothing may follow the bass note", 4),
    ("Dx//C", "'x' is no part of a chord", 1),
]
REFUSED_NUMBERS = [
    ("1//2//3", "only two chords can stand over each other", 4),
    ("2//", "a scale degree is missing", 3),
    ("//1", "a scale degree is missing", 0),
    ("2//8", "8 is no scale degree", 3),
    ("8//1", "8 is no scale degree", 0),
    ("2//1x", "'x' is no part of a chord", 4),
]
pairs = st.builds(
    lambda lower, root, upper: lower._replace(quality=stacked(lower.quality, root.fifths - lower.root.fifths, upper)),
    chords,
    common_pitch_classes,
    qualities,
)
"""Chords over chords, the lower one over any bass."""
relative_pairs = st.builds(
    lambda root, lower, bass, interval, upper: RelativeChord(root, stacked(lower, interval, upper), bass),
    st.integers(-8, 8),
    base_qualities,
    st.integers(-8, 8),
    st.integers(-6, 6),
    base_qualities,
)


@pytest.mark.parametrize(("symbol", "tones", "bass", "written"), OVER)
def test_a_chord_over_a_chord_is_read_and_written(symbol, tones, bass, written):
    chord = parse_chord(symbol)

    assert sorted(names(chord.tones).split()) == sorted(tones.split())
    assert chord.root == parse_chord(written.partition("//")[2]).root
    assert str(chord.bass) == bass
    assert write_chord(chord, PLAIN) == written


@pytest.mark.parametrize(("text", "sentence", "column"), REFUSED)
def test_what_is_no_chord_over_a_chord_is_refused_at_its_place(text, sentence, column):
    with pytest.raises(InputError) as caught:
        parse_chord(text)

    assert (caught.value.what, caught.value.start) == (sentence, column)


@pytest.mark.parametrize(("text", "sentence", "column"), REFUSED_NUMBERS)
def test_numbers_over_numbers_are_refused_at_their_place(text, sentence, column):
    with pytest.raises(InputError) as caught:
        parse_number(text, MAJOR)

    assert (caught.value.what, caught.value.start) == (sentence, column)


@pytest.mark.parametrize("text", ["2/#4//17", "1/3//2-", "57/7//1"])
def test_the_upper_chord_takes_no_bass_of_its_own(text):
    # the lowest note is that of the lower chord; what is not kept must not be accepted
    with pytest.raises(InputError):
        parse_number(text, MAJOR)


@settings(max_examples=400)
@given(pairs, conventions)
def test_a_chord_over_a_chord_reads_back_in_every_style(chord, choice):
    assert parse_chord(write_chord(chord, choice)) == chord


@settings(max_examples=300)
@given(relative_pairs, modes, conventions)
def test_numbers_over_numbers_read_back_in_every_mode(chord, mode, choice):
    assert parse_number(write_number(chord, mode, choice), mode, choice) == chord


@given(pairs)
def test_its_notes_are_those_of_both_chords(chord):
    lower, interval, upper = chord.quality.layers
    below = Chord(chord.root, lower, chord.root).tones
    root = chord.root.up(interval)

    above = set(Chord(root, upper, root).tones)

    assert set(chord.tones) == {*below, *above}
    assert len(chord.tones) == len(below) + len(above - set(below))


TAILS = ["", "m", "7", "m7", "M7", "dim", "m7b5"]


@pytest.mark.parametrize("upper", TAILS)
@pytest.mark.parametrize("lower", TAILS)
def test_its_notes_are_those_that_mingus_gives(upper, lower):
    # mingus 0.6.1 writes a chord over a chord with a vertical stroke
    for above, below in (("D", "C"), ("Eb", "F"), ("F#", "C"), ("A", "Ab"), ("B", "G")):
        theirs = mingus_chords.from_shorthand(f"{above}{upper}|{below}{lower}")

        assert {str(tone) for tone in parse_chord(f"{above}{upper}//{below}{lower}").tones} == set(theirs)


def test_it_moves_with_its_chart():
    tune = resolve(read_chart("| D//C7 | 2//17 | C |"), key("C"))
    first, second, _ = tune.in_key(key("Eb")).chords()

    assert first == second == parse_chord("F//Eb7")
    assert write_number(tune.relative_chords[0], MAJOR) == "2//17"
