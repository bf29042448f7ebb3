"""What verbs answer: values that say everything and look like nothing; ``render`` gives them a shape."""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis, analyse
from nearhand.notation.conventions import Conventions
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.progression import Bar, Moment, Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.tune import Tune
from nearhand.voicing.voice import VoicedProgression, Voicing, voice_progression

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.harmony.along import Along
    from nearhand.harmony.borrowing import LendingMode
    from nearhand.harmony.key_finding import KeyFit
    from nearhand.harmony.modulation import Region
    from nearhand.harmony.substitutes import Substitute
    from nearhand.notation.errors import InputError
    from nearhand.notation.melody_notes import MelodyNote
    from nearhand.verbs.verb import Verb


class ChordView(NamedTuple):
    """One moment of a progression in one key; chord, analysis and voicing are None where there is no chord."""

    moment: Moment
    chord: Chord | None
    analysis: Analysis | None
    voicing: Voicing | None


class View(NamedTuple):
    """A progression in one key; ``voiced`` is None when no voicing is wanted."""

    key: Key
    bars: tuple[Bar, ...]
    chords: tuple[ChordView, ...]
    voiced: VoicedProgression | None


class ViewsAnswer(NamedTuple):
    """A tune in one key or several; ``introduces`` when it is new to the player, and how its key was found is told."""

    tune: Tune
    views: tuple[View, ...]
    conventions: Conventions
    advice: str = ""
    introduces: bool = True


class KeysAnswer(NamedTuple):
    """The keys that chords, a melody or both may be in, likeliest first, and the regions of the chords."""

    fits: tuple[KeyFit, ...]
    chords: tuple[Chord, ...]
    melody: tuple[MelodyNote, ...]
    regions: tuple[Region, ...]
    conventions: Conventions


class ExplainAnswer(NamedTuple):
    """All chords of a tune in one key; ``picked`` is the place (from 0) of the one that is asked about, or None.

    ``along`` is what happens from chord to chord, where the whole tune is explained; ``introduces`` when the tune is
    new to the player, and how its key was found is told.
    """

    tune: Tune
    key: Key
    chords: tuple[ChordView, ...]
    picked: int | None
    along: Along | None
    conventions: Conventions
    introduces: bool = True

    @property
    def numbered(self) -> tuple[tuple[int, ChordView], ...]:
        """The chords that are explained, with their numbers in the tune from 1."""
        rows = tuple(enumerate(self.chords, start=1))
        return rows if self.picked is None else (rows[self.picked],)


class CadencesAnswer(NamedTuple):
    """What happens along a tune in one key; ``introduces`` when the tune is new to the player."""

    tune: Tune
    key: Key
    along: Along
    conventions: Conventions
    introduces: bool = True


class BorrowAnswer(NamedTuple):
    """What the other modes on a key's tonic lend it, likeliest mode first."""

    key: Key
    modes: tuple[LendingMode, ...]
    conventions: Conventions


class Offer(NamedTuple):
    """A substitute with the right hand's least motion, in semitones, through its neighbours.

    ``easier``: for each of its chords an enharmonic name with fewer double accidentals, or None.
    """

    substitute: Substitute
    motion: int
    easier: tuple[Chord | None, ...]


class InsteadAnswer(NamedTuple):
    """Substitutes for chord ``number`` of a tune, nearest first; ``motion`` is that of the chord itself."""

    tune: Tune
    key: Key
    number: int
    original: Analysis
    motion: int
    offers: tuple[Offer, ...]
    conventions: Conventions


class ChartRow(NamedTuple):
    """One chart file of a folder; ``error`` says why it cannot be read."""

    path: str
    tune: Tune | None
    error: InputError | None


class ListAnswer(NamedTuple):
    """The charts of a folder."""

    folder: str
    rows: tuple[ChartRow, ...]
    conventions: Conventions


class NoteAnswer(NamedTuple):
    """Plain sentences."""

    lines: tuple[str, ...]


class HelpAnswer(NamedTuple):
    """Help on one verb, or on all."""

    verb: Verb | None
    in_shell: bool


def view_in(progression: Progression, key: Key, voicing: str, loop: bool) -> View:
    """A progression seen in one key: analysed, and voiced unless ``voicing`` is ``none``."""
    moved = progression.in_key(key)
    analyses = iter(analyse(moved.relative_chords, key.mode))
    voiced = None if voicing == "none" else voice_progression(moved, voicing, loop)
    voicings = iter(voiced.voicings if voiced else ())
    chords = []
    for moment in moved.moments:
        relative = moment.slot.chord
        if relative is None:
            chords.append(ChordView(moment, None, None, None))
        else:
            chords.append(ChordView(moment, relative.in_key(key), next(analyses), next(voicings, None)))
    return View(key, moved.bars, tuple(chords), voiced)
