"""Keys typed into the shell, through a pipe in place of a keyboard."""

from __future__ import annotations

import threading
import time

import pytest
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from nearhand.render.answers import draw
from nearhand.render.page import Page, text_of
from nearhand.shell import terminal
from nearhand.shell.journal import NOT_SAVED
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

ENTER, TAB, UP, CTRL_A, CTRL_C, CTRL_D = "\r", "\t", "\x1b[A", "\x01", "\x03", "\x04"
RIGHT, CTRL_E = "\x1b[C", "\x05"
LAMENT = "E minor: | Em | Bm/D | Am/C | B7 |"


class Paper(DummyOutput):
    """A terminal that keeps what is written on it."""

    def __init__(self) -> None:
        self.written = ""

    def write(self, data: str) -> None:
        self.written += data

    def write_raw(self, data: str) -> None:
        self.written += data


@pytest.fixture
def keyboard(tmp_path, monkeypatch, capsys):
    """A function that types steps and leaves: keys, or keys and the line that must be drawn before going on."""
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.chdir(tmp_path)
    drawn: list[str | None] = []
    make = terminal._prompt_session

    def watched(*args):
        prompt = make(*args)
        prompt.app.after_render += lambda app: drawn.append(prompt.default_buffer.text)
        return prompt

    monkeypatch.setattr(terminal, "_prompt_session", watched)

    def feed(pipe, steps, failures):
        for step in (*steps, CTRL_A + CTRL_D * 60):
            keys, wanted = (step, None) if isinstance(step, str) else step
            pipe.send_text(keys)
            until = time.monotonic() + 10
            while wanted is not None and drawn[-1] != wanted:
                if time.monotonic() > until:
                    failures.append((keys, wanted, drawn[-1]))
                    break
                if keys in (UP, RIGHT, CTRL_E):  # the lines kept on disk are read while one waits
                    pipe.send_text(keys)
                time.sleep(0.02)

    def type_(*steps, history="history"):
        drawn[:] = [None]
        paper, failures = Paper(), []
        with create_pipe_input() as pipe:
            feeder = threading.Thread(target=feed, args=(pipe, steps, failures), daemon=True)
            feeder.start()
            status = terminal.run(pipe, paper, str(tmp_path / history))
            feeder.join(10)
        assert failures == []
        printed = capsys.readouterr()
        assert printed.err == ""
        is_first = printed.out.startswith("\n".join(terminal.FIRST_WELCOME))
        welcomed = terminal.FIRST_WELCOME if is_first else terminal.WELCOME
        shown = printed.out.removeprefix("\n".join(welcomed) + "\n")
        return status, shown.removesuffix(f"{NOT_SAVED}\n"), paper.written

    return type_


def answers(*lines):
    """The pages that lines are answered with in one session."""
    session, text = Session(), ""
    for line in lines:
        outcome = respond(session, line)
        session = outcome.session
        text += text_of(draw(outcome.answer, Page(80))) + "\n"
    return text


def test_ctrl_d_leaves_at_once(keyboard):
    assert keyboard(CTRL_D)[:2] == (0, "")


def test_chords_and_moves_are_answered_as_they_are_typed(keyboard):
    status, printed, _ = keyboard(LAMENT + ENTER, "to C minor" + ENTER, "next" + ENTER)

    assert status == 0
    assert printed == answers(LAMENT, "to C minor", "next")


def test_quit_leaves(keyboard):
    assert keyboard(LAMENT + ENTER, "quit" + ENTER, "to H" + ENTER)[1] == answers(LAMENT)


def test_ctrl_c_clears_the_line_and_the_session_goes_on(keyboard):
    _, printed, _ = keyboard(LAMENT + ENTER, "to H and more" + CTRL_C, "to C minor" + ENTER)

    assert printed == answers(LAMENT, "to C minor")


def test_an_empty_line_prints_nothing(keyboard):
    assert keyboard(ENTER, "  " + ENTER, LAMENT + ENTER)[1] == answers(LAMENT)


def test_a_refusal_is_printed_and_the_session_goes_on(keyboard):
    _, printed, _ = keyboard(LAMENT + ENTER, "to H" + ENTER, "show" + ENTER)

    refusal = "'H' is no key\n  H\n  ^\nwrite a key such as E minor, Bb major, F#m, or D dorian\n"
    assert printed == answers(LAMENT) + refusal + answers(LAMENT)


def test_the_prompt_shows_the_key(keyboard):
    _, _, paper = keyboard(LAMENT + ENTER, "to Bb" + ENTER, "home" + ENTER)

    assert [prompt for prompt in ("chords> ", "E minor> ", "B♭ minor> ") if prompt in paper] == [
        "chords> ", "E minor> ", "B♭ minor> ",
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("typed", "completed"),
    [("sho", "show"), ("voice n", "voice none"), ("to bb", "to Bb minor"), ("show --v", "show --voicing"),
     ("open lam", "open lament.toml"), ("open att", "open attic/"), ("help unr", "help unr"),
     ("voice four", "voice four-part"), ("left te", "left tenth"), ("top f", "top f"), ("weigh par", "weigh parallels"),
     ("show --voicing sp", "show --voicing spread"), ("others ne", "others next")],
)  # fmt: skip
def test_tab_completes_verbs_words_keys_options_and_files(typed, completed, keyboard, tmp_path):
    (tmp_path / "lament.toml").write_text('key = "E minor"\n[[sections]]\nchords = "i V7"')
    (tmp_path / "attic").mkdir()

    keyboard(LAMENT + ENTER, (typed + TAB, completed), CTRL_C)


def test_a_completed_line_is_answered(keyboard):
    _, printed, _ = keyboard(LAMENT + ENTER, ("to bb" + TAB, "to Bb minor"), ENTER)

    assert printed == answers(LAMENT, "to Bb minor")


def test_tab_on_several_goes_as_far_as_they_agree(keyboard):
    keyboard(("ke" + TAB, "key"), CTRL_C)
    keyboard(("voice dr" + TAB, "voice drop"), CTRL_C)


def test_a_family_a_pin_and_another_path_are_typed_and_taken_back(keyboard):
    lines = ("pin 2", "others next", "undo", "undo", "others 2", "why 2", "lines", "to Bb")
    typed = [line + ENTER for line in lines]
    _, printed, _ = keyboard(LAMENT + ENTER, ("voice dr" + TAB, "voice drop"), "2" + ENTER, *typed)

    assert printed == answers(LAMENT, "voice drop2", *lines)
    assert [line for line in printed.split("\n") if line.startswith("Asked for")] == [
        "Asked for: chord 2 pinned.",
        "Asked for: chord 2 pinned; path 2.",
        "Asked for: chord 2 pinned.",
        *["Asked for: path 2."] * 2,
    ]


def test_lines_are_kept_on_disk_and_come_back_with_the_up_arrow(keyboard, tmp_path):
    keyboard(LAMENT + ENTER)
    assert LAMENT in (tmp_path / "history").read_text(encoding="utf-8")

    _, printed, _ = keyboard((UP, LAMENT), ENTER)

    assert printed == answers(LAMENT)


def test_the_history_is_kept_in_folders_made_for_it(keyboard, tmp_path):
    keyboard(LAMENT + ENTER, history="share/nearhand/history")

    assert LAMENT in (tmp_path / "share" / "nearhand" / "history").read_text(encoding="utf-8")


@pytest.mark.parametrize(("history", "reason"), [("file/history", "File exists"), ("folder", "Is a directory")])
def test_a_history_that_cannot_be_kept_is_told_in_a_sentence_and_the_shell_goes_on(history, reason, keyboard, tmp_path):
    (tmp_path / "file").write_text("")
    (tmp_path / "folder").mkdir()

    status, printed, _ = keyboard(LAMENT + ENTER, (UP, LAMENT), CTRL_C, history=history)

    assert status == 0
    assert " ".join(printed.split()).startswith(f"The history cannot be kept: {reason} ({tmp_path}/{history}).")
    assert printed.endswith(answers(LAMENT))


def test_a_history_with_bytes_that_are_no_text_is_read_all_the_same(keyboard, tmp_path):
    (tmp_path / "history").write_bytes(b"\n# 2024-01-01\n+\xff\xfe\n\n# 2024-01-01\n+next\n")

    assert keyboard(LAMENT + ENTER)[:2] == (0, answers(LAMENT))


def test_the_history_lies_in_the_users_data_folder(monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))  # XDG Base Directory Specification
    monkeypatch.setenv("HOME", str(tmp_path))

    path = terminal.default_history_path()

    assert path.startswith(str(tmp_path))
    assert path.endswith("history") and "nearhand" in path


def test_lines_pasted_together_are_answered_in_turn(keyboard):
    _, printed, _ = keyboard(f"{LAMENT}{ENTER}to C minor{ENTER}back{ENTER}")

    assert printed == answers(LAMENT, "to C minor", "back")


def test_a_paste_of_several_lines_of_chords_is_one_chart(keyboard):
    _, printed, _ = keyboard("\x1b[200~E minor: | Em | Bm/D |\n| Am/C | B7 |\x1b[201~" + ENTER)

    assert printed == answers("E minor: | Em | Bm/D |\n| Am/C | B7 |")
