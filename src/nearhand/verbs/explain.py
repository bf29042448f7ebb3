"""``explain``: what each chord is and does, or one chord by its number."""

from __future__ import annotations

from nearhand.verbs.answers import ExplainAnswer, view_in
from nearhand.verbs.loading import loaded
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments
from nearhand.voicing.voice import NO_VOICING


def explain(session: Session, arguments: Arguments) -> Outcome:
    """Explain the tune's chords in the shown key; a number (from 1) picks one of them.

    Raises InputError.
    """
    words, picked = _picked(session, arguments.words)
    session = loaded(session, arguments._replace(words=words))
    tune, key = session.stand
    view = view_in(tune.progression, key, NO_VOICING, loop=False)
    numbered = tuple(enumerate((chord for chord in view.chords if chord.chord is not None), start=1))
    if picked:
        numbered = (numbered[picked_place(picked, len(numbered), arguments.line)],)
    return Outcome(session, ExplainAnswer(tune, key, numbered, session.conventions))


def _picked(session: Session, words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the number behind them (empty when all chords are meant)."""
    if ends_in_a_number(words) and (len(words) > 1 or session.tune is not None):
        return words[:-1], words[-1]
    return words, ""
