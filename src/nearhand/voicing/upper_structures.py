"""The triad on top of an upper structure, named and spelled as the triad that players read: B flat over G7."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from nearhand.theory.pitch_class import PitchClass, pitch_class
from nearhand.theory.record import NamedTuple

_MAJOR_THIRD, _MINOR_THIRD, _FIFTH = 4, -3, 1
_ENHARMONIC = 12


class Triad(NamedTuple):
    """A major or minor triad: its root, and its tones from the root up."""

    root: PitchClass
    is_minor: bool
    tones: tuple[PitchClass, ...]


def triad_on_top(notes: Sequence[int], names: Mapping[int, PitchClass]) -> Triad | None:
    """The major or minor triad that some MIDI numbers form, None where they form none.

    ``names``: how the chord below spells its tones, by semitones above C. Of the triad's spellings that one is taken
    which has the fewest accidentals, each of these names that it keeps making up for one.

    >>> names = {place * 7 % 12: pitch_class(place) for place in (1, 5, 2, -1, 10, -4)}     # G B D F, and A# Ab
    >>> [str(tone) for tone in triad_on_top((70, 74, 77), names).tones]
    ['Bb', 'D', 'F']
    """
    sounds = {note % 12 for note in notes}
    found = []
    for low in sounds:
        for third in (_MAJOR_THIRD, _MINOR_THIRD):
            if sounds == {(low + place * 7) % 12 for place in (0, third, _FIFTH)}:
                for root in _spellings(low):
                    tones = tuple(pitch_class(root + place) for place in (0, third, _FIFTH))
                    kept = sum(names.get(tone.semitones) == tone for tone in tones)
                    accidentals = sum(abs(tone.alteration) for tone in tones)
                    found.append((accidentals - kept, accidentals, Triad(tones[0], third == _MINOR_THIRD, tones)))
    return min(found)[2] if found else None


def _spellings(sound: int) -> tuple[int, ...]:
    """The places on the line of fifths that sound so, with two accidentals at the most."""
    nearest = (sound * 7 + 5) % _ENHARMONIC - 5
    return (nearest - _ENHARMONIC, nearest, nearest + _ENHARMONIC)
