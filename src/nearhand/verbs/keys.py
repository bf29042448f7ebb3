"""``keys``: which keys a progression may be in, and why. ``key``: name the one it is in."""

from __future__ import annotations

from nearhand.harmony.key_finding import keys_of
from nearhand.notation.keys import parse_key, write_key
from nearhand.verbs.answers import KeysAnswer, NoteAnswer
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments

KEYS_SHOWN = 5


def keys(session: Session, arguments: Arguments) -> Outcome:
    """Rank the keys that the tune's chords may be in.

    Raises InputError.
    """
    session = loaded(session, arguments)
    fits = keys_of(session.stand[0].progression)
    return Outcome(session, KeysAnswer(fits[:KEYS_SHOWN], session.conventions))


def key(session: Session, arguments: Arguments) -> Outcome:
    """Name the key the chords are in: they stay as they are, their numerals change.

    Raises InputError.
    """
    if session.tune is None and arguments.words:
        named = parse_key(arguments.text)
        note = f"Numerals and numbers are now read in {write_key(named, session.conventions.plain)}."
        return Outcome(session._replace(shown_key=named), NoteAnswer((note,)))
    session = loaded(session, arguments._replace(words=()))
    if not arguments.words:
        return Outcome(session, keys(session, arguments).answer)
    return shown(session.with_tune(session.stand[0].read_in(parse_key(arguments.text))))
