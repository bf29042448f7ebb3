"""Every refusal of a verb: its sentence, the place of its caret, its hint; and nothing is lost by it."""

from __future__ import annotations

import pytest
from verbs.session_words import FALLING_BASS, after, picture, refusal

from nearhand.notation.errors import InputError
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import VERBS

NO_TUNE = ("there is no progression yet", "", 'write chords, for example "| Em | Bm/D | Am/C | B7 |", or open a chart')
KEY_HINT = "write a key such as E minor, Bb major, F#m, or D dorian"
MODES_HINT = "the modes are major, minor, ionian, dorian, phrygian, lydian, mixolydian, aeolian, locrian"
CHORDS_HINT = "help lists the verbs; chords begin with a capital A to G, a numeral or a number"
PUT_A_KEY = 'put the key in front, as in "E minor: i iv V7", or add --key "E minor" (in the shell: key E minor)'
HELP_HINT = "help alone lists the verbs and the topics"
FILE_HINT, FOLDER_HINT = "list shows the charts of a folder", "list FOLDER shows its charts"

WITHOUT_A_TUNE = [
    *((line, *NO_TUNE) for line in ("show", "keys", "explain", "tones", "instead", "to C", "next", "back", "home",
                                 "key", "up", "down 2", "relative", "parallel")),
    ("borrow", "borrow needs a key", "borrow^", "write for example  borrow C major"),
    ("undo", "there is nothing to undo", "", ""),
    ("redo", "there is nothing to redo", "", ""),
    ("i iv V", "i needs a key to be read in", "^i iv V", PUT_A_KEY),
    ("| C | b7 |", "b7 needs a key to be read in", "| C | ^b7 |", PUT_A_KEY),
    ("show 1 4 5", "1 needs a key to be read in", "^1 4 5", PUT_A_KEY),
    ("N.C.", "there are no chords here to find a key from", "^N.C.", PUT_A_KEY),
]  # fmt: skip

# Line, sentence, the shown text with ^ before the first bad character, hint. H is B natural in German
# speaking lands and no chord root here (common practice, no source).
VOICES_HINT = (
    "write voice and one of close, open, drop2, drop3, drop2and4, any, spread, shell, rootless, guide-tones, two-hand, "
    "quartal, upper-structure, four-part, none"
)
WHY_HINT = "write why 2 for its voicing, explain 2 for what the chord does"
WEIGHT_HINT = "write leap 3; 0 switches a cost off, commas part several"
LEFT_HINT = "write one of bass, root, octave, fifth, tenth, none"
SPAN_HINT = "write octave, ninth, tenth, or semitones, such as 14"
REGISTER_HINT = "write the lowest and the highest note, for example G3 E5"
NOTES_HINT = "write notes with their octaves, for example E4 G4 B4; middle C is C4"
LETTER_HINT = "write a capital letter A to G, then # or b if needed"
TOP_HINT = "write free, or falling, or rising, or still, or melody, or one note a chord, for example E5 D5 - C5"
TONES_HINT = "put one over the chords: melody E4 F#4 G4 (or --melody); a chart file holds one beside its chords"
PIN_HINT = "write a chord's number and its notes, for example 2 D4 G4 Bb4"
COSTS_HINT = (
    "write one of movement, bass, leap, shift, common, parallels, hidden, tendency, melody, doubling, range, spacing, "
    "overlap, crossing"
)
MELODY_HINT = "write for example  melody C: 5_ | 1 2 3 1 | 3 - 2 -  or  melody E4 F#4 G4"
NOTE_HINT = "write notes: E4 F#4 G, degrees: 1 b3 5', syllables: do re mi, or r for a rest"
DEGREES_HINT = "write degrees mode, or degrees major, or degrees relative"
SEMITONES_HINT = "write a number from 1 to 11, or none for one"
WITH_A_TUNE = [
    ("shw", "'shw' is neither a verb nor a chord", "^shw", "did you mean show?"),
    ("hlep me", "'hlep' is neither a verb nor a chord", "^hlep me", "did you mean help?"),
    ("  Nxt", "'Nxt' is neither a verb nor a chord", "  ^Nxt", "did you mean next?"),
    ("SHOW", "'SHOW' is neither a verb nor a chord", "^SHOW", "did you mean show?"),
    ("em7 b7", "'em7' is neither a verb nor a chord", "^em7 b7", "chords begin with a capital letter: Em7"),
    ("am", "'am' is neither a verb nor a chord", "^am", "chords begin with a capital letter: Am"),
    ("zzz", "'zzz' is neither a verb nor a chord", "^zzz", CHORDS_HINT),
    ("?", "'?' is neither a verb nor a chord", "^?", CHORDS_HINT),
    ("| Em | Hm |", "H is no chord root", "| Em | ^Hm |", "write B for B natural and Bb for B flat"),
    ("show | Em | Hm |", "H is no chord root", "| Em | ^Hm |", "write B for B natural and Bb for B flat"),
    ("E foo: C", "'foo' is no mode", "E ^foo: C", MODES_HINT),
    ("E dorain: C", "'dorain' is no mode", "E ^dorain: C", "did you mean dorian?"),
    ("C minor:", "there are no chords here", "C minor:^", "write for example | C | F G7 | C |"),
    ("| | C |", "this bar is empty", "| ^| C |", "write % to repeat the bar before, or N.C."),
    ("|: C | F", "this repeat is never closed", "^|: C | F", "write :| where the repeat ends"),
    ("| [3/5] C |", "'3/5' is no meter", "| [^3/5] C |", "write for example 4/4, 3/4 or 7/8"),
    ("| % |", "there is no bar before this one to repeat", "| ^% |", "write the chords of the first bar"),
    ("| / C |", "a / lengthens the chord before it, and there is none", "| ^/ C |", "begin the bar with a chord"),
    ("to", "to needs a key", "to^", "write for example  to G minor  or  to all"),
    ("to H", "'H' is no key", "^H", KEY_HINT),
    ("to C miner", "'miner' is no mode", "C ^miner", "did you mean minor?"),
    ("to C, H minor", "'H minor' is no key", "C, ^H minor", KEY_HINT),
    ("to C,", "a key is missing", "C,^", KEY_HINT),
    ("to C major", "the tune is in E minor, so it cannot move to C major", "^C major", "write C minor"),
    ("to G, Bb dorian", "the tune is in E minor, so it cannot move to Bb dorian", "G, ^Bb dorian", "write Bb minor"),
    ("up 0", "'0' is no number of semitones", "up ^0", SEMITONES_HINT),
    ("up 12", "'12' is no number of semitones", "up ^12", SEMITONES_HINT),
    ("down -1", "'-1' is no number of semitones", "down ^-1", SEMITONES_HINT),
    ("down two", "'two' is no number of semitones", "down ^two", SEMITONES_HINT),
    ("relative C", "nothing may follow relative", "relative ^C", "write relative alone"),
    ("parallel C", "nothing may follow parallel", "parallel ^C", "write parallel alone"),
    ("key H", "'H' is no key", "^H", KEY_HINT),
    ("key A foo", "'foo' is no mode", "A ^foo", MODES_HINT),
    ("voice", "voice needs a word", "voice^", VOICES_HINT),
    ("voice wide", "'wide' cannot follow voice", "voice ^wide", VOICES_HINT),
    ("voice opne", "'opne' cannot follow voice", "voice ^opne", "did you mean voice open?"),
    ("voice very  wide", "'very wide' cannot follow voice", "voice ^very  wide", VOICES_HINT),
    ("loop", "loop needs a word", "loop^", "write loop on, or loop off"),
    ("loop maybe", "'maybe' cannot follow loop", "loop ^maybe", "write loop on, or loop off"),
    ("plain yes", "'yes' cannot follow plain", "plain ^yes", "write plain on, or plain off"),
    ("degrees", "degrees needs a word", "degrees^", DEGREES_HINT),
    ("degrees minor", "'minor' cannot follow degrees", "degrees ^minor", DEGREES_HINT),
    ("sevenths", "sevenths needs a word", "sevenths^", "write sevenths chord, or sevenths scale"),
    ("names french", "'french' cannot follow names", "names ^french",
     "write names english, or names german, or names solfege"),
    ("names gerrman", "'gerrman' cannot follow names", "names ^gerrman", "did you mean names german?"),
    ("colours red", "'red' cannot follow colours", "colours ^red",
     "write colours auto, or colours on, or colours off"),
    ("set symbls jazz", "there is no setting 'symbls'", "set ^symbls jazz", "did you mean set symbols?"),
    ("set symbols neat", "'neat' cannot follow symbols", "set symbols ^neat",
     "write symbols plain, or symbols jazz, or symbols long, or symbols compact, or symbols ascii"),
    ("set  span   99", "no hand spans 99 semitones", "set  span   ^99", "write 19 or less"),
    ("set register C4 X5", "X is no note", "set register C4 ^X5", LETTER_HINT),
    ("set register C4 E4", "chord 1 (Em) has no close voicing between C4 and E4", "",
     "the smallest register that holds all chords is A3 G4"),
    ("recent 1", "there is no recent chart 1", "recent ^1", "open or save a chart first"),
    ("recent waltz", "recent takes the number of a chart", "recent ^waltz",
     "write recent to list them, recent 1 to open the last one"),
    ("recover now", "'now' cannot follow recover", "recover ^now", "write recover, or recover off"),
    ("figures up", "'up' cannot follow figures", "figures ^up", "write figures line, or figures raised"),
    ("symbols neat", "'neat' cannot follow symbols", "symbols ^neat",
     "write symbols plain, or symbols jazz, or symbols long, or symbols compact, or symbols ascii"),
    ("left", "a pattern of the left hand is missing", "left^", LEFT_HINT),
    ("left hand", "'hand' is not a pattern of the left hand", "left ^hand", LEFT_HINT),
    ("left bas", "'bas' is not a pattern of the left hand", "left ^bas", "did you mean bass?"),
    ("span", "a span is missing", "span^", SPAN_HINT),
    ("span wide", "'wide' is not a span", "span ^wide", SPAN_HINT),
    ("span 6", "a hand that spans less than a fifth plays no chord", "span ^6", "write 7 or more"),
    ("span 0", "a hand that spans less than a fifth plays no chord", "span ^0", "write 7 or more"),
    ("span 20", "no hand spans 20 semitones", "span ^20", "write 19 or less"),
    ("span 99999999999999999999", "'99999999999999999999' is not a span", "span ^99999999999999999999", SPAN_HINT),
    ("register", "there are no notes here", "register^", NOTES_HINT),
    ("register C4", "a register has two notes", "register C4^", REGISTER_HINT),
    ("register C4 E4 G4", "a register has two notes", "register C4 E4 G4^", REGISTER_HINT),
    ("register E5 G3", "E5 is not below G3", "register ^E5 G3", REGISTER_HINT),
    ("register C4 X5", "X is no note", "register C4 ^X5", LETTER_HINT),
    ("register C4 E", "E needs its octave", "register C4 E^", NOTES_HINT),
    ("register C4 E4", "chord 1 (Em) has no close voicing between C4 and E4", "",
     "the smallest register that holds all chords is A3 G4"),
    ("tones", "there is no melody to hold against the chords", "tones^", TONES_HINT),
    ("tones 2", "there is no melody to hold against the chords", "tones 2^", TONES_HINT),
    ("top melody", "there is no melody to put on top", "top ^melody",
     "put one over the chords first: melody E4 F#4 G4"),
    ("top", "a top line is missing", "top^", TOP_HINT),
    ("top faling", "'faling' is not a top line", "top ^faling",
     "did you mean falling?, or one note a chord, for example E5 D5 - C5"),
    ("top C5", "no close voicing of chord 1 (Em) has C5 on top", "", "the nearest top note it can carry is B4"),
    ("top E5 D5 C5 B4 A4", "the top line has 5 notes for 4 chords", "",
     "give one note a chord, and - where the top note is free"),
    ("top falling rising", "'falling rising' is not a top line", "top ^falling rising", TOP_HINT),
    ("pin", "a chord's number is missing", "pin^", PIN_HINT),
    ("pin 1 E4 G4 B4; 1 B3 E4 G4", "chord 1 (Em) is pinned to E4 G4 B4 and to B3 E4 G4", "", "keep one of the two"),
    ("pin 1 E4 G4 B4; ", "a chord's number is missing", "pin 1 E4 G4 B4;^ ", PIN_HINT),
    ("pin 5", "there is no chord 5", "pin ^5", "the chords are numbered 1 to 4"),
    ("pin 5 E4 G4 B4", "there is no chord 5 to pin", "", "the chords are numbered 1 to 4"),
    ("pin 1 E4 G4 C5", "E4 G4 C5 is no close voicing of chord 1 (Em)", "", "the nearest one is E4 G4 B4"),
    ("pin two E4", "'two' is not a chord's number", "pin ^two E4", PIN_HINT),
    ("weigh", "a cost is missing", "weigh^", COSTS_HINT),
    ("weigh leap", "a weight is missing", "weigh leap^", WEIGHT_HINT),
    ("weigh leep 3", "'leep' is not a cost", "weigh ^leep 3", "did you mean leap?"),
    ("weigh leap -3", "'-3' is not a weight", "weigh leap ^-3", WEIGHT_HINT),
    ("weigh leap 3, hidden  4 5", "'4 5' is not a weight", "weigh leap 3, hidden  ^4 5",
     "write hidden 3; 0 switches a cost off, commas part several"),
    ("weigh leap big", "'big' is not a weight", "weigh leap ^big", WEIGHT_HINT),
    ("lines | Hm |", "H is no chord root", "| ^Hm |", "write B for B natural and Bb for B flat"),
    ("why", "why needs a chord's number", "why^", WHY_HINT),
    ("why two", "why needs a chord's number", "why two^", WHY_HINT),
    ("why 5", "there is no chord 5", "why ^5", "the chords are numbered 1 to 4"),
    ("others 0", "this is the best path already", "others ^0", "others lists the paths"),
    ("others back", "this is the best path already", "others ^back", "others lists the paths"),
    ("others 51", "paths are counted up to 50", "others ^51", "others lists the paths"),
    ("singer", "singer needs --tune", "singer^",
     "write its lowest and highest note in its own key: C4 E5, as degrees: 5 3, or the whole melody"),
    ("difficulty --choose x", "'x' is no number of keys to choose", "difficulty --choose ^x",
     "write a number from 1 to 12"),
    ("melody", "there is no melody yet", "", MELODY_HINT),
    ("melody off", "there is no melody yet", "", MELODY_HINT),
    ("melody 1 2 x", "'x' is no note", "1 2 ^x", NOTE_HINT),
    ("melody | 1 2 3 | 1 2 | 1", "bar 1 has 2 beats where 4/4 has 4", "| 1 2 3 | 1 2 ^| 1",
     "hold a note with -, write its length as 5:2, add rests with r, or set a meter: [3/4]"),
    ("melody G: 1 2 3", "the chords are in E minor, and this melody is in G major", "^G: 1 2 3",
     "leave the key out to put the melody over these chords, or add --alone to put them away"),
    ("melody 1:17", "the melody has 5 bars, the chords have 4 bars", "1:17^",
     "add chords, shorten the melody, or add --alone to put the chords away"),
    ("melody --alone --meter 4/5 C4", "'4/5' is no meter", "melody --alone --meter ^4/5 C4",
     "write for example 4/4, 3/4 or 7/8"),
    ("octave up", "there is no melody yet", "", MELODY_HINT),
    ("way round", "'round' cannot follow way", "way ^round", "write way nearest, or way up, or way down"),
    ("sing loud", "'loud' cannot follow sing", "sing ^loud", "write sing numbers, or sing syllables"),
    ("to all falling down", "'down' is no order of keys", "all falling ^down",
     "write one of all falling, all rising, all semitones, all tones, all random"),
    ("to C, all tones", "all stands alone", "C,^ all tones", "write all, or the keys with commas between"),
    ("to all backwards", "'backwards' is no order of keys", "all ^backwards",
     "write one of all falling, all rising, all semitones, all tones, all random"),
    ("parts --for tubba", "'tubba' is no instrument here", "parts --for ^tubba", "did you mean tuba?"),
    ("others --count 0", "'0' is no number of paths", "others --count ^0", "write a number from 1 to 50"),
    ("cadences | Hm |", "H is no chord root", "| ^Hm |", "write B for B natural and Bb for B flat"),
    ("explain 1 2", "explain takes one chord's number", "explain ^1 2",
     "write explain 1; numbers of a chart stand between bar lines, or take --key"),
    ("explain 5", "there is no chord 5", "explain ^5", "the chords are numbered 1 to 4"),
    ("instead", "instead needs a chord's number", "instead^", "write for example  instead 2"),
    ("instead 5", "there is no chord 5", "instead ^5", "the chords are numbered 1 to 4"),
    ("borrow H", "'H' is no key", "^H", KEY_HINT),
    ("layout", "layout needs a word", "layout^", "write layout drawn, or layout spoken"),
    ("layout loud", "'loud' cannot follow layout", "layout ^loud", "write layout drawn, or layout spoken"),
    ("paging yes", "'yes' cannot follow paging", "paging ^yes", "write paging on, or paging off"),
    ("help zzz", "'zzz' is neither a verb nor a topic", "help ^zzz", HELP_HINT),
    ("help shwo", "'shwo' is neither a verb nor a topic", "help ^shwo", "did you mean help show?"),
    ("help zzz  yyy", "'zzz yyy' is neither a verb nor a topic", "help ^zzz  yyy", HELP_HINT),
    ("help chord simbol", "'chord simbol' is neither a verb nor a topic", "help ^chord simbol",
     "did you mean help chord symbol?"),
    ("run", "there is no example to run", "^run", "help minor, or help on any other topic, has some; so has tour"),
    ("tour 11", "there is no step 11", "tour ^11", "the steps are numbered 1 to 10"),
    ("tour 0", "there is no step 0", "tour ^0", "the steps are numbered 1 to 10"),
    ("tour back", "the tour has not begun", "tour ^back", "tour begins at the first"),
    ("tour nxt", "'nxt' cannot follow tour", "tour ^nxt", "did you mean tour next?"),
    ("tour three", "'three' cannot follow tour", "tour ^three", "write tour next, or tour back"),
    ("open", "open needs a file", "open^", "write for example  open waltz.toml"),
    ("open none.toml", "there is no file none.toml", "^none.toml", FILE_HINT),
    ("show none.toml", "there is no file none.toml", "^none.toml", FILE_HINT),
    ("completion", "a shell is missing", "completion^", "write bash, or zsh, or fish"),
    ("completion sh", "'sh' is not a shell that is known here", "completion ^sh", "did you mean zsh?"),
    ("completion zsh fish", "'zsh fish' is not a shell that is known here", "completion ^zsh fish",
     "write bash, or zsh, or fish"),
    ("list nowhere", "there is no folder nowhere", "^nowhere", FOLDER_HINT),
    ("save", "save needs a file name", "save^", "write for example  save waltz.toml"),
    ("redo", "there is nothing to redo", "", ""),
]  # fmt: skip


@pytest.mark.parametrize(("line", "sentence", "marked", "hint"), WITHOUT_A_TUNE)
def test_without_a_tune_a_verb_says_what_is_missing(line, sentence, marked, hint, desk):
    assert picture(refusal(line)) == (sentence, marked, hint)


@pytest.mark.parametrize(("line", "sentence", "marked", "hint"), WITH_A_TUNE)
def test_a_line_is_refused_by_a_sentence_with_its_place_and_a_hint(line, sentence, marked, hint, desk):
    assert picture(refusal(line, after(FALLING_BASS))) == (sentence, marked, hint)


def test_every_verb_that_can_be_refused_is_in_the_tables():
    seen = {line.split()[0] for line, *_ in (*WITHOUT_A_TUNE, *WITH_A_TUNE)}

    assert {verb.name for verb in VERBS} - seen == {"quit"}


@pytest.mark.parametrize("line", [row[0] for row in WITH_A_TUNE])
def test_a_refused_line_leaves_everything_as_it_was(line, desk):
    session = after(FALLING_BASS, "degrees major", "loop on")
    before, folder = repr(session), sorted(desk.iterdir())

    refusal(line, session)

    assert repr(session) == before
    assert sorted(desk.iterdir()) == folder


def test_a_long_line_is_shown_around_the_place():
    line = "| " + "C | " * 50 + "Hm | " + "C | " * 50

    sentence, marked, _ = picture(refusal(line))

    assert sentence == "H is no chord root"
    assert marked == "...| C | C | C | C | C | C | C | ^Hm | C | C | C | C | C | C | C..."


def test_a_refusal_is_a_value_error_with_its_parts():
    with pytest.raises(ValueError, match="H is no chord root") as caught:
        respond(Session(), "| Em | Hm |")

    error = caught.value
    assert type(error) is InputError
    assert (error.text, error.start, error.end, error.wanted) == ("| Em | Hm |", 7, 8, "a chord root")


def test_a_number_of_a_chord_is_wanted_and_named():
    error = refusal("explain 9", after(FALLING_BASS))

    assert (error.start, error.end, error.wanted) == (8, 9, "a chord's number")


@pytest.mark.parametrize(
    "line", ["open a\x1b[31mb.toml", "list \x1b[31m", "show --\x07loop", "to \x9b31m", "open \0.toml"]
)
def test_a_refusal_never_carries_a_control_character_to_the_screen(line, desk):
    printed = str(refusal(line, after(FALLING_BASS)))

    assert all(character.isprintable() for character in printed.replace("\n", ""))
