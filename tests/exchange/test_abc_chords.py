"""Chord symbols of ABC tunes: each at its beat, going on until the next. ABC standard 2.1, 4.18, from memory."""

from __future__ import annotations

import pytest
from exchange.abc_words import chords_of, tune_of

from nearhand.theory.progression import Meter

ON_PICKUP = "{} over the pickup and {} left out: a chart has no room for chords before bar 1."

# Music in C, 4/4; the chart; what is told of chords.
CHORDS = [
    ('"C"C4|"F"F4|"G7"G4|"C"C4|]', "| C | F | G7 | C ||", None),
    ('"C"C D "G7"E F|"Am"A4|]', "| C G7 | Am ||", None),
    ('"C"C D E "G7"F|"C"C "F"D "C"E2|]', "| C / / G7 | C F C / ||", None),
    ('C4|"C"C4|D4|"G"E4|]', "| N.C. | C | C | G ||", None),
    ('"C"C4|D2 "G"E2|F4|]', "| C | C G | G ||", None),
    ('"C"C4|D2 "C"E2|]', "| C | C ||", None),
    ('C2 "C"D2|]', "| N.C. C ||", None),
    ('"N.C."C2 "C"D2|"NC"E4|]', "| N.C. C | N.C. ||", None),
    ('"Bb"C "F#m7b5"D "Ebmaj7"E "Am/G"F|"G/b"G4|]', "| Bb F#m7b5 Ebmaj7 Am/G | G/B ||", None),
    ('"(G7)"C4|]', "| (G7) ||", None),
    ('" C "C4|]', "| C ||", None),
    ('"C""^up"C4|"^up""F"F4|]', "| C | F ||", None),
    ('!f!"C"TC4|"F"{e}F4|"G".G4|]', "| C | F | G ||", None),
    ('"C"[CE]4|["F"FA]4|]', "| C | F ||", None),
    ('"C"z4|"F"x4|"G"Z|C4|]', "| C | F | G | G ||", None),
    ('"C"C4 "G"|G4|]', "| C | G ||", None),
    ('"C""F"C4|]', "| F ||", "C has no time of its own and is left out."),
    ('"G7"G|"C"C4|D4|]', "| C | C ||", ON_PICKUP.format("G7 stands", "is")),
    ('"G7"G "D7"G|"C"C4|D4|]', "| C | C ||", ON_PICKUP.format("G7 and D7 stand", "are")),
    ('"C"G|C4|D2 "G"D2|]', "| C | C G ||", None),
    ('"C"G|"C"C4|]', "| C ||", None),
    ('"G7"C4|"F""Am"A4|]', "| G7 | Am ||", "F has no time of its own and is left out."),
    ('"G7""C"C4|"F""Am"A4|]', "| C | Am ||", "G7 and F have no time of their own and are left out."),
    ('"C"C4|"Fine"D4|"Segno"E4|"4"F4|]', "| C | C | C | C ||", '"Fine" is no chord symbol and is left out.'),
    ('"C"C4|"D.C."D4|"Da Capo"E4|]', "| C | C | C ||", '"D.C." and "Da Capo" are no chord symbols and are left out.'),
    ('"Fine"C4|]', "", '"Fine" is no chord symbol and is left out.'),
    ("C4|]", "", None),
    ('"C"(3CDE "G"F2|]', "| C G ||", None),
    ('(3C"C"DE F2|]', "| N.C. C / / / / ||", None),
    ('"C"C3|]', "| C ||", None),
    ('|:"C"C4|"G"G4:|', "|: C | G :||", None),
    ('"C"C4:|"G"G4:|', "| C :|| G :||", None),
    ('|:"C"C4::"G"G4:|', "|: C :||: G :||", None),
    ('|:"C"C4|"G"G4|]', "| C | G ||", None),
    ('|:"C"C4|:"G"G4:|', "| C ||: G :||", None),
    ('"C"C4||"G"G4|[M:3/4]"F"F3|]', "| C || G | [3/4] F ||", None),
    ('"C"C4|"G"G4 A|"F"F4|]', "| C | [5/4] G | [4/4] F ||", None),
    ('"C"C2 D2 & "F"E4|]', "| C ||", None),
]  # fmt: skip


@pytest.mark.parametrize(("body", "chart", "told"), CHORDS)
def test_chord_symbols_are_read_at_their_beats(body, chart, told):
    tune = tune_of(body)

    assert chords_of(tune) == chart
    assert [remark for remark in tune.remarks if "left out" in remark and "&" not in remark] == ([told] if told else [])


@pytest.mark.parametrize("body", [body for body, chart, _ in CHORDS if chart])
def test_every_bar_of_chords_has_its_bar_of_melody(body):
    tune = tune_of(body)
    melody, chords = tune.melody.bars[tune.melody.has_pickup :], tune.progression.bars

    assert [bar.meter for bar in melody] == [bar.meter for bar in chords]
    assert all(sum(slot.beats for slot in bar.slots) == bar.meter.beats for bar in chords)
    assert tune.progression.key == tune.key


def test_chords_are_counted_from_the_first_key():
    tune = tune_of('"C"C4|[K:D]"D"D4|"A7"A4|]')

    assert [chord.root for chord in tune.progression.relative_chords] == [0, 2, 3]


def test_parts_name_the_sections():
    """ABC 2.1, 3.1.9."""
    tune = tune_of('P:A\n"C"C4|"F"F4||\nP:B\n"G"G4|"C"C4|]')

    assert [bar.section for bar in tune.progression.bars] == ["A", "", "B", ""]


def test_a_chord_in_a_bar_that_is_cut_stays_at_its_beat():
    tune = tune_of('"C"C4 ' * 10 + '"F"F4 ' * 10 + "|", "none")

    assert [bar.meter for bar in tune.progression.bars] == [Meter(4, 4)] * 20
    assert chords_of(tune).replace("|", "").split() == ["C"] * 10 + ["F"] * 10


def told_of_chords(body):
    return chords_of(tune := tune_of(body)), *tune.remarks


# A quoted text; the chord that is read; what the remark names. ABC 2.1, 4.18, from memory: an alternate chord stands
# in parentheses behind the chord. Chords whose tails have parentheses are no such thing.
ALTERNATES = [
    ("G(Em)", "G", "(Em)"), ("F/A (Dm)", "F/A", "(Dm)"), ("G7(b9)(Db7)", "G7b9", "(Db7)"), ("Am7(C/E)", "Am7", "(C/E)"),
    ("G (C7(b9))", "G", "(C7(b9))"), ("D(Bm)(G)", "D", "(Bm)(G)"),
    ("G7(b9)", "G7b9", None), ("Dm(maj7)", "Dm(maj7)", None), ("G(add9)", "G(add9)", None), ("(G)", "(G)", None),
]  # fmt: skip


@pytest.mark.parametrize(("text", "chord", "alternate"), ALTERNATES)
def test_of_a_chord_with_an_alternate_the_first_is_taken(text, chord, alternate):
    told = [f"Alternate chords in parentheses are left out: {alternate}."] if alternate else []

    assert told_of_chords(f'"C"C4|"{text}"D4|E4|]') == (f"| C | {chord} | {chord} ||", *told)


def test_alternates_are_told_in_one_remark():
    assert told_of_chords('"C(Am)"C4|"G(Em)"D4|"C(Am)"E4|]')[1:] == (
        "Alternate chords in parentheses are left out: (Am) and (Em).",
    )


def test_a_word_behind_a_chord_is_no_alternate():
    assert told_of_chords('"C"C4|"G (slow)"D4|"F(Fine)"D4|]') == (
        "| C | G | F ||", '"(slow)" and "(Fine)" are no chord symbols and are left out.',
    )  # fmt: skip


# Common practice, no source: slips, other languages' roots, chords with too much behind them.
MEANT_AS_CHORDS = ["Hm", "H7", "am", "f#m", "g7", "Gxyz", "G7foo", "Cmjr", "Csu4", "Bbm7b5x", "D//", "G7/",
                   "(Hm)", "Eb+x", "G C", "G Am7", "G7 soft", "Fbbbbbbb", "G(Hxx", "A/2", "C°x"]  # fmt: skip


@pytest.mark.parametrize("text", MEANT_AS_CHORDS)
def test_a_chord_that_cannot_be_read_leaves_its_place_without_chord(text):
    assert told_of_chords(f'"C"C4|D2 "{text}"D2|E4|F2 "G"G2|]') == (
        "| C | C N.C. | N.C. | N.C. G ||",
        f'"{text}" cannot be read as a chord; no chord stands in its place, up to the next one.',
    )


def test_several_chords_that_cannot_be_read_are_told_in_one_remark():
    assert told_of_chords('"C"C4|"Hm"D4|"G"E4|"H7"F4|]') == (
        "| C | N.C. | G | N.C. ||",
        '"Hm" and "H7" cannot be read as chords; no chord stands in their places, up to the next one.',
    )


# Common practice, no source: what is written in plain quotes beside chords.
WORDS = [
    "Fine", "FINE", "fine", "D.C.", "D.C", "DC", "D.S.", "DS", "D.S. al Coda", "d.c. al fine", "Da Capo",
    "Dal Segno", "Coda", "Chorus", "Bridge", "Break", "End", "Ending", "Fade out", "Bass", "Clarinet", "Flute", "Go on",
    "A tempo", "a tempo", "A part", "A-part", "B part", "Am Ende", "Allegro", "Andante", "Crescendo", "cresc.", "dim.",
    "dolce", "Cantabile", "Gently", "Fast", "Accordion", "Both", "All", "Half time", "Horn", "H.C.", "D.C. al Fine",
    "f", "ff", "a", "ad lib.", "Cho.", "Fl.", "D.C. 2x",
]  # fmt: skip
WORDS_OF_OTHER_LETTERS = [
    "slow", "1st time", "2.", "Segno", "To Coda", "Intro", "rit.", "p", "mf", "3", "?", "", "(slow)", "Tutti", "x2",
]  # fmt: skip


@pytest.mark.parametrize("text", WORDS + WORDS_OF_OTHER_LETTERS)
def test_words_in_quotes_do_not_silence_the_chord_before(text):
    chart, *remarks = told_of_chords(f'"G"C4|"{text}"D4|"C"E4|]')

    assert chart == "| G | G | C ||"
    assert remarks in ([], [f'"{text}" is no chord symbol and is left out.'])
    assert not remarks or text not in WORDS_OF_OTHER_LETTERS


def test_a_chord_that_cannot_be_read_and_has_no_place_is_told_once():
    assert told_of_chords('"Hm""C"C4|"G"D4|]') == ("| C | G ||", "Hm has no time of its own and is left out.")
    assert told_of_chords('"Hm"G|"C"C4|]') == ("| C ||", ON_PICKUP.format("Hm stands", "is"))
    assert told_of_chords('"Hm"G|C4|"C"C4|]') == (
        "| N.C. | C ||", '"Hm" cannot be read as a chord; no chord stands in its place, up to the next one.',
    )  # fmt: skip


def test_a_tune_whose_chords_cannot_be_read_has_none():
    assert told_of_chords('"Hm"C4|"H7"D4|]') == (
        "",
        '"Hm" and "H7" cannot be read as chords; no chord stands in their places, up to the next one.',
    )
