"""One word of several: which, or a hint that names the nearest one or all of them."""

from __future__ import annotations

from nearhand.notation.errors import InputError

_FEW = 5
_MOST_DIGITS = 9


def read_choice(text: str, choices: tuple[str, ...], wanted: str, more: str = "") -> str:
    """The one of some words that a text is. ``wanted`` says what they are, ``more`` what else may stand here.

    Raises InputError at any other.

    >>> read_choice(" still ", ("free", "still"), "a top line")
    'still'
    """
    word = text.strip()
    if word in choices:
        return word
    what = f"{word[:30]!r} is not {wanted}" if word else f"{wanted} is missing"
    hint = hint_of(word, choices)
    raise InputError(what, text, wanted=wanted, hint=f"{hint}{', ' + more if more else ''}")


def read_count(text: str, most: int) -> int | None:
    """A whole number from 1 to ``most``; None for any other text.

    >>> read_count("12", 12), read_count("0129", 12), read_count("0", 12), read_count("two", 12)
    (12, None, None, None)
    """
    digits = text.lstrip("0")[:_MOST_DIGITS] if text.isascii() and text.isdigit() else ""
    number = int(digits or 0)
    return number if 1 <= number <= most else None


def hint_of(word: str, choices: tuple[str, ...], before: str = "") -> str:
    """A hint for a word that is none of the choices; ``before`` is what they follow.

    >>> hint_of("yes", ("on", "off"), "loop ")
    'write loop on, or loop off'
    >>> hint_of("drp2", ("close", "drop2"))
    'did you mean drop2?'
    """
    from difflib import get_close_matches

    near = get_close_matches(word[:30].lower(), choices, n=1, cutoff=0.7) if word else ()
    if near:
        return f"did you mean {before}{near[0]}?"
    if len(choices) > _FEW:
        return f"write {before}and one of {', '.join(choices)}" if before else f"write one of {', '.join(choices)}"
    return f"write {', or '.join(before + choice for choice in choices)}"
