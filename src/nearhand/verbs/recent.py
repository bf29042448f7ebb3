"""``recent``: the charts that were opened or saved lately."""

from __future__ import annotations

import os

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.files import file_and_number, read_tune, write_whole
from nearhand.verbs.folders import data_folder
from nearhand.verbs.kept_lines import read_lines, written_lines
from nearhand.verbs.list_charts import ChartRow
from nearhand.verbs.loading import with_conventions
from nearhand.verbs.picking import ends_in_a_number
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments

MOST = 20
FILE_NAME = "recent"
_MOST_DIGITS = 4


class RecentAnswer(NamedTuple):
    """Charts that were opened or saved lately, the last one first; a file that is missing has its error."""

    rows: tuple[ChartRow, ...]
    conventions: Conventions


def recent(session: Session, arguments: Arguments) -> Outcome:
    """List the charts of late, or open one of them by its number.

    Raises InputError when there is no such number, or the chart cannot be read.
    """
    session = with_conventions(session, arguments)
    paths = recent_charts()
    if arguments.words:
        path = _picked(arguments, paths)
        session = session.with_tune(read_tune(path, conventions=session.conventions))
        return shown(session, introduces=True)._replace(lines=(f"open {_quoted(path)}",), chart=path)
    return Outcome(session, RecentAnswer(tuple(_row(path, session) for path in paths), session.conventions))


def _quoted(path: str) -> str:
    """A path as a line takes it whole."""
    quote = next((sign for sign in ('"', "'") if sign not in path), "")
    return f"{quote}{path}{quote}"


def _picked(arguments: Arguments, paths: tuple[str, ...]) -> str:
    text, line = arguments.text, arguments.line
    if len(arguments.words) > 1 or not ends_in_a_number(arguments.words):
        what, hint = "recent takes the number of a chart", "write recent to list them, recent 1 to open the last one"
        raise InputError(what, line, arguments.start, wanted="a number", hint=hint)
    if len(text) > _MOST_DIGITS or not 1 <= int(text) <= len(paths):
        hint = f"they are numbered 1 to {len(paths)}" if paths else "open or save a chart first"
        raise InputError(f"there is no recent chart {text[:12]}", line, arguments.start, wanted="a number", hint=hint)
    return paths[int(text) - 1]


def _row(path: str, session: Session) -> ChartRow:
    try:
        return ChartRow(path, read_tune(path, conventions=session.conventions), None)
    except InputError as error:
        if os.path.exists(file_and_number(path)[0]):
            return ChartRow(path, None, error)
        return ChartRow(path, None, InputError("missing: there is no such file any more", path))


def recent_charts() -> tuple[str, ...]:
    """The whole paths of the charts of late, the last one first; none where the list cannot be read."""
    return tuple(read_lines(os.path.join(data_folder(), FILE_NAME))[:MOST])


def remember(chart: str) -> None:
    """Put a chart in front of the list. A list that cannot be written is left: it is a help, and no work is lost."""
    path = os.path.join(data_folder(), FILE_NAME)
    chart = os.path.abspath(chart)
    old = recent_charts()
    charts = (chart, *(other for other in old if other != chart))[:MOST]
    if charts == old:
        return
    try:
        os.makedirs(os.path.dirname(path), exist_ok=True)
        write_whole(path, written_lines(charts))
    except (OSError, ValueError):
        return
