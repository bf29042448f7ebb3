"""The whole tour typed on a pseudo-terminal, wide and narrow, with long answers read screen by screen."""

from __future__ import annotations

import pytest
from shell.test_pseudo_terminal import Terminal

from nearhand.verbs.touring import STEPS

LAST = "minor>"


@pytest.mark.parametrize(("columns", "rows"), [(80, 24), (40, 20)])
def test_the_whole_tour_is_typed_and_answered(columns, rows, program):
    terminal = Terminal(program, columns, rows)
    steps, answers = [], []
    try:
        welcome = terminal.read_until("chords>")
        for number, step in enumerate(STEPS, start=1):
            line = "tour" if number == 1 else f"tour {number}" if number % 2 else "tour next"
            terminal.type(line + "\r")
            steps.append(terminal.read_until("or run:") + terminal.read_until(">"))
            terminal.type("run\r")
            last = f"step {number + 1}" if number < len(STEPS) else "That was the tour"
            answers.append(terminal.read_until(last) + terminal.read_until(LAST))
            assert step.example.split()[0] in answers[-1]
        terminal.type("quit\r")
    finally:
        status = terminal.close()

    assert status == 0
    assert "tour shows around" in " ".join(welcome.split())
    for number, (step, page) in enumerate(zip(STEPS, steps, strict=True), start=1):
        assert f"Step {number} of 10: {step.title}" in page
    # the first three: the lament in E minor, C minor, F minor; common practice, no source
    for page, chord in zip(answers, ("Bm/D", "Gm/B♭", "Cm/E♭"), strict=False):
        assert chord in page
    assert "Traceback" not in terminal.screen and "WARNING" not in terminal.screen
    assert terminal.turned > 0 or columns == 80
