"""Chord qualities: the tones of a chord counted from its root.

``numbers`` name the tones as a chord symbol counts them (3 third, 7 seventh, 9 ninth ...), ``intervals`` place them on
the line of fifths (major third +4, minor third -3, fifth +1, minor seventh -2 ...). Names follow the ``kind`` values of
MusicXML 4.0 (kind-value) where it has one; ninths, elevenths and thirteenths are built cumulatively, as there.
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.record import NamedTuple

NATURAL_INTERVALS = {1: 0, 2: 2, 3: 4, 4: -1, 5: 1, 6: 3, 7: -2, 8: 0, 9: 2, 10: 4, 11: -1, 12: 1, 13: 3, 14: -2}
"""A chord tone without accidental, from the root of a dominant chord: major and perfect, but the seventh minor."""


class Quality(NamedTuple):
    """A chord's tones from the root up: their numbers, and their places in fifths above the root.

    A chord over a chord keeps both in ``layers``: the lower quality, the upper root's place above the lower root, and
    the upper quality; its own tones are those of both.

    >>> QUALITIES["half-diminished"].intervals
    (0, -3, -6, -2)
    """

    numbers: tuple[int, ...]
    intervals: tuple[int, ...]
    layers: tuple[Quality, int, Quality] | None = None

    def interval(self, number: int) -> int | None:
        """Where the tone of that number lies, in fifths above the root; None where there is none."""
        return self.intervals[self.numbers.index(number)] if number in self.numbers else None

    @property
    def has_minor_third(self) -> bool:
        """Whether the third is minor: what a small numeral and a dash mean."""
        if -3 not in self.intervals:
            return False
        tones = self.tones
        return (3, -3) in tones and (3, 4) not in tones

    @property
    def is_dominant_seventh(self) -> bool:
        """Whether a major third and a minor seventh stand over the root, whatever else does."""
        return self.interval(3) == 4 and self.interval(7) == -2

    @property
    def triad(self) -> Quality:
        """The chord without sixth, seventh and anything above."""
        return quality([(number, place) for number, place in self.tones if number <= 5])

    @property
    def tones(self) -> tuple[tuple[int, int], ...]:
        """Pairs of number and place, root first."""
        return tuple(zip(self.numbers, self.intervals, strict=True))


def quality(tones: list[tuple[int, int]]) -> Quality:
    """A quality from pairs of number and place in any order.

    >>> quality([(5, 1), (1, 0), (3, 4)]) == QUALITIES["major"]
    True
    """
    numbers, intervals = zip(*sorted(set(tones)), strict=True)
    return Quality(numbers, intervals)


def stacked(lower: Quality, interval: int, upper: Quality) -> Quality:
    """A chord over a chord, the upper root ``interval`` fifths above the lower one: the tones of both, each once.

    >>> stacked(QUALITIES["dominant"], 2, QUALITIES["major"]).tones       # D over C7
    ((1, 0), (3, 4), (5, 1), (7, -2), (9, 2), (11, 6), (13, 3))
    """
    tones = list(lower.tones)
    for place in upper.intervals:
        if interval + place not in lower.intervals:
            number = (interval + place) * 4 % 7 + 1
            is_free = number == 7 and 7 not in lower.numbers
            tones.append((number if is_free else number + 7, interval + place))
    return quality(tones)._replace(layers=(lower, interval, upper))


def alteration(number: int, place: int) -> int:
    """Semitones by which a chord tone differs from its plain form.

    >>> alteration(5, -6), alteration(9, 9), alteration(7, 5)
    (-1, 1, 1)
    """
    return (place - NATURAL_INTERVALS[number]) // 7


def _row(*tones: str) -> Quality:
    """Read tones such as ``b3`` or ``#11``; a seventh stands as in a dominant chord, ``#7`` is the major seventh."""
    pairs = []
    for tone in tones:
        number = int(tone.lstrip("#b"))
        pairs.append((number, NATURAL_INTERVALS[number] + 7 * (tone.count("#") - tone.count("b"))))
    return quality(pairs)


QUALITIES = {
    "major": _row("1", "3", "5"),
    "minor": _row("1", "b3", "5"),
    "augmented": _row("1", "3", "#5"),
    "diminished": _row("1", "b3", "b5"),
    "suspended-second": _row("1", "2", "5"),
    "suspended-fourth": _row("1", "4", "5"),
    "power": _row("1", "5"),
    "major-sixth": _row("1", "3", "5", "6"),
    "minor-sixth": _row("1", "b3", "5", "6"),
    "dominant": _row("1", "3", "5", "7"),
    "major-seventh": _row("1", "3", "5", "#7"),
    "minor-seventh": _row("1", "b3", "5", "7"),
    "diminished-seventh": _row("1", "b3", "b5", "b7"),
    "augmented-seventh": _row("1", "3", "#5", "7"),
    "half-diminished": _row("1", "b3", "b5", "7"),
    "major-minor": _row("1", "b3", "5", "#7"),
    "dominant-ninth": _row("1", "3", "5", "7", "9"),
    "major-ninth": _row("1", "3", "5", "#7", "9"),
    "minor-ninth": _row("1", "b3", "5", "7", "9"),
    "dominant-11th": _row("1", "3", "5", "7", "9", "11"),
    "major-11th": _row("1", "3", "5", "#7", "9", "11"),
    "minor-11th": _row("1", "b3", "5", "7", "9", "11"),
    "dominant-13th": _row("1", "3", "5", "7", "9", "11", "13"),
    "major-13th": _row("1", "3", "5", "#7", "9", "11", "13"),
    "minor-13th": _row("1", "b3", "5", "7", "9", "11", "13"),
    "Italian": _row("1", "3", "#6"),
    "French": _row("1", "3", "#4", "#6"),
    "German": _row("1", "3", "5", "#6"),
    "pedal": _row("1"),
    "Tristan": _row("1", "#4", "#6", "#9"),
}
"""The kinds of MusicXML 4.0 that are chords, by name.

Augmented sixths stand on their lowest note in root position, the lowered sixth degree (Italian 1 3 ♯6). The schema
gives no intervals for them, nor for Tristan (F B D♯ G♯, from memory). ``Neapolitan`` is a major chord by its degree;
``other`` is what ``quality_name`` says; ``none`` is no chord.
"""
SWISS = _row("1", "3", "##4", "#6")
"""The German sixth spelled for the major six-four: with the doubly augmented fourth."""
AUGMENTED_SIXTHS = {"It": QUALITIES["Italian"], "Fr": QUALITIES["French"], "Ger": QUALITIES["German"], "Sw": SWISS}

_NAMES = {row: name for name, row in QUALITIES.items()} | {SWISS: "Swiss"}
_ROOTED = [row for row in QUALITIES.values() if len(row.numbers) > 1 and 10 not in row.intervals]


@lru_cache(maxsize=1024)
def quality_name(chord_quality: Quality) -> str:
    """The kind's name, or the nearest smaller kind with what is added, altered or left out.

    >>> quality_name(_row("1", "3", "5", "7", "b9")), quality_name(_row("1", "3", "5", "9"))
    ('dominant add b9', 'major add 9')
    """
    if chord_quality in _NAMES:
        return _NAMES[chord_quality]
    if chord_quality.layers is not None:
        lower, _, upper = chord_quality.layers
        return f"{quality_name(upper)} over {quality_name(lower)}"
    tones = set(chord_quality.tones)
    kind = min(_ROOTED, key=lambda row: (len(tones ^ set(row.tones)), len(set(row.tones) - tones), -len(row)))
    added = [f"add {_tone_name(*tone)}" for tone in chord_quality.tones if tone not in kind.tones]
    omitted = [f"omit {_tone_name(*tone)}" for tone in kind.tones if tone not in tones]
    return " ".join([_NAMES[kind], *added, *omitted])


def _tone_name(number: int, place: int) -> str:
    shift = alteration(number, place)
    return ("#" * shift if shift > 0 else "b" * -shift) + str(number)
