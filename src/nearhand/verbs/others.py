"""``others``: the best paths in order, and stepping through them."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.pitch import Pitch
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import read_count
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.picking import ends_in_a_number
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments
from nearhand.voicing.others import MOST_PATHS, other_paths
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.voice import VoicedProgression, Voicing, voiced_path
from nearhand.voicing.wishes import NO_VOICING

LISTED = 5
STEPS = {"next": 1, "back": -1}


class Path(NamedTuple):
    """One path: its number from 1, its cost, its voicings, and the chords (from 0) that differ from the best path."""

    number: int
    cost: int
    voiced: VoicedProgression
    differs: tuple[int, ...]


class OthersAnswer(NamedTuple):
    """The best paths of a tune in one key, best first; ``number`` is that of the path the player is on."""

    tune: Tune
    key: Key
    paths: tuple[Path, ...]
    number: int
    conventions: Conventions
    introduces: bool = True


def others(session: Session, arguments: Arguments) -> Outcome:
    """List the best paths of the tune in the shown key; a number, ``next`` or ``back`` takes one of them.

    Raises InputError.
    """
    words, choice = _chosen(arguments.words)
    is_new = bool(words)
    session = loaded_with_chords(session, arguments._replace(words=words))
    tune, key = session.stand
    if choice:
        outcome = _take(session, choice, arguments.line, is_new)
        return outcome._replace(keeps=not (is_new or arguments.options))
    if session.voicing == NO_VOICING:
        raise InputError("nothing is voiced, so there are no paths", hint="write voice close first, or --voicing close")
    paths = best_paths(session, _count(arguments))
    return Outcome(session, OthersAnswer(tune, key, paths, session.wishes.path, session.conventions, is_new))


def best_paths(session: Session, count: int) -> tuple[Path, ...]:
    """The best paths of a session's tune in its shown key.

    Raises InputError.
    """
    tune, key = session.stand
    wishes = session.wishes._replace(path=1)
    search = search_for(Task(tune.progression.in_key(key), wishes, session.loops, tune.key, tops=tops_in(session, key)))
    found = [(cost, voiced_path(search, path)) for cost, path in other_paths(search, count)]
    best = [_hands(voicing) for voicing in found[0][1].voicings] if found else []
    return tuple(
        Path(
            number,
            cost,
            voiced,
            tuple(place for place, voicing in enumerate(voiced.voicings) if _hands(voicing) != best[place]),
        )
        for number, (cost, voiced) in enumerate(found, start=1)
    )


def _hands(voicing: Voicing) -> tuple[tuple[Pitch, ...], tuple[Pitch, ...]]:
    return voicing.left, voicing.right


def _chosen(words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the choice of a path behind them (empty when all are to be listed)."""
    is_choice = bool(words) and (words[-1] in STEPS or ends_in_a_number(words))
    return (words[:-1], words[-1]) if is_choice else (words, "")


def _take(session: Session, word: str, line: str, is_new: bool) -> Outcome:
    """Take the path of a number, or the next one or the one before."""
    number = session.wishes.path + STEPS[word] if word in STEPS else int(word[:6])
    if not 1 <= number <= MOST_PATHS:
        what = "this is the best path already" if number < 1 else f"paths are counted up to {MOST_PATHS}"
        raise InputError(what, line, max(0, line.rfind(word)), hint="others lists the paths")
    return shown(session._replace(wishes=session.wishes._replace(path=number)), is_new)


def _count(arguments: Arguments) -> int:
    text = arguments.option("count")
    if text is None:
        return LISTED
    if (count := read_count(text, MOST_PATHS)) is not None:
        return count
    error = InputError(f"{text[:20]!r} is no number of paths", text, hint=f"write a number from 1 to {MOST_PATHS}")
    raise arguments.placed(error, "count")
