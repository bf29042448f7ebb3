"""``cadences``: the phrases of a tune with their cadences, the turns between the forms of minor, cross relations."""

from __future__ import annotations

from nearhand.harmony.along import along
from nearhand.notation.conventions import Conventions
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import view_in
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.along import Along


class CadencesAnswer(NamedTuple):
    """What happens along a tune in one key; ``introduces`` when the tune is new to the player."""

    tune: Tune
    key: Key
    along: Along
    conventions: Conventions
    introduces: bool = True


def cadences(session: Session, arguments: Arguments) -> Outcome:
    """Name what happens along the tune in the shown key.

    Where chords are voiced, the top note decides whether a cadence is perfect. Raises InputError.
    """
    is_new = bool(arguments.words)
    session = loaded_with_chords(session, arguments)
    tune, key = session.stand
    view = view_in(tune.progression, key, session.wishes, session.loops, tops_in(session, key))
    found = along(tune.progression.in_key(key), None if view.voiced is None else view.voiced.pitches)
    return Outcome(session, CadencesAnswer(tune, key, found, session.conventions, is_new))
