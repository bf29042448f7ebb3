"""Voices as lines, highest first, under their chords; and how the outer voices move."""

from __future__ import annotations

from nearhand.notation.chart_writing import NO_CHORD
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.notes import pitch_name
from nearhand.render.answers import total
from nearhand.render.heads import head, key_line
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Line, Page, wrapped
from nearhand.render.systems import Column, column_of, draw_systems
from nearhand.theory.pitch import Pitch
from nearhand.verbs.voice_lines import LinesAnswer

_OUTER = "outer"
LEGEND = "= held from the chord before, - silent; outer: how bass and top voice come into the chord"


def draw_lines(answer: LinesAnswer, page: Page) -> list[Line]:
    """The key, a row for each voice, and how far they move."""
    conventions, voices = answer.conventions, answer.lines.voices
    rows = ("chord", *(voice.name for voice in voices), _OUTER)
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines += key_line(answer.view.key, answer.tune, conventions, page)
    lines += draw_systems(_columns(answer, conventions), rows, page)
    lines += total(answer.view, conventions, page)
    if page.width < WIDE_ENOUGH_FOR_LABELS:
        lines += wrapped(f"rows: {', '.join(rows)}", page.width, role="label")
    counted = "; numbered voices are counted from below" if "2" in rows else ""
    return lines + wrapped(LEGEND + counted, page.width, role="label")


def _columns(answer: LinesAnswer, conventions: Conventions) -> list[Column]:
    columns, number = [], 0
    voices, motions = answer.lines.voices, ("", *answer.lines.motions)
    for place, chord_view in enumerate(answer.view.chords):
        if chord_view.chord is None:
            columns.append(column_of(answer.view, place, (NO_CHORD, *[""] * len(voices), "")))
            continue
        notes = [_note(voice.pitches[number], voice.held[number], conventions) for voice in voices]
        texts = (write_chord(chord_view.chord, conventions), *notes, motions[number] or "")
        columns.append(column_of(answer.view, place, texts))
        number += 1
    return columns


def _note(pitch: Pitch | None, is_held: bool, conventions: Conventions) -> str:
    if pitch is None:
        return "-"
    return ("=" if is_held else "") + pitch_name(pitch, conventions)
