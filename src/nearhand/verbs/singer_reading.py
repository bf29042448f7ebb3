"""Reading what ``singer`` is told: a tune's two ends, and singers by their ranges or their kinds of voice."""

from __future__ import annotations

from nearhand.melody.ranges import ALSO_CALLED, VOICES, Voice, voice_of
from nearhand.melody.spans import Span
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.melody_degrees import interval_of, read_degree, read_syllable
from nearhand.notation.melody_signs import HOLDS
from nearhand.notation.syllables import read_movable
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import HIGHEST, LOWEST, home_tonic
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import hint_of
from nearhand.verbs.pitches import read_pitches

TUNE_HINT = "write its lowest and highest note in its own key: C4 E5, as degrees: 5 3, or the whole melody"
RANGE_HINT = (
    "write the singer's lowest and highest note, such as A3 D5, and behind them those of the comfortable part, or a "
    "kind of voice, such as alto"
)
KEY_HINT = 'put --key C, or chords: singer "| C | F |" --tune ...'
_MELODY_SIGNS = "[]{}()|:"
_TWO, _FOUR = 2, 4
_OCTAVE = 12
_LONGEST_NOTE = 3
"""Letters of a note without its octave: the name and two accidentals; a longer word without a digit is none."""


class _Word(NamedTuple):
    """A word of a text, and where it begins."""

    text: str
    start: int


def is_span(text: str) -> bool:
    """Whether a tune is told by two notes at most, so by its ends, and not as a whole melody.

    >>> is_span("C4 E5"), is_span("5 3"), is_span("5 3 1"), is_span("G: 5 3")
    (True, True, False, False)
    """
    return len(_words(text)) <= _TWO and not any(sign in text for sign in _MELODY_SIGNS)


def needs_key(text: str) -> InputError | None:
    """The refusal of a degree or a syllable where no key is known; None where there are none."""
    for word in _words(text):
        if _is_degree(word):
            what, end = f"{word.text[:20]} needs a key to be read in", word.start + len(word.text)
            return InputError(what, text, word.start, end, wanted="a key", hint=KEY_HINT)
    return None


def _is_degree(word: _Word) -> bool:
    return word.text[0] in "123456789#b♯♭" or read_movable(word.text, 0) is not None


def read_span(text: str, key: Key, conventions: Conventions = DEFAULT) -> Span:
    """Read the lowest and highest note of a tune, as notes with octaves or as degrees of the key.

    Two degrees without octave marks: the second is the next one above the first. With marks they are read as in a
    melody. Raises InputError.

    >>> from nearhand.notation.keys import parse_key
    >>> [(span.low, span.high, span.is_free) for span in (read_span(t, parse_key("C")) for t in ("C4 E5", "5 3"))]
    [(60, 76, False), (67, 76, True)]
    """
    words = _words(text)
    if words and _is_degree(words[0]):
        return _span_of_degrees(text, words, key, conventions)
    notes = read_pitches(text)
    if len(notes) != _TWO:
        raise InputError("two notes are needed here", text, len(text), wanted="two notes", hint=TUNE_HINT)
    _refuse_upside_down(text, notes, 0, TUNE_HINT)
    places = [note.pitch_class.fifths - key.tonic.fifths for note in notes]
    return _span(notes[0].midi, notes[1].midi, places)


def _span(low: int, high: int, fifths: list[int], is_free: bool = False) -> Span:
    """A span by its ends, and the fifths from the tonic to each of them."""
    return Span(low, high, is_free, spellings=tuple(zip((0, high - low), fifths, strict=True)))


def _span_of_degrees(text: str, words: list[_Word], key: Key, conventions: Conventions) -> Span:
    if len(words) != _TWO:
        raise InputError("two degrees are needed here", text, len(text), wanted="two degrees", hint=TUNE_HINT)
    intervals = [_degree(word, text, key, conventions) for word in words]
    low, high = (interval.semitones for interval in intervals)
    if not any(sign in text for sign in "'’′_"):
        high = low + (high - low) % _OCTAVE
    first, last = words
    if high < low:
        what, hint = f"{first.text} lies above {last.text}", "marks are those of a melody: 5_ 3, or 5 3', or 1 1'"
        raise InputError(what, text, first.start, wanted="the lower degree first", hint=hint)
    bottom = home_tonic(key).midi
    for word, semitones in ((first, low), (last, high)):
        if not LOWEST <= bottom + semitones <= HIGHEST:
            what, end = f"{word.text[:20]} lies outside the MIDI numbers 0 to 127", word.start + len(word.text)
            raise InputError(what, text, word.start, end, wanted="a nearer octave", hint="take octave marks away")
    return _span(bottom + low, bottom + high, [interval.fifths for interval in intervals], is_free=True)


def _degree(word: _Word, text: str, key: Key, conventions: Conventions) -> Interval:
    """The interval from the tonic to a degree."""
    found = read_degree(word.text, 0)
    if found is not None:
        interval, end = interval_of(found[0], key.mode, conventions), found[1]
    else:
        sung = read_syllable(word.text, 0, key.mode, conventions)
        if sung is None:
            raise _no_degree(word, text)
        interval, end = sung
    if end < len(word.text):
        raise _no_degree(word, text)
    return interval


def _no_degree(word: _Word, text: str) -> InputError:
    end = word.start + len(word.text)
    return InputError(f"{word.text[:20]!r} is no degree", text, word.start, end, wanted="a degree", hint=TUNE_HINT)


def read_singers(text: str) -> tuple[Voice, ...]:
    """Read singers, separated by semicolons: each a kind of voice, or two notes or four. Raises InputError.

    Two notes are the lowest and the highest; the third and the fourth are those of the comfortable part.

    >>> [(voice.name, voice.low, voice.comfort_low) for voice in read_singers("alto; C3 G4; C3 G4 E3 D4")]
    [('alto', 53, 55), ('', 48, 52), ('', 48, 52)]
    """
    singers, start = [], 0
    for part in text.split(";"):
        try:
            singers.append(_singer(part))
        except InputError as error:
            raise error.within(text, start) from None
        start += len(part) + 1
    return tuple(singers)


def _singer(text: str) -> Voice:
    text = _as_notes(text)
    word = text.strip()
    kind = ALSO_CALLED.get(word.lower(), word.lower())
    if kind in VOICES:
        return VOICES[kind]
    has_digit = any(sign.isdigit() for sign in word)
    if word[:1].islower() or (len(word) > _LONGEST_NOTE and not has_digit):
        start = text.index(word)
        what, hint = f"{word[:30]!r} is no kind of voice", hint_of(word.lower(), tuple(VOICES))
        raise InputError(what, text, start, start + len(word), wanted="a kind of voice", hint=hint)
    notes = read_pitches(text)
    if len(notes) not in (_TWO, _FOUR):
        raise InputError("two notes or four are needed here", text, len(text), wanted="two notes", hint=RANGE_HINT)
    for place in range(0, len(notes), _TWO):
        _refuse_upside_down(text, notes, place, RANGE_HINT)
    low, high, *comfort = (note.midi for note in notes)
    if not comfort:
        return voice_of(low, high)
    _refuse_outside(text, notes)
    return Voice("", low, high, *comfort)


def _as_notes(text: str) -> str:
    """A range as notes are written elsewhere, every sign in its place: A3-D5, A3 to D5 and a3 d5 are A3 D5.

    >>> _as_notes("a3-d5"), _as_notes("Bb2 to eb4"), _as_notes("C-1 C4"), _as_notes("mezzo-soprano")
    ('A3 D5', 'Bb2    Eb4', 'C-1 C4', 'mezzo-soprano')
    """
    if not any(map(str.isdigit, text)):
        return text
    text = text.replace(" to ", "    ")
    parted = (" " if sign in HOLDS and not text[at + 1 : at + 2].isdigit() else sign for at, sign in enumerate(text))
    return " ".join(_with_capital(word) for word in "".join(parted).split(" "))


def _with_capital(word: str) -> str:
    is_note = word[:1].upper() in LETTERS_IN_FIFTHS and word[-1:].isdigit()
    return word[:1].upper() + word[1:] if is_note else word


def _refuse_upside_down(text: str, notes: tuple[Pitch, ...], place: int, hint: str) -> None:
    low, high = notes[place : place + _TWO]
    if low.midi > high.midi:
        start = _start_of(text, place, notes)
        raise InputError(f"{low} lies above {high}", text, start, wanted="the lower note first", hint=hint)


def _refuse_outside(text: str, notes: tuple[Pitch, ...]) -> None:
    """Raise InputError where the comfortable part, the last two notes, passes the range, the first two."""
    low, high = notes[:_TWO]
    for place, note in enumerate(notes[_TWO:], start=_TWO):
        if not low.midi <= note.midi <= high.midi:
            what = f"{note} lies outside the range from {low} to {high}"
            hint = "the comfortable part lies within the range, for example A3 D5 C4 A4"
            raise InputError(what, text, _start_of(text, place, notes), wanted="a note of the range", hint=hint)


def _start_of(text: str, place: int, notes: tuple[Pitch, ...]) -> int:
    """Where one of the notes begins, if blanks or commas part them; else where the text does."""
    words = _words(text)
    return words[place].start if len(words) == len(notes) else 0


def _words(text: str) -> list[_Word]:
    """The words of a text, with blanks and commas between them."""
    found, at = [], 0
    for word in text.replace(",", " ").split():
        at = text.index(word, at)
        found.append(_Word(word, at))
        at += len(word)
    return found
