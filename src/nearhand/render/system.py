"""A progression in one key: its rows of texts and its keyboards, chord by chord."""

from __future__ import annotations

from nearhand.notation.chart_writing import NO_CHORD, bracketed
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.notes import note_name, pitch_name
from nearhand.render.keyboard import strip_of
from nearhand.render.page import Line, Page
from nearhand.render.systems import Column, column_of, draw_systems
from nearhand.verbs.answers import ChordView, View

ROWS = ("chord", "numeral", "number", "right", "left", "moves")
ROWS_WITHOUT_VOICING = ("chord", "numeral", "number", "notes")
MOVES_LEGEND = "moves: semitones per voice, = held, + enters"


def draw_view(view: View, conventions: Conventions, page: Page) -> list[Line]:
    """Draw all systems of a view, each with its keyboards."""
    rows = rows_of(view)
    return draw_systems(columns_of(view, rows, conventions), rows, page)


def rows_of(view: View) -> tuple[str, ...]:
    """The rows of a view that say something."""
    if view.voiced is None:
        return ROWS_WITHOUT_VOICING
    empty = [hand for hand in ("right", "left") if not any(getattr(each, hand) for each in view.voiced.voicings)]
    return tuple(row for row in ROWS if row not in empty)


def columns_of(view: View, rows: tuple[str, ...], conventions: Conventions) -> list[Column]:
    """The column of every chord and rest of a view: its text in each row, and its keyboard."""
    columns: list[Column] = []
    before: ChordView | None = None
    for place, chord_view in enumerate(view.chords):
        texts = tuple(_row(row, chord_view, before, conventions) for row in rows)
        strip = None
        if chord_view.voicing is not None:
            left_before = [pitch.midi for pitch in before.voicing.left] if before and before.voicing else []
            strip = strip_of(texts[0], chord_view.voicing, left_before)
        columns.append(column_of(view, place, texts, strip))
        before = chord_view if chord_view.chord is not None else before
    return columns


def _row(row: str, chord_view: ChordView, before: ChordView | None, conventions: Conventions) -> str:
    if chord_view.chord is None or chord_view.analysis is None:
        return NO_CHORD if row == "chord" else ""
    if row == "chord":
        return bracketed(write_chord(chord_view.chord, conventions), chord_view.moment.slot)
    if row == "numeral":
        return chord_view.analysis.numeral(conventions)
    if row == "number":
        return chord_view.analysis.number(conventions)
    if row == "notes":
        tones, bass = chord_view.chord.tones, chord_view.chord.bass
        foreign = "" if bass in tones else "/" + note_name(bass, conventions)
        return " ".join(note_name(tone, conventions) for tone in tones) + foreign
    return _hand_row(row, chord_view, before, conventions)


def _hand_row(row: str, chord_view: ChordView, before: ChordView | None, conventions: Conventions) -> str:
    voicing = chord_view.voicing
    if voicing is None:
        return ""
    if row == "right":
        return " ".join(pitch_name(pitch, conventions) for pitch in voicing.right)
    if row == "left":
        names = " ".join(pitch_name(pitch, conventions) for pitch in voicing.left)
        if before is None or before.voicing is None:
            return names
        if not (voicing.candidate.bass and before.voicing.candidate.bass):
            return names
        return f"{names} {move_of(voicing.left[0].midi - before.voicing.left[0].midi)}"
    return "" if voicing.motion is None else " ".join(map(move_of, voicing.motion.moves))


def move_of(semitones: int | None) -> str:
    """How a voice moves: signed semitones, ``=`` held, ``+`` enters."""
    return "+" if semitones is None else "=" if semitones == 0 else f"{semitones:+d}"
