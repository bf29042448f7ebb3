"""``tones``: what every note of the melody is over its chord, and where the two clash."""

from __future__ import annotations

from nearhand.melody.against import Tone, against
from nearhand.melody.harmonies import chord_spans
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import loaded
from nearhand.verbs.melodies import melody_in
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

NO_MELODY_HINT = "put one over the chords: melody E4 F#4 G4 (or --melody); a chart file holds one beside its chords"
_NO_CHORDS_HINT = "write chords, for example | C | F G7 | C |, and put the melody over them: melody E4 F#4 G4"


class TonesAnswer(NamedTuple):
    """What the notes of a tune's melody are over its chords in one key.

    ``picked`` is the number of the one chord that is asked about, from 1, or None; ``introduces`` when the tune is new
    to the player.
    """

    tune: Tune
    key: Key
    tones: tuple[Tone, ...]
    picked: int | None
    conventions: Conventions
    introduces: bool = True


def tones(session: Session, arguments: Arguments) -> Outcome:
    """Tell what every note of the melody is over the chords in the shown key; a number (from 1) picks one chord.

    Raises InputError; also where the tune has no melody, or no chords.
    """
    words, picked = _picked(session, arguments.words)
    session = loaded(session, arguments._replace(words=words))
    tune, key = session.stand
    _refuse_without(tune, arguments.line)
    melody, progression = melody_in(session, key), tune.progression.in_key(key)
    assert melody is not None
    found, number = against(melody, progression), None
    if picked:
        number = picked_place(picked, len(progression.relative_chords), arguments.line) + 1
        found = over_chord(found, progression, number)
    return Outcome(session, TonesAnswer(tune, key, found, number, session.conventions, bool(words)))


def over_chord(found: tuple[Tone, ...], progression: Progression, number: int) -> tuple[Tone, ...]:
    """Those that sound while the chord of a number lasts, struck there or held on."""
    onset, end = chord_spans(progression)[number - 1]
    return tuple(tone for tone in found if tone.onset < end and tone.onset + tone.beats > onset)


def _picked(session: Session, words: tuple[str, ...]) -> tuple[tuple[str, ...], str]:
    """The words that name a tune, and the number behind them (empty when all chords are meant)."""
    if ends_in_a_number(words) and (len(words) > 1 or session.tune is not None):
        return words[:-1], words[-1]
    return words, ""


def _refuse_without(tune: Tune, line: str) -> None:
    """Raise InputError where a tune lacks its melody or its chords."""
    if not tune.progression.bars:
        raise InputError("there are no chords here, only a melody", line, wanted="chords", hint=_NO_CHORDS_HINT)
    if tune.melody is None:
        what = "there is no melody to hold against the chords"
        raise InputError(what, line, len(line), wanted="a melody", hint=NO_MELODY_HINT)
