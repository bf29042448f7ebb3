"""What a melody that is still being typed may become: the note at its end, and what would close its brackets."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import SIGNS
from nearhand.notation.errors import InputError
from nearhand.notation.melody_degrees import read_degree
from nearhand.notation.melody_intervals import RESTS
from nearhand.notation.melody_reading import WrittenMelody, resolve_melody
from nearhand.notation.melody_signs import HOLDS, Sign
from nearhand.notation.syllables import SYLLABLE_NAMES
from nearhand.shell.unfinished import is_key_being_typed
from nearhand.theory.key import C_MAJOR
from nearhand.theory.melody import ORNAMENTS

_BETWEEN = "".join((",|[]", *HOLDS))
"""Signs that end a note, besides blanks."""
_LENGTH = "0123456789./"


@lru_cache(maxsize=1024)
def kind_of_note(word: str) -> str:
    """What a word is by itself: a ``note``, a ``degree``, a syllable to ``sing``, a rest (``bar``), or none: empty.

    >>> [kind_of_note(word) for word in ("F#4", "b3'", "sol_", "Sol", "r", "h")]
    ['note', 'degree', 'sing', 'note', 'bar', '']
    """
    if not word:
        return ""
    written = WrittenMelody(word, (Sign("note", word, 0),), None)
    try:
        resolve_melody(written, C_MAJOR)
    except InputError:
        return ""
    if word in RESTS:
        return "bar"
    if written.keyless is None:
        return "note"
    return "sing" if read_degree(word, 0) is None else "degree"


def note_start(text: str) -> int:
    """Where the note that is being typed begins, with its grace notes; the end of the text when none is.

    >>> [note_start(text) for text in ("1 2 F#", "1 [5", "1 {6 7", "1 {6 7}5", "1 2 ", "1 |")]
    [4, 3, 2, 2, 4, 3]
    >>> note_start("1 5(inverted-tu"), note_start("1 5(inverted-turn):2")
    (2, 2)
    """
    opened = text.rfind("{")
    if opened >= 0 and "}" not in text[opened:]:
        return opened
    at = _before_ornament(text)
    while at and not _ends_note(text[at - 1]):
        at -= 1
    graces = text.rfind("}", at) if "}" in text[at:] else len(text[:at].rstrip(" ")) - 1
    return opened if opened >= 0 and text[graces] == "}" else at


def _ends_note(character: str) -> bool:
    return character.isspace() or character in _BETWEEN


def _before_ornament(text: str) -> int:
    """Where the ornament at the end of a text begins, which may hold a hyphen; else the end of the text."""
    bracket = text.rfind("(")
    inside, close, behind = text[bracket + 1 :].partition(")")
    is_last = not any(map(_ends_note, behind if close else inside.replace("-", "")))
    return bracket if bracket >= 0 and is_last else len(text)


def may_become_a_note(word: str) -> bool:
    """Whether a word is no note yet and may become one, or one with a length, an ornament or grace notes.

    >>> words = ("#", "b", "so", "D", "5:", "5:1/", "5(t", "{6", "{6}", "3/", "x", "9", "5:x", "5(x")
    >>> [word for word in words if may_become_a_note(word)]
    ['#', 'b', 'so', 'D', '5:', '5:1/', '5(t', '{6', '{6}', '3/']
    """
    if word.startswith("{"):
        _, brace, word = word.partition("}")
        word = word.lstrip()
        if not brace:
            return True
    note, colon, length = word.partition(":")
    if colon:
        return not length.strip(_LENGTH)
    note, bracket, ornament = note.partition("(")
    if bracket:
        return any(name.startswith(ornament) for name in ORNAMENTS)
    is_meter = "/" in word and not word.strip(_LENGTH)
    return is_meter or not note.strip("".join(SIGNS)) or any(name.startswith(note) for name in SYLLABLE_NAMES)


def finished_part(word: str) -> str:
    """The note at the head of a word whose length or ornament is unfinished; empty where there is none.

    >>> finished_part("5:"), finished_part("{6}5:1/"), finished_part("5(t"), finished_part("b"), finished_part(":")
    ('5', '{6}5', '5', '', '')
    """
    head = word.partition(":")[0].partition("(")[0]
    return head if head != word and kind_of_note(head.rpartition("}")[2].lstrip()) else ""


def closed_melody(text: str) -> str:
    """A melody with its open brackets closed; those at its end, which hold nothing yet, are left out.

    >>> closed_melody("1 [5 [6"), closed_melody("1 ["), closed_melody("1 [5 6]")
    ('1 [5 [6]]', '1 ', '1 [5 6]')
    """
    depth = text.count("[") - text.count("]")
    while depth > 0 and text.rstrip().endswith("["):
        text, depth = text.rstrip()[:-1], depth - 1
    return text + "]" * max(depth, 0)


def is_key_before_notes(text: str) -> bool:
    """Whether a melody's text can only be a key that is being typed in front of it: its mode, or its small letter.

    >>> [text for text in ("E", "E mi", "E min", "E minor:", "a", "do", "E minor: 1") if is_key_before_notes(text)]
    ['E min', 'E minor:', 'a']
    """
    key = text.removesuffix(":")
    return is_key_being_typed(key) and not kind_of_note(key.split()[-1])
