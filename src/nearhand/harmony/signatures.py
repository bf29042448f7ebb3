"""Which key signatures the notes of a melody leave possible: elimination on the circle of fifths.

A signature holds seven neighbouring places on the line of fifths, so that the sharpest note heard says how many sharps
there are at least, and the flattest how many at most. Where no signature holds every note, those are left that leave
the least time outside. The raised sixth and seventh of the relative minor count half, for they belong to its key, and
next to nothing where the melody closes on its tonic. Where the key is known by other means, its signature is left if it
leaves hardly more outside than any. Ten different notes or more of which no signature holds two thirds tell nothing
where many fit alike (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from nearhand.harmony.melody_evidence import in_earnest, weighed
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, RAISED_SEVENTH, RAISED_SIXTH
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_COUNTS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten")
_MOST = 7
_RAISED, _RAISED_BEFORE_CLOSE = 0.5, 0.1
_HARDLY_MORE, _ABOUT_ALIKE = 0.05, 0.1
"""The shares of the time by which a known key may fit worse than another, and by which signatures fit alike."""
_CHROMATIC, _MANY, _MUCH_OUTSIDE = 10, 4, 1 / 3
"""So many different notes tell nothing where so many signatures fit alike, and all leave so much outside."""
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


def signatures_left(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None, key: Key | None = None
) -> tuple[SignatureLeft, ...]:
    """The signatures that the notes leave possible, from flats to sharps; without ``lengths`` notes are counted.

    ``key``: that which the notes are known to be in; where no signature holds all of them, its own is left alone if it
    fits about as well as any. Raises ValueError without notes, or with a length that is not above 0.

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
    plain = {signature: _time(weights, _outside(weights, signature)) for signature in signatures}
    left = _alike(weights, plain) or _known(melody, weights, plain, key) or _least(weights, signatures, melody[-1])
    return tuple(SignatureLeft(signature, _outside(weights, signature)) for signature in left)


def tell_nothing(left: Sequence[SignatureLeft]) -> bool:
    """Whether so many signatures fit a chromatic melody alike that none can be told."""
    return len(left) >= _MANY and bool(left[0].outside)


def _alike(weights: Mapping[PitchClass, float], plain: Mapping[int, float]) -> list[int]:
    """The signatures that fit a chromatic melody about alike; none where they are few, or one holds most of it."""
    is_chromatic = len({note.semitones for note in weights}) >= _CHROMATIC
    if not is_chromatic or min(plain.values()) <= _MUCH_OUTSIDE * sum(weights.values()):
        return []
    alike = _near_least(weights, plain, _ABOUT_ALIKE)
    return alike if len(alike) >= _MANY else []


def _known(
    melody: Sequence[PitchClass], weights: Mapping[PitchClass, float], plain: Mapping[int, float], key: Key | None
) -> list[int]:
    """The signature of a known key where none holds every note and it fits about as well as any, decorations aside."""
    if key is None or key.signature not in plain or not min(plain.values()):
        return []
    explained = _raised(key.signature, _outside(weights, key.signature)) if key.mode.is_minor else ()
    earnest = in_earnest([note.fifths for note in melody])
    strangers = [note for note in _outside(weights, key.signature) if note.fifths in earnest]
    own = _time(weights, [note for note in strangers if note.fifths not in explained])
    times = {**plain, key.signature: own}
    return [key.signature] if key.signature in _near_least(weights, times, _HARDLY_MORE) else []


def _near_least(weights: Mapping[PitchClass, float], times: Mapping[int, float], share: float) -> list[int]:
    """The signatures whose time outside lies within a share of all the time of the least."""
    most = min(times.values()) + share * sum(weights.values())
    return [signature for signature, time in times.items() if time <= most]


def _least(weights: Mapping[PitchClass, float], signatures: Sequence[int], last: PitchClass) -> list[int]:
    """The signatures that leave the least time outside, raised degrees of minor counted for less."""
    costs = {signature: _time_outside(weights, signature, last) for signature in signatures}
    most = min(costs.values()) + 1e-9 * sum(weights.values())
    return [signature for signature, cost in costs.items() if cost <= most]


def _time(weights: Mapping[PitchClass, float], notes: Sequence[PitchClass]) -> float:
    return sum(weights[note] for note in notes)


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
