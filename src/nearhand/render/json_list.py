"""The charts of a folder as a document."""

from __future__ import annotations

from nearhand.verbs.list_charts import ChartRow, ListAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def list_document(answer: ListAnswer) -> dict[str, Any]:
    """The document of a folder."""
    return {"folder": answer.folder, "charts": [chart_row(row) for row in answer.rows]}


def chart_row(row: ChartRow) -> dict[str, Any]:
    """The fields of one chart."""
    if row.tune is None:
        return {"path": row.path, "error": row.error.what if row.error else ""}
    return {"path": row.path, "title": row.tune.title, "key": str(row.tune.key), "bars": row.tune.bar_count}
