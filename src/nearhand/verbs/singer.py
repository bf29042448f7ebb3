"""``singer``: the keys in which a tune lies well for a singer, or for several at once."""

from __future__ import annotations

from nearhand.melody.instruments import Instrument
from nearhand.melody.ranges import ALSO_CALLED, VOICES, Voice
from nearhand.melody.singers_key import Fit, fitting, ranked_keys, wider_by
from nearhand.melody.spans import Span, span_of
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.melody_reading import read_melody, resolve_melody
from nearhand.notation.melody_signs import HOLDS
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import COMMON_TIME, Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import loaded, option_key, with_conventions
from nearhand.verbs.melodies import melody_in, melody_tune
from nearhand.verbs.parts import read_instruments
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.singer_reading import KEY_HINT, RANGE_HINT, TUNE_HINT, is_span, needs_key, read_singers, read_span
from nearhand.verbs.tune import INFERRED, Tune
from nearhand.verbs.verb import Arguments

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeVar

    _Value = TypeVar("_Value")


class Sung(NamedTuple):
    """A tune to be sung: its chords, none perhaps, in its own key; the melody, where that is known; and its span.

    ``runner_up``: the second likeliest key where the key was inferred just now.
    """

    progression: Progression
    span: Span
    melody: Melody | None = None
    runner_up: Key | None = None


class SingerAnswer(NamedTuple):
    """The keys that fit, best first; where none does, the nearest one.

    ``wider_by``: for each singer the semitones by which the tune is wider than the range. ``too_low``, ``too_high``:
    the bars whose notes lie outside a range in the nearest key, where the melody is known; the pickup is bar 0.
    """

    sung: Sung
    singers: tuple[Voice, ...]
    fits: tuple[Fit, ...]
    nearest: Fit | None
    wider_by: tuple[int, ...]
    too_low: tuple[int, ...]
    too_high: tuple[int, ...]
    conventions: Conventions

    @property
    def key(self) -> Key:
        """The tune's own key."""
        return self.sung.progression.key


def singer(session: Session, arguments: Arguments) -> Outcome:
    """Rank the keys in which the tune fits the singers.

    Raises InputError, also where no tune or no key is known, or a range is missing or upside down.
    """
    for name, example in (("tune", "C4 E5"), ("range", "A3 D5")):
        _refuse_lost_quotes(arguments, name, example)
    key = option_key(arguments, "key")
    if arguments.words or session.tune is not None:
        session = loaded(session, arguments)
    else:
        session = with_conventions(session, arguments)
    sung = _sung(session, arguments, key)
    if not arguments.has("range"):
        raise _missing(arguments, "range", RANGE_HINT)
    singers = _read(arguments, "range", read_singers)
    instruments = _read(arguments, "for", read_instruments) if arguments.has("for") else ()
    return Outcome(session, answer_for(sung, singers, instruments, session.conventions))


def answer_for(
    sung: Sung, singers: tuple[Voice, ...], instruments: tuple[Instrument, ...], conventions: Conventions
) -> SingerAnswer:
    """The keys in which a tune fits singers, or the nearest one."""
    ranked = ranked_keys(sung.span, singers, sung.progression, instruments, sung.melody)
    fits = fitting(ranked)
    nearest = None if fits else ranked[0]
    low, high = ((), ()) if nearest is None else passing_bars(sung, nearest, singers)
    return SingerAnswer(sung, singers, fits, nearest, wider_by(sung.span, singers), low, high, conventions)


def passing_bars(sung: Sung, fit: Fit, singers: tuple[Voice, ...]) -> tuple[tuple[int, ...], tuple[int, ...]]:
    """The bars of a melody whose notes lie below a range, and those whose notes lie above one, in a key."""
    low: dict[int, None] = {}
    high: dict[int, None] = {}
    for note in sung.melody.sounding() if sung.melody is not None else ():
        above_lowest = note.pitch.midi - sung.span.low
        for place, voice in zip(fit.places, singers, strict=True):
            if place.low + above_lowest < voice.low:
                low[note.bar] = None
            elif place.low + above_lowest > voice.high:
                high[note.bar] = None
    return tuple(low), tuple(high)


def _sung(session: Session, arguments: Arguments, key: Key | None) -> Sung:
    """The tune that ``--tune`` tells, by its ends or whole, or else the melody on the stand. Raises InputError."""
    text, tune = arguments.option("tune"), session.tune
    if text is None:
        melody = None if tune is None else melody_in(session, tune.key)
        if tune is None or melody is None:
            raise _missing(arguments, "tune", TUNE_HINT)
        return sung_melody(tune._replace(melody=melody), is_new=bool(arguments.words))
    own = key if tune is None else tune.key
    if own is None and is_span(text):
        if error := needs_key(text):
            raise arguments.placed(error, "tune")
        end = len(arguments.line)
        raise InputError("singer needs the tune's key", arguments.line, end, wanted="a key", hint=KEY_HINT)
    return _read(arguments, "tune", lambda text: _told(text, session, own, bool(arguments.words)))


def sung_melody(tune: Tune, is_new: bool = False) -> Sung:
    """The tune of a melody; its key is told to be inferred where it ``is_new``. Raises InputError for rests alone."""
    melody = tune.melody
    if melody is None:
        raise InputError("this tune has no melody", wanted="a melody", hint=TUNE_HINT)
    span = span_of(melody)
    if span is None:
        raise InputError("there are only rests in this melody", wanted="notes", hint=TUNE_HINT)
    return Sung(tune.progression, span, melody, tune.runner_up if is_new and tune.key_source == INFERRED else None)


def _told(text: str, session: Session, own: Key | None, is_new: bool) -> Sung:
    """A tune told by its two ends, or whole. Raises InputError."""
    if own is None or not is_span(text):
        return _told_whole(text, session, own)
    tune = session.tune
    progression = Progression(own, ()) if tune is None else tune.progression
    seems = tune.runner_up if tune is not None and is_new else None
    return Sung(progression, read_span(text, own, session.conventions), runner_up=seems)


def _told_whole(text: str, session: Session, own: Key | None) -> Sung:
    """A melody over the chords on the stand, in their own key; with another key in front it is a tune of its own."""
    tune, conventions = session.tune, session.conventions
    written = read_melody(text)
    if tune is None or written.key not in (None, own):
        sung = melody_tune(text, own if tune is None else None, conventions)
    else:
        bars = tune.progression.bars
        meter = bars[-1].meter if bars else COMMON_TIME
        melody = resolve_melody(written, tune.key, [bar.meter for bar in bars], meter, conventions)
        sung = tune._replace(melody=melody)
    try:
        return sung_melody(sung, is_new=True)
    except InputError as error:
        raise InputError(error.what, text, len(text), wanted=error.wanted, hint=error.hint) from None


def _read(arguments: Arguments, name: str, read: Callable[[str], _Value]) -> _Value:
    """What an option is read as. Raises InputError, placed in the whole line."""
    try:
        return read(arguments.option(name) or "")
    except InputError as error:
        raise arguments.placed(error, name) from None


def _missing(arguments: Arguments, name: str, hint: str) -> InputError:
    """The refusal where an option is missing."""
    end = len(arguments.line)
    return InputError(f"singer needs --{name}", arguments.line, end, wanted=f"--{name}", hint=hint)


def _refuse_lost_quotes(arguments: Arguments, name: str, example: str) -> None:
    """One note after an option, and another one that has become a word of its own: the quotes are missing."""
    text, words = arguments.option(name), arguments.words
    if not text or not words or "|" in words[0]:
        return
    is_one = not any(sign in text for sign in (" ", ";", *HOLDS))
    if is_one and text.lower() not in (*VOICES, *ALSO_CALLED):
        raise arguments.unquoted(name, "two notes are needed here", example, wanted="two notes")
