"""What docs/library.md must name, and the types that the library ships."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
from importlib.metadata import PackageNotFoundError, files
from pathlib import Path

import pytest
from mypy import api

import nearhand
from nearhand.harmony.borrowing import LendingMode
from nearhand.harmony.cadences import Cadence
from nearhand.harmony.key_finding import KeyFit
from nearhand.harmony.modulation import Region
from nearhand.melody.against import Tone
from nearhand.melody.standing import Rub
from nearhand.verbs.instead import Offer
from nearhand.voicing.lines import Lines, VoiceLine
from nearhand.voicing.motion import Motion
from nearhand.voicing.on_top import OnTop
from nearhand.voicing.voice import Voicing

ROOT = Path(__file__).parents[1]
PAGE = (ROOT / "docs" / "library.md").read_text(encoding="utf-8")
ANSWERS = (Cadence, KeyFit, LendingMode, Lines, Motion, Offer, OnTop, Region, Rub, Tone, VoiceLine, Voicing)
USED = """
from nearhand import (
    Conventions, InputError, Key, Tune, VoicedProgression, Wishes, best_paths, borrow, cadences, explain, find_keys,
    instead, lines, next_best, parse_key, parse_progression, regions, voice,
)
import nearhand


def in_keys(tune: Tune, keys: list[Key]) -> dict[str, tuple[str, ...]]:
    return {str(key): tune.in_key(key).symbols(Conventions(plain=True)) for key in keys}


def top_notes(voiced: VoicedProgression) -> list[int]:
    return [pitches[-1].midi for pitches in voiced.pitches]


try:
    tune: Tune = parse_progression("| Em | Bm/D | Am/C | B7 |", parse_key("E minor"))
except InputError as error:
    place: int = error.start
    raise
voiced = voice(tune, Wishes("drop2", top="falling"))
rows: list[str] = [*tune.numerals(), *tune.numbers(), tune.title, nearhand.__version__]
costs: int = voiced.costs.movement + voiced.movement
held: list[bool] = [held for voicing in voiced.voicings if voicing.motion for held in voicing.motion.held]
paths: list[VoicedProgression] = [*best_paths(tune, 2), *next_best(voiced, 1)]
names: list[str] = [line.name for line in lines(voiced).voices] + [mode.name for mode in borrow(tune.key)]
sentences: list[str] = [sentence for row in explain(tune) for sentence in row]
bars: list[int] = [cadence.bar for cadence in cadences(tune, voiced)] + [region.first_bar for region in regions(tune)]
shares: list[float] = [fit.share for fit in find_keys(tune)]
motions: list[int] = [offer.motion for offer in instead(tune, 2)]
moved = in_keys(tune, [parse_key("C minor")])
"""


def public_attributes(kind: type) -> set[str]:
    """The fields, properties and methods of a value that begin with no underscore, those of every tuple left out."""
    return {name for name in dir(kind) if not name.startswith("_")} - set(dir(tuple))


def named(words: set[str]) -> set[str]:
    """Those of some words that stand in the page as code, alone, with what they take, or behind a dot."""
    return {word for word in words if any(f"{start}{word}{end}" in PAGE for start in "`." for end in "`(")}


def test_every_public_name_is_told():
    names = set(nearhand.__all__)

    assert named(names) == names


@pytest.mark.parametrize("kind", [nearhand.Tune, nearhand.VoicedProgression], ids=lambda kind: kind.__name__)
def test_every_attribute_of_a_tune_and_of_voicings_is_told(kind):
    names = public_attributes(kind)

    assert len(names) >= 8
    assert named(names) == names


@pytest.mark.parametrize("kind", [nearhand.Wishes, nearhand.Conventions, *ANSWERS], ids=lambda kind: kind.__name__)
def test_every_field_of_what_is_asked_and_answered_is_told(kind):
    assert named(set(kind._fields)) == set(kind._fields)


def test_every_part_of_a_refusal_is_told():
    parts = set(vars(nearhand.InputError("no such chord")))

    assert named(parts) == parts


def test_the_defaults_of_wishes_are_told_as_they_are():
    wishes = nearhand.Wishes()

    assert f"| `style` | the family; `{wishes.style}` |" in PAGE
    assert f"| `span` | semitones that a hand reaches; {wishes.span} |" in PAGE


@pytest.fixture(scope="module")
def environment(tmp_path_factory):
    """A virtual environment in which nearhand is installed, with what marks it as typed."""
    folder = tmp_path_factory.mktemp("environment")
    venv.create(folder)
    (packages,) = folder.glob("lib/python*/site-packages")
    (packages / "nearhand").symlink_to(ROOT / "src" / "nearhand")
    return folder


def checked(script: str, folder: Path, environment: Path) -> tuple[str, int]:
    """What mypy says to a script of a user's in strict mode, and its exit status."""
    path = folder / "script.py"
    path.write_text(script, encoding="utf-8")
    python, cache = str(environment / "bin" / "python"), str(environment / "cache")
    words = ["--strict", "--config-file=", "--python-executable", python, "--cache-dir", cache, "--no-error-summary"]
    out, err, status = api.run([*words, str(path)])
    return out + err, status


def test_a_user_script_is_strictly_typed(tmp_path, environment):
    assert checked(USED, tmp_path, environment) == ("", 0)


def test_a_wrong_type_in_a_user_script_is_found(tmp_path, environment):
    told, status = checked(USED + "wrong: int = tune.numerals()\n", tmp_path, environment)

    assert status == 1
    assert told.count("error") == 1
    assert 'expression has type "tuple[str, ...]", variable has type "int"' in told


def test_the_user_script_runs(tmp_path):
    (tmp_path / "script.py").write_text(USED + "print(moved, costs, top_notes(voiced)[0])\n", encoding="utf-8")

    run = subprocess.run(
        [sys.executable, tmp_path / "script.py"],
        env={**os.environ, "PYTHONPATH": str(ROOT / "src")},
        capture_output=True,
        text=True,
        check=True,
    )

    assert run.stdout.startswith("{'C minor': ('Cm', 'Gm/Bb', 'Fm/Ab', 'G7')} ")


def test_the_installed_package_says_that_it_is_typed():
    try:
        installed = {str(path) for path in files("nearhand") or ()}
    except PackageNotFoundError:
        pytest.skip("nearhand is run from its sources")
    if "nearhand/library.py" not in installed:
        pytest.skip("nearhand is linked to its sources")

    assert "nearhand/py.typed" in installed


def test_the_sources_hold_the_mark_of_types():
    assert (ROOT / "src" / "nearhand" / "py.typed").read_bytes() == b""
