"""Answers longer than the screen: where they are cut, and the key that is waited for between two screens."""

from __future__ import annotations

import os
from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from nearhand.render.output import Output
from nearhand.render.page import Line, line, text_of
from nearhand.verbs.session import Outcome

if TYPE_CHECKING:
    from prompt_toolkit.input import Input
    from prompt_toolkit.key_binding import KeyPressEvent
    from prompt_toolkit.output import Output as TerminalOutput

GOES_ON, LEAVES, SHOWS_REST = "goes on", "leaves", "shows the rest"
Asking = Callable[[int, int], str]
"""Number of the screen that is shown, and of how many, to what shall happen: one of the three above."""


def screens(lines: Sequence[Line], width: int, rows: int) -> list[list[Line]]:
    """A page cut into screens of so many rows, the last of which is kept free.

    Blocks between empty lines, such as systems of bars with their keyboards, are cut only where they are longer than
    a screen: then before the line that stands furthest to the left.
    """
    texts = text_of(lines).split("\n") if lines else []
    heights = [_height(text, width) for text in texts]
    left, start, room = sum(heights), 0, max(rows - 1, 1)
    found: list[list[Line]] = []
    while left > room and start + 1 < len(texts):
        cut = _cut(texts, heights, start, room)
        end = cut
        while end > start + 1 and not texts[end - 1]:  # no screen ends or begins with an empty line
            end -= 1
        found.append(list(lines[start:end]))
        while cut < len(texts) and not texts[cut]:
            cut += 1
        left -= sum(heights[start:cut])
        start = cut
    return [*found, list(lines[start:])] if start < len(texts) else found


def _height(text: str, width: int) -> int:
    """Rows that a line takes on a screen; one that is too wide goes on below itself."""
    return max(1, -(-len(text) // max(width, 1)))


def _cut(texts: Sequence[str], heights: Sequence[int], start: int, room: int) -> int:
    """Where the screen that begins at a line ends: at least one line later."""
    most = start + max(_fitting(heights, start, room), 1)
    blank = next((at for at in range(min(most, len(texts) - 1), start, -1) if not texts[at]), None)
    if blank is not None and _block_fits(texts, heights, blank + 1, room):
        return blank + 1
    places = range(most, max((start + most) // 2, start + 1) - 1, -1)
    return min((at for at in places if texts[at]), key=lambda at: _indent(texts[at]), default=most)


def _fitting(heights: Sequence[int], start: int, room: int) -> int:
    """How many lines fit into some rows."""
    count = 0
    while start + count < len(heights) and heights[start + count] <= room:
        room -= heights[start + count]
        count += 1
    return count


def _block_fits(texts: Sequence[str], heights: Sequence[int], start: int, room: int) -> bool:
    """Whether the lines up to the next empty one fit into some rows."""
    end = start + _fitting(heights, start, room)
    return end >= len(texts) or any(not texts[at] for at in range(start, end + 1))


def _indent(text: str) -> int:
    return len(text) - len(text.lstrip())


def show_paged(output: Output, lines: list[Line], rows: int, asks: Asking) -> None:
    """Write a page, stopping at every screen."""
    rest = screens(lines, output.width, rows)
    count = len(rest)
    for number, screen in enumerate(rest, start=1):
        output.write(screen)
        if number == count:
            return
        output.stream.flush()
        choice = asks(number, count)
        if choice == LEAVES:
            return
        if choice == SHOWS_REST:
            for other in rest[number:]:
                output.write([line(), *other])
            return


def show_outcome(
    output: Output, outcome: Outcome, input_: Input | None = None, terminal: TerminalOutput | None = None
) -> None:
    """Show an answer on a terminal, stopping at every screen where it is longer than one, unless that is switched off.

    ``input_`` and ``terminal`` stand for keyboard and screen in tests.
    """
    if outcome.as_json:
        output.show(outcome.answer, as_json=True)
        return
    lines = output.drawn(outcome.answer, outcome.plain)
    rows = rows_of(output, dict(os.environ)) if outcome.session.paging else 0
    if rows:
        show_paged(output, lines, rows, lambda number, count: _ask(number, count, input_, terminal))
    else:
        output.write(lines)


def rows_of(output: Output, environment: dict[str, str]) -> int:
    """Rows of the screen; 0 where nothing is to be paged: no terminal, or one that cannot take a line back."""
    if not output.stream.isatty() or environment.get("TERM") in (None, "", "dumb"):
        return 0
    try:
        return os.get_terminal_size(output.stream.fileno()).lines
    except (OSError, ValueError):
        return 0


def _ask(number: int, count: int, input_: Input | None, terminal: TerminalOutput | None) -> str:
    """Wait for a key below a screen. One that means nothing here shows the rest, and is typed on the next line."""
    from prompt_toolkit.application import Application
    from prompt_toolkit.key_binding import KeyBindings
    from prompt_toolkit.keys import Keys
    from prompt_toolkit.layout import FormattedTextControl, Layout, Window

    keys = KeyBindings()

    def bind(choice: str, *names: str) -> None:
        for name in names:
            keys.add(name)(lambda event: event.app.exit(result=choice))

    bind(GOES_ON, " ", "enter", "pagedown", "down")
    bind(LEAVES, "q", "Q", "escape", "c-c", "c-d")

    @keys.add(Keys.Any)
    def _(event: KeyPressEvent) -> None:
        event.app.exit(result=SHOWS_REST)
        event.key_processor.feed(event.key_sequence[0], first=True)

    text = f"page {number} of {count}: Space goes on, q leaves"
    bar = Window(FormattedTextControl([("reverse", text)], show_cursor=False), height=1)
    application: Application[str] = Application(
        Layout(bar), key_bindings=keys, erase_when_done=True, input=input_, output=terminal
    )
    return application.run()
