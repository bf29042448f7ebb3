"""The melody on top: each chord is voiced under a note of the melody, where its family has one to put there.

Which note: the first of those that sound while the chord lasts (the one struck with it, then the longest) that some
voicing of the chord has on top. Where: the melody keeps its octave, in the register of the family or, where more of it
is carried so, in one as wide as the melody asks for. Only where more is carried in another octave does it go there, all
of it: one line stays in one octave (common practice, no source). A melody whose octave is not known goes where the
register carries it.
"""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Layer
from nearhand.voicing.on_top import OnTop, Tops
from nearhand.voicing.search import Search, plain_search
from nearhand.voicing.task import Task

_OCTAVE = 12
_OCTAVES = (0, 1, -1, 2, -2)
"""Octaves that a melody may be moved by, the least first."""
_ROOM_BELOW = 2 * _OCTAVE
"""Semitones that the widest stack reaches below its top note (the families' tables: a ninth over root and tenth)."""
_LOWEST, _HIGHEST = 40, 100
"""Where upper notes may lie at the most: E2, and a register above that of any voice."""


class _Attempt(NamedTuple):
    search: Search
    on_top: OnTop
    score: int


def search_under(tops: Tops, task: Task) -> Search:
    """The search of a task whose top notes are the melody's, as far as its chords can carry them.

    Raises InputError for wishes that some chord cannot meet, melody aside.
    """
    best = _best(tops, task._replace(tops=None))
    first, *rest = best.search.strands
    layers = tuple(map(_under, first.layers, best.on_top.notes))
    first = first._replace(layers=layers, centre=task.register.centre)
    return best.search._replace(task=task, strands=(first, *rest), on_top=best.on_top)


def _best(tops: Tops, task: Task) -> _Attempt:
    """The attempt that carries most, of several the first in the order of ``_groups``, which goes from near to far.

    A chord that carries its first note counts two, one that carries another note one. A melody whose octave is known
    leaves it for two more at the least: for a note that would else be missing.
    """
    wanted = 2 * sum(bool(row) for row in tops.notes)
    least_gain = 2 if tops.has_octaves else 1
    best: _Attempt | None = None
    for group in _groups(tops, task):
        found = max(group, key=lambda attempt: attempt.score)
        if best is None or found.score >= best.score + least_gain:
            best = found
        if best.score == wanted:
            break
    assert best is not None
    return best


def _groups(tops: Tops, task: Task) -> Iterator[list[_Attempt]]:
    """Attempts, the likeliest first: octave by octave, the register that is asked for beside a wider one.

    Where the melody's octave is not known, every octave in the register that is asked for goes before a wider one.
    """
    own = plain_search(task)
    asked = ([_attempt(own, tops, octaves)] for octaves in _OCTAVES)
    wider = (_wider_attempts(tops, task, octaves) for octaves in _OCTAVES)
    if tops.has_octaves:
        yield from (own_attempt + more for own_attempt, more in zip(asked, wider, strict=True))
    else:
        yield from asked
        yield from (more for more in wider if more)


def _wider_attempts(tops: Tops, task: Task, octaves: int) -> list[_Attempt]:
    """The attempt in a register as wide as the melody in an octave asks for, where there is one."""
    register = _wider(tops, task, octaves)
    if register is None:
        return []
    try:
        return [_attempt(plain_search(_in_register(task, *register)), tops, octaves, register)]
    except InputError:  # as of pins that stand in the way
        return []


def _attempt(search: Search, tops: Tops, octaves: int, register: tuple[int, int] | None = None) -> _Attempt:
    found: list[int | None] = []
    score = 0
    for layer, row in zip(search.strands[0].layers, tops.notes, strict=True):
        heights = {candidate.upper[-1] for candidate in layer if candidate.upper}
        moved = [note + _OCTAVE * octaves for note in row]
        note = next((note for note in moved if note in heights), None)
        score += 0 if note is None else 2 if note == moved[0] else 1
        found.append(note)
    return _Attempt(search, OnTop(tuple(found), octaves, register), score)


def _wider(tops: Tops, task: Task, octaves: int) -> tuple[int, int] | None:
    """The register that the melody in an octave asks for; None where the one there is wide enough, or was asked for."""
    notes = [note + _OCTAVE * octaves for row in tops.notes for note in row]
    if not notes or task.wishes.low is not None or task.wishes.high is not None:
        return None
    own = task.register
    low = max(_LOWEST, min(own.low, min(notes) - _ROOM_BELOW))
    high = min(_HIGHEST, max(own.high, *notes))
    return None if (low, high) == own[:2] else (low, high)


def _in_register(task: Task, low: int, high: int) -> Task:
    """The task in another register, given where it sounds."""
    shift = task.register_shift
    return task._replace(wishes=task.wishes._replace(low=low - shift, high=high - shift))


def _under(layer: Layer, note: int | None) -> Layer:
    """The candidates that have a note on top; all of them where none is wanted."""
    return layer if note is None else tuple(each for each in layer if each.upper and each.upper[-1] == note)
