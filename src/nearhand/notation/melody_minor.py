"""The bare sixths and sevenths of a melody in minor, read in one of the three forms of the scale.

``natural`` leaves them low. ``harmonic`` raises the seventh. ``melodic`` raises both where the melody rises and leaves
both low where it falls: sixths and sevenths that follow one another are a run, and the note behind a run decides (a
seventh rises to a tonic in whichever octave); at the end of the melody the last direction does. A degree with a sign of
its own, a syllable and a name of a note mean what they say in every form. Forms: as in ``theory.mode``. That a whole
run has one form is ours, after the scale as it is taught.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.conventions import HARMONIC, MELODIC
from nearhand.notation.degrees import RAISED, degree_number
from nearhand.notation.melody_bars import Read, each_note
from nearhand.notation.melody_degrees import read_degree
from nearhand.notation.melody_signs import Sign
from nearhand.theory.interval import Interval
from nearhand.theory.record import NamedTuple

_SHARP = Interval(7, -4)
"""What a sharp adds: an augmented unison."""


class Tone(NamedTuple):
    """A note or a grace note above the tonic of a minor key; ``is_bare`` for a sixth or seventh without sign."""

    interval: Interval
    is_bare: bool = False

    @property
    def has_two_forms(self) -> bool:
        """Whether it is a sixth or a seventh, whatever its sign."""
        return degree_number(self.interval.fifths) in RAISED


def in_form(tones: Sequence[Tone], form: str) -> tuple[Interval, ...]:
    """The intervals of tones that follow one another, the bare ones among them in a form of minor.

    >>> five, six, seven = Tone(Interval(1, 0)), Tone(Interval(-4, 3), True), Tone(Interval(-2, 2), True)
    >>> up = in_form((five, six, seven, Tone(Interval(0, 1))), MELODIC)
    >>> down = in_form((Tone(Interval(0, 1)), seven, six, five), MELODIC)
    >>> [interval.name for interval in (*up[1:3], *down[1:3])]
    ['major sixth', 'major seventh', 'minor seventh', 'minor sixth']
    """
    if form == HARMONIC:
        raised = [degree_number(tone.interval.fifths) == 7 for tone in tones]
    else:
        raised = _rising(tones) if form == MELODIC else [False] * len(tones)
    return tuple(
        tone.interval + _SHARP if tone.is_bare and is_raised else tone.interval
        for tone, is_raised in zip(tones, raised, strict=True)
    )


def _rising(tones: Sequence[Tone]) -> list[bool]:
    """Whether the run that each tone belongs to goes up from its last tone; found from the end backwards."""
    found: list[bool] = []
    rises = _ends_upwards(tones)
    behind: Tone | None = None
    for tone in reversed(tones):
        if behind is not None and not behind.has_two_forms:
            rises = behind.interval.steps > tone.interval.steps or _leads(tone, behind)
        found.append(rises)
        behind = tone
    return found[::-1]


def _leads(tone: Tone, behind: Tone) -> bool:
    """Whether a seventh goes to the tonic, which it leads to in whichever octave that lies."""
    return degree_number(tone.interval.fifths) == 7 and behind.interval.fifths == 0


def _ends_upwards(tones: Sequence[Tone]) -> bool:
    """Whether the last step of all goes up; a note that is only repeated goes nowhere."""
    steps = [tone.interval.steps for tone in tones]
    return next((steps[-1] > before for before in reversed(steps) if before != steps[-1]), False)


def signs_in_form(signs: Sequence[tuple[Sign, Read]], form: str) -> list[tuple[Sign, Read]]:
    """The signs of a melody in minor with what they were read as, their bare sixths and sevenths in a form of minor."""
    tones = [
        Tone(interval, _is_bare(written.text)) for sign, read in signs for written, interval in each_note(sign, read)
    ]
    intervals = iter(in_form(tones, form))
    found: list[tuple[Sign, Read]] = []
    for sign, read in signs:
        if read is None or read[0] is None:
            found.append((sign, read))
        else:
            graces = tuple([next(intervals) for _ in read[1]])
            found.append((sign, (next(intervals), graces)))
    return found


def _is_bare(text: str) -> bool:
    degree = read_degree(text, 0)
    return degree is not None and degree[0].accidental is None and degree[0].number in RAISED
