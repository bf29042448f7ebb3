"""Substitutes for a chord: which there are, what they share with it, and what they do in its place."""

from __future__ import annotations

import pytest
from harmony_examples import chords, key, key_free, keys, lines_of_chords, note, relative_chords
from hypothesis import given
from hypothesis import strategies as st
from music21 import chord as m21_chord
from music21.analysis import neoRiemannian

from nearhand.harmony.analysis import analyse
from nearhand.harmony.substitute_kinds import KINDS, own_second_and_dominant
from nearhand.harmony.substitutes import easier_name, substitutes, what_changes
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.quality import QUALITIES


def offered(text, number, home, kind=None):
    """Substitutes for chord ``number`` of a row of chord symbols in a key, of one kind or of all."""
    found = substitutes(key_free(text, home), number - 1, home.mode)
    return [one for one in found if kind is None or one.kind.name == kind]


def symbols(found, home):
    return [" ".join(write_chord(chord.in_key(home), PLAIN) for chord in one.chords) for one in found]


def numerals(found):
    return [" ".join(analysis.numeral(PLAIN) for analysis in one.analyses) for one in found]


# Key, chords, the number of the one to replace, kind, substitutes, their numerals; a dash for none.
BY_KIND = """
# tritone: E7 A7 D7 G7 may be E7 Eb7 D7 Db7 (R. Hutchinson, Music Theory for the 21st-Century Classroom, "Turnaround
# progression")
C ; E7 A7 D7 G7 C ; 2 ; tritone ; Eb7 ; bIII7
C ; E7 A7 D7 G7 C ; 4 ; tritone ; Db7 ; bII7
# the lowered second above the target, in other keys by arithmetic
D ; Em7 A7 D ; 2 ; tritone ; Eb7 ; bII7
F ; Gm7 C7 F ; 2 ; tritone ; Gb7 ; bII7
a ; Bm7b5 E7 Am ; 2 ; tritone ; Bb7 ; bII7
Eb ; Fm7 Bb7 Eb ; 2 ; tritone ; Fb7 ; bII7
# before the triad of V it is the German sixth as charts write it (Hutchinson, "Types of augmented sixth chords")
C ; C D7 G ; 2 ; tritone ; Ab7 ; Ger65
C ; C D7 G7 ; 2 ; tritone ; Ab7 ; bVI7
C ; C7 F7 C7 G7 C7 ; 1 ; tritone ; Gb7 ; bV7
C ; Dm7 Db7 C ; 2 ; tritone ; G7 ; V7
C ; Dm G C ; 2 ; tritone ; - ; -
# leading-tone chords of major and minor targets: Hutchinson, "Secondary diminished chords"; table by arithmetic
C ; Dm7 G7 C ; 2 ; diminished ; Bdim7, Bm7b5 ; viio7, vii/o7
a ; Am E7 Am ; 2 ; diminished ; G#dim7 ; viio7
C ; C A7 Dm ; 2 ; diminished ; C#dim7 ; viio7/ii
C ; C B7 Em ; 2 ; diminished ; D#dim7 ; viio7/iii
C ; C C7 F ; 2 ; diminished ; Edim7, Em7b5 ; viio7/IV, vii/o7/IV
C ; C E7 Am ; 2 ; diminished ; G#dim7 ; viio7/vi
C ; C D7 G ; 2 ; diminished ; F#dim7, F#m7b5 ; viio7/V, vii/o7/V
c ; Cm Eb7 Ab ; 2 ; diminished ; Gdim7, Gm7b5 ; viio7/VI, vii/o7/VI
C ; C D G ; 2 ; diminished ; F#dim, F#dim7, F#m7b5 ; viio/V, viio7/V, vii/o7/V
C ; C Bdim7 C ; 2 ; dominant ; G7 ; V7
C ; C F#m7b5 G ; 2 ; dominant ; D7 ; V7/V
c ; Dm7b5 G7 Cm ; 1 ; dominant ; - ; -
C ; Dm7 G7 C ; 2 ; suspended ; G7sus4 ; V7sus4
C ; F G C ; 2 ; suspended ; Gsus4 ; Vsus4
C ; C G7sus4 C ; 2 ; restored ; G7 ; V7
C ; C Gsus4 C ; 2 ; restored ; G ; V
C ; C Csus4 C ; 2 ; restored ; - ; -
# backdoor: common practice, no source
C ; Dm7 G7 C ; 2 ; backdoor ; Bb7 ; bVII7
C ; Dm7 G7 Am ; 2 ; backdoor ; - ; -
a ; Dm E7 Am ; 2 ; backdoor ; - ; -
# relative: the key's own chords a third away (common practice, no source)
C ; C F ; 1 ; relative ; Am, Em ; vi, iii
C ; C F ; 2 ; relative ; Dm, Am ; ii, vi
C ; Dm7 G7 ; 1 ; relative ; Bm7b5, Fmaj7 ; vii/o7, IVmaj7
a ; Am E ; 1 ; relative ; F, C ; VI, III
a ; Am E ; 2 ; relative ; - ; -
C ; C E7 Am ; 2 ; relative ; - ; -
# modal mixture: Hutchinson, "Mode mixture"; Open Music Theory, "Modal mixture"
C ; C F G ; 2 ; mixture ; Fm ; iv
C ; C Dm7 G ; 2 ; mixture ; Dm7b5 ; ii/o7
C ; C Am F ; 2 ; mixture ; Ab ; bVI
C ; C F G ; 1 ; mixture ; Cm ; i
C ; C Em F ; 2 ; mixture ; Eb ; bIII
C ; C Fm C ; 2 ; mixture ; F ; IV
C ; C Bm7b5 C ; 2 ; mixture ; Bb7, Bdim7 ; bVII7, viio7
a ; Dm E Am ; 3 ; mixture ; A ; I
a ; Am F E ; 2 ; mixture ; F#m ; vi
a ; Am Dm Am ; 2 ; mixture ; D ; IV
C ; C D7 G ; 2 ; mixture ; - ; -
c ; Fm G7b9 Cm ; 2 ; mixture ; - ; -
c ; Cm Fm Gm ; 3 ; mixture ; G ; V
# ii and V before a chord: common practice, no source
C ; C Am F ; 2 ; secondary ; Bm7b5 E7 ; ii/o7/vi V7/vi
C ; C F G ; 2 ; secondary ; Gm7 C7 ; ii7/IV V7/IV
C ; C G7 C ; 1 ; secondary ; Dm7 G7 ; ii7 V7
a ; F Am ; 2 ; secondary ; Bm7b5 E7 ; ii/o7 V7
C ; Dm7 G7 C ; 3 ; secondary ; - ; -
C ; C Bdim C ; 2 ; secondary ; - ; -
# the P, L and R of a chord that are not listed before, then seventh chords of the key that hold it
C ; C Dm G ; 2 ; common ; D, Bb, Dm7, Bm7b5 ; V/V, bVII, ii7, vii/o7
C ; C F ; 1 ; common ; Cmaj7, Am7 ; Imaj7, vi7
C ; C Dm7 G7 ; 2 ; way ; D7, Db/F, Ab7(It6), Ab7(Fr43), Ab7(Ger65) ; V7/V, N6, It6, Fr43, Ger65
a ; Am F7 E ; 2 ; way ; Bm7b5, Dm7, B7, Bb/D, F7(It6), F7(Fr43) ; ii/o7, iv7, V7/V, N6, It6, Fr43
C ; Cmaj7 F ; 1 ; common ; C, Em ; I, iii
C ; C Am7 F ; 2 ; common ; Am, C ; vi, I
c ; Cm G Cm ; 2 ; common ; Gm, Bm, Em, G7 ; v, vii, #iii, V7
C ; C D G ; 2 ; common ; Dm, F#m, Bm, D7 ; ii, #iv, vii, V7/V
C ; Dm G C ; 3 ; secondary ; - ; -
C ; C C7 F ; 3 ; secondary ; - ; -
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in BY_KIND.strip().splitlines() if line[0] != "#"]


@pytest.mark.parametrize("row", ROWS, ids=" ; ".join)
def test_a_kind_of_substitutes_offers_these_chords(row):
    home, text, number, kind, *expected = row
    found = offered(text, int(number), key(home), kind)

    assert [", ".join(symbols(found, key(home))) or "-", ", ".join(numerals(found)) or "-"] == expected


def test_every_kind_is_in_the_table():
    assert {row[3] for row in ROWS if row[4] != "-"} == set(KINDS)


def test_the_tritone_substitute_shares_its_guide_tones_by_sound_and_is_a_flat_chord():
    # guide tones F and B, the B written C flat: Hutchinson, "Guide tones" (C7 and Gb7 share Bb, and E as Fb)
    (found,) = offered("Dm7 G7 C", 2, key("C"), "tritone")

    tonic = key("C").tonic
    assert symbols([found], key("C")) == ["Db7"]
    assert [str(tonic.up(place)) for place in found.shared] == ["F"]
    assert [(str(tonic.up(own)), str(tonic.up(old))) for own, old in found.by_sound] == [("Cb", "B")]
    assert [str(tonic.up(place)) for place in found.new] == ["Db", "Ab"]


def test_c7_and_g_flat_7_share_e_and_b_flat():
    (found,) = offered("C7 F", 1, key("F"), "tritone")  # Hutchinson, "Guide tones"

    assert symbols([found], key("F")) == ["Gb7"]
    assert [found.shared, found.by_sound] == [(-1,), ((-7, 5),)]  # B flat, and F flat for E above the tonic F


THEIR_SYMBOLS = {"major triad": "major", "minor triad": "minor"}


@pytest.mark.parametrize("tonic", ["Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#"])
@pytest.mark.parametrize("kind", ["major", "minor"])
def test_the_triads_that_keep_two_tones_are_those_of_music21s_p_l_and_r(tonic, kind):
    # P, L and R move one voice by 1, 1 and 2 semitones (Cohn 1997, from memory; by exhaustive search)
    chord = RelativeChord(0, QUALITIES[kind], 0)
    tones = [str(tone).replace("b", "-") for tone in chord.in_key(Key(note(tonic), MAJOR)).tones]
    theirs = set()
    for operation in (neoRiemannian.P, neoRiemannian.L, neoRiemannian.R):
        result = operation(m21_chord.Chord(tones))
        theirs.add((result.root().pitchClass, THEIR_SYMBOLS[result.commonName]))

    ours = set()
    for home in (MAJOR, MINOR):
        for one in substitutes([chord], 0, home):
            (found,) = one.chords[:1]
            kept = len(one.shared) + len(one.by_sound)
            if (
                not one.comes_before
                and len(one.chords) == 1
                and found.quality in map(QUALITIES.get, ("major", "minor"))
            ):
                assert (kept, len(one.new)) == (2, 1)
                name = "major" if found.quality == QUALITIES["major"] else "minor"
                ours.add(((7 * found.root + note(tonic).semitones) % 12, name))
    assert theirs <= ours


FUNCTIONS = [
    ("C", "Dm7 G7 C", 2, "tritone", "It keeps the function: dominant. It slides down a half step."),
    ("C", "Dm7 G7 C", 2, "backdoor", "It keeps the function: dominant. It goes up a whole step to the tonic."),
    ("C", "C F C", 2, "mixture", "It keeps the function: predominant. It is borrowed from natural minor: darker."),
    ("C", "C Am F", 2, "mixture",
     "The function changes from tonic to predominant. It is borrowed from natural minor: darker."),
    ("C", "C Fm C", 2, "mixture", "It keeps the function: predominant. It belongs to the key."),
    ("a", "Dm E Am", 3, "mixture", "It keeps the function: tonic. It is borrowed from major: brighter."),
    ("a", "Am E7 Am", 2, "diminished", "It keeps the function: dominant. It comes from harmonic minor."),
    ("C", "C E7 Am", 2, "diminished", "It keeps the function: dominant. It is applied to vi."),
    ("C", "C Am F", 2, "secondary",
     "Together they take the first half of its time. vi stays and keeps its function: tonic."),
]  # fmt: skip


@pytest.mark.parametrize(("home", "text", "number", "kind", "sentence"), FUNCTIONS)
def test_a_sentence_tells_what_changes(home, text, number, kind, sentence):
    original = analyse(key_free(text, key(home)), key(home).mode)[number - 1]

    assert [what_changes(found, original, PLAIN) for found in offered(text, number, key(home), kind)] == [sentence]


def test_a_blues_tonic_is_not_told_to_be_kept_by_a_dominant_of_the_fourth_degree():
    found = offered("C7 F7 C7 G7 C7", 1, key("C"), "diminished")

    assert [one.function for one in found] == ["dominant", "dominant"]


@pytest.mark.parametrize(
    ("symbol", "easier"),
    [("Bbb7", "A7"), ("Ebb7", "D7"), ("Fb7", "E7"), ("Db7", None), ("C#7", None), ("F##dim7", "Gdim7")]
)  # fmt: skip
def test_a_chord_with_double_accidentals_has_an_easier_name(symbol, easier):
    name = easier_name(parse_chord(symbol))

    assert (name and write_chord(name, PLAIN)) == easier


def test_the_ii_and_v_of_major_and_minor_chords():
    # ii7 V7 of a major, iiø7 V7 of a minor chord (Hutchinson, "II-V-I"): Gm7 C7 F, Bm7b5 E7 Am
    home = key("C")
    pairs = [own_second_and_dominant(chord) for chord in key_free("F Am", home)]

    assert [tuple(chord.in_key(home) for chord in pair) for pair in pairs] == [chords("Gm7 C7"), chords("Bm7b5 E7")]


positions = st.tuples(lines_of_chords, st.integers(0, 5), keys)


def every_substitute(drawn):
    line, place, home = drawn
    place %= len(line)
    return line[place], substitutes(line, place, home.mode)


def sound(places):
    return {7 * place % 12 for place in places}


@given(positions)
def test_shared_and_new_tones_add_up_to_the_tones_of_the_substitute(drawn):
    original, found = every_substitute(drawn)
    for one in found:
        tones = {place for chord in one.chords for place in chord.places}
        by_name = [own for own, _ in one.by_sound]
        assert sorted([*one.shared, *by_name, *one.new]) == sorted(tones)
        assert set(one.shared) <= set(original.places)
        assert not sound(one.new) & sound(original.places)
        assert all(own != old and 7 * (own - old) % 12 == 0 and old in original.places for own, old in one.by_sound)


@given(positions)
def test_no_chord_is_offered_twice_and_the_chord_itself_never(drawn):
    original, found = every_substitute(drawn)
    names = [tuple((7 * chord.root % 12, chord.quality) for chord in one.chords) for one in found]

    assert len(set(names)) == len(names)
    assert ((7 * original.root % 12, original.quality),) not in names


@given(positions)
def test_substitutes_stand_in_root_position_in_the_order_of_the_kinds(drawn):
    _, found = every_substitute(drawn)
    order = [list(KINDS).index(one.kind.name) for one in found]

    assert all(chord.bass == chord.root for one in found for chord in one.chords if one.kind.name != "way")
    assert order == sorted(order)


@given(positions)
def test_the_numeral_is_the_one_in_the_chords_place(drawn):
    line, place, home = drawn
    place %= len(line)
    for one in substitutes(line, place, home.mode):
        rest = line[place:] if one.comes_before else line[place + 1 :]
        assert list(one.analyses) == list(
            analyse([*line[:place], *one.chords, *rest], home.mode)[place : place + len(one.chords)]
        )


@given(positions, relative_chords())
def test_the_bass_of_the_chord_plays_no_part_in_its_tones(drawn, other):
    line, place, home = drawn
    place %= len(line)
    over = [*line[:place], line[place]._replace(bass=other.bass), *line[place + 1 :]]
    tones = {one.chords: (one.shared, one.by_sound, one.new) for one in substitutes(line, place, home.mode)}

    for one in substitutes(over, place, home.mode):
        assert tones.get(one.chords, (one.shared, one.by_sound, one.new)) == (one.shared, one.by_sound, one.new)


@pytest.mark.parametrize("tonic", ["C", "Db", "D", "Eb", "E", "F", "F#", "G", "Ab", "A", "Bb", "B"])
@pytest.mark.parametrize("text", ["C Am Dm7 G7 C", "C E7 Am Fm C Bdim C", "C7 F7 C7 G7"])
def test_in_all_twelve_keys_the_same_substitutes_have_the_same_numerals(tonic, text):
    here, there = key("C"), Key(note(tonic), MAJOR)
    moved = " ".join(write_chord(chord.in_key(there), PLAIN) for chord in key_free(text, here))

    for number in range(1, len(text.split()) + 1):
        assert numerals(offered(moved, number, there)) == numerals(offered(text, number, here))
