"""Folders of their own for what the program keeps by itself, so that no test reads or writes a player's files."""

from __future__ import annotations

import pytest


@pytest.fixture(autouse=True, scope="session")
def _no_player_at_home(tmp_path_factory):
    """The folders of the XDG Base Directory Specification, empty at the start."""
    home = tmp_path_factory.mktemp("home")
    with pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):
            patch.setenv(name, str(home / name))
        yield
