"""Why there is no voicing: which chord, what is missing, and the smallest change that would help."""

from __future__ import annotations

from typing import NoReturn

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.notes import pitch_name
from nearhand.theory.key import pitch_in
from nearhand.voicing.candidates import Layer
from nearhand.voicing.layers import all_layers
from nearhand.voicing.path import NEVER
from nearhand.voicing.task import Task
from nearhand.voicing.wishes import RISING

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.strands import Strand

_WIDEST_SPAN = 24
_LOWEST, _HIGHEST = 28, 96


def refuse_empty_layer(layers: tuple[Layer, ...], task: Task) -> NoReturn:
    """Raise InputError for the first chord that no voicing of the family fits, with the smallest change that helps."""
    what = f"{_chord(layers.index(()), task)} has no {task.wishes.style} voicing{_register(task)}"
    wider = _least_span(task)
    if wider is not None:
        raise InputError(
            f"{what} for a hand that spans {task.wishes.span} semitones",
            hint=f"a span of {wider} would do, if your hand reaches that without strain; or choose another style",
        )
    needed = _least_register(task)
    if needed is None:
        raise InputError(what, hint="choose another style")
    low, high = (note_named(note, task) for note in needed)
    raise InputError(what, hint=f"the smallest register that holds all chords is {low} {high}")


def refuse_pin(layer: Layer, place: int, task: Task, shift: int) -> NoReturn:
    """Raise InputError for pinned notes that are no voicing of their chord, with the nearest one that is."""
    pins = [tuple(note + shift for note in notes) for pinned, notes in task.wishes.pins if pinned == place]
    if len(set(pins)) > 1:
        raise InputError(
            f"{_chord(place, task)} is pinned to {_notes(pins[0], task)} and to {_notes(pins[-1], task)}",
            hint="keep one of the two",
        )
    shapes = [shape for each in layer for shape in (each.upper, each.right, each.notes) if shape]
    near = min(shapes, key=lambda notes: (_distance(pins[0], notes), notes))
    what = f"is no {task.wishes.style} voicing of {_chord(place, task)}"
    if _holds(pins[0], all_layers(_anywhere(task, task.wishes.span))[place]):
        what = f"lies outside the register between {_range(task)}"
    elif _holds(pins[0], all_layers(_anywhere(task, _WIDEST_SPAN))[place]):
        what = f"is too wide for a hand that spans {task.wishes.span} semitones"
    raise InputError(f"{_notes(pins[0], task)} {what}", hint=f"the nearest one is {_notes(near, task)}")


def _holds(notes: tuple[int, ...], layer: Layer) -> bool:
    return any(notes in (each.upper, each.right, each.notes) for each in layer)


def refuse_melody_note(layer: Layer, place: int, task: Task, shift: int) -> NoReturn:
    """Raise InputError for a top note that no voicing of its chord carries, with the nearest that one does."""
    melody = task.wishes.melody[place]
    assert melody is not None
    note = melody + shift
    tops = sorted({candidate.upper[-1] for candidate in layer}, key=lambda top: (abs(top - note), top))
    pinned = " with its pinned notes" if any(pinned == place for pinned, _ in task.wishes.pins) else ""
    raise InputError(
        f"no {task.wishes.style} voicing of {_chord(place, task)}{pinned} has {note_named(note, task)} on top",
        hint=f"the nearest top note it can carry is {note_named(tops[0], task)}",
    )


def refuse_top_line(strand: Strand, task: Task) -> NoReturn:
    """Raise InputError for a top line that cannot rise or fall all the way, naming the chord where it ends."""
    trellis = strand.trellis
    reached = [True] * len(strand.layers[0])
    for place in range(1, len(strand.layers)):
        table = trellis.steps(place)
        reached = [any(can and cost < NEVER for can, cost in zip(reached, row, strict=True)) for row in table]
        if not any(reached):
            verb, left = ("rise", "as high or higher") if task.wishes.top == RISING else ("fall", "as low or lower")
            raise InputError(
                f"the top line cannot {verb} all the way: nothing {left} is left at {_chord(place, task)}",
                hint="give it more room with register, or write top still",
            )
    raise InputError(
        f"a top line that is {task.wishes.top} cannot come back to its first note in a loop",
        hint="write loop off, or top still",
    )


def _least_span(task: Task) -> int | None:
    """The least span that voices all chords; None where no hand helps."""
    spans = range(task.wishes.span + 1, _WIDEST_SPAN + 1)
    tasks = {span: task._replace(wishes=task.wishes._replace(span=span)) for span in spans}
    return next((span for span, wider in tasks.items() if all(all_layers(wider))), None)


def _least_register(task: Task) -> tuple[int, int] | None:
    """The register, grown from the wished one by the fewest semitones for each chord in turn, that voices them all."""
    low, high = task.register.low, task.register.high
    for layer in all_layers(_anywhere(task, task.wishes.span)):
        grown = [(min(low, each.upper[0]), max(high, each.upper[-1])) for each in layer]
        if not grown:
            return None
        low, high = min(grown, key=lambda bounds: (bounds[1] - bounds[0], bounds))
    return low, high


def _anywhere(task: Task, span: int) -> Task:
    """The task in a register without bounds."""
    return task._replace(wishes=task.wishes._replace(low=_LOWEST, high=_HIGHEST, moves=False, span=span))


def _register(task: Task) -> str:
    wishes = task.wishes
    return "" if wishes.low is None and wishes.high is None else f" between {_range(task)}"


def _range(task: Task) -> str:
    return f"{note_named(task.register.low, task)} and {note_named(task.register.high, task)}"


def _distance(one: tuple[int, ...], other: tuple[int, ...]) -> int:
    return sum(min(abs(note - near) for near in other) for note in one) + 12 * abs(len(one) - len(other))


def _chord(place: int, task: Task) -> str:
    progression = task.progression
    chord = progression.relative_chords[place].in_key(progression.key)
    return f"chord {place + 1} ({write_chord(chord, PLAIN)})"


def note_named(note: int, task: Task, conventions: Conventions = PLAIN) -> str:
    """A MIDI number as the note that is nearest to the key on the line of fifths."""
    return pitch_name(pitch_in(task.progression.key, note), conventions)


def _notes(notes: tuple[int, ...], task: Task) -> str:
    return " ".join(note_named(note, task) for note in notes)
