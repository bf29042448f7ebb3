"""The notes, degrees, syllables, bar lines and holds in a piece of a line that holds a melody."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.notation.melody_reading import key_in_front
from nearhand.notation.melody_signs import HOLDS, NOTE_ENDS
from nearhand.shell.chart_spans import Span
from nearhand.shell.notes_in_line import TypedNotes
from nearhand.shell.unfinished_notes import is_key_before_notes, kind_of_note, may_become_a_note, note_start

_BAR_SIGNS = "|:"
_BRACKETS = "[]{}"
_LENGTH = "0123456789./"
_ORNAMENT_ENDS = NOTE_ENDS.replace("-", "")


def melody_spans(notes: TypedNotes) -> list[Span]:
    """The spans of a melody, placed in its line; a word that is no note is an error, unless it is being typed."""
    text, start = notes
    if is_key_before_notes(text):
        return [Span(start, start + len(text), "key")]
    try:
        key, at = key_in_front(text)
    except InputError:
        key, at = None, text.find(":") + 1
    spans = [] if key is None else [Span(start, start + at, "key")]
    typed = note_start(text)
    while at < len(text):
        end, kind = _piece(text, at, typed)
        if kind:
            spans.append(Span(start + at, start + end, kind))
        at = end
    return spans


def _piece(text: str, at: int, typed: int) -> tuple[int, str]:
    """Where the piece that stands at a place ends, and its kind; none for blanks and what may still become a note."""
    character = text[at]
    if character.isspace() or character == ",":
        return at + 1, ""
    if character in _BRACKETS:
        meter = _meter_end(text, at)
        return meter or at + 1, "bar"
    if character in HOLDS:
        return at + 1, "bar"
    if character in _BAR_SIGNS:
        return _sign_end(text, at), "bar"
    if character == "(":
        close = text.find(")", at)
        return close + 1 or _word_end(text, at + 1, _ORNAMENT_ENDS), "bar"
    end = max(_word_end(text, at), at + 1)
    kind = kind_of_note(text[at:end])
    return end, kind or ("" if at >= typed and may_become_a_note(text[at:end]) else "error")


def _meter_end(text: str, at: int) -> int:
    """Where a meter in brackets ends; 0 where there is none."""
    close = text.find("]", at)
    top, slash, bottom = text[at + 1 : max(close, 0)].strip().partition("/")
    return close + 1 if slash and top.isdigit() and bottom.isdigit() else 0


def _sign_end(text: str, at: int) -> int:
    """Where a bar line ends, or a length with its colon."""
    end = at
    while end < len(text) and text[end] in _BAR_SIGNS:
        end += 1
    if text[at:end] != ":":
        return end + text.startswith("]", end)
    while end < len(text) and text[end] in _LENGTH:
        end += 1
    return end


def _word_end(text: str, at: int, ends: str = NOTE_ENDS) -> int:
    end = at
    while end < len(text) and text[end] not in ends and not text[end].isspace():
        end += 1
    return end
