"""``why``: why a chord has this voicing, and what the next best ones would cost."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.melody_on_top import tops_in
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments
from nearhand.voicing.account import costs_of, parts_of, ties_of, total_of
from nearhand.voicing.alternatives import alternatives
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.search import Search
from nearhand.voicing.voice import Voicing, voice_progression, voiced_path
from nearhand.voicing.wishes import NO_VOICING


class Choice(NamedTuple):
    """A voicing of a chord on the best path that takes it.

    ``cost`` is that of the whole path, ``parts`` the same by name, ``ties`` what decides between equal costs: the
    bass's semitones, then half semitones away from the middle of the register. ``arriving`` and ``leaving`` are the
    semitones that the upper voices move from the chord before and to the chord after, None at the ends.
    """

    voicing: Voicing
    cost: int
    parts: tuple[tuple[str, int], ...]
    ties: tuple[int, int]
    arriving: int | None
    leaving: int | None


class WhyAnswer(NamedTuple):
    """Why chord ``number`` of a tune is voiced so; ``others`` are the next best choices, best first."""

    tune: Tune
    key: Key
    number: int
    chord: Chord
    taken: Choice
    others: tuple[Choice, ...]
    conventions: Conventions


def decided_by(taken: Choice, other: Choice) -> str:
    """What speaks for a voicing against another: cost, bass, middle or order."""
    if taken.cost != other.cost:
        return "cost"
    if taken.ties[0] != other.ties[0]:
        return "bass"
    return "middle" if taken.ties[1] != other.ties[1] else "order"


def why(session: Session, arguments: Arguments) -> Outcome:
    """Tell what the next best voicings of the chord of a number would cost.

    Raises InputError, also when no number is given.
    """
    words, line = arguments.words, arguments.line
    if not words:
        _ = session.stand  # refuses when there is no tune
    if not ends_in_a_number(words):
        raise InputError(
            "why needs a chord's number",
            line,
            len(line),
            hint="write why 2 for its voicing, explain 2 for what the chord does",
        )
    session = loaded_with_chords(session, arguments._replace(words=words[:-1]))
    tune, key = session.stand
    if session.voicing == NO_VOICING:
        raise InputError("nothing is voiced", hint="write voice close first, or --voicing close")
    place = picked_place(words[-1], len(tune.progression.relative_chords), line)
    moved = tune.progression.in_key(key)
    voiced = voice_progression(moved, session.wishes, session.loops, tune.key, tops_in(session, key))
    path = tuple(voicing.candidate for voicing in voiced.voicings)
    others = alternatives(voiced.search, place, path[place])
    chord = moved.relative_chords[place].in_key(key)
    taken = _choice(voiced.search, path, place)
    choices = tuple(_choice(voiced.search, other, place) for other in others)
    return Outcome(session, WhyAnswer(tune, key, place + 1, chord, taken, choices, session.conventions))


def _choice(search: Search, path: tuple[Candidate, ...], place: int) -> Choice:
    voicings = voiced_path(search, path).voicings
    count, loops = len(path), search.task.loop
    arriving = voicings[place].motion
    after = voicings[(place + 1) % count].motion if loops or place + 1 < count else None
    return Choice(
        voicings[place],
        total_of(search, path),
        parts_of(costs_of(search, path)),
        ties_of(search, path),
        None if arriving is None else arriving.size,
        None if after is None else after.size,
    )
