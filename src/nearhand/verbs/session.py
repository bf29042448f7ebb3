"""A session is a value: the tune on the stand, the key it is shown in, how it is voiced, and the way back."""

from __future__ import annotations

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.record import NamedTuple
from nearhand.voicing.wishes import DEFAULT_WISHES, MELODY_TOP, Wishes

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.verbs.tune import Tune


_NO_TUNE_HINT = 'write chords, for example "| Em | Bm/D | Am/C | B7 |", or open a chart'


class Lesson(NamedTuple):
    """What was taught last: lines that ``run`` answers by their number, and the step of the tour, 0 outside it.

    ``chart`` is put on the stand before a line is run where nothing stands there.
    """

    examples: tuple[str, ...] = ()
    step: int = 0
    chart: str = ""


NO_LESSON = Lesson()


class Session(NamedTuple):
    """What a player is working on. ``loop`` None means: as the repeat signs say. Sessions link back for undo.

    ``paging``: whether long answers stop at every screen. ``colours``: ``auto``, ``on`` or ``off``. The ``lesson`` is
    no work, and undo leaves it alone.

    ``way``: how melodies go to other keys, one of ``theory.melody.WAYS``; ``octaves``: how many the melody on the
    stand is taken on from there; ``lift``: how many more as long as it stays in the shown key, for ``up`` and ``down``
    go just so far.

    Pins and a given top line of the ``wishes`` belong to the tune, and sound in its own key.
    """

    tune: Tune | None = None
    shown_key: Key | None = None
    wishes: Wishes = DEFAULT_WISHES
    loop: bool | None = None
    conventions: Conventions = DEFAULT
    previous: Session | None = None
    undone: Session | None = None
    lesson: Lesson = NO_LESSON
    paging: bool = True
    colours: str = "auto"
    way: str = "nearest"
    octaves: int = 0
    lift: int = 0

    @property
    def loops(self) -> bool:
        """Whether the voicing closes to a loop."""
        if self.loop is None:
            return self.tune is not None and self.tune.progression.repeats_as_a_whole
        return self.loop

    @property
    def voicing(self) -> str:
        """The family of voicings, or ``none``."""
        return self.wishes.style

    @property
    def stand(self) -> tuple[Tune, Key]:
        """The tune on the stand and the key it is shown in.

        Raises InputError when there is none.
        """
        if self.tune is None or self.shown_key is None:
            raise InputError("there is no progression yet", wanted="chords", hint=_NO_TUNE_HINT)
        return self.tune, self.shown_key

    def on_best_path(self) -> Session:
        """The session on the best path: paths are counted anew in every key."""
        return self if self.wishes.path == 1 else self._replace(wishes=self.wishes._replace(path=1))

    def under_another_melody(self) -> Session:
        """The session before its melody changes or moves: on the best path, where the melody lies on top."""
        return self.on_best_path() if self.wishes.top == MELODY_TOP else self

    def moved_to(self, key: Key) -> Session:
        """The session with its tune shown in another key, on the best path there, its melody by the usual way."""
        return self.on_best_path()._replace(shown_key=key, lift=0)

    def read_in(self, key: Key) -> Session:
        """The session with its tune read in another key and shown there; the melody stays in its octave.

        Raises InputError when there is no tune.
        """
        return self.with_tune(self.stand[0].read_in(key))._replace(octaves=self.octaves)

    def with_tune(self, tune: Tune) -> Session:
        """The session with another tune, shown in its own key."""
        wishes = self.wishes
        if wishes.melody or wishes.pins or wishes.path > 1:
            wishes = wishes._replace(melody=(), pins=(), octaves=False, path=1)
        return self._replace(tune=tune, shown_key=tune.key, loop=None, wishes=wishes, octaves=0, lift=0)


class Outcome(NamedTuple):
    """What a verb leaves behind: the session as it is now, and the answer to show.

    ``plain`` asks for keyboard characters alone; ``leaves`` ends the shell. ``keeps``: whether the whole session
    stays, though the verb's options are asked for one answer only. ``lines`` do the same at any other time, where the
    line that was typed would not: for the journal. ``chart`` is the file that was opened or saved, ``settles`` a
    journal that may go once those lines are in another. ``as_json`` asks for a document in place of a page.
    """

    session: Session
    answer: object
    leaves: bool = False
    plain: bool = False
    keeps: bool = False
    lines: tuple[str, ...] = ()
    chart: str = ""
    settles: str = ""
    as_json: bool = False


def undo(session: Session) -> Session | None:
    """The session before the last change; None when there was none."""
    return None if session.previous is None else session.previous._replace(undone=session, lesson=session.lesson)


def redo(session: Session) -> Session | None:
    """The session that was undone last; None when there is none."""
    return None if session.undone is None else session.undone._replace(lesson=session.lesson)


def keep_tune(old: Session, new: Session) -> Session:
    """The old session, with the tune of the new one: what options ask for holds for one answer only.

    The same chords with another melody stay in the key they are shown in.
    """
    if new.tune is None or new.tune is old.tune:
        return old
    if old.tune is not None and new.tune.progression is old.tune.progression and old.tune.progression.bars:
        return old.under_another_melody()._replace(tune=new.tune, octaves=0, lift=0)
    return old.with_tune(new.tune)


def after_change(old: Session, new: Session) -> Session:
    """A changed session, linked to the one before."""
    if _work_of(new) == _work_of(old):
        return old if new.lesson == old.lesson else old._replace(lesson=new.lesson)
    return new._replace(previous=old, undone=None)


def _work_of(session: Session) -> Session:
    """A session without its links and its lesson."""
    return session._replace(previous=None, undone=None, lesson=NO_LESSON)
