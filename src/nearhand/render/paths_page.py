"""The next best paths as a list, and why one voicing was taken."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import semitones_in_words
from nearhand.notation.keys import key_name
from nearhand.notation.notes import pitch_name
from nearhand.render.heads import head
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.pitch import Pitch
from nearhand.verbs.others import OthersAnswer, Path
from nearhand.verbs.why import Choice, WhyAnswer, decided_by
from nearhand.voicing.voice import Voicing
from nearhand.voicing.weights import KEYBOARD

_INDENT = 4


def draw_paths(answer: OthersAnswer, page: Page) -> list[Line]:
    """Each path with its cost; the first in full, of the others the chords that differ from it."""
    conventions = answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines.append(line(Cell(f"in {key_name(answer.key, conventions)}", "key")))
    for path in answer.paths:
        here = ", the one you see" if path.number == answer.number and not answer.introduces else ""
        text = f"{path.number:2d}  {cost_of(path)}{here}"
        lines.append(line(Cell(text[:4], "label"), text[4:]))
        for place in path.differs or range(len(path.voiced.voicings)):
            lines += _chord(path, place, conventions, page)
    if len(answer.paths) == 1:
        lines += wrapped("There is no other path.", page.width)
    elif len(answer.paths) > 1:
        text = "Of paths 2 and on only the chords that differ from path 1 are listed."
        lines += wrapped(text, page.width, role="hint")
    return lines


def cost_of(path: Path) -> str:
    """What a path costs, in semitones where nothing else counts."""
    if path.voiced.search.task.weights == KEYBOARD:
        return semitones_in_words(path.cost)
    return f"cost {path.cost}"


def _chord(path: Path, place: int, conventions: Conventions, page: Page) -> list[Line]:
    progression = path.voiced.search.task.progression
    symbol = write_chord(progression.relative_chords[place].in_key(progression.key), conventions)
    text = f"{place + 1} {symbol}: {hands_of(path.voiced.voicings[place], conventions)}"
    return wrapped(text, page.width, _INDENT)


def hands_of(voicing: Voicing, conventions: Conventions) -> str:
    """A voicing in words: the right hand's notes, and the left hand's below them."""
    right, left = (_notes(hand, conventions) for hand in (voicing.right, voicing.left))
    return f"{right} over {left}" if right and left else right or left


def _notes(pitches: tuple[Pitch, ...], conventions: Conventions) -> str:
    return " ".join(pitch_name(pitch, conventions) for pitch in pitches)


def draw_why(answer: WhyAnswer, page: Page) -> list[Line]:
    """The voicing that was taken, then the next best, each with what the whole path would cost."""
    conventions, taken = answer.conventions, answer.taken
    symbol = write_chord(answer.chord, conventions)
    lines = [
        line(Cell(f"in {key_name(answer.key, conventions)}", "key")),
        line(Cell(f"{answer.number:2d}  ", "label"), Cell(symbol, "chord")),
        *wrapped(hands_of(taken.voicing, conventions), page.width, _INDENT),
        *wrapped(ways(taken), page.width, _INDENT),
        *wrapped(f"The whole path costs {parts_of_cost(taken)}.", page.width, _INDENT),
    ]
    if not answer.others:
        text = f"{symbol} has no other voicing under these wishes."
        return [*lines, *wrapped(text, page.width)]
    lines += wrapped("Next best, each on the best path that takes it:", page.width)
    for other in answer.others:
        lines += wrapped(hands_of(other.voicing, conventions), page.width, _INDENT)
        lines += wrapped(f"{ways(other)} {difference(taken, other)}", page.width, _INDENT + 2)
        lines += wrapped(f"The whole path would cost {parts_of_cost(other)}.", page.width, _INDENT + 2)
    return lines


def ways(choice: Choice) -> str:
    """How far the voices go to a choice and from it."""
    ways = []
    if choice.arriving is not None:
        ways.append(f"{semitones_in_words(choice.arriving)} from the chord before")
    if choice.leaving is not None:
        ways.append(f"{semitones_in_words(choice.leaving)} to the chord after")
    return f"{' and '.join(ways)}." if ways else "It stands alone."


_DECIDING = {
    "bass": ("its bass moves further", "its bass moves less"),
    "middle": ("the whole lies further from the middle of the register", "the whole lies nearer to the middle"),
    "order": ("the lower one comes first",) * 2,
}
"""What decides between equal costs, against a voicing and for it."""


def difference(taken: Choice, other: Choice) -> str:
    """What speaks for the choice that was taken, against another."""
    reason = decided_by(taken, other)
    if reason in _DECIDING:
        is_better = other.ties < taken.ties
        return f"It costs the same in all; {_DECIDING[reason][is_better]}."
    more = other.cost - taken.cost
    return f"It costs {more} more in all." if more > 0 else f"It costs {-more} less in all."


def parts_of_cost(choice: Choice) -> str:
    """What the path of a choice costs, and by name where there are several costs."""
    if len(choice.parts) <= 1:
        return str(choice.cost)
    return f"{choice.cost}: {', '.join(f'{name} {value}' for name, value in choice.parts)}"
