"""Explanations as a page: each chord with its sentences, then what happens along the progression."""

from __future__ import annotations

from nearhand.harmony.along import along_in_words
from nearhand.harmony.words import altered_degrees, between_neighbours, instead_of_own, sentences, where_tones_go
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.render.heads import head
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.answers import ChordView
from nearhand.verbs.explain import ExplainAnswer

_INDENT = 4


def draw_explanations(answer: ExplainAnswer, page: Page) -> list[Line]:
    """All chords, or the one that was asked about between its neighbours."""
    conventions = answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines.append(line(Cell(f"in {key_name(answer.key, conventions)}", "key")))
    for number, view in answer.numbered:
        lines.append(_names(number, view, conventions))
        for sentence in sentences_on(answer, view):
            lines += wrapped(sentence, page.width, _INDENT)
    if answer.along is not None:
        events = along_in_words(answer.along, answer.key, conventions)
        lines += [line(Cell("Along the way", "label"))] if events else []
        for event in events:
            lines += wrapped(event, page.width, _INDENT)
    for remark in answer.tune.remarks if answer.introduces else ():
        lines += wrapped(remark, page.width, role="hint")
    return lines


def _names(number: int, view: ChordView, conventions: Conventions) -> Line:
    assert view.chord is not None and view.analysis is not None  # rests are not explained
    return line(
        Cell(f"{number:2d}  ", "label"),
        Cell(write_chord(view.chord, conventions), "chord"),
        "  ",
        Cell(view.analysis.numeral(conventions), "numeral"),
        "  ",
        Cell(view.analysis.number(conventions), "number"),
    )


def sentences_on(answer: ExplainAnswer, view: ChordView) -> list[str]:
    """The sentences on one chord; on one that was asked about also those on its surroundings."""
    analysis, key, conventions = view.analysis, answer.key, answer.conventions
    assert analysis is not None  # rests are not explained
    found = list(sentences(analysis, key, conventions))
    if altered := altered_degrees(analysis, key, conventions):
        found.append(f"Altered degrees: {', '.join(f'{degree} = {note}' for degree, note in altered)}.")
    found.append(where_tones_go(analysis, key, conventions))
    if answer.picked is not None:
        before, after = neighbours(answer, answer.picked)
        found.append(instead_of_own(analysis, key, conventions))
        found.append(
            between_neighbours(before and before.analysis, analysis, after and after.analysis, key, conventions)
        )
    return [sentence for sentence in found if sentence]


def neighbours(answer: ExplainAnswer, place: int) -> tuple[ChordView | None, ChordView | None]:
    """The chords before and after a place; None at the ends."""
    before = answer.chords[place - 1] if place else None
    return before, answer.chords[place + 1] if place + 1 < len(answer.chords) else None
