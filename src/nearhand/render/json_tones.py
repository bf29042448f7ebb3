"""A melody against its chords as JSON: an entry a note and chord, then the clashes in sentences."""

from __future__ import annotations

from nearhand.melody.against import CHORD_TONE, Tone
from nearhand.melody.tone_words import clash_in_words, clashes, over_chords
from nearhand.notation.conventions import Conventions
from nearhand.notation.melody_degrees import NUMBERS
from nearhand.notation.melody_writing import write_as_degrees
from nearhand.render.tones_page import chord_name
from nearhand.theory.key import Key
from nearhand.verbs.tones import TonesAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

    from nearhand.notation.melody_writing import WriteInterval
    from nearhand.theory.progression import Beats


def tones_document(answer: TonesAnswer) -> dict[str, Any]:
    """Every note over every chord; ``chord`` is the number of the one that is asked about, null when all are meant."""
    conventions = answer.conventions._replace(plain=True)
    degree = write_as_degrees(answer.key.mode, conventions._replace(sing=NUMBERS))
    heard = over_chords(answer.tones)
    return {
        "key": str(answer.key),
        "key_source": answer.tune.key_source,
        "chord": answer.picked,
        "tones": [_tone(tone, answer.key, degree, conventions) for tone in answer.tones],
        "clashes": [
            {"bar": tone.bar, "note": str(tone.note.pitch), "sentence": clash_in_words(tone, answer.key, conventions)}
            for tone in clashes(answer.tones)
        ],
        "notes_over_chords": len(heard),
        "chord_tones": sum(tone.kind == CHORD_TONE for tone in heard),
    }


def _tone(tone: Tone, key: Key, degree: WriteInterval, conventions: Conventions) -> dict[str, Any]:
    against = None
    if tone.chord is not None and tone.rub is not None:
        against = {
            "note": str(key.tonic.up(tone.chord.root + tone.rub.place)),
            "member": tone.rub.member,
            "how": tone.rub.how,
        }
    return {
        "bar": tone.bar,
        "onset": _number(tone.onset),
        "beats": _number(tone.beats),
        "chord": tone.number or None,
        "symbol": chord_name(tone, key, conventions) or None,
        "note": str(tone.note.pitch),
        "degree": degree(tone.note.interval),
        "kind": tone.kind,
        "tone": tone.tone or None,
        "against": against,
    }


def _number(beats: Beats) -> int | float:
    return int(beats) if beats == int(beats) else float(beats)
