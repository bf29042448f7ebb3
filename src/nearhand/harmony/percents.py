"""Shares of a time in percent."""

from __future__ import annotations

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


def percent(part: Beats | float, whole: Beats | float) -> int:
    """Percent to the nearest one, halves up; 0 and 100 stand for nothing and all alone.

    >>> percent(1, 8), percent(1, 1000), percent(999, 1000)
    (13, 1, 99)
    """
    if part in (0, whole):
        return 100 if part else 0
    return min(max(int((200 * part + whole) // (2 * whole)), 1), 99)
