"""A melody against its chords as a page: a row a note, then the clashes and how many notes are chord tones."""

from __future__ import annotations

from nearhand.melody.against import CLASH, NO_CHORD, Tone
from nearhand.melody.tone_words import clash_in_words, clashes, count_in_words, kind_in_words
from nearhand.notation.chart_writing import NO_CHORD as NO_CHORD_SIGN
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.melody_degrees import HIGHER, LOWER
from nearhand.notation.melody_writing import write_as_degrees
from nearhand.notation.notes import pitch_name
from nearhand.render.heads import head
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line, wrapped
from nearhand.theory.key import Key
from nearhand.verbs.tones import TonesAnswer

_HEADINGS = ("bar", "chord", "note", "degree")
_ROLES = ("label", "chord", "note", "degree")


def draw_tones(answer: TonesAnswer, page: Page) -> list[Line]:
    """Bar, chord, note, degree, and what the note is over the chord; then what is to be said of the whole."""
    conventions = answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines.append(line(Cell(f"in {key_name(answer.key, conventions)}", "key")))
    lines += _table(answer, page)
    for sentence in closing_in_words(answer):
        lines += wrapped(sentence, page.width)
    remarks = answer.tune.all_remarks if answer.introduces else ()
    for text, role in ((_legend(answer), "label"), *((remark, "hint") for remark in remarks)):
        lines += wrapped(text, page.width, role=role)
    return lines


def _legend(answer: TonesAnswer) -> str:
    """What the marks behind degrees mean, as far as there are some."""
    write = write_as_degrees(answer.key.mode, answer.conventions)
    degrees = "".join(write(tone.note.interval) for tone in answer.tones)
    marks = ((HIGHER, "an octave up"), (LOWER, "an octave down"))
    return ", ".join(f"{mark} {meaning}" for mark, meaning in marks if mark in degrees)


def _table(answer: TonesAnswer, page: Page) -> list[Line]:
    rows = [_row(tone, answer) for tone in answer.tones]
    gap = "  " if page.width >= WIDE_ENOUGH_FOR_LABELS else " "
    widths = [max(map(len, column)) for column in zip(_HEADINGS, *rows, strict=True)]
    indent = sum(widths) + len(gap) * len(widths)
    lines = [line(Cell(gap.join(name.ljust(width) for name, width in zip(_HEADINGS, widths, strict=True)), "label"))]
    before: Tone | None = None
    for tone, row in zip(answer.tones, rows, strict=True):
        bar, chord, *rest = row
        is_new_bar = before is None or before.bar != tone.bar
        texts = (bar if is_new_bar else "", chord if is_new_bar or _changes(before, tone) else "", *rest)
        cells: list[Cell | str] = []
        for text, width, role in zip(texts, widths, _ROLES, strict=True):
            cells += [Cell(text.ljust(width), role), gap]
        told = wrapped(kind_in_words(tone, answer.key, answer.conventions), page.width, indent)
        role = "error" if tone.kind == CLASH else ""
        lines.append(line(*cells, Cell(told[0][0].text[indent:], role)))
        lines += [line(" " * indent, Cell(part[0].text[indent:], role)) for part in told[1:]]
        before = tone
    return lines if rows else wrapped("No note of the melody sounds here.", page.width)


def _changes(before: Tone | None, tone: Tone) -> bool:
    return before is None or (before.number, before.kind == NO_CHORD) != (tone.number, tone.kind == NO_CHORD)


def _row(tone: Tone, answer: TonesAnswer) -> tuple[str, ...]:
    conventions = answer.conventions
    degree = write_as_degrees(answer.key.mode, conventions)(tone.note.interval)
    chord = chord_name(tone, answer.key, conventions)
    return str(tone.bar).rjust(len(_HEADINGS[0])), chord, pitch_name(tone.note.pitch, conventions), degree


def chord_name(tone: Tone, key: Key, conventions: Conventions) -> str:
    """The symbol of the chord that a note sounds over, the sign of a chord rest, or nothing."""
    if tone.chord is not None:
        return write_chord(tone.chord.in_key(key), conventions)
    return NO_CHORD_SIGN if tone.kind == NO_CHORD else ""


def closing_in_words(answer: TonesAnswer) -> list[str]:
    """The clashes with their bars, and how many notes are chord tones."""
    found = clashes(answer.tones)
    told = [f"Bar {tone.bar}: {clash_in_words(tone, answer.key, answer.conventions)}" for tone in found]
    return [*told, *count_in_words(answer.tones)]
