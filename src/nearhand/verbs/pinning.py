"""Pinned chords, read from words; pins and a given top line are kept as they sound in the tune's own key."""

from __future__ import annotations

from nearhand.notation.errors import InputError
from nearhand.theory.pitch import Pitch
from nearhand.verbs.pitches import read_number, read_pitches
from nearhand.verbs.session import Session
from nearhand.voicing.wishes import Wishes

Pins = tuple[tuple[int, tuple[int, ...]], ...]
"""Pairs of a chord's place, from 0, and its notes as MIDI numbers in the tune's own key."""


def with_pins(session: Session, pins: Pins) -> Wishes:
    """The wishes with other pins, given in the shown key."""
    return session.wishes._replace(pins=pins, octaves=session.wishes.octaves or shift_home(session) != 0)


def joined_pins(old: Pins, new: Pins) -> Pins:
    """Pins of which new ones take the place of older ones of the same chords."""
    places = {place for place, _ in new}
    return (*(pin for pin in old if pin[0] not in places), *new)


def shift_home(session: Session) -> int:
    """Semitones from the shown key to the tune's own, the nearer way back: notes are kept as they sound at home.

    From a tritone off it is down, for the way there is up. Raises InputError where there is no tune.
    """
    tune, key = session.stand
    distance = (tune.key.tonic.semitones - key.tonic.semitones) % 12
    return distance - 12 if distance >= 6 else distance


def read_pins(text: str, session: Session) -> Wishes:
    """Read pins: a chord's number and its notes, several with semicolons between. Raises InputError."""
    pins, start = [], 0
    for part in text.split(";"):
        try:
            number, notes = _read_pin(part)
        except InputError as error:
            raise error.within(text, start) from None
        pins.append((number - 1, _sounding(notes, session)))
        start += len(part) + 1
    return with_pins(session, session.wishes.pins + tuple(pins))


def read_first(text: str, session: Session) -> Wishes:
    """Read the notes of the first chord. Raises InputError."""
    return _pinned(session, 0, read_pitches(text))


def read_last(text: str, session: Session) -> Wishes:
    """Read the notes of the last chord. Raises InputError."""
    tune, _ = session.stand
    return _pinned(session, max(0, len(tune.progression.relative_chords) - 1), read_pitches(text))


def _read_pin(text: str) -> tuple[int, tuple[Pitch, ...]]:
    stripped = text.lstrip()
    number, _, notes = stripped.partition(" ")
    hint = "write a chord's number and its notes, for example 2 D4 G4 Bb4"
    place = read_number(number, "a chord's number", hint)
    if place < 1:
        raise InputError("chords are numbered from 1", text, wanted="a chord's number", hint=hint)
    try:
        return place, read_pitches(notes)
    except InputError as error:
        raise error.within(text, len(text) - len(notes)) from None


def _pinned(session: Session, place: int, notes: tuple[Pitch, ...]) -> Wishes:
    return with_pins(session, (*session.wishes.pins, (place, _sounding(notes, session))))


def _sounding(notes: tuple[Pitch, ...], session: Session) -> tuple[int, ...]:
    """MIDI numbers low to high, as they sound in the tune's own key."""
    shift = shift_home(session)
    return tuple(sorted(note.midi + shift for note in notes))
