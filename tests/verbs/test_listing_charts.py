"""``list``: the charts of a folder, broken ones with the reason."""

from __future__ import annotations

import pytest
from verbs.session_words import CHARTS, FALLING_BASS, PROGRESSIONS, after, answer_to, refusal

CHART = 'title = "{}"\nkey = "C"\n[[sections]]\nchords = "| C | F |"\n'


def rows(answer):
    """Name of the file; title, or the sentence of the error."""
    return [(row.path, row.tune.title if row.tune else row.error.what) for row in answer.rows]


def test_every_chart_of_ours_is_listed_by_name_and_can_be_read():
    answer = answer_to(f"list {PROGRESSIONS}")

    assert [row.path for row in answer.rows] == [str(path) for path in CHARTS]
    assert all(row.tune and row.tune.title and row.error is None for row in answer.rows)


def test_a_broken_chart_is_listed_between_the_good_ones(desk):
    (desk / "a.toml").write_text(CHART.format("First"))
    (desk / "b.toml").write_text('key = "H"\n[[sections]]\nchords = "C"')
    (desk / "c.toml").write_text(CHART.format("Third"))
    (desk / "d.toml").write_bytes(b"\xff")
    (desk / "e.toml").mkdir()
    (desk / "notes.txt").write_text("no chart")

    assert rows(answer_to("list .")) == [
        ("./a.toml", "First"),
        ("./b.toml", "'H' is no key"),
        ("./c.toml", "Third"),
        ("./d.toml", "this is not UTF-8 text"),
        ("./e.toml", "./e.toml is a folder, not a chart"),
    ]


def test_without_a_folder_the_one_named_progressions_is_listed_else_this_one(desk):
    (desk / "here.toml").write_text(CHART.format("Here"))
    assert rows(answer_to("list")) == [("./here.toml", "Here")]

    (desk / "progressions").mkdir()
    (desk / "progressions" / "there.toml").write_text(CHART.format("There"))
    assert rows(answer_to("list")) == [("progressions/there.toml", "There")]


def test_a_folder_without_charts_gives_no_rows(desk):
    answer = answer_to("list .")

    assert (answer.folder, answer.rows) == (".", ())


def test_a_folder_name_may_hold_blanks(desk):
    (desk / "two doors").mkdir()
    (desk / "two doors" / "a.toml").write_text(CHART.format("First"))

    assert rows(answer_to("list two doors")) == rows(answer_to('list "two doors"')) == [("two doors/a.toml", "First")]


@pytest.mark.parametrize(
    ("line", "sentence"),
    [
        ("list nowhere", "there is no folder nowhere"),
        ("list a.toml", "a.toml cannot be read: Not a directory"),
        ("list a\0b", "a\0b cannot be read: its name cannot be used"),
    ],
)
def test_what_is_no_folder_is_refused(line, sentence, desk):
    (desk / "a.toml").write_text(CHART.format("First"))

    assert refusal(line).what.replace("?", "\0") == sentence


def test_listing_leaves_the_tune(desk):
    session = after(FALLING_BASS)

    assert after("list", start=session) == session


def test_plain_characters_may_be_asked_for(desk):
    assert answer_to("list --plain").conventions.plain
    assert not answer_to("list").conventions.plain
