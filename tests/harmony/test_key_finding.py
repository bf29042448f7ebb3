"""Which key chords are in: published examples and plain ones."""

from __future__ import annotations

import pytest
from harmony_examples import CHARTS, chords, demo, key

from nearhand.harmony.key_finding import rank_keys, runner_up
from nearhand.harmony.key_reasons import reasons_for
from nearhand.harmony.moving import all_keys
from nearhand.notation.chart_writing import write_chart
from nearhand.verbs.tune import tune_from_text

# Key, chords, page. OMT: Open Music Theory, first edition. MT21C: R. Hutchinson, Music Theory for the 21st-Century
# Classroom. WIR: When in Rome corpus, on J. S. Bach, BWV 846. The first two rows: all six profiles of C. Krumhansl
# and E. Kessler 1982, D. Temperley 1999 and 2007, J. Albrecht and D. Shanahan 2013, B. Aarden 2003 and H. Bellman
# 2005, correlated with the chord tones, give that key. Left out: fragments that do not show their tonic.
CLEAR = """
C ; C F G7 C ; cadence
a ; Am Dm E7 Am ; cadence
C ; F G C ; OMT appliedChords
C ; F#dim G C ; OMT appliedChords
a ; F G Am ; OMT popRockHarmony-minor
c ; Cm Gm/Bb Fm/Ab G ; OMT harmonicSyntax2, lament
C ; C Am F G ; OMT popRockHarmony-dooWop
D ; D A Bm F#m G D G A ; OMT popRockHarmony-pachelbel
a ; Am Dm G C F Bdim E ; OMT popRockHarmony-fifths
g ; Gm Ab/C D7 Gm ; OMT alteredSubdominants
C ; C G7/D G7/B C ; OMT harmonicSyntax2
C ; C F/A C/E ; OMT harmonicSyntax2
F ; F Bb Edim Am Dm Gm C F ; MT21C HarmonicProgression
b ; Bm Em A D G C#dim F# Bm ; MT21C HarmonicProgression
F ; F Dm Gm/Bb C ; MT21C HarmonicProgression
G ; G D G C G D ; MT21C RomanNumeralsAndCadences
D ; D Bm G D ; MT21C RomanNumeralsAndCadences
ab ; Dbm7 Abm Eb7 Abm ; MT21C SeventhChords
C ; C G7/D C F/C C G7/B C ; MT21C SeventhChords
a ; Am G F E ; MT21C i-VII-VI-VII
C ; C Dm7/C G7/B C Am/C ; WIR, m. 1-5
G ; D7/C G/B Cmaj7/B Am7 D7 G ; WIR, m. 6-11
C ; Dm9 G13 Cmaj9 ; MT21C II-V-I
c ; Dm7b5 G7b9 Cm ; MT21C II-V-I, with b9 for alt
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in CLEAR.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "page"), ROWS)
def test_chords_that_show_their_key_are_found_in_it(home, symbols, page):
    assert rank_keys(chords(symbols))[0].key == key(home), page


# Published readings of chords that fit several keys: OMT popRockHarmony-sscp and MT21C BestsellerProgression print
# Am F C G in C major and in A minor, MT21C i-VII-VI-VII prints Am G F G in both; popRockHarmony-plagal hears the
# chain of fourths C G D A E in E; MT21C HarmonicProgression C#m A E B in E.
AMBIGUOUS = [
    ("Am F C G", {"A minor", "C major"}, 2),
    ("Am G F G", {"A minor", "C major"}, 4),  # C itself never sounds: G comes between
    ("C#m A E B", {"C# minor", "E major"}, 2),
]


@pytest.mark.parametrize(("symbols", "published", "within"), AMBIGUOUS)
def test_chords_published_in_two_keys_are_found_in_these_two_first(symbols, published, within):
    fits = rank_keys(chords(symbols))

    assert published <= {str(fit.key) for fit in fits[:within]}
    assert fits[0].key.mode.name == "minor"  # they open on the minor chord
    assert fits[0].share < 0.6


def test_a_chain_of_fourths_has_its_published_key_among_the_first_two():
    # Open Music Theory, popRockHarmony-plagal: bVI bIII bVII IV I in E major. Ours finds A major before it, to which
    # four of the five chords belong.
    assert "E major" in [str(fit.key) for fit in rank_keys(chords("C G D A E"))[:2]]


def test_four_chords_that_open_on_the_major_chord_are_in_major():
    # MT21C, BestsellerProgression: C G Am F is I V vi IV
    assert rank_keys(chords("C G Am F"))[0].key == key("C")


@pytest.mark.parametrize(
    ("home", "symbols"),
    [
        ("D dorian", "Dm G Dm G Dm"),
        ("D dorian", "Dm7 G7 Dm7 G7"),
        ("G mixolydian", "G F C G"),
        ("E phrygian", "Em F Em F Em"),
        ("F lydian", "F G F G F"),
    ],
)
def test_the_cue_chord_of_a_mode_tells_the_mode(home, symbols):
    # Common practice, no source: i IV, bVII IV I, i bII and I II are heard as Dorian, Mixolydian, Phrygian, Lydian.
    assert key(home) in [fit.key for fit in rank_keys(chords(symbols))[:2]]


@pytest.mark.parametrize(
    ("home", "symbols"), [("C", "C7 F7 C7 G7 F7 C7"), ("Bb", "Bb7 Eb7 Bb7 F7 Eb7 Bb7"), ("C", "C7 F7 G7")]
)
def test_a_blues_is_in_the_key_of_its_first_chord(home, symbols):
    # Open Music Theory, popRockHarmony-blues
    assert rank_keys(chords(symbols))[0].key == key(home)


# What any musician names at once: pop loops, jazz, vamps, plagal turns, a Picardy third. Common practice, no source.
PLAIN_CASES = [
    ("G C D C G C D C", "G"), ("C F G Am C F G Am", "C"), ("D G A Bm D G A Bm", "D"), ("A D E D A D E D", "A"),
    ("C Fmaj7 C Fmaj7", "C"), ("Cmaj7 Dm7 Em7 Fmaj7", "C"), ("Dm7 G7 Cmaj7 Am7", "C"), ("Dm7 G7 Cmaj7 A7", "C"),
    ("Em F Em F", "E phrygian"), ("Dm7 G7 Dm7 G7", "D dorian"), ("Am7 D7 Am7 D7", "A dorian"),
    ("F Fm C C", "C"), ("C Fm C", "C"), ("Cm Fm G7 C", "c"), ("Am Dm E A", "a"), ("Dbm Gbm Ab7 Dbm", "Db minor"),
]  # fmt: skip


@pytest.mark.parametrize(("symbols", "home"), PLAIN_CASES)
def test_what_any_musician_hears_is_found_first(symbols, home):
    assert rank_keys(chords(symbols))[0].key == key(home)


def test_a_minor_chord_below_is_no_dominant():
    # Em to F is no cadence in F (common practice, no source)
    line = chords("Em F Em F")

    assert not any("cadence" in reason for fit in rank_keys(line) for reason in reasons_for(fit.key, line))


def test_the_runner_up_is_the_next_major_or_minor_key():
    fits = rank_keys(chords("Am Dm E7 Am"))

    assert [str(fit.key) for fit in fits[:3]] == ["A minor", "A phrygian", "A dorian"]
    assert runner_up(fits).key == key("d")


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_a_demo_chart_is_found_in_its_own_key_in_all_twelve_keys(path):
    tune = demo(path)
    for home in all_keys(tune):
        moved = tune.in_key(home)
        beats = [moment.slot.beats for moment in moved.moments if moment.slot.chord is not None]

        assert rank_keys(list(moved.chords()), beats)[0].key == home


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_a_demo_chart_written_without_its_key_is_read_in_it_in_all_twelve_keys(path):
    tune = demo(path)
    for home in all_keys(tune):
        read = tune_from_text(write_chart(tune.in_key(home)))

        assert (str(read.key), read.key_source) == (str(home), "inferred")


@pytest.mark.parametrize(
    "chart", ["| Dm D7 Dm D7 | Fm | C | Fm |", "| Am G | Fm | D7 G | D7 Am |", "| Am | F | C | G |"]
)
def test_a_chart_is_read_in_the_key_that_its_beats_make_likeliest(chart):
    # The time a chord lasts counts, not how often it is written; whoever asks for the ranking gets the same answer.
    read = tune_from_text(chart)
    progression = read.progression
    beats = [moment.slot.beats for moment in progression.moments if moment.slot.chord is not None]

    assert str(read.key) == str(rank_keys(list(progression.chords()), beats)[0].key)
