"""The ways a chord can lie under two hands in one family: all of them, inside a register, a span and the low limits.

Every family is a set of orders from low to high; each note lies as near above the one below as it can. So a lowest note
decides a whole voicing, and drop voicings are permutations of close position.
"""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.quality import Quality
from nearhand.theory.record import NamedTuple
from nearhand.voicing.families import FREE, NO_BASS, REACHED, STACKED, Family
from nearhand.voicing.hands import Register, is_clear, lies_in_hand
from nearhand.voicing.reduction import right_hand_intervals

Order = tuple[tuple[int, ...], int]
"""Tones low to high in semitones above C, 0 to 11, and how many of them the left hand plays."""


class Candidate(NamedTuple):
    """One way to play a chord, as MIDI numbers, low to high.

    ``bass``: what the left hand plays of its own, its lowest note first (empty where another player has the bass, and
    in a search of the right hand alone). ``upper``: the other notes, of which the left hand takes ``reached``.
    """

    bass: tuple[int, ...]
    upper: tuple[int, ...]
    reached: int = 0

    @property
    def left(self) -> tuple[int, ...]:
        """All notes of the left hand; the bass may be one of the upper notes, too."""
        return tuple(sorted({*self.bass, *self.upper[: self.reached]}))

    @property
    def right(self) -> tuple[int, ...]:
        """All notes of the right hand."""
        return self.upper[self.reached :]

    @property
    def notes(self) -> tuple[int, ...]:
        """All notes of both hands."""
        return self.left + self.right

    @property
    def outer(self) -> tuple[int, int]:
        """Lowest and highest of the upper notes; of the bass where there are none."""
        notes = self.upper or self.bass
        return (notes[0], notes[-1]) if self.upper else (notes[0], notes[0])

    @property
    def voices(self) -> tuple[int, ...]:
        """The voices: the bass, then the upper ones."""
        return self.bass[:1] + self.upper


Layer = tuple[Candidate, ...]


def orders_in(family: Family, chord: RelativeChord, key: Key, after: RelativeChord | None = None) -> tuple[Order, ...]:
    """The orders of a chord's tones in a family, in a key; ``after`` is the chord that follows.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.voicing.families import FAMILIES
    >>> key = parse_key("C")
    >>> orders_in(FAMILIES["drop2"], parse_numeral("Imaj7", key.mode), key)[0]       # G3 C4 E4 B4
    ((7, 0, 4, 11), 1)
    """
    root = chord.root + key.tonic.fifths
    if family.orders:
        from nearhand.voicing.added_tones import added_tones
        from nearhand.voicing.members import orders_of

        bass = chord.bass - chord.root if family.bass == STACKED else None
        found = orders_of(chord, added_tones(chord, after, key.mode), family.orders, family.members, bass)
        return tuple((tuple((root + tone) * 7 % 12 for tone in order), left) for order, left in found)
    kept = right_hand_intervals(chord.quality, family.voices or 4, chord.bass == chord.root)
    doubled = tuple((root + tone) * 7 % 12 for tone in _doubled(chord.quality))
    return turned(tuple((root + tone) * 7 % 12 for tone in kept), family.places, family.voices, doubled)


def _doubled(quality: Quality) -> tuple[int, ...]:
    """The tones of a small chord that may sound twice: root and fifth, of a diminished triad the third."""
    fifth = quality.interval(5)
    return (-3,) if fifth == _DIMINISHED_FIFTH and -3 in quality.intervals else (0, *((fifth,) if fifth else ()))


_DIMINISHED_FIFTH = -6


@lru_cache(maxsize=4096)
def turned(tones: tuple[int, ...], places: tuple[str, ...], voices: int, doubled: tuple[int, ...]) -> tuple[Order, ...]:
    """Orders from the places of every rotation of a close chord, which is filled up with tones that may be doubled."""
    scale = sorted(set(tones))
    found: dict[Order, None] = {}
    for start in range(len(scale)):
        size = max(voices, len(scale))
        close = [scale[(start + step) % len(scale)] for step in range(size)]
        if not set(close[len(scale) :]) <= {*doubled, *(scale if len(scale) == 1 else ())}:
            continue
        for row in places:
            if not row:
                found[tuple(close), 0] = None
                continue
            left, _, right = row.partition("+")
            order = tuple([close[int(place)] for place in (*left.split(), *right.split())])
            if all(low != high for low, high in pairwise(order)):  # else a lowered note meets its own octave
                found[order, len(left.split())] = None
    return tuple(found)


def uppers(orders: tuple[Order, ...], register: Register, span: int) -> tuple[tuple[tuple[int, ...], int], ...]:
    """Every placing of orders in a register that two hands can play, with the left hand's share, lowest first.

    >>> uppers((((0, 4, 7), 0),), Register(60, 72, 66), span=14)
    (((60, 64, 67), 0),)
    """
    found = []
    for order, left in orders:
        first = register.low + (order[0] - register.low) % 12
        shape = [first]
        for tone in order[1:]:
            shape.append(shape[-1] + ((tone - shape[-1]) % 12 or 12))
        for lift in range(0, register.high - shape[-1] + 1, 12):
            notes = tuple([note + lift for note in shape])
            if is_clear(notes) and lies_in_hand(notes[:left], span) and lies_in_hand(notes[left:], span):
                found.append((notes, left))
    return tuple(sorted(set(found)))


@lru_cache(maxsize=4096)
def upper_layer(orders: tuple[Order, ...], register: Register, span: int) -> Layer:
    """Candidates of the upper notes alone."""
    return tuple(Candidate((), notes, left) for notes, left in uppers(orders, register, span))


@lru_cache(maxsize=4096)
def left_layer(patterns: tuple[tuple[int, ...], ...]) -> Layer:
    """Candidates of the left hand alone."""
    return tuple(Candidate(pattern, ()) for pattern in patterns)


@lru_cache(maxsize=4096)
def whole_layer(
    orders: tuple[Order, ...], register: Register, span: int, bass: str, patterns: tuple[tuple[int, ...], ...]
) -> Layer:
    """Candidates of both hands together: every upper placing over every pattern of the left hand that goes with it."""
    found = []
    for notes, left in uppers(orders, register, span):
        for pattern in patterns if bass != NO_BASS else ((),):
            candidate = Candidate(pattern, notes, left)
            if _goes_together(candidate, span, bass):
                found.append(candidate)
    return tuple(found)


def _goes_together(candidate: Candidate, span: int, bass: str) -> bool:
    """Whether bass and upper notes make one voicing: the bass lowest, each hand in its span, nothing muddy."""
    if not candidate.bass:
        return True
    lowest = candidate.upper[0]
    if bass == STACKED and not 0 < lowest - candidate.bass[0] <= 12:
        return False
    if bass == FREE and candidate.bass[-1] >= lowest:
        return False
    if bass == REACHED and candidate.bass[0] > lowest:
        return False
    left, right = candidate.left, candidate.right
    return (not right or not left or left[-1] < right[0]) and lies_in_hand(left, span) and is_clear(left + right)
