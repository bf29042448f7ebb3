"""The order of the rooms: who may import whom, and what a one-shot command must not import."""

from __future__ import annotations

import ast
import os
import subprocess
import sys
from importlib import import_module
from pathlib import Path

import pytest

import nearhand
from nearhand.verbs.table import VERBS

SOURCE = Path(nearhand.__file__).parent
ROOMS = ("theory", "notation", "harmony", "voicing", "melody", "exchange", "verbs", "render", "shell")
"""In order: each may import those to its left, and itself. What lies beside them may import all."""
PURE_ROOMS = ROOMS[:6]
MODULES = sorted(SOURCE.rglob("*.py"))
HEAVY = {"music21", "mingus", "numpy", "mir_eval"}


def name_of(path):
    return path.relative_to(SOURCE).as_posix()


def room_of(path):
    """The room of a module; the empty text for those that lie beside the rooms."""
    parts = path.relative_to(SOURCE).parts
    return parts[0] if len(parts) > 1 else ""


def imports_of(path):
    """Every module that a file imports anywhere, also inside functions and for type checkers alone."""
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            found |= {alias.name for alias in node.names}
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{name_of(path)} imports by dots"
            found |= {node.module} | {f"{node.module}.{alias.name}" for alias in node.names}
    return found


def rooms_imported(path):
    return {name.split(".")[1] for name in imports_of(path) if name.startswith("nearhand.")} & set(ROOMS)


def test_there_is_something_to_look_at():
    assert {room_of(path) for path in MODULES} == {"", *ROOMS}
    assert "notation" in rooms_imported(SOURCE / "harmony" / "analysis.py")


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_a_room_imports_only_itself_and_the_rooms_to_its_left(path):
    room = room_of(path)
    if room:
        assert rooms_imported(path) <= set(ROOMS[: ROOMS.index(room) + 1])
        beside = {name for name in imports_of(path) if name.startswith(("nearhand.cli", "nearhand.library"))}
        assert not beside


def test_the_theory_imports_nothing_of_ours_but_itself():
    for path in MODULES:
        if room_of(path) == "theory":
            ours = {name for name in imports_of(path) if name.split(".")[0] == "nearhand"}
            assert all(name.startswith("nearhand.theory") for name in ours)


def test_the_verbs_import_neither_pages_nor_the_terminal():
    for path in MODULES:
        if room_of(path) == "verbs":
            assert not rooms_imported(path) & {"render", "shell"}


@pytest.mark.parametrize("path", [path for path in MODULES if room_of(path) in PURE_ROOMS], ids=name_of)
def test_the_rooms_of_music_neither_read_nor_print(path):
    tree = ast.parse(path.read_text(encoding="utf-8"))
    names = {node.id for node in ast.walk(tree) if isinstance(node, ast.Name)}
    packages = {name.split(".")[0] for name in imports_of(path)}

    assert not names & {"print", "input", "open"}
    assert not packages & {"os", "sys", "io", "pathlib", "subprocess", "prompt_toolkit", "rich"}


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_no_module_imports_a_library_that_only_tests_may_use(path):
    assert not {name.split(".")[0] for name in imports_of(path)} & HEAVY


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_every_module_says_what_it_is(path):
    assert ast.get_docstring(ast.parse(path.read_text(encoding="utf-8")))


@pytest.mark.parametrize("verb", VERBS, ids=lambda verb: verb.name)
def test_every_verb_of_the_table_has_its_function(verb):
    module, _, function = verb.function.partition(".")

    assert callable(getattr(import_module(f"nearhand.verbs.{module}"), function))


def test_the_terminal_is_reached_through_the_shell_alone():
    for path in MODULES:
        if "prompt_toolkit" in {name.split(".")[0] for name in imports_of(path)}:
            assert room_of(path) == "shell"
        if "rich" in {name.split(".")[0] for name in imports_of(path)}:
            assert room_of(path) == "render"


# Each costs from some to hundreds of milliseconds at the start of a command; tomllib is needed where charts are read.
UNWANTED = [
    *sorted(HEAVY),
    "rich",
    "prompt_toolkit",
    "importlib.metadata",
    "argparse",
    "dataclasses",
    "fractions",
    "tomllib",
    "nearhand.exchange",
]
CHART = "| Em | Bm/D | Am/C | B7 |"
COMMANDS = [
    ["show", CHART],
    ["show", CHART, "--json"],
    ["show", CHART, "--to", "all"],
    ["show", CHART, "--key", "E minor", "--to", "C minor", "--voicing", "close", "--json"],
    [CHART],
    ["keys", CHART],
    ["keys", CHART, "--json"],
    ["explain", CHART],
    ["explain", CHART, "--json"],
    ["borrow", "C major"],
    ["borrow", "C major", "--json"],
    ["instead", CHART, "2"],
    ["instead", CHART, "2", "--json"],
    ["show", CHART, "--voicing", "four-part", "--top", "falling"],
    ["lines", CHART, "--voicing", "drop2"],
    ["lines", CHART, "--json"],
    ["why", CHART, "2"],
    ["why", CHART, "2", "--json"],
    ["others", CHART],
    ["others", CHART, "--json"],
    ["melody", "G: 5_ | 1 2 3 4 |", "--to", "all"],
    ["melody", "E4 F#4 G4", "--json"],
    ["tones", CHART, "--melody", "E4 F#4 G4 A4"],
    ["tones", CHART, "--melody", "E4 F#4 G4 A4", "--json"],
    ["show", CHART, "--melody", "E4 F#4 G4 A4", "--top", "melody"],
    ["show", CHART, "--melody", "1 - 2 - | 3 - 1 -"],
    ["tones", CHART, "--melody", "1 - 2 - | 3 - 1 -"],
    ["tones", CHART, "--melody", "1 - 2 - | 3 - 1 -", "--json"],
    ["singer", CHART, "--tune", "E4 B4", "--range", "alto"],
    ["singer", "--key", "G", "--tune", "5 3", "--range", "A3 D5", "--json"],
    ["parts", CHART],
    ["parts", CHART, "--for", "alto sax", "--json"],
    ["difficulty", CHART],
    ["difficulty", CHART, "--json"],
    ["list", "CHARTS"],
    ["list", "CHARTS", "--json"],
    ["completion", "bash"],
    ["completion", "zsh"],
    ["completion", "fish", "--json"],
    ["--version"],
    ["help"],
    ["help", "show", "--json"],
]
RUN = """
import sys
before = set(sys.modules)
from nearhand.cli import main
status = main(sys.argv[1:])
print(status, *sorted(set(sys.modules) - before), file=sys.stderr)
"""


@pytest.mark.parametrize("words", COMMANDS, ids=" ".join)
def test_a_one_shot_command_imports_nothing_heavy(words):
    charts = str(Path(__file__).parents[1] / "progressions")
    run = subprocess.run(
        [sys.executable, "-c", RUN, *[charts if word == "CHARTS" else word for word in words]],
        env={**os.environ, "PYTHONPATH": str(SOURCE.parent), "PYTHONIOENCODING": "utf-8"},
        capture_output=True,
        encoding="utf-8",
        check=True,
        timeout=60,
    )
    status, *modules = run.stderr.split()
    allowed = {"tomllib", "fractions"} if words[0] == "list" else set()  # charts hold melodies with shared beats

    assert (status, run.stdout != "") == ("0", True)
    assert set(modules) & set(UNWANTED) <= allowed
