"""``instead``: a chord is picked by its number, and its substitutes are sorted by how far they lie."""

from __future__ import annotations

from itertools import pairwise, permutations, product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.keys import parse_key
from nearhand.notation.numerals import parse_numeral
from nearhand.verbs.instead import least_motion
from nearhand.verbs.respond import respond

TURNAROUND = "C: | C | Am | Dm7 | G7 | C |"
NO_TUNE = ("there is no progression yet", "", 'write chords, for example "| Em | Bm/D | Am/C | B7 |", or open a chart')
NO_NUMBER = ("instead needs a chord's number", "instead^", "write for example  instead 2")
LOW, HIGH = 55, 76  # G3 to E5, where the right hand plays


def symbols(answer):
    return [
        " ".join(write_chord(chord.in_key(answer.key), PLAIN) for chord in offer.substitute.chords)
        for offer in answer.offers
    ]


def numerals(answer):
    return [" ".join(analysis.numeral(PLAIN) for analysis in offer.substitute.analyses) for offer in answer.offers]


def positions(tones):
    """All close positions of semitones above C between G3 and E5, worked out here."""
    tones = sorted(set(tones))
    for turn in range(len(tones)):
        turned = tones[turn:] + [tone + 12 for tone in tones[:turn]]
        for octave in range(0, 120, 12):
            notes = [tone + octave for tone in turned]
            if notes[0] >= LOW and notes[-1] <= HIGH:
                yield tuple(notes)


def size(before, after_it):
    """The least sum of semitones over every way to hand the notes of the smaller chord on (taxicab norm)."""
    small, large = sorted((before, after_it), key=len)
    return min(
        sum(abs(a - b) for a, b in zip(small, chosen, strict=True)) for chosen in permutations(large, len(small))
    )


def least_by_trying_all(chords, key):
    layers = [list(positions([tone.semitones for tone in chord.in_key(key).tones])) for chord in chords]
    return min(sum(size(*pair) for pair in pairwise(path)) for path in product(*layers))


def window(answer, offer=None):
    """The chords whose motion is told: the neighbours, and between them the substitute or the chord itself."""
    chords = answer.tune.progression.relative_chords
    place = answer.number - 1
    middle = [chords[place]]
    if offer is not None:
        middle = [*offer.substitute.chords, *(middle if offer.substitute.comes_before else [])]
    return [*chords[max(place - 1, 0) : place], *middle, *chords[place + 1 : place + 2]]


@pytest.mark.parametrize("number", [1, 2, 3, 4, 5])
@pytest.mark.parametrize("key", ["C", "E", "Ab", "F#"])
def test_the_motion_is_the_least_of_all_ways_to_play_the_chords(number, key):
    answer = answer_to(f"instead {number}", after(TURNAROUND, f"to {key}"))

    assert str(answer.key) == f"{key} major"
    assert answer.motion == least_by_trying_all(window(answer), answer.key)
    for offer in answer.offers:
        if len(window(answer, offer)) < 5:
            assert offer.motion == least_by_trying_all(window(answer, offer), answer.key)


@given(
    st.lists(st.sampled_from(["I", "ii7", "IV", "V7", "bVI", "vi", "viio7"]), min_size=1, max_size=3),
    st.sampled_from(["C", "Db", "A"]),
)
@settings(max_examples=40)
def test_least_motion_is_what_trying_all_positions_finds(texts, tonic):
    key = parse_key(tonic)
    chords = [parse_numeral(text, key.mode) for text in texts]

    assert least_motion(chords, key) == least_by_trying_all(chords, key)


def test_published_sizes_of_single_steps():
    # P and L move one semitone, R two; C to F three; by exhaustive search, and Tymoczko, Science 313, 2006 for the norm
    key = parse_key("C")
    for numerals_, semitones in (("I i", 1), ("I iii", 1), ("I vi", 2), ("I IV", 3), ("IV iv", 1), ("viio7 V7", 1)):
        assert least_motion([parse_numeral(text, key.mode) for text in numerals_.split()], key) == semitones


@pytest.mark.parametrize("number", [1, 2, 3, 4, 5])
def test_substitutes_are_sorted_by_new_tones_then_motion(number):
    offers = answer_to(f"instead {number}", after(TURNAROUND)).offers
    distances = [(len(offer.substitute.new), offer.motion) for offer in offers]

    assert offers
    assert distances == sorted(distances)


def test_g7_before_c_has_its_substitutes():
    # bII7, vii°7 and viiø7 for V7: R. Hutchinson, Music Theory for the 21st-Century Classroom, "Turnaround progression"
    # and "Secondary diminished chords"; the others are common practice, no source
    answer = answer_to("instead 4", after(TURNAROUND))

    assert set(symbols(answer)) == {"G", "G7sus4", "Bdim7", "Bm7b5", "Em7", "Gm7", "Db7", "Bb7", "Am7 D7"}
    assert symbols(answer)[0] == "G"


def test_the_chords_of_a_turnaround_have_their_tritone_substitutes():
    # E7 A7 D7 G7 may be E7 Eb7 D7 Db7 (Hutchinson, "Turnaround progression")
    session = after("C: E7 A7 D7 G7 C")

    for number, symbol in ((2, "Eb7"), (4, "Db7")):
        assert symbol in symbols(answer_to(f"instead {number}", session))


@pytest.mark.parametrize("key", ["Db", "D", "Eb", "E", "F", "Gb", "G", "Ab", "A", "Bb", "B"])
def test_in_every_key_the_same_substitutes_are_offered(key):
    here, there = after(TURNAROUND), after(TURNAROUND, f"to {key}")

    for number in range(1, 6):
        ours, theirs = (answer_to(f"instead {number}", session) for session in (here, there))
        assert sorted(numerals(ours)) == sorted(numerals(theirs))
        tones = {offer.substitute for offer in ours.offers}
        assert tones == {offer.substitute for offer in theirs.offers}


def test_rests_are_not_counted():
    session = after("C: | C | N.C. | F G7 | N.C. | C |")

    assert answer_to("instead 3", session).original.numeral() == "V7"
    assert window(answer_to("instead 1", session))[1].root == -1  # F follows C, whatever is silent between


def test_a_chart_and_a_number_stand_together_and_a_key_may_be_given():
    answer = answer_to('instead "| Dm7 | G7 | C |" 2 --key C --degrees major')

    assert (str(answer.key), answer.number, answer.original.numeral()) == ("C major", 2, "V7")
    assert answer.conventions.degrees == "major"
    assert answer_to("instead 1 4 57 1 3 --key C").original.numeral() == "V7"


def test_the_bass_of_the_chord_is_left_out_of_its_substitutes():
    plain, over = (answer_to(f"instead C: | C | {chord} | C | 2") for chord in ("G7", "G7/B"))

    assert symbols(plain) == symbols(over)
    assert [offer.motion for offer in plain.offers] == [offer.motion for offer in over.offers]


def test_a_chord_alone_has_no_neighbours_to_move_from():
    answer = answer_to("instead C: C 1")

    assert answer.motion == 0
    assert {offer.motion for offer in answer.offers if not offer.substitute.comes_before} == {0}


def test_a_chord_with_double_flats_has_its_easier_name():
    answer = answer_to("instead Ab: Ab Eb7 Ab 2")
    easier = {
        symbol: [write_chord(chord, PLAIN) for chord in offer.easier if chord is not None]
        for symbol, offer in zip(symbols(answer), answer.offers, strict=True)
    }

    assert easier["Bbb7"] == ["A7"]
    assert sum(map(len, easier.values())) == 1


def test_asking_changes_nothing():
    session = after(FALLING_BASS, "to C minor")

    assert respond(session, "instead 2").session == session


def test_a_number_is_needed():
    session = after(FALLING_BASS)

    assert picture(refusal("instead", session)) == NO_NUMBER
    assert refusal("instead", session).wanted == "a chord's number"
    assert picture(refusal('instead "| C | F |"')) == (NO_NUMBER[0], 'instead "| C | F |"^', NO_NUMBER[2])
    assert refusal("instead | Em | ²", session).what == NO_NUMBER[0]


def test_a_tune_is_needed():
    assert picture(refusal("instead")) == NO_TUNE
    assert picture(refusal("instead 2")) == NO_TUNE


@pytest.mark.parametrize("number", ["0", "5", "10000000000", "9" * 5000])
def test_a_number_that_no_chord_has_is_refused(number):
    error = refusal(f"instead {number}", after(FALLING_BASS))

    assert (error.what, error.hint) == (f"there is no chord {number[:12]}", "the chords are numbered 1 to 4")
    assert (error.start, error.end) == (8, 8 + len(number))


def test_a_chart_that_cannot_be_read_is_refused_at_its_place():
    assert picture(refusal("instead | Em | Hm | 2")) == (
        "H is no chord root", "| Em | ^Hm |", "write B for B natural and Bb for B flat",
    )  # fmt: skip
    assert refusal('instead "N.C." 1 --key C').what == "there are no chords here"
