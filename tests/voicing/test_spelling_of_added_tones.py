"""How the tones of voicings are spelled, those that a family adds included, in all thirty keys.

Intervals above the root are measured by music21 on the written names: a ninth is a second, whatever its sign, a
thirteenth a sixth, an eleventh a fourth.
"""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from music21 import interval as m21_interval
from music21 import key as m21_key
from music21 import pitch as m21_pitch
from strategies import MAJOR_TONICS, MINOR_TONICS, key, signature_keys
from voicing_examples import relative_chords, tune

from nearhand.notation.chord_tails import read_tail
from nearhand.theory.chord import RelativeChord
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.layers import layer_at
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.voice import voice_progression, voiced_path
from nearhand.voicing.wishes import Wishes

# Tones above the root as music21 names intervals, octaves folded: MusicXML 4.0 kind-value; R. Hutchinson, *Music Theory
# for the 21st-Century Classroom*, "Chord symbol specifics" and "Altered dominant seventh chords".
KINDS = """
        ; P1 M3 P5
m       ; P1 m3 P5
dim     ; P1 m3 d5
aug     ; P1 M3 A5
sus2    ; P1 M2 P5
sus4    ; P1 P4 P5
5       ; P1 P5
6       ; P1 M3 P5 M6
m6      ; P1 m3 P5 M6
6/9     ; P1 M3 P5 M6 M2
m6/9    ; P1 m3 P5 M6 M2
7       ; P1 M3 P5 m7
maj7    ; P1 M3 P5 M7
m7      ; P1 m3 P5 m7
m7b5    ; P1 m3 d5 m7
dim7    ; P1 m3 d5 d7
m(maj7) ; P1 m3 P5 M7
maj7#5  ; P1 M3 A5 M7
7#5     ; P1 M3 A5 m7
7b5     ; P1 M3 d5 m7
7sus4   ; P1 P4 P5 m7
add9    ; P1 M3 P5 M2
m(add9) ; P1 m3 P5 M2
9       ; P1 M3 P5 m7 M2
maj9    ; P1 M3 P5 M7 M2
m9      ; P1 m3 P5 m7 M2
7b9     ; P1 M3 P5 m7 m2
7#9     ; P1 M3 P5 m7 A2
9sus4   ; P1 P4 P5 m7 M2
7#11    ; P1 M3 P5 m7 A4
maj7#11 ; P1 M3 P5 M7 A4
11      ; P1 M3 P5 m7 M2 P4
m11     ; P1 m3 P5 m7 M2 P4
13      ; P1 M3 P5 m7 M2 P4 M6
maj13   ; P1 M3 P5 M7 M2 P4 M6
m13     ; P1 m3 P5 m7 M2 P4 M6
13b9    ; P1 M3 P5 m7 m2 P4 M6
13#11   ; P1 M3 P5 m7 M2 A4 M6
13sus4  ; P1 P4 P5 m7 M2 M6
7b13    ; P1 M3 P5 m7 m6
7(b9,b13) ; P1 M3 P5 m7 m2 m6
7(#9,b13) ; P1 M3 P5 m7 A2 m6
9#5     ; P1 M3 A5 m7 M2
m9b5    ; P1 m3 d5 m7 M2
7(#5,#9) ; P1 M3 A5 m7 A2
7(b5,b9) ; P1 M3 d5 m7 m2
7alt    ; P1 M3 d5 A5 m7 m2 A2
"""
TONES = {
    tail.strip(): frozenset(tones.split())
    for tail, tones in (line.split(";") for line in KINDS.strip("\n").splitlines())
}
ALL_TONICS = (*MAJOR_TONICS, *MINOR_TONICS)
ROOTS = (0, 1, 2, -1, 3, 4, 5, -2, -3, -4, -5, 6)
"""Degrees in fifths above the tonic."""
SECONDS, SIXTHS = {"m2", "M2", "A2"}, {"m6", "M6", "A5"}


def written(name):
    """A name as music21 writes it."""
    return name[0] + name[1:].replace("b", "-")


@cache
def above(root, name):
    """The interval from a root up to a name, an octave folded into a unison: music21's measure of both spellings."""
    found = m21_interval.Interval(m21_pitch.Pitch(written(root) + "1"), m21_pitch.Pitch(written(name) + "4"))
    return found.simpleName.replace("P8", "P1")


@cache
def scale_of(tonic):
    """The names of a key's scale (natural minor), and its leading tone: music21."""
    leading_tone = m21_pitch.Pitch(written(tonic.capitalize())).transpose("M7").name
    scale = [pitch.name for pitch in m21_key.Key(written(tonic)).pitches]
    return [name.replace("-", "b") for name in scale], leading_tone.replace("-", "b")


@cache
def of_key(tonic, root, number, tones):
    """The ninth or thirteenth (``number`` 2 or 6) that may be added to a chord on a root, by its interval.

    The key's (natural minor), the natural one where that is neither natural nor lowered, over major chords that are no
    dominants, and over minor chords from outside the key: common practice, no source.
    """
    plain = "M2" if number == 2 else "M6"
    scale, leading_tone = scale_of(tonic)
    letters = "CDEFGAB"
    letter = letters[(letters.index(root[0]) + number - 1) % 7]
    found = above(root, next(name for name in scale if name[0] == letter))
    is_of_key = tones <= {above(root, name) for name in (*scale, leading_tone)}
    is_major = "M3" in tones and "m7" not in tones
    return plain if is_major or not ({"M3", "m7"} <= tones or is_of_key) or found[0] not in "Mm" else found


@cache
def added(style, tones, tonic, root):
    """The intervals above a root that a family may add to a chord: common practice, no source (M. Levine, from memory).

    Lowered ones and a raised ninth or eleventh stand over dominants alone. Nothing is added to a letter that the chord
    has, but a raised ninth beside a lowered one. A minor triad may have its seventh in a stack of fourths.
    """
    is_dominant = {"M3", "m7"} <= tones
    ninth, thirteenth = (of_key(tonic, root, number, tones) for number in (2, 6))
    found = set()
    if not tones & SECONDS and (ninth == "M2" or is_dominant) and style in SEEN:
        found.add(ninth)
    if is_dominant and not tones & SIXTHS and style in ("rootless", "quartal", "upper-structure"):
        found.add(thirteenth)
    if style == "quartal" and "M3" in tones and not is_dominant and not tones & SIXTHS:
        found.add("M6")
    if style == "quartal" and {"m3", "P5"} <= tones:
        found |= {"P4"} if "M7" in tones or tones & SIXTHS else {"P4", "m7"}
    if style == "upper-structure" and is_dominant:
        found |= set() if "P4" in tones and "M6" not in tones else {"A4"}
        found |= {"A2"} if "m2" in found | tones else set()
    return frozenset(found)


# The intervals above a root that a family does add, over all keys.
SEEN = {
    "rootless": {"M2", "m2", "M6", "m6"},
    "spread": {"M2", "m2"},
    "quartal": {"M2", "m2", "P4", "M6", "m6", "m7"},
    "upper-structure": {"M2", "m2", "A2", "A4", "M6", "m6"},
}


UPPER = "upper-structure"
"""Here the triad on top is written as a triad, and its tones are told by their sound; that has tests of its own."""


@cache
def by_number(root, name, style, expected):
    """The interval from a root up to a name; over a dominant with a triad on top, the expected one that sounds so."""
    interval = above(root, name)
    alike = [each for each in expected if semitones(each) == semitones(interval)] if style == UPPER else []
    return interval if interval in expected or not alike else alike[0]


@cache
def semitones(interval):
    return m21_interval.Interval(interval).semitones % 12


def one_chord(chord, home):
    return Progression(home, (Bar((Slot(chord, 4),)),))


def every_voicing(task):
    """Each voicing of the task's one chord, spelled."""
    layer, _ = layer_at(0, task)
    search = search_for(task)
    for candidate in layer:
        yield voiced_path(search, (candidate,)).voicings[0]


def chords_of_all_keys():
    """A tonic, its key, and a chord of every kind on two roots; in thirty keys every kind stands on every root."""
    for place, tonic in enumerate(ALL_TONICS):
        home = key(tonic)
        for turn, (tail, tones) in enumerate(TONES.items()):
            for lap in (0, 6):
                degree = ROOTS[(place + turn + lap) % len(ROOTS)]
                yield tonic, home, RelativeChord(degree, read_tail(tail), degree), tail, tones


@pytest.mark.parametrize("style", FAMILIES)
def test_every_tone_has_the_letter_that_its_interval_above_the_root_demands(style):
    wrong, seen, twice, basses = {}, set(), set(), set()
    for tonic, home, chord, tail, tones in chords_of_all_keys():
        root = str(chord.in_key(home).root)
        name = f"{root}{tail} in {tonic}"
        for voicing in every_voicing(Task(one_chord(chord, home), Wishes(style=style))):
            names = {pitch.pitch_class for pitch in voicing.pitches}
            allowed = added(voicing.style, tones, tonic, root)
            foreign = {by_number(root, str(each), voicing.style, tones | allowed) for each in names} - tones
            wrong |= {(tail, interval): name for interval in foreign - allowed}
            seen |= foreign & allowed
            is_twice = voicing.style != UPPER and len(names) > len({each.semitones for each in names})
            twice |= {name} if is_twice else set()
            is_over_bass = FAMILIES[voicing.style].bass != "none"
            basses |= {name} if is_over_bass and str(voicing.pitches[0].pitch_class) != root else set()

    assert wrong == {}, "tones that are neither the chord's nor rightly added"
    assert seen == SEEN.get(style, set())
    assert twice == set(), "one key of the keyboard is written in two ways"
    assert basses == set(), "the bass is not the chart's"


LETTERS_ABOVE = {"P1", "M2", "m2", "A2", "P4", "A4", "M6", "m6", "m7"}
"""All that any family adds, and the root, which a bass pattern may add."""


@settings(max_examples=400)
@given(
    relative_chords(),
    signature_keys,
    st.sampled_from(sorted(FAMILIES)),
    st.sampled_from(["bass", "root", "octave", "fifth", "tenth", "none"]),
)
def test_over_any_bass_every_tone_is_the_chord_s_the_bass_or_added_on_its_letter(chord, home, style, left):
    spelled = chord.in_key(home)
    own = {spelled.bass, *spelled.tones}
    sounds = {tone.semitones for tone in own}
    for voicing in every_voicing(Task(one_chord(chord, home), Wishes(style=style, left=left, span=16))):
        for pitch in voicing.left if voicing.style == UPPER else voicing.pitches:
            if pitch.pitch_class not in own:
                assert above(str(spelled.root), str(pitch.pitch_class)) in LETTERS_ABOVE
                assert pitch.pitch_class.semitones not in sounds
                assert voicing.style in SEEN or left == "root"


# By hand: the two rootless forms, and a triad over a dominant, where sharps or flats are many.
BY_HAND = [
    ("E7", "a", "rootless", "G# C D F"),
    ("E7", "a", "rootless", "D F G# C"),
    ("D#7", "g#", "rootless", "F## B C# E"),
    ("C#7", "F#", "rootless", "E# A# B D#"),
    ("G#7", "C#", "rootless", "F# A# B# E#"),
    ("Gb7", "Cb", "rootless", "Fb Ab Bb Eb"),
    ("Db7", "Cb", "rootless", "Cb Eb F Bb"),
    ("F7", "bb", "rootless", "Eb Gb A Db"),
    ("Bb7", "eb", "upper-structure", "Bb D Ab Db F Ab"),
    ("A#7", "d#", "upper-structure", "A# C## G# B D F#"),
    ("Gb7", "Cb", "upper-structure", "Gb Bb Fb Ab C Eb"),
    ("D#m7", "C#", "quartal", "D# G# C# F# A#"),
    ("Abm7", "Gb", "quartal", "Ab Db Gb Cb Eb"),
    ("Cb7", "Fb", "quartal", "Cb Bbb Eb Ab"),
    ("Abmaj9", "Ab", "spread", "Ab G C Eb Bb"),
    ("C#7", "f#", "spread", "C# B E# G# D"),
]


@pytest.mark.parametrize(("symbol", "home", "style", "names"), BY_HAND)
def test_added_tones_in_keys_of_many_accidentals(symbol, home, style, names):
    found = every_voicing(Task(tune(f"| {symbol} |", key(home)), Wishes(style=style)))

    assert names in {" ".join(str(pitch.pitch_class) for pitch in voicing.pitches) for voicing in found}


@pytest.mark.parametrize(("symbol", "bass"), [("Ddim7/B", "B"), ("C+/Ab", "Ab"), ("C7#9/Eb", "Eb"), ("Am7b5/D#", "D#")])
def test_a_bass_and_its_octave_are_written_alike(symbol, bass):
    # A written bass keeps its spelling; a foreign one may sound like a chord tone of another name.
    for voicing in every_voicing(Task(tune(f"| {symbol} |"), Wishes(style="guide-tones", left="octave"))):
        assert [str(pitch.pitch_class) for pitch in voicing.left] == [bass, bass]


@pytest.mark.parametrize("symbol", ["C(no1)/E", "C7(no1)/E", "Cm7(no1)/G"])
def test_the_left_hand_plays_the_root_of_a_chord_without_one_where_it_is_asked_to(symbol):
    for style in FAMILIES:
        (voicing,) = voice_progression(tune(f"| {symbol} |"), Wishes(style=style, left="root")).voicings
        has_root_below = FAMILIES[voicing.style].bass != "none" and voicing.style != "four-part"

        assert str(voicing.pitches[0].pitch_class) == "C" or not has_root_below
