"""``explain``: what each chord is and does, or one chord by its number."""

from __future__ import annotations

from nearhand.harmony.along import along
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import ChordView, view_in
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.along import Along


class ExplainAnswer(NamedTuple):
    """All chords of a tune in one key; ``picked`` is the place (from 0) of the one that is asked about, or None.

    ``along`` is what happens from chord to chord, where the whole tune is explained; ``introduces`` when the tune is
    new to the player, and how its key was found is told.
    """

    tune: Tune
    key: Key
    chords: tuple[ChordView, ...]
    picked: int | None
    along: Along | None
    conventions: Conventions
    introduces: bool = True

    @property
    def numbered(self) -> tuple[tuple[int, ChordView], ...]:
        """The chords that are explained, with their numbers in the tune from 1."""
        rows = tuple(enumerate(self.chords, start=1))
        return rows if self.picked is None else (rows[self.picked],)


def explain(session: Session, arguments: Arguments) -> Outcome:
    """Explain the tune's chords in the shown key, and what happens along them; a number (from 1) picks one of them.

    Where chords are voiced, the top note decides whether a cadence is perfect.

    Raises InputError.
    """
    _refuse_several_numbers(session, arguments)
    words, picked = _picked(session, arguments.words)
    session = loaded_with_chords(session, arguments._replace(words=words))
    tune, key = session.stand
    view = view_in(tune.progression, key, session.wishes, False, tops_in(session, key))
    chords = tuple(chord for chord in view.chords if chord.chord is not None)
    if picked:
        place = picked_place(picked, len(chords), arguments.line)
        return Outcome(session, ExplainAnswer(tune, key, chords, place, None, session.conventions, bool(words)))
    found = along(tune.progression.in_key(key), None if view.voiced is None else view.voiced.pitches)
    return Outcome(session, ExplainAnswer(tune, key, chords, None, found, session.conventions, bool(words)))


def _refuse_several_numbers(session: Session, arguments: Arguments) -> None:
    """Some plain numbers, with a tune on the stand, are meant as its chords: one at a time."""
    words = arguments.words
    are_numbers = all(word.isascii() and word.isdigit() for word in words)
    if session.tune is not None and len(words) > 1 and are_numbers and not arguments.has("key"):
        line, start = arguments.line, arguments.start
        hint = f"write explain {words[0]}; numbers of a chart stand between bar lines, or take --key"
        raise InputError("explain takes one chord's number", line, start, wanted="a chord's number", hint=hint)


def _picked(session: Session, words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the number behind them (empty when all chords are meant)."""
    if ends_in_a_number(words) and (len(words) > 1 or session.tune is not None):
        return words[:-1], words[-1]
    return words, ""
