"""``completion``: the script by which a system's shell completes the words of a command line."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import read_choice
from nearhand.verbs.options import SHELLS
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments


class CompletionAnswer(NamedTuple):
    """The script for one of SHELLS."""

    shell: str


def completion(session: Session, arguments: Arguments) -> Outcome:
    """Answer the script for a system's shell.

    Raises InputError when none is named, or one for which there is no script.
    """
    try:
        shell = read_choice(arguments.text, SHELLS, "a shell that is known here" if arguments.words else "a shell")
    except InputError as error:
        raise error.within(arguments.line, arguments.start) from None
    return Outcome(session, CompletionAnswer(shell))
