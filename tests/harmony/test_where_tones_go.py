"""Tendency tones in words: where each goes in the next chord, in the shown key."""

from __future__ import annotations

import pytest
from harmony_examples import analysed, in_twelve_keys, key, key_free, lines_of_chords, modes, note
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.harmony.tendencies import ENDS, FALLS, LEAVES, RISES, STAYS
from nearhand.harmony.words import tendencies_of, where_tones_go
from nearhand.notation.conventions import DEFAULT, PLAIN
from nearhand.theory.key import Key
from nearhand.theory.pitch_class import PitchClass

# Key; a chord and what follows; the sentence. MT21C: R. Hutchinson, Music Theory for the 21st-Century Classroom
# (V7toIVoiceLeading, TheCadentialSixFourChord, VoiceLeadingAugmentedSixthChords, VoiceLeadingBorrowedChords,
# SecondaryDiminishedChords, Tonicization); OMT: Open Music Theory, alteredSubdominants. The rest is common practice, no
# source.
TABLE = """
C ; G7 C ; B, the leading tone, rises to C; F, the chordal seventh, falls to E. ; MT21C
Gb ; Db7 Gb ; F, the leading tone, rises to Gb; Cb, the chordal seventh, falls to Bb. ; MT21C
g# ; D#7 G#m ; F##, the leading tone, rises to G#; C#, the chordal seventh, falls to B. ; MT21C
C ; G7 Am ; B, the leading tone, rises to C; F, the chordal seventh, falls to E. ; MT21C, deceptive
c ; Bdim7 Cm ; B, the leading tone, rises to C; Ab, the lowered sixth, falls to G. ; MT21C
C ; C/G G ; C, the fourth of the cadential six-four, falls to B; \
E, the sixth of the cadential six-four, falls to D. ; MT21C
C ; E7/G# Am ; G#, the applied leading tone, rises to A; D, the chordal seventh, falls to C. ; MT21C
C ; C#dim7 Dm ; C#, the applied leading tone, rises to D; Bb, the chordal seventh, falls to A. ; MT21C
C ; F#m7b5 G ; F#, the applied leading tone, rises to G; E, the chordal seventh, falls to D. ; MT21C
C ; C/Bb F/A ; E, the applied leading tone, rises to F; Bb, the chordal seventh, falls to A. ; MT21C
C ; C/Bb A7 ; E, the applied leading tone, stays; Bb, the chordal seventh, falls to A. ; MT21C, irregular resolution
C ; E F ; G#, the applied leading tone, rises to A. ; MT21C, irregular resolution
C ; Fm C ; Ab, the lowered sixth, falls to G. ; MT21C
g ; Ab/C D7 ; Ab, the lowered second, falls to F#; Eb, the lowered sixth, falls to D. ; OMT
a ; F7 E ; D#, the raised fourth, rises to E; F, the lowered sixth, falls to E. ; MT21C
a ; F7 Am/E E ; D#, the raised fourth, rises to E; F, the lowered sixth, falls to E. ; MT21C
c ; Ab7(no5) G ; F#, the raised fourth, rises to G; Ab, the lowered sixth, falls to G. ; MT21C
C ; D7 G7 ; F#, the applied leading tone, falls to F; C, the chordal seventh, falls to B. ; a chain of sevenths
e ; C#dim7 B7 ; A#, the applied leading tone, rises to B; G, the chordal seventh, falls to F#. ; by another name
C ; Csus4 C ; F, the suspended fourth, falls to E. ;
C ; G7sus4 C ; C, the suspended fourth, stays; F, the chordal seventh, falls to E. ;
C ; G Dm ; B, the leading tone, would go to C but does not find it here. ; retrogression
C ; G7 Gm ; B, the leading tone, falls to Bb; F, the chordal seventh, would go to E but does not find it here. ;
C ; Bb7 C ; Ab, the chordal seventh, falls to G. ; backdoor
a ; Am/G F ; G, the chordal seventh, falls to F. ; it lies in the bass alone
C ; C F ;  ; plain chords want nothing
C ; G7 ;  ; nothing follows
"""
ROWS = [tuple(field.strip() for field in line.rsplit(" ;", 1)) for line in TABLE.strip().splitlines()]
CASES = [(*(field.strip() for field in row.split(" ; ", 2)), source) for row, source in ROWS]


@pytest.mark.parametrize(("home", "symbols", "expected", "source"), [case for case in CASES if len(case) == 4])
def test_a_sentence_tells_where_each_tendency_tone_goes(home, symbols, expected, source):
    assert where_tones_go(analysed(symbols, key(home))[0], key(home), PLAIN) == expected, source


@pytest.mark.parametrize(("home", "symbols"), [("C", "C F"), ("C", "G7"), ("C", "Am Dm"), ("a", "Am")])
def test_there_is_no_sentence_where_nothing_wants_to_move_or_nothing_follows(home, symbols):
    assert where_tones_go(analysed(symbols, key(home))[0], key(home)) == ""


def test_the_table_is_read_whole():
    assert (
        len([case for case in CASES if len(case) == 4]) == TABLE.strip().count("\n") - 1
    )  # but for the two empty rows


def test_signs_are_written_by_default():
    assert where_tones_go(analysed("Db7 Gb", key("Gb"))[0], key("Gb"), DEFAULT).count("♭") == 3


@pytest.mark.parametrize(
    ("home", "symbols", "hows"),
    [
        ("C", "G7 C", [RISES, FALLS]),
        ("C", "G Em", [STAYS]),
        ("C", "G Dm", [LEAVES]),
        ("C", "G7", [ENDS, ENDS]),
        ("e", "C#dim7 B7", [RISES, FALLS]),
        ("a", "F7 E", [RISES, FALLS]),
    ],
)
def test_tones_rise_fall_stay_leave_or_end_alike_in_every_key(home, symbols, hows):
    for new, chords in in_twelve_keys(symbols, key(home)):
        assert [tone.how for tone in tendencies_of(analyse(chords, new.mode)[0])] == hows


def test_the_tones_are_those_of_the_chord_as_it_is_named():
    # MT21C ExamplesWithAugmentedSixthChords: the chart writes F7, the notes are F A C D#
    (raised, lowered) = tendencies_of(analysed("F7 E", key("a"))[0])

    assert [key("a").tonic.up(tone.place) for tone in (raised, lowered)] == [note("D#"), note("F")]


@given(lines_of_chords, modes, st.integers(-6, 6).map(PitchClass))
def test_every_tendency_tone_is_in_the_sentence_once_and_in_order(chords, mode, tonic):
    home = Key(tonic, mode)
    for each in analyse(chords, mode):
        tones = tendencies_of(each)
        sentence = where_tones_go(each, home, PLAIN)
        parts = sentence.rstrip(".").split("; ") if sentence else []

        assert len(parts) == (0 if each.after is None else len(tones))
        for part, tone in zip(parts, tones, strict=False):
            assert part.startswith(f"{home.tonic.up(tone.place)}, the {tone.kind}, ")
            assert tone.place in (*each.reading.places, each.reading.bass)
            if tone.how in (RISES, FALLS):
                assert part.endswith(f"{tone.how} to {home.tonic.up(tone.went)}")
            elif tone.how == STAYS:
                assert part.endswith("stays")
            else:
                assert "does not find it here" in part


def test_a_tone_that_goes_goes_to_a_note_of_the_next_chord():
    # the note is spelled as the next chord has it
    (leading_tone,) = tendencies_of(analysed("G B#", key("C"))[0])

    assert leading_tone.went in key_free("B#", key("C"))[0].places
