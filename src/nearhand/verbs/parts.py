"""``parts``: what the instruments of a band read, and where a guitar's capo goes."""

from __future__ import annotations

from nearhand.harmony.moving import best_spelling
from nearhand.melody.capo import Capo, capos
from nearhand.melody.instruments import INSTRUMENTS, Instrument
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple
from nearhand.verbs.choices import hint_of
from nearhand.verbs.loading import loaded
from nearhand.verbs.session import Outcome, Session
from nearhand.verbs.tune import Tune
from nearhand.verbs.verb import Arguments

USUAL = ("trumpet", "alto sax", "horn", "guitar", "bass")
"""One of each kind: in B flat, in E flat, in F, with frets, an octave up."""


class Part(NamedTuple):
    """What one instrument reads: its chords in its written key; with frets, the capos that help, best first."""

    instrument: Instrument
    written: Progression
    capos: tuple[Capo, ...]


class PartsAnswer(NamedTuple):
    """A tune in the key it sounds in, and the parts."""

    tune: Tune
    key: Key
    parts: tuple[Part, ...]
    conventions: Conventions
    introduces: bool = True


def parts(session: Session, arguments: Arguments) -> Outcome:
    """Write the tune, sounding in the shown key, for the instruments of ``--for``.

    Raises InputError.
    """
    is_new = bool(arguments.words)
    session = loaded(session, arguments)
    tune, key = session.stand
    text = arguments.option("for")
    try:
        instruments = tuple(INSTRUMENTS[name] for name in USUAL) if text is None else read_instruments(text)
    except InputError as error:
        raise arguments.placed(error, "for") from None
    sounding = tune.progression.in_key(key)
    found = tuple(part_of(sounding, instrument) for instrument in instruments)
    return Outcome(session, PartsAnswer(tune, key, found, session.conventions, is_new))


def part_of(sounding: Progression, instrument: Instrument) -> Part:
    """The part of an instrument in music that sounds in its key."""
    key = sounding.key
    written = key if not instrument.fifths else best_spelling(sounding, instrument.written(key), come_from=key)
    return Part(instrument, sounding.in_key(written), capos(sounding) if instrument.has_frets else ())


def read_instruments(text: str) -> tuple[Instrument, ...]:
    """Read names of instruments with commas between. Raises InputError.

    >>> [instrument.name for instrument in read_instruments("alto sax, Guitar")]
    ['alto sax', 'guitar']
    """
    by_name = {name.lower(): instrument for name, instrument in INSTRUMENTS.items()}
    found, start = [], 0
    for part in text.split(","):
        word = part.strip().lower()
        if word not in by_name:
            at = start + len(part) - len(part.lstrip())
            what = f"{part.strip()[:30]!r} is no instrument here" if word else "an instrument is missing"
            hint = hint_of(word, tuple(INSTRUMENTS))
            raise InputError(what, text, at, at + len(part.strip()), wanted="an instrument", hint=hint)
        found.append(by_name[word])
        start += len(part) + 1
    return tuple(found)
