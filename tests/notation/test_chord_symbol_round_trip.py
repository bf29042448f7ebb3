"""Law: a chord symbol as we write it reads back to the same chord."""

from __future__ import annotations

import pytest
from hypothesis import given
from strategies import chords, conventions, note

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.chord_words import BASES, CHANGES, apply_change
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.theory.chord import Chord

ROOTS = [note(letter + sign) for letter in "CDEFGAB" for sign in ("", "#", "b")]
CHANGE_ROWS = sorted(set(CHANGES.values()))
BASE_OF = {quality: word for word, quality in reversed(BASES.items())}
"""Each quality that a base spells, with the first spelling of its row."""


def changed(base):
    """The base, and all that one or two changes make of it."""
    once = {apply_change(base, change) for change in CHANGE_ROWS}
    return {base} | once | {apply_change(quality, change) for quality in once for change in CHANGE_ROWS}


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_up_to_two_changes_reads_back_on_every_root(base):
    for quality in changed(base):
        for root in ROOTS:
            chord = Chord(root, quality, root)

            assert parse_chord(write_chord(chord)) == chord


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_change_reads_back_in_keyboard_characters(base):
    for quality in [base, *(apply_change(base, change) for change in CHANGE_ROWS)]:
        for root in ROOTS:
            written = write_chord(Chord(root, quality, root), PLAIN)

            assert written.isascii()
            assert parse_chord(written) == Chord(root, quality, root)


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_slash_bass_reads_back(base):
    for root in ROOTS:
        for bass in ROOTS:
            chord = Chord(root, base, bass)

            assert parse_chord(write_chord(chord)) == chord


@given(chords, conventions)
def test_any_chord_reads_back_in_either_spelling(chord, choice):
    assert parse_chord(write_chord(chord, choice)) == chord


@pytest.mark.parametrize("word", BASES)
def test_every_spelling_of_a_base_is_read_with_every_change_in_brackets(word):
    for change, row in CHANGES.items():
        assert parse_chord(f"C{word}({change})").quality == apply_change(BASES[word], row)


@pytest.mark.parametrize("word", BASES)
def test_writing_what_was_read_settles_at_once(word):
    written = write_chord(parse_chord("F#" + word), DEFAULT)

    assert write_chord(parse_chord(written), DEFAULT) == written
