"""Tunes and voicings as HTML tables for notebooks: one row a chord, so that keyboards stand below one another."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.keys import write_key
from nearhand.render.html_text import escaped
from nearhand.render.keyboard import LEGEND, Strip, draw_strips
from nearhand.render.page import Page, text_of
from nearhand.render.system import columns_of, rows_of
from nearhand.verbs.answers import View, view_of
from nearhand.verbs.tune import Tune
from nearhand.voicing.voice import VoicedProgression

_WIDE = 10_000


def tune_table(tune: Tune, conventions: Conventions = DEFAULT) -> str:
    """A tune as a table of chords, numerals, numbers and notes, and one of its melody.

    >>> from nearhand.verbs.tune import tune_from_text
    >>> "<td>V7/vi</td>" in tune_table(tune_from_text("| C | E7 | Am | F | G7 | C |"))
    True
    """
    key = write_key(tune.key, conventions.plain)
    told = f"{tune.title}, {key}" if tune.title else key
    tables = [_table(view_of(tune.progression, None), told, conventions)] if tune.progression.bars else []
    if tune.melody is not None:
        from nearhand.render.html_melodies import melody_table

        tables.append(melody_table(tune.melody, tune.key.mode, told, conventions))
    return tables[0] if len(tables) == 1 else "\n".join(["<div>", *tables, "</div>"])


def voiced_table(voiced: VoicedProgression, conventions: Conventions = DEFAULT) -> str:
    """A voiced progression as a table of chords, numerals, numbers, both hands and keyboards."""
    progression = voiced.search.task.progression
    told = f"{write_key(progression.key, conventions.plain)}, {voiced.style}; {LEGEND}"
    return _table(view_of(progression, voiced), told, conventions)


def _table(view: View, told: str, conventions: Conventions) -> str:
    rows = rows_of(view)
    columns = columns_of(view, rows, conventions)
    strips = [column.strip._replace(label="") for column in columns if column.strip]
    keyboards = _keyboards(strips, Page(_WIDE, conventions.plain))
    marks = next(keyboards, None)
    heads = "".join(f'<th scope="col">{name}</th>' for name in ("bar", *rows))
    width = 1 + len(rows)
    if marks is not None:
        heads += f'<th scope="col">keyboard{marks}</th>'
        width += 1
    lines = ["<table>", f"<caption>{escaped(told)}</caption>", f"<thead><tr>{heads}</tr></thead>", "<tbody>"]
    for chord, column in zip(view.chords, columns, strict=True):
        if column.section:
            lines.append(f'<tr><th scope="colgroup" colspan="{width}">{escaped(column.section)}</th></tr>')
        symbol, *others = (escaped(text) for text in column.texts)
        cells = f'<td>{chord.moment.bar}</td><th scope="row">{symbol}</th>'
        cells += "".join(f"<td>{text}</td>" for text in others)
        if marks is not None:
            cells += f"<td>{next(keyboards) if column.strip else ''}</td>"
        lines.append(f"<tr>{cells}</tr>")
    return "\n".join([*lines, "</tbody>", "</table>"])


def _keyboards(strips: list[Strip], page: Page) -> Iterator[str]:
    """The marks of octaves, then every keyboard; who hears the table has the notes of the hands instead."""
    for drawn in draw_strips(strips, page):
        keys = escaped(text_of([drawn])[1:])
        yield f'<code aria-hidden="true" style="display: block; white-space: pre">{keys}</code>'
