"""Moving the shown key: ``to`` a key, ``next`` and ``back`` along falling fifths, ``up`` and ``down``, ``home``.

``relative`` and ``parallel`` move nothing: they read the same chords in another key.
"""

from __future__ import annotations

from collections.abc import Callable

from nearhand.harmony.moving import best_spelling, neighbour
from nearhand.notation.errors import InputError
from nearhand.notation.keys import key_name
from nearhand.theory.key import Key
from nearhand.verbs.choices import read_count
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import noted, read_keys, seeded, shown, views
from nearhand.verbs.verb import Arguments


def to(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in another key, or in several; the last one stays the shown key (``all`` leaves it).

    Raises InputError.
    """
    session = loaded(session, arguments._replace(words=()))
    if not arguments.words:
        end = len(arguments.line)
        raise InputError(
            "to needs a key", arguments.line, end, wanted="a key", hint="write for example  to G minor  or  to all"
        )
    text, note = seeded(arguments.text)
    keys = read_keys(text, session)
    moved = session.moved_to(keys[-1] if len(keys) < 12 else session.stand[1])
    left = moved if len(keys) < 12 else session.on_best_path()
    return Outcome(left, noted(views(moved, keys, introduces=False), note))


def next_key(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth lower on the circle."""
    return _step(session, arguments, falling=True)


def back(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a fifth higher on the circle."""
    return _step(session, arguments, falling=False)


def _step(session: Session, arguments: Arguments, falling: bool) -> Outcome:
    session = loaded(session, arguments._replace(words=()))
    tune, key = session.stand
    reached = neighbour(tune.progression, key, falling, tune.melody)
    at_home = reached.tonic.semitones == tune.key.tonic.semitones
    return shown(session.moved_to(tune.key if at_home else reached))


def home(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune in its own key again."""
    session = loaded(session, arguments._replace(words=()))
    return shown(session.moved_to(session.stand[0].key))


MOST_SEMITONES = 11


def up(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a semitone higher, or some.

    Raises InputError.
    """
    return _shift(session, arguments, 1)


def down(session: Session, arguments: Arguments) -> Outcome:
    """Show the tune a semitone lower, or some.

    Raises InputError.
    """
    return _shift(session, arguments, -1)


def _shift(session: Session, arguments: Arguments, direction: int) -> Outcome:
    session = loaded(session, arguments._replace(words=()))
    tune, key = session.stand
    semitones = direction * _semitones(arguments)
    reached = best_spelling(tune.progression, key.moved(7 * semitones), key, tune.melody)
    at_home = reached.tonic.semitones == tune.key.tonic.semitones
    moved = session.moved_to(tune.key if at_home else reached)
    return shown(moved if tune.melody is None else _in_octave(moved, session, semitones))


def _in_octave(moved: Session, before: Session, semitones: int) -> Session:
    """A session whose melody lies just so many semitones from where it lay before, and not an octave off."""
    from nearhand.verbs.melodies import melody_in

    old, new = melody_in(before, before.stand[1]), melody_in(moved, moved.stand[1])
    assert old is not None
    assert new is not None
    return moved._replace(lift=(old.tonic.midi + semitones - new.tonic.midi) // 12)


def _semitones(arguments: Arguments) -> int:
    """How many semitones are asked for; one when no number is given. Raises InputError."""
    text = arguments.text
    if not text:
        return 1
    if (count := read_count(text, MOST_SEMITONES)) is not None:
        return count
    what, hint = (
        f"{text[:20]!r} is no number of semitones",
        f"write a number from 1 to {MOST_SEMITONES}, or none for one",
    )
    start, end = arguments.start, arguments.start + len(text)
    raise InputError(what, arguments.line, start, end, wanted="a number of semitones", hint=hint)


def relative(session: Session, arguments: Arguments) -> Outcome:
    """Read the same chords in the relative key, that of the same signature.

    Raises InputError.
    """
    return _read_in(session, arguments, lambda key: key.relative)


def parallel(session: Session, arguments: Arguments) -> Outcome:
    """Read the same chords in the parallel key, on the same tonic.

    Raises InputError.
    """
    return _read_in(session, arguments, lambda key: key.parallel)


def _read_in(session: Session, arguments: Arguments, other: Callable[[Key], Key]) -> Outcome:
    """The chords as they are shown, in the other of two keys that belong together: home, and the key that is shown.

    Without chords it is the key in which numerals will be read.
    """
    if session.tune is None and session.shown_key is not None:
        from nearhand.verbs.keys import read_from_now_on

        return read_from_now_on(session, other(session.shown_key))
    session = loaded(session, arguments._replace(words=()))
    tune, key = session.stand
    new = session.with_tune(tune.read_in(other(tune.key)))
    new = new._replace(shown_key=other(key), loop=session.loop, octaves=session.octaves, lift=session.lift)
    name = key_name(other(key), session.conventions)
    what, whose = ("chords", "numerals") if tune.progression.bars else ("notes", "degrees")
    stays = f"The {what} stay as they are; their {whose} are now read in {name}."
    return Outcome(new, noted(views(new, (other(key),), introduces=False), stays))
