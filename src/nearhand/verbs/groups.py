"""The verbs by what one does with them, for the short help."""

from __future__ import annotations

from nearhand.verbs.table import VERBS

_GROUPS = {
    "look": "show melody lines list",
    "move": "to next back up down octave way relative parallel home",
    "understand": "keys key explain cadences tones borrow instead why singer parts difficulty",
    "voice": "voice others loop left span register top pin weigh",
    "keep": "open save recent undo redo recover",
    "set": "set degrees sevenths symbols figures names sing plain layout colours paging completion",
    "learn": "help run tour quit",
}
MORE = "more"


def groups() -> tuple[tuple[str, tuple[str, ...]], ...]:
    """What one does, and the verbs for it, every verb once; those that nobody has sorted come last.

    >>> groups()[0]
    ('look', ('show', 'melody', 'lines', 'list'))
    """
    names = [verb.name for verb in VERBS]
    rows = [(group, tuple(name for name in members.split() if name in names)) for group, members in _GROUPS.items()]
    rest = tuple(name for name in names if not any(name in members for _, members in rows))
    return tuple(rows) if not rest else (*rows, (MORE, rest))
