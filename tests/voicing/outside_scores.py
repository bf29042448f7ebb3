"""Four-part chorales that music21 ships (its corpus/bach, MusicXML), read beat by beat without its parser."""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple
from xml.etree import ElementTree
from zipfile import ZipFile

import music21
from music21 import note as m21_note
from music21 import stream as m21_stream
from voicing_examples import LETTERS

from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.theory.quality import QUALITIES, Quality

CHORALES = Path(music21.__file__).parent / "corpus" / "bach"
PLACES = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}
KINDS = (
    "major",
    "minor",
    "diminished",
    "augmented",
    "dominant",
    "major-seventh",
    "minor-seventh",
    "diminished-seventh",
    "half-diminished",
    "major-minor",
)
CHORDS = {
    frozenset(root + interval for interval in QUALITIES[kind].intervals): (root, QUALITIES[kind])
    for kind in KINDS
    for root in range(-15, 20)
}
"""Complete triads and sevenths by their spelled tones, in fifths above C."""


class Note(NamedTuple):
    """A note from its start to its end in quarters, its place in fifths above C, its MIDI number, its fermata."""

    start: float
    end: float
    place: int
    midi: int
    has_fermata: bool


class Beat(NamedTuple):
    """The notes that sound on a beat, bass first; whether a phrase ends there; whether all last to the next beat."""

    notes: tuple[Note, ...]
    ends: bool
    is_plain: bool


class Named(NamedTuple):
    """A chord on one or more successive beats: its root and bass in fifths above C, and what the voices sing.

    ``opening`` and ``closing`` are the four notes on its first and its last beat; ``is_plain``: none of these closing
    notes ends before the next beat, so that nothing sounds between this chord and the next.
    """

    root: int
    quality: Quality
    bass: int
    opening: tuple[Note, ...]
    closing: tuple[Note, ...]
    is_plain: bool


class Chorale(NamedTuple):
    """A chorale's name, its four parts from the bass up, and its key."""

    name: str
    parts: tuple[tuple[Note, ...], ...]
    key: Key


def chorales(files):
    """The chorales among the first files by name that have four parts of one voice each, every piece once."""
    paths = [path for path in sorted(CHORALES.glob("*.mxl")) if not path.stem.endswith("-sc")]
    for path in paths[:files]:
        with ZipFile(path) as pack:
            (name,) = (each for each in pack.namelist() if each.endswith("xml") and "META-INF" not in each)
            root = ElementTree.fromstring(pack.read(name))
        parts = root.findall("part")
        if len(parts) == 4 and not (has(root, "backup") or has(root, "chord")):
            read = tuple(tuple(notes_of(part)) for part in reversed(parts))
            yield Chorale(path.stem, read, key_of(read))


def has(element, tag):
    return next(element.iter(tag), None) is not None


def notes_of(part):
    """The notes of a part; rests leave gaps, and grace notes take no time and are left out."""
    now, divisions = 0.0, 1
    for element in part.iterfind("measure/*"):
        if element.tag == "attributes":
            divisions = int(element.findtext("divisions", str(divisions)))
        elif element.tag in ("note", "forward") and element.find("grace") is None:
            end = now + int(element.findtext("duration")) / divisions
            written = element.find("pitch")
            if written is not None:
                letter, signs = written.findtext("step"), int(written.findtext("alter", "0"))
                midi = 12 * (int(written.findtext("octave")) + 1) + LETTERS[letter] + signs
                yield Note(now, end, PLACES[letter] + 7 * signs, midi, has(element, "fermata"))
            now = end


def key_of(parts):
    """The key that music21's analysis finds (analysis.discrete, its default profile), of the whole chorale."""
    lengths = {}
    for part in parts:
        for each in part:
            lengths[each.midi % 12] = lengths.get(each.midi % 12, 0) + each.end - each.start
    notes = [m21_note.Note(60 + tone, quarterLength=length) for tone, length in lengths.items()]
    found = m21_stream.Stream(notes).analyze("key")
    return Key(
        PitchClass(PLACES[found.tonic.step] + 7 * int(found.tonic.alter)), MAJOR if found.mode == "major" else MINOR
    )


def beats_of(parts):
    """What sounds on every quarter, counted from the beginning; None where a part rests."""
    places = [0] * len(parts)
    for beat in range(int(max(part[-1].end for part in parts))):
        sounding = []
        for number, part in enumerate(parts):
            while places[number] < len(part) and part[places[number]].end <= beat:
                places[number] += 1
            if places[number] < len(part) and part[places[number]].start <= beat:
                sounding.append(part[places[number]])
        if len(sounding) < len(parts):
            yield None
        else:
            ends = any(each.has_fermata and each.end <= beat + 1 for each in sounding)
            yield Beat(tuple(sounding), ends, all(each.end >= beat + 1 for each in sounding))


def named(beat):
    """The chord of a beat; None where it has other tones than one of CHORDS, or lacks one."""
    found = CHORDS.get(frozenset(each.place for each in beat.notes))
    lowest = min(beat.notes, key=lambda each: each.midi)
    return found and Named(*found, lowest.place, beat.notes, beat.notes, beat.is_plain)


def runs_of(parts, least=4):
    """Runs of at least so many successive named chords, which end where a phrase does."""
    run = []
    for beat in (*beats_of(parts), None):
        chord = beat and named(beat)
        if chord:
            if run and run[-1][:3] == chord[:3]:
                chord = chord._replace(opening=run.pop().opening)
            run.append(chord)
        if not chord or beat.ends:
            if len(run) >= least:
                yield run
            run = []


def progression_of(run, key):
    """The chords of a run in a key, one in each bar."""
    tonic = key.tonic.fifths
    chords = [RelativeChord(each.root - tonic, each.quality, each.bass - tonic) for each in run]
    return Progression(key, tuple(Bar((Slot(chord, 1),)) for chord in chords))
