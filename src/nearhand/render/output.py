"""How an answer goes out: colours on a terminal, plain text elsewhere, plain characters where signs fail."""

from __future__ import annotations

import os

from nearhand.notation.errors import InputError
from nearhand.render.page import Cell, Line, Page, text_of, wrapped
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import TextIO

DEFAULT_WIDTH = 80
_MOST_DIGITS = 5
_SIGNS = "♭♯𝄫𝄪°ø▁▀"


class Output(NamedTuple):
    """A stream with what it can show."""

    stream: TextIO
    width: int
    colours: bool
    signs: bool

    def show(self, answer: object, plain: bool = False, as_json: bool = False) -> None:
        """Draw an answer and write it, or write it as a document."""
        if as_json:
            from nearhand.render.json_answers import json_answer

            self._write_document(json_answer(answer))
        else:
            self.write(self.drawn(answer, plain))

    def _write_document(self, document: str) -> None:
        """Write a JSON document: UTF-8, whatever the stream is in."""
        self.stream.flush()
        self.stream.buffer.write(document.encode("utf-8", "replace") + b"\n")
        self.stream.flush()

    def drawn(self, answer: object, plain: bool = False) -> list[Line]:
        """An answer as the stream can show it."""
        from nearhand.render.answers import draw

        return draw(answer, Page(self.width, plain or not self.signs))

    def write(self, lines: list[Line]) -> None:
        """Write lines."""
        if not lines:
            return
        if self.colours:
            from nearhand.render.screen import print_lines

            print_lines(lines, self.stream, self.width)
        else:
            print(self.shown(text_of(lines)), file=self.stream)

    def refuse(self, error: InputError, as_json: bool = False) -> None:
        """Write a refusal: sentence and hint broken to the width, the place between them as it is; or as a document."""
        if as_json:
            from nearhand.render.json_answers import json_error

            self._write_document(json_error(error))
            return
        what, *place, hint = [*str(error).split("\n"), ""] if not error.hint else str(error).split("\n")
        told = [*wrapped(what, self.width), *([(Cell(part),) for part in place]), *wrapped(hint, self.width)]
        print(self.shown(text_of(told)), file=self.stream)

    def shown(self, text: str) -> str:
        """A text as the stream can carry it."""
        encoding = self.stream.encoding or "utf-8"
        return text.encode(encoding, "replace").decode(encoding)


def output_to(stream: TextIO, environment: dict[str, str], colours: str = "auto") -> Output:
    """The output that a stream and the environment allow (``NO_COLOR``, ``TERM=dumb``, ``COLUMNS``).

    ``colours``: ``off``, ``on`` for a terminal whatever its ``TERM``, or ``auto``; ``NO_COLOR`` goes before both.
    """
    is_terminal = stream.isatty()
    wanted = colours == "on" or (colours == "auto" and environment.get("TERM") not in (None, "", "dumb"))
    is_coloured = is_terminal and wanted and not environment.get("NO_COLOR")
    return Output(stream, _width(stream, environment, is_terminal), is_coloured, _carries_signs(stream))


def _width(stream: TextIO, environment: dict[str, str], is_terminal: bool) -> int:
    columns = environment.get("COLUMNS", "")
    if columns.isascii() and columns.isdigit() and len(columns) <= _MOST_DIGITS and int(columns) > 0:
        return int(columns)
    if is_terminal:
        try:
            return os.get_terminal_size(stream.fileno()).columns or DEFAULT_WIDTH
        except (OSError, ValueError):
            pass
    return DEFAULT_WIDTH


def _carries_signs(stream: TextIO) -> bool:
    try:
        _SIGNS.encode(stream.encoding or "ascii")
    except (UnicodeEncodeError, LookupError):
        return False
    return True
