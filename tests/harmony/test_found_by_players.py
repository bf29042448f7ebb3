"""Progressions that players tried: what any of them would call by one name (common practice, no source)."""

from __future__ import annotations

import pytest
from harmony_examples import in_bars, key, key_free

from nearhand.harmony.along import along
from nearhand.harmony.analysis import analyse
from nearhand.harmony.origins import Scene, origin
from nearhand.harmony.words import sentences, where_tones_go
from nearhand.notation.conventions import PLAIN
from nearhand.verbs.tune import tune_from_text

# Progression, the key that players name.
KEYS = [
    ("C7 F7 C7 C7 F7 F#dim7 C7/G A7 Dm7 G7 C7 A7 Dm7 G7", "C major"),
    ("F7 Bb7 F7 F7 Bb7 Bdim7 F7/C D7 Gm7 C7 F7 D7 Gm7 C7", "F major"),
    ("Dm7 G7alt Cmaj7 A7alt", "C major"),
    ("Em7 A7 Dm7 G7", "C major"),
    ("Fm7 Bb7 C", "C major"),
    ("E7 A7 D7 G7", "C major"),  # R. Hutchinson, turnaround progression
    ("C7 F7 Bb7 Eb7", "Ab major"),  # the same elsewhere
    ("C Am F G C G7 C C E7 A D E7 A A", "C major"),  # it turns to A major later: the opening names it
]


@pytest.mark.parametrize(("chords", "home"), KEYS)
def test_a_key_is_the_one_that_players_name(chords, home):
    assert str(tune_from_text(chords).key) == home


def test_a_tune_that_turns_says_so_and_one_that_does_not_says_nothing():
    turning = tune_from_text("C Am F G C G7 C C E7 A D E7 A A", conventions=PLAIN)

    assert turning.remarks == (
        "From bar 9 the music turns to A major; the numerals stay in C major (keys tells more).",
    )
    assert tune_from_text("C Am F G C Am F G C Am F G").remarks == ()


def progression(chords, home):
    """Chord symbols, one a bar, in a key written as textbooks do: small for minor."""
    return in_bars(key_free(chords, key(home)), key(home))


def told(chords, home, place):
    """The sentences on one chord, as one text."""
    tune = progression(chords, home)
    analysis = analyse(tune.relative_chords, tune.key.mode)[place]
    return " ".join((*sentences(analysis, tune.key, PLAIN), where_tones_go(analysis, tune.key, PLAIN)))


# Chords, key, place of the chord, what must be said of it, what must not.
SAID = [
    ("C F C", "C", 1, "a plagal step", "prepares"),
    ("C Fm C", "C", 1, "a plagal step", "prepares"),
    ("C F/C C", "C", 1, "a pedal six-four", "prepares"),
    ("C Dm7 C", "C", 1, "goes straight to the tonic", "It prepares"),
    ("C F G C", "C", 1, "It prepares the dominant", "plagal"),
    ("Am G7 C", "a", 1, "leads to III as its dominant", "colour"),
    ("Am G7 Am", "a", 1, "adds colour", "III"),
    ("C Ab7 G7", "C", 1, "Gb, the chordal seventh", "raised fourth"),
    ("C Ab7 G", "C", 1, "F#, the raised fourth", "chordal seventh"),
    ("C E7sus4 E7 Am", "C", 1, "It pulls towards vi", "stands in for the tonic"),
    ("Am Dm E7 A", "a", 3, "the Picardy third", "raised to"),
    ("Am A Dm", "a", 1, "dominant of iv", "Picardy"),
    ("Em7 Ebdim7 Dm7", "C", 1, "the bass goes E Eb D by half steps", "pulls"),
    ("Am7 Abm7 Gm7", "C", 1, "the bass goes A Ab G by half steps", "pulls"),
    ("Am Bb E7", "a", 1, "It is the Neapolitan: the major chord on Bb", "over its third"),
    ("Am Bb/D E7", "a", 1, "It is the Neapolitan sixth", "borrowed"),
    ("Am Bb Am", "a", 1, "borrowed from phrygian", "Neapolitan"),
]


@pytest.mark.parametrize(("chords", "home", "place", "said", "not_said"), SAID)
def test_a_chord_is_told_as_players_tell_it(chords, home, place, said, not_said):
    text = told(chords, home, place)

    assert said in text
    assert not_said not in text


def test_a_tritone_substitute_of_an_applied_dominant_names_its_goal():
    tune = progression("Em7 Eb7 Dm7 G7 C", "C")
    analysis = analyse(tune.relative_chords, tune.key.mode)[1]

    assert origin(Scene(analysis, key("C"), PLAIN)).startswith("It is the tritone substitute of A7")


# Progression in C, the cadence at its end.
CADENCES = [
    ("C F G7sus4 C", "authentic"),
    ("C F Db7 C", "imperfect authentic"),
    ("C F Dbmaj7 C", None),
]


@pytest.mark.parametrize(("chords", "kind"), CADENCES)
def test_a_suspended_or_a_substitute_dominant_closes_a_phrase(chords, kind):
    kinds = [cadence.kind for cadence in along(progression(chords, "C")).cadences]

    assert kinds == ([kind] if kind else [])
