"""Whatever the input, a reader answers or raises InputError, and nothing else."""

from __future__ import annotations

import ast

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import key

from nearhand.notation.chart import Chart, read_chart, resolve
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.notes import parse_pitch_class
from nearhand.notation.numbers import parse_number
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Meter, Progression

READERS = {
    "note": (parse_pitch_class, PitchClass),
    "key": (parse_key, Key),
    "meter": (parse_meter, Meter),
    "chord": (parse_chord, Chord),
    "numeral in major": (lambda text: parse_numeral(text, MAJOR), RelativeChord),
    "numeral in minor": (lambda text: parse_numeral(text, MINOR), RelativeChord),
    "number in major": (lambda text: parse_number(text, MAJOR), RelativeChord),
    "number in minor": (lambda text: parse_number(text, MINOR), RelativeChord),
    "chart": (read_chart, Chart),
    "resolved chart": (lambda text: resolve(read_chart(text), key("C")), Progression),
}
MIXED = (
    "F# minor: [3/4] |: F#m7b5/C | v/7 IV/6 | 57/7 b2maj7 :| % | N.C. || [4/4] C#7(b9,#11) / / V65/V |\n"
    "| vii°7/iv | N6 | ♭VI+maj7 | 6-/♭5 | B♭m(maj7)/D♭ - E𝄫 , F♯sus4 | C6/9 16/9 viiø43/V |\n"
    "|: i | % :|: I64 V7 | i :|"
)
PIECES = [
    *"ABCDEFGHN", "I", "IV", "vii", "V", "v", "i", *"1234567890", *"#b♯♭𝄪𝄫♮", *"/|:%[](),-+°øoΔmM",
    "maj7", "sus4", "add9", "no5", "65", "6/4", "6/9", "/o", "|:", ":|", " ", "\n", "\t", "\x00", "\u200b",
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
    assert len(resolve(chart, chart.key).bars) == 16


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


# What a player or a program may paste by mistake, 100,000 characters and more of it.
LONG = [
    *"Cb#Ii19/|:% -()[\n\x00x♭𝄪", "C ", "| C ", "|: C :| ", "6/9", "b9", "V/", "/V", "6/5", "C - ", "C / ",
    "| % ", "N.C. ", "vii°7/", "E minor:",
]  # fmt: skip
HEADS = ["", "C", "V", "1", "E minor: ", "| C | ", "[", "C("]


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("piece", LONG)
def test_a_hundred_thousand_characters_are_read_or_refused(reader, piece):
    text = piece * (100_000 // len(piece) + 1)

    assert outcome(reader, text) in (READERS[reader][1], InputError)


@pytest.mark.parametrize("reader", READERS)
@pytest.mark.parametrize("head", HEADS)
def test_a_good_beginning_with_a_long_tail_is_read_or_refused(reader, head):
    for piece in ("b", "6", "/V", "| C ", "m"):
        text = head + piece * (100_000 // len(piece))

        assert outcome(reader, text) in (READERS[reader][1], InputError)


@pytest.mark.parametrize("reader", READERS)
def test_a_refusal_of_a_long_text_stays_short(reader):
    with pytest.raises(InputError) as caught:
        READERS[reader][0]("|" * 100_000)

    assert len(str(caught.value)) < 400
