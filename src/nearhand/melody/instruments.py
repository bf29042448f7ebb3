"""What instruments read: how far the written note lies from the sounding one, and which families they belong to."""

from __future__ import annotations

from nearhand.harmony.moving import best_spelling
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.pitch import pitch_at
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

WOODWINDS, BRASS, LOW_BRASS, STRINGS, PLUCKED = "woodwinds", "brass", "low brass", "strings", "plucked"
BASSES, GUITARS, KEYBOARDS, HARPS, VOICES = "basses", "guitars", "keyboards", "harps", "voices"

AT_PITCH = Interval(0, 0)
OCTAVE_UP, OCTAVE_DOWN, TWO_OCTAVES_DOWN = Interval(0, 1), Interval(0, -1), Interval(0, -2)
SECOND_UP, SECOND_DOWN = Interval(2, -1), Interval(-2, 1)
MINOR_THIRD_UP, MINOR_THIRD_DOWN = Interval(-3, 2), Interval(3, -2)
FOURTH_UP, FIFTH_UP, SIXTH_UP = Interval(-1, 1), Interval(1, 0), Interval(3, -1)
NINTH_UP, THIRTEENTH_UP, SIXTEENTH_UP = Interval(2, 0), Interval(3, 0), Interval(2, 1)
MINOR_SEVENTH_DOWN, SIXTH_DOWN = Interval(2, -2), Interval(-3, 1)
"""Ways from the sounding note to the written one; seconds, sixths, ninth, thirteenth and sixteenth are major."""


class Instrument(NamedTuple):
    """An instrument: its family, the way from the sounding note to the written one, and other names it goes by."""

    name: str
    family: str
    interval: Interval = AT_PITCH
    aliases: tuple[str, ...] = ()

    @property
    def fifths(self) -> int:
        """The way from the sounding note to the written one, in fifths."""
        return self.interval.fifths

    @property
    def semitones(self) -> int:
        """The way from the sounding note to the written one, in semitones, octaves included."""
        return self.interval.semitones

    @property
    def has_frets(self) -> bool:
        """Whether it takes a capo."""
        return self.family == GUITARS

    def written(self, key: Key) -> Key:
        """The key it reads where a key sounds, spelled straight on along the line of fifths.

        >>> from nearhand.notation.keys import parse_key
        >>> str(INSTRUMENTS["alto sax"].written(parse_key("Ab")))
        'F major'
        """
        return key.moved(self.fifths)

    def written_key(self, sounding: Progression, melody: Melody | None = None) -> Key:
        """The key it reads where chords and a melody sound in their key, in the name that fits them best.

        Where six sharps meet six flats that is the one with fewer double accidentals in chords and melody.
        """
        key = sounding.key
        if not self.fifths:
            return key
        return best_spelling(sounding, self.written(key), key, melody)

    def written_melody(self, sounding: Melody, key: Key, octaves: int = 0) -> Melody:
        """A sounding melody as it is written, in the key that the instrument reads, some octaves on.

        Raises ValueError when a note would lie outside the MIDI numbers 0 to 127.

        >>> from nearhand.notation.keys import parse_key
        >>> from nearhand.theory.pitch import Pitch
        >>> sounding = Melody(Pitch(parse_key("Ab").tonic, 3), ())
        >>> str(INSTRUMENTS["alto sax"].written_melody(sounding, parse_key("F")).tonic)
        'F4'
        """
        written = sounding._replace(tonic=pitch_at(key.tonic, sounding.tonic.midi + self.semitones + 12 * octaves))
        written.check_range()
        return written


INSTRUMENTS = {
    instrument.name: instrument
    for instrument in (
        Instrument("piccolo", WOODWINDS, OCTAVE_DOWN, ("piccolo flute",)),
        Instrument("flute", WOODWINDS),
        Instrument("alto flute", WOODWINDS, FOURTH_UP),
        Instrument("bass flute", WOODWINDS, OCTAVE_UP),
        Instrument("recorder", WOODWINDS, AT_PITCH, ("treble recorder", "alto recorder")),
        Instrument("descant recorder", WOODWINDS, OCTAVE_DOWN, ("soprano recorder",)),
        Instrument("tenor recorder", WOODWINDS),
        Instrument("bass recorder", WOODWINDS, OCTAVE_DOWN),
        Instrument("oboe", WOODWINDS),
        Instrument("oboe d'amore", WOODWINDS, MINOR_THIRD_UP),
        Instrument("English horn", WOODWINDS, FIFTH_UP, ("cor anglais",)),
        Instrument("clarinet", WOODWINDS, SECOND_UP),
        Instrument("clarinet in C", WOODWINDS),
        Instrument("clarinet in A", WOODWINDS, MINOR_THIRD_UP),
        Instrument("clarinet in Eb", WOODWINDS, MINOR_THIRD_DOWN, ("sopranino clarinet",)),
        Instrument("alto clarinet", WOODWINDS, SIXTH_UP),
        Instrument("basset horn", WOODWINDS, FIFTH_UP),
        Instrument("bass clarinet", WOODWINDS, NINTH_UP),
        Instrument("bassoon", WOODWINDS),
        Instrument("contrabassoon", WOODWINDS, OCTAVE_UP, ("double bassoon", "contra bassoon")),
        Instrument("soprano sax", WOODWINDS, SECOND_UP),
        Instrument("alto sax", WOODWINDS, SIXTH_UP),
        Instrument("tenor sax", WOODWINDS, NINTH_UP),
        Instrument("baritone sax", WOODWINDS, THIRTEENTH_UP),
        Instrument("bass sax", WOODWINDS, SIXTEENTH_UP),
        Instrument("trumpet", BRASS, SECOND_UP),
        Instrument("trumpet in C", BRASS),
        Instrument("trumpet in D", BRASS, SECOND_DOWN),
        Instrument("trumpet in Eb", BRASS, MINOR_THIRD_DOWN),
        Instrument("piccolo trumpet", BRASS, MINOR_SEVENTH_DOWN),
        Instrument("piccolo trumpet in A", BRASS, SIXTH_DOWN),
        Instrument("cornet", BRASS, SECOND_UP),
        Instrument("cornet in Eb", BRASS, MINOR_THIRD_DOWN, ("soprano cornet",)),
        Instrument("flugelhorn", BRASS, SECOND_UP, ("fluegelhorn", "flügelhorn", "flugel horn")),
        Instrument("horn", BRASS, FIFTH_UP, ("French horn",)),
        Instrument("tenor horn", BRASS, SIXTH_UP, ("alto horn", "horn in Eb")),
        Instrument("euphonium treble clef", BRASS, NINTH_UP, ("baritone treble clef", "baritone horn treble clef")),
        Instrument("trombone treble clef", BRASS, NINTH_UP),
        Instrument("tuba in Eb treble clef", BRASS, THIRTEENTH_UP),
        Instrument("tuba in Bb treble clef", BRASS, SIXTEENTH_UP),
        Instrument("trombone", LOW_BRASS, AT_PITCH, ("tenor trombone",)),
        Instrument("bass trombone", LOW_BRASS),
        Instrument("euphonium", LOW_BRASS, AT_PITCH, ("baritone horn", "euphonium bass clef", "baritone bass clef")),
        Instrument("tuba", LOW_BRASS, AT_PITCH, ("bass tuba", "sousaphone", "tuba in Bb", "tuba in Eb", "tuba in F")),
        Instrument("violin", STRINGS, AT_PITCH, ("fiddle",)),
        Instrument("viola", STRINGS),
        Instrument("cello", STRINGS, AT_PITCH, ("violoncello",)),
        Instrument("bass", BASSES, OCTAVE_UP),
        Instrument("double bass", BASSES, OCTAVE_UP, ("contrabass", "string bass", "upright bass", "acoustic bass")),
        Instrument("bass guitar", BASSES, OCTAVE_UP, ("electric bass", "fretless bass")),
        Instrument("guitar", GUITARS, OCTAVE_UP, tuple(f"{kind} guitar" for kind in (
            "acoustic", "electric", "classical", "steel-string", "twelve-string", "lead", "rhythm"
        ))),
        Instrument("banjo", PLUCKED, OCTAVE_UP),
        Instrument("mandolin", PLUCKED),
        Instrument("ukulele", PLUCKED, AT_PITCH, ("uke",)),
        Instrument("harp", HARPS),
        Instrument("piano", KEYBOARDS, AT_PITCH, ("keyboard", "keys", "electric piano")),
        Instrument("organ", KEYBOARDS, AT_PITCH, ("pipe organ",)),
        Instrument("harpsichord", KEYBOARDS),
        Instrument("accordion", KEYBOARDS),
        Instrument("celesta", KEYBOARDS, OCTAVE_DOWN, ("celeste",)),
        Instrument("glockenspiel", KEYBOARDS, TWO_OCTAVES_DOWN, ("bells", "orchestra bells")),
        Instrument("xylophone", KEYBOARDS, OCTAVE_DOWN),
        Instrument("marimba", KEYBOARDS),
        Instrument("vibraphone", KEYBOARDS, AT_PITCH, ("vibes",)),
        Instrument("voice", VOICES, AT_PITCH, ("singer",)),
        Instrument("soprano voice", VOICES),
        Instrument("mezzo-soprano voice", VOICES),
        Instrument("alto voice", VOICES, AT_PITCH, ("contralto voice",)),
        Instrument("tenor voice", VOICES, OCTAVE_UP, ("tenor voice in 8vb clef", "tenor in 8vb clef")),
        Instrument("baritone voice", VOICES),
        Instrument("bass voice", VOICES),
    )
}  # fmt: skip
"""Instruments by name. Source: the transpositions of music21's module instrument for those that it has; of the others,
and of guitar, celesta, xylophone, glockenspiel and contrabassoon, common practice, no source."""
