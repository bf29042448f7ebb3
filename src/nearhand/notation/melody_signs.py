"""Cutting a melody's text into notes, rests, holds, bar lines and meters, each with its place and its beats.

A note lasts one beat; ``-`` holds it for one more. Notes in brackets share one beat, evenly or by shares: ``[5 6]``,
``[5:3 6]``, ``[5 [6 7]]``; a colon and a number behind a note, a hold or a bracket is its length in beats: ``5:2``,
``[5 6 7]:2``. Grace notes stand in braces before their note, an ornament in round brackets behind it.
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.errors import InputError
from nearhand.theory.melody import ORNAMENTS
from nearhand.theory.progression import Meter
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

HOLDS = ("-", "–", "—")
NOTE_ENDS = " \t\r\n\f\v,[]{}()|:" + "".join(HOLDS)
_DEEPEST = 6
_LONGEST = 1000
_MOST_DIGITS = 6
_ORNAMENT_HINT = "write an ornament right behind its note, before its length: 5(tr), 5(tr):2"
_LENGTH_HINT = "write beats as 2, 1/2 or 1.5, for example 5:2"


class Grace(NamedTuple):
    """A grace note as written."""

    text: str
    start: int


class Sign(NamedTuple):
    """A sign of a melody: a ``note`` (or rest), a ``hold``, a ``bar`` line or a ``meter``.

    ``text`` is what was written, of a note without its graces, ornament and length. ``beats`` is 0 for bar lines.
    """

    kind: str
    text: str
    start: int
    beats: Beats = 1
    graces: tuple[Grace, ...] = ()
    ornament: str = ""
    meter: Meter | None = None


class _Group:
    """An open bracket: where it stands, and the signs in it with their shares so far."""

    def __init__(self, start: int) -> None:
        self.start = start
        self.signs: list[Sign] = []


def signs_of_melody(text: str, start: int = 0) -> tuple[Sign, ...]:
    """Cut a melody's text from ``start`` on.

    Raises InputError.

    >>> [(sign.text, str(sign.beats)) for sign in signs_of_melody("5 [3 1] | 2 -")]
    [('5', '1'), ('3', '1/2'), ('1', '1/2'), ('|', '0'), ('2', '1'), ('-', '1')]
    """
    groups = [_Group(start)]
    at = start
    while at < len(text):
        character = text[at]
        if character.isspace() or character == ",":
            at += 1
        elif character == "[":
            at = _open(text, at, groups)
        elif character == "]":
            at = _close(text, at, groups)
        elif character == "|" or text.startswith((":|", "::"), at):
            at = _bar_line(text, at, groups)
        else:
            sign, at = _hold(text, at) if character in HOLDS else _note(text, at)
            groups[-1].signs.append(sign)
    if len(groups) > 1:
        begin = groups[-1].start
        raise InputError("a bracket is not closed", text, begin, begin + 1, wanted="]", hint="close it: [5 6]")
    return tuple(groups[0].signs)


def _open(text: str, at: int, groups: list[_Group]) -> int:
    close = text.find("]", at)
    inside = text[at + 1 : close] if close > 0 else ""
    if inside.strip()[:1].isdigit() and "/" in inside and ":" not in inside and len(inside.split()) == 1:
        if len(groups) > 1:
            hint = "put [3/4] behind a bar line"
            raise InputError("a meter stands outside brackets", text, at, close, wanted="a note", hint=hint)
        try:
            meter = parse_meter(inside.strip())
        except InputError as error:
            raise error.within(text, text.index(inside.strip(), at)) from None
        groups[0].signs.append(Sign("meter", text[at : close + 1], at, 0, meter=meter))
        return close + 1
    if len(groups) > _DEEPEST:
        what = f"brackets stand {_DEEPEST} deep at most"
        raise InputError(what, text, at, at + 1, wanted="a note", hint="write the lengths in beats: 5:1/8")
    groups.append(_Group(at))
    return at + 1


def _close(text: str, at: int, groups: list[_Group]) -> int:
    if len(groups) == 1:
        raise InputError("no bracket is open here", text, at, at + 1, wanted="a note", hint="write [5 6] for a beat")
    group = groups.pop()
    if not group.signs:
        raise InputError("these brackets hold no note", text, group.start, at + 1, wanted="notes", hint="write [5 6]")
    beats, end = _length(text, at + 1)
    shares = sum(sign.beats for sign in group.signs)
    groups[-1].signs += [sign._replace(beats=_times(sign.beats, beats, shares)) for sign in group.signs]
    return end


@lru_cache(maxsize=1024)
def _times(share: Beats, beats: Beats, shares: Beats) -> Beats:
    from fractions import Fraction  # 8 ms of import, and many melodies have whole beats

    return whole(Fraction(share) * beats / shares)


def whole(beats: Beats) -> Beats:
    """Beats as a whole number where they are one.

    >>> from fractions import Fraction
    >>> whole(Fraction(4, 2)), whole(Fraction(1, 2))
    (2, Fraction(1, 2))
    """
    return int(beats) if beats.denominator == 1 else beats


def _bar_line(text: str, at: int, groups: list[_Group]) -> int:
    end = at
    while end < len(text) and text[end] in "|:":
        end += 1
    if text[end : end + 1] == "]" and len(groups) == 1:
        end += 1
    if len(groups) > 1 or "|" not in text[at:end]:
        what = "a bar line stands outside brackets" if len(groups) > 1 else "a colon stands beside a bar line"
        raise InputError(what, text, at, end, wanted="a note", hint="write | between bars, [5 6] for a beat")
    groups[0].signs.append(Sign("bar", text[at:end], at, 0))
    return end


def _hold(text: str, at: int) -> tuple[Sign, int]:
    beats, end = _length(text, at + 1)
    return Sign("hold", text[at], at, beats), end


def _note(text: str, at: int) -> tuple[Sign, int]:
    start = at
    graces: tuple[Grace, ...] = ()
    if text[at] == "{":
        graces, at = _graces(text, at)
    end = _word_end(text, at)
    if end == at:
        what = "a note is missing here" if graces else f"{_shown(text, at)} has no place here"
        hint = _ORNAMENT_HINT if text[at : at + 1] == "(" else "write notes: 5 3 1, or E4 G4"
        raise InputError(what, text, start if graces else at, end + 1, wanted="a note", hint=hint)
    ornament, after = _ornament(text, end)
    beats, after = _length(text, after)
    return Sign("note", text[at:end], at, beats, graces, ornament), after


def _word_end(text: str, at: int) -> int:
    end = at
    while end < len(text) and text[end] not in NOTE_ENDS and not text[end].isspace():
        if not text[end].isprintable():
            what = "there is a character here that cannot be shown"
            raise InputError(what, text, end, end + 1, wanted="a note", hint="delete it")
        end += 1
    return end


def _shown(text: str, at: int) -> str:
    return text[at] if text[at].isprintable() else "this character"


def _graces(text: str, at: int) -> tuple[tuple[Grace, ...], int]:
    close = text.find("}", at)
    if close < 0:
        raise InputError("a brace is not closed", text, at, at + 1, wanted="}", hint="write grace notes as {6}5")
    found, place = [], at + 1
    while place < close:
        if text[place].isspace() or text[place] == ",":
            place += 1
            continue
        end = _word_end(text, place)
        if end == place:
            what = f"{_shown(text, place)} has no place among grace notes"
            raise InputError(what, text, place, place + 1, wanted="a note", hint="write grace notes as {6}5")
        found.append(Grace(text[place:end], place))
        place = end
    if not found:
        raise InputError("these braces hold no note", text, at, close + 1, wanted="a note", hint="write {6}5")
    after = close + 1
    while text[after : after + 1] == " ":
        after += 1
    return tuple(found), after


def _ornament(text: str, at: int) -> tuple[str, int]:
    if text[at : at + 1] != "(":
        return "", at
    close = text.find(")", at)
    if close < 0:
        raise InputError("a round bracket is not closed", text, at, at + 1, wanted=")", hint=_ORNAMENT_HINT)
    word = text[at + 1 : close].strip()
    if word not in ORNAMENTS:
        hint = f"write one of {', '.join(f'({name})' for name in ORNAMENTS)} behind a note"
        raise InputError(f"{word[:20]!r} is no ornament", text, at, close + 1, wanted="an ornament", hint=hint)
    return word, close + 1


def _length(text: str, at: int) -> tuple[Beats, int]:
    """The beats that a colon and a number at ``at`` tell, one where there is none; and the offset behind."""
    if text[at : at + 1] != ":" or text[at + 1 : at + 2] in ("|", ":"):
        return 1, at
    end = at + 1
    while end < len(text) and (text[end].isdigit() or text[end] in "./"):
        end += 1
    beats = _beats(text[at + 1 : end])
    if beats is None:
        what = f"{text[at + 1 : max(end, at + 2)][:20]!r} is no length" if end > at + 1 else "a length is missing here"
        raise InputError(what, text, at + 1, max(end, at + 2), wanted="a number of beats", hint=_LENGTH_HINT)
    return beats, end


def _beats(text: str) -> Beats | None:
    parts = text.split("/")
    if not text.isascii() or len(parts) > 2 or any(len(part) > _MOST_DIGITS for part in parts):
        return None
    if text.isdigit():
        return int(text) if 0 < int(text) <= _LONGEST else None
    from fractions import Fraction

    try:
        beats = Fraction(text)
    except (ValueError, ZeroDivisionError):
        return None
    return whole(beats) if 0 < beats <= _LONGEST else None
