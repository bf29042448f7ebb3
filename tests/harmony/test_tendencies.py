"""Tendency tones, and where they went in the next chord."""

from __future__ import annotations

import pytest
from harmony_examples import CHARTS, analysed, demo, key, lines_of_chords, modes, note
from hypothesis import given
from music21 import pitch, roman
from music21.figuredBass import resolution

from nearhand.harmony.analysis import analyse
from nearhand.harmony.tendencies import (
    CHORDAL_SEVENTH,
    ENDS,
    FALLS,
    KEY_LEADING_TONE,
    LEAVES,
    RAISED_FOURTH,
    RISES,
    STAYS,
    is_augmented_sixth,
    tendencies,
)
from nearhand.theory.chord import Chord, RelativeChord, relative_to
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.quality import QUALITIES


def found(symbols, home):
    """The tendencies of the first of some chord symbols, in their context."""
    first = analysed(symbols, key(home))[0]
    return tendencies(first.chord, first.after, first.mode, first.target)


def told(symbols, home):
    """The same in words, such as ``B rises C``."""
    tonic = key(home).tonic
    return [
        f"{tonic.up(each.place)} {each.how}" + ("" if each.went is None else f" {tonic.up(each.went)}")
        for each in found(symbols, home)
    ]


# Key; a chord and the next; its tendency tones. MT21C: R. Hutchinson, Music Theory for the 21st-Century Classroom.
# OMT: Open Music Theory, first edition.
TABLE = """
C ; G7 C ; B rises C, F falls E ; MT21C V7toIVoiceLeading
c ; G7 Cm ; B rises C, F falls Eb ; MT21C V7toIVoiceLeading
c ; G7 C ; B rises C, F falls E ; MT21C Picardy3rd
C ; G C ; B rises C ; MT21C V7toIVoiceLeading
C ; G7 Am ; B rises C, F falls E ; MT21C, deceptive: V to vi
c ; G Ab ; B rises C ; MT21C, V-VI in minor: the third of V rises
C ; Bdim C ; B rises C ; MT21C
c ; Bdim7 Cm ; B rises C, Ab falls G ; MT21C SpecialResolutionOfVII7
C ; Bdim7 C ; B rises C, Ab falls G ; MT21C ModeMixtureSection, the sevenths of minor in major
C ; Dm7 G7 ; C falls B ; MT21C: the chordal seventh falls by step
C ; C/G G ; C falls B, E falls D ; MT21C TheCadentialSixFourChord; OMT cadenceTypes
c ; Cm/G G7 ; C falls B, Eb falls D ; MT21C TheCadentialSixFourChord; OMT cadenceTypes
C ; D7 G ; F# rises G, C falls B ; MT21C SecondaryDominantsInMajorAndMinor
C ; E7/G# Am ; G# rises A, D falls C ; MT21C Tonicization
C ; C7/Bb F/A ; E rises F, Bb falls A ; MT21C, V42 of IV
C ; C#dim7 Dm ; C# rises D, Bb falls A ; MT21C SecondaryDiminishedChords
C ; E F ; G# rises A ; MT21C IrregularResoltionsOfSecondaryDominants: V/vi to IV
C ; Fm C ; Ab falls G ; MT21C VoiceLeadingBorrowedChords
C ; Fm G ; Ab falls G ; MT21C VoiceLeadingBorrowedChords
C ; Ddim/F C/E ; Ab falls G ; MT21C VoiceLeadingBorrowedChords
C ; Ab C ; Ab falls G ; MT21C VoiceLeadingBorrowedChords
c ; Fm/Ab G ; Ab falls G ; lament, OMT harmonicSyntax2
c ; Ab Fm ; ; VI of minor is no predominant (MT21C: tonic prolongation)
g ; Ab/C D7 ; Ab falls F#, Eb falls D ; OMT alteredSubdominants (Schubert)
g ; Ab/C Gm/D ; Ab falls G, Eb falls D ; MT21C: the lowered second falls to the nearest note
C ; Ab7 G ; Gb rises G, Ab falls G ; MT21C VoiceLeadingAugmentedSixthChords
C ; Ab7 G7 ; Gb rises G, Ab falls G ; MT21C: before V7 it may fall to the natural fourth as well; 5 comes first
C ; Ab7 C/G ; Gb rises G, Ab falls G ; MT21C: the German sixth goes to a six-four first
C ; Ab7 Db ; C rises Db, Gb falls F ; V7 of the lowered second degree: its seventh falls (WIR Tchaikovsky 173a)
C ; D7b5/Ab G ; F# rises G, Ab falls G, C falls B ; MT21C TypesOfAugmentedSixthChords: Ab C D F#
c ; Eb+ Cm ; B rises C ; common practice, no source
C ; Gsus4 G ; C falls B ; common practice, no source
c ; Gsus4 G ; C falls B ; common practice, no source
C ; Csus4 C ; F falls E ; common practice, no source
c ; Csus4 Cm ; F falls Eb ; common practice, no source
C ; G7sus4 C ; C stays C, F falls E ; common practice, no source
C ; Gsus2 G ; ; common practice, no source
C ; G/F C/E ; B rises C, F falls E ; common practice, no source: a seventh that lies in the bass alone
C ; E7 A7 ; G# falls G, D falls C# ; MT21C turnaround-progression, GuideTones: third and seventh move by step
C ; G7 C7 F ; B falls Bb, F falls E ; common practice, no source: a chain of dominant sevenths
C ; G7 G#dim7 ; B stays B, F stays F ; common practice, no source
C ; Em7 E ; D leaves ; common practice, no source
C ; G Em ; B stays B ; common practice, no source
C ; G F ; B rises C ; common practice, no source: the tonic is there, though the tonic chord is not
C ; G Dm ; B leaves ; common practice, no source: retrogression
C ; G7 Gm ; B falls Bb, F leaves ; common practice, no source
C ; G ; B ends ; nothing follows
C ; C F Am ; ; plain chords have no tendency tones
D lydian ; E D ; ; the fourth degree of Lydian is its own
C lydian ; F#dim G ; ; the fourth degree of Lydian is its own
C ; F#dim G ; F# rises G ; OMT appliedChords: vii° of V, also named #iv°
"""
ROWS = [tuple(field.strip() for field in line.split(";", 3)) for line in TABLE.strip().splitlines()]


@pytest.mark.parametrize(("home", "symbols", "expected", "source"), ROWS)
def test_tendency_tones_go_where_textbooks_send_them(home, symbols, expected, source):
    assert ", ".join(told(symbols, home)) == expected, source


# music21 (figuredBass.resolution) resolves whole voicings by rules of its own; our tones must go with its voices.
# Key; our two chords; the first chord's voices, high to low, and the function that resolves them.
RESOLVED = [
    ("C", "G7 C", "F4 D4 B3 G2", resolution.dominantSeventhToMajorTonic),
    ("c", "G7 Cm", "F4 D4 B3 G2", resolution.dominantSeventhToMinorTonic),
    ("C", "G7 Am", "F4 D4 B3 G2", resolution.dominantSeventhToMinorSubmediant),
    ("c", "G7 Ab", "F4 D4 B3 G2", resolution.dominantSeventhToMajorSubmediant),
    ("C", "Bdim7 C", "A-4 F4 D4 B2", resolution.diminishedSeventhToMajorTonic),
    ("c", "Bdim7 Cm", "A-4 F4 D4 B2", resolution.diminishedSeventhToMinorTonic),
    ("C", "Ab7 G", "F#4 E-4 C4 A-2", resolution.augmentedSixthToDominant),
    ("c", "Ab7 G", "F#4 E-4 C4 A-2", resolution.augmentedSixthToDominant),
    ("c", "D7b5/Ab G", "F#4 D4 C4 A-2", resolution.augmentedSixthToDominant),
    ("C", "Ab7 C/G", "F#4 E-4 C4 A-2", resolution.augmentedSixthToMajorTonic),
    ("c", "Ab7 Cm/G", "F#4 E-4 C4 A-2", resolution.augmentedSixthToMinorTonic),
]


@pytest.mark.parametrize(("home", "symbols", "voices", "resolve"), RESOLVED)
def test_tendency_tones_go_with_the_voices_that_music21_resolves(home, symbols, voices, resolve):
    before = tuple(pitch.Pitch(name) for name in voices.split())
    goals = {old.pitchClass: new.pitchClass for old, new in zip(before, resolve(before), strict=True)}
    tonic = key(home).tonic

    assert found(symbols, home)
    for each in found(symbols, home):
        assert each.is_resolved
        assert tonic.up(each.went).semitones == goals[tonic.up(each.place).semitones]


TONICS = ["Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#"]
KEYS = [key(name) for name in TONICS] + [key(name)._replace(mode=MINOR) for name in TONICS[4:]]


def in_music21(home, numeral):
    name = str(home.tonic).replace("b", "-")
    return roman.RomanNumeral(numeral, name.lower() if home.mode is MINOR else name)


def note_of(tone):
    return note(tone.name.replace("-", "b"))


@pytest.mark.parametrize("home", KEYS, ids=str)
def test_the_dominant_seventh_resolves_in_every_key(home):
    # MT21C V7toIVoiceLeading: 7 rises to 1, the chordal seventh falls by step. Spelled by music21.
    dominant, tonic = in_music21(home, "V7"), in_music21(home, "i" if home.mode is MINOR else "I")
    quality = QUALITIES["minor" if home.mode is MINOR else "major"]
    root = note_of(dominant.root())
    chord = relative_to(Chord(root, QUALITIES["dominant"], root), home)
    leading_tone, seventh = tendencies(chord, RelativeChord(0, quality, 0), home.mode)

    assert (leading_tone.kind, leading_tone.how) == (KEY_LEADING_TONE, RISES)
    assert home.tonic.up(leading_tone.place) == note_of(dominant.third)
    assert home.tonic.up(leading_tone.went) == note_of(tonic.root())
    assert (seventh.kind, seventh.how) == (CHORDAL_SEVENTH, FALLS)
    assert home.tonic.up(seventh.place) == note_of(dominant.seventh)
    assert home.tonic.up(seventh.went) == note_of(tonic.third)


# Tonic; the Neapolitan sixth from its bass up; the German sixth; the dominant; the German sixth as charts write it.
# Degrees: OMT alteredSubdominants, MT21C TypesOfAugmentedSixthChords; spelled by arithmetic and by music21.
SIXTHS = """
C ; F Ab Db ; Ab C Eb F# ; G B D ; Ab7
G ; C Eb Ab ; Eb G Bb C# ; D F# A ; Eb7
D ; G Bb Eb ; Bb D F G# ; A C# E ; Bb7
A ; D F Bb ; F A C D# ; E G# B ; F7
E ; A C F ; C E G A# ; B D# F# ; C7
F# ; B D G ; D F# A B# ; C# E# G# ; D7
Eb ; Ab Cb Fb ; Cb Eb Gb A ; Bb D F ; Cb7
Bb ; Eb Gb Cb ; Gb Bb Db E ; F A C ; Gb7
F ; Bb Db Gb ; Db F Ab B ; C E G ; Db7
Ab ; Db Fb Bbb ; Fb Ab Cb D ; Eb G Bb ; Fb7
"""
SIXTH_ROWS = [tuple(field.strip() for field in line.split(";")) for line in SIXTHS.strip().splitlines()]


@pytest.mark.parametrize("mode", [MAJOR, MINOR], ids=lambda mode: mode.name)
@pytest.mark.parametrize("row", SIXTH_ROWS, ids=lambda row: row[0])
def test_neapolitan_and_german_sixths_close_in_on_the_dominant(row, mode):
    tonic, neapolitan, german, dominant, chart = row
    home = key(tonic)._replace(mode=mode)
    (bass, sixth, second), (fifth, third, _) = map(note, neapolitan.split()), map(note, dominant.split())
    raised_fourth = note(german.split()[-1])
    name = tonic if mode is MAJOR else tonic.lower()
    falling = told(f"{second}/{bass} {fifth}", name)
    closing = found(f"{chart} {fifth}", name)

    assert falling == [f"{second} falls {third}", f"{sixth} falls {fifth}"]
    assert [each.how for each in closing] == [RISES, FALLS]
    assert [home.tonic.up(each.went) for each in closing] == [fifth, fifth]
    assert closing[0].kind == RAISED_FOURTH
    assert home.tonic.up(closing[0].place).semitones == raised_fourth.semitones
    assert home.tonic.up(closing[1].place) == sixth == note(german.split()[0])


@pytest.mark.parametrize(
    ("symbols", "is_sixth"),
    [
        ("Ab7(no5) G", True),  # Italian, French and German as charts write them (MT21C)
        ("Ab7b5 G", True),
        ("Ab7 G7", True),
        ("Ab7 C/G", True),
        ("D7b5/Ab F", True),  # spelled with F#, it needs no dominant behind it
        ("Ab7 Db", False),
        ("Ab7", False),
        ("Abmaj7 G", False),
        ("Ab7/C G", False),
        ("Ab7 G/B", False),
    ],
)
def test_an_augmented_sixth_stands_over_the_lowered_sixth_and_leads_to_the_dominant(symbols, is_sixth):
    first = analysed(symbols, key("C"))[0]

    assert is_augmented_sixth(first.chord, first.after) == is_sixth


def test_a_note_with_two_reasons_is_named_once_with_the_stronger_first():
    seventh = found("Bdim7 C", "C")[1]
    applied = found("D7 G", "C")[0]

    assert found("Ab7 G7", "C")[0].expected == (1, -1)
    assert (seventh.kinds, seventh.kind) == (("lowered sixth", "chordal seventh"), "lowered sixth")
    assert applied.kinds == ("applied leading tone", "raised fourth")


def test_another_spelling_in_the_next_chord_counts_by_its_sound():
    # common practice, no source: B# sounds as the C that is expected
    spelled, respelled = found("G7 C", "C")[0], found("G7 B#", "C")[0]

    assert (spelled.went, respelled.went) == (0, 12)
    assert respelled.how == RISES
    assert respelled.is_resolved


def test_the_seventh_of_the_tonic_is_no_leading_tone():
    # MT21C: a chordal seventh falls; it is the dominant that pulls to the tonic
    assert [(each.kind, each.how) for each in found("Cmaj7 Fmaj7", "C")] == [(CHORDAL_SEVENTH, FALLS)]


@given(lines_of_chords, modes)
def test_every_tendency_is_a_note_of_its_chord_and_goes_to_a_note_of_the_next(chords, mode):
    for each in analyse(chords, mode):
        tones = tendencies(each.chord, each.after, mode, each.target)
        assert len({tone.place for tone in tones}) == len(tones)
        for tone in tones:
            assert tone.place in (*each.chord.places, each.chord.bass)
            assert tone.kinds
            assert len(set(tone.expected)) == len(tone.expected) >= 1
            assert (tone.how == ENDS) == (each.after is None)
            assert (tone.went is None) == (tone.how in (LEAVES, ENDS))
            if tone.went is not None:
                assert tone.went in (*each.after.places, each.after.bass)
                semitones = 7 * (tone.went - tone.place) % 12
                assert semitones in {RISES: (1, 2), FALLS: (10, 11), STAYS: (0,)}[tone.how]


@given(lines_of_chords, modes)
def test_a_tone_that_can_go_where_it_should_does(chords, mode):
    for each in analyse(chords, mode):
        for tone in tendencies(each.chord, each.after, mode, each.target):
            reachable = {7 * place % 12 for place in (*each.after.places, each.after.bass)} if each.after else set()
            assert tone.is_resolved == any(7 * goal % 12 in reachable for goal in tone.expected)


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.stem)
def test_the_leading_tones_of_the_demo_charts_are_all_found(path):
    tune = demo(path)
    for each in analyse(tune.relative_chords, tune.key.mode):
        kinds = [tone.kind for tone in tendencies(each.chord, each.after, each.mode, each.target)]
        is_dominant = each.chord.root in (1, 5) and 5 in each.chord.places and each.target is None
        assert (KEY_LEADING_TONE in kinds) == is_dominant
