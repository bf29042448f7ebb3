"""Which key a melody is in: its notes against published profiles of keys, and what a musician would name besides.

Profiles are compared by Pearson's correlation with the twelve weights of a melody (C. Krumhansl, *Cognitive Foundations
of Musical Pitch*, 1990). They are blind to spelling, order and ends, so a key also gains by the time on the notes of
its tonic chord, by that chord among the first notes and by a close on its tonic; it loses by notes that no form of its
scale holds as they are spelled, by a third that never sounds, and in minor by a leading tone that never does. A tune
tells its key as it begins, and may turn later: its first half counts double. These weights are common practice, no
source; they were set on one half of some collections of folk tunes and tried on the other half (docs/harmony.md).

Profiles are published for major and minor, so other modes are not proposed from a melody alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from math import sqrt

from nearhand.harmony.key_finding import KeyFit, candidate_keys, ranked, scores_of
from nearhand.harmony.key_profiles import DEFAULT_PROFILE, PROFILES
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR, MINOR_FORMS, Mode
from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_PROFILE, _TONIC_CHORD, _OPENING, _CLOSING = 1.5, 1.0, 0.4, 0.3
_OUTSIDE, _NO_THIRD, _NO_LEADING_TONE = 2.0, 1.0, 0.3
_OPENING_NOTES, _NOTES_FOR_HALF, _ENOUGH_KINDS = 4, 4, 5
"""How many notes are an opening; with how many a melody tells half of what a long one tells; with how many different
notes a third is missed."""


def rank_keys_of_melody(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None, profile: str = DEFAULT_PROFILE
) -> tuple[KeyFit, ...]:
    """Major and minor keys that a melody may be in, the likeliest first; without ``lengths`` its notes are counted.

    ``profile``: one of ``PROFILES``. Raises ValueError without notes or with a length that is not above 0, KeyError for
    an unknown profile.

    >>> from nearhand.notation.melody_reading import parse_melody
    >>> notes = parse_melody("E F# G A B D# E").sounding()
    >>> str(rank_keys_of_melody([note.pitch.pitch_class for note in notes])[0].key)
    'E minor'
    """
    return ranked(melody_scores(melody, lengths, melody_keys(melody), profile))


def rank_keys_of_both(
    chords: Sequence[Chord],
    melody: Sequence[PitchClass],
    beats: Sequence[Beats] | None = None,
    lengths: Sequence[Beats] | None = None,
    profile: str = DEFAULT_PROFILE,
) -> tuple[KeyFit, ...]:
    """Keys by chords and melody together: the scores are added, so the odds multiply.

    Raises ValueError without chords or without notes, KeyError for an unknown profile.
    """
    keys = list(dict.fromkeys([*candidate_keys(chords), *melody_keys(melody)]))
    by_melody = melody_scores(melody, lengths, keys, profile)
    return ranked({key: score + by_melody[key] for key, score in scores_of(chords, beats, keys).items()})


def melody_keys(melody: Sequence[PitchClass]) -> list[Key]:
    """Major and minor keys of a plain signature in whose reach the notes lie; any in reach where none has one.

    Raises ValueError without notes.
    """
    if not melody:
        raise ValueError("a key cannot be found without notes")
    places = {note.fifths for note in melody}
    reach = [
        Key(pitch_class(tonic), mode) for tonic in range(min(places) - 5, max(places) + 5) for mode in (MAJOR, MINOR)
    ]
    return [key for key in reach if abs(key.signature) <= 7] or reach


class _Heard(NamedTuple):
    """What the score needs of a melody: the shares of its notes, those of its opening notes, and its last note."""

    weights: dict[PitchClass, float]
    opening: dict[PitchClass, float]
    last: PitchClass


def melody_scores(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None, keys: Iterable[Key], profile: str = DEFAULT_PROFILE
) -> dict[Key, float]:
    """The score of each of some keys, in the unit of ``key_finding``; the more notes, the more it tells."""
    lasting: list[Beats] = [1] * len(melody) if lengths is None else list(lengths)
    half = len(melody) // 2
    doubled = [length * 2 if place < half else length for place, length in enumerate(lasting)]
    opening = _shares(melody[:_OPENING_NOTES], lasting[:_OPENING_NOTES])
    heard = _Heard(_shares(melody, doubled), opening, melody[-1])
    told = len(melody) / (len(melody) + _NOTES_FOR_HALF)
    return {key: told * _score(heard, key, profile) for key in keys}


def _shares(melody: Sequence[PitchClass], lengths: Sequence[Beats]) -> dict[PitchClass, float]:
    weights = weighed(melody, lengths)
    total = sum(weights.values())
    return {note: weight / total for note, weight in weights.items()}


def _score(heard: _Heard, key: Key, profile: str) -> float:
    """How well a melody fits a key: one addition for each kind of evidence that the head of this module names."""
    weights, scale, tonic = heard.weights, _scale(key.mode), key.tonic.fifths
    third = pitch_class(tonic + key.mode.degrees[2])
    chord = (key.tonic, third, pitch_class(tonic + DOMINANT))
    score = _PROFILE * correlation(weights, key, profile)
    score += _TONIC_CHORD * sum(weights.get(note, 0.0) for note in chord)
    score += _OPENING * sum(heard.opening.get(note, 0.0) for note in chord)
    score += _CLOSING * (heard.last == key.tonic)
    score -= _OUTSIDE * sum(weight for note, weight in weights.items() if note.fifths - tonic not in scale)
    score -= _NO_THIRD * (third not in weights and len(weights) >= _ENOUGH_KINDS)
    score -= _NO_LEADING_TONE * (key.mode.has_minor_third and pitch_class(tonic + LEADING_TONE) not in weights)
    return score


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
