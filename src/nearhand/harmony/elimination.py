"""Elimination of key signatures in words: which sharps and flats sound in the order of the circle, and which do not."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from nearhand.harmony.melody_evidence import weighed
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
    return f"{first[0].upper()}{first[1:]}.{_outside(left[0], conventions)}"


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
    heard = _heard(low, high, weights, conventions)
    against = [
        *(_against(low + _SHARPEST, low - 2, weights, conventions) if -_MOST < low <= 0 else ()),
        *(_against(high + _FLATTEST, high + 6, weights, conventions) if 0 <= high < _MOST else ()),
    ]
    missing = _named([_natural(signature) for signature in range(low, high)], conventions)
    gaps = f"{missing} {'is' if high - low == 1 else 'are'} missing" if missing else ""
    known = ", but ".join(part for part in (heard, " and ".join(against)) if part)
    return "; ".join(part for part in (known, gaps) if part)


def _natural(signature: int) -> PitchClass:
    """The plain note of the letter by which a signature differs from the next sharper one."""
    return pitch_class(signature % 7 - 1)


def _heard(low: int, high: int, weights: Mapping[PitchClass, float], conventions: Conventions) -> str:
    """The sharps or flats that sound and that all signatures from ``low`` to ``high`` have."""
    places = range(_FIRST_SHARP, _FIRST_SHARP + low) if low > 0 else range(_FIRST_FLAT, _FIRST_FLAT + high, -1)
    notes = [pitch_class(place) for place in places]
    sounding, silent = [note for note in notes if note in weights], [note for note in notes if note not in weights]
    if not sounding:
        return ""
    implied = f", and so {_named(silent, conventions)} too" if silent else ""
    return f"{_named(sounding, conventions)}{implied}"


def _against(own: int, other: int, weights: Mapping[PitchClass, float], conventions: Conventions) -> list[str]:
    """That the next sharp or flat does not sound, or less than the note in its place; or that neither does."""
    own_note, other_note = pitch_class(own), pitch_class(other)
    if own_note not in weights:
        return [] if other_note in weights else [f"{note_name(own_note, conventions)} is missing"]
    name, other_name = note_name(own_note, conventions), note_name(other_note, conventions)
    if other_note not in weights:
        return [f"no {other_name}"]
    more = weights[own_note] > weights[other_note]
    return [f"more {name} than {other_name}" if more else f"{name} as well as {other_name}"]


def _outside(left: SignatureLeft, conventions: Conventions) -> str:
    """What lies outside a signature: degrees of minor by their names, anything else as it is."""
    minor = Key(pitch_class(left.signature), MAJOR).relative
    raised = left.raised
    strangers = [note for note in left.outside if note not in raised]
    sentences = []
    if raised:
        which = "are the raised sixth and seventh" if len(raised) > 1 else "is the raised seventh"
        sentences.append(f" {_named(raised, conventions)} {which} of {key_name(minor, conventions)}.")
    if strangers:
        verb = "lies" if len(strangers) == 1 else "lie"
        sentences.append(f" {_named(strangers, conventions)} {verb} outside.")
    return "".join(sentences)


def _named(notes: Iterable[PitchClass], conventions: Conventions) -> str:
    return listed([note_name(note, conventions) for note in notes])
