"""Elimination of signatures: which are left, in words, and the laws of both."""

from __future__ import annotations

import pytest
from harmony_examples import key, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.elimination import elimination_in_words
from nearhand.harmony.signatures import accidentals_in_words, signatures_left
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass

places = st.integers(-8, 12)
melodies = st.lists(places.map(PitchClass), min_size=1, max_size=12)


def tune(names):
    return [note(name) for name in names.split()]


def told(names, conventions=PLAIN):
    return elimination_in_words(tune(names), None, conventions)


# Signatures by the order of sharps F C G D A E B and of flats B E A D G C F (Open Music Theory, key signatures), worked
# out by hand; raised degrees of minor as in any table of harmonic and melodic minor scales.
LEFT = [
    ("C D E F G A B", [0], "No Bb and no F#: no sharps or flats."),
    ("G A B C D E F#", [1], "F#, but no C#: one sharp."),
    ("D E F# G A B C#", [2], "F# and C#, but no G#: two sharps."),
    ("F G A Bb C D E", [-1], "Bb, but no Eb: one flat."),
    ("Bb C D Eb F G A", [-2], "Bb and Eb, but no Ab: two flats."),
    ("Ab Bb C Db Eb F G", [-4], "Bb, Eb, Ab and Db, but no Gb: four flats."),
    ("C# D# E# F# G# A# B#", [7], "F#, C#, G#, D#, A#, E# and B#: seven sharps."),
    ("Cb Db Eb Fb Gb Ab Bb", [-7], "Bb, Eb, Ab, Db, Gb, Cb and Fb: seven flats."),
    ("C# G A", [2], "C#, and so F# too, but no G#: two sharps."),
    ("Eb A C", [-2], "Eb, and so Bb too, but no Ab: two flats."),
    ("G A B D E", [0, 1, 2], "No Bb and no G#; F and C are missing: no sharps or flats, one sharp or two sharps."),
    ("C D E G A", [-1, 0, 1], "No Eb and no C#; B and F are missing: one flat, no sharps or flats or one sharp."),
    ("F A Bb C", [-2, -1], "Bb, but no Ab; E is missing: two flats or one flat."),
    ("F# A B D E", [1, 2, 3],
     "F#, but no D#; C and G are missing: one sharp, two sharps or three sharps."),
    ("E", [-1, 0, 1, 2, 3, 4, 5], "Few notes decide little: anything from one flat to five sharps."),
    ("A B C D E F G# A", [0], "No Bb and no F#: no sharps or flats. G# is the raised seventh of A minor."),
    ("D E F G A Bb C# D", [-1], "Bb, but no Eb: one flat. C# is the raised seventh of D minor."),
    ("E F# G A B C D# E", [1], "F#, but no C#: one sharp. D# is the raised seventh of E minor."),
    ("C D Eb F G Ab B C", [-3],
     "Eb and Ab, and so Bb too, but no Db: three flats. B is the raised seventh of C minor."),
    ("A B C D E F# G# A G F E D C B A", [0],
     "No Bb and F as well as F#: no sharps or flats. F# and G# are the raised sixth and seventh of A minor."),
    ("G A B C D E F# C# D G C", [1], "F#, but more C than C#: one sharp. C# lies outside."),
    ("F G A B Bb C D E Bb Eb F A E", [-1], "Bb, but more E than Eb: one flat. Eb and B lie outside."),
    ("C D E F F# G A B", [0, 1],
     "No signature holds all notes: with no sharps or flats F# lies outside, with one sharp F."),
    ("C Db D Eb E F Gb G Ab A Bb B", [-6, -5, -4, -3, -2, -1, 0, 1],
     "So many signatures hold the notes alike, none of them all: nothing can be told."),
    ("C C# D D# E F F# G G# A A# B C", [-1, 0, 1, 2, 3, 4, 5],
     "So many signatures hold the notes alike, none of them all: nothing can be told."),
]  # fmt: skip


@pytest.mark.parametrize(("names", "signatures", "words"), LEFT, ids=[row[0] for row in LEFT])
def test_signatures_are_eliminated_by_the_accidentals_that_sound(names, signatures, words):
    assert [left.signature for left in signatures_left(tune(names))] == signatures
    assert told(names) == words


def test_signs_and_languages_are_those_of_the_conventions():
    assert told("Bb C D Eb F G A", DEFAULT) == "B♭ and E♭, but no A♭: two flats."
    assert told("Bb C D Eb F G A", DEFAULT._replace(names="german")) == "B and Es, but no As: two flats."


# By hand: two and three flats each leave one note in ten more or less outside, and the key says which it is.
KNOWN = [
    ("C D E F F# G A B", "C", [0], "No Bb and F as well as F#: no sharps or flats. F# only decorates other notes."),
    ("C D E F F# G A B", "G", [1], "F#, but no C#: one sharp. F only decorates other notes."),
    ("C D E F G A B", "D", [0], "No Bb and no F#: no sharps or flats."),
    ("C C D E F F F# G A B G E", "G", [0], "No Bb and more F than F#: no sharps or flats. F# only decorates "
     "other notes."),
    ("F E F A C B C A G F# G E F F F", "F", [-1], "No Eb: one flat. B and F# only decorate other notes."),
    ("C E G F# G A G E C D C# D B C", "C", [0], "No Bb: no sharps or flats. F# and C# only decorate other notes."),
    ("G C D Eb Eb D C B D C C", "c", [-3],
     "Eb, and so Bb too, but no Db; A is missing: three flats. B is the raised seventh of C minor."),
    ("D G A Bb Bb A G F# G G D G", "g", [-2],
     "Bb, but no Ab; E is missing: two flats. F# is the raised seventh of G minor."),
    ("A D C# D E F E D C# A D D", "d", [-1], "No Eb; B is missing: one flat. C# is the raised seventh of D minor."),
    ("E B G A B D# E B G A E E", "e", [1], "F and C are missing: one sharp. D# is the raised seventh of E minor."),
    ("A B C D E F G# A", "a", [0], "No Bb and no F#: no sharps or flats. G# is the raised seventh of A minor."),
    ("Bb D F Bb Ab G F Eb Gb Bb G D C E A Bb", "Bb", [-2],
     "Bb and Eb, but A as well as Ab: two flats. Gb, Ab and E lie outside."),
]  # fmt: skip


@pytest.mark.parametrize(("names", "home", "signatures", "words"), KNOWN)
def test_a_known_key_decides_between_signatures_that_leave_about_as_much_outside(names, home, signatures, words):
    assert [left.signature for left in signatures_left(tune(names), None, key(home))] == signatures
    assert elimination_in_words(tune(names), None, PLAIN, key(home)) == words


def test_many_notes_of_which_some_sound_longer_still_tell_their_signature():
    notes = tune("C Db D Eb E F Gb G Ab A Bb B")
    lengths = [4 if str(note) in "CDEFGAB" else 1 for note in notes]

    assert [left.signature for left in signatures_left(notes, lengths)] == [0]


def test_lengths_decide_which_of_two_notes_lies_outside():
    notes = tune("C D E F F# G A B")
    long_f, long_f_sharp = ([1, 1, 1, first, second, 1, 1, 1] for first, second in ((3, 1), (1, 3)))

    assert [(left.signature, *map(str, left.outside)) for left in signatures_left(notes, long_f)] == [(0, "F#")]
    assert [(left.signature, *map(str, left.outside)) for left in signatures_left(notes, long_f_sharp)] == [(1, "F")]


def test_a_close_on_the_tonic_of_minor_explains_its_raised_seventh():
    # D# long, G short, and neither C nor C#: E minor with its leading tone, or E major with a stranger
    notes, lengths = tune("E F# G A B D# E A"), [1, 1, 0.5, 0.5, 2, 2, 2, 2]

    assert [left.signature for left in signatures_left(notes[:-1], lengths[:-1])] == [1]
    assert [left.signature for left in signatures_left(notes, lengths)] == [4]


def test_without_that_close_a_raised_seventh_counts_half():
    # E minor or E major: three D# count less than two G, five count more
    few, many = (tune(f"E F# G A B D# E {more} G B A") for more in ("D# D#", "D# D# D# D#"))

    assert [left.signature for left in signatures_left(few)] == [1]
    assert [left.signature for left in signatures_left(many)] == [4]


def test_notes_beyond_all_plain_signatures_are_answered_all_the_same():
    assert [left.signature for left in signatures_left(tune("G## A## B## C## D## E## F###"))] == [15]


@pytest.mark.parametrize("call", [signatures_left, elimination_in_words])
def test_without_notes_there_is_no_signature(call):
    with pytest.raises(ValueError, match="a signature cannot be found without notes"):
        call([])
    with pytest.raises(ValueError, match="a note lasts longer than 0 beats"):
        call(tune("C"), [0])


@pytest.mark.parametrize("mode", [MAJOR, MINOR], ids=lambda mode: mode.name)
@pytest.mark.parametrize("signature", range(-7, 8))
def test_a_scale_leaves_its_own_signature_alone(signature, mode):
    home = Key(PitchClass(signature - mode.brightness), mode)

    assert [(left.signature, left.outside) for left in signatures_left(home.scale())] == [(signature, ())]
    assert elimination_in_words(home.scale()).endswith(f"{accidentals_in_words(signature)}.")


@pytest.mark.parametrize("form", ["harmonic", "melodic"])
@pytest.mark.parametrize("signature", range(-7, 8))
def test_the_raised_notes_of_minor_leave_its_signature_alone(signature, form):
    home = Key(PitchClass(signature - MINOR.brightness), MINOR)
    (left,) = signatures_left([*home.scale(form), home.tonic])

    assert left.signature == signature
    assert set(left.outside) == set(left.raised) == set(home.scale(form)) - set(home.scale())


@given(melodies)
def test_what_is_left_holds_every_note_where_any_signature_does(melody):
    left = signatures_left(melody)
    holding = [signature for signature in range(-7, 8) if all(-1 <= each.fifths - signature <= 5 for each in melody)]

    if holding:
        assert [each.signature for each in left] == holding
        assert not any(each.outside for each in left)
    for each in left:
        assert set(each.outside) == {one for one in melody if not -1 <= one.fifths - each.signature <= 5}


@given(st.lists(st.integers(-1, 5).map(PitchClass), min_size=5, max_size=12), st.integers(-4, 4))
def test_signatures_move_with_the_melody(melody, fifths):
    left = signatures_left([*melody, PitchClass(-1), PitchClass(4), PitchClass(8)])
    moved = signatures_left([each.up(fifths) for each in [*melody, PitchClass(-1), PitchClass(4), PitchClass(8)]])

    assert [(each.signature, each.outside) for each in moved] == [
        (each.signature + fifths, tuple(one.up(fifths) for one in each.outside)) for each in left
    ]


@given(melodies, st.sampled_from([PLAIN, DEFAULT]))
def test_every_melody_is_told_in_sentences(melody, conventions):
    words = elimination_in_words(melody, None, conventions)

    assert words[0].isupper()
    assert words.endswith(".")
    assert "  " not in words
    assert ": ." not in words
