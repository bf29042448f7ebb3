"""The sections of a chart file in its bars."""

from __future__ import annotations

from collections.abc import Sequence

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.notation.chart_files import Section
    from nearhand.theory.progression import Bar


def sectioned(bars: tuple[Bar, ...], sections: Sequence[Section]) -> tuple[Bar, ...]:
    """The bars of sections that follow one another, the first of each with the section's name."""
    named, start = list(bars), 0
    for section in sections:
        if section.chart is not None:
            named[start] = named[start]._replace(section=section.name)
            start += len(section.chart.bars)
    return tuple(named)
