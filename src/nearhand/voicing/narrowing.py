"""What pins and a given top line leave of the candidates of each chord."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.voicing.candidates import Candidate, Layer
from nearhand.voicing.refusals import refuse_empty_layer, refuse_melody_note, refuse_pin
from nearhand.voicing.wishes import Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.task import Task


def narrowed(layers: tuple[Layer, ...], task: Task) -> tuple[Layer, ...]:
    """The layers with only the candidates that are wished for, all of them moved by the first shift that leaves some.

    Raises InputError, which says what is missing, where no shift does.
    """
    if not all(layers):
        refuse_empty_layer(layers, task)
    wishes, shifts = task.wishes, task.shifts
    _check_places(len(layers), wishes)
    for shift in shifts:
        found = tuple(
            tuple(candidate for candidate in layer if _is_wished(candidate, place, wishes, shift))
            for place, layer in enumerate(layers)
        )
        if all(found):
            return found
    shift = shifts[0]
    for place, layer in enumerate(layers):
        pinned = [layer_ for layer_ in layer if _fits_pins(layer_, place, wishes, shift)]
        if not pinned:
            refuse_pin(layer, place, task, shift)
        if not any(_fits_melody(each, place, wishes, shift) for each in pinned):
            refuse_melody_note(tuple(pinned), place, task, shift)
    raise AssertionError("some layer is empty")


def _check_places(count: int, wishes: Wishes) -> None:
    for place, _ in wishes.pins:
        if place >= count:
            raise InputError(f"there is no chord {place + 1} to pin", hint=f"the chords are numbered 1 to {count}")
    if len(wishes.melody) > count:
        raise InputError(
            f"the top line has {len(wishes.melody)} notes for {count} chord{'s' * (count != 1)}",
            hint="give one note a chord, and - where the top note is free",
        )


def _is_wished(candidate: Candidate, place: int, wishes: Wishes, shift: int) -> bool:
    return _fits_pins(candidate, place, wishes, shift) and _fits_melody(candidate, place, wishes, shift)


def _fits_pins(candidate: Candidate, place: int, wishes: Wishes, shift: int) -> bool:
    for pinned, notes in wishes.pins:
        moved = tuple(note + shift for note in notes)
        if pinned == place and moved not in (candidate.notes, candidate.upper, candidate.right):
            return False
    return True


def _fits_melody(candidate: Candidate, place: int, wishes: Wishes, shift: int) -> bool:
    note = wishes.melody[place] if place < len(wishes.melody) else None
    return note is None or candidate.upper[-1] == note + shift
