"""The palette of borrowed chords as a page: a mode after the other, a chord a line."""

from __future__ import annotations

from nearhand.harmony.borrowing import LendingMode, LentChord, Use
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.notation.numeral_writing import write_applied, write_numeral
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Cell, Line, Page, line, wrapped
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.verbs.borrow import BorrowAnswer

_INDENT, _DEEP_INDENT = 2, 6
Row = tuple[str, str, str, str]
"""Of a chord: its numeral, its symbol, its notes, and the rest in words."""


def draw_palette(answer: BorrowAnswer, page: Page) -> list[Line]:
    """What a key may borrow: likeliest mode first; foreign notes stand in brackets."""
    key, conventions = answer.key, answer.conventions
    name = key_name(key, conventions)
    tonic = note_name(key.tonic, conventions)
    lines = wrapped(f"Chords that {name} may borrow from the other modes on {tonic}, likeliest first.", page.width)
    rows = {mode.name: _rows(mode, key, conventions) for mode in answer.modes}
    widths = [max((len(row[place]) for table in rows.values() for row in table), default=0) + 2 for place in range(3)]
    for mode in answer.modes:
        scale = " ".join(note_name(key.tonic.up(place), conventions) for place in mode.scale)
        lines += [line(), *_title(f"{mode.name}:", scale, page)]
        for use in mode.uses:
            lines += wrapped(use_in_words(use, key, conventions), page.width, _INDENT)
        for row in rows[mode.name]:
            lines += _chord_lines(row, widths, page)
    legend = f"[ ] is a note that {name} has not"
    if key.mode.is_minor:
        legend += ": in none of its three forms, or not beside the chord's other notes"
    return [*lines, line(), *wrapped(legend + ".", page.width, role="label")]


def use_in_words(use: Use, key: Key, conventions: Conventions) -> str:
    """What players do with a mode's chords: numerals, the same in the key, and what happens.

    >>> from nearhand.harmony.borrowing import borrowed_palette
    >>> from nearhand.notation.keys import parse_key
    >>> key = parse_key("A major")
    >>> use_in_words(borrowed_palette(key.mode)[0].uses[1], key, Conventions())
    '♭VI ♭VII I (F G A): a climb to the tonic by whole steps.'
    """
    numerals = " ".join(write_numeral(chord, key.mode, conventions) for chord in use.chords)
    symbols = " ".join(write_chord(chord.in_key(key), conventions) for chord in use.chords)
    return f"{numerals} ({symbols}): {use.words}."


def applied_numeral(lent: LentChord, key: Key, conventions: Conventions) -> str:
    """The numeral of a chord that is heard as an applied one first; empty for any other."""
    if lent.target is None:
        return ""
    return write_applied(lent.chord, *lent.target, key.mode, conventions)


def _title(name: str, scale: str, page: Page) -> list[Line]:
    if len(name) + 1 + len(scale) <= page.width:
        return [line(Cell(name, "title"), f" {scale}")]
    return [line(Cell(name, "title")), *wrapped(scale, page.width, _INDENT)]


def _rows(mode: LendingMode, key: Key, conventions: Conventions) -> list[Row]:
    return [_row(lent, key, conventions) for lent in (*mode.triads, *mode.sevenths)]


def _row(lent: LentChord, key: Key, conventions: Conventions) -> Row:
    rest = []
    if lent.shared_with:
        rest.append(f"also in {', '.join(lent.shared_with)}")
    if applied := applied_numeral(lent, key, conventions):
        rest.append(f"heard first as {applied}")
    return (
        write_numeral(lent.chord, key.mode, conventions),
        write_chord(lent.chord.in_key(key), conventions),
        _notes(lent.chord, lent.foreign, key, conventions),
        "; ".join(rest),
    )


def _notes(chord: RelativeChord, foreign: tuple[int, ...], key: Key, conventions: Conventions) -> str:
    names = [(place, note_name(key.tonic.up(place), conventions)) for place in chord.places]
    return " ".join(f"[{name}]" if place in foreign else name for place, name in names)


def _chord_lines(row: Row, widths: list[int], page: Page) -> list[Line]:
    """One chord: its notes and its words stand beside it where there is room, else below."""
    numeral, symbol, notes, rest = row
    names = line(" " * _INDENT, Cell(numeral.ljust(widths[0]), "numeral"), Cell(symbol.ljust(widths[1]), "chord"))
    column = _INDENT + widths[0] + widths[1]
    if page.width >= WIDE_ENOUGH_FOR_LABELS and column + widths[2] + len(rest) <= page.width:
        return [(*names, *line(notes.ljust(widths[2]), Cell(rest, "label")))]
    below = wrapped(rest, page.width, _DEEP_INDENT, role="label")
    if column + len(notes) <= page.width:
        return [(*names, Cell(notes)), *below]
    return [names, *wrapped(notes, page.width, _DEEP_INDENT), *below]
