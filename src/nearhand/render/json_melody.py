"""Melodies as JSON: a note an entry, held notes told apart, in every key."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.melody_degrees import NUMBERS, SYLLABLES
from nearhand.notation.melody_writing import write_as_degrees
from nearhand.theory.melody import Melody, MelodyNote
from nearhand.theory.mode import Mode
from nearhand.theory.pitch import Pitch
from nearhand.verbs.answers import MelodyAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.notation.melody_writing import WriteInterval
    from nearhand.theory.progression import Beats


def melody_document(answer: MelodyAnswer) -> dict[str, Any]:
    """The key of a melody, and its notes in each key that was asked for."""
    return {
        "key": str(answer.tune.key),
        "key_source": answer.tune.key_source,
        "views": [
            {"key": str(view.key), "melody": melody_fields(view.melody, view.key.mode, answer.conventions)}
            for view in answer.views
        ],
    }


def melody_fields(melody: Melody, mode: Mode, conventions: Conventions) -> list[dict[str, Any]]:
    """The notes and rests of a melody in written order; the pickup is bar 0, onsets count from the start of bar 1."""
    plain = conventions._replace(plain=True)
    degree = write_as_degrees(mode, plain._replace(sing=NUMBERS))
    syllable = write_as_degrees(mode, plain._replace(sing=SYLLABLES))
    pitches = iter(melody.pitches())
    fields = []
    onset: Beats = -melody.bars[0].beats if melody.has_pickup else 0
    for number, bar in enumerate(melody.bars, start=0 if melody.has_pickup else 1):
        for note in bar.notes:
            place = {"bar": number, "onset": _number(onset), "beats": _number(note.beats)}
            fields.append(place | _note(note, next(pitches), melody.tonic, degree, syllable))
            onset += note.beats
    return fields


def _note(
    note: MelodyNote, pitch: Pitch | None, tonic: Pitch, degree: WriteInterval, syllable: WriteInterval
) -> dict[str, Any]:
    if pitch is None or note.interval is None:
        return dict.fromkeys(("note", "midi", "degree", "syllable", "ornament")) | {"held": False, "graces": []}
    return {
        "note": str(pitch),
        "midi": pitch.midi,
        "degree": degree(note.interval),
        "syllable": syllable(note.interval),
        "ornament": note.ornament or None,
        "held": note.is_held,
        "graces": [str(tonic.up(grace)) for grace in note.graces],
    }


def _number(beats: Beats) -> int | float:
    return int(beats) if beats == int(beats) else float(beats)
