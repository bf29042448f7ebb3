"""Reading what follows a root: the tail of a chord symbol, of a number, of a numeral."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_words import BASES, CHANGES, COMPLETE, LONGEST_BASE, LONGEST_CHANGE, apply_change
from nearhand.notation.errors import InputError
from nearhand.theory.quality import Quality

RAISED_DIGITS, LOWERED_DIGITS = "⁰¹²³⁴⁵⁶⁷⁸⁹", "₀₁₂₃₄₅₆₇₈₉"
_TO_PLAIN = str.maketrans(f"♯♭{RAISED_DIGITS}{LOWERED_DIGITS}⁺⁻⁽⁾[]", "#b01234567890123456789+-()()")
_HINT = "a chord goes on for example with m, 7, maj7, m7, m7b5, dim7, 6, sus4, add9, 9, 13 or 7b9"
_BRACKETS = {"(": ")", "[": "]"}


def plain_digits(text: str) -> str:
    """A text of the same length with raised and lowered digits, signs and brackets on the line.

    >>> plain_digits("V⁶₅"), plain_digits("5⁷♭⁹")
    ('V65', '57♭9')
    """
    return text if text.isascii() else text.translate(_TO_LINE)


_TO_LINE = {
    ord(sign): plain for sign, plain in zip(RAISED_DIGITS + LOWERED_DIGITS, "01234567890123456789", strict=True)
}
_TO_LINE |= {ord("⁺"): "+", ord("⁻"): "-", ord("⁽"): "(", ord("⁾"): ")"}


@lru_cache(maxsize=4096)
def read_tail(text: str) -> Quality:
    """Read a whole tail; square brackets count as round ones.

    Raises InputError at the first character that is no base and no change.

    >>> read_tail("7(b9,#11)").numbers, read_tail("m(maj7)").intervals
    ((1, 3, 5, 7, 9, 11), (0, -3, 1, 5))
    """
    plain = text.translate(_TO_PLAIN)
    furthest: InputError | None = None
    for size in range(min(LONGEST_BASE, len(plain)), -1, -1):  # "madd9" is m + add9, though "ma" is a base as well
        if plain[:size] in BASES and (size == len(plain) or plain[:size] not in COMPLETE):
            try:
                return _read_changes(text, plain, size)
            except InputError as error:
                furthest = error if furthest is None or error.start > furthest.start else furthest
    assert furthest is not None  # the empty base always matches
    raise furthest


_MAJOR_BEHIND_SLASH = ("maj7", "Maj7", "ma7", "M7", "Δ7", "Δ")


def bass_slash(text: str, start: int) -> int:
    """Where the slash before a bass stands behind a tail that begins at ``start``; -1 if nowhere.

    6/9 and m/maj7 hold none.

    >>> bass_slash("C6/9/E", 1), bass_slash("6/9", 1)      # a degree 6 may stand over a bass of its own
    (4, 1)
    """
    slash = text.find("/", start)
    while slash > start and (text[slash - 1 : slash + 2] == "6/9" or text.startswith(_MAJOR_BEHIND_SLASH, slash + 1)):
        slash = text.find("/", slash + 1)
    return slash


def _read_changes(text: str, plain: str, at: int) -> Quality:
    """Read the changes from ``at`` to the end, and apply them to the base before them."""
    found = BASES[plain[:at]]
    opened = -1
    while at < len(plain):
        if plain[at] == "(" and opened < 0:
            opened, at = at, at + 1
        elif plain[at] == ")" and opened >= 0:
            opened, at = -1, at + 1
        elif plain[at] == "," and at:
            at += 1
        elif change := _change_at(plain, at, within_brackets=opened >= 0):
            found, at = apply_change(found, CHANGES[change]), at + len(change)
        else:
            what = f"{text[at : at + 12]!r} is no part of a chord"
            raise InputError(what, text, at, at + 1, wanted="a chord quality", hint=_HINT)
    if opened >= 0:
        close = _BRACKETS.get(text[opened], ")")
        what, hint = "a bracket is not closed", f"write a closing {close}"
        raise InputError(what, text, opened, opened + 1, wanted=close, hint=hint)
    return found


def _change_at(plain: str, at: int, within_brackets: bool) -> str:
    for size in range(min(LONGEST_CHANGE, len(plain) - at), 0, -1):
        word = plain[at : at + size]
        if word in CHANGES and (within_brackets or not word.isdigit()):
            return word
    return ""
