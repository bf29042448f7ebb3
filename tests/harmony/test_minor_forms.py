"""The form of minor that holds a chord, the notes that tell, where a progression turns, and cross relations."""

from __future__ import annotations

from functools import cache
from itertools import pairwise

import pytest
from harmony_examples import CHARTS, demo, in_bars, key, key_free, lines_of_chords, modes, note, relative_chords
from hypothesis import given
from hypothesis import strategies as st
from music21 import scale

from nearhand.harmony.minor_forms import (
    TELLING_WORDS,
    CrossRelation,
    Turn,
    cross_relations,
    forms_of,
    telling_notes,
    turns,
)
from nearhand.harmony.sources import own_source
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.interval import Interval
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.pitch import Pitch
from nearhand.voicing.voice import voice_progression

# Numeral; its tones in A minor; in C minor; the movable degrees among them. R. Hutchinson, Music Theory for the
# 21st-Century Classroom, DiatonicChordsInMinor; Open Music Theory, triads; sevenths stacked in the same scales.
# Spelled by arithmetic and by music21. "vi" has a raised third as well: not diatonic to minor.
TABLE = """
i ; A C E ; C Eb G ;
ii° ; B D F ; D F Ab ; lowered sixth
ii ; B D F# ; D F A ; raised sixth
III ; C E G ; Eb G Bb ; subtonic
III+ ; C E G# ; Eb G B ; leading tone
iv ; D F A ; F Ab C ; lowered sixth
IV ; D F# A ; F A C ; raised sixth
v ; E G B ; G Bb D ; subtonic
V ; E G# B ; G B D ; leading tone
VI ; F A C ; Ab C Eb ; lowered sixth
vi° ; F# A C ; A C Eb ; raised sixth
#vi ; F# A C# ; A C E ; raised sixth
VII ; G B D ; Bb D F ; subtonic
vii° ; G# B D ; B D F ; leading tone
i7 ; A C E G ; C Eb G Bb ; subtonic
i(maj7) ; A C E G# ; C Eb G B ; leading tone
iiø7 ; B D F A ; D F Ab C ; lowered sixth
ii7 ; B D F# A ; D F A C ; raised sixth
IIImaj7 ; C E G B ; Eb G Bb D ; subtonic
III+maj7 ; C E G# B ; Eb G B D ; leading tone
iv7 ; D F A C ; F Ab C Eb ; lowered sixth
IV7 ; D F# A C ; F A C Eb ; raised sixth
v7 ; E G B D ; G Bb D F ; subtonic
V7 ; E G# B D ; G B D F ; leading tone
VImaj7 ; F A C E ; Ab C Eb G ; lowered sixth
viø7 ; F# A C E ; A C Eb G ; raised sixth
VII7 ; G B D F ; Bb D F Ab ; lowered sixth, subtonic
vii°7 ; G# B D F ; B D F Ab ; lowered sixth, leading tone
viiø7 ; G# B D F# ; B D F A ; raised sixth, leading tone
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in TABLE.strip().splitlines()]
TONICS = ["ab", "eb", "bb", "f", "c", "g", "d", "a", "e", "b", "f#", "c#", "g#", "d#", "a#"]


@cache
def scales(tonic):
    """The three forms of a minor key as music21 has them, melodic minor rising."""
    name = tonic[0] + tonic[1:].replace("b", "-")
    rising = scale.MelodicMinorScale(name).getPitches(f"{name}4", f"{name}5", direction=scale.Direction.ASCENDING)
    forms = {
        "natural": scale.MinorScale(name).pitches,
        "harmonic": scale.HarmonicMinorScale(name).pitches,
        "melodic": rising,
    }
    return {form: {pitch.name.replace("-", "b") for pitch in pitches} for form, pitches in forms.items()}


@pytest.mark.parametrize(("numeral", "in_a", "in_c", "telling"), ROWS)
def test_every_chord_of_the_table_lies_in_the_forms_whose_notes_it_has(numeral, in_a, in_c, telling):
    chord = parse_numeral(numeral, MINOR)

    assert chord.in_key(key("a")).tones == tuple(map(note, in_a.split()))
    assert chord.in_key(key("c")).tones == tuple(map(note, in_c.split()))
    assert ", ".join(TELLING_WORDS[place] for place in telling_notes(chord, MINOR)) == telling
    for tonic in TONICS:
        tones = {str(tone) for tone in chord.in_key(key(tonic)).tones}
        assert forms_of(chord, MINOR) == tuple(form for form, names in scales(tonic).items() if tones <= names)


@pytest.mark.parametrize(
    ("telling", "forms"),
    [
        ("", ("natural", "harmonic", "melodic")),
        ("lowered sixth", ("natural", "harmonic")),
        ("raised sixth", ("melodic",)),
        ("subtonic", ("natural",)),
        ("leading tone", ("harmonic", "melodic")),
        ("lowered sixth, leading tone", ("harmonic",)),
    ],
)
def test_the_telling_notes_decide_between_the_forms(telling, forms):
    # Open Music Theory, scales: harmonic minor raises the seventh degree, melodic minor rising the sixth as well.
    found = {forms_of(parse_numeral(row[0], MINOR), MINOR) for row in ROWS if row[3] == telling and row[0] != "#vi"}

    assert found == {forms}


def test_the_bass_takes_part():
    # common practice, no source: a leading tone under the tonic chord is as much a leading tone
    under, apart = key_free("Cm/B Cm(maj7)/Bb", key("c"))

    assert forms_of(under, MINOR) == ("harmonic", "melodic")
    assert telling_notes(under, MINOR) == (5,)
    assert forms_of(apart, MINOR) == ()
    assert telling_notes(apart, MINOR) == (-2, 5)


@given(relative_chords(), modes)
def test_only_minor_has_forms_and_they_agree_with_where_the_chord_comes_from(chord, mode):
    forms = forms_of(chord, mode)

    if not mode.is_minor:
        assert (forms, telling_notes(chord, mode)) == ((), ())
    elif chord.bass in chord.places:
        assert bool(forms) == (own_source(chord, mode) is not None)


def turned(symbols, home):
    """The turns of chord symbols in words: chord, degree, note before, note."""
    home = key(home)
    return [
        (turn.position, turn.degree, str(home.tonic.up(turn.place_before)), str(home.tonic.up(turn.place)))
        for turn in turns(key_free(symbols, home), home.mode)
    ]


# Turns read off the printed chords by hand. Lament and row of fifths: Open Music Theory, harmonicSyntax2 and
# popRockHarmony-fifths; the second: R. Hutchinson, HarmonicProgression (b minor) and i-VII-VI-VII (Andalusian).
TURNS = [
    ("c", "Cm Gm/Bb Fm/Ab G", [(3, 7, "Bb", "B")]),
    ("a", "Am Dm G C F Bdim E", [(6, 7, "G", "G#")]),
    ("b", "Bm Em A D G C#dim F# Bm", [(6, 7, "A", "A#")]),
    ("a", "Am G F E", [(3, 7, "G", "G#")]),
    ("a", "Am G F G", []),
    ("g", "Gm Ab/C D7 Gm", []),
]


@pytest.mark.parametrize(("home", "symbols", "expected"), TURNS)
def test_a_turn_is_where_a_degree_takes_its_other_form(home, symbols, expected):
    assert turned(symbols, home) == expected


def test_a_bass_that_rises_as_melodic_and_falls_as_natural_minor_turns_twice():
    # Open Music Theory, scales: melodic minor rises with raised 6 and 7 and falls as natural minor.
    line = [parse_numeral(text, MINOR) for text in ("iv", "IV/6", "V/7", "i", "v/7", "iv/6")]

    assert turns(line, MINOR) == (Turn(1, 6, -4, 3, 0), Turn(4, 7, 5, -2, 2), Turn(5, 6, 3, -4, 1))


def test_a_chord_with_both_forms_settles_nothing():
    assert turned("Gm Cm(maj7)/Bb G Gm", "c") == [(3, 7, "B", "Bb")]
    assert turned("G Cm(maj7)/Bb Gm", "c") == []


@given(lines_of_chords, modes)
def test_turns_are_where_two_successive_users_of_a_degree_differ(chords, mode):
    expected = []
    for degree, forms in ((6, (-4, 3)), (7, (-2, 5))):
        users = [
            (position, {*chord.places, chord.bass} & set(forms))
            for position, chord in enumerate(chords)
            if not {*chord.places, chord.bass}.isdisjoint(forms)
        ]
        for (position_before, old), (position, new) in pairwise(users):
            if len(old) == len(new) == 1 and old != new:
                expected.append(Turn(position, degree, *old, *new, position_before))

    assert sorted(turns(chords, mode)) == (sorted(expected) if mode.is_minor else [])


# From here on: a cross relation (false relation) is a note in one voice and its chromatic alteration in another, in
# neighbouring chords; in one voice it is a chromatic step. Common practice, from memory.
def related(symbols, home, voicings=None):
    home = key(home)
    return [
        (relation.position, str(home.tonic.up(relation.place_before)), str(home.tonic.up(relation.place)))
        for relation in cross_relations(key_free(symbols, home), voicings)
    ]


def voices(text):
    """Voicings from note names with octaves: chords parted by bars, low to high."""
    return [[Pitch(note(name[:-1]), int(name[-1])) for name in chord.split()] for chord in text.split("|")]


@pytest.mark.parametrize(
    ("home", "symbols", "expected"),
    [
        ("a", "Em/G E", [(1, "G", "G#")]),
        ("a", "Am G E Am", [(2, "G", "G#")]),
        ("a", "G Am E", []),  # the forms are not neighbours
        ("f", "C/E Cm/Eb", [(1, "E", "Eb")]),
        ("C", "F Fm C E7 Am", [(1, "A", "Ab"), (3, "G", "G#")]),
        ("C", "A7 D7 G7", [(1, "C#", "C"), (2, "F#", "F")]),
        ("C", "Em/G# E", []),  # the first chord holds both forms
        ("C", "C Db", []),  # other letters, though E and F lie as near
    ],
)
def test_the_same_letter_in_two_alterations_is_named(home, symbols, expected):
    assert related(symbols, home) == expected


@pytest.mark.parametrize(
    ("symbols", "voicing", "is_cross"),
    [
        ("Em E", "E3 B3 E4 G4 | E3 B3 E4 G#4", False),  # the top voice steps
        ("Em E", "E3 G3 B3 E4 | E3 B3 E4 G#4", True),
        ("Em E/G#", "E3 B3 E4 G4 | G#3 B3 E4 B4", True),  # from the top to the bass
        ("Em/G E/G#", "G3 B3 E4 | G#3 B3 E4", False),
        ("Em/G E/G#", "G3 B3 E4 | G#3 E4 B4 E5", False),  # the bass stays the bass
        ("Em E", "E3 G3 B3 | E3 B3 E4 G#4", True),
        ("Em E", "E3 B3 G4 | E3 B3 E4 G#4", False),  # both are the top voice
        ("Em E", "E3 G3 B3 G4 | E3 G#3 B3 E4", False),  # one of two doubled notes steps
        ("Em E", "E3 B3 E4 B4 | E3 B3 E4 G#4", False),  # the first chord leaves its G out
    ],
)
def test_voicings_tell_a_chromatic_step_from_a_cross_relation(symbols, voicing, is_cross):
    assert related(symbols, "a", voices(voicing)) == ([(1, "G", "G#")] if is_cross else [])


def test_there_must_be_a_voicing_for_every_chord():
    with pytest.raises(ValueError, match="2 chords, 1 voicings"):
        cross_relations(key_free("Em E", key("a")), voices("E3 G3 B3"))


@given(st.lists(relative_chords(), max_size=5), st.sampled_from([MAJOR, MINOR, MODES["dorian"]]), st.integers(-4, 4))
def test_voicings_only_take_relations_away_and_do_so_alike_in_every_key(chords, mode, fifths):
    home = key("C")._replace(mode=mode)
    from_chords = cross_relations(chords)
    pitches = voice_progression(in_bars(chords, home)).pitches
    moved = [[pitch.up(Interval(fifths, 0)) for pitch in voicing] for voicing in pitches]

    assert set(cross_relations(chords, pitches)) <= set(from_chords)
    assert cross_relations(chords, pitches) == cross_relations(chords, moved)
    for relation in from_chords:
        assert 1 <= relation.position < len(chords)
        assert (relation.place - relation.place_before) % 7 == 0 != relation.place - relation.place_before


def test_cross_relations_count_in_every_mode():
    # the modes have no say: E7 in C major after G, as in the worked example C G E7/G# Am
    assert cross_relations(key_free("G E7/G#", key("C"))) == (CrossRelation(1, 1, 8),)


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_the_demo_charts_are_told_without_a_fault(path):
    tune = demo(path)
    chords = tune.relative_chords

    assert [turn for turn in turns(chords, tune.key.mode) if not 0 <= turn.position_before < turn.position] == []
    assert set(cross_relations(chords, voice_progression(tune).pitches)) <= set(cross_relations(chords))
