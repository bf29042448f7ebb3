"""``borrow``: the chords that the other modes on a key's tonic lend it."""

from __future__ import annotations

from nearhand.harmony.borrowing import borrowed_palette
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import with_conventions
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.borrowing import LendingMode


class BorrowAnswer(NamedTuple):
    """What the other modes on a key's tonic lend it, likeliest mode first."""

    key: Key
    modes: tuple[LendingMode, ...]
    conventions: Conventions


def borrow(session: Session, arguments: Arguments) -> Outcome:
    """Give the palette of a key's borrowed chords, or that of the shown key.

    Raises InputError when the key cannot be read, or when none is given and none is shown.
    """
    session = with_conventions(session, arguments)
    key = _key(session, arguments)
    return Outcome(session, BorrowAnswer(key, borrowed_palette(key.mode), session.conventions))


def _key(session: Session, arguments: Arguments) -> Key:
    if arguments.words:
        return parse_key(arguments.text)
    if session.shown_key is None:
        line = arguments.line
        raise InputError(
            "borrow needs a key", line, len(line), wanted="a key", hint="write for example  borrow C major"
        )
    return session.shown_key
