"""The keys that fit singers as a page: their ranges as a ruler, and the tune's place in it key by key."""

from __future__ import annotations

from nearhand.harmony.moving import distance_in_words
from nearhand.melody.ranges import PLAIN_KEY, Voice
from nearhand.melody.singers_key import Fit
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import pitch_name
from nearhand.notation.semitones import semitones_in_words
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.key import Key, pitch_in
from nearhand.verbs.singer import CARE, SingerAnswer

_INDENT = 4
MOST_KEYS = 6
LEGEND = "ruler: . range, - comfortable, = the tune, one sign a half step"


def draw_singer(answer: SingerAnswer, page: Page) -> list[Line]:
    """The singers' ranges, then the keys, best first, or why there is none; then the caution."""
    conventions, names, shown = answer.conventions, names_of(answer), shown_fits(answer)
    lines = wrapped(span_in_words(answer), page.width)
    labels = [*names, *(key_name(fit.key, conventions) for fit in shown)]
    label_width = max(map(len, labels)) + 2
    edges = [*((voice.low, voice.high) for voice in answer.singers), *((fit.low, fit.high) for fit in shown)]
    low, high = min(edge[0] for edge in edges), max(edge[1] for edge in edges)
    for name, voice in zip(names, answer.singers, strict=True):
        lines.append(line(Cell(name.ljust(label_width), "label"), _ruler(voice, low, high)))
        lines += wrapped(range_in_words(voice, conventions), page.width, _INDENT)
    if not answer.fits:
        lines += wrapped(no_key_in_words(answer), page.width)
    for fit in shown:
        tune = Cell(" " * (fit.low - low) + "=" * (fit.high - fit.low + 1), "held")
        lines.append(line(Cell(key_name(fit.key, conventions).ljust(label_width), "key"), tune))
        lines += wrapped(fit_in_words(fit, answer), page.width, _INDENT)
    if len(answer.fits) > MOST_KEYS:
        others = ", ".join(key_name(fit.key, conventions) for fit in answer.fits[MOST_KEYS:])
        lines += wrapped(f"It fits in {others}, too.", page.width)
    return [*lines, *wrapped(LEGEND, page.width, role="label"), *wrapped(CARE, page.width, role="hint")]


def _ruler(voice: Voice, low: int, high: int) -> Cell:
    signs = [
        "-" if voice.comfort_low <= note <= voice.comfort_high else "." if voice.low <= note <= voice.high else " "
        for note in range(low, high + 1)
    ]
    return Cell("".join(signs).rstrip(), "moves")


def span_in_words(answer: SingerAnswer) -> str:
    """How wide the tune is."""
    width = answer.span.high - answer.span.low
    return f"The tune spans {semitones_in_words(width)} in {key_name(answer.key, answer.conventions)}."


def names_of(answer: SingerAnswer) -> list[str]:
    """The singers' kinds of voice, or their numbers."""
    is_one = len(answer.singers) == 1
    counted = enumerate(answer.singers, start=1)
    return [voice.name or ("singer" if is_one else f"singer {number}") for number, voice in counted]


def shown_fits(answer: SingerAnswer) -> tuple[Fit, ...]:
    """The best keys that fit; where none does, the nearest one."""
    return answer.fits[:MOST_KEYS] or (() if answer.misfit is None else (answer.misfit,))


def range_in_words(voice: Voice, conventions: Conventions) -> str:
    """A singer's lowest and highest note, and the comfortable part."""
    notes = (voice.low, voice.high, voice.comfort_low, voice.comfort_high)
    low, high, easy_low, easy_high = (_note(note, PLAIN_KEY, conventions) for note in notes)
    return f"{low} to {high}, comfortable from {easy_low} to {easy_high}"


def fit_in_words(fit: Fit, answer: SingerAnswer) -> str:
    """Where the tune lies in a key, how far that is from its own, and how much room it leaves."""
    conventions, names = answer.conventions, names_of(answer)
    notes = f"{_note(fit.low, fit.key, conventions)} to {_note(fit.high, fit.key, conventions)}"
    if answer.span.is_free:
        way = "" if fit.shift == 0 else f", {distance_in_words(answer.key, fit.key)}"
    else:
        way = (
            ", as it is"
            if fit.shift == 0
            else f", {semitones_in_words(abs(fit.shift))} {'up' if fit.shift > 0 else 'down'}"
        )
    rooms = [f"{_left(below)} below, {_left(above)} above" for below, above in fit.room]
    if len(rooms) == 1:
        return f"{notes}{way}; room: {rooms[0]}"
    named = "; ".join(f"{name} {room}" for name, room in zip(names, rooms, strict=True))
    return f"{notes}{way}; room: {named}"


def _left(semitones: int) -> str:
    return "none" if semitones == 0 else str(semitones) if semitones > 0 else f"{-semitones} too far"


def no_key_in_words(answer: SingerAnswer) -> str:
    """Why no key fits."""
    who = "the range" if len(answer.singers) == 1 else "what the singers have in common"
    return (
        f"No key fits: the tune is {semitones_in_words(answer.lacking)} wider than {who}. Nearest, with a note "
        "changed at the edge or another singer for the highest part:"
    )


def _note(number: int, key: Key, conventions: Conventions) -> str:
    return pitch_name(pitch_in(key, number), conventions)
