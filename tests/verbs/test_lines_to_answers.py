"""One line, one answer: chords, a key in front of them, a verb, or nothing at all."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, keys_of, numbers, numerals, symbols

from nearhand.verbs.answers import MelodyAnswer, NoteAnswer, ViewsAnswer
from nearhand.verbs.borrow import BorrowAnswer
from nearhand.verbs.cadences import CadencesAnswer
from nearhand.verbs.completion import CompletionAnswer
from nearhand.verbs.difficulty import DifficultyAnswer
from nearhand.verbs.explain import ExplainAnswer
from nearhand.verbs.helping import HelpAnswer, RunAnswer
from nearhand.verbs.instead import InsteadAnswer
from nearhand.verbs.keys import KeysAnswer
from nearhand.verbs.list_charts import ListAnswer
from nearhand.verbs.others import OthersAnswer
from nearhand.verbs.parts import PartsAnswer
from nearhand.verbs.recent import RecentAnswer
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.setting import SettingsAnswer
from nearhand.verbs.singer import SingerAnswer
from nearhand.verbs.table import VERBS
from nearhand.verbs.tones import TonesAnswer
from nearhand.verbs.touring import TourAnswer
from nearhand.verbs.voice_lines import LinesAnswer
from nearhand.verbs.why import WhyAnswer
from nearhand.voicing.wishes import DEFAULT_WISHES

LINES_WITH_A_TUNE = [
    ("show", ViewsAnswer), ("melody 5 1' 7 #7", MelodyAnswer), ("keys", KeysAnswer),
    ("cadences", CadencesAnswer), ("explain", ExplainAnswer),
    ("tones", TonesAnswer),
    ("borrow", BorrowAnswer), ("instead 2", InsteadAnswer), ("lines", LinesAnswer), ("why 2", WhyAnswer),
    ("others", OthersAnswer), ('singer --tune "5 3" --range alto', SingerAnswer), ("parts", PartsAnswer),
    ("difficulty", DifficultyAnswer),
    ("list", ListAnswer), ("completion bash", CompletionAnswer),
    ("to C minor", ViewsAnswer), ("next", ViewsAnswer), ("back", ViewsAnswer), ("home", ViewsAnswer),
    ("octave up", MelodyAnswer), ("up", ViewsAnswer), ("down 2", ViewsAnswer),
    ("key G major", ViewsAnswer), ("relative", ViewsAnswer), ("parallel", ViewsAnswer),
    ("voice drop2", ViewsAnswer), ("loop on", ViewsAnswer),
    ("left fifth", ViewsAnswer), ("span tenth", ViewsAnswer), ("register E3 F5", ViewsAnswer),
    ("top still", ViewsAnswer), ("pin 2", ViewsAnswer), ("weigh leap 2", ViewsAnswer),
    ("degrees major", ViewsAnswer), ("sevenths scale", ViewsAnswer), ("symbols jazz", ViewsAnswer),
    ("figures raised", ViewsAnswer), ("sing syllables", ViewsAnswer), ("way up", ViewsAnswer),
    ("names german", ViewsAnswer), ("plain on", ViewsAnswer),
    ("colours off", ViewsAnswer),
    ("layout spoken", ViewsAnswer), ("paging off", NoteAnswer),
    ("set", SettingsAnswer),
    ("save stairs", NoteAnswer), ("open stairs.toml", ViewsAnswer), ("recent", RecentAnswer),
    ("undo", ViewsAnswer), ("redo", ViewsAnswer), ("recover", NoteAnswer), ("help minor", HelpAnswer),
    ("run 2", RunAnswer), ("tour", TourAnswer), ("quit", NoteAnswer),
]  # fmt: skip


def test_there_is_a_line_for_every_verb():
    assert [line.split()[0] for line, _ in LINES_WITH_A_TUNE if line != "save stairs"] == [
        verb.name for verb in VERBS if verb.name != "save"
    ]


def test_every_verb_answers_in_one_long_session(desk):
    session = after(FALLING_BASS)

    for line, kind in LINES_WITH_A_TUNE:
        outcome = respond(session, line)
        assert isinstance(outcome.answer, kind), line
        session = outcome.session


def test_an_empty_line_is_answered_with_nothing_and_changes_nothing():
    session = after(FALLING_BASS)

    for line in ("", " ", "\t \n"):
        outcome = respond(session, line)
        assert outcome.answer == NoteAnswer(())
        assert outcome.session is session
        assert not outcome.leaves


@pytest.mark.parametrize("line", ["quit", "exit", "  quit  "])
def test_quit_leaves_and_keeps_the_session(line):
    session = after(FALLING_BASS)

    outcome = respond(session, line)

    assert outcome.leaves
    assert outcome.session == session


def test_no_other_verb_leaves(desk):
    session = after(FALLING_BASS, "melody 5 1' 7 #7")

    assert not any(
        respond(session, line).leaves
        for line, _ in LINES_WITH_A_TUNE
        if line not in ("quit", "redo", "run 2", "open stairs.toml")
    )


def test_chords_need_no_verb():
    # common practice, no source: i, minor v, iv and V7 of E minor, three of them over their thirds
    session = after(FALLING_BASS)

    assert numerals(session) == "i v6 iv6 V7"
    assert str(session.shown_key) == "E minor"
    assert session.tune.key_source == "inferred"


# Key in front of chords, symbols, numerals. Spellings: diatonic chords of the keys, common practice, no source.
KEYS_IN_FRONT = [
    ("E minor: i v6 iv6 V7", "Em Bm/D Am/C B7", "i v6 iv6 V7"),
    ("C minor: | 1- | 5-/7 | 4-/6 | 57 |", "Cm Gm/Bb Fm/Ab G7", "i v6 iv6 V7"),
    ("Bb: I vi ii V", "Bb Gm Cm F", "I vi ii V"),
    ("D dorian: i IV", "Dm G", "i IV"),
    ("G major: | Em | Bm/D | Am/C | B7 |", "Em Bm/D Am/C B7", "vi iii6 ii6 V7/vi"),
    ("F#m:i V", "F#m C#", "i V"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "chords", "degrees"), KEYS_IN_FRONT)
def test_a_key_may_stand_in_front_of_the_chords(line, chords, degrees):
    session = after(line)

    assert (symbols(session), numerals(session)) == (chords, degrees)
    assert session.tune.key_source == "given"


def test_show_takes_the_chords_with_and_without_quotes():
    tunes = [
        after(line).tune
        for line in (FALLING_BASS, f'show "{FALLING_BASS}"', f"show {FALLING_BASS}", f"show '{FALLING_BASS}'")
    ]

    assert len(set(tunes)) == 1


def test_show_in_other_keys_leaves_the_shown_key():
    session = after(FALLING_BASS)

    outcome = respond(session, 'show --to "C minor,G minor"')

    assert keys_of(outcome.answer) == ["C minor", "G minor"]
    assert outcome.session == session


def test_show_with_a_key_reads_the_chords_in_it():
    # common practice, no source: the chords of E minor are vi, iii, ii of G major, and B7 leads to vi
    session = after(f'show "{FALLING_BASS}" --key "G major"')

    assert numerals(session) == "vi iii6 ii6 V7/vi"
    assert symbols(session) == "Em Bm/D Am/C B7"
    assert session.tune.key_source == "given"


def test_new_chords_take_the_place_of_the_old_ones():
    session = after(FALLING_BASS, "to C minor", "| D | A7 | D |")

    assert symbols(session) == "D A7 D"
    assert str(session.shown_key) == "D major"


def test_the_way_of_reading_stays_for_the_next_chords():
    session = after("degrees major", "voice none", "A minor: i bVI bVII i")

    assert symbols(session) == "Am F G Am"  # lowered sixth and seventh of A major, common practice, no source
    assert numbers(session) == "1- b6 b7 1-"
    assert session.voicing == "none"


def test_help_on_a_verb_names_it_and_help_alone_names_none():
    assert answer_to("help").verb is None
    assert answer_to("help show").verb.name == "show"
    assert answer_to("help exit").verb.name == "quit"
    assert all(answer_to(f"help {verb.name}").verb is verb for verb in VERBS)


def test_a_session_is_never_changed_in_place():
    session = after(FALLING_BASS)
    before = repr(session)

    for line in ("to C minor", "voice none", "key G major", "| C | F |", "loop on"):
        respond(session, line)

    assert repr(session) == before
    assert Session() == Session(None, None, DEFAULT_WISHES, None)


def test_chords_in_quotes_are_shown_as_show_shows_them():
    session = after("loop on")

    for line in ('"| Em | B7 |"', "'| Em | B7 |' --voicing drop2", ' "| Em |" --to "C minor" '):
        assert respond(session, line) == respond(session, f"show {line}")


def test_a_chart_of_rests_alone_is_shown():
    answer = answer_to("C: | N.C. | N.C. |")

    assert [seen.chord for view in answer.views for seen in view.chords] == [None, None]
