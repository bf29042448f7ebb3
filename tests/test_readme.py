"""The examples of README and of the tutorials are run and compared with what they print."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

from nearhand.voicing.families import FAMILIES

ROOT = Path(__file__).parent.parent
README, HARMONY, VOICING = (
    (ROOT / page).read_text(encoding="utf-8") for page in ("README.md", "docs/harmony.md", "docs/voicing.md")
)
EXAMPLES = re.findall(r"```console\n\$ (.+?)\n(.*?)```", README, re.S)
LESSONS = re.findall(r"```console\n\$ (.+?)\n(.*?)```", HARMONY + VOICING, re.S)
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


@pytest.mark.parametrize("page", [README, HARMONY, VOICING], ids=["README", "harmony", "voicing"])
def test_the_python_example_gives_the_values_in_its_comments(page: str) -> None:
    code = re.search(r"```python\n(.*?)```", page, re.S)
    assert code
    names: dict[str, object] = {}
    for statement in code[1].splitlines():
        text, _, value = statement.partition("#")
        if value.strip().startswith("("):
            assert repr(eval(text, names)) == value.strip()
        elif text.strip():
            exec(text, names)
