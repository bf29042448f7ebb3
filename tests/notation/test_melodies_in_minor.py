"""Bare sixths and sevenths of a melody in minor, read in the natural, the harmonic and the melodic form."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import scale
from strategies import MINOR_TONICS, key

from nearhand.notation.conventions import DEGREES, MINOR, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.melody_reading import parse_melody
from nearhand.theory.key import Key
from nearhand.theory.mode import MODES

UP, DOWN = "1 2 3 4 5 6 7 1'", "1' 7 6 5 4 3 2 1"
HARMONIC, MELODIC = Conventions(minor="harmonic"), Conventions(minor="melodic")


def spelled(text, where, conventions=MELODIC):
    """The names of the notes without octaves, grace notes before theirs."""
    melody = parse_melody(text, where, conventions)
    intervals = [
        each for note in melody.notes if not note.is_held for each in (*note.graces, note.interval) if each is not None
    ]
    return " ".join(str(melody.tonic.up(interval).pitch_class) for interval in intervals)


def theirs(kind, tonic, direction):
    found = kind(tonic.upper()[0] + tonic[1:].replace("b", "-")).getPitches(direction=direction)
    names = [str(pitch.name).replace("-", "b") for pitch in found]
    return " ".join(names)


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_the_melodic_scale_up_and_down_is_spelled_as_by_music21(tonic):
    up = theirs(scale.MelodicMinorScale, tonic, scale.Direction.ASCENDING)
    down = theirs(scale.MelodicMinorScale, tonic, scale.Direction.DESCENDING)

    assert spelled(UP, key(tonic)) == up
    assert spelled(DOWN, key(tonic)) == down
    assert spelled(f"{UP} 7 6 5", key(tonic)) == f"{up} {' '.join(down.split()[1:4])}"


@pytest.mark.parametrize("tonic", MINOR_TONICS)
def test_the_harmonic_and_the_natural_scale_are_spelled_as_by_music21_both_ways(tonic):
    harmonic = theirs(scale.HarmonicMinorScale, tonic, scale.Direction.ASCENDING)
    natural = theirs(scale.MinorScale, tonic, scale.Direction.ASCENDING)

    assert spelled(UP, key(tonic), HARMONIC) == harmonic
    assert spelled(DOWN, key(tonic), HARMONIC) == " ".join(reversed(harmonic.split()))
    assert spelled(UP, key(tonic), Conventions()) == natural


# Degrees in A minor, the notes they are in the melodic form. Raised where the melody rises and low where it falls:
# Open Music Theory, "Scales"; worked out by hand from that rule and from the one for whole runs, which is ours.
RUNS = [
    ("5 6 7 1'", "E F# G# A"), ("1' 7 6 5", "A G F E"), ("5 6 5", "E F E"), ("1 7_ 1", "A G# A"),
    ("1 7_ 6_ 7_ 1", "A G# F# G# A"), ("5 6 7 6 5", "E F G F E"), ("5 6 7 6 7 1'", "E F# G# F# G# A"),
    ("5 6 7", "E F# G#"), ("1' 7 6", "A G F"), ("5 6 7 7", "E F# G# G#"), ("1' 7 6 6", "A G F F"),
    ("7 6 7", "G# F# G#"), ("7", "G"), ("6 6", "F F"), ("5 6 r 7 r 1'", "E F# G# A"), ("1' 7 - | - 6 5", "A G F E"),
    ("7_ 2 1", "G# B A"), ("5 6 4", "E F D"), ("5 6 7 1", "E F# G# A"), ("7 5 6 7 1'", "G E F# G# A"),
    ("{7_}1 2", "G# A B"), ("1' {7 6}5", "A G F E"), ("5 b6 7 1'", "E F G# A"), ("1' #7 6 5", "A G# F E"),
    ("5 ♮6 ♮7 1'", "E F G A"), ("5 le te do'", "E F G A"), ("E4 F G A", "E F G A"), ("5 6 G#4 1'", "E F# G# A"),
    ("5 [6 7] 1' [7 6] 5", "E F# G# A G F E"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "expected"), RUNS)
def test_the_note_behind_a_run_of_sixths_and_sevenths_decides_and_a_sign_says_its_own(text, expected):
    assert spelled(text, key("a")) == expected


@pytest.mark.parametrize("form", ["harmonic", "melodic"])
@pytest.mark.parametrize("mode", [name for name in MODES if name != "minor"])
def test_other_modes_have_no_forms(mode, form):
    where = Key(key("C").tonic, MODES[mode])

    assert spelled(f"{UP} {DOWN}", where, Conventions(minor=form)) == spelled(f"{UP} {DOWN}", where, Conventions())


@pytest.mark.parametrize("degrees", [name for name in DEGREES if name != "mode"])
@pytest.mark.parametrize("form", MINOR)
def test_degrees_that_are_not_counted_in_the_mode_say_by_themselves_what_they_are(degrees, form):
    assert spelled(UP, key("a"), Conventions(degrees, minor=form)) == spelled(UP, key("a"), Conventions(degrees))


degrees = st.lists(
    st.tuples(st.sampled_from(["", "", "", "b", "#"]), st.sampled_from("1234567"), st.sampled_from(["", "", "'", "_"]))
    .map("".join)
    | st.sampled_from(["r", "-"]),
    max_size=12,
).map(lambda written: " ".join(["1", *written]))  # fmt: skip


@settings(max_examples=150)
@given(degrees, st.sampled_from(["harmonic", "melodic"]))
def test_a_form_raises_bare_sixths_and_sevenths_by_a_semitone_and_nothing_else(text, form):
    natural = parse_melody(text, key("a"))
    read = parse_melody(text, key("a"), Conventions(minor=form))
    places = {before.interval.fifths for before, after in _pairs(natural, read) if before != after}

    assert places <= ({-4, -2} if form == "melodic" else {-2})
    assert all(after.pitch.midi - before.pitch.midi in (0, 1) for before, after in _pairs(natural, read))
    assert all(after.interval.steps == before.interval.steps for before, after in _pairs(natural, read))
    assert [(each.bar, each.onset, each.beats) for each in natural.sounding()] == [
        (each.bar, each.onset, each.beats) for each in read.sounding()
    ]


def _pairs(one, other):
    return list(zip(one.sounding(), other.sounding(), strict=True))


@given(degrees)
def test_every_bare_seventh_is_raised_in_the_harmonic_form(text):
    read = parse_melody(text.replace("b", "").replace("#", ""), key("a"), HARMONIC)

    assert "G" not in [str(each.pitch.pitch_class) for each in read.sounding()]


def test_a_seventh_that_would_be_raised_above_the_highest_midi_number_is_refused_at_its_place():
    parse_melody("1 7'''''", key("a"))

    with pytest.raises(InputError) as caught:
        parse_melody("1 7'''''", key("a"), HARMONIC)

    assert (caught.value.what, caught.value.start) == ("G#9 lies outside the MIDI numbers 0 to 127", 2)
