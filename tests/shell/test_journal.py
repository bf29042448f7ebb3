"""The journal of a running shell: a killed process, a closed terminal, a full disk, two shells at once."""

from __future__ import annotations

import errno
import os
import signal
import stat
import time

import pytest
from shell.test_pseudo_terminal import Terminal

from nearhand.shell.journal import OFFER, Journal, offer
from nearhand.shell.starting import started
from nearhand.verbs import journals
from nearhand.verbs.kept_lines import read_lines
from nearhand.verbs.recent import recent_charts
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session

LAMENT = "| Em | Bm/D | Am/C | B7 |"


@pytest.fixture
def home(tmp_path, monkeypatch):
    """A home of its own; the folder of the journals in it."""
    for name in ("XDG_CONFIG_HOME", "XDG_DATA_HOME"):  # XDG Base Directory Specification
        monkeypatch.setenv(name, str(tmp_path / name))
    monkeypatch.chdir(tmp_path)
    return tmp_path


def type_into(journal, *lines, session=None):
    """Answer lines as the shell does; the session, and the sentences that were told."""
    session, told = session or Session(), []
    for line in lines:
        outcome = respond(session, line)
        told += journal.note(session, outcome, line)
        session = outcome.session
    return session, told


def kept():
    """The journals on disk: each without the folder it begins with."""
    folder = journals.journals_folder()
    return (
        [read_lines(os.path.join(folder, name))[1:] for name in sorted(os.listdir(folder)) if name != journals.LAST]
        if os.path.isdir(folder)
        else []
    )


def test_the_lines_that_changed_something_are_on_disk_at_once(home):
    journal = Journal()
    type_into(journal, "| C | F |", "show", "help", "to D", "", "save it", "undo")

    assert [line for line in kept()[0] if line != "help"] == ["| C | F |", "to D", "undo"]


def test_nothing_is_written_before_something_changes(home):
    type_into(Journal(), "", "recent", "set")

    assert not (home / "XDG_DATA_HOME").exists()


def test_every_line_is_written_through_to_the_disk(home, monkeypatch):
    synced, sync = [], os.fsync
    monkeypatch.setattr(os, "fsync", lambda descriptor: synced.append(descriptor) or sync(descriptor))

    type_into(Journal(), "| C | F |", "to D")

    assert len(synced) == 2


def test_only_the_player_may_read_it(home):
    type_into(Journal(), "| C |")
    (name,) = os.listdir(journals.journals_folder())

    assert stat.S_IMODE(os.stat(os.path.join(journals.journals_folder(), name)).st_mode) == 0o600


def test_it_is_gone_after_a_clean_exit_and_nothing_is_offered(home):
    journal = Journal()
    type_into(journal, "| C | F |")
    assert offer() == ()  # it is held
    journal.close()
    journal.close()

    assert kept() == []
    assert offer() == ()


def test_what_was_not_saved_is_kept_for_recover_after_a_clean_exit_too(home):
    journal = Journal()
    type_into(journal, "| C | F |", "to D")

    assert journal.close()
    assert offer() == ()  # nothing ended early
    outcome = respond(Session(), "recover")
    assert str(outcome.session.shown_key) == "D major"
    assert outcome.lines == ("| C | F |", "to D")


def test_the_last_session_takes_the_place_of_the_one_before(home):
    for line in ("| C | F |", "| G | D |"):
        journal = Journal()
        type_into(journal, line)
        journal.close()

    assert respond(Session(), "recover").lines == ("| G | D |",)


def test_what_was_saved_or_never_changed_is_not_kept(home, monkeypatch):
    monkeypatch.chdir(home)
    journal = Journal()
    type_into(journal, "| C | F |", "save it")

    assert not journal.close()
    assert not Journal().close()
    assert respond(Session(), "recover").answer.lines == ("There is nothing to bring back.",)


def test_two_shells_do_not_disturb_one_another(home):
    one, other = Journal(), Journal()
    type_into(one, "| C | F |")
    type_into(other, "| D | A |")
    type_into(one, "| C | G |")

    assert sorted(kept()) == [["| C | F |", "| C | G |"], ["| D | A |"]]
    one.close()
    assert kept() == [["| D | A |"]]
    assert offer() == ()


def test_what_recover_brings_back_is_safe_in_the_new_journal_before_the_old_one_goes(home):
    left = Journal()
    type_into(left, LAMENT, "to C minor")
    os.close(left._descriptor)  # as when its process ends
    assert offer() == (OFFER,)

    journal = Journal()
    session, told = type_into(journal, "recover", "voice drop2")

    assert told == []
    assert kept() == [[LAMENT, "to C minor", "voice drop2"]]
    assert offer() == ()
    again = Session()
    for line in kept()[0]:
        again = respond(again, line).session
    assert again == session


def test_a_full_disk_is_one_sentence_once_and_nothing_is_lost_when_there_is_room_again(home, monkeypatch):
    journal, write = Journal(), os.write
    type_into(journal, "| C | F |")

    def half(descriptor, data):
        if len(data) > 3:
            return write(descriptor, data[:3])
        raise OSError(errno.ENOSPC, os.strerror(errno.ENOSPC))

    monkeypatch.setattr(os, "write", half)
    session, told = type_into(journal, "| D | A |", "to E", "next")
    assert len(told) == 1
    assert told[0].startswith("What you do now is not kept safe from a crash: No space left on device (")
    assert str(session.shown_key) == "A major"
    assert kept() == [["| C | F |"]]

    monkeypatch.setattr(os, "write", write)
    type_into(journal, "back", session=session)
    assert kept() == [["| C | F |", "| D | A |", "to E", "next", "back"]]


def test_a_folder_that_cannot_be_made_is_one_sentence_and_the_shell_goes_on(home):
    (home / "XDG_DATA_HOME").write_text("a file")
    journal = Journal()

    _, told = type_into(journal, "| C | F |", "to D", "save it", "open it")
    journal.close()

    assert len(told) == 1
    assert "Not a directory" in told[0] or "File exists" in told[0]
    assert offer() == ()


def test_charts_opened_and_saved_are_remembered(home):
    type_into(Journal(), "| C | F |", "save one", "save two", "open one", "recent 2")

    assert [os.path.basename(path) for path in recent_charts()] == ["two.toml", "one.toml"]


def test_recent_and_set_are_kept_as_lines_that_do_the_same_later(home):
    type_into(Journal(), "| C | F |", "save one", "recent 1", "set symbols jazz", "set symbols default")

    assert kept() == [["| C | F |", f'open "{home}/one.toml"', "symbols jazz", "symbols plain"]]


def test_a_shell_starts_with_the_settings(home):
    respond(Session(), "set symbols jazz")

    session, told = started(Session())

    assert (session.conventions.symbols, told) == ("jazz", ())
    assert session.previous is None


def test_a_broken_settings_file_is_told_at_the_start_and_defaults_are_used(home):
    file = home / "XDG_CONFIG_HOME" / "nearhand" / "settings.toml"
    file.parent.mkdir(parents=True)
    file.write_text('names = "german"\nsymbols = "neat"\n')

    assert started(Session()) == (
        Session(),
        (f"The settings in {file}, line 2 are not used: 'neat' cannot follow symbols.",),
    )


def test_a_terminal_without_signs_stays_plain_whatever_is_set(home):
    plain = Session()._replace(conventions=Session().conventions._replace(plain=True))
    respond(Session(), "set plain off")

    assert started(plain)[0].conventions.plain
    assert not started(Session())[0].conventions.plain


def journal_of(program):
    """Wait until the journals on disk are written, and answer their lines."""
    until = time.monotonic() + 20
    while time.monotonic() < until:
        files = list(program.folder.rglob(f"*{journals.SUFFIX}"))
        if files:
            return [read_lines(str(path))[1:] for path in files]
        time.sleep(0.05)
    return []


def ended_early(program, end):
    """Type lines into a shell and end it from outside."""
    terminal = Terminal(program, 80, 24)
    terminal.read_until("chords>")
    terminal.answer_to(LAMENT, "held", "E minor>")
    terminal.answer_to("to C", "held", "C minor>")
    terminal.answer_to("voice drop2", "held", "C minor>")
    end(terminal)
    terminal.process.wait(20)
    return terminal


def kill(terminal):
    os.kill(terminal.process.pid, signal.SIGKILL)


def hang_up(terminal):
    os.close(terminal.master)  # the window is closed


def terminate(terminal):
    os.kill(terminal.process.pid, signal.SIGTERM)


@pytest.mark.parametrize("end", [kill, terminate, hang_up], ids=lambda end: end.__name__)
def test_a_process_that_is_ended_loses_nothing(end, program):
    ended_early(program, end)
    assert journal_of(program) == [[LAMENT, "to C", "voice drop2"]]

    terminal = Terminal(program, 80, 24)
    try:
        welcome = terminal.read_until("chords>")
        back = terminal.answer_to("recover", "at a time.", "C minor>")
        undone = terminal.answer_to("undo", "held", "C minor>")
        home = terminal.answer_to("undo", "held", "E minor>")
        terminal.type("\x04")
    finally:
        status = terminal.close()

    assert status == 0
    assert OFFER in " ".join(welcome.split())
    assert "Gm/B♭" in back and "Brought back: 3 lines" in back
    assert "Gm/B♭" in undone and "Bm/D" in home
    assert list(program.folder.rglob(f"*{journals.SUFFIX}")) == []


def test_a_clean_exit_offers_nothing_at_the_next_start(program):
    for leave in ("quit\r", "\x04"):
        terminal = Terminal(program, 80, 24)
        try:
            welcome = terminal.read_until("chords>")
            terminal.answer_to(LAMENT, "held", "E minor>")
            terminal.type(leave)
        finally:
            assert terminal.close() == 0
        assert "recover" not in welcome
    assert list(program.folder.rglob(f"*{journals.SUFFIX}")) == []


def test_a_shell_beside_a_living_one_offers_nothing(program):
    living, beside = Terminal(program, 80, 24), None
    try:
        living.read_until("chords>")
        living.answer_to(LAMENT, "held", "E minor>")
        beside = Terminal(program, 80, 24)
        welcome = beside.read_until("chords>")
        beside.answer_to("| D | A7 |", "held", "D major>")
        beside.type("\x04")
        assert beside.close() == 0
        assert journal_of(program) == [[LAMENT]]
        living.type("\x04")
    finally:
        assert living.close() == 0

    assert "recover" not in welcome


def test_colours_are_switched_while_the_shell_runs(program):
    terminal = Terminal(program, 80, 24)
    try:
        terminal.read_until("chords>")
        terminal.answer_to("colours off", "next progression.", "chords>")
        terminal.answer_to(LAMENT, "held", "E minor>")
        without = len(terminal.raw)
        assert "\x1b[1;36m" not in terminal.raw
        terminal.answer_to("colours on", "held", "E minor>")
        assert "\x1b[1;36m" in terminal.raw[without:]
        terminal.type("\x04")
    finally:
        assert terminal.close() == 0


def test_no_color_goes_before_the_setting(program):
    terminal = Terminal(program, 80, 24, NO_COLOR="1")
    try:
        terminal.read_until("chords>")
        terminal.answer_to("colours on", "next progression.", "chords>")
        terminal.answer_to(LAMENT, "held", "E minor>")
        terminal.type("\x04")
    finally:
        assert terminal.close() == 0
    assert "\x1b[1;36m" not in terminal.raw


def test_settings_are_for_the_shell_on_a_terminal_and_not_for_commands_or_pipes(program):
    program.run("set", "names", "german", XDG_CONFIG_HOME=str(program.folder))
    listed = program.run("set", "names", XDG_CONFIG_HOME=str(program.folder)).out
    piped = program.run(given="| Bm | F#7 |\n", XDG_CONFIG_HOME=str(program.folder)).out
    command = program.run("show", "| Bm | F#7 |", XDG_CONFIG_HOME=str(program.folder)).out
    terminal = Terminal(program, 80, 24, XDG_CONFIG_HOME=str(program.folder))
    try:
        terminal.read_until("chords>")
        shown = terminal.answer_to("| Bm | F#7 |", "stay English.", "H minor>")
        terminal.type("\x04")
    finally:
        assert terminal.close() == 0

    assert "german is kept" in listed
    assert "B minor" in piped and "B minor" in command and "H minor" in shown
