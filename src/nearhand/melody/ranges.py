"""How far voices reach, as MIDI numbers: the usual kinds of voices, and the comfortable part of a range."""

from __future__ import annotations

from nearhand.theory.key import C_MAJOR
from nearhand.theory.record import NamedTuple


class Voice(NamedTuple):
    """A singer's range: lowest and highest note, and the part that is comfortable, as MIDI numbers."""

    name: str
    low: int
    high: int
    comfort_low: int
    comfort_high: int


VOICES = {
    voice.name: voice
    for voice in (
        Voice("soprano", 60, 84, 62, 77),
        Voice("mezzo-soprano", 57, 81, 59, 74),
        Voice("alto", 53, 77, 55, 71),
        Voice("tenor", 48, 72, 50, 65),
        Voice("baritone", 43, 65, 45, 62),
        Voice("bass", 40, 64, 43, 59),
    )
}
"""Kinds of voices, highest first: C4-C6, A3-A5, F3-F5, C3-C5, G2-F4 and E2-E4 (pages on voice types, second-hand; they
differ by a third and more); the comfortable parts are common practice, no source. A singer's own notes are better."""
ALSO_CALLED = {"mezzo": "mezzo-soprano", "mezzo soprano": "mezzo-soprano", "contralto": "alto"}
"""Other words for some of them (common practice, no source)."""
PLAIN_KEY = C_MAJOR
"""Ranges are named as in C, whatever key a tune is in: a voice has one range."""
_COMFORTABLE_FROM, _COMFORTABLE_TO, _PARTS = 1, 5, 6


def voice_of(low: int, high: int, name: str = "") -> Voice:
    """A voice by its lowest and highest note; the middle four sixths are taken as comfortable (common practice).

    >>> voice_of(57, 72)
    Voice(name='', low=57, high=72, comfort_low=60, comfort_high=69)
    """
    span = high - low
    comfort_low, comfort_high = low + -(-span * _COMFORTABLE_FROM // _PARTS), low + span * _COMFORTABLE_TO // _PARTS
    return Voice(name, low, high, min(comfort_low, comfort_high), comfort_high)
