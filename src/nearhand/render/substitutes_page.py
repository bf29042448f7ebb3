"""Substitutes for a chord as a page, nearest first."""

from __future__ import annotations

from nearhand.harmony.substitutes import what_changes
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.counting import semitones_in_words
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.verbs.instead import InsteadAnswer, Offer

_INDENT = 4


def draw_substitutes(answer: InsteadAnswer, page: Page) -> list[Line]:
    """The chord itself, then each substitute: its name and kind, its tones and motion, what changes."""
    conventions, original = answer.conventions, answer.original
    symbol = write_chord(original.chord.in_key(answer.key), conventions)
    lines = [
        line(Cell(f"in {key_name(answer.key, conventions)}", "key")),
        *_in_a_row(
            page,
            Cell(f"{answer.number:2d}", "label"),
            Cell(symbol, "chord"),
            Cell(original.numeral(conventions), "numeral"),
        ),
        *wrapped(f"{semitones_in_words(answer.motion)} of motion to and from its neighbours.", page.width, _INDENT),
    ]
    if not answer.offers:
        return [*lines, *wrapped(f"Nothing here stands in for {symbol}.", page.width)]
    lines += wrapped(
        "Instead, in root position unless a figure says otherwise: fewest new tones first, then least motion.",
        page.width,
    )
    for offer in answer.offers:
        lines += _offer_lines(offer, answer, page)
    return lines


def _offer_lines(offer: Offer, answer: InsteadAnswer, page: Page) -> list[Line]:
    substitute, conventions = offer.substitute, answer.conventions
    symbols = " ".join(write_chord(chord.in_key(answer.key), conventions) for chord in substitute.chords)
    numerals = " ".join(analysis.numeral(conventions) for analysis in substitute.analyses)
    words = Cell(substitute.kind.words, "label")
    lines = _in_a_row(page, Cell(""), Cell(symbols, "chord"), Cell(numerals, "numeral"), words)
    easier = " ".join(write_chord(chord, conventions) for chord in offer.easier if chord is not None)
    if easier:
        lines += wrapped(f"It sounds as {easier}, and is often written so.", page.width, _INDENT)
    lines += wrapped(distance(offer, answer), page.width, _INDENT)
    return [*lines, *wrapped(what_changes(substitute, answer.original, conventions), page.width, _INDENT)]


def _in_a_row(page: Page, first: Cell, *cells: Cell) -> list[Line]:
    """Cells two blanks apart; what does not fit beside those before it goes on lines of its own."""
    lines = [line(first)]
    for cell in cells:
        if sum(len(part.text) for part in lines[-1]) + 2 + len(cell.text) <= page.width:
            lines[-1] = line(*lines[-1], "  ", cell)
        else:
            lines += wrapped(cell.text, page.width, _INDENT, role=cell.role)
    return lines


def distance(offer: Offer, answer: InsteadAnswer) -> str:
    """Shared tones, new tones and motion in words, such as ``F stays; C♭ sounds as B; 2 new tones``."""
    substitute, key = offer.substitute, answer.key

    def name(place: int) -> str:
        return note_name(key.tonic.up(place), answer.conventions)

    parts = []
    if substitute.shared:
        stays = "stays" if len(substitute.shared) == 1 else "stay"
        parts.append(f"{' '.join(map(name, substitute.shared))} {stays}")
    parts += [f"{name(own)} sounds as {name(old)}" for own, old in substitute.by_sound]
    new = len(substitute.new)
    tones = f": {' '.join(map(name, substitute.new))}" if new else ""
    parts.append(f"{new or 'no'} new tone{'s' * (new != 1)}{tones}")
    return f"{'; '.join(parts)}; {semitones_in_words(offer.motion)} of motion."
