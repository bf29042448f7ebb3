"""What a chord is and does, in words: whole texts."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, key, lines_of_chords, modes
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.words import altered_degrees, sentences
from nearhand.notation.conventions import DEFAULT, PLAIN, Conventions
from nearhand.theory.key import Key
from nearhand.theory.pitch_class import PitchClass


def text(symbols, home, conventions=DEFAULT, place=0):
    return "\n".join(sentences(analysed(symbols, key(home))[place], key(home), conventions))


# The facts: R. Hutchinson, Music Theory for the 21st-Century Classroom (subtonic and leading tone, applied chords,
# borrowed chords, cadential six-four); Open Music Theory, alteredSubdominants (Neapolitan). The wording is ours.
TEXTS = {
    ("diatonic", "C", "C"): """\
It belongs to C major.
It is at rest: tonic.""",
    ("in the tonic's place", "C", "Am"): """\
It belongs to C major.
It stands in for the tonic: tonic.""",
    ("in the tonic's place in minor", "c", "Ab"): """\
It comes from natural minor: the 6th degree A♭ is the lowered one. Harmonic minor holds it too.
It stands in for the tonic: tonic.""",
    ("suspended tonic", "C", "Csus4"): """\
It belongs to C major.
It is the tonic with its third still to come: tonic.""",
    ("tonic of a blues", "C", "C7 F7 C7"): """\
It is borrowed from mixolydian on the same tonic: B♭ is ♭7.
It is home, with a seventh that need not resolve: tonic.""",
    ("diatonic in minor", "c", "Cm/Eb"): """\
It belongs to every form of C minor.
It is at rest: tonic.
E♭ lies in the bass: first inversion.""",
    ("natural minor", "c", "Gm/Bb"): """\
It comes from natural minor: the 7th degree B♭ is the lowered one, the subtonic.
It stands in the dominant's place without the leading tone, and so pulls less: dominant.
B♭ lies in the bass: first inversion.""",
    ("subtonic", "c", "Bb7"): """\
It comes from natural minor: the 6th degree A♭ is the lowered one; the 7th degree B♭ is the lowered one, the subtonic.
It adds colour; its pull depends on what follows.""",
    ("harmonic minor", "g#", "D#7/F##"): """\
It comes from harmonic minor: the 7th degree is raised to F𝄪, the leading tone. Melodic minor holds it too.
It pulls towards the tonic: dominant.
F𝄪 lies in the bass: first inversion.""",
    ("both movable degrees", "c", "Bdim7"): """\
It comes from harmonic minor: the 6th degree A♭ is the lowered one; the 7th degree is raised to B, the leading tone.
It pulls towards the tonic: dominant.""",
    ("melodic minor", "a", "D7 E7"): """\
It comes from melodic minor: the 6th degree is raised to F♯.
It prepares the dominant: predominant.""",
    ("borrowed", "C", "Fm6/Ab"): """\
It is borrowed from natural minor on the same tonic: A♭ is ♭6. Harmonic minor holds it too.
It prepares the dominant: predominant.
A♭ lies in the bass: first inversion.""",
    ("Picardy third", "c", "C"): """\
It is borrowed from major on the same tonic: E is ♯3. Mixolydian and lydian hold it too. At the close \
it is the Picardy third.
It is at rest: tonic.""",
    ("applied dominant", "C", "E7/D Am/C"): """\
It is the dominant of vi, an applied chord: G♯ leads to A.
It pulls towards vi: a dominant of that degree.
D lies in the bass: third inversion.""",
    ("applied, not resolved", "C", "E F"): """\
It is the dominant of vi, an applied chord: G♯ leads to A, though another chord follows here.
It pulls towards vi: a dominant of that degree.""",
    ("applied leading-tone chord", "Eb", "Adim7 Bb"): """\
It is the leading-tone chord of V, an applied chord: A leads to B♭.
It prepares the dominant: predominant.""",
    ("ii of a degree", "Eb", "Bbm7 Eb7 Ab"): """\
It is the ii of IV: with the dominant of IV behind it, it leads to A♭.
It prepares the dominant: predominant.""",
    ("Neapolitan", "g", "Ab/C D7"): """\
It is the Neapolitan sixth: the major chord on A♭, the lowered 2nd degree, over its third.
It prepares the dominant: predominant.
C lies in the bass: first inversion.""",
    ("cadential six-four", "C", "C/G G7"): """\
It belongs to C major.
It stands over the dominant's bass and delays it: a cadential six-four, dominant in function.
G lies in the bass: second inversion.""",
    ("chromatic", "C", "F#7"): """\
It is chromatic: F♯ is ♯4, A♯ is ♯6, C♯ is ♯1.
It adds colour; its pull depends on what follows.""",
    ("foreign bass", "C", "F/G"): """\
It belongs to C major.
It stands over the 5th degree in place of a suspended dominant: dominant in function.
G, the 5th degree, lies in the bass and is no chord tone.""",
    ("half-diminished leading-tone chord", "C", "F#m7b5 G"): """\
It is the half-diminished leading-tone chord of V, an applied chord: F♯ leads to G.
It prepares the dominant: predominant.""",
    ("seventh in the bass", "C", "C/Bb F/A"): """\
It is the dominant of IV, an applied chord: E leads to F.
It pulls towards IV: a dominant of that degree.
B♭ lies in the bass: third inversion.""",
    ("spelled from another tone", "e", "C#dim7 B7"): """\
It is the leading-tone chord of V, an applied chord: A♯ leads to B. The chord is spelled with B♭ for A♯.
It prepares the dominant: predominant.
C♯ lies in the bass: first inversion.""",
    ("augmented sixth as a chart writes it", "a", "F7 E"): """\
It is a German augmented sixth: F and D♯ open outwards to E. Charts write it as F7. The chord is spelled with E♭ for D♯.
It prepares the dominant: predominant.""",
    ("tritone substitute", "C", "Db7 C"): """\
It is the tritone substitute of G7: it has F and C♭ (for B) in common with it and slides down a half step to C.
It pulls towards the tonic: dominant.""",
    ("backdoor dominant", "Eb", "Db7 Eb"): """\
It is the backdoor dominant: from D♭, the lowered 7th degree, it goes up a whole step to E♭.
It pulls towards the tonic: dominant.""",
    ("common-tone diminished", "F", "G#dim7 F"): """\
It is a common-tone diminished chord: it keeps F, the root of the chord after it, while its other notes lean on \
that chord's.
It adds colour; its pull depends on what follows.""",
    ("chromatic mediant", "C", "E C"): """\
It is a chromatic mediant: its root lies a third from the tonic, and it keeps E of the tonic chord.
It adds colour; its pull depends on what follows.""",
    ("chromatic mediant without a common tone", "C", "Ebm C"): """\
It is a chromatic mediant: its root lies a third from the tonic, and it keeps no note of the tonic chord.
It adds colour; its pull depends on what follows.""",
    ("sixth in the bass", "C", "C6/A"): """\
It belongs to C major.
It is at rest: tonic.
A, a chord tone, lies in the bass.""",
}


@pytest.mark.parametrize(("row", "expected"), TEXTS.items(), ids=[row[0] for row in TEXTS])
def test_a_chord_is_told_in_plain_sentences(row, expected):
    _, home, symbols = row

    assert text(symbols, home) == expected


# Common practice, no source; both need a chord before the one that is told.
def test_a_pedal_and_a_line_cliche_are_told_by_the_voice_that_stays_or_walks():
    assert text("C G/C C", "C", place=1) == (
        "It is G over a pedal: C stays in the bass and belongs to the chords around it.\n"
        "It pulls towards the tonic: dominant."
    )
    assert text("Am Am(maj7) Am7 Am6", "a", place=1) == (
        "It is part of a line cliché: one voice walks A G♯ G F♯ while the chord stays.\nIt is at rest: tonic."
    )
    assert "line cliche: one voice walks A G# G F#" in text("Am Am(maj7) Am7 Am6", "a", PLAIN, place=1)


def test_keyboard_characters_are_used_when_asked_for():
    assert text("Gm/Bb", "c", PLAIN) == text("Gm/Bb", "c").replace("♭", "b")
    assert text("Fm6/Ab", "C", PLAIN) == text("Fm6/Ab", "C").replace("♭", "b")


def test_a_chord_borrowed_from_major_is_not_said_to_lie_in_no_scale_when_degrees_count_from_major():
    said = text("C", "c", Conventions(degrees="major"))

    assert "borrowed from major" in said
    assert "no one scale" not in said


def test_a_foreign_bass_outside_the_scale_is_not_called_a_degree_of_it():
    # F sharp is not the 4th degree of C major: that is F.
    assert text("C/F#", "C").splitlines()[-1] == "F♯, outside the key, lies in the bass and is no chord tone."


@pytest.mark.parametrize(
    ("symbol", "degree"), [("Cm/B", "7th"), ("Cm/Bb", "7th"), ("Cm/A", "6th"), ("Cm/Ab", "6th"), ("Cm/F", "4th")]
)
def test_both_sixths_and_sevenths_of_minor_are_degrees_of_the_key_in_the_bass(symbol, degree):
    # The falling line C B Bb A Ab under the tonic chord: raised 6 and 7 are native to minor (Open Music Theory).
    assert f"the {degree} degree" in text(symbol, "c")
    assert "outside the key" not in text(symbol, "c")


@pytest.mark.parametrize(
    ("home", "symbol", "expected"),
    [
        ("e", "B7", [("♯7", "D♯")]),
        ("C", "Fm", [("♭6", "A♭")]),
        ("C", "Ddim7", [("♭6", "A♭"), ("♭1", "C♭")]),
        ("c", "Am7b5", [("♯6", "A")]),
        ("C", "C", []),
        ("D dorian", "A7", [("♯7", "C♯")]),
    ],
)
def test_the_altered_degrees_are_the_tones_outside_the_keys_own_scale(home, symbol, expected):
    # in minor the natural form (Open Music Theory, scales)
    assert list(altered_degrees(analysed(symbol, key(home))[0], key(home))) == expected


@given(lines_of_chords, modes, st.integers(-6, 6).map(PitchClass), st.booleans())
def test_every_chord_is_told_in_two_or_three_whole_sentences(chords, mode, tonic, plain):
    home = Key(tonic, mode)
    for analysis in analyse(chords, mode):
        told = sentences(analysis, home, Conventions(plain=plain))

        is_inverted = analysis.reading.bass != analysis.reading.root
        assert len(told) == 2 + (is_inverted and analysis.source != "pedal")  # a pedal has told its bass already
        assert all(sentence[0].isupper() and sentence.endswith(".") for sentence in told)
        assert not plain or "".join(told).isascii()
