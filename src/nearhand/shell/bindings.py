"""What the keys that act type: a line for each, made for the session as it is."""

from __future__ import annotations

from nearhand.verbs.key_actions import (
    ACTIONS,
    CHORD_BEFORE,
    EDITING,
    LOOP,
    NEXT_CHORD,
    SIGNS_SAY,
    Action,
    keys_help,
)
from nearhand.verbs.session import Session

__all__ = ["ACTIONS", "EDITING", "SIGNS_SAY", "Action", "keys_help", "line_of", "place_after", "stepped"]


def line_of(action: Action, session: Session, place: int) -> str:
    """The line that an action types; ``place`` is the number of the chord that was explained last, 0 for none.

    >>> line_of(ACTIONS[3], Session(), 0), line_of(ACTIONS[10], Session(), 0)
    ('next', 'loop on')
    """
    if action.line == LOOP:
        return f"loop {'off' if session.loops else 'on'}"
    if action.line in (NEXT_CHORD, CHORD_BEFORE):
        count = 0 if session.tune is None else len(session.tune.progression.relative_chords)
        return f"explain {stepped(place, count, 1 if action.line == NEXT_CHORD else -1)}" if count else "explain"
    return action.line


def stepped(place: int, count: int, step: int) -> int:
    """The number of the next chord, or of the one before, of so many; behind the last comes the first.

    >>> stepped(0, 4, 1), stepped(4, 4, 1), stepped(0, 4, -1), stepped(1, 4, -1), stepped(9, 4, 1)
    (1, 1, 4, 4, 1)
    """
    if not 1 <= place <= count:
        return 1 if step > 0 else count
    return (place - 1 + step) % count + 1


def place_after(line: str, place: int) -> int:
    """The number of the chord explained last, once a line is answered; other chords begin anew.

    >>> place_after("explain 3", 1), place_after("next", 1), place_after("| C | F |", 1)
    (3, 1, 0)
    """
    from nearhand.verbs.table import BY_NAME

    words = line.split()
    if len(words) == 2 and words[0] == "explain" and words[1].isascii() and words[1].isdigit():
        return int(words[1][:6])
    return place if not words or (words[0] in BY_NAME and words[0] != "open") else 0
