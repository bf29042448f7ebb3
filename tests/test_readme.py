"""The examples of README and of the tutorials are run and compared with what they print."""

from __future__ import annotations

import ast
import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from nearhand.voicing.families import FAMILIES

ROOT = Path(__file__).parent.parent
README, HARMONY, VOICING, MELODY, SINGER, LIBRARY = (
    (ROOT / page).read_text(encoding="utf-8")
    for page in (
        "README.md",
        "docs/harmony.md",
        "docs/voicing.md",
        "docs/melody.md",
        "docs/singer.md",
        "docs/library.md",
    )
)
EXAMPLES = re.findall(r"```console\n\$ (.+?)\n(.*?)```", README, re.S)
LESSONS = re.findall(r"```console\n\$ (.+?)\n(.*?)```", HARMONY + VOICING + MELODY + SINGER + LIBRARY, re.S)
PROGRAM = f"{sys.executable} -m nearhand"


@pytest.mark.parametrize(("command", "shown"), EXAMPLES + LESSONS, ids=[command for command, _ in EXAMPLES + LESSONS])
def test_every_console_example_prints_what_the_page_says(command: str, shown: str) -> None:
    environment = {**os.environ, "COLUMNS": "80", "PYTHONPATH": str(ROOT / "src"), "PYTHONIOENCODING": "utf-8"}
    run = subprocess.run(
        re.sub(r"\bnearhand\b", PROGRAM, command, count=1),
        shell=True,
        cwd=ROOT,
        env=environment,
        capture_output=True,
        check=False,
    )

    assert (run.stdout + run.stderr).decode() == shown


def test_the_readme_has_its_examples() -> None:
    assert len(EXAMPLES) >= 6
    assert len(LESSONS) >= 40


def test_the_page_on_voicings_shows_every_family() -> None:
    shown = {name for name in FAMILIES if f"--voicing {name}" in VOICING}

    assert shown == set(FAMILIES) - {"close"}  # which is what is shown where none is asked for


def statements(page: str) -> list[tuple[str, str]]:
    """The Python statements of a page, each with the comment behind it or on the line below it."""
    found = []
    for code in re.findall(r"```python\n(.*?)```", page, re.S):
        lines = code.splitlines()
        nodes = ast.parse(code).body
        for node, end in zip(nodes, [*(other.lineno for other in nodes[1:]), len(lines) + 1], strict=True):
            behind = lines[node.end_lineno - 1].encode()[node.end_col_offset :].decode()
            comments = [line.strip() for line in (behind, *lines[node.end_lineno : end - 1]) if line.strip()]
            assert all(comment.startswith("# ") for comment in comments)
            found.append((ast.get_source_segment(code, node), " ".join(comment[2:].strip() for comment in comments)))
    return found


def is_value(comment: str) -> bool:
    """Whether a comment is a value, and not words about one."""
    try:
        ast.literal_eval(comment)
    except (SyntaxError, ValueError):
        return False
    return True


@pytest.mark.parametrize(
    "page",
    [README, HARMONY, VOICING, MELODY, LIBRARY],
    ids=["README", "harmony", "voicing", "melody", "library"],
)
def test_the_python_examples_give_the_values_in_their_comments(page: str) -> None:
    names: dict[str, object] = {}
    compared = 0
    for statement, comment in statements(page):
        if is_value(comment):
            assert repr(eval(statement, names)) == comment
            compared += 1
        else:
            exec(statement, names)
    assert compared


def test_the_page_on_the_library_says_nothing_but_values_behind_its_lines() -> None:
    comments = [comment for _, comment in statements(LIBRARY) if comment]

    assert len(comments) >= 35
    assert all(map(is_value, comments))
