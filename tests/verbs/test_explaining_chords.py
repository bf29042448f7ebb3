"""``explain``: all chords of the tune in the shown key, or one of them."""

from __future__ import annotations

import json

import pytest
from hypothesis import given
from hypothesis import strategies as st
from timing import seconds_of
from verbs.session_words import CHARTS, FALLING_BASS, after, answer_to, picture, refusal

from nearhand.harmony.words import between_neighbours, instead_of_own, sentences
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

WITH_RESTS = "| C | N.C. | F G7 | N.C. |"


def explained(line, session=None):
    """Numbers and numerals of the chords that are explained."""
    return [(number, seen.analysis.numeral()) for number, seen in answer_to(line, session).numbered]


def test_all_chords_are_numbered_from_one():
    assert explained("explain", after(FALLING_BASS)) == [(1, "i"), (2, "v6"), (3, "iv6"), (4, "V7")]


def test_a_number_picks_one_chord():
    session = after(FALLING_BASS)

    assert [explained(f"explain {number}", session) for number in (1, 4, "04")] == [
        [(1, "i")],
        [(4, "V7")],
        [(4, "V7")],
    ]


def test_chords_and_a_number_may_stand_together():
    assert explained('explain "| C | E7 | Am |" 2 --key C') == [
        (2, "V7/vi")
    ]  # applied chord, common practice, no source


def test_a_number_alone_without_a_tune_is_a_chord_in_numbers():
    assert explained("explain 5 --key C") == [(1, "V")]


def test_rests_are_not_counted():
    assert explained("explain", after(WITH_RESTS)) == [(1, "I"), (2, "IV"), (3, "V7")]
    assert explained("explain 3", after(WITH_RESTS)) == [(3, "V7")]


def test_the_shown_key_is_explained():
    answer = answer_to("explain 4", after(FALLING_BASS, "to C minor"))

    assert str(answer.key) == "C minor"
    assert [str(tone) for tone in answer.numbered[0][1].chord.tones] == ["G", "B", "D", "F"]


def test_explaining_a_chord_changes_nothing():
    session = after(FALLING_BASS)

    assert respond(session, "explain 2").session == session


def test_a_number_that_is_too_large_is_refused_with_the_numbers_there_are():
    hint = "the chords are numbered 1 to 4"

    assert picture(refusal("explain 5", after(FALLING_BASS))) == ("there is no chord 5", "explain ^5", hint)
    assert picture(refusal("explain 0", after(FALLING_BASS))) == ("there is no chord 0", "explain ^0", hint)
    assert picture(refusal(f'explain "{FALLING_BASS}" 12')) == (
        "there is no chord 12",
        f'explain "{FALLING_BASS}" ^12',
        hint,
    )


def test_a_number_of_many_digits_is_refused_like_any_other():
    for digits in ("10000000000", "0000000019", "9" * 5000):
        error = refusal(f"explain {digits}", after(FALLING_BASS))

        assert error.what == f"there is no chord {digits[:12]}"
        assert error.hint == "the chords are numbered 1 to 4"


def test_a_chart_of_rests_alone_has_no_chord_to_pick():
    assert refusal('explain "N.C." 1 --key C').what == "there are no chords here"


def test_a_chart_of_rests_alone_is_explained_with_nothing():
    assert explained('explain "| N.C. | N.C. |" --key C') == []


def test_all_chords_come_with_what_happens_along_them_and_one_chord_does_not():
    # lament: Open Music Theory, harmonicSyntax2; turn of minor: the same, scales
    session = after(FALLING_BASS)
    whole, one = answer_to("explain", session), answer_to("explain 2", session)

    assert [cadence.bar for cadence in whole.along.cadences] == [4]
    assert [turn.position for turn in whole.along.turns] == [3]
    assert (whole.picked, one.picked, one.along) == (None, 1, None)


def drawn(line):
    """The page a line is answered with, in plain characters."""
    return text_of(draw(answer_to(line, Session(conventions=PLAIN)), Page(120, True)))


def test_one_chord_is_shown_between_its_neighbours_with_the_keys_own_chord_in_its_place():
    # Hutchinson, "Mode mixture": a borrowed chord stands in the place of the key's own chord on the same degree
    one, whole = drawn('explain "| C | Fm | C |" 2 --key C'), drawn('explain "| C | Fm | C |" --key C')

    assert "It stands between C (I) and C (I)." in one
    assert "The key itself has F (IV) in its place: this chord has Ab for A." in one
    assert "Along the way" not in one
    assert "Along the way" in whole
    assert "It stands between" not in whole


def test_a_rest_is_no_neighbour():
    assert "It stands between C (I) and G (V)." in drawn('explain "| C | N.C. | Fm | N.C. | G |" 2 --key C')


def test_a_neighbour_is_named_as_the_analysis_names_it():
    # Hutchinson, "Examples with augmented sixth chords": F7 before E is the German sixth
    page = drawn('explain "| Am | F7 | E | Am |" 3 --key "A minor"')

    assert "It stands between F7 (Ger65) and Am (i)." in page


def test_the_voicing_decides_whether_a_cadence_is_perfect():
    # Hutchinson, "Perfect authentic cadence": the tonic in the top voice
    chart = "explain C: | F | G7 | C |"
    voiced, unvoiced = answer_to(chart), answer_to(chart, after("voice none"))

    assert voiced.along.cadences[0].kind in ("perfect authentic", "imperfect authentic")
    assert unvoiced.along.cadences[0].kind == "authentic"


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_every_demo_chart_is_explained_chord_by_chord(path):
    session = after(f"open {path}")
    answer = answer_to("explain", session)

    assert [number for number, _ in answer.numbered] == list(range(1, len(answer.chords) + 1))
    assert all(view.chord is not None and view.analysis is not None for view in answer.chords)
    assert text_of(draw(answer, Page(80, False)))
    document = json.loads(json_answer(answer))
    assert len(document["chords"]) == len(answer.chords)


ROOTS = [letter + sign for letter in "CDEFGAB" for sign in ("", "b", "#")]
TAILS = ["", "m", "7", "m7", "maj7", "dim", "dim7", "m7b5", "aug", "sus4", "7sus4", "6", "m6", "9", "7b9", "7alt",
         "add9", "7(no5)", "7b5", "m(maj7)", "5"]  # fmt: skip
symbols = st.builds(
    lambda root, tail, bass: root + tail + bass,
    st.sampled_from(ROOTS),
    st.sampled_from(TAILS),
    st.just("") | st.sampled_from(ROOTS).map(lambda note: f"/{note}"),
)
entries = symbols | st.just("N.C.") | st.just("%")
bars = st.lists(entries, min_size=1, max_size=3).map(" ".join).filter(lambda bar: bar == "%" or "%" not in bar)
charts = (
    st.lists(bars, min_size=1, max_size=6)
    .filter(lambda found: found[0] != "%")
    .map(lambda found: f"| {' | '.join(found)} |")
)
key_names = st.sampled_from(["C", "Gb", "F# minor", "A minor", "Eb minor", "D dorian", "B lydian", "C# major"])


def test_the_kinds_of_the_random_charts_can_be_read():
    assert all(read_tail(tail) for tail in TAILS)


@given(charts, key_names, st.booleans())
def test_any_readable_progression_is_explained(chart, key_name, plain):
    session = Session(conventions=Conventions(plain=plain))
    answer = respond(session, f'explain "{chart}" --key "{key_name}"').answer
    page = text_of(draw(answer, Page(80, plain)))
    document = json.loads(json_answer(answer))

    assert len(answer.numbered) == len(document["chords"]) == len(answer.chords)
    assert page.isascii() or not plain
    assert len(answer.along.bars) == len(answer.chords)
    for place, view in enumerate(answer.chords, start=1):
        told = sentences(view.analysis, answer.key, PLAIN)
        written = document["chords"][place - 1]
        assert written["sentences"][: len(told)] == list(told)
        assert written["chord"] == place
        assert all(sentence.endswith(".") and "  " not in sentence for sentence in written["sentences"])


@given(charts, key_names, st.data())
def test_any_chord_of_a_readable_progression_is_explained_alone(chart, key_name, data):
    session = respond(Session(), f'show "{chart}" --key "{key_name}" --voicing none').session
    count = len(answer_to("explain", session).chords)
    if count:
        number = data.draw(st.integers(1, count))
        answer = answer_to(f"explain {number}", session)
        ((found, view),) = answer.numbered
        row = [chord.analysis for chord in answer.chords]
        before, after_ = ([None, *row][number - 1], [*row, None][number])
        document = json.loads(json_answer(answer))

        assert found == number
        assert view.analysis == row[number - 1]
        wanted = (
            instead_of_own(view.analysis, answer.key, PLAIN),
            between_neighbours(before, view.analysis, after_, answer.key, PLAIN),
        )
        assert document["chords"][0]["sentences"][-2:] == [text for text in wanted if text][-2:] or not all(wanted)
        assert text_of(draw(answer, Page(60, False)))


def seconds(count):
    """How long an explanation of so many chords takes; the best of three."""
    row = ["Am", "F7", "E7", "Am(maj7)", "Am7", "C#dim7", "Dm/F", "G7", "C/Bb", "F/A", "Db7", "C", "E", "C", "G/C", "C"]
    chart = " | ".join(row[place % len(row)] for place in range(count))
    best = float("inf")
    for _ in range(3):
        session = respond(Session(), f'show "| {chart} |" --key "A minor" --voicing none').session
        told = []
        best = min(best, seconds_of(lambda here=session, told=told: told.append(page_of_explanation(here))))
        assert len(told[0]) > count
    return best


def page_of_explanation(session):
    """The page of an explanation, as text."""
    return text_of(draw(respond(session, "explain").answer, Page(80, False)))


def test_two_thousand_chords_take_about_four_times_as_long_as_five_hundred():
    # linear time is 4 times, quadratic time 16; 8 leaves room for a busy machine
    seconds(200)
    assert seconds(2000) < 8 * seconds(500)
