"""Whatever is typed, the answer is an answer or a refusal with a place in the text: nothing else comes out."""

from __future__ import annotations

import contextlib

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from verbs.session_words import FALLING_BASS, after

from nearhand.notation.errors import InputError
from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import VERBS

PLAYING = after("G minor: |: i | iv6 V7 | [3/4] VI / N.C. | V7/V :|", "to C minor")
SESSIONS = [Session(), PLAYING]

REAL_LINES = [
    FALLING_BASS, "E minor: | i | v6 | iv6 | V7 |", "D dorian: 1- 4 b7 1-/5", "|: C | F G7 / / :| [3/4] N.C. | % ||",
    'show "| Em | B7 |" --to "C minor,G minor" --voicing none', "show --to all --degrees major --plain --loop",
    "keys | Am | F | C | G | --json", "explain 2",
    "tones", "tones 2", 'tones "C: | C | G7 N.C. |" 1 --melody "5_ | 1 4 [3 #4] b7 | 2"', "top melody",
    'explain "| C | E7 |" 1', "list progressions", "to Bb, F#m, all",
    "borrow Eb minor", "borrow", "instead 2", 'instead "C: C G7 C" 2',
    "next", "back", "home", "key Ab lydian", "voice none", "loop off", "degrees major", "open no.toml", "undo", "redo",
    "set", "set symbols jazz", "set register G3 E5", "set span default", "set plain off", "names german", "colours off",
    "recent", "recent 1", "recover", "recover off", "show --names solfege", "explain --names german",
    "voice drop2", "voice four-part", "left fifth", "span tenth", "span 13", "register C4 F#5", "register moves",
    "top falling", "top E5 - Bb4 C5", "pin 2", "pin 2 D4 G4 Bb4; 1 C4 F4 A4", "pin 2 off", "weigh leap 3, hidden 2",
    "others", "others 2", "others next --count 3", "why 2", "lines", 'why "| Dm7 | G7 | C |" 2 --voicing shell --loop',
    'lines "| C | N.C. | F |" --voicing rootless --top "- E4"', 'others "C: C G7" next --voicing any --path 2',
    'show "| C | F |" --left tenth --span=16 --register "E3 A5" --first "E4 G4 C5" --last "A4 C5 F5"',
    "melody G: 5_ | 1 2 [3 4] 5 | 6 b7 6:2 |", "melody 1' - -- {7}1''(tr):2 [- [5 6]]:3 -",
    "melody Do Re4 F#, r 0 --alone", 'show "| C | F |" --melody "E4 - [F4 G4] A" --way up', "octave up", "way down",
    "sing syllables", "melody off", "help show", "quit",
    "| Cmaj7#11/G | F#m7b5 | Bb13(b9,#11) | Ebsus4 | Adim7/C |", "C: bVII V65/V viiø7/ii N6 i64",
]  # fmt: skip
LONG_LINES = [
    'show "E minor: |: Em | Bm/D :| [3/4] Am/C / B7 | N.C. | % ||" --to "C minor, G minor" --voicing=close --loop',
    "C# minor: |: i i(maj7) | i7 i6 | iv7 | V7b9 :| [6/8] V65/V / / V7 / / | bII6 N.C. :|",
    "show | Cmaj7#11/G | F#m7b5 | Bb13(b9,#11) | --key=F#m --degrees major --plain --json",
    "explain 1 4 57 | 6-/5 2-7 | --key Bb 3",
    "melody --alone E minor: |: 5_ | {7_}1' -- [5 [6 b7]] | [3/4] r 5(tr):3/2 [- 6]:1/2 :| --to C --sing numbers",
    'instead "| Cmaj7#11/G | F#m7b5 B7 | Em |" 3 --key G --degrees major',
    "borrow F# dorian --degrees major --plain",
    'show "| Dm7 | G7 |" --key C --to F --voicing drop2 --span tenth --left octave --register "E3 A5" --top "D5 -" '
    '--pin "2 G3 D4 F4 B4" --weights "leap 3, bass 1" --path 1 --loop --json',
    'why "C: | C | F/A | G7 |" 2 --voicing=four-part --first "E4 C5" --last "F4 B4" --weights off --register moves',
]  # fmt: skip


def check(session: Session, line: str) -> None:
    """Answer a line and draw the answer; a refusal must have its place in the text, and be printable."""
    try:
        outcome = respond(session, line)
        text_of(draw(outcome.answer, Page(40, plain=False)))
        assert outcome.session.shown_key is not None or outcome.session.tune is None
    except InputError as error:
        assert error.what
        assert 0 <= error.start <= len(error.text)
        assert error.start <= error.end
        assert str(error)


@pytest.fixture(scope="module", autouse=True)
def _somewhere_empty(tmp_path_factory):
    with contextlib.chdir(tmp_path_factory.mktemp("desk")), pytest.MonkeyPatch.context() as patch:
        for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):  # XDG Base Directory Specification
            patch.setenv(name, str(tmp_path_factory.mktemp("home")))
        yield


@given(st.sampled_from(SESSIONS), st.text(st.characters(), max_size=40))
@settings(max_examples=300)
def test_any_text_is_answered_or_refused(session, line):
    check(session, line.replace("/", "|") if "save" in line else line)


@given(st.sampled_from(SESSIONS), st.text("ABCDEFGbm#7/|:[]%-.1234567iIvV o°ø+(),susdimajN\"'", max_size=25))
@settings(max_examples=400)
@example(Session(), "C: N.C.")
def test_any_row_of_the_signs_of_music_is_answered_or_refused(session, line):
    check(session, line)


@st.composite
def mutated_lines(draw_value):
    """A real line with some characters taken out, doubled, put in or changed for others."""
    line = draw_value(st.sampled_from(REAL_LINES))
    for _ in range(draw_value(st.integers(1, 4))):
        at = draw_value(st.integers(0, len(line)))
        length = draw_value(st.integers(0, 3))
        new = draw_value(st.text(st.characters(), max_size=2) | st.sampled_from([*"|:[]%/\"'-=#b7N ", "--", line]))
        line = line[:at] + new + line[at + length :]
    return line


@given(st.sampled_from(SESSIONS), mutated_lines())
@settings(max_examples=400, suppress_health_check=[HealthCheck.too_slow])
@example(PLAYING, "voice open  wide")
@example(PLAYING, "explain 0000000019")
def test_a_real_line_with_slips_is_answered_or_refused(session, line):
    check(session, line.replace("save", "show"))


@given(
    st.sampled_from(SESSIONS),
    st.sampled_from([verb.name for verb in VERBS]),
    st.lists(
        st.sampled_from(
            ["--to", "--key", "--loop", "--voicing", "none", "all", "C", "Em", "|", "1", "9", "''", '"', "=", "--",
             "--top", "--pin", "--span", "--first", "--weights", "--path", "drop2", "falling", "E4", "-", "off", ";"]
        ),
        max_size=5,
    ),
)  # fmt: skip
def test_any_words_behind_a_verb_are_answered_or_refused(session, verb, words):
    check(session, " ".join([verb, *words]))


@pytest.mark.parametrize("line", LONG_LINES)
def test_every_prefix_of_a_long_line_is_answered_or_refused(line):
    for end in range(len(line) + 1):
        for session in SESSIONS:
            check(session, line[:end])


def test_the_long_lines_themselves_are_answered():
    for line in LONG_LINES:
        respond(Session(), line)


def test_ten_thousand_chords_are_answered():
    row = " ".join(["C", "Am7", "F", "G7", "Em/B"] * 2000)

    view = respond(Session(), row).answer.views[0]

    assert len(view.chords) == len(view.voiced.voicings) == 10_000
    assert view.chords[-1].moment.bar == 10_000


def test_ten_thousand_chords_are_drawn_to_the_last():
    answer = respond(Session(), "show --voicing none --key C " + " ".join(["C", "Am7", "F", "G7"] * 2500)).answer

    assert text_of(draw(answer, Page(80, plain=True))).count("G7") == 2500
