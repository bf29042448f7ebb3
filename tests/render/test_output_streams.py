"""What a stream can carry decides on colours, signs and width."""

from __future__ import annotations

import pytest
from render.page_words import LAMENT, Pipe, Screen, last_answer, page, without_codes

from nearhand.notation.errors import InputError
from nearhand.render.output import output_to

COLOURFUL = {"TERM": "xterm-256color", "COLUMNS": "80"}


@pytest.fixture(autouse=True)
def _outside(monkeypatch):
    """The colour library looks at the real environment, too."""
    for name in ("NO_COLOR", "FORCE_COLOR", "COLORTERM", "COLUMNS", "TTY_COMPATIBLE", "TTY_INTERACTIVE"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", "xterm-256color")


def shown(stream, environment, answer):
    output_to(stream, environment).show(answer)
    return stream.written


def test_a_terminal_gets_colours_and_a_pipe_gets_the_text():
    answer = last_answer(LAMENT)

    on_screen, in_pipe = shown(Screen(), COLOURFUL, answer), shown(Pipe(), COLOURFUL, answer)

    assert "\x1b[" in on_screen
    assert in_pipe == page(LAMENT) + "\n"
    assert [line.rstrip() for line in without_codes(on_screen).splitlines()] == in_pipe.splitlines()


@pytest.mark.parametrize(
    "environment",
    [
        {**COLOURFUL, "NO_COLOR": "1"},  # no-color.org
        {**COLOURFUL, "TERM": "dumb"},
        {**COLOURFUL, "TERM": ""},
        {"COLUMNS": "80"},
    ],
)
def test_a_terminal_without_colours_gets_the_text(environment):
    assert shown(Screen(), environment, last_answer(LAMENT)) == page(LAMENT) + "\n"


def test_an_empty_no_color_means_nothing():
    assert output_to(Screen(), {**COLOURFUL, "NO_COLOR": ""}).colours  # no-color.org: "when not an empty string"


@pytest.mark.parametrize("terminal", ["dumb", ""])
def test_colours_may_be_asked_for_where_the_terminal_names_none(terminal, monkeypatch):
    monkeypatch.setenv("TERM", terminal)
    output = output_to(Screen(), {"TERM": terminal, "COLUMNS": "80"}, "on")
    output.show(last_answer(LAMENT))

    assert "\x1b[1;36m" in output.stream.written  # bold and cyan: ECMA-48, the eight colours of SGR 30 to 37
    assert [line.rstrip() for line in without_codes(output.stream.written).splitlines()] == page(LAMENT).splitlines()


def test_colours_may_be_switched_off_and_no_color_goes_before_all():
    assert not output_to(Screen(), COLOURFUL, "off").colours
    assert output_to(Screen(), COLOURFUL, "on").colours
    assert not output_to(Screen(), {**COLOURFUL, "NO_COLOR": "1"}, "on").colours  # no-color.org
    assert not output_to(Pipe(), COLOURFUL, "on").colours


@pytest.mark.parametrize("encoding", ["ascii", "latin-1", "cp1252", "iso8859-15"])
def test_a_stream_that_cannot_carry_the_signs_gets_plain_characters(encoding):
    output = output_to(Pipe(encoding), {})

    assert not output.signs
    output.show(last_answer(LAMENT, "to C minor", plain=True))
    assert output.stream.written == page(LAMENT, "to C minor", plain=True) + "\n"


@pytest.mark.parametrize("encoding", ["utf-8", "utf-16", "utf-32"])
def test_a_stream_that_carries_the_signs_gets_them(encoding):
    assert output_to(Pipe(encoding), {}).signs


@pytest.mark.parametrize(
    ("environment", "width"),
    [
        ({}, 80),
        ({"COLUMNS": "120"}, 120),
        ({"COLUMNS": "40"}, 40),
        ({"COLUMNS": "0"}, 80),
        ({"COLUMNS": ""}, 80),
        ({"COLUMNS": "wide"}, 80),
        ({"COLUMNS": "-5"}, 80),
    ],
)
def test_the_width_is_that_of_the_environment_or_eighty(environment, width):
    assert output_to(Pipe(), environment).width == width
    assert output_to(Screen(), environment).width == width


@pytest.mark.parametrize("columns", ["²", "٤٠", "9" * 5000])
def test_a_strange_width_in_the_environment_breaks_nothing(columns):
    assert output_to(Pipe(), {"COLUMNS": columns}).width > 0


def test_a_refusal_is_written_as_text_with_what_the_stream_can_carry():
    error = InputError("H is no chord root", "| H♭ | Ä |", 2, 3, hint="write B for B natural")
    screen, pipe = Screen(), Pipe("ascii")

    output_to(screen, COLOURFUL).refuse(error)
    output_to(pipe, {}).refuse(error)

    assert screen.written == "H is no chord root\n  | H♭ | Ä |\n    ^\nwrite B for B natural\n"
    assert pipe.written == "H is no chord root\n  | H? | ? |\n    ^\nwrite B for B natural\n"


def test_an_answer_without_lines_writes_nothing():
    assert shown(Pipe(), {}, last_answer("")) == ""


def test_a_tune_from_outside_is_written_to_any_stream():
    for encoding in ("ascii", "utf-8"):
        answer = last_answer("C: C F")
        titled = answer._replace(tune=answer.tune._replace(title="Tür \ud800 \N{WAVING BLACK FLAG} 扉"))
        assert "T" in shown(Pipe(encoding), {}, titled)


@pytest.mark.parametrize("width", [30, 40, 80])
def test_a_refusal_is_broken_to_the_width_but_for_the_line_it_points_into(width):
    sentence, hint = (
        "there is something here that nobody can read in any key",
        "write a key such as E minor, Bb major, F#m",
    )
    stream = Pipe()

    output_to(stream, {"COLUMNS": str(width)}).refuse(InputError(sentence, "show C --key H", 13, hint=hint))

    lines = stream.written.splitlines()
    assert max(map(len, lines)) <= width
    assert " ".join(lines).split() == [*sentence.split(), "show", "C", "--key", "H", "^", *hint.split()]
    assert lines[lines.index("  show C --key H") + 1] == " " * 15 + "^"
