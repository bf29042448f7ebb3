"""The completion scripts in the shells they are for; a shell that is not installed is left out."""

from __future__ import annotations

import os
import shutil
import subprocess
from itertools import pairwise
from pathlib import Path

import pytest

from nearhand.notation.keys import parse_key
from nearhand.render.completion_fish import fish_script
from nearhand.render.completion_scripts import bash_script, zsh_script
from nearhand.verbs.following import SHORT_KEYS, after_option, after_options, after_verb, command_verbs
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME, VERBS
from nearhand.voicing.wishes import STYLES, TOP_LINES

ALONE = [verb.name for verb in VERBS if verb.one_shot]
SHOW = [f"--{option.name}" for option in BY_NAME["show"].options]
FOLDER = ("lament.toml", "two doors.toml", "reel.abc", "notes.txt", "attic/old.toml")

# Words up to the cursor, what may stand there.
WORDS = [
    (["sh"], {"show"}), (["ex"], {"explain"}), (["--v"], {"--version"}), (["nonsense"], set()), (["undo"], set()),
    (["show", "--vo"], {"--voicing"}), (["show", "--voicing", "drop"], {"drop2", "drop3", "drop2and4"}),
    (["show", "--voicing", ""], {*STYLES, "none"}), (["lines", "--top", ""], set(TOP_LINES)),
    (["show", "--left", "t"], {"tenth"}), (["show", "--to", "a"], {"all"}), (["show", "--to", "D"], {"D", "Db", "Dm"}),
    (["keys", "--key", "F#"], {"F#m"}), (["keys", "--voi"], set()), (["show", "| C |", "--degrees", "ma"], {"major"}),
    (["borrow", "B"], {"B", "Bb", "Bm", "Bbm"}), (["completion", ""], {"bash", "zsh", "fish"}),
    (["others", "n"], {"next"}), (["show", "--pin", "n"], set()), (["keys", "--melody", ""], set()),
    (["show", "la"], {"lament.toml"}), (["lament.toml", "--to", "a"], {"all"}), (["| C |", "--loo"], {"--loop"}),
    (["la"], {"lament.toml"}), (["explain", "no"], set()), (["show", "re"], {"reel.abc"}),
]  # fmt: skip
WITH_EQUALS = [("--voicing=dr", {"drop2", "drop3", "drop2and4"}), ("--to=", {*SHORT_KEYS, "all"})]


@pytest.fixture
def desk(tmp_path):
    for name in FOLDER:
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text("")
    return tmp_path


def run(shell, code, folder, *words):
    """What a shell prints for some code; words are its own. It reads no start-up file and must not complain."""
    start = {"bash": ["--noprofile", "--norc", "-c", code, "bash"], "zsh": ["-f", "-c", code, "zsh"]}
    done = subprocess.run(
        [shell, *start.get(shell, ["--no-config", "-c", code]), *words],
        cwd=folder,
        env={"PATH": os.environ["PATH"], "HOME": str(folder), "LC_ALL": "C.UTF-8", **LIBRARIES},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


LIBRARIES = {name: os.environ[name] for name in ("LD_LIBRARY_PATH",) if name in os.environ}
needs = {
    shell: pytest.mark.skipif(shutil.which(shell) is None, reason=f"{shell} is not installed")
    for shell in ("bash", "zsh", "fish")
}


def in_bash(words, folder):
    """The replies of bash's completion with the cursor behind the last word."""
    code = (
        f'{bash_script()}\nCOMP_WORDS=(nearhand "$@") COMP_CWORD=$#\n_nearhand\n'
        '(( ${#COMPREPLY[@]} )) && printf "%s\\n" "${COMPREPLY[@]}"\ntrue'
    )
    return run("bash", code, folder, *words).splitlines()


@needs["bash"]
@pytest.mark.parametrize(("words", "expected"), WORDS)
def test_bash_offers_what_may_follow(words, expected, desk):
    replies = in_bash(words, desk)

    assert set(replies) == expected
    assert len(replies) == len(expected)


@needs["bash"]
def test_bash_offers_verbs_and_charts_at_the_start_and_folders_to_list(desk):
    start = set(in_bash([""], desk))

    assert start == {*ALONE, "--help", "--version", "lament.toml", "two doors.toml", "reel.abc", "attic"}
    assert set(in_bash(["show", "--"], desk)) == set(SHOW)
    assert set(in_bash(["list", ""], desk)) == {"attic"}
    assert set(in_bash(["show", "attic/"], desk)) == {"attic/old.toml"}
    assert set(in_bash(["show", '"two'], desk)) == {"two doors.toml"}


@needs["bash"]
@pytest.mark.parametrize(("word", "expected"), WITH_EQUALS)
def test_bash_completes_a_value_behind_an_equals_sign_cut_or_whole(word, expected, desk):
    option, value = word.split("=")
    cut = [option, "=", value] if value else [option, "="]

    assert set(in_bash(["show", *cut], desk)) == expected
    assert set(in_bash(["show", word], desk)) == {f"{option}={found}" for found in expected}


@needs["bash"]
def test_bash_knows_whom_to_ask(desk):
    assert run("bash", f"{bash_script()}\ncomplete -p nearhand", desk) == "complete -F _nearhand nearhand\n"


ZSH = """
compdef() {{ whose=$*; }}
_describe() {{ for found in "${{(@P)4}}"; print -r -- "$found"; }}
_files() {{ print -r -- "files $*"; }}
compset() {{ PREFIX=${{PREFIX#*=}}; }}
{script}
[[ $whose == '_nearhand nearhand' ]] || print -u 2 "asks: $whose"
words=(nearhand "$@") CURRENT=$(( $# + 1 )) PREFIX=$words[-1]
_nearhand
"""


def in_zsh(words, folder):
    """What zsh's completion hands to its own functions, which stand-ins print: words, then what it says of files."""
    lines = run("zsh", ZSH.format(script=zsh_script()), folder, *words).splitlines()
    offers = dict(line.partition(":")[::2] for line in lines if not line.startswith("files "))
    return offers, [line for line in lines if line.startswith("files ")]


@needs["zsh"]
def test_zsh_offers_words_with_their_meanings_and_charts(desk):
    start, files = in_zsh([""], desk)
    options, no_files = in_zsh(["show", "--"], desk)

    assert start == {verb.name: verb.help for verb in VERBS if verb.one_shot} | {
        "--help": "explain the verbs", "--version": "tell the version",
    }  # fmt: skip
    assert options == {f"--{option.name}": option.help for option in BY_NAME["show"].options}
    assert (files, no_files) == (["files -g *.(toml|abc)"], [])
    assert in_zsh(["show", "x"], desk) == ({}, ["files -g *.(toml|abc)"])
    assert in_zsh(["list", ""], desk) == ({}, ["files -/"])


@needs["zsh"]
@pytest.mark.parametrize(
    ("words", "expected"),
    [(words, expected) for words, expected in WORDS if words[0] in ALONE and words[-1] == "" and expected]
    + [(["show", word], expected) for word, expected in WITH_EQUALS],
)
def test_zsh_offers_what_may_follow(words, expected, desk):
    offered, _ = in_zsh(words, desk)

    assert set(offered) >= expected
    assert all(word.startswith(words[-1].partition("=")[2]) or word in after_words() for word in offered)


def after_words():
    return {word for following in after_options().values() for word, _ in following.words}


@needs["fish"]
@pytest.mark.parametrize(("words", "expected"), [row for row in WORDS if row[0][-1] not in ("nonsense", "undo", "no")])
def test_fish_offers_what_may_follow(words, expected, desk):
    typed = " ".join(f"'{word}'" if " " in word else word for word in ["nearhand", *words])

    code = f"{fish_script()}\ncomplete -C '{typed.replace(chr(39), chr(92) + chr(39))}'"
    offered = {line.partition("\t")[0] for line in run("fish", code, desk).splitlines()}

    others = {word for word in offered if word.endswith(("/", ".txt"))}  # fish offers charts first, then the rest
    assert {word for word in offered - others if word.startswith(words[-1])} == expected


def test_the_first_page_and_the_scripts_say_how_to_switch_them_on():
    readme = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")

    for script in (bash_script(), zsh_script(), fish_script()):
        _, _, line = next(line for line in script.splitlines() if "Switch it on with:" in line).partition("with:  ")
        assert line.startswith(("eval", "source", "nearhand"))
        assert line in readme


def test_the_scripts_are_written_with_keyboard_characters_alone():
    for script in (bash_script(), zsh_script(), fish_script()):
        assert script.isascii()
        assert script.endswith("\n")
        assert "\t" not in script


@pytest.mark.parametrize("script", [bash_script(), zsh_script(), fish_script()], ids=["bash", "zsh", "fish"])
def test_a_script_names_every_verb_that_stands_alone_and_every_option(script):
    words = set(script.replace("'", " ").replace("-l ", "--").replace("|", " ").replace(":", " ").split())

    assert set(ALONE) <= words
    assert {f"--{option.name}" for verb in command_verbs() for option in verb.options} <= words


def test_options_of_one_name_are_followed_by_the_same():
    for verb in command_verbs():
        for option in verb.options:
            assert bool(option.value) == (option.name in after_options())
            if option.value:
                assert after_option(option) == after_options()[option.name]


OFFERED = [(option.name, word) for option in BY_NAME["show"].options for word, _ in after_option(option).words]


@pytest.mark.parametrize(("option", "word"), OFFERED)
def test_every_word_that_is_offered_behind_an_option_is_taken(option, word):
    chart = "A minor: | Am | E7 |" if option == "to" and word.endswith("m") else "| C | F |"
    needs = {("left", "tenth"): " --span tenth", ("top", "melody"): " --melody 'E5 - - -'"}.get((option, word), "")

    assert respond(Session(), f'show "{chart}" --{option} {word}{needs}').answer.views


def test_every_key_that_is_offered_is_one_word_and_is_read():
    # common practice, no source: twelve keys in major and in minor by falling fifths
    keys = [parse_key(word) for word in SHORT_KEYS]

    assert len(set(keys)) == 24
    assert [key.mode.name for key in keys] == ["major"] * 12 + ["minor"] * 12
    for row in (keys[:12], keys[12:]):
        assert {(before.tonic.semitones - after.tonic.semitones) % 12 for before, after in pairwise(row)} == {7}


def test_what_follows_a_verb_has_no_sign_that_a_shell_would_read():
    for verb in command_verbs():
        for word, _ in after_verb(verb).words:
            assert not set(word) & set(" \t'\"$`\\|&;<>()*?[]{}~!")


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_the_program_prints_the_script_whole_at_any_width(shell, program):
    script = {"bash": bash_script, "zsh": zsh_script, "fish": fish_script}[shell]()

    assert program.run("completion", shell) == (0, script, "")
    assert program.run("completion", shell, COLUMNS="20").out == script
