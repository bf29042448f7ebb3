"""Laws of key finding: probabilities, transposition, spelling, long progressions."""

from __future__ import annotations

import pytest
from harmony_examples import chords, falling_fifths, key, qualities, relative_chords
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.key_finding import rank_keys
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.pitch_class import PitchClass

PLACES = range(-5, 8)
roots = st.sampled_from(PLACES).map(PitchClass)
root_position = st.builds(lambda root, kind: Chord(root, kind, root), roots, qualities)
progressions = st.lists(root_position, min_size=1, max_size=8)


def moved(progression, fifths):
    return [Chord(chord.root.up(fifths), chord.quality, chord.bass.up(fifths)) for chord in progression]


def in_home(line, home):
    return [chord.in_key(home) for chord in line]


@given(progressions)
def test_the_shares_sum_to_one_and_fall_with_the_scores(progression):
    fits = rank_keys(progression)

    assert sum(fit.share for fit in fits) == pytest.approx(1)
    assert all(fit.share > 0 for fit in fits)
    assert [fit.score for fit in fits] == sorted((fit.score for fit in fits), reverse=True)
    assert len({fit.key for fit in fits}) == len(fits)


@given(progressions, st.integers(-5, 5))
def test_every_key_keeps_its_score_when_the_chords_and_the_key_move_together(progression, fifths):
    scores = {fit.key: fit.score for fit in rank_keys(progression)}
    for fit in rank_keys(moved(progression, fifths)):
        old = fit.key.moved(-fifths)
        if old in scores:
            assert fit.score == pytest.approx(scores[old])


@given(falling_fifths(), st.sampled_from([MAJOR, MINOR]), st.integers(-4, 4), st.integers(-5, 5))
def test_the_order_of_the_keys_moves_with_the_chords(line, mode, tonic, fifths):
    progression = in_home(line, Key(PitchClass(tonic), mode))
    old = {fit.key: fit.score for fit in rank_keys(progression)}
    new = [fit.key.moved(-fifths) for fit in rank_keys(moved(progression, fifths))]
    shared = [key for key in new if key in old]

    assert shared
    assert [old[key] for key in shared] == pytest.approx(sorted((old[key] for key in shared), reverse=True))


@given(progressions, st.integers(1, 5))
def test_only_the_proportion_of_the_lengths_counts(progression, times):
    weights = list(range(1, len(progression) + 1))
    scores = {fit.key: fit.score for fit in rank_keys(progression, weights)}

    assert {fit.key: fit.score for fit in rank_keys(progression, [times * beats for beats in weights])} == (
        pytest.approx(scores)
    )


@given(st.lists(relative_chords(), min_size=1, max_size=6))
def test_inversions_do_not_change_the_key(line):
    inverted, plain = in_home(line, key("C")), in_home([chord._replace(bass=chord.root) for chord in line], key("C"))

    assert rank_keys(inverted) == rank_keys(plain)


@pytest.mark.parametrize(
    ("symbols", "home"),
    [
        ("Gb Cb Db7 Gb", "Gb"),
        ("F# B C#7 F#", "F#"),
        ("Ebm Abm Bb7 Ebm", "eb"),
        ("D#m G#m A#7 D#m", "d#"),
        ("Cb Fb Gb7 Cb", "Cb"),
        ("B E F#7 B", "B"),
        ("Abm Dbm Eb7 Abm", "ab"),
        ("G#m C#m D#7 G#m", "g#"),
    ],
)
def test_the_spelling_of_the_chords_decides_between_enharmonic_keys(symbols, home):
    # Common practice, no source: one writes in flats or sharps what one hears in flats or sharps.
    assert rank_keys(chords(symbols))[0].key == key(home)


@given(progressions)
def test_only_keys_near_the_plain_signatures_in_six_modes_are_proposed(progression):
    fits = rank_keys(progression)

    assert all(abs(fit.key.signature) <= 10 for fit in fits)
    assert {fit.key.mode for fit in fits} <= {
        MODES[name] for name in ("major", "minor", "dorian", "mixolydian", "phrygian", "lydian")
    }


def test_chords_beyond_all_plain_signatures_are_answered_all_the_same():
    assert rank_keys(chords("G### C### D###7 G###"))[0].key == key("G###")


def test_ten_thousand_chords_are_answered():
    assert rank_keys(chords("Am Dm E7 Am") * 2500)[0].key == key("a")


def test_without_chords_there_is_no_key():
    with pytest.raises(ValueError, match="a key cannot be found without chords"):
        rank_keys([])
