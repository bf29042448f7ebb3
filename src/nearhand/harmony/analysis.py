"""What every chord of a progression is in its key, among its neighbours: numeral, number, source and function."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.applied import Target, applied_target
from nearhand.harmony.functions import function_of
from nearhand.harmony.sources import source_of
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.numbers import write_number
from nearhand.notation.numeral_writing import write_applied, write_neapolitan, write_numeral
from nearhand.notation.numerals import NEAPOLITAN_PLACE
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import Mode
from nearhand.theory.quality import QUALITIES
from nearhand.theory.record import NamedTuple

NEAPOLITAN = "Neapolitan"
APPLIED = "applied"


class Analysis(NamedTuple):
    """One chord in its key. ``target`` is the degree it is applied to; ``after`` the chord that follows."""

    chord: RelativeChord
    mode: Mode
    source: str
    function: str
    target: Target | None
    after: RelativeChord | None

    def numeral(self, conventions: Conventions = DEFAULT) -> str:
        """The Roman numeral as one of the key, or as applied to a degree; a Neapolitan sixth is N6."""
        if self.target is not None and self.chord.quality.layers is None:
            return write_applied(self.chord, *self.target, self.mode, conventions)
        if self.source == NEAPOLITAN and self.chord.bass != self.chord.root:
            return write_neapolitan(self.chord)
        return write_numeral(self.chord, self.mode, conventions)

    def number(self, conventions: Conventions = DEFAULT) -> str:
        """The chord in numbers."""
        return write_number(self.chord, self.mode, conventions)


def analyse(chords: Sequence[RelativeChord], mode: Mode) -> tuple[Analysis, ...]:
    """Analyse chords in order (rests left out).

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> chords = [parse_numeral(text, MAJOR) for text in ("Imaj7", "I7", "IV", "iv", "II65", "V7")]
    >>> [analysis.numeral() for analysis in analyse(chords, MAJOR)]
    ['Imaj7', 'V7/IV', 'IV', 'iv', 'V65/V', 'V7']
    """
    tonic_is_seventh = not mode.has_minor_third and _tonic_is_seventh(chords)
    found: list[Analysis] = []
    for chord in reversed(chords):  # from the end, for what a chord is applied to may depend on the one behind it
        behind = found[-1] if found else None
        found.append(_analyse(chord, mode, behind, tonic_is_seventh))
    return tuple(reversed(found))


def _analyse(chord: RelativeChord, mode: Mode, behind: Analysis | None, tonic_is_seventh: bool) -> Analysis:
    after, target_after = (behind.chord, behind.target) if behind else (None, None)
    target = applied_target(chord, mode, after, target_after, tonic_is_seventh)
    if target is not None:
        source = APPLIED
    elif _is_neapolitan(chord):
        source = NEAPOLITAN
    else:
        source = source_of(chord, mode)
    return Analysis(chord, mode, source, function_of(chord, source, target, after), target, after)


def _is_neapolitan(chord: RelativeChord) -> bool:
    """A major triad on the lowered second degree, with its third in the bass."""
    return chord.root == NEAPOLITAN_PLACE and chord.quality == QUALITIES["major"] and chord.bass == NEAPOLITAN_PLACE + 4


def _tonic_is_seventh(chords: Sequence[RelativeChord]) -> bool:
    """Whether the piece opens or closes on its tonic as a dominant seventh in root position, as a blues does."""
    ends = [chord for chord in (*chords[:1], *chords[-1:]) if chord.root == chord.bass == 0]
    return any(chord.quality.is_dominant_seventh for chord in ends)
