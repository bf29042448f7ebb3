"""What in a melody could be read otherwise than it is."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.melody_degrees import Degree, interval_of, read_degree
from nearhand.notation.melody_reading import WrittenMelody
from nearhand.notation.notes import note_name
from nearhand.theory.key import Key


def remarks_on_melody(written: WrittenMelody, key: Key, conventions: Conventions) -> tuple[str, ...]:
    """A sentence where a lowered degree goes below that of a mode which has it low already: b3 in minor.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import read_melody
    >>> print(*remarks_on_melody(read_melody("1 b3 5"), parse_key("A minor"), Conventions()))
    b3 is counted in the minor scale: it is C♭, and 3 is C. With degrees major, b3 is C.
    """
    if conventions.degrees != "mode" or not key.mode.has_minor_third:
        return ()
    for sign in written.signs:
        found = read_degree(sign.text, 0) if sign.kind == "note" else None
        if found is not None and found[0].accidental == -1 and found[0].number == 3:
            return (_lowered_third(key, conventions),)
    return ()


def _lowered_third(key: Key, conventions: Conventions) -> str:
    low, own = (
        note_name(key.tonic.up(interval_of(Degree(3, accidental, 0), key.mode, conventions).fifths), conventions)
        for accidental in (-1, None)
    )
    scale = f"the {key.mode.name} scale"
    return f"b3 is counted in {scale}: it is {low}, and 3 is {own}. With degrees major, b3 is {own}."
