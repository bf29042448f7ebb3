"""Relative major or minor: what a melody says for the one and the other."""

from __future__ import annotations

import pytest
from harmony_examples import key, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.key_finding import KeyFit
from nearhand.harmony.melody_keys import rank_keys_of_melody
from nearhand.harmony.relatives import relative_in_words, relative_of
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass


def tune(names):
    return [note(name) for name in names.split()]


def told(names, lengths=None, conventions=PLAIN):
    fits = rank_keys_of_melody(tune(names), lengths)
    return relative_in_words(fits[0], relative_of(fits), tune(names), lengths, conventions)


# Each fact is counted by hand. That the last note, the raised seventh and the time on tonic and fifth tell relative
# keys apart is common practice, no source.
TOLD = [
    ("C F G A C A G F F", None,
     "F major rather than D minor: it ends on F, no C# sounds, F and C are 56 percent of the notes, D and A 22 "
     "percent."),
    ("C F G A C A G F F", [1, 1, 1, 1, 1, 1, 1, 1, 4],
     "F major rather than D minor: it ends on F, no C# sounds, F and C take 67 percent of the time, D and A 17 "
     "percent."),
    ("C D E G A G E C", [1, 1, 1, 1, 1, 1, 1, 1],
     "C major rather than A minor: it begins and ends on C, no G# sounds, C and G take 50 percent of the time, A and E "
     "38 percent."),
    ("E F# G A B D# E", None,
     "E minor rather than G major: it begins and ends on E, E's leading tone D# sounds, E and B are 43 percent of the "
     "notes, G and D 14 percent."),
    ("A C D E G A", None,
     "A minor rather than C major: it begins and ends on A, A and E are 50 percent of the notes, C and G 33 percent; "
     "but no G# sounds."),
    ("C E G C G E F D C G# A G E D C C", None,
     "C major rather than A minor: it begins and ends on C, C and G are 50 percent of the notes, A and E 25 percent; "
     "but A's leading tone G# sounds."),
]  # fmt: skip


@pytest.mark.parametrize(("names", "lengths", "sentence"), TOLD)
def test_the_winner_is_held_against_its_relative(names, lengths, sentence):
    assert told(names, lengths) == sentence


def test_a_close_call_is_called_one():
    # a beginning for the one and an end for the other (common practice, no source)
    assert told("C E F D G A B A") == (
        "It is hard to tell A minor from C major: for A minor, it ends on A, A and E are 38 percent of the notes, C "
        "and G 25 percent; for C major, it begins on C, no G# sounds."
    )


def test_a_melody_against_its_chords_is_said_to_speak_for_the_relative():
    best, relative = KeyFit(key("C"), 0.0, 0.9), KeyFit(key("a"), -1.0, 0.05)

    assert relative_in_words(best, relative, tune("A C E G# A E A"), None, PLAIN) == (
        "The melody alone speaks rather for A minor: it begins and ends on A, A's leading tone G# sounds, A and E are "
        "71 percent of the notes, C and G 14 percent."
    )


def test_without_a_melody_or_in_another_mode_nothing_is_said():
    fits = KeyFit(key("D dorian"), 0.0, 1.0), KeyFit(key("C"), -1.0, 0.0)

    assert relative_in_words(*fits, tune("D F A")) == ""
    assert relative_in_words(KeyFit(key("C"), 0.0, 1.0), KeyFit(key("a"), -1.0, 0.0), []) == ""


def test_signs_are_written_where_they_may_be():
    assert "no C♯ sounds" in told("C F G A C A G F F", conventions=DEFAULT)
    assert "no Cis sounds" in told("C F G A C A G F F", conventions=DEFAULT._replace(names="german"))


def test_a_relative_that_is_not_among_the_keys_has_no_share():
    assert relative_of([KeyFit(key("C"), 1.0, 1.0)]) == KeyFit(key("a"), 0.0, 0.0)


@given(st.lists(st.integers(-3, 7).map(PitchClass), min_size=1, max_size=16))
def test_every_melody_is_told_in_one_sentence_about_both_keys(melody):
    fits = [fit for fit in rank_keys_of_melody(melody) if fit.key.mode in (MAJOR, MINOR)]
    sentence = relative_in_words(fits[0], relative_of(fits), melody, None, PLAIN)

    assert str(fits[0].key) in sentence or "rather for" in sentence
    assert str(fits[0].key.relative) in sentence
    assert sentence.endswith(".")
    assert ": ;" not in sentence
    assert ", ." not in sentence
