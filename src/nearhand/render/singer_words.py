"""The keys for singers in words: where a tune lies for whom, how much of it is comfortable, what the band reads."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.key_reasons import signature_in_words
from nearhand.harmony.moving import distance_in_words
from nearhand.melody.places import Place
from nearhand.melody.ranges import PLAIN_KEY, Voice
from nearhand.melody.readings import Reading
from nearhand.melody.singers_key import Fit
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import listed, octaves_in_words, semitones_in_words
from nearhand.notation.keys import key_name
from nearhand.notation.notes import pitch_name
from nearhand.theory.key import pitch_in
from nearhand.verbs.singer import SingerAnswer

MOST_KEYS = 6
_MOST_BARS = 8
_ALL = 100


def names_of(answer: SingerAnswer) -> list[str]:
    """The singers' kinds of voice, or their numbers; with numbers, too, where two are of a kind."""
    if len(answer.singers) == 1:
        return [answer.singers[0].name or "singer"]
    kinds = [voice.name for voice in answer.singers]
    counted = enumerate(kinds, start=1)
    return [kind if kind and kinds.count(kind) == 1 else f"{kind or 'singer'} {number}" for number, kind in counted]


def shown_fits(answer: SingerAnswer) -> tuple[Fit, ...]:
    """The best keys that fit; where none does, the nearest one."""
    return answer.fits[:MOST_KEYS] or (() if answer.nearest is None else (answer.nearest,))


def tune_in_words(answer: SingerAnswer) -> Iterator[str]:
    """How wide the tune is, where its key comes from, and where half of its time lies."""
    sung, conventions = answer.sung, answer.conventions
    key = key_name(answer.key, conventions)
    yield f"The tune spans {semitones_in_words(sung.span.width)} in {key}."
    if sung.runner_up is not None:
        yield f"That key is a guess; next likeliest is {key_name(sung.runner_up, conventions)}."
    if sung.span.middle_half is not None:
        low, high = sung.span.middle_half
        if sung.span.is_free:
            yield f"Half of its time lies from {low} to {semitones_in_words(high)} above its lowest note."
        else:
            notes = (sung.span.pitch(above, sung.span.low, answer.key) for above in (low, high))
            first, last = (pitch_name(note, conventions) for note in notes)
            yield f"Half of its time lies from {first} to {last}."


def range_in_words(voice: Voice, conventions: Conventions) -> str:
    """A singer's lowest and highest note, and the comfortable part."""
    notes = (voice.low, voice.high, voice.comfort_low, voice.comfort_high)
    low, high, easy_low, easy_high = (pitch_name(pitch_in(PLAIN_KEY, note), conventions) for note in notes)
    return f"{low} to {high}, comfortable from {easy_low} to {easy_high}"


def fit_in_words(fit: Fit, answer: SingerAnswer) -> Iterator[str]:
    """How far a key is from the tune's own, where it lies for each singer, and what the instruments read."""
    conventions, names = answer.conventions, names_of(answer)
    way = _way_in_words(fit, answer)
    if len(names) == 1:
        yield _place_in_words(fit.places[0], fit, answer, way)
    else:
        yield way
        for name, place in zip(names, fit.places, strict=True):
            yield f"{name}: {_place_in_words(place, fit, answer)}"
    if fit.readings:
        yield "; ".join(_reading_in_words(reading, conventions) for reading in fit.readings)


def _way_in_words(fit: Fit, answer: SingerAnswer) -> str:
    """The way from the tune's own key."""
    if not fit.shift:
        is_as_written = not answer.sung.span.is_free and not any(place.octaves for place in fit.places)
        return "as it is" if is_as_written else "in its own key"
    if answer.sung.span.is_free:
        return distance_in_words(answer.key, fit.key)
    return f"{semitones_in_words(abs(fit.shift))} {'up' if fit.shift > 0 else 'down'}"


def _place_in_words(place: Place, fit: Fit, answer: SingerAnswer, way: str = "") -> str:
    """Where a singer has the tune, in which octave, how comfortable it is, and how much room is left."""
    span = answer.sung.span
    ends = (span.pitch(above, place.low, fit.key) for above in (0, span.width))
    notes = " to ".join(pitch_name(end, answer.conventions) for end in ends)
    told = (notes, way, _octave_of(place.octaves), *_time_in_words(place))
    return f"{', '.join(part for part in told if part)}; {_room(place)}"


def _room(place: Place) -> str:
    """How many semitones are left below and above, and by how many the tune passes the range.

    >>> fits = Place(low=60, high=72, octaves=0, below=0, above=5, strained=0, off_middle=0)
    >>> _room(fits), _room(fits._replace(below=-1, above=-2))
    ('room: none below, 5 above', 'passes the range by 1 below and 2 above')
    >>> _room(fits._replace(above=-2))
    'room: none below; passes the range by 2 above'
    """
    sides = ((place.below, "below"), (place.above, "above"))
    left = ", ".join(f"{room or 'none'} {side}" for room, side in sides if room >= 0)
    passed = listed([f"{-room} {side}" for room, side in sides if room < 0])
    return "; ".join([f"room: {left}"] * bool(left) + [f"passes the range by {passed}"] * bool(passed))


def _octave_of(octaves: int) -> str:
    if not octaves:
        return ""
    return f"{octaves_in_words(abs(octaves))} {'higher' if octaves > 0 else 'lower'}"


def _time_in_words(place: Place) -> Iterator[str]:
    """How much of its time a tune is comfortable and at the top; nothing where only its ends are known."""
    if place.comfortable is not None and place.at_top is not None:
        yield _share(place.comfortable, "comfortable all the time", "never comfortable", "of the time comfortable")
        yield _share(place.at_top, "always at the top", "never at the top", "at the top")


def _share(percent: int, every: str, none: str, some: str) -> str:
    return every if percent == _ALL else f"{percent} percent {some}" if percent else none


def _reading_in_words(reading: Reading, conventions: Conventions) -> str:
    name, key = reading.instrument.name, key_name(reading.key, conventions)
    if reading.fret is None:
        return f"{name} reads {key}, {signature_in_words(reading.key)}"
    capo = f"capo {reading.fret}" if reading.fret else "no capo"
    return f"{name}: {capo}, shapes of {key}"


def no_key_in_words(answer: SingerAnswer) -> Iterator[str]:
    """Why no key fits, and what the nearest one needs."""
    names = names_of(answer)
    wider = [
        f"{semitones_in_words(semitones)} wider than the range" + (f" of {name}" if len(names) > 1 else "")
        for name, semitones in zip(names, answer.wider_by, strict=True)
        if semitones
    ]
    if wider:
        yield f"No key fits: the tune is {listed(wider)}."
    else:
        yield "No key fits all singers, though each could sing the tune in a key of their own."
    too_far = 0 if answer.nearest is None else answer.nearest.too_far
    yield f"The nearest goes {semitones_in_words(too_far)} too far: change notes there, or give them to another voice."
    for bars, where in ((answer.too_low, "low"), (answer.too_high, "high")):
        if bars:
            yield f"It lies too {where} in {_bars_in_words(bars)}."


def _bars_in_words(bars: tuple[int, ...]) -> str:
    """Numbers of bars, the pickup being bar 0.

    >>> _bars_in_words((3,)), _bars_in_words((0, 2, 5))
    ('bar 3', 'the pickup and bars 2, 5')
    """
    numbers = [str(bar) for bar in bars if bar]
    told = f"bar{'s' * (len(numbers) != 1)} {', '.join(numbers[:_MOST_BARS])}" if numbers else ""
    told += " and later" if len(numbers) > _MOST_BARS else ""
    return " and ".join(part for part in ("the pickup" * (0 in bars), told) if part)


def other_keys_in_words(answer: SingerAnswer) -> str:
    """The keys that fit, too, without more words; empty where there are none."""
    others = ", ".join(key_name(fit.key, answer.conventions) for fit in answer.fits[MOST_KEYS:])
    return f"It fits in {others}, too." if others else ""
