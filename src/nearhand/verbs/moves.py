"""Moving the shown key: ``to`` a key, ``next`` and ``back`` along falling fifths, ``home``."""

from __future__ import annotations

from nearhand.harmony.moving import neighbour
from nearhand.notation.errors import InputError
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import read_keys, shown, views
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
    session = session.on_best_path()
    if len(keys) < 12:
        session = session._replace(shown_key=keys[-1])
    return Outcome(session, views(session, keys, introduces=False))


def next_key(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth lower on the circle."""
    return _step(session, arguments, falling=True)


def back(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth higher on the circle."""
    return _step(session, arguments, falling=False)


def _step(session: Session, arguments: Arguments, falling: bool) -> Outcome:
    session = loaded(session, arguments._replace(words=()))
    tune, key = session.stand
    reached = neighbour(tune.progression, key, falling)
    at_home = reached.tonic.semitones == tune.key.tonic.semitones
    return shown(session.on_best_path()._replace(shown_key=tune.key if at_home else reached))


def home(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in its own key again."""
    session = loaded(session, arguments._replace(words=()))
    return shown(session.on_best_path()._replace(shown_key=session.stand[0].key))
