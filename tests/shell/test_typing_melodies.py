"""A melody while it is typed: what each part is, what stands below, and that both know what will be refused."""

from __future__ import annotations

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from shell.test_highlighting import check, kinds
from timing import seconds_of

from nearhand.notation.errors import InputError
from nearhand.shell.completion import candidates
from nearhand.shell.notes_in_line import names_a_file
from nearhand.shell.preview import preview
from nearhand.shell.refusals import plain_words
from nearhand.shell.typed_melody import is_refused
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME

NOTHING = Session()
CHORDS = respond(NOTHING, "E minor: | Em | Bm/D | Am/C B7 | Em |").session
IN_C = respond(CHORDS, "to C minor").session
ALONE = respond(NOTHING, "melody G: 5_ | 1 2 3").session
SESSIONS = [NOTHING, CHORDS, IN_C, ALONE]
USE = (
    "melody [NOTES]: put a melody over the chords or alone, and show it in numbers\n"
    "and notes, in one key or several"
)  # fmt: skip
NEEDS_A_KEY = 'needs a key to be read in; put the key in front, as in "G: 5 3 1", or write\nnote names'


@pytest.fixture(scope="module", autouse=True)
def _somewhere_empty(tmp_path_factory):
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(tmp_path_factory.mktemp("desk"))
        yield


# Line, its parts behind the verb.
LINES = [
    ("melody G: 5_ | 1 b2'", "key G:; degree 5_; bar |; degree 1; degree b2'"),
    ("melody E4 F#4 Bb", "note E4; note F#4; note Bb"), ("melody Do Si♭4", "note Do; note Si♭4"),
    ("melody C: do ra' sol_", "key C:; sing do; sing ra'; sing sol_"),
    ("melody 5:2 3:1/2 1.5", "degree 5; bar :2; degree 3; bar :1/2; error 1.5"),
    ("melody C: [5 [6 7]]:2", "key C:; bar [; degree 5; bar [; degree 6; degree 7; bar ]; bar ]; bar :2"),
    ("melody C: {6 7}5(tr):2 r 0",
     "key C:; bar {; degree 6; degree 7; bar }; degree 5; bar (tr); bar :2; bar r; bar 0"),
    ("melody C: 1' - --", "key C:; degree 1'; bar -; bar -; bar -"),
    ("melody C: |: [3/4] 1 - - :|", "key C:; bar |:; bar [3/4]; degree 1; bar -; bar -; bar :|"),
    ("melody E minor: 1, 2,3", "key E minor:; degree 1; degree 2; degree 3"),
    ('melody "G: 5 3" --to C --alone', "key G:; degree 5; degree 3; option --to; word C; option --alone"),
    ("melody E4 --to all F4", "note E4; option --to; word all; note F4"),
    ("melody off", "word off"), ("melody tune.toml", "word tune.toml"),
    ("melody 1' - -- [5 6] {7}1'' - --key C",
     "degree 1'; bar -; bar -; bar -; bar [; degree 5; degree 6; bar ]; bar {; degree 7; bar }; degree 1''; bar -; "
     "option --key; word C"),
    ('show "| C | F |" --melody "1 - 3:2"',
     "bar |; chord C; bar |; chord F; bar |; option --melody; degree 1; bar -; degree 3; bar :2"),
    ('show --melody "E4 x"', "option --melody; note E4; error x"),
    ("show --melody=E4 --to C", "option --melody=; note E4; option --to; word C"),
    ('keys --melody "E F# x G"', "option --melody; note E; note F#; error x; note G"),
    ('parts waltz.toml --melody "do re"', "word waltz.toml; option --melody; sing do; sing re"),
]  # fmt: skip
WRONG = [
    ("b s 1", "error b; error s; degree 1"), ("1 x y 2", "degree 1; error x; error y; degree 2"),
    ("8 ", "error 8"), ("h4 1", "error h4; degree 1"),
    ("c4 1", "error c4; degree 1"), ("1 ] 2", "degree 1; error ]; degree 2"),
    ("1 [] 2", "degree 1; error []; degree 2"),
    ("[1 | 2]", "bar [; degree 1; error |; degree 2; bar ]"), ("1 (tr)", "degree 1; error (; bar tr)"),
    ("5(x) 1", "degree 5; error (x); degree 1"), ("5:0 1", "degree 5; bar :; error 0; degree 1"),
    ("{} 1", "error {}; degree 1"), ("{6x}5 1", "bar {; error 6; error x; bar }; degree 5; degree 1"),
    ("- 1", "error -; degree 1"), ("1'''''''' 1", "error 1''''''''; degree 1"),
    ("| 1 2 3 4 5 ", "bar |; degree 1; degree 2; degree 3; degree 4; error 5"),
    ("| 1:4 | 1 2 | 3", "bar |; degree 1; bar :4; bar |; degree 1; degree 2; error |; degree 3"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), LINES)
def test_a_line_with_a_melody_has_these_parts(line, expected):
    assert "; ".join(kinds(line)[1:]) == expected


@pytest.mark.parametrize(("notes", "expected"), WRONG)
def test_what_is_wrong_is_an_error_and_the_rest_is_told_apart(notes, expected):
    assert "; ".join(kinds(f"melody C: {notes}")) == f"verb melody; key C:; {expected}"


def test_a_mode_that_is_none_is_an_error_and_so_is_a_melody_in_another_key_than_the_chords():
    assert kinds("melody E dorain: 1 ") == ["verb melody", "error dorain", "degree 1"]
    assert kinds("melody G: 1 ", CHORDS) == ["verb melody", "error G", "key :", "degree 1"]


STILL_TYPED = [
    "F", "F#", "b", "#", "##", "♭", "d", "s", "so", "D", "S", "La", "5:", "5:1/", "5:.", "[", "[5", "[5 [6 ", "[5 6",
    "[5 6]:", "[5 b", "{", "{6", "{6 ", "{6 b", "{6}", "{6} ", "{6}#", "{6}5:", "5(", "5(t", "5(tr", "5(mord", "5(tr):",
    "5(tr):1/", "[3/", "[12/", "1 -", "1 --", "1 |", "1 :", "1 |:", "1-b", "1,#", "1 2 |", "1 [5 6][b",
    "5(inverted-", "5(inverted-mor", "5(inverted-turn", "5(inverted-turn)", "5(inverted-turn):", "5(inverted-turn):1/",
    "{6}5(inverted-t",
]  # fmt: skip


@pytest.mark.parametrize("before", ["", "1 2 ", "1 | 2 3 4 5 | "])
@pytest.mark.parametrize("word", STILL_TYPED)
def test_a_last_word_is_not_found_fault_with_while_it_may_become_something(word, before):
    for line in (f"melody C: {before}{word}", f'show "C: | C | F | G |" --melody "{before}{word}'):
        assert [kind for kind in kinds(line) if kind.startswith("error")] == []
        assert preview(line, NOTHING) == "" or preview(line, NOTHING).startswith(
            ("C major: ", "melody", "--melody", "next: ")
        )


KEYS_AND_FILES = [
    "E mi",
    "E minor",
    "E minor:",
    "e",
    "a",
    "b",
    "Bb maj",
    "G:",
    "[3/4",
    "[3/4] 1 '",
    "o",
    "of",
    "off",
    "tune",
    "tune.to",
]


@pytest.mark.parametrize("text", KEYS_AND_FILES)
def test_a_key_or_a_file_that_is_typed_behind_melody_is_not_found_fault_with(text, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "tune.toml").write_text("")

    assert [kind for kind in kinds(f"melody {text}") if kind.startswith("error")] == []


def test_the_value_of_an_option_is_an_error_only_where_nothing_more_is_typed_to_it():
    assert kinds("melody E4 --meter 3/") == ["verb melody", "note E4", "option --meter", "word 3/"]
    assert kinds("melody --meter 3/ E4") == ["verb melody", "option --meter", "error 3/", "note E4"]


def test_a_key_that_is_missing_is_told_and_not_underlined_as_it_may_still_come():
    for line in ("melody 5 3", "melody do", "melody 5_ | 1 2 3 --alone"):
        assert [kind for kind in kinds(line) if kind.startswith("error")] == []
    assert preview("melody 5 3", NOTHING) == f"5 {NEEDS_A_KEY}"
    assert preview("melody do re --key C", NOTHING).startswith("--key")


# Line, what stands below. Notes of the keys and degrees of the notes: counted by hand in the scales (common practice).
BELOW = [
    ("melody", USE), ("melody ", USE), ("melody G:", USE), ("melody off", USE), ("melody -", USE), ("melody |", USE),
    ("melody G: 5_ | 1 2 3", "G major: D3 G3 A3 B3"), ("melody F minor: 1 3 #7 1'", "F minor: F4 A♭4 E5 F5"),
    ("melody C: do me fi sol'", "C major: C4 E♭4 F♯4 G5"),
    ("melody E4 F#4 G4 A4 B4 D#5 E5", "E minor: 1 2 3 4 5 ♯7 1'"),
    ("melody E minor: E4 G4 B4", "E minor: 1 3 5"), ("melody C: 1 - - [5 6] r {7}1' -", "C major: C4 G4 A4 C5"),
    ("melody C: 1 2 b", "C major: C4 D4"), ("melody C: 1 2:", "C major: C4 D4"),
    ("melody C: 1 [2 3", "C major: C4 D4 E4"), ("melody C: 1 {2 3", "C major: C4"),
    ("melody C: 1 2(tr", "C major: C4 D4"), ("melody C: r", USE),
    ("melody C: 1 x", "'x' is no note; write notes: E4 F#4 G, degrees: 1 b3 5', syllables: do re mi, or\nr for a rest"),
    ("melody C: 8", "8 is no degree; write 1' for the octave"),
    ("melody C: | 1 2 3 4 5", "bar 1 is longer than the 4 beats of 4/4; let notes share a beat: [5 6], set a\n"
     "bar line, or a meter: [3/4]"),
    ("melody --alone --meter 3/",
     "--meter METER: the meter of a melody alone, for example 3/4; 4/4 when it is not\ngiven"),
    ("melody E4 --meter 3/", "--meter METER: the meter of a melody alone, for example 3/4; 4/4 when it is not\ngiven"),
    ("melody --meter 3/ E4", "'3/' is no meter; write for example 4/4, 3/4 or 7/8"),
    ("melody E dorain: 1", "'dorain' is no mode; did you mean dorian?"),
    ('show "| C | F |" --melody "1', "C major: C4\nnext: bar 1, beat 2 of 2 bars, over C"),
    ('show "| C | F |" --melody', "--melody NOTES: a melody over the chords or alone: 5_ | 1 2 3 1 |, E4 F#4 [G4\n"
     "A4], do re mi"),
    ('keys --melody "E F#', "--melody NOTES: a melody, alone or with the chords: E4 F#4 [G4 A4], or without\noctaves"),
    ('keys --melody "E 5 ', f"5 {NEEDS_A_KEY}"),
    ("octave s", "'s' cannot follow octave; write octave up, or octave down, or octave nearest"),
    ("way u",
     "way WAY: how a melody goes to another key: the nearest way (a tritone goes up),\nalways up, or always down"),
]  # fmt: skip


@pytest.mark.parametrize(("line", "expected"), BELOW)
def test_this_stands_below_a_melody(line, expected):
    assert preview(line, NOTHING) == expected


OVER_CHORDS = [
    ("1", "C4", "bar 1, beat 2 of 4 bars, over Cm"), ("5_ |", "G3", "bar 1, beat 1 of 4 bars, over Cm"),
    ("5_ | 1", "G3 C4", "bar 1, beat 2 of 4 bars, over Cm"), ("1:4", "C4", "bar 2, beat 1 of 4 bars, over Gm/B♭"),
    ("1 [2", "C4 D4", "bar 1, beat 3 of 4 bars, over Cm"), ("1:1/2", "C4", "bar 1, beat 1 1/2 of 4 bars, over Cm"),
    ("1:9", "C4", "bar 3, beat 2 of 4 bars, over Fm/A♭"), ("1:10", "C4", "bar 3, beat 3 of 4 bars, over G7"),
    ("| 1:4 | #7_ - 2", "C4 B3 D4", "bar 2, beat 4 of 4 bars, over Gm/B♭"),
    ("r", "", "bar 1, beat 2 of 4 bars, over Cm"),
]  # fmt: skip


@pytest.mark.parametrize(("notes", "names", "place"), OVER_CHORDS)
def test_over_chords_it_is_told_where_the_next_note_falls(notes, names, place):
    # the lament in C minor: Cm Gm/Bb Fm/Ab G7 Cm; common practice, no source
    row = f"C minor: {names}\n" if names else ""
    assert preview(f"melody {notes}", IN_C) == f"{row}next: {place}"


def test_the_end_of_the_chords_is_told_and_what_goes_beyond_is_refused():
    assert preview("melody 1:16", IN_C) == "C minor: C4\nall of 4 bars"
    assert preview("melody 1:16 2 ", IN_C).startswith("the melody has 5 bars, the chords have 4 bars; add chords")


def test_the_place_is_left_out_where_there_is_no_room_and_the_last_notes_stay():
    line = f"melody {'1 2 3 5 ' * 3}"

    assert preview(line, IN_C, 40) == "C minor: ... C4 D4 E♭4 G4 C4 D4 E♭4 G4\nnext: bar 4, beat 1 of 4 bars, over Cm"
    assert preview(line, IN_C, 30) == "C minor: ... G4 C4 D4 E♭4 G4\nnext: bar 4, beat 1 of 4 bars"
    assert preview(line, IN_C, 20) == "C minor: ... E♭4 G4"


def test_degrees_are_written_as_the_session_or_an_option_asks():
    major = respond(NOTHING, "degrees major").session
    sung = respond(NOTHING, "sing syllables").session

    assert preview("melody A minor: A3 C4 E4", major) == "A minor: 1 ♭3 5"
    assert preview("melody A minor: A3 C4 E4", sung) == "A minor: do me sol"
    assert preview('melody "A minor: A3 C4 E4" --plain --degrees major ', NOTHING) == "A minor: 1 b3 5"


@pytest.mark.parametrize(
    ("line", "expected"),
    [("to A", "A major: E3 A3 B3 C♯4"), ("to F", "F major: C3 F3 G3 A3"), ("key D", "D major: 1 4 5 6"),
     ("to A, B", "to KEYS: move to a key, to several, or to all twelve")],
)  # fmt: skip
def test_a_melody_alone_is_previewed_in_the_key_one_would_move_to_or_read_it_in(line, expected):
    # D3 G3 A3 B3 a step up, a step down, and counted from D; common practice, no source
    assert preview(line, ALONE) == expected


def test_nothing_is_said_about_the_note_at_the_cursor_while_it_is_typed():
    line = "melody C: 1 2 x 4 5"

    assert preview(line, NOTHING, cursor=len(line)).startswith("'x' is no note")
    assert preview(line, NOTHING, cursor=line.index("x") + 1) == ""


def test_what_may_follow_is_offered():
    with_melody = respond(CHORDS, "melody 1 2 3").session
    texts = {line: {each.text for each in candidates(line, with_melody)} for line in (
        "melody ", "melody o", "melody 1 o", "octave ", "way u", "sing s", "melody 1 -- --al", "melody 5 --sing ",
    )}  # fmt: skip

    assert texts == {
        "melody ": {"off"}, "melody o": {"off"}, "melody 1 o": set(), "octave ": {"up", "down", "nearest"},
        "way u": {"up"}, "sing s": {"syllables"}, "melody 1 -- --al": {"--alone"},
        "melody 5 --sing ": {"numbers", "syllables"},
    }  # fmt: skip
    assert candidates("melody ", CHORDS) == candidates("melody ", ALONE) == ()  # nothing would be left of it


@pytest.mark.parametrize("line", ["melody off", "octave up", "octave down", "way down", "sing syllables"])
def test_every_word_that_is_offered_is_accepted(line):
    respond(respond(CHORDS, "melody 1 2 3").session, line)


NOTES = [
    *("1", "b3", "5_", "7'", "#4", "E4", "F#4", "Bb", "G", "do", "fi", "sol'", "Sol", "r", "0", "-", "--", "|", "|:"),
    *(":|", "[5 6]", "[5", "6]", "[", "]", "{6}5", "{6", "}", "5(tr)", "5(", "(turn)", "5:2", "5:3/2", "5:", ":"),
    *("[3/4]", "[3/", "G:", "E minor:", "x", "8", "h", "c", ",", "'", '"', "--to", "C", "--alone", "--meter 3/4"),
    *("--key D", "1'", "5(inverted-", "5(inverted-turn)"),
]
words_of_melodies = st.lists(st.sampled_from(NOTES), max_size=9).map(" ".join)
SIGNS = "1234567ABCDEFGbr#'_-:|[](){}/., dorefasltimuTS0\"♭x"


@given(st.sampled_from(SESSIONS), words_of_melodies | st.text(SIGNS, max_size=25))
@settings(max_examples=400, suppress_health_check=[HealthCheck.too_slow])
@example(NOTHING, "[")
@example(NOTHING, "{}")
@example(NOTHING, "C:")
@example(IN_C, "1:16 b")
@example(ALONE, "--melody")
@example(NOTHING, "1'''''''' b")
@example(NOTHING, "[3/ --to [5 6]")
@example(NOTHING, "C: 1( --to C tr) 2")
def test_any_melody_is_told_apart_previewed_completed_and_answered_or_refused(session, words):
    for line in (
        f"melody {words}",
        f'show --melody "{words}',
        f'keys --melody "{words}"',
        f"melody --alone {words} --plain",
    ):
        check(line, session)
        candidates(line, session)
        try:
            outcome = respond(session, line)
        except InputError as error:
            assert 0 <= error.start <= error.end
            continue
        check("octave up", outcome.session)
        check("to Eb", outcome.session)


@given(st.sampled_from(SESSIONS), words_of_melodies | st.text(SIGNS, max_size=20))
@settings(max_examples=400)
@example(NOTHING, "E4 - [F4 G4]")
@example(IN_C, "1:17")
def test_it_is_known_beforehand_whether_a_melody_is_refused(session, words):
    line = f"melody {words}"
    try:
        answer = respond(session, line).answer
    except InputError:
        assert is_refused(line, session) or names_a_file(plain_words(BY_NAME["melody"], line).text)
        return
    assert not is_refused(line, session)
    assert "error" not in [kind.split()[0] for kind in kinds(line, session)]
    if preview(line, session, 1000).startswith(str(answer.views[0].key).replace("b ", "♭ ").replace("#", "♯")):
        heard = answer.views[0].melody.sounding()
        assert len(preview(line, session, 1000).split("\n")[0].partition(": ")[2].split()) == len(heard)


LONG = "melody --alone E minor: |: 5_ | {7_}1' -- [5 [6 b7]] | [3/4] r 5(inverted-turn):3/2 [- 6]:1/2 :| --to C"


@pytest.mark.parametrize("session", SESSIONS, ids=["nothing", "chords", "in C", "alone"])
def test_every_prefix_of_a_line_with_a_melody_has_its_parts_and_its_row(session):
    for end in range(len(LONG) + 1):
        check(LONG[:end], session)
        candidates(LONG[:end], session)
        shown = f'show "| C | F |" --melody "{LONG[7:end]}'
        check(shown, session)


def test_a_hundred_notes_are_read_before_the_next_key():
    line = "melody " + "E4 F#4 [G4 A4] B - " * 20
    assert preview(line, NOTHING).startswith("E minor: ... ")

    assert min(seconds_of(lambda: preview(line, NOTHING)) for _ in range(9)) < 0.05  # fast typing is a key in 100 ms


def test_reading_a_melody_writes_and_opens_nothing(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    (tmp_path / "tune.toml").write_text("no chart at all")
    before = repr(CHORDS)
    for line in ("melody 1 2 3", "melody tune.toml", "melody tune", 'show tune.toml --melody "1 2 3"', "melody off"):
        check(line, CHORDS)
        check(line + " ", CHORDS)

    assert repr(CHORDS) == before
    assert [path.name for path in tmp_path.iterdir()] == ["tune.toml"]
