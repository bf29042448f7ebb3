"""Chords that are likely next in a line of chords: offered as they are typed, with what they are as their meaning."""

from __future__ import annotations

from nearhand.harmony.analysis import analyse
from nearhand.harmony.successions import likely_next
from nearhand.notation.chart import key_colon, read_chart, read_token
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.numbers import write_number
from nearhand.shell.unfinished import closed, last_word_start
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.verbs.session import Session
from nearhand.verbs.tune import tune_from_text

MOST_CHARACTERS = 1000
_AS_TYPED = "as it stands"


def chord_candidates(text: str, session: Session) -> tuple[tuple[str, int, str], ...]:
    """Chords that may stand at the end of a chart: each with the offset from which it stands, and what it is.

    A chord that is being typed comes first, as it is; then those that begin with it. Nothing is offered where no key is
    known, as in a line without chords.

    >>> [(chord, meaning) for chord, _, meaning in chord_candidates("| Em | Bm/D | Am/C | B", Session())]
    [('B', 'as it stands'), ('B7', 'V7')]
    """
    if len(text) > MOST_CHARACTERS:
        return ()
    start = last_word_start(text)
    typed = text[start:]
    try:
        key, last, kind = _context(text[:start], session)
    except InputError:
        return ()
    if key is None:
        return ()
    conventions = session.conventions._replace(plain=True, figures="line")
    offered = [_written(chord, last, key, kind, conventions) for chord in likely_next(last, key.mode)]
    found = [
        (written, start, meaning) for written, meaning in offered if written.startswith(typed) and written != typed
    ]
    return ((typed, start, _AS_TYPED), *found) if found and typed and _reads(typed, key) else tuple(found)


def _context(before: str, session: Session) -> tuple[Key | None, RelativeChord | None, str]:
    """The key of the chords so far, the last of them, and the notation it is in. Raises InputError."""
    text = closed(before)
    if not text:
        colon = key_colon(before)
        named = parse_key(before[:colon]) if colon > 0 else None
        return named, None, "chord"
    tune = tune_from_text(text, conventions=session.conventions, known=session.shown_key)
    chords = tune.progression.relative_chords
    kinds = [token.kind for token in read_chart(text).tokens if token.kind != "rest"]
    return (tune.key, chords[-1], kinds[-1]) if chords else (None, None, "chord")


def _written(
    chord: RelativeChord, before: RelativeChord | None, key: Key, kind: str, conventions: Conventions
) -> tuple[str, str]:
    """A chord in the notation that is being typed, and in the one that tells more."""
    row = (chord,) if before is None else (before, chord)
    symbol, numeral = write_chord(chord.in_key(key), conventions), analyse(row, key.mode)[-1].numeral(conventions)
    if kind == "chord":
        return symbol, numeral
    return (numeral if kind == "numeral" else write_number(chord, key.mode, conventions)), symbol


def _reads(word: str, key: Key) -> bool:
    """Whether a word is a chord already."""
    try:
        chart = read_chart(word)
        read_token(chart, chart.tokens[0], key)
    except InputError:
        return False
    return True
