"""Moving the shown key: ``to`` a key, ``next`` and ``back`` along falling fifths, ``home``."""

from __future__ import annotations

from nearhand.harmony.moving import neighbour
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import read_keys, views
from nearhand.verbs.verb import Arguments


def to(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in another key, or in several; the last one stays the shown key (``all`` leaves it).

    Raises InputError.
    """
    session = loaded(session, arguments._replace(words=()))
    if not arguments.words:
        end = len(arguments.line)
        raise InputError(
            "to needs a key", arguments.line, end, wanted="a key", hint="write for example  to G minor  or  to all"
        )
    keys = read_keys(arguments.text, session)
    if len(keys) < 12:
        session = session._replace(shown_key=keys[-1])
    return Outcome(session, views(session, keys))


def next_key(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth lower on the circle."""
    return _step(session, arguments, falling=True)


def back(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth higher on the circle."""
    return _step(session, arguments, falling=False)


def _step(session: Session, arguments: Arguments, falling: bool) -> Outcome:
    session = loaded(session, arguments._replace(words=()))
    assert session.tune is not None and session.shown_key is not None
    own = session.tune.key
    reached = neighbour(session.tune.progression, session.shown_key, falling)
    return _shown(session, own if reached.tonic.semitones == own.tonic.semitones else reached)


def home(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in its own key again."""
    session = loaded(session, arguments._replace(words=()))
    assert session.tune is not None
    return _shown(session, session.tune.key)


def _shown(session: Session, key: Key) -> Outcome:
    session = session._replace(shown_key=key)
    return Outcome(session, views(session, (key,)))
