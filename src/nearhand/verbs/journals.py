"""Journals: the lines that changed a session, one file a running shell, locked for as long as it lives.

A journal that nobody holds is left over from a shell that ended early. Its first text is the folder the shell ran in.
"""

from __future__ import annotations

import os
import sys

from nearhand.theory.record import NamedTuple
from nearhand.verbs.folders import data_folder
from nearhand.verbs.kept_lines import read_lines

FOLDER_NAME, SUFFIX = "journals", ".lines"
LAST = "last session"
"""The journal of the last shell that was left without saving; it takes the place of the one before."""
_LOCKED_BYTE = 1 << 40
"""Where a lock lies on systems that lock bytes rather than files: behind all that is written."""


class Leftover(NamedTuple):
    """A journal of a shell that is no more: its file, the folder the shell ran in, its lines."""

    path: str
    folder: str
    lines: tuple[str, ...]


def journals_folder() -> str:
    """The folder of the journals."""
    return os.path.join(data_folder(), FOLDER_NAME)


def working_folder() -> str:
    """The folder that is worked in."""
    try:
        return os.getcwd()
    except OSError:  # it was taken away
        return os.curdir


def hold(descriptor: int) -> bool:
    """Lock an open file until it is closed or its process ends; False where another one holds it."""
    try:
        if sys.platform == "win32":
            import msvcrt

            os.lseek(descriptor, _LOCKED_BYTE, os.SEEK_SET)
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        else:
            import fcntl

            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except OSError:
        return False
    return True


def leftovers() -> tuple[Leftover, ...]:
    """The journals that nobody holds and that have lines, the newest first; none where they cannot be read."""
    folder = journals_folder()
    try:
        names = [name for name in os.listdir(folder) if name.endswith(SUFFIX)]
        paths = sorted((os.path.join(folder, name) for name in names), key=os.path.getmtime, reverse=True)
    except (OSError, ValueError):
        return ()
    found = []
    for path in paths:
        texts = [] if _is_held(path) else read_lines(path)
        if len(texts) > 1:
            found.append(Leftover(path, texts[0], tuple(texts[1:])))
    return tuple(found)


def _is_held(path: str) -> bool:
    try:
        descriptor = os.open(path, os.O_RDWR)
    except OSError:
        return True
    try:
        return not hold(descriptor)
    finally:
        os.close(descriptor)


def set_aside(path: str) -> bool:
    """Keep a journal as that of the last session; False where it cannot be kept."""
    try:
        os.replace(path, os.path.join(journals_folder(), LAST))
    except OSError:
        return False
    return True


def last_session() -> tuple[Leftover, ...]:
    """The session that was left last without saving; none where there is none, or it cannot be read."""
    path = os.path.join(journals_folder(), LAST)
    try:
        texts = read_lines(path)
    except (OSError, ValueError):
        return ()
    return (Leftover(path, texts[0], tuple(texts[1:])),) if len(texts) > 1 else ()


def discard(path: str) -> None:
    """Take a journal away, if it is there."""
    try:
        os.unlink(path)
    except OSError:
        return
