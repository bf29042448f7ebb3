"""Which notes of a melody may lie on top of each chord: those that sound with it and belong to it, best first."""

from __future__ import annotations

from bisect import bisect_left, bisect_right

from nearhand.melody.harmonies import chord_spans
from nearhand.melody.standing import member_of, tension_of
from nearhand.theory.chord import RelativeChord
from nearhand.theory.melody import Melody, SoundingNote
from nearhand.theory.progression import Progression
from nearhand.voicing.on_top import Tops

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats


def top_notes(melody: Melody, progression: Progression) -> Tops:
    """For each chord of a progression, rests left out, the notes of the melody that may lie on top, best first.

    They are tones of the chord or stand over it as tensions. First comes the one that is struck with the chord, then
    the longest while it lasts, then the earliest.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> chords = resolve(read_chart("| C | G7 | N.C. | F |"), parse_key("C"))
    >>> top_notes(parse_melody("E4 F G C5 | C5 B4 - D5 | G4 - - - | r - - -"), chords).notes
    ((64, 67, 72), (71, 74), ())
    """
    sounding = melody.read_in(progression.key).sounding()
    onsets, ends = [note.onset for note in sounding], [note.onset + note.beats for note in sounding]
    rows = []
    for chord, (onset, end) in zip(progression.relative_chords, chord_spans(progression), strict=True):
        here = sounding[bisect_right(ends, onset) : bisect_left(onsets, end)]
        fitting = [note for note in here if _fits(chord, note)]
        fitting.sort(key=lambda note: (note.onset != onset, -_shared(note, onset, end)))
        rows.append(tuple(dict.fromkeys(note.pitch.midi for note in fitting)))
    return Tops(tuple(rows), melody.has_octaves)


def _shared(note: SoundingNote, onset: Beats, end: Beats) -> Beats:
    """How many beats a note sounds between two beats."""
    return min(note.onset + note.beats, end) - max(note.onset, onset)


def _fits(chord: RelativeChord, note: SoundingNote) -> bool:
    place = note.interval.fifths
    return bool(member_of(chord, place) or tension_of(chord, place))
