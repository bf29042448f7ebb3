"""The parts of a band as JSON."""

from __future__ import annotations

from nearhand.melody.compass import compass_of
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.render.json_melody import melody_fields
from nearhand.verbs.parts import Part, PartsAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def parts_document(answer: PartsAnswer) -> dict[str, Any]:
    """The key that sounds, for each instrument what it reads, and the sounding keys that are friendly to all."""
    return {
        "key": str(answer.key),
        "parts": [_part(part, answer.conventions) for part in answer.parts],
        "friendly_to_all": [
            {
                "key": str(shared.key),
                "capo": shared.fret,
                "hard_for": [instrument.name for instrument in shared.hard_for],
            }
            for shared in answer.shared
        ],
    }


def _part(part: Part, conventions: Conventions) -> dict[str, Any]:
    """What an instrument reads: ``semitones`` from sounding to written notes, and the written ``compass``.

    ``octaves``: how many the melody was moved; ``outside``: the written notes that lie outside the compass all the
    same. ``open`` is null where there are no chords to count.
    """
    compass = compass_of(part.instrument)
    return {
        "instrument": part.instrument.name,
        "key": str(part.written.key),
        "semitones": part.instrument.semitones,
        "compass": [str(compass.low), str(compass.high)],
        "symbols": [write_chord(chord, PLAIN) for chord in part.written.chords()],
        "melody": part.melody and melody_fields(part.melody, part.written.key.mode, conventions),
        "octaves": part.octaves,
        "outside": [str(pitch) for pitch in part.outside],
        "friendly": [{"key": str(friendly.key), "capo": friendly.fret} for friendly in part.friendly],
        "capos": [
            {
                "fret": capo.fret,
                "shapes": str(capo.shapes),
                "symbols": [write_chord(chord, PLAIN) for chord in capo.chords],
                "open": capo.open_chords if capo.chords else None,
            }
            for capo in part.capos
        ],
    }
