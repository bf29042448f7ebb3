"""Substitutes for a chord as JSON."""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis
from nearhand.harmony.substitutes import what_changes
from nearhand.notation.chord_symbols import write_chord
from nearhand.theory.chord import Chord
from nearhand.verbs.instead import InsteadAnswer, Offer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def substitutes_document(answer: InsteadAnswer) -> dict[str, Any]:
    """The fields of the document: the chord, its motion in semitones, and its substitutes, nearest first."""
    answer = answer._replace(conventions=answer.conventions._replace(plain=True))
    return {
        "key": str(answer.key),
        "chord": answer.number,
        "symbol": write_chord(answer.original.chord.in_key(answer.key), answer.conventions),
        "numeral": answer.original.numeral(answer.conventions),
        "motion": answer.motion,
        "instead": [_offer(offer, answer) for offer in answer.offers],
    }


def _offer(offer: Offer, answer: InsteadAnswer) -> dict[str, Any]:
    substitute, tonic = offer.substitute, answer.key.tonic
    chords = zip(substitute.analyses, offer.easier, strict=True)
    return {
        "kind": substitute.kind.name,
        "placed": "before" if substitute.comes_before else "instead",
        "chords": [_chord(analysis, easier, answer) for analysis, easier in chords],
        "shared": [str(tonic.up(place)) for place in substitute.shared],
        "shared_by_sound": [
            {"note": str(tonic.up(own)), "sounds_as": str(tonic.up(old))} for own, old in substitute.by_sound
        ],
        "new": len(substitute.new),
        "motion": offer.motion,
        "function": substitute.function,
        "source": substitute.analyses[-1].source,
        "sentence": what_changes(substitute, answer.original, answer.conventions),
    }


def _chord(analysis: Analysis, easier: Chord | None, answer: InsteadAnswer) -> dict[str, Any]:
    chord = analysis.chord.in_key(answer.key)
    return {
        "symbol": write_chord(chord, answer.conventions),
        "numeral": analysis.numeral(answer.conventions),
        "notes": [str(tone) for tone in chord.tones],
        "sounds_as": None if easier is None else write_chord(easier, answer.conventions),
    }
