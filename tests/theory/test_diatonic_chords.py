"""Every diatonic chord of the usual keys, in all three forms of minor, fully spelled."""

from __future__ import annotations

import pytest
from strategies import key, notes

from nearhand.theory.chord import Chord, RelativeChord, relative_to, spelled
from nearhand.theory.quality import QUALITIES

# Root, third, fifth, seventh of each chord. All tables: arithmetic on the line of fifths and music21 10.5.1
# agreed on every chord (i(maj7) and III+maj7 by arithmetic alone); C, Db, F# major and a, c, g#, eb minor
# also checked by hand.

# A line of triads I ii iii IV V vi vii°, and a line of sevenths Imaj7 ii7 iii7 IVmaj7 V7 vi7 viiø7.
MAJOR_KEYS = """
C: C E G, D F A, E G B, F A C, G B D, A C E, B D F
C: C E G B, D F A C, E G B D, F A C E, G B D F, A C E G, B D F A
G: G B D, A C E, B D F#, C E G, D F# A, E G B, F# A C
G: G B D F#, A C E G, B D F# A, C E G B, D F# A C, E G B D, F# A C E
D: D F# A, E G B, F# A C#, G B D, A C# E, B D F#, C# E G
D: D F# A C#, E G B D, F# A C# E, G B D F#, A C# E G, B D F# A, C# E G B
A: A C# E, B D F#, C# E G#, D F# A, E G# B, F# A C#, G# B D
A: A C# E G#, B D F# A, C# E G# B, D F# A C#, E G# B D, F# A C# E, G# B D F#
E: E G# B, F# A C#, G# B D#, A C# E, B D# F#, C# E G#, D# F# A
E: E G# B D#, F# A C# E, G# B D# F#, A C# E G#, B D# F# A, C# E G# B, D# F# A C#
B: B D# F#, C# E G#, D# F# A#, E G# B, F# A# C#, G# B D#, A# C# E
B: B D# F# A#, C# E G# B, D# F# A# C#, E G# B D#, F# A# C# E, G# B D# F#, A# C# E G#
F#: F# A# C#, G# B D#, A# C# E#, B D# F#, C# E# G#, D# F# A#, E# G# B
F#: F# A# C# E#, G# B D# F#, A# C# E# G#, B D# F# A#, C# E# G# B, D# F# A# C#, E# G# B D#
Gb: Gb Bb Db, Ab Cb Eb, Bb Db F, Cb Eb Gb, Db F Ab, Eb Gb Bb, F Ab Cb
Gb: Gb Bb Db F, Ab Cb Eb Gb, Bb Db F Ab, Cb Eb Gb Bb, Db F Ab Cb, Eb Gb Bb Db, F Ab Cb Eb
Db: Db F Ab, Eb Gb Bb, F Ab C, Gb Bb Db, Ab C Eb, Bb Db F, C Eb Gb
Db: Db F Ab C, Eb Gb Bb Db, F Ab C Eb, Gb Bb Db F, Ab C Eb Gb, Bb Db F Ab, C Eb Gb Bb
Ab: Ab C Eb, Bb Db F, C Eb G, Db F Ab, Eb G Bb, F Ab C, G Bb Db
Ab: Ab C Eb G, Bb Db F Ab, C Eb G Bb, Db F Ab C, Eb G Bb Db, F Ab C Eb, G Bb Db F
Eb: Eb G Bb, F Ab C, G Bb D, Ab C Eb, Bb D F, C Eb G, D F Ab
Eb: Eb G Bb D, F Ab C Eb, G Bb D F, Ab C Eb G, Bb D F Ab, C Eb G Bb, D F Ab C
Bb: Bb D F, C Eb G, D F A, Eb G Bb, F A C, G Bb D, A C Eb
Bb: Bb D F A, C Eb G Bb, D F A C, Eb G Bb D, F A C Eb, G Bb D F, A C Eb G
F: F A C, G Bb D, A C E, Bb D F, C E G, D F A, E G Bb
F: F A C E, G Bb D F, A C E G, Bb D F A, C E G Bb, D F A C, E G Bb D
"""

# A line of triads i ii° III iv v VI VII, and a line of sevenths i7 iiø7 IIImaj7 iv7 v7 VImaj7 VII7.
NATURAL_MINOR = """
a: A C E, B D F, C E G, D F A, E G B, F A C, G B D
a: A C E G, B D F A, C E G B, D F A C, E G B D, F A C E, G B D F
e: E G B, F# A C, G B D, A C E, B D F#, C E G, D F# A
e: E G B D, F# A C E, G B D F#, A C E G, B D F# A, C E G B, D F# A C
b: B D F#, C# E G, D F# A, E G B, F# A C#, G B D, A C# E
b: B D F# A, C# E G B, D F# A C#, E G B D, F# A C# E, G B D F#, A C# E G
f#: F# A C#, G# B D, A C# E, B D F#, C# E G#, D F# A, E G# B
f#: F# A C# E, G# B D F#, A C# E G#, B D F# A, C# E G# B, D F# A C#, E G# B D
c#: C# E G#, D# F# A, E G# B, F# A C#, G# B D#, A C# E, B D# F#
c#: C# E G# B, D# F# A C#, E G# B D#, F# A C# E, G# B D# F#, A C# E G#, B D# F# A
g#: G# B D#, A# C# E, B D# F#, C# E G#, D# F# A#, E G# B, F# A# C#
g#: G# B D# F#, A# C# E G#, B D# F# A#, C# E G# B, D# F# A# C#, E G# B D#, F# A# C# E
d#: D# F# A#, E# G# B, F# A# C#, G# B D#, A# C# E#, B D# F#, C# E# G#
d#: D# F# A# C#, E# G# B D#, F# A# C# E#, G# B D# F#, A# C# E# G#, B D# F# A#, C# E# G# B
eb: Eb Gb Bb, F Ab Cb, Gb Bb Db, Ab Cb Eb, Bb Db F, Cb Eb Gb, Db F Ab
eb: Eb Gb Bb Db, F Ab Cb Eb, Gb Bb Db F, Ab Cb Eb Gb, Bb Db F Ab, Cb Eb Gb Bb, Db F Ab Cb
bb: Bb Db F, C Eb Gb, Db F Ab, Eb Gb Bb, F Ab C, Gb Bb Db, Ab C Eb
bb: Bb Db F Ab, C Eb Gb Bb, Db F Ab C, Eb Gb Bb Db, F Ab C Eb, Gb Bb Db F, Ab C Eb Gb
f: F Ab C, G Bb Db, Ab C Eb, Bb Db F, C Eb G, Db F Ab, Eb G Bb
f: F Ab C Eb, G Bb Db F, Ab C Eb G, Bb Db F Ab, C Eb G Bb, Db F Ab C, Eb G Bb Db
c: C Eb G, D F Ab, Eb G Bb, F Ab C, G Bb D, Ab C Eb, Bb D F
c: C Eb G Bb, D F Ab C, Eb G Bb D, F Ab C Eb, G Bb D F, Ab C Eb G, Bb D F Ab
g: G Bb D, A C Eb, Bb D F, C Eb G, D F A, Eb G Bb, F A C
g: G Bb D F, A C Eb G, Bb D F A, C Eb G Bb, D F A C, Eb G Bb D, F A C Eb
d: D F A, E G Bb, F A C, G Bb D, A C E, Bb D F, C E G
d: D F A C, E G Bb D, F A C E, G Bb D F, A C E G, Bb D F A, C E G Bb
"""

# Four lines: III+ V vii°; i(maj7) III+maj7 V7 vii°7; ii IV vi°; ii7 IV7 viø7 viiø7.
RAISED_MINOR = """
a: C E G#, E G# B, G# B D
a: A C E G#, C E G# B, E G# B D, G# B D F
a: B D F#, D F# A, F# A C
a: B D F# A, D F# A C, F# A C E, G# B D F#
e: G B D#, B D# F#, D# F# A
e: E G B D#, G B D# F#, B D# F# A, D# F# A C
e: F# A C#, A C# E, C# E G
e: F# A C# E, A C# E G, C# E G B, D# F# A C#
b: D F# A#, F# A# C#, A# C# E
b: B D F# A#, D F# A# C#, F# A# C# E, A# C# E G
b: C# E G#, E G# B, G# B D
b: C# E G# B, E G# B D, G# B D F#, A# C# E G#
f#: A C# E#, C# E# G#, E# G# B
f#: F# A C# E#, A C# E# G#, C# E# G# B, E# G# B D
f#: G# B D#, B D# F#, D# F# A
f#: G# B D# F#, B D# F# A, D# F# A C#, E# G# B D#
c#: E G# B#, G# B# D#, B# D# F#
c#: C# E G# B#, E G# B# D#, G# B# D# F#, B# D# F# A
c#: D# F# A#, F# A# C#, A# C# E
c#: D# F# A# C#, F# A# C# E, A# C# E G#, B# D# F# A#
g#: B D# F##, D# F## A#, F## A# C#
g#: G# B D# F##, B D# F## A#, D# F## A# C#, F## A# C# E
g#: A# C# E#, C# E# G#, E# G# B
g#: A# C# E# G#, C# E# G# B, E# G# B D#, F## A# C# E#
d#: F# A# C##, A# C## E#, C## E# G#
d#: D# F# A# C##, F# A# C## E#, A# C## E# G#, C## E# G# B
d#: E# G# B#, G# B# D#, B# D# F#
d#: E# G# B# D#, G# B# D# F#, B# D# F# A#, C## E# G# B#
eb: Gb Bb D, Bb D F, D F Ab
eb: Eb Gb Bb D, Gb Bb D F, Bb D F Ab, D F Ab Cb
eb: F Ab C, Ab C Eb, C Eb Gb
eb: F Ab C Eb, Ab C Eb Gb, C Eb Gb Bb, D F Ab C
bb: Db F A, F A C, A C Eb
bb: Bb Db F A, Db F A C, F A C Eb, A C Eb Gb
bb: C Eb G, Eb G Bb, G Bb Db
bb: C Eb G Bb, Eb G Bb Db, G Bb Db F, A C Eb G
f: Ab C E, C E G, E G Bb
f: F Ab C E, Ab C E G, C E G Bb, E G Bb Db
f: G Bb D, Bb D F, D F Ab
f: G Bb D F, Bb D F Ab, D F Ab C, E G Bb D
c: Eb G B, G B D, B D F
c: C Eb G B, Eb G B D, G B D F, B D F Ab
c: D F A, F A C, A C Eb
c: D F A C, F A C Eb, A C Eb G, B D F A
g: Bb D F#, D F# A, F# A C
g: G Bb D F#, Bb D F# A, D F# A C, F# A C Eb
g: A C E, C E G, E G Bb
g: A C E G, C E G Bb, E G Bb D, F# A C E
d: F A C#, A C# E, C# E G
d: D F A C#, F A C# E, A C# E G, C# E G Bb
d: E G B, G B D, B D F
d: E G B D, G B D F, B D F A, C# E G B
"""

MAJ, MIN, DIM = "major", "minor", "diminished"
MAJ7, MIN7, HALF = "major-seventh", "minor-seventh", "half-diminished"
AUGMENTED_MAJ7 = "augmented major-seventh"
INTERVALS = {kind: row.intervals for kind, row in QUALITIES.items()} | {AUGMENTED_MAJ7: (0, 4, 8, 5)}

# For each line of a table: the form of the scale, then degree and kind of each chord.
MAJOR_LINES = [
    ("natural", [(1, MAJ), (2, MIN), (3, MIN), (4, MAJ), (5, MAJ), (6, MIN), (7, DIM)]),
    ("natural", [(1, MAJ7), (2, MIN7), (3, MIN7), (4, MAJ7), (5, "dominant"), (6, MIN7), (7, HALF)]),
]
NATURAL_LINES = [
    ("natural", [(1, MIN), (2, DIM), (3, MAJ), (4, MIN), (5, MIN), (6, MAJ), (7, MAJ)]),
    ("natural", [(1, MIN7), (2, HALF), (3, MAJ7), (4, MIN7), (5, MIN7), (6, MAJ7), (7, "dominant")]),
]
RAISED_LINES = [
    ("harmonic", [(3, "augmented"), (5, MAJ), (7, DIM)]),
    ("harmonic", [(1, "major-minor"), (3, AUGMENTED_MAJ7), (5, "dominant"), (7, "diminished-seventh")]),
    ("melodic", [(2, MIN), (4, MAJ), (6, DIM)]),
    ("melodic", [(2, MIN7), (4, "dominant"), (6, HALF), (7, HALF)]),
]


def rows(table, lines):
    """Each chord of a table: key, form of the scale, degree, kind, tones."""
    for number, line in enumerate(table.strip().splitlines()):
        name, _, written = line.partition(":")
        form, chords = lines[number % len(lines)]
        for (degree, kind), tones in zip(chords, written.split(","), strict=True):
            yield name, form, degree, kind, notes(tones)


ROWS = [
    *rows(MAJOR_KEYS, MAJOR_LINES),
    *rows(NATURAL_MINOR, NATURAL_LINES),
    *rows(RAISED_MINOR, RAISED_LINES),
]
KEYS = list(dict.fromkeys(name for name, *_ in ROWS))


def of_key(name):
    return [row[1:] for row in ROWS if row[0] == name]


def test_the_tables_hold_all_chords_of_thirteen_major_and_thirteen_minor_keys():
    assert len(KEYS) == 26
    assert len(ROWS) == 13 * 14 + 13 * 14 + 13 * 14


@pytest.mark.parametrize("name", KEYS)
def test_thirds_stacked_on_the_scale_are_the_diatonic_chords(name):
    for form, degree, _, tones in of_key(name):
        scale = key(name).scale(form)

        assert tuple(scale[(degree - 1 + 2 * third) % 7] for third in range(len(tones))) == tones


@pytest.mark.parametrize("name", KEYS)
def test_each_kind_of_chord_is_spelled_from_its_root_as_the_key_needs_it(name):
    for form, degree, kind, tones in of_key(name):
        root = key(name).scale(form)[degree - 1]

        assert tuple(root.up(interval) for interval in INTERVALS[kind]) == tones
        if kind in QUALITIES:
            assert Chord(root, QUALITIES[kind], root).tones == tones
            assert spelled(root.fifths, QUALITIES[kind]) == tones


@pytest.mark.parametrize("name", KEYS)
def test_a_chord_without_its_key_is_the_same_in_every_key_of_the_mode(name):
    home = "a" if name[0].islower() else "C"
    for (form, degree, kind, tones), (*_, home_tones) in zip(of_key(name), of_key(home), strict=True):
        if kind in QUALITIES:
            root = key(home).scale(form)[degree - 1]
            chord = relative_to(Chord(root, QUALITIES[kind], home_tones[1]), key(home))

            assert chord.in_key(key(name)).tones == tones
            assert chord.in_key(key(name)).bass == tones[1]


def test_places_of_a_chord_without_key_are_counted_from_the_tonic():
    dominant = RelativeChord(1, QUALITIES["dominant"], 5)

    assert dominant.places == (1, 5, 2, -1)
    assert dominant.above(1).places == (2, 6, 3, 0)
    assert dominant.above(1).bass == 6
