"""The keys for singers for ears: one fact a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.keys import key_name
from nearhand.render.singer_words import (
    fit_in_words,
    names_of,
    no_key_in_words,
    other_keys_in_words,
    range_in_words,
    shown_fits,
    tune_in_words,
)
from nearhand.verbs.care import CARE_OF_VOICES
from nearhand.verbs.singer import SingerAnswer


def singers(answer: SingerAnswer) -> Iterator[str]:
    """The tune, the singers, the keys that fit, and the caution."""
    conventions, names = answer.conventions, names_of(answer)
    yield from tune_in_words(answer)
    for name, voice in zip(names, answer.singers, strict=True):
        yield f"{name}: {range_in_words(voice, conventions)}."
    if not answer.fits:
        yield from no_key_in_words(answer)
    for fit in shown_fits(answer):
        first, *others = fit_in_words(fit, answer)
        yield f"{key_name(fit.key, conventions)}: {first}."
        yield from (f"{other}." for other in others)
    if others_too := other_keys_in_words(answer):
        yield others_too
    yield CARE_OF_VOICES
