"""Explanations as a document: every chord's facts, and what happens along the progression."""

from __future__ import annotations

from nearhand.harmony.along import Along, along_in_words
from nearhand.harmony.minor_forms import forms_of
from nearhand.harmony.replacement import differing_tones
from nearhand.harmony.sources import lenders_of
from nearhand.harmony.words import (
    altered_degrees,
    between_neighbours,
    instead_of_own,
    own_chord_in_place,
    sentences,
    tendencies_of,
    where_tones_go,
)
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.render.explain_page import neighbours
from nearhand.render.json_answers import chord_fields
from nearhand.theory.key import Key
from nearhand.verbs.answers import ChordView
from nearhand.verbs.cadences import CadencesAnswer
from nearhand.verbs.explain import ExplainAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.harmony.analysis import Analysis


def explanations_document(answer: ExplainAnswer) -> dict[str, Any]:
    """The document of an explanation."""
    conventions = answer.conventions._replace(plain=True)
    chords = [_explained(number, view, answer, conventions) for number, view in answer.numbered]
    document = {"key": str(answer.key), "key_source": answer.tune.key_source, "chords": chords}
    document["remarks"] = list(answer.tune.remarks)
    if answer.along is not None:
        document |= _along(answer.along, answer.key, conventions)
    return document


def cadences_document(answer: CadencesAnswer) -> dict[str, Any]:
    """The document of phrases, cadences, turns and cross relations."""
    found = _along(answer.along, answer.key, answer.conventions._replace(plain=True))
    return {"key": str(answer.key), "key_source": answer.tune.key_source, **found}


def _explained(number: int, view: ChordView, answer: ExplainAnswer, conventions: Conventions) -> dict[str, Any]:
    analysis, key = view.analysis, answer.key
    assert analysis is not None  # rests are not explained
    fields = {
        name: value for name, value in chord_fields(view, conventions).items() if name not in ("voicing", "moves")
    }
    before, after = neighbours(answer, number - 1)
    altered = altered_degrees(analysis, key, conventions)
    wholes = [
        *sentences(analysis, key, conventions),
        where_tones_go(analysis, key, conventions),
        instead_of_own(analysis, key, conventions),
        between_neighbours(before and before.analysis, analysis, after and after.analysis, key, conventions),
    ]
    return {
        "chord": number,
        **fields,
        "forms_of_minor": list(forms_of(analysis.reading, key.mode)),
        "lenders": list(lenders_of(analysis.reading, key.mode)),
        "applied_to": analysis.target and str(key.tonic.up(analysis.target.place)),
        "altered_degrees": [{"degree": degree, "note": note} for degree, note in altered],
        "tendency_tones": _tendencies(analysis, key),
        "own_chord": _own_chord(analysis, key, conventions),
        "sentences": [sentence for sentence in wholes if sentence],
    }


def _tendencies(analysis: Analysis, key: Key) -> list[dict[str, Any]]:
    return [
        {
            "note": str(key.tonic.up(tendency.place)),
            "kind": tendency.kind,
            "expected": [str(key.tonic.up(place)) for place in tendency.expected],
            "went": None if tendency.went is None else str(key.tonic.up(tendency.went)),
            "how": tendency.how,
        }
        for tendency in tendencies_of(analysis)
    ]


def _own_chord(analysis: Analysis, key: Key, conventions: Conventions) -> dict[str, Any] | None:
    other = own_chord_in_place(analysis)
    if other is None:
        return None
    pairs = differing_tones(analysis.reading, other)
    differs = [{"note": str(key.tonic.up(new)), "for": str(key.tonic.up(old))} for new, old in pairs]
    return {"symbol": write_chord(other.in_key(key), conventions), "differs": differs}


def _along(found: Along, key: Key, conventions: Conventions) -> dict[str, Any]:
    return {
        "phrases": [{"first_bar": phrase.first_bar, "last_bar": phrase.last_bar} for phrase in found.phrases],
        "cadences": [
            {
                "bar": cadence.bar,
                "kind": cadence.kind,
                "from_chord": cadence.before + 1,
                "to_chord": cadence.goal + 1,
                "reason": cadence.reason,
            }
            for cadence in found.cadences
        ],
        "turns": [
            {
                "bar": found.bars[turn.position],
                "chord": turn.position + 1,
                "degree": turn.degree,
                "from": str(key.tonic.up(turn.place_before)),
                "to": str(key.tonic.up(turn.place)),
            }
            for turn in found.turns
        ],
        "cross_relations": [
            {
                "bar": found.bars[relation.position],
                "chord": relation.position + 1,
                "from": str(key.tonic.up(relation.place_before)),
                "to": str(key.tonic.up(relation.place)),
            }
            for relation in found.cross_relations
        ],
        "along": list(along_in_words(found, key, conventions)),
    }
