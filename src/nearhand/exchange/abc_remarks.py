"""What is worth saying about the reading of an ABC tune, in sentences for the player."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from nearhand.exchange.abc_bars import WrittenTune
from nearhand.exchange.abc_chords import Chords
from nearhand.exchange.abc_key_fields import KeyField, moves_of, read_key_field
from nearhand.exchange.abc_melody import Divided, Fitted
from nearhand.exchange.abc_signs import Sign
from nearhand.exchange.abc_text import Field, TuneText
from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import listed
from nearhand.notation.keys import key_name

_MOST_NAMED, _LONGEST = 6, 20
"""Texts that a remark names, and characters of each."""


def on_the_file(tune: TuneText, number: int | None) -> list[str]:
    """Which tune of the file this is, and music that is left out."""
    remarks = []
    if len(tune.numbers) > 1 and number is None:
        remarks.append(
            f"The file holds {len(tune.numbers)} tunes; this is the first. "
            "For another write its number (X:) behind the name of the file."
        )
    if not tune.is_whole:
        remarks.append("There is more music behind an empty line, which ends a tune; it is left out.")
    return remarks


def on_the_key(key: KeyField, written: WrittenTune, fitted: Fitted, conventions: Conventions) -> list[str]:
    """The key where the file names none, and where it changes."""
    home = key_name(key.key, conventions)
    remarks = [] if key.is_named else [f"The file names no key; the tune is read in {home}."]
    current = key.key
    for place, field in written.key_changes:
        changed = read_key_field(field).key
        if changed != current and place < len(written.bars):
            bar = place + (not fitted.melody.has_pickup)
            new = key_name(changed, conventions)
            remarks.append(f"From bar {bar} the key is {new}; the degrees stay in {home}.")
        current = changed
    return remarks


def on_the_bars(written: WrittenTune, fitted: Fitted) -> list[str]:
    """Endings, and bars that are not full or too full."""
    remarks = []
    if written.has_endings:
        remarks.append("First and second endings stand one after the other, as they are written.")
    if fitted.odd_bars:
        bars = _listed([str(number) for number in fitted.odd_bars])
        if len(fitted.odd_bars) == 1:
            remarks.append(f"Bar {bars} is not as long as its meter; it keeps the length that is written.")
        else:
            remarks.append(f"Bars {bars} are not as long as their meter; they keep the lengths that are written.")
    if fitted.divided:
        remarks.append(_on_divided_bars(fitted.divided))
    if written.is_cut:
        remarks.append("A bar of more than 64 beats is cut into shorter ones.")
    return remarks


def _on_divided_bars(divided: Sequence[Divided]) -> str:
    by = sorted({"repeat sign" if bar.by_repeat else "double bar line" for bar in divided}, reverse=True)
    if len(divided) == 1:
        number = divided[0].number
        return f"Bars {number} and {number + 1} are one bar, divided by a {by[0]}; it is counted as two."
    bars = _listed([f"{bar.number}-{bar.number + 1}" for bar in divided])
    signs = " or ".join(f"{sign}s" for sign in by)
    return f"Bars {bars} are one bar each, divided by {signs}; each is counted as two."


def on_the_notes(signs: Sequence[Sign], written: WrittenTune) -> list[str]:
    """What of the notes and the signs at them is left out."""
    remarks = []
    if any(len(sign.notes) > 1 for sign in signs if sign.kind == "note"):
        remarks.append("Of notes that sound together the highest is the melody's.")
    if written.has_rolls:
        remarks.append("Rolls (~) are left out: a melody has no word for them.")
    if written.unknown:
        stand = (
            "stands for nothing in this file, and is"
            if len(written.unknown) == 1
            else "stand for nothing in this file, and are"
        )
        remarks.append(f"{_listed(written.unknown)} {stand} left out.")
    return remarks


def on_what_moves(fields: Iterable[Field]) -> list[str]:
    """What would move the notes where they are played: it is not followed."""
    moves = list(dict.fromkeys(move for field in fields for move in moves_of(field)))
    are = "is" if len(moves) == 1 else "are"
    return [f"{_quoted(moves)} {are} not followed: the notes stay as they are written."] if moves else []


def on_the_chords(chords: Chords) -> list[str]:
    """Quoted texts that are no chords, and chords that are left out."""
    remarks = []
    if chords.alternates:
        remarks.append(f"Alternate chords in parentheses are left out: {_cut(chords.alternates)}.")
    if chords.slips:
        is_one = len(chords.slips) == 1
        read, places = ("as a chord", "its place") if is_one else ("as chords", "their places")
        remarks.append(
            f"{_quoted(chords.slips)} cannot be read {read}; no chord stands in {places}, up to the next one."
        )
    if chords.words:
        what = "is no chord symbol and is" if len(chords.words) == 1 else "are no chord symbols and are"
        remarks.append(f"{_quoted(chords.words)} {what} left out.")
    if chords.over_pickup:
        stands, are = ("stands", "is") if len(chords.over_pickup) == 1 else ("stand", "are")
        why = "a chart has no room for chords before bar 1"
        remarks.append(f"{_cut(chords.over_pickup)} {stands} over the pickup and {are} left out: {why}.")
    if chords.stacked:
        has = "has no time of its own and is" if len(chords.stacked) == 1 else "have no time of their own and are"
        remarks.append(f"{_cut(chords.stacked)} {has} left out.")
    return remarks


def _quoted(texts: Sequence[str]) -> str:
    return _listed([f'"{text[:_LONGEST]}"' for text in texts])


def _cut(texts: Sequence[str]) -> str:
    return _listed([text[:_LONGEST] for text in texts])


def _listed(texts: Sequence[str]) -> str:
    """Words in a row, the first few of many.

    >>> _listed(["3"]), _listed(["3", "5", "8"]), _listed([str(number) for number in range(9)])
    ('3', '3, 5 and 8', '0, 1, 2, 3, 4, 5 and 3 more')
    """
    if len(texts) > _MOST_NAMED:
        return f"{', '.join(texts[:_MOST_NAMED])} and {len(texts) - _MOST_NAMED} more"
    return listed(texts)
