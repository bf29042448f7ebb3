"""The yardstick of every path: how far the same chords would move in plain root positions."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.theory.chord import Chord
from nearhand.voicing.candidates import Layer, upper_layer
from nearhand.voicing.hands import SPAN, Register
from nearhand.voicing.path import least_path
from nearhand.voicing.reduction import right_hand_intervals
from nearhand.voicing.strands import Strand
from nearhand.voicing.weights import COST, KEYBOARD

_REGISTER = Register(55, 80, 65)
"""G3 to G#5: every close chord has a root position in it."""


def root_position_movement(chords: Sequence[Chord], loop: bool = False) -> int:
    """Semitones that the right hand moves at the least if each chord stands in close root position.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> root_position_movement([parse_chord(name) for name in ("C", "F", "C")])        # up a fourth and down again
    30
    """
    layers = tuple(_root_positions(chord) for chord in chords)
    strand = Strand(layers, _REGISTER.centre, KEYBOARD, "free", loop)
    return least_path(strand.trellis)[0] // COST


def _root_positions(chord: Chord) -> Layer:
    tones = tuple(chord.root.up(place).semitones for place in right_hand_intervals(chord.quality, bass_has_root=False))
    bottom = tones[0]
    close = tuple(sorted({(tone - bottom) % 12 for tone in tones}))
    order = tuple((bottom + height) % 12 for height in close)
    return upper_layer(((order, 0),), _REGISTER, SPAN)
