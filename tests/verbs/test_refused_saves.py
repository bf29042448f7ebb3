"""A save that is refused leaves the disk as it was: no half file, nothing lost."""

from __future__ import annotations

import errno
import os

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal, symbols


def contents(folder):
    """Every file of a folder with its bytes."""
    return {path.name: path.read_bytes() if path.is_file() else None for path in folder.iterdir()}


def test_a_file_that_is_there_is_not_written_over_unless_told(desk):
    session = after(FALLING_BASS, "save it", "to C minor")
    before = contents(desk)

    assert picture(refusal("save it", session)) == (
        "it.toml exists already",
        "^it.toml",
        "save it.toml --over writes over it",
    )
    assert contents(desk) == before

    answer_to("save it --over", session)
    assert symbols(after("open it.toml")) == "Cm Gm/Bb Fm/Ab G7"
    assert list(contents(desk)) == ["it.toml"]


def test_a_missing_folder_is_refused_and_not_made(desk):
    assert picture(refusal("save attic/it", after(FALLING_BASS))) == (
        "attic/it.toml cannot be written: No such file or directory",
        "^attic/it.toml",
        "choose another folder or name",
    )
    assert contents(desk) == {}


def test_a_file_in_the_place_of_a_folder_is_refused(desk):
    (desk / "attic").write_text("a file")

    assert refusal("save attic/it", after(FALLING_BASS)).what == "attic/it.toml cannot be written: Not a directory"
    assert contents(desk) == {"attic": b"a file"}


def test_a_folder_of_that_name_is_refused_even_with_over(desk):
    (desk / "it.toml").mkdir()

    assert refusal("save it", after(FALLING_BASS)).what == "it.toml exists already"
    assert refusal("save it --over", after(FALLING_BASS)).what == "it.toml cannot be written: Is a directory"
    assert contents(desk) == {"it.toml": None}


@pytest.mark.parametrize("name", ["a\0b", "\ud800"])
def test_a_name_that_no_file_can_have_is_refused(name, desk):
    assert refusal(f"save {name}", after(FALLING_BASS)).hint == "choose another folder or name"
    assert contents(desk) == {}


def test_a_name_that_is_too_long_is_refused(desk):
    error = refusal(f"save {'x' * 300}", after(FALLING_BASS))

    assert error.what.endswith("cannot be written: File name too long")
    assert contents(desk) == {}


@pytest.mark.parametrize("step", ["replace", "fsync"])
def test_a_disk_that_fails_at_any_step_keeps_the_old_file(step, desk, monkeypatch):
    session = after(FALLING_BASS, "save it", "to C minor")
    before = contents(desk)

    def fail(*_):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, step, fail)

    assert picture(refusal("save it --over", session)) == (
        "it.toml cannot be written: No space left on device",
        "^it.toml",
        "choose another folder or name",
    )
    assert contents(desk) == before


def test_a_break_while_writing_leaves_no_half_file(desk, monkeypatch):
    session = after(FALLING_BASS, "save it")
    before = contents(desk)

    def interrupt(*_):
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupt)
    with pytest.raises(KeyboardInterrupt):
        answer_to("save it --over", session)

    assert contents(desk) == before


def test_the_new_file_takes_its_name_only_when_it_is_whole(desk, monkeypatch):
    session = after(FALLING_BASS, "save it", "to C minor")
    old, seen = contents(desk)["it.toml"], []
    replace = os.replace

    def look(source, target):
        seen.append((contents(desk)[os.path.basename(target)], contents(desk)[os.path.basename(source)]))
        replace(source, target)

    monkeypatch.setattr(os, "replace", look)
    answer_to("save it --over", session)

    assert seen == [(old, contents(desk)["it.toml"])]
    assert b"Gm/Bb" in seen[0][1]
