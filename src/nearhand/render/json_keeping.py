"""Settings and recent charts as documents."""

from __future__ import annotations

from nearhand.render.json_list import chart_row
from nearhand.verbs.recent import RecentAnswer
from nearhand.verbs.setting import SettingsAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def settings_document(answer: SettingsAnswer) -> dict[str, Any]:
    """The document of the settings; ``kept`` is null where nothing is, ``broken`` empty where the file can be read."""
    return {"file": answer.path, "broken": answer.broken, "settings": [row._asdict() for row in answer.rows]}


def recent_document(answer: RecentAnswer) -> dict[str, Any]:
    """The document of the charts opened or saved lately, the last one first."""
    return {"charts": [{"number": number, **chart_row(row)} for number, row in enumerate(answer.rows, start=1)]}
