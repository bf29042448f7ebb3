"""What a shell keeps safe while it runs: a journal of the lines that changed the session, and the charts of late."""

from __future__ import annotations

import os
import time

from nearhand.notation.errors import printable
from nearhand.verbs.journals import SUFFIX, discard, hold, journals_folder, leftovers, set_aside, working_folder
from nearhand.verbs.kept_lines import written_lines

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.session import Outcome, Session

OFFER = "The last session ended early; recover brings it back."
NOT_SAVED = "This was not saved; recover brings it back next time."


class Journal:
    """The journal of one running shell. Its file is made at the first line that changes something."""

    def __init__(self) -> None:
        self._descriptor: int | None = None
        self._path = ""
        self._waiting: list[str] = []
        self._length = 0
        self._has_told = False
        self._is_saved = True

    def note(self, before: Session, outcome: Outcome, line: str) -> tuple[str, ...]:
        """Keep what a line changed; sentences to show, where it cannot be kept for the first time."""
        if outcome.chart:
            from nearhand.verbs.recent import remember

            remember(outcome.chart)
            self._is_saved = True
        if outcome.session is before and not outcome.lines:
            return ()
        self._is_saved = bool(outcome.chart)
        try:
            self._add(outcome.lines or (line,))
        except (OSError, ValueError) as error:
            if self._has_told:
                return ()
            from nearhand.verbs.files import reason_of

            self._has_told = True
            return (f"What you do now is not kept safe from a crash: {reason_of(error)} ({printable(self._path)}).",)
        if outcome.settles:
            discard(outcome.settles)
        return ()

    def close(self) -> bool:
        """Take the journal away, for the shell is left; what was not saved is kept for ``recover``. Whether it is."""
        if self._descriptor is None:
            return False
        os.close(self._descriptor)
        self._descriptor = None
        if self._is_saved:
            discard(self._path)
            return False
        return set_aside(self._path)

    def _add(self, lines: tuple[str, ...]) -> None:
        """Write lines through to the disk. What fails waits for the next time, and no half of it stays in the file."""
        self._waiting += lines
        if self._descriptor is None:
            self._open()
        assert self._descriptor is not None  # just opened
        data = written_lines(self._waiting).encode("ascii")
        try:
            while data:
                data = data[os.write(self._descriptor, data) :]
            os.fsync(self._descriptor)
        except OSError:
            os.ftruncate(self._descriptor, self._length)
            raise
        self._length = os.fstat(self._descriptor).st_size
        self._waiting = []

    def _open(self) -> None:
        folder = journals_folder()
        self._path = os.path.join(folder, f"{os.getpid()}-{time.time_ns()}{SUFFIX}")
        os.makedirs(folder, mode=0o700, exist_ok=True)
        descriptor = os.open(self._path, os.O_CREAT | os.O_EXCL | os.O_RDWR | os.O_APPEND, 0o600)
        hold(descriptor)
        self._descriptor = descriptor
        self._waiting.insert(0, working_folder())


def offer() -> tuple[str, ...]:
    """A sentence where a session is left over that ended early."""
    return (OFFER,) if leftovers() else ()
