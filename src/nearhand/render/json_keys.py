"""The JSON of ``keys``: keys with probabilities and reasons, regions with their pivots, and what a melody says."""

from __future__ import annotations

from nearhand.harmony.church_modes import mode_in_words
from nearhand.harmony.elimination import elimination_in_words
from nearhand.harmony.relatives import relative_in_words
from nearhand.harmony.signatures import accidentals_in_words, signatures_left
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.render.keys_page import numeral_in, reasons_in
from nearhand.verbs.keys import KeysAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.harmony.modulation import Pivot, Region
    from nearhand.theory.key import Key


def keys_document(answer: KeysAnswer) -> dict[str, Any]:
    """The fields of the document; chords are numbered from 1, rests left out, and bars from 1."""
    conventions = answer.conventions._replace(plain=True)
    answer = answer._replace(conventions=conventions)
    keys = [
        {"key": str(fit.key), "probability": round(fit.share, 4), "reasons": list(reasons_in(answer, fit.key))}
        for fit in answer.fits
    ]
    befores = (None, *(region.key for region in answer.regions))
    regions = [_region(region, before, conventions) for before, region in zip(befores, answer.regions, strict=False)]
    return {"keys": keys, "regions": regions, **(_melody(answer) if answer.notes else {})}


def _melody(answer: KeysAnswer) -> dict[str, Any]:
    """The melody's notes, the signatures that they leave, and what they say of a church mode and the relative key."""
    melody, notes, lengths, conventions = answer.melody, answer.notes, answer.lengths, answer.conventions
    assert melody is not None
    signatures = [
        {
            "accidentals": left.signature,
            "name": accidentals_in_words(left.signature),
            "outside": [str(note) for note in left.outside],
        }
        for left in signatures_left(notes, lengths, answer.fits[0].key)
    ]
    relative = {
        "key": str(answer.relative.key),
        "probability": round(answer.relative.share, 4),
        "sentence": relative_in_words(answer.fits[0], answer.relative, notes, lengths, conventions) or None,
    }
    return {
        "melody": [str(note.pitch if melody.has_octaves else note.pitch.pitch_class) for note in melody.sounding()],
        "signatures": signatures,
        "elimination": elimination_in_words(notes, lengths, conventions, answer.fits[0].key),
        "mode": mode_in_words(answer.fits, notes, conventions) or None,
        "relative": relative,
        "profile": answer.profile,
    }


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
