"""From a verb's words to a session: which tune, in which key, read and voiced how."""

from __future__ import annotations

import os

from nearhand.notation.chart import looks_like_a_chord
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.verbs.files import SUFFIX, from_home, is_abc_file, read_tune, tune_from_abc, tune_from_file_text
from nearhand.verbs.picking import NO_CHORDS_HINT
from nearhand.verbs.session import Session
from nearhand.verbs.tune import Tune, tune_from_text
from nearhand.verbs.verb import Arguments
from nearhand.voicing.wishes import WISH_NAMES

_ABC_BEGINNINGS = ("X:", "%abc")
_FILE_FIELDS = ("title", "key", "meter", "tempo", "notes", "[[sections]]")


def loaded(session: Session, arguments: Arguments) -> Session:
    """The session as a verb's words and options leave it.

    Raises InputError when no tune is there to work on, or one of the words cannot be read.
    """
    way, session = session.way, with_conventions(session, arguments)
    if voicing := arguments.option("voicing"):
        wishes = session.wishes
        if voicing != wishes.style:
            session = session._replace(wishes=wishes._replace(style=voicing, pins=(), path=1))
    key = option_key(arguments, "key")
    if arguments.words:
        session = session.with_tune(tune_of(arguments, key, session))
    elif key is not None and session.tune is not None:
        session = session.read_in(key)
    if arguments.has("melody"):
        session = _with_melody(session, arguments, key, way)
    if arguments.has("loop"):
        session = session._replace(loop=True)
    _ = session.stand  # refuses when there is no tune
    if any(name in arguments.options for name in WISH_NAMES):
        from nearhand.verbs.wishing import wished

        session = wished(session, arguments)
    return session


def loaded_with_chords(session: Session, arguments: Arguments) -> Session:
    """The session as ``loaded`` leaves it, for a verb that works on chords.

    Raises InputError as ``loaded`` does, and where the tune is a melody alone.
    """
    session = loaded(session, arguments)
    if not session.stand[0].progression.bars:
        raise InputError("there are no chords here, only a melody", wanted="chords", hint=NO_CHORDS_HINT)
    return session


def with_conventions(session: Session, arguments: Arguments) -> Session:
    """The session with the notation that a verb's options ask for."""
    conventions = session.conventions
    for name in ("degrees", "sevenths", "symbols", "figures", "layout", "names", "sing", "minor"):
        if chosen := arguments.option(name):
            conventions = conventions.choosing(name, chosen)
    if arguments.has("plain"):
        conventions = conventions._replace(plain=True)
    if way := arguments.option("way"):
        session = session._replace(way=way, octaves=0, lift=0)
    return session._replace(conventions=conventions)


def _with_melody(session: Session, arguments: Arguments, key: Key | None, way: str) -> Session:
    """The session with the melody of ``--melody``, over the chords there or alone; ``way``: the one that was before."""
    from nearhand.verbs.melodies import melody_tune, put_over_chords

    text = arguments.options["melody"]
    try:
        if session.tune is not None and session.tune.progression.bars:
            return put_over_chords(session, text, way)
        return session.with_tune(melody_tune(text, key, session.conventions, session.shown_key))
    except InputError as error:
        raise arguments.placed(error, "melody") from None


def tune_of(arguments: Arguments, key: Key | None, session: Session) -> Tune:
    """The tune that a verb's words name: a chart file, or a chart."""
    text = arguments.text
    if is_file_name(text):
        return read_tune(text, key, session.conventions)
    return tune_from_input(text, "standard input", key, session)


def tune_from_input(text: str, source: str, key: Key | None, session: Session) -> Tune:
    """A tune from text that may be a chart, or the whole of a chart file or an ABC file."""
    if text.lstrip().startswith(_ABC_BEGINNINGS):
        return tune_from_abc(text, source, key, session.conventions)
    if is_chart_file(text):
        return tune_from_file_text(text, source, key, session.conventions)
    return tune_from_text(text, key, session.conventions)


def is_chart_file(text: str) -> bool:
    r"""Whether a text is the whole of a chart file: its first line that is no note has a field of one.

    >>> is_chart_file('# mine\nkey = "C"'), is_chart_file("| C | F |")
    (True, False)
    """
    first = next((line.strip() for line in text.splitlines() if line.strip() and not line.lstrip().startswith("#")), "")
    return first.startswith(_FILE_FIELDS[-1]) or ("=" in first and first.partition("=")[0].strip() in _FILE_FIELDS)


def is_file_name(text: str) -> bool:
    """Whether a verb's text names a file rather than being a chart itself."""
    if "\n" in text or "|" in text or len(text) > 1000:
        return False
    path = from_home(text)
    is_named = text.endswith(SUFFIX) or is_abc_file(text)
    return is_named or (not looks_like_a_chord(text) and os.path.exists(path)) or os.path.isfile(path)


def option_key(arguments: Arguments, name: str) -> Key | None:
    """The key an option gives; None when it is not given.

    Raises InputError, placed in the whole line.
    """
    text = arguments.option(name)
    if text is None:
        return None
    try:
        return parse_key(text)
    except InputError as error:
        raise arguments.placed(error, name) from None
