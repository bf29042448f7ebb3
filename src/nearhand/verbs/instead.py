"""``instead``: what else fits in place of one chord of the tune."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.analysis import Analysis, analyse
from nearhand.harmony.substitutes import Substitute, easier_name, substitutes
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.theory.record import NamedTuple
from nearhand.verbs.loading import loaded_with_chords
from nearhand.verbs.picking import ends_in_a_number, picked_place
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments
from nearhand.voicing.voice import voice_progression


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


def instead(session: Session, arguments: Arguments) -> Outcome:
    """Offer substitutes for the chord of a number in the shown key, nearest first.

    Nearness is the number of new tones, then the right hand's motion from the chord before and to the chord after;
    of equally near ones the order of the kinds decides. Raises InputError, also when no number is given.
    """
    words, line = arguments.words, arguments.line
    if not words:
        _ = session.stand  # refuses when there is no tune
    if not ends_in_a_number(words):
        hint = "write for example  instead 2"
        raise InputError("instead needs a chord's number", line, len(line), wanted="a chord's number", hint=hint)
    session = loaded_with_chords(session, arguments._replace(words=words[:-1]))
    tune, key = session.stand
    chords = tune.progression.relative_chords
    place = picked_place(words[-1], len(chords), line)
    original = analyse(chords, key.mode)[place]
    motion = least_motion(_window(chords, place, (chords[place],)), key)
    nearest = offers_for(chords, place, key)
    return Outcome(session, InsteadAnswer(tune, key, place + 1, original, motion, nearest, session.conventions))


def offers_for(chords: Sequence[RelativeChord], place: int, key: Key) -> tuple[Offer, ...]:
    """Substitutes for the chord at a place (from 0), nearest first: fewest new tones, then least motion.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> offers_for([parse_numeral(text, key.mode) for text in ("V7", "I")], 0, key)[0].motion
    3
    """
    offers = [_offer(found, chords, place, key) for found in substitutes(chords, place, key.mode)]
    return tuple(sorted(offers, key=lambda offer: (len(offer.substitute.new), offer.motion)))


def least_motion(chords: Sequence[RelativeChord], key: Key) -> int:
    """Semitones that the right hand moves, at the least, to play chords in a row in close position.

    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> least_motion([parse_numeral(text, key.mode) for text in ("I", "vi", "IV")], key)       # C-E-G, C-E-A, C-F-A
    3
    """
    return voice_progression(Progression(key, tuple(Bar((Slot(chord, 4),)) for chord in chords))).movement


def _offer(substitute: Substitute, chords: Sequence[RelativeChord], place: int, key: Key) -> Offer:
    stays = (chords[place],) if substitute.comes_before else ()
    motion = least_motion(_window(chords, place, (*substitute.chords, *stays)), key)
    return Offer(substitute, motion, tuple(easier_name(chord.in_key(key)) for chord in substitute.chords))


def _window(
    chords: Sequence[RelativeChord], place: int, middle: tuple[RelativeChord, ...]
) -> tuple[RelativeChord, ...]:
    """Chords between the neighbours of a place; the first and the last chord of a tune have but one."""
    return (*chords[max(place - 1, 0) : place], *middle, *chords[place + 1 : place + 2])
