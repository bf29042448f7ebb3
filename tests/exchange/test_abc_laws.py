"""Laws of reading ABC files: what is written reads back, and any text at all is answered or refused."""

from __future__ import annotations

from fractions import Fraction

from exchange.abc_words import NAME, abc
from hypothesis import given, settings
from hypothesis import strategies as st

from nearhand.exchange.abc_files import read_abc
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key

ACCIDENTALS = {-1: "_", 0: "=", 1: "^"}
SHARPS, FLATS = "FCGDAEB", "BEADGCF"
SIGNATURES = {"C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "F": -1, "Bb": -2, "Eb": -3, "Ab": -4, "Am": 0, "Em": 1, "F#m": 3,
              "Gm": -2, "Cm": -3, "Ddor": 0, "Gmix": 0, "Flyd": 0, "Ephr": 0, "Bloc": 0}  # fmt: skip
"""Keys and their signatures: sharps above, flats below nought. Handbook tables."""
UNITS = {"1/4": Fraction(1, 4), "1/8": Fraction(1, 8), "1/16": Fraction(1, 16)}


def altered(signature):
    """The letters that a signature alters, by how much."""
    letters = SHARPS[:signature] if signature >= 0 else FLATS[:-signature]
    return dict.fromkeys(letters, 1 if signature >= 0 else -1)


letters = st.sampled_from("CDEFGAB")
notes = st.tuples(letters, st.integers(2, 6), st.integers(-1, 1))
sounds = st.one_of(st.none(), notes)


@st.composite
def bars(draw):
    """Bars of 4/4, each the sounds with their lengths in parts of a whole note."""
    found = []
    for _ in range(draw(st.integers(1, 5))):
        bar, left = [], Fraction(1)
        while left:
            length = draw(st.sampled_from([part for part in (1, 2, 3, 4, 6, 8) if Fraction(part, 16) <= left]))
            sound = draw(sounds) if bar and bar[-1][0] is not None else draw(notes)
            bar.append((sound, Fraction(length, 16)))
            left -= bar[-1][1]
        found.append(bar)
    return found


def written(bar, signature, unit, draw):
    """A bar as ABC: an accidental is written where it is needed, and now and then where it is not."""
    held = {}
    signs = []
    for sound, length in bar:
        count = length / unit
        tail = (
            "" if count == 1 else str(count) if draw(st.booleans()) or count.numerator != 1 else f"/{count.denominator}"
        )
        if sound is None:
            signs.append(f"z{tail}")
            continue
        letter, octave, alteration = sound
        needed = held.get(letter, signature.get(letter, 0)) != alteration
        accidental = ACCIDENTALS[alteration] if needed or draw(st.booleans()) else ""
        if accidental:
            held[letter] = alteration
        marks = "'" * (octave - 5) if octave > 4 else "," * (4 - octave)
        signs.append(f"{accidental}{letter.lower() if octave > 4 else letter}{marks}{tail}")
    return draw(st.sampled_from([" ", "", "  "])).join(signs)


def name(sound):
    letter, octave, alteration = sound
    return f"{letter}{'#' * alteration}{'b' * -alteration}{octave}"


@given(bars(), st.sampled_from(sorted(SIGNATURES)), st.sampled_from(sorted(UNITS)), st.data())
def test_notes_that_are_written_as_abc_read_back(music, key, unit, data):
    signature = altered(SIGNATURES[key])
    lines = [written(bar, signature, UNITS[unit], data.draw) for bar in music]
    text = abc("|".join(lines) + "|]", "4/4", unit, key)
    tune = read_abc(text, NAME)

    tonic = tune.melody.tonic
    found = [
        [(note.interval and str(tonic.up(note.interval)), note.beats) for note in bar.notes] for bar in tune.melody.bars
    ]
    assert found == [[(sound and name(sound), length * 4) for sound, length in bar] for bar in music]
    assert tonic == tune.melody.well_counted().tonic
    assert tonic.pitch_class == tune.key.tonic
    assert tune.remarks == ()


@given(bars(), st.sampled_from(["G major", "F# minor", "Eb major"]))
def test_another_octave_of_letters_is_another_octave_of_notes(music, key):
    low = ["".join("z" if sound is None else f"={sound[0]}," for sound, _ in bar) for bar in music]
    high = [line.replace(",", "'") for line in low]
    tunes = [read_abc(abc("|".join(lines) + "|]", "none", "1/4", key), NAME) for lines in (low, high)]
    first, second = (tune.melody.sounding() for tune in tunes)

    assert [note.pitch.midi + 24 for note in first] == [note.pitch.midi for note in second]
    assert parse_key(key) == tunes[0].key


LONG = """%abc-2.1
M:6/8
% a book
X:1
T:Caf\\'e
C:nobody
M:6/8
L:1/8
Q:1/4=90
V:1 clef=treble
V:2
U:n=!turn!
K:Gmix ^c clef=treble
[V:1] |:"G"D|"G"G2>B "D7(b9)"{ab}A2-A|"G/B"(3GA_B !trill!d2 ~e{g}f|[K:D] "^up"F=F/^F/[FA]2 z[L:1/4] c|\\
w: words * and words
Z2|[M:3/4] "(Em)"E2 D|[1 C3:|[2 c'3|] % the end
%%text hello
[V:2] |:G,|G,6 & D6|z6:|
P:B
[V:1] "N.C."x2 d<e|+fermata+ d3::nd2 c//B//A/|(5:4:5 [CE]DEFG|A3|]

X:2
K:C
C|
"""


def test_every_beginning_of_a_file_is_answered_or_refused():
    answered = 0
    for end in range(len(LONG)):
        try:
            answered += bool(read_abc(LONG[:end], NAME).melody.bars)
        except InputError as error:
            assert error.source == NAME
            assert error.what
    assert answered > len(LONG) // 4
    assert len(read_abc(LONG, NAME).melody.bars) == 14


ALPHABET = "XTKMLVPQUwz:CDEFGabc,'/0123456789 |[]{}()<>-^_=\"!+~.&%\\\n\t*$yZxTé♯\0"


@settings(max_examples=300)
@given(st.text(alphabet=ALPHABET, max_size=60), st.booleans())
def test_any_text_is_answered_or_refused(text, has_header):
    try:
        tune = read_abc(abc(text) if has_header else text, NAME)
    except InputError as error:
        assert str(error).startswith(NAME)
        assert 0 <= error.start <= len(error.text)
    else:
        check(tune)


@given(st.integers(0, len(LONG)), st.integers(0, 8), st.text(alphabet=ALPHABET, max_size=4))
def test_a_file_with_a_fault_is_answered_or_refused(start, length, text):
    try:
        tune = read_abc(LONG[:start] + text + LONG[start + length :], NAME)
    except InputError as error:
        assert error.source == NAME
    else:
        check(tune)


def check(tune):
    """What holds of every tune: bars fill their meters but for the first and the last, chords stand over bars."""
    melody = tune.melody
    assert any(note.interval is not None for note in melody.notes)
    assert all(bar.beats == bar.meter.beats for bar in melody.bars[1:-1])
    assert all(bar.beats <= bar.meter.beats <= 64 for bar in (melody.bars[0], melody.bars[-1]))
    assert all(note.beats > 0 for note in melody.notes)
    melody.check_range()
    if tune.progression is not None:
        assert [bar.meter for bar in tune.progression.bars] == [bar.meter for bar in melody.bars[melody.has_pickup :]]
        assert all(sum(slot.beats for slot in bar.slots) == bar.meter.beats for bar in tune.progression.bars)
