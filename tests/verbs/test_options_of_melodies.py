"""What the options of a melody ask for holds for one answer; the melody stays, in the key that is shown."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, symbols

from nearhand.theory.melody import UPWARD
from nearhand.verbs.answers import MelodyAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

NOTES = "1 2 3 5 | #7_ - 2 -"


def notes(session: Session) -> list[str]:
    """The notes of the melody where the session shows it."""
    answer = respond(session, "melody").answer
    assert isinstance(answer, MelodyAnswer)
    return [str(pitch) for pitch in answer.views[0].melody.pitches()]


@pytest.mark.parametrize(
    "line", [f"melody {NOTES} --plain --sing syllables --way up", f'show --melody "{NOTES}" --plain --voicing drop2']
)
@pytest.mark.parametrize("before", [(), (FALLING_BASS, "to C minor", "loop on", "voice none")])
def test_options_hold_for_one_answer_and_the_melody_stays(before, line):
    session = after(*before or ("key C minor",))
    new = respond(session, line).session

    assert new.tune.melody is not None and str(new.shown_key) == "C minor"
    assert (new.conventions, new.way, new.wishes) == (session.conventions, session.way, session.wishes)
    assert new.loop == (session.loop if before else None)
    # notes: each degree of C minor counted by hand, the leading tone raised
    assert notes(new)[:4] == ["C4", "D4", "Eb4", "G4"]
    assert notes(new)[4] == "B3"


@pytest.mark.parametrize("line", [f"melody {NOTES}", f'show --melody "{NOTES}"', "melody off"])
def test_another_melody_over_the_same_chords_leaves_them_in_the_key_they_are_shown_in(line):
    session = after(FALLING_BASS, "melody 1:4 | 2:4", "to G minor", "octave up", line)

    assert str(session.shown_key) == "G minor"
    assert session.octaves == 0
    assert symbols(session) == "Gm Dm/F Cm/Eb D7"


def test_the_way_that_was_chosen_stays_with_another_melody():
    session = after("way up", FALLING_BASS, f"melody {NOTES}")

    assert session.way == UPWARD


def test_a_chart_file_on_standard_input_is_read_as_one():
    text = 'key = "G"\n[[sections]]\nmelody = "5_ | 1 2 3 1 |"\n'
    answer = answer_to(f"melody '{text}'")

    assert isinstance(answer, MelodyAnswer)
    assert str(answer.views[0].key) == "G major"
    assert [str(pitch) for pitch in answer.views[0].melody.pitches()] == ["D3", "G3", "A3", "B3", "G3"]
