"""Where a melody stands in a line: behind ``melody``, or behind an option that takes one."""

from __future__ import annotations

import os

from nearhand.shell.refusals import NOTES, takes_value, words_in_place, words_of
from nearhand.theory.record import NamedTuple
from nearhand.verbs.files import SUFFIX
from nearhand.verbs.loading import is_file_name
from nearhand.verbs.options import MELODY
from nearhand.verbs.verb import Verb
from nearhand.verbs.words import Word

OFF = "off"
_OPTION = f"--{MELODY.name}"


class TypedNotes(NamedTuple):
    """A melody's text as it stands in a line from ``start`` on; blanks stand for what is none of it."""

    text: str
    start: int

    def holds(self, word: Word) -> bool:
        """Whether a word of the line is part of the melody."""
        at = word.start - self.start
        return at >= 0 and bool(word.text) and self.text.startswith(word.text, at)


def notes_in(verb: Verb, line: str) -> TypedNotes:
    """The melody that a verb is given in its words, or in ``--melody``; an empty one where it is given none.

    >>> from nearhand.verbs.table import BY_NAME
    >>> notes_in(BY_NAME["melody"], 'melody "G: 5" --to C 3')
    TypedNotes(text='G: 5         3', start=8)
    """
    words = _words_of_notes(verb, line)
    nothing = TypedNotes("", len(line))
    if not any(word.text for word in words):
        return nothing
    signs = [" "] * len(line)
    for word in words:
        signs[word.start : word.start + len(word.text)] = word.text
    start, end = words[0].start, words[-1].start + len(words[-1].text)
    notes = TypedNotes("".join(signs[start : end + 1]), start)
    return nothing if verb.follows == NOTES and _is_no_melody(notes.text) else notes


def _words_of_notes(verb: Verb, line: str) -> tuple[Word, ...]:
    if verb.follows == NOTES:
        return words_in_place(verb, line)
    if _OPTION not in line or all(option.name != MELODY.name for option in verb.options):
        return ()
    words = words_of(line)[1:]
    for before, word in zip((Word("", 0), *words), words, strict=False):
        if takes_value(verb, (before,)) and before.text == _OPTION:
            return (word,)
        if not word.quoted and word.text.startswith(f"{_OPTION}="):
            start = len(_OPTION) + 1
            return (Word(word.text[start:], word.start + start),)
    return ()


def _is_no_melody(text: str) -> bool:
    """Whether what follows ``melody`` is a file, or takes the melody away, or may become so."""
    from nearhand.shell.unfinished_notes import kind_of_note  # most lines hold no melody

    first = text.split(maxsplit=1)[0] if text.strip() else ""
    return names_a_file(text.strip()) or (not kind_of_note(first) and (OFF.startswith(text) or _begins_a_file(text)))


def names_a_file(text: str) -> bool:
    """Whether the words behind ``melody`` are the name of a chart."""
    try:
        return is_file_name(text)
    except ValueError:  # as of a name with a character that no file system takes
        return False


def _begins_a_file(text: str) -> bool:
    """Whether the name of a chart, or of a folder, begins with a text."""
    folder, name = os.path.split(text)
    try:
        with os.scandir(folder or os.curdir) as entries:
            return any(each.name.startswith(name) and (each.name.endswith(SUFFIX) or each.is_dir()) for each in entries)
    except (OSError, ValueError):
        return False
