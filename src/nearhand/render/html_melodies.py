"""Melodies as HTML tables for notebooks: a column a group of notes, degrees over notes."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.melody_writing import groups_of, write_as_degrees, write_as_notes
from nearhand.render.html_text import escaped
from nearhand.theory.melody import Melody
from nearhand.theory.mode import Mode


def melody_table(melody: Melody, mode: Mode, told: str, conventions: Conventions) -> str:
    """A melody as a table of one row a bar: its number, its degrees, its notes; the pickup is bar 0.

    >>> from nearhand.verbs.melodies import melody_tune
    >>> tune = melody_tune("G: 5_ | 1 2 [3 4] b7")
    >>> "<td>D3</td>" in melody_table(tune.melody, tune.key.mode, "G major", Conventions())
    True
    """
    writers = write_as_degrees(mode, conventions), write_as_notes(melody.tonic, conventions)
    heads = "".join(f'<th scope="col">{name}</th>' for name in ("bar", "degrees", "notes"))
    lines = ["<table>", f"<caption>{escaped(told)}</caption>", f"<thead><tr>{heads}</tr></thead>", "<tbody>"]
    for number, bar in enumerate(melody.bars, start=0 if melody.has_pickup else 1):
        texts = (" ".join(group.write(write) for group in groups_of(bar)) for write in writers)
        cells = "".join(f"<td>{escaped(text)}</td>" for text in texts)
        lines.append(f'<tr><th scope="row">{number}</th>{cells}</tr>')
    return "\n".join([*lines, "</tbody>", "</table>"])
