"""What is hard about each key as a page: a row of figures a key, its notes and new chords below; then what to learn."""

from __future__ import annotations

from nearhand.melody.difficulty import Difficulty, KeyDifficulty, KeyToLearn
from nearhand.melody.hand_steps import HandStep
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import listed
from nearhand.notation.keys import short_key_name
from nearhand.notation.notes import note_name
from nearhand.render.heads import head, signature_in_figures
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR
from nearhand.verbs.difficulty import DifficultyAnswer

_INDENT = 4
_GAP = "  "
_HEADINGS = ("key", "signature", "double", "black")
_OF_TONES = "double: tones with a double sharp or flat; black: tones on black keys"
_OF_CHORDS = "new: chords in none of the keys you know"
_OF_STEPS = "steps: how many are new"
WHY_STEPS = (
    "A step from note to note is new where its notes lie otherwise on black and white keys than the same degrees do in "
    "the keys you know."
)
_BESIDE = "beside: notes with an accidental of their own, beside the signature"


def draw_difficulty(answer: DifficultyAnswer, page: Page) -> list[Line]:
    """A key after the other in figures, with its notes beside the signature and its new chords; the keys to learn."""
    found, conventions = answer.difficulty, answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    for sentence in opening_in_words(found, conventions):
        lines += wrapped(sentence, page.width)
    headings = (*_HEADINGS, "new" if found.steps is None else "steps")
    rows = [(_name(row.key, conventions), *_figures(row, found)) for row in found.keys]
    if sum(_widths(headings, rows)) + len(_GAP) * len(headings) > page.width:
        rows = [
            (note_name(row.key.tonic, conventions), *figures)
            for row, (_, *figures) in zip(found.keys, rows, strict=True)
        ]
    widths = _widths(headings, rows)
    lines += [line(), line(Cell(_spread(headings, widths), "label"))]
    for row, figures in zip(found.keys, rows, strict=True):
        lines.append(line(Cell(figures[0].ljust(widths[0]), "key"), _spread(("", *figures[1:]), (0, *widths[1:]))))
        lines += wrapped(notes_and_chords_in_words(row, conventions), page.width, _INDENT)
    lines.append(line())
    for sentence in to_learn_in_words(found, conventions):
        lines += wrapped(sentence, page.width)
    legend = "; ".join((_OF_TONES, _OF_CHORDS if found.steps is None else _OF_STEPS, _BESIDE))
    for text, role in ((legend, "label"), (answer.advice, "hint")):
        lines += wrapped(text, page.width, role=role)
    return lines


def _spread(cells: tuple[str, ...], widths: list[int] | tuple[int, ...]) -> str:
    return _GAP.join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip()


def _widths(headings: tuple[str, ...], rows: list[tuple[str, ...]]) -> list[int]:
    return [max(map(len, column)) for column in zip(headings, *rows, strict=True)]


def _figures(row: KeyDifficulty, found: Difficulty) -> tuple[str, ...]:
    new = "known" if row.is_known else str(len(row.new if found.steps is None else row.new_steps))
    black = f"{row.black} of {row.tones}"
    return _signature(row), str(row.double_accidentals or "-"), black, new


def _name(key: Key, conventions: Conventions) -> str:
    """A key as short as it can be told: D, Dm, D dorian."""
    return f"{note_name(key.tonic, conventions)}m" if key.mode == MINOR else short_key_name(key, conventions)


def _signature(row: KeyDifficulty) -> str:
    return signature_in_figures(row.key) if row.key.signature else "none"


def opening_in_words(found: Difficulty, conventions: Conventions) -> list[str]:
    """Which keys are known, and how many tones need an accidental of their own."""
    known = listed([short_key_name(key, conventions) for key in found.known])
    count, tones = found.tones_beside, found.keys[0].tones
    need = f"{count} of {tones} tones need{'s' * (count == 1)}" if count else "no tone needs"
    return [f"Known: {known}.", f"In every key {need} an accidental beside the signature."]


def notes_and_chords_in_words(row: KeyDifficulty, conventions: Conventions) -> str:
    """The notes beside a key's signature, and its new chords; empty where there is neither."""
    notes = ", ".join(note_name(note, conventions) for note in row.beside)
    parts = [f"beside: {notes}"] if notes else []
    parts += [f"new: {_symbols(row.new, conventions)}"] if row.new else []
    return "; ".join(parts)


def to_learn_in_words(found: Difficulty, conventions: Conventions) -> list[str]:
    """The keys that teach most, and why; or why there are none.

    >>> from nearhand.melody.difficulty import difficulty_of
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.verbs.tune import tune_from_text
    >>> tune = tune_from_text("C: | C | Am | G7 |")
    >>> keys = tuple(map(parse_key, ("C", "F", "Eb")))
    >>> for sentence in to_learn_in_words(difficulty_of(tune.progression, None, keys, keys[:1], 1), Conventions()):
    ...     print(sentence)
    The key that teaches most, with 3 of 6 new chords:
    F: brings F, Dm and C7, in none of the keys you know.
    """
    what, new = ("chord", found.new) if found.steps is None else ("step", found.new_steps)
    why = [] if found.steps is None else [WHY_STEPS]
    if not found.to_learn:
        return [f"These keys bring no new {what}.", *why]
    count, brought = len(found.to_learn), sum(len(each.learned) for each in found.to_learn)
    keys = "The key that teaches most" if count == 1 else f"The {count} keys that teach most"
    share = _share(brought, new, what)
    return [f"{keys}, with {share}:", *(_lesson(each, conventions) for each in found.to_learn), *why]


def _lesson(each: KeyToLearn, conventions: Conventions) -> str:
    name = short_key_name(each.key, conventions)
    if each.brings:
        chords = listed([write_chord(chord, conventions) for chord in each.brings])
        return f"{name}: brings {chords}, in none of the keys you know."
    return f"{name}: brings {steps_in_words(each.steps, each.key, conventions)}."


def steps_in_words(steps: tuple[HandStep, ...], key: Key, conventions: Conventions) -> str:
    """Steps by their notes in a key.

    >>> from nearhand.notation.keys import parse_key
    >>> steps = HandStep((0, 4), (False, True)), HandStep((4, -1), (True, False))
    >>> steps_in_words(steps, parse_key("D"), Conventions())
    'D to F♯ and F♯ to G'
    """
    return listed([" to ".join(note_name(note, conventions) for note in step.notes(key)) for step in steps])


def _share(brought: int, new: int, what: str) -> str:
    if brought < new:
        return f"{brought} of {new} new {what}s"
    return f"all {brought} new {what}s" if brought > 1 else f"the one new {what}"


def _symbols(chords: tuple[Chord, ...], conventions: Conventions) -> str:
    return " ".join(write_chord(chord, conventions) for chord in chords)
