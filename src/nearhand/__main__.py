"""``python -m nearhand``: the same as the command ``nearhand``."""

from nearhand.cli import run

run()
