"""Hypothesis without a deadline, and a home of its own for every test that starts the program."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import settings
from shell.process_words import Program

settings.register_profile("nearhand", deadline=None)  # a slow machine is no failed law
settings.load_profile("nearhand")


@pytest.fixture
def program(tmp_path: Path) -> Program:
    """The program, run in an empty folder that is also its home."""
    return Program(tmp_path)
