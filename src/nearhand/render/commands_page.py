"""The page docs/commands.md, made from the table of verbs; ``python -m nearhand.render.commands_page`` prints it."""

from __future__ import annotations

from nearhand.verbs.meanings import meanings_of
from nearhand.verbs.table import VERBS
from nearhand.verbs.verb import Option, Verb

CALLS = (
    ("nearhand", "the shell; from a pipe, its lines"),
    ('nearhand "| Em | B7 |"', "these chords, as show does"),
    ("nearhand waltz.toml", "this chart file"),
    ("nearhand -", "standard input: chords, or the text of a chart file"),
    ("nearhand VERB ...", "one answer of a verb"),
    ("nearhand help [VERB|TOPIC]", "help, also as nearhand VERB --help"),
    ("nearhand --version", "the version"),
    ("python -m nearhand ...", "the same program"),
)
STATUSES = (
    (0, "it was answered, or the reader of the answer left early"),
    (2, "something could not be read, found or written, or makes sense in the shell alone; standard error says what"),
    (130, "it was interrupted with Ctrl-C"),
)
"""Exit statuses and what they say; from a pipe, 2 when any line was refused."""
ENVIRONMENT = (
    ("COLUMNS", "how many characters a page is wide; else as wide as the terminal, and 80 in a pipe"),
    ("NO_COLOR", "set to anything: no colours"),
    ("TERM", "`dumb`, or not set: no colours"),
    ("LC_ALL, LC_CTYPE, LANG, PYTHONIOENCODING", "where the encoding has no ♭ and ♯: b and #, as with `--plain`"),
    ("HOME", "the folder that `~` stands for"),
    ("XDG_CONFIG_HOME", "on Linux, the folder in which settings are kept, in `nearhand`; else `~/.config`"),
    ("XDG_DATA_HOME", "on Linux, that of the history, recent charts and journals; else `~/.local/share`"),
)
"""Variables of the environment and what they do."""
_ABOUT = """\
# Commands

Every verb of nearhand with its options, and how the program behaves on a command line. This page is made from the table
of verbs, and the tests compare the two; [README](../README.md) is the place to begin.

## How it is called
"""
_INPUT = """\
## Standard input

`-` stands for standard input wherever a chart may stand: `nearhand keys -`. It is read as UTF-8. What begins like a
chart file (a line `title = ...`, `key = ...` or `[[sections]]`) is read as one, everything else as chords; behind
`melody` as notes, where `-` must be the only word: among notes it holds one. Without any word, and with standard input
no terminal, every line is one line of the shell; lines that begin with `#` and a blank are notes.

## Standard output and standard error

Answers go to standard output, refusals to standard error: a sentence, the place with a caret below it, and what to
write instead. With `--json` both are one JSON document: an answer has `"schema": 1`, a refusal `"error"` with its
`text`, `start`, `end`, `wanted`, `hint` and `what`. Notes are spelled `Bb4` and `F#3` there.
"""


def commands_page() -> str:
    """The whole page as Markdown.

    >>> commands_page().splitlines()[0]
    '# Commands'
    """
    width = max(len(call) for call, _ in CALLS) + 2
    calls = [call.ljust(width) + meaning for call, meaning in CALLS]
    shared = _shared()
    parts = [
        _ABOUT,
        _block(calls),
        "## Verbs that stand alone\n\nThey answer on the command line, and in the shell as well.\n",
        *(_section(verb, shared) for verb in VERBS if verb.one_shot),
        "## Verbs of the shell\n\nThey work on what is on the stand; on a command line they are refused.\n",
        *(_section(verb, shared) for verb in VERBS if not verb.one_shot),
        "## Options that several verbs share\n",
        "".join(_option(option) for option in shared),
        "## Exit statuses\n",
        "".join(f"- {status}: {meaning}\n" for status, meaning in STATUSES),
        "## Environment\n",
        "".join(f"- {_names(names)}: {meaning}\n" for names, meaning in ENVIRONMENT),
        _INPUT,
    ]
    return "\n".join(parts)


def _shared() -> tuple[Option, ...]:
    """Options that more than one verb has, each once."""
    options = [option for verb in VERBS for option in verb.options]
    return tuple(option for option in dict.fromkeys(options) if options.count(option) > 1)


def _section(verb: Verb, shared: tuple[Option, ...]) -> str:
    """A verb's section: what it does, its usage, its options and the words that may follow it, examples."""
    start = "nearhand " if verb.one_shot else ""
    options = "".join(f" [{option.usage}]" for option in verb.options if option not in shared)
    options += " [OPTIONS]" if any(option in shared for option in verb.options) else ""
    also = f" Also: {_names(', '.join(verb.aliases))}." if verb.aliases else ""
    parts = [f"### {verb.name}\n", f"{_sentence(verb.help)}{also}\n", _block([f"{start}{verb.usage}{options}"])]
    rows = "".join(_option(option) for option in verb.options if option not in shared)
    rows += "".join(f"- `{word}`: {_escaped(meaning)}\n" for word, meaning in meanings_of(verb.name))
    parts += [rows] if rows else []
    names = ", ".join(f"--{option.name}" for option in verb.options if option in shared)
    if names:
        parts.append(f"OPTIONS are {_names(names)}: see [below](#options-that-several-verbs-share).\n")
    here = [example for example in verb.examples if verb.one_shot and not needs_stand(verb, example)]
    there = [example for example in verb.examples if example not in here]
    parts += ["For example:\n", _block([start + example for example in here])] if here else []
    parts += ["In the shell, for example:\n", _block(there)] if there else []
    return "\n".join(parts)


def needs_stand(verb: Verb, example: str) -> bool:
    """Whether an example of a verb that takes a chart brings neither chart nor melody: it works on what stands there.

    >>> from nearhand.verbs.table import BY_NAME
    >>> needs_stand(BY_NAME["why"], "why 3"), needs_stand(BY_NAME["show"], "show waltz.toml")
    (True, False)
    >>> needs_stand(BY_NAME["melody"], "melody off")
    True
    """
    if example.endswith(" off"):
        return True
    return "CHART" in verb.follows and not any(sign in example for sign in ("|", ".toml", "--melody"))


def _option(option: Option) -> str:
    choices = f" One of {_names(', '.join(option.choices))}." if option.choices else ""
    return f"- `{option.usage}`: {_escaped(option.help)}.{choices}\n"


def _block(lines: list[str]) -> str:
    return "```text\n" + "\n".join(lines) + "\n```\n"


def _names(text: str) -> str:
    """Names between commas, each as code."""
    return ", ".join(f"`{name}`" for name in text.split(", "))


def _sentence(text: str) -> str:
    """A line of help as a sentence.

    >>> _sentence("take back the last change")
    'Take back the last change.'
    """
    return _escaped(text[:1].upper() + text[1:]) + "."


def _escaped(text: str) -> str:
    """A text in which nothing is Markdown.

    >>> _escaped("keep <2> *and* [3]")
    'keep \\\\<2> \\\\*and\\\\* \\\\[3]'
    """
    return "".join("\\" + character if character in "\\`*_<[" else character for character in text)


if __name__ == "__main__":
    print(commands_page(), end="")
