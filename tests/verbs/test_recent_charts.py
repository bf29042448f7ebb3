"""``recent``: the charts opened or saved lately, by number; missing ones marked."""

from __future__ import annotations

import errno
import json
import os

import pytest
from verbs.session_words import CHARTS, FALLING_BASS, after, answer_to, refusal, symbols

from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.recent import MOST, recent_charts, remember
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

CHART = 'title = "{}"\nkey = "C"\n[[sections]]\nchords = "| C | F |"\n'


@pytest.fixture
def home(desk, monkeypatch):
    """A folder to work in, and the player's data in a folder of it."""
    monkeypatch.setenv("XDG_DATA_HOME", str(desk / "data"))  # XDG Base Directory Specification
    for name in ("a", "b", "c"):
        (desk / f"{name}.toml").write_text(CHART.format(name.upper()))
    return desk


def test_nothing_is_kept_before_a_chart_is_opened(home):
    assert text_of(draw(answer_to("recent"), Page(80))) == "No chart has been opened or saved yet."
    assert json.loads(json_answer(answer_to("recent"))) == {"schema": 1, "charts": []}


def test_the_last_one_comes_first_and_each_once(home):
    for name in ("a.toml", "b.toml", "a.toml", str(home / "b.toml"), "c.toml"):
        remember(name)

    assert recent_charts() == tuple(str(home / name) for name in ("c.toml", "b.toml", "a.toml"))


def test_open_save_and_recent_say_which_chart_they_are_about(home):
    session = after(FALLING_BASS)

    assert respond(session, "open a").chart == "a.toml"
    assert respond(session, "save new").chart == "new.toml"
    assert respond(session, "show").chart == ""
    remember("b.toml")
    outcome = respond(session, "recent 1")
    assert (outcome.chart, outcome.lines) == (str(home / "b.toml"), (f'open "{home}/b.toml"',))


def test_the_verbs_themselves_write_no_list(home):
    after("open a", "save new")

    assert recent_charts() == ()


def test_they_are_listed_with_numbers_titles_and_keys_and_missing_ones_are_marked(home):
    for name in ("a", "b", "c"):
        remember(f"{name}.toml")
    (home / "b.toml").unlink()
    (home / "a.toml").write_text('key = "H"\n[[sections]]\nchords = "C"')

    shown = text_of(draw(answer_to("recent"), Page(200)))

    assert shown.split("\n") == [
        f" 1  {home}/c.toml",
        "    C, C major, 2 bars",
        f" 2  {home}/b.toml",
        "    missing: there is no such file any more",
        f" 3  {home}/a.toml",
        "    'H' is no key",
        "recent 1 opens the first of these.",
    ]


def test_a_number_opens_one(home):
    remember("a.toml")
    remember("b.toml")
    session = after(FALLING_BASS, "recent 2")

    assert session.tune.title == "A"
    assert symbols(session) == "C F"
    assert symbols(after("undo", start=session)) == "Em Bm/D Am/C B7"


@pytest.mark.parametrize(
    ("line", "hint"), [("recent 3", "they are numbered 1 to 2"), ("recent 0", "they are numbered 1 to 2")]
)
def test_a_number_that_is_not_there_is_refused(line, hint, home):
    remember("a.toml")
    remember("b.toml")

    assert refusal(line).hint == hint


def test_a_missing_one_is_refused_when_it_is_opened(home):
    remember("a.toml")
    (home / "a.toml").unlink()

    assert refusal("recent 1").what == f"there is no file {home}/a.toml"


def test_at_most_so_many_are_kept(home):
    for number in range(MOST + 5):
        remember(f"{number}.toml")

    assert len(recent_charts()) == MOST == 20
    assert recent_charts()[0] == str(home / f"{MOST + 4}.toml")


def test_names_with_any_signs_come_back(home):
    names = ["two doors.toml", "a\nb.toml", "ä\\n.toml", "'\".toml", "♭.toml", "\udcff.toml"]
    for name in names:
        remember(name)

    assert [os.path.basename(path) for path in recent_charts()] == names[::-1]
    (home / "two doors.toml").write_text(CHART.format("Doors"))
    (home / '"x".toml').write_text(CHART.format("X"))
    remember('"x".toml')
    (line,) = respond(Session(), "recent 1").lines
    assert after(line).tune.title == "X"


def test_a_list_that_cannot_be_written_or_read_is_no_fault(home, monkeypatch):
    remember("a.toml")

    def fail(*_, **__):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "replace", fail)
    remember("b.toml")
    assert recent_charts() == (str(home / "a.toml"),)

    (home / "data" / "nearhand" / "recent").write_bytes(b"\xff\0\n" + b"x" * 100)
    assert recent_charts() == ()


def test_the_document_of_recent_charts(home):
    remember("a.toml")
    remember(str(CHARTS[0]))
    remember("gone.toml")

    document = json.loads(json_answer(answer_to("recent --json")))

    first, second, third = document["charts"]
    assert first == {"number": 1, "path": str(home / "gone.toml"), "error": "missing: there is no such file any more"}
    assert (second["number"], second["path"]) == (2, str(CHARTS[0]))
    assert third == {"number": 3, "path": str(home / "a.toml"), "title": "A", "key": "C major", "bars": 2}
