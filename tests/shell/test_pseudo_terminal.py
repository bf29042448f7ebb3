"""The whole program on a pseudo-terminal: a short tour, typed and read from the screen."""

from __future__ import annotations

import contextlib
import fcntl
import os
import pty
import re
import select
import signal
import struct
import subprocess
import termios
import time

import pytest

PATIENCE_SECONDS = 30
CODES = re.compile(r"\x1b\[[0-?]*[ -/]*[@-~]|\x1b\][^\x07]*\x07|\x1b[=>78()][0AB]?")
PAUSE = re.compile(r"page \d+ of \d+: Space goes on, q leaves")


class Terminal:
    """A process on a pseudo-terminal of some columns and rows."""

    def __init__(self, program, columns, rows, **changes):
        self.master, slave = pty.openpty()
        fcntl.ioctl(slave, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        self.process = subprocess.Popen(
            program.command,
            stdin=slave,
            stdout=slave,
            stderr=slave,
            cwd=program.folder,
            env=program.environment(TERM="xterm-256color", PROMPT_TOOLKIT_NO_CPR="1", **changes),
            start_new_session=True,
        )
        os.close(slave)
        self.raw = ""
        self.seen = 0
        self.turned = 0

    def type(self, keys):
        os.write(self.master, keys.encode())

    def read_until(self, text):
        """Read until a text stands on the screen behind all that was read before; answer what came up to it."""
        until = time.monotonic() + PATIENCE_SECONDS
        while text not in self.screen[self.seen :]:
            assert time.monotonic() < until, f"no {text!r} in {self.screen[self.seen :]!r}"
            if select.select([self.master], [], [], 0.2)[0]:
                self.raw += os.read(self.master, 65536).decode(errors="replace")
                self.turn_pages()
        start = self.seen
        self.seen = self.screen.index(text, start) + len(text)
        return self.screen[start : self.seen]

    def settle(self):
        """Read until nothing more comes."""
        while select.select([self.master], [], [], 0.5)[0]:
            self.raw += os.read(self.master, 65536).decode(errors="replace")
        self.seen = len(self.screen)

    def turn_pages(self):
        """Go on where a long answer stops at the end of the screen."""
        while self.turned < len(PAUSE.findall(CODES.sub("", self.raw))):
            self.turned += 1
            self.type(" ")

    def answer_to(self, line, last, prompt):
        """Type a line; what stands on the screen from it to the next prompt, which comes after some last words."""
        self.type(line + "\r")
        return self.read_until(last) + self.read_until(prompt)

    @property
    def screen(self):
        """All that was written, without codes and without what stands between two screens."""
        return PAUSE.sub("", CODES.sub("", self.raw)).replace("\r\n", "\n")

    def close(self):
        """Wait for the end of the process; its exit status, None where it had to be ended."""
        until = time.monotonic() + PATIENCE_SECONDS / 3
        while self.process.poll() is None and time.monotonic() < until:
            if select.select([self.master], [], [], 0.05)[0]:
                with contextlib.suppress(OSError):  # nobody is at the other end any more
                    self.raw += os.read(self.master, 65536).decode(errors="replace")
        status = self.process.poll()
        self.process.kill()
        self.process.wait()
        os.close(self.master)
        return status


@pytest.mark.parametrize(("columns", "rows"), [(80, 24), (40, 20)])
def test_a_short_tour_on_a_real_terminal(columns, rows, program):
    terminal = Terminal(program, columns, rows)
    try:
        welcome = terminal.read_until("chords>")
        in_e = terminal.answer_to("| Em | Bm/D | Am/C | B7 |", "held", "E minor>")
        in_c = terminal.answer_to("to C", "held", "C minor>")
        refused = terminal.answer_to("to H", "D dorian", "C minor>")
        terminal.type("vo\t")
        terminal.settle()
        terminal.type(" n\t")
        terminal.settle()
        alone = terminal.answer_to("", "G B D F", "C minor>")
        helped = terminal.answer_to("help", "stays.", "C minor>")
        terminal.type("\x04")
    finally:
        status = terminal.close()

    assert status == 0
    assert welcome.startswith("Type chords")
    # chords, numerals: common practice, no source
    assert [word for word in ("Bm/D", "iv6", "G4", "R", "L", "=") if word not in in_e] == []
    assert [word for word in ("Gm/B♭", "Fm/A♭", "E♭4 G4 C5", "3 flats") if word not in in_c] == []
    assert "'H' is no key" in refused
    assert "C E♭ G" in alone and "G B D F" in alone
    assert "look" in helped and "list" in helped
    for page in (in_e, in_c, alone, helped):
        assert max(len(line.rstrip()) for line in page.split("\n")[1:]) <= columns
    assert "Traceback" not in terminal.screen and "WARNING" not in terminal.screen
    assert "\x1b[1;36m" in terminal.raw  # in colour


def test_a_terminal_without_colours_shows_the_same_words(program):
    terminal = Terminal(program, 80, 24, NO_COLOR="1")
    try:
        terminal.read_until("chords>")
        page = terminal.answer_to("Am E7", "held", "A minor>")
        lines = terminal.answer_to("lines --voicing four-part", "the chord", "A minor>")
        terminal.type("quit\r")
    finally:
        status = terminal.close()

    assert status == 0
    assert "| Am       | E7" in page
    assert [word for word in ("soprano", "alto", "tenor", "bass", "outer") if f"\n{word} " not in lines] == []
    assert "\x1b[1;36m" not in terminal.raw


def test_the_lines_typed_are_kept_in_the_home_of_the_environment(program):
    terminal = Terminal(program, 80, 24)
    try:
        terminal.read_until("chords>")
        terminal.answer_to("Am E7", "held", "A minor>")
        terminal.type("\x03")
        terminal.type("\x04")
    finally:
        assert terminal.close() == 0

    (history,) = [path for path in program.folder.rglob("history") if path.is_file()]
    assert "+Am E7" in history.read_text(encoding="utf-8")


def test_what_helps_while_one_types_on_a_real_terminal(program):
    terminal = Terminal(program, 80, 24)
    try:
        terminal.read_until("chords>")
        terminal.type("| Em | Bm/D | Am/C | B7")
        terminal.read_until("E minor: i v6 iv6 V7")
        terminal.answer_to("", "held", "E minor>")
        terminal.type("\x1bOS")  # F4, a fifth down
        terminal.read_until("A minor:")
        terminal.read_until("A minor>")
        fcntl.ioctl(terminal.master, termios.TIOCSWINSZ, struct.pack("HHHH", 20, 40, 0, 0))
        terminal.process.send_signal(signal.SIGWINCH)
        narrow = terminal.answer_to("show", "held", "A minor>")
        terminal.type("| Em | Hm |")
        terminal.read_until("H is no chord root; write B")
        assert re.search(r"\x1b\[[0-9;]*;4m", terminal.raw)  # what is wrong is underlined
        terminal.type("\x03")
        terminal.settle()
        for part in ("\x1b[200~", *["| C | F |\n" * 200] * 500, "\x1b[201~"):
            terminal.type(part)
        terminal.read_until("a paste of 1,000,000 characters is too")
        terminal.settle()
        terminal.type("next\r")
        terminal.read_until("D minor>")
        terminal.type("?")
        listed = terminal.read_until("F4 or >")
        terminal.settle()
        terminal.type("\x04")  # leaves the pages, where the list is longer than the screen
        terminal.settle()
        terminal.type("\x04")
    finally:
        status = terminal.close()

    assert status == 0
    assert max(len(line.rstrip()) for line in narrow.split("\n")[1:]) <= 40
    assert "F4 or >" in listed
    assert "Traceback" not in terminal.screen
