"""Voicing a progression: two hands for every chord, on the path that costs least."""

from __future__ import annotations

from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.pitch import Pitch, pitch_at
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.families import FAMILIES, UPPER_STRUCTURE
from nearhand.voicing.motion import Motion, motion
from nearhand.voicing.search import Search
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.weights import KEYBOARD
from nearhand.voicing.wishes import DEFAULT_WISHES, Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.on_top import Tops
    from nearhand.voicing.weights import Weights


class Voicing(NamedTuple):
    """One chord under two hands, each low to high, and how it was reached from the chord before.

    ``upper``: the upper voices, which in close position are the right hand's; ``motion`` is theirs, None at the start.
    ``style``: the family it is taken from.
    """

    left: tuple[Pitch, ...]
    right: tuple[Pitch, ...]
    upper: tuple[Pitch, ...]
    motion: Motion | None
    style: str
    candidate: Candidate

    @property
    def pitches(self) -> tuple[Pitch, ...]:
        """All pitches, low to high."""
        return self.left + self.right


class VoicedProgression(NamedTuple):
    """The voicings of a progression's chords in written order, rests left out.

    In a loop the first chord's motion leads from the last one, and counts. ``search`` is what the path was found in.
    """

    style: str
    loops: bool
    voicings: tuple[Voicing, ...]
    search: Search

    @property
    def movement(self) -> int:
        """Semitones moved by all upper voices over the whole progression."""
        return sum(voicing.motion.size for voicing in self.voicings if voicing.motion is not None)

    @property
    def pitches(self) -> tuple[tuple[Pitch, ...], ...]:
        """All pitches of each chord, low to high."""
        return tuple(voicing.pitches for voicing in self.voicings)

    @property
    def is_plain(self) -> bool:
        """Whether nothing but a style is wished for, movement alone counts, and every chord has that style."""
        task = self.search.task
        is_wished = task.wishes == Wishes(self.style)
        return is_wished and task.weights == KEYBOARD and set(self.search.styles) <= {self.style}

    @property
    def costs(self) -> Weights:
        """What the path costs, by name: amounts times weights, over the whole progression."""
        from nearhand.voicing.account import costs_of

        return costs_of(self.search, [voicing.candidate for voicing in self.voicings])


def voice_progression(
    progression: Progression,
    wishes: Wishes | str = DEFAULT_WISHES,
    loop: bool = False,
    home: Key | None = None,
    tops: Tops | None = None,
) -> VoicedProgression:
    """Voice every chord so that the upper voices move as little as they can over the whole progression.

    ``wishes`` may be the name of a style alone. ``home``: the tune's own key, in which pins and a given top line sound.
    ``tops``: the notes of a melody in the progression's key, which are to lie on top.
    In close position the right hand plays the chord's tones (four at most), the left hand the bass, which takes its own
    shortest way. Raises ValueError for a style that does not exist, InputError for wishes that cannot be met.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| i | v6 | iv6 | V7 |"), parse_key("C minor"))
    >>> voiced = voice_progression(tune)
    >>> [" ".join(map(str, voicing.right)) for voicing in voiced.voicings], voiced.movement
    (['Eb4 G4 C5', 'D4 G4 Bb4', 'C4 F4 Ab4', 'B3 D4 F4 G4'], 11)
    """
    if isinstance(wishes, str):
        wishes = Wishes(wishes)
    search = search_for(Task(progression, wishes, loop, home, tops=tops))
    if wishes.path > 1:
        from nearhand.voicing.others import numbered_path

        return voiced_path(search, numbered_path(search, wishes.path))
    return voiced_path(search, search.path())


def voiced_path(search: Search, path: tuple[Candidate, ...]) -> VoicedProgression:
    """The voicings of a path through a search, spelled, each with its motion."""
    progression, wishes, loop = search.task.progression, search.task.wishes, search.task.loop
    before = [path[-1] if loop else None, *path[:-1]] if path else []
    voicings = tuple(
        _voicing(relative, progression.key, taken, old, family)
        for relative, taken, old, family in zip(progression.relative_chords, path, before, search.styles, strict=True)
    )
    return VoicedProgression(wishes.style, loop, voicings, search)


def _voicing(relative: RelativeChord, key: Key, taken: Candidate, old: Candidate | None, style: str) -> Voicing:
    names, bass = _names(relative, key, style), relative.in_key(key).bass
    left = _spelled(taken.left, {**names, bass.semitones: bass})
    if style == UPPER_STRUCTURE:
        from nearhand.voicing.upper_structures import triad_on_top

        triad = triad_on_top(taken.right, names)
        names = names if triad is None else {**names, **{tone.semitones: tone for tone in triad.tones}}
    right = _spelled(taken.right, names)
    placed = {pitch.midi: pitch for pitch in (*left, *right)}
    upper = tuple(placed[number] for number in taken.upper)
    return Voicing(left, right, upper, None if old is None else motion(old.upper, taken.upper), style, taken)


def _names(relative: RelativeChord, key: Key, style: str) -> dict[int, PitchClass]:
    """How each tone of a voicing is spelled, by semitones above C: as the chord has it, else as the key adds it."""
    chord = relative.in_key(key)
    tones = [chord.root, chord.bass, *reversed(chord.tones)]
    if FAMILIES[style].members != "plain":
        from nearhand.voicing.added_tones import ADDED

        tones = [chord.root.up(tone) for tone in ADDED] + tones
    return {tone.semitones: tone for tone in tones}


def _spelled(midi_numbers: tuple[int, ...], names: dict[int, PitchClass]) -> tuple[Pitch, ...]:
    return tuple(pitch_at(names[number % 12], number) for number in midi_numbers)
