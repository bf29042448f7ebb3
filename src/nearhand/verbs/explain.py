"""``explain``: what each chord is and does, or one chord by its number."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.verbs.answers import ExplainAnswer, view_in
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments
from nearhand.voicing.voice import NO_VOICING

_MOST_DIGITS = 6


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
        if len(picked) > _MOST_DIGITS or not 1 <= int(picked) <= len(numbered):
            raise _no_such_chord(picked, len(numbered), arguments.line)
        numbered = (numbered[int(picked) - 1],)
    return Outcome(session, ExplainAnswer(tune, key, numbered, session.conventions))


def _picked(session: Session, words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the number behind them (empty when all chords are meant)."""
    if words and words[-1].isascii() and words[-1].isdigit() and (len(words) > 1 or session.tune is not None):
        return words[:-1], words[-1]
    return words, ""


def _no_such_chord(picked: str, chords: int, line: str) -> InputError:
    start = max(line.rfind(picked), 0)
    what, hint = f"there is no chord {picked[:12]}", f"the chords are numbered 1 to {chords}"
    return InputError(what, line, start, start + len(picked), wanted="a chord's number", hint=hint)
