"""``keys``: which keys chords or a melody may be in, why, and where the key turns. ``key``: name the one."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import key_name, parse_key
from nearhand.theory.chord import Chord
from nearhand.theory.progression import COMMON_TIME, Meter
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
    from nearhand.theory.key import Key
    from nearhand.theory.melody import Melody
    from nearhand.theory.pitch_class import PitchClass
    from nearhand.theory.progression import Beats, Progression


class KeysAnswer(NamedTuple):
    """The keys that chords, a melody or both may be in, likeliest first, and the regions of the chords.

    ``notes`` are those of the melody as they sound, ``lengths`` how many beats each lasts: None where all last the
    same, so that they may be counted. ``relative`` is the relative of the likeliest key, which may not be among
    ``fits``; ``profile`` the one of ``PROFILES`` with which the melody was compared.
    """

    fits: tuple[KeyFit, ...]
    chords: tuple[Chord, ...]
    melody: Melody | None
    notes: tuple[PitchClass, ...]
    lengths: tuple[Beats, ...] | None
    regions: tuple[Region, ...]
    relative: KeyFit
    profile: str
    conventions: Conventions


KEYS_SHOWN = 5


def keys(session: Session, arguments: Arguments) -> Outcome:
    """Rank the keys that the tune's chords may be in, those of a melody, or those of both together.

    The melody is that of ``--melody``, or the tune's own. Raises InputError.
    """
    if arguments.has("melody") and not arguments.words and session.tune is None:
        if arguments.has("key"):
            start = arguments.starts["key"]
            what, hint = "--key is the key of chords, and there are none", "leave --key away, or add chords"
            raise InputError(what, arguments.line, start, wanted="chords", hint=hint)
        session = with_conventions(session, arguments)
        return Outcome(session, _answer(session, arguments, None, _given(session, arguments)))
    session = loaded(session, arguments.without("melody"))
    tune = session.stand[0]
    melody = _given(session, arguments) if arguments.has("melody") else tune.melody
    if not tune.progression.relative_chords and not _sounds(melody):
        what, hint = "there are no chords here to find a key from", "add chords, or --melody NOTES"
        raise InputError(what, wanted="chords", hint=hint)
    return Outcome(session, _answer(session, arguments, tune.progression, melody))


def _given(session: Session, arguments: Arguments) -> Melody:
    """The melody of ``--melody``, in bars of the meters of the chords. Raises InputError, placed in the line."""
    bars = () if session.tune is None else session.tune.progression.bars
    try:
        return melody_in_names(arguments.options["melody"], [bar.meter for bar in bars], session.conventions)
    except InputError as error:
        raise arguments.placed(error, "melody") from None


def melody_in_names(text: str, meters: Sequence[Meter] = (), conventions: Conventions = DEFAULT) -> Melody:
    """A melody whose key is looked for: note names, or degrees with a key in front, in bars of ``meters``.

    Raises InputError, placed in the text; also at a degree without a key, and where there are only rests.

    >>> [str(note.pitch) for note in melody_in_names("E4 F# [G A] B - r").sounding()]
    ['E4', 'F#4', 'G4', 'A4', 'B4']
    """
    from nearhand.notation.melody_reading import no_key_for, only_rests, read_melody, resolve_melody
    from nearhand.theory.key import C_MAJOR

    written = read_melody(text)
    if written.key is None and written.keyless is not None:
        raise no_key_for(written, written.keyless)
    meter = meters[-1] if meters else COMMON_TIME
    melody = resolve_melody(written, written.key or C_MAJOR, meters, meter, conventions)
    if not _sounds(melody):
        raise only_rests(text)
    return melody


def _sounds(melody: Melody | None) -> bool:
    return melody is not None and any(note.interval is not None for note in melody.notes)


def heard(melody: Melody | None) -> tuple[tuple[PitchClass, ...], tuple[Beats, ...] | None]:
    """The notes of a melody as they sound, and how many beats each lasts: None where all last the same.

    >>> heard(melody_in_names("E4 F#:2 - r"))
    ((PitchClass(fifths=4), PitchClass(fifths=6)), (1, 3))
    """
    sounding = () if melody is None else melody.sounding()
    beats = tuple(note.beats for note in sounding)
    return tuple(note.pitch.pitch_class for note in sounding), beats if len(set(beats)) > 1 else None


def _answer(
    session: Session, arguments: Arguments, progression: Progression | None, melody: Melody | None
) -> KeysAnswer:
    from nearhand.harmony.key_profiles import DEFAULT_PROFILE
    from nearhand.harmony.relatives import relative_of

    profile = arguments.option("profile") or DEFAULT_PROFILE
    notes, lengths = heard(melody)
    fits = fits_of(progression, notes, lengths, profile)
    chords = () if progression is None else tuple(progression.chords())
    regions = _regions(progression) if progression is not None and chords else ()
    shown, relative = fits[:KEYS_SHOWN], relative_of(fits)
    return KeysAnswer(shown, chords, melody, notes, lengths, regions, relative, profile, session.conventions)


def _regions(progression: Progression) -> tuple[Region, ...]:
    from nearhand.harmony.modulation import regions_of

    return regions_of(progression)


def fits_of(
    progression: Progression | None, notes: Sequence[PitchClass], lengths: Sequence[Beats] | None, profile: str
) -> tuple[KeyFit, ...]:
    """All keys by the chords of a progression, by the notes of a melody, or by both, the likeliest first.

    Raises ValueError where neither chord nor note is there, KeyError for an unknown profile.
    """
    if progression is None or not progression.relative_chords:
        from nearhand.harmony.melody_keys import rank_keys_of_melody

        return rank_keys_of_melody(notes, lengths, profile)
    from nearhand.harmony.key_finding import beats_of, keys_of

    if not notes:
        return keys_of(progression)
    from nearhand.harmony.melody_keys import rank_keys_of_both

    return rank_keys_of_both(tuple(progression.chords()), notes, beats_of(progression), lengths, profile)


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
