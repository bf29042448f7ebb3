"""The keys for singers and the parts of a band for ears: one fact a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.keys import key_name
from nearhand.render.parts_page import capo_in_words, reads_in_words
from nearhand.render.singer_page import (
    fit_in_words,
    names_of,
    no_key_in_words,
    range_in_words,
    shown_fits,
    span_in_words,
)
from nearhand.render.spoken import chord_in_words
from nearhand.verbs.parts import PartsAnswer
from nearhand.verbs.singer import CARE, SingerAnswer


def singers(answer: SingerAnswer) -> Iterator[str]:
    """The tune, the singers, the keys that fit, and the caution."""
    conventions, names = answer.conventions, names_of(answer)
    yield span_in_words(answer)
    for name, voice in zip(names, answer.singers, strict=True):
        yield f"{name}: {range_in_words(voice, conventions)}."
    if not answer.fits:
        yield no_key_in_words(answer)
    for fit in shown_fits(answer):
        yield f"{key_name(fit.key, conventions)}: {fit_in_words(fit, answer)}."
    yield CARE


def parts(answer: PartsAnswer) -> Iterator[str]:
    """The key that sounds, and each instrument with its chords."""
    conventions = answer.conventions
    yield f"It sounds in {key_name(answer.key, conventions)}."
    for part in answer.parts:
        yield ""
        yield f"{reads_in_words(part, answer.key, conventions)}."
        for number, chord in enumerate(part.written.chords(), start=1):
            yield f"Chord {number}: {chord_in_words(chord, conventions)}."
        for capo in part.capos:
            yield f"{capo_in_words(capo, conventions)}."
