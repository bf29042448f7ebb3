"""The form of minor in an explanation: every chord names the form that holds it and the note that makes it so."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, key, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.minor_forms import forms_of
from nearhand.harmony.origins import Scene, origin
from nearhand.notation.conventions import PLAIN
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR
from nearhand.theory.pitch_class import PitchClass

# Numeral; the forms of minor that hold it, simplest first; the notes that tell, in A minor and in C minor ("every": the
# chord has neither sixth nor seventh degree). Chords: R. Hutchinson, Music Theory for the 21st-Century Classroom,
# DiatonicChordsInMinor; Open Music Theory, triads and scales; spelled by arithmetic and by music21.
TABLE = """
i ; natural harmonic melodic ; ;
ii° ; natural harmonic ; F ; Ab
ii ; melodic ; F# ; A
III ; natural ; G ; Bb
III+ ; harmonic melodic ; G# ; B
iv ; natural harmonic ; F ; Ab
IV ; melodic ; F# ; A
v ; natural ; G ; Bb
V ; harmonic melodic ; G# ; B
VI ; natural harmonic ; F ; Ab
vi° ; melodic ; F# ; A
VII ; natural ; G ; Bb
vii° ; harmonic melodic ; G# ; B
i7 ; natural ; G ; Bb
i(maj7) ; harmonic melodic ; G# ; B
iiø7 ; natural harmonic ; F ; Ab
ii7 ; melodic ; F# ; A
IIImaj7 ; natural ; G ; Bb
III+maj7 ; harmonic melodic ; G# ; B
iv7 ; natural harmonic ; F ; Ab
IV7 ; melodic ; F# ; A
v7 ; natural ; G ; Bb
V7 ; harmonic melodic ; G# ; B
V9 ; melodic ; F# G# ; A B
V7b9 ; harmonic ; F G# ; Ab B
VImaj7 ; natural harmonic ; F ; Ab
viø7 ; melodic ; F# ; A
VII7 ; natural ; F G ; Ab Bb
vii°7 ; harmonic ; F G# ; Ab B
viiø7 ; melodic ; F# G# ; A B
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in TABLE.strip().splitlines()]
ORDER = ("natural", "harmonic", "melodic")


def said(numeral, home):
    """The sentence on where a chord comes from, alone in a minor key."""
    return origin(Scene(analyse([parse_numeral(numeral, MINOR)], MINOR)[0], home, PLAIN))


@pytest.mark.parametrize(("numeral", "forms", "in_a", "in_c"), ROWS)
def test_an_explanation_names_every_form_that_holds_the_chord(numeral, forms, in_a, in_c):
    names = forms.split()
    sentence = said(numeral, key("a"))

    assert forms_of(parse_numeral(numeral, MINOR), MINOR) == tuple(names)
    if len(names) == 3:
        assert sentence == "It belongs to every form of A minor."
        return
    assert sentence.startswith(f"It comes from {names[0]} minor: ")
    others = f" {names[1].capitalize()} minor holds it too." if names[1:] else "."
    assert sentence.endswith(others)
    assert ("holds it too" in sentence) == (len(names) == 2)
    assert [form for form in ORDER if form in sentence.lower().replace("is the lowered one", "")] == names


@pytest.mark.parametrize(("numeral", "forms", "in_a", "in_c"), ROWS)
def test_an_explanation_names_the_notes_that_make_the_difference(numeral, forms, in_a, in_c):
    for home, telling in ((key("a"), in_a), (key("c"), in_c)):
        sentence = said(numeral, home)
        words = sentence.replace(";", " ").replace(",", " ").replace(".", " ").replace(":", " ").split()
        named = [word for word in words if word[0] in "ABCDEFG" and word[1:].strip("#b") == ""]
        assert named == [
            *(["C"] if "C minor" in sentence else []),
            *(["A"] if "A minor" in sentence else []),
            *telling.split(),
        ]


@pytest.mark.parametrize(
    ("numeral", "expected"),
    [
        ("iv", "It comes from natural minor: the 6th degree F is the lowered one. Harmonic minor holds it too."),
        ("IV", "It comes from melodic minor: the 6th degree is raised to F#."),
        ("v", "It comes from natural minor: the 7th degree G is the lowered one, the subtonic."),
        (
            "V",
            "It comes from harmonic minor: the 7th degree is raised to G#, the leading tone. "
            "Melodic minor holds it too.",
        ),
        (
            "vii°7",
            "It comes from harmonic minor: the 6th degree F is the lowered one; "
            "the 7th degree is raised to G#, the leading tone.",
        ),
        (
            "viiø7",
            "It comes from melodic minor: the 6th degree is raised to F#; "
            "the 7th degree is raised to G#, the leading tone.",
        ),
    ],
)
def test_a_form_is_told_in_one_sentence(numeral, expected):
    assert said(numeral, key("a")) == expected


@given(st.sampled_from(ROWS), st.integers(-7, 7).map(PitchClass), st.integers(0, 6))
def test_the_form_is_told_in_every_key_whatever_lies_in_the_bass(row, tonic, degree):
    numeral, forms, in_a, _ = row
    home = Key(tonic, MINOR)
    chord = parse_numeral(numeral, MINOR)._replace(bass=MINOR.degrees[degree])
    analysis = analyse([chord], MINOR)[0]
    sentence = origin(Scene(analysis, home, PLAIN))
    moved = [str(note(name).up(home.tonic.fifths - note("A").fifths)) for name in in_a.split()]

    assert analysis.source == ("diatonic" if len(forms.split()) == 3 else f"{forms.split()[0]} minor")
    assert all(f" {name}" in sentence for name in moved)


def test_a_tonic_with_its_subtonic_or_leading_tone_in_the_bass_alone_stays_of_every_form():
    # common practice, no source: the bass is told by itself
    for symbol in ("Am/G", "Am/G#", "Am/F#"):
        assert analysed(symbol, key("a"))[0].source == "diatonic"
