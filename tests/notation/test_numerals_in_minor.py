"""What each numeral means in minor, where the sixth and seventh degree have two forms."""

from __future__ import annotations

import pytest
from strategies import key, names, note

from nearhand.notation.conventions import PLAIN, SEVENTHS, Conventions
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import relative_to
from nearhand.theory.mode import MINOR

# Numeral, tones in A minor, tones in C minor; which form of the sixth or seventh degree it uses. R.
# Hutchinson, *Music Theory for the 21st-Century Classroom*, "Diatonic Chords in Minor"; Open Music Theory
# (first edition), "Triads"; spelling computed two ways that agreed, but i(maj7) and III+maj7 by arithmetic
# alone. Raised degrees are native to minor, not borrowed.
NUMERALS = [
    ("i", "A C E", "C Eb G", "neither"),
    ("ii°", "B D F", "D F Ab", "lowered 6"),
    ("ii", "B D F#", "D F A", "raised 6"),
    ("III", "C E G", "Eb G Bb", "lowered 7"),
    ("III+", "C E G#", "Eb G B", "raised 7"),
    ("iv", "D F A", "F Ab C", "lowered 6"),
    ("IV", "D F# A", "F A C", "raised 6"),
    ("v", "E G B", "G Bb D", "lowered 7"),
    ("V", "E G# B", "G B D", "raised 7"),
    ("VI", "F A C", "Ab C Eb", "lowered 6"),
    ("vi°", "F# A C", "A C Eb", "raised 6"),
    ("vi", "F# A C#", "A C E", "raised 6"),
    ("VII", "G B D", "Bb D F", "lowered 7"),
    ("vii°", "G# B D", "B D F", "raised 7"),
    ("i7", "A C E G", "C Eb G Bb", "lowered 7"),
    ("i(maj7)", "A C E G#", "C Eb G B", "raised 7"),
    ("iiø7", "B D F A", "D F Ab C", "lowered 6"),
    ("ii7", "B D F# A", "D F A C", "raised 6"),
    ("IIImaj7", "C E G B", "Eb G Bb D", "lowered 7"),
    ("III+maj7", "C E G# B", "Eb G B D", "raised 7"),
    ("iv7", "D F A C", "F Ab C Eb", "lowered 6"),
    ("IV7", "D F# A C", "F A C Eb", "raised 6"),
    ("v7", "E G B D", "G Bb D F", "lowered 7"),
    ("V7", "E G# B D", "G B D F", "raised 7"),
    ("VImaj7", "F A C E", "Ab C Eb G", "lowered 6"),
    ("viø7", "F# A C E", "A C Eb G", "raised 6"),
    ("VII7", "G B D F", "Bb D F Ab", "lowered 7"),
    ("vii°7", "G# B D F", "B D F Ab", "raised 7, lowered 6"),
    ("viiø7", "G# B D F#", "B D F A", "raised 7 and 6"),
]

# Numeral and root in A minor. When in Rome corpus, syntax.md, minor-mode option "cautionary"; each cell was
# reproduced with music21 10.5.1. Of the rival conventions (quality, sharp, flat) none is read here.
CAUTIONARY = [
    ("##vii", "G##"), ("#vii", "G#"), ("vii", "G#"), ("VII", "G"), ("bVII", "G"), ("bbVII", "Gb"),
    ("bbvii", "Gb"),
    ("bvii", "G"), ("#VII", "G#"), ("##VII", "G##"),
]  # fmt: skip

# Numeral and tones in A minor; same source and convention. The row of the sixth degree is like that of the
# seventh.
CAUTIONARY_CHORDS = [
    ("vi", "F# A C#"), ("VI", "F A C"), ("vii°", "G# B D"), ("VII", "G B D"), ("#vi", "F# A C#"),
    ("bVII", "G B D"),
    ("bVI", "F A C"), ("#vi°", "F# A C"), ("#vii°", "G# B D"), ("bvi", "F Ab C"), ("#VI", "F# A# C#"),
    ("#vii°7", "G# B D F"), ("♭VI", "F A C"), ("♯vii°", "G# B D"), ("♮VI", "F A C")
]  # fmt: skip

# The rock and pop reading "relative to major" names the same chords with a flat. Open Music Theory (first
# edition), "Pop-rock harmony: minor-key" writes bVI bVII I.
RELATIVE_TO_MAJOR = [
    ("bIII", "C E G"), ("bVI", "F A C"), ("bVII", "G B D"), ("VI", "F# A# C#"), ("vi", "F# A C#"),
    ("iio", "B D F"), ("i", "A C E"), ("v", "E G B"), ("viio7", "G# B D F"), ("bVIImaj7", "G B D F#"),
]  # fmt: skip


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "degree"), NUMERALS, ids=[row[0] for row in NUMERALS])
def test_a_numeral_of_minor_has_its_tones(numeral, in_a, in_c, degree):
    chord = parse_numeral(numeral, MINOR)

    assert names(chord.in_key(key("a")).tones) == in_a, degree
    assert names(chord.in_key(key("c")).tones) == in_c, degree


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "degree"), NUMERALS, ids=[row[0] for row in NUMERALS])
def test_a_chord_of_minor_is_written_as_its_numeral(numeral, in_a, in_c, degree):
    for tonic in ("a", "c", "g#", "eb"):
        chord = relative_to(parse_numeral(numeral, MINOR).in_key(key(tonic)), key(tonic))

        assert write_numeral(chord, MINOR) == numeral


@pytest.mark.parametrize(("numeral", "root"), CAUTIONARY)
def test_an_accidental_before_the_seventh_degree_is_cautionary(numeral, root):
    assert parse_numeral(numeral, MINOR).in_key(key("a")).root == note(root)


@pytest.mark.parametrize(("numeral", "root"), CAUTIONARY)
def test_the_sixth_degree_is_treated_like_the_seventh(numeral, root):
    sixth = numeral.replace("VII", "VI").replace("vii", "vi")

    assert parse_numeral(sixth, MINOR).in_key(key("a")).root == note(root.replace("G", "F"))


@pytest.mark.parametrize(("numeral", "tones"), CAUTIONARY_CHORDS)
def test_quality_decides_between_the_two_forms_of_a_degree(numeral, tones):
    assert names(parse_numeral(numeral, MINOR).in_key(key("a")).tones) == tones


# A mark of quality decides as the case does: a diminished chord stands on the raised form, an augmented one on the
# lowered, whatever the case. RomanText decides by quality (When in Rome corpus, syntax.md); music21 10.5.1 agrees.
QUALITY_BEFORE_CASE = [
    ("VIIo", "G# B D"), ("VII°7", "G# B D F"), ("VIo", "F# A C"), ("VIIø7", "G# B D F#"), ("VI/o7", "F# A C E"),
    ("VIIo6", "G# B D"), ("vi+", "F A C#"), ("vii+", "G B D#"), ("VI+", "F A C#"), ("VII+", "G B D#"),
    ("bVIIo", "G Bb Db"), ("#VIIo", "G# B D"),
]  # fmt: skip

# A trap that MusicXML sets: the quality of degree 5 is that of the numeral, not of the natural
# scale (numeral-mode in MusicXML 4.0 assumes natural minor, which would make V a minor chord).
FIFTH = [("V", "E G# B"), ("v", "E G B"), ("V7", "E G# B D"), ("v7", "E G B D"), ("V+", "E G# B#"), ("vo", "E G Bb")]


@pytest.mark.parametrize(("numeral", "tones"), [*QUALITY_BEFORE_CASE, *FIFTH])
@pytest.mark.parametrize("sevenths", SEVENTHS)
def test_a_mark_decides_between_the_two_forms_as_the_case_does(numeral, tones, sevenths):
    chord = parse_numeral(numeral, MINOR, Conventions(sevenths=sevenths))

    assert names(chord.in_key(key("a")).tones) == tones


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "degree"), NUMERALS, ids=[row[0] for row in NUMERALS])
def test_a_numeral_of_minor_is_the_same_chord_with_sevenths_of_the_scale(numeral, in_a, in_c, degree):
    of_scale = Conventions(sevenths="scale")
    bare = numeral if numeral == "i(maj7)" else numeral.replace("maj", "")

    assert names(parse_numeral(bare, MINOR, of_scale).in_key(key("a")).tones) == in_a, degree
    assert names(parse_numeral(numeral, MINOR, of_scale).in_key(key("c")).tones) == in_c
    assert write_numeral(parse_numeral(numeral, MINOR), MINOR, of_scale) == bare


@pytest.mark.parametrize(("numeral", "tones"), RELATIVE_TO_MAJOR)
def test_counted_against_major_minor_keys_have_flat_degrees(numeral, tones):
    against_major = PLAIN._replace(degrees="major")
    chord = parse_numeral(numeral, MINOR, against_major)

    assert names(chord.in_key(key("a")).tones) == tones
    assert write_numeral(chord, MINOR, against_major) == numeral


def test_what_is_not_needed_is_not_written():
    for numeral, plain in (("bVII", "VII"), ("#vii°", "vii°"), ("bVI", "VI"), ("#vi°", "vi°")):
        assert write_numeral(parse_numeral(numeral, MINOR), MINOR) == plain
