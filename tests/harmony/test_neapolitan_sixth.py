"""The Neapolitan sixth: a major chord on the lowered second degree, over its third."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, key, note, numerals

from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import Chord, relative_to
from nearhand.theory.quality import QUALITIES

# Tonic, and the Neapolitan sixth from its bass up: fourth, lowered sixth, lowered second degree. The same in
# major and minor. Degrees: Open Music Theory, alteredSubdominants; spelled by arithmetic and by music21.
NEAPOLITANS = """
C: F Ab Db
G: C Eb Ab
D: G Bb Eb
A: D F Bb
E: A C F
F#: B D G
Eb: Ab Cb Fb
Bb: Eb Gb Cb
F: Bb Db Gb
Ab: Db Fb Bbb
"""
ROWS = [
    (tonic, line.partition(":")[2].split())
    for line in NEAPOLITANS.strip().splitlines()
    for tonic in (line.partition(":")[0], line.partition(":")[0].lower())
]


@pytest.mark.parametrize(("tonic", "tones"), ROWS)
def test_it_is_named_in_every_key_from_its_notes_and_read_from_its_name(tonic, tones):
    home = key(tonic)
    bass, fifth, root = map(note, tones)
    chord = Chord(root, QUALITIES["major"], bass)
    read = parse_numeral("N6", home.mode)

    assert chord.tones == (root, bass, fifth)
    assert read == relative_to(chord, home)
    assert read.in_key(home) == chord


@pytest.mark.parametrize(("tonic", "tones"), ROWS)
def test_it_prepares_the_dominant(tonic, tones):
    # Open Music Theory, harmonic functions: N6 is a predominant.
    root, bass = tones[2], tones[0]
    analysis = analysed(f"{root}/{bass}", key(tonic))[0]

    assert (analysis.numeral(), analysis.source, analysis.function) == ("N6", "Neapolitan", "predominant")


@pytest.mark.parametrize(
    ("symbol", "numeral"), [("Db", "♭II"), ("Db/Ab", "♭II64"), ("Dbmaj7/F", "♭IImaj65"), ("Dbm/Fb", "♭ii6")]
)
def test_only_the_triad_over_its_third_is_called_so(symbol, numeral):
    # MT21C and popular music write the chord on its root bII (R. Hutchinson, Music Theory for the 21st-Century
    # Classroom); ours keeps N6 for the sixth chord.
    for home in ("C", "c"):
        assert numerals(symbol, key(home)) == numeral
        assert analysed(symbol, key(home))[0].source != "Neapolitan"
