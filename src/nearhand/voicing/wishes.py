"""What a player asks of the voicings: a family, hands, a register, a top line, pinned chords, weights."""

from __future__ import annotations

from nearhand.theory.record import NamedTuple
from nearhand.voicing.hands import SPAN

FREE_TOP, FALLING, RISING, STILL, MELODY_TOP = "free", "falling", "rising", "still", "melody"
TOP_LINES = (FREE_TOP, FALLING, RISING, STILL, MELODY_TOP)
NO_VOICING = "none"
STYLES = (
    "close", "open", "drop2", "drop3", "drop2and4", "any", "spread", "shell", "rootless", "guide-tones", "two-hand",
    "quartal", "upper-structure", "four-part",
)  # fmt: skip
"""The families of voicings, which ``families.FAMILIES`` describes, by name."""
LEFT_PATTERNS = ("bass", "root", "octave", "fifth", "tenth", "none")
"""What the left hand plays below, described in ``left_hand.PATTERNS``."""
WISH_NAMES = ("left", "span", "register", "top", "pin", "first", "last", "weights", "path")
"""Options by which a player asks for more than a style."""


class Wishes(NamedTuple):
    """What is asked of the voicings of one progression.

    ``style``: a family's name, or ``none``. ``left``: a pattern of the left hand. ``span``: semitones a hand reaches.
    ``low`` and ``high``: the register of the upper notes as MIDI numbers, None for the family's own. ``moves``:
    whether registers move with the key, so that its positions are those of the tune's own key. ``top``: one of
    TOP_LINES; ``melody`` is the tune's melody. ``melody``: a given top line, the top note of each chord as MIDI
    numbers, None where it is free; empty for none. ``pins``: pairs of a chord's place (from 0) and its notes as MIDI
    numbers, low to high: all of them, or the upper ones, or those of the right hand; both as they sound in the tune's
    own key. ``octaves``: whether these notes may move by octaves, as they must where they were given in another key.
    ``weights``: pairs of a cost's name and its weight, in place of the family's. ``path``: 1 for the best path, 2 for
    the next best ...
    """

    style: str = "close"
    left: str = "bass"
    span: int = SPAN
    low: int | None = None
    high: int | None = None
    moves: bool = False
    top: str = FREE_TOP
    melody: tuple[int | None, ...] = ()
    pins: tuple[tuple[int, tuple[int, ...]], ...] = ()
    octaves: bool = False
    weights: tuple[tuple[str, int], ...] = ()
    path: int = 1


DEFAULT_WISHES = Wishes()
