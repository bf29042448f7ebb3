"""Phrases, and the cadences at their ends or within them, at their bars.

At the end of a phrase every kind of cadence counts. Within a phrase only a dominant does that is prepared by a
predominant chord or a cadential six-four. The kinds and their sources are in ``harmony.cadence_kinds``.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from nearhand.harmony.analysis import analyse
from nearhand.harmony.cadence_kinds import Passage, at_end, within
from nearhand.theory.progression import Bar, Progression
from nearhand.theory.record import NamedTuple

_BARS_OF_A_PHRASE = 4


class Phrase(NamedTuple):
    """The bars of a phrase, first and last, counted from 1."""

    first_bar: int
    last_bar: int


class Cadence(NamedTuple):
    """A cadence: its kind, the bar (from 1) and the chord (from 0, rests left out) in which it reaches its goal.

    ``before``: the chord from which it goes there. ``reason``: what decided between kinds, in plain words.
    """

    kind: str
    bar: int
    goal: int
    before: int
    reason: str


def phrases(progression: Progression) -> tuple[Phrase, ...]:
    """The phrases of a progression: together they are all its bars.

    A phrase ends where a section or a repeat ends. A section of six bars or more is cut after every fourth bar; a
    single bar that is left over belongs to the phrase before it (common practice, no source).

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> phrases(resolve(read_chart("| C | F | G | C | Am | F | C | G | C ||"), parse_key("C")))
    (Phrase(first_bar=1, last_bar=4), Phrase(first_bar=5, last_bar=9))
    """
    bars = progression.bars
    starts = [number for number in range(len(bars)) if number == 0 or _is_border(bars[number - 1], bars[number])]
    found: list[Phrase] = []
    for start, end in pairwise([*starts, len(bars)]):
        cuts = [start, *range(start + _BARS_OF_A_PHRASE, end - 1, _BARS_OF_A_PHRASE), end]
        found += [Phrase(first + 1, last) for first, last in pairwise(cuts)]
    return tuple(found)


def _is_border(before: Bar, bar: Bar) -> bool:
    return before.ends_section or before.closes_repeat or bar.opens_repeat or bool(bar.section)


def cadences(progression: Progression, top_notes: Sequence[int] | None = None) -> tuple[Cadence, ...]:
    """The cadences of a progression in order, each goal once.

    ``top_notes`` are the MIDI numbers of the highest sounding note of every chord, rests left out, in the progression's
    own key: with them an authentic cadence in root position is perfect or imperfect, without them plainly authentic.
    The goal is the first of several tonic chords over one bass; a tonic as dominant seventh (blues) is a goal at the
    very end only. Raises ValueError unless there is one top note a chord.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| C | Am | F | G | Dm | G | C | % |"), parse_key("C"))
    >>> [(cadence.kind, cadence.bar) for cadence in cadences(tune)]
    [('half', 4), ('authentic', 7)]
    """
    chords = progression.relative_chords
    if top_notes is not None and len(top_notes) != len(chords):
        raise ValueError(f"one top note a chord is needed ({len(chords)} chords, {len(top_notes)} notes)")
    moments = [moment for moment in progression.moments if moment.slot.chord is not None]
    bars = [moment.bar for moment in moments]
    tonic = progression.key.tonic.semitones
    tonic_on_top = None if top_notes is None else tuple((note - tonic) % 12 == 0 for note in top_notes)
    opens_bar = tuple(moment.is_first for moment in moments)
    phrase = Passage(analyse(chords, progression.key.mode), opens_bar, tonic_on_top, 0, 0)
    found: list[Cadence] = []
    for _, last_bar in phrases(progression):
        end = phrase.end
        while end < len(bars) and bars[end] <= last_bar:
            end += 1
        phrase = phrase._replace(start=phrase.end, end=end)
        found += _of_phrase(phrase, bars)
    return tuple(found)


def _of_phrase(phrase: Passage, bars: Sequence[int]) -> list[Cadence]:
    """The cadences within a phrase, then the one at its end, whose goal is among the last chords over one root."""
    last = phrase.end
    while last > phrase.start and _is_held(phrase, last - 1):
        last -= 1
    found = [(goal, within(phrase, goal - 1, goal)) for goal in range(phrase.start + 1, last)]
    if last > phrase.start:
        goals = {phrase.chord(goal): goal for goal in reversed(range(last, phrase.end))}  # the first of each chord
        closing = ((goal, at_end(phrase, last - 1, goal)) for goal in sorted(goals.values()))
        found += [next(((goal, named) for goal, named in closing if named is not None), (last, None))]
    return [
        Cadence(named.kind, bars[goal], goal, named.before, named.reason) for goal, named in found if named is not None
    ]


def _is_held(phrase: Passage, index: int) -> bool:
    """Whether a chord has the root and the bass of the phrase's last chord."""
    chord, closing = phrase.chord(index), phrase.chord(phrase.end - 1)
    return (chord.root, chord.bass) == (closing.root, closing.bass)
