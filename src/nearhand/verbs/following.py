"""What may follow a verb and its options on a command line: words with their meanings, or names of files."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple
from nearhand.verbs.meanings import families_of_instruments, meanings_of
from nearhand.verbs.table import BY_NAME, VERBS
from nearhand.verbs.verb import Option, Verb

PATHS = ("files", "folders")
_TONICS = ("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G")
_MINOR_TONICS = ("A", "D", "G", "C", "F", "Bb", "Eb", "G#", "C#", "F#", "B", "E")
SHORT_KEYS = (*_TONICS, *(f"{tonic}m" for tonic in _MINOR_TONICS))
"""Twelve keys in major, twelve in minor, by falling fifths, each in one word, which needs no quotes anywhere."""
ALONE = (("--help", "explain the verbs"), ("--version", "tell the version"))
"""Words that stand alone on a command line."""


class Following(NamedTuple):
    """What may stand at a place: words with their meanings, and ``paths``: ``files``, ``folders`` or nothing."""

    words: tuple[tuple[str, str], ...] = ()
    paths: str = ""


def after_nothing() -> Following:
    """What the first word may be: a verb that stands alone, a chart file, or what tells about the program."""
    return Following((*((verb.name, verb.help) for verb in command_verbs()), *ALONE), "files")


def command_verbs() -> tuple[Verb, ...]:
    """The verbs that stand alone on a command line."""
    return tuple(verb for verb in VERBS if verb.one_shot)


def after_verb(verb: Verb) -> Following:
    """What may follow a verb, its options left out.

    >>> after_verb(BY_NAME["others"])
    Following(words=(('next', ''), ('back', '')), paths='files')
    """
    return _of_kinds(verb.completes, verb.name)


def after_option(option: Option) -> Following:
    """What may be an option's value: one of its choices, or the words that may follow the verb that asks for the same.

    >>> [word for word, _ in after_option(Option("top", "LINE", "a top line")).words]
    ['free', 'falling', 'rising', 'still', 'melody']
    """
    if option.choices:
        return Following(tuple((choice, "") for choice in option.choices))
    if option.completes:
        return _of_kinds(option.completes, option.name)
    verb = BY_NAME.get(option.name)
    if verb is None or not option.value or verb.follows.strip("[]") != option.value:
        return Following()
    return after_verb(verb)._replace(paths="")


def after_options() -> dict[str, Following]:
    """What may be the value of every option that takes one, by the option's name."""
    return {option.name: after_option(option) for verb in command_verbs() for option in verb.options if option.value}


def _of_kinds(kinds: tuple[str, ...], verb: str) -> Following:
    words: list[tuple[str, str]] = []
    for kind in kinds:
        if kind == "keys":
            words += [(key, "") for key in SHORT_KEYS]
        elif kind == "verbs":
            words += [(each.name, each.help) for each in VERBS]
        elif kind == "words":
            words += meanings_of(verb)
        elif kind == "instruments":
            words += families_of_instruments().items()
        elif kind not in PATHS:
            words.append((kind, ""))
    one_word = tuple(pair for pair in dict(words).items() if not set(pair[0]) & set(" \t'\"$`\\"))
    return Following(one_word, next((kind for kind in kinds if kind in PATHS), ""))
