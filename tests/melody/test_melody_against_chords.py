"""What notes are over chords: figures by their definitions, in the order in which the kinds are asked.

Definitions: Open Music Theory, "Embellishing tones"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*,
"Non-Chord Tones" (both from memory). The examples are ours.
"""

from __future__ import annotations

import pytest
from melody.tone_examples import kinds, tones
from music21.voiceLeading import ThreeNoteLinearSegment
from strategies import key

from nearhand.melody.against import against
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.melody_reading import parse_melody

ROOT, THIRD, FIFTH, SEVENTH = (f"chord tone {member}" for member in ("root", "third", "fifth", "seventh"))


@pytest.mark.parametrize(
    ("chords", "melody", "place", "kind"),
    [
        ("| C |", "E4 D C -", 1, "passing tone"),
        ("| C |", "[G4 A] [B C5] C5 -", 1, "passing tone"),
        ("| C |", "[G4 A] [B C5] C5 -", 2, "passing tone"),  # two in a row fill a fourth
        ("| C |", "[E4 D] [D C] C -", 2, "passing tone"),  # struck twice
        ("| C | G |", "E4 - C - | D [C B3] A3 G3", 3, "passing tone"),
        ("| G7 |", "F4 F# G -", 1, "passing tone"),  # chromatic
        ("| G7 |", "G4 Gb F -", 1, "passing tone"),
        ("| C |", "E4 F E -", 1, "upper neighbour"),
        ("| C |", "E4 D E -", 1, "lower neighbour"),
        ("| C |", "G4 F# G -", 1, "lower neighbour"),
        ("| Dm D |", "F4:2 G F#", 1, "upper neighbour"),  # back to its letter
        ("| C | G |", "C5 - - - | C5 B4 G -", 1, "suspension 4-3"),
        ("| C | G |", "C5 - - - | - B4 G -", 1, "suspension 4-3"),
        ("| C | G |", "C5 - - - | C5 - B4 -", 1, "suspension 4-3"),  # long, but resolved while the chord lasts
        ("| G | C/E |", "D5 - - - | D5 C5 - -", 1, "suspension 7-6"),
        ("| G | C |", "D5 - - - | D5 C5 - -", 1, "suspension 9-8"),
        ("| G7 | C |", "B4 - - - | B4 C5 - -", 1, "retardation 7-8"),
        ("| G7 | C |", "D4 - - [B3 C4] | C4", 2, "anticipation"),
        ("| G7 | C |", "D4 - - [B3 C4] | - - - -", 2, "anticipation"),  # tied over
        ("| C |", "C4 F E -", 1, "appoggiatura"),
        ("| C |", "r F4 E -", 0, "appoggiatura"),  # after a rest, as if leapt to
        ("| C | C |", "C4 - F F# | G", 1, "appoggiatura"),  # goes on by steps to a chord tone
        ("| C |", "[E4 F] C - -", 1, "escape tone"),
        ("| C | Bdim | C |", "C5 - - - | C5 - - - | C5 - - -", 1, "pedal"),
        ("| C | Bdim | C |", "C5 - - - | - - - - | - - - -", 1, "pedal"),
    ],
)
def test_a_figure_is_named_by_the_notes_around_it(chords, melody, place, kind):
    assert kinds(chords, melody)[place] == kind


@pytest.mark.parametrize(
    ("chords", "melody", "place", "kind"),
    [
        ("| Cmaj7 |", "E4 D:2 C", 1, "tension 9"),  # long: heard as a colour of the chord
        ("| Cmaj7 |", "E4 D C -", 1, "passing tone"),  # short: on its way
        ("| Cmaj7 |", "E4 D B3 -", 1, "tension 9"),  # short, but it goes nowhere
        ("| Cmaj7 |", "G4 D G -", 1, "tension 9"),
        ("| Cmaj7 |", "G4 [- D:3] G", 1, "tension 9"),  # off the beat, but between leaps
        ("| Dm7 | G7 |", "A4 - - - | - - - -", 1, "tension 9"),  # held over and left unresolved
        ("| Dm7 | G7 | C |", "A4 - - - | - - - - | G4", 1, "tension 9"),  # resolves with the next chord alone
        ("| Dm | C |", "F4 - - - | - - - - ", 1, "clash"),  # the fourth does not stand over a major third
        ("| Dm | C | Am |", "F4 - - - | - - - - | E4", 1, "suspension"),  # ... but here it resolves, though late
        ("| C |", "G4 B:2 C5", 1, "appoggiatura"),  # a long seventh of a triad is a figure where it resolves
        ("| C |", "G4 B:2 G4", 1, "added tone maj7"),  # ... and added where it does not
        ("| C |", "G4 A C5 -", 1, "added tone 6"),
        ("| C7 |", "G4 A C5 -", 1, "tension 13"),
        ("| C | F |", "F4 - - - | - - - -", 0, "clash"),  # struck with its chord, it anticipates nothing
    ],
)
def test_long_or_unresolved_notes_are_tensions_and_short_ones_figures(chords, melody, place, kind):
    # common practice, no source
    assert kinds(chords, melody)[place] == kind


def test_a_long_note_before_the_chord_that_it_belongs_to_anticipates_it_where_it_comes_late():
    # over C, an F that is struck after the chord and tied into F (common practice, no source)
    assert kinds("| C | F |", "G4 - F - | - ")[1:] == ["anticipation", ROOT]


def test_what_resolves_by_step_is_no_clash_even_where_it_is_no_figure():
    # reached by a half step down on one letter, left by a step up (common practice, no source)
    assert kinds("| G | Cm |", "D5 - - - | Db Eb - -") == [FIFTH, "free tone", THIRD]
    assert kinds("| G | Cm |", "D5 - - - | Db G4 - -")[1] == "clash"
    assert kinds("| Cmaj7 |", "Bb4 Ab A G")[1] == "free tone"  # a short one, into the thirteenth
    assert kinds("| Cmaj7 | Cmaj7 |", "Bb4 Ab:2 A | G")[1] == "clash"


def test_in_compound_meters_a_beat_is_three_eighths():
    # R. Hutchinson, "Compound meters", from memory: 6/8 is felt in two
    assert kinds("[6/8] Cmaj7", "[6/8] E4:2 D C:3")[1] == "passing tone"
    assert kinds("[6/8] Cmaj7", "[6/8] D4:3 C:3")[0] == "appoggiatura"
    assert kinds("[3/4] Cmaj7", "[3/4] D4:2 C")[0] == "tension 9"


@pytest.mark.parametrize(
    ("chords", "melody", "expected"),
    [
        ("Cm: | Cm |", "G4 Ab B C5", [FIFTH, "passing tone", "passing tone", ROOT]),
        ("Cm: | G7 |", "B4 Ab G -", [THIRD, "passing tone", ROOT]),
        ("Cm: | G |", "B4 Ab B -", [THIRD, "clash", THIRD]),  # no neighbour
        ("C: | C |", "G4 Ab B C5", [FIFTH, "incomplete neighbour", "appoggiatura", ROOT]),  # in major it is a leap
    ],
)
def test_the_augmented_second_is_a_step_for_passing_tones_in_minor_alone(chords, melody, expected):
    # ours: common practice knows it as an interval to avoid, and harmonic minor as a step of its scale
    home, bars = chords.split(": ")

    assert kinds(bars, melody, home) == expected


def test_a_step_goes_by_letters_not_by_sound():
    # C sharp to E flat is a diminished third, which sounds as a whole tone; C sharp to D sharp is a whole tone
    assert kinds("| A7 |", "C#4 - D# E") == [THIRD, "passing tone", FIFTH]
    assert kinds("| A7 |", "C#4 - Eb E") == [THIRD, "appoggiatura", FIFTH]
    assert kinds("| A7 |", "C#4 - D# C#") == [THIRD, "upper neighbour", THIRD]
    assert kinds("| A7 |", "C#4 - Eb C#") == [THIRD, "tension b5", THIRD]


def test_a_half_step_on_one_letter_is_a_step_and_two_of_them_pass_nothing():
    assert kinds("| F |", "C5 - B Bb | A", "F")[1] == "passing tone"
    assert kinds("| Gb7 |", "Gb4 G G# -", "Db")[1] != "passing tone"


# A passing motion fills the way between two chord tones, by whole and half steps in any order (Open Music Theory,
# "Embellishing tones", from memory); which notes those are is worked out by hand.
FILLED = [
    ("| C | C |", "1 2 #2 3 | 1"), ("| C | C |", "3 b3 2 1 | 1"), ("| C | C |", "3 2 b2 1 | 1"),
    ("| C | C |", "5 #4 4 3 | 1"), ("| C | C |", "1 #1 2 3 | 1"), ("| C | C |", "1 [#1 2] #2 3 | 1"),
    ("| C | C |", "[5 #5] [6 #6] 7 1' | 1"), ("| C | C |", "5 6 b7 7 | 1'"), ("| C | C |", "1' 7 6 b6 | 5"),
    ("| G7 | C |", "5 [6 #6] 7 - | 1'"), ("| F | F |", "4 3 b3 2 | 1"),
]  # fmt: skip


@pytest.mark.parametrize(("chords", "melody"), FILLED)
def test_whole_and_half_steps_in_one_direction_pass_also_where_two_notes_share_a_letter(chords, melody):
    found = kinds(chords, melody)[:-1]
    between = [kind for kind in found if not kind.startswith("chord tone")]

    assert between == ["passing tone"] * len(between) != []


def test_music21_knows_a_passing_tone_on_one_letter_between_half_steps_alone():
    # music21 10.5.1 refuses C D D sharp E its D, though C C sharp D E has a C sharp; a player hears both as passing
    assert not ThreeNoteLinearSegment("C4", "D4", "D#4").couldBePassingTone()
    assert ThreeNoteLinearSegment("C4", "C#4", "D4").couldBePassingTone()
    assert kinds("| C |", "C4 D D# E")[1:3] == ["passing tone", "passing tone"]


# A neighbour is a step away from a chord tone and back (Open Music Theory, "Embellishing tones", from memory). One of
# the two sides is enough, and a tension that stands on both may have neighbours, too (common practice, no source).
NEIGHBOURS = [
    # D over E between two C's, which belong neither to D minor nor to E: the seventh of E, on its way down to B
    ("| Am | Dm | E | Am |", "1' - 7 6 | 6 5 4 3 | 4 - 3 2 | 1 - - -", 7, "added tone 7"),
    ("| Am | Dm | E | Am |", "1' - 7 6 | 6 5 4 3 | 4 3 2 - | 1 - - -", 7, "added tone 7"),
    ("| Am | Dm | E | Am |", "1' - 7 6 | 6 5 4 3 | 4 - 3 2 | 1 - - -", 6, "lower neighbour"),  # of D, the root of Dm
    ("| Am | Dm | E7 | Am |", "1' - 7 6 | 6 5 4 3 | 4 - 3 2 | 1 - - -", 7, SEVENTH),
    ("| Am | Dm | Am | Am |", "1' - 7 6 | 6 5 4 3 | 4 3 2 - | 1 - - -", 7, "upper neighbour"),  # back to C, its third
    ("| E |", "6 7 6 5", 1, "free tone"),  # G natural between F's over E major, which goes home by step
    ("| Dm | Am |", "6 - - - | [6 7] 6 5 -", 2, "upper neighbour"),  # F is kept from D minor and struck again
    ("| Am |", "2 [#1 2] 3 -", 1, "lower neighbour"),  # of the ninth, which stands
]  # fmt: skip


@pytest.mark.parametrize(("chords", "melody", "place", "kind"), NEIGHBOURS)
def test_a_neighbour_leaves_a_note_that_belongs_or_comes_back_to_one(chords, melody, place, kind):
    assert kinds(chords, melody, "A minor")[place] == kind


@pytest.mark.parametrize("chord", ["C E G", "D F A", "E G B", "F A C", "G B D", "A C E", "B D F"])
@pytest.mark.parametrize("rhythm", ["{} {} {} {}", "[{} {}] [{} {}]", "[3/4] {}:2 {} | {} {}:2"])
def test_a_step_to_one_side_and_a_step_to_the_other_are_a_double_neighbour(chord, rhythm):
    """Every chord tone of every triad of C major, from above and from below."""
    symbol = chord[0] + {"C E G": "", "F A C": "", "G B D": "", "B D F": "dim"}.get(chord, "m")
    meter = "[3/4] " if rhythm.startswith("[3/4]") else ""
    for tone in chord.split():
        above, below = ("CDEFGAB"[("CDEFGAB".index(tone) + by) % 7] for by in (1, -1))
        for first, second in ((above, below), (below, above)):
            found = kinds(f"{meter}| {symbol} | {symbol} |", rhythm.format(tone + "4", first, second, tone))
            assert found[1:3] == ["double neighbour", "double neighbour"], (tone, first, second)
            assert found[0] == found[3] != ""


@pytest.mark.parametrize(
    ("chords", "melody", "expected"),
    [
        ("| C | C |", "G4 F4 A4 G4 | E4 F4 D4 E4", ["double neighbour"] * 4),
        ("| C |", "[G4 Ab] [F# G] -", ["double neighbour"] * 2),  # chromatic, a diminished third apart
        ("| C | Am |", "C4 - - D | B3 C - -", ["double neighbour"] * 2),  # C belongs to both
        ("| G | C |", "D4 - - C | - D B3 C", ["anticipation", *["double neighbour"] * 2]),  # tied over
        ("| C | C |", "E4 F F D | E - - -", ["double neighbour"] * 3),  # struck twice
        ("| C |", "E4 F D C", ["escape tone", "appoggiatura"]),  # not back to where it began
        (
            "| C |",
            "D4 Eb C# D",
            ["tension 9", "double neighbour", "double neighbour", "tension 9"],
        ),  # as a neighbour may
        ("| G7 |", "G4 A F G", ["escape tone"]),  # F is a chord tone: one step aside alone
        ("| C | C |", "E4 F D:2 | E", ["escape tone", "tension 9"]),  # the second is long, and a colour of the chord
        ("| C | C |", "E4 F r D | E", ["clash", "appoggiatura"]),  # a rest parts them
    ],
)
def test_a_double_neighbour_goes_back_to_its_chord_tone_and_is_short(chords, melody, expected):
    found = [kind for kind in kinds(chords, melody) if not kind.startswith(("chord tone", "outside"))]

    assert found == expected


@pytest.mark.parametrize(
    ("chords", "melody", "place", "kind"),
    [
        ("| C | F |", "E4 F4 C4 C4 | A4 - - -", 1, "escape tone"),  # on the second beat of four
        ("| C | F |", "E4 - E F | C4 - - -", 2, "escape tone"),  # on the fourth, before the chord changes
        ("| C |", "[E4 F] C - -", 1, "escape tone"),
        ("| C |", "[E4 D] G - -", 1, "escape tone"),  # down, and up
        ("[3/4] C", "[3/4] E4 E F | C", 2, "escape tone"),
        ("[6/8] C", "[6/8] E4:2 F C:3", 1, "escape tone"),
        ("[6/8] C", "[6/8] E4:3 F:3 | C", 1, "escape tone"),  # the second of two beats
        ("| C |", "E4 - F C", 1, "clash"),  # the third beat of four is strong
        ("[6/4] C", "[6/4] E4 E E F C C", 3, "clash"),  # and the fourth of six
        ("[12/8] C", "[12/8] E4:3 E:3 F:3 C:3", 2, "clash"),
        ("[12/8] C", "[12/8] E4:3 E:3 E:3 F:3 | C", 3, "escape tone"),
        ("| C F/C C F/C |", "C4 Db A Db", 1, "clash"),  # struck with a chord, no place is weak
        ("| C |", "[G4 A4] C5 - -", 1, "added tone 6"),  # it goes on upwards
        ("| C |", "[C4 B3] G3 - -", 1, "added tone maj7"),
        ("| D | G |", "D4 - - [D3 E3] | G3 - - -", 2, "tension 9"),
        ("| C |", "G4 [A B] G -", 2, "added tone maj7"),  # a step from A, which is no chord tone
    ],
)
def test_an_escape_tone_steps_one_way_from_a_chord_tone_on_a_weak_place_and_leaps_the_other(
    chords, melody, place, kind
):
    # strong places: common practice, no source
    assert kinds(chords, melody)[place] == kind


@pytest.mark.parametrize(
    ("chords", "melody", "place", "kind"),
    [
        ("| C |", "E4 F A G", 1, "incomplete neighbour"),  # a step from E, and a leap onwards
        ("| C |", "[E4 F] C5 - -", 1, "incomplete neighbour"),
        ("| C | C |", "E4 - - - | F4 A G -", 1, "clash"),  # on a strong place
        ("| C |", "E4 F:2 C5", 1, "clash"),  # long
        ("| C |", "C4 F C -", 1, "clash"),  # a step from nothing
        ("| C |", "E4 F r -", 1, "clash"),  # it hangs in the air
        ("| C |", "D#4 F C5 -", 1, "clash"),  # no second of D sharp
        ("| C |", "Db4 Eb G -", 1, "clash"),  # a step from a note that does not stand
        ("| C |", "D4 Eb G -", 1, "incomplete neighbour"),  # a step from the ninth, which stands
        ("| C |", "G4 C#5 D5 -", 1, "incomplete neighbour"),  # into the ninth
        ("| C |", "C#5 D5 G4 -", 0, "incomplete neighbour"),  # as if leapt to, on the first beat as well
        ("| C |", "C#5:2 D5 G4", 0, "clash"),
        ("| C |", "G4 Db5 D#5 -", 1, "clash"),  # two semitones, but into a note that does not stand
    ],
)
def test_a_short_note_a_step_from_one_that_belongs_is_an_incomplete_neighbour_where_nothing_else_fits(
    chords, melody, place, kind
):
    # which of them clash: common practice, no source
    assert kinds(chords, melody)[place] == kind


@pytest.mark.parametrize(
    ("chords", "melody", "expected"),
    [
        ("| Fmaj7 |", "Bb4 - B4 -", ["clash", "tension #11"]),
        ("| Fmaj7 |", "Bb4 - Bb4 -", ["clash", "clash"]),
        ("| Fmaj7 |", "Bb4 - A4 -", ["appoggiatura", THIRD]),
        ("| Fmaj7 | Fmaj7 |", "Bb4 - B4 - | C5 - - -", ["clash", "tension #11", FIFTH]),  # B stays too long to pass
        ("| Fmaj7 | Fmaj7 |", "r Bb4 - B4 | C5 - - -", ["appoggiatura", "passing tone", FIFTH]),
        ("| Fmaj7 |", "F4 Bb4 B4 F5", [ROOT, "incomplete neighbour", "tension #11", ROOT]),  # short
        ("| C |", "C4 B4 A4 E4", [ROOT, "added tone maj7", "added tone 6", THIRD]),
        ("| C |", "C4 B4 A4 G4", [ROOT, "appoggiatura", "passing tone", FIFTH]),
    ],
)
def test_an_appoggiatura_resolves_to_a_chord_tone_and_not_to_a_tension(chords, melody, expected):
    assert kinds(chords, melody) == expected


def test_over_a_bass_of_its_letter_a_suspension_is_an_octave():
    # D over a diminished seventh chord on D sharp, as in a chorale by J. S. Bach (Riemenschneider 3)
    assert kinds("| G | D#dim7 |", "D5 - - - | D5 C5 - -")[1:] == ["suspension 8-7", SEVENTH]


def test_a_rest_breaks_a_line():
    assert kinds("| C |", "E4 D C -")[1] == "passing tone"
    assert kinds("| C |", "E4 [D r] C -")[1] == "tension 9"
    assert kinds("| C | G |", "C5 - - r | C5 B4 G -")[1] == "appoggiatura"  # not prepared any more


def test_a_note_held_over_a_change_of_chord_is_told_once_for_each_chord():
    found = tones("| C | C/E F | N.C. G7 |", "C5 - - - | - - - - | - - - - ")

    assert [(each.bar, each.number, each.onset, each.beats, each.kind, each.tone) for each in found] == [
        (1, 1, 0, 4, "chord tone", "root"),
        (2, 2, 4, 2, "chord tone", "root"),
        (2, 3, 6, 2, "chord tone", "fifth"),
        (3, 0, 8, 2, "no chord", ""),
        (3, 4, 10, 2, "clash", ""),
    ]


def test_a_chord_that_is_written_again_is_the_same_chord():
    found = tones("| C | C | C F |", "E4 - - - | - - - - | - - - - ")

    assert [(each.bar, each.number, each.beats) for each in found] == [(1, 1, 10), (3, 4, 2)]


def test_notes_without_a_chord_are_told_as_such():
    found = tones("| C | N.C. |", "G4 | E4 - - - | F4 - - - | A4 - - - |")

    assert [(each.bar, each.number, each.kind) for each in found] == [
        (0, 0, "outside the chords"),
        (1, 1, "chord tone"),
        (2, 0, "no chord"),
        (3, 0, "outside the chords"),
    ]


def test_every_member_of_a_chord_is_named():
    names = [each.tone for each in tones("| C13#11 |", "[C4 E G Bb] [D5 F# A Db]")]

    assert names[:-1] == ["root", "third", "fifth", "seventh", "ninth", "sharp eleventh", "thirteenth"]
    assert [each.tone for each in tones("| Csus2 Csus4 |", "D4 G F G")] == ["second", "fifth", "fourth", "fifth"]
    assert [each.tone for each in tones("| C6 Cm7b5 |", "A4 E Gb Bb")] == ["sixth", "third", "fifth", "seventh"]
    assert [each.tone for each in tones("| G7b9 G7#9 |", "Ab4 B4 A#4 Bb4")] == [
        "flat ninth", "third", "sharp ninth", "sharp ninth",
    ]  # fmt: skip


def test_a_foreign_bass_is_a_tone_of_its_chord():
    assert kinds("| C/D |", "D5 - - -") == ["chord tone bass"]
    assert kinds("| Am/G |", "G4 - - -") == ["chord tone bass"]


def test_a_melody_counted_from_another_tonic_is_read_in_the_key_of_the_chords():
    chords = resolve(read_chart("| C | G7 | C |"), key("C"))
    melody = parse_melody("E4 F E D | F - E D | C - - -")

    assert against(melody.read_in(key("G")), chords) == against(melody, chords)


def test_a_suspension_may_be_struck_again():
    assert kinds("| C | G |", "C5 - - - | C5 [C5 C5] B4 -") == [ROOT, *["suspension 4-3"] * 3, THIRD]
    assert kinds("| C | G |", "C5 - - - | C5 C5 G4 -") == [ROOT, "clash", "clash", ROOT]
