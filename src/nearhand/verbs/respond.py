"""One line to one answer: a verb with its words, or chords. No reading, no printing."""

from __future__ import annotations

from nearhand.notation.chart import looks_like_a_chord
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.verbs import options
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.session import Outcome, Session, after_change, keep_tune
from nearhand.verbs.show import views
from nearhand.verbs.table import BY_NAME, find_verb
from nearhand.verbs.tune import tune_from_text
from nearhand.verbs.verb import Verb
from nearhand.verbs.words import QUOTES, Word, sort_words, split_line

RELINKING = ("undo", "redo", "recover", "run")
"""Verbs that walk along the chain of sessions instead of adding to it, or run a line that sees to it."""


def respond(session: Session, line: str) -> Outcome:
    """Answer one line. A line that begins with no verb is a progression.

    Raises InputError; the session is then as it was.

    >>> outcome = respond(Session(), "| Am | E7 |")
    >>> outcome.answer.tune.numerals()
    ('i', 'V7')
    """
    name = line.split(maxsplit=1)[0] if line.split() else ""
    if not name:
        return Outcome(session, NoteAnswer(()))
    if name[0] in QUOTES:
        return perform(session, BY_NAME["show"], split_line(line), line)
    if name in BY_NAME:
        words = split_line(line)
        return perform(session, BY_NAME[name], words[1:], line)
    if not looks_like_a_chord(name) and not _names_a_key(line):
        find_verb(name, line, line.find(name))
    tune = tune_from_text(line, conventions=session.conventions, known=session.shown_key)
    new = session.with_tune(tune)
    return Outcome(after_change(session, new), views(new, (tune.key,)), plain=new.conventions.plain)


def _names_a_key(line: str) -> bool:
    """Whether a line begins with a key and a colon."""
    head, colon, _ = line.partition(":")
    if not colon or "|" in head:
        return False
    try:
        parse_key(head)
    except InputError:
        return False
    return True


def perform(session: Session, verb: Verb, words: tuple[Word, ...], line: str) -> Outcome:
    """Run a verb on its words.

    Raises InputError; the session is then as it was.
    """
    arguments = sort_words(verb, words, line)
    if arguments.words and not verb.follows:
        what = f"nothing may follow {verb.name}"
        raise InputError(what, line, arguments.start, wanted="the end of the line", hint=f"write {verb.name} alone")
    outcome = verb.run(session, arguments)
    left = outcome.session
    if verb.name not in RELINKING:
        left = after_change(session, left if outcome.keeps or not verb.one_shot else keep_tune(session, left))
    as_json = arguments.has(options.JSON.name)
    return outcome._replace(session=left, plain=outcome.session.conventions.plain, as_json=as_json)
