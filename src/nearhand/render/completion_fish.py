"""The completion script for fish, from the table of verbs."""

from __future__ import annotations

from nearhand.verbs.files import SUFFIXES
from nearhand.verbs.following import Following, after_nothing, after_option, after_verb, command_verbs
from nearhand.verbs.verb import Option

_FISH = """\
# Completion of nearhand for fish. Switch it on with:  nearhand completion fish | source
function __nearhand_first
    test (count (commandline -opc)) -eq 1
end
function __nearhand_verb
    set -l words (commandline -opc)
    test (count $words) -gt 1; or return 1
    set -l verb show # chords and chart files need no verb
    contains -- $words[2] {verbs}; and set verb $words[2]
    contains -- $verb $argv
end
complete -c nearhand -f
{lines}
"""
_PATHS = {
    "files": f"({'; '.join(f'__fish_complete_suffix {suffix}' for suffix in SUFFIXES)})",
    "folders": "(__fish_complete_directories)",
}


def fish_script() -> str:
    """The script, one line for everything that may be completed.

    >>> fish_script().count("-l voicing ")
    1
    """
    verbs = command_verbs()
    takers: dict[str, list[str]] = {}
    for verb in verbs:
        for option in verb.options:
            takers.setdefault(_option(option), []).append(verb.name)
    lines = _offered("__nearhand_first", after_nothing())
    lines += [f"{_start('__nearhand_verb ' + ' '.join(names))} {option}" for option, names in takers.items()]
    for verb in verbs:
        lines += _offered(f"__nearhand_verb {verb.name}", after_verb(verb))
    return _FISH.format(verbs=" ".join(verb.name for verb in verbs), lines="\n".join(lines))


def _start(condition: str) -> str:
    return f"complete -c nearhand -n {_quoted(condition)}"


def _offered(condition: str, following: Following) -> list[str]:
    """The lines that offer words with their meanings, and files, where a condition holds."""
    lines = []
    for word, meaning in following.words:
        what = f"-l {word[2:]}" if word.startswith("--") else f"-a {word}"
        lines.append(f"{_start(condition)} {what}" + (f" -d {_quoted(meaning)}" if meaning else ""))
    if following.paths:
        lines.append(f"{_start(condition)} -a {_quoted(_PATHS[following.paths])}")
    return lines


def _option(option: Option) -> str:
    """The end of a line that offers an option with what may be its value."""
    words = " ".join(word for word, _ in after_option(option).words)
    value = (" -x" if option.value else "") + (f" -a {_quoted(words)}" if words else "")
    return f"-l {option.name}{value} -d {_quoted(option.help)}"


def _quoted(text: str) -> str:
    """A text in single quotes.

    >>> print(_quoted("the tune's key"))
    'the tune\\'s key'
    """
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'"
