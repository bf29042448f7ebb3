"""In which keys a tune lies well for a singer, or for several at once.

A tune fits where its lowest and highest note lie within every singer's range. Of the keys that fit, that one is best in
which the middle of the tune lies nearest to the middle of the comfortable part, for the singer who is worst off; then
the one with fewer accidentals; then the one nearest to the tune's own key (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.moving import best_spelling
from nearhand.melody.ranges import Voice
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

_OCTAVE = 12
_LOWEST, _HIGHEST = 0, 127


class Span(NamedTuple):
    """The lowest and the highest note of a tune as MIDI numbers; ``is_free``: its octave is not known."""

    low: int
    high: int
    is_free: bool = False


class Fit(NamedTuple):
    """A key in which a tune fits all singers.

    ``shift``: semitones from the tune's own key. ``room``: for each singer the semitones left below and above.
    ``off_middle``: half semitones from the middle of the tune to the middle of the comfortable part, at the worst.
    """

    key: Key
    shift: int
    low: int
    high: int
    room: tuple[tuple[int, int], ...]
    off_middle: int


def fitting_keys(span: Span, singers: Sequence[Voice], progression: Progression) -> tuple[Fit, ...]:
    """The keys in which a tune fits all singers, best first, each key once; empty where none does.

    ``progression`` is the tune's chords, in whose key ``span`` is; it may be empty but for its key.

    >>> from nearhand.melody.ranges import voice_of
    >>> from nearhand.notation.keys import parse_key
    >>> tune = Progression(parse_key("C"), ())
    >>> [(str(fit.key), fit.shift) for fit in fitting_keys(Span(60, 74), [voice_of(55, 69)], tune)]
    [('G major', -5)]
    """
    found: dict[int, Fit] = {}
    for low in range(max(voice.low for voice in singers), min(voice.high for voice in singers) + 1):
        high = low + span.high - span.low
        if all(high <= voice.high for voice in singers):
            fit = _fit(span, low, high, singers, progression)
            best = found.get(fit.key.tonic.semitones)
            if best is None or _rank(fit) < _rank(best):
                found[fit.key.tonic.semitones] = fit
    return tuple(sorted(found.values(), key=_rank))


def lacking(span: Span, singers: Sequence[Voice]) -> int:
    """Semitones by which a tune is too wide for what all singers have in common; below 1 where it is not."""
    common = min(voice.high for voice in singers) - max(voice.low for voice in singers)
    return span.high - span.low - common


def nearest_misfit(span: Span, singers: Sequence[Voice], progression: Progression) -> Fit:
    """The key in which a tune that fits nowhere passes the ranges by the fewest semitones, at the worst."""
    width = span.high - span.low
    fits = (_fit(span, low, low + width, singers, progression) for low in range(_LOWEST, _HIGHEST - width + 1))
    return min(fits, key=lambda fit: (-min(min(room) for room in fit.room), *_rank(fit)))


def _fit(span: Span, low: int, high: int, singers: Sequence[Voice], progression: Progression) -> Fit:
    shift = low - span.low
    if span.is_free:
        shift = (shift + 6) % _OCTAVE - 6
    key = best_spelling(progression, progression.key.moved(7 * shift), come_from=progression.key)
    room = tuple((low - voice.low, voice.high - high) for voice in singers)
    off = max(abs(low + high - voice.comfort_low - voice.comfort_high) for voice in singers)
    return Fit(progression.key if shift % _OCTAVE == 0 else key, shift, low, high, room, off)


def _rank(fit: Fit) -> tuple[int, int, int, int]:
    return fit.off_middle, abs(fit.key.signature), abs(fit.shift), fit.shift
