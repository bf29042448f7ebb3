"""Where a chord comes from, in words: lenders, altered degrees, applied chords resolved or not, the key's own chord."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, in_twelve_keys, key, key_free, lines_of_chords, modes, note, notes
from hypothesis import example, given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.origins import Scene, origin
from nearhand.harmony.sources import PARALLEL_SCALES, lenders_of, own_source
from nearhand.harmony.words import (
    altered_degrees,
    between_neighbours,
    instead_of_own,
    own_chord_in_place,
    sentences,
    where_tones_go,
)
from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass


def told(symbols, home, place=0, conventions=PLAIN):
    """The sentence on where one of some chords comes from."""
    return origin(Scene(analysed(symbols, key(home))[place], key(home), conventions))


# Chord of C major; the parallel modes that hold it, likeliest first. Modes: Open Music Theory, scales; R. Hutchinson,
# Music Theory for the 21st-Century Classroom (MT21C), TableOfScales; chords of each mode by arithmetic and by music21.
# The order of likelihood is common practice, no source.
LENDERS = """
Cm ; natural minor, harmonic minor, dorian, phrygian, melodic minor
Ddim ; natural minor, harmonic minor
Eb ; natural minor, dorian, phrygian
Fm ; natural minor, harmonic minor, phrygian
Gm ; natural minor, dorian, mixolydian
Ab ; natural minor, harmonic minor, phrygian
Bb ; natural minor, dorian, mixolydian
Bb7 ; natural minor
Bbmaj7 ; dorian, mixolydian
Bdim7 ; harmonic minor
Dm7b5 ; natural minor, harmonic minor
F7 ; dorian, melodic minor
C7 ; mixolydian
Db ; phrygian
Bbm ; phrygian
Gdim ; phrygian
Bm ; lydian
Gmaj7 ; lydian
D7 ; lydian
F#m7b5 ; lydian
Eb+ ; harmonic minor, melodic minor
Am7b5 ; dorian, melodic minor
E7 ;
F#7 ;
Dbm ;
"""
LENDER_ROWS = [tuple(field.strip() for field in line.split(";")) for line in LENDERS.strip().splitlines()]
SCALES = {
    "natural minor": "C D Eb F G Ab Bb",
    "major": "C D E F G A B",
    "harmonic minor": "C D Eb F G Ab B",
    "dorian": "C D Eb F G A Bb",
    "mixolydian": "C D E F G A Bb",
    "phrygian": "C Db Eb F G Ab Bb",
    "lydian": "C D E F# G A B",
    "melodic minor": "C D Eb F G A B",
}


@pytest.mark.parametrize(("symbol", "lenders"), LENDER_ROWS)
def test_all_modes_that_hold_a_chord_are_named_the_likeliest_first(symbol, lenders):
    chord = key_free(symbol, key("C"))[0]
    names = [name for name in lenders.split(", ") if name]
    tones = set(chord.in_key(key("C")).tones)

    assert list(lenders_of(chord, MAJOR)) == names
    assert {name for name, scale in SCALES.items() if tones <= set(notes(scale))} == set(names)


def test_the_scales_are_those_that_the_table_names():
    assert {name: [place % 12 for place in scale] for name, scale in PARALLEL_SCALES.items()} == {
        name: [tone.fifths % 12 for tone in notes(scale)] for name, scale in SCALES.items()
    }


@pytest.mark.parametrize(("symbol", "lenders"), [row for row in LENDER_ROWS if row[1]])
def test_the_sentence_names_every_lender(symbol, lenders):
    if symbol in ("D7", "F#m7b5"):  # applied chords of major before they are Lydian ones
        return
    said = told(f"{symbol} F", "C")  # not before the tonic, where Bb7 is the backdoor dominant
    if "borrowed" in said:
        first, *others = lenders.split(", ")
        assert said.startswith(f"It is borrowed from {first} on the same tonic: ")
        assert all(name in said.lower() for name in others)
        assert ("too." in said) == bool(others)


def test_most_rows_of_the_table_are_told_as_borrowed():
    borrowed = [row[0] for row in LENDER_ROWS if "borrowed" in told(f"{row[0]} Am", "C")]

    assert len(borrowed) >= 15


@given(lines_of_chords, modes)
def test_a_chord_of_the_key_has_no_lender_and_a_borrowed_one_has(chords, mode):
    for each in analyse(chords, mode):
        lenders = lenders_of(each.reading, mode)
        if own_source(each.reading, mode) is not None:
            assert lenders == ()
        if each.source.startswith("borrowed from "):
            assert each.source == f"borrowed from {lenders[0]}"


# Key; chord and the next; where the first comes from. MT21C, SecondaryDominantsInMajorAndMinor,
# SecondaryDiminishedChordsInMajorAndMinor, IrregularResoltionsOfSecondaryDominants; the ii: common practice, no source.
APPLIED = """
C ; A7 Dm ; It is the dominant of ii, an applied chord: C# leads to D.
C ; A7 F ; It is the dominant of ii, an applied chord: C# leads to D, though another chord follows here.
C ; A7 ; It is the dominant of ii, an applied chord: C# leads to D.
C ; E F ; It is the dominant of vi, an applied chord: G# leads to A, though another chord follows here.
C ; C#dim7 Dm ; It is the leading-tone chord of ii, an applied chord: C# leads to D.
C ; F#m7b5 G ; It is the half-diminished leading-tone chord of V, an applied chord: F# leads to G.
C ; F#m7b5 F ; It is the half-diminished leading-tone chord of V, an applied chord: F# leads to G, \
though another chord follows here.
C ; D7 C/G ; It is the dominant of V, an applied chord: F# leads to G.
C ; Gm7 C7 F ; It is the ii of IV: with the dominant of IV behind it, it leads to F.
Eb ; C7 Fm ; It is the dominant of ii, an applied chord: E leads to F.
c ; C7 Fm ; It is the dominant of iv, an applied chord: E leads to F.
c ; F Bb ; It is the dominant of VII, an applied chord: A leads to Bb.
e ; C#dim7 B7 ; It is the leading-tone chord of V, an applied chord: A# leads to B. \
The chord is spelled with Bb for A#.
"""
APPLIED_ROWS = [tuple(field.strip() for field in line.split(";")) for line in APPLIED.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "expected"), APPLIED_ROWS)
def test_an_applied_chord_tells_its_degree_and_whether_it_resolves(home, symbols, expected):
    assert told(symbols, home) == expected


# Key; chords; place; what is said. Augmented sixths: MT21C TypesOfAugmentedSixthChords, Open Music Theory,
# alteredSubdominants; tritone substitutes: MT21C turnaround-progression, GuideTones (C7 and Gb7 share E and Bb).
SPECIAL = """
a ; Am F7 E ; 1 ; It is a German augmented sixth: F and D# open outwards to E. Charts write it as F7. \
The chord is spelled with Eb for D#.
C ; C Ab7(no5) G ; 1 ; It is an Italian augmented sixth: Ab and F# open outwards to G. Charts write it as Ab7(no5). \
The chord is spelled with Gb for F#.
C ; C Ab7b5 G ; 1 ; It is a French augmented sixth: Ab and F# open outwards to G. Charts write it as Ab7b5. \
The chord is spelled with Gb for F#.
F ; F Gb7 F ; 1 ; It is the tritone substitute of C7: it has Bb and Fb (for E) in common with it and slides down \
a half step to F.
g ; Gm Ab/C D7 ; 1 ; It is the Neapolitan sixth: the major chord on Ab, the lowered 2nd degree, over its third.
A ; A G7 A ; 1 ; It is the backdoor dominant: from G, the lowered 7th degree, it goes up a whole step to A.
A ; A B#dim7 A ; 1 ; It is a common-tone diminished chord: it keeps A, the root of the chord after it, \
while its other notes lean on that chord's.
C ; C Ebdim7 Dm7 ; 1 ; It is a common-tone diminished chord: it keeps C, the root of the chord before it, \
while its other notes lean on that chord's.
C ; C A C ; 1 ; It is a chromatic mediant: its root lies a third from the tonic, and it keeps E of the tonic chord.
c ; Cm Abm Cm ; 1 ; It is a chromatic mediant: its root lies a third from the tonic, and it keeps Eb of the tonic chord.
C ; C G/C C ; 1 ; It is G over a pedal: C stays in the bass and belongs to the chords around it.
a ; Am Am/G# Am/G Am/F# ; 2 ; It is part of a line cliche: one voice walks A G# G F# while the chord stays.
c ; Cm F#7 Gm ; 1 ; It is chromatic: F# is #4, A# is ##6, C# is #1, E is #3.
"""
SPECIAL_ROWS = [tuple(field.strip() for field in line.split(";")) for line in SPECIAL.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "place", "expected"), SPECIAL_ROWS)
def test_a_special_chord_tells_what_makes_it_one(home, symbols, place, expected):
    assert told(symbols, home, int(place)) == expected


def test_a_line_cliche_has_its_accent_only_where_signs_are_written():
    assert "line cliché" in told("Am Am(maj7) Am7", "a", 1, DEFAULT)
    assert told("Am Am(maj7) Am7", "a", 1).isascii()


# Key; chord; altered degrees with their notes in that key (natural form in minor: Open Music Theory, scales).
ALTERED = """
C ; E7 Am ; #5 G#
Eb ; G7 Cm ; #5 B
A ; C#7 F#m ; #5 E#
F# ; A#7 D#m ; #5 C##
Gb ; Bb7 Ebm ; #5 D
C ; Fm ; b6 Ab
Db ; Gbm ; b6 Bbb
C ; Db/F ; b2 Db, b6 Ab
a ; F7 E ; #4 D#
f ; Db7 C ; #4 B
C ; Ab7 G ; b6 Ab, b3 Eb, #4 F#
C ; Ab7(no5) G ; b6 Ab, #4 F#
e ; B7 ; #7 D#
e ; C#dim7 B7 ; #4 A#, #6 C#
a ; D7 ; #6 F#
a ; G#dim7 ; #7 G#
"""
ALTERED_ROWS = [tuple(field.strip() for field in line.split(";")) for line in ALTERED.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "expected"), ALTERED_ROWS)
def test_altered_degrees_are_told_with_their_notes_in_the_shown_key(home, symbols, expected):
    home = key(home)
    found = altered_degrees(analysed(symbols, home)[0], home, PLAIN)

    assert ", ".join(f"{degree} {name}" for degree, name in found) == expected
    for degree, name in found:
        natural = home.degree(int(degree.strip("#b")))
        assert note(name).fifths - natural.fifths == 7 * (degree.count("#") - degree.count("b"))


@pytest.mark.parametrize("row", [row for row in ALTERED_ROWS if row[0] in ("C", "a", "e")], ids=lambda row: row[1])
def test_the_altered_degrees_are_the_same_in_every_key(row):
    found = {
        tuple(degree for degree, _ in altered_degrees(analyse(chords, new.mode)[0], new, PLAIN))
        for new, chords in in_twelve_keys(row[1], key(row[0]))
    }

    assert found == {tuple(entry.split()[0] for entry in row[2].split(", "))}


# Key; chords; place; the key's own chord instead. A borrowed chord stands in the place of the key's own one (MT21C,
# ModeMixtureSection); an augmented sixth in that of iv6, its fourth raised, the French one in that of ii43 (Open Music
# Theory, alteredSubdominants).
INSTEAD = """
C ; C Fm C ; 1 ; The key itself has F (IV) in its place: this chord has Ab for A.
A ; A F A ; 1 ; The key itself has F#m (vi) in its place: this chord has F for F#, C for C#.
C ; C E7 Am ; 1 ; The key itself has Em7 (iii7) in its place: this chord has G# for G.
C ; C Db/F G ; 1 ; The key itself has Dm/F (ii6) in its place: this chord has Db for D, Ab for A.
C ; C/Bb F/A ; 0 ; The key itself has Cmaj7/B (Imaj42) in its place: this chord has Bb for B.
c ; Cm C Fm ; 1 ; The key itself has Cm (i) in its place: this chord has E for Eb.
C ; C Bbsus4 F ; 1 ; The key itself has Bdim (viio) in its place: this chord has Bb for B, Eb besides, no D.
a ; Am F7 E ; 1 ; The key itself has Dm7/F (iv65) in its place: this chord has D# for D.
a ; Am F7(no5) E ; 1 ; The key itself has Dm/F (iv6) in its place: this chord has D# for D.
a ; Am F7b5 E ; 1 ; The key itself has Bm7b5/F (ii/o43) in its place: this chord has D# for D.
C ; C F C ; 1 ;
a ; Am E7 Am ; 1 ;
a ; Am D Am ; 1 ;
"""
INSTEAD_ROWS = [tuple(field.strip() for field in line.split(";")) for line in INSTEAD.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "place", "expected"), INSTEAD_ROWS)
def test_the_keys_own_chord_is_told_with_the_notes_that_differ(home, symbols, place, expected):
    assert instead_of_own(analysed(symbols, key(home))[int(place)], key(home), PLAIN) == expected


@given(lines_of_chords, modes)
@example(list(key_free("C Ab7 G", key("C"))), MAJOR)
@example(list(key_free("Cm Ab7b5 G", key("c"))), MINOR)
def test_the_chord_instead_is_one_of_the_key_and_foreign_chords_alone_have_one(chords, mode):
    for each in analyse(chords, mode):
        other = own_chord_in_place(each)
        assert (other is None) == (own_source(each.reading, mode) is not None)
        assert other is None or own_source(other, mode) is not None


@pytest.mark.parametrize(
    ("symbols", "place", "expected"),
    [
        ("C Fm G", 1, "It stands between C (I) and G (V)."),
        ("C Fm G", 0, "It opens the progression; Fm (iv) follows."),
        ("C Fm G", 2, "It comes after Fm (iv) and closes the progression."),
        ("Ab7 G C", 1, "It stands between Ab7 (Ger65) and C (I)."),
        ("C", 0, ""),
    ],
)
def test_a_chord_is_shown_between_its_neighbours(symbols, place, expected):
    row = analysed(symbols, key("C"))
    before, after = (row[place - 1] if place else None), (row[place + 1] if place + 1 < len(row) else None)

    assert between_neighbours(before, row[place], after, key("C"), PLAIN) == expected


conventions = st.builds(Conventions, st.sampled_from(["mode", "major"]), st.booleans())


@given(lines_of_chords, modes, st.integers(-6, 6).map(PitchClass), conventions)
def test_every_sentence_is_whole_and_plain_where_it_must_be(chords, mode, tonic, writing):
    home = Key(tonic, mode)
    row = analyse(chords, mode)
    for place, each in enumerate(row):
        before, after = (row[place - 1] if place else None), (row[place + 1] if place + 1 < len(row) else None)
        optional = (
            where_tones_go(each, home, writing),
            instead_of_own(each, home, writing),
            between_neighbours(before, each, after, home, writing),
        )
        for sentence in (*sentences(each, home, writing), *(text for text in optional if text)):
            assert sentence.endswith(".")
            assert not sentence.endswith("..")
            assert "  " not in sentence
            assert sentence == sentence.strip()
            assert sentence[0].isupper()
            assert sentence.isascii() or not writing.plain
        assert all(all(pair) for pair in altered_degrees(each, home, writing))


def without_notes(sentence):
    """A sentence with every word that may be a note, a key or a chord blotted out."""
    return " ".join("X" if word.strip("(")[:1] in "ABCDEFG" else word for word in sentence.split())


@given(lines_of_chords, modes, st.integers(-6, 6))
def test_the_words_are_the_same_in_every_key_but_for_the_notes(chords, mode, fifths):
    first, second = Key(PitchClass(0), mode), Key(PitchClass(fifths), mode)
    for each in analyse(chords, mode):
        degrees = [[degree for degree, _ in altered_degrees(each, home)] for home in (first, second)]
        said = [[without_notes(text) for text in sentences(each, home, PLAIN)] for home in (first, second)]
        went = [without_notes(where_tones_go(each, home, PLAIN)) for home in (first, second)]

        assert degrees[0] == degrees[1]
        assert said[0] == said[1]
        assert went[0] == went[1]


def test_the_minor_key_is_told_in_every_form():
    assert told("Am", "a") == "It belongs to every form of A minor."
    assert told("Dm7", "D dorian") == "It belongs to D dorian."
