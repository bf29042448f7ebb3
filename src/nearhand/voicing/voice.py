"""Voicing a progression: two hands for every chord, on the path that moves least."""

from __future__ import annotations

from nearhand.theory.chord import Chord
from nearhand.theory.pitch import Pitch, pitch_at
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.voicing.close import LEFT_HAND, RIGHT_HAND, close_positions
from nearhand.voicing.motion import Motion, motion, motion_size
from nearhand.voicing.path import least_path
from nearhand.voicing.reduction import right_hand_intervals

STYLES = ("close",)
NO_VOICING = "none"


class Voicing(NamedTuple):
    """One chord under two hands, each low to high, and how the right hand came to it (None at the start)."""

    left: tuple[Pitch, ...]
    right: tuple[Pitch, ...]
    motion: Motion | None


class VoicedProgression(NamedTuple):
    """The voicings of a progression's chords in written order, rests left out; ``movement`` in semitones.

    In a loop the first chord's motion leads from the last one, and counts.
    """

    style: str
    loops: bool
    voicings: tuple[Voicing, ...]

    @property
    def movement(self) -> int:
        """Semitones moved by all voices of the right hand over the whole progression."""
        return sum(voicing.motion.size for voicing in self.voicings if voicing.motion is not None)

    @property
    def pitches(self) -> tuple[tuple[Pitch, ...], ...]:
        """All pitches of each chord, low to high."""
        return tuple(voicing.left + voicing.right for voicing in self.voicings)


def voice_progression(progression: Progression, style: str = "close", loop: bool = False) -> VoicedProgression:
    """Voice every chord so that the right hand moves as little as it can over the whole progression.

    The right hand plays the chord's tones (four at most) in close position, the left hand the bass, which takes its own
    shortest way. Raises ValueError for a style that does not exist.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| i | v6 | iv6 | V7 |"), parse_key("C minor"))
    >>> voiced = voice_progression(tune)
    >>> [" ".join(map(str, voicing.right)) for voicing in voiced.voicings], voiced.movement
    (['Eb4 G4 C5', 'D4 G4 Bb4', 'C4 F4 Ab4', 'B3 D4 F4 G4'], 11)
    """
    if style not in STYLES:
        raise ValueError(f"style must be one of {', '.join(STYLES)} (got {style!r})")
    chords = tuple(progression.chords())
    right_layers = [close_positions(_semitones(chord), RIGHT_HAND) for chord in chords]
    left_layers = [close_positions((chord.bass.semitones,), LEFT_HAND) for chord in chords]
    right_path = least_path(right_layers, motion_size, RIGHT_HAND.centre, loop)
    left_path = least_path(left_layers, motion_size, LEFT_HAND.centre, loop)
    rights = [layer[choice] for layer, choice in zip(right_layers, right_path, strict=True)]
    before: list[tuple[int, ...] | None] = [rights[-1] if loop and rights else None, *rights[:-1]]
    voicings = tuple(
        Voicing(
            (pitch_at(chord.bass, left_layer[left][0]),),
            _spelled(chord, right),
            None if old is None else motion(old, right),
        )
        for chord, left_layer, left, right, old in zip(chords, left_layers, left_path, rights, before, strict=False)
    )
    return VoicedProgression(style, loop, voicings)


def _semitones(chord: Chord) -> tuple[int, ...]:
    return tuple(chord.root.up(interval).semitones for interval in right_hand_intervals(chord.quality))


def _spelled(chord: Chord, midi_numbers: tuple[int, ...]) -> tuple[Pitch, ...]:
    names: dict[int, PitchClass] = {tone.semitones: tone for tone in reversed(chord.tones)}
    return tuple(pitch_at(names[number % 12], number) for number in midi_numbers)
