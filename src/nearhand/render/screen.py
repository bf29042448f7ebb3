"""Lines of cells on a terminal: the one table of colours, and the printing by rich."""

from __future__ import annotations

import os
from collections.abc import Iterable
from typing import IO

from nearhand.render.page import Line

STYLES = {
    "title": "bold",
    "key": "bold",
    "chord": "bold cyan",
    "numeral": "yellow",
    "number": "green",
    "degree": "green",
    "sing": "green",
    "note": "bold cyan",
    "right": "bold cyan",
    "left": "bold magenta",
    "held": "bold green",
    "moves": "green",
    "label": "dim",
    "hint": "italic",
    "error": "bold underline red",
    "bar": "dim",
    "white": "dim",
    "black": "dim",
    "bass": "cyan",
    "verb": "bold",
    "option": "magenta",
    "preview": "italic",
    "auto-suggestion": "italic bright_black",
}
"""Role to style, of pages and of the line that is typed.

Nothing is said by colour alone: every role has its own letters, signs or place as well.
"""


def print_lines(lines: Iterable[Line], file: IO[str], width: int) -> None:
    """Print lines in colour."""
    from rich.console import Console
    from rich.text import Text

    is_told = os.environ.get("TERM") in (None, "", "dumb")  # coloured all the same, because the player says so
    console = Console(
        file=file,
        width=max(width, 1),
        highlight=False,
        markup=False,
        emoji=False,
        force_terminal=is_told or None,
        color_system="standard" if is_told else "auto",
    )
    for cells in lines:
        text = Text(no_wrap=True, end="")
        for cell in cells:
            text.append(cell.text, STYLES.get(cell.role, ""))
        console.print(text, soft_wrap=True)
