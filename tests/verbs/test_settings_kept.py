"""``set``: settings in a file of the player's own; remarks stay, a broken file is told with its place and stays."""

from __future__ import annotations

import errno
import json
import os
import tomllib

import pytest
from verbs.session_words import FALLING_BASS, after, answer_to, picture, refusal

from nearhand.notation.errors import InputError
from nearhand.render.answers import draw
from nearhand.render.json_answers import json_answer
from nearhand.render.page import Page, text_of
from nearhand.verbs.folders import settings_path
from nearhand.verbs.lasting import SETTINGS
from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.settings_file import broken_in_words, with_settings

MEND = "mend it or move it away; until then set does not write to it"


@pytest.fixture
def file(desk, monkeypatch):
    """Where settings are kept in a home of its own; nothing is there yet."""
    monkeypatch.setenv("XDG_CONFIG_HOME", str(desk / "config"))  # XDG Base Directory Specification
    return desk / "config" / "nearhand" / "settings.toml"


def written(file, text):
    file.parent.mkdir(parents=True, exist_ok=True)
    file.write_text(text, encoding="utf-8")
    return text


def at_the_start():
    """A session as a shell begins it."""
    return with_settings(Session(), settings_path())


# Setting, what is typed, how a session then has it.
VALUES = [
    ("degrees", "major"), ("sevenths", "scale"), ("symbols", "jazz"), ("figures", "raised"), ("names", "german"),
    ("sing", "syllables"), ("way", "up"), ("plain", "on"), ("layout", "spoken"), ("colours", "off"),
    ("paging", "off"), ("voice", "drop2"),
    ("left", "fifth"), ("span", "tenth"), ("span", "13"), ("register", "Bb3 F#5"), ("register", "moves"),
]  # fmt: skip


def test_every_setting_is_tried_here():
    assert {name for name, _ in VALUES} == set(SETTINGS)


@pytest.mark.parametrize(("name", "value"), VALUES)
def test_a_setting_is_changed_here_and_kept_for_the_next_start(name, value, file):
    session = after(f"set {name} {value}")

    assert SETTINGS[name].value_in(session) == value
    assert tomllib.loads(file.read_text()) == {name: value}
    assert SETTINGS[name].value_in(at_the_start()) == value
    assert [SETTINGS[other].value_in(at_the_start()) for other in SETTINGS if other != name] == [
        SETTINGS[other].default for other in SETTINGS if other != name
    ]


@pytest.mark.parametrize(("name", "value"), VALUES)
def test_default_takes_a_setting_out_again(name, value, file):
    session = after("set symbols long", f"set {name} {value}", f"set {name} default")

    assert SETTINGS[name].value_in(session) == SETTINGS[name].default
    assert tomllib.loads(file.read_text()) == ({} if name == "symbols" else {"symbols": "long"})
    assert at_the_start().conventions.symbols == ("plain" if name == "symbols" else "long")


def test_off_takes_out_what_it_is_no_value_of(file):
    after("set symbols jazz", "set register G3 E5", "set plain off", "set colours off")
    after("set symbols off", "set register off")

    assert tomllib.loads(file.read_text()) == {"plain": "off", "colours": "off"}


def test_a_setting_can_be_undone_here(file):
    session = after(FALLING_BASS, "set symbols jazz", "undo")

    assert session.conventions.symbols == "plain"
    assert at_the_start().conventions.symbols == "jazz"  # what is kept is kept


def test_the_tune_is_shown_under_its_new_setting_and_the_file_is_named(file):
    answer = answer_to("set symbols long", after(FALLING_BASS))

    assert answer.advice == f"symbols long is kept in {file}."
    assert "Emin" in text_of(draw(answer, Page(80)))
    assert answer_to("set symbols jazz").lines == (f"symbols jazz is kept in {file}.",)
    assert answer_to("set symbols default").lines == ("symbols is plain again; nothing is kept.",)


def test_set_alone_lists_every_setting_with_what_it_means(file):
    session = after("set symbols jazz", "set names german", "names english", "voice drop2")

    rows = {row.name: row for row in answer_to("set", session).rows}

    assert list(rows) == list(SETTINGS)
    assert all(row.meaning for row in rows.values())
    told = {name: (row.value, row.kept) for name, row in rows.items() if row.kept or row.value != row.default}
    assert told == {"symbols": ("jazz", "jazz"), "names": ("english", "german"), "voice": ("drop2", None)}
    shown = " ".join(text_of(draw(answer_to("set", session), Page(40))).split())
    assert "symbols jazz, kept" in shown
    assert "names english, here alone; german is kept" in shown
    assert "voice drop2, here alone; close is the default" in shown
    assert "starts with it, pipes and one-shot commands do not" in shown


def test_set_with_a_name_alone_lists_that_one(file):
    assert [row.name for row in answer_to("set span").rows] == ["span"]
    assert not file.exists()


def test_the_document_of_the_settings(file):
    document = json.loads(json_answer(answer_to("set --json", after("set span tenth"))))

    assert (document["schema"], document["file"], document["broken"]) == (1, str(file), "")
    assert document["settings"][-2] == {
        "name": "span", "value": "tenth", "kept": "tenth", "default": "ninth", "meaning": SETTINGS["span"].meaning,
    }  # fmt: skip


def test_a_changed_setting_in_a_document(file):
    (row,) = json.loads(json_answer(answer_to("set span tenth --json")))["settings"]

    assert (row["name"], row["value"], row["kept"]) == ("span", "tenth", "tenth")
    assert tomllib.loads(file.read_text()) == {"span": "tenth"}


def test_the_words_that_may_follow_are_those_of_the_table():
    assert [name for name, _ in meanings_of("set")] == list(SETTINGS)


COMMENTED = """# my settings

symbols = 'jazz'   # as in the big band
 span="tenth"
# names = "german"
"""


def test_remarks_and_order_stay_when_one_setting_changes(file):
    written(file, COMMENTED)

    after("set symbols long", "set voice shell", "set span default")

    assert file.read_text() == (
        '# my settings\n\nsymbols = "long"  # as in the big band\n# names = "german"\nvoice = "shell"\n'
    )


def test_the_remark_of_a_setting_that_goes_stays(file):
    written(file, COMMENTED)
    after("set symbols default")

    assert "# as in the big band\n" in file.read_text()
    assert "jazz" not in file.read_text()


def test_a_sharp_in_a_value_is_no_remark(file):
    written(file, 'register = "F#3 E5" # low\n')
    after("set register G#3 E5")

    assert file.read_text() == 'register = "G#3 E5"  # low\n'


def test_true_false_and_numbers_are_read_as_words(file):
    written(file, "plain = true\npaging = false\nspan = 13\n")

    session = at_the_start()

    assert (session.conventions.plain, session.paging, session.wishes.span) == (True, False, 13)


def test_line_ends_of_any_system_and_an_empty_file_are_read(file):
    written(file, "")
    assert at_the_start() == Session()
    file.write_bytes(b'\xef\xbb\xbfsymbols = "jazz"\r\nspan = "tenth"\r\n')
    assert at_the_start().conventions.symbols == "jazz"


# Text of the file, line and sentence of the refusal.
BROKEN = [
    ("symbols = jazz\n", 1, "this is no TOML: Invalid value"),
    ('span = "tenth"\nsymbols = "jazz\n', 2, "this is no TOML: Illegal character '\\n'"),
    ('\n\nsymbls = "jazz"\n', 3, "there is no setting 'symbls'"),
    ('[looks]\nsymbols = "jazz"\n', 0, "there is no setting 'looks'"),
    ('symbols = "neat"\n', 1, "'neat' cannot follow symbols"),
    ('span = "tenth"\nregister = "G3 X5"\n', 2, "X is no note"),
    ("span = 5\n", 1, "a hand that spans less than a fifth plays no chord"),
    ("span = 5.5\n", 1, "span must be a word in quotes"),
    ("span = 99999999999999999999\n", 1, "span must be a word in quotes"),
    ('symbols = ["jazz"]\n', 1, "symbols must be a word in quotes"),
    ('symbols = ""\n', 1, "symbols needs a word"),
    ('symbols = "jazz"\nsymbols = "long"\n', 2, "this is no TOML: Cannot overwrite a value"),
    ("a = " + "[" * 60000, 0, "it cannot be read as settings"),
    ('symbols = "\x1b[31m"\n', 1, "this is no TOML: Illegal character '\\x1b'"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "line", "sentence"), BROKEN)
def test_a_broken_file_is_told_with_its_place_and_stays_as_it_is(text, line, sentence, file):
    written(file, text)

    with pytest.raises(InputError) as caught:
        at_the_start()
    assert (caught.value.source, caught.value.line, caught.value.what) == (str(file), line, sentence)
    place = f"{file}, line {line}" if line else str(file)
    assert broken_in_words(caught.value) == f"The settings in {place} are not used: {sentence}."

    error = refusal("set symbols jazz", after(FALLING_BASS))
    assert str(error).startswith(f"{file}")
    assert error.hint.endswith(MEND)
    assert file.read_text(encoding="utf-8") == text

    listed = answer_to("set")
    assert listed.broken == f"The settings in {place} are not used: {sentence}. {MEND.capitalize()}."
    assert [row.kept for row in listed.rows] == [None] * len(SETTINGS)


def test_a_file_that_is_no_text_stays_too(file):
    written(file, "")
    file.write_bytes(b'symbols = "jazz"\n\xff\xfe\0')

    error = refusal("set symbols jazz")

    assert (error.source, error.line, error.what) == (str(file), 2, "this is not UTF-8 text")
    assert file.read_bytes() == b'symbols = "jazz"\n\xff\xfe\0'


def test_a_folder_in_its_place_is_told(file):
    file.mkdir(parents=True)

    error = refusal("set symbols jazz")

    assert (error.source, error.what, error.hint) == (str(file), "it cannot be read: Is a directory", MEND)


def test_a_huge_file_is_told(file):
    written(file, "#" * 200_000)

    assert refusal("set symbols jazz").what == "it is too large for settings"


def test_a_file_without_permission_is_told(file, monkeypatch):
    written(file, 'symbols = "jazz"\n')

    def refuse(*_):
        raise PermissionError(errno.EACCES, os.strerror(errno.EACCES))

    monkeypatch.setattr("builtins.open", refuse)  # the tests may run as one who may read everything

    assert refusal("set symbols long").what == "it cannot be read: Permission denied"
    with pytest.raises(InputError, match="it cannot be read: Permission denied"):
        at_the_start()


def test_a_setting_written_over_several_lines_is_left_to_the_player(file):
    text = written(file, 'symbols = """\njazz"""\n')
    assert at_the_start().conventions.symbols == "jazz"

    error = refusal("set symbols long")

    assert error.what == "symbols is written there in a way that set cannot change"
    assert error.hint == f'write one line of it: symbols = "long"; {MEND}'
    assert file.read_text() == text


def test_a_key_in_quotes_is_left_to_the_player(file):
    text = written(file, '"symbols" = "jazz"\n')

    assert "set cannot change" in refusal("set symbols long").what
    assert file.read_text() == text


@pytest.mark.parametrize("step", ["replace", "fsync", "makedirs"])
def test_a_disk_that_fails_changes_nothing(step, file, monkeypatch):
    session = after(FALLING_BASS, "set symbols long")
    before = file.read_text()

    def fail(*_, **__):
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, step, fail)

    assert picture(refusal("set symbols jazz", session)) == (
        f"{file} cannot be written: No space left on device", "", "the setting is as it was",
    )  # fmt: skip
    assert file.read_text() == before
    assert os.listdir(file.parent) == ["settings.toml"]


def test_a_link_is_followed_and_stays_a_link(file, desk):
    kept = desk / "elsewhere.toml"
    kept.write_text('symbols = "jazz"\n')
    file.parent.mkdir(parents=True)
    file.symlink_to(kept)

    after("set span tenth")

    assert file.is_symlink()
    assert kept.read_text() == 'symbols = "jazz"\nspan = "tenth"\n'


def test_a_refused_value_writes_nothing(file):
    refusal("set symbols neat")
    refusal("set register C4 E4", after(FALLING_BASS))

    assert not file.exists()


def test_settings_of_two_shells_do_not_get_lost(file):
    one = after("set symbols jazz")
    after("set span tenth")
    after("set voice shell", start=one)

    assert tomllib.loads(file.read_text()) == {"symbols": "jazz", "span": "tenth", "voice": "shell"}


def test_the_journal_gets_the_setting_without_the_file(file):
    assert respond(Session(), "set symbols jazz").lines == ("symbols jazz",)
    assert respond(Session(), "set symbols default").lines == ("symbols plain",)


def test_nothing_is_read_where_there_is_no_file(file):
    assert at_the_start() == Session()
    assert not file.parent.exists()
