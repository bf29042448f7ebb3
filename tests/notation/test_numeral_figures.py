"""Figures of inversion, the Neapolitan sixth and applied chords."""

from __future__ import annotations

import pytest
from strategies import key, names, note

from nearhand.notation.numeral_writing import write_applied, write_neapolitan, write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR

# Figure after V, bass in C, what we write. Open Music Theory (first edition), "Thoroughbass figures"; R.
# Hutchinson, *Music Theory for the 21st-Century Classroom*, "Figured Bass Inversion Symbols". Slashes
# between figures are optional: When in Rome corpus, syntax.md.
ON_THE_DOMINANT = [
    ("V", "G", "V"), ("V5/3", "G", "V"), ("V53", "G", "V"),
    ("V6", "B", "V6"), ("V6/3", "B", "V6"), ("V63", "B", "V6"),
    ("V64", "D", "V64"), ("V6/4", "D", "V64"),
    ("V7", "G", "V7"),
    ("V65", "B", "V65"), ("V6/5", "B", "V65"),
    ("V43", "D", "V43"), ("V4/3", "D", "V43"),
    ("V42", "F", "V42"), ("V4/2", "F", "V42"), ("V2", "F", "V42"),
]  # fmt: skip

# Mode, numeral, tones on C, bass. After the numeral the 7 is dropped in inversions; M, °, ø stay: R.
# Hutchinson, as above.
MARKED = [
    ("major", "Imaj43", "C E G B", "G"), ("major", "IM4/3", "C E G B", "G"),
    ("major", "IVmaj65", "F A C E", "A"),
    ("major", "vii°4/2", "B D F Ab", "Ab"), ("major", "viio4/3", "B D F Ab", "F"),
    ("major", "viiø42", "B D F A", "A"),
    ("major", "vii/o65", "B D F A", "D"), ("major", "vii/o6/5", "B D F A", "D"),
    ("major", "vii°6", "B D F", "D"),
    ("major", "iii6", "E G B", "G"), ("major", "vi64", "A C E", "E"), ("major", "I+6", "C E G#", "E"),
    ("minor", "iiø6/5", "D F Ab C", "F"), ("minor", "ii°6", "D F Ab", "F"),
    ("minor", "vii°65", "B D F Ab", "D"),
    ("minor", "III+6", "Eb G B", "G"), ("minor", "VImaj42", "Ab C Eb G", "G"),
    ("minor", "i6", "C Eb G", "Eb"),
    ("minor", "i(maj65)", "C Eb G B", "Eb"), ("minor", "III+maj42", "Eb G B D", "D"),
    ("minor", "iio6", "D F Ab", "F"),
]  # fmt: skip

# Tonic, tones of the sixth from its bass up: degrees 4, b6, b2, the same in major and minor. Open Music
# Theory (first edition), "Altered subdominants"; spelling computed.
NEAPOLITANS = [
    ("C", "F Ab Db"), ("G", "C Eb Ab"), ("D", "G Bb Eb"), ("A", "D F Bb"), ("E", "A C F"), ("F#", "B D G"),
    ("Eb", "Ab Cb Fb"), ("Bb", "Eb Gb Cb"), ("F", "Bb Db Gb"), ("Ab", "Db Fb Bbb"),
]  # fmt: skip

# Key, target, V7 of it, its diminished chord. R. Hutchinson, *Music Theory for the 21st-Century Classroom*,
# "Secondary Dominants in Major and Minor" and "Secondary Diminished Chords in Major and Minor"; spelling
# computed.
APPLIED = [
    ("C", "ii", "A C# E G", "vii°7", "C# E G Bb"), ("C", "iii", "B D# F# A", "vii°7", "D# F# A C"),
    ("C", "IV", "C E G Bb", "viiø7", "E G Bb D"), ("C", "V", "D F# A C", "viiø7", "F# A C E"),
    ("C", "vi", "E G# B D", "vii°7", "G# B D F"),
    ("c", "III", "Bb D F Ab", "viiø7", "D F Ab C"), ("c", "iv", "C E G Bb", "vii°7", "E G Bb Db"),
    ("c", "V", "D F# A C", "vii°7", "F# A C Eb"), ("c", "VI", "Eb G Bb Db", "viiø7", "G Bb Db F"),
    ("c", "VII", "F A C Eb", "viiø7", "A C Eb G"),
]  # fmt: skip

# Numeral, key, tones, bass. Chains of applied chords: the rule applied twice. A bass degree behind them is
# counted in the key itself: ours. The rest: same sources as above.
CHAINS = [
    ("V7/V/V", "C", "A C# E G", "A"), ("V65/V/ii", "C", "E G# B D", "G#"), ("V/V/V/V", "C", "E G# B", "E"),
    ("iv/iv", "c", "Bb Db F", "Bb"), ("V42/IV", "C", "C E G Bb", "Bb"), ("IV/IV", "C", "Bb D F", "Bb"),
    ("V7/bII", "C", "Ab C Eb Gb", "Ab"), ("V7/N", "C", "Ab C Eb Gb", "Ab"), ("V43/vi", "C", "E G# B D", "B"),
    ("VI/vi", "C", "F A C", "F"), ("III/ii", "C", "F A C", "F"), ("VII7/vi", "C", "G B D F", "G"),
    ("V7/V/6", "C", "D F# A C", "A"), ("V7/V/#4", "C", "D F# A C", "F#"), ("ii°6/V", "c", "A C Eb", "C"),
]  # fmt: skip


@pytest.mark.parametrize(("numeral", "bass", "written"), ON_THE_DOMINANT)
def test_a_figure_says_which_tone_lies_in_the_bass(numeral, bass, written):
    chord = parse_numeral(numeral, MAJOR)

    assert chord.in_key(key("C")).bass == note(bass)
    assert names(chord.in_key(key("C")).tones) == ("G B D" if written in ("V", "V6", "V64") else "G B D F")
    assert write_numeral(chord, MAJOR) == written


@pytest.mark.parametrize(("mode", "numeral", "tones", "bass"), MARKED)
def test_a_figure_stands_behind_the_mark_of_quality(mode, numeral, tones, bass):
    home = key("C" if mode == "major" else "c")
    chord = parse_numeral(numeral, home.mode).in_key(home)

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


@pytest.mark.parametrize(("tonic", "tones"), NEAPOLITANS)
def test_the_neapolitan_sixth_is_the_same_in_major_and_minor(tonic, tones):
    fourth, sixth, second = tones.split()

    for home in (key(tonic), key(tonic.lower())):
        relative = parse_numeral("N6", home.mode)
        chord = relative.in_key(home)

        assert names(chord.tones) == f"{second} {fourth} {sixth}"
        assert chord.bass == note(fourth)
        assert relative == parse_numeral("bII6", home.mode)
        assert parse_numeral("N53", home.mode).in_key(home).bass == note(second)
        assert write_neapolitan(relative) == "N6"
        assert write_numeral(relative, home.mode) == "♭II6"


@pytest.mark.parametrize(("home", "target", "dominant", "numeral", "diminished"), APPLIED)
def test_an_applied_chord_is_read_in_the_key_of_its_target(home, target, dominant, numeral, diminished):
    for head, tones in (("V", dominant), (numeral[:-1], diminished)):
        for place, figure in enumerate(("7", "65", "43", "42")):
            chord = parse_numeral(f"{head}{figure}/{target}", key(home).mode).in_key(key(home))

            assert names(chord.tones) == tones
            assert str(chord.bass) == tones.split()[place]


@pytest.mark.parametrize(("home", "target", "dominant", "numeral", "diminished"), APPLIED)
def test_an_applied_chord_is_written_as_it_was_read(home, target, dominant, numeral, diminished):
    mode = key(home).mode
    place = parse_numeral(target, mode).root

    for figure in ("7", "65", "43", "42"):
        for text in (f"V{figure}/{target}", f"{numeral[:-1]}{figure}/{target}"):
            assert write_applied(parse_numeral(text, mode), place, target.islower(), mode) == text


@pytest.mark.parametrize(("numeral", "home", "tones", "bass"), CHAINS)
def test_applied_chords_follow_one_another_and_may_have_a_bass_degree(numeral, home, tones, bass):
    chord = parse_numeral(numeral, key(home).mode).in_key(key(home))

    assert names(chord.tones) == tones
    assert chord.bass == note(bass)


def test_a_bare_seven_on_a_capital_is_a_dominant_seventh():
    # common practice, no source: the rival convention takes the seventh of the scale
    assert names(parse_numeral("I7", MAJOR).in_key(key("C")).tones) == "C E G Bb"
    assert names(parse_numeral("IV65", MINOR).in_key(key("c")).tones) == "F A C Eb"
    assert names(parse_numeral("Imaj7", MAJOR).in_key(key("C")).tones) == "C E G B"
