"""Completion scripts as a page and as a document."""

from __future__ import annotations

from importlib import import_module

from nearhand.render.page import Line, Page, line
from nearhand.verbs.completion import CompletionAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any

_SCRIPTS = {
    "bash": "completion_scripts.bash_script",
    "zsh": "completion_scripts.zsh_script",
    "fish": "completion_fish.fish_script",
}
"""Shell to ``module.function`` of this room."""


def draw_completion(answer: CompletionAnswer, page: Page) -> list[Line]:
    """The lines of a script, never broken: a shell reads them."""
    return [line(text) for text in _script(answer).splitlines()]


def completion_document(answer: CompletionAnswer) -> dict[str, Any]:
    """The document of a script."""
    return {"shell": answer.shell, "script": _script(answer)}


def _script(answer: CompletionAnswer) -> str:
    module, _, function = _SCRIPTS[answer.shell].partition(".")
    script: str = getattr(import_module(f"nearhand.render.{module}"), function)()
    return script
