"""Words for the tests of the program as a process: its environment, and what it prints."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import NamedTuple

SOURCE = Path(__file__).parents[2] / "src"
KEPT = ("PATH", "SYSTEMROOT", "LD_LIBRARY_PATH", "VIRTUAL_ENV")


class Run(NamedTuple):
    """What a finished process left: its exit status, its two streams."""

    status: int
    out: str
    err: str


class Program(NamedTuple):
    """``python -m nearhand`` in a folder; nothing of the real environment but where programs are found."""

    folder: Path

    @property
    def command(self) -> list[str]:
        """The words before those of the command line."""
        return [sys.executable, "-m", "nearhand"]

    def environment(self, **changes: str) -> dict[str, str]:
        """An environment whose home is the folder."""
        home = str(self.folder)
        return {
            **{name: os.environ[name] for name in KEPT if name in os.environ},
            "PYTHONPATH": str(SOURCE),
            "PYTHONUTF8": "1",
            "PYTHONWARNINGS": "error",
            "HOME": home,
            "XDG_DATA_HOME": home,
            **changes,
        }

    def bytes_of(self, *words: str | bytes, given: bytes = b"", **changes: str) -> tuple[int, bytes, bytes]:
        """Run it; exit status, standard output and standard error as bytes."""
        done = subprocess.run(
            [*self.command, *words],
            input=given,
            capture_output=True,
            cwd=self.folder,
            env=self.environment(**changes),
            timeout=60,
            check=False,
        )
        return done.returncode, done.stdout, done.stderr

    def run(self, *words: str | bytes, given: str | bytes = b"", **changes: str) -> Run:
        """Run it; the streams as text."""
        data = given.encode() if isinstance(given, str) else given
        status, out, err = self.bytes_of(*words, given=data, **changes)
        return Run(status, out.decode(), err.decode())
