"""Voices as lines: what each voice plays from chord to chord, so that it can be sung or played alone."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, pairwise

from nearhand.theory.pitch import Pitch
from nearhand.theory.record import NamedTuple
from nearhand.voicing.families import FOUR_PART
from nearhand.voicing.part_writing import motion_kind
from nearhand.voicing.path import Table, Trellis, least_path
from nearhand.voicing.voice import VoicedProgression

FOUR_PARTS = ("bass", "tenor", "alto", "soprano")


class VoiceLine(NamedTuple):
    """One voice: its name, and per chord its pitch (None where it rests) and whether that is held from before."""

    name: str
    pitches: tuple[Pitch | None, ...]
    held: tuple[bool, ...]


class Lines(NamedTuple):
    """The voices of a progression, highest first; ``motions``: how bass and top voice move from each chord to the next.

    The kinds are contrary, oblique, similar, still; None where one of the two is missing.
    """

    voices: tuple[VoiceLine, ...]
    motions: tuple[str | None, ...]


def lines_of(voiced: VoicedProgression) -> Lines:
    """The voices of a voiced progression.

    Where chords have different numbers of voices, each takes up the lines that are nearest.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.voicing.voice import voice_progression
    >>> found = lines_of(voice_progression(resolve(read_chart("| I | IV |"), parse_key("C"))))
    >>> [(line.name, " ".join(map(str, line.pitches))) for line in found.voices], found.motions
    ([('top', 'G4 A4'), ('3', 'E4 F4'), ('2', 'C4 C4'), ('bass', 'C3 F3')], ('similar',))
    """
    uppers = [voicing.upper for voicing in voiced.voicings]
    basses = [_bass(voicing.candidate.bass, voicing.left) for voicing in voiced.voicings]
    rows = _upper_rows(uppers)
    voices = [_line(name, row) for name, row in zip(_names(len(rows), any(basses), voiced.style), rows, strict=True)]
    if any(basses):
        voices.insert(0, _line("bass", basses))
    tops = [upper[-1] if upper else None for upper in uppers]
    motions = tuple(_motion(*steps) for steps in zip(basses, basses[1:], tops, tops[1:], strict=False))
    return Lines(tuple(reversed(voices)), motions)


def _bass(bass: Sequence[int], left: Sequence[Pitch]) -> Pitch | None:
    return left[0] if bass else None


def _names(count: int, has_bass: bool, style: str) -> list[str]:
    if style == FOUR_PART and count == 3:
        return list(FOUR_PARTS[1:])
    return [str(place + 1 + has_bass) for place in range(count - 1)] + ["top"] * (count > 0)


def _line(name: str, pitches: Sequence[Pitch | None]) -> VoiceLine:
    held = [False] + [
        after is not None and before is not None and after.midi == before.midi for before, after in pairwise(pitches)
    ]
    return VoiceLine(name, tuple(pitches), tuple(held[: len(pitches)]))


def _upper_rows(uppers: Sequence[tuple[Pitch, ...]]) -> list[list[Pitch | None]]:
    """Rows for the upper voices, lowest first: the top note stays in the top row, the others move least.

    The ways to spread a chord over the rows are the choices of a trellis.
    """
    count = max(map(len, uppers), default=0)
    layers = [
        [rows for rows in combinations(range(count), len(upper)) if not upper or rows[-1] == count - 1]
        for upper in uppers
    ]

    def steps(place: int) -> Table:
        before, after = uppers[place - 1], uppers[place]
        return tuple(
            tuple(
                _distance(dict(zip(old, before, strict=True)), dict(zip(new, after, strict=True)))
                for old in layers[place - 1]
            )
            for new in layers[place]
        )

    _, choices = least_path(Trellis([[0] * len(layer) for layer in layers], steps))
    spread = [
        dict(zip(layer[choice], upper, strict=True))
        for layer, choice, upper in zip(layers, choices, uppers, strict=True)
    ]
    return [[chord.get(row) for chord in spread] for row in range(count)]


def _distance(before: dict[int, Pitch], after: dict[int, Pitch]) -> int:
    """Semitones that the rows move which both chords have."""
    return sum(abs(after[row].midi - before[row].midi) for row in before.keys() & after.keys())


def _motion(bass: Pitch | None, next_bass: Pitch | None, top: Pitch | None, next_top: Pitch | None) -> str | None:
    if bass is None or next_bass is None or top is None or next_top is None:
        return None
    return motion_kind(next_bass.midi - bass.midi, next_top.midi - top.midi)
