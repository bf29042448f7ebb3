"""What is hard about each key for ears: one fact a sentence."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.key_reasons import signature_in_words
from nearhand.melody.difficulty import KeyDifficulty
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.render.difficulty_page import opening_in_words, steps_in_words, to_learn_in_words
from nearhand.verbs.difficulty import DifficultyAnswer


def difficulties(answer: DifficultyAnswer) -> Iterator[str]:
    """What is known, key by key what is hard, the keys that teach most, and the caution."""
    conventions, found = answer.conventions, answer.difficulty
    yield from opening_in_words(found, conventions)
    for row in found.keys:
        yield ""
        yield from _key(row, found.steps is None, conventions)
    yield ""
    yield from to_learn_in_words(found, conventions)
    if answer.advice:
        yield answer.advice


def _key(row: KeyDifficulty, has_chords: bool, conventions: Conventions) -> Iterator[str]:
    yield f"{key_name(row.key, conventions)}: {signature_in_words(row.key)}."
    if row.beside:
        yield f"Beside the signature: {', '.join(note_name(note, conventions) for note in row.beside)}."
    if row.double_accidentals:
        yield f"Tones with a double sharp or flat: {row.double_accidentals}."
    yield f"Tones on black keys: {row.black} of {row.tones}."
    if row.is_known:
        yield "You know this key."
    elif row.new:
        yield f"New chords: {', '.join(write_chord(chord, conventions) for chord in row.new)}."
    elif row.new_steps:
        yield f"New steps: {steps_in_words(row.new_steps, row.key, conventions)}."
    else:
        yield "No chord is new." if has_chords else "No step is new."
