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
    ("diatonic", "C", "Am"): """\
It belongs to C major.
It is at rest: tonic.""",
    ("diatonic in minor", "c", "Cm/Eb"): """\
It belongs to every form of C minor.
It is at rest: tonic.
E♭ lies in the bass: first inversion.""",
    ("natural minor", "c", "Gm/Bb"): """\
It comes from natural minor: the 7th degree B♭ is the lowered one, the subtonic.
It pulls towards the tonic: dominant.
B♭ lies in the bass: first inversion.""",
    ("subtonic", "c", "Bb7"): """\
It comes from natural minor: the 6th degree A♭ is the lowered one; the 7th degree B♭ is the lowered one, the subtonic.
It adds colour; its pull depends on what follows.""",
    ("harmonic minor", "g#", "D#7/F##"): """\
It comes from harmonic minor: the 7th degree is raised to F𝄪, the leading tone.
It pulls towards the tonic: dominant.
F𝄪 lies in the bass: first inversion.""",
    ("both movable degrees", "c", "Bdim7"): """\
It comes from harmonic minor: the 6th degree A♭ is the lowered one; the 7th degree is raised to B, the leading tone.
It pulls towards the tonic: dominant.""",
    ("melodic minor", "a", "D7 E7"): """\
It comes from melodic minor: the 6th degree is raised to F♯.
It prepares the dominant: predominant.""",
    ("borrowed", "C", "Fm6/Ab"): """\
It is borrowed from natural minor on the same tonic: A♭ is ♭6.
It prepares the dominant: predominant.
A♭ lies in the bass: first inversion.""",
    ("Picardy third", "c", "C"): """\
It is borrowed from major on the same tonic: E is ♯3.
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
It prepares the dominant: predominant.
G, the 5th degree, lies in the bass and is no chord tone.""",
    ("sixth in the bass", "C", "C6/A"): """\
It belongs to C major.
It is at rest: tonic.
A, a chord tone, lies in the bass.""",
}


@pytest.mark.parametrize(("row", "expected"), TEXTS.items(), ids=[row[0] for row in TEXTS])
def test_a_chord_is_told_in_plain_sentences(row, expected):
    _, home, symbols = row

    assert text(symbols, home) == expected


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

        assert len(told) == 2 + (analysis.chord.bass != analysis.chord.root)
        assert all(sentence[0].isupper() and sentence.endswith(".") for sentence in told)
        assert not plain or "".join(told).isascii()
