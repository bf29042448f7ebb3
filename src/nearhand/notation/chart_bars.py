"""From bar signs and words to bars: repeats, meters, ``%`` and beat signs."""

from __future__ import annotations

from nearhand.notation.chart_signs import Sign
from nearhand.notation.errors import InputError
from nearhand.notation.numbers import starts_number
from nearhand.notation.numeral_words import starts_numeral
from nearhand.theory.progression import Meter
from nearhand.theory.record import NamedTuple

MOST_BEATS = 64
MOST_WORDS = 64
"""Chords and beat signs that one bar can hold."""
UNITS = ("1", "2", "4", "8", "16", "32")
REPEAT_BAR, LONGER = "%", "/"
NO_CHORD_WORDS = ("N.C.", "N.C", "NC")


class Token(NamedTuple):
    """One chord as written, with its place in the text; ``rest`` for no chord; ``shares`` of its bar's beats."""

    text: str
    start: int
    kind: str
    shares: int


class WrittenBar(NamedTuple):
    """A bar as written: its tokens, whether ``/`` signs set the beats, its meter, and the signs at its edges."""

    tokens: tuple[Token, ...]
    by_shares: bool
    meter: Meter
    opens_repeat: bool
    closes_repeat: bool
    ends_section: bool


def bars_of(text: str, signs: list[Sign], meter: Meter) -> tuple[WrittenBar, ...]:
    """Put signs together to bars, in ``meter`` until a sign sets another.

    Raises InputError, placed in ``text``.
    """
    bars: list[WrittenBar] = []
    words: list[Sign] = []
    opened: Sign | None = None
    opens_here = False
    for sign in [*signs, Sign("bar", "end", len(text))]:
        if sign.kind == "word":
            words.append(sign)
        elif sign.kind == "meter":
            if words:
                raise _refusal(text, sign, "a meter stands at the head of a bar", "put [3/4] behind the bar line")
            meter = _meter(text, sign)
        else:
            closes = sign.text.startswith(":")
            if words:
                bars.append(_bar(text, words, meter, bars)._replace(opens_repeat=opens_here, closes_repeat=closes))
                words, opens_here = [], False
            elif closes and opens_here:
                raise _refusal(text, sign, "this repeat holds no bar", "write chords between |: and :|")
            elif closes and bars:
                bars[-1] = bars[-1]._replace(closes_repeat=True)
            if "||" in sign.text and bars:
                bars[-1] = bars[-1]._replace(ends_section=True)
            opened = None if closes else opened
            if sign.text.endswith(":"):
                if opened:
                    break
                opened, opens_here = sign, True
    if opened:
        raise _refusal(text, opened, "this repeat is never closed", "write :| where the repeat ends")
    return tuple(bars)


def _refusal(text: str, sign: Sign, what: str, hint: str) -> InputError:
    return InputError(what, text, sign.start, sign.start + len(sign.text), wanted="a bar of chords", hint=hint)


def _meter(text: str, sign: Sign) -> Meter:
    try:
        return parse_meter(sign.text)
    except InputError as error:
        raise error.within(text, sign.start + 1) from None


def parse_meter(text: str) -> Meter:
    """Read a meter such as ``3/4``.

    Raises InputError.

    >>> parse_meter("7/8")
    Meter(beats=7, unit=8)
    """
    beats, _, unit = text.partition("/")
    if unit in UNITS and beats.isascii() and beats.isdigit() and len(beats) < 3 and 1 <= int(beats) <= MOST_BEATS:
        return Meter(int(beats), int(unit))
    raise InputError(f"{text[:20]!r} is no meter", text, 0, wanted="a meter", hint="write for example 4/4, 3/4 or 7/8")


def _bar(text: str, words: list[Sign], meter: Meter, before: list[WrittenBar]) -> WrittenBar:
    if words[0].text == REPEAT_BAR and len(words) == 1:
        if not before:
            hint = "write the chords of the first bar"
            raise _refusal(text, words[0], "there is no bar before this one to repeat", hint)
        return WrittenBar(before[-1].tokens, before[-1].by_shares, meter, False, False, False)
    if len(words) > MOST_WORDS:
        what = f"a bar holds {MOST_WORDS} chords and beat signs at most"
        raise _refusal(text, words[MOST_WORDS], what, "set bar lines between the chords")
    tokens: list[Token] = []
    for word in words:
        if word.text == REPEAT_BAR:
            raise _refusal(text, word, "% stands alone in its bar", "write the chord again")
        if word.text != LONGER:
            tokens.append(Token(word.text, word.start, _kind(word.text), 1))
        elif tokens:
            tokens[-1] = tokens[-1]._replace(shares=tokens[-1].shares + 1)
        else:
            what = "a / lengthens the chord before it, and there is none"
            raise _refusal(text, word, what, "begin the bar with a chord")
    return WrittenBar(tuple(tokens), any(word.text == LONGER for word in words), meter, False, False, False)


def is_optional(text: str) -> bool:
    """Whether a chord stands in round brackets: it may be left out.

    >>> is_optional("(Am)"), is_optional("C(add9)")
    (True, False)
    """
    return text[:1] == "(" and text[-1:] == ")"


def without_brackets(text: str) -> str:
    """A chord without the round brackets of one that may be left out."""
    return text[1:-1] if is_optional(text) else text


def _kind(text: str) -> str:
    """Which notation a token is in: its first character decides."""
    text = without_brackets(text)
    if text.upper() in NO_CHORD_WORDS:
        return "rest"
    if starts_numeral(text):
        return "numeral"
    if starts_number(text):
        return "number"
    return "chord"
