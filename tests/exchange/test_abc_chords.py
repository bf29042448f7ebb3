"""Chord symbols of ABC tunes: each at its beat, going on until the next. ABC standard 2.1, 4.18, from memory."""

from __future__ import annotations

import pytest
from exchange.abc_words import chords_of, tune_of

from nearhand.theory.progression import Meter

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
    ('"G7"G|"C"C4|D4|]', "| C | C ||", "G7 has no time of its own and is left out."),
    ('"C"G|C4|D2 "G"D2|]', "| C | C G ||", None),
    ('"C"G|"C"C4|]', "| C ||", None),
    ('"G7"G|"C"C4|"F""Am"A4|]', "| C | Am ||", "G7 and F have no time of their own and are left out."),
    ('"C"C4|"Fine"D4|"Segno"E4|"4"F4|]', "| C | C | C | C ||", '"Fine" is no chord symbol and is left out.'),
    ('"C"C4|"D.C."D4|"Hm"E4|]', "| C | C | C ||", '"D.C." and "Hm" are no chord symbols and are left out.'),
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
    assert [remark for remark in tune.remarks if remark.endswith("left out.") and "&" not in remark] == (
        [told] if told else []
    )


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
