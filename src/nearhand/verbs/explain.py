"""``explain``: what each chord is and does, or one chord by its number."""

from __future__ import annotations

from nearhand.harmony.along import along
from nearhand.verbs.answers import ExplainAnswer, view_in
from nearhand.verbs.loading import loaded
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments


def explain(session: Session, arguments: Arguments) -> Outcome:
    """Explain the tune's chords in the shown key, and what happens along them; a number (from 1) picks one of them.

    Where chords are voiced, the top note decides whether a cadence is perfect.

    Raises InputError.
    """
    words, picked = _picked(session, arguments.words)
    session = loaded(session, arguments._replace(words=words))
    tune, key = session.stand
    view = view_in(tune.progression, key, session.voicing, loop=False)
    chords = tuple(chord for chord in view.chords if chord.chord is not None)
    if picked:
        place = picked_place(picked, len(chords), arguments.line)
        return Outcome(session, ExplainAnswer(tune, key, chords, place, None, session.conventions, bool(words)))
    found = along(tune.progression.in_key(key), None if view.voiced is None else view.voiced.pitches)
    return Outcome(session, ExplainAnswer(tune, key, chords, None, found, session.conventions, bool(words)))


def _picked(session: Session, words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the number behind them (empty when all chords are meant)."""
    if ends_in_a_number(words) and (len(words) > 1 or session.tune is not None):
        return words[:-1], words[-1]
    return words, ""
