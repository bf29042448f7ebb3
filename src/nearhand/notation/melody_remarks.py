"""What in a melody could be read otherwise than it is."""

from __future__ import annotations

from nearhand.notation.accidentals import write_accidental
from nearhand.notation.conventions import Conventions
from nearhand.notation.degrees import has_two_forms
from nearhand.notation.melody_degrees import LOWER, Degree, interval_of, read_degree
from nearhand.notation.melody_reading import WrittenMelody
from nearhand.notation.notes import note_name
from nearhand.notation.syllables import MOVABLE, read_movable, write_movable
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR_DEGREES


def remarks_on_melody(written: WrittenMelody, key: Key, conventions: Conventions) -> tuple[str, ...]:
    """A sentence for each thing that others write another way.

    A degree goes further that its mode alters already (b3 in minor, #4 in lydian); syllables are sung from the
    tonic, where others would begin minor on la; a comma behind a single degree looks like an octave mark.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import read_melody
    >>> print(*remarks_on_melody(read_melody("1 b3 5"), parse_key("A minor"), Conventions()))
    b3 is counted in the minor scale: it is C♭, and 3 is C. With degrees major, b3 is C.
    >>> print(*remarks_on_melody(read_melody("la ti do"), parse_key("A minor"), Conventions()))
    do is A, the tonic, in minor too. With degrees relative, la is A.
    """
    remarks = (_altered_twice(written, key, conventions), _syllables(written, key, conventions), _commas(written))
    return tuple(remark for remark in remarks if remark)


def _altered_twice(written: WrittenMelody, key: Key, conventions: Conventions) -> str:
    """Where a degree is altered once more that the mode alters already, as b7 in mixolydian."""
    if conventions.degrees != "mode":
        return ""
    for number, accidental in _degrees(written):
        own = key.mode.degrees[number - 1] - MAJOR_DEGREES[number - 1]
        if accidental is not None and own * accidental > 0 and not has_two_forms(number, key.mode):
            return _counted_in_the_mode(number, accidental, key, conventions)
    return ""


def _counted_in_the_mode(number: int, accidental: int, key: Key, conventions: Conventions) -> str:
    written, plain, of_major = (
        note_name(key.tonic.up(interval_of(Degree(number, sign, 0), key.mode, choice).fifths), conventions)
        for sign, choice in (
            (accidental, conventions),
            (None, conventions),
            (accidental, conventions._replace(degrees="major")),
        )
    )
    name = f"{write_accidental(accidental, plain=True)}{number}"
    return (
        f"{name} is counted in the {key.mode.name} scale: it is {written}, and {number} is {plain}. "
        f"With degrees major, {name} is {of_major}."
    )


def _degrees(written: WrittenMelody) -> tuple[tuple[int, int | None], ...]:
    """The degrees of a melody with their accidentals, each once."""
    found = [read_degree(sign.text, 0) for sign in written.signs if sign.kind == "note"]
    return tuple(dict.fromkeys((each[0].number, each[0].accidental) for each in found if each is not None))


def _syllables(written: WrittenMelody, key: Key, conventions: Conventions) -> str:
    """Where the third or sixth of major is sung in a mode with minor third, which never has its own."""
    if conventions.degrees == "relative" or not key.mode.has_minor_third:
        return ""
    found = [read_movable(sign.text, 0) for sign in written.signs if sign.kind == "note"]
    places = {each[0] for each in found if each is not None}
    if not places & {MOVABLE["mi"], MOVABLE["la"]} or MOVABLE["me"] in places:
        return ""
    tonic, name = note_name(key.tonic, conventions), write_movable(-key.mode.brightness, conventions.plain)
    return f"do is {tonic}, the tonic, in minor too. With degrees relative, {name} is {tonic}."


def _commas(written: WrittenMelody) -> str:
    """Where a comma stands behind some degrees and not between all of them."""
    signs = [sign for sign in written.signs if sign.kind == "note" and read_degree(sign.text, 0) is not None]
    ends = [sign.start + len(sign.text) for sign in signs]
    behind = [written.text.startswith(",", end) and not written.text[end + 1 : end + 2].strip() for end in ends]
    if not any(behind) or all(behind[:-1]):
        return ""
    text = signs[behind.index(True)].text
    return f"A comma only parts the notes; an octave lower is {text}{LOWER}."
