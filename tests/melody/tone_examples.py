"""Words for the tests of a melody against its chords: what each note is, from a chart and a melody in text."""

from __future__ import annotations

from nearhand.melody.against import Tone, against
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import parse_melody


def tones(chords: str, melody: str, key: str = "C") -> tuple[Tone, ...]:
    """What every note of a melody is over the chords."""
    home = parse_key(key)
    return against(parse_melody(melody, home), resolve(read_chart(chords), home))


def kinds(chords: str, melody: str, key: str = "C") -> list[str]:
    """The kind of every note, with the member, tension or figure behind it."""
    return [f"{tone.kind} {tone.tone}".strip() for tone in tones(chords, melody, key)]
