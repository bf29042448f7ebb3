"""The completion scripts for bash and zsh, from the table of verbs: one list of cases, which both shells read alike."""

from __future__ import annotations

from nearhand.verbs.files import SUFFIXES
from nearhand.verbs.following import Following, after_nothing, after_options, after_verb, command_verbs

_BASH = """\
# Completion of nearhand for bash. Switch it on with:  eval "$(nearhand completion bash)"
_nearhand() {{
    local place=$COMP_CWORD verb=${{COMP_WORDS[1]}}
    local current=${{COMP_WORDS[COMP_CWORD]}} before=${{COMP_WORDS[COMP_CWORD-1]}}
    local words= paths= fixed= found
    current=${{current#[\\"\\']}}  # an open quote is none of the word
    if [[ $current == = ]]; then
        current=
    elif [[ $before == = ]]; then
        before=${{COMP_WORDS[COMP_CWORD-2]}}
    elif [[ $current == --*=* ]]; then
        fixed=${{current%%=*}}= before=${{current%%=*}} current=${{current#*=}}
    fi
{cases}
    COMPREPLY=()
    while IFS= read -r found; do
        [[ -n $found ]] && COMPREPLY+=("$fixed$found")
    done < <(
        compgen -W "$words" -- "$current"
{suffixes}
        [[ -n $paths ]] && compgen -d -- "$current"
    )
    [[ -n $paths ]] && compopt -o filenames 2>/dev/null
    return 0
}}
complete -F _nearhand nearhand
"""
_ZSH = """\
#compdef nearhand
# Completion of nearhand for zsh. Switch it on with:  source <(nearhand completion zsh)
_nearhand() {{
    local place=$(( CURRENT - 1 )) verb=$words[2] current=$PREFIX before=$words[CURRENT-1]
    local offered= paths= word meaning
    local -a found
    local -A meanings=(
{meanings}
    )
    if [[ $current == --*=* ]]; then
        before=${{current%%=*}}
        compset -P '*='
    fi
{cases}
    for word in ${{=offered}}; do
        meaning=${{meanings[$word]:-${{meanings[$place:$word]}}}}
        found+=("$word${{meaning:+:$meaning}}")
    done
    (( $#found )) && _describe -t words nearhand found
    [[ $paths == files ]] && _files -g '*.({suffixes})'
    [[ $paths == folders ]] && _files -/
    return 0
}}
if [[ $funcstack[1] == _nearhand ]]; then
    _nearhand "$@"
else
    compdef _nearhand nearhand
fi
"""


def bash_script() -> str:
    """The script for bash, 3.2 or newer: it defines one function and names it to bash.

    >>> bash_script().splitlines()[-1]
    'complete -F _nearhand nearhand'
    """
    row = "        [[ $paths == files ]] && compgen -f -X '!*{}' -- \"$current\""
    return _BASH.format(cases=_cases("words"), suffixes="\n".join(row.format(suffix) for suffix in SUFFIXES))


def zsh_script() -> str:
    """The script for zsh: to be sourced, or kept as a file ``_nearhand`` in a folder of functions.

    >>> zsh_script().splitlines()[0]
    '#compdef nearhand'
    """
    options = {f"--{option.name}": option.help for verb in command_verbs() for option in verb.options}
    first = {f"1:{word}": meaning for word, meaning in after_nothing().words}
    rows = [f"        {_quoted(word)} {_quoted(meaning)}" for word, meaning in (first | options).items()]
    suffixes = "|".join(suffix[1:] for suffix in SUFFIXES)
    return _ZSH.format(cases=_cases("offered"), meanings="\n".join(rows), suffixes=suffixes)


def _cases(variable: str) -> str:
    """The cases that set ``variable`` to words that may stand at a place, and ``paths`` to ``files`` or ``folders``."""
    verbs = command_verbs()
    options = [(f"*:--{name}", _offer(found, variable)) for name, found in after_options().items()]
    flags = [
        (f"{verb.name}:-*", f"{variable}='{' '.join(f'--{option.name}' for option in verb.options)}'")
        for verb in verbs
        if verb.options
    ]
    words = [(f"{verb.name}:*", _offer(after_verb(verb), variable)) for verb in verbs]
    return "\n".join(
        [
            "    case $verb in",
            f"    {'|'.join(verb.name for verb in verbs)}) ;;",
            "    *) verb=show ;;  # chords and chart files need no verb",
            "    esac",
            "    case $place:$before in",
            f"    1:*) {_offer(after_nothing(), variable)} ;;",
            *_merged(options, "    "),
            "    *)",
            "        case $verb:$current in",
            *_merged(flags, "        "),
            *_merged(words, "        "),
            "        esac ;;",
            "    esac",
        ]
    )


def _merged(rows: list[tuple[str, str]], indent: str) -> list[str]:
    """One case for all patterns that lead to the same."""
    patterns: dict[str, list[str]] = {}
    for pattern, offer in rows:
        patterns.setdefault(offer, []).append(pattern)
    return [f"{indent}{'|'.join(same)}) {offer} ;;" for offer, same in patterns.items()]


def _offer(following: Following, variable: str) -> str:
    words = [f"{variable}='{' '.join(word for word, _ in following.words)}'"] if following.words else []
    paths = [f"paths={following.paths}"] if following.paths else []
    return " ".join(words + paths) or ":"


def _quoted(text: str) -> str:
    """A text in single quotes.

    >>> print(_quoted("the tune's key"))
    'the tune'\\''s key'
    """
    return "'" + text.replace("'", "'\\''") + "'"
