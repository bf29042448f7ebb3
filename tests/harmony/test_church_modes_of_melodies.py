"""Church modes of melodies: which are heard, what they gain, and why, in words; folk tunes that music21 ships."""

from __future__ import annotations

import re

import pytest
from benchmarks.measure_melody_keys import abc_tunes, read_tune
from harmony_examples import chords, decorates, key, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.church_modes import CHURCH_MODES, mode_in_words, modes_heard, plain_key, with_modes
from nearhand.harmony.melody_evidence import heard_in
from nearhand.harmony.melody_keys import melody_scores, rank_keys_of_both, rank_keys_of_melody
from nearhand.notation.conventions import PLAIN
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.pitch_class import PitchClass, pitch_class


def is_in_earnest(melody, telling):
    """Whether a note sounds other than as a decoration."""
    return any(note == telling and not decorates(melody, at) for at, note in enumerate(melody))


LONG = heard_in([PitchClass(0)])._replace(told=1.0, left=0.0)
"""What tells all of a melody without end."""


def tune(names):
    return [note(name) for name in names.split()]


def best(names):
    return str(rank_keys_of_melody(tune(names))[0].key)


# Open Music Theory, "Diatonic Modes": dorian is natural minor with a raised sixth, phrygian with a lowered second;
# lydian is major with a raised fourth, mixolydian with a lowered seventh.
TELLING = {
    "dorian": (MINOR, 6, "raised", "raised sixth"),
    "phrygian": (MINOR, 2, "lowered", "lowered second"),
    "lydian": (MAJOR, 4, "raised", "raised fourth"),
    "mixolydian": (MAJOR, 7, "lowered", "lowered seventh"),
}


@pytest.mark.parametrize("church", CHURCH_MODES, ids=lambda church: church.mode.name)
@pytest.mark.parametrize("tonic", range(-3, 5))
def test_a_mode_differs_from_the_key_of_its_third_by_its_telling_degree(church, tonic):
    plain, number, way, words = TELLING[church.mode.name]
    home = Key(PitchClass(tonic), church.mode)
    chromatic = 7 if way == "raised" else -7

    assert plain_key(home) == Key(home.tonic, plain)
    assert (church.degree, church.telling) == (number, words)
    assert [one.fifths - other.fifths for one, other in zip(home.scale(), plain_key(home).scale(), strict=True)] == [
        chromatic if degree == number else 0 for degree in range(1, 8)
    ]


@pytest.mark.parametrize("tonic", range(-3, 5))
def test_a_scale_is_heard_in_four_modes(tonic):
    scale = Key(PitchClass(tonic), MAJOR).scale()

    assert {home.mode.name: home.tonic for home in modes_heard(scale)} == {
        "dorian": scale[1], "phrygian": scale[2], "lydian": scale[3], "mixolydian": scale[4],
    }  # fmt: skip


# Turns of the modes and the mode a musician names (common practice, no source; the first is a scale in print).
NAMED = [
    ("D E F G A B C D", "D dorian"),
    ("E F# G A B C# D E B A F# E", "E dorian"),
    ("D A A G F E D B C A D C B A G F E D", "D dorian"),
    ("G B D F E D B A G", "G mixolydian"),
    ("A A E C# A G F# G A E F# G A", "A mixolydian"),
    ("F G A B C D E F", "F lydian"),
    ("Bb D F E D C Bb", "Bb lydian"),
    ("E B B A G F E G B A F E E", "E phrygian"),
    ("C D E F G A Bb A G F E D C", "C mixolydian"),
    ("A G A B C A F", "F lydian"),
]


@pytest.mark.parametrize(("names", "home"), NAMED)
def test_a_plain_mode_is_named_first(names, home):
    assert best(names) == home


# The same turns with one note that the mode has not, or without the telling degree; and that mode.
PLAIN_KEYS = [
    ("D A A G F E D Bb C A D C B A G F E D", "D minor", "D dorian"),
    ("D A A G F E D B C# A D C B A G F E D", "D minor", "D dorian"),
    ("D A A G F E D C A D C A G F E D", "D minor", "D dorian"),
    ("G B D F E D B A F# G", "G major", "G mixolydian"),
    ("G B D E D B A G", "G major", "G mixolydian"),
    ("F G A B Bb C D E F", "F major", "F lydian"),
    ("E B B A G F# E G B A F E E", "E minor", "E phrygian"),
]

# A telling degree between two of the note a half step above decorates it; and a few notes are in a
# key that holds them rather than in a mode on whose tonic they do not close (common practice, no source).
DECORATED = [
    ("C E G F# G E D C", "C major"),
    ("D F A G F E D C B C D D", "D minor"),
    ("A C E F E D C Bb A", "F major"),
    ("C E G Bb A F", "F major"),
    ("G E E F D C B A B E E E", "C major"),
]


@pytest.mark.parametrize(("names", "home"), DECORATED)
def test_a_mode_is_not_named_for_a_note_that_decorates_or_far_from_its_tonic(names, home):
    assert best(names) == home


@pytest.mark.parametrize(("names", "home", "mode"), PLAIN_KEYS)
def test_a_mode_is_not_named_where_the_other_form_sounds_or_its_own_does_not(names, home, mode):
    assert best(names) == home
    assert key(mode) not in {fit.key for fit in rank_keys_of_melody(tune(names))}


# Counted by hand; that a mode which comes near is told as a guess is common practice, no source.
TOLD = [
    ("E F# G A B C# D E B A F# E",
     "E dorian rather than E minor: every note fits, C# is its raised sixth, no C sounds, it ends on E."),
    ("G B D F E D B A G",
     "G mixolydian rather than G major: every note fits, F is its lowered seventh, no F# sounds, it ends on G."),
    ("G A B D F E D B A G B D B", "G mixolydian rather than G major: every note fits, F is its lowered seventh, no F# "
     "sounds."),
    ("E F G B A G F E",
     "It may be E phrygian: every note fits, F is its lowered second, no F# sounds, it ends on E."),
    ("A C B A G A F", "It may be F lydian: every note fits, B is its raised fourth, no Bb sounds, it ends on F."),
    ("G A B C A F G E F", "It may be F lydian: every note fits, B is its raised fourth, no Bb sounds, it ends on F."),
    ("G B D F# E D B A G", ""),
    ("C D E F G A B C", ""),
]  # fmt: skip


@pytest.mark.parametrize(("names", "sentence"), TOLD)
def test_a_sentence_says_why_a_mode(names, sentence):
    assert mode_in_words(rank_keys_of_melody(tune(names)), tune(names), PLAIN) == sentence


# Turns that close on the tonic of a mode and are some five times likelier in C, which holds their notes as well. That a
# mode so far behind is not worth a word is common practice, no source.
FAR_BEHIND = [("E G F E D C B E", "E phrygian"), ("G C E G F E D B G", "G mixolydian")]


@pytest.mark.parametrize(("names", "mode"), FAR_BEHIND)
def test_a_mode_far_behind_the_likeliest_key_is_not_told(names, mode):
    fits = rank_keys_of_melody(tune(names))
    shares = {str(fit.key): fit.share for fit in fits}

    assert str(fits[0].key) == "C major"
    assert 4 < fits[0].share / shares[mode] < 7
    assert mode_in_words(fits, tune(names), PLAIN) == ""


def test_without_a_melody_nothing_is_said():
    assert mode_in_words(rank_keys_of_melody(tune("D F A")), [], PLAIN) == ""


def test_few_notes_make_no_mode():
    assert modes_heard(tune("C E Bb")) == {}
    assert modes_heard(tune("C D E G")) == {}


@given(st.lists(st.integers(-4, 8).map(PitchClass), min_size=1, max_size=16))
def test_a_mode_that_is_heard_holds_every_note_and_its_telling_degree(melody):
    for home, church in modes_heard(melody).items():
        telling = home.degree(church.degree)

        assert set(melody) <= set(home.scale())
        assert {home.tonic, home.degree(3), telling} <= set(melody)
        assert is_in_earnest(melody, telling)
        assert plain_key(home).degree(church.degree) not in melody
    unheard = [
        Key(PitchClass(tonic), MODES[name]) for tonic in range(-6, 9) for name in TELLING
        if Key(PitchClass(tonic), MODES[name]) not in modes_heard(melody)
    ]  # fmt: skip
    for home in unheard:
        number = TELLING[home.mode.name][1]
        needed = {home.tonic, home.degree(3), home.degree(number)}
        fits = needed <= set(melody) <= set(home.scale()) and len(set(melody)) >= 5 and abs(home.signature) <= 7
        assert not (fits and is_in_earnest(melody, home.degree(number)))


@given(st.lists(st.integers(-1, 5).map(PitchClass), min_size=5, max_size=16))
def test_a_mode_comes_before_the_key_of_its_third_and_touches_no_other(melody):
    fits = {fit.key: fit.score for fit in rank_keys_of_melody(melody)}
    modes = modes_heard(melody)
    touched = {plain_key(home) for home in modes} | set(modes)
    plain = melody_scores(melody, None, [home for home in fits if home not in touched])

    assert all(fits[home] > fits[plain_key(home)] for home in modes)
    assert plain == pytest.approx({home: score for home, score in fits.items() if home not in touched})


def test_a_close_on_the_tonic_speaks_for_dorian():
    modes = modes_heard(tune("G A B C D E F"))
    scores = {plain_key(home): 0.0 for home in modes}
    closed, open_end = (with_modes(scores, modes, note(last), LONG)[key("D dorian")] for last in "DG")

    assert closed > open_end == 0.0


def test_a_close_gains_less_for_the_rare_modes():
    # common practice, no source: dorian has no leading tone to be missed, lydian and phrygian are rare
    modes = modes_heard(tune("C D E F G A B"))
    scores = {plain_key(home): 0.0 for home in modes}
    gains = {home.mode.name: with_modes(scores, modes, home.tonic, LONG)[home] for home in modes}

    assert gains["dorian"] > gains["mixolydian"] >= 0.0 > gains["lydian"] > gains["phrygian"]


def test_chords_that_contradict_a_mode_leave_it_alone():
    # A7 has the leading tone of D minor: with it the raised sixth is that of melodic minor
    melody = tune("D A A G F E D B C A D C B A G F E D")
    minor, dorian = (rank_keys_of_both(chords(symbols), melody) for symbols in ("Dm Gm A7 Dm", "Dm G Am Dm"))

    assert str(minor[0].key) == "D minor"
    assert str(dorian[0].key) == "D dorian"
    assert dorian[0].share > 0.9


# Every fifth tune whose field K: says dorian or mixolydian in the collections whose fields name modes: what music21
# says of the same notes can only be major or minor.
@pytest.fixture(scope="module")
def modal_tunes():
    named = [
        item for item in abc_tunes()
        if item[0] != "essenFolksong" and re.search(r"(?m)^K:\s*[A-G][#b]?\s*(dor|mix)", item[2], re.IGNORECASE)
    ]  # fmt: skip
    read = [read_tune(item) for item in named[::5]]
    return [each for each in read if each is not None]


def test_folk_tunes_in_modes_are_found_in_their_very_mode(modal_tunes):
    found = with_tonic = heard = 0
    for each in modal_tunes:
        notes, lengths = [pitch_class(place) for place, _ in each.notes], [quarters for _, quarters in each.notes]
        home = Key(pitch_class(each.tonic), MODES[each.mode])
        first = rank_keys_of_melody(notes, lengths)[0].key
        heard += home in modes_heard(notes)
        found += first == home
        with_tonic += first.tonic == home.tonic
        assert not (home in modes_heard(notes) and first == plain_key(home))

    assert len(modal_tunes) >= 30
    assert found >= 0.25 * len(modal_tunes)
    assert found >= 0.45 * heard
    assert with_tonic >= 0.45 * len(modal_tunes)
