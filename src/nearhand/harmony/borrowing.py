"""What a key may borrow: the chords that the other modes on its tonic have and the key itself has not.

In minor all three forms are the key's own, so chords with the raised sixth or seventh are native there and not
borrowed (Open Music Theory, "Modal mixture"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "The
Picardy third"). Locrian lends nothing: nobody hears its chords as taken from there (common practice, no source).
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.harmony.applied import Target, applied_target
from nearhand.harmony.scale_chords import SEVENTH_CHORD, TRIAD, chords_of
from nearhand.harmony.sources import PARALLEL_SCALES, own_source
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR_FORMS, Mode
from nearhand.theory.record import NamedTuple


class Use(NamedTuple):
    """What players do with a mode's chords: some chords in a row, and what they do in words."""

    chords: tuple[RelativeChord, ...]
    words: str


class LentChord(NamedTuple):
    """One chord that a mode lends. ``foreign``: its tones that the key has not, in fifths above the tonic.

    ``shared_with``: the other modes that lend it as well. ``target``: the degree it is applied to when it is heard as
    an applied chord first; else None.
    """

    chord: RelativeChord
    foreign: tuple[int, ...]
    shared_with: tuple[str, ...]
    target: Target | None


class LendingMode(NamedTuple):
    """A mode on the key's tonic: its scale, in fifths above the tonic, its uses, and what it lends."""

    name: str
    scale: tuple[int, ...]
    uses: tuple[Use, ...]
    triads: tuple[LentChord, ...]
    sevenths: tuple[LentChord, ...]


_USES_IN_MAJOR = {
    # Hutchinson, "Mode mixture", "The deceptive cadence with the flat sixth", "Special resolution of vii°7"
    "natural minor": (
        ("V bVI", "a deceptive cadence, for the lowered sixth comes where I was expected"),
        ("bVI bVII I", "a climb to the tonic by whole steps"),
        ("IV iv I", "the sixth degree sinks by half steps to the fifth"),
    ),
    "harmonic minor": (("viio7 I", "the leading-tone seventh of minor before a major tonic"),),
    "dorian": (("i IV", "two chords that go to and fro (common practice)"),),
    # Hutchinson, "Subtonic VII in pop music"; Open Music Theory, "Pop and rock harmony: plagal"
    "mixolydian": (("bVII IV I", "falling fourths to the tonic, without a leading tone"),),
    "phrygian": (("bII I", "a half step down to the tonic (common practice)"),),
    "lydian": (("I II", "two chords that go to and fro (common practice)"),),
}
_USES_IN_MINOR = {
    # Hutchinson, "The Picardy third"; Open Music Theory, "Modal mixture"
    "major": (("V I", "a piece in minor ends on a major chord, the Picardy third, the one usual loan in minor"),),
    # Open Music Theory, "Altered subdominants"
    "phrygian": (("bII6 V", "the Neapolitan sixth prepares the dominant"),),
}


@lru_cache(maxsize=32)
def borrowed_palette(mode: Mode) -> tuple[LendingMode, ...]:
    """The modes that lend chords to a key of ``mode``, likeliest first, each with its triads and seventh chords.

    A chord that several modes lend stands under each of them. Modes that have nothing new are left out.

    >>> from nearhand.notation.numeral_writing import write_numeral
    >>> natural_minor = borrowed_palette(MAJOR)[0]
    >>> natural_minor.name, [write_numeral(lent.chord, MAJOR) for lent in natural_minor.triads]
    ('natural minor', ['i', 'ii°', '♭III', 'iv', 'v', '♭VI', '♭VII'])
    """
    lending = [
        LendingMode(name, scale, _uses(name, mode), _lent(name, mode, TRIAD), _lent(name, mode, SEVENTH_CHORD))
        for name, scale in PARALLEL_SCALES.items()
    ]
    return tuple(row for row in lending if row.triads or row.sevenths)


def _lent(name: str, mode: Mode, size: int) -> tuple[LentChord, ...]:
    return tuple(
        LentChord(chord, _foreign(chord, mode), _others(chord, name), applied_target(chord, mode))
        for chord in chords_of(PARALLEL_SCALES[name], size)
        if own_source(chord, mode) is None
    )


def _foreign(chord: RelativeChord, mode: Mode) -> tuple[int, ...]:
    """The tones that are in no form of the key's scale; where only their mixture is new, those of no natural form."""
    forms = MINOR_FORMS.values() if mode.is_minor else (mode.degrees,)
    foreign = tuple(place for place in chord.places if not any(place in form for form in forms))
    return foreign or tuple(place for place in chord.places if place not in mode.degrees)


def _others(chord: RelativeChord, name: str) -> tuple[str, ...]:
    holds = (other for other, scale in PARALLEL_SCALES.items() if set(chord.places) <= set(scale))
    return tuple(other for other in holds if other != name)


def _uses(name: str, mode: Mode) -> tuple[Use, ...]:
    """What is told of major and minor only: other modes have no uses of their own here."""
    table = _USES_IN_MINOR if mode.is_minor else _USES_IN_MAJOR if mode.degrees == MAJOR.degrees else {}
    return tuple(
        Use(tuple(parse_numeral(text, mode) for text in numerals.split()), words)
        for numerals, words in table.get(name, ())
    )
