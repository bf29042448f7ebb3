"""Elimination of key signatures in words: which sharps and flats sound in the order of the circle, and which do not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence, Set

from nearhand.harmony.melody_evidence import in_earnest, weighed
from nearhand.harmony.signatures import SignatureLeft, accidentals_in_words, signatures_left, tell_nothing
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.counting import listed
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR
from nearhand.theory.pitch_class import PitchClass, pitch_class

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_FIRST_SHARP, _FIRST_FLAT = 6, -2
_FLATTEST, _SHARPEST = min(MAJOR.degrees), max(MAJOR.degrees)
_MOST_LISTED, _MOST = 3, 7


def elimination_in_words(
    melody: Sequence[PitchClass],
    lengths: Sequence[Beats] | None = None,
    conventions: Conventions = DEFAULT,
    key: Key | None = None,
) -> str:
    """What the notes of a melody say of its key signature, in a sentence or two.

    ``key``: that which they are known to be in, as ``signatures_left`` takes it. Raises ValueError without notes, or
    with a length that is not above 0.

    >>> def told(*places):
    ...     return elimination_in_words([pitch_class(place) for place in places])
    >>> told(-2, 0, 2, -3, -1, 1, 3)   # B flat, C, D, E flat, F, G, A
    'B♭ and E♭, but no A♭: two flats.'
    >>> told(3, 5, 0, 2, 4, -1, 8)   # A, B, C, D, E, F, G sharp
    'No B♭ and no F♯: no sharps or flats. G♯ is the raised seventh of A minor.'
    >>> told(1, 3, 5, 2, 4)   # G, A, B, D, E
    'No B♭ and no G♯; F and C are missing: no sharps or flats, one sharp or two sharps.'
    """
    left = signatures_left(melody, lengths, key)
    if tell_nothing(left):
        return "So many signatures hold the notes alike, none of them all: nothing can be told."
    if len(left) > 1 and left[0].outside:
        return _several(left, conventions)
    words = _signatures(left)
    evidence = _evidence(left[0].signature, left[-1].signature, weighed(melody, lengths), conventions)
    first = f"{evidence}: {words}" if evidence else words
    earnest = in_earnest([note.fifths for note in melody])
    return f"{first[0].upper()}{first[1:]}.{_outside(left[0], earnest, conventions)}"


def _several(left: Sequence[SignatureLeft], conventions: Conventions) -> str:
    """Signatures of which none holds all notes and none leaves less outside than another."""
    if max(len(each.outside) for each in left) > _MOST_LISTED:
        return f"No signature holds all notes; nearest come {_signatures(left)}."
    options = [f"with {accidentals_in_words(each.signature)} {_named(each.outside, conventions)}" for each in left]
    verb = "lies" if len(left[0].outside) == 1 else "lie"
    return f"No signature holds all notes: {options[0]} {verb} outside, {listed(options[1:], 'or')}."


def _signatures(left: Sequence[SignatureLeft]) -> str:
    words = [accidentals_in_words(each.signature) for each in left]
    return listed(words, "or") if len(words) <= _MOST_LISTED else f"anything from {words[0]} to {words[-1]}"


def _evidence(low: int, high: int, weights: Mapping[PitchClass, float], conventions: Conventions) -> str:
    """What speaks for the signatures from ``low`` to ``high``: accidentals that sound, the next that do not, gaps."""
    if high - low >= _MOST_LISTED:
        return "few notes decide little"
    own = _accidentals(low, high)
    last = max((place for place, note in enumerate(own, start=1) if note in weights), default=0)
    vouched, silent = own[:last], own[last:]
    beyond = [
        *([(low + _SHARPEST, low - 2)] if -_MOST < low <= 0 else []),
        *([(high + _FLATTEST, high + 6)] if 0 <= high < _MOST else []),
    ]
    against = [_against(pitch_class(here), pitch_class(there), weights, conventions) for here, there in beyond]
    heard = _heard(vouched, weights, conventions)
    known = ", but ".join(part for part in (heard, " and ".join(each for each in against if each)) if part)
    asked = [
        *map(_natural, range(low, high)),
        *map(_natural_of, silent),
        *(pitch_class(here) for here, _ in beyond),
    ]
    sounding = {_natural_of(note) for note in weights}
    missing = [letter for letter in dict.fromkeys(asked) if letter not in sounding]
    gaps = f"{_named(missing, conventions)} {'is' if len(missing) == 1 else 'are'} missing" if missing else ""
    return "; ".join(part for part in (known, gaps) if part)


def _accidentals(low: int, high: int) -> list[PitchClass]:
    """The sharps or flats that all signatures from ``low`` to ``high`` have, in the order of the circle."""
    places = range(_FIRST_SHARP, _FIRST_SHARP + low) if low > 0 else range(_FIRST_FLAT, _FIRST_FLAT + high, -1)
    return [pitch_class(place) for place in places]


def _natural(signature: int) -> PitchClass:
    """The plain note of the letter by which a signature differs from the next sharper one."""
    return pitch_class(signature % 7 - 1)


def _natural_of(note: PitchClass) -> PitchClass:
    """The plain note of a note's letter."""
    return pitch_class(note.fifths - 7 * note.alteration)


def _heard(vouched: Sequence[PitchClass], weights: Mapping[PitchClass, float], conventions: Conventions) -> str:
    """Of the accidentals up to the last that sounds: those that do, and those that come before one on the circle."""
    sounding, implied = ([note for note in vouched if (note in weights) == sounds] for sounds in (True, False))
    return _named(sounding, conventions) + (f", and so {_named(implied, conventions)} too" if implied else "")


def _against(here: PitchClass, there: PitchClass, weights: Mapping[PitchClass, float], conventions: Conventions) -> str:
    """That the next sharp or flat does not sound, or less than the plain note; empty where that does not."""
    if here not in weights:
        return ""
    name, other = note_name(here, conventions), note_name(there, conventions)
    if there not in weights:
        return f"no {other}"
    return f"more {name} than {other}" if weights[here] > weights[there] else f"{name} as well as {other}"


def _outside(left: SignatureLeft, earnest: Set[int], conventions: Conventions) -> str:
    """What lies outside a signature: degrees of minor by their names, decorations, anything else as it is."""
    minor = Key(pitch_class(left.signature), MAJOR).relative
    raised = left.raised
    decorations = [note for note in left.outside if note not in raised and note.fifths not in earnest]
    strangers = [note for note in left.outside if note not in raised and note.fifths in earnest]
    sentences = []
    if raised:
        which = "are the raised sixth and seventh" if len(raised) > 1 else "is the raised seventh"
        sentences.append(f" {_named(raised, conventions)} {which} of {key_name(minor, conventions)}.")
    if decorations:
        verb = "decorates" if len(decorations) == 1 else "decorate"
        sentences.append(f" {_named(decorations, conventions)} only {verb} other notes.")
    if strangers:
        verb = "lies" if len(strangers) == 1 else "lie"
        sentences.append(f" {_named(strangers, conventions)} {verb} outside.")
    return "".join(sentences)


def _named(notes: Iterable[PitchClass], conventions: Conventions) -> str:
    return listed([note_name(note, conventions) for note in notes])
