"""Which key signatures the notes of a melody leave possible: elimination on the circle of fifths.

A signature holds seven neighbouring places on the line of fifths, so that the sharpest note heard says how many sharps
there are at least, and the flattest how many at most. Where no signature holds every note, those are left that leave
the least time outside. The raised sixth and seventh of the relative minor count half, for they belong to its key, and
next to nothing where the melody closes on its tonic (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from nearhand.harmony.melody_evidence import weighed
from nearhand.theory.mode import MAJOR, MINOR, RAISED_SEVENTH, RAISED_SIXTH
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_MOST = 7
_RAISED, _RAISED_BEFORE_CLOSE = 0.5, 0.1
_LOWEST, _HIGHEST = min(MAJOR.degrees), max(MAJOR.degrees)
_SEVENTH, _SIXTH = RAISED_SEVENTH - MINOR.brightness, RAISED_SIXTH - MINOR.brightness
"""The raised degrees of the relative minor, in places above the tonic of the major key."""


class SignatureLeft(NamedTuple):
    """A signature that stays possible: its accidentals, sharps above zero and flats below; and the notes outside it."""

    signature: int
    outside: tuple[PitchClass, ...] = ()

    @property
    def raised(self) -> tuple[PitchClass, ...]:
        """Those outside that the relative minor explains: its raised seventh, and beside it the raised sixth."""
        return tuple(note for note in self.outside if note.fifths in _raised(self.signature, self.outside))


def signatures_left(melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None) -> tuple[SignatureLeft, ...]:
    """The signatures that the notes leave possible, from flats to sharps; without ``lengths`` notes are counted.

    Raises ValueError without notes, or with a length that is not above 0.

    >>> from nearhand.theory.pitch_class import pitch_class
    >>> [left.signature for left in signatures_left(list(map(pitch_class, (-3, -2, 3))))]   # E flat, B flat, A
    [-2]
    >>> [left.signature for left in signatures_left(list(map(pitch_class, (1, 2, 3, 4, 5))))]   # G, D, A, E, B
    [0, 1, 2]
    """
    if not melody:
        raise ValueError("a signature cannot be found without notes")
    weights = weighed(melody, lengths)
    places = [note.fifths for note in weights]
    reach = range(min(places) - _HIGHEST, max(places) - _LOWEST + 1)
    signatures = [signature for signature in reach if abs(signature) <= _MOST] or list(reach)
    costs = {signature: _time_outside(weights, signature, melody[-1]) for signature in signatures}
    least = min(costs.values())
    return tuple(
        SignatureLeft(signature, _outside(weights, signature))
        for signature, cost in costs.items()
        if cost <= least + 1e-9 * len(melody)
    )


def _outside(weights: Mapping[PitchClass, float], signature: int) -> tuple[PitchClass, ...]:
    return tuple(sorted(note for note in weights if not _LOWEST <= note.fifths - signature <= _HIGHEST))


def _raised(signature: int, outside: Sequence[PitchClass]) -> tuple[int, ...]:
    places = {note.fifths for note in outside}
    return (signature + _SIXTH, signature + _SEVENTH) if signature + _SEVENTH in places else ()


def _time_outside(weights: Mapping[PitchClass, float], signature: int, last: PitchClass) -> float:
    outside = _outside(weights, signature)
    raised = _raised(signature, outside)
    part = _RAISED_BEFORE_CLOSE if last.fifths == signature - MINOR.brightness else _RAISED
    return sum(weights[note] * (part if note.fifths in raised else 1) for note in outside)


def accidentals_in_words(signature: int) -> str:
    """How many sharps (above zero) or flats (below) a signature has.

    >>> [accidentals_in_words(signature) for signature in (0, 1, -2)]
    ['no sharps or flats', 'one sharp', 'two flats']
    """
    count = abs(signature)
    if not count:
        return "no sharps or flats"
    number = _COUNTS[count] if count < len(_COUNTS) else str(count)
    return f"{number} {'sharp' if signature > 0 else 'flat'}{'s' * (count > 1)}"
