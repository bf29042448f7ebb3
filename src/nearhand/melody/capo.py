"""Where a capo goes: which open shapes play a key, and how many chords of a progression they have."""

from __future__ import annotations

from nearhand.notation.chord_symbols import parse_chord
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

OPEN_CHORDS = frozenset(
    (chord.root, chord.quality)
    for chord in map(
        parse_chord,
        (
            *("C", "D", "E", "G", "A", "Am", "Dm", "Em", "C7", "D7", "E7", "G7", "A7", "B7"),
            *("Cmaj7", "Fmaj7", "Gmaj7", "Amaj7", "Dmaj7", "Am7", "Dm7", "Em7"),
            *("Dsus4", "Asus4", "Esus4", "Dsus2", "Asus2"),
        ),
    )
)
"""Chords that lie open on a guitar in standard tuning (common practice, no source)."""
HIGHEST_FRET = 7
_SHAPES = {
    True: tuple(Key(PitchClass(place), MAJOR) for place in (0, 1, 2, 3, 4)),
    False: tuple(Key(PitchClass(place), MINOR) for place in (3, 4, 2)),
}
"""Whether a key is major, to keys whose own chords lie open: C G D A E, and Am Em Dm (common practice, no source)."""


class Capo(NamedTuple):
    """A capo at a fret (0: none), the key whose shapes are played, its chords, and how many of them are open."""

    fret: int
    shapes: Key
    chords: tuple[Chord, ...]
    open_chords: int


def capos(progression: Progression) -> tuple[Capo, ...]:
    """The capos that let a progression be played with open shapes, most open chords first, then the lowest fret.

    Where there are no chords the key of the shapes is all there is: the lowest fret comes first.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| Eb | Ab | Bb | Cm |"), parse_key("Eb"))
    >>> [(capo.fret, str(capo.shapes), capo.open_chords) for capo in capos(tune)][:2]
    [(1, 'D major', 3), (3, 'C major', 3)]
    """
    key = progression.key
    found = []
    for fret, shapes in _frets(key):
        if fret <= HIGHEST_FRET:
            moved = progression.in_key(Key(shapes.tonic, key.mode))
            chords = tuple(dict.fromkeys(moved.chords()))
            count = sum((chord.root, chord.quality) in OPEN_CHORDS for chord in chords)
            found.append(Capo(fret, moved.key, chords, count))
    return tuple(sorted(found, key=lambda capo: (-capo.open_chords, capo.fret)))


def lowest_fret(key: Key) -> int:
    """The lowest capo with which a key sounds from open shapes; 0 where its own lie open.

    >>> from nearhand.notation.keys import parse_key
    >>> [lowest_fret(parse_key(text)) for text in ("D", "Eb", "F#", "C# minor")]
    [0, 1, 2, 4]
    """
    return min(fret for fret, _ in _frets(key))


def _frets(key: Key) -> list[tuple[int, Key]]:
    """For each key whose shapes lie open, the fret at which they sound in a key."""
    shapes = _SHAPES[not key.mode.has_minor_third]
    return [((key.tonic.semitones - shape.tonic.semitones) % 12, shape) for shape in shapes]
