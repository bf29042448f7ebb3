"""Which search a task asks for: that of its chords, or one under a melody."""

from __future__ import annotations

from nearhand.voicing.search import Search, plain_search
from nearhand.voicing.task import Task


def search_for(task: Task) -> Search:
    """The search that a task asks for.

    Raises ValueError for a style that does not exist, InputError for wishes that some chord cannot meet.
    """
    if task.tops is None:
        return plain_search(task)
    from nearhand.voicing.tops import search_under  # most tunes have no melody on top

    return search_under(task.tops, task)
