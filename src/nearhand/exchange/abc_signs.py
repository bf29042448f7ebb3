"""Cutting the body of an ABC tune into signs, each with its place: the grammar is one table of what may stand there.

ABC standard 2.1, sections 4 and 6, from memory.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from fractions import Fraction

from nearhand.exchange.abc_key_fields import ACCIDENTALS
from nearhand.exchange.abc_text import Field, Row, field_of, instruction_of
from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple

_LENGTH = r"\d*(?:/\d+|/*)"
_GRAMMAR = {
    "space": r"[\s`$]+|y\d*|\\\s*$|!\s*$|\*\s*$",
    "note": rf"(?:\^\^?|__?|=)?[A-Ga-g][,']*{_LENGTH}",
    "rest": rf"[zx]{_LENGTH}",
    "bars": r"[ZX]\d*",
    "tuplet": r"\(\d+(?::\d*){0,2}",
    "broken": r">+|<+",
    "tie": r"\.?-",
    "slur": r"\.?\(|\)",
    "ending": r"(?<=\|)\d+(?:[,-]\d+)*|\[\d+(?:[,-]\d+)*",
    "bar": r"\.?(?:[|:]|\[(?=\|)|(?<=\|)\])+",
    "field": r"\[[A-Za-z]:[^\]]*\]",
    "chord": rf"\[[^\[\]|]*\]{_LENGTH}",
    "worded": r"\[\"[^\"]*\"",
    "grace": r"\{[^{}]*\}",
    "quoted": r"\"[^\"]*\"",
    "decoration": r"![^!\s|]+!|\+[^+\s|]+\+|[.~H-Wh-w]",
    "overlay": r"&+",
}
"""What may stand in a line of music, in the order in which it is tried. A space says nothing: blanks, ``y``, the end of
a line that goes on."""
_SIGN = re.compile("|".join(f"(?P<{kind}>{pattern})" for kind, pattern in _GRAMMAR.items()))
_NOTE = re.compile(rf"(\^\^?|__?|=)?([A-Ga-g])([,']*)({_LENGTH})")
_TAIL = re.compile(rf"({_LENGTH})$")
_LETTERS = "CDEFGAB"
_IN_CHORD = ("note", "rest", "tie", "slur", "decoration", "quoted", "space")
_IN_GRACES = (*_IN_CHORD, "chord", "broken")
_MOST_DIGITS = 4
_MOST_SIGNS = 100_000
_MUSIC_HINT = "notes are the letters A to G and a to g, a rest is z"
_FAULTS = {
    '"': ("this text is never closed", '"', 'close it with another "'),
    "[": ("this [ is never closed", "]", "write a chord as [CEG], a field as [K:G]"),
    "{": ("this { is never closed", "}", "write grace notes as {d}c"),
    "!": ("this ! is never closed", "!", "write a decoration as !trill!"),
    "+": ("this + is never closed", "+", "write a decoration as !trill!"),
    "]": ("this ] closes nothing", "a note", "write a chord as [CEG]"),
    "}": ("this } closes nothing", "a note", "write grace notes as {d}c"),
    ":": ("a : stands here without a bar line", "a bar line", "write |: and :| around what is repeated"),
    "/": ("this length cannot be read", "a note", "write lengths as C2, C/2 or C3/2"),
    "'": ("an octave sign stands right behind its letter", "a note", "write c'2 and C,2"),
    ",": ("an octave sign stands right behind its letter", "a note", "write c'2 and C,2"),
    "^": ("an accidental stands right before a note", "a note", "write ^F, =F or _B"),
    "_": ("an accidental stands right before a note", "a note", "write ^F, =F or _B"),
    "=": ("an accidental stands right before a note", "a note", "write ^F, =F or _B"),
    "\\": ("a \\ stands at the end of its line", "a note", "write it last in the line, or leave it out"),
}


class WrittenNote(NamedTuple):
    """A note as written: its letter as a capital, its octave (4 from middle C up), its accidental in semitones."""

    letter: str
    octave: int
    alteration: int | None

    @property
    def height(self) -> tuple[int, int]:
        """How high it stands on the staff."""
        return self.octave, _LETTERS.index(self.letter)


class Sign(NamedTuple):
    """A sign of the body: its kind (a key of the grammar), its text and its place.

    ``notes`` are those of a note, a chord or grace notes. ``length`` is that of a note or a rest: as it is written, in
    units, until ``abc_lengths`` makes it a part of a whole note.
    """

    kind: str
    text: str
    row: Row
    start: int
    notes: tuple[WrittenNote, ...] = ()
    length: Fraction = Fraction(0)
    field: Field | None = None

    def refusal(self, what: str, wanted: str = "", hint: str = "") -> InputError:
        """An error at this sign."""
        return self.row.refusal(what, self.start, self.start + len(self.text), wanted, hint)


def signs_of(rows: Iterable[Row]) -> tuple[Sign, ...]:
    """Cut a tune's body into signs, fields and instructions on lines of their own among them.

    Raises InputError at the first thing that is no sign.

    >>> rows = [Row("it.abc", 1, "M:3/4"), Row("it.abc", 2, "^F2 z/ | [CE]3 :|")]
    >>> [(sign.kind, sign.text, str(sign.length)) for sign in signs_of(rows)][:3]
    [('field', 'M:3/4', '0'), ('note', '^F2', '2'), ('rest', 'z/', '1/2')]
    """
    signs: list[Sign] = []
    for row in rows:
        field = field_of(row) or instruction_of(row)
        if field is None:
            signs += _signs_of_music(row, row.code)
        else:
            start = len(row.text) - len(row.text.lstrip())
            signs.append(Sign("field", row.code.strip(), row, start, field=field))
        if len(signs) > _MOST_SIGNS:
            hint = "cut it into tunes of their own, each with its X: and K:"
            raise row.refusal(f"this tune is longer than {_MOST_SIGNS:,} signs", 0, None, "", hint)
    return tuple(signs)


def _signs_of_music(row: Row, code: str) -> Iterator[Sign]:
    for kind, text, start in _cut(row, code, 0, tuple(_GRAMMAR)):
        if kind == "note":
            yield _note(row, text, start)
        elif kind == "rest":
            yield Sign(kind, text, row, start, length=_length(row, text, start, text[1:]))
        elif kind == "chord":
            yield from _chord(row, text, start)
        elif kind == "grace":
            yield from _graces(row, text, start)
        elif kind == "field":
            value = text[3:-1]
            at = start + 3 + len(value) - len(value.lstrip())
            yield Sign(kind, text, row, start, field=Field(text[1], value.strip(), row, at))
        elif kind not in ("space", "slur"):
            yield Sign("ending" if kind == "worded" else kind, text, row, start)


def _cut(row: Row, code: str, start: int, kinds: tuple[str, ...]) -> Iterator[tuple[str, str, int]]:
    """The signs of a text that stands at ``start`` of a row: kind, text and place in the row.

    Raises InputError at what is no sign, or none of those kinds.
    """
    at = 0
    while at < len(code):
        found = _SIGN.match(code, at)
        if found is None or found[0] == ":" or found.lastgroup not in kinds:
            raise _fault(row, start + at, code[at])
        yield found.lastgroup, found[0], start + at
        at = found.end()


def _fault(row: Row, at: int, character: str) -> InputError:
    if character.isdigit():
        fault = ("this number belongs to no note", "a note", "write lengths as C2, C/2 or C3/2")
    elif character in _FAULTS:
        fault = _FAULTS[character]
    else:
        shown = f"{character!r} has" if character.isprintable() else "this character has"
        fault = (f"{shown} no place here", "a note", _MUSIC_HINT)
    what, wanted, hint = fault
    return row.refusal(what, at, None, wanted, hint)


def _note(row: Row, text: str, start: int) -> Sign:
    written, tail = written_note(text)
    return Sign("note", text, row, start, (written,), _length(row, text, start, tail))


def written_note(text: str) -> tuple[WrittenNote, str]:
    """A note, and the text of its length.

    >>> written_note("^f,2")
    (WrittenNote(letter='F', octave=4, alteration=1), '2')
    """
    found = _NOTE.fullmatch(text)
    assert found is not None  # the grammar has found it
    accidental, letter, octaves, tail = found.groups()
    octave = 4 + letter.islower() + octaves.count("'") - octaves.count(",")
    return WrittenNote(letter.upper(), octave, ACCIDENTALS.get(accidental)), tail


def _length(row: Row, text: str, start: int, tail: str) -> Fraction:
    """A length in units: ``3/2``, ``/4``, ``//`` (a quarter), ``3/`` (three halves), or nothing for one unit.

    Raises InputError where it is nought, or beyond all measure.
    """
    if not tail:
        return Fraction(1)
    above, slashes, below = tail.partition("/")
    divisor = below if below.isdigit() else ""
    count = int(above or 1) if len(above) <= _MOST_DIGITS else 0
    parts = int(divisor or 2 ** len(slashes + below)) if len(below) <= _MOST_DIGITS else 0
    if slashes == "":
        parts = 1
    if not count or not parts:
        at = start + len(text) - len(tail)
        what = f"{tail[:20]} is no length"
        raise row.refusal(what, at, at + len(tail), "a length", "write lengths as C2, C/2 or C3/2")
    return Fraction(count, parts)


def _chord(row: Row, text: str, start: int) -> Iterator[Sign]:
    """A chord in brackets: what stands at its notes goes before it, a tie at its highest note after it."""
    inside, _, tail = text[1:].rpartition("]")
    notes: list[Sign] = []
    ties: dict[int, Sign] = {}
    for kind, part, at in _cut(row, inside, start + 1, _IN_CHORD):
        if kind == "note":
            notes.append(_note(row, part, at))
        elif kind in ("decoration", "quoted"):
            yield Sign(kind, part, row, at)
        elif kind == "tie":
            ties[len(notes) - 1] = Sign(kind, part, row, at)
    if not notes:
        raise row.refusal("these brackets hold no note", start, start + len(text), "a note", "write a chord as [CEG]")
    length = notes[0].length * _length(row, text, start, tail)
    yield Sign("note", text, row, start, tuple(sign.notes[0] for sign in notes), length)
    highest = max(range(len(notes)), key=lambda place: notes[place].notes[0].height)
    if highest in ties:
        yield ties[highest]


def _graces(row: Row, text: str, start: int) -> Iterator[Sign]:
    """Grace notes in braces; a slash in front, for a crushed one, is left out, as are their lengths."""
    inside = text[1:-1]
    skipped = 1 if inside[:1] == "/" else 0
    notes: list[WrittenNote] = []
    for kind, part, at in _cut(row, inside[skipped:], start + 1 + skipped, _IN_GRACES):
        if kind == "note":
            notes.append(written_note(part)[0])
        elif kind == "chord":
            notes += [note for sign in _chord(row, part, at) for note in sign.notes]
    if notes:
        yield Sign("grace", text, row, start, tuple(notes))
