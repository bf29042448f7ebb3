"""The keys that fit singers as JSON."""

from __future__ import annotations

from nearhand.melody.ranges import PLAIN_KEY, Voice
from nearhand.melody.singers_key import Fit
from nearhand.theory.key import pitch_in
from nearhand.verbs.singer import SingerAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def singer_document(answer: SingerAnswer) -> dict[str, Any]:
    """The singers, the keys that fit, best first, and, where none does, the nearest and what is lacking."""
    return {
        "key": str(answer.key),
        "semitones": answer.span.high - answer.span.low,
        "singers": [_singer(voice) for voice in answer.singers],
        "fits": [_fit(fit) for fit in answer.fits],
        "nearest": None if answer.misfit is None else _fit(answer.misfit),
        "lacking": max(0, answer.lacking),
    }


def _singer(voice: Voice) -> dict[str, Any]:
    notes = {"low": voice.low, "high": voice.high, "comfort_low": voice.comfort_low, "comfort_high": voice.comfort_high}
    return {"name": voice.name or None} | {name: str(pitch_in(PLAIN_KEY, note)) for name, note in notes.items()}


def _fit(fit: Fit) -> dict[str, Any]:
    return {
        "key": str(fit.key),
        "shift": fit.shift,
        "low": str(pitch_in(fit.key, fit.low)),
        "high": str(pitch_in(fit.key, fit.high)),
        "room": [{"below": below, "above": above} for below, above in fit.room],
    }
