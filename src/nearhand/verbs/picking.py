"""Picking one chord of a tune by its number, counted from 1; rests are not counted."""

from __future__ import annotations

from nearhand.notation.errors import InputError

_MOST_DIGITS = 6
NO_CHORDS_HINT = "write chords, for example | C | F G7 | C |"


def ends_in_a_number(words: tuple[str, ...]) -> bool:
    """Whether the last word is a number.

    >>> ends_in_a_number(("| C |", "2")), ends_in_a_number(("| C |",)), ends_in_a_number(())
    (True, False, False)
    """
    return bool(words) and words[-1].isascii() and words[-1].isdigit()


def picked_place(picked: str, chords: int, line: str) -> int:
    """The place, counted from 0, of a chord picked by its number among so many.

    Raises InputError, placed in the whole line, when there is no such chord.

    >>> picked_place("2", 4, "explain 2")
    1
    """
    if not chords:
        raise InputError("there are no chords here", line, wanted="chords", hint=NO_CHORDS_HINT)
    if len(picked) > _MOST_DIGITS or not 1 <= int(picked) <= chords:
        start = max(line.rfind(picked), 0)
        what, hint = f"there is no chord {picked[:12]}", f"the chords are numbered 1 to {chords}"
        raise InputError(what, line, start, start + len(picked), wanted="a chord's number", hint=hint)
    return int(picked) - 1
