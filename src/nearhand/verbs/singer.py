"""``singer``: the keys in which a tune lies well for a singer, or for several at once."""

from __future__ import annotations

from nearhand.melody.ranges import VOICES, Voice, voice_of
from nearhand.melody.singers_key import Fit, Span, fitting_keys, lacking, nearest_misfit
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import hint_of
from nearhand.verbs.loading import loaded, option_key, with_conventions
from nearhand.verbs.pitches import read_pitches
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.verb import Arguments

CARE = (
    "Comfort beats range: a key is right when the top notes come easily at the end of the evening, too. A sore or "
    "hoarse singer rests and asks a teacher or a doctor."
)
_TUNE_HINT = "write its lowest and highest note, as it is sung in its own key: C4 E5, or as degrees: 5 3"
_RANGE_HINT = "write the singer's lowest and highest note, such as A3 D5, or a kind of voice, such as alto"
_OCTAVE_SIGN = "'"


class SingerAnswer(NamedTuple):
    """The keys that fit, best first; where none does, the nearest one, and the semitones that the tune is too wide."""

    key: Key
    span: Span
    singers: tuple[Voice, ...]
    fits: tuple[Fit, ...]
    misfit: Fit | None
    lacking: int
    conventions: Conventions


def singer(session: Session, arguments: Arguments) -> Outcome:
    """Rank the keys in which the tune fits the singers.

    Raises InputError, also where no key is known, or a range is missing or upside down.
    """
    key = option_key(arguments, "key")
    for name, example in (("tune", "C4 E5"), ("range", "A3 D5")):
        _refuse_lost_quotes(arguments, name, example)
    if arguments.words or session.tune is not None:
        session = loaded(session, arguments)
        progression = session.stand[0].progression
    elif key is None:
        what, hint = "singer needs the tune's key", 'put --key C, or chords: singer "| C | F |" --tune ...'
        raise InputError(what, arguments.line, len(arguments.line), wanted="a key", hint=hint)
    else:
        session, progression = with_conventions(session, arguments), Progression(key, ())
    try:
        span = read_span(_wanted(arguments, name := "tune", _TUNE_HINT), progression.key)
        singers = read_singers(_wanted(arguments, name := "range", _RANGE_HINT))
    except InputError as error:
        raise error if error.text == arguments.line else arguments.placed(error, name) from None
    fits = fitting_keys(span, singers, progression)
    misfit = None if fits else nearest_misfit(span, singers, progression)
    lack = lacking(span, singers)
    return Outcome(session, SingerAnswer(progression.key, span, singers, fits, misfit, lack, session.conventions))


def read_span(text: str, key: Key) -> Span:
    """Read the lowest and highest note of a tune, as notes with octaves or as degrees of the key.

    A degree after the first is the next one above it, ``'`` puts it an octave higher. Raises InputError.

    >>> from nearhand.notation.keys import parse_key
    >>> read_span("C4 E5", parse_key("C")), read_span("5 3", parse_key("C"))
    (Span(low=60, high=76, is_free=False), Span(low=55, high=64, is_free=True))
    """
    words = text.split()
    if words and words[0].lstrip("#b♯♭")[:1].isdigit():
        return _span_of_degrees(text, key)
    low, high = _two_notes(text, _TUNE_HINT)
    return Span(low, high)


def read_singers(text: str) -> tuple[Voice, ...]:
    """Read singers, parted by semicolons: each a kind of voice, or a lowest and a highest note. Raises InputError.

    >>> [(voice.name, voice.low) for voice in read_singers("alto; C3 G4")]
    [('alto', 53), ('', 48)]
    """
    singers, start = [], 0
    for part in text.split(";"):
        word = part.strip()
        try:
            if word in VOICES:
                singers.append(VOICES[word])
            elif word[:1].islower():
                what = f"{word[:30]!r} is no kind of voice"
                raise InputError(what, part, wanted="a kind of voice", hint=hint_of(word, tuple(VOICES)))
            else:
                singers.append(voice_of(*_two_notes(part, _RANGE_HINT)))
        except InputError as error:
            raise error.within(text, start) from None
        start += len(part) + 1
    return tuple(singers)


def _two_notes(text: str, hint: str) -> tuple[int, int]:
    notes = read_pitches(text)
    if len(notes) != 2:
        raise InputError("two notes are needed here", text, len(text), wanted="two notes", hint=hint)
    low, high = (note.midi for note in notes)
    if low > high:
        raise InputError(f"{notes[0]} lies above {notes[1]}", text, wanted="the lower note first", hint=hint)
    return low, high


def _span_of_degrees(text: str, key: Key) -> Span:
    words = text.split()
    if len(words) != 2:
        raise InputError("two degrees are needed here", text, len(text), wanted="two degrees", hint=_TUNE_HINT)
    low, high = (_degree(word, text, key) for word in words)
    bottom = 48 + key.tonic.semitones + low
    octaves = words[1].count(_OCTAVE_SIGN)
    return Span(bottom, bottom + (high - low) % 12 + 12 * octaves, is_free=True)


def _degree(word: str, text: str, key: Key) -> int:
    """Semitones of a degree above the tonic."""
    bare = word.rstrip(_OCTAVE_SIGN)
    digit = bare[-1:]
    signs = bare[:-1].replace("♯", "#").replace("♭", "b")
    if digit not in tuple("1234567") or signs.strip("#b"):
        what, start = f"{word[:20]!r} is no degree", text.find(word)
        raise InputError(what, text, start, start + len(word), wanted="a degree", hint=_TUNE_HINT)
    return key.degree(int(digit)).semitones - key.tonic.semitones + signs.count("#") - signs.count("b")


def _refuse_lost_quotes(arguments: Arguments, name: str, example: str) -> None:
    """One note after an option, and another one that has become a word of its own: the quotes are missing."""
    text, words = arguments.option(name), arguments.words
    if text and words and not any(sign in text for sign in " ;") and text not in VOICES and "|" not in words[0]:
        hint = f'put quotes round them: --{name} "{example}"'
        error = InputError("two notes are needed here", text, len(text), wanted="two notes", hint=hint)
        raise arguments.placed(error, name)


def _wanted(arguments: Arguments, name: str, hint: str) -> str:
    """The text of an option that must be there."""
    text = arguments.option(name)
    if text is None:
        end = len(arguments.line)
        raise InputError(f"singer needs --{name}", arguments.line, end, wanted=f"--{name}", hint=hint)
    return text
