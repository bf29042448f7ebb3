"""The styles of chord symbols: how each writes the qualities that have a name."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_words import ALTERED_DOMINANT, MAJOR_SIXTH_NINTH, MINOR_SIXTH_NINTH
from nearhand.theory.quality import QUALITIES, SWISS, Quality
from nearhand.theory.record import NamedTuple

_SYMBOL_TAILS = {
    "major": "",
    "minor": "m",
    "augmented": "aug",
    "diminished": "dim",
    "suspended-second": "sus2",
    "suspended-fourth": "sus4",
    "power": "5",
    "major-sixth": "6",
    "minor-sixth": "m6",
    "dominant": "7",
    "major-seventh": "maj7",
    "minor-seventh": "m7",
    "diminished-seventh": "dim7",
    "augmented-seventh": "7#5",
    "half-diminished": "m7b5",
    "major-minor": "m(maj7)",
    "dominant-ninth": "9",
    "major-ninth": "maj9",
    "minor-ninth": "m9",
    "dominant-11th": "11",
    "major-11th": "maj11",
    "minor-11th": "m11",
    "dominant-13th": "13",
    "major-13th": "maj13",
    "minor-13th": "m13",
    "Italian": "7(It6)",
    "French": "7(Fr43)",
    "German": "7(Ger65)",
    "pedal": "ped",
    "Tristan": "Tristan",
}
_PLAIN_TAILS = {QUALITIES[kind]: tail for kind, tail in _SYMBOL_TAILS.items()}
_PLAIN_TAILS |= {MAJOR_SIXTH_NINTH: "6/9", MINOR_SIXTH_NINTH: "m6/9", ALTERED_DOMINANT: "7alt", SWISS: "7(Sw43)"}


class Style(NamedTuple):
    """How a style writes minor, major and what plain words spell out."""

    minor: str
    major: str
    words: tuple[tuple[str, str], ...] = ()


STYLES = {
    "plain": Style("m", "maj"),
    "jazz": Style(
        "-",
        "Δ",
        (("m7b5", "ø7"), ("7#5", "+7"), ("dim7", "°7"), ("dim", "°"), ("aug", "+"), ("m(maj7)", "-Δ7")),
    ),
    "long": Style("min", "maj", (("7#5", "aug7"),)),
    "compact": Style(
        "m",
        "M",
        (("m7b5", "ø7"), ("7#5", "+7"), ("dim7", "°7"), ("dim", "°"), ("aug", "+"), ("m(maj7)", "m(M7)")),
    ),
}
"""``ascii`` writes as ``plain`` does, with b and #."""
TYPED = {"Δ": "maj", "°": "o", "ø7": "-7b5"}
"""What stands for the signs of a style where only keyboard characters may be used."""


def _styled(tail: str, style: Style) -> str:
    for plain, word in style.words:
        if tail == plain:
            return word
    if tail.startswith("maj"):
        return style.major + tail[3:]
    if tail.startswith("m"):
        tail = style.minor + tail[1:]
    return tail.replace("maj", style.major)


@lru_cache
def tails_of(symbols: str) -> dict[Quality, str]:
    """The written tails of a style, by quality."""
    return {quality: _styled(tail, STYLES[symbols]) for quality, tail in _PLAIN_TAILS.items()}
