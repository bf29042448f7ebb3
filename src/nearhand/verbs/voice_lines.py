"""``lines``: each voice by itself, so that it can be sung or played alone."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import View, view_in
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments
from nearhand.voicing.lines import Lines, lines_of


class LinesAnswer(NamedTuple):
    """The voices of a tune in one key."""

    tune: Tune
    view: View
    lines: Lines
    conventions: Conventions
    introduces: bool = True


def lines(session: Session, arguments: Arguments) -> Outcome:
    """Show the voices of the tune in the shown key as lines.

    Raises InputError.
    """
    is_new = bool(arguments.words)
    session = loaded_with_chords(session, arguments)
    tune, key = session.stand
    view = view_in(tune.progression, key, session.wishes, session.loops, tops_in(session, key))
    if view.voiced is None:
        raise InputError("nothing is voiced, so there are no lines", hint="write voice close first")
    return Outcome(session, LinesAnswer(tune, view, lines_of(view.voiced), session.conventions, is_new))
