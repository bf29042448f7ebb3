"""Which key a melody is in: its notes, counted or by their lengths, against published profiles of keys; its spelling.

Method: Pearson's correlation of the twelve weights of a melody with the profile of each key (C. Krumhansl, *Cognitive
Foundations of Musical Pitch*, 1990). Profiles are blind to spelling, so a key also loses by the share of notes that no
form of its scale holds as they are spelled; and it gains a little by the ends of the melody (both: common practice, no
source). Profiles are published for major and minor, so other modes are not proposed from a melody alone.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from functools import lru_cache
from math import sqrt

from nearhand.harmony.key_finding import KeyFit, candidate_keys, ranked, scores_of
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MINOR_FORMS, Mode
from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


class Profile(NamedTuple):
    """How much each note weighs in a major and in a minor key: twelve numbers, semitones 0 to 11 above the tonic."""

    major: tuple[float, ...]
    minor: tuple[float, ...]


PROFILES = {
    "Albrecht-Shanahan 2013": Profile(
        (0.238, 0.006, 0.111, 0.006, 0.137, 0.094, 0.016, 0.214, 0.009, 0.080, 0.008, 0.081),
        (0.220, 0.006, 0.104, 0.123, 0.019, 0.103, 0.012, 0.214, 0.062, 0.022, 0.061, 0.052),
    ),
    "Krumhansl-Kessler 1982": Profile(
        (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88),
        (6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17),
    ),
    "Temperley 2001": Profile(
        (5, 2, 3.5, 2, 4.5, 4, 2, 4.5, 2, 3.5, 1.5, 4), (5, 2, 3.5, 4.5, 2, 4, 2, 4.5, 3.5, 2, 1.5, 4)
    ),
    "Temperley 2007": Profile(
        (0.748, 0.060, 0.488, 0.082, 0.670, 0.460, 0.096, 0.715, 0.104, 0.366, 0.057, 0.400),
        (0.712, 0.084, 0.474, 0.618, 0.049, 0.460, 0.105, 0.747, 0.404, 0.067, 0.133, 0.330),
    ),
    "Aarden 2003": Profile(
        (
            17.7661,
            0.145624,
            14.9265,
            0.160186,
            19.8049,
            11.3587,
            0.291248,
            22.062,
            0.145624,
            8.15494,
            0.232998,
            4.95122,
        ),
        (18.2648, 0.737619, 14.0499, 16.8599, 0.702494, 14.4362, 0.702494, 18.6161, 4.56621, 1.93186, 7.37619, 1.75623),
    ),
    "Bellman-Budge 2005": Profile(
        (16.80, 0.86, 12.95, 1.41, 13.49, 11.93, 1.25, 20.28, 1.80, 8.04, 0.62, 10.57),
        (18.16, 0.69, 12.99, 13.34, 1.07, 11.15, 1.38, 21.07, 7.49, 1.53, 0.92, 10.21),
    ),
}
"""Albrecht, Shanahan, Music Perception 31, 2013; Krumhansl, Kessler, Psychological Review 89, 1982; Temperley, Music
Perception 17, 1999 (revised in *The Cognition of Basic Musical Structures*, 2001) and *Music and Probability*, 2007
(Kostka-Payne corpus); Aarden, Ohio State, 2003 (Essen folk songs); Bellman, CMMR 2005, after Budge 1943."""
DEFAULT_PROFILE = "Albrecht-Shanahan 2013"

_OPENING, _CLOSING = 0.05, 0.1
_MOST_TOLD, _NOTES_FOR_HALF = 3.0, 4
"""A melody's correlation counts up to three times against the score of chords; half of that with four notes."""


def rank_keys_of_melody(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None, profile: str = DEFAULT_PROFILE
) -> tuple[KeyFit, ...]:
    """Major and minor keys that a melody may be in, the likeliest first; without ``lengths`` its notes are counted.

    Raises ValueError without notes or with a length that is not above 0, KeyError for an unknown profile.

    >>> from nearhand.notation.melody_notes import parse_melody
    >>> [str(fit.key) for fit in rank_keys_of_melody([note.pitch_class for note in parse_melody("E F# G A B D# E")])][0]
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


def melody_scores(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None, keys: Iterable[Key], profile: str = DEFAULT_PROFILE
) -> dict[Key, float]:
    """The score of each of some keys, in the unit of ``key_finding``; the more notes, the more it tells."""
    weights = weighed(melody, lengths)
    total = sum(weights.values())
    told = _MOST_TOLD * len(melody) / (len(melody) + _NOTES_FOR_HALF)
    scores = {}
    for key in keys:
        scale, tonic = _scale(key.mode), key.tonic.fifths
        outside = sum(weight for note, weight in weights.items() if note.fifths - tonic not in scale) / total
        ends = _OPENING * (melody[0] == key.tonic) + _CLOSING * (melody[-1] == key.tonic)
        scores[key] = told * (correlation(weights, key, profile) - outside + ends)
    return scores


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
