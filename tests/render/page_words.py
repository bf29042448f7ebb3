"""Words for the tests of pages: lines answered and drawn, and streams that stand in for a terminal."""

from __future__ import annotations

import io
import re
from pathlib import Path

from nearhand.notation.conventions import Conventions
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

CHARTS = sorted((Path(__file__).parents[2] / "progressions").glob("*.toml"))
WIDTHS = (120, 80, 40)
LAMENT = "E minor: | Em | Bm/D | Am/C | B7 |"


def last_answer(*lines: str, plain: bool = False) -> object:
    """The answer to the last of some lines, in signs or plain characters."""
    session, answer = Session(conventions=Conventions(plain=plain)), None
    for line in lines:
        outcome = respond(session, line)
        session, answer = outcome.session, outcome.answer
    return answer


def page(*lines: str, width: int = 80, plain: bool = False) -> str:
    """The page that the last of some lines is answered with."""
    return text_of(draw(last_answer(*lines, plain=plain), Page(width, plain)))


class Screen(io.TextIOWrapper):
    """A stream in memory that says it is a terminal."""

    def __init__(self, encoding: str = "utf-8") -> None:
        super().__init__(io.BytesIO(), encoding=encoding, newline="\n")

    def isatty(self) -> bool:
        return True

    @property
    def written(self) -> str:
        """What has been written, as text."""
        self.flush()
        return self.buffer.getvalue().decode(self.encoding)  # type: ignore[attr-defined]


class Pipe(Screen):
    """A stream in memory that is no terminal."""

    def isatty(self) -> bool:
        return False


def without_codes(text: str) -> str:
    """A text without the codes that colour it (ECMA-48, SGR)."""
    return re.sub(r"\x1b\[[0-9;]*m", "", text)
