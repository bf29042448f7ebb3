"""The shell without a terminal: the same lines, read from a pipe or a file."""

from __future__ import annotations

import os
import sys
from typing import IO

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.render.output import output_to
from nearhand.verbs.files import decode
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.words import asks_for_json

COMMENT = "#"


def run_lines(stream: IO[bytes]) -> int:
    """Answer every line of a stream on standard output; refusals go to standard error, and the session goes on.

    Answers the exit status: 0, or 2 when a line could not be read. Lines that begin with ``#`` and a blank are notes.
    """
    environment = dict(os.environ)
    output, errors = output_to(sys.stdout, environment), output_to(sys.stderr, environment)
    session = Session(conventions=Conventions(plain=not output.signs))
    status, answered = 0, False
    for number, data in enumerate(stream, start=1):
        try:
            line = _text(data, number).strip()
            if not line or line.startswith(COMMENT + " ") or line == COMMENT:
                continue
            outcome = respond(session, line)
        except InputError as error:
            errors.refuse(error, asks_for_json(line))
            status = 2
            continue
        if outcome.session.colours != session.colours:
            output = output_to(sys.stdout, environment, outcome.session.colours)
        session = outcome.session
        if outcome.leaves:
            break
        if answered:
            output.write([()])
        answered = True
        output.show(outcome.answer, outcome.plain, outcome.as_json)
    sys.stdout.flush()
    return status


def _text(data: bytes, number: int) -> str:
    try:
        return decode(data, "")
    except InputError as error:
        error.source, error.line = f"line {number}, column {error.start + 1}", 0
        raise
