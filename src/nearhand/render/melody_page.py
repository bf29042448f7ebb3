"""A melody as a page: its chords, its degrees and its notes below one another, in one key or several.

The degrees stand once; each key has a row of notes under them, for the numbers stay and the notes change.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.chart_writing import NO_CHORD, bracketed
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.melody_degrees import NUMBERS, SYLLABLES
from nearhand.notation.melody_writing import Group, groups_of, write_as_degrees, write_as_notes
from nearhand.notation.notes import note_name
from nearhand.notation.syllables import write_movable
from nearhand.render.heads import head, key_line
from nearhand.render.page import WIDE_ENOUGH_FOR_LABELS, Line, Page, wrapped
from nearhand.render.systems import CLOSING_WIDTH, Column, column_in, draw_systems, label_width
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar
from nearhand.theory.progression import Bar
from nearhand.verbs.answers import MelodyAnswer, MelodyView

TYPE_CHECKING = False
if TYPE_CHECKING:
    from collections.abc import Callable

    from nearhand.notation.melody_writing import WriteInterval
    from nearhand.theory.chord import RelativeChord
    from nearhand.theory.mode import Mode
    from nearhand.theory.progression import Beats

    WriteChord = Callable[[RelativeChord], str]

LEGEND = "- holds on, r rests, [ ] share a beat, ' an octave up, _ an octave down"
_ROWS = {SYLLABLES: ("sing", "note"), NUMBERS: ("degree", "note")}
"""The rows of degrees and of notes, by what the degrees are."""
_SIGN_WIDTH = 3
"""Columns that a bar sign and the blank behind a column take."""


def draw_melody(answer: MelodyAnswer, page: Page) -> list[Line]:
    """A melody in one key with its chords, or in several with a row of notes for each."""
    tune, conventions = answer.tune, answer.conventions
    lines = head(tune, conventions, page, answer.introduces)
    if len(answer.views) == 1:
        lines += key_line(answer.views[0].key, tune, conventions, page, answer.views[0].melody)
    lines += melody_lines(answer.views, answer.bars, tune.key, conventions, page)
    remarks = tune.all_remarks if answer.introduces else ()
    if len(answer.views) == 1 and page.width < WIDE_ENOUGH_FOR_LABELS:
        rows = ("chord", *_ROWS[conventions.sing]) if answer.bars else _ROWS[conventions.sing]
        lines += wrapped(f"rows: {', '.join(rows)}", page.width, role="label")
    for text, role in (
        (legend_of(conventions, tune.key.mode), "label"),
        *((remark, "hint") for remark in (*remarks, answer.advice)),
    ):
        lines += wrapped(text, page.width, role=role)
    return lines


def legend_of(conventions: Conventions, mode: Mode) -> str:
    """What the signs of a melody mean, and where do is, where its degrees are sung."""
    if conventions.sing != SYLLABLES:
        return LEGEND
    if conventions.degrees != "relative":
        return f"{LEGEND}; do is the tonic in every key, in minor too"
    if not mode.brightness:
        return f"{LEGEND}; do is the tonic, in minor that of the relative major"
    tonic = write_movable(-mode.brightness, conventions.plain)
    return f"{LEGEND}; do is the tonic of the relative major, so {mode.name} begins on {tonic}"


def melody_lines(
    views: Sequence[MelodyView], bars: tuple[Bar, ...], own: Key, conventions: Conventions, page: Page
) -> list[Line]:
    """The systems of a melody: chords where there are some, degrees, and notes in each key."""
    melody = views[0].melody
    writers = [write_as_degrees(own.mode, conventions)]
    writers += [write_as_notes(view.melody.tonic, conventions) for view in views]
    degrees, notes = _ROWS[conventions.sing]
    if len(views) == 1:
        labels: list[str] | None = None
        rows = ["chord", degrees, notes]
        columns = _columns(melody, bars, writers, lambda chord: write_chord(chord.in_key(views[0].key), conventions))
    else:
        name = degrees if page.width >= WIDE_ENOUGH_FOR_LABELS else ""
        labels, rows = [name, *_key_labels(views, conventions, page)], [degrees, *[notes] * len(views)]
        columns = [column._replace(texts=column.texts[1:]) for column in _columns(melody, bars, writers, lambda _: "")]
    if labels is None and not any(column.texts[0] for column in columns):
        rows, columns = rows[1:], [column._replace(texts=column.texts[1:]) for column in columns]
    room = page.width - label_width(page, labels) - CLOSING_WIDTH
    return draw_systems([part for column in columns for part in _parts(column, room)], rows, page, labels)


def _parts(column: Column, room: int) -> list[Column]:
    """A column that is too wide for the page, in several: all its texts are broken at the same words."""
    if column.width + 1 <= room:
        return [column]
    rows = [_pieces(text) for text in column.texts]
    count = max(map(len, rows))
    rows = [[*row, *[""] * (count - len(row))] for row in rows]
    taken: list[list[str]] = [["" for _ in rows]]
    for pieces in zip(*rows, strict=True):
        longer = [text + piece for text, piece in zip(taken[-1], pieces, strict=True)]
        if any(taken[-1]) and max(map(len, longer)) + _SIGN_WIDTH > room:
            taken.append([])
            longer = [piece.lstrip() for piece in pieces]
        taken[-1] = longer
    first, *others = (column._replace(texts=tuple(texts)) for texts in taken)
    return [first, *(part._replace(sign=" ", opening="  ", bar_number="", section="") for part in others)]


def _pieces(text: str) -> list[str]:
    """A text cut where it may be broken: before blanks, ornaments and lengths, behind grace notes, at hyphens.

    >>> _pieces("[{C4 D4}E4(tr):3 F4]")
    ['[{C4', ' D4}', 'E4', '(tr)', ':3', ' F4]']
    >>> _pieces("E4(inverted-turn) -")
    ['E4', '(inverted-', 'turn)', ' -']
    """
    pieces = [""]
    for place, character in enumerate(text):
        before = text[place - 1 : place]
        if place and (character in " (:" or before == "}" or (before == "-" and character.isalpha())):
            pieces.append("")
        pieces[-1] += character
    return pieces


def _key_labels(views: Sequence[MelodyView], conventions: Conventions, page: Page) -> list[str]:
    if page.width >= WIDE_ENOUGH_FOR_LABELS:
        return [key_name(view.key, conventions) for view in views]
    return [note_name(view.key.tonic, conventions) for view in views]


def _columns(melody: Melody, bars: tuple[Bar, ...], writers: Sequence[WriteInterval], name: WriteChord) -> list[Column]:
    """The columns of all bars: texts of the chord and of each writer, a column a group of notes."""
    pickup = melody.bars[0] if melody.has_pickup else None
    full = melody.bars[1:] if pickup else melody.bars
    edges = bars or tuple(Bar((), bar.meter, bar.opens_repeat, bar.closes_repeat, bar.ends_section) for bar in full)
    columns: list[Column] = []
    if pickup is not None:
        for place, group in enumerate(groups_of(pickup)):
            sign, section = (" ", "") if place else ("", edges[0].section)
            columns.append(Column(("", *_texts(group, writers)), sign, sign, "|", "", None, section))
        edges = (edges[0]._replace(section=""), *edges[1:])
    for number, edge in enumerate(edges, start=1):
        bar = full[number - 1] if number <= len(full) else None
        columns += _bar_columns(edges, number, bar, _chords(edge, name), writers)
    return columns


def _texts(group: Group, writers: Sequence[WriteInterval]) -> tuple[str, ...]:
    return tuple(group.write(writer) for writer in writers)


def _chords(bar: Bar, write: WriteChord) -> list[tuple[Beats, str]]:
    """The chords of a bar with their onsets in beats."""
    found: list[tuple[Beats, str]] = []
    onset: Beats = 0
    for slot in bar.slots:
        name = NO_CHORD if slot.chord is None else write(slot.chord)
        found.append((onset, bracketed(name, slot)))
        onset += slot.beats
    return found


def _bar_columns(
    edges: Sequence[Bar],
    number: int,
    bar: MelodyBar | None,
    chords: list[tuple[Beats, str]],
    writers: Sequence[WriteInterval],
) -> list[Column]:
    """The columns of one bar; of a bar without notes, its chords."""
    empty = ("",) * len(writers)
    if bar is None or not bar.notes:
        cells = [(name, *empty) for _, name in chords] or [("", *empty)]
    else:
        cells = []
        for group in groups_of(bar):
            end = group.onset + group.beats
            here = " ".join(name for onset, name in chords if group.onset <= onset < end)
            cells.append((here, *_texts(group, writers)))
        cells += [(name, *empty) for onset, name in chords if onset >= bar.beats]
    return [column_in(edges, number, place == 0, texts) for place, texts in enumerate(cells)]
