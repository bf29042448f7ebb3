"""Whether a line will be refused, known before it is sent: nothing is run, nothing is voiced, no file is touched."""

from __future__ import annotations

from nearhand.notation.chart import looks_like_a_chord
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.shell.unfinished import last_word_start, may_become_a_key
from nearhand.verbs.loading import is_file_name
from nearhand.verbs.session import Session
from nearhand.verbs.settings import choice_of
from nearhand.verbs.show import ALL, read_keys
from nearhand.verbs.verb import Arguments, Option, Verb
from nearhand.verbs.words import Word, sort_words, split_line

CHART = "CHART"
"""What follows a verb that may be given a chart."""
_HARMLESS = "voicing_settings."
"""Verbs of this module only read their words when there is no tune."""
NOTES = "[NOTES]"
"""What follows a verb that may be given a melody."""
_CHOICES = ("on|off", "on|off|auto", "up|down|nearest", "HOW", "WHERE", "STYLE", "WAY")
"""What follows a verb that takes one of its fixed words."""
_KEY_OPTIONS = ("key", "to", "known")


def words_of(line: str) -> tuple[Word, ...]:
    """The words of a line, the last of which may stand in an open quote.

    >>> [word.text for word in words_of('show "| Em | B')]
    ['show', '| Em | B']
    """
    try:
        return split_line(line)
    except InputError as error:
        return split_line(line + line[error.start])


def sorted_words(verb: Verb, line: str) -> Arguments:
    """The words behind a verb, sorted.

    Raises InputError at an option that the verb does not have, or one without its value.
    """
    return sort_words(verb, words_of(line)[1:], line)


def plain_words(verb: Verb, line: str) -> Arguments:
    """The words behind a verb that are neither options nor their values, whatever is wrong with those."""
    plain = words_in_place(verb, line)
    return Arguments(line, tuple(word.text for word in plain), plain[0].start if plain else len(line))


def words_in_place(verb: Verb, line: str) -> tuple[Word, ...]:
    """The same words, each with its place."""
    words = words_of(line)[1:]
    return tuple(
        word
        for place, word in enumerate(words)
        if not begins_option(verb, word) and not takes_value(verb, words[place - 1 : place])
    )


def begins_option(verb: Verb, word: Word) -> bool:
    """Whether a word is an option, or the beginning of one. Dashes alone hold a note where a melody may stand.

    >>> from nearhand.verbs.table import BY_NAME
    >>> [begins_option(BY_NAME[name], Word("--", 0)) for name in ("show", "melody")]
    [True, False]
    """
    is_hold = verb.follows == NOTES and not word.text.strip("-")
    return not word.quoted and word.text.startswith("--") and not is_hold


def takes_value(verb: Verb, before: tuple[Word, ...]) -> bool:
    """Whether the word before, if there is one, is an option whose value follows it."""
    return any(
        not word.quoted and word.text == f"--{option.name}" and option.value
        for word in before
        for option in verb.options
    )


def is_open(word: Word, line: str) -> bool:
    """Whether the last word of a line stands in a quote that is not closed."""
    return word.quoted and word.start + len(word.text) == len(line)


def option_at_the_end(verb: Verb, line: str) -> Option | None:
    """The option whose name or value is being typed at the end of a line; None when there is none.

    >>> from nearhand.verbs.table import BY_NAME
    >>> option_at_the_end(BY_NAME["show"], "show --voicing dr").name
    'voicing'
    """
    words = words_of(line)[1:]
    if line[-1:].isspace() and not (words and is_open(words[-1], line)):
        words = (*words, Word("", len(line)))
    if not words:
        return None
    last = words[-1]
    if begins_option(verb, last):
        found = [option for option in verb.options if f"--{option.name}".startswith(last.text.partition("=")[0])]
        exact = [option for option in found if f"--{option.name}" == last.text.partition("=")[0]]
        return next(iter((*exact, *found)), None)
    if not takes_value(verb, words[-2:-1]):
        return None
    return next(option for option in verb.options if words[-2].text == f"--{option.name}")


def chart_of(verb: Verb, arguments: Arguments) -> str:
    """The chart that a verb is given in its words; empty when it is given none, or a file, or a number alone."""
    words = arguments.words
    if not verb.follows.startswith(f"[{CHART}]") or not words:
        return ""
    if verb.follows != f"[{CHART}]" and words[-1].isdigit():
        words = words[:-1]
    text = " ".join(words)
    is_step = all(word in ("next", "back") for word in words)
    return "" if not words or is_step or _is_file(text) else text


def _is_file(text: str) -> bool:
    """Whether a text names a file, or may do so when it is typed to its end."""
    if "|" not in text and (not looks_like_a_chord(text) or "." in text.upper().replace("N.C.", "")):
        return True
    try:
        return is_file_name(text)
    except ValueError:  # as of a name with a character that no file system takes
        return False


def check(verb: Verb, arguments: Arguments, session: Session) -> None:
    """Read a verb's words as far as that costs nothing.

    Raises InputError where one of them cannot be read.
    """
    line, text = arguments.line, arguments.text
    if text and not verb.follows:
        what = f"nothing may follow {verb.name}"
        raise InputError(what, line, arguments.start, wanted="the end of the line", hint=f"write {verb.name} alone")
    for name in _KEY_OPTIONS:
        if (value := arguments.option(name)) is not None:
            try:
                _read_keys(value, session)
            except InputError as error:
                raise arguments.placed(error, name) from None
    if text and verb.completes[:1] == ("keys",):
        try:
            _read_keys(text, session) if "all" in verb.completes else parse_key(text)
        except InputError as error:
            raise error.within(line, arguments.start) if line.startswith(text, arguments.start) else error from None
    if text and (choices := _choices_of(verb)):
        choice_of(verb.name, arguments, choices)
    if text and verb.function.startswith(_HARMLESS):
        try:
            verb.run(Session(conventions=session.conventions), arguments)
        except InputError as error:
            if error.wanted != "chords":  # of a verb that needs a tune
                raise


def _read_keys(text: str, session: Session) -> None:
    if session.tune is not None:
        read_keys(text, session)
    elif text.strip().lower() != ALL:
        start = 0
        for part in text.split(","):
            try:
                parse_key(part)
            except InputError as error:
                raise error.within(text, start) from None
            start += len(part) + 1


def may_be_mended(verb: Verb, line: str, error: InputError) -> bool:
    """Whether what a verb refuses is the word that is still being typed, and may become something it takes."""
    if error.text != line or error.start < last_word_start(line):
        return False
    if not verb.follows:
        return False
    if error.start >= len(line):
        return True
    word, option = line[error.start :].strip().strip("\"'"), option_at_the_end(verb, line)
    if word.startswith("--"):
        return option is not None
    named = words_of(line)[-1].text if option else plain_words(verb, line).text
    if option.name in _KEY_OPTIONS if option else verb.completes[:1] == ("keys",):
        key = named.rpartition(",")[2].strip()
        return may_become_a_key(key) or ALL.startswith(key.lower())
    choices = option.choices if option is not None else _choices_of(verb)
    return not choices or any(choice.startswith(word) for choice in choices)


def _choices_of(verb: Verb) -> tuple[str, ...]:
    """The fixed words of a verb that takes nothing else."""
    return verb.completes if verb.follows in _CHOICES and "words" not in verb.completes else ()
