"""What each part of a line is while it is typed: chords, numerals, verbs, and what cannot be read."""

from __future__ import annotations

from nearhand.notation.chart import key_colon
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.shell.chart_spans import Span, chart_spans
from nearhand.shell.notes_in_line import TypedNotes, notes_in
from nearhand.shell.refusals import (
    begins_option,
    chart_of,
    check,
    may_be_mended,
    plain_words,
    sorted_words,
    takes_value,
    words_of,
)
from nearhand.shell.unfinished import closed, is_key_being_typed, last_word_start, may_become_a_chord, may_become_a_verb
from nearhand.theory.key import C_MAJOR, Key
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME
from nearhand.verbs.verb import Verb
from nearhand.verbs.words import QUOTES, Word

KINDS = (
    *("chord", "numeral", "number", "bass", "note", "degree", "sing", "bar"),
    *("key", "verb", "option", "word", "error"),
)
MOST_CHARACTERS = 4000
"""What lies behind is left plain: nobody types so long a line, and a pasted one should not wait."""


def spans_of(line: str, session: Session) -> tuple[Span, ...]:
    """The parts of a line in order, none over another; blanks and what may still become something have none.

    >>> [(span.start, span.end, span.kind) for span in spans_of("| Bm/D | Hm |", Session())]
    [(0, 1, 'bar'), (2, 4, 'chord'), (4, 6, 'bass'), (7, 8, 'bar'), (9, 11, 'error'), (12, 13, 'bar')]
    """
    line = line[:MOST_CHARACTERS]
    if line.lstrip()[:1] in QUOTES:  # what is quoted is shown
        shown = spans_of(f"show {line}", session)
        return tuple(Span(start - 5, end - 5, kind) for start, end, kind in shown if start >= 5)
    name = line.split(maxsplit=1)[0] if line.split() else ""
    if name not in BY_NAME:
        return _of_chords(line, name, session)
    spans, error = _of_verb(line, name, session)
    return _with_error(spans, error, line)


def _of_chords(line: str, name: str, session: Session) -> tuple[Span, ...]:
    if line.strip() == name and may_become_a_verb(name) and not may_become_a_chord(name):
        return ()
    colon = key_colon(line)
    spans, start, key = [], 0, session.shown_key or C_MAJOR
    if colon > 0:
        start = colon + 1
        try:
            key = parse_key(line[:colon])
            spans.append(Span(len(line) - len(line.lstrip()), colon + 1, "key"))
        except InputError as error:
            error = error.within(line, 0)
            return _with_error((*spans, *chart_spans(line, start, len(line), key)), error, line)
    elif is_key_being_typed(line):
        return (Span(len(line) - len(line.lstrip()), len(line), "key"),)
    spans += chart_spans(line, start, len(line), key)
    if any(span.kind == "error" for span in spans):
        return tuple(spans)
    return _with_error(tuple(spans), _structure(line), line)


def _structure(line: str) -> InputError | None:
    """What is wrong with the bars of a line, where typing on does not mend it."""
    for text in (line, line[: last_word_start(line)]):
        try:
            closed(text)
        except InputError as error:
            refusal = error.within(line, 0)
        else:
            return None
    return refusal


def _of_verb(line: str, name: str, session: Session) -> tuple[tuple[Span, ...], InputError | None]:
    verb = BY_NAME[name]
    start = line.find(name)
    spans = [Span(start, start + len(name), "verb")]
    refusal = None
    try:
        check(verb, sorted_words(verb, line), session)
    except InputError as error:
        refusal = None if may_be_mended(verb, line, error) else error
    notes = notes_in(verb, line)
    has_chart = bool(chart_of(verb, plain_words(verb, line)))
    key = session.shown_key or C_MAJOR
    words = words_of(line)[1:]
    for place, word in enumerate(words):
        if not notes.holds(word):
            is_value = takes_value(verb, words[:place][-1:])
            spans += _of_verbs_word(line, word, is_value, key if has_chart else None, verb)
    if notes.text:
        spans = [span._replace(end=notes.start) if span.start < notes.start < span.end else span for span in spans]
        inside, fault = _of_notes(verb, line, notes, session)
        for around in spans[1:]:  # as of an option amid the notes
            inside = [part for span in inside for part in _outside(span, around.start, around.end)]
        return tuple(sorted((*spans, *inside))), refusal or fault
    return tuple(spans), refusal


def _of_notes(verb: Verb, line: str, notes: TypedNotes, session: Session) -> tuple[list[Span], InputError | None]:
    """The spans of the melody in a verb's words, and what is wrong with it; a key that is missing may still come."""
    from nearhand.shell.melody_spans import melody_spans
    from nearhand.shell.typed_melody import lacks_a_key, read_so_far  # most lines hold no melody

    try:
        read_so_far(verb, line, notes, session)
    except InputError as error:
        return melody_spans(notes), None if lacks_a_key(error) else error
    return melody_spans(notes), None


def _of_verbs_word(line: str, word: Word, is_value: bool, key: Key | None, verb: Verb) -> list[Span]:
    end = min(word.start + len(word.text), len(line))
    if end <= word.start:
        return []
    if is_value:
        return [Span(word.start, end, "word")]
    if begins_option(verb, word):
        return [Span(word.start, end, "option")]
    if key is not None:
        colon = key_colon(word.text)
        if colon > 0:
            head = Span(word.start, word.start + colon + 1, "key")
            return [head, *chart_spans(line, head.end, end, key)]
        return chart_spans(line, word.start, end, key)
    return [Span(word.start, end, "key" if verb.completes[:1] == ("keys",) else "word")]


def _with_error(spans: tuple[Span, ...], error: InputError | None, line: str) -> tuple[Span, ...]:
    """The spans with the place of a refusal marked, where it lies in this line."""
    if error is None or error.text != line:
        return spans
    end = error.start + len(line[error.start : max(error.end, error.start + 1)].rstrip())
    if error.start >= end:
        return spans
    around = [part for span in spans for part in _outside(span, error.start, end)]
    return tuple(sorted((*around, Span(error.start, end, "error"))))


def _outside(span: Span, start: int, end: int) -> list[Span]:
    """What a span keeps outside of a place."""
    parts = Span(span.start, min(span.end, start), span.kind), Span(max(span.start, end), span.end, span.kind)
    return [part for part in parts if part.start < part.end]


def fragments_of(text: str, session: Session) -> list[list[tuple[str, str]]]:
    """The lines of a text as pairs of a style class and a piece, for a terminal.

    >>> fragments_of("Em  B7", Session())
    [[('class:chord', 'Em'), ('', '  '), ('class:chord', 'B7')]]
    """
    lines: list[list[tuple[str, str]]] = [[]]
    at = 0
    for span in (*spans_of(text, session), Span(len(text), len(text), "")):
        for style, piece in (("", text[at : span.start]), (f"class:{span.kind}", text[span.start : span.end])):
            first, *rest = piece.split("\n")
            lines[-1] += [(style, first)] if first else []
            lines += [[(style, part)] if part else [] for part in rest]
        at = span.end
    return lines
