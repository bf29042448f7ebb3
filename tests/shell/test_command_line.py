"""One-shot commands: what goes in, what comes out, and the exit status."""

from __future__ import annotations

import json
import re

import pytest
from shell.process_words import Program

import nearhand
from nearhand.verbs.table import VERBS

LAMENT = "| Em | Bm/D | Am/C | B7 |"
SHELL_VERBS = [name for verb in VERBS if not verb.one_shot for name in (verb.name, *verb.aliases) if name != "help"]
CHART = 'title = "Lament"\nkey = "E minor"\n[[sections]]\nchords = "| Em | Bm/D | Am/C | B7 |"\n'


def chords(text):
    """The chord symbols of a page."""
    rows = [line.removeprefix("chord") for line in text.splitlines() if line.startswith("chord ")]
    return " ".join(word for row in rows for word in row.split() if set(word) - set("|:"))


def test_the_version_is_told_on_one_line(program):
    assert program.run("--version") == (0, f"nearhand {nearhand.__version__}\n", "")


@pytest.mark.parametrize("word", ["--help", "-h", "help"])
def test_help_lists_the_verbs_that_stand_alone(program, word):
    status, out, err = program.run(word)

    listed = [line.split()[0] for line in out.splitlines() if re.match("  [a-z]", line)]
    assert (status, err) == (0, "")
    assert listed == [verb.name for verb in VERBS if verb.one_shot]


@pytest.mark.parametrize("verb", [verb.name for verb in VERBS])
def test_help_on_a_verb_names_its_options_either_way(verb, tmp_path):
    program = Program(tmp_path)
    status, out, err = program.run("help", verb)

    assert (status, err) == (0, "")
    assert re.search(rf"^{verb}\b", out, re.MULTILINE)  # a topic of the same name stands before it
    if verb == "show":
        assert program.run("show", "--help") == (status, out, err)
        assert all(f"--{option.name}" in out for option in VERBS[0].options)


def test_chords_in_quotes_are_shown_in_other_keys(program):
    # common practice, no source
    status, out, err = program.run("show", LAMENT, "--to", "C minor")

    assert (status, err) == (0, "")
    assert chords(out) == "Cm Gm/B♭ Fm/A♭ G7"


def test_chords_need_no_verb(program):
    shown = program.run("show", LAMENT)

    assert program.run(LAMENT) == shown
    assert program.run(*LAMENT.split()) == shown
    assert program.run("Em", "Bm/D", "Am/C", "B7") == shown
    assert program.run(f"  {LAMENT}") == shown


def test_a_key_in_front_needs_no_verb(program):
    assert chords(program.run("C minor: i V7").out) == "Cm G7"
    assert chords(program.run("C", "minor:", "i", "V7").out) == "Cm G7"


def test_no_chord_may_come_first(program):
    assert chords(program.run("N.C. | C | F |").out) == "N.C. C F"


def test_a_chart_file_is_shown_with_and_without_the_verb(program):
    (program.folder / "lament.toml").write_text(CHART)

    shown = program.run("show", "lament.toml")

    assert (shown.status, chords(shown.out)) == (0, "Em Bm/D Am/C B7")
    assert shown.out.startswith("Lament\n")
    assert program.run("lament.toml") == program.run("./lament.toml") == shown


@pytest.mark.parametrize("words", [("-",), ("show", "-")])
@pytest.mark.parametrize(
    "given", [LAMENT, f"{LAMENT}\n", "| Em | Bm/D |\n| Am/C | B7 |\n", CHART, f"\ufeff{CHART}", f"# mine\n{CHART}"]
)
def test_a_dash_is_standard_input_as_chords_or_as_a_chart_file(program, words, given):
    shown = program.run(*words, given=given)

    assert (shown.status, shown.err) == (0, "")
    assert chords(shown.out) == "Em Bm/D Am/C B7"


def test_a_fault_in_standard_input_is_told_with_line_and_column(program):
    shown = program.run("show", "-", given=CHART.replace("B7", "H7"))

    assert (shown.status, shown.out) == (2, "")
    assert shown.err.startswith("standard input, line 4, column 32: H is no chord root\n")


def test_an_empty_standard_input_is_refused(program):
    shown = program.run("show", "-")

    assert (shown.status, shown.out) == (2, "")
    assert shown.err.startswith("there are no chords here\n")


def test_the_other_verbs_answer_too(program):
    (program.folder / "lament.toml").write_text(CHART)

    assert program.run("keys", LAMENT).out.startswith("E minor ")
    assert program.run("explain", LAMENT, "4", "--key", "Em").out.splitlines()[1].split() == ["4", "B7", "V7", "57"]
    assert program.run("list", ".").out == "./lament.toml\n    Lament, E minor, 4 bars\n"


def test_options_are_taken_as_in_the_shell(program):
    plain = program.run("show", LAMENT, "--to=C", "--plain", "--degrees", "major", "--voicing", "none", "--loop")

    assert plain.status == 0
    assert plain.out.isascii()
    assert "b6" in plain.out


def test_json_is_one_document_on_standard_output(program):
    shown = program.run("show", LAMENT, "--key", "E minor", "--to", "C minor", "--voicing", "close", "--json")

    assert (shown.status, shown.err) == (0, "")
    assert shown.out.count("\n") == 1
    (view,) = json.loads(shown.out)["views"]
    assert [chord["symbol"] for chord in view["chords"]] == ["Cm", "Gm/Bb", "Fm/Ab", "G7"]
    assert view["voicing"]["cost"]["total"] == 11
    for words in (("keys", LAMENT), ("explain", LAMENT), ("list", ".")):
        assert json.loads(program.run(*words, "--json").out)["schema"] == 1


@pytest.mark.parametrize("verb", SHELL_VERBS)
def test_a_verb_of_the_shell_is_refused_with_a_hint(verb, tmp_path):
    shown = Program(tmp_path).run(verb, "C")

    assert (shown.status, shown.out) == (2, "")
    sentence, line, caret, hint = shown.err.splitlines()
    assert sentence.endswith(" works inside the shell")
    assert (line, caret) == (f"  {verb} C", "  ^")
    assert hint == "start nearhand alone, or use show --to for other keys"


# Words, what standard error says.
REFUSED = [
    (["shwo"], "'shwo' is neither a verb nor a chord\n  shwo\n  ^\ndid you mean show?\n"),
    (["help", "shwo"], "'shwo' is neither a verb nor a topic\n  help shwo\n       ^\ndid you mean help show?\n"),
    ([""], "'' is neither a verb nor a chord\n  \"\"\n  ^\n"
     "help lists the verbs; chords begin with a capital A to G, a numeral or a number\n"),
    (["show", "| Em | Hm |"], "H is no chord root\n  | Em | Hm |\n         ^\n"
     "write B for B natural and Bb for B flat\n"),
    (["show"], "there is no progression yet\n"
     'write chords, for example "| Em | Bm/D | Am/C | B7 |", or open a chart\n'),
    (["show", "none.toml"], "there is no file none.toml\n  none.toml\n  ^\nlist shows the charts of a folder\n"),
    (["show", "| Em |", "--to", "H"], "'H' is no key\n  show \"| Em |\" --to H\n                     ^\n"
     "write a key such as E minor, Bb major, F#m, or D dorian\n"),
    (["show", "| Em |", "--key", "E miner"], "'miner' is no mode\n  show \"| Em |\" --key \"E miner\"\n"
     "                         ^\ndid you mean minor?\n"),
    (["show", "| Em |", "--vocing", "none"], "show has no option --vocing\n  show \"| Em |\" --vocing none\n"
     "                ^\ndid you mean --voicing?\n"),
    (["list", "nowhere"], "there is no folder nowhere\n  nowhere\n  ^\nlist FOLDER shows its charts\n"),
]  # fmt: skip


@pytest.mark.parametrize(("words", "said"), REFUSED)
def test_a_refusal_goes_to_standard_error_with_status_two(words, said, program):
    assert program.run(*words) == (2, "", said)


def test_a_refusal_in_json_goes_to_standard_error_with_status_two(program):
    for words in (["show", "| Em | Hm |"], ["shwo"], ["to", "C"], ["exit"], ["show", "--to", "H", "C"]):
        shown = program.run(*words, "--json")

        assert (shown.status, shown.out) == (2, "")
        error = json.loads(shown.err)["error"]
        assert {"text", "start", "end", "wanted", "hint"} <= set(error)
        assert 0 <= error["start"] <= error["end"]


def test_nothing_is_written_where_it_runs(program):
    program.run("show", LAMENT)
    program.run(LAMENT, "--to", "all", "--json")

    assert list(program.folder.iterdir()) == []
