"""Hypothesis without a deadline, and a folder of its own for every test that reads or writes files."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("nearhand", deadline=None)  # a slow machine is no failed law
settings.load_profile("nearhand")


@pytest.fixture
def desk(tmp_path: Path, tmp_path_factory: pytest.TempPathFactory, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder that is the current one; nothing is kept in the player's home."""
    home = tmp_path_factory.mktemp("home")
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):  # XDG Base Directory Specification
        monkeypatch.setenv(name, str(home / name))
    monkeypatch.chdir(tmp_path)
    return tmp_path
