"""What the first word may be: a file, a dash, nothing; and the exit statuses of all of them."""

from __future__ import annotations

import json
import os
import signal
import subprocess
import sys

import pytest

from nearhand.verbs.table import VERBS

CHART = 'title = "Two Doors"\nkey = "E minor"\n[[sections]]\nchords = "| Em | B7 |"\n'
LAMENT = "| Em | Bm/D | Am/C | B7 |"
LINES_OF_JSON = {
    "borrow": ["borrow", "C"], "instead": ["instead", LAMENT, "2"], "why": ["why", LAMENT, "2"],
    "list": ["list", "."], "completion": ["completion", "bash"], "help": ["help"],
    "melody": ["melody", "E4 F#4 G4"], "tones": ["tones", LAMENT, "--melody", "E4 F#4 G4 A4"],
    "singer": ["singer", LAMENT, "--tune", "C4 E5", "--range", "A3 D5"],
    "set": ["set"], "recent": ["recent"],
}  # fmt: skip
"""Words of verbs that work on something else than a chart alone."""


def first_line(run):
    assert (run.status, run.err) == (0, "")
    return run.out.splitlines()[0]


@pytest.mark.parametrize("name", ["two doors.toml", "Am blues.toml", "türen.toml", "a/b c/two doors.toml", "-.toml"])
def test_a_file_of_any_name_is_shown(name, program):
    path = program.folder / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(CHART, encoding="utf-8")

    assert first_line(program.run(name)) == "Two Doors"
    assert first_line(program.run(f"./{name}")) == "Two Doors"
    assert first_line(program.run(str(path))) == "Two Doors"
    assert "Cm" in program.run(name, "--to", "C minor").out
    assert json.loads(program.run(name, "--json").out)["key"] == "E minor"


def test_a_file_without_the_suffix_is_read_where_there_is_one(program):
    (program.folder / "doors").write_text(CHART)

    assert first_line(program.run("doors")) == "Two Doors"


def test_a_chart_of_the_home_folder_is_found_behind_its_sign(program):
    (program.folder / "charts").mkdir()
    (program.folder / "charts" / "two doors.toml").write_text(CHART)
    elsewhere = program.folder / "charts"

    assert first_line(program.run("~/charts/two doors.toml")) == "Two Doors"
    assert program.run("list", "~/charts").out == "~/charts/two doors.toml\n    Two Doors, E minor, 2 bars\n"
    kept = program.run(given="open ~/charts/two doors\nsave ~/copy\n")
    assert kept.out.splitlines()[-1] == "Saved in E minor as ~/copy.toml."
    assert (program.folder / "copy.toml").exists()
    assert program.run("~/none.toml").err.startswith("there is no file ~/none.toml\n  ~/none.toml\n")
    assert first_line(program.run("~/two doors.toml", HOME=str(elsewhere))) == "Two Doors"


# Words, what standard error begins with.
REFUSED = [
    (["none.toml"], "there is no file none.toml\n  none.toml\n  ^\n"),
    (["two doors.toml"], "there is no file two doors.toml\n"),
    (["~/none.toml"], "there is no file ~/none.toml\n"),
    (["none.toml", "--json"], '{"error": {"text": "none.toml"'),
    (["."], ". is a folder, not a chart\n"),
    (["~"], "~ is a folder, not a chart\n"),
    (["wlatz"], "'wlatz' is neither a verb nor a chord\n"),
    (["a\x01b.toml"], "there is no file a?b.toml\n"),
]


@pytest.mark.parametrize(("words", "said"), REFUSED)
def test_a_file_that_is_not_there_is_refused_with_status_two(words, said, program):
    shown = program.run(*words)

    assert (shown.status, shown.out) == (2, "")
    assert shown.err.startswith(said)


@pytest.mark.parametrize("verb", ["show", "keys", "cadences", "explain", "lines", "others"])
def test_a_dash_stands_for_a_chart_behind_every_verb(verb, program):
    for given in (LAMENT, CHART):
        assert program.run(verb, "-", given=given).status == 0
    assert program.run("-", "--to", "C minor", given=CHART).status == 0
    assert program.run("--to", "C minor", "-", given=CHART).status == 0
    assert program.run("instead", "-", "2", given=CHART).status == 0


def test_a_dash_behind_other_words_is_one_of_them(program):
    shown = program.run("show", "| C |", "--melody", "5", "-", "3", given=CHART)

    assert (shown.status, shown.out) == (2, "")
    assert shown.err.startswith("3 needs a key to be read in\n  | C | - 3\n          ^\n")


def test_the_module_is_the_command(program):
    script = "import sys; sys.argv[0] = 'nearhand'; from nearhand.cli import run; run()"
    command = [sys.executable, "-c", script]

    for words in (["--version"], ["show", LAMENT], ["none.toml"]):
        called = subprocess.run(
            [*command, *words], cwd=program.folder, env=program.environment(), capture_output=True, check=False
        )
        assert (called.returncode, called.stdout, called.stderr) == program.bytes_of(*words)


@pytest.mark.parametrize("verb", [verb for verb in VERBS if verb.one_shot], ids=lambda verb: verb.name)
def test_every_verb_that_stands_alone_answers_in_json(verb, program):
    assert "json" in [option.name for option in verb.options]

    shown = program.run(*LINES_OF_JSON.get(verb.name, [verb.name, LAMENT]), "--json")

    assert (shown.status, shown.err) == (0, "")
    assert shown.out.count("\n") == 1
    assert json.loads(shown.out)["schema"] == 1


def test_help_in_json_is_the_table_of_verbs(program):
    everything = json.loads(program.run("help", "--json").out)
    (show,) = json.loads(program.run("help", "show", "--json").out)["verbs"]

    assert [verb["name"] for verb in everything["verbs"]] == [verb.name for verb in VERBS]
    assert everything["verbs"][0] == show == json.loads(program.run("show", "--help", "--json").out)["verbs"][0]
    assert show["usage"] == VERBS[0].usage
    assert show["examples"] == list(VERBS[0].examples)
    assert [(o["name"], o["value"], o["choices"]) for o in show["options"]] == [
        (f"--{option.name}", option.value or None, list(option.choices)) for option in VERBS[0].options
    ]
    assert [verb["name"] for verb in everything["verbs"] if verb["stands_alone"]] == [
        verb.name for verb in VERBS if verb.one_shot
    ]
    assert everything["topics"]


def test_help_refuses_an_option_it_has_not(program):
    shown = program.run("help", "--jsn")

    assert (shown.status, shown.out) == (2, "")
    assert shown.err == "help has no option --jsn\n  help --jsn\n       ^\ndid you mean --json?\n"


@pytest.mark.parametrize("words", [["show", "door.toml"], ["door.toml", "--json"], []], ids=" ".join)
def test_an_interrupted_command_says_so_by_its_status_alone(words, program):
    # a named pipe lets the test go on when the program has opened it, and the program wait for what never comes
    os.mkfifo(program.folder / "door.toml")
    process = subprocess.Popen(
        [*program.command, *words],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        cwd=program.folder,
        env=program.environment(PYTHONWARNINGS="ignore"),
    )
    process.stdin.write(b"show door.toml\n")
    process.stdin.flush()
    with open(program.folder / "door.toml", "wb"):
        process.send_signal(signal.SIGINT)
        out, err = process.communicate(timeout=60)

    assert (process.returncode, out, err) == (130, b"", b"")


FULL = pytest.mark.skipif(not os.path.exists("/dev/full"), reason="there is no device that is always full")


@FULL
@pytest.mark.parametrize(
    "words", [["show", LAMENT], ["show", LAMENT, "--json"], ["help"], ["--version"], ["completion", "bash"], []]
)
def test_a_full_disk_behind_standard_output_is_told(words, program):
    with open("/dev/full", "wb") as full:
        done = subprocess.run(
            [*program.command, *words], input=b"| C |\n", stdout=full, stderr=subprocess.PIPE,
            cwd=program.folder, env=program.environment(), check=False,
        )  # fmt: skip

    assert (done.returncode, done.stderr) == (2, b"the answer cannot be written: No space left on device\n")


@FULL
@pytest.mark.parametrize("words", [["show", "Hm"], ["show", LAMENT]])
def test_a_full_disk_behind_both_streams_leaves_the_status(words, program):
    with open("/dev/full", "wb") as full:
        done = subprocess.run(
            [*program.command, *words], stdin=subprocess.DEVNULL, stdout=full, stderr=full,
            cwd=program.folder, env=program.environment(), check=False,
        )  # fmt: skip

    assert done.returncode == 2


@pytest.mark.parametrize(
    ("closed", "words", "status"),
    [(">&-", f"'{LAMENT}'", 0), ("2>&-", f"'{LAMENT}'", 0), (">&- 2>&-", "Hm", 2), ("<&-", "-", 2), ("<&-", "", 0)],
)
def test_a_closed_stream_trips_nothing(closed, words, status, program):
    line = f"{' '.join(program.command)} {words} {closed}"

    done = subprocess.run(
        line, shell=True, cwd=program.folder, env=program.environment(), capture_output=True, check=False
    )

    assert done.returncode == status
    assert b"Traceback" not in done.stderr


MELODY = "G: 5_ |\n1 2 3 1 |\n3 - 2 - |\n"


def notes_of(run):
    """The notes of a melody on its page, in plain characters."""
    assert (run.status, run.err) == (0, "")
    rows = [line.removeprefix("note") for line in run.out.splitlines() if line.startswith("note ")]
    return " ".join(word for row in rows for word in row.split() if word != "|")


def test_a_dash_alone_is_a_melody_on_standard_input(program):
    # degrees of G major from the G below middle C up: common practice, no source
    assert notes_of(program.run("melody", "-", given=MELODY)) == "D3 G3 A3 B3 G3 B3 - A3 -"
    assert notes_of(program.run("melody", "-", "--to", "F", given="G: 5_ 1")) == "C3 F3"
    file = 'key = "G"\n[[sections]]\nmelody = "5_ | 1 2 3 1 |"\n'
    assert notes_of(program.run("melody", "-", given=file)) == "D3 G3 A3 B3 G3"
    shown = json.loads(program.run("show", LAMENT, "--melody", "-", "--json", given="E4:4 | D4:4").out)
    assert [note["note"] for note in shown["views"][0]["melody"]] == ["E4", "D4"]


@pytest.mark.parametrize(
    "words", [["C:", "5", "-", "3", "1"], ["--key", "C", "5", "-", "3", "1"], ["C: 5 - 3 1"], ["C:", "5", "-", "3 1"]]
)
def test_a_dash_among_notes_holds_one_and_standard_input_is_not_read(words, program):
    command = [*program.command, "melody", *words]
    with subprocess.Popen(
        command, cwd=program.folder, env=program.environment(), stdin=subprocess.PIPE, stdout=subprocess.PIPE
    ) as process:
        try:
            assert process.wait(30) == 0  # its standard input stays open: who reads it waits for ever
        finally:
            process.kill()
        out = process.stdout.read().decode()

    assert "| G4  -  E4  C4 |" in out


def test_dashes_and_marks_without_quotes_are_no_options_and_no_quotes(program):
    words = ["C:", "1'", "-", "--", "[5", "6]", "{7}1''", "-"]

    assert notes_of(program.run("melody", *words)) == "C5 - - - [G4 A4] {B4}C6 -"
    as_json = json.loads(program.run("melody", *words, "--json").out)["views"][0]["melody"]
    assert [(note["note"], note["beats"]) for note in as_json] == [("C5", 4), ("G4", 0.5), ("A4", 0.5), ("C6", 2)]


def test_a_refused_melody_has_its_place_in_json(program):
    shown = program.run("melody", "-", "--json", given="G: 1 2 x")

    assert (shown.status, shown.out) == (2, "")
    error = json.loads(shown.err)["error"]
    assert (error["text"], error["start"], error["end"], error["what"]) == ("G: 1 2 x", 7, 8, "'x' is no note")
