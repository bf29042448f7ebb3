"""The text of an ABC file as rows: which of them are fields, and which belong to one tune.

ABC standard 2.1 (December 2011), sections 2 and 3, from memory. A tune begins with its number (``X:``), its header ends
with the key (``K:``), and the tune ends at an empty line.
"""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS
from nearhand.theory.record import NamedTuple

KEY_LINE_HINT = "end the header with the key, for example K:G"
_INSTRUCTION = "%%"
_TEXT_BEGINS, _TEXT_ENDS = f"{_INSTRUCTION}begin", f"{_INSTRUCTION}end"
_BAR_LINE_BEHIND = (":|", "::")
_MOST_DIGITS = 9


class Row(NamedTuple):
    """One line of a file: the file's name, the line's number from 1, and its text."""

    source: str
    number: int
    text: str

    @property
    def code(self) -> str:
        """The text without its comment, which a ``%`` begins.

        >>> Row("it.abc", 1, "C D | % twice").code
        'C D | '
        """
        at = self.text.find("%")
        while at > 0 and self.text[at - 1] == "\\":
            at = self.text.find("%", at + 1)
        return self.text if at < 0 else self.text[:at]

    def refusal(self, what: str, start: int, end: int | None = None, wanted: str = "", hint: str = "") -> InputError:
        """An error at a place of this line."""
        last = start + 1 if end is None else end
        return InputError(what, self.text, start, last, wanted=wanted, hint=hint, source=self.source, line=self.number)


class Field(NamedTuple):
    """A field: its letter, its value, and where the value stands."""

    letter: str
    value: str
    row: Row
    start: int

    def refusal(self, what: str, start: int = 0, wanted: str = "", hint: str = "") -> InputError:
        """An error at a place of the value."""
        return self.row.refusal(what, self.start + start, None, wanted, hint)


def field_of(row: Row) -> Field | None:
    """The field that a line is; None for a line of music, of text, or without anything.

    >>> field_of(Row("it.abc", 1, "K: G % one sharp"))[:2], field_of(Row("it.abc", 1, "D:| E4"))
    (('K', 'G'), None)
    """
    code = row.code
    at = len(code) - len(code.lstrip())
    letter = code[at : at + 1]
    is_name = (letter.isascii() and letter.isalpha()) or letter == "+"
    if not is_name or code[at + 1 : at + 2] != ":":
        return None
    if letter.upper() in LETTERS_IN_FIFTHS and code[at + 1 : at + 3] in _BAR_LINE_BEHIND:
        return None
    value = code[at + 2 :]
    return Field(letter, value.strip(), row, at + 2 + len(value) - len(value.lstrip()))


def instruction_of(row: Row) -> Field | None:
    """The instruction that a line is, ``%%name value``, as the field ``I:`` that says the same; None for another line.

    >>> instruction_of(Row("it.abc", 1, "%%vskip 3 % a gap"))[:2], instruction_of(Row("it.abc", 1, "% a remark"))
    (('I', 'vskip 3'), None)
    """
    if not row.text.startswith(_INSTRUCTION):
        return None
    value = row.text[len(_INSTRUCTION) :].partition("%")[0]
    return Field("I", value.strip(), row, len(_INSTRUCTION) + len(value) - len(value.lstrip()))


class TuneText(NamedTuple):
    """The rows of one tune: its header up to the key, its body, and the fields that stand before all tunes.

    Instructions (``%%``) of both are among the fields.
    ``is_whole``: whether no music stands behind an empty line, where the tune has ended already. ``numbers`` are those
    of all tunes of the file, ``place`` which of them this one is, from 0.
    """

    before: tuple[Field, ...]
    header: tuple[Field, ...]
    body: tuple[Row, ...]
    is_whole: bool
    numbers: tuple[str, ...]
    place: int


def tune_text(text: str, source: str, number: int | None = None) -> TuneText:
    """The rows of the tune with a number, of the first one where none is given.

    Raises InputError: where there is no tune, none of that number, or one whose header does not end with its key.

    >>> tune = tune_text("X:1\\nT:Two Doors\\nK:G\\nG A B |\\n", "doors.abc")
    >>> [field.value for field in tune.header], [row.text for row in tune.body]
    (['1', 'Two Doors', 'G'], ['G A B |'])
    """
    rows = _rows(text, source)
    fields = [field_of(row) for row in rows]
    starts = [place for place, field in enumerate(fields) if field is not None and field.letter == "X"]
    if not starts:
        if not any(field is not None and field.letter == "K" for field in fields):
            raise _no_tune(rows, source)
        starts = [0]
    numbers = tuple(field.value if (field := fields[start]) and field.letter == "X" else "" for start in starts)
    chosen = 0 if number is None else _place_of(number, numbers, source)
    begin = starts[chosen]
    end = starts[chosen + 1] if chosen + 1 < len(starts) else len(rows)
    above = (fields[place] or instruction_of(rows[place]) for place in range(starts[0]))
    before = tuple(field for field in above if field is not None)
    _check_number(fields, begin)
    header, body_start = _header(rows, fields, begin, end)
    body, is_whole = _body(rows[body_start:end])
    return TuneText(before, header, body, is_whole, numbers, chosen)


def _rows(text: str, source: str) -> list[Row]:
    """The lines, without those of a block of text, which is for print alone."""
    rows, in_text = [], False
    for number, line in enumerate(text.replace("\r\n", "\n").replace("\r", "\n").split("\n"), start=1):
        begins, ends = line.startswith(_TEXT_BEGINS), line.startswith(_TEXT_ENDS)
        in_text = begins or (in_text and not ends)
        if not in_text and not ends:
            rows.append(Row(source, number, line))
    return rows


def _no_tune(rows: list[Row], source: str) -> InputError:
    what, hint = "there is no tune here", "a tune begins with X:1 and its title T:, and its header ends with K:"
    row = next((row for row in rows if row.code.strip()), None)
    if row is None:
        return InputError(what, source=source, hint=hint)
    return row.refusal(what, len(row.text) - len(row.text.lstrip()), None, "X:1", hint)


def _place_of(number: int, numbers: tuple[str, ...], source: str) -> int:
    for place, text in enumerate(numbers):
        if text.isascii() and text.isdigit() and len(text) <= _MOST_DIGITS and int(text) == number:
            return place
    shown = [text for text in numbers if text][:6]
    more = " ..." if len(numbers) > len(shown) else ""
    hint = f"the tunes here are numbered {', '.join(shown)}{more}" if shown else "leave the number out"
    raise InputError(f"there is no tune {number} here", source=source, hint=hint)


def _check_number(fields: list[Field | None], begin: int) -> None:
    """Refuse a number that is none, and a title or a key right above it: a tune begins with its number."""
    first = fields[begin]
    if first is None or first.letter != "X":
        return
    if first.value and not (first.value.isascii() and first.value.isdigit()):
        raise first.refusal(f"{first.value[:20]!r} is no number", 0, "a number", "write X:1")
    above = begin - 1
    while above >= 0 and (field := fields[above]) is not None and field.letter != "X":
        if field.letter in "TK":
            what = f"{field.letter}: stands before the number of the tune"
            raise field.row.refusal(what, field.row.text.find(field.letter), None, "X:", "put the X: line above it")
        above -= 1


def _header(rows: list[Row], fields: list[Field | None], begin: int, end: int) -> tuple[tuple[Field, ...], int]:
    """The fields of a tune's header, and the place of the row behind it."""
    header: list[Field] = []
    last = begin
    for place in range(begin, end):
        field, row = fields[place], rows[place]
        if field is not None:
            header.append(field)
            last = place
            if field.letter == "K":
                return tuple(header), place + 1
        elif (instruction := instruction_of(row)) is not None:
            header.append(instruction)
        elif row.code.strip():
            has_key = any(field is not None and field.letter == "K" for field in fields[place:end])
            what = "this line of the header is no field" if has_key else "the notes begin before the key is named"
            hint = "a field is a letter and a colon; the notes begin below K:" if has_key else KEY_LINE_HINT
            raise row.refusal(what, len(row.text) - len(row.text.lstrip()), None, "a field", hint)
    row = rows[last]
    raise row.refusal("this tune has no key", len(row.text), None, "K:", KEY_LINE_HINT)


def _body(rows: list[Row]) -> tuple[tuple[Row, ...], bool]:
    """The rows up to the first empty one, and whether none of those behind looks like music."""
    end = next((place for place, row in enumerate(rows) if not row.text.strip()), len(rows))
    return tuple(rows[:end]), not any("|" in row.code and field_of(row) is None for row in rows[end:])
