"""Things counted and listed in words."""

from __future__ import annotations

from collections.abc import Sequence

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


def counted(count: Beats, noun: str) -> str:
    """So many of something, whose plural ends on s.

    >>> counted(1, "bar"), counted(0, "bar"), counted(3, "sharp")
    ('1 bar', '0 bars', '3 sharps')
    """
    return f"{count} {noun}{'s' * (count != 1)}"


def semitones_in_words(count: int) -> str:
    """So many semitones.

    >>> semitones_in_words(1), semitones_in_words(0)
    ('1 semitone', '0 semitones')
    """
    return counted(count, "semitone")


def octaves_in_words(count: int) -> str:
    """So many octaves; one is an octave.

    >>> octaves_in_words(1), octaves_in_words(2)
    ('an octave', '2 octaves')
    """
    return "an octave" if count == 1 else counted(count, "octave")


def listed(words: Sequence[str], last: str = "and") -> str:
    """Words with commas between, and a word before the last one.

    >>> listed(["A", "B", "C"]), listed(["A", "B"], "or"), listed(["A"]), listed([])
    ('A, B and C', 'A or B', 'A', '')
    """
    return f" {last} ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)
