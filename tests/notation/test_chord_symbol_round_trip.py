"""Law: a chord symbol as we write it reads back to the same chord."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from strategies import chords, conventions, note

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.chord_tail_writing import symbol_tail
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import BASES, CHANGES, COMPLETE, apply_change
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.theory.chord import Chord
from nearhand.theory.quality import alteration

ROOTS = [note(letter + sign) for letter in "CDEFGAB" for sign in ("", "#", "b")]
CHANGE_ROWS = sorted(set(CHANGES.values()))
BASE_OF = {quality: word for word, quality in reversed(BASES.items())}
"""Each quality that a base spells, with the first spelling of its row."""
CLOSED = {BASES[word] for word in COMPLETE}


def changed(base):
    """The base, and all that one change makes of it; some bases take none."""
    return {base} if base in CLOSED else {base, *(apply_change(base, change) for change in CHANGE_ROWS)}


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_change_reads_back_on_every_root(base):
    for quality in changed(base):
        for root in ROOTS:
            chord = Chord(root, quality, root)

            assert parse_chord(write_chord(chord)) == chord


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_change_reads_back_in_keyboard_characters(base):
    for quality in changed(base):
        for root in ROOTS:
            written = write_chord(Chord(root, quality, root), PLAIN)

            assert written.isascii()
            assert parse_chord(written) == Chord(root, quality, root)


def changed_twice():
    """Qualities that two changes make of a base, each once; additions that are altered are left to the other laws."""
    rows = [change for change in CHANGE_ROWS if change[0] != "add" or alteration(change[1], change[2]) == 0]
    once = {apply_change(base, row) for base in BASE_OF if base not in CLOSED for row in rows}
    return once, {apply_change(quality, row) for quality in once for row in rows} - once


def test_every_base_with_two_changes_reads_back():
    # what follows the root does not depend on it, so one writing a quality says as much as one on every root
    once, twice = changed_twice()

    assert len(twice) > 5 * len(once)
    assert [quality for quality in twice if read_tail(symbol_tail(quality)) != quality] == []


@pytest.mark.parametrize("base", BASE_OF, ids=BASE_OF.values())
def test_every_base_with_a_slash_bass_reads_back(base):
    for root in ROOTS:
        for bass in ROOTS:
            chord = Chord(root, base, bass)

            assert parse_chord(write_chord(chord)) == chord


@settings(max_examples=300)
@given(chords, conventions)
def test_any_chord_reads_back_in_any_style(chord, choice):
    assert parse_chord(write_chord(chord, choice)) == chord


@pytest.mark.parametrize("word", [word for word in BASES if word not in COMPLETE])
def test_every_spelling_of_a_base_is_read_with_every_change_in_brackets(word):
    for change, row in CHANGES.items():
        assert read_tail(f"{word}({change})") == apply_change(BASES[word], row)


@pytest.mark.parametrize("word", BASES)
def test_writing_what_was_read_settles_at_once(word):
    written = write_chord(parse_chord("F#" + word), DEFAULT)

    assert write_chord(parse_chord(written), DEFAULT) == written
