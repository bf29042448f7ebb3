"""The reasons for a key, in words."""

from __future__ import annotations

import statistics

import pytest
from harmony_examples import CHARTS, chords, demo, key, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.key_finding import rank_keys
from nearhand.harmony.key_reasons import reasons_for, signature_in_words
from nearhand.notation.conventions import PLAIN
from nearhand.theory.key import Key
from nearhand.theory.mode import MODES
from nearhand.theory.pitch_class import PitchClass


def reasons(home, symbols="", melody="", conventions=PLAIN):
    return reasons_for(key(home), chords(symbols), [note(name) for name in melody.split()], conventions)


# What each sentence says is counted by hand; signatures and leading tones as in any table of keys.
CASES = [
    ("a", "Am Dm E7 Am", (
        "all chords belong to it", "its signature, no sharps or flats, fits every note but G#",
        "G#, its leading tone, sounds once", "it cadences iv-V7-i once", "it opens and closes on its tonic")),
    ("C", "Dm7 G7 C Dm7 G7 C", (
        "all chords belong to it", "its signature, no sharps or flats, fits every note",
        "B, its leading tone, sounds twice", "it cadences ii-V7-I twice", "it closes on its tonic")),
    ("C", "C D7 G C/G G C", (
        "5 of 6 chords belong to it", "its signature, no sharps or flats, fits every note but F#",
        "B, its leading tone, sounds twice", "it cadences I64-V-I once",
        "it opens and closes on its tonic")),
    ("c", "Cm Bdim7 Cm G", (
        "all chords belong to it", "its signature, three flats, fits every note but B",
        "B, its leading tone, sounds twice", "it cadences viio7-i once",
        "it opens on its tonic and closes on its dominant")),
    ("D dorian", "Dm G Dm", (
        "all chords belong to it", "its signature, no sharps or flats, fits every note",
        "it opens and closes on its tonic")),
    ("G", "Ab Db Bbm", ("0 of 3 chords belong to it", "its signature, one sharp, fits 1 of 6 notes")),
    ("G", "C A/C#", (
        "1 of 2 chords belong to it", "its signature, one sharp, fits every note but C#")),
]  # fmt: skip


@pytest.mark.parametrize(("home", "symbols", "expected"), CASES)
def test_chords_give_their_reasons(home, symbols, expected):
    assert reasons(home, symbols) == expected


def test_a_melody_gives_its_reasons():
    # J. Albrecht and D. Shanahan, 2013, minor, turned so that C comes first; the correlation by the standard library
    from_c = (0.062, 0.022, 0.061, 0.052, 0.220, 0.006, 0.104, 0.123, 0.019, 0.103, 0.012, 0.214)
    r = statistics.correlation([0, 0, 0, 1, 2, 0, 1, 1, 0, 1, 0, 1], from_c)

    assert reasons("e", melody="E F# G A B D# E") == (
        "its signature, one sharp, fits every note but D#",
        "D#, its leading tone, sounds once",
        "it opens and closes on its tonic",
        "its tonic chord, E G B, takes 57 percent of the melody",
        f"it fits the profile of a minor key with r={r:.2f}",
    )


def test_lengths_and_the_profile_are_those_that_are_asked_for():
    # C. Krumhansl and E. Kessler, 1982, major; the correlation by the standard library
    profile = (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88)
    r = statistics.correlation([3, 0, 1, 0, 1, 0, 0, 2, 0, 0, 0, 0], profile)
    notes = [note(name) for name in ("C", "D", "E", "G")]
    told = reasons_for(key("C"), (), notes, PLAIN, lengths=[3, 1, 1, 2], profile="krumhansl-kessler")

    assert told[-2:] == (
        "its tonic chord, C E G, takes 86 percent of the melody",
        f"it fits the profile of a major key with r={r:.2f}",
    )


def test_a_third_that_is_missed_is_a_reason_against():
    assert "its third, E, is missing from the melody" in reasons("C", melody="G A C D F G")
    assert "its tonic chord, C E G, takes 100 percent of the melody" in reasons("C", melody="C G C")


def test_chords_and_a_melody_give_their_reasons_together():
    assert reasons("e", "Em B7", "G F# D# E") == (
        "all chords belong to it",
        "its signature, one sharp, fits every note but D#",
        "D#, its leading tone, sounds twice in chords and melody",
        "it opens on its tonic and closes on its dominant",
        "the melody closes on its tonic",
        "its tonic chord, E G B, takes 50 percent of the melody",
        "the melody fits the profile of a minor key with r=0.42",
    )


def test_notes_are_written_in_signs_unless_plain_is_wanted():
    assert "D♯, its leading tone, sounds once" in reasons_for(key("e"), chords("Em B7"))
    assert "D#, its leading tone, sounds once" in reasons("e", "Em B7")
    assert "it cadences vii°-i once" in reasons_for(key("a"), chords("G#dim Am"))


def test_several_notes_from_outside_are_named_in_the_order_of_fifths():
    assert "its signature, no sharps or flats, fits every note but Bb, F# and C#" in reasons("C", melody="C C# F# Bb")


@pytest.mark.parametrize(
    ("home", "words"),
    [("C", "no sharps or flats"), ("e", "one sharp"), ("Bb", "two flats"), ("Cb", "seven flats"), ("Fb", "eight flats"),
     ("D dorian", "no sharps or flats"), ("A lydian", "four sharps"), ("G##", "15 sharps")],
)  # fmt: skip
def test_a_signature_is_told_in_words(home, words):
    # Open Music Theory, key signatures; Fb and G double sharp major by counting on
    assert signature_in_words(key(home)) == words


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_a_demo_chart_gives_reasons_for_each_likely_key(path):
    found = list(demo(path).chords())
    for fit in rank_keys(found)[:5]:
        told = reasons_for(fit.key, found)

        assert len(told) >= 2
        assert len(set(told)) == len(told)


@given(st.lists(st.integers(-5, 8).map(PitchClass), min_size=1, max_size=12), st.integers(-4, 4), st.data())
def test_reasons_move_with_the_melody(melody, fifths, data):
    home = Key(PitchClass(data.draw(st.integers(-3, 3))), MODES[data.draw(st.sampled_from(["major", "minor"]))])
    here, there = reasons_for(home, (), melody), reasons_for(home.moved(fifths), (), [one.up(fifths) for one in melody])

    assert len(here) == len(there)
    assert here[-1] == there[-1]  # the correlation
