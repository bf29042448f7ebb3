"""Reasoning on values: what a chord is in its key, where the music could be, and how it moves to other keys."""
