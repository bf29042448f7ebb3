"""What may stand at the cursor: a function of the line, the session, and, for file names, the folders."""

from __future__ import annotations

import os

from nearhand.harmony.moving import all_keys
from nearhand.notation.chart import looks_like_a_chord
from nearhand.notation.errors import InputError
from nearhand.notation.keys import write_key
from nearhand.shell.refusals import NOTES, words_of
from nearhand.theory.key import C_MAJOR, Key, circle
from nearhand.theory.mode import MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.record import NamedTuple
from nearhand.verbs.files import SUFFIX, SUFFIXES
from nearhand.verbs.meanings import families_of_instruments, meanings_of
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME, VERBS
from nearhand.verbs.verb import Verb
from nearhand.verbs.words import Word, split_line

FEWEST_LETTERS = 2
CHART = "CHART"


class Candidate(NamedTuple):
    """A text that may stand from ``start`` (an offset into the line) to the cursor, and what it means."""

    text: str
    start: int
    meaning: str = ""


def candidates(before_cursor: str, session: Session) -> tuple[Candidate, ...]:
    """What may complete the line: what begins with the word typed, or else, of verbs and words, what has its letters.

    In a line of chords those that are likely next, with what they are.

    >>> [candidate.text for candidate in candidates("sh", Session())]
    ['show']
    >>> [candidate.text for candidate in candidates("voice dr", Session())]
    ['drop2', 'drop3', 'drop2and4']
    >>> [candidate.text for candidate in candidates("xpl", Session())]
    ['explain']
    >>> [candidate.text for candidate in candidates("| Em | B7 | ", Session())]
    ['Em', 'C', 'Am']
    """
    stripped = before_cursor.lstrip()
    start = len(before_cursor) - len(stripped)
    name, blank, rest = stripped.partition(" ")
    if not blank:
        verbs = tuple(Candidate(verb.name, start, verb.help) for verb in VERBS)
        begun = tuple(each for each in verbs if each.text.startswith(name))  # a capital begins a chord
        return begun or _chords(before_cursor, 0, session) or (_with_letters(verbs, name) if name.islower() else ())
    verb = BY_NAME.get(name)
    if verb is None:
        return _chords(before_cursor, 0, session)
    options = _of_options(verb, before_cursor, rest)
    return _of_words(verb, before_cursor, rest, session) if options is None else options


def _of_options(verb: Verb, before_cursor: str, rest: str) -> tuple[Candidate, ...] | None:
    """The options of a verb, or the values of one; None where neither is being typed."""
    last = rest.rpartition(" ")[2]
    at = len(before_cursor) - len(last)
    if last.startswith("--"):
        names = tuple(Candidate(f"--{option.name}", at, option.help) for option in verb.options)
        return tuple(each for each in names if each.text.startswith(last))
    if (instruments := _instruments(verb, before_cursor)) is not None:
        return instruments
    for option in verb.options:
        if option.choices and rest.split()[-1 - bool(last) :][:1] == [f"--{option.name}"]:
            return tuple(Candidate(choice, at) for choice in option.choices if choice.startswith(last))
    return None


def _instruments(verb: Verb, before_cursor: str) -> tuple[Candidate, ...] | None:
    """Names of instruments for the list that is being typed, quoted where they need it; None where none is."""
    words, is_open = words_of(before_cursor), _is_open(before_cursor)
    if before_cursor[-1:].isspace() and not is_open:
        words = (*words, Word("", len(before_cursor)))
    *before, typed = words
    if not before or not any(
        "instruments" in option.completes and before[-1].text == f"--{option.name}" for option in verb.options
    ):
        return None
    if typed.quoted and not is_open:
        return ()
    listed = typed.text.rpartition(",")[2].lstrip()
    kept = typed.text[: len(typed.text) - len(listed)]
    fitting = [pair for pair in families_of_instruments().items() if pair[0].lower().startswith(listed.lower())]
    if is_open:
        return tuple(Candidate(name, typed.start + len(kept), family) for name, family in fitting)
    quotes = ['"' if " " in kept + name else "" for name, _ in fitting]
    return tuple(
        Candidate(f"{quote}{kept}{name}{quote}", typed.start, family)
        for quote, (name, family) in zip(quotes, fitting, strict=True)
    )


def _is_open(line: str) -> bool:
    """Whether a quote of a line is not closed."""
    try:
        split_line(line)
    except InputError:
        return True
    return False


def _of_words(verb: Verb, before_cursor: str, rest: str, session: Session) -> tuple[Candidate, ...]:
    typed = rest.lstrip()
    at = len(before_cursor) - len(typed)
    if verb.name == "set" and " " in typed:
        return _values(typed, at, session)
    if CHART in verb.follows and (chords := _chords(typed, at, session)):
        return chords
    offered = [(kind, each) for kind in verb.completes for each in _of_kind(kind, typed, at, session, verb.name)]
    if verb.follows == NOTES and session.tune is not None and session.tune.melody and session.tune.progression.bars:
        offered.append(("off", Candidate("off", at, "take the melody away")))
    found = _beginning(tuple(each for _, each in offered), typed)
    words = tuple(each for kind, each in offered if kind not in ("keys", "files", "folders"))
    return found or _with_letters(words, typed)


def _chords(text: str, at: int, session: Session) -> tuple[Candidate, ...]:
    """The chords that are likely next in a text that stands at a place of the line."""
    bare = text.lstrip("\"'")
    if not looks_like_a_chord(bare.lstrip()) and ":" not in bare:
        return ()
    from nearhand.shell.chord_candidates import chord_candidates

    at += len(text) - len(bare)
    return tuple(Candidate(chord, at + start, meaning) for chord, start, meaning in chord_candidates(bare, session))


def _beginning(offered: tuple[Candidate, ...], typed: str) -> tuple[Candidate, ...]:
    return tuple(each for each in offered if each.text.lower().startswith(typed.lower()))


def _with_letters(offered: tuple[Candidate, ...], typed: str) -> tuple[Candidate, ...]:
    """Those that have the letters typed in order, two of them at least."""
    return tuple(each for each in offered if len(typed) >= FEWEST_LETTERS and _has_in_order(each.text, typed.lower()))


def _has_in_order(text: str, letters: str) -> bool:
    rest = iter(text.lower())
    return all(letter in rest for letter in letters)


def _values(typed: str, at: int, session: Session) -> tuple[Candidate, ...]:
    """What a setting may be: what its verb takes, and the word that lets it go."""
    from nearhand.verbs.lasting import DEFAULT_WORD, SETTINGS

    name, _, value = typed.partition(" ")
    if name not in SETTINGS:
        return ()
    found = [Candidate(each.text, each.start + at, each.meaning) for each in candidates(typed, session)]
    if DEFAULT_WORD.startswith(value):
        found.append(Candidate(DEFAULT_WORD, at + len(name) + 1, "let it go"))
    return tuple(found)


def _of_kind(kind: str, typed: str, at: int, session: Session, verb: str) -> tuple[Candidate, ...]:
    if kind == "keys":
        found = [(write_key(key, plain=True), "") for key in _keys(session)]
    elif kind in ("files", "folders"):
        suffixes = (SUFFIX,) if verb == "save" else SUFFIXES
        return _paths(typed, at, suffixes if kind == "files" else ())
    elif kind == "verbs":
        found = [(verb.name, verb.help) for verb in VERBS]
    elif kind == "words":
        found = list(meanings_of(verb))
    else:
        found = [(kind, "")]
    return tuple(Candidate(text, at, meaning) for text, meaning in found)


def _keys(session: Session) -> tuple[Key, ...]:
    """The twelve keys of the tune's mode from its own on; without a tune, major and minor ones."""
    if session.tune is not None:
        return all_keys(session.tune.progression, melody=session.tune.melody)
    return circle(C_MAJOR) + circle(Key(PitchClass(3), MINOR))


def _paths(typed: str, at: int, suffixes: tuple[str, ...]) -> tuple[Candidate, ...]:
    """The folders, and the files with one of these suffixes, whose names begin as what is typed."""
    folder, name = os.path.split(typed)
    try:
        entries = sorted(os.scandir(folder or os.curdir), key=lambda entry: entry.name)
    except (OSError, ValueError):
        return ()
    found = []
    for entry in entries:
        is_folder = entry.is_dir()
        is_wanted = is_folder or entry.name.lower().endswith(suffixes)
        if is_wanted and entry.name.startswith(name) and not entry.name.startswith("."):
            found.append(Candidate(os.path.join(folder, entry.name) + "/" * is_folder, at))
    return tuple(found)
