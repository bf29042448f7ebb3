"""What is wrong in a chart file is told with the line and column in the file."""

from __future__ import annotations

import pytest

from nearhand.notation.errors import InputError
from nearhand.verbs.files import tune_from_file_text

NO_CHORDS = 'add  [[sections]]  and under it  chords = "| C | F G7 | C |"'
TOML = 'write for example  title = "Two Doors"'
KEY = "write a key such as E minor, Bb major, F#m, or D dorian"
NATURAL = "write B for B natural and Bb for B flat"
METER = "write for example 4/4, 3/4 or 7/8"
PUT_A_KEY = 'put the key in front, as in "E minor: i iv V7", or add --key "E minor" (in the shell: key E minor)'


def refusal(text: str) -> InputError:
    """The error that refuses a chart file's text."""
    with pytest.raises(InputError) as caught:
        tune_from_file_text(text, "it.toml")
    assert type(caught.value) is InputError
    return caught.value


def with_chords(text: str) -> str:
    """The text of a file with a section of chords behind it."""
    return text + '\n[[sections]]\nchords = "| C | F |"\n'


def marked(text: str) -> tuple[str, int]:
    """A file's text without its ``^``, and the place of that sign."""
    return text.replace("^", ""), text.index("^")


# A file's text with ^ before the first bad character, sentence, hint.
FIELDS = [
    (with_chords("^title = 5"), "title must be text in quotes (got 5)", "write text in quotes"),
    (with_chords('title = "x"\n^key = ["C"]'), "key must be text in quotes (got ['C'])", "write text in quotes"),
    (with_chords("^meter = 3"), "meter must be text in quotes (got 3)", "write text in quotes"),
    (with_chords("  ^meter = 0.75"), "meter must be text in quotes (got 0.75)", "write text in quotes"),
    (with_chords('^tempo = "quick"'), "tempo must be a whole number (got 'quick')", "write a whole number"),
    (with_chords("^tempo = 90.5"), "tempo must be a whole number (got 90.5)", "write a whole number"),
    (with_chords("^tempo = true"), "tempo must be a whole number (got True)", "write a whole number"),
    (with_chords("^tempo = 9"), "tempo must be 10 to 400 beats a minute (got 9)", None),
    (with_chords("^tempo = 401"), "tempo must be 10 to 400 beats a minute (got 401)", None),
    (with_chords("^tempo = -60"), "tempo must be 10 to 400 beats a minute (got -60)", None),
    (with_chords("^notes = 1"), "notes must be text in quotes (got 1)", "write text in quotes"),
    ("^sections = 5", "sections must be [[sections]] tables (got 5)", "write [[sections]] tables"),
    ("^sections = [1]", "sections must be [[sections]] tables", NO_CHORDS),
    ("[[sections]]\n^chords = 5", "chords must be text in quotes (got 5)", "write text in quotes"),
    ('[[sections]]\n^name = 5\nchords = "C"', "name must be text in quotes (got 5)", "write text in quotes"),
    (with_chords('^tilte = "x"'), "there is no field 'tilte' in a chart", "did you mean title?"),
    (with_chords('title = "x"\n^tmpo = 90'), "there is no field 'tmpo' in a chart", "did you mean tempo?"),
    (with_chords("^author = 5"), "there is no field 'author' in a chart",
     "the fields are title, key, meter, tempo, notes, sections"),
    ('[[sections]]\n^chord = "C"', "there is no field 'chord' in a chart", "did you mean chords?"),
    ('[[sections]]\n^nmae = "A"\nchords = "C"', "there is no field 'nmae' in a chart", "did you mean name?"),
    (with_chords('key = "^H minor"'), "'H minor' is no key", KEY),
    (with_chords('title = "x"\nkey = "E ^miner"'), "'miner' is no mode", "did you mean minor?"),
    (with_chords('meter = "^3/5"'), "'3/5' is no meter", METER),
    (with_chords('meter = "^waltz"'), "'waltz' is no meter", METER),
    ('meter = "4/4"\n[[sections]]\nmeter = "^3/5"\nchords = "C"', "'3/5' is no meter", METER),
]  # fmt: skip

# Chords in a file: line and column of the chord itself.
CHORDS = [
    ('[[sections]]\nchords = "| C | ^Hm |"', "H is no chord root", NATURAL),
    ('[[sections]]\nchords = """\n| C | F |\n| G7 | ^Hm |\n"""', "H is no chord root", NATURAL),
    ('key = "C"\n[[sections]]\nchords = "C"\n\n[[sections]]\nname = "B"\nchords = """\n| Dm | G7 |\n| C | ^Hm |\n"""',
     "H is no chord root", NATURAL),
    ('key = "C"\n[[sections]]\nchords = "| C |"\n[[sections]]\nchords = "| C | ^H |"', "H is no chord root", NATURAL),
    ('notes = "| C | H |"\nkey = "C"\n[[sections]]\nchords = "| C | ^H |"', "H is no chord root", NATURAL),
    ('[[sections]]\nchords = "^i iv V"', "i needs a key to be read in", PUT_A_KEY),
    ('[[sections]]\nchords = "C"\n[[sections]]\nchords = "| C | ^b7 |"', "b7 needs a key to be read in", PUT_A_KEY),
    ('[[sections]]\nchords = "| C | ^| F |"', "this bar is empty", "write % to repeat the bar before, or N.C."),
    ('[[sections]]\nchords = """\n^|: C | F |\n| G |\n"""', "this repeat is never closed",
     "write :| where the repeat ends"),
    ('[[sections]]\nchords = "| [^3/5] C |"', "'3/5' is no meter", METER),
    ('key="C"\nsections = [{chords = "| ^H |"}]', "H is no chord root", NATURAL),
]  # fmt: skip

# TOML itself: the sentence is that of Python's reader, behind a word of ours.
BROKEN = [
    ('title = "x"\nkey "C"\n', 2),
    ('title = "Two Doors\n', 1),
    ('key = "C"\nkey = "D"\n', 2),
    ("[[sections\n", 1),
    ('title = "\\q"', 1),
    ("[" * 5000, 1),
    ("]", 1),
    ("title", 1),
    ("= 5", 1),
    ("hello, this is a letter and no chart", 1),
]  # fmt: skip


@pytest.mark.parametrize(("text", "sentence", "hint"), [*FIELDS, *CHORDS])
def test_a_fault_in_a_file_is_told_with_its_line_and_column(text, sentence, hint):
    plain, place = marked(text)
    line, column = plain[:place].count("\n") + 1, place - (plain.rfind("\n", 0, place) + 1)

    error = refusal(plain)

    assert error.what == sentence
    assert (error.source, error.line, error.start) == ("it.toml", line, column)
    assert error.text == plain.splitlines()[line - 1]
    assert str(error).startswith(f"it.toml, line {line}, column {column + 1}: {sentence}\n")
    assert hint is None or error.hint == hint


@pytest.mark.parametrize(("text", "line"), BROKEN)
def test_what_is_no_toml_is_refused_with_the_line(text, line):
    error = refusal(text)

    assert error.what.startswith("this is no TOML: ")
    assert (error.line, error.hint) == (line, TOML)
    assert 0 <= error.start <= len(error.text)


def test_a_chart_that_breaks_off_is_refused_behind_its_last_line():
    error = refusal('[[sections]]\nchords = """\n| C |\n')

    assert error.what == "this is no TOML: Unterminated string"
    assert error.line in (3, 4)


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "this chart has no chords"),
        ("\n\n# nothing yet\n", "this chart has no chords"),
        ('title = "x"', "this chart has no chords"),
        ("sections = []", "this chart has no chords"),
        ('[[sections]]\nname = "A"', "section 1 has no chords"),
        ('[[sections]]\nchords = "C"\n[[sections]]\nname = "B"', "section 2 has no chords"),
    ],
)
def test_a_chart_without_chords_is_refused_with_what_to_add(text, sentence):
    error = refusal(text)

    assert (error.what, error.hint, error.source) == (sentence, NO_CHORDS, "it.toml")


@pytest.mark.parametrize("chords", ["", " ", "\\n", "|", "| |", "%", "/"])
def test_chords_that_hold_no_chord_are_refused_on_their_line(chords):
    assert refusal(f'[[sections]]\nchords = "{chords}"').line == 2


def test_brackets_beyond_all_measure_are_refused():
    for text in ("x = " + "[" * 100_000, "[" * 100_000, "x = " + "{a=" * 100_000):
        assert refusal(text).source == "it.toml"
