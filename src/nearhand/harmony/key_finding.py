"""Which key a row of chords is in: every key is scored by how well the chords fit it.

The rules are common practice, no source: a key gains by the share of time its own chords take, by a dominant that
goes to its tonic, and by opening and closing on its tonic; it loses by notes from outside. Major and minor come
before the other modes. The chords' own spelling decides between enharmonic keys.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from functools import lru_cache
from operator import itemgetter

from nearhand.harmony.applied import applied_target
from nearhand.harmony.sources import own_source
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, MAJOR, MINOR, MODES, SUBDOMINANT, SUBTONIC, SUPERTONIC, Mode
from nearhand.theory.pitch_class import pitch_class
from nearhand.theory.quality import QUALITIES, Quality
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
_OPENING, _CLOSING, _HALF_CLOSE, _HALF_CLOSE_ON_SEVENTH, _STRONGEST_CADENCES = 0.4, 0.35, 0.15, 0.45, 0.8
_SEVENTH_CADENCE, _TRIAD_CADENCE, _PREPARED_CADENCE = 0.3, 0.02, 0.15
_BLUES, _CHAIN = 0.9, 0.4
_FIT_OF_RAISED_SIXTH, _FIT_OF_BLUES_SEVENTH, _FIT_OF_EXPLAINED, _LOSS_PER_FOREIGN_NOTE = 0.1, 0.85, 0.6, 0.35
_ODDS = 100.0
"""How much likelier a key is whose score is higher by 1."""


class KeyFit(NamedTuple):
    """One key with its score and its share of the probability (0 to 1); ``key_reasons`` puts the reasons in words."""

    key: Key
    score: float
    share: float

    @property
    def percent(self) -> int:
        """The share in percent, 99 at most: no key is certain."""
        return min(round(100 * self.share), 99)


def rank_keys(chords: Sequence[Chord], weights: Sequence[Beats] | None = None) -> tuple[KeyFit, ...]:
    """All keys that come into question, the likeliest first; ``weights`` are the chords' lengths in beats.

    Raises ValueError when there are no chords.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> best, *others = rank_keys([parse_chord(text) for text in ("Am", "F", "C", "G")])
    >>> str(best.key), str(others[0].key)
    ('A minor', 'C major')
    """
    return ranked(scores_of(chords, weights, candidate_keys(chords)))


def scores_of(chords: Sequence[Chord], weights: Sequence[Beats] | None, keys: Sequence[Key]) -> dict[Key, float]:
    """The score of each of some keys: how well the chords fit it."""
    tally = _tally(chords, weights if weights is not None else [1] * len(chords))
    return {key: _score(tally, key) for key in keys}


def ranked(scores: Mapping[Key, float]) -> tuple[KeyFit, ...]:
    """Keys in the order of their scores; the shares follow from the odds that a difference of scores stands for."""
    scored = sorted(scores.items(), key=itemgetter(1), reverse=True)
    if len(set(scores.values())) < len(scores):
        scored.sort(key=lambda pair: (-pair[1], *_order(pair[0])))
    best = scored[0][1]
    shares = [_ODDS ** (score - best) for _, score in scored]
    total = sum(shares)
    fits = [(key, score, share / total) for (key, score), share in zip(scored, shares, strict=True)]
    return tuple(map(KeyFit._make, fits))


def _order(key: Key) -> tuple[int, bool, int]:
    """The order of keys that fit alike: fewest accidentals first, major before minor, flats before sharps."""
    return abs(key.signature), key.mode.has_minor_third, key.tonic.fifths


def keys_of(progression: Progression) -> tuple[KeyFit, ...]:
    """All keys that a progression's chords may be in, by their names and lengths, the likeliest first.

    Raises ValueError when there are no chords.
    """
    return rank_keys(tuple(progression.chords()), beats_of(progression))


def beats_of(progression: Progression) -> list[Beats]:
    """How long each chord of a progression lasts, rests left out."""
    return [slot.beats for bar in progression.bars for slot in bar.slots if slot.chord is not None]


def runner_up(fits: Sequence[KeyFit]) -> KeyFit:
    """The second likeliest key: the next major or minor one, before any other mode; the relative of an only one.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> str(runner_up(rank_keys([parse_chord(text) for text in ("Em", "Bm/D", "Am/C", "B7")])).key)
    'G major'
    """
    if len(fits) == 1:  # chords that only one key can spell
        return fits[0]._replace(key=fits[0].key.relative, share=0.0)
    return next((fit for fit in fits[1:] if fit.key.mode in (MAJOR, MINOR)), fits[1])


class _Tally(NamedTuple):
    """What the score needs of a progression, counted once: the time of each chord, and each row of three.

    ``ends_in_chain``: whether the last two chords are dominant sevenths a fifth apart.
    """

    lengths: dict[_Sound, float]
    rows: dict[tuple[_Sound | None, _Sound, _Sound], int]
    first: _Sound
    last: _Sound
    ends_in_chain: bool


def _tally(chords: Sequence[Chord], weights: Sequence[Beats]) -> _Tally:
    sounds = [(chord.root.fifths, _plain(chord.quality)) for chord in chords]
    lengths: dict[_Sound, float] = {}
    for sound, weight in zip(sounds, weights, strict=True):
        lengths[sound] = lengths.get(sound, 0.0) + float(weight)
    rows = Counter(zip([None, *sounds], sounds, sounds[1:], strict=False))
    chain = len(sounds) > 1 and sounds[-2] == (sounds[-1][0] + DOMINANT, sounds[-1][1])
    return _Tally(lengths, rows, sounds[0], sounds[-1], chain and sounds[-1][1].is_dominant_seventh)


def _plain(quality: Quality) -> Quality:
    """A dominant without its ninths, elevenths and thirteenths: what lies above its seventh tells no key."""
    return QUALITIES["dominant"] if quality.is_dominant_seventh else quality


def candidate_keys(chords: Sequence[Chord]) -> list[Key]:
    """Major and minor keys of a plain signature within reach of the roots, and other keys whose tonic sounds.

    Raises ValueError when there are no chords.
    """
    if not chords:
        raise ValueError("a key cannot be found without chords")
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
        fit += length * chord_fit(seen[sound], key.mode)
        on_tonic += length * is_tonic(seen[sound], key.mode)
    tonic = _TIME_ON_TONIC * on_tonic / time if on_tonic else _NO_TONIC
    cadences = min(sum(count * strength for count, strength in _cadences(tally, key)), _STRONGEST_CADENCES)
    blues = _BLUES if key.mode == MAJOR and _turns_as_a_blues(tally, key) else 0.0
    return _FIT * fit / time + tonic + _ends(tally, seen, key.mode) + cadences + blues + _PRIORS[key.mode]


def _turns_as_a_blues(tally: _Tally, key: Key) -> bool:
    """Whether the fourth degree as a dominant seventh goes back to the tonic as one, and the piece opens on that."""
    if tally.first[0] != key.tonic.fifths or not tally.first[1].is_dominant_seventh:
        return False
    step = ((key.tonic.fifths + SUBDOMINANT, QUALITIES["dominant"]), (key.tonic.fifths, QUALITIES["dominant"]))
    return any((first, second) == step for _, first, second in tally.rows)


def _relative(sound: _Sound, key: Key) -> RelativeChord:
    root = sound[0] - key.tonic.fifths
    return RelativeChord(root, sound[1], root)


def _cadences(tally: _Tally, key: Key) -> list[tuple[int, float]]:
    """How often a dominant goes to the tonic, and how much each such step tells: one pair a kind."""
    found = []
    for (before, first, second), count in tally.rows.items():
        if second[0] == key.tonic.fifths:
            prepared = before is not None and is_predominant(_relative(before, key))
            strength = _cadence_strength(_relative(first, key), _relative(second, key), prepared, key.mode)
            found += [(count, strength)] if strength else []
    return found


def is_predominant(chord: RelativeChord) -> bool:
    """Whether a chord is ii or IV: what stands before the dominant of a cadence."""
    return chord.root == SUBDOMINANT or (chord.root == SUPERTONIC and chord.quality.has_minor_third)


@lru_cache(maxsize=16384)
def chord_fit(chord: RelativeChord, mode: Mode) -> float:
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


def is_tonic(chord: RelativeChord, mode: Mode) -> bool:
    """Whether a chord stands on the tonic with the mode's third, or without any."""
    third = chord.quality.interval(3)
    return chord.root == 0 and (third is None or (third == -3) == mode.has_minor_third)


def _ends(tally: _Tally, seen: dict[_Sound, RelativeChord], mode: Mode) -> float:
    """What opening and closing are worth: on the tonic (half for a dominant seventh, unless both ends are), on V."""
    first, last = seen[tally.first], seen[tally.last]
    total = 0.0
    for chord, other, worth in ((first, last, _OPENING), (last, first, _CLOSING)):
        if is_tonic(chord, mode):
            total += worth if not chord.quality.is_dominant_seventh or other.root == 0 else worth / 2
    if not mode.has_minor_third and any(_is_minor_tonic(chord) for chord in seen.values()):
        total -= _OPENING  # a minor chord on it makes a weak major tonic
    if mode == MINOR and last.root == 0 and last.quality.interval(3) == 4 and not last.quality.is_dominant_seventh:
        total += _CLOSING  # a major third at the end of a piece in minor
    if mode in (MAJOR, MINOR) and last.root == DOMINANT and LEADING_TONE in last.places:
        on_seventh = last.quality.is_dominant_seventh and first != last
        total += (_HALF_CLOSE_ON_SEVENTH if on_seventh else _HALF_CLOSE) + _CHAIN * tally.ends_in_chain
    return total


def _is_minor_tonic(chord: RelativeChord) -> bool:
    return chord.root == 0 and chord.quality.has_minor_third and chord.quality.interval(5) == 1


def is_cadence(first: RelativeChord, second: RelativeChord, mode: Mode) -> bool:
    """Whether a dominant with leading tone, or in major the backdoor dominant, goes to the tonic.

    A dominant seventh is no goal; a major tonic is one in minor as well.
    """
    is_backdoor = mode == MAJOR and first.root == SUBTONIC and first.quality.is_dominant_seventh
    is_dominant = (first.root == DOMINANT and first.quality.interval(3) == 4) or is_backdoor
    is_goal = is_tonic(second, mode) or (mode == MINOR and second.root == 0 and second.quality.interval(3) == 4)
    return is_goal and not second.quality.is_dominant_seventh and (is_dominant or _is_leading_tone_chord(first))


def has_telling_seventh(dominant: RelativeChord) -> bool:
    """Whether a dominant has the seventh that makes it plain: a triad tells little, for I-IV looks like V-I."""
    return dominant.quality.is_dominant_seventh or (_is_leading_tone_chord(dominant) and 7 in dominant.quality.numbers)


def _is_leading_tone_chord(chord: RelativeChord) -> bool:
    return chord.root == LEADING_TONE and chord.quality.interval(5) == -6


def _cadence_strength(first: RelativeChord, second: RelativeChord, prepared: bool, mode: Mode) -> float:
    """How much the step from a dominant to the tonic tells; 0 for any other step."""
    if not is_cadence(first, second, mode):
        return 0.0
    return (_SEVENTH_CADENCE if has_telling_seventh(first) else _TRIAD_CADENCE) + _PREPARED_CADENCE * prepared
