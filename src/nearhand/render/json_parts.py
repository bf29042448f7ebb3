"""The parts of a band as JSON."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.verbs.parts import Part, PartsAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def parts_document(answer: PartsAnswer) -> dict[str, Any]:
    """The key that sounds, and for each instrument what it reads."""
    return {"key": str(answer.key), "parts": [_part(part) for part in answer.parts]}


def _part(part: Part) -> dict[str, Any]:
    return {
        "instrument": part.instrument.name,
        "key": str(part.written.key),
        "semitones": part.instrument.semitones,
        "symbols": [write_chord(chord, PLAIN) for chord in part.written.chords()],
        "capos": [
            {
                "fret": capo.fret,
                "shapes": str(capo.shapes),
                "symbols": [write_chord(chord, PLAIN) for chord in capo.chords],
                "open": capo.open_chords,
            }
            for capo in part.capos
        ],
    }
