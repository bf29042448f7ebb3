"""What is hard about each key as JSON."""

from __future__ import annotations

from nearhand.melody.difficulty import KeyDifficulty
from nearhand.melody.hand_steps import HandStep
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.verbs.difficulty import DifficultyAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def difficulty_document(answer: DifficultyAnswer) -> dict[str, Any]:
    """The tune's own key, the known ones, every key asked for, and the keys that teach most."""
    found = answer.difficulty
    return {
        "key": str(answer.tune.key),
        "known": [str(key) for key in found.known],
        "tones_beside_signature": found.tones_beside,
        "new_chords": found.new,
        "steps": found.steps,
        "new_steps": found.new_steps,
        "keys": [_key(row) for row in found.keys],
        "to_learn": [
            {"key": str(each.key), "brings": _symbols(each.brings), "steps": _steps(each.steps, each.key)}
            for each in found.to_learn
        ],
    }


def _key(row: KeyDifficulty) -> dict[str, Any]:
    return {
        "key": str(row.key),
        "signature": row.key.signature,
        "beside_signature": [str(note) for note in row.beside],
        "double_accidentals": row.double_accidentals,
        "tones": row.tones,
        "on_black_keys": row.black,
        "new": _symbols(row.new),
        "new_steps": _steps(row.new_steps, row.key),
        "known": row.is_known,
    }


def _steps(steps: tuple[HandStep, ...], key: Key) -> list[list[str]]:
    """Steps by the two notes between which they lie."""
    return [[str(note) for note in step.notes(key)] for step in steps]


def _symbols(chords: tuple[Chord, ...]) -> list[str]:
    return [write_chord(chord, PLAIN) for chord in chords]
