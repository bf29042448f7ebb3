"""What a melody tells of its key, gathered once for all keys, and what a note is worth above the tonic of each mode.

Places are those of the line of fifths. The weights are ours (common practice, no source); docs/harmony.md tells how
they were set.
"""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from functools import lru_cache
from math import sqrt

from nearhand.harmony.key_profiles import DEFAULT_PROFILE, PROFILES
from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR_FORMS, Mode
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_PROFILE, _TONIC_CHORD, _OPENING, _CLOSING = 1.5, 1.0, 0.4, 0.3
_OUTSIDE, _LEFT, _NO_THIRD, NO_LEADING_TONE = 2.0, 2.0, 1.0, 0.3
"""What each kind of evidence is worth; ``_LEFT`` is for a note outside however short, in few notes."""
_NOTES_FOR_HALF = 4
"""With how many notes a melody tells half of what a long one tells."""
_OPENING_NOTES, _ENOUGH_KINDS = 4, 5
"""How many notes are an opening; and with how many different notes a third is missed."""
_NATURAL_AND_HARMONIC = (MINOR_FORMS["natural"], MINOR_FORMS["harmonic"])
"""The forms of minor that a few notes keep to: both sevenths, or a raised sixth, take a longer tune."""
_HALF_STEPS = (5, 7)
"""Fifths from one end of a half step to the other: E to F, and F to F sharp."""


class Heard(NamedTuple):
    """What the scores of keys need of a melody, by places on the line of fifths.

    ``told``: how much a melody of its length tells, from 0 to 1; ``left``: what a key loses that it leaves for a note.
    ``row``: the shares of its notes from the ``lowest`` to the ``highest`` place; ``earnest``: the places that sound
    ``in_earnest``; ``spread``: how far the twelve shares lie from their mean. ``on_chord``: what each note is worth to
    a key whose tonic chord holds it, ``on_tonic`` to one whose tonic it is, ``no_third`` to one whose third never
    sounds.
    """

    told: float
    left: float
    row: tuple[float, ...]
    earnest: frozenset[int]
    lowest: int
    highest: int
    spread: float
    on_chord: dict[int, float]
    on_tonic: dict[int, float]
    no_third: float


def heard_in(melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None) -> Heard:
    """Gather what a melody tells; its first half counts double. Without ``lengths`` its notes are counted.

    Raises ValueError without notes, for a length that is not above 0, or when there are more or fewer lengths.

    >>> heard = heard_in([PitchClass(0), PitchClass(4), PitchClass(1), PitchClass(0)])   # C E G C
    >>> heard.lowest, heard.highest, heard.told, [round(share, 2) for share in heard.row]
    (0, 4, 0.5, [0.5, 0.17, 0.0, 0.0, 0.33])
    """
    if not melody:
        raise ValueError("a key cannot be found without notes")
    places = [note.fifths for note in melody]
    beats = [1.0] * len(places) if lengths is None else _checked(lengths, len(places))
    half = len(places) // 2
    weights = _shares(places, [2 * length for length in beats[:half]] + beats[half:])
    twelve = [0.0] * 12
    for place, weight in weights.items():
        twelve[place * 7 % 12] += weight
    on_chord = {place: _TONIC_CHORD * weight for place, weight in weights.items()}
    for place, weight in _shares(places[:_OPENING_NOTES], beats[:_OPENING_NOTES]).items():
        on_chord[place] += _OPENING * weight
    lowest, highest, last = min(weights), max(weights), places[-1]
    told = len(places) / (len(places) + _NOTES_FOR_HALF)
    return Heard(
        told=told,
        left=(1 - told) * _LEFT,
        row=tuple([weights.get(place, 0.0) for place in range(lowest, highest + 1)]),
        earnest=in_earnest(places),
        lowest=lowest,
        highest=highest,
        spread=sqrt(sum([(weight - 1 / 12) ** 2 for weight in twelve])),
        on_chord=on_chord,
        on_tonic={**on_chord, last: on_chord[last] + _CLOSING},
        no_third=-_NO_THIRD if len(weights) >= _ENOUGH_KINDS else 0.0,
    )


def in_earnest(places: Sequence[int]) -> frozenset[int]:
    """The places that sound other than as decorations: passing by half steps, or a half step below the same note.

    >>> sorted(in_earnest([0, 1, 8, 3, 1, 6, 1, 0]))     # C G G# A G F# G C: G sharp passes, F sharp is a neighbour
    [0, 1, 3]
    """
    unsure = {*places} - {places[0], places[-1]}
    for before, place, after in zip(places, places[1:], places[2:], strict=False):
        if place in unsure and not _decorates(before, place, after):
            unsure.discard(place)
            if not unsure:
                break
    return frozenset(places) - unsure


def _decorates(before: int, place: int, after: int) -> bool:
    steps = place - before, place - after
    if abs(steps[0]) not in _HALF_STEPS or abs(steps[1]) not in _HALF_STEPS:
        return False
    return before != after or steps[0] == _HALF_STEPS[0]


def tonics_holding(places: Collection[int], mode: Mode) -> set[int]:
    """The tonics above which places are all of a mode; in minor, of its natural or of its harmonic form.

    >>> from nearhand.theory.mode import MAJOR, MINOR
    >>> tonics_holding([5, -1], MAJOR), sorted(tonics_holding([5, -1], MINOR))       # B F: C major; C and A minor
    ({0}, [0, 3])
    """
    lowest, highest = min(places), max(places)
    return {
        tonic
        for form in _forms(mode)
        for tonic in range(highest - max(form), lowest - min(form) + 1)
        if form.issuperset([place - tonic for place in places])
    }


@lru_cache
def _forms(mode: Mode) -> tuple[frozenset[int], ...]:
    return tuple(map(frozenset, _NATURAL_AND_HARMONIC if mode.is_minor else (mode.degrees,)))


def _checked(lengths: Sequence[Beats], count: int) -> list[float]:
    if len(lengths) != count:
        raise ValueError(f"there must be a length for each of {count} notes (got {len(lengths)})")
    shortest = min(lengths)
    if shortest <= 0:
        raise ValueError(f"a note lasts longer than {shortest} beats")
    return list(map(float, lengths))


def _shares(places: Sequence[int], beats: Sequence[float]) -> dict[int, float]:
    weights = dict.fromkeys(places, 0.0)
    for place, length in zip(places, beats, strict=True):
        weights[place] += length
    total = sum(beats)
    return {place: weight / total for place, weight in weights.items()}


def values_above(heard: Heard, profile: str, mode: Mode, width: int) -> list[float]:
    """What a note is worth at each place from ``-width`` to ``width`` above the tonic, by profile and scale."""
    standard, belonging = _rows(profile, mode, width)
    factor = _PROFILE / heard.spread if heard.spread > 1e-9 else 0.0
    return [factor * weight + worth for weight, worth in zip(standard, belonging, strict=True)]


@lru_cache
def _rows(profile: str, mode: Mode, width: int) -> tuple[tuple[float, ...], tuple[float, ...]]:
    """The profile of a mode, and what lies outside its scale, from ``-width`` to ``width`` above the tonic."""
    standard, scale, places = _standard(profile, mode.has_minor_third), _scale(mode), range(-width, width + 1)
    outside = (0.0 if place in scale else -_OUTSIDE for place in places)
    return tuple(standard[place * 7 % 12] for place in places), tuple(outside)


def misses_third(weights: Mapping[PitchClass, float], key: Key) -> bool:
    """Whether the third of a key never sounds, though enough other notes do for it to be missed."""
    return key.degree(3) not in weights and len(weights) >= _ENOUGH_KINDS


def weighed(melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None) -> dict[PitchClass, float]:
    """How long each note of a melody sounds in all, or how often.

    Raises ValueError for a length that is not above 0, or when there are more or fewer lengths than notes.
    """
    weights: dict[PitchClass, float] = {}
    for note, length in zip(melody, [1] * len(melody) if lengths is None else lengths, strict=True):
        if length <= 0:
            raise ValueError(f"a note lasts longer than {length} beats")
        weights[note] = weights.get(note, 0.0) + float(length)
    return weights


def correlation(weights: Mapping[PitchClass, float], key: Key, profile: str = DEFAULT_PROFILE) -> float:
    """Pearson's correlation of a melody's weights with the profile of a key; 0 when all twelve weigh the same.

    A mode with minor third is held against the profile of minor, any other against that of major.

    >>> from nearhand.notation.keys import parse_key
    >>> scale = dict.fromkeys(map(PitchClass, range(-1, 6)), 1.0)
    >>> round(correlation(scale, parse_key("C")), 4), round(correlation(scale, parse_key("A minor")), 4)
    (0.8084, 0.7346)
    """
    heard = [0.0] * 12
    for note, weight in weights.items():
        heard[(note.semitones - key.tonic.semitones) % 12] += weight
    mean = sum(heard) / 12
    spread = sqrt(sum((weight - mean) ** 2 for weight in heard))
    if spread < 1e-9 * mean:
        return 0.0
    return sum(map(float.__mul__, heard, _standard(profile, key.mode.has_minor_third))) / spread


@lru_cache
def _standard(profile: str, is_minor: bool) -> tuple[float, ...]:
    """A profile with mean 0 and length 1."""
    values = PROFILES[profile].minor if is_minor else PROFILES[profile].major
    mean = sum(values) / 12
    length = sqrt(sum((value - mean) ** 2 for value in values))
    return tuple((value - mean) / length for value in values)


@lru_cache
def _scale(mode: Mode) -> frozenset[int]:
    """The places of a mode's scale above its tonic; in minor, of all its forms."""
    return (
        frozenset(place for form in MINOR_FORMS.values() for place in form)
        if mode.is_minor
        else frozenset(mode.degrees)
    )
