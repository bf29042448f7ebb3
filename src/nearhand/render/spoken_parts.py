"""The parts of a band for ears: one fact a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.render.parts_page import (
    capo_in_words,
    free_octave_in_words,
    friendly_in_words,
    reads_in_words,
    register_in_words,
    shared_in_words,
    written_in_words,
)
from nearhand.render.spoken import chord_in_words
from nearhand.render.spoken_melody import melody_sentences
from nearhand.verbs.parts import PartsAnswer


def parts(answer: PartsAnswer) -> Iterator[str]:
    """A line each for the leader; each instrument with its chords, its melody and its keys; the keys for all."""
    conventions = answer.conventions
    for part in answer.parts:
        yield f"{reads_in_words(part, answer.key, conventions)}."
    for part in answer.parts:
        yield ""
        yield f"{written_in_words(part.instrument)}."
        for number, chord in enumerate(part.written.chords(), start=1):
            yield f"Chord {number}: {chord_in_words(chord, conventions)}."
        if part.melody is not None:
            yield from melody_sentences(part.melody, part.written.key.mode, conventions)
        yield from register_in_words(part, conventions)
        for capo in part.capos:
            yield f"{capo_in_words(capo, conventions)}."
        yield f"{friendly_in_words(part.friendly, answer.key.mode, conventions)}."
    if len(answer.parts) > 1:
        yield ""
        yield shared_in_words(answer)
    yield from free_octave_in_words(answer)
    if answer.advice:
        yield answer.advice
