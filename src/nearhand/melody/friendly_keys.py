"""Which keys lie well for an instrument, and which for a whole band: few accidentals, or open strings.

All tables of this module: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from nearhand.harmony.moving import all_keys
from nearhand.melody.capo import lowest_fret
from nearhand.melody.instruments import (
    BASSES,
    BRASS,
    HARPS,
    KEYBOARDS,
    LOW_BRASS,
    PLUCKED,
    STRINGS,
    VOICES,
    WOODWINDS,
    Instrument,
)
from nearhand.melody.readings import spelled_for
from nearhand.theory.interval import shortest
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

SIGNATURES = {
    WOODWINDS: (-3, 3),
    BRASS: (-3, 2),
    LOW_BRASS: (-4, 1),
    STRINGS: (-2, 4),
    PLUCKED: (-1, 3),
    BASSES: (-3, 4),
    KEYBOARDS: (-4, 4),
    HARPS: (-6, 0),
    VOICES: (-6, 6),
}
"""Family to the written signatures that lie well, flats below zero: winds at few accidentals and brass on the flat
side, strings where theirs are open, harps in flats, whose strings are the longest; a singer's key is found by range.
Guitars are none of these: open shapes lie well, at a capo if need be."""


class FriendlyKey(NamedTuple):
    """A sounding key that lies well; ``fret`` is the capo it needs, 0 for none."""

    key: Key
    fret: int = 0


class SharedKey(NamedTuple):
    """A sounding key with the guitar's capo in it (0 for none), and the instruments for which it lies badly."""

    key: Key
    fret: int
    hard_for: tuple[Instrument, ...]


def friendly_keys(instrument: Instrument, progression: Progression) -> tuple[FriendlyKey, ...]:
    """The sounding keys of a progression's mode that lie well for an instrument, easiest first.

    Easiest: no capo or a low one, then few accidentals as written, then a short way from the progression's own key.
    The own key keeps its name; each other is spelled as the instrument's interval has it from the key that is read.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> from nearhand.notation.keys import parse_key
    >>> in_c = Progression(parse_key("C"), ())
    >>> [str(friendly.key.tonic) for friendly in friendly_keys(INSTRUMENTS["alto sax"], in_c)]
    ['Eb', 'Bb', 'Ab', 'Db', 'F', 'C', 'Gb']
    """
    ranked = []
    for sounding in _in_all_keys(progression, (instrument,)):
        if (fret := _fret(instrument, sounding)) is not None:
            accidentals = abs(instrument.written_key(sounding).signature)
            ranked.append(((fret, accidentals, _way(progression.key, sounding.key)), FriendlyKey(sounding.key, fret)))
    return tuple(friendly for _, friendly in sorted(ranked, key=lambda pair: pair[0]))


def shared_keys(instruments: Sequence[Instrument], progression: Progression) -> tuple[SharedKey, ...]:
    """The sounding keys that lie well for all the instruments, nearest to the progression's own key first.

    Where none does, those that lie badly for the fewest of them. The own key keeps its name, the others are spelled for
    most of the instruments.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> from nearhand.notation.keys import parse_key
    >>> band = [INSTRUMENTS[name] for name in ("trumpet", "alto sax", "guitar")]
    >>> [(str(shared.key.tonic), shared.fret) for shared in shared_keys(band, Progression(parse_key("C"), ()))]
    [('C', 0), ('Db', 1), ('Bb', 1), ('Eb', 1), ('Ab', 1), ('F', 1)]
    """
    found = [_shared(instruments, sounding) for sounding in _in_all_keys(progression, instruments)]
    fewest = min(len(shared.hard_for) for shared in found)
    best = [shared for shared in found if len(shared.hard_for) == fewest]
    return tuple(sorted(best, key=lambda shared: _way(progression.key, shared.key)))


def _in_all_keys(progression: Progression, instruments: Sequence[Instrument]) -> Iterator[Progression]:
    """The progression in its own key, then in the others as they are spelled for the instruments."""
    yield progression
    for key in all_keys(progression)[1:]:
        yield progression.in_key(spelled_for(progression.in_key(key), instruments))


def _shared(instruments: Sequence[Instrument], sounding: Progression) -> SharedKey:
    frets = [(instrument, _fret(instrument, sounding)) for instrument in instruments]
    hard = tuple(dict.fromkeys(instrument for instrument, fret in frets if fret is None))
    return SharedKey(sounding.key, max((fret for _, fret in frets if fret is not None), default=0), hard)


def _fret(instrument: Instrument, sounding: Progression) -> int | None:
    """The capo with which the sounding key lies well, 0 for none; None where it does not."""
    if instrument.has_frets:
        return lowest_fret(sounding.key)
    lowest, highest = SIGNATURES[instrument.family]
    return 0 if lowest <= instrument.written_key(sounding).signature <= highest else None


def _way(own: Key, key: Key) -> tuple[int, int, int]:
    """How far a key lies from the own one: in semitones, of two alike that with fewer accidentals, up before down."""
    interval = shortest(key.tonic.fifths - own.tonic.fifths)
    return abs(interval.semitones), abs(key.signature), -interval.semitones
