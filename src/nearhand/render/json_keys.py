"""The JSON of ``keys``: keys with probabilities and reasons, regions with their pivots, and the melody, if any."""

from __future__ import annotations

from nearhand.harmony.key_reasons import reasons_for
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.render.keys_page import numeral_in
from nearhand.verbs.keys import KeysAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.harmony.modulation import Pivot, Region
    from nearhand.theory.key import Key


def keys_document(answer: KeysAnswer) -> dict[str, Any]:
    """The fields of the document; chords are numbered from 1, rests left out, and bars from 1."""
    conventions = answer.conventions._replace(plain=True)
    notes = [note.pitch_class for note in answer.melody]
    keys = [
        {
            "key": str(fit.key),
            "probability": round(fit.share, 4),
            "reasons": list(reasons_for(fit.key, answer.chords, notes, conventions)),
        }
        for fit in answer.fits
    ]
    befores = (None, *(region.key for region in answer.regions))
    regions = [_region(region, before, conventions) for before, region in zip(befores, answer.regions, strict=False)]
    melody = {"melody": [str(note) for note in answer.melody]} if answer.melody else {}
    return {"keys": keys, "regions": regions, **melody}


def _region(region: Region, before: Key | None, conventions: Conventions) -> dict[str, Any]:
    return {
        "key": str(region.key),
        "first_bar": region.first_bar,
        "last_bar": region.last_bar,
        "first_chord": region.first_chord + 1,
        "last_chord": region.last_chord + 1,
        "pivot": region.pivot and before and _pivot(region.pivot, before, region.key, conventions),
    }


def _pivot(pivot: Pivot, before: Key, after: Key, conventions: Conventions) -> dict[str, Any]:
    return {
        "chord": pivot.place + 1,
        "bar": pivot.bar,
        "symbol": write_chord(pivot.chord, conventions),
        "numeral_before": numeral_in(pivot.chord, before, conventions),
        "numeral_after": numeral_in(pivot.chord, after, conventions),
    }
