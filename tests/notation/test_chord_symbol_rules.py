"""Chord symbols: the rules for numbers, accidentals, brackets and slashes."""

from __future__ import annotations

import pytest
from strategies import key, names

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN

# Symbol and tones, one rule a row. R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz
# Chord Basics", "Chord Symbol Specifics", "Altered Dominant Seventh Chords", "Simple Sus Chords", "The IV/5
# Sus Chord", "Polychords".
TEXTBOOK = [
    ("C9", "C E G Bb D", "a 9, 11 or 13 brings every odd member below it"),
    ("Cm6", "C Eb G A", "a 6 comes from the major scale whatever the triad"),
    ("Cm13", "C Eb G Bb D F A", "a 13 comes from the major scale whatever the triad"),
    ("Cmaj9", "C E G B D", "maj before a number alters the seventh alone"),
    ("Dm(maj11)", "D F A C# E G", "maj before a number alters the seventh alone"),
    ("C-7", "C Eb G Bb", "a dash after the root alters the third alone"),
    ("C7-9", "C E G Bb Db", "a dash before 9, 11, 13 is a flat"),
    ("C7+9", "C E G Bb D#", "a plus before 9, 11, 13 is a sharp"),
    ("C+7", "C E G# Bb", "a plus after the root is an augmented triad with minor seventh"),
    ("Cadd9", "C E G D", "a ninth without seventh is added"),
    ("Cadd2", "C E G D", "add2 is add9"),
    ("C6", "C E G A", "6 where there is no seventh"),
    ("C7(13)", "C E G Bb A", "13 where there is a seventh"),
    ("C7sus", "C F G Bb", "a fourth without third is a suspension"),
    ("C7#11", "C E G Bb F#", "with a natural fifth it is a raised eleventh"),
    ("C7b5", "C E Gb Bb", "without a natural fifth it is a lowered fifth"),
    ("C7#5", "C E G# Bb", "a raised fifth takes the place of the fifth"),
    ("C7b13", "C E G Bb Ab", "a lowered thirteenth keeps the fifth"),
    ("C6/9", "C E G A D", "sixth and ninth, no seventh"),
    ("Cm6/9", "C Eb G A D", "sixth and ninth, no seventh"),
    ("Cø7", "C Eb Gb Bb", "half-diminished"),
    ("C7#9", "C E G Bb D#", "a raised ninth keeps the third"),
    ("F13sus(b9)", "F Bb C Eb Gb D", "a suspension takes away third and eleventh"),
    ("Cb9", "Cb Eb Gb Bbb Db", "without brackets the flat belongs to the root"),
    ("C(b9)", "C E G Db", "with brackets it belongs to the ninth"),
    ("C7(b9)", "C E G Bb Db", "with brackets it belongs to the ninth"),
    ("C#-6", "C# E G# A#", "a dash after the root alters the third alone"),
    ("C5", "C G", "a power chord"),
    ("C11", "C E G Bb D F", "a 9, 11 or 13 brings every odd member below it"),
    ("C13", "C E G Bb D F A", "a 9, 11 or 13 brings every odd member below it"),
    ("Cmaj7", "C E G B", "maj before a number alters the seventh alone"),
    ("C-9", "C Eb G Bb D", "a dash after the root alters the third alone"),
    ("C7-13", "C E G Bb Ab", "a dash before 9, 11, 13 is a flat"),
    ("C7+11", "C E G Bb F#", "a plus before 9, 11, 13 is a sharp"),
    ("C+", "C E G#", "a plus after the root is an augmented triad"),
    ("C2", "C E G D", "in pop 2 is add 2"),
    ("C7alt", "C E Gb G# Bb Db D#", "fifth and ninth lowered or raised, both left open"),
    ("C7b10", "C E G Bb Eb", "a raised ninth is often spelled as a lowered tenth"),
    ("Csus", "C F G", "sus is sus4"),
    ("Csus2", "C D G", "sus2 replaces the third by the second"),
    ("Csus9", "C D G", "sus2 is also called sus9"),
    ("E//A", "A C# E G# B", "a chord over a chord is no slash chord"),
    ("F/G", "F A C", "the IV over 5: F/G sounds as G7sus"),
]

# Symbol and tones where charts differ and we follow the reading named. Common practice, no source, unless
# marked.
DEFAULTS = [
    ("C2", "C E G D", "add 9 with the third, pop usage: R. Hutchinson; guitar charts often mean sus2"),
    ("C4", "C F G", "a suspension"),
    ("Cadd4", "C E G F", "an added eleventh"),
    ("C9sus", "C F G Bb D", "a suspension with its ninth"),
    ("C9sus4", "C F G Bb D", "the same, written out"),
    ("C11", "C E G Bb D F", "the full chord in data, whatever is played: MusicXML 4.0, kind-value"),
    ("C13", "C E G Bb D F A", "the full chord in data, whatever is played: MusicXML 4.0, kind-value"),
    ("C+9", "C E G# Bb D", "an augmented ninth chord, not C7(#9)"),
    ("C-5", "C E Gb", "major third and diminished fifth"),
    ("C-9", "C Eb G Bb D", "a minor ninth chord"),
    ("C°", "C Eb Gb", "the triad, as in theory texts"),
    ("Cø", "C Eb Gb Bb", "a seventh chord: a half-diminished triad does not exist"),
    ("CΔ", "C E G B", "a major seventh chord, as in jazz; MusicXML 4.0 has the triangle for the triad"),
    ("Cb5", "Cb Gb", "a power chord on C flat"),
    ("C(b5)", "C E Gb", "with brackets it belongs to the fifth"),
    ("C(no3)", "C G", "the third left out"),
    ("Comit3", "C G", "the third left out"),
    ("C7(no5)", "C E Bb", "the fifth left out"),
    ("C69", "C E G A D", "the same as C6/9"),
    ("C6add9", "C E G A D", "the same as C6/9"),
    ("Cmaj7#11", "C E G B F#", "the eleventh raised"),
    ("Cmaj7#5", "C E G# B", "the fifth raised"),
    ("C+maj7", "C E G# B", "an augmented triad with major seventh"),
    ("Cdim(maj7)", "C Eb Gb B", "a diminished triad with major seventh"),
    ("Cm11b5", "C Eb Gb Bb D F", "the fifth lowered"),
    ("C13#11", "C E G Bb D F# A", "the eleventh raised in place of the plain one"),
    ("C7b9#9", "C E G Bb Db D#", "both altered ninths"),
    ("Csus", "C F G", "sus4"),
    ("C7sus4", "C F G Bb", "a suspension with its seventh"),
    ("C7sus", "C F G Bb", "the same"),
    ("Csus9", "C D G", "sus2: R. Hutchinson; some charts mean C9sus4"),
    ("Cmaj9", "C E G B D", "with its seventh"),
    ("Cadd9", "C E G D", "without seventh"),
    ("Cm(maj7)", "C Eb G B", "the seventh is major, the third minor"),
    ("CmM7", "C Eb G B", "the same"),
    ("Cm#7", "C Eb G B", "the raised seventh is the major one"),
    ("C7+", "C E G# Bb", "a raised fifth; some charts mean Cmaj7"),
    ("C9+", "C E G# Bb D", "a raised fifth, as in 7+; some charts mean C7(#9)"),
    ("C7M", "C E G B", "a major seventh"),
    ("C-7", "C Eb G Bb", "a minor seventh chord: R. Hutchinson"),
    ("CM7", "C E G B", "a capital M is major"),
    ("Cm7", "C Eb G Bb", "a small m is minor"),
    ("Bb", "Bb D F", "English note names"),
    ("B", "B D# F#", "English note names"),
]

# Alterations in any order are one chord, and are written in rising order: common practice, no source.
SAME = [
    ("C7(b5,#9)", "C7b5#9", "C7(b5,#9)"),
    ("C7(#9,b5)", "C7#9b5", "C7(b5,#9)"),
    ("C7(b13,b9)", "C7b9b13", "C7(b9,b13)"),
    ("C7(b9)(b13)", "C7(b9b13)", "C7(b9,b13)"),
    ("C9(b5)", "C9b5", "C9b5"),
    ("C(add9)", "Cadd9", "C(add9)"),
    ("Cmadd9", "Cm(add9)", "Cm(add9)"),
    ("Csus4(add9)", "Csus(9)", "Csus4(add9)"),
    ("C6(9)", "C69", "C6/9"),
    ("C9sus", "C9sus4", "C9sus4"),
    ("C(maj7)", "Cmaj7", "Cmaj7"),
]

# The bass after a slash, of the chord or foreign to it; its spelling is kept. R. Hutchinson, "Slash
# Chords"; MusicXML 4.0, bass; the small letter and 6/9 before a bass: common practice, no source.
SLASHES = [
    ("C/E", "C E G", "E"), ("C/F#", "C E G", "F#"), ("Am7/G", "A C E G", "G"), ("C/D#", "C E G", "D#"),
    ("C/Eb", "C E G", "Eb"), ("F/G", "F A C", "G"), ("C6/9/E", "C E G A D", "E"), ("C/e", "C E G", "E"),
    ("C/bb", "C E G", "Bb"), ("C/b", "C E G", "B"), ("Bb/A♭", "Bb D F", "Ab"),
    ("Gm7b5/Db", "G Bb Db F", "Db"), ("C6/9/e", "C E G A D", "E"), ("C69/E", "C E G A D", "E"),
    ("C7(b9)/Db", "C E G Bb Db", "Db"), ("C/f♯", "C E G", "F#"), ("Eb/Bb", "Eb G Bb", "Bb"),
]  # fmt: skip

# Names of one sound; computed: each minor third of a diminished seventh chord, each major third of an
# augmented triad, and the tritone of a lowered fifth may be its root.
SAME_SOUND = [
    ("C°7", "Eb°7", "Gb°7", "A°7"), ("C+", "E+", "G#+"), ("C7b5", "Gb7b5"), ("Ab7", "Ab7(Ger65)"),
    ("Ab7(no5)", "Ab7(It6)"), ("Ab7b5", "Ab7(Fr43)"), ("Ab7(Ger65)", "Ab7(Sw43)"), ("FTristan", "Fm7b5"),
]  # fmt: skip

# Two names for the same notes; computed. The bass is the lowest note, so it goes into the comparison.
SAME_NOTES = [
    ("C6", "Am7/C"), ("Cm6", "Am7b5/C"), ("Cm6", "Aø7/C"), ("Csus2", "Gsus4/C"), ("Csus4", "Fsus2/C"),
    ("Gm7/C", "C9sus4"), ("Dm7b5", "Fm6/D"), ("Em7/C", "Cmaj9"), ("F/G", "G9sus4(no5)"),
    ("Bb/C", "C9sus4(no5)"),
]  # fmt: skip


@pytest.mark.parametrize(("symbol", "tones", "rule"), TEXTBOOK, ids=[symbol for symbol, *_ in TEXTBOOK])
def test_a_rule_of_the_textbook_holds(symbol, tones, rule):
    assert sorted(names(parse_chord(symbol).tones).split()) == sorted(tones.split()), rule


@pytest.mark.parametrize(("symbol", "tones", "reading"), DEFAULTS, ids=[symbol for symbol, *_ in DEFAULTS])
def test_an_ambiguous_form_has_its_named_reading(symbol, tones, reading):
    assert sorted(names(parse_chord(symbol).tones).split()) == sorted(tones.split()), reading


@pytest.mark.parametrize(("one", "other", "written"), SAME)
def test_changes_in_any_order_and_bracket_are_one_chord(one, other, written):
    assert parse_chord(one) == parse_chord(other)
    assert write_chord(parse_chord(one), PLAIN) == written


@pytest.mark.parametrize(("symbol", "tones", "bass"), SLASHES)
def test_a_slash_puts_another_note_in_the_bass(symbol, tones, bass):
    chord = parse_chord(symbol)

    assert names(chord.tones) == tones
    assert str(chord.bass) == bass


@pytest.mark.parametrize(("one", "other"), SAME_NOTES)
def test_some_chords_have_two_names_for_the_same_notes(one, other):
    first, second = parse_chord(one), parse_chord(other)

    assert {*first.tones, first.bass} == {*second.tones, second.bass}
    assert first.bass == second.bass
    assert first != second


@pytest.mark.parametrize("symbols", SAME_SOUND)
def test_some_chords_have_several_names_for_one_sound(symbols):
    sounds = [{tone.semitones for tone in parse_chord(symbol).tones} for symbol in symbols]

    assert all(sound == sounds[0] for sound in sounds)
    assert len({parse_chord(symbol).tones for symbol in symbols}) == len(symbols)


def test_a_slash_without_blanks_is_a_bass_and_with_blanks_a_beat():
    # common practice, no source
    bass, beat = resolve(read_chart("| Eb/Bb |"), key("Eb")), resolve(read_chart("| Eb / Bb |"), key("Eb"))

    assert list(bass.chords()) == [parse_chord("Eb/Bb")]
    assert list(beat.chords()) == [parse_chord("Eb"), parse_chord("Bb")]


def test_a_bass_that_is_the_root_is_not_written():
    assert write_chord(parse_chord("C/C")) == "C"
    assert parse_chord("C/C") == parse_chord("C")
