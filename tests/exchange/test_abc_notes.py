"""Notes of ABC tunes: pitches, lengths, bars. Rules: ABC standard 2.1 (December 2011), its sections from memory."""

from __future__ import annotations

import pytest
from exchange.abc_words import NAME, notes_of, tune_of

from nearhand.exchange.abc_files import read_abc

# Music in C, 4/4, a quarter the unit; the notes; the section.
NOTES = [
    ("C D E F|G A B c|]", "[4/4] C4 D4 E4 F4 | G4 A4 B4 C5", "4.1 letters"),
    ("C,,4|C,4|C4|c4|c'4|c''4|]", "[4/4] C2:4 | C3:4 | C4:4 | C5:4 | C6:4 | C7:4", "4.1 octave signs"),
    ("C,'4|c,4|]", "[4/4] C4:4 | C4:4", "4.1 octave signs add up"),
    ("^F _B =F ^^F|__B4|]", "[4/4] F#4 Bb4 F4 F##4 | Bbb4:4", "4.2 accidentals"),
    ("^F F f F|F4|]", "[4/4] F#4 F#4 F#5 F#4 | F4:4", "11.3 accidentals hold for all octaves to the end of the bar"),
    ("^F =F F ^F|F4|]", "[4/4] F#4 F4 F4 F#4 | F4:4", "11.3 the last accidental holds"),
    ("{^f}e F G2|]", "[4/4] {F#5}E5 F#4 G4:2", "an accidental of a grace note holds, common practice, no source"),
    ("C2 D3/2 E/|F/4 G3/4 A//B//c/ d3/ e/|]",
     "[4/4] C4:2 D4:3/2 E4:1/2 | F4:1/4 G4:3/4 A4:1/4 B4:1/4 C5:1/2 D5:3/2 E5:1/2", "4.3 lengths"),
    ("C>D E<F|C>>D E<<F|C>>>D E2|]",
     "[4/4] C4:3/2 D4:1/2 E4:1/2 F4:3/2 | C4:7/4 D4:1/4 E4:1/4 F4:7/4 | C4:15/8 D4:1/8 E4:2", "4.4 broken rhythm"),
    ("C > D E<F|]", "[4/4] C4:3/2 D4:1/2 E4:1/2 F4:3/2", "4.4 blanks around it say nothing"),
    ("C<{d}D C{d}<D|]", "[4/4] C4:1/2 {D5}D4:3/2 C4:1/2 {D5}D4:3/2", "4.12 grace notes beside it"),
    ("z2 x C|Z|z4|Z2|]", "[4/4] z:3 C4 | z:4 | z:4 | z:4 | z:4", "4.5 rests, in bars too"),
    ("C D E F-|F2 G2|]", "[4/4] C4 D4 E4 F4 | &F4:2 G4:2", "4.11 a tie over a bar line"),
    ("C2-C/ D/ E|]", "[4/4] C4:5/2 D4:1/2 E4", "4.11 a tie in a bar"),
    ("C D E ^F-|F F G2|]", "[4/4] C4 D4 E4 F#4 | &F#4 F4 G4:2", "a tie carries the accidental alone, common practice"),
    ("C D ^F2-|=F4|]", "[4/4] C4 D4 F#4:2 | F4:4", "no tie to another note"),
    ("C-D E-z|]", "[4/4] C4 D4 E4 z", "no tie to another note or to a rest"),
    ("C-z C2|]", "[4/4] C4 z C4:2", "no tie over a rest"),
    ("C4-|~C2 D2-|{e}D4|]", "[4/4] C4:4 | &C4:2 D4:2 | &D4:4", "what is held has neither ornaments nor grace notes"),
    ("C4-|C4-|C4|]", "[4/4] C4:4 | &C4:4 | &C4:4", "4.11 ties in a row"),
    ("(C D) .(E F)|(C(D)E F)|]", "[4/4] C4 D4 E4 F4 | C4 D4 E4 F4", "4.11 slurs say nothing of notes"),
    ("{d}C {de}D {/d}E {d2e/}F|]", "[4/4] {D5}C4 {D5}{E5}D4 {D5}E4 {D5}{E5}F4", "4.12 grace notes, crushed ones"),
    ("{d}z C D z{e}|F4|]", "[4/4] z {D5}C4 D4 z | {E5}F4:4", "grace notes wait for their note"),
    ("(3CDE F G|(3C/D/E/ F G A|]", "[4/4] C4:2/3 D4:2/3 E4:2/3 F4 G4 | C4:1/3 D4:1/3 E4:1/3 F4 G4 A4", "4.13"),
    ("(2CD A|(4CDEF A|(5CDEFG A2|(6CDEFGA B2|]",
     "[4/4] C4:3/2 D4:3/2 A4 | C4:3/4 D4:3/4 E4:3/4 F4:3/4 A4 | "
     "C4:2/5 D4:2/5 E4:2/5 F4:2/5 G4:2/5 A4:2 | C4:1/3 D4:1/3 E4:1/3 F4:1/3 G4:1/3 A4:1/3 B4:2", "4.13"),
    ("(3:2:2 C2D E2|(3::6 C/D/E/F/G/A/ G2|(10:8:10 C/D/E/F/G/C/D/E/F/G/|]",
     "[4/4] C4:4/3 D4:2/3 E4:2 | C4:1/3 D4:1/3 E4:1/3 F4:1/3 G4:1/3 A4:1/3 G4:2 | "
     "C4:2/5 D4:2/5 E4:2/5 F4:2/5 G4:2/5 C4:2/5 D4:2/5 E4:2/5 F4:2/5 G4:2/5", "4.13 p:q:r"),
    ("(3{d}CzE F2|]", "[4/4] {D5}C4:2/3 z:2/3 E4:2/3 F4:2", "4.13 rests count, grace notes do not"),
    ("(3C>DE F2|]", "[4/4] C4 D4:1/3 E4:2/3 F4:2", "4.13 with broken rhythm"),
    ("TC MD PE F|!trill!C !turn!D !invertedturn!E !turnx!F|+trill+C !invertedturnx!D !fermata!E !trill(!F|]",
     "[4/4] C4(tr) D4(mordent) E4(inverted-mordent) F4 | C4(tr) D4(turn) E4(inverted-turn) F4(turn) | "
     "C4(tr) D4(inverted-turn) E4 F4(tr)", "4.14, 4.15 ornaments"),
    ("!mordent!C !lowermordent!D !uppermordent!E !pralltriller!F|]",
     "[4/4] C4(mordent) D4(mordent) E4(inverted-mordent) F4(inverted-mordent)",
     "4.14 mordents; MusicXML 4.0 mordent (with the stroke: the note below) and inverted-mordent, from memory"),
    ("~C !roll!D T~E F|]", "[4/4] C4 D4 E4(tr) F4", "4.14 a roll is none of our ornaments"),
    ("!f!.C uD vE HF|]", "[4/4] C4 D4 E4 F4", "4.14 decorations that are no ornaments"),
    ("Tz C D E|]", "[4/4] z C4 D4 E4", "an ornament of a rest is none"),
    ('"^up"C "<l"D ">r"E "_d"F|"@1,2 at"C4|]', "[4/4] C4 D4 E4 F4 | C4:4", "4.19 annotations"),
    ("[CEG]2 [EC]2|[C2E2G2]/ [C/E/]3/ C9/4|[CEG]-[CEG] z z|]",
     "[4/4] G4:2 E4:2 | G4 E4:3/4 C4:9/4 | G4:2 z:2", "4.17 chords, the length of their first note times their own"),
    ("[c-e]e [ce-]e|[c-e-]e [ec-]e|", "[4/4] E5 E5 E5:2 | E5:2 E5 E5", "4.17, 4.11 a tie within a chord is its note's"),
    ("C`D` `E F|C y D y2 E F|C D E F\\\n|G4|]", "[4/4] C4 D4 E4 F4 | C4 D4 E4 F4 | C4 D4 E4 F4 | G4:4", "4.7, 6.1"),
    ("C D E F|% G A\nG4 |% again\n%%vskip 3\nA4|]", "[4/4] C4 D4 E4 F4 | G4:4 | A4:4", "2.2.3 comments"),
    ("C D E F|\nw: a b c d\ns: * * !f! *\nG4|]\nW: and so on\nN: a note", "[4/4] C4 D4 E4 F4 | G4:4", "3, 5 fields"),
    ("C D E F!\nG4|]", "[4/4] C4 D4 E4 F4 | G4:4", "6.1.2 an old sign for the end of a line"),
    ("C D E F$ G4 $\nA4|]", "[12/4] C4 D4 E4 F4 G4:4 A4:4", "6.1.1 the end of a line of print"),
    ("C D E F [r:a remark] G|]", "[5/4] C4 D4 E4 F4 G4", "3.3 a remark in brackets"),
]  # fmt: skip


@pytest.mark.parametrize(("body", "notes", "source"), NOTES)
def test_music_is_read_as_its_notes(body, notes, source):
    assert notes_of(tune_of(body)) == notes


# Music, meter, unit, key; the notes; the section.
METERS = [
    ("C2 D2", "2/4", "1/8", "[2/4] C4 D4"),
    ("(5CDEFG ABc|(7CDEFGAB ABc|(2CD ABc|]", "6/8", "1/8",
     "[6/8] C4:3/5 D4:3/5 E4:3/5 F4:3/5 G4:3/5 A4 B4 C5 | "
     "C4:3/7 D4:3/7 E4:3/7 F4:3/7 G4:3/7 A4:3/7 B4:3/7 A4 B4 C5 | C4:3/2 D4:3/2 A4 B4 C5"),
    # Eight take the time of three in every meter; those of three beats are simple: five take the time of two.
    ("(8CDEFGABc d|]", "4/4", "1/4",
     "[4/4] C4:3/8 D4:3/8 E4:3/8 F4:3/8 G4:3/8 A4:3/8 B4:3/8 C5:3/8 D5"),
    ("(8CDEFGABc ABc|]", "6/8", "1/8",
     "[6/8] C4:3/8 D4:3/8 E4:3/8 F4:3/8 G4:3/8 A4:3/8 B4:3/8 C5:3/8 A4 B4 C5"),
    ("(5CDEFG A|]", "3/8", "1/8", "[3/8] C4:2/5 D4:2/5 E4:2/5 F4:2/5 G4:2/5 A4"),
    ("(5CDEFG A|]", "3/4", "1/4", "[3/4] C4:2/5 D4:2/5 E4:2/5 F4:2/5 G4:2/5 A4"),
    ("(7CDEFGAB c2|]", "4/4", "1/4",
     "[4/4] C4:2/7 D4:2/7 E4:2/7 F4:2/7 G4:2/7 A4:2/7 B4:2/7 C5:2"),
    ("(5CDEFG A9|]", "12/8", "1/8", "[12/8] C4:3/5 D4:3/5 E4:3/5 F4:3/5 G4:3/5 A4:9"),
    ("C2 D2", "C|", "1/4", "[2/2] C4 D4"),
    ("C2 D2", "C", "1/4", "[4/4] C4:2 D4:2"),
    ("C2 D3|E5", "(2+3)/8", "1/8", "[5/8] C4:2 D4:3 | E4:5"),
    ("C2 D3|E5", "2+3/8", "1/8", "[5/8] C4:2 D4:3 | E4:5"),
    ("C4 D2|E|F G|]", "none", "1/4", "[6/4] C4:4 D4:2 | [1/4] E4 | [2/4] F4 G4"),
    ("C3|D", "none", "1/8", "[3/8] C4:3 | [1/8] D4"),
    ("C4 D4|[M:3/4]E6|\nM:6/8\nF3 G3|]", "4/4", "1/8", "[4/4] C4:2 D4:2 | [3/4] E4:3 | [6/8] F4:3 G4:3"),
    ("C4 [M:3/4] D4|E6|]", "4/4", "1/8", "[4/4] C4:2 D4:2 | [3/4] E4:3"),
    ("C4 D4|[L:1/4]E4|\nL:1/16\nF16|]", "4/4", "1/8", "[4/4] C4:2 D4:2 | E4:4 | F4:4"),
]  # fmt: skip


@pytest.mark.parametrize(("body", "meter", "unit", "notes"), METERS)
def test_beats_count_in_units_of_the_meter(body, meter, unit, notes):
    """ABC 2.1, 3.1.6, 3.1.7 and 3.2; tuplets of five, seven and nine by 4.13."""
    assert notes_of(tune_of(body, meter, unit)) == notes


def test_nine_in_compound_meter_take_the_time_of_three():
    """ABC 2.1, 4.13."""
    tune = tune_of("(9CDEFGABcd c6", "9/8", "1/8")

    assert [str(note.beats) for note in tune.melody.notes] == ["1/3"] * 9 + ["6"]


@pytest.mark.parametrize(
    ("meter", "beats"),
    [("2/4", "1/4"), ("3/8", "1/2"), ("5/8", "1/2"), ("3/4", "1/2"), ("6/8", "1"), ("4/4", "1/2"), ("none", "1/2")],
)
def test_the_unit_depends_on_the_meter_where_no_field_sets_it(meter, beats):
    """ABC 2.1, 3.1.7: below 3/4 a sixteenth, else an eighth."""
    tune = read_abc(f"X:1\nM:{meter}\nK:C\nC D E F|G|G|]", NAME)

    assert str(tune.melody.notes[0].beats) == beats


# Music; the notes: what becomes of bars that are not full.
BARS = [
    ("G|C D E F|G3|]", "[4/4] G4 | C4 D4 E4 F4 | G4:3", (), "a pickup and a short last bar"),
    ("|:G|C D E F|G3:|", "[4/4] G4 | C4 D4 E4 F4 | G4:3", (), "repeat signs around them"),
    ("|:G|C D E F|G3:|:A|B B B B|A3:|", "[4/4] G4 | C4 D4 E4 F4 | [3/4] G4:3 | [1/4] A4 | [4/4] B4 B4 B4 B4 | A4:3", (),
     "the halves of a bar on both sides of a repeat"),
    ("C D E F|G3||A|B4|]", "[4/4] C4 D4 E4 F4 | [3/4] G4:3 | [1/4] A4 | [4/4] B4:4", (), "and of a double bar line"),
    ("C D E F|G A|C4|]", "[4/4] C4 D4 E4 F4 | [2/4] G4 A4 | [4/4] C4:4", (2,), "a bar that is too short"),
    ("C D E F|G A B c/|C4|]", "[4/4] C4 D4 E4 F4 | [7/8] G4:2 A4:2 B4:2 C5 | [4/4] C4:4", (2,), "by an eighth"),
    ("G|C D E F G|C4|]", "[5/4] G4 | C4 D4 E4 F4 G4 | [4/4] C4:4", (1,), "too long; the pickup goes with bar 1"),
    ("G/|C/ D/ E/|C4|C4|]", "[3/8] G4 | C4 D4 E4 | [4/4] C4:4 | C4:4", (1,), "the pickup in the units of bar 1"),
    ("|C D E F||G4|]|", "[4/4] C4 D4 E4 F4 | G4:4", (), "bar lines with nothing between them"),
    ("C D E F\nG A B c|d4|]", "[4/4] C4 D4 E4 F4 | G4 A4 B4 C5 | D5:4", (), "no bar line at the end of a line"),
    ("C D\nE F|G4|]", "[4/4] C4 D4 E4 F4 | G4:4", (), "a line that ends within a bar"),
    ("^F D E F\nF A B c|F4|]", "[4/4] F#4 D4 E4 F#4 | F#4 A4 B4 C5 | F4:4", (), "there accidentals hold on"),
    ("C D E F|[1 G4:|[2 A4|]", "[4/4] C4 D4 E4 F4 | G4:4 | A4:4", (), "endings"),
    ("C D E F|1 G4:|2 A4|]", "[4/4] C4 D4 E4 F4 | G4:4 | A4:4", (), "endings right behind the line"),
    ("C D E F|[1,3 G4:|[2-4 A4:|[\"last\" B4|]", "[4/4] C4 D4 E4 F4 | G4:4 | A4:4 | B4:4", (), "endings of many kinds"),
    ("C4::D4:|:E4||:F4:||G4[|]A4.|B4[|C4|]",
     "[4/4] C4:4 | D4:4 | E4:4 | F4:4 | G4:4 | A4:4 | B4:4 | C4:4", (), "4.8 bar lines of all kinds"),
]  # fmt: skip


@pytest.mark.parametrize(("body", "notes", "odd", "source"), BARS)
def test_bars_are_those_between_the_lines(body, notes, odd, source):
    tune = tune_of(body)

    assert notes_of(tune) == notes
    told = [remark for remark in tune.remarks if "as long as" in remark]
    assert bool(told) == bool(odd)
    for number in odd:
        assert f"Bar {number} is not" in told[0]


def test_a_bar_whose_length_no_meter_can_tell_ends_with_a_rest():
    tune = tune_of("C4|C D/3|C4|]")

    assert notes_of(tune) == "[4/4] C4:4 | [11/32] C4:8 D4:8/3 z:1/3 | [4/4] C4:4"
    assert tune.melody.bars[1].beats == 11


def test_a_bar_beyond_all_measure_is_cut_and_what_goes_on_is_held():
    tune = tune_of("z2 " + "C D " * 30 + "E6|G4|]")

    assert [bar.beats for bar in tune.melody.bars] == [4] * 18
    assert notes_of(tune).endswith("C4 D4 E4:2 | &E4:4 | G4:4")
    assert "A bar of more than 64 beats is cut into shorter ones." in tune.remarks


def test_music_without_any_bar_line_is_one_bar_or_cut():
    assert notes_of(tune_of("C D E F G", "none")) == "[5/4] C4 D4 E4 F4 G4"
    assert len(tune_of("C8 " * 20, "none").melody.bars) == 40


# ABC 2.1, 11.3, from memory: accidentals hold for their note alone, for it and its octave, or for all octaves of its
# letter (the default), to the end of the bar.
HOLDS = [("not", "F#4 F4 F5 F4"), ("octave", "F#4 F#4 F5 F#4"), ("pitch", "F#4 F#4 F#5 F#4")]
# ABC 2.1, 11 and 3.1.19, from memory: a directive is written %%name or I:name.
PLACES = [
    "X:1\nI:{}\nL:1/4\nM:4/4\nK:C\n", "X:1\n%%{}\nL:1/4\nM:4/4\nK:C\n", "%%{}\n\nX:1\nL:1/4\nM:4/4\nK:C\n",
    "I:{}\nX:1\nL:1/4\nM:4/4\nK:C\n", "X:1\nL:1/4\nM:4/4\nK:C\n%%{}\n", "X:1\nL:1/4\nM:4/4\nK:C\n[I:{}]",
    "X:1\nL:1/4\nM:4/4\nK:C\nI:{}\n", "X:1\n%%  {} \nL:1/4\nM:4/4\nK:C\n",
]  # fmt: skip


@pytest.mark.parametrize(("holds_for", "notes"), HOLDS)
@pytest.mark.parametrize("head", PLACES)
def test_accidentals_hold_for_what_the_file_says(head, holds_for, notes):
    text = head.format(f"propagate-accidentals {holds_for}") + "^F F f F|]"

    assert notes_of(read_abc(text, NAME)) == f"[4/4] {notes}"
    assert read_abc(text, NAME).remarks == ()


def test_the_tunes_own_directive_goes_before_that_of_the_file_and_another_kind_of_word_is_none():
    """ABC 2.1, 2.2.2: what a tune says goes before what the file says."""
    of_the_file, of_the_tune = "%%propagate-accidentals not\n\nX:1\n", "%%propagate-accidentals octave\n"

    assert notes_of(read_abc(of_the_file + of_the_tune + "L:1/4\nK:C\n^F F f F|]", NAME)) == "[4/4] F#4 F#4 F5 F#4"
    assert notes_of(tune_of("%%propagate-accidentals\n^F F f F|]")) == "[4/4] F#4 F#4 F#5 F#4"
    assert notes_of(tune_of("%%propagate-accidentals what\n^F F f F|]")) == "[4/4] F#4 F#4 F#5 F#4"


def test_accidentals_of_the_key_hold_whatever_others_do():
    """ABC 2.1, 11.3: the directive is about accidentals beside the key signature."""
    text = "X:1\n%%propagate-accidentals not\nL:1/4\nK:G\n=F F f ^c|c4|]"

    assert notes_of(read_abc(text, NAME)) == "[4/4] F4 F#4 F#5 C#5 | C5:4"


ROLLS = "Rolls (~) are left out: a melody has no word for them."


@pytest.mark.parametrize(
    ("body", "remarks"),
    [
        ("~C D ~E F|]", (ROLLS,)),
        ("!roll!C D E F|]", (ROLLS,)),
        ("U:n=!roll!\nnC D E F|]", (ROLLS,)),
        ("U:~=!trill!\n~C D E F|]", ()),
        ("TC MD PE !invertedturn!F|]", ()),
    ],
)
def test_rolls_are_left_out_and_told_once(body, remarks):
    """ABC 2.1, 4.14: ~ and !roll! are an Irish roll, which is no turn."""
    assert tune_of(body).remarks == remarks


# A file's header and what is not followed in it. ABC 2.1, 4.6, from memory: transpose= moves a voice where it is
# played.
MOVED = [
    ("K:D transpose=-2", '"transpose=-2" is'), ("K:D t=5", '"t=5" is'), ("V:1 transpose=-2\nK:D", '"transpose=-2" is'),
    ("%%transpose -2\nK:D", '"transpose -2" is'), ("I:transpose 3\nK:D", '"transpose 3" is'),
    ("%%MIDI transpose 3\nK:D", '"MIDI transpose 3" is'), ("K:D\n%%transpose 3", '"transpose 3" is'),
    ("K:D\nV:1 transpose=3", '"transpose=3" is'), ("K:D clef=treble transpose=3 octave=0", '"transpose=3" is'),
    ("K:D sound=B", '"sound=B" is'), ("K:D shift=CD", '"shift=CD" is'), ("K:D score=Bc", '"score=Bc" is'),
    ("%%transpose 1\nK:D transpose=2", '"transpose 1" and "transpose=2" are'),
]  # fmt: skip


@pytest.mark.parametrize(("head", "named"), MOVED)
def test_what_would_move_the_notes_is_not_followed_and_told(head, named):
    tune = read_abc(f"X:1\nM:4/4\nL:1/4\n{head}\nF C D E|]", NAME)

    assert notes_of(tune) == "[4/4] F#4 C#4 D4 E4"
    assert tune.remarks == (f"{named} not followed: the notes stay as they are written.",)


@pytest.mark.parametrize(
    "head",
    [
        "K:D transpose=0",
        "K:D",
        "%%transposed 3\nK:D",
        "%%text transpose 3\nK:D",
        "V:1\nV:2 transpose=-2\nK:D\n[V:1]",
        "T:transpose=3\nK:D",
        "K:D stafflines=5 middle=B",
    ],
)
def test_what_moves_nothing_here_is_not_told(head):
    assert read_abc(f"X:1\nM:4/4\nL:1/4\n{head}\nF C D E|]", NAME).remarks == ()


def test_octaves_of_the_key_and_the_voice_are_followed():
    """ABC 2.1, 4.6."""
    for head in ("K:D octave=-1", "V:1 octave=-1\nK:D\nV:1", "K:D\nV:1 octave=-1", "K:D octave=1\nV:1 octave=-2"):
        tune = read_abc(f"X:1\nM:4/4\nL:1/4\n{head}\nF C D E|]", NAME)
        assert (notes_of(tune), tune.remarks) == ("[4/4] F#3 C#3 D3 E3", ())


# Music in C, 4/4; the remark on bars that a line within them divides. Common practice, no source.
DIVIDED = [
    ("|:G|C D E F|G3:||:A|B B B B|A3:|", "Bars 2 and 3 are one bar, divided by a repeat sign; it is counted as two."),
    ("|:G|C D E F|G3::A|B B B B|A3:|", "Bars 2 and 3 are one bar, divided by a repeat sign; it is counted as two."),
    ("C D E F|G3||A|B4|]", "Bars 2 and 3 are one bar, divided by a double bar line; it is counted as two."),
    ("C4|G3|:A|B4:|", "Bars 2 and 3 are one bar, divided by a repeat sign; it is counted as two."),
    ("C4|G3:|A|]", "Bars 2 and 3 are one bar, divided by a repeat sign; it is counted as two."),
    ("|:G|C4|G3:||:A|B4|A3:||:A|B4|A3:|",
     "Bars 2-3 and 5-6 are one bar each, divided by repeat signs; each is counted as two."),
    ("C4|G3:||:A|B4|A3||A|B4|]",
     "Bars 2-3 and 5-6 are one bar each, divided by repeat signs or double bar lines; each is counted as two."),
    ("C4|G3||A|B4|A3||A|B4|]",
     "Bars 2-3 and 5-6 are one bar each, divided by double bar lines; each is counted as two."),
    ("C4|G2:||:A|B4:|", None), ("C4|G3:||:A2|B4:|", None), ("C4|G2||A2||B2||C2|D4|]",
     "Bars 2-3 and 4-5 are one bar each, divided by double bar lines; each is counted as two."),
    ("C4|[1G3:|[2A3:|C4|]", None), ("|:G|C4|G3:|", None), ("|:C4|G4:||:A4:|", None),
    ("C4|G3:|[M:2/4]A|B2|]", None),
]  # fmt: skip


@pytest.mark.parametrize(("body", "told"), DIVIDED)
def test_a_bar_that_is_divided_by_a_line_is_told_to_be_two(body, told):
    assert [remark for remark in tune_of(body).remarks if "divided" in remark] == ([told] if told else [])
