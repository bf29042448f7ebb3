"""Melodies typed into the shell: keys through a pipe, pastes, suggestions, a killed shell, a real terminal."""

from __future__ import annotations

import re
import signal

import pytest
from prompt_toolkit.buffer import Buffer
from prompt_toolkit.document import Document
from prompt_toolkit.history import InMemoryHistory
from shell.test_pseudo_terminal import Terminal
from shell.test_typed_keys import CTRL_C, ENTER, LAMENT, RIGHT, TAB, answers, keyboard  # noqa: F401  # a fixture

from nearhand.shell.pasting import joined
from nearhand.shell.suggesting import MOST_READ, suggest_answered
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

CTRL_U = "\x15"
HOLDS_AND_MARKS = "melody --key C 1' - -- [5 6] {7}1'' -"
OVER_CHORDS = "melody 1' - 5 3 | 2 - 7_ - | 1 - 4 3 | 2 - #7_ -"


def test_holds_and_octave_marks_are_typed_without_quotes(keyboard):  # noqa: F811
    lines = (HOLDS_AND_MARKS, LAMENT, OVER_CHORDS, "to C minor", "octave up", "way down", "melody off", "undo")
    _, printed, _ = keyboard(*(line + ENTER for line in lines))

    assert printed == answers(*lines)
    assert "is not closed" not in printed and "has no option" not in printed


def test_the_row_below_goes_along_with_what_is_typed(keyboard):  # noqa: F811
    typed = "melody 1' - 5 3 | 2"
    _, _, paper = keyboard(LAMENT + ENTER, (typed, typed), CTRL_C, ("melody 1 x ", "melody 1 x "), CTRL_C)

    # degrees of E minor, the lament's second chord: common practice, no source
    assert "E minor: E5 B4 G4 F♯4" in paper
    assert "next: bar 2, beat 2 of 4 bars, over Bm/D" in paper
    assert "'x' is no note" in paper


@pytest.mark.parametrize(
    ("typed", "completed"),
    [("melody o", "melody off"), ("octave n", "octave nearest"), ("way u", "way up"), ("sing sy", "sing syllables"),
     ("melody 1 -- --alo", "melody 1 -- --alone"), ("melody tu", "melody tune.toml"),
     ("melody 1 2 --sing nu", "melody 1 2 --sing numbers")],
)  # fmt: skip
def test_tab_completes_what_may_follow(typed, completed, keyboard, tmp_path):  # noqa: F811
    (tmp_path / "tune.toml").write_text('key = "C"\n[[sections]]\nmelody = "1 2 3 1"\n')

    keyboard(LAMENT + ENTER, OVER_CHORDS + ENTER, (typed + TAB, completed), CTRL_C)


# Pasted lines, the line they become, its bars of notes.
PASTES = [
    ("5_ |\n1 2 3 1 |\n3 - 2 - |", "5_ | 1 2 3 1 | 3 - 2 - |", 3),
    ("| 1 2 3 1\n| 3 - 2 -", "| 1 2 3 1 | 3 - 2 -", 2),
    ("1 2 3 1 | 3 - 2 -\n4 3 2 1", "1 2 3 1 | 3 - 2 - | 4 3 2 1", 3),
    ("1 2 3 1\n3 - 2 -", "1 2 3 1 3 - 2 -", 2), ("1 2 3 1 |\n\n# again\n- 2 3 1 |", "1 2 3 1 | - 2 3 1 |", 2),
    ("#4 5 #4 5 |\n#4 5 #4 5", "#4 5 #4 5 | #4 5 #4 5", 2), ('"1 2 3 1 |"\n"3 - 2 - |"', "1 2 3 1 | 3 - 2 - |", 2),
    ("1' 2' 3' 1' |\n3' - 2' - |", "1' 2' 3' 1' | 3' - 2' - |", 2), ("[3/4] 1 - 2 |\n3:2 2", "[3/4] 1 - 2 | 3:2 2", 2),
    ("[5 6] 5\t[4 3]:2 |\r\n{2}1(tr) - - r |\r\n", "[5 6] 5 [4 3]:2 | {2}1(tr) - - r |", 2),
]  # fmt: skip


@pytest.mark.parametrize(("pasted", "line", "bars"), PASTES)
def test_pasted_lines_of_a_melody_become_its_bars(pasted, line, bars):
    assert joined(pasted) == line
    for text in (f"melody C: {joined(pasted)}", joined(f"melody C:\n{pasted}")):
        assert len(respond(Session(), text).session.tune.melody.bars) == bars


def test_a_paste_behind_the_verb_is_answered_as_one_melody(keyboard):  # noqa: F811
    paste = "\x1b[200~5_ |\n1 2 [3 4] 5 |\n6 - 5 - |\x1b[201~"

    _, printed, _ = keyboard("melody G: " + paste + ENTER)

    assert printed == answers("melody G: 5_ | 1 2 [3 4] 5 | 6 - 5 - |")


def suggested(typed, lines, session, refused=()):
    """What is suggested behind a text with a history, oldest line first; None for nothing."""
    history = InMemoryHistory(list(lines))
    history.get_strings = lambda: list(lines)
    found = suggest_answered(set(refused), lambda: session).get_suggestion(Buffer(history=history), Document(typed))
    return found and typed + found.text


OLD, OTHER_KEY, NAMES = "melody 5_ | 1 2 3 4", "melody F: 1 2 3", "melody E4 F#4"
CHORDS = respond(Session(), LAMENT).session


def test_a_melody_that_would_be_refused_now_is_not_suggested():
    history = (NAMES, OTHER_KEY, OLD)

    assert suggested("mel", history, Session()) == OTHER_KEY  # without a key OLD is refused
    assert suggested("mel", history, CHORDS) == OLD
    assert suggested("mel", (NAMES, OLD, OTHER_KEY), CHORDS) == OLD  # the chords are in E minor
    assert suggested("melody E", history, Session()) == NAMES
    assert suggested("melody 5", history, Session()) is None
    assert suggested("mel", history, CHORDS, refused=[OLD]) == NAMES
    assert suggested('show "', (f'show "{LAMENT}" --melody "1 2"', f'show "{LAMENT}" --melody "1 x"'), Session()) == (
        f'show "{LAMENT}" --melody "1 2"'
    )


@pytest.mark.parametrize(
    "line", ["melody '1 2", "melody 1 [2", "melody 1 --tp C", "melody off", "melody 1:17", "melody"]
)
def test_no_line_that_is_refused_is_suggested(line):
    assert suggested("melody", (line,), CHORDS) is None


def test_only_some_melodies_are_read_to_find_one():
    assert suggested("mel", (NAMES, *[f"melody 5 {number}" for number in range(MOST_READ)]), Session()) is None


def test_other_lines_are_suggested_as_before():
    assert suggested("to", ("to C", "to H"), CHORDS, refused=["to H"]) == "to C"
    assert suggested("", ("to C",), CHORDS) is None


def test_a_line_that_is_answered_at_last_is_suggested_again(keyboard):  # noqa: F811
    lines = (OLD, LAMENT, OLD)
    _, printed, _ = keyboard(
        *(line + ENTER for line in lines),
        ("waits", "waits"),
        (CTRL_U, ""),
        ("melody 5", "melody 5"),
        (RIGHT, OLD),
        CTRL_C,
    )

    assert printed.endswith(answers(LAMENT, OLD))


def test_a_melody_on_a_real_terminal_survives_a_kill(program):
    terminal = Terminal(program, 80, 24)
    try:
        terminal.read_until("chords>")
        terminal.answer_to("| Em | Bm/D | Am/C | B7 |", "held", "E minor>")
        terminal.type("melody 1' - 5 3 | 2 - x")
        terminal.read_until("'x' is no note")
        assert re.search(r"\x1b\[[0-9;]*;4m", terminal.raw)  # what is wrong is underlined
        terminal.type("\x7f7_ -")
        terminal.read_until(" 3, beat 1 of 4 bars, over Am/C")  # only what changed is drawn anew
        shown = terminal.answer_to("", "an octave down", "E minor>")
        for line in ("to C", "octave up", "way down"):
            terminal.answer_to(line, "an octave down", "C minor>")
        terminal.process.send_signal(signal.SIGKILL)
    finally:
        terminal.close()
    again = Terminal(program, 40, 20)
    try:
        again.read_until("brings it back.")
        back = again.answer_to("recover", "a time.", "C minor>")
        again.answer_to("melody", "an octave down", "C minor>")
        again.type("melody 1 2 3 5 | 6 b7")
        again.read_until("next: bar 2, beat 3 of 4 bars")
        again.type("\x03")
        again.type("\x04")
    finally:
        status = again.close()

    assert status == 0
    # E minor counted by hand: 1' is E5 above the E of middle C's octave; 7 is the low D
    assert [note for note in ("E5", "B4", "G4", "F♯4", "D4") if note not in shown] == []
    assert [note for note in ("C6", "G5", "E♭5", "D5", "B♭4") if note not in back] == []
    assert max(len(line.rstrip()) for line in back.split("\n")[1:]) <= 40
    assert "Traceback" not in terminal.screen + again.screen
