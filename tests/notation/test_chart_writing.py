"""Law: a progression written as a chart, or as a chart file, reads back to the same progression."""

from __future__ import annotations

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from strategies import conventions, key, signature_keys

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_files import read_chart_file
from nearhand.notation.chart_writing import write_chart, write_chart_file
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.numbers import write_number
from nearhand.notation.numeral_writing import write_numeral

contents = st.sampled_from(
    [
        "C",
        "F G7",
        "Am Dm7/C G",
        "N.C.",
        "C / / F",
        "F / C /",
        "C / F",
        "C N.C.",
        "C F G Am Em",
        "Bb7(b9,#11)",
        "(C)",
        "F (G7)",
        "D//C7",
        "Ab7(Ger65) / / G",
        "C6/9/E (N.C.)",
    ]
)
meter_signs = st.sampled_from(["", "", "", "[3/4] ", "[7/8] ", "[4/4] "])
bars = st.lists(st.builds(str.__add__, meter_signs, contents), min_size=1, max_size=6).map(" | ".join)
sections = st.builds(str.format, st.sampled_from(["| {} |", "| {} ||", "|: {} :|", "|: {} :||"]), bars)
chart_texts = st.lists(sections, min_size=1, max_size=4).map("\n".join)

# Chart, key, written: bars, repeats, meters and beats are kept, four bars a line. The layout is ours.
WRITTEN = [
    ("C F G7 C", "C", "| C | F | G7 | C |"),
    ("| C | F G7 | C |", "C", "| C | F G7 | C |"),
    ("|: i | V7 / / i6 :|", "g", "|: Gm | D7 / / Gm/Bb :|"),
    ("| C | % |", "C", "| C | C |"),
    ("1 2 3 4 5", "C", "| C | D | E | F |\n| G |"),
    ("[3/4] | C F | G |", "C", "| [3/4] C F | G |"),
    ("| C | [3/4] F | [4/4] G |", "C", "| C | [3/4] F | [4/4] G |"),
    ("|: C :|: F :| N.C. ||", "C", "|: C :|: F :| N.C. ||"),
    ("| C |: F :|", "C", "| C |: F :|"),
    ("[3/4] | C / F / |", "C", "| [3/4] C / F / |"),
    ("| C / F / |", "C", "| C F |"),
    ("| C ||: F :||", "C", "| C ||: F :||"),
    ("1 4 [5 1] 6-", "C", "| C | F | G C | Am |"),
    ("(C) [F (G)]", "C", "| (C) | F (G) |"),
    ("| (N.C.) C |", "C", "| (N.C.) C |"),
    ("| D/C7 |", "C", "| D//C7 |"),
    ("| Cmin7b5 C^ |", "C", "| Cm7b5 Cmaj7 |"),
]


@pytest.mark.parametrize(("text", "home", "written"), WRITTEN)
def test_a_chart_is_written_in_bars(text, home, written):
    assert write_chart(resolve(read_chart(text), key(home))) == written


@settings(max_examples=300)
@given(chart_texts, signature_keys)
@example("| C | F ||\n|: G | C :|", key("C"))
@example("[3/4] | C / F / |", key("C"))
def test_a_written_chart_reads_back_to_the_same_progression(text, home):
    progression = resolve(read_chart(text), key("C")).in_key(home)

    assert resolve(read_chart(write_chart(progression)), home) == progression


@given(chart_texts, signature_keys)
def test_a_chart_written_in_numerals_reads_back_to_the_same_progression(text, home):
    progression = resolve(read_chart(text), key("C")).in_key(home)
    written = write_chart(progression, lambda chord: write_numeral(chord, home.mode, PLAIN))

    assert resolve(read_chart(written), home) == progression


@given(chart_texts, signature_keys, conventions)
def test_a_chart_written_in_numbers_or_another_style_reads_back_to_the_same_progression(text, home, choice):
    progression = resolve(read_chart(text), key("C")).in_key(home)
    numbers = write_chart(progression, lambda chord: write_number(chord, home.mode, choice))
    symbols = write_chart(progression, lambda chord: write_chord(chord.in_key(home), choice))

    assert resolve(read_chart(numbers), home, choice) == progression
    assert resolve(read_chart(symbols), home, choice) == progression


# Any text but single surrogates, which no file can hold; a chart's notes are read without the blanks around
# them.
words = st.text(st.characters(exclude_categories=["Cs"]), max_size=20)


@given(chart_texts, signature_keys, words, words, st.none() | st.integers(10, 400))
def test_a_written_chart_file_reads_back(text, home, title, notes, tempo):
    progression = resolve(read_chart(text), key("C")).in_key(home)
    found = read_chart_file(write_chart_file(progression, title, tempo, notes), "written.toml")

    assert (found.title, found.key, found.tempo_bpm, found.notes) == (title, home, tempo, notes.strip())
    assert [resolve(section.chart, home) for section in found.sections] == [progression]


TITLES = ['Say "when"', "back\\slash", "tab\tand\nline", "\x1b[2J", "\U000e0001", "Ümläut ♭"]


@pytest.mark.parametrize("title", TITLES)
def test_a_title_of_any_characters_comes_back_from_a_file(title):
    written = write_chart_file(resolve(read_chart("C"), key("C")), title, None, "")

    assert read_chart_file(written, "written.toml").title == title
    assert all(character.isprintable() or character == "\n" for character in written)


def test_sections_keep_their_names_in_a_file():
    first, second = resolve(read_chart("C | F"), key("C")), resolve(read_chart("G | C"), key("C"))
    verse, refrain = first.bars[0]._replace(section="Verse"), second.bars[0]._replace(section="Refrain")
    named = first._replace(bars=(verse, first.bars[1], refrain, second.bars[1]))
    found = read_chart_file(write_chart_file(named, "", None, ""), "written.toml")

    assert [section.name for section in found.sections] == ["Verse", "Refrain"]
    assert [len(section.chart.bars) for section in found.sections] == [2, 2]
