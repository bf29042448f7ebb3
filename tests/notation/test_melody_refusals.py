"""What is no melody is refused by one sentence, at its place, with a hint; and nothing else ever comes out."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import key
from verbs.session_words import picture

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.melody_reading import WrittenMelody, parse_melody, read_melody, resolve_melody
from nearhand.notation.melody_remarks import remarks_on_melody
from nearhand.notation.melody_writing import stored
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Meter

NOTES = "write notes: E4 F#4 G, degrees: 1 b3 5', syllables: do re mi, or r for a rest"
EITHER = "write notes: 5 3 1, or E4 G4"
BEATS = "write beats as 2, 1/2 or 1.5, for example 5:2"
KEY_IN_FRONT = 'put the key in front, as in "G: 5 3 1", or write note names'
BEHIND = "write an ornament right behind its note, before its length: 5(tr), 5(tr):2"
LONGER = "hold a note with -, write its length as 5:2, add rests with r, or set a meter: [3/4]"
SHORTER = "let notes share a beat: [5 6], set a bar line, or a meter: [3/4]"
SYLLABLES = "write do re mi fa sol la ti, or Do Re Mi Fa Sol La Si"
NEARER = "write it in a nearer octave; middle C is C4"

# A text, the sentence that refuses it, the text with ^ before the first bad character, and the hint. All ours.
REFUSED = [
    ("", "there are no notes here", "", NOTES),
    ("   ", "there are no notes here", "   ^", NOTES),
    ("|", "there are no notes here", "|^", NOTES),
    ("|:", "there are no notes here", "|:^", NOTES),
    ("C:", "there are no notes here", "C:^", NOTES),
    ("C: | |", "there are no notes here", "C: | |^", NOTES),
    ("- 1", "1 needs a key to be read in", "- ^1", KEY_IN_FRONT),
    ("C: - 1", "there is no note before this one to hold", "C: ^- 1", "begin with a note, or r for a rest"),
    ("1 2", "1 needs a key to be read in", "^1 2", KEY_IN_FRONT),
    ("b3 do", "b3 needs a key to be read in", "^b3 do", KEY_IN_FRONT),
    ("do", "do needs a key to be read in", "^do", KEY_IN_FRONT),
    ("{7_}C4", "7_ needs a key to be read in", "{^7_}C4", KEY_IN_FRONT),
    ("c4 d4", "c4 is no note", "^c4 d4", "write the letter as a capital: C4"),
    ("e4 f4 a4 b4", "e4 is no note", "^e4 f4 a4 b4", "write the letter as a capital: E4"),
    ("h4", "h4 is no note", "^h4", "write B for B natural and Bb for B flat"),
    ("C: h", "h is no note", "C: ^h", "write B for B natural and Bb for B flat"),
    ("C: x", "'x' is no note", "C: ^x", NOTES),
    ("C: 8", "8 is no degree", "C: ^8", "write 1' for the octave"),
    ("C: 9", "9 is no degree", "C: ^9", "write 2' for the ninth"),
    ("C: 1 b9", "b9 is no degree", "C: 1 ^b9", "write b2' for the ninth"),
    ("C: #8", "#8 is no degree", "C: ^#8", "write #1' for the octave"),
    ("E minor 1 2", "'minor' is no note", "E ^minor 1 2", "put a colon behind the key, as in E minor: 1 2 3"),
    ("[5/4] G: 1 2", "the key stands before the meter", "^[5/4] G: 1 2", "write G: [5/4] and the notes"),
    ("C: 1 foo", "'foo' is no note", "C: 1 ^foo", NOTES),
    ("C4x", "x cannot follow a note", "C4^x", NOTES),
    ("C: 1x", "x cannot follow a note", "C: 1^x", NOTES),
    ("C: do4", "4 cannot follow a note", "C: do^4", NOTES),
    ("E10", "0 cannot follow a note", "E1^0", NOTES),
    ("C: 1'''''''", "C11 lies outside the MIDI numbers 0 to 127", "C: ^1'''''''", NEARER),
    ("A9", "A9 lies outside the MIDI numbers 0 to 127", "^A9", NEARER),
    ("C: doh ray me", "doh is no syllable here", "C: ^doh ray me", SYLLABLES),
    ("C: do' lah'", "lah' is no syllable here", "C: do' ^lah'", SYLLABLES),
    ("Ut4", "Ut4 is no syllable here", "^Ut4", SYLLABLES),
    (f"C: {'#' * 40}1", f"'{'#' * 24}' lies too far from the key to be spelled", f"C: ^{'#' * 40}1",
     "use a name nearer to the key"),
    ("C0__", "C-2 lies outside the MIDI numbers 0 to 127", "^C0__", NEARER),
    ("C: 1:", "a length is missing here", "C: 1:^", BEATS),
    ("C: 1:x", "a length is missing here", "C: 1:^x", BEATS),
    ("C: 1:0", "'0' is no length", "C: 1:^0", BEATS),
    ("C: 1:1/0", "'1/0' is no length", "C: 1:^1/0", BEATS),
    ("C: 1:1001", "'1001' is no length", "C: 1:^1001", BEATS),
    ("C: 1:1/2/3", "'1/2/3' is no length", "C: 1:^1/2/3", BEATS),
    ("C: 1:.", "'.' is no length", "C: 1:^.", BEATS),
    ("C: 1:²", "'²' is no length", "C: 1:^²", BEATS),
    ("C: 1:1234567", "'1234567' is no length", "C: 1:^1234567", BEATS),
    ("C: [1 2", "a bracket is not closed", "C: ^[1 2", "close it: [5 6]"),
    ("C: 1 ]", "no bracket is open here", "C: 1 ^]", "write [5 6] for a beat"),
    ("C: []", "these brackets hold no note", "C: ^[]", "write [5 6]"),
    ("C: [ ]", "these brackets hold no note", "C: ^[ ]", "write [5 6]"),
    ("C: [1 | 2]", "a bar line stands outside brackets", "C: [1 ^| 2]", "write | between bars, [5 6] for a beat"),
    ("C: [[3/4] 1]", "a meter stands outside brackets", "C: [^[3/4] 1]", "put [3/4] behind a bar line"),
    ("C: [3/5] 1", "'3/5' is no meter", "C: [^3/5] 1", "write for example 4/4, 3/4 or 7/8"),
    ("C: [0/4] 1", "'0/4' is no meter", "C: [^0/4] 1", "write for example 4/4, 3/4 or 7/8"),
    ("C: 1 [3/4] 2 3 4", "a meter stands at the head of a bar", "C: 1 ^[3/4] 2 3 4", "put [3/4] behind the bar line"),
    ("C: [[[[[[[1]]]]]]]", "brackets stand 6 deep at most", "C: [[[[[[^[1]]]]]]]", "write the lengths in beats: 5:1/8"),
    ("C: {}1", "these braces hold no note", "C: ^{}1", "write {6}5"),
    ("C: {1 2", "a brace is not closed", "C: ^{1 2", "write grace notes as {6}5"),
    ("C: {1}", "a note is missing here", "C: ^{1}", EITHER),
    ("C: {1} | 2", "a note is missing here", "C: ^{1} | 2", EITHER),
    ("C: {1}r", "grace notes and ornaments belong to a note, not to a rest", "C: {1}^r", NOTES),
    ("C: r(tr)", "grace notes and ornaments belong to a note, not to a rest", "C: ^r(tr)", NOTES),
    ("C: {[1]}2", "[ has no place among grace notes", "C: {^[1]}2", "write grace notes as {6}5"),
    ("C: {r}2", "'r' is no note", "C: {^r}2", NOTES),
    ("C: 1(foo)", "'foo' is no ornament", "C: 1^(foo)",
     "write one of (tr), (mordent), (inverted-mordent), (turn), (inverted-turn) behind a note"),
    ("C: 1(tr", "a round bracket is not closed", "C: 1^(tr", BEHIND),
    ("C: (tr)1", "( has no place here", "C: ^(tr)1", BEHIND),
    ("C: 1}", "} has no place here", "C: 1^}", EITHER),
    ("C: 1)", ") has no place here", "C: 1^)", EITHER),
    ("C: 1 : 2", ": has no place here", "C: 1 ^: 2", EITHER),
    ("C: :1", ": has no place here", "C: ^:1", EITHER),
    ("C: | 1 2 3 4 5 |", "bar 1 is longer than the 4 beats of 4/4", "C: | 1 2 3 4 ^5 |", SHORTER),
    ("C: 1:4 | 2:3 | 3:4", "bar 2 has 3 beats where 4/4 has 4", "C: 1:4 | 2:3 ^| 3:4", LONGER),
    ("C: 1:2 | 2:2 | 3:4", "bar 1 has 2 beats where 4/4 has 4", "C: 1:2 | 2:2 ^| 3:4", LONGER),
    ("C: [3/4] 1:4 | 2:3", "bar 1 is longer than the 3 beats of 3/4", "C: [3/4] ^1:4 | 2:3", SHORTER),
    ("X: 1 2", "'X' is no key", "^X: 1 2", "write a key such as E minor, Bb major, F#m, or D dorian"),
    ("C foo: 1 2", "'foo' is no mode", "C ^foo: 1 2",
     "the modes are major, minor, ionian, dorian, phrygian, lydian, mixolydian, aeolian, locrian"),
    ("1 2: 3", "'1 2' is no key", "^1 2: 3", "write a key such as E minor, Bb major, F#m, or D dorian"),
    ("C: F######4", "a note takes three sharps or flats at most", "C: F###^###4",
     "write an enharmonic name with fewer accidentals"),
    ("C: bbbb4", "'bbbb4' lies too far from the key to be spelled", "C: ^bbbb4", "use a name nearer to the key"),
    ("B######4", "a note takes three sharps or flats at most", "B###^###4",
     "write an enharmonic name with fewer accidentals"),
    ("C: 1:1/999983 2:1/999979", "this length and the ones before it have no common measure that could be counted",
     "C: 1:1/999983 ^2:1/999979", "write lengths that divide a beat alike, as 1/3 and 1/6, or 1/4 and 3/8"),
    ("C: 1 % 2", "'%' is no note", "C: 1 ^% 2", NOTES),
    ("C: 1(tr)(turn)", "( has no place here", "C: 1(tr)^(turn)", BEHIND),
    ("C: 1(tr):2(turn)", "( has no place here", "C: 1(tr):2^(turn)", BEHIND),
    ("C: 1:2(tr)", "( has no place here", "C: 1:2^(tr)", BEHIND),
    ("C: 1:2:3", ": has no place here", "C: 1:2^:3", EITHER),
    ("C: -(tr)", "( has no place here", "C: -^(tr)", BEHIND),
    ("C: -:0", "'0' is no length", "C: -:^0", BEATS),
    ("C: [1 2]:0", "'0' is no length", "C: [1 2]:^0", BEATS),
    ("C: {1}-", "a note is missing here", "C: ^{1}-", EITHER),
    ("C: 1 / 2", "'/' is no note", "C: 1 ^/ 2", NOTES),
    ("C4\\", "\\ cannot follow a note", "C4^\\", NOTES),
    ("C: 1 2 3 4 | 5 6 7 | - - - -", "bar 2 has 3 beats where 4/4 has 4", "C: 1 2 3 4 | 5 6 7 ^| - - - -", LONGER),
    ("C: 1~2", "~ cannot follow a note", "C: 1^~2", NOTES),
    ("C: N.C.", "'N.C.' is no note", "C: ^N.C.", NOTES),
    ("Gb: 1 x", "'x' is no note", "Gb: 1 ^x", NOTES),
    ("C: [3/4]", "there are no notes here", "C: [3/4]^", NOTES),
    ("C: #", "'#' is no note", "C: ^#", NOTES),
    ("C: b", "b is no note", "C: ^b", "write the letter as a capital: B"),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence", "place", "hint"), REFUSED)
def test_what_cannot_be_read_is_refused_at_its_place(text, sentence, place, hint):
    with pytest.raises(InputError) as caught:
        parse_melody(text)

    assert picture(caught.value) == (sentence, place, hint)
    assert caught.value.wanted


OVER_CHORDS = [
    ("[3/4] 1 2 3", [(4, 4)], "the chords here are in 4/4", "leave the meter to the chords"),
    ("1:4 | [2/4] 1 2", [(4, 4), (3, 4)], "the chords here are in 3/4", "leave the meter to the chords"),
    ("1:4 | 2:4", [(4, 4), (3, 4)], "bar 2 is longer than the 3 beats of 3/4", SHORTER),
    ("5_ | 1:4 | 2:3 | 3:3", [(4, 4), (4, 4), (3, 4)], "bar 2 has 3 beats where 4/4 has 4", LONGER),
    ("5_ | 1:1", [(1, 4)], None, None), ("[3/4] 1 2 3", [(3, 4)], None, None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "meters", "sentence", "hint"), OVER_CHORDS)
def test_the_meters_of_chords_are_those_of_the_melody_over_them(text, meters, sentence, hint):
    try:
        resolve_melody(read_melody(text), key("C"), [Meter(*meter) for meter in meters])
    except InputError as error:
        assert (error.what, error.hint) == (sentence, hint)
    else:
        assert sentence is None


def test_a_lowered_third_in_minor_is_remarked_on():
    written = read_melody("A minor: 1 b3 5 b3")
    sentence = "b3 is counted in the minor scale: it is C♭, and 3 is C. With degrees major, b3 is C."

    assert remarks_on_melody(written, key("a"), Conventions()) == (sentence,)
    assert remarks_on_melody(written, key("a"), Conventions(degrees="major")) == ()
    assert remarks_on_melody(read_melody("C: 1 b3"), key("C"), Conventions()) == ()
    assert remarks_on_melody(read_melody("A minor: 1 3 b6 b7 r"), key("a"), Conventions()) == ()


# Degrees that their mode has low or high already, in the mode's own scale and against the major scale, by hand.
ALTERED_TWICE = [
    ("1 b7 7 1'", "C mixolydian",
     "b7 is counted in the mixolydian scale: it is B𝄫, and 7 is B♭. With degrees major, b7 is B♭."),
    ("1 #4 5", "F lydian", "#4 is counted in the lydian scale: it is B♯, and 4 is B. With degrees major, #4 is B."),
    ("1 5 b7", "D dorian", "b7 is counted in the dorian scale: it is C♭, and 7 is C. With degrees major, b7 is C."),
    ("b2 1", "E phrygian", "b2 is counted in the phrygian scale: it is F♭, and 2 is F. With degrees major, b2 is F."),
    ("1 bb3", "A minor", "bb3 is counted in the minor scale: it is C𝄫, and 3 is C. With degrees major, bb3 is C♭."),
    ("b6 b7 #6 #7", "A minor", None), ("b7 b3 #4", "C major", None), ("b4 #7", "F lydian", None),
    ("#7", "G mixolydian", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "home", "sentence"), ALTERED_TWICE)
def test_a_degree_that_its_mode_alters_already_is_remarked_on(text, home, sentence):
    written, home = read_melody(text), parse_key(home)

    assert remarks_on_melody(written, home, Conventions()) == (() if sentence is None else (sentence,))
    assert remarks_on_melody(written, home, Conventions(degrees="major")) == ()


# Syllables in minor: do is the tonic (do re me fa sol le te) or la is; both are taught (common practice, no source).
SUNG_IN_MINOR = [
    ("la ti do re mi", "A minor", "do is A, the tonic, in minor too. With degrees relative, la is A."),
    ("re mi fa", "D dorian", "do is D, the tonic, in minor too. With degrees relative, re is D."),
    ("do re me la ti do'", "C minor", None), ("do re me sol le te", "C minor", None), ("do sol fa", "C minor", None),
    ("la ti do", "C major", None), ("6 7 1", "A minor", None), ("La Ti Do", "A minor", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "home", "sentence"), SUNG_IN_MINOR)
def test_syllables_of_minor_begun_on_la_are_remarked_on(text, home, sentence):
    written, home = read_melody(text), parse_key(home)

    assert remarks_on_melody(written, home, Conventions()) == (() if sentence is None else (sentence,))
    assert remarks_on_melody(written, home, Conventions(degrees="relative")) == ()


@pytest.mark.parametrize(
    ("text", "low"),
    [("5, 1 2", "5_"), ("1 b7, 1", "b7_"), ("1 2 5,", "5_"), ("1, 2, 3", None), ("1,2 3", None), ("5,1", None),
     ("5 1 2", None), ("G4, A4 B4", None)],
)  # fmt: skip
def test_a_comma_behind_a_single_degree_is_remarked_on(text, low):
    said = () if low is None else (f"A comma only parts the notes; an octave lower is {low}.",)

    assert remarks_on_melody(read_melody(text), key("C"), Conventions()) == said


LONG = (
    "F# minor: [3/4] 5_ | {7_ 1}2(tr):3/2 [3 b2' r]:1/2 - | [1 [2 3] - 4:2]:3 | [6/8] F#4 Bb3' Mi♭4 do te__ le | "
    "[2/4] 1:1/3 2:5/12 R:.25 0 || - [5 6](inverted-mordent)"
)
READABLE = LONG[: LONG.index("(inverted-mordent)")]
PIECES = [
    *"ABCDEFGr0R123456789-|:[]{}()'_,/.%#b♯♭ ", "C4", "b3", "do", "Sol", "fi", "(tr)", ":2", ":1/2", "[3/4]", "[1 2]",
    "{6}", "C: ", "A minor: ", "|:", "\n", "–", "′", "\x00", "²", "𝄪", "♮", "7'", "5_", "1:1000", ":0.5",
]  # fmt: skip
melodious_text = st.lists(st.sampled_from(PIECES), max_size=12).map("".join)
any_text = st.text(max_size=30) | st.text(st.characters(codec=None), max_size=30) | melodious_text


def check(text):
    """A melody, which can be written and read again, or a refusal with its place and printable words."""
    try:
        melody = parse_melody(text)
    except InputError as error:
        assert error.what
        assert error.hint
        assert 0 <= error.start <= len(text)
        assert error.start <= error.end <= len(text) + 1
        assert all(character.isprintable() for line in str(error).splitlines() for character in line)
        return None
    again = parse_melody(stored(melody), melody_key(text))
    assert again.bars == melody.bars
    return melody


def melody_key(text):
    return read_melody(text).key or key("C")


@settings(max_examples=500)
@given(any_text)
@example("C: [" * 40)
@example("C: " + "[1 " * 7)
@example("C: 1:1000 " * 3)
@example("C: 1:1/999983 2:1/999979")
@example("C:\x1c1")
@example("1:")
@example("{")
@example("5(")
@example("[3/")
@example(" : 1")
@example(": 1")
def test_any_text_is_a_melody_or_refused(text):
    assert isinstance(check(text), Melody | None)


@pytest.mark.parametrize("end", range(len(LONG) + 1))
def test_every_prefix_of_a_long_melody_is_a_melody_or_refused(end):
    for text in (LONG[:end], LONG[end:], f"C: {LONG[end:]}", LONG[:end] + LONG[end + 1 :]):
        check(text)


def test_the_long_melody_itself_is_read_up_to_its_last_word():
    melody = check(READABLE)

    assert isinstance(read_melody(READABLE), WrittenMelody)
    assert [str(bar.meter) for bar in melody.bars] == ["3/4", "3/4", "3/4", "6/8", "2/4", "2/4"]


MANY = ["5 ", "[", "{", "(", "[1 ", "1:", "'", "b", "{1 ", "1(", "|", "1[", "5:2 ", "-"]


@pytest.mark.parametrize("sign", MANY)
def test_a_text_of_twenty_thousand_signs_is_read_or_refused(sign):
    check(f"C: 1{sign * 20_000}")
