"""Words for the tests of verbs: a session after some lines, what it shows, and the picture of a refusal."""

from __future__ import annotations

from pathlib import Path

import pytest

from nearhand.notation.conventions import PLAIN
from nearhand.notation.errors import InputError
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

PROGRESSIONS = Path(__file__).parents[2] / "progressions"
CHARTS = sorted(PROGRESSIONS.glob("*.toml"))
FALLING_BASS = "| Em | Bm/D | Am/C | B7 |"


def after(*lines: str, start: Session | None = None) -> Session:
    """The session after some lines."""
    session = Session() if start is None else start
    for line in lines:
        session = respond(session, line).session
    return session


def answer_to(line: str, session: Session | None = None) -> object:
    """What one line is answered."""
    return respond(Session() if session is None else session, line).answer


def refusal(line: str, session: Session | None = None) -> InputError:
    """The error that refuses a line."""
    with pytest.raises(InputError) as caught:
        respond(Session() if session is None else session, line)
    return caught.value


def symbols(session: Session) -> str:
    """The chords in the shown key, in plain characters."""
    assert session.tune is not None and session.shown_key is not None
    return " ".join(session.tune.in_key(session.shown_key).symbols(PLAIN))


def numerals(session: Session) -> str:
    """The numerals, in plain characters."""
    assert session.tune is not None
    return " ".join(session.tune.numerals(session.conventions._replace(plain=True)))


def numbers(session: Session) -> str:
    """The chords in numbers, in plain characters."""
    assert session.tune is not None
    return " ".join(session.tune.numbers(session.conventions._replace(plain=True)))


def keys_of(answer: object) -> list[str]:
    """The keys that an answer shows."""
    return [str(view.key) for view in answer.views]  # type: ignore[attr-defined]


def picture(error: InputError) -> tuple[str, str, str]:
    """A refusal as it is printed: its sentence, its line with ``^`` put before the first bad character, its hint."""
    lines = str(error).splitlines()
    hint = lines.pop() if error.hint else ""
    sentence = lines.pop(0)
    if not lines:
        return sentence, "", hint
    shown, caret = lines
    assert caret.strip() == "^"
    column = caret.index("^") - 2
    shown = shown[2:].ljust(column)
    return sentence, f"{shown[:column]}^{shown[column:]}", hint
