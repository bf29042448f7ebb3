"""The melody on the stand as the top line of the voicings: read anew for every answer, so that it follows."""

from __future__ import annotations

from nearhand.theory.key import Key
from nearhand.verbs.session import Session
from nearhand.voicing.wishes import MELODY_TOP

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.on_top import Tops


def tops_in(session: Session, key: Key) -> Tops | None:
    """The notes of the melody that may lie on top of each chord in a key, where the session takes the melody there.

    None where they are not wished for, or the tune has no melody or no chords. Raises InputError when a note would lie
    outside the MIDI numbers.
    """
    tune = session.tune
    if session.wishes.top != MELODY_TOP or tune is None or tune.melody is None or not tune.progression.bars:
        return None
    from nearhand.melody.top_notes import top_notes  # most voicings have a top line of their own
    from nearhand.verbs.melodies import melody_in

    melody = melody_in(session, key)
    return None if melody is None else top_notes(melody, tune.progression.in_key(key))
