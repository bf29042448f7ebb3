"""Which keys a band reads where music sounds in a key, how many accidentals that is, and how the key is then named."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.melody.capo import capos
from nearhand.melody.instruments import Instrument
from nearhand.theory.key import Key, spellings
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple


class Reading(NamedTuple):
    """The key that an instrument reads; ``fret``: where its best capo goes, whose open shapes are of that key.

    ``fret`` is 0 where open shapes need no capo, and None for instruments without frets.
    """

    instrument: Instrument
    key: Key
    fret: int | None = None


def readings(sounding: Progression, instruments: Sequence[Instrument]) -> tuple[Reading, ...]:
    """What each instrument reads; one with frets the shapes of its best capo.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> from nearhand.notation.keys import parse_key
    >>> music = Progression(parse_key("Eb"), ())
    >>> [(str(one.key), one.fret) for one in readings(music, [INSTRUMENTS["alto sax"], INSTRUMENTS["guitar"]])]
    [('C major', None), ('D major', 1)]
    """
    return tuple(_reading(sounding, instrument) for instrument in instruments)


def _reading(sounding: Progression, instrument: Instrument) -> Reading:
    if instrument.has_frets:
        best = capos(sounding)[0]
        return Reading(instrument, best.shapes, best.fret)
    return Reading(instrument, instrument.written_key(sounding))


def spelled_for(sounding: Progression, instruments: Sequence[Instrument]) -> Key:
    """The key of what sounds, by the name from which the most instruments read theirs at their own interval.

    Where two names serve as many, the one it came with.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> from nearhand.notation.keys import parse_key
    >>> music = Progression(parse_key("Gb"), ())                 # a clarinet in A reads A, a minor third above F sharp
    >>> str(spelled_for(music, [INSTRUMENTS["clarinet in A"]])), str(spelled_for(music, [INSTRUMENTS["alto sax"]]))
    ('F# major', 'Gb major')
    """

    def respelled(key: Key) -> int:
        music = sounding.in_key(key)
        return sum(instrument.written_key(music) != instrument.written(key) for instrument in instruments)

    return min((sounding.key, *spellings(sounding.key)), key=respelled)


def accidentals(key: Key, read: Sequence[Reading]) -> int:
    """Accidentals of all the signatures that are read; of the key that sounds where no instruments are told."""
    return sum(abs(one.key.signature) for one in read) if read else abs(key.signature)
