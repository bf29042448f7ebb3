"""What a text in plain quotes of an ABC tune is: a chord, one with an alternate behind it, one with a slip, or words.

ABC standard 2.1, section 4.18, from memory: an alternate chord stands in parentheses behind the chord, as in
``"G(Em)"``. How words are told from chords with a slip is common practice, no source.
"""

from __future__ import annotations

import re

from nearhand.notation.chart import FARTHEST_PLACE
from nearhand.notation.chart_bars import NO_CHORD_WORDS, is_optional, without_brackets
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.chord_words import (
    AUGMENTED_WORDS,
    DIMINISHED_WORDS,
    HALF_DIMINISHED_WORDS,
    MAJOR_WORDS,
    MINOR_WORDS,
)
from nearhand.notation.errors import InputError
from nearhand.theory.chord import RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.progression import Slot
from nearhand.theory.record import NamedTuple

CHORD, SLIP, WORDS = "chord", "slip", "words"
NO_CHORD = Slot(None, 0)
_OPENS = re.compile(r"(?<!\s)(?:\s*\((?=[A-H])|\s+\()")
"""Where parentheses behind a chord begin: with another chord, or apart; those of its own tail do neither."""
_ROOT = re.compile(r"(?:([A-H])|[a-h](?=.))[#b♯♭]?")
"""A letter that begins a chord, H as in German; a small one alone is a fingering, or forte."""
_TAIL_WORDS = {
    *MAJOR_WORDS,
    *MINOR_WORDS,
    *DIMINISHED_WORDS,
    *HALF_DIMINISHED_WORDS,
    *AUGMENTED_WORDS,
    *("add", "alt", "no", "omit", "sus"),
}
_TAIL = re.compile(
    rf"(?:{'|'.join(map(re.escape, sorted(_TAIL_WORDS, key=len, reverse=True)))}|(?<=[/(])[A-H]|[^\w.]|\d)*+"
)
_IN_WORDS = re.compile(r"[.aeiouàáâäåæèéêëìíîïòóôöùúûü]|(?<![/(])[A-Z]")
"""What a word has, and a chord with a slip has not: a vowel, a period or more capitals."""


class Quoted(NamedTuple):
    """A quoted text and its kind: a ``CHORD`` (or N.C.), a chord with a ``SLIP``, or ``WORDS``.

    ``slot`` is the chord, none where there is none. ``behind`` is what stands in parentheses behind it.
    """

    text: str
    kind: str
    slot: Slot = NO_CHORD
    behind: str = ""


def read_quoted(text: str, key: Key) -> Quoted:
    """Read a quoted text; a chord in round brackets is one that may be left out.

    >>> from nearhand.notation.keys import parse_key
    >>> texts = [read_quoted(text, parse_key("G")) for text in ("C", "C(Am)", "N.C.", "Hm", "Fine")]
    >>> [(quoted.kind, quoted.behind) for quoted in texts]
    [('chord', ''), ('chord', '(Am)'), ('chord', ''), ('slip', ''), ('words', '')]
    """
    if slot := _slot(text, key):
        return Quoted(text, CHORD, slot)
    opens = _OPENS.search(text) if text.endswith(")") else None
    if opens and (slot := _slot(text[: opens.start()], key)):
        return Quoted(text, CHORD, slot, text[opens.start() :].strip())
    return Quoted(text, SLIP if is_meant_as_chord(without_brackets(text)) else WORDS)


def is_meant_as_chord(text: str) -> bool:
    """Whether a text, which may have a slip, is a chord and not words.

    It begins with a root, and goes on with words of chords, figures and signs, or at least not as a word would.

    >>> [text for text in ("Hm", "G7x", "Cmjr", "D.C.", "Fine", "A tempo", "ff") if is_meant_as_chord(text)]
    ['Hm', 'G7x', 'Cmjr']
    """
    words = [word.lstrip("(") for word in text.split()]
    return bool(words) and (_has_figures(words[0]) or all(map(_may_be_chord, words)))


def _has_figures(word: str) -> bool:
    return _ROOT.match(word) is not None and any(map(str.isdigit, word))


def _may_be_chord(word: str) -> bool:
    root = _ROOT.match(word)
    if root is None:
        return False
    tail = word[root.end() :]
    letters = tail.isalpha() * root[0][0].lower() + tail
    return _TAIL.fullmatch(tail) is not None or (root[1] is not None and not _IN_WORDS.search(letters))


def may_be_taken_for_chord(text: str) -> bool:
    """Whether a text begins as a chord does; another is a word or a fingering, and needs no remark."""
    return _ROOT.match(f"{text.lstrip('(')} ") is not None


def _slot(text: str, key: Key) -> Slot | None:
    name = without_brackets(text).strip()
    if name.upper() in NO_CHORD_WORDS:
        return NO_CHORD
    chord = _relative(name, key)
    return None if chord is None else Slot(chord, 0, is_optional(text))


def _relative(name: str, key: Key) -> RelativeChord | None:
    try:
        chord = relative_to(parse_chord(name), key)
    except InputError:
        return None
    return chord if max(abs(chord.root), abs(chord.bass)) <= FARTHEST_PLACE else None
