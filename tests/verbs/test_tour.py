"""The tour: ten steps that fit any screen, each with a line that answers from wherever one comes."""

from __future__ import annotations

import pytest
from verbs.session_words import after, answer_to, refusal, symbols

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.helping import RunAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.touring import STEPS, TourAnswer

NUMBERS = range(1, len(STEPS) + 1)
ROOM_FOR_THE_PROMPT = 3


def lines_of(answer: object, width: int) -> list[str]:
    return text_of(draw(answer, Page(width))).split("\n")


def test_there_are_ten_steps():
    assert len(STEPS) == 10


@pytest.mark.parametrize("number", NUMBERS)
@pytest.mark.parametrize(("columns", "rows"), [(80, 24), (40, 20)])
def test_every_step_fits_the_screen_beside_the_prompt(number, columns, rows):
    lines = lines_of(answer_to(f"tour {number}"), columns)

    assert len(lines) + ROOM_FOR_THE_PROMPT <= rows
    assert max(map(len, lines)) <= columns
    assert lines[0] == f"Step {number} of 10: {STEPS[number - 1].title}"


@pytest.mark.parametrize("number", NUMBERS)
def test_a_step_says_in_two_or_three_lines_what_to_type_and_why(number):
    _, *told, hint, example = lines_of(answer_to(f"tour {number}"), 80)

    assert 1 <= len(told) <= 3
    assert (hint, example.strip()) == ("Type this line, or run:", STEPS[number - 1].example)


def test_the_tour_walks_forth_and_back():
    session = after("tour")
    seen = [answer_to("tour").number]
    for _ in range(9):
        outcome = respond(session, "tour next")
        session = outcome.session
        seen.append(outcome.answer.number)

    assert seen == list(NUMBERS)
    assert refusal("tour next", session).what == "this is the last step"
    assert answer_to("tour back", session).number == 9
    assert answer_to("tour", session).number == 1
    assert refusal("tour back", after("tour")).what == "this is the first step"
    assert answer_to("tour next") == answer_to("tour")


def test_the_whole_tour_runs_in_one_session():
    session, shown = Session(), []
    for number in NUMBERS:
        step = respond(session, "tour next" if number > 1 else "tour")
        assert isinstance(step.answer, TourAnswer)
        ran = respond(step.session, "run")
        assert isinstance(ran.answer, RunAnswer)
        assert ran.answer.line == STEPS[number - 1].example
        session = ran.session
        shown.append(symbols(session))
        assert ran.answer.hint.startswith(
            f"tour next goes to step {number + 1} " if number < 10 else "That was the tour"
        )

    # the moves, spelled: common practice, no source
    assert shown[:3] == ["Em Bm/D Am/C B7", "Cm Gm/Bb Fm/Ab G7", "Fm Cm/Eb Bbm/Db C7"]
    assert shown[6] == shown[2]  # under the melody
    assert shown[7] == "Am Dm/F E7 Am"
    assert session.wishes.style == "close"  # undo took the family back


@pytest.mark.parametrize("number", NUMBERS)
def test_a_step_can_be_run_by_itself(number):
    answer = respond(after(f"tour {number}"), "run").answer

    assert max(map(len, lines_of(answer, 40))) <= 40


@pytest.mark.parametrize("number", NUMBERS)
def test_typing_the_line_does_what_run_does(number):
    session = after(*(step.example for step in STEPS[: number - 1]))
    ran = respond(after(f"tour {number}", start=session), "run")
    typed = respond(session, STEPS[number - 1].example)

    assert ran.answer.answer == typed.answer
    assert ran.session._replace(lesson=session.lesson, previous=None, undone=None) == typed.session._replace(
        previous=None, undone=None
    )


def test_what_the_steps_say_of_the_chords_is_so():
    assert "the minor v has B flat, V7 has B natural" in STEPS[1].text
    minor_v, dominant = (chord.tones for chord in after("C minor: v V7").tune.progression.chords())
    assert "Bb" in map(str, minor_v) and "B" in map(str, dominant)


def test_what_the_step_about_a_melody_says_is_so():
    melody = next(step for step in STEPS if step.title == "A melody")
    assert "7 is low over the minor v, raised as #7 over V7" in melody.text

    session = after(STEPS[0].example, melody.example)
    bars = session.tune.melody.bars
    names = [[str(session.tune.melody.tonic.up(note.interval)) for note in bar.notes] for bar in bars]

    # degrees of E minor, each a tone of its chord but for the second notes of bar 3: counted by hand
    assert names == [["B4", "G4", "E4"], ["F#4", "D4"], ["E4", "A4", "G4"], ["F#4", "D#4"]]
    _, minor_v, _, dominant = (chord.tones for chord in session.tune.progression.chords())
    assert "D" in map(str, minor_v) and "D#" in map(str, dominant)
    in_c = answer_to("melody", after("to C minor", start=session)).views[0].melody
    assert " ".join(map(str, in_c.pitches())) == "G4 Eb4 C4 D4 Bb3 C4 F4 Eb4 D4 B3"


def test_help_amid_the_tour_keeps_the_place():
    assert answer_to("tour next", after("tour 4", "help minor", "run 2")).number == 5


def test_the_tour_changes_nothing_by_itself():
    session = after("| C | F |", "to G")

    for line in ("tour", "tour next", "tour 7"):
        outcome = respond(session, line)
        assert outcome.session._replace(lesson=session.lesson) == session
        assert outcome.session.previous is session.previous
