"""``keys``: from chords, from a melody, from both, in the shell and at once; and its refusals."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import common_pitch_classes
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.notation.errors import InputError
from nearhand.notation.melody_notes import MelodyNote, parse_melody, write_melody_note
from nearhand.verbs.respond import respond

HINT = "write note names with blanks between, for example E4 F#4 G4, or E F# G"
FLAT_OR_SHARP = "write a capital letter A to G, then # or b if needed"


def best(answer):
    return str(answer.fits[0].key)


def test_chords_are_ranked_and_divided_into_regions():
    answer = answer_to("keys | C | F | G7 | C | Am | D7 | G | G |")

    assert len(answer.fits) == 5
    assert [str(region.key) for region in answer.regions] == ["C major", "G major"]
    assert answer.melody == ()


def test_a_melody_alone_needs_no_chords_and_has_no_regions():
    # E minor with its leading tone (common practice, no source)
    answer = answer_to('keys --melody "E4 F#4 G4 A4 B4 D#5 E5"')

    assert best(answer) == "E minor"
    assert (answer.chords, answer.regions) == ((), ())
    assert [str(note) for note in answer.melody] == ["E4", "F#4", "G4", "A4", "B4", "D#5", "E5"]


def test_a_melody_beside_chords_decides_what_the_chords_leave_open():
    # Am F C G is published in both keys (Open Music Theory, popRockHarmony-sscp)
    assert best(answer_to('keys "| Am | F | C | G |" --melody "A B C E D C B A G# A"')) == "A minor"
    assert best(answer_to('keys "| Am | F | C | G |" --melody "E G C D E F E D B C G C"')) == "C major"


def test_in_the_shell_a_melody_joins_the_tune_on_the_stand():
    session = after("| Am | F | C | G |")
    outcome = respond(session, 'keys --melody "E G C D E F E D B C G C"')

    assert best(outcome.answer) == "C major"
    assert len(outcome.answer.chords) == 4
    assert outcome.session == session


def test_a_melody_alone_leaves_the_shell_as_it_was():
    session = after()

    assert respond(session, "keys --melody E4").session == session


def test_a_tune_of_rests_is_found_by_its_melody():
    assert best(answer_to('keys "C: | N.C. |" --melody "A B C E D C B A G# A"')) == "A minor"


def test_plain_holds_for_a_melody_alone():
    assert answer_to("keys --melody E4 --plain").conventions.plain


@given(st.lists(st.builds(MelodyNote, common_pitch_classes, st.none() | st.integers(0, 9)), min_size=1))
def test_notes_written_are_read_again(notes):
    for plain in (False, True):
        written = [write_melody_note(note, plain) for note in notes]

        assert parse_melody(" ".join(written)) == tuple(notes)
        assert parse_melody(", ".join(written)) == tuple(notes)


@given(st.text(st.sampled_from("ABCDEFGH#b♭♯𝄪𝄫♮0123456789 ,-|x\n"), max_size=30))
def test_any_text_is_read_or_refused_at_a_place(text):
    try:
        notes = parse_melody(text)
    except InputError as error:
        assert 0 <= error.start <= error.end <= len(text) + 1
        assert error.what and error.hint
    else:
        assert notes


REFUSED = [
    ("E4 H4", "H is no note", "E4 ^H4", "write B for B natural and Bb for B flat"),
    ("e4", "e is no note", "^e4", "write the letter as a capital: E"),
    ("E4-F4", "- cannot follow a note", "E4^-F4", HINT),
    ("C44", "4 cannot follow a note", "C4^4", HINT),
    ("C4 | D", "| is no note", "C4 ^| D", FLAT_OR_SHARP),
    ("E#b", "b cannot follow a note", "E#^b", HINT),
    ("C####", "a note takes three sharps or flats at most", "C###^#",
     "write an enharmonic name with fewer accidentals"),
    ("EFG", "F cannot follow a note", "E^FG", HINT),
    (" , ", "there are no notes here", " , ^", HINT),
    ("", "there are no notes here", "", HINT),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence", "place", "hint"), REFUSED)
def test_notes_that_cannot_be_read_are_refused_at_their_place(text, sentence, place, hint):
    with pytest.raises(InputError) as caught:
        parse_melody(text)

    assert picture(caught.value) == (sentence, place, hint)


IN_A_LINE = [
    ('keys --melody "E4 H4"', "H is no note", 'keys --melody "E4 ^H4"', "write B for B natural and Bb for B flat"),
    ('keys --melody ""', "there are no notes here", 'keys --melody "^"', HINT),
    ("keys --melody=E4,x", "x is no note", "keys --melody=E4,^x", FLAT_OR_SHARP),
    ("keys --melody", "--melody needs a value", "keys --melody^",
     "a melody, alone or with the chords: E4 F#4 G4, or without octaves"),
    ("keys --melody E4 --key C", "--key is the key of chords, and there are none", "keys --melody E4 --key ^C",
     "leave --key away, or add chords"),
    ('keys "C: | N.C. |"', "there are no chords here to find a key from", "", "add chords, or --melody NOTES"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "sentence", "place", "hint"), IN_A_LINE)
def test_a_refusal_shows_its_place_in_the_line(line, sentence, place, hint):
    assert picture(refusal(line)) == (sentence, place, hint)


def test_a_refusal_loses_nothing():
    session = after(FALLING_BASS)

    refusal("keys --melody x", session)
    assert respond(session, "keys").answer.chords


@pytest.mark.parametrize(
    "text", ["F#4 " * 25_000, "C" + "#" * 100_000, "x" * 100_000, " " * 100_000, "C4," * 33_000 + "H"]
)
def test_a_hundred_thousand_characters_are_answered_in_one_sentence(text):
    line = f'keys --melody "{text}"'
    try:
        answer = answer_to(line)
    except InputError as error:
        assert "\n" not in error.what
        assert len(str(error)) < 400
    else:
        assert best(answer) in ("F# major", "F# minor")


@pytest.mark.parametrize("chord", ["Dbb", "Ebb", "Cbb"])
def test_a_chord_that_few_keys_can_spell_has_a_runner_up_all_the_same(chord):
    tune = after(chord).tune

    assert tune.runner_up != tune.key
