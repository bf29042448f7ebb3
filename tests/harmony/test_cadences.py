"""Phrases and their cadences."""

from __future__ import annotations

import pytest
from harmony_examples import CHARTS, demo, falling_fifths, in_bars, key, key_free, keys, relative_chords
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.cadence_kinds import MEANINGS
from nearhand.harmony.cadences import Phrase, cadences, phrases
from nearhand.notation.chart import read_chart, resolve
from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR, MODES
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Bar, Progression, Slot


def chart(text, home):
    return resolve(read_chart(text), key(home))


def named(tune, top_notes=None):
    """The cadences as kind and bar: ``half 4, authentic 8``."""
    return ", ".join(f"{each.kind} {each.bar}" for each in cadences(tune, top_notes))


def in_one_phrase(symbols, home):
    """Chord symbols as the cadences at the end of one phrase: all chords in as few bars as make one."""
    chords = key_free(symbols, key(home))
    return Progression(key(home), (Bar(tuple(Slot(chord, 1) for chord in chords)),))


# Key; chords of one phrase; its cadence. Definitions: R. Hutchinson, Music Theory for the 21st-Century Classroom
# (MT21C), PerfectAuthenticCadence and the sections on the other cadences; Open Music Theory (OMT), cadenceTypes. The
# numerals of the worked examples are as published on the page named; MT21C prints HC and PC beside the two marked so.
DEFINED = """
C ; F G C ; authentic ; OMT appliedChords
C ; F#dim G C ; authentic ; OMT appliedChords
Eb ; F7 Bb ; half ; OMT appliedChords: V7/V V
C ; Am F C G ; half ; OMT popRockHarmony-sscp
a ; Am F C G ; ; OMT popRockHarmony-sscp, the same chords: the phrase ends on VII
a ; F G Am ; subtonic ; OMT popRockHarmony-minor; the name is common practice
c ; Cm Gm/Bb Fm/Ab G ; Phrygian half ; OMT harmonicSyntax2, lament; the name from memory
C ; C Am F G ; half ; OMT popRockHarmony-dooWop
D ; D A Bm F#m G D G A ; half ; OMT popRockHarmony-pachelbel
a ; Am Dm G C F Bdim E ; half ; OMT popRockHarmony-fifths
E ; C G D A E ; plagal ; OMT popRockHarmony-plagal
g ; Gm Ab/C D7 Gm ; authentic ; OMT alteredSubdominants (Schubert)
C ; C G7/D G7/B C ; imperfect authentic ; OMT harmonicSyntax2, schemataSummary
C ; C F/A C/E ; ; OMT harmonicSyntax2: I IV6 I6 closes nothing
F ; F Bb Edim Am Dm Gm C F ; authentic ; MT21C HarmonicProgression
b ; Bm Em A D G C#dim F# Bm ; authentic ; MT21C HarmonicProgression
F ; F Dm Gm/Bb C ; half ; MT21C HarmonicProgression
E ; C#m A E B ; half ; MT21C HarmonicProgression
G ; G D G C G D ; half ; MT21C RomanNumeralsAndCadences, answers: HC
D ; D Bm G D ; plagal ; MT21C RomanNumeralsAndCadences, answers: PC
C ; C G7/D C F/C C G7/B C ; imperfect authentic ; MT21C SeventhChords (K. 545)
ab ; Dbm7 Abm Eb7 Abm ; authentic ; MT21C SeventhChords
C ; C/G Bdim/D Dm/A G ; half ; MT21C FiguredBass
a ; Am G F G ; ; MT21C i-VII-VI-VII
C ; Am G F G ; half ; MT21C i-VII-VI-VII, the same chords
a ; Am G F E ; half ; MT21C i-VII-VI-VII (Andalusian)
G ; Am/C G/D D G ; authentic ; WIR Reger 1: ii6 Cad64 V I
f# ; G/B F#m/C# C#7 F#m ; authentic ; WIR Reger 25
C ; G C ; authentic ; MT21C
C ; G7 Cm ; authentic ; MT21C ModeMixtureSection
c ; G7 C ; authentic ; MT21C Picardy3rd
C ; G C/E ; imperfect authentic ; MT21C, OMT: V-I failing one condition
C ; G7/F C/E ; imperfect authentic ; MT21C, OMT
C ; Bdim/D C ; imperfect authentic ; MT21C: vii° for V
c ; Bdim7 Cm ; imperfect authentic ; MT21C
C ; G C/G ; ; common practice, no source: a six-four is no goal
C ; C G/B ; ; OMT: a half cadence ends on V in root position
C ; C/G G ; half ; OMT cadenceTypes: the six-four falls to V, and the phrase stops
C ; F G7 ; half ; OMT: nearly always a triad
c ; Cm Gm ; ; MT21C: the dominant of a half cadence has its leading tone
c ; Cm Fm/Ab G7 ; Phrygian half ; from memory
C ; C Fm/Ab G ; half ; from memory: Phrygian half cadences belong to minor
c ; Cm Fm G ; half ; from memory: the fourth chord stands over its third
c ; Cm Fm/Ab Cm/G G ; half ; from memory
C ; F C ; plagal ; MT21C
C ; Fm C ; plagal ; MT21C, with mixture
c ; Fm Cm ; plagal ; MT21C
C ; G C F C ; plagal ; MT21C: the amen behind an authentic cadence
C ; G F C ; ; common practice, no source: IV between V and I makes no plagal cadence
C ; F C/E ; ; common practice, no source
C ; G Am ; deceptive ; MT21C
c ; G Ab ; deceptive ; MT21C: VI in minor
C ; G Ab ; deceptive ; MT21C TheDeceptiveCadenceWithFlatSix
C ; G7 F/A ; deceptive ; from memory: V7 to IV6
c ; G7 Fm/Ab ; deceptive ; from memory: V7 to iv6
C ; G F/A ; ; from memory: it is the seventh that makes IV6 stand for I
C ; G A7 ; ; common practice, no source: A7 is a dominant of its own
c ; G Am ; ; MT21C: the sixth chord of minor is VI
C ; G/B Am ; ; common practice, no source
C ; Bb C ; subtonic ; MT21C SubtonicVIIinPopMusic; the name is common practice
C mixolydian ; Bb C ; subtonic ; common practice, no source
c ; Bb Cm ; subtonic ; common practice, no source
C ; Bb C/E ; ; common practice, no source
C ; Gsus4 G Csus4 C ; authentic ; common practice, no source: suspensions resolve
C ; G C Csus4 ; authentic ; common practice, no source: the goal comes before the fourth
C ; C G Csus4 ; ; common practice, no source
C ; Dm7 G7 Cmaj7 C6 ; authentic ; common practice, no source: one tonic in two colours
C ; G7 C7 ; authentic ; common practice, no source: the tonic seventh of a blues, at the very end
C ; Gmaj7 C ; ; common practice, no source: no dominant
C ; G7/C C ; ; common practice, no source: V over a tonic pedal
C ; C C C ; ; nothing moves
C ; G G ; ; nothing moves
C lydian ; G C ; authentic ; MT21C
"""
ROWS = [tuple(field.strip() for field in line.split(";", 3)) for line in DEFINED.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "kind", "source"), ROWS)
def test_the_end_of_a_phrase_has_the_cadence_of_the_textbooks(home, symbols, kind, source):
    tune = in_one_phrase(symbols, home)
    at_end = [each.kind for each in cadences(tune) if each.goal >= len(symbols.split()) - 2]

    assert at_end == ([kind] if kind else []), source


@pytest.mark.parametrize("tonic", range(-6, 7))
@pytest.mark.parametrize(("home", "symbols", "kind", "source"), ROWS[::3])
def test_cadences_are_the_same_in_every_key(home, symbols, kind, source, tonic):
    tune = in_one_phrase(symbols, home)

    assert cadences(tune.in_key(Key(PitchClass(tonic), tune.key.mode))) == cadences(tune), source


@pytest.mark.parametrize(
    ("symbols", "tops", "kind"),
    [
        # MT21C PerfectAuthenticCadence, OMT cadenceTypes: root position, and 1 on top; a melody that ends on 3 or 5
        # makes it imperfect.
        ("G7 C", (71, 72), "perfect authentic"),
        ("G7 C", (79, 84), "perfect authentic"),
        ("G7 C", (74, 76), "imperfect authentic"),
        ("G7 C", (77, 79), "imperfect authentic"),
        ("G7/B C", (74, 72), "imperfect authentic"),
        ("G7 C/E", (71, 72), "imperfect authentic"),
        ("Bdim C", (71, 72), "imperfect authentic"),
        ("F C", (72, 72), "plagal"),
    ],
)
def test_the_top_note_tells_a_perfect_cadence_from_an_imperfect_one(symbols, tops, kind):
    tune = in_one_phrase(symbols, "C")
    up = [note + 3 for note in tops]

    assert [each.kind for each in cadences(tune, tops)] == [kind]
    assert cadences(tune.in_key(key("Eb")), up) == cadences(tune, tops)


def test_there_must_be_a_top_note_for_every_chord():
    with pytest.raises(ValueError, match="2 chords, 1 notes"):
        cadences(in_one_phrase("G C", "C"), [72])


# Common practice, no source: within a phrase V counts when a predominant or a cadential six-four prepares it.
WITHIN = """
| Dm7 G7 | C | Am | F | ; C ; authentic 2
| Dm7 | G7 C | Am | F | ; C ;
| Am | G7 | C | F | ; C ;
| C/G G | C | Am | F | ; C ; authentic 2
| Db/F G | C | Am | F | ; C ; authentic 2
| Ab7 G | C | Am | F | ; C ; authentic 2
| D7 G | C | Am | F | ; C ; authentic 2
| F G/B | C | Am | F | ; C ;
| F G7 | Am | Dm | F | ; C ; deceptive 2
| F G7 | Ab | Dm | F | ; C ; deceptive 2
| C/G G7 Am | Dm | F | F | ; C ; deceptive 1
| Em G7 | Am | Dm | F | ; C ;
| F G7 | C/E | F | Am | ; C ; evaded 2
| F G7 G7/F C/E | F | Dm | Am | ; C ; evaded 1
| F G7/F | C/E | F | Am | ; C ;
| F G7/D | C/E | F | Am | ; C ;
| C/G G7 | C7/Bb | F/A | F | ; C ; evaded 2
| C/G G7 | C7 | F/A | F | ; C ;
| Am G7 | C/E | F | Am | ; C ;
| Fm G7 | Cm/Eb | Fm | Ab | ; c ; evaded 2
| Dm7 G7 | C7 | F | Am | ; C ;
| F G | C | F G | C | ; C ; authentic 2, authentic 4
"""
WITHIN_ROWS = [tuple(field.strip() for field in line.split(";")) for line in WITHIN.strip().splitlines()]


@pytest.mark.parametrize(("text", "home", "expected"), WITHIN_ROWS)
def test_within_a_phrase_only_a_prepared_dominant_makes_a_cadence(text, home, expected):
    assert named(chart(text, home)) == expected


def test_a_cadence_names_its_bar_its_chords_and_its_reason():
    first, second = cadences(chart("| C | % | Dm7 | G7sus4 G7 | N.C. | F | G7 | C | % ||", "C"))

    assert (first.kind, first.bar, first.before, first.goal) == ("half", 4, 2, 4)
    assert "seventh" in first.reason
    assert (second.kind, second.bar, second.before, second.goal) == ("authentic", 8, 6, 7)
    assert "top voice" in second.reason


def test_a_half_cadence_says_when_a_chord_applied_to_the_dominant_led_to_it():
    assert "applied" in cadences(in_one_phrase("C D7 G", "C"))[0].reason  # MT21C: V7/V to V at a phrase end


def test_the_goal_opens_the_next_phrase_and_makes_no_second_cadence():
    assert named(chart("| C | Am | F | G | C | Am | F | G |", "C")) == "half 4, half 8"


def test_a_twelve_bar_blues_stops_on_its_dominant_and_closes_on_its_tonic_seventh():
    # Open Music Theory, popRockHarmony-blues: I I I I, IV IV I I, V IV I I; with a turn to V at the end of a chorus
    blues = "| C7 | C7 | C7 | C7 | F7 | F7 | C7 | C7 | G7 | F7 | C7 | {} |"

    assert named(chart(blues.format("G7"), "C")) == "half 12"
    assert named(chart(blues.format("C7"), "C")) == ""
    assert named(chart("| G7 | F7 | G7 | C7 ||", "C")) == "authentic 4"
    assert named(chart("| C | Dm | G7 | C7 || F | C | F | C ||", "C")) == "plagal 8"


# Common practice, no source: four bars, a single bar too many joined to the last phrase.
@pytest.mark.parametrize(
    ("bars", "lengths"),
    [
        (1, [1]),
        (4, [4]),
        (5, [5]),
        (6, [4, 2]),
        (7, [4, 3]),
        (8, [4, 4]),
        (9, [4, 5]),
        (10, [4, 4, 2]),
        (12, [4, 4, 4]),
        (13, [4, 4, 5]),
        (16, [4, 4, 4, 4]),
    ],
)
def test_long_sections_are_cut_after_every_fourth_bar(bars, lengths):
    tune = in_bars(key_free("C " * bars, key("C")), key("C"))

    assert [phrase.last_bar - phrase.first_bar + 1 for phrase in phrases(tune)] == lengths


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("| C | F || G | C | C ||", [(1, 2), (3, 5)]),
        ("| C | F |: G | C :| C |", [(1, 2), (3, 4), (5, 5)]),
        ("|: C | F | G | C | F | G :| C |", [(1, 4), (5, 6), (7, 7)]),
    ],
)
def test_sections_and_repeats_end_phrases(text, expected):
    assert phrases(chart(text, "C")) == tuple(Phrase(*bars) for bars in expected)


def test_a_named_section_opens_a_phrase():
    tune = in_bars(key_free("C F G C", key("C")), key("C"))
    bars = (*tune.bars[:2], tune.bars[2]._replace(section="B"), tune.bars[3])

    assert phrases(tune._replace(bars=bars)) == (Phrase(1, 2), Phrase(3, 4))


def test_nothing_has_no_phrase_and_rests_have_no_cadence():
    assert (phrases(Progression(key("C"), ())), cadences(Progression(key("C"), ()))) == ((), ())
    assert cadences(chart("| N.C. | N.C. || G | C ||", "C"))[0].goal == 1


slots = st.builds(
    Slot, st.none() | relative_chords() | st.sampled_from(key_free("C Dm F G G7 C/G Am", key("C"))), st.just(1)
)
flags = st.booleans()
random_bars = st.builds(
    Bar,
    st.lists(slots, min_size=1, max_size=3).map(tuple),
    opens_repeat=flags,
    closes_repeat=flags,
    ends_section=flags,
    section=st.sampled_from(["", "", "", "A"]),
)
progressions = st.builds(Progression, keys, st.lists(random_bars, max_size=14).map(tuple))
plain_progressions = st.builds(in_bars, falling_fifths(), keys)


@given(progressions)
def test_phrases_cover_every_bar_once_and_end_where_sections_do(tune):
    covered = [bar for first, last in phrases(tune) for bar in range(first, last + 1)]
    ends = {last for _, last in phrases(tune)}

    assert covered == list(range(1, len(tune.bars) + 1))
    assert all(last - first < 5 for first, last in phrases(tune))
    assert {number for number, bar in enumerate(tune.bars, start=1) if bar.ends_section or bar.closes_repeat} <= ends


@given(progressions | plain_progressions, st.integers(-6, 6).map(PitchClass), st.data())
def test_every_cadence_has_its_place_and_is_the_same_in_every_key(tune, tonic, data):
    count = len(tune.relative_chords)
    tops = data.draw(st.none() | st.lists(st.integers(40, 90), min_size=count, max_size=count))
    moved = tune.in_key(Key(tonic, tune.key.mode))
    shift = (tonic.semitones - tune.key.tonic.semitones) % 12
    found = cadences(tune, tops)
    bars = [moment.bar for moment in tune.moments if moment.slot.chord is not None]

    assert cadences(moved, tops and [note + shift for note in tops]) == found
    assert [each.goal for each in found] == sorted({each.goal for each in found})
    for each in found:
        assert each.kind in MEANINGS
        assert 0 <= each.before < each.goal < count
        assert each.bar == bars[each.goal]
        assert each.reason
        phrase = next(phrase for phrase in phrases(tune) if phrase.last_bar >= each.bar)
        assert bars[each.before] >= phrase.first_bar


@given(progressions)
def test_top_notes_only_decide_between_kinds_of_authentic(tune):
    plain = cadences(tune)
    perfect = cadences(tune, [tune.key.tonic.semitones + 60] * len(tune.relative_chords))

    assert [
        each.kind.replace("perfect ", "") if each.kind == "perfect authentic" else each.kind for each in perfect
    ] == [each.kind for each in plain]
    assert [each[1:4] for each in perfect] == [each[1:4] for each in plain]


DEMOS = {
    # what the charts themselves say in their notes, and what their cadences are by the definitions above
    "cellar-stairs-in-november": "Phrygian half 4, authentic 8, authentic 16",
    "cold-window-at-vespers": "authentic 8, deceptive 15, authentic 19",
    "the-borrowed-umbrella": "deceptive 6, authentic 16",
    "twelve-buckets-of-coal": "half 12",
    "linen-on-the-line": "half 4, half 8, authentic 15, plagal 19",
    "the-lamplighter-goes-round": "authentic 8, imperfect authentic 16, imperfect authentic 24",
}


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_the_demo_charts_are_told_without_a_fault(path):
    tune = demo(path)

    assert sum(last - first + 1 for first, last in phrases(tune)) == len(tune.bars)
    assert all(each.kind in MEANINGS for each in cadences(tune, [60] * len(tune.relative_chords)))


@pytest.mark.parametrize(("name", "expected"), DEMOS.items())
def test_the_demo_charts_have_the_cadences_they_were_written_with(name, expected):
    path = next(path for path in CHARTS if path.stem == name)

    assert named(demo(path)) == expected


def test_the_modes_with_a_minor_third_know_the_phrygian_half_cadence():
    # common practice, no source
    for mode in (MINOR, MODES["aeolian"], MODES["phrygian"]):
        tune = in_one_phrase("Cm Fm/Ab G", "c")
        assert cadences(tune._replace(key=Key(PitchClass(0), mode)))[0].kind == "Phrygian half"
