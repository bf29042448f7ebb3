"""Charts: bars, repeats, beats, meters, the key in front, and what stands between chords."""

from __future__ import annotations

from fractions import Fraction

import pytest
from strategies import key

from nearhand.notation.chart import looks_like_a_chord, read_chart, read_token, resolve
from nearhand.notation.chart_bars import Token, parse_meter
from nearhand.notation.chart_signs import signs_of
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.chord_symbols import parse_chord
from nearhand.theory.progression import Meter

# Chart and the words of each bar, bars parted by a bar line. The signs: common practice, no source; the
# rule that a line's end between two bar lines is no empty bar: ours.
BARS = [
    ("C", "C"), ("C F G7 C", "C|F|G7|C"), ("| C | F G7 | C |", "C|F G7|C"), ("C | F G7 | C", "C|F G7|C"),
    ("|C|F|", "C|F"), ("| C | F", "C|F"), ("C | F |", "C|F"), ("C\nF", "C|F"), ("C\tF", "C|F"),
    ("| C |\n| F |", "C|F"), ("| C |\n\n| F |", "C|F"), ("|C|\r\n|F|", "C|F"), ("| C\n| F", "C|F"),
    ("| C F |\n| G |", "C F|G"), ("| C || F |", "C|F"), ("| C |] ", "C"), ("C - F – G — A", "C|F|G|A"),
    ("C, F, G", "C|F|G"), ("C → F -> G", "C|F|G"), ("| C, F; | G |", "C F|G"), ("C-7 - F-7", "C-7|F-7"),
    ("| C | % | F | % |", "C|C|F|F"), ("| C F | % |", "C F|C F"), ("C % F", "C|C|F"),
    ("| C | % | % |", "C|C|C"),
    ("| N.C. | C |", "N.C.|C"), ("NC nc n.c. N.C", "NC|nc|n.c.|N.C"), ("|: C | F :|", "C|F"),
    ("|:C|F:|", "C|F"),
    ("|: C :| F |", "C|F"), ("|: C :|: F :|", "C|F"), ("|: C :| |: F :|", "C|F"), ("||: C :||", "C"),
    ("(C) (G7)", "(C)|(G7)"), ("| (N.C.) C |", "(N.C.) C"), ("N.C., C", "N.C.|C"), ("n.c. | nc", "n.c.|nc"),
    ("[C F] G", "C F|G"), ("D//C7 D/C7", "D//C7|D/C7"), ("C7[b9] F", "C7[b9]|F"), ("Eb/Bb", "Eb/Bb"),
    ("i iv V7/V | v/7 |", "i iv V7/V|v/7"), ("1 6-/5 57", "1|6-/5|57"), ("Em i 1-", "Em|i|1-"),
]  # fmt: skip

# Chart, then for each bar: opens a repeat, closes one, ends a section.
SIGNS = [
    ("| C | F |", ["", ""]), ("|: C | F :|", ["opens", "closes"]), ("|: C :|", ["opens closes"]),
    ("C | F :|", ["", "closes"]), ("|: C :|: F :|", ["opens closes", "opens closes"]),
    ("| C || F |", ["ends", ""]), ("| C |: F :| G |", ["", "opens closes", ""]), ("| C | F |]", ["", "ends"]),
    ("|: C | F :| G ||", ["opens", "closes", "ends"]), ("|: C |\n| F :|", ["opens", "closes"]),
    ("|: C |\n:|", ["opens closes"]), ("| C ||: F :|", ["ends", "opens closes"]),
    ("|: C :||", ["opens closes ends"]), ("|: C :||: F :|", ["opens closes ends", "opens closes"]),
    ("| C ||\n|: F :|", ["ends", "opens closes"]), ("||: C :|| F |", ["opens closes ends", ""]),
]  # fmt: skip

# Chart and the beats of each bar's chords: whole beats, the earlier ones longer; shares where a / stands.
# Common practice, no source.
BEATS = [
    ("| C | F G | C F G |", [[4], [2, 2], [2, 1, 1]]), ("| C / / F |", [[3, 1]]), ("| C / F / |", [[2, 2]]),
    ("| C / F |", [[Fraction(8, 3), Fraction(4, 3)]]), ("C / / F", [[4], [4]]), ("[6/8] C F", [[6], [6]]),
    ("[3/4] | C F | G |", [[2, 1], [3]]), ("| C | [3/4] F | G | [2/4] A |", [[4], [3], [3], [2]]),
    ("| C F G A B |", [[Fraction(4, 5)] * 5]), ("| C | % |", [[4], [4]]),
    ("| C / / F | % |", [[3, 1], [3, 1]]),
    ("[7/8] | C F G |", [[3, 2, 2]]), ("C [3/4] F", [[4], [3]]), ("| N.C. C |", [[2, 2]]),
    ("| C | [3/4] % |", [[4], [3]]),
]  # fmt: skip

# Chart, its key, its words. A key in front ends with a colon before any bar line: ours, as RomanText writes
# "key:" (When in Rome corpus, syntax.md).
KEYS = [
    ("E minor: | Em | B7 |", "e", "Em|B7"), ("Bb: F", "Bb", "F"), ("bb: i", "bb", "i"),
    ("F#m: 1- 57", "f#", "1-|57"),
    ("C:F", "C", "F"), ("A minor:\n| i | V |", "a", "i|V"), ("| C | F |", None, "C|F"),
    ("C | F :|", None, "C|F"),
    ("C:|", None, "C"), ("G major: [3/4] | G D7 |", "G", "G D7"), (" eb : i", "eb", "i"),
    ("C :| F", None, "C|F"),
]  # fmt: skip

METERS = [
    ("4/4", 4, 4), ("3/4", 3, 4), ("7/8", 7, 8), ("12/8", 12, 8), ("2/2", 2, 2), ("64/32", 64, 32),
    ("1/1", 1, 1), ("5/16", 5, 16),
]  # fmt: skip


def words(chart):
    return "|".join(" ".join(token.text for token in bar.tokens) for bar in chart.bars)


@pytest.mark.parametrize(("text", "expected"), BARS)
def test_a_chart_is_cut_into_bars_and_words(text, expected):
    assert words(read_chart(text)) == expected


@pytest.mark.parametrize(("text", "expected"), BARS)
def test_every_token_is_found_where_it_stands(text, expected):
    for token in read_chart(text).tokens:
        assert text[token.start :].startswith(token.text)


@pytest.mark.parametrize(("text", "expected"), SIGNS)
def test_repeats_and_sections_stand_at_the_edges_of_bars(text, expected):
    chart = read_chart(text)

    for bars in (chart.bars, resolve(chart, key("C")).bars):
        assert [bar.opens_repeat for bar in bars] == ["opens" in signs for signs in expected]
        assert [bar.closes_repeat for bar in bars] == ["closes" in signs for signs in expected]
        assert [bar.ends_section for bar in bars] == ["ends" in signs for signs in expected]


@pytest.mark.parametrize(("text", "expected"), BEATS)
def test_chords_share_the_beats_of_their_bar(text, expected):
    bars = resolve(read_chart(text), key("C")).bars

    assert [[slot.beats for slot in bar.slots] for bar in bars] == expected
    assert [sum(slot.beats for slot in bar.slots) for bar in bars] == [bar.meter.beats for bar in bars]


@pytest.mark.parametrize(("text", "name", "expected"), KEYS)
def test_a_key_may_stand_in_front(text, name, expected):
    chart = read_chart(text)

    assert chart.key == (key(name) if name else None)
    assert words(chart) == expected


@pytest.mark.parametrize(("text", "beats", "unit"), METERS)
def test_a_meter_is_beats_over_the_value_of_one(text, beats, unit):
    assert parse_meter(text) == Meter(beats, unit)
    assert str(parse_meter(text)) == text


def test_the_meter_of_a_chart_is_the_one_given_until_another_is_written():
    chart = read_chart("| C | [2/4] F | G |", Meter(3, 4))

    assert [bar.meter for bar in chart.bars] == [Meter(3, 4), Meter(2, 4), Meter(2, 4)]


def test_the_first_character_tells_the_notation_of_a_token():
    kinds = {
        "chord": "C A Bb D7 G/B Em (C) D//C7",
        "numeral": "bVII #iv° N N6 V v ♭III I i vii/o7 V7/V v/7",
        "number": "b7 3- ♯4 1 ♮7 57/7 16/9 (6-) 2//17 5⁷",
        "rest": "N.C. NC n.c. nc N.C n.c (N.C.)",
    }

    for kind, text in kinds.items():
        assert {token.kind for token in read_chart(text).tokens} == {kind}


def test_a_mixed_line_is_one_progression():
    mixed = resolve(read_chart("| Em | v/7 | 4-/6 | V7 |"), key("e"))

    assert list(mixed.chords()) == [parse_chord(symbol) for symbol in ("Em", "Bm/D", "Am/C", "B7")]


def test_the_first_token_that_needs_a_key_is_known():
    assert read_chart("| C | N.C. | F |").keyless is None
    assert read_chart("| C | V7 | 1 |").keyless == Token("V7", 6, "numeral", 1)
    assert read_chart("| 57 | C |").keyless.text == "57"


def test_a_rest_is_no_chord_and_keeps_its_beats():
    progression = resolve(read_chart("| C | N.C. | C |"), key("C"))

    assert [moment.slot.chord is None for moment in progression.moments] == [False, True, False]
    assert [moment.slot.beats for moment in progression.moments] == [4, 4, 4]
    assert len(progression.relative_chords) == 2


def test_a_token_is_read_in_the_key_it_is_given():
    chart = read_chart("V7 | G7 | 57")

    numeral, symbol, number = chart.tokens

    in_c = [read_token(chart, token, key("C")) for token in (numeral, symbol, number)]
    assert in_c[0] == in_c[1] == in_c[2]
    assert read_token(chart, numeral, key("F")) == read_token(chart, number, key("F")) == in_c[0]
    assert read_token(chart, symbol, key("F")).root == 2


def test_a_chart_is_first_cut_into_signs_with_their_places():
    assert [(sign.kind, sign.text, sign.start) for sign in signs_of("|: C [3/4] F :|")] == [
        ("bar", "|:", 0), ("word", "C", 3), ("meter", "3/4", 5), ("word", "F", 11), ("bar", ":|", 13),
    ]  # fmt: skip


@pytest.mark.parametrize("text", ["N.C.", "N.C", "NC", "n.c.", "n.c", "nc", "Nc"])
def test_no_chord_may_be_written_in_several_ways(text):
    # common practice, no source; MusicXML 4.0, kind-value: none
    progression = resolve(read_chart(f"| C | {text} |"), key("C"))

    assert progression.bars[1].slots[0].chord is None
    assert write_chart(progression) == "| C | N.C. |"


@pytest.mark.parametrize(
    "text", ["C", "Bb7", "|", ":|", "%", "[3/4]", "[1", "(C)", "(6-)", "i", "V7", "bVII", "1", "b7", "N6", "nc"]
)
def test_a_word_that_could_begin_a_chart_is_known_by_its_first_character(text):
    assert looks_like_a_chord(text)


@pytest.mark.parametrize("text", ["", "show", "H", "key", "transpose", "x", "-", "/"])
def test_a_word_that_could_not_begin_a_chart_is_known_too(text):
    assert not looks_like_a_chord(text)
