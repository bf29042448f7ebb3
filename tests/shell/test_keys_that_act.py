"""Every key that acts, typed; in Emacs and in vi editing; and what stays with line editing."""

from __future__ import annotations

import pytest
from prompt_toolkit.key_binding.bindings.emacs import load_emacs_bindings
from prompt_toolkit.key_binding.bindings.vi import load_vi_bindings
from shell.test_typed_keys import CTRL_C, CTRL_E, ENTER, LAMENT, RIGHT, TAB, answers, keyboard  # noqa: F401  # a fixture

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.shell.bindings import ACTIONS, EDITING, line_of, stepped
from nearhand.shell.prompt import Desk
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

CODES = {
    "f1": "\x1bOP", "f2": "\x1bOQ", "f3": "\x1bOR", "f4": "\x1bOS", "f5": "\x1b[15~", "f6": "\x1b[17~",
    "f7": "\x1b[18~", "f8": "\x1b[19~", "f9": "\x1b[20~", "f10": "\x1b[21~", "f11": "\x1b[23~", "f12": "\x1b[24~",
}  # fmt: skip
"""What a terminal sends for the function keys (xterm control sequences, VT220 style)."""
ESCAPE, CTRL_Q, F12 = "\x1b", "\x11", CODES["f12"]
ACTING = [action for action in ACTIONS if action.line != EDITING]
LINES = {"next chord": "explain 1", "chord before": "explain 4", "loop": "loop on"}


def typed(action):
    return LINES.get(action.line, action.line)


@pytest.mark.parametrize("editing", ["emacs", "vi"])
@pytest.mark.parametrize("action", [each for each in ACTING if each.sign], ids=lambda action: action.line)
def test_a_sign_on_the_empty_line_acts(action, editing, keyboard):  # noqa: F811
    first = [F12] if editing == "vi" else []
    before = ["others next"] if action.line == "others back" else []

    _, printed, _ = keyboard(*first, LAMENT + ENTER, *(line + ENTER for line in before), action.sign)

    assert printed == answers(LAMENT, *before, typed(action))


@pytest.mark.parametrize("editing", ["emacs", "vi"])
@pytest.mark.parametrize("action", [each for each in ACTING if each.function_key], ids=lambda action: action.line)
def test_a_function_key_acts_and_a_line_half_typed_stays(action, editing, keyboard):  # noqa: F811
    first = [F12] if editing == "vi" else []
    before = ["others next"] if action.line == "others back" else []

    _, printed, _ = keyboard(
        *first, LAMENT + ENTER, *(line + ENTER for line in before), ("to C mi", "to C mi"), CODES[action.function_key],
        ("", "to C mi"), "nor" + ENTER,
    )  # fmt: skip

    assert printed == answers(LAMENT, *before, typed(action), "to C minor")


@pytest.mark.parametrize("keys", ["?", CODES["f1"]])
def test_the_list_of_keys_is_shown_and_the_line_goes_on(keys, keyboard):  # noqa: F811
    _, printed, _ = keyboard(LAMENT + ENTER, keys, "next" + ENTER)

    assert printed == answers(LAMENT, "help keys", "next")


def test_every_action_is_in_the_list_of_keys():
    listed = text_of(draw(respond(Session(), "help keys").answer, Page(80)))

    for action in ACTIONS:
        row = next(row for row in listed.split("\n") if row.rstrip().endswith(f"  {action.help}"))
        assert action.sign in row and action.function_key.upper() in row


def test_chords_are_explained_one_by_one_and_round(keyboard):  # noqa: F811
    _, printed, _ = keyboard(
        LAMENT + ENTER, ".", ".", ",", ",", "explain 3" + ENTER, ".", "next" + ENTER, ".", "| C | F |" + ENTER, "."
    )

    lines = [f"explain {number}" for number in (1, 2, 1, 4, 3, 4)]
    assert printed == answers(LAMENT, *lines, "next", "explain 1", "| C | F |", "explain 1")


def test_the_loop_is_switched_on_and_off(keyboard):  # noqa: F811
    assert keyboard(LAMENT + ENTER, "*", "*")[1] == answers(LAMENT, "loop on", "loop off")


def test_keys_without_a_tune_are_answered_by_a_sentence(keyboard):  # noqa: F811
    without = ("loop", "others back", "help keys")
    _, printed, _ = keyboard(*[action.sign for action in ACTING if action.line not in without])

    assert printed.count("there is no progression yet") == len(ACTING) - len(without)


def test_a_sign_is_typed_where_it_is_music_or_where_it_is_asked_for(keyboard):  # noqa: F811
    keyboard(("C", "C"), ("-", "C-"), ("+", "C-+"), ("/", "C-+/"), (".", "C-+/."), CTRL_C)
    keyboard((CTRL_Q + "+", "+"), CTRL_C)
    keyboard((" ", " "), ("=", " ="), CTRL_C)


def test_lines_that_keys_type_are_no_history(keyboard, tmp_path):  # noqa: F811
    keyboard(LAMENT + ENTER, ">", "<")

    assert [row for row in (tmp_path / "history").read_text().split("\n") if row.startswith("+")] == [f"+{LAMENT}"]


@pytest.mark.parametrize("keys", [RIGHT, CTRL_E])
@pytest.mark.parametrize("editing", ["emacs", "vi"])
def test_the_grey_end_from_the_history_is_taken(keys, editing, keyboard):  # noqa: F811
    first = [F12] if editing == "vi" else []
    steps = [*first, LAMENT + ENTER, ("E min", "E min")]

    status, printed, _ = keyboard(*steps, (keys, LAMENT), ENTER)

    assert (status, printed) == (0, answers(LAMENT, LAMENT))


def test_vi_moves_and_deletes_by_words_and_signs_keep_their_meaning_there(keyboard):  # noqa: F811
    _, printed, _ = keyboard(
        F12, LAMENT + ENTER, ("to C minor", "to C minor"), ESCAPE, ("bcw", "to C "), "minor" + ENTER
    )

    assert printed == answers(LAMENT, "to C minor")


def test_emacs_moves_and_deletes_as_it_does(keyboard):  # noqa: F811
    keyboard(("to C minor", "to C minor"), ("\x17", "to C "), ("\x01\x0b", ""), ("\x19", "to C "), CTRL_C)


def test_f12_goes_there_and_back(keyboard):  # noqa: F811
    _, printed, _ = keyboard(F12, F12, LAMENT + ENTER, ("to G", "to G"), ("\x01\x0b", ""), "next" + ENTER)

    assert printed == answers(LAMENT, "next")


def test_no_key_that_acts_is_one_of_line_editing():
    editing = {str(getattr(key, "value", key)) for load in (load_emacs_bindings, load_vi_bindings)
               for binding in load().bindings if len(binding.keys) == 1 for key in binding.keys}  # fmt: skip

    functions = [action.function_key for action in ACTIONS if action.function_key]
    assert set(functions) == set(CODES)
    assert not set(functions) & editing
    signs = [action.sign for action in ACTIONS if action.sign]
    assert len(signs) == len(set(signs))
    assert all(len(sign) == 1 and not sign.isalnum() for sign in signs)  # vi's own meanings hold outside of typing


@pytest.mark.parametrize("action", [each for each in ACTIONS if each.sign], ids=lambda action: action.sign)
def test_no_line_begins_with_a_sign_that_acts(action):
    for rest in ("", "C", " C", "7"):
        try:
            respond(Session(), f"C: {action.sign}{rest}")
        except ValueError:
            continue
        assert action.sign in "-,"  # these only stand between chords


def test_the_lines_of_the_keys_follow_the_session():
    session = respond(Session(), LAMENT).session
    lines = {action.line: line_of(action, session, 2) for action in ACTIONS}

    assert (lines["next chord"], lines["chord before"], lines["loop"]) == ("explain 3", "explain 1", "loop on")
    assert line_of(ACTIONS[10], respond(session, "loop on").session, 0) == "loop off"
    assert [stepped(place, 3, 1) for place in (0, 1, 2, 3, 7)] == [1, 2, 3, 1, 1]


PASTE, END = "\x1b[200~", "\x1b[201~"


def test_pasted_lines_become_bars_of_one_line(keyboard):  # noqa: F811
    line = "E minor: | Em | Bm/D | Am/C | B7 |"
    _, printed, _ = keyboard((f"{PASTE}E minor:\n| Em | Bm/D |\n| Am/C | B7 |{END}", line), ENTER)

    assert printed == answers(line)


def test_pasted_lines_go_where_one_types(keyboard):  # noqa: F811
    keyboard(("show ", "show "), (f"{PASTE}| Em |\n| B7 |{END}", "show | Em | B7 |"), CTRL_C)


def test_a_megabyte_of_paste_leaves_the_line_as_it_was(keyboard):  # noqa: F811
    paste = f"{PASTE}{'| C | F |' * 111_112}{END}"

    _, printed, _ = keyboard(LAMENT + ENTER, paste, ("ne", "ne"), paste, ("xt", "next"), ENTER)

    assert printed == answers(LAMENT, "next")


def test_the_preview_stands_below_the_line(keyboard):  # noqa: F811
    _, _, paper = keyboard(("| Em | Bm/D | Am/C | B7", "| Em | Bm/D | Am/C | B7"), CTRL_C, ("| Hm |", "| Hm |"), CTRL_C)

    assert "E minor: i v6 iv6 V7" in paper
    assert "H is no chord root; write B for B natural and Bb for B flat" in paper


def test_a_likely_chord_is_completed_and_a_typed_one_is_kept(keyboard):  # noqa: F811
    keyboard(("| Em | Am | B7 | C | D" + TAB, "| Em | Am | B7 | C | D"), CTRL_C)
    keyboard(("A minor: | Am | F | Bd" + TAB, "A minor: | Am | F | Bdim"), CTRL_C)


def test_a_desk_forgets_a_half_typed_line_once_it_is_taken_up():
    class Prompt:
        def prompt(self, message, default):
            return default or "explain 2"

    desk = Desk([Session()])
    desk.half_typed = "to C"

    assert [desk.read(Prompt(), ""), desk.read(Prompt(), "")] == ["to C", "explain 2"]
    assert desk.place == 2
