"""Every change can be taken back and made again."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, keys_of, numerals, picture, refusal, symbols

from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.respond import respond

CHANGES = [
    "| C | F | G7 |", "to C", "to C, G", "next", "back", "key G major", "voice none", "loop on",
    "degrees major", "plain on", "show --key D",
    'show "| D | A7 |" --to G', "open chart.toml",
]  # fmt: skip
NO_CHANGES = [
    "show", "show --to all", "to all", "keys", "key", "explain", "explain 2", "help", "list", "home", "to E minor",
    "borrow", "borrow C", "instead 2", "voice close", "degrees mode", "", "save copy", "key E minor",
]  # fmt: skip


def facts(session):
    """All a session holds but its links for undo."""
    return session[:5]


@pytest.fixture
def session(desk):
    after("| D | A7 |", "save chart")
    return after(f"E minor: {FALLING_BASS}")


@pytest.mark.parametrize("line", CHANGES)
def test_undo_takes_back_each_kind_of_change_and_redo_makes_it_again(line, session):
    changed = after(line, start=session)

    assert facts(changed) != facts(session)
    assert facts(after("undo", start=changed)) == facts(session)
    assert facts(after("undo", "redo", start=changed)) == facts(changed)
    assert facts(after("undo", "redo", "undo", start=changed)) == facts(session)


@pytest.mark.parametrize("line", NO_CHANGES)
def test_what_changes_nothing_needs_no_undo(line, session):
    assert after(line, start=session) == session


def test_a_long_way_back_and_forth_passes_every_stage(session):
    stages = [session]
    for line in CHANGES:
        stages.append(after(line, start=stages[-1]))
    distinct = [
        facts(stage) for place, stage in enumerate(stages) if not place or facts(stage) != facts(stages[place - 1])
    ]
    here = stages[-1]

    for stage in reversed(distinct[:-1]):
        here = after("undo", start=here)
        assert facts(here) == stage
    for stage in distinct[1:]:
        here = after("redo", start=here)
        assert facts(here) == stage
    assert picture(refusal("redo", here)) == ("there is nothing to redo", "", "")


def test_undo_past_the_first_chords_is_an_empty_stand():
    outcome = respond(after(FALLING_BASS), "undo")

    assert outcome.answer == NoteAnswer(("There is no progression now.",))
    assert outcome.session.tune is None
    assert symbols(after("redo", start=outcome.session)) == "Em Bm/D Am/C B7"


def test_undo_shows_where_one_is_now():
    outcome = respond(after(FALLING_BASS, "to C minor"), "undo")

    assert keys_of(outcome.answer) == ["E minor"]


def test_undo_after_key_brings_the_old_numerals_and_how_the_key_was_found():
    session = after(FALLING_BASS, "key G major", "undo")

    assert numerals(session) == "i v6 iv6 V7"
    assert session.tune.key_source == "inferred"


def test_a_new_change_after_undo_leaves_nothing_to_redo():
    session = after(FALLING_BASS, "to C minor", "undo", "to G minor")

    assert picture(refusal("redo", session)) == ("there is nothing to redo", "", "")


def test_looking_around_after_undo_leaves_the_redo():
    session = after(FALLING_BASS, "to C minor", "undo", "show --to all", "keys", "explain 1", "help", "redo")

    assert symbols(session) == "Cm Gm/Bb Fm/Ab G7"


def test_a_refused_line_after_undo_leaves_the_redo():
    session = after(FALLING_BASS, "to C minor", "undo")
    refusal("to H", session)

    assert symbols(after("redo", start=session)) == "Cm Gm/Bb Fm/Ab G7"
