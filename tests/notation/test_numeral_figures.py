"""Figures of inversion, the Neapolitan sixth and applied chords; and what becomes of texts that are no numerals."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import conventions, key, modes, names, note
from timing import seconds_of

from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_writing import write_applied, write_neapolitan, write_numeral
from nearhand.notation.numerals import MOST_PARTS, parse_numeral
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

OF_THE_SCALE = Conventions(sevenths="scale")

# The same as letter symbols, V7 and the diminished chord of each target in the order of the table below.
LETTERS = {
    "C": "A7 C#dim7, B7 D#dim7, C7 Em7b5, D7 F#m7b5, E7 G#dim7",
    "c": "Bb7 Dm7b5, C7 Edim7, D7 F#dim7, Eb7 Gm7b5, F7 Am7b5",
}

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


@pytest.mark.parametrize("home", LETTERS)
@pytest.mark.parametrize("choice", [DEFAULT, OF_THE_SCALE], ids=["chord", "scale"])
def test_an_applied_chord_is_the_letter_symbol_of_the_table(home, choice):
    rows = [(target, numeral) for name, target, _, numeral, _ in APPLIED if name == home]
    for (target, numeral), symbols in zip(rows, LETTERS[home].split(", "), strict=True):
        for head, symbol in zip(("V7", numeral), symbols.split(), strict=True):
            chord = parse_numeral(f"{head}/{target}", key(home).mode, choice)

            assert chord.in_key(key(home)) == parse_chord(symbol)


@pytest.mark.parametrize("home", ["C", "c"])
def test_the_half_diminished_chord_of_the_mediant_is_that_of_the_supertonic_in_minor(home):
    # viiø7/III in minor has the notes of iiø7 (R. Hutchinson, as above)
    chord = parse_numeral("viiø7/III", key(home).mode).in_key(key(home))

    assert (chord == parse_numeral("iiø7", key(home).mode).in_key(key(home))) == (home == "c")


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


@pytest.mark.parametrize("choice", [DEFAULT, OF_THE_SCALE], ids=["chord", "scale"])
def test_applied_chords_are_nested_to_a_depth_of_twelve_and_no_deeper(choice):
    for mode in (MAJOR, MINOR):
        for depth in range(MOST_PARTS + 1):
            chord = parse_numeral("V7" + "/V" * depth, mode, choice)

            assert (chord.root, chord.quality) == (depth + 1, parse_numeral("V7", MAJOR).quality)
        for text in ("V7" + "/V" * (MOST_PARTS + 1), "V/" * 1000 + "V", "V/" * 1000):
            with pytest.raises(InputError) as caught:
                parse_numeral(text, mode, choice)
            assert caught.value.what == "applied chords are nested too deep"
            assert text[caught.value.start] == "/"
            assert text[: caught.value.start].count("/") == MOST_PARTS


DEGREES = ["I", "ii", "iii", "IV", "V", "vi", "bII", "#iv", "VI", "v"]


@given(st.lists(st.sampled_from(DEGREES), min_size=1, max_size=12), modes, conventions)
def test_a_chain_of_applied_chords_is_one_step_after_another(targets, mode, choice):
    chord = parse_numeral("/".join(["V7", *targets]), mode, choice)
    place, degree_mode = 0, choice.counting_mode(mode)
    for target in reversed(targets):
        degree = parse_numeral(target, degree_mode)
        place, degree_mode = place + degree.root, MINOR if degree.quality.has_minor_third else MAJOR

    assert chord == parse_numeral("V7", degree_mode).above(place)


# Pieces of numerals and what is none: any row of them is read or refused.
PIECES = [
    "I", "II", "III", "IV", "V", "VI", "VII", "i", "ii", "iii", "iv", "v", "vi", "vii", "N", "It", "Fr", "Ger", "Sw",
    "Cad", "Gr", *"0123456789", *"#b♯♭♮𝄪°øo+d/[](),⁶₅⁻x ", "//", "[no5]", "[add9]", "[##5]", "[b8]", "maj", "sus4",
    "dim", "omit", "alt", "/o", "6/5", "5th", "65", "13", "\x00",
]  # fmt: skip
some_text = st.text() | st.text(st.characters(codec=None)) | st.lists(st.sampled_from(PIECES), max_size=8).map("".join)


@settings(max_examples=1500)
@given(some_text, st.sampled_from(["", "V", "vii", "I/", "Ger"]), modes, conventions)
@example("84", "V", MAJOR, DEFAULT)
@example("o♯56", "ii", MAJOR, DEFAULT)
@example("[b8]", "V", MAJOR, DEFAULT)
@example("\ud800", "V", MINOR, OF_THE_SCALE)
def test_any_text_is_refused_in_its_place_or_read_and_then_written_and_read_again(tail, head, mode, choice):
    text = head + tail
    try:
        chord = parse_numeral(text, mode, choice)
    except InputError as error:
        assert 0 <= error.start <= len(text)
        assert error.start <= error.end <= len(text) + 1
        assert error.wanted
        return
    if abs(chord.root) <= 20 and abs(chord.bass) <= 26:  # three accidentals: further off nothing can be spelled
        assert parse_numeral(write_numeral(chord, mode, choice), mode, choice) == chord


# 100,000 characters in one numeral, and a quarter of that: the time grows with the length, not with its square. The
# ratio of the two is four then, and sixteen with the square. Ours.
SHAPES = [
    "V/", "V[no5]", "[no5]", "6/5/", "I", "b", "[", "V//", "II//", "V[", "V(b9)", "7", "V7/", "/o", "+", "[add9]", "b5",
    "#9,", "N6/", "Ger65/", "Cad64/", "♭", "⁶", "x", "no", "6/9/", "5/3", "°", "[,", "\x00",
]  # fmt: skip
LONG, SHORT, MOST_RATIO, MOST_TRIES = 100_000, 25_000, 9, 5


def seconds(text, choice):
    parse_numeral.cache_clear()
    return seconds_of(lambda: read_or_refused(text, choice))


def read_or_refused(text, choice):
    try:
        parse_numeral(text, MAJOR, choice)
    except InputError as error:
        assert 0 <= error.start <= len(text)


@pytest.mark.parametrize("shape", SHAPES)
@pytest.mark.parametrize("head", ["", "V", "V7[no5]/V"])
def test_a_long_numeral_takes_time_in_step_with_its_length(shape, head):
    long, short = (head + shape * (size // len(shape)) for size in (LONG, SHORT))
    for choice in (DEFAULT, OF_THE_SCALE):
        ratios = []  # a busy machine may spoil one measurement, not all of them
        while len(ratios) < MOST_TRIES and (not ratios or min(ratios) > MOST_RATIO):
            ratios.append(seconds(long, choice) / seconds(short, choice))

        assert min(ratios) <= MOST_RATIO
