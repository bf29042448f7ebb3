"""Whatever the input, a reader answers or raises InputError, and nothing else."""

from __future__ import annotations

import ast
from functools import cache

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import key
from timing import seconds_of

from nearhand.notation.chart import Chart, read_chart, resolve
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.chord_tail_writing import symbol_tail
from nearhand.notation.chord_words import BASES, CHANGES, COMPLETE, apply_change
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.notes import parse_pitch_class
from nearhand.notation.numbers import parse_number
from nearhand.notation.numerals import parse_numeral
from nearhand.notation.remarks import remarks_on
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Meter, Progression


def read_whole(text):
    """A chart read, remarked on and written again, as the commands do it."""
    chart = read_chart(text)
    progression = resolve(chart, key("C"))
    remarks_on(chart, key("C"))
    write_chart(progression)
    return progression


READERS = {
    "note": (parse_pitch_class, PitchClass),
    "key": (parse_key, Key),
    "meter": (parse_meter, Meter),
    "chord": (parse_chord, Chord),
    "numeral in major": (lambda text: parse_numeral(text, MAJOR), RelativeChord),
    "numeral in minor": (lambda text: parse_numeral(text, MINOR), RelativeChord),
    "number in major": (lambda text: parse_number(text, MAJOR), RelativeChord),
    "number in minor": (lambda text: parse_number(text, MINOR), RelativeChord),
    "number from the relative major": (
        lambda text: parse_number(text, MINOR, Conventions(degrees="relative")),
        RelativeChord,
    ),
    "chart": (read_chart, Chart),
    "whole chart": (read_whole, Progression),
}
MIXED = (
    "F# minor: [3/4] |: F#m7b5/C | v/7 IV/6 | 57/7 b2maj7 :| % | N.C. || [4/4] C#7(b9,#11) / / V65/V |\n"
    "| vii°7/iv | N6 | ♭VI+maj7 | 6-/♭5 | B♭m(maj7)/D♭ - E𝄫 , F♯sus4 | C6/9 16/9 viiø43/V |\n"
    "| (D//C♯7) | D/C#7/E# 2//17 | C7[b9] C7alt | (5⁷) Ab7(Ger65) | CΔ⁷ |\n"
    "|: i | % :|: I64 V7 | i :|"
)
PIECES = [
    *"ABCDEFGHN", "I", "IV", "vii", "V", "v", "i", *"1234567890", *"#b♯♭𝄪𝄫♮", *"/|:%[](),-+°øoΔmM",
    "maj7", "sus4", "add9", "no5", "65", "6/4", "6/9", "/o", "//", "alt", "Ger65", "[5 1]", "⁷", "△",
    "|:", ":|", " ", "\n", "\t", "\x00", "\u200b",
    "²", "é", "N.C.", "minor", "3/4",
]  # fmt: skip
musical_text = st.lists(st.sampled_from(PIECES), max_size=9).map("".join)
any_text = st.text() | st.text(st.characters(codec=None)) | musical_text


def outcome(reader, text):
    """The type of the answer; a refusal is checked for its place and its words."""
    read, _ = READERS[reader]
    try:
        return type(read(text))
    except InputError as error:
        assert 0 <= error.start <= len(text)
        assert error.start <= error.end <= len(text) + 1
        assert error.what
        assert all(character.isprintable() for line in str(error).splitlines() for character in line)
        return InputError


@pytest.mark.parametrize("reader", READERS)
@settings(max_examples=250)
@given(text=any_text)
@example(text="")
@example(text="\ud800")
@example(text="C𝄪𝄪")
@example(text="[0001" + "0" * 5000 + "/4] C")
def test_any_text_is_read_or_refused(reader, text):
    assert outcome(reader, text) in (READERS[reader][1], InputError)


@pytest.mark.parametrize("end", range(len(MIXED) + 1))
def test_every_prefix_of_a_long_mixed_chart_is_read_or_refused(end):
    for text in (MIXED[:end], MIXED[end:]):
        for reader in READERS:
            assert outcome(reader, text) in (READERS[reader][1], InputError)


def test_the_whole_mixed_chart_is_read():
    chart = read_chart(MIXED)

    assert chart.key == key("f#")
    assert len(resolve(chart, chart.key).bars) == 21


SPLIT = "A minor: 1- [4- 57/7] (6) [(b3) / / N.C.] % [3/4] [2-7b5//1- 5⁷♭⁹] 1-(maj7)"


@pytest.mark.parametrize("end", range(len(SPLIT) + 1))
def test_every_prefix_of_a_chart_of_split_bars_is_read_or_refused(end):
    for text in (SPLIT[:end], SPLIT[end:]):
        assert outcome("whole chart", text) in (Progression, InputError)


@cache
def every_tail():
    """Every spelling of a base and of a change, and all that we write for a base with a change."""
    spelled = {*BASES, *(f"({change})" for change in CHANGES), *(f"7({change},b9)" for change in CHANGES)}
    rows = sorted(set(CHANGES.values()))
    changed = {apply_change(base, row) for word, base in BASES.items() if word not in COMPLETE for row in rows}
    return spelled | {symbol_tail(quality, "jazz") for quality in changed}


def prefixes(texts):
    return sorted({text[:end] for text in texts for end in range(len(text) + 1)})


def test_every_prefix_of_every_symbol_is_read_or_refused():
    tails = every_tail()
    texts = prefixes([*(f"Eb{tail}" for tail in tails), *(f"D{tail}//C/E" for tail in BASES), "C6/9//Am7/F##"])

    assert len(texts) > len(tails)
    assert {outcome("chord", text) for text in texts} == {Chord, InputError}


def test_every_prefix_of_every_number_is_read_or_refused():
    tails = every_tail()

    texts = prefixes([*(f"b7{tail}" for tail in tails), *(f"#4{tail}/b3" for tail in BASES), "2-7//16/9/b7"])

    assert {outcome("number in minor", text) for text in texts} == {RelativeChord, InputError}


@pytest.mark.parametrize("reader", [reader for reader in READERS if "num" in reader or reader == "chord"])
@settings(max_examples=250)
@given(text=musical_text)
@example(text="V(65)")
@example(text="V7/o")
@example(text="i65)")
def test_a_refusal_quotes_what_stands_at_its_caret(reader, text):
    try:
        READERS[reader][0](text)
    except InputError as error:
        quoted, _, sentence = error.what.rpartition(" is no part of a chord")
        if quoted and not sentence:
            assert text.startswith(ast.literal_eval(quoted), error.start)


signs = st.sampled_from(["|", "||", "|:", ":|", ":|:", "C", "F G7", "%", "N.C.", "\n", "[3/4]", "/"])


@settings(max_examples=400)
@given(st.lists(signs, max_size=10).map(" ".join))
@example("C |: :| D")
def test_every_repeat_that_opens_in_a_chart_is_closed_before_another_opens(text):
    try:
        bars = resolve(read_chart(text), key("C")).bars
    except InputError:
        return
    opened = False
    for bar in bars:
        assert not (opened and bar.opens_repeat)
        opened = (opened or bar.opens_repeat) and not bar.closes_repeat
    assert not opened
    assert all(bar.slots for bar in bars)
    assert all(sum(slot.beats for slot in bar.slots) == bar.meter.beats for bar in bars)


# What a player or a program may paste by mistake, 100,000 characters of it; a shape is a head, a piece that is
# repeated, and an end.
SHAPES = [
    *(("", piece, "") for piece in "Cb#Ii19/|:% -()[]\n\x00x♭𝄪⁷Δ"),
    *(("", piece, "") for piece in (
        "C ", "| C ", "|: C :| ", "6/9", "b9", "V/", "/V", "6/5", "C / ", "| % ", "vii°7/",
        "E minor:", "[1 5] ", "[3/4] C ", "D//C7 ", "()", "[]", "|\n", "C[", "[x", "x]", ",",
    )),
    *(("C", piece, "") for piece in ("/C", "//C", "//", "7b9", "maj7", "(no3)", "6/9", "⁷♭⁹", "-", "m", "[b9]")),
    *(("C7(", piece, end) for piece in ("b9,", "#11", ",", "(") for end in (")", "")),
    *(("C/", piece, "") for piece in ("6/9", "b", "Cm7", "#")),
    *(("1", piece, "") for piece in ("/1", "//1", "b9", "6/9", "/b", "-", "(add9)", "⁷")),
    *((head, piece, "") for head in ("V", "V7/", "i(") for piece in ("6", "/V", "b9,", "5")),
    ("[1 ", "5 ", "]"), ("[", "1 [", ""), ("| C ", "/ ", "F |"), ("(", "(", ")"), ("(", "C", ")"),
    ("E minor: ", "b", ""), ("", "C", ":"), ("| C ", "| % ", "|"), ("D//", "b", ""),
    ("2//1", "b9,", ""), ("D", "b9,", "//C7"), ("D", "(b9)", "/C7"),
]  # fmt: skip
SIZE = 100_000


def seconds(reader, text):
    """How long a text takes to be read or refused."""
    kinds = []
    passed = seconds_of(lambda: kinds.append(outcome(reader, text)))
    assert kinds[0] in (READERS[reader][1], InputError)
    return passed


def takes_linear_time(reader, head, piece, end, size=SIZE):
    """Whether four times the text takes some four times as long; a square would take sixteen times.

    Beside the reading a plain walk over the longer text is allowed, for what is refused at once. Each try has texts of
    its own, which no cache has seen; a slow moment of the machine is given another try.
    """
    short, long, walk = [], [], []
    for attempt in range(4):
        count = size // len(piece) // 4 + attempt
        texts = [head + piece * times + end for times in (count, 4 * count)]
        short.append(seconds(reader, texts[0]))
        long.append(seconds(reader, texts[1]))
        walk.append(seconds_of(lambda text=texts[1]: sum(character == "!" for character in text)))
        if min(long) <= 10 * min(short) + min(walk):
            return True
    return False


@pytest.mark.parametrize(("head", "piece", "end"), SHAPES)
def test_a_hundred_thousand_characters_of_a_chart_are_read_or_refused_in_linear_time(head, piece, end):
    assert takes_linear_time("whole chart", head, piece, end)


@pytest.mark.parametrize("reader", ["chord", "numeral in minor", "number in major", "note", "key", "meter"])
@pytest.mark.parametrize("piece", [*"Cb#/ m1(♭⁷", "6/9", "/C", "b9,", "V/", "E minor "])
def test_a_hundred_thousand_characters_of_a_word_are_read_or_refused_in_linear_time(reader, piece):
    assert takes_linear_time(reader, "", piece, "")


def test_a_long_bar_that_is_repeated_often_is_read_or_refused_in_linear_time():
    # a chart's size is that of its text, not the product of a bar's chords and of the bars that repeat it
    short, long = [], []
    for attempt in range(3):
        texts = ["| " + "C " * count + "| % " * count for count in (60 + attempt, 480 + attempt)]
        short.append(seconds("whole chart", texts[0]))
        long.append(seconds("whole chart", texts[1]))

    assert min(long) < 20 * min(short)  # eight times the text


@pytest.mark.parametrize("reader", READERS)
def test_a_refusal_of_a_long_text_stays_short(reader):
    with pytest.raises(InputError) as caught:
        READERS[reader][0]("|" * 100_000)

    assert len(str(caught.value)) < 400
