"""The palette of borrowed chords: every mode on a key's tonic, and what it lends."""

from __future__ import annotations

import pytest
from harmony_examples import key, keys, modes, note
from hypothesis import given
from music21 import scale as m21_scale

from nearhand.harmony.analysis import analyse
from nearhand.harmony.borrowing import borrowed_palette
from nearhand.harmony.scale_chords import chords_of
from nearhand.harmony.sources import own_source
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.mode import MAJOR, MINOR, MINOR_FORMS, MODES

ORDER = ["natural minor", "major", "harmonic minor", "dorian", "mixolydian", "phrygian", "lydian", "melodic minor"]

# What each mode lends to major: the chords of its row in the table of modes on one tonic that major has not, as
# numerals of C major. Scales: Open Music Theory, "Scales"; R. Hutchinson, Music Theory for the 21st-Century Classroom,
# "Table of scales". Chords by arithmetic and by music21.
LENT_TO_MAJOR = {
    "natural minor": ("i iio bIII iv v bVI bVII", "i7 ii/o7 bIIImaj7 iv7 v7 bVImaj7 bVII7"),
    "harmonic minor": ("i iio bIII+ iv bVI", "i(maj7) ii/o7 bIII+maj7 iv7 bVImaj7 viio7"),
    "dorian": ("i bIII v vio bVII", "i7 bIIImaj7 IV7 v7 vi/o7 bVIImaj7"),
    "mixolydian": ("iiio v bVII", "I7 iii/o7 v7 bVIImaj7"),
    "phrygian": ("i bII bIII iv vo bVI bvii", "i7 bIImaj7 bIII7 iv7 v/o7 bVImaj7 bvii7"),
    "lydian": ("II #ivo vii", "II7 #iv/o7 Vmaj7 vii7"),
    "melodic minor": ("i bIII+ vio", "i(maj7) bIII+maj7 IV7 vi/o7"),
}
# The table of borrowing by source mode, triads on C as chord symbols, with the diatonic ones left out (Open Music
# Theory, "Modal mixture"; Hutchinson, "Mode mixture"; checked with music21).
TRIADS_ON_C = {
    "natural minor": "Cm Ddim Eb Fm Gm Ab Bb",
    "dorian": "Cm Eb Gm Adim Bb",
    "phrygian": "Cm Db Eb Fm Gdim Ab Bbm",
    "lydian": "D F#dim Bm",
    "mixolydian": "Edim Gm Bb",
}
# By arithmetic on the scales; that minor borrows the major tonic, and that its raised sixth and seventh are its own:
# Hutchinson, "The Picardy third"; Open Music Theory, "Modal mixture".
LENT_TO_MINOR = {
    "major": ("I #iii vi", "Imaj7 #iii7 IVmaj7 vi7"),
    "dorian": ("", "VIImaj7"),
    "mixolydian": ("I #iiio vi", "I7 #iii/o7 IVmaj7 vi7 VIImaj7"),
    "phrygian": ("bII vo bvii", "bIImaj7 III7 v/o7 bvii7"),
    "lydian": ("I II #iii #ivo vi vii", "Imaj7 II7 #iii7 #iv/o7 Vmaj7 vi7 vii7"),
}
NATIVE = "IV ii V viio7 V7 vio IV7 ii7 III+ i(maj7) v VII"
"""Chords of the three forms of minor."""
M21_SCALES = {
    "natural minor": m21_scale.MinorScale,
    "major": m21_scale.MajorScale,
    "harmonic minor": m21_scale.HarmonicMinorScale,
    "dorian": m21_scale.DorianScale,
    "mixolydian": m21_scale.MixolydianScale,
    "phrygian": m21_scale.PhrygianScale,
    "lydian": m21_scale.LydianScale,
    "melodic minor": m21_scale.MelodicMinorScale,  # upwards
}
TONICS = ["Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#"]


def numerals(lent, mode):
    return " ".join(write_numeral(row.chord, mode, PLAIN) for row in lent)


def lending(mode):
    """By name of the lending mode: numerals of its triads and of its seventh chords."""
    return {row.name: (numerals(row.triads, mode), numerals(row.sevenths, mode)) for row in borrowed_palette(mode)}


def test_each_mode_lends_to_major_what_the_table_says():
    assert lending(MAJOR) == LENT_TO_MAJOR


def test_each_mode_lends_to_minor_what_is_in_none_of_its_three_forms():
    assert lending(MINOR) == LENT_TO_MINOR


@pytest.mark.parametrize("name", TRIADS_ON_C)
def test_the_triads_that_c_major_borrows_are_those_of_the_table(name):
    (row,) = (row for row in borrowed_palette(MAJOR) if row.name == name)

    assert [lent.chord.in_key(key("C")) for lent in row.triads] == [
        parse_chord(symbol) for symbol in TRIADS_ON_C[name].split()
    ]


def theirs(scale, tonic, size):
    """The chords of a music21 scale as rows of note names, root first."""
    tones = [pitch.name.replace("-", "b") for pitch in scale(tonic.replace("b", "-")).getPitches()[:7]]
    return [tuple(tones[(degree + 2 * third) % 7] for third in range(size)) for degree in range(7)]


@pytest.mark.parametrize("tonic", TONICS)
@pytest.mark.parametrize("mode", [MAJOR, MINOR], ids=lambda mode: mode.name)
def test_on_every_tonic_what_is_lent_is_the_chords_of_music21s_scales_that_the_key_has_not(tonic, mode):
    names = ["major"] if mode == MAJOR else ["natural minor", "harmonic minor", "melodic minor"]
    own = [set(theirs(M21_SCALES[name], tonic, 7)[0]) for name in names]
    expected = {
        name: tuple(
            [tones for tones in theirs(scale, tonic, size) if not any(set(tones) <= tones_of for tones_of in own)]
            for size in (3, 4)
        )
        for name, scale in M21_SCALES.items()
    }
    home = key(tonic)._replace(mode=mode)

    assert {
        row.name: tuple(
            [tuple(map(str, lent.chord.in_key(home).tones)) for lent in chords] for chords in (row.triads, row.sevenths)
        )
        for row in borrowed_palette(mode)
    } == {name: rows for name, rows in expected.items() if any(rows)}


def test_the_raised_sixth_and_seventh_of_minor_are_native_and_not_borrowed():
    # Open Music Theory, "Modal mixture"; Hutchinson, "The Picardy third"
    lent = {row.chord for mode in borrowed_palette(MINOR) for row in (*mode.triads, *mode.sevenths)}

    for native in NATIVE.split():
        assert parse_numeral(native, MINOR) not in lent
    assert parse_numeral("I", MINOR) in lent


@pytest.mark.parametrize("name", MODES)
def test_locrian_lends_nothing_and_a_mode_nothing_to_itself(name):
    # nobody hears a chord as taken from locrian (common practice, no source)
    lenders = [row.name for row in borrowed_palette(MODES[name])]
    itself = {"minor": "natural minor", "aeolian": "natural minor", "ionian": "major"}.get(name, name)

    assert "locrian" not in lenders
    assert itself not in lenders
    assert lenders == [mode for mode in ORDER if mode in lenders]


def test_the_three_forms_of_minor_lend_nothing_to_minor():
    assert not {row.name for row in borrowed_palette(MINOR)} & {f"{form} minor" for form in MINOR_FORMS}


@given(modes)
def test_what_is_lent_belongs_to_the_lender_and_not_to_the_key(mode):
    for row in borrowed_palette(mode):
        for lent in (*row.triads, *row.sevenths):
            assert set(lent.chord.places) <= set(row.scale)
            assert own_source(lent.chord, mode) is None
            assert lent.chord.bass == lent.chord.root


@given(modes)
def test_every_lender_knows_the_others(mode):
    holders = {}
    palette = borrowed_palette(mode)
    for row in palette:
        for lent in (*row.triads, *row.sevenths):
            holders.setdefault(lent.chord, []).append(row.name)
    for row in palette:
        for lent in (*row.triads, *row.sevenths):
            assert list(lent.shared_with) == [name for name in holders[lent.chord] if name != row.name]


@given(modes)
def test_foreign_notes_are_named_and_the_others_are_the_keys_own(mode):
    forms = [set(form) for form in MINOR_FORMS.values()] if mode.is_minor else [set(mode.degrees)]
    for row in borrowed_palette(mode):
        for lent in (*row.triads, *row.sevenths):
            rest = set(lent.chord.places) - set(lent.foreign)
            assert lent.foreign
            assert any(rest <= form for form in forms)


@pytest.mark.parametrize(
    ("home", "lender", "numeral", "foreign"),
    [
        ("C", "natural minor", "bVI", "Ab Eb"), ("A", "natural minor", "bVI", "F C"),
        ("G", "natural minor", "iv", "Eb"),
        ("C", "lydian", "II", "F#"), ("Db", "natural minor", "i", "Fb"), ("c", "major", "I", "E"),
        ("c", "phrygian", "bII", "Db"), ("c", "dorian", "VIImaj7", "A"),
    ],
)  # fmt: skip
def test_the_foreign_notes_of_a_chord(home, lender, numeral, foreign):
    # bVI of A is F A C: Hutchinson, "Analyzing and writing borrowed chords"; the rest by arithmetic
    tonic, mode = key(home)
    (row,) = (row for row in borrowed_palette(mode) if row.name == lender)
    chords = [lent for lent in (*row.triads, *row.sevenths) if lent.chord == parse_numeral(numeral, mode)]

    assert [[tonic.up(place) for place in lent.foreign] for lent in chords] == [
        [note(name) for name in foreign.split()]
    ]


@given(keys)
def test_a_chord_that_is_heard_as_applied_first_says_so_as_the_analysis_does(home):
    for row in borrowed_palette(home.mode):
        for lent in (*row.triads, *row.sevenths):
            assert lent.target == analyse([lent.chord], home.mode)[0].target or lent.chord.root == 0


# Hutchinson, "Mode mixture", "The deceptive cadence with the flat sixth", "Subtonic VII in pop music", "The Picardy
# third"; Open Music Theory, "Altered subdominants"; i-IV, bII-I and I-II are common practice, no source.
USES = [
    ("C", "natural minor", ["V bVI", "bVI bVII I", "IV iv I"]), ("C", "mixolydian", ["bVII IV I"]),
    ("C", "dorian", ["i IV"]), ("C", "phrygian", ["bII I"]), ("C", "lydian", ["I II"]), ("C", "melodic minor", []),
    ("c", "major", ["V I"]), ("c", "phrygian", ["bII6 V"]), ("c", "lydian", []), ("C dorian", "phrygian", []),
]  # fmt: skip


@pytest.mark.parametrize(("home", "lender", "numerals"), USES)
def test_the_uses_of_a_lending_mode(home, lender, numerals):
    mode = key(home).mode
    (row,) = (row for row in borrowed_palette(mode) if row.name == lender)

    assert [" ".join(write_numeral(chord, mode, PLAIN) for chord in use.chords) for use in row.uses] == numerals
    for use in row.uses:
        assert ("common practice" in use.words) == (lender in ("dorian", "phrygian", "lydian") and mode == MAJOR)


@given(modes)
def test_every_use_has_a_chord_that_the_mode_lends(mode):
    for row in borrowed_palette(mode):
        lent = {chord.chord._replace(bass=0) for chord in (*row.triads, *row.sevenths)}
        for use in row.uses:
            assert any(chord._replace(bass=0) in lent for chord in use.chords)


@given(modes)
def test_the_chords_of_a_scale_are_its_thirds(mode):
    for size in (3, 4):
        for number, chord in enumerate(chords_of(mode.degrees, size)):
            assert chord.places == tuple(mode.degrees[(number + 2 * third) % 7] for third in range(size))
