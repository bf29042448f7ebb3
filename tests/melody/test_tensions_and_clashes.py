"""What stands over a chord and what clashes with it: long notes that go nowhere, over every usual quality.

Which tensions stand: common practice; B. Nettles and R. Graf, *The Chord Scale Theory and Jazz Harmony*, and M. Levine,
*The Jazz Theory Book* (both from memory). How a sixth, a fourth and a ninth are called beside a seventh or a third: R.
Hutchinson, *Music Theory for the 21st-Century Classroom*, "Chord Symbol Specifics".
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from melody.tone_examples import tones
from strategies import key, note, relative_chords

from nearhand.melody.standing import is_added, member_of, rub_of, tension_of
from nearhand.melody.tone_words import clash_in_words, clashes, count_in_words, in_signs, kind_in_words
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.theory.chord import relative_to

STANDING = {
    "Cmaj7": "D 9, F# #11, A 13",
    "Cmaj9": "F# #11, A 13",
    "C6": "D 9, F# #11, B maj7",
    "C": "D 9, F# #11, A 6, Bb 7, B maj7",
    "Cm7": "D 9, F 11, A 13",
    "Cm6": "D 9, F 11, B maj7",
    "Cm(maj7)": "D 9, F 11, A 13",
    "Cm": "D 9, F 11, A 6, Bb 7, B maj7",
    "C7": "Db b9, D 9, Eb #9, F# #11, Ab b13, A 13",
    "C9": "F# #11, Ab b13, A 13",
    "C13": "F# #11",
    "C7b9": "Eb #9, F# #11, Ab b13, A 13",
    "C7#9": "Db b9, F# #11, Ab b13, A 13",
    "C7#11": "Db b9, D 9, Eb #9, Ab b13, A 13",
    "C7#5": "Db b9, D 9, Eb #9, F# #11",
    "C7sus4": "D 9, Eb b3, E 3, A 13",
    "Cm7b5": "D 9, F 11, Ab b13",
    "Cdim7": "D 9, F 11, Ab b13, B maj7",
    "Cdim": "D 9, F 11, Ab b6, A 6, Bb 7, B maj7",
    "Cmaj7#5": "D 9, F# #11",
    "C5": "D 9, Eb b3, E 3, F 4, A 6, Bb 7, B maj7",
    "Csus2": "E 3, F 4, A 6, Bb 7, B maj7",
}
"""Chord on C to the notes that stand over it, and what they are called there."""
NOTES = ("C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B")


def on_c(symbol):
    return relative_to(parse_chord(symbol), key("C"))


def place_of(name):
    return note(name).fifths


@pytest.mark.parametrize("symbol", STANDING)
def test_what_stands_over_a_quality(symbol):
    found = [(name, tension_of(on_c(symbol), place_of(name))) for name in NOTES]

    assert ", ".join(f"{name} {tension}" for name, tension in found if tension) == STANDING[symbol]


# Chord, note, and what it is called by its letters: a diminished fifth is a flat fifth, an augmented fifth a sharp one,
# an augmented second a sharp ninth; the letters are counted by hand.
SPELLED = [
    ("G7", "Db", "b5"), ("G7", "C#", "#11"), ("G", "Db", "b5"), ("Gmaj7", "C#", "#11"), ("G7", "D#", "#5"),
    ("G7", "Eb", "b13"), ("G7", "Ab", "b9"), ("G7", "A#", "#9"), ("C7", "Gb", "b5"), ("C7", "F#", "#11"),
    ("C7", "G#", "#5"), ("C7", "Ab", "b13"), ("C7", "D#", "#9"), ("Cmaj7", "Gb", "b5"), ("C", "Gb", "b5"),
    ("F#7", "C", "b5"), ("F#7", "B#", "#11"), ("Eb7", "Bbb", "b5"), ("Eb7", "A", "#11"), ("B7", "F##", "#5"),
    ("C5", "D#", "#9"), ("C5", "Eb", "b3"), ("C7sus4", "D#", "#9"), ("C7sus4", "Eb", "b3"),
    ("C", "A#", "#6"), ("C", "Bb", "7"), ("C", "A", "6"), ("C", "Bbb", "dim7"),
    ("Cdim", "Bbb", "dim7"), ("Cdim", "A", "6"), ("Bdim", "Ab", "dim7"), ("Bdim", "G#", "6"), ("Cdim", "Ab", "b6"),
    ("Cdim", "G#", "#5"), ("Cm7b5", "Ab", "b13"), ("Cm7b5", "G#", "#5"),
    # where the trade has no name by the letters, the usual one: a flat tenth, a sharp octave, a diminished eleventh
    ("C7", "Eb", "#9"), ("G7", "Bb", "#9"), ("C7", "C#", "b9"), ("C5", "Fb", "3"), ("C7", "Bbb", "13"),
    ("Cm7", "E#", "11"), ("Cmaj7", "Ebb", "9"), ("C5", "E#", "4"), ("C5", "Cb", "maj7"),
]  # fmt: skip


@pytest.mark.parametrize(("symbol", "name", "tension"), SPELLED)
def test_a_tension_is_named_by_its_letters(symbol, name, tension):
    # common practice, no source
    assert tension_of(on_c(symbol), place_of(name)) == tension


@pytest.mark.parametrize(
    ("symbol", "name"),
    [
        ("Cmaj7", "F"),  # the fourth over a major third
        ("C7", "F"),
        ("C7", "B"),  # the other seventh
        ("Cmaj7", "Bb"),
        ("Cm7", "B"),
        ("C", "Eb"),  # the other third
        ("Cm7", "E"),
        ("Cm7", "Db"),  # the flat ninth where the chord is no dominant: Phrygian
        ("Cmaj7", "Db"),
        ("Cm7", "Ab"),  # the flat sixth over a perfect fifth: Aeolian
        ("Cm7b5", "Db"),  # Locrian
        ("C9", "Db"),  # a ninth chord has its ninth
        ("C13", "F"),  # which leaves the eleventh out when it is played
        ("C13", "Ab"),
        ("Caug", "G"),
    ],
)
def test_notes_to_avoid_do_not_stand(symbol, name):
    # M. Levine, *The Jazz Theory Book*, on "avoid" notes of the modes (from memory)
    chord = on_c(symbol)

    assert not tension_of(chord, place_of(name))
    assert not member_of(chord, place_of(name))
    assert rub_of(chord, place_of(name)) is not None


@given(relative_chords, st.integers(-10, 15))
def test_every_note_is_a_tone_of_a_chord_or_stands_over_it_or_neither(chord, place):
    member, tension = member_of(chord, place), tension_of(chord, place)

    assert not (member and tension)
    assert tension == "" or is_added(tension) or tension.strip("b#").isdigit()


@given(relative_chords, st.integers(-10, 15))
def test_what_stands_hangs_on_the_sound_and_moves_with_the_chord(chord, place):
    for by in (12, -12):
        assert bool(tension_of(chord, place + by)) == bool(tension_of(chord, place))
        assert member_of(chord, place + by) == member_of(chord, place)
    assert tension_of(chord.above(3), place + 3) == tension_of(chord, place)
    assert rub_of(chord.above(3), place + 3) == rub_of(chord, place)


@given(relative_chords, st.integers(-10, 15))
def test_what_a_note_rubs_against_is_a_tone_of_the_chord_and_a_false_relation_has_its_letter(chord, place):
    rub = rub_of(chord, place)

    if rub is not None:
        assert member_of(chord, chord.root + rub.place)
        assert (rub.how == "false relation") == ((place - chord.root - rub.place) % 7 == 0)
        if rub.how != "false relation":
            assert (place - chord.root - rub.place) * 7 % 12 == (1 if rub.how == "semitone above" else 11)


@pytest.mark.parametrize(
    ("chords", "melody", "sentence"),
    [
        ("| C |", "F4 - - -", "F4 against the E of C: a minor ninth above its third."),
        ("| Cmaj7 |", "Bb4 - - -", "B♭4 against the B of Cmaj7: a false relation with its seventh."),
        ("| C7 |", "B4 - - -", "B4 against the B♭ of C7: a false relation with its seventh."),
        ("| Cm |", "E5 - - -", "E5 against the E♭ of Cm: a false relation with its third."),
        ("| C |", "Eb5 - - -", "E♭5 against the E of C: a false relation with its third."),
        ("| C |", "D#5 - - -", "D♯5 against the E of C: a semitone below its third."),  # another letter
        ("| Cmaj7 |", "A#4 - - -", "A♯4 against the B of Cmaj7: a semitone below its seventh."),
        ("| Cm |", "Fb4 - - -", "F♭4 against the E♭ of Cm: a minor ninth above its third."),
        ("| C |", "C#5 - - -", "C♯5 against the C of C: a false relation with its root."),
        ("| C |", "Db5 - - -", "D♭5 against the C of C: a minor ninth above its root."),
        ("| Cmaj9 |", "D#5 - - -", "D♯5 against the D of Cmaj9: a false relation with its ninth."),
        ("| Caug |", "G4 - - -", "G4 against the G♯ of Caug: a false relation with its fifth."),
        ("| C7#11 |", "F4 - - -", "F4 against the E of C7♯11: a minor ninth above its third."),
        ("| Am |", "F4 - - -", "F4 against the E of Am: a minor ninth above its fifth."),
        ("| Em7 |", "F4 - - -", "F4 against the E of Em7: a minor ninth above its root."),
        ("| Cm |", "F#4 - - -", "F♯4 against the G of Cm: a semitone below its fifth."),
        ("| F/G |", "Ab4 - - -", "A♭4 against the A of F/G: a false relation with its third."),
        ("| C/D |", "Eb5 - - -", "E♭5 against the E of C/D: a false relation with its third."),
        ("| Gm7/C |", "Db5 - - -", "D♭5 against the D of Gm7/C: a false relation with its fifth."),
    ],
)
def test_a_clash_is_told_in_a_sentence(chords, melody, sentence):
    (tone,) = tones(chords, melody)

    assert tone.kind == "clash"
    assert clash_in_words(tone, key("C")) == sentence
    assert clash_in_words(tone, key("C"), PLAIN) == sentence.replace("♭", "b").replace("♯", "#")


@pytest.mark.parametrize(
    ("chords", "melody", "place"),
    [
        ("| C |", "E4 [- F] C -", 1),  # off the beat, and short
        ("| C |", "F4 E - -", 0),  # resolved by step
        ("| C |", "F4:2 E:2", 0),
        ("| C |", "F4:2 G:2", 0),
        ("| C7 |", "Ab4 - - -", 0),  # stands over a dominant
        ("| Dm7 |", "F#4 [- Db] F -", 1),
    ],
)
def test_what_is_short_or_resolved_or_stands_is_no_clash(chords, melody, place):
    assert tones(chords, melody)[place].kind != "clash"


@pytest.mark.parametrize("melody", ["[C4 F] C - -", "[F4 C] C - -", "C4 F C -", "C4 [- F:3] C", "C4 [- F:2] - C"])
def test_a_fourth_over_a_major_chord_clashes_on_the_beat_or_for_a_beat(melody):
    found = [tone for tone in tones("| C |", melody) if str(tone.note.pitch) == "F4"]
    on_the_beat = found[0].onset == int(found[0].onset)

    assert found[0].kind == ("clash" if on_the_beat or found[0].beats >= 1 else "free tone")


def test_kinds_in_words_are_short():
    row = tones("| C7 | C |", "Db5:2 D:2 | F4:2 A:2")

    assert [kind_in_words(tone, key("C")) for tone in row] == [
        "tension: ♭9",
        "tension: 9",
        "clash with E",
        "added tone: 6",
    ]
    assert kind_in_words(row[0], key("C"), PLAIN) == "tension: b9"
    assert [kind_in_words(tone, key("C")) for tone in tones("| N.C. |", "C5:4 | E5")] == [
        "no chord here",
        "outside the chords",
    ]
    assert kind_in_words(tones("| C | G |", "C5 - - - | C5 B4")[1], key("C")) == "suspension 4-3"


def test_clashes_name_notes_as_the_conventions_do():
    (tone,) = tones("| Cmaj7 |", "Bb4 - - -")

    assert clash_in_words(tone, key("C"), Conventions(names="german")) == (
        "B4 against the H of Cmaj7: a false relation with its seventh."
    )


def test_how_many_notes_are_chord_tones_is_counted_over_chords_alone():
    assert count_in_words(tones("| C | F |", "C5 - - - | - - - - ")) == (
        "2 of 2 notes over chords are chord tones; a note held over a change of chord counts for each chord.",
    )
    assert count_in_words(tones("| C | N.C. |", "E4 D C - | F4:2 G4:2 ")) == (
        "2 of 3 notes over chords are chord tones.",
        "2 notes sound without a chord.",
    )
    assert count_in_words(tones("| C |", "E4 - - - | E4 - - -")) == (
        "1 of 1 note over chords is a chord tone.",
        "1 note sounds without a chord.",
    )
    assert count_in_words(()) == ()


LETTERS = {"3": 3, "5": 5, "6": 6, "7": 7, "9": 2, "11": 4, "13": 6}


@given(relative_chords, st.integers(-6, 8))
def test_a_flat_or_sharp_name_is_on_its_own_letter_but_for_two(chord, above):
    """Of the spellings in use, but for E flat over C7, which is called a sharp ninth, and C sharp, a flat one."""
    tension = tension_of(chord, chord.root + above)
    if tension.strip("b#") in LETTERS and (above, tension) not in {(-3, "#9"), (7, "b9")}:
        assert above * 4 % 7 + 1 == LETTERS[tension.strip("b#")]


def test_signs_are_written_for_figures_alone():
    assert [in_signs(name, DEFAULT) for name in ("b9", "#11", "9", "maj7", "dim7", "flat ninth", "bass")] == [
        "♭9", "♯11", "9", "maj7", "dim7", "flat ninth", "bass",
    ]  # fmt: skip
    assert in_signs("b9", PLAIN) == "b9"


def test_only_clashes_are_among_the_clashes():
    found = tones("| C |", "F4 - D4 -")

    assert [str(tone.note.pitch) for tone in clashes(found)] == ["F4"]
