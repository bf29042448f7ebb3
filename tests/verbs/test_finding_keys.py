"""``keys``: from chords, from a melody, from both, in the shell and at once; and its refusals."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand import find_keys, parse_progression, with_melody
from nearhand.harmony.key_profiles import PROFILES
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import HINT
from nearhand.verbs.respond import respond


def best(answer):
    return str(answer.fits[0].key)


def test_chords_are_ranked_and_divided_into_regions():
    answer = answer_to("keys | C | F | G7 | C | Am | D7 | G | G |")

    assert len(answer.fits) == 5
    assert [str(region.key) for region in answer.regions] == ["C major", "G major"]
    assert (answer.melody, answer.notes) == (None, ())


def test_a_melody_alone_needs_no_chords_and_has_no_regions():
    # E minor with its leading tone (common practice, no source)
    answer = answer_to('keys --melody "E4 F#4 G4 A4 B4 D#5 E5"')

    assert best(answer) == "E minor"
    assert (answer.chords, answer.regions) == ((), ())
    assert [str(note) for note in answer.notes] == ["E", "F#", "G", "A", "B", "D#", "E"]
    assert answer.lengths is None


def test_the_lengths_of_a_melody_count():
    # the same notes, once resting on G and once on E (common practice, no source)
    on_g, on_e = (f'keys --melody "G{one} B A{one} F# E{two} D G{one} E{two}"' for one, two in ((":4", ""), ("", ":4")))

    assert best(answer_to(on_e)) == "E minor"
    assert answer_to(on_g).fits[0].share != answer_to(on_e).fits[0].share
    assert answer_to(on_e).lengths == (1, 1, 1, 1, 4, 1, 1, 4)


def test_a_melody_is_read_with_brackets_holds_rests_bars_and_commas():
    answer = answer_to('keys --melody "E4 | [F#4 G4] A4, B4 - | r D#5 E5:2 |"')

    assert [str(note) for note in answer.notes] == ["E", "F#", "G", "A", "B", "D#", "E"]
    assert [float(beats) for beats in answer.lengths] == [1, 0.5, 0.5, 1, 2, 1, 2]


def test_degrees_are_read_in_the_key_in_front_of_them():
    assert best(answer_to('keys --melody "G: 5_ 1 3 5 2 7_ 1"')) == "G major"


def test_a_tune_is_found_by_its_chords_and_its_own_melody():
    # Am F C G is published in both keys (Open Music Theory, popRockHarmony-sscp)
    chords = after("| Am | F | C | G |", "key C")
    answer = respond(respond(chords, "melody A4 B C E | D C B A | G# A - - ").session, "keys").answer

    assert best(answer) == "A minor"
    assert (len(answer.chords), len(answer.notes)) == (4, 10)
    assert best(respond(chords, "keys").answer) != "C minor"


def test_a_melody_on_the_stand_is_enough():
    answer = respond(after('melody "D4 F A D C# D"'), "keys").answer

    assert (best(answer), answer.chords, answer.regions) == ("D minor", (), ())


def test_the_melody_of_the_option_comes_before_that_of_the_tune():
    session = after('melody "D4 F A D C# D"')
    outcome = respond(session, 'keys --melody "C4 E G C"')

    assert best(outcome.answer) == "C major"
    assert outcome.session.tune.melody == session.tune.melody


@pytest.mark.parametrize("name", PROFILES)
def test_a_profile_is_chosen_by_its_name(name):
    answer = answer_to(f'keys --melody "E F# G A B D# E" --profile {name}')

    assert (answer.profile, best(answer)) == (name, "E minor")


def test_the_library_finds_keys_with_lengths_profiles_and_the_tunes_own_melody():
    tune = with_melody(parse_progression("| Am | F | C | G |", parse_key("C")), "A4 B C E | D C B A | G# A - -")

    assert str(find_keys(tune)[0].key) == "A minor"
    assert str(find_keys(tune, "E4 G C D E F E D B C G C")[0].key) == "C major"
    assert find_keys(melody="C4:3 D E", profile="temperley") != find_keys(melody="C4:3 D E")
    with pytest.raises(ValueError, match=r"profile must be one of albrecht-shanahan, .* \(got 'none'\)"):
        find_keys(melody="C4", profile="none")
    with pytest.raises(ValueError, match="a key cannot be found without notes"):
        find_keys()


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


IN_A_LINE = [
    ('keys --melody "E4 H4"', "H4 is no note", 'keys --melody "E4 ^H4"', "write B for B natural and Bb for B flat"),
    ('keys --melody "E4 5 3"', "5 needs a key to be read in", 'keys --melody "E4 ^5 3"',
     'put the key in front, as in "G: 5 3 1", or write note names'),
    ('keys --melody "do re mi"', "do needs a key to be read in", 'keys --melody "^do re mi"',
     'put the key in front, as in "G: 5 3 1", or write note names'),
    ('keys --melody "r - 0"', "there are only rests here", 'keys --melody "r - 0^"', "write notes: E4 G4 B4"),
    ('keys --melody "C4 [D E"', "a bracket is not closed", 'keys --melody "C4 ^[D E"', "close it: [5 6]"),
    ("keys --melody C4 --profile krumhansl-kesler", "'krumhansl-kesler' cannot follow --profile",
     "keys --melody C4 --profile ^krumhansl-kesler", "did you mean krumhansl-kessler?"),
    ("keys --melody C4 --profile mine", "'mine' cannot follow --profile", "keys --melody C4 --profile ^mine",
     f"write one of {', '.join(PROFILES)}"),
    ('keys --melody ""', "there are no notes here", 'keys --melody "^"', HINT),
    ("keys --melody=E4,x", "'x' is no note", "keys --melody=E4,^x", HINT),
    ("keys --melody", "--melody needs a value", "keys --melody^",
     "a melody, alone or with the chords: E4 F#4 [G4 A4], or without octaves"),
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
