"""One voice of an ABC tune: the first that has notes, without what other voices play beside it in a bar.

ABC standard 2.1, section 7, from memory.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.exchange.abc_signs import Sign
from nearhand.exchange.abc_text import Field

_ALONE = ""


def first_voice(header: Sequence[Field], signs: Sequence[Sign]) -> tuple[tuple[Sign, ...], tuple[str, ...]]:
    """The signs of the first voice that has notes, and what there is to remark.

    What stands before any voice is named belongs to the first voice that the header names.

    >>> from nearhand.exchange.abc_signs import signs_of
    >>> from nearhand.exchange.abc_text import Row
    >>> rows = [Row("it.abc", 1, "V:one"), Row("it.abc", 2, "C D|"), Row("it.abc", 3, "V:two"), Row("it.abc", 4, "E|")]
    >>> signs, remarks = first_voice((), signs_of(rows))
    >>> [sign.text for sign in signs], remarks
    (['V:one', 'C', 'D', '|'], ('The tune has 2 voices; this is the first of them (one).',))
    """
    named = [voice for field in header if field.letter == "V" and (voice := _name(field))]
    voices: dict[str, list[Sign]] = {voice: [] for voice in named}
    current = named[0] if named else _ALONE
    for sign in signs:
        if sign.field is not None and sign.field.letter == "V":
            current = _name(sign.field)
        voices.setdefault(current, []).append(sign)
    common = [] if _has_notes(voices.get(_ALONE, [])) else voices.pop(_ALONE, [])
    sounding = [voice for voice, own in voices.items() if _has_notes(own)]
    if not sounding:
        return tuple(common), ()
    defined = [_sign(field) for field in header if field.letter == "V" and _name(field) == sounding[0]]
    alone, overlaid = _without_overlays(voices[sounding[0]])
    remarks = []
    if len(sounding) > 1:
        remarks.append(f"The tune has {len(sounding)} voices; this is the first of them{_in_brackets(sounding[0])}.")
    if overlaid:
        remarks.append("What & sets beside the melody in a bar is left out.")
    return (*defined, *common, *alone), tuple(remarks)


def _name(field: Field) -> str:
    return field.value.split(maxsplit=1)[0] if field.value else _ALONE


def _sign(field: Field) -> Sign:
    """A field of the header as a sign of the body."""
    return Sign("field", f"{field.letter}:{field.value}", field.row, max(0, field.start - 2), field=field)


def _in_brackets(voice: str) -> str:
    return f" ({voice[:20]})" if voice else ""


def _has_notes(signs: Sequence[Sign]) -> bool:
    return any(sign.kind == "note" for sign in signs)


def _without_overlays(signs: Sequence[Sign]) -> tuple[list[Sign], bool]:
    """The signs without those from an ``&`` to the end of its bar, and whether there was one."""
    kept: list[Sign] = []
    beside = overlaid = False
    for sign in signs:
        if sign.kind == "overlay":
            beside = overlaid = True
        elif sign.kind == "bar":
            beside = False
        if not beside:
            kept.append(sign)
    return kept, overlaid
