"""The library's public names: read a key and a progression, move it, voice it."""

from __future__ import annotations

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.verbs.tune import Tune, tune_from_text
from nearhand.voicing.voice import VoicedProgression, voice_progression

__all__ = ["InputError", "Tune", "parse_key", "parse_progression", "voice"]


def parse_progression(text: str, key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read a chart as a tune. Without ``key`` it is inferred from the chord symbols, and ``key_source`` says so.

    Raises InputError (a ValueError) with the place of the first character that cannot be read.

    >>> parse_progression("| Dm7 | G7 | Cmaj7 |").numbers()
    ('2-7', '57', '1maj7')
    """
    return tune_from_text(text, key, conventions)


def voice(tune: Tune, style: str = "close", loop: bool = False) -> VoicedProgression:
    """Voice a tune on the path that moves least; ``pitches`` of the result are per chord, low to high.

    Raises ValueError for a style that does not exist.

    >>> voice(parse_progression("| C | F | C |")).movement
    6
    """
    return voice_progression(tune.progression, style, loop)
