"""Bars that chords share without bar lines, and chords that may be left out."""

from __future__ import annotations

import pytest
from strategies import key

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.remarks import remarks_on

# Chart, and its bars on C as they are written. A number fills a bar; numbers underlined together or in a
# bracket share one equally: number charts of session players (second-hand, from articles on them). Where a bar
# cannot be shared equally in whole beats the earlier chords are longer: common practice, no source.
SPLIT = [
    ("1 4 [5 1] 6-", "| C | F | G C | Am |"),
    ("[1 4] [5 1]", "| C F | G C |"),
    ("1 [4 5] 1 6- [2- 5] 1 1", "| C | F G | C | Am |\n| Dm G | C | C |"),
    ("1 [4 5 6- 5]", "| C | F G Am G |"),
    ("[C F] G", "| C F | G |"),
    ("[I V6] vi", "| C G/B | Am |"),
    ("[1 IV G7] C", "| C F G7 | C |"),
    ("1[4 5]1", "| C | F G | C |"),
    ("[ 1 4 ] 5", "| C F | G |"),
    ("[1\n4]\n5", "| C F | G |"),
    ("[1, 4] - 5", "| C F | G |"),
    ("[1 - 4]", "| C F |"),
    ("[1 / / 4]", "| C / / F |"),
    ("[57 / 1 /]", "| G7 C |"),
    ("1 4 / 5", "| C | F | G |"),
    ("[1 4] %", "| C F | C F |"),
    ("[3/4] [1 4] 5", "| [3/4] C F | G |"),
    ("[1 4] [3/4] 5", "| C F | [3/4] G |"),
    ("[1 N.C.] 4", "| C N.C. | F |"),
    ("[1 5(b9)] 1", "| C G(b9) | C |"),
    ("[1 2//17]", "| C D//C7 |"),
    ("C major: [1 4] 5", "| C F | G |"),
]

# Chart, first line of the refusal, column of its caret. The sentences are ours.
REFUSED = [
    ("| [1 4] |", "brackets around chords stand where there are no bar lines", 2),
    ("1 [5 1] :|", "brackets around chords stand where there are no bar lines", 2),
    ("|: [1 4] :|", "brackets around chords stand where there are no bar lines", 3),
    ("1 [4 [5 1]]", "chords in brackets share one bar", 5),
    ("1 [4 | 5]", "chords in brackets share one bar", 5),
    ("1 4 [5", "a bracket is not closed", 4),
    ("[5 1", "a bracket is not closed", 0),
    ("1 [] 4", "'' is no meter", 3),
    ("[/ 4]", "a / lengthens the chord before it, and there is none", 1),
    ("1 [% 4]", "% stands alone in its bar", 3),
    ("[1 8]", "8 is no scale degree", 3),
    ("[1 Hm]", "H is no chord root", 3),
    ("[1 4]]", "] is no chord root", 5),
    ("1 5]", "']' is no part of a chord", 3),
]

# Chart, and its bars on C as they are written: (C) is a chord that may be left out, and the bracket is kept.
# Common practice, no source.
OPTIONAL = [
    ("(C) F", "| (C) | F |"),
    ("| C (G7) | (Am7/G) |", "| C (G7) | (Am7/G) |"),
    ("1 (4) [5 (1)]", "| C | (F) | G (C) |"),
    ("(C(add9)) F", "| (C(add9)) | F |"),
    ("(V7/V) V", "| (D7) | G |"),
    ("| C / / (F) |", "| C / / (F) |"),
    ("(D//C7)", "| (D//C7) |"),
    ("(C), F", "| (C) | F |"),
    ("| (C) F | % |", "| (C) F | (C) F |"),
    ("(N.C.) C", "| (N.C.) | C |"),
]

NOT_OPTIONAL = [
    ("(C", "( is no chord root", 0),
    ("C)", "')' is no part of a chord", 1),
    ("()", "a chord root is missing", 1),
    ("(Hm)", "H is no chord root", 1),
    ("(C F)", "( is no chord root", 0),
    ("((C))", "( is no chord root", 1),
    ("| C | (Cx) |", "'x' is no part of a chord", 8),
    ("(C)/E", "( is no chord root", 0),
]


@pytest.mark.parametrize(("text", "written"), SPLIT + OPTIONAL)
def test_a_chart_is_read_and_written_bar_by_bar(text, written):
    progression = resolve(read_chart(text), key("C"))

    assert write_chart(progression) == written
    assert resolve(read_chart(written), key("C")) == progression


@pytest.mark.parametrize(("text", "written"), SPLIT)
def test_a_split_bar_is_the_same_as_one_between_bar_lines(text, written):
    assert resolve(read_chart(text), key("C")) == resolve(read_chart(written), key("C"))


@pytest.mark.parametrize(("text", "sentence", "column"), REFUSED + NOT_OPTIONAL)
def test_what_is_no_split_bar_or_optional_chord_is_refused_at_its_place(text, sentence, column):
    with pytest.raises(InputError) as caught:
        resolve(read_chart(text), key("C"))

    assert (caught.value.what, caught.value.start) == (sentence, column)


@pytest.mark.parametrize("count", [2, 4])
def test_chords_in_brackets_share_their_bar_equally(count):
    [bar] = resolve(read_chart("[" + " ".join("1456"[:count]) + "]"), key("C")).bars

    assert [slot.beats for slot in bar.slots] == [4 // count] * count


def test_an_optional_chord_is_the_chord_within_its_brackets():
    tune = resolve(read_chart("(Am7/G) [(5) 1]"), key("C"))

    assert list(tune.chords()) == [parse_chord(symbol) for symbol in ("Am7/G", "G", "C")]
    assert [moment.slot.is_optional for moment in tune.moments] == [True, True, False]


def test_an_optional_chord_keeps_its_bracket_in_every_key():
    tune = resolve(read_chart("| C | (F#m7b5) (B7) |"), key("C")).in_key(key("Eb"))

    assert write_chart(tune) == "| Eb | (Am7b5) (D7) |"


@pytest.mark.parametrize("text", ["(C2)", "(6)", "(F)"])
def test_a_remark_says_that_an_optional_chord_keeps_its_brackets(text):
    assert f"{text} may be left out: its brackets are kept" in remarks_on(read_chart(text), key("C"))


def test_a_split_bar_may_be_counted_from_the_relative_major():
    tune = resolve(read_chart("6- [4 5] 1"), key("a"), Conventions(degrees="relative"))

    assert write_chart(tune) == "| Am | F G | C |"
