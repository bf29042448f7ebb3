"""A melody against its chords: what every note is over the chord that it sounds with.

The kinds are asked in this order, and the first that fits is told:

1. a tone of the chord, by its sound;
2. for a *light* note (a beat at most, or shorter than two and off the beat) what it is by the notes around it:
   suspension, retardation, anticipation, passing tone, neighbour, double neighbour, appoggiatura, escape tone
   (``figures``);
3. for a heavy note suspension or retardation where it resolves while the chord lasts;
4. a tension that the chord lets stand (``standing``);
5. for a heavy note the figures of 2 that resolve by step, or with the next chord;
6. an added tone, which the chord leaves open and lets stand (``standing``);
7. a pedal;
8. for a light note an incomplete neighbour: a step away, on one side alone, from a tone that belongs or stands;
9. a clash: on the beat, or a beat or longer, not resolved by step, a semitone beside a chord tone or in a false
   relation with it; a heavy note resolves to a chord tone alone, a light one also to a tension;
10. a free tone, which is none of these.

So a ninth that is held out is a tension, and one that is touched between two chord tones a passing tone. A
fourth over a major chord clashes on a weak beat where it is leapt to and left by leap, not where it is a step from a
chord tone. A beat is one as it is felt: three eighths in 6/8. The order is common practice, no source; the kinds have
theirs in ``figures`` and ``standing``.
"""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.melody.figuration import Figuration, Place, places
from nearhand.melody.figures import (
    INCOMPLETE_NEIGHBOUR,
    PEDAL,
    RETARDATION,
    SUSPENSION,
    figures,
    is_incomplete_neighbour,
    is_pedal,
    resolves_within,
    suspension,
)
from nearhand.melody.harmonies import Harmony, time_line
from nearhand.melody.standing import Rub, is_added, member_of, rub_of, tension_of
from nearhand.theory.chord import RelativeChord
from nearhand.theory.melody import Melody, SoundingNote
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

CHORD_TONE, TENSION, ADDED = "chord tone", "tension", "added tone"
CLASH, FREE = "clash", "free tone"
NO_CHORD, OUTSIDE = "no chord", "outside the chords"


class Tone(NamedTuple):
    """One note of a melody over one chord; a note held over a change of chord is one of these for each of the chords.

    ``chord`` is None where there is none; ``number`` that of the chord among the chords of the progression, from 1,
    rests left out, 0 where there is none (of a chord that is written several times in a row, the first). ``bar``,
    ``onset`` (in beats from the start of bar 1) and ``beats`` tell where the two sound together. ``kind``: chord tone,
    one of ``FIGURES``, tension, added tone, clash, free tone, no chord, or outside the chords. ``tone``: the member of
    the chord, the name of the tension (``b9``) or the figure of the suspension (``4-3``), else empty. ``rub``: what a
    clash rubs against.
    """

    note: SoundingNote
    chord: RelativeChord | None
    number: int
    bar: int
    onset: Beats
    beats: Beats
    kind: str
    tone: str = ""
    rub: Rub | None = None


def against(melody: Melody, progression: Progression) -> tuple[Tone, ...]:
    """What every note of a melody is over the chords, in order.

    A chord that is written several times in a row counts as one. Repeat signs are not followed.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> key = parse_key("C")
    >>> chords = resolve(read_chart("| C | G7 | C |"), key)
    >>> [(str(tone.note.pitch), tone.kind, tone.tone) for tone in against(parse_melody("E4 D E G | F - E D"), chords)]
    ... # doctest: +NORMALIZE_WHITESPACE
    [('E4', 'chord tone', 'third'), ('D4', 'lower neighbour', ''), ('E4', 'chord tone', 'third'),
     ('G4', 'chord tone', 'fifth'), ('F4', 'chord tone', 'seventh'), ('E4', 'passing tone', ''),
     ('D4', 'chord tone', 'fifth')]
    """
    melody = melody.read_in(progression.key)
    music = Figuration(melody.sounding(), time_line(progression), progression.key.mode.is_minor)
    return tuple(_tones(music))


def _tones(music: Figuration) -> Iterator[Tone]:
    index = 0
    for place in places(music):
        if place is None:
            note = music.notes[index]
            yield Tone(note, None, 0, note.bar, note.onset, note.beats, OUTSIDE)
            index += 1
        else:
            yield _tone(music, place)
            index = place.note + 1


def _tone(music: Figuration, place: Place) -> Tone:
    harmony, note = music.line.harmonies[place.harmony], music.notes[place.note]
    bar = note.bar if place.onset == note.onset else music.line.bar_at(place.onset)
    tone = Tone(note, harmony.chord, harmony.place + 1, bar, place.onset, place.end - place.onset, NO_CHORD)
    if harmony.chord is None:
        return tone._replace(number=0)
    if member := member_of(harmony.chord, note.interval.fifths):
        return tone._replace(kind=CHORD_TONE, tone=member)
    kind = next(_kinds(music, place, harmony.chord), None)
    if kind is None:
        return _unexplained(music, place, tone)
    return tone._replace(kind=kind, tone=_named(music, place, harmony, kind))


def _kinds(music: Figuration, place: Place, chord: RelativeChord) -> Iterator[str]:
    """What a note outside its chord may be, the likeliest first."""
    is_light = music.line.is_light(place.onset, place.end)
    if is_light:
        yield from figures(music, place, is_light)
    elif resolves_within(music, place) and (suspended := suspension(music, place)):
        yield suspended
    tension = tension_of(chord, music.notes[place.note].interval.fifths)
    if tension and not is_added(tension):
        yield TENSION
    if not is_light:
        yield from figures(music, place, is_light)
    if tension:
        yield ADDED
    if is_pedal(music, place):
        yield PEDAL
    if is_light and is_incomplete_neighbour(music, place):
        yield INCOMPLETE_NEIGHBOUR


def _named(music: Figuration, place: Place, harmony: Harmony, kind: str) -> str:
    """The name of a tension, or the figure of a suspension over a bass that stays; else empty."""
    assert harmony.chord is not None
    note = music.notes[place.note]
    if kind in (TENSION, ADDED):
        return tension_of(harmony.chord, note.interval.fifths)
    after = music.next_pitch(place.note, 1)
    if kind in (SUSPENSION, RETARDATION) and after is not None and resolves_within(music, place):
        first = (note.interval.fifths - harmony.chord.bass) * 4 % 7 + 1
        first += 7 * (first == 1 or (first == 2 and kind == SUSPENSION))
        return f"{first}-{first + (1 if kind == RETARDATION else -1)}"
    return ""


def _unexplained(music: Figuration, place: Place, tone: Tone) -> Tone:
    """A clash where it is heard as one, else a free tone."""
    assert tone.chord is not None
    is_heard = tone.beats >= music.line.pulse_at(place.onset) or music.line.is_on_the_beat(place.onset)
    rub = rub_of(tone.chord, tone.note.interval.fifths)
    is_light = music.line.is_light(place.onset, place.end)
    if is_heard and rub is not None and music.resolution(place.note, or_stands=is_light) is None:
        return tone._replace(kind=CLASH, rub=rub)
    return tone._replace(kind=FREE)
