"""Hypothesis without a deadline."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("nearhand", deadline=None)  # a slow machine is no failed law
settings.load_profile("nearhand")
