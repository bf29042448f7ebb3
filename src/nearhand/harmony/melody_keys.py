"""Which key a melody is in: its notes against published profiles of keys, and what a musician would name besides.

Profiles are compared by Pearson's correlation with the twelve weights of a melody (C. Krumhansl, *Cognitive Foundations
of Musical Pitch*, 1990). They are blind to spelling, order and ends, so a key also gains by the time on the notes of
its tonic chord, by that chord among the first notes and by a close on its tonic; it loses by notes that no form of its
scale holds as they are spelled, by a third that never sounds, and in minor by a leading tone that never does. A tune
tells its key as it begins, and may turn later: its first half counts double. The fewer notes there are, the less all
this tells, and the more a key loses that has not every one of them, decorations aside. These weights are common
practice, no source; they were fitted on half of some collections of folk tunes, and rounded (docs/harmony.md).

Profiles are published for major and minor. A church mode is proposed where every note fits its scale and the degree by
which it differs from major or minor sounds (``church_modes``).
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import lru_cache
from operator import mul

from nearhand.harmony.church_modes import modes_at, with_modes
from nearhand.harmony.key_finding import KeyFit, candidate_keys, ranked, scores_of
from nearhand.harmony.key_profiles import DEFAULT_PROFILE
from nearhand.harmony.melody_evidence import NO_LEADING_TONE, Heard, heard_in, tonics_holding, values_above
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR, Mode
from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_LANE = 16
"""Rows of values are kept in widths of so many places, so that few are."""


def rank_keys_of_melody(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None = None, profile: str = DEFAULT_PROFILE
) -> tuple[KeyFit, ...]:
    """Keys that a melody may be in, the likeliest first; without ``lengths`` its notes are counted.

    ``profile``: one of ``PROFILES``. Raises ValueError without notes or with a length that is not above 0, KeyError for
    an unknown profile.

    >>> from nearhand.notation.melody_reading import parse_melody
    >>> notes = parse_melody("E F# G A B D# E").sounding()
    >>> str(rank_keys_of_melody([note.pitch.pitch_class for note in notes])[0].key)
    'E minor'
    """
    heard = heard_in(melody, lengths)
    scores = _scores(heard, _in_reach(heard.lowest, heard.highest), profile)
    return ranked(with_modes(scores, modes_at(heard.on_chord.keys(), heard.earnest), melody[-1], heard))


def rank_keys_of_both(
    chords: Sequence[Chord],
    melody: Sequence[PitchClass],
    beats: Sequence[Beats] | None = None,
    lengths: Sequence[Beats] | None = None,
    profile: str = DEFAULT_PROFILE,
) -> tuple[KeyFit, ...]:
    """Keys by chords and melody together: the scores are added, so the odds multiply.

    A church mode gains by the melody only where the notes of the chords fit it as well. What a short melody leaves,
    chords may explain, so that no key loses by it.

    Raises ValueError without chords or without notes, KeyError for an unknown profile.
    """
    heard = heard_in(melody, lengths)._replace(left=0.0)
    tones = {note for chord in chords for note in chord.tones}
    heard_modes = modes_at(heard.on_chord.keys(), heard.earnest)
    modes = {key: church for key, church in heard_modes.items() if tones <= set(key.scale())}
    keys = tuple(dict.fromkeys([*candidate_keys(chords), *_in_reach(heard.lowest, heard.highest).keys, *modes]))
    by_melody = with_modes(_scores(heard, _placed(keys), profile), modes, melody[-1], heard)
    return ranked({key: score + by_melody[key] for key, score in scores_of(chords, beats, keys).items()})


def melody_scores(
    melody: Sequence[PitchClass], lengths: Sequence[Beats] | None, keys: Sequence[Key], profile: str = DEFAULT_PROFILE
) -> dict[Key, float]:
    """The score of each of some keys, in the unit of ``key_finding``; the more notes, the more it tells.

    Church modes are not yet held against major and minor here.

    Raises ValueError and KeyError as ``rank_keys_of_melody`` does.
    """
    return _scores(heard_in(melody, lengths), _placed(tuple(keys)), profile)


class _Keys(NamedTuple):
    """Keys with what the scores ask of them: the place of each tonic, each mode's number among the ``modes``."""

    keys: tuple[Key, ...]
    tonics: tuple[int, ...]
    numbers: tuple[int, ...]
    modes: tuple[Mode, ...]


def _placed(keys: tuple[Key, ...]) -> _Keys:
    modes = tuple(dict.fromkeys(key.mode for key in keys))
    numbers = tuple(modes.index(key.mode) for key in keys)
    return _Keys(keys, tuple(key.tonic.fifths for key in keys), numbers, modes)


@lru_cache
def _in_reach(lowest: int, highest: int) -> _Keys:
    """Major and minor keys of a plain signature in whose reach notes lie; any in reach where none has one."""
    reach = [Key(pitch_class(tonic), mode) for tonic in range(lowest - 5, highest + 5) for mode in (MAJOR, MINOR)]
    return _placed(tuple(key for key in reach if abs(key.signature) <= 7) or tuple(reach))


def _scores(heard: Heard, among: _Keys, profile: str) -> dict[Key, float]:
    """The score of each key: one addition for each kind of evidence.

    What is alike for all keys of a mode is worked out once, on places of the line of fifths: another tonic is another
    stretch of one row.
    """
    row, count, no_third = heard.row, len(heard.row), heard.no_third
    width = max(heard.highest - min(among.tonics), max(among.tonics) - heard.lowest)
    width += -width % _LANE
    modes = [
        (
            mode.degrees[2],
            mode.has_minor_third,
            values_above(heard, profile, mode, width),
            tonics_holding(heard.earnest, mode),
        )
        for mode in among.modes
    ]
    told, left = heard.told, heard.left
    first, as_tonic, in_chord = heard.lowest + width, heard.on_tonic.get, heard.on_chord.get
    scores = {}
    for key, tonic, number in zip(*among[:3], strict=True):
        third, is_minor, values, holding = modes[number]
        start = first - tonic
        score = sum(map(mul, row, values[start : start + count]))
        score += as_tonic(tonic, 0.0) + in_chord(tonic + third, no_third) + in_chord(tonic + DOMINANT, 0.0)
        if is_minor and tonic + LEADING_TONE not in heard.on_chord:
            score -= NO_LEADING_TONE
        scores[key] = told * score - left * (tonic not in holding)
    return scores
