"""What a melody that is being typed comes to so far, or why it will be refused."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.shell.notes_in_line import TypedNotes, names_a_file, notes_in
from nearhand.shell.refusals import NOTES, chart_of, may_be_mended, plain_words, sorted_words
from nearhand.shell.unfinished_notes import (
    closed_melody,
    finished_part,
    is_key_before_notes,
    kind_of_note,
    may_become_a_note,
    note_start,
)
from nearhand.theory.key import C_MAJOR
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import loaded
from nearhand.verbs.melody import with_notes
from nearhand.verbs.options import MELODY
from nearhand.verbs.respond import respond
from nearhand.verbs.session import Session
from nearhand.verbs.table import BY_NAME
from nearhand.verbs.verb import Arguments, Verb
from nearhand.verbs.words import split_line
from nearhand.voicing.wishes import WISH_NAMES


class SoFar(NamedTuple):
    """What a melody comes to: as much of its text as was read, and the session that it would leave.

    The session has no tune where the verb looks for the key of the melody.
    """

    text: str
    session: Session


def read_so_far(verb: Verb, line: str, notes: TypedNotes, session: Session) -> SoFar | None:
    """The melody of a line without a last note that is unfinished; None where there are no notes yet.

    Raises InputError, placed in the line, at what typing on does not mend.
    """
    text, start = notes
    if not text.strip() or is_key_before_notes(text):
        return None
    try:
        return _read(verb, line, notes, session)
    except InputError as error:
        typed = note_start(text)
        if error.start - start >= typed and may_become_a_note(text[typed:]):
            shorter = text[:typed] + finished_part(text[typed:])
            return _read(verb, line, notes._replace(text=shorter), session)
        raise


def is_refused(line: str, session: Session) -> bool:
    """Whether a line that may hold a melody would be refused now, were it sent; a chart file is not opened."""
    verb = BY_NAME.get(line.split(maxsplit=1)[0]) if line.strip() else None
    if verb is None:
        return False
    notes = notes_in(verb, line)
    try:
        split_line(line)
        if verb.follows == NOTES and not names_a_file(plain_words(verb, line).text):
            respond(session, line)
        elif notes.text and verb.follows != NOTES:
            _session_with(verb, sorted_words(verb, line), notes.text, session)
    except InputError:
        return True
    return False


def lacks_a_key(error: InputError) -> bool:
    """Whether a note is refused because no key is known in which it could be read."""
    return error.wanted == "a key" and kind_of_note(error.text[error.start : error.end]) != ""


def _read(verb: Verb, line: str, notes: TypedNotes, session: Session) -> SoFar | None:
    closed = closed_melody(notes.text)
    try:
        return SoFar(closed, _session_with(verb, sorted_words(verb, line), closed, session))
    except InputError as error:
        if error.text == closed and not (error.wanted == "notes" and error.start >= len(closed)):
            raise error.within(line, notes.start) from None
        if error.text == line and not may_be_mended(verb, line, error):  # the value of an option
            raise
    return None  # no notes yet, or chords beside them that cannot be read


def _session_with(verb: Verb, arguments: Arguments, text: str, session: Session) -> Session:
    """The session with a melody, as the verb would leave it; a chart file beside it is not opened."""
    if verb.follows == NOTES:
        return with_notes(session, arguments._replace(words=(text,)))
    if MELODY not in verb.options:
        from nearhand.verbs.keys import melody_in_names  # one verb among several

        bars = () if session.tune is None or arguments.words else session.tune.progression.bars
        melody_in_names(text, [bar.meter for bar in bars], session.conventions)
        return Session()
    if arguments.words and not chart_of(verb, arguments):
        arguments, session = arguments._replace(words=()), Session(shown_key=C_MAJOR, conventions=session.conventions)
    options = {name: value for name, value in arguments.options.items() if name not in WISH_NAMES}
    starts = arguments.starts | {MELODY.name: 0}
    return loaded(session, arguments._replace(line=text, options=options | {MELODY.name: text}, starts=starts))
