"""What stands below a line while it is typed: its numerals and key, a verb's use, or why it cannot be read."""

from __future__ import annotations

from nearhand.notation.chart import read_chart
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.shell.notes_in_line import notes_in
from nearhand.shell.preview_rows import in_rows, row_of
from nearhand.shell.refusals import chart_of, check, may_be_mended, option_at_the_end, sorted_words
from nearhand.shell.unfinished import closed, is_key_being_typed, last_word_start, may_become_a_chord, may_become_a_verb
from nearhand.theory.key import Key
from nearhand.verbs.loading import option_key
from nearhand.verbs.options import MELODY
from nearhand.verbs.session import Session
from nearhand.verbs.show import read_keys
from nearhand.verbs.table import BY_NAME, find_verb
from nearhand.verbs.tune import Tune, tune_from_text
from nearhand.verbs.verb import Option, Verb
from nearhand.verbs.words import QUOTES

MOST_CHARACTERS = 1000
"""A longer line is read when it is sent."""


def preview(line: str, session: Session, width: int = 80, cursor: int | None = None) -> str:
    """What a line comes to so far, in at most three rows of ``width`` columns; empty where there is nothing to say.

    ``cursor`` is the place where one types, the end of the line when it is not given: a word that ends there is
    unfinished, and is not found fault with as long as it may become something.

    >>> preview("Em Bm/D Am/C B7", Session())
    'E minor: i v6 iv6 V7'
    >>> preview("Em | B", Session(), cursor=6), preview("Em | Hm |", Session())
    ('E minor: i V', 'H is no chord root; write B for B natural and Bb for B flat')
    """
    if not line.strip() or len(line) > MOST_CHARACTERS:
        return ""
    at = len(line) if cursor is None else cursor
    if line.lstrip()[0] in QUOTES:  # what is quoted is shown
        return preview(f"show {line}", session, width, at + 5)
    try:
        return _said(line, session, max(width, 1))
    except InputError as error:
        typed = last_word_start(line[:at])
        if at < len(line) and typed <= error.start < at and error.text == line:
            return ""
        return in_rows(f"{error.what}; {error.hint}" if error.hint else error.what, max(width, 1))


def _said(line: str, session: Session, width: int) -> str:
    words = line.split(maxsplit=1)
    verb = BY_NAME.get(words[0])
    if verb is not None:
        return _of_verb(verb, line, session, width)
    if is_key_being_typed(line):
        return ""
    is_one_word = len(words) == 1 and not line[-1].isspace()
    if is_one_word and may_become_a_verb(line) and not may_become_a_chord(words[0]):
        begun = [name for name in BY_NAME if name.startswith(words[0])]
        return in_rows(_use(BY_NAME[begun[0]]), width, 1) if len(begun) == 1 else ""
    try:
        return _of_chart(line, session, None, width)
    except InputError:
        if is_one_word and may_become_a_verb(line):
            return ""
        colon = line.find(":")
        if not may_become_a_chord(words[0]) and (colon < 0 or "|" in line[:colon]):
            find_verb(words[0], line, line.find(words[0]))
        raise


def _of_chart(text: str, session: Session, key: Key | None, width: int) -> str:
    """The chords of a chart, in numerals where symbols were typed, else in symbols; without an unfinished last word.

    Raises InputError.
    """
    try:
        return _in_numerals(closed(text), session, key, width)
    except InputError as error:
        start = last_word_start(text)
        if error.start < start or start == len(text) or not may_become_a_chord(text[start:]):
            raise
        return _in_numerals(closed(text[:start]), session, key, width)


def _in_numerals(text: str, session: Session, key: Key | None, width: int) -> str:
    if not text:
        return ""
    tune = tune_from_text(text, key, session.conventions, session.shown_key)
    if not tune.progression.relative_chords:
        return ""
    has_symbols = read_chart(text).keyless is None
    written = tune.numerals(session.conventions) if has_symbols else tune.symbols(session.conventions)
    return row_of(tune.key, written, session.conventions, width)


def _of_verb(verb: Verb, line: str, session: Session, width: int) -> str:
    """The chords a verb is given, the option at the cursor, or how the verb is used. Raises InputError."""
    use = in_rows(_use(verb), width)
    option = option_at_the_end(verb, line)
    try:
        arguments = sorted_words(verb, line)
        check(verb, arguments, session)
    except InputError as error:
        if may_be_mended(verb, line, error):
            return in_rows(_use(option), width) if option else use
        raise
    notes = notes_in(verb, line)
    if notes.text and (not option or option.name == MELODY.name):
        from nearhand.shell.melody_preview import of_notes  # most lines hold no melody

        return of_notes(verb, line, notes, session, width) or (in_rows(_use(option), width) if option else use)
    text = chart_of(verb, arguments)
    if option and not (text and arguments.option(option.name)):
        return in_rows(_use(option), width)
    if verb.name in ("to", "key") and arguments.words and session.tune is not None:
        return _of_move(verb.name, arguments.text, session, session.tune, width) or use
    return (_of_chart(text, session, option_key(arguments, "key"), width) if text else "") or use


def _of_move(verb: str, text: str, session: Session, tune: Tune, width: int) -> str:
    """The chords in the key one would move to, or their numerals in the key that is named; nothing for several keys."""
    keys = (parse_key(text),) if verb == "key" else read_keys(text, session)
    if len(keys) > 1:
        return ""
    if tune.melody is not None and not tune.progression.bars:
        from nearhand.shell.melody_preview import of_moved_notes

        return of_moved_notes(verb, keys[0], session, width)
    if verb == "key":
        return row_of(keys[0], tune.read_in(keys[0]).numerals(session.conventions), session.conventions, width)
    moved = tune._replace(melody=None).in_key(keys[0])
    return row_of(moved.key, moved.symbols(session.conventions), session.conventions, width)


def _use(of: Verb | Option) -> str:
    """How a verb or an option is written, and what it does."""
    return f"{of.usage}: {of.help}"
