"""``keys``: which keys chords or a melody may be in, why, and where the key turns. ``key``: name the one."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import key_name, parse_key
from nearhand.theory.chord import Chord
from nearhand.theory.record import NamedTuple
from nearhand.verbs.answers import NoteAnswer
from nearhand.verbs.loading import loaded, with_conventions
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.show import shown
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.key_finding import KeyFit
    from nearhand.harmony.modulation import Region
    from nearhand.notation.melody_notes import MelodyNote
    from nearhand.theory.key import Key
    from nearhand.theory.progression import Progression


class KeysAnswer(NamedTuple):
    """The keys that chords, a melody or both may be in, likeliest first, and the regions of the chords."""

    fits: tuple[KeyFit, ...]
    chords: tuple[Chord, ...]
    melody: tuple[MelodyNote, ...]
    regions: tuple[Region, ...]
    conventions: Conventions


KEYS_SHOWN = 5


def keys(session: Session, arguments: Arguments) -> Outcome:
    """Rank the keys that the tune's chords may be in, those of a melody, or those of both together.

    Raises InputError.
    """
    melody = _melody(arguments)
    if melody and not arguments.words and session.tune is None:
        if arguments.has("key"):
            start = arguments.starts["key"]
            what, hint = "--key is the key of chords, and there are none", "leave --key away, or add chords"
            raise InputError(what, arguments.line, start, wanted="chords", hint=hint)
        session = with_conventions(session, arguments)
        return Outcome(session, _of_melody(session, melody))
    session = loaded(session, arguments.without("melody"))
    progression = session.stand[0].progression
    if progression.relative_chords:
        return Outcome(session, _of_chords(session, progression, melody))
    if melody:
        return Outcome(session, _of_melody(session, melody))
    raise InputError(
        "there are no chords here to find a key from", wanted="chords", hint="add chords, or --melody NOTES"
    )


def _melody(arguments: Arguments) -> tuple[MelodyNote, ...]:
    text = arguments.option("melody")
    if text is None:
        return ()
    from nearhand.notation.melody_notes import parse_melody

    try:
        return parse_melody(text)
    except InputError as error:
        raise arguments.placed(error, "melody") from None


def _of_melody(session: Session, melody: tuple[MelodyNote, ...]) -> KeysAnswer:
    from nearhand.harmony.melody_keys import rank_keys_of_melody

    fits = rank_keys_of_melody([note.pitch_class for note in melody])
    return KeysAnswer(fits[:KEYS_SHOWN], (), melody, (), session.conventions)


def _of_chords(session: Session, progression: Progression, melody: tuple[MelodyNote, ...]) -> KeysAnswer:
    from nearhand.harmony.key_finding import beats_of, keys_of
    from nearhand.harmony.modulation import regions_of

    chords = tuple(progression.chords())
    if melody:
        from nearhand.harmony.melody_keys import rank_keys_of_both

        fits = rank_keys_of_both(chords, [note.pitch_class for note in melody], beats_of(progression))
    else:
        fits = keys_of(progression)
    return KeysAnswer(fits[:KEYS_SHOWN], chords, melody, regions_of(progression), session.conventions)


def key(session: Session, arguments: Arguments) -> Outcome:
    """Name the key the chords are in: they stay as they are, their numerals change.

    Raises InputError.
    """
    if session.tune is None and arguments.words:
        return read_from_now_on(session, parse_key(arguments.text))
    session = loaded(session, arguments._replace(words=()))
    if not arguments.words:
        return Outcome(session, keys(session, arguments).answer)
    return shown(session.read_in(parse_key(arguments.text)))


def read_from_now_on(session: Session, named: Key) -> Outcome:
    """Without chords, the key in which numerals and numbers will be read."""
    note = f"Numerals and numbers are now read in {key_name(named, session.conventions)}."
    return Outcome(session._replace(shown_key=named), NoteAnswer((note,)))
