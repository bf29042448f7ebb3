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
from nearhand.voicing.wishes import NO_VOICING, Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.melody import Melody
    from nearhand.voicing.on_top import Tops


class ChordView(NamedTuple):
    """One moment of a progression in one key; chord, analysis and voicing are None where there is no chord."""

    moment: Moment
    chord: Chord | None
    analysis: Analysis | None
    voicing: Voicing | None


class View(NamedTuple):
    """A tune in one key; ``voiced`` is None when no voicing is wanted, ``melody`` when it has none."""

    key: Key
    bars: tuple[Bar, ...]
    chords: tuple[ChordView, ...]
    voiced: VoicedProgression | None
    melody: Melody | None = None


class ViewsAnswer(NamedTuple):
    """A tune in one key or several; ``introduces`` when it is new to the player, and how its key was found is told."""

    tune: Tune
    views: tuple[View, ...]
    conventions: Conventions
    advice: str = ""
    introduces: bool = True


class MelodyView(NamedTuple):
    """A melody in one key."""

    key: Key
    melody: Melody


class MelodyAnswer(NamedTuple):
    """The melody of a tune in one key or several, with the bars of chords above it, if there are any."""

    tune: Tune
    views: tuple[MelodyView, ...]
    conventions: Conventions
    advice: str = ""
    introduces: bool = True

    @property
    def bars(self) -> tuple[Bar, ...]:
        """The bars of chords, which do not depend on a key."""
        return self.tune.progression.bars


class NoteAnswer(NamedTuple):
    """Plain sentences."""

    lines: tuple[str, ...]


def view_in(progression: Progression, key: Key, wishes: Wishes, loop: bool, tops: Tops | None = None) -> View:
    """A progression, given in its own key, seen in any key: analysed, and voiced unless no style is wished for.

    ``tops``: the notes of a melody in that key, where they are to lie on top.
    Raises InputError for wishes that cannot be met.
    """
    moved = progression.in_key(key)
    is_voiced = wishes.style != NO_VOICING and bool(moved.bars)
    voiced = voice_progression(moved, wishes, loop, progression.key, tops) if is_voiced else None
    return view_of(moved, voiced)


def view_of(progression: Progression, voiced: VoicedProgression | None) -> View:
    """A progression seen in its own key: analysed, with the voicings that it has, if any."""
    key = progression.key
    analyses = iter(analyse(progression.relative_chords, key.mode))
    voicings = iter(voiced.voicings if voiced else ())
    chords = []
    for moment in progression.moments:
        relative = moment.slot.chord
        if relative is None:
            chords.append(ChordView(moment, None, None, None))
        else:
            chords.append(ChordView(moment, relative.in_key(key), next(analyses), next(voicings, None)))
    return View(key, progression.bars, tuple(chords), voiced)
