"""The palette of borrowed chords as JSON."""

from __future__ import annotations

from nearhand.harmony.borrowing import LentChord
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.numeral_writing import write_numeral
from nearhand.render.borrowing_page import applied_numeral, use_in_words
from nearhand.theory.key import Key
from nearhand.verbs.borrow import BorrowAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def palette_document(answer: BorrowAnswer) -> dict[str, Any]:
    """The fields of the document: the key, and for each mode its uses, triads and seventh chords."""
    key, conventions = answer.key, answer.conventions._replace(plain=True)
    modes = [
        {
            "mode": mode.name,
            "scale": [str(key.tonic.up(place)) for place in mode.scale],
            "use": [use_in_words(use, key, conventions) for use in mode.uses],
            "triads": [_chord(lent, key, conventions) for lent in mode.triads],
            "sevenths": [_chord(lent, key, conventions) for lent in mode.sevenths],
        }
        for mode in answer.modes
    ]
    return {"key": str(key), "modes": modes}


def _chord(lent: LentChord, key: Key, conventions: Conventions) -> dict[str, Any]:
    return {
        "numeral": write_numeral(lent.chord, key.mode, conventions),
        "symbol": write_chord(lent.chord.in_key(key), conventions),
        "notes": [str(tone) for tone in lent.chord.in_key(key).tones],
        "foreign": [str(key.tonic.up(place)) for place in lent.foreign],
        "shared_with": list(lent.shared_with),
        "heard_first_as": applied_numeral(lent, key, conventions) or None,
    }
