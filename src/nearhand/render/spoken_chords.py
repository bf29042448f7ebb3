"""What chords are and do, for ears: explanations, cadences, keys, borrowed chords and substitutes."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.along import along_in_words, cadence_in_words, turns_in_words
from nearhand.harmony.borrowing import LentChord
from nearhand.harmony.key_profiles import PROFILES
from nearhand.harmony.substitutes import what_changes
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.notation.numeral_writing import write_numeral
from nearhand.render.borrowing_page import applied_numeral, use_in_words
from nearhand.render.explain_page import sentences_on
from nearhand.render.keys_page import melody_in_words, reasons_in
from nearhand.render.keys_page import turns_in_words as turns_of_key
from nearhand.render.spoken import chord_in_words, numeral_in_words
from nearhand.render.spoken_hands import named, opening
from nearhand.render.substitutes_page import distance
from nearhand.theory.key import Key
from nearhand.verbs.borrow import BorrowAnswer
from nearhand.verbs.cadences import CadencesAnswer
from nearhand.verbs.explain import ExplainAnswer
from nearhand.verbs.instead import InsteadAnswer
from nearhand.verbs.keys import KeysAnswer


def explained(answer: ExplainAnswer) -> Iterator[str]:
    """All chords, or the one that was asked about, each with its sentences; then what happens along them."""
    conventions = answer.conventions
    yield from opening(answer.tune, conventions, answer.introduces)
    yield f"In {key_name(answer.key, conventions)}."
    for number, view in answer.numbered:
        yield _capital(named(number, view, conventions))
        yield from sentences_on(answer, view)
    if answer.along is not None:
        events = along_in_words(answer.along, answer.key, conventions)
        yield from ("Along the way:", *events) if events else ()
    yield from answer.tune.remarks if answer.introduces else ()


def cadences(answer: CadencesAnswer) -> Iterator[str]:
    """Each phrase with its cadences, then what turns and what crosses."""
    found, conventions = answer.along, answer.conventions
    yield from opening(answer.tune, conventions, answer.introduces)
    yield f"In {key_name(answer.key, conventions)}."
    for phrase in found.phrases:
        bars = f"Bars {phrase.first_bar} to {phrase.last_bar}"
        yield f"{bars if phrase.last_bar > phrase.first_bar else f'Bar {phrase.first_bar}'}:"
        inside = [cadence for cadence in found.cadences if phrase.first_bar <= cadence.bar <= phrase.last_bar]
        yield from [_capital(cadence_in_words(cadence)) for cadence in inside] or ["No cadence."]
    events = turns_in_words(found, answer.key, conventions)
    yield from ("Along the way:", *events) if events else ()


def keys(answer: KeysAnswer) -> Iterator[str]:
    """What the melody eliminates, and the likeliest keys, a reason a line; then where the key turns."""
    conventions = answer.conventions
    turns = turns_of_key(answer.regions, conventions)
    several = len(answer.regions) > 1
    yield from turns if several else ()
    heard = melody_in_words(answer)
    yield from ("The melody:", *heard) if heard and answer.chords else heard
    yield from ("Taken as one key throughout:",) if several else ()
    for fit in answer.fits:
        yield f"{key_name(fit.key, conventions)}: {fit.percent} percent."
        for reason in reasons_in(answer, fit.key):
            yield f"{_capital(reason)}."
    yield from () if several else turns
    yield from (f"The profile is that of {PROFILES[answer.profile].source}.",) if heard else ()


def borrowed(answer: BorrowAnswer) -> Iterator[str]:
    """What a key may borrow, mode by mode: uses, then a chord a line."""
    key, conventions = answer.key, answer.conventions
    name, tonic = key_name(key, conventions), note_name(key.tonic, conventions)
    yield f"Chords that {name} may borrow from the other modes on {tonic}, likeliest first."
    for mode in answer.modes:
        yield ""
        yield f"{_capital(mode.name)}: {' '.join(note_name(key.tonic.up(place), conventions) for place in mode.scale)}."
        for use in mode.uses:
            yield use_in_words(use, key, conventions)
        for lent in (*mode.triads, *mode.sevenths):
            yield from _lent(lent, key, name, conventions)


def _lent(lent: LentChord, key: Key, name: str, conventions: Conventions) -> Iterator[str]:
    def notes(places: tuple[int, ...]) -> str:
        return " ".join(note_name(key.tonic.up(place), conventions) for place in places)

    numeral = numeral_in_words(write_numeral(lent.chord, key.mode, conventions))
    yield f"Chord {chord_in_words(lent.chord.in_key(key), conventions)}, {numeral}: {notes(lent.chord.places)}."
    yield f"{name} has no {notes(lent.foreign).replace(' ', ' and no ')}."
    if lent.shared_with:
        yield f"Also in {', '.join(lent.shared_with)}."
    if applied := applied_numeral(lent, key, conventions):
        yield f"Heard first as {numeral_in_words(applied)}."


def substitutes(answer: InsteadAnswer) -> Iterator[str]:
    """The chord itself, then each substitute: its kind, its tones and motion, what changes."""
    conventions, original = answer.conventions, answer.original
    own = chord_in_words(original.chord.in_key(answer.key), conventions)
    yield f"In {key_name(answer.key, conventions)}."
    yield f"Chord {answer.number}: {own}, {numeral_in_words(original.numeral(conventions))}."
    yield f"Semitones of motion to and from its neighbours: {answer.motion}."
    if not answer.offers:
        yield "Nothing here stands in for it."
        return
    yield "Instead, in root position unless a bass is named: fewest new tones first, then least motion."
    for number, offer in enumerate(answer.offers, start=1):
        substitute = offer.substitute
        chords = "; then ".join(chord_in_words(chord.in_key(answer.key), conventions) for chord in substitute.chords)
        numerals = " ".join(numeral_in_words(analysis.numeral(conventions)) for analysis in substitute.analyses)
        yield f"Choice {number}: {chords}; {numerals}; {substitute.kind.words}."
        easier = "; then ".join(chord_in_words(chord, conventions) for chord in offer.easier if chord is not None)
        if easier:
            yield f"It sounds as {easier}, and is often written so."
        yield distance(offer, answer)
        yield what_changes(substitute, original, conventions)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
