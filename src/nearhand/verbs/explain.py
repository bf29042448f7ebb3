"""``explain``: what each chord is and does, or one chord by its number."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.verbs.answers import ExplainAnswer, view_in
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments

_MOST_DIGITS = 6


def explain(session: Session, arguments: Arguments) -> Outcome:
    """Explain the tune's chords in the shown key; a number (from 1) picks one of them.

    Raises InputError.
    """
    words = arguments.words
    picked = (
        words[-1]
        if words and words[-1].isascii() and words[-1].isdigit() and (session.tune or len(words) > 1)
        else None
    )
    if picked is not None and len(words) == 1 and session.tune is None:
        picked = None
    session = loaded(session, arguments._replace(words=words[: len(words) - (picked is not None)]))
    assert session.tune is not None and session.shown_key is not None
    view = view_in(session.tune.progression, session.shown_key, "none", loop=False)
    numbered = tuple(enumerate((chord for chord in view.chords if chord.chord is not None), start=1))
    if picked is not None:
        if len(picked) > _MOST_DIGITS or not 1 <= int(picked) <= len(numbered):
            start = arguments.line.rfind(picked)
            raise InputError(
                f"there is no chord {picked[:12]}",
                arguments.line,
                max(start, 0),
                max(start, 0) + len(picked),
                wanted="a chord's number",
                hint=f"the chords are numbered 1 to {len(numbered)}",
            )
        numbered = (numbered[int(picked) - 1],)
    return Outcome(session, ExplainAnswer(session.tune, view.key, numbered, session.conventions))
