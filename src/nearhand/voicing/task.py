"""What is to be voiced: a progression and what is asked of it, and the registers and weights that follow."""

from __future__ import annotations

from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.voicing.families import FAMILIES, FOUR_PART, FREE, NO_BASS, Family
from nearhand.voicing.hands import Register
from nearhand.voicing.left_hand import ON_ROOT, SINGLE_OR_NO_NOTES, bass_register
from nearhand.voicing.weights import Weights, weights_of
from nearhand.voicing.wishes import Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.voicing.on_top import Tops


class Task(NamedTuple):
    """What is to be searched: a progression in its key, the wishes, and whether the last chord leads to the first.

    ``home``: the tune's own key, in which pins and a given top line sound. ``linked``: whether both hands are searched
    as one in any case. ``tops``: the notes of the melody, where they are to lie on top.
    """

    progression: Progression
    wishes: Wishes
    loop: bool = False
    home: Key | None = None
    linked: bool = False
    tops: Tops | None = None

    @property
    def family(self) -> Family:
        """The family wished for."""
        return FAMILIES[self.wishes.style]

    @property
    def weights(self) -> Weights:
        """The weights of its style, with the changed ones."""
        return weights_of(self.wishes.style, self.wishes.weights, self.wishes.top)

    @property
    def steps(self) -> tuple[tuple[RelativeChord, RelativeChord | None], ...]:
        """Each chord, over its root where the left hand plays that, with the one that follows; None at an open end."""
        chords = self.progression.relative_chords
        if self.left == ON_ROOT:
            chords = tuple(chord if chord.bass == chord.root else chord._replace(bass=chord.root) for chord in chords)
        return tuple(zip(chords, (*chords[1:], chords[0] if self.loop else None), strict=True)) if chords else ()

    @property
    def uses_left(self) -> bool:
        """Whether the family has a place for the pattern of the left hand: one note has it nearly everywhere."""
        family, left = self.family, self.wishes.left
        if family.bass == NO_BASS or family.name == FOUR_PART:
            return False
        return family.bass == FREE or left in SINGLE_OR_NO_NOTES

    @property
    def left(self) -> str:
        """The pattern of the left hand that is played."""
        return self.wishes.left if self.uses_left else "bass"

    @property
    def shifts(self) -> tuple[int, ...]:
        """Semitones by which what sounds in the home key may be moved to this one: the nearer way first.

        Notes given in a third key came the nearer way from there, so that they may need another octave here.
        """
        own = self.progression.key.tonic.semitones
        distance = 0 if self.home is None else (own - self.home.tonic.semitones) % 12
        if self.wishes.octaves:
            return tuple(sorted((distance, distance - 12, distance - 24, distance + 12), key=abs))
        return tuple(sorted((distance, distance - 12), key=abs)) if distance else (0,)

    @property
    def register(self) -> Register:
        """The register of the upper notes."""
        return self.register_of(self.family)

    def register_of(self, family: Family) -> Register:
        """The register of a family's upper notes: its own, as far as the wishes do not change or move it."""
        own, wishes = family.register, self.wishes
        if wishes.low is not None or wishes.high is not None:
            low, high = own.low if wishes.low is None else wishes.low, own.high if wishes.high is None else wishes.high
            own = Register(low, high, (low + high) // 2)
        return self._moved(own)

    def bass_register_of(self, family: Family) -> Register:
        """The register of the bass in a family."""
        return self._moved(bass_register(family.bass, self.left))

    @property
    def register_shift(self) -> int:
        """Semitones by which registers have moved from where the wishes put them."""
        return self.shifts[0] if self.wishes.moves else 0

    def _moved(self, register: Register) -> Register:
        shift = self.register_shift
        return Register(*(note + shift for note in register)) if shift else register
