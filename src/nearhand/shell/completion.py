"""What may stand at the cursor: a function of the line, the session, and, for file names, the folders."""

from __future__ import annotations

import os

from nearhand.harmony.moving import all_keys
from nearhand.notation.keys import write_key
from nearhand.theory.key import Key, circle
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple
from nearhand.verbs.files import SUFFIX
from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME, VERBS


class Candidate(NamedTuple):
    """A text that may stand from ``start`` (an offset into the line) to the cursor, and what it means."""

    text: str
    start: int
    meaning: str = ""


def candidates(before_cursor: str, session: Session) -> tuple[Candidate, ...]:
    """What may complete the line.

    >>> [candidate.text for candidate in candidates("sh", Session())]
    ['show']
    >>> [candidate.text for candidate in candidates("voice dr", Session())]
    ['drop2', 'drop3', 'drop2and4']
    """
    stripped = before_cursor.lstrip()
    start = len(before_cursor) - len(stripped)
    name, blank, rest = stripped.partition(" ")
    if not blank:
        return tuple(Candidate(verb.name, start, verb.help) for verb in VERBS if verb.name.startswith(name))
    verb = BY_NAME.get(name)
    if verb is None:
        return ()
    last = rest.rpartition(" ")[2]
    if last.startswith("--"):
        at = len(before_cursor) - len(last)
        return tuple(
            Candidate(f"--{option.name}", at, option.help)
            for option in verb.options
            if f"--{option.name}".startswith(last)
        )
    for option in verb.options:
        if option.choices and rest.split()[-1 - bool(last) :][:1] == [f"--{option.name}"]:
            at = len(before_cursor) - len(last)
            return tuple(Candidate(choice, at) for choice in option.choices if choice.startswith(last))
    typed = rest.lstrip()
    at = len(before_cursor) - len(typed)
    return tuple(candidate for kind in verb.completes for candidate in _of_kind(kind, typed, at, session, verb.name))


def _of_kind(kind: str, typed: str, at: int, session: Session, verb: str) -> tuple[Candidate, ...]:
    if kind == "keys":
        found = [(write_key(key, plain=True), "") for key in _keys(session)]
    elif kind in ("files", "folders"):
        return _paths(typed, at, folders_only=kind == "folders")
    elif kind == "verbs":
        found = [(verb.name, verb.help) for verb in VERBS]
    elif kind == "words":
        found = list(meanings_of(verb))
    else:
        found = [(kind, "")]
    return tuple(Candidate(text, at, meaning) for text, meaning in found if text.lower().startswith(typed.lower()))


def _keys(session: Session) -> tuple[Key, ...]:
    """The twelve keys of the tune's mode from its own on; without a tune, major and minor ones."""
    if session.tune is not None:
        return all_keys(session.tune.progression)
    return circle(Key(PitchClass(0), MAJOR)) + circle(Key(PitchClass(3), MINOR))


def _paths(typed: str, at: int, folders_only: bool) -> tuple[Candidate, ...]:
    folder, name = os.path.split(typed)
    try:
        entries = sorted(os.scandir(folder or os.curdir), key=lambda entry: entry.name)
    except (OSError, ValueError):
        return ()
    found = []
    for entry in entries:
        is_folder = entry.is_dir()
        is_wanted = is_folder or (entry.name.endswith(SUFFIX) and not folders_only)
        if is_wanted and entry.name.startswith(name) and not entry.name.startswith("."):
            found.append(Candidate(os.path.join(folder, entry.name) + "/" * is_folder, at))
    return tuple(found)
