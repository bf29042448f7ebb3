"""Published analyses: the numerals a textbook prints are the chords it shows."""

from __future__ import annotations

import pytest
from strategies import key

from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import relative_to

# Key: chords = numerals, and again behind a bar line where the music goes to another key. Numerals and key as
# published, in RomanText spelling, where a bare 7 is the seventh of the scale. A star behind the key marks a key of
# ours where the page gives numerals alone. All letter forms were recomputed with music21 10.5.1 and by hand. OMT:
# Open Music Theory (first edition); MT21C: R. Hutchinson, *Music Theory for the 21st-Century Classroom*; WIR: When in
# Rome corpus (its files Kostka-Payne 18-2 and 18-6 hold slips and are left out).
SOURCES = {
    "OMT appliedChords": """
C: F G C = IV V I
C: F#dim G C = viio/V V I
Eb: F7 Bb = V7/V V
""",
    "OMT popRockHarmony": """
C: Am F C G = vi IV I V
a: Am F C G = i VI III VII
a: F G Am = VI VII i
C*: C Am F G = I vi IV V
D: D A Bm F#m G D G A = I V vi iii IV I IV V
a*: Am Dm G C F Bdim E = i iv VII III VI iio V
E: C G D A E = bVI bIII bVII IV I
""",
    "OMT harmonicSyntax2": """
c*: Cm Gm/Bb Fm/Ab G = i v6 iv6 V
C*: C F/A C/E = I IV6 I6
""",
    "OMT alteredSubdominants": """
g: Gm Ab/C D7 Gm = i N6 V7 i
""",
    "OMT harmonicSyntax2, schemataSummary": """
C*: C G7/D G7/B C = I V43 V65 I
""",
    "MT21C HarmonicProgression": """
F: F Bb Edim Am Dm Gm C F = I IV viio iii vi ii V I
b: Bm Em A D G C#dim F# Bm = i iv VII III VI iio V i
F: F Dm Gm/Bb C = I vi ii6 V
E: C#m A E B = vi IV I V
""",
    "MT21C RomanNumeralsAndCadences": """
G: G D G C G D = I V I IV I V
D: D Bm G D = I vi IV I
""",
    "MT21C SecondaryDiminishedChords": """
F: F Am Bb F#dim7 D/F# Gm = I iii IV viio7/ii V6/ii ii
""",
    "MT21C SeventhChords": """
ab: Dbm7 Abm Eb7 Abm = iv7 i V7 i
C: C G7/D C F/C C G7/B C = I V43 I IV64 I V65 I
""",
    "MT21C FiguredBass": """
C: C/G Bdim/D Dm/A G = I64 viio6 ii64 V
C: Em7/G G7/F Cmaj7/G Fmaj7 = iii65 V42 I43 IV7
c: Ddim/F = iio6
b: A#dim7/G = viio42
F: Em7b5 = viiø7
D: Dmaj7/F# = I65
""",
    "MT21C i-VII-VI-VII": """
a: Am G F G = i VII VI VII
C: Am G F G = vi V IV V
a: Am G F E = i VII VI V
""",
    "MT21C BestsellerProgression": """
C*: C G Am F = I V vi IV
""",
    "MT21C Tonicization": """
C: D7/F# G E7/G# Am = V65/V V V65/vi vi
""",
    "MT21C SecondaryDominantsInMajorAndMinor": """
c: F Bb = V/VII VII
c: F G = IV V
c: Bb7 Eb = V7/III III
c: Bb7 Eb = VII7 III
""",
    "MT21C AnalyzingSecondaryDiminishedChords": """
D: G#m7b5/B = viiø65/V
""",
    "MT21C AnalyzingAndWritingBorrowedChords": """
G: Am7b5/C = iiø65
""",
    "MT21C IrregularResoltionsOfSecondaryDominants": """
C: C7/Bb A7 Dm = V42/IV V7/ii ii
C: E F = V/vi IV
""",
    "MT21C turnaround-progression": """
C: E7 A7 D7 G7 = V7/vi V7/ii V7/V V7
""",
    "WIR syntax.md": """
C: C Dm7/C G7/B C Am/C = I ii42 V65 I vi6
G: D7/C G/B Cmaj7/B Am7 D7 G = V42 I6 IV42 ii7 V7 I
""",
    "WIR Reger, Modulation": """
C: C = I | G: Am/C G/D D G = ii6 Cad64 V I
C: C = I | D: Em/G D/A A D = ii6 Cad64 V I
C: C = I | A: Dm Bdim/D A/E E A = iv iio6 Cad64 V I
C: C = I | B: Em B/F# F# B = iv Cad64 V I
C: C = I | Eb: Fm/Ab Eb/Bb Bb Eb = ii6 Cad64 V I
C: C = I | f#: G/B F#m/C# C#7 F#m = N6 Cad64 V7 i
""",
    "WIR Rimsky-Korsakov": """
C: C Am E = I vi V/vi | a: Am = i
C: C G D = I V V/V | G: G = I
C: C F Bb C = I IV IV/IV V/IV | F: F = I
C: C Fm Bbm C = I iv iv/iv V/iv | f: Fm = i
C: C C#dim7 = I viio7/ii | d: Dm = i
C: C E7/B = I V43/vi | a: Am = i
""",
    "WIR Tchaikovsky": """
C: C Ab7 = I V7/bII | Db: Db = I
C: C/E C7/E = I6 V65/IV | F: F = I
""",
    "WIR Kostka-Payne 18-3b": """
G: G D7/F# G = I V65 I | F: C C7 Dm Gm/Bb F/C C7 F = V V7 vi ii6 Cad64 V7 I
""",
    "WIR Aldwell-Schachter 27-4a": """
c: Cm = i | Ab: Bbdim/Db Ab/Eb Eb7 Ab = iio6 Cad64 V7 I
""",
}
ROWS = [
    (part.partition(":")[0].strip(" *"), *map(str.strip, part.partition(":")[2].split("=")), source)
    for source, rows in SOURCES.items()
    for row in rows.strip().splitlines()
    for part in row.split("|")
]
OF_THE_SCALE = Conventions(sevenths="scale", plain=True)

# The same chords as players write them: major sevenths spelled out (MT21C prints IM43, IVM7).
AS_PLAYERS_WRITE = {"I43": "Imaj43", "IV7": "IVmaj7", "I65": "Imaj65", "IV42": "IVmaj42"}
# Names that are chosen by reasoning on the neighbours: the writer of single numerals does not use them.
BY_CONTEXT = ("/", "N", "Cad")


def test_the_table_holds_all_analyses():
    assert sum(len(rows.strip().splitlines()) for rows in SOURCES.values()) == 57 + 4  # four more chords of two pages


@pytest.mark.parametrize(("name", "symbols", "numerals", "source"), ROWS)
def test_the_numerals_of_a_published_analysis_are_its_chords(name, symbols, numerals, source):
    home = key(name)
    chords = [parse_numeral(numeral, home.mode, OF_THE_SCALE).in_key(home) for numeral in numerals.split()]

    assert chords == [parse_chord(symbol) for symbol in symbols.split()], source
    assert " ".join(write_chord(chord, PLAIN) for chord in chords) == symbols


@pytest.mark.parametrize(("name", "symbols", "numerals", "source"), ROWS)
def test_the_numerals_are_the_same_chords_as_players_write_them(name, symbols, numerals, source):
    home = key(name)
    written = [AS_PLAYERS_WRITE.get(numeral, numeral) for numeral in numerals.split()]

    assert [parse_numeral(numeral, home.mode).in_key(home) for numeral in written] == [
        parse_chord(symbol) for symbol in symbols.split()
    ], source


@pytest.mark.parametrize(("name", "symbols", "numerals", "source"), ROWS)
def test_chords_of_the_key_are_written_in_the_numerals_of_the_analysis(name, symbols, numerals, source):
    home = key(name)
    for symbol, numeral in zip(symbols.split(), numerals.split(), strict=True):
        if not any(sign in numeral for sign in BY_CONTEXT):
            chord = relative_to(parse_chord(symbol), home)

            assert write_numeral(chord, home.mode, OF_THE_SCALE).replace("/o", "ø") == numeral, source
            assert write_numeral(chord, home.mode, PLAIN).replace("/o", "ø") == AS_PLAYERS_WRITE.get(numeral, numeral)
