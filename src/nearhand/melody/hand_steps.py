"""The steps of a melody as the hand takes them: from one note to the next, on black keys or white."""

from __future__ import annotations

from itertools import pairwise

from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.pitch_class import BLACK_KEYS, PitchClass
from nearhand.theory.record import NamedTuple


class HandStep(NamedTuple):
    """A step between two notes next to one another, either way: in fifths above the tonic, and which are black."""

    places: tuple[int, int]
    black: tuple[bool, bool]

    def notes(self, key: Key) -> tuple[PitchClass, PitchClass]:
        """The two notes in a key."""
        first, second = self.places
        return key.tonic.up(first), key.tonic.up(second)


def places_of(melody: Melody | None) -> tuple[int, ...]:
    """The notes of a melody as they are played, grace notes included, in fifths above the tonic."""
    notes = () if melody is None else melody.notes
    return tuple(
        each.fifths
        for note in notes
        if note.interval is not None and not note.is_held
        for each in (*note.graces, note.interval)
    )


def hand_steps(melody: Melody | None, key: Key) -> tuple[HandStep, ...]:
    """The steps of a melody in a key, each once: up or down, in any octave and over rests is one step.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> found = hand_steps(parse_melody("C: 1 3 3 4 3"), parse_key("D"))
    >>> [(" ".join(map(str, step.notes(parse_key("D")))), step.black) for step in found]
    [('D F#', (False, True)), ('F# G', (True, False))]
    """
    places = places_of(melody)
    found: dict[frozenset[int], HandStep] = {}
    for pair in pairwise(places):
        if pair[0] != pair[1]:
            first, second = (key.tonic.up(place).semitones in BLACK_KEYS for place in pair)
            found.setdefault(frozenset(pair), HandStep(pair, (first, second)))
    return tuple(found.values())
