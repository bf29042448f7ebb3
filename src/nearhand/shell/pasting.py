"""Pasted text on one line: each of its lines a group of bars."""

from __future__ import annotations

from nearhand.notation.errors import InputError

MOST_CHARACTERS = 100_000
_BAR_SIGNS = "|:"
_QUOTES = {'"': '"', "'": "'", "“": "”", "„": "“", "«": "»"}
_NOTE = "#"


def joined(pasted: str) -> str:
    """A paste as one line.

    Lines of bars follow one another, with a bar line between; without any bar line in them each chord keeps its own
    bar, as in a chart file. Empty lines and notes (``#`` and a blank) go out, and so do quotes around the whole. A
    paste of one line stays as it is but for its tabs.

    Raises InputError where it is too long for a line.

    >>> joined("| Em | Bm/D |\\n| Am/C | B7 |"), joined("C F\\nG C"), joined("E minor:\\nEm | B7\\nEm")
    ('| Em | Bm/D | Am/C | B7 |', 'C F G C', 'E minor: Em | B7 | Em')
    """
    if len(pasted) > MOST_CHARACTERS:
        what = f"a paste of {len(pasted):,} characters is too long for a line"
        raise InputError(what, hint="save it as a chart file, and write open FILE")
    lines = [" ".join(line.split()) for line in pasted.splitlines()]
    if len(lines) < 2:
        return pasted.expandtabs(1).rstrip("\r\n")
    lines = [line for line in lines if line and line != _NOTE and not line.startswith(f"{_NOTE} ")]
    lines = _without_quotes(lines)
    has_bars = any("|" in line for line in lines)
    parts: list[str] = []
    for line in lines:
        if parts:
            parts[-1], line = _met(parts[-1], line, has_bars)  # noqa: PLW2901
        parts.append(line)
    return "".join(parts)


def _without_quotes(lines: list[str]) -> list[str]:
    """The lines without quotes around all of them, or around each."""
    if not lines:
        return lines
    if all(_is_quoted(line) for line in lines):
        return [line[1:-1].strip() for line in lines]
    if _is_quoted(" ".join(lines)):
        inner = [lines[0][1:], *lines[1:-1], lines[-1][:-1]]
        return [line.strip() for line in inner if line.strip()]
    return lines


def _is_quoted(text: str) -> bool:
    close = _QUOTES.get(text[:1])
    return close is not None and len(text) > 1 and text.endswith(close) and text.count(close, 1) == 1


def _met(before: str, after: str, has_bars: bool) -> tuple[str, str]:
    """Two lines as they stand beside each other: their bar lines become one."""
    if not has_bars or (before.endswith(":") and "|" not in before):
        return before, f" {after}"
    left, right = _signs_at_end(before), _signs_at_start(after)
    if not left and not right:
        return before, f" | {after}"
    if not left or not right:
        return before, f" {after}"
    bars = "||" if "||" in left or "||" in right else "|"
    sign = ":" * left.startswith(":") + bars + ":" * right.endswith(":")
    return f"{before[: len(before) - len(left)]}{sign}", f" {after[len(right) :].lstrip()}"


def _signs_at_end(line: str) -> str:
    sign = line[len(line.rstrip(_BAR_SIGNS)) :]
    return sign if "|" in sign else ""


def _signs_at_start(line: str) -> str:
    sign = line[: len(line) - len(line.lstrip(_BAR_SIGNS))]
    return sign if "|" in sign else ""
