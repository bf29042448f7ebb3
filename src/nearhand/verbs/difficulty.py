"""``difficulty``: what is hard about a tune in each key, and the few keys that teach most."""

from __future__ import annotations

from nearhand.harmony.moving import all_keys
from nearhand.melody.difficulty import Difficulty, difficulty_of
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.verbs.care import care_in
from nearhand.verbs.choices import read_count
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import read_keys
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

CHOOSE = 3
MOST = 12


class DifficultyAnswer(NamedTuple):
    """A tune, what is hard about its keys, and the usual caution where there are twelve."""

    tune: Tune
    difficulty: Difficulty
    conventions: Conventions
    advice: str = ""
    introduces: bool = True


def difficulty(session: Session, arguments: Arguments) -> Outcome:
    """Weigh the keys of ``--to`` (all twelve) against those of ``--known`` (the tune's own), and choose ``--choose``.

    Raises InputError.
    """
    choose = _choose(arguments)
    is_new = bool(arguments.words)
    session = loaded(session, arguments)
    tune, _ = session.stand
    keys = _keys(session, arguments, "to") or all_keys(tune.progression, melody=tune.melody)
    known = _keys(session, arguments, "known") or (tune.key,)
    found = difficulty_of(tune.progression, tune.melody, keys, known, choose)
    return Outcome(session, DifficultyAnswer(tune, found, session.conventions, care_in(keys), is_new))


def _keys(session: Session, arguments: Arguments, name: str) -> tuple[Key, ...]:
    """The keys of an option, each name once; none where it is not given."""
    text = arguments.option(name)
    if text is None:
        return ()
    try:
        return tuple(dict.fromkeys(read_keys(text, session)))
    except InputError as error:
        raise arguments.placed(error, name) from None


def _choose(arguments: Arguments) -> int:
    text = arguments.option("choose")
    if text is None:
        return CHOOSE
    if (count := read_count(text, MOST)) is not None:
        return count
    what = f"{text[:20]!r} is no number of keys to choose" if text else "a number is missing"
    hint = f"write a number from 1 to {MOST}"
    raise arguments.placed(InputError(what, text, wanted="a number", hint=hint), "choose")
