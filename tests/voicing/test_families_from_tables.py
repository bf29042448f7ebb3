"""The families of voicings against tables: drop voicings, shells, guide tones, rootless forms, fourths, triads.

MT21C is R. Hutchinson, *Music Theory for the 21st-Century Classroom*, with the section; OMT is Open Music Theory, first
edition. Levine is M. Levine, *The Jazz Theory Book*, 1995, from memory. Rows of names run from low to high.
"""

from __future__ import annotations

from functools import cache
from itertools import pairwise, product

import pytest
from music21 import chord as m21_chord
from music21 import harmony as m21_harmony
from music21 import interval as m21_interval
from music21 import key as m21_key
from music21 import pitch as m21_pitch
from strategies import MAJOR_TONICS, MINOR_TONICS, key
from voicing_examples import C_MAJOR, midi, tune

from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.mode import MODES
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.layers import layer_at
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.voice import voice_progression, voiced_path
from nearhand.voicing.wishes import Wishes

WIDE = {"low": 48, "high": 96}
"""A register that holds every row of a table in every key: C3 to C7."""
TWELVE = ("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G")


def voicings(progression, place=0, **wishes):
    """Every voicing of one chord of a progression, spelled, in the family that is wished for and no other."""
    task = Task(progression, Wishes(**wishes))
    layer, style = layer_at(place, task)
    assert style == wishes["style"], f"no {wishes['style']} voicing"
    alone = task._replace(progression=progression._replace(bars=tune_bars(progression, place)))
    search = search_for(alone)
    return [voiced_path(search, (candidate,)).voicings[0] for candidate in layer]


def tune_bars(progression, place):
    """One bar that holds the chord at a place alone."""
    slots = [(bar, slot) for bar in progression.bars for slot in bar.slots if slot.chord is not None]
    bar, slot = slots[place]
    return (bar._replace(slots=(slot,)),)


def of_chord(symbol, style, home=C_MAJOR, **wishes):
    return voicings(tune(f"| {symbol} |", home), style=style, **wishes)


def names(pitches):
    return " ".join(str(pitch.pitch_class) for pitch in pitches)


def name_rows(found):
    """All notes of each voicing by name, low to high."""
    return {names(voicing.pitches) for voicing in found}


def in_key(names_in_c, tonic):
    """Names in C moved to another major or minor tonic by music21; plain names, octaves left as they are."""
    interval = m21_interval.Interval(m21_pitch.Pitch("C4"), m21_pitch.Pitch(tonic.capitalize().replace("b", "-") + "4"))
    moved = [m21_pitch.Pitch(name.replace("b", "-")).transpose(interval) for name in names_in_c.split()]
    return " ".join(pitch.name.replace("-", "b") for pitch in moved)


# Close, drop 2, drop 3, drop 2 and 4 of C E G B: the 2nd, 3rd, or 2nd and 4th note from the top an octave lower.
# Common practice (Levine); the rows are computed.
DROPS = [
    ("C4 E4 G4 B4", "G3 C4 E4 B4", "E3 C4 G4 B4", "C3 G3 E4 B4"),
    ("E4 G4 B4 C5", "B3 E4 G4 C5", "G3 E4 B4 C5", "E3 B3 G4 C5"),
    ("G4 B4 C5 E5", "C4 G4 B4 E5", "B3 G4 C5 E5", "G3 C4 B4 E5"),
    ("B4 C5 E5 G5", "E4 B4 C5 G5", "C4 B4 E5 G5", "B3 E4 C5 G5"),
]
STYLES_OF_DROPS = ("close", "drop2", "drop3", "drop2and4")
LOWERED = ((), (2,), (3,), (2, 4))


def without_octaves(row):
    return " ".join(name.rstrip("0123456789") for name in row.split())


@pytest.mark.parametrize("row", DROPS, ids=lambda row: row[0])
@pytest.mark.parametrize("column", range(4), ids=STYLES_OF_DROPS)
def test_the_rows_of_the_drop_table_are_voicings_at_their_very_pitches(row, column):
    notes = tuple(map(midi, row[column].split()))
    for style in (STYLES_OF_DROPS[column], "any"):
        wishes = Wishes(style=style, left="none", high=midi("G5"), pins=((0, notes),))
        (voicing,) = voice_progression(tune("| Cmaj7 |"), wishes).voicings

        assert (voicing.style, " ".join(map(str, voicing.pitches))) == (style, row[column])


@pytest.mark.parametrize("tonic", MAJOR_TONICS)
@pytest.mark.parametrize("column", range(4), ids=STYLES_OF_DROPS)
def test_there_are_no_other_drop_voicings_in_any_key(tonic, column):
    expected = {in_key(without_octaves(row[column]), tonic) for row in DROPS}
    found = voicings(tune("| Imaj7 |", key(tonic)), style=STYLES_OF_DROPS[column], left="none", **WIDE)

    assert name_rows(found) == expected
    assert all(0 < high.midi - low.midi < 12 for voicing in found for low, high in pairwise(voicing.pitches))


# Tails as we read them, and the kinds as music21 10.5.1 names them.
FOUR_NOTE_KINDS = {
    "7": "dominant-seventh", "m7": "minor-seventh", "m7b5": "half-diminished-seventh", "dim7": "diminished-seventh",
    "m(maj7)": "minor-major-seventh", "7#5": "augmented-seventh", "6": "major-sixth", "m6": "minor-sixth",
}  # fmt: skip


@pytest.mark.parametrize("tail", FOUR_NOTE_KINDS)
def test_drop_voicings_of_other_chords_are_those_that_music21_makes_by_lowering_notes(tail):
    for tonic in TWELVE:
        symbol = m21_harmony.ChordSymbol(root=tonic.replace("b", "-"), kind=FOUR_NOTE_KINDS[tail])
        close = sorted((pitch.name, (pitch.midi - symbol.root().midi) % 12) for pitch in symbol.pitches)
        close.sort(key=lambda pair: pair[1])
        for style, lowered in zip(STYLES_OF_DROPS, LOWERED, strict=True):
            expected = set()
            for turn in range(4):
                stack = [(name, height + 12 * (place < turn)) for place, (name, height) in enumerate(close)]
                stack.sort(key=lambda pair: pair[1])
                placed = [(height - 12 * (4 - place in lowered), name) for place, (name, height) in enumerate(stack)]
                expected.add(" ".join(name for _, name in sorted(placed)).replace("-", "b"))
            found = of_chord(f"{tonic}{tail}", style, key(tonic), left="none", **WIDE)

            assert name_rows(found) == expected


# OMT, "Triads": in open position there are gaps that could hold another chord tone, in close position there are none.
OPEN = {"C": ("E C G", "G E C", "C G E"), "Dm": ("F D A", "A F D", "D A F"), "Bdim": ("D B F", "F D B", "B F D")}


@pytest.mark.parametrize("symbol", OPEN)
def test_open_position_leaves_gaps_that_could_hold_another_chord_tone(symbol):
    found = of_chord(symbol, "open", left="none")

    assert name_rows(found) == set(OPEN[symbol])
    for voicing in found:
        sounding = {pitch.midi % 12 for pitch in voicing.pitches}
        for low, high in pairwise(voicing.pitches):
            assert any(note % 12 in sounding for note in range(low.midi + 1, high.midi))


@pytest.mark.parametrize("symbol", [*OPEN, "Cmaj7", "Dm7", "G7"])
def test_close_position_leaves_none_and_lies_within_an_octave(symbol):
    for voicing in of_chord(symbol, "close"):
        sounding = {pitch.midi % 12 for pitch in voicing.right}
        assert voicing.right[-1].midi - voicing.right[0].midi < 12
        for low, high in pairwise(voicing.right):
            assert not any(note % 12 in sounding for note in range(low.midi + 1, high.midi))


# Root, third and seventh, in that order or with the third on top: common practice, no source. A suspended fourth stands
# for the third, a sixth for the seventh (MT21C, "Jazz voicings").
SHELLS = {
    "Dm7": ("D F C", "D C F"),
    "G7": ("G B F", "G F B"),
    "Cmaj7": ("C E B", "C B E"),
    "Em7b5": ("E G D", "E D G"),
    "C#dim7": ("C# E Bb", "C# Bb E"),
    "Cm(maj7)": ("C Eb B", "C B Eb"),
    "F#7": ("F# A# E", "F# E A#"),
    "Ebm7": ("Eb Gb Db", "Eb Db Gb"),
    "C9": ("C E Bb", "C Bb E"),
    "C13": ("C E Bb", "C Bb E"),
    "C7b9": ("C E Bb", "C Bb E"),
    "C6": ("C E A", "C A E"),
    "Cm6": ("C Eb A", "C A Eb"),
    "G7sus4": ("G C F", "G F C"),
    "G9sus4": ("G C F", "G F C"),
}


@pytest.mark.parametrize("symbol", SHELLS)
def test_a_shell_is_root_third_and_seventh_in_one_of_two_orders(symbol):
    found = of_chord(symbol, "shell", key("C"))

    assert name_rows(found) == set(SHELLS[symbol])
    assert all(voicing.left[0].pitch_class == next(tune(symbol).chords()).root for voicing in found)


# Over another bass the root sounds above it, or Dm7/F would be F major: common practice, no source.
OVER_ANOTHER_BASS = {"Dm7/F": "F D C", "G7/B": "B G F", "Cmaj7/E": "E C B", "Am/C": "C A", "C7/Bb": "Bb E C"}


@pytest.mark.parametrize("style", ["shell", "two-hand", "spread"])
@pytest.mark.parametrize("symbol", OVER_ANOTHER_BASS)
def test_over_another_bass_the_root_sounds(symbol, style):
    root, rest = symbol.split("/")[0][0], set(OVER_ANOTHER_BASS[symbol].split())
    for voicing in of_chord(symbol, style):
        assert names(voicing.left).split()[0] == OVER_ANOTHER_BASS[symbol].split()[0]
        assert rest | {root} <= set(names(voicing.pitches).split())


# Third and seventh of Dm7, G7 and Cmaj7: MT21C, "Guide tones".
GUIDE_TONES = ("F C", "B F", "E B")


@pytest.mark.parametrize("tonic", TWELVE)
def test_guide_tones_resolve_by_step_or_stay_in_ii_v_i(tonic):
    voiced = voice_progression(tune("| ii7 | V7 | Imaj7 |", key(tonic)), "guide-tones")
    uppers = [{str(pitch.pitch_class): pitch.midi for pitch in voicing.right} for voicing in voiced.voicings]
    thirds, sevenths = zip(*(in_key(row, tonic).split() for row in GUIDE_TONES), strict=True)

    assert [set(upper) for upper in uppers] == [set(in_key(row, tonic).split()) for row in GUIDE_TONES]
    for place in range(2):
        old, new = uppers[place], uppers[place + 1]

        assert old[thirds[place]] == new[sevenths[place + 1]]  # the third stays and is a seventh
        assert 1 <= old[sevenths[place]] - new[thirds[place + 1]] <= 2  # the seventh falls by step to the third


CIRCLES = {
    "major": "| Imaj7 | IVmaj7 | viiø7 | iii7 | vi7 | ii7 | V7 | Imaj7 |",
    "minor": "| i7 | iv7 | VII7 | IIImaj7 | VImaj7 | iiø7 | V7 | i7 |",
    "dominants": "| III7 | VI7 | II7 | V7 | I7 | IV7 | bVII7 |",
}


@pytest.mark.parametrize("tonic", TWELVE)
@pytest.mark.parametrize("text", CIRCLES.values(), ids=CIRCLES)
def test_round_the_circle_of_fifths_every_guide_tone_moves_by_step_or_stays(tonic, text):
    # MT21C, "Guide tones".
    home = key(tonic.lower() if text == CIRCLES["minor"] else tonic)
    for before, after in pairwise(voice_progression(tune(text, home), "guide-tones").voicings):
        for old, new in zip(before.right, after.right, strict=True):
            assert abs(old.midi - new.midi) <= 2
            assert (new.pitch_class.step - old.pitch_class.step) % 7 in (0, 1, 6)


def test_a_dominant_and_the_one_a_tritone_away_share_their_guide_tones():
    # MT21C, "Guide tones": of Db7 and G7, F and Cb or B.
    dominant, partner = (of_chord(symbol, "guide-tones", left="none") for symbol in ("G7", "Db7"))

    assert name_rows(dominant) == {"F B", "B F"}
    assert name_rows(partner) == {"F Cb", "Cb F"}
    assert [[note.midi for note in each.right] for each in dominant] == [
        [note.midi for note in each.right] for each in partner
    ]


@pytest.mark.parametrize(
    ("symbol", "rows"), [("C6", {"E A", "A E"}), ("Cm6", {"Eb A", "A Eb"}), ("C9sus4", {"F Bb", "Bb F"})]
)
def test_a_sixth_stands_for_the_seventh_and_a_fourth_for_the_third(symbol, rows):
    # MT21C, "Jazz voicings".
    assert name_rows(of_chord(symbol, "guide-tones", left="none")) == rows


# ii7, V7 and Imaj7 for the left hand alone, starting from the third (3 5 7 9, the dominant 7 9 3 13), then from the
# seventh (7 9 3 5, the dominant 3 13 7 9). The row in C: common practice, no source (Levine); other keys spelled by
# hand, and held against music21 below.
ROOTLESS = """
C  ; F A C E     ; F A B E     ; E G B D     ; C E F A     ; B E F A     ; B D E G
F  ; Bb D F A    ; Bb D E A    ; A C E G     ; F A Bb D    ; E A Bb D    ; E G A C
Bb ; Eb G Bb D   ; Eb G A D    ; D F A C     ; Bb D Eb G   ; A D Eb G    ; A C D F
Eb ; Ab C Eb G   ; Ab C D G    ; G Bb D F    ; Eb G Ab C   ; D G Ab C    ; D F G Bb
Ab ; Db F Ab C   ; Db F G C    ; C Eb G Bb   ; Ab C Db F   ; G C Db F    ; G Bb C Eb
Db ; Gb Bb Db F  ; Gb Bb C F   ; F Ab C Eb   ; Db F Gb Bb  ; C F Gb Bb   ; C Eb F Ab
Gb ; Cb Eb Gb Bb ; Cb Eb F Bb  ; Bb Db F Ab  ; Gb Bb Cb Eb ; F Bb Cb Eb  ; F Ab Bb Db
F# ; B D# F# A#  ; B D# E# A#  ; A# C# E# G# ; F# A# B D#  ; E# A# B D#  ; E# G# A# C#
B  ; E G# B D#   ; E G# A# D#  ; D# F# A# C# ; B D# E G#   ; A# D# E G#  ; A# C# D# F#
E  ; A C# E G#   ; A C# D# G#  ; G# B D# F#  ; E G# A C#   ; D# G# A C#  ; D# F# G# B
A  ; D F# A C#   ; D F# G# C#  ; C# E G# B   ; A C# D F#   ; G# C# D F#  ; G# B C# E
D  ; G B D F#    ; G B C# F#   ; F# A C# E   ; D F# G B    ; C# F# G B   ; C# E F# A
G  ; C E G B     ; C E F# B    ; B D F# A    ; G B C E     ; F# B C E    ; F# A B D
"""
# iiø7 (the root in place of a ninth that would be flat), V7 with flat ninth and flat thirteenth, and i7: common
# practice, no source.
ROOTLESS_IN_MINOR = """
c  ; F Ab C D    ; F Ab B Eb   ; Eb G Bb D   ; C D F Ab    ; B Eb F Ab   ; Bb D Eb G
a  ; D F A B     ; D F G# C    ; C E G B     ; A B D F     ; G# C D F    ; G B C E
f# ; B D F# G#   ; B D E# A    ; A C# E G#   ; F# G# B D   ; E# A B D    ; E G# A C#
g# ; C# E G# A#  ; C# E F## B  ; B D# F# A#  ; G# A# C# E  ; F## B C# E  ; F# A# B D#
eb ; Ab Cb Eb F  ; Ab Cb D Gb  ; Gb Bb Db F  ; Eb F Ab Cb  ; D Gb Ab Cb  ; Db F Gb Bb
"""


def rows_of(table):
    for line in table.strip().splitlines():
        tonic, *rows = (cell.strip() for cell in line.split(";"))
        yield tonic, tuple(rows[:3]), tuple(rows[3:])


ALL_ROOTLESS = [*rows_of(ROOTLESS), *rows_of(ROOTLESS_IN_MINOR)]
TONICS = [tonic for tonic, _, _ in ALL_ROOTLESS]


def turnaround(tonic):
    return tune("| iiø7 | V7 | i7 |" if tonic[0].islower() else "| ii7 | V7 | Imaj7 |", key(tonic))


@pytest.mark.parametrize("table", [ROOTLESS, ROOTLESS_IN_MINOR], ids=["major", "minor"])
def test_the_rows_of_rootless_forms_are_those_in_c_moved_by_music21(table):
    (_, *in_c), *others = rows_of(table)
    for tonic, *forms in others:
        assert forms == [tuple(in_key(row, tonic) for row in form) for form in in_c]


@pytest.mark.parametrize(("tonic", "from_third", "from_seventh"), ALL_ROOTLESS, ids=TONICS)
def test_a_rootless_chord_lies_in_the_left_hand_in_two_forms(tonic, from_third, from_seventh):
    for place in range(3):
        found = voicings(turnaround(tonic), place, style="rootless")

        assert name_rows(found) == {from_third[place], from_seventh[place]}
        assert all(not voicing.right and not voicing.candidate.bass for voicing in found)


@pytest.mark.parametrize(("tonic", "from_third", "from_seventh"), ALL_ROOTLESS, ids=TONICS)
def test_in_ii_v_i_the_two_forms_alternate(tonic, from_third, from_seventh):
    # From the third, from the seventh, from the third, or the other way: common practice, no source (Levine).
    voiced = voice_progression(turnaround(tonic), "rootless")

    assert tuple(names(voicing.left) for voicing in voiced.voicings) in (from_third, from_seventh)


# A sixth stands for the seventh, a suspended fourth for the third (MT21C, "Jazz voicings"); 13 for 5: as above.
OTHER_ROOTLESS = [
    ("C6", "C", "E G A D", "A D E G"),
    ("Cm6", "g", "Eb G A D", "A D Eb G"),
    ("G9sus4", "C", "C D F A", "F A C D"),
    ("G7b9", "C", "B E F Ab", "F Ab B E"),
    ("A7", "C", "C# F G B", "G B C# F"),
    ("Dbmaj9", "Db", "F Ab C Eb", "C Eb F Ab"),
    ("Fm9", "Eb", "Ab C Eb G", "Eb G Ab C"),
]


@pytest.mark.parametrize(("symbol", "home", "from_third", "from_seventh"), OTHER_ROOTLESS)
def test_so_do_other_chords(symbol, home, from_third, from_seventh):
    assert name_rows(of_chord(symbol, "rootless", key(home))) == {from_third, from_seventh}


# A dominant that falls a fifth has ninth and thirteenth of the chord it leads to, flat in minor, natural in major; the
# dominant a tritone away from it has natural ones. Common practice, no source.
FOLLOWED = [
    ("| A7 | Dm7 |", "C", "C# F G Bb", "G Bb C# F"),
    ("| A7 | D7 |", "C", "C# F# G B", "G B C# F#"),
    ("| G7 | Cm |", "C", "B Eb F Ab", "F Ab B Eb"),
    ("| G7 | C |", "c", "B E F A", "F A B E"),
    ("| D7 | Gmaj7 |", "Eb", "F# B C E", "C E F# B"),
    ("| B7 | Em7 |", "C", "D# G A C", "A C D# G"),
    ("| Db7 | Cmaj7 |", "C", "F Bb Cb Eb", "Cb Eb F Bb"),
]


@pytest.mark.parametrize(("text", "home", "from_third", "from_seventh"), FOLLOWED)
def test_what_is_added_over_a_dominant_is_of_the_chord_it_leads_to(text, home, from_third, from_seventh):
    assert name_rows(voicings(tune(text, key(home)), 0, style="rootless")) == {from_third, from_seventh}


ALTERED_FIFTHS = {
    "7#5": "G#", "7b5": "Gb", "9#5": "G#", "7(#5,#9)": "G#", "7(b5,b9)": "Gb", "m7b5": "Gb", "maj7#5": "G#",
}  # fmt: skip


@pytest.mark.parametrize("style", ["rootless", "two-hand", "spread"])
@pytest.mark.parametrize("tail", ALTERED_FIFTHS)
def test_an_altered_fifth_sounds_wherever_a_fifth_has_its_place(tail, style):
    # Common practice, no source: what is altered tells the chord, and no plain thirteenth takes its place.
    for home in ("F", "f", "C"):
        for row in name_rows(of_chord(f"C{tail}", style, key(home))):
            assert ALTERED_FIFTHS[tail] in row.split(), f"C{tail} in {home}: {row}"


@pytest.mark.parametrize("style", [style for style in FAMILIES if style != "four-part"])
@pytest.mark.parametrize("symbol", ["C11", "C13", "Cmaj13", "C13b9", "C11b9", "C13(no9)", "Cmaj13(no9)"])
def test_no_plain_eleventh_rubs_against_a_major_third(symbol, style):
    # MT21C, "Chord symbol specifics": in use a thirteenth leaves out the eleventh, which clashes with the third.
    layer, taken = layer_at(0, Task(tune(f"| {symbol} |", key("F")), Wishes(style=style)))
    for candidate in layer:
        sounding = {note % 12 for note in candidate.notes}

        assert not {midi("E4") % 12, midi("F4") % 12} <= sounding, f"{taken}: {candidate.notes}"


@pytest.mark.parametrize("style", ["shell", "guide-tones", "rootless", "two-hand", "spread"])
def test_an_eleventh_chord_is_played_as_a_suspended_one(style):
    # Common practice, no source: the plain eleventh takes the third's place.
    for row in name_rows(of_chord("C11", style, key("F"))):
        assert "F" in row.split() and "E" not in row.split(), row


# Five parts, root, seventh and third below, fifth and ninth above: MT21C, "Jazz voicings", first kind. Sixth and fourth
# stand in, and the fifth is dropped to keep five parts (same section).
SPREAD = [
    ("Cmaj9", "C B E G D", "C B E D G"),
    ("Dm9", "D C F A E", "D C F E A"),
    ("G9", "G F B D A", "G F B A D"),
    ("G7b9", "G F B D Ab", "G F B Ab D"),
    ("C6/9", "C A E G D", "C A E D G"),
    ("G9sus4", "G F C D A", "G F C A D"),
    ("G13", "G F B E A", "G F B A E"),
]


@pytest.mark.parametrize(("symbol", "fifth_below", "ninth_below"), SPREAD)
def test_a_spread_chord_has_its_fifth_and_ninth_over_root_seventh_and_third(symbol, fifth_below, ninth_below):
    found = of_chord(symbol, "spread", span=18)

    assert name_rows(found) >= {fifth_below, ninth_below}
    assert {len(voicing.pitches) for voicing in found} == {5}
    for voicing in found:
        assert set(names(voicing.pitches).split()) == set(fifth_below.split())
        assert names(voicing.pitches[:1]) == fifth_below.split()[0]


@pytest.mark.parametrize(("symbol", "fifth_below", "ninth_below"), SPREAD)
def test_root_third_and_seventh_are_the_lowest_of_a_spread_chord(symbol, fifth_below, ninth_below):
    # MT21C, "Jazz voicings", first kind.
    for row in name_rows(of_chord(symbol, "spread", span=18)):
        assert set(row.split()[:3]) == set(fifth_below.split()[:3]), row


# The bass in the left hand, four notes close in the right, third or seventh lowest: MT21C, "Jazz voicings", second
# kind.
FIVE_PARTS = [
    ("Cmaj9", "C", "E G B D", "B D E G"),
    ("Dm9", "D", "F A C E", "C E F A"),
    ("G13", "G", "B E F A", "F A B E"),
    ("C6/9", "C", "E G A D", "A D E G"),
    ("G9sus4", "G", "C D F A", "F A C D"),
]


@pytest.mark.parametrize(("symbol", "bass", "from_third", "from_seventh"), FIVE_PARTS)
def test_two_hands_can_take_a_chord_in_close_five_parts(symbol, bass, from_third, from_seventh):
    found = of_chord(symbol, "two-hand")
    rows = {names(each.right) for each in found if names(each.left) == bass and width(each.right) < 12}

    assert rows >= {from_third, from_seventh}


@pytest.mark.parametrize(("symbol", "bass", "from_third", "from_seventh"), FIVE_PARTS)
def test_in_two_hands_the_left_has_the_root_or_a_shell_and_the_right_has_the_rest(
    symbol, bass, from_third, from_seventh
):
    # Common practice, no source.
    third, seventh = from_third.split()[0], from_seventh.split()[0]
    found = of_chord(symbol, "two-hand")

    assert {names(each.left) for each in found} <= {bass, f"{bass} {third}", f"{bass} {seventh}"}
    assert {len(each.left) for each in found} == {1, 2}
    for each in found:
        assert sorted(names(each.pitches).split()) == sorted([bass, *from_third.split()])


def width(pitches):
    return pitches[-1].midi - pitches[0].midi


@pytest.mark.parametrize("tonic", TWELVE)
def test_over_a_minor_seventh_fourths_stand_over_the_root_with_a_third_on_top(tonic):
    # Three perfect fourths, then a major third: D G C F A (from memory), in twelve keys.
    row = in_key("D G C F A", tonic)
    found = [each for each in voicings(tune("| ii7 |", key(tonic)), style="quartal") if names(each.pitches) == row]
    gaps = {tuple(high.midi - low.midi for low, high in pairwise(each.pitches)) for each in found}

    assert {(lowest % 12, *others) for lowest, *others in gaps} == {(5, 5, 5, 4)}  # the bass may lie an octave lower
    assert (5, 5, 5, 4) in gaps or tonic in ("F", "Gb")  # a bass on G or Ab lies lower: ours
    assert all(names(each.left) == row.split()[0] for each in found)


# Stacks of fourths over a bass, for a hand that reaches a tenth. Common practice, no source.
QUARTAL = [
    ("Dm7", "C", "D G C F"),
    ("Dm7", "C", "G C F"),
    ("Dm7", "C", "G C F A"),
    ("Cmaj7", "C", "B E A D"),
    ("Cmaj7", "C", "B E A"),
    ("C6/9", "C", "E A D G"),
    ("C6/9", "C", "E A D"),
    ("G7", "C", "F B E A"),
    ("G7", "C", "F B E"),
    ("G7", "c", "F B Eb Ab"),
    ("G7sus4", "C", "G C F"),
    ("G7sus4", "C", "D G C F"),
    ("Gsus4", "C", "D G C"),
    ("Ebm7", "Db", "Ab Db Gb"),
    ("G#m7", "B", "C# F# B"),
]


@pytest.mark.parametrize(("symbol", "home", "row"), QUARTAL)
def test_chords_stand_in_fourths(symbol, home, row):
    found = of_chord(symbol, "quartal", key(home), span=16, high=midi("C6"))

    assert row in {names(each.right) for each in found}


FOURTHS = "7|maj7|m7|m9|9|13|6|6/9|m6|7sus4|9sus4|7b9|7#11|maj7#11|m11|sus4"


@pytest.mark.parametrize("tail", FOURTHS.split("|"))
def test_a_quartal_chord_is_mostly_fourths(tail):
    # MT21C, "Quartal harmony": stacked in fourths; at most one other interval, a third, is ours.
    for tonic in ("C", "a", "Db", "F#"):
        name = tonic[0].upper() + tonic[1:]
        for voicing in of_chord(f"{name}{tail}", "quartal", key(tonic), span=17):
            sizes = [
                m21_interval.Interval(*(m21_pitch.Pitch(str(note).replace("b", "-")) for note in pair)).generic.value
                for pair in pairwise(voicing.right)
            ]

            assert set(sizes) <= {3, 4} and sizes.count(3) <= 1 and len(sizes) >= 2


# Triads over third and seventh of a dominant, of tensions that the chord or its key allows. Over C7: D (9 #11 13), A
# (13 b9 3), Ab (b13 1 #9), Eb (#9 5 7), C# minor (b9 3 b13), F# (#11 7 b9), F# minor (#11 13 b9). Levine, from memory.
# Here each tone has the name of its number above the root. A triad without a tension that the symbol names is not used:
# ours.
TRIADS = [
    ("C7", "F", "D F# A"),
    ("C9", "F", "D F# A"),
    ("C13", "F", "D F# A"),
    ("C7#11", "F", "D F# A"),
    ("C13#11", "F", "D F# A"),
    ("F7", "C", "G B D"),
    ("C7", "f", "Ab C D#, D# G Bb, Db E Ab, F# Bb Db"),
    ("G7", "c", "Eb G A#, A# D F, Ab B Eb, C# F Ab"),
    ("C7b9", "F", "A Db E, F# Bb Db, F# A Db"),
    ("C13b9", "F", "A Db E, F# A Db"),
    ("C7(b9,b13)", "F", "Db E Ab"),
    ("C7#9", "F", "D# G Bb"),
    ("C7(#9,b13)", "F", "Ab C D#"),
    ("C7alt", "F", "G# C D#"),
    ("C7(#5,#9)", "F", "G# C D#"),
    ("F#7b9", "b", "G A# D, B# E G"),
    ("F#7", "b", "D F# G##, G## C# E, G A# D, B# E G"),
]


@pytest.mark.parametrize(("symbol", "home", "triads"), TRIADS)
def test_over_a_dominant_the_right_hand_has_a_triad_of_its_tensions(symbol, home, triads):
    chord = next(tune(symbol).chords())
    root, third, seventh = (str(chord.root.up(place)) for place in (0, 4, -2))
    found = of_chord(symbol, "upper-structure", key(home))

    assert {frozenset(pitch.midi % 12 for pitch in each.right) for each in found} == {
        frozenset(midi(f"{name}4") % 12 for name in triad.split()) for triad in triads.split(", ")
    }
    assert {names(each.left) for each in found} == {f"{root} {third} {seventh}"}


# The same written as the triads that one reads (ours; the rival is the letter of each number, A# over G7).
READ = [
    ("C7", "F", "D F# A"),
    ("G7", "c", "Eb G Bb, Bb D F, G# B D#, Db F Ab"),
    ("A7", "d", "F A C, C E G, Bb Db F, Eb G Bb"),
    ("C7", "f", "Ab C Eb, Eb G Bb, C# E G#, Gb Bb Db"),
    ("C7b9", "F", "A C# E, Gb Bb Db, F# A C#"),
    ("Db7b9", "Db", "Bb D F, G B D, G Bb D"),
    ("C7#9", "F", "Eb G Bb"),
    ("C7alt", "F", "Ab C Eb"),
    ("F#7", "b", "D F# A, A C# E, G Bb D, C E G"),
    ("Gb7", "Cb", "Ab C Eb"),
    ("A#7", "d#", "F# A# C#, C# E# G#, B D F#, E G# B"),
]


@pytest.mark.parametrize(("symbol", "home", "triads"), READ)
def test_the_triad_on_top_is_written_as_the_triad_that_one_reads(symbol, home, triads):
    found = of_chord(symbol, "upper-structure", key(home))

    assert {frozenset(names(each.right).split()) for each in found} == {
        frozenset(triad.split()) for triad in triads.split(", ")
    }


BY_NUMBER = {"P1", "m2", "M2", "A2", "M3", "A4", "P5", "m6", "M6", "m7"}
"""Intervals above the root of a dominant's tones and tensions, as music21 names them."""


def test_the_triad_on_top_is_spelled_in_thirds_and_is_that_of_a_key_that_has_a_signature():
    # Spelled as a triad: music21. That it is the tonic triad of a key that can be written (C# minor, not Db minor), but
    # where the names of the numbers are a triad as they stand: ours.
    wrong = {}
    for home, degree, tail in product(map(key, MAJOR_TONICS + MINOR_TONICS), (0, 1, 2, 3, 4, -1), DOMINANTS.split("|")):
        root = str(home.tonic.up(degree))
        if root not in {tonic.capitalize() for tonic in MAJOR_TONICS + MINOR_TONICS}:
            continue
        task = Task(tune(f"| {root}{tail} |", home), Wishes(style="upper-structure"))
        layer, style = layer_at(0, task)
        for candidate in layer if style == "upper-structure" else ():
            right = names(voiced_path(search_for(task), (candidate,)).voicings[0].right)
            above = {simple_interval(root, name) for name in right.split()}
            own = (
                BY_NUMBER | ({"d5"} if "b5" in tail else set()) | ({"A5"} if "#5" in tail or tail == "7alt" else set())
            )
            if not is_plain_triad(right) and not (triad_signature(right) is not None and above <= own):
                wrong[right] = f"{root}{tail}"

    assert wrong == {}


@cache
def triad_signature(names_of_three):
    """Sharps (above zero) or flats of the key whose tonic triad stands there in thirds; None where none does."""
    heard = m21_chord.Chord([written(name) for name in names_of_three.split()])
    if heard.isMajorTriad() or heard.isMinorTriad():
        return m21_key.Key(heard.root().name, "major" if heard.isMajorTriad() else "minor").sharps
    return None


def is_plain_triad(names_of_three):
    signature = triad_signature(names_of_three)
    return signature is not None and abs(signature) <= 7


def written(name):
    """A name as music21 writes it."""
    return name[0] + name[1:].replace("b", "-")


@cache
def simple_interval(low, high):
    interval = m21_interval.Interval(m21_pitch.Pitch(written(low) + "1"), m21_pitch.Pitch(written(high) + "4"))
    return interval.simpleName.replace("P8", "P1")


DOMINANTS = "7|9|13|7b9|7#9|7#11|13b9|7(b9,b13)|7#5|7b5|9#5|7(#5,#9)|7(b5,b9)|7alt"


@pytest.mark.parametrize("tail", DOMINANTS.split("|"))
def test_every_upper_structure_sounds_as_a_major_or_minor_triad(tail):
    for home in ("F", "f", "C", "Eb"):
        task = Task(tune(f"| C{tail} |", key(home)), Wishes(style="upper-structure"))
        layer, style = layer_at(0, task)
        for candidate in layer if style == "upper-structure" else ():
            heard = m21_chord.Chord([note % 12 for note in candidate.right])

            assert heard.forteClassTnI == "3-11", f"C{tail} in {home}: {candidate.right}"


@pytest.mark.parametrize("symbol", ["C", "Cm7", "Cmaj7", "C7sus4", "C6", "Cdim7", "C11"])
def test_no_triad_of_tensions_stands_over_another_chord_or_a_plain_eleventh(symbol):
    # An eleventh chord is played as a suspended one (MT21C, "Chord symbol specifics"): no raised eleventh goes with it.
    assert layer_at(0, Task(tune(f"| {symbol} |", key("F")), Wishes(style="upper-structure")))[1] != "upper-structure"


# The lowest place of the lower note of an interval of so many semitones: a retailer's glossary, "Low interval limit",
# second-hand, with middle C as C4. Other lists differ by a tone or more (fourth E2, minor third C#3, second-hand).
LOWEST = {
    1: "E3", 2: "Eb3", 3: "C3", 4: "B2", 5: "A2", 6: "B1", 7: "C#2", 8: "F2", 9: "F2", 10: "F2", 11: "F2",
}  # fmt: skip
CHORDS_OF_ALL_INTERVALS = tune("| Cmaj7 | C7b9 | Cm9 | C7#11 | C13 | Cdim7 | Cm(maj7) | C6/9 | C7sus4 |")


def lowest_places(styles, lefts):
    """For each distance of neighbouring notes, the lowest place of the lower one in any voicing of any key."""
    lowest: dict[int, int] = {}
    for fifths in range(-5, 7):
        progression = CHORDS_OF_ALL_INTERVALS.in_key(Key(PitchClass(fifths), MODES["major"]))
        for style in styles:
            for left in lefts:
                task = Task(progression, Wishes(style=style, left=left, low=24, high=72))
                for place in range(len(progression.relative_chords)):
                    for candidate in layer_at(place, task)[0]:
                        for low, high in pairwise(candidate.notes):
                            lowest[high - low] = min(low, lowest.get(high - low, low))
    return lowest


def test_every_interval_goes_as_low_as_its_limit_and_no_lower():
    found = lowest_places([style for style in FAMILIES if style != "four-part"], ["none", "bass"])

    assert {size: found[size] for size in LOWEST} == {size: midi(name) for size, name in LOWEST.items()}


@pytest.mark.parametrize("style", FAMILIES)
def test_no_family_goes_below_a_limit(style):
    found = lowest_places([style], ["bass", "octave", "fifth"])

    assert [size for size in LOWEST if size in found and found[size] < midi(LOWEST[size])] == []


# A hand that measures less than 216 mm does not reach a tenth: most women's and a quarter of men's (R. Boyle and
# others, "Pianist hand spans", 2015, second-hand). A ninth C to D is 189 mm, a tenth C to E 212 mm (computed).
NINTH, MINOR_TENTH, TENTH = 14, 15, 16


@pytest.mark.parametrize("style", FAMILIES)
def test_unless_asked_no_hand_reaches_a_tenth(style):
    for fifths in range(-5, 7):
        progression = CHORDS_OF_ALL_INTERVALS.in_key(Key(PitchClass(fifths), MODES["major"]))
        for place in range(len(progression.relative_chords)):
            for candidate in layer_at(place, Task(progression, Wishes(style=style)))[0]:
                for hand in (candidate.left, candidate.right):
                    assert not hand or hand[-1] - hand[0] <= NINTH


@pytest.mark.parametrize(("symbol", "size"), [("C", TENTH), ("Cm", MINOR_TENTH)])
def test_a_tenth_is_refused_to_a_hand_that_does_not_reach_it(symbol, size):
    with pytest.raises(InputError, match="a span of 16 would do"):
        voice_progression(tune(f"| {symbol} |"), Wishes(left="tenth", span=size - 1))
    (voicing,) = voice_progression(tune(f"| {symbol} |"), Wishes(left="tenth", span=size)).voicings

    assert width(voicing.left) == size
