"""The keys that fit singers as a page: their ranges as a ruler, and the tune's place in it key by key."""

from __future__ import annotations

from collections.abc import Iterable

from nearhand.melody.ranges import PLAIN_KEY
from nearhand.melody.singers_key import Fit
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import pitch_name
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.render.singer_words import (
    fit_in_words,
    names_of,
    no_key_in_words,
    other_keys_in_words,
    range_in_words,
    shown_fits,
    tune_in_words,
)
from nearhand.theory.key import pitch_in
from nearhand.theory.record import NamedTuple
from nearhand.verbs.care import CARE_OF_VOICES
from nearhand.verbs.singer import SingerAnswer

_INDENT, _OCTAVE = 4, 12
IN_RANGE, COMFORTABLE, SUNG, MOST_SUNG = ".-=#"
_Stretch = tuple[str, int, int]
"""A sign, and the first and last half step that it stands at."""


class _Ruler(NamedTuple):
    """MIDI numbers from ``low`` to ``high``, each sign standing for ``step`` of them, behind labels of a width."""

    low: int
    high: int
    step: int
    label_width: int

    def column(self, number: int) -> int:
        """The column, from the left of the page, of a MIDI number."""
        return self.label_width + (number - self.low) // self.step

    def row(self, label: Cell, role: str, *stretches: _Stretch) -> Line:
        """A label and a row of the ruler; where stretches meet, the last one is seen."""
        signs = [" "] * (self.column(self.high) - self.label_width + 1)
        for sign, first, last in stretches:
            columns = range(self.column(first) - self.label_width, self.column(last) - self.label_width + 1)
            for column in columns:
                signs[column] = sign
        return line(label._replace(text=label.text.ljust(self.label_width)), Cell("".join(signs).rstrip(), role))


def draw_singer(answer: SingerAnswer, page: Page) -> list[Line]:
    """The singers' ranges, then the keys, best first, or why there is none; then the caution."""
    conventions, names, shown = answer.conventions, names_of(answer), shown_fits(answer)
    lines = wrapped(" ".join(tune_in_words(answer)), page.width)
    ruler = _ruler(answer, [*names, *(key_name(fit.key, conventions) for fit in shown)], page)
    lines += _octave_marks(ruler, conventions)
    for name, voice in zip(names, answer.singers, strict=True):
        comfort = (COMFORTABLE, voice.comfort_low, voice.comfort_high)
        lines.append(ruler.row(Cell(name, "label"), "moves", (IN_RANGE, voice.low, voice.high), comfort))
        lines += wrapped(range_in_words(voice, conventions), page.width, _INDENT)
    if not answer.fits:
        lines += wrapped(" ".join(no_key_in_words(answer)), page.width)
    for fit in shown:
        lines += [*_tune_rows(fit, answer, ruler), *_paragraphs(fit_in_words(fit, answer), page)]
    lines += wrapped(other_keys_in_words(answer), page.width)
    lines += wrapped(_legend(answer, ruler), page.width, role="label")
    return [*lines, *wrapped(CARE_OF_VOICES, page.width, role="hint")]


def _paragraphs(texts: Iterable[str], page: Page) -> list[Line]:
    return [row for text in texts for row in wrapped(text, page.width, _INDENT)]


def _ruler(answer: SingerAnswer, labels: list[str], page: Page) -> _Ruler:
    """A ruler that holds all ranges and all places of the tune, and fits the page."""
    edges = [(voice.low, voice.high) for voice in answer.singers]
    edges += [(place.low, place.high) for fit in shown_fits(answer) for place in fit.places]
    low, high = min(edge[0] for edge in edges), max(edge[1] for edge in edges)
    label_width = max(map(len, labels)) + 2
    return _Ruler(low, high, -(-(high - low + 1) // max(1, page.width - label_width)), label_width)


def _octave_marks(ruler: _Ruler, conventions: Conventions) -> list[Line]:
    """The names of the notes C above their places, as many as there is room for; no line where there are none."""
    text = ""
    for number in range(-(-ruler.low // _OCTAVE) * _OCTAVE, ruler.high + 1, _OCTAVE):
        column = ruler.column(number)
        name = pitch_name(pitch_in(PLAIN_KEY, number), conventions)
        if column >= len(text) and column + len(name) <= ruler.column(ruler.high) + 1:
            text = f"{text.ljust(column)}{name} "
    return [line(Cell(text.rstrip(), "label"))] if text else []


def _tune_rows(fit: Fit, answer: SingerAnswer, ruler: _Ruler) -> list[Line]:
    """The tune's place in a key: one row for each octave in which it is sung, the highest first."""
    rows, label = [], Cell(key_name(fit.key, answer.conventions), "key")
    half = answer.sung.span.middle_half
    for low in sorted({place.low for place in fit.places}, reverse=True):
        stretches = [(SUNG, low, low + answer.sung.span.width)]
        if half is not None:
            stretches.append((MOST_SUNG, low + half[0], low + half[1]))
        rows.append(ruler.row(label, "held", *stretches))
        label = Cell("", "key")
    return rows


def _legend(answer: SingerAnswer, ruler: _Ruler) -> str:
    most = "" if answer.sung.span.middle_half is None else ", # half of its time"
    steps = "a half step" if ruler.step == 1 else f"{ruler.step} half steps"
    return f"ruler: . range, - comfortable, = the tune{most}, one sign {steps}"
