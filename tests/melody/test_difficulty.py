"""What is hard about a key, and the keys that teach most."""

from __future__ import annotations

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from music21 import chord as music21_chord
from music21 import key as music21_key
from strategies import names, qualities

from nearhand.harmony.moving import all_keys, double_accidentals
from nearhand.melody.difficulty import difficulty_of, keys_that_teach_most, sound_of
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import parse_melody
from nearhand.theory.chord import RelativeChord
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Bar, Progression, Slot


def tune(text, key="C"):
    return resolve(read_chart(text), parse_key(key))


def keys_of(text):
    return tuple(parse_key(name.strip()) for name in text.split(","))


def symbols(chords):
    return " ".join(write_chord(chord, PLAIN) for chord in chords)


def difficulty(progression, to, known, choose=3, melody=None):
    return difficulty_of(progression, melody, keys_of(to), keys_of(known), choose)


# Chords in C or A minor, a key; its accidentals, the notes beside its signature, double accidentals, black keys of all
# tones, and the chords that C or A minor does not have. Counted by hand from the spelled chords (transposition vectors
# of textbooks: C F♯dim7 G7 in D flat is D♭ Gdim7 A♭7; Am E7 in G sharp minor is G♯m D♯7, which has F double sharp).
COUNTED = [
    ("| C | F | G7 |", "C", "C", 0, "", 0, (0, 10), ""), ("| C | F | G7 |", "C", "G", 1, "", 0, (1, 10), "G D7"),
    ("| C | F | G7 |", "C", "F", 1, "", 0, (2, 10), "Bb C7"),
    ("| C | F | G7 |", "C", "F#", 6, "", 0, (7, 10), "F# B C#7"),
    ("| C | F | G7 |", "C", "Gb", 6, "", 0, (7, 10), "Gb Cb Db7"),
    ("| C | F#dim7 | G7 |", "C", "Db", 5, "G Fb", 0, (7, 11), "Db Gdim7 Ab7"),
    ("| Am | E7 |", "A minor", "G# minor", 5, "F##", 1, (5, 7), "G#m D#7"),
    ("| Am | E7 |", "A minor", "Eb minor", 6, "D", 0, (5, 7), "Ebm Bb7"),
    ("| C | C/G | C/Bb |", "C", "D", 2, "C", 0, (3, 10), "D"),
]  # fmt: skip


@pytest.mark.parametrize(("chords", "own", "key", "counts"), [(*row[:3], row[3:]) for row in COUNTED])
def test_these_are_counted(chords, own, key, counts):
    (row,) = difficulty(tune(chords, own), key, own).keys

    assert (
        row.accidentals,
        names(row.beside),
        row.double_accidentals,
        (row.black, row.tones),
        symbols(row.new),
    ) == counts
    assert row.is_known == (key == own)


def test_a_melody_counts_with_its_grace_notes_and_held_notes_once():
    # In D: F sharp, G sharp beside the signature, A held over the bar line, D sharp as a grace note before E.
    melody = parse_melody("C: 3 #4 | 5 - - - | - {#1}2 r r")
    found = difficulty_of(Progression(parse_key("C"), ()), melody, keys_of("D"), keys_of("C"), 3)
    (row,) = found.keys

    assert (names(row.beside), row.black, row.tones) == ("G# D#", 3, 5)
    assert (found.tones_beside, row.new, found.new) == (2, (), 0)


# The five notes 1 2 3 4 5, major, as they lie in the keys: white keys w, black ones b (counted on a keyboard).
FIVE_NOTES = {
    "C": "wwwww", "G": "wwwww", "D": "wwbww", "A": "wwbww", "E": "wbbww", "B": "wbbwb", "F": "wwwbw", "Bb": "bwwbw",
    "Eb": "bwwbb", "Ab": "bbwbb", "Db": "bbwbb", "Gb": "bbbwb",
}  # fmt: skip


@pytest.mark.parametrize("known", FIVE_NOTES)
def test_a_step_is_new_where_its_two_notes_have_other_colours_than_in_the_known_keys(known):
    melody = parse_melody("C: 1 2 3 4 | 5 - 4 3 | r 2 {3}1 -")  # four steps from note to note, and 1 to 3
    found = difficulty_of(Progression(parse_key("C"), ()), melody, tuple(map(parse_key, FIVE_NOTES)), keys_of(known), 3)
    pairs = [(0, 1), (1, 2), (2, 3), (3, 4), (0, 2)]

    assert found.steps == 5
    for row in found.keys:
        here, there = FIVE_NOTES[str(row.key.tonic)], FIVE_NOTES[known]
        new = [pair for pair in pairs if [here[place] for place in pair] != [there[place] for place in pair]]
        assert len(row.new_steps) == len(new)
        assert row.is_known == (str(row.key.tonic) == known)


melodies = st.lists(st.integers(-5, 7), min_size=1, max_size=8).map(
    lambda places: Melody(
        Pitch(PitchClass(0), 4), (MelodyBar(tuple(MelodyNote(Interval(each, 0), 1) for each in places)),)
    )
)


@given(melodies, st.lists(st.integers(-5, 6), min_size=1, max_size=3, unique=True), st.integers(1, 3))
def test_no_other_choice_of_as_many_keys_brings_more_steps(melody, known, choose):
    progression = Progression(parse_key("C"), ())
    keys = all_keys(progression)
    known_keys = [progression.key.moved(step) for step in known]
    found = difficulty_of(progression, melody, keys, known_keys, choose)
    brought = [step for lesson in found.to_learn for step in lesson.steps]

    assert len(set(brought)) == len(brought) <= found.new_steps
    assert all(lesson.steps and not lesson.brings for lesson in found.to_learn)
    for chosen in combinations(found.keys, choose):
        assert len({step for row in chosen for step in row.new_steps}) <= len(brought)
    if choose == 3 and not found.new_steps:
        assert found.to_learn == ()


def test_under_chords_a_melody_brings_no_steps():
    found = difficulty(tune("| C | F |"), "D", "C", melody=parse_melody("C: 1 2 3 4"))

    assert (found.steps, found.new_steps, found.keys[0].new_steps) == (None, 0, ())


@pytest.mark.parametrize("quality", ["major", "minor"])
def test_signatures_are_those_of_music21(quality):
    for row in difficulty_of(
        Progression(parse_key(f"C {quality}"), ()), None, all_keys(tune("| 1 |", f"C {quality}")), (), 1
    ).keys:
        theirs = music21_key.Key(str(row.key.tonic).replace("b", "-"), quality)
        assert row.accidentals == abs(theirs.sharps)


@pytest.mark.parametrize("key", ["C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G"])
def test_black_keys_and_accidentals_are_those_of_music21(key):
    # music21 10.5.1: of the chords that we spell, which tones a signature does not cover, and which are black.
    progression = tune("| Dm7 | Fm6 | E7 | Cmaj7 |").in_key(parse_key(key))
    (row,) = difficulty_of(progression, None, (parse_key(key),), (), 1).keys
    covered = {pitch.name for pitch in music21_key.Key(key.replace("b", "-")).pitches}
    pitches = [
        pitch
        for chord in progression.chords()
        for pitch in music21_chord.Chord([str(tone).replace("b", "-") for tone in chord.tones]).pitches
    ]

    assert row.tones == len(pitches)
    assert row.black == sum(pitch.pitchClass in (1, 3, 6, 8, 10) for pitch in pitches)
    assert {str(note).replace("b", "-") for note in row.beside} == {p.name for p in pitches} - covered
    assert row.double_accidentals == sum(abs(pitch.alter) > 1 for pitch in pitches)


relative_chords = st.builds(lambda root, quality: RelativeChord(root, quality, root), st.integers(-4, 6), qualities)
progressions = st.builds(
    lambda tonic, mode, chords: Progression(
        Key(PitchClass(tonic), mode), tuple(Bar((Slot(chord, 4),)) for chord in chords)
    ),
    st.integers(-5, 6), st.sampled_from([MAJOR, MINOR]), st.lists(relative_chords, min_size=1, max_size=6),
)  # fmt: skip
steps = st.lists(st.integers(-6, 6), min_size=1, max_size=6, unique=True)


@given(progressions, steps, steps, st.integers(-3, 3))
def test_new_chords_stay_as_many_when_tune_and_keys_move_together(progression, to, known, by):
    def counts(key):
        found = difficulty_of(
            progression.in_key(key), None, [key.moved(step) for step in to], [key.moved(step) for step in known], 3
        )
        return found.new, found.tones_beside, [(len(row.new), row.is_known, len(row.beside)) for row in found.keys]

    assert counts(progression.key) == counts(progression.key.moved(by))


@given(progressions, steps, st.integers(-3, 3))
def test_a_key_is_as_hard_wherever_the_tune_stands(progression, to, by):
    keys = [progression.key.moved(step) for step in to]
    rows = [difficulty_of(progression.in_key(key), None, keys, keys[:1], 3) for key in (progression.key, keys[-1])]

    assert rows[0] == rows[1]


@given(progressions, st.integers(-6, 6))
def test_a_key_by_another_name_has_the_same_sounds(progression, step):
    key = progression.key.moved(step)
    here, there = difficulty_of(progression, None, (key, key.moved(12)), (progression.key,), 3).keys

    assert (here.black, here.tones, here.is_known) == (there.black, there.tones, there.is_known)
    assert [sound_of(chord) for chord in here.new] == [sound_of(chord) for chord in there.new]
    assert here.double_accidentals == double_accidentals(progression, key)


def _brought(rows, chosen):
    return len({sound_of(chord) for place in chosen for chord in rows[place].new})


@given(progressions, steps, st.integers(1, 4))
def test_no_other_choice_of_as_many_keys_brings_more_or_as_many_with_fewer_accidentals(progression, known, choose):
    keys = all_keys(progression)
    found = difficulty_of(progression, None, keys, [progression.key.moved(step) for step in known], choose)
    by_key = {row.key: place for place, row in enumerate(found.keys)}
    taken = [by_key[lesson.key] for lesson in found.to_learn]
    accidentals = sum(found.keys[place].accidentals for place in taken)
    best = _brought(found.keys, taken)

    assert len(taken) <= choose
    assert best == sum(len(lesson.brings) for lesson in found.to_learn)
    for count in range(1, choose + 1):
        for others in combinations(range(12), count):
            brought = _brought(found.keys, others)
            assert brought <= best
            if brought == best:
                assert sum(found.keys[place].accidentals for place in others) >= accidentals


@given(progressions, steps, st.integers(1, 12))
def test_every_chosen_key_brings_something_that_neither_the_known_nor_those_before_have(progression, known, choose):
    known_keys = [progression.key.moved(step) for step in known]
    found = difficulty_of(progression, None, all_keys(progression), known_keys, choose)
    met = {sound_of(chord) for key in known_keys for chord in progression.in_key(key).chords()}

    for lesson in found.to_learn:
        sounds = [sound_of(chord) for chord in lesson.brings]
        assert sounds
        assert len(set(sounds)) == len(sounds)
        assert not met & set(sounds)
        met |= set(sounds)
    if choose == 12:
        assert sum(len(lesson.brings) for lesson in found.to_learn) == found.new


def test_the_easier_of_two_keys_that_bring_as_much_is_chosen():
    # In G the chord of A minor is known; D flat and G flat bring three each, and D flat has five flats only.
    found = difficulty(tune("| Cmaj7 | Am7 | Dm7 |"), "G,Gb,F#,Db", "C", 1)

    assert [(str(lesson.key.tonic), symbols(lesson.brings)) for lesson in found.to_learn] == [
        ("Db", "Dbmaj7 Bbm7 Ebm7")
    ]


def test_of_two_names_of_a_key_the_easier_one_is_chosen():
    found = difficulty(tune("| Am | E7 |", "A minor"), "D# minor, Eb minor", "A minor", 2)

    assert [str(lesson.key) for lesson in found.to_learn] == ["Eb minor"]  # D sharp minor needs C double sharp


def test_where_all_is_known_there_is_nothing_to_learn():
    found = difficulty(tune("| C | F |"), "C,F", "C,F")

    assert (found.to_learn, found.new) == ((), 0)
    assert [row.is_known for row in found.keys] == [True, True]
    assert keys_that_teach_most((), 3) == ()


def test_a_german_sixth_is_no_new_chord_beside_the_dominant_seventh_of_its_sound():
    # A flat C E flat F sharp and A flat C E flat G flat are the same keys of the keyboard.
    (row,) = difficulty(tune("| Ger6 | bVI7 |"), "D", "C").keys

    assert len(row.new) == 1
