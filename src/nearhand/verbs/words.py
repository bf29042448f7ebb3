"""Cutting a line into words, and sorting a verb's words into its text and its options."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.record import NamedTuple
from nearhand.verbs.verb import Arguments, Option, Verb

QUOTES = ('"', "'")


class Word(NamedTuple):
    """A word with its place in the line; ``quoted`` words are never options."""

    text: str
    start: int
    quoted: bool = False


def split_line(line: str) -> tuple[Word, ...]:
    """Cut a line at blanks; double or single quotes keep a text together.

    Raises InputError when a quote is not closed.

    >>> [word.text for word in split_line('show "| Em | B7 |" --to all')]
    ['show', '| Em | B7 |', '--to', 'all']
    """
    words, at = [], 0
    while at < len(line):
        if line[at].isspace():
            at += 1
        elif line[at] in QUOTES:
            close = line.find(line[at], at + 1)
            if close < 0:
                raise InputError(
                    "a quote is not closed", line, at, at + 1, wanted=line[at], hint="close it with the same sign"
                )
            words.append(Word(line[at + 1 : close], at + 1, quoted=True))
            at = close + 1
        else:
            end = at
            while end < len(line) and not line[end].isspace():
                end += 1
            words.append(Word(line[at:end], at))
            at = end
    return tuple(words)


def line_of(words: list[str]) -> tuple[str, tuple[Word, ...]]:
    """One line from words that were cut already (by a command line's own shell), and the words' places in it.

    >>> line_of(["show", "| Em |"])[0]
    'show "| Em |"'
    """
    line, placed = "", []
    for word in words:
        quote = '"' if not word or any(character.isspace() for character in word) else ""
        line += " " * bool(line)
        placed.append(Word(word, len(line) + len(quote), bool(quote)))
        line += quote + word + quote
    return line, tuple(placed)


def sort_words(verb: Verb, words: tuple[Word, ...], line: str) -> Arguments:
    """Sort a verb's words (without its name) into text and options.

    Raises InputError at an option the verb does not have, or one whose value is missing or not among its choices.
    """
    by_name = {option.name: option for option in verb.options}
    plain: list[Word] = []
    options: dict[str, str] = {}
    starts: dict[str, int] = {}
    rest = list(words)
    while rest:
        word = rest.pop(0)
        if word.quoted or not word.text.startswith("--") or not word.text.strip("-"):  # dashes alone hold a note
            plain.append(word)
            continue
        name, equals, value = word.text[2:].partition("=")
        option = by_name.get(name)
        if option is None:
            raise _no_such_option(verb, word, line)
        start = word.start + len(name) + 3
        if option.value and not equals:
            if not rest:
                end = word.start + len(word.text)
                raise InputError(f"--{name} needs a value", line, end, end + 1, wanted=option.value, hint=option.help)
            value, start = rest[0].text, rest.pop(0).start
        _check_choice(option, value, line, start)
        options[name], starts[name] = value, start
    start = plain[0].start if plain else len(line)
    return Arguments(line, tuple(word.text for word in plain), start, options, starts)


def _no_such_option(verb: Verb, word: Word, line: str) -> InputError:
    from difflib import get_close_matches

    names = [f"--{option.name}" for option in verb.options]
    near = get_close_matches(word.text.partition("=")[0], names, n=1)
    hint = f"did you mean {near[0]}?" if near else f"{verb.name} knows {', '.join(names)}" if names else ""
    return InputError(
        f"{verb.name} has no option {word.text[:30]}",
        line,
        word.start,
        word.start + len(word.text),
        wanted="an option",
        hint=hint,
    )


def _check_choice(option: Option, value: str, line: str, start: int) -> None:
    if option.choices and value not in option.choices:
        from nearhand.verbs.choices import hint_of

        raise InputError(
            f"{value[:30]!r} cannot follow --{option.name}",
            line,
            start,
            start + len(value),
            wanted=" or ".join(option.choices),
            hint=hint_of(value, option.choices),
        )


def asks_for_json(line: str) -> bool:
    """Whether a line that could not be read asks for a document.

    >>> asks_for_json("show | Hm | --json"), asks_for_json("show | Hm |")
    (True, False)
    """
    return "--json" in line.split()
