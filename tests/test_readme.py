"""README's examples are run and compared with what it prints."""

from __future__ import annotations

import os
import re
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text(encoding="utf-8")
EXAMPLES = re.findall(r"```console\n\$ (.+?)\n(.*?)```", README, re.S)
PROGRAM = f"{sys.executable} -m nearhand"


@pytest.mark.parametrize(("command", "shown"), EXAMPLES, ids=[command for command, _ in EXAMPLES])
def test_every_console_example_prints_what_the_readme_says(command: str, shown: str) -> None:
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


def test_the_python_example_gives_the_values_in_its_comments() -> None:
    code = re.search(r"```python\n(.*?)```", README, re.S)
    assert code
    names: dict[str, object] = {}
    for statement in code[1].splitlines():
        text, _, value = statement.partition("#")
        if value.strip().startswith("("):
            assert repr(eval(text, names)) == value.strip()
        elif text.strip():
            exec(text, names)
