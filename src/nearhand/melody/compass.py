"""How far instruments reach, and the octave in which they are given a melody."""

from __future__ import annotations

from nearhand.melody.instruments import Instrument
from nearhand.melody.places import place_of
from nearhand.melody.ranges import PLAIN_KEY, VOICES, Voice
from nearhand.melody.spans import Span, span_of
from nearhand.notation.notes import read_pitch_class
from nearhand.theory.key import Key, pitch_in
from nearhand.theory.melody import HIGHEST, LOWEST, Melody
from nearhand.theory.pitch import Pitch
from nearhand.theory.record import NamedTuple

OCTAVE = 12


class Compass(NamedTuple):
    """The lowest and the highest note that an ordinary player has on an instrument, as they are written."""

    low: Pitch
    high: Pitch


class Register(NamedTuple):
    """A melody as an instrument reads it, and how many octaves it was moved for that.

    ``outside``: the notes, each once and from the lowest up, that lie below or above the compass all the same.
    """

    melody: Melody
    octaves: int
    outside: tuple[Pitch, ...]


def _pitch(text: str) -> Pitch:
    note, end = read_pitch_class(text, 0)
    return Pitch(note, int(text[end:]))


COMPASSES = {
    name: Compass(*map(_pitch, ends.split()))
    for names, ends in (
        ("piccolo", "D4 C7"),
        ("flute", "C4 C7"),
        ("alto flute", "C4 G6"),
        ("bass flute", "C4 E6"),
        ("recorder", "F4 G6"),
        ("descant recorder", "C4 D6"),
        ("tenor recorder", "C4 C6"),
        ("bass recorder", "F2 D4"),
        ("oboe", "Bb3 F6"),
        ("oboe d'amore, English horn", "B3 E6"),
        ("clarinet, clarinet in C, clarinet in A, clarinet in Eb", "E3 G6"),
        ("alto clarinet", "Eb3 E6"),
        ("basset horn", "C3 E6"),
        ("bass clarinet", "Eb3 C6"),
        ("bassoon", "Bb1 C5"),
        ("contrabassoon", "Bb1 F4"),
        ("soprano sax, alto sax, tenor sax, baritone sax", "Bb3 F#6"),
        ("bass sax", "Bb3 F6"),
        ("trumpet, trumpet in C, trumpet in D, trumpet in Eb, cornet, cornet in Eb", "F#3 C6"),
        ("piccolo trumpet, piccolo trumpet in A", "F#3 A5"),
        ("flugelhorn", "F#3 Bb5"),
        ("horn", "F#2 A5"),
        ("tenor horn, tuba in Eb treble clef, tuba in Bb treble clef", "F#3 A5"),
        ("euphonium treble clef, trombone treble clef", "F#3 C6"),
        ("trombone, euphonium", "E2 Bb4"),
        ("bass trombone", "Bb1 G4"),
        ("tuba", "D1 F4"),
        ("violin", "G3 E7"),
        ("viola", "C3 C6"),
        ("cello", "C2 A5"),
        ("bass, double bass", "E2 C5"),
        ("bass guitar", "E2 Eb5"),
        ("guitar", "E3 B6"),
        ("banjo", "C4 A6"),
        ("mandolin", "G3 A6"),
        ("ukulele", "C4 A5"),
        ("harp", "C1 G#7"),
        ("piano", "A0 C8"),
        ("organ", "C2 G6"),
        ("harpsichord", "F1 F6"),
        ("accordion", "F3 A6"),
        ("celesta", "C3 C7"),
        ("glockenspiel", "G3 C6"),
        ("xylophone", "F3 C7"),
        ("marimba", "A2 C7"),
        ("vibraphone", "F3 F6"),
    )
    for name in names.split(", ")
}
"""Names of instruments to their written compasses. Source of the lowest notes, and of both ends of piano, harp,
harpsichord and accordion: music21 10.5.1, module instrument, for those that it has; of all others handbooks, from
memory. We differ from it on purpose where it tells sounding notes though the instrument is written an octave above
(guitar, bass guitar, banjo); for the horn, whose pedal notes below F sharp 2 are left out; and for the organ, where it
stops at the 49 keys of small manuals."""


def compass_of(instrument: Instrument) -> Compass:
    """The compass of an instrument as it is written; of a voice that of ``ranges.VOICES``, and of any voice of all.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> for name in ("baritone sax", "tenor voice", "voice"):
    ...     print(name, *compass_of(INSTRUMENTS[name]))
    baritone sax Bb3 F#6
    tenor voice C4 C6
    voice E2 C6
    """
    found = COMPASSES.get(instrument.name)
    if found is not None:
        return found
    voice = kind_of_voice(instrument)
    kinds = VOICES.values() if voice is None else (voice,)
    low, high = min(kind.low for kind in kinds), max(kind.high for kind in kinds)
    return Compass(*(pitch_in(PLAIN_KEY, number + instrument.semitones) for number in (low, high)))


def kind_of_voice(instrument: Instrument) -> Voice | None:
    """The kind of voice that a part is written for; None where it is for none of them, or for any voice.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> [kind and kind.name for kind in map(kind_of_voice, (INSTRUMENTS["bass voice"], INSTRUMENTS["bass"]))]
    ['bass', None]
    """
    return None if instrument.name in COMPASSES else VOICES.get(instrument.name.removesuffix(" voice"))


def in_compass(instrument: Instrument, sounding: Melody, key: Key) -> Register:
    """A sounding melody as an instrument reads it in a key, in an octave that it can play.

    That is the octave in which it sounds where all of it lies inside the compass; else it is moved by as few octaves
    as bring all of it inside, or most of it by time. A melody whose octave is not known goes to where its middle is
    nearest to the middle of the compass. A kind of voice sings where the tune lies best for it, as in ``places``, in
    an octave in which no less of it would lie inside. The melody's numbers are kept. Raises ValueError when a note
    would lie outside the MIDI numbers 0 to 127 in every octave.

    >>> from nearhand.melody.instruments import INSTRUMENTS
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> found = in_compass(INSTRUMENTS["baritone sax"], parse_melody("Eb: Eb4 G4 Eb5"), parse_key("C"))
    >>> [str(pitch) for pitch in found.melody.pitches()], found.octaves, found.outside
    (['C5', 'E5', 'C6'], -1, ())
    """
    compass = compass_of(instrument)
    span = span_of(sounding)
    octaves = 0 if span is None else _octaves(span, instrument, compass)
    written = instrument.written_melody(sounding, key, octaves)
    return Register(written, octaves, _outside(span_of(written), compass, key))


def _octaves(span: Span, instrument: Instrument, compass: Compass) -> int:
    """The octaves to move a melody that sounds from the lowest to the highest note of a span."""
    semitones, voice = instrument.semitones, kind_of_voice(instrument)
    low, high = span.low + semitones, span.high + semitones
    possible = range(-((low - LOWEST) // OCTAVE), (HIGHEST - high) // OCTAVE + 1)

    def cost(octaves: int) -> tuple[int | float, ...]:
        shift = semitones + OCTAVE * octaves
        from_middle = abs(low + high + 2 * OCTAVE * octaves - compass.low.midi - compass.high.midi)
        if voice is not None:
            place = place_of(span, voice, span.low + OCTAVE * octaves)
            return *_left_out(span, shift, compass), *place.rank, abs(octaves)
        if span.is_free:
            return from_middle, octaves
        return *_left_out(span, shift, compass), abs(octaves), from_middle

    return min(possible, key=cost, default=0)


def _left_out(span: Span, shift: int, compass: Compass) -> tuple[int | float, bool]:
    """How long notes lie outside the compass after a shift in semitones, and whether any does, grace notes too."""

    def is_outside(above: int) -> bool:
        return not compass.low.midi <= span.low + above + shift <= compass.high.midi

    time = sum(beats for above, beats in span.times if is_outside(above))
    return float(time), any(is_outside(above) for above, _ in span.spellings)


def _outside(span: Span | None, compass: Compass, key: Key) -> tuple[Pitch, ...]:
    """The notes of a written melody that the compass leaves out, grace notes too, from the lowest up."""
    if span is None:
        return ()
    pitches = (span.pitch(above, span.low, key) for above, _ in span.spellings)
    return tuple(pitch for pitch in pitches if not compass.low.midi <= pitch.midi <= compass.high.midi)
