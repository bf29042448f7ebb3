"""``explain``: all chords of the tune in the shown key, or one of them."""

from __future__ import annotations

from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.verbs.respond import respond

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
    assert refusal('explain "N.C." 1 --key C').what == "there is no chord 1"


def test_a_chart_of_rests_alone_is_explained_with_nothing():
    assert explained('explain "| N.C. | N.C. |" --key C') == []
