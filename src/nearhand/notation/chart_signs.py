"""Cutting a chart's text into bar signs, meters and words, each with its place."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple

_SEPARATORS = ("-", "–", "—", ",", "→", "->")
"""Words that only stand between chords, as in C - F - G."""


class Sign(NamedTuple):
    """A ``bar`` sign (``|`` ``||`` ``|:`` ``:|`` ...), a ``meter`` (without its brackets) or a ``word``.

    ``split`` signs, an opening and a closing bracket, enclose the chords of one bar where there are no bar lines.
    """

    kind: str
    text: str
    start: int


def signs_of(text: str, start: int = 0) -> list[Sign]:
    """Cut a text from ``start`` on.

    Raises InputError at a control character, a colon without bar line, an empty bar or an open bracket.

    >>> [sign.text for sign in signs_of("|: C | F G :|")]
    ['|:', 'C', '|', 'F', 'G', ':|']
    """
    signs: list[Sign] = []
    at = start
    while at < len(text):
        character = text[at]
        if character.isspace():
            at += 1
        elif character in "|:":
            at = _bar_sign(text, at, signs)
        elif character == "[":
            at = _bracket(text, at, signs)
        else:
            at = _word(text, at, signs)
    return signs


def _bar_sign(text: str, start: int, signs: list[Sign]) -> int:
    end = start
    while end < len(text) and text[end] in "|:]":
        end += 1
    sign = text[start:end].replace("|]", "||")
    if "|" not in sign:
        raise InputError("a colon stands beside a bar line", text, start, end, wanted="|: or :|", hint="write |: or :|")
    left, right = sign.startswith(":"), sign.endswith(":")
    lines = "||" if sign.count("|") > 1 else "|"
    kept = ":" * left + lines + ":" * right
    if sign.strip(":").count(":") or sign.count(":") > left + right:
        raise InputError(
            f"{sign[:12]!r} is no bar line", text, start, end, wanted="a bar line", hint="write |, ||, |: or :|"
        )
    if not (left and signs and signs[-1].text.endswith(":")):  # an empty repeat is refused as such
        _refuse_empty_bar(text, signs, start)
    signs.append(Sign("bar", kept, start))
    return end


def _refuse_empty_bar(text: str, signs: list[Sign], start: int) -> None:
    """Two bar lines with blanks between are an empty bar; a line's end between them joins two lines of bars."""
    if signs and signs[-1].kind == "bar" and not signs[-1].text.startswith(":"):
        between = text[signs[-1].start : start].lstrip("|")
        if between and "\n" not in between and "\r" not in between:
            raise InputError(
                "this bar is empty",
                text,
                start,
                start + 1,
                wanted="a chord",
                hint="write % to repeat the bar before, or N.C.",
            )


def _bracket(text: str, start: int, signs: list[Sign]) -> int:
    """A meter, or, where blanks stand between its words, the chords that share one bar."""
    close = text.find("]", start)
    if close < 0:
        hint = "write a meter as [3/4], chords that share a bar as [5 1]"
        raise InputError("a bracket is not closed", text, start, start + 1, wanted="]", hint=hint)
    words = text[start + 1 : close].split()
    if not words or (len(words) == 1 and "/" in words[0]):
        signs.append(Sign("meter", "".join(words), start))
        return close + 1
    signs.append(Sign("split", "[", start))
    at = start + 1
    while at < close:
        if text[at].isspace():
            at += 1
        elif text[at] in "|[:":
            what, hint = "chords in brackets share one bar", "write for example 1 4 [5 1] 6-"
            raise InputError(what, text, at, at + 1, wanted="a chord", hint=hint)
        else:
            at = _word(text, at, signs, until=close)
    signs.append(Sign("split", "]", close))
    return close + 1


def _is_closed_before_a_blank(text: str, start: int) -> bool:
    """Whether square brackets behind a chord hold one of its changes (V7[no5]), not a meter."""
    end = start + 1
    while end < len(text) and not text[end].isspace() and text[end] not in "|[]":
        end += 1
    return text[end : end + 1] == "]" and "/" not in text[start:end]


def _word(text: str, start: int, signs: list[Sign], until: int | None = None) -> int:
    end, stop = start, len(text) if until is None else until
    while end < stop and not text[end].isspace() and text[end] != "|":
        if text[end] == "[" and not _is_closed_before_a_blank(text, end):
            break
        if text[end] == ":" and text[end + 1 : end + 2] == "|":
            break
        if not text[end].isprintable():
            raise InputError(
                "there is a character here that cannot be shown", text, end, end + 1, wanted="a chord", hint="delete it"
            )
        end += 1
    word = text[start:end]
    if word not in _SEPARATORS:
        signs.append(Sign("word", word.rstrip(",;"), start))
    return end
