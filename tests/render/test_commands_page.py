"""The page docs/commands.md against the table of verbs and against the program."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from nearhand import cli
from nearhand.render.commands_page import ENVIRONMENT, STATUSES, commands_page, needs_stand
from nearhand.verbs.recent import remember
from nearhand.verbs.table import VERBS
from nearhand.verbs.words import split_line

ROOT = Path(__file__).parents[2]
KEPT = (ROOT / "docs" / "commands.md").read_text(encoding="utf-8")
SECTIONS = dict(re.findall(r"^### (\S+)\n(.*?)(?=^##)", KEPT, re.S | re.M))
EXAMPLES = [
    (verb.name, example)
    for verb in VERBS
    for example in verb.examples
    if verb.one_shot and not needs_stand(verb, example)
]


def test_the_page_is_the_table_of_verbs():
    assert commands_page() == KEPT, (
        "docs/commands.md is old; write it anew:  python -m nearhand.render.commands_page > docs/commands.md"
    )


def test_every_verb_has_its_section_in_the_order_of_the_table():
    alone = [verb.name for verb in VERBS if verb.one_shot]

    assert list(SECTIONS) == alone + [verb.name for verb in VERBS if not verb.one_shot]


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_a_section_tells_all_of_a_verb(verb):
    section = SECTIONS[verb.name]
    shared = KEPT.partition("## Options that several verbs share")[2]

    assert verb.usage in section
    assert all(example in section for example in verb.examples)
    assert all(f"`{alias}`" in section for alias in verb.aliases)
    for option in verb.options:
        assert f"--{option.name}" in section
        assert f"- `{option.usage}`: " in section or f"- `{option.usage}`: " in shared
        assert all(f"`{choice}`" in section + shared for choice in option.choices)


def test_the_exit_statuses_are_those_of_the_program():
    assert [status for status, _ in STATUSES] == [cli.OK, cli.REFUSED, cli.INTERRUPTED]


def test_every_variable_that_is_read_is_told():
    read = {
        name
        for path in (ROOT / "src").rglob("*.py")
        for name in re.findall(r"""environ(?:ment)?(?:\.get\(|\[)["'](\w+)""", path.read_text(encoding="utf-8"))
    }

    assert {"COLUMNS", "NO_COLOR", "TERM"} <= read
    assert read <= {name for names, _ in ENVIRONMENT for name in names.split(", ")}


@pytest.mark.parametrize(("verb", "example"), EXAMPLES, ids=[example for _, example in EXAMPLES])
def test_an_example_of_a_command_line_is_answered(verb, example, tmp_path, monkeypatch, capsys):
    (tmp_path / "progressions").mkdir()
    for name in ("waltz.toml", "progressions/waltz.toml"):
        (tmp_path / name).write_text('key = "G minor"\n[[sections]]\nchords = "| Gm | D7 |"\n', encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
        monkeypatch.setenv(name, str(tmp_path))
    remember("waltz.toml")  # as open and save do

    status = cli.main([word.text for word in split_line(example)])

    shown = capsys.readouterr()
    assert (status, shown.err) == (0, "")
    assert shown.out


def test_what_needs_the_stand_is_no_command_line():
    for verb in VERBS:
        for example in verb.examples:
            if verb.one_shot and needs_stand(verb, example):
                assert f"nearhand {example}" not in SECTIONS[verb.name].splitlines()
                assert cli.main(example.split()) == cli.REFUSED
