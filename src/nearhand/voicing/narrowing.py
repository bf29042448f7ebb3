"""What pins and a given top line leave of the candidates of each chord."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.errors import InputError
from nearhand.voicing.candidates import Layer
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
            _carrying(_pinned(layer, place, wishes, shift), place, wishes, shift) for place, layer in enumerate(layers)
        )
        if all(found):
            return found
    shift = shifts[0]
    for place, layer in enumerate(layers):
        pinned = _pinned(layer, place, wishes, shift)
        if not pinned:
            refuse_pin(layer, place, task, shift)
        if not _carrying(pinned, place, wishes, shift):
            refuse_melody_note(pinned, place, task, shift)
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


def _pinned(layer: Layer, place: int, wishes: Wishes, shift: int) -> Layer:
    """The candidates that have the pinned notes: as all their notes, or else as the upper ones, or the right hand's."""
    for pinned, notes in wishes.pins:
        if pinned == place:
            moved = tuple(note + shift for note in notes)
            layer = next((found for found in _having(moved, layer) if found), ())
    return layer


def _having(notes: tuple[int, ...], layer: Layer) -> Iterator[Layer]:
    yield tuple(candidate for candidate in layer if candidate.notes == notes)
    yield tuple(candidate for candidate in layer if candidate.upper == notes)
    yield tuple(candidate for candidate in layer if candidate.right == notes)


def _carrying(layer: Layer, place: int, wishes: Wishes, shift: int) -> Layer:
    """The candidates that have the given top note."""
    note = wishes.melody[place] if place < len(wishes.melody) else None
    return layer if note is None else tuple(candidate for candidate in layer if candidate.upper[-1] == note + shift)
