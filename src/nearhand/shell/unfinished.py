"""What a line that is still being typed may become: the word at its end, and what would close it."""

from __future__ import annotations

from nearhand.notation.accidentals import SIGNS
from nearhand.notation.chart import looks_like_a_chord, read_chart
from nearhand.notation.chart_bars import NO_CHORD_WORDS
from nearhand.notation.errors import InputError
from nearhand.notation.keys import MODE_WORDS, parse_key
from nearhand.notation.numeral_words import SIXTH_NAMES
from nearhand.verbs.table import BY_NAME

_BETWEEN = "|:[]"
"""Signs that end a word of a chart, besides blanks."""
_NO_CHORDS = "chords"
"""What is wanted where there are no chords at all."""
_BEGINNINGS = (*NO_CHORD_WORDS, *SIXTH_NAMES, "Cad64")


def last_word_start(text: str) -> int:
    """Where the word that is being typed begins; the end of the text when none is.

    >>> last_word_start("| Em | Bm"), last_word_start("| Em |")
    (7, 6)
    """
    at = len(text)
    while at and not text[at - 1].isspace() and text[at - 1] not in _BETWEEN:
        at -= 1
    return at


def closed(text: str) -> str:
    """A chart with whatever closes its last bracket or repeat; empty when there are no chords yet.

    Raises InputError, that of the text as it stands, when nothing would make it readable.

    >>> closed("|: C | (F"), closed("| C | [3/"), closed("E minor: |")
    ('|: C | (F) :|', '| C | ', '')
    """
    word = text[last_word_start(text) :]
    if word.startswith("(") and not word.endswith(")"):
        text += ")"
    refusal = None
    for tried in _closings(text):
        try:
            return tried if _is_read(tried) else ""
        except InputError as error:
            refusal = refusal or error
    assert refusal is not None  # the text as it stands was tried
    raise refusal


def _closings(text: str) -> tuple[str, ...]:
    """A text as it stands, then without what was only opened at its end, then with what closes it."""
    opened = text.rfind("[")
    is_open = opened >= 0 and "]" not in text[opened:]
    bodies = (text, f"{text}]", text[:opened]) if is_open else (text, text.rstrip().removesuffix("|:"))
    return tuple(dict.fromkeys((*bodies, *(f"{body.rstrip().removesuffix('|')} :|" for body in bodies))))


def _is_read(text: str) -> bool:
    """Whether a chart reads and holds chords. Raises InputError where it does not read."""
    try:
        read_chart(text)
    except InputError as error:
        if error.wanted == _NO_CHORDS:
            return False
        raise
    return True


def may_become_a_verb(text: str) -> bool:
    """Whether a text without blanks begins the name of a verb.

    >>> may_become_a_verb("expl"), may_become_a_verb("explain 2"), may_become_a_verb("x")
    (True, False, False)
    """
    word = text.lstrip()
    return bool(word) and any(name.startswith(word) for name in BY_NAME)


def may_become_a_key(text: str) -> bool:
    """Whether a text is a key, or the beginning of one.

    >>> [text for text in ("E", "E min", "e minor", "E maj7", "Em |") if may_become_a_key(text)]
    ['E', 'E min', 'e minor']
    """
    word = text.strip()
    tonic, _, mode = word.partition(" ")
    if not word or "|" in word:
        return False
    try:
        parse_key(tonic)
    except InputError:
        return False
    return any(name.startswith(mode.strip().lower()) for name in MODE_WORDS)


def is_key_being_typed(line: str) -> bool:
    """Whether a line can only go on as a key in front of chords: its mode is being typed, or its letter is small.

    >>> [line for line in ("E", "E mi", "e", "em ", "Em B") if is_key_being_typed(line)]
    ['E mi', 'e', 'em ']
    """
    word = line.strip()
    if not may_become_a_key(word):
        return False
    is_open = line.endswith(word)
    return is_open if " " in word and not (word[0].islower() and _is_key(word)) else word[0].islower()


def _is_key(word: str) -> bool:
    try:
        parse_key(word)
    except InputError:
        return False
    return True


def may_become_a_chord(word: str) -> bool:
    """Whether a word is a chord, a numeral, a number or a sign of a chart, or may begin one: its head alone decides.

    >>> [word for word in ("Cma", "b", "(", "N", "Hm", "x") if may_become_a_chord(word)]
    ['Cma', 'b', '(', 'N']
    """
    word = word.lstrip("(")
    bare = word.lstrip("".join(SIGNS) + "♮")
    return not bare or looks_like_a_chord(word) or any(name.startswith(word) for name in _BEGINNINGS)
