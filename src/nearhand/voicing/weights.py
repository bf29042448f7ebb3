"""What a path costs, by name, and how much each cost weighs in each style: one table."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple


class Weights(NamedTuple):
    """Weights, or amounts, of the named costs."""

    movement: int = 0
    bass: int = 0
    leap: int = 0
    shift: int = 0
    common: int = 0
    parallels: int = 0
    hidden: int = 0
    tendency: int = 0
    melody: int = 0
    doubling: int = 0
    range: int = 0
    spacing: int = 0
    overlap: int = 0
    crossing: int = 0
    top: int = 0


COSTS = {
    "movement": "semitones of the upper voices, matched so that the sum is least",
    "bass": "semitones of the bass",
    "leap": "semitones of the top voice beyond a whole tone",
    "shift": "semitones that the middle of the upper notes moves",
    "common": "common tones that are not held",
    "parallels": "parallel fifths, octaves and unisons, also by contrary motion",
    "hidden": "hidden fifths and octaves between the outer voices",
    "tendency": "tendency tones that do not go where they pull",
    "melody": "augmented steps and leaps within a voice",
    "doubling": "steps away from the textbook's doubling",
    "range": "semitones outside the comfortable ranges of four voices",
    "spacing": "gaps of more than an octave between upper voices",
    "overlap": "voices that pass a neighbour's last note",
    "crossing": "crossed voices; what is searched has none, so that it is always 0",
}
"""The costs a player may weigh, and what each counts; the price of a top line that stays still, ``top``, joins them."""
NAMES = tuple(COSTS)
BETWEEN_HANDS = ("parallels", "hidden", "tendency", "melody", "doubling", "range", "spacing", "overlap")
"""Costs that look at both hands at once."""
COST, BASS = 1 << 48, 1 << 24
"""Weight of one unit of cost, and of a semitone of the bass that decides between equal costs, against a semitone of
drift from the centre of the register, which decides last."""
MOST_WEIGHT = 100000
STILL_TOP = 1000

KEYBOARD = Weights(movement=1)
WEIGHTS = {
    "four-part": Weights(
        movement=1,
        bass=1,
        leap=1,
        parallels=10000,
        hidden=1000,
        tendency=2000,
        melody=2000,
        doubling=10,
        range=2,
        spacing=1000,
        overlap=500,
        crossing=1000,
    ),
}
"""Style to weights, where they are not those of the keyboard: movement alone."""


def weights_of(style: str, changed: tuple[tuple[str, int], ...], top: str = "free") -> Weights:
    """A style's weights with those a player changed.

    >>> weights_of("close", (("leap", 2),)).leap
    2
    """
    own = WEIGHTS.get(style, KEYBOARD)
    if top == "still":
        own = own._replace(top=STILL_TOP)
    return own._replace(**dict(changed)) if changed else own
