"""Which key a row of chords is in: every key is scored by how well the chords fit it, and the reasons are kept.

The rules are common practice, no source: a key gains by the share of time its own chords take, by a dominant that
goes to its tonic, and by opening and closing on its tonic; it loses by notes from outside. Major and minor come
before the other modes. The chords' own spelling decides between enharmonic keys.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from functools import lru_cache

from nearhand.harmony.applied import applied_target
from nearhand.harmony.sources import own_source
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR, MODES, SUBDOMINANT, SUPERTONIC, Mode
from nearhand.theory.pitch_class import pitch_class
from nearhand.theory.quality import Quality
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats, Progression

    _Sound = tuple[int, Quality]  # a root's place on the line of fifths, and the quality on it

_PRIORS = {
    MAJOR: 0.0,
    MINOR: 0.0,
    MODES["dorian"]: -0.2,
    MODES["mixolydian"]: -0.2,
    MODES["phrygian"]: -0.3,
    MODES["lydian"]: -0.4,
}
_PLAIN_SIGNATURE, _WIDEST_SIGNATURE = 7, 10
_FIT, _TIME_ON_TONIC, _NO_TONIC = 2.0, 0.3, -0.2
_OPENING, _CLOSING, _HALF_CLOSE, _STRONGEST_CADENCES = 0.4, 0.35, 0.15, 0.8
_SEVENTH_CADENCE, _TRIAD_CADENCE, _PREPARED_CADENCE = 0.3, 0.02, 0.15
_FIT_OF_RAISED_SIXTH, _FIT_OF_BLUES_SEVENTH, _FIT_OF_EXPLAINED, _LOSS_PER_FOREIGN_NOTE = 0.1, 0.85, 0.6, 0.35
_ODDS = 100.0
"""How much likelier a key is whose score is higher by 1."""
_KEYS_WITH_REASONS = 5


class KeyFit(NamedTuple):
    """One key with its score, its share of the probability (0 to 1), and the reasons in words."""

    key: Key
    score: float
    share: float
    reasons: tuple[str, ...]


def rank_keys(chords: Sequence[Chord], weights: Sequence[Beats] | None = None) -> tuple[KeyFit, ...]:
    """All keys that come into question, the likeliest first; ``weights`` are the chords' lengths in beats.

    Raises ValueError when there are no chords.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> best, *others = rank_keys([parse_chord(text) for text in ("Am", "F", "C", "G")])
    >>> str(best.key), str(others[0].key)
    ('A minor', 'C major')
    """
    if not chords:
        raise ValueError("a key cannot be found without chords")
    tally = _tally(chords, weights if weights is not None else [1] * len(chords))
    scored = sorted(
        ((_score(tally, key), key) for key in _candidates(chords)),
        key=lambda pair: (-pair[0], abs(pair[1].signature), pair[1].mode.has_minor_third, pair[1].tonic.fifths),
    )
    best = scored[0][0]
    shares = [_ODDS ** (score - best) for score, _ in scored]
    total = sum(shares)
    return tuple(
        KeyFit(key, score, share / total, _reasons(tally, key) if place < _KEYS_WITH_REASONS else ())
        for place, ((score, key), share) in enumerate(zip(scored, shares, strict=True))
    )


def keys_of(progression: Progression) -> tuple[KeyFit, ...]:
    """All keys that a progression's chords may be in, by their names and lengths, the likeliest first.

    Raises ValueError when there are no chords.
    """
    beats = [slot.beats for bar in progression.bars for slot in bar.slots if slot.chord is not None]
    return rank_keys(tuple(progression.chords()), beats)


def runner_up(fits: Sequence[KeyFit]) -> KeyFit:
    """The second likeliest key: the next major or minor one, before any other mode.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> str(runner_up(rank_keys([parse_chord(text) for text in ("Em", "Bm/D", "Am/C", "B7")])).key)
    'G major'
    """
    return next((fit for fit in fits[1:] if fit.key.mode in (MAJOR, MINOR)), fits[1])


class _Tally(NamedTuple):
    """What the score needs of a progression, counted once: time and number of each chord, and each row of three."""

    lengths: dict[_Sound, float]
    counts: dict[_Sound, int]
    rows: dict[tuple[_Sound | None, _Sound, _Sound], int]
    first: _Sound
    last: _Sound


def _tally(chords: Sequence[Chord], weights: Sequence[Beats]) -> _Tally:
    sounds = [(chord.root.fifths, chord.quality) for chord in chords]
    lengths: dict[_Sound, float] = {}
    for sound, weight in zip(sounds, weights, strict=True):
        lengths[sound] = lengths.get(sound, 0.0) + float(weight)
    rows = Counter(zip([None, *sounds], sounds, sounds[1:], strict=False))
    return _Tally(lengths, Counter(sounds), rows, sounds[0], sounds[-1])


def _candidates(chords: Sequence[Chord]) -> list[Key]:
    """Major and minor keys of a plain signature within reach of the roots, and other keys whose tonic sounds."""
    roots = {chord.root.fifths for chord in chords}
    reach = range(min(roots) - 5, max(roots) + 6)
    keys = [
        Key(pitch_class(tonic), mode)
        for tonic in reach
        for mode in (_PRIORS if tonic in roots else (MAJOR, MINOR))
        if abs(tonic + mode.brightness) <= (_WIDEST_SIGNATURE if tonic in roots else _PLAIN_SIGNATURE)
    ]
    return keys or [Key(pitch_class(tonic), mode) for tonic in reach for mode in (MAJOR, MINOR)]


def _score(tally: _Tally, key: Key) -> float:
    seen = {sound: _relative(sound, key) for sound in tally.lengths}
    fit = on_tonic = time = 0.0
    for sound, length in tally.lengths.items():
        time += length
        fit += length * _fit(seen[sound], key.mode)
        on_tonic += length * _is_tonic(seen[sound], key.mode)
    tonic = _TIME_ON_TONIC * on_tonic / time if on_tonic else _NO_TONIC
    cadences = min(sum(count * strength for count, strength in _cadences(tally, key)), _STRONGEST_CADENCES)
    return _FIT * fit / time + tonic + _ends(tally, seen, key.mode) + cadences + _PRIORS[key.mode]


def _relative(sound: _Sound, key: Key) -> RelativeChord:
    root = sound[0] - key.tonic.fifths
    return RelativeChord(root, sound[1], root)


def _cadences(tally: _Tally, key: Key) -> list[tuple[int, float]]:
    """How often a dominant goes to the tonic, and how much each such step tells: one pair a kind."""
    found = []
    for (before, first, second), count in tally.rows.items():
        if second[0] == key.tonic.fifths:
            prepared = before is not None and _prepares(_relative(before, key))
            strength = _cadence_strength(_relative(first, key), _relative(second, key), prepared, key.mode)
            found += [(count, strength)] if strength else []
    return found


def _prepares(chord: RelativeChord) -> bool:
    """Whether a chord is ii or IV: what stands before the dominant of a cadence."""
    return chord.root == SUBDOMINANT or (chord.root == SUPERTONIC and chord.quality.has_minor_third)


@lru_cache(maxsize=16384)
def _fit(chord: RelativeChord, mode: Mode) -> float:
    """How well one chord fits a mode: 1 for its own, less for what the mode can explain, least for strangers."""
    source = own_source(chord, mode)
    if source is not None:
        return _FIT_OF_RAISED_SIXTH if source == "melodic minor" else 1.0
    if mode == MAJOR and chord.root in (0, -1) and chord.quality.is_dominant_seventh:
        return _FIT_OF_BLUES_SEVENTH
    parallel = {MAJOR: MINOR, MINOR: MAJOR}.get(mode)
    is_borrowed = (
        parallel is not None and (mode == MAJOR or chord.root == 0) and own_source(chord, parallel) is not None
    )
    if is_borrowed or applied_target(chord, mode) is not None:
        return _FIT_OF_EXPLAINED
    return 1.0 - _LOSS_PER_FOREIGN_NOTE * (1 + sum(place not in mode.degrees for place in set(chord.places)))


def _is_tonic(chord: RelativeChord, mode: Mode) -> bool:
    third = chord.quality.interval(3)
    return chord.root == 0 and (third is None or (third == -3) == mode.has_minor_third)


def _ends(tally: _Tally, seen: dict[_Sound, RelativeChord], mode: Mode) -> float:
    """What opening and closing are worth: on the tonic (half for a dominant seventh, unless both ends are), on V."""
    first, last = seen[tally.first], seen[tally.last]
    total = 0.0
    for chord, other, worth in ((first, last, _OPENING), (last, first, _CLOSING)):
        if _is_tonic(chord, mode):
            total += worth if not chord.quality.is_dominant_seventh or other.root == 0 else worth / 2
    if not mode.has_minor_third and any(_is_minor_tonic(chord) for chord in seen.values()):
        total -= _OPENING  # a minor chord on it makes a weak major tonic
    if mode == MINOR and last.root == 0 and last.quality.interval(3) == 4 and not last.quality.is_dominant_seventh:
        total += _CLOSING  # a major third at the end of a piece in minor
    if mode in (MAJOR, MINOR) and last.root == DOMINANT and LEADING_TONE in last.places:
        total += _HALF_CLOSE
    return total


def _is_minor_tonic(chord: RelativeChord) -> bool:
    return chord.root == 0 and chord.quality.has_minor_third and chord.quality.interval(5) == 1


def _cadence_strength(first: RelativeChord, second: RelativeChord, prepared: bool, mode: Mode) -> float:
    """How much the step from a dominant with leading tone to the tonic tells; 0 for any other step.

    A chord with its seventh tells most, a triad little: I-IV looks like V-I. A dominant seventh is no
    goal; a major tonic is one in minor as well.
    """
    by_seventh = first.root == DOMINANT and first.quality.is_dominant_seventh
    by_triad = first.root == DOMINANT and first.quality.interval(3) == 4
    by_diminished = first.root == LEADING_TONE and first.quality.interval(5) == -6
    is_goal = _is_tonic(second, mode) or (mode == MINOR and second.root == 0 and second.quality.interval(3) == 4)
    if not is_goal or second.quality.is_dominant_seventh or not (by_triad or by_diminished):
        return 0.0
    tells = by_seventh or (by_diminished and 7 in first.quality.numbers)
    return (_SEVENTH_CADENCE if tells else _TRIAD_CADENCE) + _PREPARED_CADENCE * prepared


def _reasons(tally: _Tally, key: Key) -> tuple[str, ...]:
    chords = sum(tally.counts.values())
    own = sum(count for sound, count in tally.counts.items() if own_source(_relative(sound, key), key.mode) is not None)
    reasons = [f"{own} of {chords} chords belong to it" if own < chords else "all chords belong to it"]
    cadences = sum(count for count, _ in _cadences(tally, key))
    if cadences:
        reasons.append(f"its dominant goes to its tonic {'once' if cadences == 1 else f'{cadences} times'}")
    ends = [
        word
        for word, sound in (("opens", tally.first), ("closes", tally.last))
        if _is_tonic(_relative(sound, key), key.mode)
    ]
    if ends:
        reasons.append(f"it {' and '.join(ends)} on its tonic")
    return tuple(reasons)
