"""What a shell takes over when it starts: the settings that are kept, and a session that ended early."""

from __future__ import annotations

import os

from nearhand.notation.errors import InputError, printable
from nearhand.shell.journal import offer
from nearhand.verbs.folders import settings_path
from nearhand.verbs.session import Session


def started(session: Session) -> tuple[Session, tuple[str, ...]]:
    """The session as the settings file has it, and sentences: on a file that is broken, and on what may come back.

    Signs stay out where the session is without them, as its terminal cannot show them.
    """
    path = settings_path()
    if not os.path.lexists(path):  # the reader of the file is not worth its import then
        return session, offer()
    from nearhand.verbs.settings_file import broken_in_words, with_settings

    try:
        new = with_settings(session, path)
    except InputError as error:
        return session, (printable(broken_in_words(error)), *offer())
    if session.conventions.plain:
        new = new._replace(conventions=new.conventions._replace(plain=True))
    return new, offer()
