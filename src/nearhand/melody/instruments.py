"""What instruments read: how far the written note lies from the sounding one."""

from __future__ import annotations

from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple


class Instrument(NamedTuple):
    """An instrument: the way from the sounding note to the written one, in fifths, and in semitones with octaves."""

    name: str
    fifths: int = 0
    semitones: int = 0
    has_frets: bool = False

    def written(self, key: Key) -> Key:
        """The key it reads where a key sounds, spelled straight on along the line of fifths.

        >>> from nearhand.notation.keys import parse_key
        >>> str(INSTRUMENTS["alto sax"].written(parse_key("Ab")))
        'F major'
        """
        return key.moved(self.fifths)


INSTRUMENTS = {
    instrument.name: instrument
    for instrument in (
        Instrument("piano"),
        Instrument("flute"),
        Instrument("oboe"),
        Instrument("bassoon"),
        Instrument("violin"),
        Instrument("viola"),
        Instrument("cello"),
        Instrument("trombone"),
        Instrument("tuba"),
        Instrument("piccolo", 0, -12),
        Instrument("glockenspiel", 0, -24),
        Instrument("guitar", 0, 12, has_frets=True),
        Instrument("banjo", 0, 12),
        Instrument("bass", 0, 12),
        Instrument("clarinet", 2, 2),
        Instrument("clarinet in A", -3, 3),
        Instrument("clarinet in Eb", 3, -3),
        Instrument("bass clarinet", 2, 14),
        Instrument("trumpet", 2, 2),
        Instrument("trumpet in D", -2, -2),
        Instrument("cornet", 2, 2),
        Instrument("flugelhorn", 2, 2),
        Instrument("soprano sax", 2, 2),
        Instrument("alto sax", 3, 9),
        Instrument("tenor sax", 2, 14),
        Instrument("baritone sax", 3, 21),
        Instrument("horn", 1, 7),
        Instrument("English horn", 1, 7),
        Instrument("alto flute", -1, 5),
        Instrument("oboe d'amore", -3, 3),
    )
}
"""Instruments by name. Source: the transpositions of music21's module instrument; of trumpet in D, clarinet in Eb,
alto flute and oboe d'amore, common practice, no source."""
