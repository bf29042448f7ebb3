"""Chord symbols of the lead sheets and dance tunes that music21's package ships: each is read, with music21's notes."""

from __future__ import annotations

import re
import warnings
from functools import cache
from pathlib import Path

import music21
import pytest
from music21 import converter, harmony

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.quality import quality_name

CORPUS = Path(music21.__file__).parent / "corpus"
TUNE_BOOK = CORPUS / "nottingham-dataset" / "reelsa-c.abc"
# music21's names of kinds that the schema of MusicXML 4.0 spells otherwise.
KINDS = {"dominant-seventh": "dominant"}


@cache
def symbols_of_sheets():
    """Every chord symbol of the lead sheets: its figure with b for music21's dash, its kind and its notes."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        sheets = [converter.parse(path) for path in sorted((CORPUS / "leadSheet").glob("*.mxl"))]
    return [
        (
            symbol.figure.replace("-", "b"),
            KINDS.get(symbol.chordKind, symbol.chordKind),
            {pitch.name.replace("-", "b") for pitch in symbol.pitches},
        )
        for sheet in sheets
        for symbol in sheet.recurse().getElementsByClass(harmony.ChordSymbol)
    ]


def test_every_symbol_of_the_lead_sheets_is_read_as_its_kind_with_its_notes():
    found = symbols_of_sheets()

    assert len(found) >= 50
    for figure, kind, notes in found:
        chord = parse_chord(figure)

        assert {str(tone) for tone in chord.tones} == notes
        assert quality_name(chord.quality) == kind


def test_what_is_written_for_them_is_what_they_print():
    for figure, _, _ in symbols_of_sheets():
        assert write_chord(parse_chord(figure), PLAIN) == figure


def symbols_of_tunes():
    """Chord symbols in quotes, as ABC 2.1 has them; a bass is a small letter there."""
    return sorted(set(re.findall(r'"([A-G][^"]*)"', TUNE_BOOK.read_text(encoding="utf-8"))))


@pytest.mark.parametrize("figure", symbols_of_tunes())
def test_every_symbol_of_the_dance_tunes_is_read(figure):
    if figure.endswith("+"):  # one bass of the book has a plus sign for its sharp
        figure = figure.removesuffix("+") + "#"
    chord = parse_chord(figure)

    assert str(chord.root) == figure[0]
    assert str(chord.bass) == (figure[0] if "/" not in figure else figure.partition("/")[2].capitalize())
