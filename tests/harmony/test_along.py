"""What happens along a progression, in words: cadences at their bars, turns of minor, cross relations."""

from __future__ import annotations

from itertools import pairwise

import pytest
from harmony_examples import CHARTS, demo, in_bars, key, keys, lines_of_chords
from hypothesis import given

from nearhand.harmony.along import along, along_in_words
from nearhand.harmony.cadence_kinds import MEANINGS
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.conventions import PLAIN
from nearhand.theory.key import Key
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.voice import voice_progression


def chart(text, home):
    return resolve(read_chart(text), key(home))


def told(text, home, voiced=False):
    """The sentences on a chart, from chords alone or as it is voiced."""
    tune = chart(text, home)
    return list(along_in_words(along(tune, voice_progression(tune).pitches if voiced else None), tune.key, PLAIN))


# Cadences: R. Hutchinson, Music Theory for the 21st-Century Classroom (MT21C), PerfectAuthenticCadence and its
# neighbours; Open Music Theory (OMT), cadenceTypes. Turns of minor: OMT, scales and harmonicSyntax2 (lament); MT21C,
# i-VII-VI-VII (Andalusian). Phrygian half cadence and cross relations: from memory. The wording is ours.
CROSSES = "meet between this chord and the one before: a cross relation, unless one voice plays both."
LAMENT = "| Cm | Gm/Bb | Fm/Ab | G |"
TOLD = {
    (LAMENT, "c"): [
        "Bar 4, chord 4: Phrygian half cadence: the bass falls a half step to the dominant.",
        "Bar 4, chord 4: the 7th degree turns from Bb, the subtonic, to B, the leading tone.",
    ],
    ("| Am | G | F | E |", "a"): [
        "Bar 4, chord 4: half cadence: the phrase stops on the dominant.",
        "Bar 4, chord 4: the 7th degree turns from G, the subtonic, to G#, the leading tone.",
    ],
    ("| Am | Em | E | Am |", "a"): [
        "Bar 3, chord 3: the 7th degree turns from G, the subtonic, to G#, the leading tone.",
        f"Bar 3, chord 3: G and G# {CROSSES}",
        "Bar 4, chord 4: authentic cadence: both chords are in root position; the top voice is not known.",
    ],
    ("| Am | Dm | D | E | Am |", "a"): [
        "Bar 3, chord 3: the 6th degree turns from F, the lowered sixth, to F#, the raised sixth.",
        f"Bar 3, chord 3: F and F# {CROSSES}",
        "Bar 5, chord 5: authentic cadence: both chords are in root position; the top voice is not known.",
    ],
    ("| C | F | Fm | C |", "C"): [
        f"Bar 3, chord 3: A and Ab {CROSSES}",
        "Bar 4, chord 4: plagal cadence: the minor fourth chord goes to the tonic, both in root position.",
    ],
    ("| C | F | G7 | Am |", "C"): [
        "Bar 4, chord 4: deceptive cadence: the sixth degree comes in the tonic's place.",
    ],
    ("| C | F | G7 | Ab |", "C"): [
        "Bar 4, chord 4: deceptive cadence: the lowered sixth degree comes in the tonic's place.",
    ],
    ("| C N.C. | N.C. | F G | C |", "C"): [
        "Bar 4, chord 4: authentic cadence: both chords are in root position; the top voice is not known.",
    ],
    ("| C | Am |", "C"): [],
}


@pytest.mark.parametrize(("chart_and_key", "expected"), TOLD.items(), ids=lambda value: " in ".join(value)[:40])
def test_what_happens_is_told_at_its_bar_and_its_chord(chart_and_key, expected):
    assert told(*chart_and_key) == expected


def test_a_voicing_decides_whether_a_cadence_is_perfect_and_who_crosses_whom():
    # MT21C, OMT: the tonic in the top voice
    (alone,), (voiced,) = told("| F | G7 | C |", "C"), told("| F | G7 | C |", "C", voiced=True)
    tune = chart("| F | G7 | C |", "C")
    on_top = voice_progression(tune).pitches[-1][-1].midi % 12 == 0

    assert "the top voice is not known" in alone
    assert ("perfect authentic" in voiced and "imperfect" not in voiced) == on_top
    assert "not known" not in voiced


@pytest.mark.parametrize(
    ("text", "home", "crossing"),
    [
        ("| Em | C#dim7 | B | Em |", "e", []),  # its B flat is A sharp
        ("| Am | F7 | E | Am |", "a", []),  # its E flat is D sharp
        ("| C | Ab7 | G | C |", "C", [("E", "Eb")]),  # its G flat is F sharp
        ("| Cm | Ab7 | G | Cm |", "c", []),
    ],
)
def test_a_note_that_is_only_spelled_otherwise_crosses_nothing(text, home, crossing):
    # common practice, no source: what an F7 before E sounds is D sharp
    tonic = key(home).tonic
    relations = along(chart(text, home)).cross_relations

    assert [(str(tonic.up(each.place_before)), str(tonic.up(each.place))) for each in relations] == crossing


def test_the_leading_tone_of_a_respelled_chord_turns_nothing():
    # B flat in C sharp diminished seventh is no degree of E minor's sixth or seventh
    assert along(chart("| Em | C#dim7 | B7 | Em |", "e")).turns == along(chart("| Em | A#dim7 | B7 | Em |", "e")).turns


@pytest.mark.parametrize("tonic", range(-6, 7))
def test_bars_and_chords_are_the_same_in_every_key(tonic):
    tune = chart(LAMENT, "c")
    moved = tune.in_key(Key(PitchClass(tonic), tune.key.mode))

    assert along(moved) == along(tune)
    words = [sentence.split(":")[0] for sentence in along_in_words(along(moved), moved.key)]
    assert words == ["Bar 4, chord 4", "Bar 4, chord 4"]


@given(lines_of_chords, keys)
def test_everything_told_has_a_bar_a_chord_and_an_end(chords, home):
    tune = in_bars(chords, home)
    found = along(tune)
    sentences = along_in_words(found, home, PLAIN)
    places = []
    for sentence in sentences:
        place, _, rest = sentence.partition(": ")
        bar, chord = (int(word.split()[1]) for word in place.split(", "))
        places.append(chord)
        assert bar == found.bars[chord - 1] == chord  # one chord a bar here
        assert rest.endswith(".")
        assert sentence.isascii()
        assert "  " not in sentence
    assert places == sorted(places)
    assert len(sentences) == len(found.cadences) + len(found.turns) + len(found.cross_relations)
    assert all(cadence.kind in MEANINGS for cadence in found.cadences)
    assert home.mode.is_minor or found.turns == ()


@given(lines_of_chords, keys)
def test_the_phrases_are_all_bars_once(chords, home):
    found = along(in_bars(chords, home))

    assert found.phrases[0].first_bar == 1
    assert found.phrases[-1].last_bar == len(chords)
    assert all(before.last_bar + 1 == after.first_bar for before, after in pairwise(found.phrases))
    assert len(found.bars) == len(chords)


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_the_demo_charts_are_told_with_and_without_voices(path):
    tune = demo(path)
    plain, voiced = along(tune), along(tune, voice_progression(tune).pitches)

    assert [cadence.goal for cadence in plain.cadences] == [cadence.goal for cadence in voiced.cadences]
    assert plain.turns == voiced.turns
    assert set(voiced.cross_relations) <= set(plain.cross_relations)
    assert all(kind.kind != "authentic" for kind in voiced.cadences)


def test_nothing_happens_where_there_is_no_chord():
    tune = chart("| N.C. | N.C. |", "C")

    assert (along(tune).bars, along_in_words(along(tune), tune.key)) == ((), ())
