"""Answers as JSON: stable field names, notes in plain spelling (``Bb4``, ``F#3``)."""

from __future__ import annotations

import json
from importlib import import_module

from nearhand.notation.chart_writing import NO_CHORD
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.quality import quality_name
from nearhand.verbs.answers import ChordView, NoteAnswer, View, ViewsAnswer
from nearhand.voicing.voice import VoicedProgression

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


SCHEMA = 1
_WRITTEN_ELSEWHERE = {
    "BorrowAnswer": "json_borrowing.palette_document",
    "CadencesAnswer": "json_explain.cadences_document",
    "CompletionAnswer": "completion_page.completion_document",
    "DifficultyAnswer": "json_difficulty.difficulty_document",
    "ExplainAnswer": "json_explain.explanations_document",
    "HelpAnswer": "json_help.help_document",
    "InsteadAnswer": "json_substitutes.substitutes_document",
    "KeysAnswer": "json_keys.keys_document",
    "LinesAnswer": "json_voicing.lines_document",
    "MelodyAnswer": "json_melody.melody_document",
    "ListAnswer": "json_list.list_document",
    "OthersAnswer": "json_voicing.paths_document",
    "PartsAnswer": "json_parts.parts_document",
    "SingerAnswer": "json_singer.singer_document",
    "RecentAnswer": "json_keeping.recent_document",
    "SettingsAnswer": "json_keeping.settings_document",
    "TonesAnswer": "json_tones.tones_document",
    "WhyAnswer": "json_voicing.why_document",
}
"""Kind of answer to ``module.function`` of this room; imported when one is written."""


def json_answer(answer: object) -> str:
    """One JSON document for an answer of a one-shot verb, its notes in English names.

    Raises TypeError for an answer that only a shell gives.
    """
    conventions = getattr(answer, "conventions", None)
    if isinstance(conventions, Conventions) and conventions.names != "english":
        answer = answer._replace(conventions=conventions._replace(names="english"))  # type: ignore[attr-defined]
    if isinstance(answer, ViewsAnswer):
        document = _views(answer)
    elif elsewhere := _WRITTEN_ELSEWHERE.get(type(answer).__name__):
        module, _, function = elsewhere.partition(".")
        document = getattr(import_module(f"nearhand.render.{module}"), function)(answer)
    elif isinstance(answer, NoteAnswer):
        document = {"lines": list(answer.lines)}
    else:
        raise TypeError(f"no JSON for {type(answer).__name__}")
    return json.dumps({"schema": SCHEMA, **document}, ensure_ascii=False)


def json_error(error: InputError) -> str:
    """One JSON document for a refusal; a place in a file is told by ``source`` and ``line``.

    >>> json_error(InputError("no such chord", "Hm", 0, 1, wanted="a chord", hint="write Bm"))
    '{"error": {"text": "Hm", "start": 0, "end": 1, "wanted": "a chord", "hint": "write Bm", "what": "no such chord"}}'
    """
    fields: dict[str, Any] = {
        "text": error.text,
        "start": error.start,
        "end": error.end,
        "wanted": error.wanted,
        "hint": error.hint,
        "what": error.what,
    }
    if error.source:
        fields |= {"source": error.source, "line": error.line}
    return json.dumps({"error": fields}, ensure_ascii=False)


def _views(answer: ViewsAnswer) -> dict[str, Any]:
    conventions = answer.conventions._replace(plain=True)
    return {
        "key": str(answer.tune.key),
        "key_source": answer.tune.key_source,
        "views": [_view(view, conventions) for view in answer.views],
    }


def _view(view: View, conventions: Conventions) -> dict[str, Any]:
    voicing = None
    if view.voiced is not None:
        voicing = _voicing(view.voiced)
    fields = {
        "key": str(view.key),
        "chords": [chord_fields(chord, conventions) for chord in view.chords],
        "voicing": voicing,
    }
    if view.melody is None:
        return fields
    from nearhand.render.json_melody import melody_fields

    return fields | {"melody": melody_fields(view.melody, view.key.mode, conventions)}


def _voicing(voiced: VoicedProgression) -> dict[str, Any]:
    if not voiced.is_plain:
        from nearhand.render.json_voicing import voicing_fields

        return voicing_fields(voiced)
    movement = voiced.movement
    return {"style": voiced.style, "cost": {"total": movement, "movement": movement}}


def chord_fields(view: ChordView, conventions: Conventions) -> dict[str, Any]:
    """The fields of one chord or rest."""
    beats = view.moment.slot.beats
    fields: dict[str, Any] = {"bar": view.moment.bar, "beats": int(beats) if beats == int(beats) else float(beats)}
    if view.moment.slot.is_optional:
        fields["optional"] = True
    chord, analysis = view.chord, view.analysis
    if chord is None or analysis is None:
        names = ("numeral", "number", "function", "root", "quality", "bass", "notes", "source", "voicing", "moves")
        return fields | {"symbol": NO_CHORD} | dict.fromkeys(names)
    voicing = view.voicing
    return fields | {
        "symbol": write_chord(chord, conventions),
        "numeral": analysis.numeral(conventions),
        "number": analysis.number(conventions),
        "function": analysis.function,
        "root": str(chord.root),
        "quality": quality_name(chord.quality),
        "bass": str(chord.bass),
        "notes": [str(tone) for tone in chord.tones],
        "source": analysis.source,
        "voicing": voicing
        and {"left": [str(pitch) for pitch in voicing.left], "right": [str(pitch) for pitch in voicing.right]},
        "moves": list(voicing.motion.moves) if voicing and voicing.motion else None,
    }
