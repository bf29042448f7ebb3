"""Lets the tests of this folder import what they share, however pytest is called."""

from __future__ import annotations

import sys
from pathlib import Path

from hypothesis import settings

sys.path.insert(0, str(Path(__file__).parent))
settings.register_profile("nearhand", deadline=None)  # a slow machine is no failed law
settings.load_profile("nearhand")
