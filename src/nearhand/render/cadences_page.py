"""Phrases and cadences as a page."""

from __future__ import annotations

from nearhand.harmony.along import cadence_in_words, turns_in_words
from nearhand.notation.keys import key_name
from nearhand.render.heads import head
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.cadences import CadencesAnswer

_INDENT = 4


def draw_cadences(answer: CadencesAnswer, page: Page) -> list[Line]:
    """Each phrase with its cadences, then what turns and what crosses."""
    found, conventions = answer.along, answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines.append(line(Cell(f"in {key_name(answer.key, conventions)}", "key")))
    for phrase in found.phrases:
        bars = f"bars {phrase.first_bar} to {phrase.last_bar}"
        lines.append(line(Cell(bars if phrase.last_bar > phrase.first_bar else f"bar {phrase.first_bar}", "label")))
        inside = [cadence for cadence in found.cadences if phrase.first_bar <= cadence.bar <= phrase.last_bar]
        for cadence in inside:
            lines += wrapped(cadence_in_words(cadence), page.width, _INDENT)
        if not inside:
            lines += wrapped("no cadence", page.width, _INDENT)
    events = turns_in_words(found, answer.key, conventions)
    lines += [line(Cell("Along the way", "label"))] if events else []
    for event in events:
        lines += wrapped(event, page.width, _INDENT)
    return lines
