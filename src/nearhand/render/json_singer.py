"""The keys that fit singers as JSON."""

from __future__ import annotations

from nearhand.melody.places import Place
from nearhand.melody.ranges import PLAIN_KEY, Voice
from nearhand.melody.readings import Reading
from nearhand.melody.singers_key import Fit
from nearhand.melody.spans import Span
from nearhand.theory.key import Key, pitch_in
from nearhand.verbs.singer import SingerAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def singer_document(answer: SingerAnswer) -> dict[str, Any]:
    """The singers, the keys that fit, best first, and, where none does, the nearest and what is lacking.

    ``shift`` and ``room`` are semitones (below 0 where the tune passes a range), ``octaves`` those above the written
    melody, ``comfortable`` and ``at_top`` percent of the time, null where only the tune's ends are known.
    """
    span = answer.sung.span
    half = span.middle_half
    return {
        "key": str(answer.key),
        "key_source": "given" if answer.sung.runner_up is None else "inferred",
        "semitones": span.width,
        "half_of_time": None if half is None else {"low": half[0], "high": half[1]},
        "singers": [_singer(voice) for voice in answer.singers],
        "fits": [_fit(fit, span) for fit in answer.fits],
        "nearest": None if answer.nearest is None else _fit(answer.nearest, span),
        "wider_by": list(answer.wider_by),
        "too_low_in_bars": list(answer.too_low),
        "too_high_in_bars": list(answer.too_high),
    }


def _singer(voice: Voice) -> dict[str, Any]:
    notes = {"low": voice.low, "high": voice.high, "comfort_low": voice.comfort_low, "comfort_high": voice.comfort_high}
    return {"name": voice.name or None} | {name: str(pitch_in(PLAIN_KEY, note)) for name, note in notes.items()}


def _fit(fit: Fit, span: Span) -> dict[str, Any]:
    return {
        "key": str(fit.key),
        "shift": fit.shift,
        "places": [_place(place, fit.key, span) for place in fit.places],
        "accidentals": fit.accidentals,
        "instruments": [_reading(reading) for reading in fit.readings],
    }


def _place(place: Place, key: Key, span: Span) -> dict[str, Any]:
    return {
        "low": str(span.pitch(0, place.low, key)),
        "high": str(span.pitch(span.width, place.low, key)),
        "octaves": place.octaves,
        "room": {"below": place.below, "above": place.above},
        "comfortable": place.comfortable,
        "at_top": place.at_top,
    }


def _reading(reading: Reading) -> dict[str, Any]:
    return {"name": reading.instrument.name, "key": str(reading.key), "fret": reading.fret}
