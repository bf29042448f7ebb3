"""Answers for ears: no grids, no keyboards, one fact a line, and every sign as a word."""

from __future__ import annotations

from importlib import import_module

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.notes import write_pitch_class
from nearhand.render.page import Line, Page, line, wrapped
from nearhand.theory.chord import Chord
from nearhand.theory.quality import quality_name

_SPOKEN_ELSEWHERE = {
    "BorrowAnswer": "spoken_chords.borrowed",
    "CadencesAnswer": "spoken_chords.cadences",
    "DifficultyAnswer": "spoken_difficulty.difficulties",
    "ExplainAnswer": "spoken_chords.explained",
    "InsteadAnswer": "spoken_chords.substitutes",
    "KeysAnswer": "spoken_chords.keys",
    "LinesAnswer": "spoken_hands.voices",
    "MelodyAnswer": "spoken_melody.melodies",
    "OthersAnswer": "spoken_hands.paths",
    "PartsAnswer": "spoken_parts.parts",
    "SingerAnswer": "spoken_singers.singers",
    "TonesAnswer": "spoken_tones.tones",
    "ViewsAnswer": "spoken_hands.views",
    "WhyAnswer": "spoken_hands.reasons",
}
"""Kind of answer to ``module.function`` of this room, from an answer to its sentences; an empty one is a pause."""

_WORDS = {
    "♭": "flat",
    "♯": "sharp",
    "𝄫": "double flat",
    "𝄪": "double sharp",
    "°": "diminished",
    "ø": "half-diminished",
    "Δ": "major",
    "=": "is",
}
"""Sign to word; most voices leave the signs out."""
_KINDS = {
    "power": "root and fifth",
    "dominant": "dominant seventh",
    "half-diminished": "half-diminished seventh",
    "major-minor": "minor with major seventh",
    "Italian": "Italian sixth",
    "French": "French sixth",
    "German": "German sixth",
}
"""Names of chord qualities that say too little when they are heard."""


def is_spoken(answer: object) -> bool:
    """Whether an answer has a form for ears; the others are sentences already."""
    return type(answer).__name__ in _SPOKEN_ELSEWHERE


def draw_spoken(answer: object, page: Page) -> list[Line]:
    """An answer as sentences, each on a line of its own."""
    module, _, function = _SPOKEN_ELSEWHERE[type(answer).__name__].partition(".")
    speak = getattr(import_module(f"nearhand.render.{module}"), function)
    conventions = answer.conventions._replace(plain=False, figures="line", symbols="plain")  # type: ignore[attr-defined]
    lines: list[Line] = []
    for sentence in speak(answer._replace(conventions=conventions)):  # type: ignore[attr-defined]
        told = in_words(sentence)
        lines += wrapped(told.replace("é", "e") if page.plain else told, page.width) if told else [line()]
    return lines


def in_words(text: str) -> str:
    """A text with its signs as words.

    >>> in_words("B♭4 is ♭7 (B𝄫, ♯5) of E♭/G"), in_words("vii°7")
    ('B flat 4 is flat 7 (B double flat, sharp 5) of E flat/G', 'vii diminished 7')
    """
    if text.isascii() and "=" not in text:
        return text
    told, after_sign = "", False
    for character in text:
        word = _WORDS.get(character)
        if word is not None:
            told += word if not told or told[-1] in " ([" else f" {word}"
        else:
            told += f" {character}" if after_sign and character.isalnum() else character
        after_sign = word is not None
    return told


def chord_in_words(chord: Chord, conventions: Conventions) -> str:
    """A chord by its symbol and in words; by its symbol alone where one chord stands over another.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> chord_in_words(parse_chord("Bbm7/Db"), Conventions())
    'B♭m7 over D♭, B♭ minor seventh over D♭'
    """
    symbol = write_chord(chord, conventions)
    if chord.quality.layers is not None:
        return symbol.replace("//", " over ")
    kind, *changes = quality_name(chord.quality).split(" ")
    words = " ".join([_KINDS.get(kind, kind.replace("-", " ")), *changes])
    words = words.replace(" b", " ♭").replace(" #", " ♯")
    root, bass = (write_pitch_class(note) for note in (chord.root, chord.bass))
    over = "" if chord.bass == chord.root else f" over {bass}"
    slash = f"/{bass}"
    written = symbol.removesuffix(slash) + f" over {bass}" if symbol.endswith(slash) else symbol
    return f"{written}, {root} {words}{over}"


def numeral_in_words(numeral: str) -> str:
    """A numeral with its figures one by one, and what it is applied to, or the degree in its bass.

    >>> numeral_in_words("V65/ii"), numeral_in_words("vii°43"), numeral_in_words("IV/♭3")
    ('V 6 5 of ii', 'vii° 4 3', 'IV over ♭3')
    """
    parts = []
    if "//" in numeral:
        return numeral.replace("//", " over ")
    for part in numeral.split("/"):
        for figures in ("65", "64", "43", "42"):
            if part.endswith(figures):
                stem = part.removesuffix(figures)
                part = f"{stem} {figures[0]} {figures[1]}"  # noqa: PLW2901
                break
        parts.append(part)
    told = parts[0]
    for part in parts[1:]:
        told += f" over {part}" if part.lstrip("♭♯𝄫𝄪").isdigit() else f" of {part}"
    return told


def number_in_words(number: str) -> str:
    """A number of a chart: the degree apart from what follows it.

    >>> number_in_words("57"), number_in_words("5-/7"), number_in_words("♭6maj7")
    ('5 7', '5 minor over 7', '♭6 maj7')
    """
    if "//" in number:
        return " over ".join(map(number_in_words, number.split("//")))
    degree, slash, bass = number.partition("/")
    at = next((place for place, character in enumerate(degree) if character.isdigit()), 0) + 1
    stem, tail = degree[:at], degree[at:]
    if tail.startswith("-"):
        stem, tail = f"{stem} minor", tail[1:]
    told = f"{stem} {tail}" if tail and tail[0] not in "°ø" else stem + tail
    return f"{told} over {bass}" if slash else told
