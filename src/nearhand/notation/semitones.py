"""Semitones counted in words."""

from __future__ import annotations


def semitones_in_words(count: int) -> str:
    """So many semitones.

    >>> semitones_in_words(1), semitones_in_words(0)
    ('1 semitone', '0 semitones')
    """
    return f"{count} semitone{'s' * (count != 1)}"
