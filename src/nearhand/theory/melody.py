"""A melody without its key: intervals above a tonic and lengths in beats. Another key is another tonic."""

from __future__ import annotations

from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.pitch import Pitch, interval_between, pitch_at
from nearhand.theory.pitch_class import pitch_class
from nearhand.theory.progression import COMMON_TIME, Meter
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

LOWEST, HIGHEST = 0, 127
"""The MIDI numbers that a note may have."""
NEAREST, UPWARD, DOWNWARD = "nearest", "up", "down"
WAYS = (NEAREST, UPWARD, DOWNWARD)
"""How a melody goes to another key: by the shortest way (a tritone goes up), always up, or always down."""
_MIDDLE_C = Pitch(pitch_class(0), 4)


class MelodyNote(NamedTuple):
    """A note of a melody, or a rest (``interval`` None), inside one bar.

    ``interval`` leads from the melody's tonic to the note. ``beats`` count in units of the bar's meter. A note that
    ``is_held`` goes on sounding from the note before it, as over a bar line. ``graces`` are the short notes before it,
    which take no time of their own. ``ornament`` is one of ``ORNAMENTS``, or empty.
    """

    interval: Interval | None
    beats: Beats
    is_held: bool = False
    graces: tuple[Interval, ...] = ()
    ornament: str = ""


ORNAMENTS = ("tr", "mordent", "inverted-mordent", "turn", "inverted-turn")
"""Their words but for ``tr`` are those of MusicXML 4.0; the mordent goes to the note below, the inverted one above."""


class MelodyBar(NamedTuple):
    """One bar: its notes and rests in time order, which fill its meter; a first or last bar may be shorter.

    The signs at its edges are those of a melody alone; over chords theirs count.
    """

    notes: tuple[MelodyNote, ...]
    meter: Meter = COMMON_TIME
    opens_repeat: bool = False
    closes_repeat: bool = False
    ends_section: bool = False

    @property
    def beats(self) -> Beats:
        """How many beats its notes and rests last."""
        return sum(note.beats for note in self.notes)

    @property
    def is_short(self) -> bool:
        """Whether it lasts less than its meter."""
        return self.beats < self.meter.beats


class SoundingNote(NamedTuple):
    """A note as it is heard, all that is held put together.

    ``bar`` counts from 1 (the pickup is bar 0), ``onset`` are beats from the start of bar 1 (below 0 in the pickup),
    ``beats`` how long it lasts.
    """

    pitch: Pitch
    interval: Interval
    bar: int
    onset: Beats
    beats: Beats
    ornament: str = ""


class Melody(NamedTuple):
    """A melody: the pitch of its tonic, and bars of notes counted from it.

    ``has_octaves``: whether it is known in which octave it sounds; degrees and names without octaves leave that open.
    """

    tonic: Pitch
    bars: tuple[MelodyBar, ...]
    has_octaves: bool = True

    @property
    def has_pickup(self) -> bool:
        """Whether its first bar is the end of a bar: shorter than the meter, with more to come."""
        return len(self.bars) > 1 and self.bars[0].is_short

    def well_counted(self) -> Melody:
        """The same melody counted from the tonic in whose octave most of its notes lie, of equal ones the nearest.

        So its degrees need few octave marks. A melody whose octave is not known stays as it is.

        >>> from nearhand.theory.pitch_class import pitch_class
        >>> high = tuple(MelodyNote(Interval(place, 1), 1) for place in (0, 2))
        >>> str(Melody(Pitch(pitch_class(0), 4), (MelodyBar(high),)).well_counted().tonic)
        'C5'
        """
        octaves = [note.interval.steps // 7 for note in self.notes if note.interval is not None]
        if not self.has_octaves or not octaves:
            return self
        most = max(sorted(set(octaves), key=abs), key=octaves.count)
        return self._counted_from(self.tonic._replace(octave=self.tonic.octave + most))

    @property
    def notes(self) -> tuple[MelodyNote, ...]:
        """All notes and rests in written order; what is held over a bar line stands in both bars."""
        return tuple(note for bar in self.bars for note in bar.notes)

    def in_key(self, key: Key, way: str = NEAREST, octaves: int = 0) -> Melody:
        """The same melody from another tonic, which lies the given way from its own one, and some octaves on.

        ``way``: one of WAYS. Raises ValueError when a note would lie outside the MIDI numbers 0 to 127.

        >>> from nearhand.notation.keys import parse_key
        >>> melody = Melody(Pitch(parse_key("C").tonic, 4), ())
        >>> [str(melody.in_key(parse_key(name)).tonic) for name in ("G", "F#", "Bb")]
        ['G3', 'F#4', 'Bb3']
        >>> str(melody.in_key(parse_key("G"), UPWARD).tonic), str(melody.in_key(parse_key("G"), octaves=1).tonic)
        ('G4', 'G4')
        """
        moved = self._replace(tonic=tonic_near(key, self.tonic, way, octaves))
        moved.check_range()
        return moved

    def read_in(self, key: Key) -> Melody:
        """The same sounding notes, counted from another tonic.

        >>> from nearhand.notation.keys import parse_key
        >>> fifth = Melody(Pitch(parse_key("C").tonic, 4), (MelodyBar((MelodyNote(Interval(1, 0), 4),)),))
        >>> read = fifth.read_in(parse_key("G"))
        >>> str(read.tonic), read.notes[0].interval
        ('G3', Interval(fifths=0, octaves=1))
        """
        return self._counted_from(tonic_near(key, self.tonic))

    def _counted_from(self, tonic: Pitch) -> Melody:
        """The same sounding notes, counted from a pitch."""
        if tonic == self.tonic:
            return self
        shift = interval_between(tonic, self.tonic)
        bars = tuple(bar._replace(notes=tuple(_shifted(note, shift) for note in bar.notes)) for bar in self.bars)
        return self._replace(tonic=tonic, bars=bars)

    def pitches(self) -> tuple[Pitch | None, ...]:
        """The spelled pitch of every note of ``notes``, None for rests: one addition for each interval that occurs."""
        known: dict[Interval | None, Pitch | None] = {None: None}
        found = []
        for bar in self.bars:
            for note in bar.notes:
                interval = note.interval
                if interval not in known:
                    known[interval] = None if interval is None else self.tonic.up(interval)
                found.append(known[interval])
        return tuple(found)

    def sounding(self) -> tuple[SoundingNote, ...]:
        """The notes as they are heard, in order: rests left out, held notes put together, grace notes left out.

        >>> fifth = MelodyNote(Interval(1, 0), 4)
        >>> from nearhand.theory.pitch_class import PitchClass
        >>> held = Melody(Pitch(PitchClass(0), 4), (MelodyBar((fifth,)), MelodyBar((fifth._replace(is_held=True),))))
        >>> [(str(note.pitch), note.bar, note.onset, note.beats) for note in held.sounding()]
        [('G4', 1, 0, 8)]
        """
        found: list[SoundingNote] = []
        onset: Beats = -self.bars[0].beats if self.has_pickup else 0
        pitches = iter(self.pitches())
        for number, bar in enumerate(self.bars, start=0 if self.has_pickup else 1):
            for note in bar.notes:
                pitch = next(pitches)
                if note.is_held and found:
                    found[-1] = found[-1]._replace(beats=found[-1].beats + note.beats)
                elif note.interval is not None and pitch is not None:
                    found.append(SoundingNote(pitch, note.interval, number, onset, note.beats, note.ornament))
                onset += note.beats
        return tuple(found)

    @property
    def span(self) -> tuple[Pitch, Pitch] | None:
        """The lowest and the highest note, grace notes included; None for a melody of rests."""
        intervals = {note.interval for note in self.notes} | {grace for note in self.notes for grace in note.graces}
        pitches = [self.tonic.up(interval) for interval in intervals if interval is not None]
        if not pitches:
            return None
        return min(pitches, key=lambda pitch: pitch.midi), max(pitches, key=lambda pitch: pitch.midi)

    def check_range(self) -> None:
        """Raise ValueError when a note lies outside the MIDI numbers 0 to 127."""
        span = self.span
        for pitch in span or ():
            if not LOWEST <= pitch.midi <= HIGHEST:
                raise ValueError(f"{pitch} lies outside the MIDI numbers {LOWEST} to {HIGHEST}")


def _shifted(note: MelodyNote, by: Interval) -> MelodyNote:
    if note.interval is None:
        return note
    return note._replace(interval=by + note.interval, graces=tuple(by + grace for grace in note.graces))


def tonic_near(key: Key, pitch: Pitch, way: str = NEAREST, octaves: int = 0) -> Pitch:
    """The tonic of a key that lies nearest to a pitch, or above, or below it; and some octaves on.

    A tonic of the same sound stays where it is, whatever the way.
    """
    up = (key.tonic.semitones - pitch.midi) % 12
    semitones = up if way == UPWARD or up == 0 or (way == NEAREST and up <= 6) else up - 12
    return pitch_at(key.tonic, pitch.midi + semitones + 12 * octaves)


def home_tonic(key: Key) -> Pitch:
    """Where the tonic of a key is taken to sound when nothing says it: nearest to middle C, from G3 up to F♯4.

    >>> from nearhand.notation.keys import parse_key
    >>> [str(home_tonic(parse_key(name))) for name in ("C", "F#", "G", "Bb")]
    ['C4', 'F#4', 'G3', 'Bb3']
    """
    return tonic_near(key, _MIDDLE_C)
