"""Keys of folk tunes that music21 ships, ours beside those of its own key analysis: a sample of the measurement.

The whole of it is ``tests/benchmarks/measure_melody_keys.py``, with its figures in docs/harmony.md; what is counted as
the truth is said there. The sample is every so many-th tune of a collection, in the order of the files, whatever it is.
"""

from __future__ import annotations

from collections import Counter

import pytest
from benchmarks.measure_melody_keys import THEIRS, abc_tunes, read_tune

from nearhand.harmony.key_profiles import PROFILES
from nearhand.harmony.melody_keys import rank_keys_of_melody
from nearhand.harmony.signatures import signatures_left
from nearhand.theory.mode import MODES
from nearhand.theory.pitch_class import pitch_class

STEPS = {"essenFolksong": 500, "oneills1850": 100, "airdsAirs": 60, "ryansMammoth": 60, "miscFolk": 60}


@pytest.fixture(scope="module")
def tunes():
    seen, read = Counter(), []
    for item in abc_tunes():
        folder = item[0]
        if seen[folder] % STEPS[folder] == 0:
            read.append(read_tune(item))
        seen[folder] += 1
    return [tune for tune in read if tune is not None and tune.mode in ("major", "minor")]


def notes_of(tune):
    return [pitch_class(place) for place, _ in tune.notes], [quarters for _, quarters in tune.notes]


def found(tunes, profile, with_lengths=True):
    """How many tunes are found in the very key of their file."""
    count = 0
    for tune in tunes:
        notes, lengths = notes_of(tune)
        key = rank_keys_of_melody(notes, lengths if with_lengths else None, profile)[0].key
        count += (key.tonic.fifths, key.mode.name) == (tune.tonic, tune.mode)
    return count


def found_by_music21(tunes, profile):
    return sum(tune.theirs[profile] == (tune.tonic * 7 % 12, tune.mode) for tune in tunes)


def test_more_keys_are_found_than_by_any_profile_of_music21(tunes):
    theirs = max(found_by_music21(tunes, profile) for profile in THEIRS)

    assert len(tunes) >= 70
    assert found(tunes, "albrecht-shanahan") >= max(theirs + 3, 0.92 * len(tunes))
    assert found(tunes, "albrecht-shanahan", with_lengths=False) > theirs


@pytest.mark.parametrize("profile", PROFILES)
def test_nine_of_ten_keys_are_found_with_any_profile(tunes, profile):
    european = [tune for tune in tunes if tune.collection != "han"]

    assert found(european, profile) >= 0.9 * len(european)


def test_the_signature_of_the_key_is_seldom_eliminated(tunes):
    kept = [
        tune.tonic + MODES[tune.mode].brightness in {left.signature for left in signatures_left(*notes_of(tune))}
        for tune in tunes
    ]

    assert sum(kept) >= 0.95 * len(tunes)
