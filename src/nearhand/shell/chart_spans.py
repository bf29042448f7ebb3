"""The chords, basses, bar lines and faults in a piece of a line that holds a chart."""

from __future__ import annotations

from nearhand.notation.chart import Chart, read_token
from nearhand.notation.chart_bars import LONGER, REPEAT_BAR, Token, bars_of
from nearhand.notation.chart_signs import Sign, signs_of
from nearhand.notation.errors import InputError
from nearhand.shell.unfinished import last_word_start, may_become_a_chord
from nearhand.theory.key import Key
from nearhand.theory.progression import COMMON_TIME
from nearhand.theory.record import NamedTuple


class Span(NamedTuple):
    """A part of a line, from ``start`` to ``end`` (not included), and its kind, one of ``KINDS``."""

    start: int
    end: int
    kind: str


def chart_spans(line: str, start: int, end: int, key: Key) -> list[Span]:
    """The spans of a piece of a line that holds chords; what the readers refuse is an error, and they go on behind."""
    spans: list[Span] = []
    text, typed = line[:end], last_word_start(line)
    while start < end:
        try:
            signs, stop, next_start = signs_of(text, start), end, end
        except InputError as error:
            stop = max(error.start, start)
            signs, next_start = _signs_before(text[:stop], start), max(error.end, stop + 1)
        spans += [span for sign in signs for span in _of_sign(text, sign, key, typed)]
        if stop < end and not _may_be_mended(text, stop):
            spans.append(Span(stop, min(next_start, end), "error"))
        start = max(next_start, stop + 1)
    return spans


def _signs_before(text: str, start: int) -> list[Sign]:
    try:
        return signs_of(text, start)
    except InputError:  # a piece may end where the whole went on
        return []


def _may_be_mended(text: str, stop: int) -> bool:
    """Whether a bracket that is open at ``stop`` may still be closed."""
    return text[stop] == "[" and "]" not in text[stop:]


def _of_sign(text: str, sign: Sign, key: Key, typed: int) -> tuple[Span, ...]:
    if sign.kind == "bar":
        end = sign.start
        while text[end : end + 1] and text[end] in "|:]":
            end += 1
        return (Span(sign.start, end, "bar"),)
    if sign.kind == "meter":
        return (Span(sign.start, text.index("]", sign.start) + 1, "bar"),)
    end = sign.start + len(sign.text)
    if sign.kind == "split" or sign.text in (LONGER, REPEAT_BAR):
        return (Span(sign.start, end, "bar"),)
    return _of_word(text, sign, key, is_typed=sign.start >= typed) if sign.text else ()


def _of_word(text: str, sign: Sign, key: Key, is_typed: bool) -> tuple[Span, ...]:
    """A chord with its bass, or an error; nothing while it is being typed and may become a chord."""
    end = sign.start + len(sign.text)
    is_open = is_typed and sign.text.startswith("(") and not sign.text.endswith(")")
    written = sign._replace(text=f"{sign.text})") if is_open else sign
    (token,) = bars_of(text, [written], COMMON_TIME)[0].tokens
    try:
        chord = read_token(Chart(text, (), key), token, key)
    except InputError:
        return () if is_typed and may_become_a_chord(sign.text) else (Span(sign.start, end, "error"),)
    kind = "chord" if token.kind == "rest" else token.kind
    slash = _bass_slash(token) if chord is not None and chord.bass != chord.root else -1
    if slash <= 0:
        return (Span(sign.start, end, kind),)
    return Span(sign.start, sign.start + slash, kind), Span(sign.start + slash, end, "bass")


def _bass_slash(token: Token) -> int:
    """Where the bass of a chord is written, with its slash; -1 where figures or another chord say it."""
    slash = token.text.rfind("/")
    behind = token.text[slash + 1 :].lstrip("#b♯♭")
    return slash if slash > 0 and (token.kind == "chord" or behind[:1].isdigit()) else -1
