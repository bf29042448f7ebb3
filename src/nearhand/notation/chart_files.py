"""Chart files: TOML with a title, a key, a meter, a tempo, notes for the teacher, and sections of chords.

``title`` and ``key`` are text, ``meter`` is text such as ``3/4``, ``tempo`` a whole number of beats a minute, ``notes``
text. Each ``[[sections]]`` has ``chords`` (a chart as in ``notation.chart``), a ``melody`` over them (as in
``notation.melody_reading``), or both, and may have a ``name`` and a ``meter``.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any, TypeVar

from nearhand.notation.chart import Chart, read_chart
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.theory.progression import COMMON_TIME, Meter
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.notation.melody_reading import WrittenMelody

_FIELDS: dict[str, type] = {"title": str, "key": str, "meter": str, "tempo": int, "notes": str, "sections": list}
_SECTION_FIELDS: dict[str, type] = {"name": str, "meter": str, "chords": str, "melody": str}
_TYPE_WORDS = {str: "text in quotes", int: "a whole number", list: "[[sections]] tables"}
_TEMPO_LIMITS = (10, 400)
_SECTION_HEAD = "[[sections]]"
_MOST_DIGITS_SHOWN = 10**12
_NO_CHORDS_HINT = 'add  [[sections]]  and under it  chords = "| C | F G7 | C |"'
_Read = TypeVar("_Read")


class Source(NamedTuple):
    """A file's text and the name to show for it: places errors in its lines.

    A field is found by its name and its section's place from 0; None for the fields above all sections.
    """

    text: str
    name: str

    @property
    def lines(self) -> list[str]:
        """The lines as TOML counts them."""
        return self.text.split("\n")

    def field_line(self, field: str, section: int | None) -> int:
        """The number of the line of a field, from 1; 0 where there is none."""
        current = -1
        for number, line in enumerate(self.lines, start=1):
            if line.replace(" ", "").startswith(_SECTION_HEAD):
                current += 1
                if field == _SECTION_HEAD and current == section:
                    return number
            elif current == (-1 if section is None else section) and _field_name(line) == field:
                return number
        return 0

    def at_field(self, what: str, field: str, section: int | None = None, hint: str = "") -> InputError:
        """An error at the line of a field."""
        line = self.field_line(field, section)
        shown = self.lines[line - 1] if line else ""
        return InputError(what, shown, len(shown) - len(shown.lstrip()), hint=hint, source=self.name, line=line)

    def in_value(self, error: InputError, field: str, value: str, section: int | None = None) -> InputError:
        """An error in a field's text value, at its line and column in the file."""
        line = self.field_line(field, section)
        start = self.text.find("=", sum(len(text) + 1 for text in self.lines[: line - 1])) + 1 if line else 0
        found = self.text.find(value, start) if value else -1
        if found < 0:  # written with escapes, or not to be found: the field's own line must do
            return self.at_field(error.what, field, section, error.hint)
        before = self.text[: found + error.start]
        line, column = before.count("\n") + 1, len(before.rpartition("\n")[2])
        placed = InputError(error.what, self.lines[line - 1], column, column + max(1, error.end - error.start))
        placed.wanted, placed.hint, placed.source, placed.line = error.wanted, error.hint, self.name, line
        return placed


def _field_name(line: str) -> str:
    return line.partition("=")[0].strip(" \t\"'") if "=" in line else ""


class Section(NamedTuple):
    """One section of a chart file: its name, its chart, its melody, its meter, and its place in the file (from 0).

    A section has a chart, a melody, or both; what it has not is None.
    """

    name: str
    chart: Chart | None
    melody: WrittenMelody | None
    meter: Meter
    place: int


class ChartFile(NamedTuple):
    """A chart file as read: ``key`` is None when the file names none, ``tempo_bpm`` when it gives none."""

    source: Source
    title: str
    key: Key | None
    tempo_bpm: int | None
    notes: str
    sections: tuple[Section, ...]

    def placed(self, error: InputError) -> InputError:
        """An error in the text of a section's chart or melody, with its line and column in the file."""
        if error.source:
            return error
        for section in self.sections:
            for field, written in (("chords", section.chart), ("melody", section.melody)):
                if written is not None and written.text == error.text:
                    return self.source.in_value(error, field, written.text, section.place)
        return error

    def in_melody(self, error: InputError, section: Section) -> InputError:
        """An error in the melody of a section, with its line and column in the file."""
        assert section.melody is not None
        return self.source.in_value(error, "melody", section.melody.text, section.place)


def read_chart_file(text: str, name: str) -> ChartFile:
    """Read a chart file's text; ``name`` is what errors call it.

    Raises InputError with the line and column in the file.

    >>> text = 'title = "Two Doors"\\nkey = "G major"\\n[[sections]]\\nchords = "| G | D7 |"'
    >>> chart_file = read_chart_file(text, "doors.toml")
    >>> chart_file.title, str(chart_file.key), len(chart_file.sections[0].chart.bars)
    ('Two Doors', 'G major', 2)
    """
    source = Source(text.replace("\r\n", "\n"), name)
    table = toml_of(source, 'write for example  title = "Two Doors"', "this file cannot be a chart")
    _check(table, _FIELDS, source)
    meter = _read(parse_meter, table["meter"], source, "meter") if "meter" in table else COMMON_TIME
    key = _read(parse_key, table["key"], source, "key") if "key" in table else None
    tempo = table.get("tempo")
    low, high = _TEMPO_LIMITS
    if tempo is not None and not low <= tempo <= high:
        raise source.at_field(f"tempo must be {low} to {high} beats a minute (got {_shown(tempo)})", "tempo")
    sections = _sections(table, meter, source)
    return ChartFile(source, table.get("title", ""), key, tempo, table.get("notes", "").strip(), sections)


def toml_of(source: Source, hint: str, otherwise: str) -> dict[str, Any]:
    """The table of a file's TOML; ``otherwise`` says what a file is not that cannot be taken in at all.

    Raises InputError with the line and column in the file.
    """
    import tomllib

    try:
        return tomllib.loads(source.text)
    except tomllib.TOMLDecodeError as error:
        message, _, place = str(error).rpartition(" (at ")
        line, column = _line_and_column(place, source.text)
        shown = source.lines[line - 1] if line <= len(source.lines) else ""
        what = f"this is no TOML: {message or error}".rstrip(".")
        raise InputError(what, shown, column - 1, hint=hint, source=source.name, line=line) from None
    except (RecursionError, ValueError):  # nested too deeply, or a number of thousands of digits
        raise InputError(otherwise, source=source.name, hint=hint) from None


def _line_and_column(place: str, text: str) -> tuple[int, int]:
    digits = "".join(character if character.isdigit() else " " for character in place).split()
    if len(digits) == 2:
        return int(digits[0]), int(digits[1])
    return text.count("\n") + 1, len(text.rpartition("\n")[2]) + 1


def _check(table: dict[str, Any], fields: dict[str, type], source: Source, place: int | None = None) -> None:
    for name, value in table.items():
        if name not in fields:
            from difflib import get_close_matches

            near = get_close_matches(name, fields, n=1)
            hint = f"did you mean {near[0]}?" if near else f"the fields are {', '.join(fields)}"
            raise source.at_field(f"there is no field {name[:40]!r} in a chart", name, place, hint)
        wanted = fields[name]
        if not isinstance(value, wanted) or isinstance(value, bool):
            words = _TYPE_WORDS[wanted]
            raise source.at_field(f"{name} must be {words} (got {_shown(value)})", name, place, f"write {words}")


def _shown(value: object) -> str:
    if isinstance(value, int) and abs(value) > _MOST_DIGITS_SHOWN:
        return "a very large number"
    return f"{value!r:.40}"


def _sections(table: dict[str, Any], meter: Meter, source: Source) -> tuple[Section, ...]:
    if not table.get("sections"):
        raise InputError("this chart has no chords", source=source.name, hint=_NO_CHORDS_HINT)
    sections = []
    for place, section in enumerate(table["sections"]):
        if not isinstance(section, dict):
            raise source.at_field("sections must be [[sections]] tables", "sections", hint=_NO_CHORDS_HINT)
        _check(section, _SECTION_FIELDS, source, place)
        if "chords" not in section and "melody" not in section:
            raise source.at_field(f"section {place + 1} has no chords", _SECTION_HEAD, place, _NO_CHORDS_HINT)
        own_meter = _read(parse_meter, section["meter"], source, "meter", place) if "meter" in section else meter
        chart = melody = None
        if "chords" in section:
            chart = _read(partial(read_chart, meter=own_meter), section["chords"], source, "chords", place)
        if "melody" in section:
            from nearhand.notation.melody_reading import read_melody  # most charts have none

            melody = _read(read_melody, section["melody"], source, "melody", place)
        sections.append(Section(section.get("name", ""), chart, melody, own_meter, place))
    return tuple(sections)


def _read(reader: Callable[[str], _Read], value: str, source: Source, field: str, place: int | None = None) -> _Read:
    try:
        return reader(value)
    except InputError as error:
        raise source.in_value(error, field, value, place) from None
