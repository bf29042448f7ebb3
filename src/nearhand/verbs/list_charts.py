"""``list``: the charts in a folder."""

from __future__ import annotations

import os

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.files import charts_in, read_tune
from nearhand.verbs.loading import with_conventions
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments


class ChartRow(NamedTuple):
    """One chart file of a folder; ``error`` says why it cannot be read."""

    path: str
    tune: Tune | None
    error: InputError | None


class ListAnswer(NamedTuple):
    """The charts of a folder."""

    folder: str
    rows: tuple[ChartRow, ...]
    conventions: Conventions


DEFAULT_FOLDER = "progressions"


def list_charts(session: Session, arguments: Arguments) -> Outcome:
    """List the charts of a folder: ``progressions`` if there is one here, else the current folder.

    Raises InputError when the folder cannot be read; a chart that cannot be read is listed with the reason.
    """
    session = with_conventions(session, arguments)
    folder = arguments.text or (DEFAULT_FOLDER if os.path.isdir(DEFAULT_FOLDER) else os.curdir)
    rows = []
    for path in charts_in(folder):
        try:
            rows.append(ChartRow(path, read_tune(path, conventions=session.conventions), None))
        except InputError as error:
            rows.append(ChartRow(path, None, error))
    return Outcome(session, ListAnswer(folder, tuple(rows), session.conventions))
