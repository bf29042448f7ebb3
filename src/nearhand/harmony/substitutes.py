"""What else fits in place of a chord: substitutes with their numerals, and the tones they share with it.

Substitutes stand in root position, and the replaced chord is compared by its tones alone: its bass is left out.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.analysis import APPLIED, Analysis, analyse
from nearhand.harmony.functions import DOMINANT, PREDOMINANT
from nearhand.harmony.sources import BORROWED, DIATONIC
from nearhand.harmony.substitute_kinds import KINDS, Kind, proposals
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import degree_number
from nearhand.notation.numeral_writing import write_degree
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.mode import MINOR_FORMS, Mode
from nearhand.theory.pitch_class import nearest_on_line
from nearhand.theory.record import NamedTuple


class Substitute(NamedTuple):
    """One substitute. ``analyses``: its chords, one or two, as they are heard in the replaced chord's place.

    ``comes_before`` when they stand before the chord, which stays. Tones are places in fifths above the tonic, each
    once: ``shared`` by name; ``by_sound`` pairs of its own and the chord's name for one sound; ``new`` the others.
    """

    kind: Kind
    analyses: tuple[Analysis, ...]
    comes_before: bool
    function: str
    shared: tuple[int, ...]
    by_sound: tuple[tuple[int, int], ...]
    new: tuple[int, ...]

    @property
    def chords(self) -> tuple[RelativeChord, ...]:
        """Its chords in order."""
        return tuple(analysis.chord for analysis in self.analyses)


def substitutes(chords: Sequence[RelativeChord], place: int, mode: Mode) -> tuple[Substitute, ...]:
    """The substitutes for one chord of a progression (rests left out), by kind; the chord itself is not among them.

    A substitute that by its nature does a dominant's work (a tritone substitute, a leading-tone chord ...) keeps the
    function of the dominant; of any other the function is that of the analysis in its place.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> row = [parse_numeral(text, MAJOR) for text in ("ii7", "V7", "I")]
    >>> [found.analyses[0].numeral() for found in substitutes(row, 1, MAJOR) if found.kind.stands_in]
    ['♭II7', 'vii°7', 'viiø7', 'V7sus4', '♭VII7']
    """
    original = analyse(chords, mode)[place]
    seen = {_sound((original.chord,))}
    found = []
    for name, offered in proposals(original, chords[place - 1] if place else None):
        if _sound(offered) not in seen:
            seen.add(_sound(offered))
            found.append(_substitute(KINDS[name], offered, chords, place, original))
    return tuple(found)


def _sound(chords: Sequence[RelativeChord]) -> tuple[object, ...]:
    """What makes chords the same, whatever their spelling and bass."""
    return tuple((7 * chord.root % 12, chord.quality) for chord in chords)


def _substitute(
    kind: Kind, offered: tuple[RelativeChord, ...], chords: Sequence[RelativeChord], place: int, original: Analysis
) -> Substitute:
    comes_before = kind.name == "secondary"
    behind = chords[place:] if comes_before else chords[place + 1 :]
    analyses = analyse((*chords[:place], *offered, *behind), original.mode)[place : place + len(offered)]
    keeps = comes_before or (kind.stands_in and original.function in (DOMINANT, PREDOMINANT))
    function = original.function if keeps else analyses[0].function
    return Substitute(kind, analyses, comes_before, function, *_tones(offered, original.chord))


def _tones(
    offered: Sequence[RelativeChord], original: RelativeChord
) -> tuple[tuple[int, ...], tuple[tuple[int, int], ...], tuple[int, ...]]:
    """Tones shared by name, shared by sound alone, and new."""
    own = tuple(dict.fromkeys(place for chord in offered for place in chord.places))
    names = {7 * place % 12: place for place in original.places}
    shared = tuple(place for place in own if place in original.places)
    rest = [place for place in own if place not in shared]
    by_sound = tuple((place, names[7 * place % 12]) for place in rest if 7 * place % 12 in names)
    return shared, by_sound, tuple(place for place in rest if 7 * place % 12 not in names)


def easier_name(chord: Chord) -> Chord | None:
    """The same chord by sound with fewer double accidentals, as players write it; None when there is none.

    >>> from nearhand.notation.chord_symbols import parse_chord, write_chord
    >>> write_chord(easier_name(parse_chord("Bbb7")))
    'A7'
    """
    root = nearest_on_line(chord.root, 0)
    other = Chord(root, chord.quality, root)
    return other if _double_accidentals(other) < _double_accidentals(chord) else None


def _double_accidentals(chord: Chord) -> int:
    return sum(abs(tone.alteration) > 1 for tone in chord.tones)


def what_changes(substitute: Substitute, original: Analysis, conventions: Conventions = DEFAULT) -> str:
    """A sentence on the function that stays or changes, and one on where the substitute comes from.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> row = [parse_numeral(text, MAJOR) for text in ("I", "IV", "I")]
    >>> (twin,) = (found for found in substitutes(row, 1, MAJOR) if found.kind.name == "mixture")
    >>> what_changes(twin, analyse(row, MAJOR)[1])
    'It keeps the function: predominant. It is borrowed from natural minor: darker.'
    """
    if substitute.comes_before:
        stays = f"{original.numeral(conventions)} stays and keeps its function: {original.function}."
        return f"Together they take the first half of its time. {stays}"
    if substitute.function == original.function:
        effect = f"It keeps the function: {original.function}."
    else:
        effect = f"The function changes from {original.function} to {substitute.function}."
    return f"{effect} {_origin(substitute.analyses[0], conventions)}"


def _origin(analysis: Analysis, conventions: Conventions) -> str:
    source = analysis.source
    if source == DIATONIC:
        return "It belongs to the key."
    if source == APPLIED:
        assert analysis.target is not None  # what makes a chord applied
        return f"It is applied to {write_degree(*analysis.target, analysis.mode, conventions)}."
    if source.startswith(BORROWED):
        return f"It is {source}{_light(analysis)}."
    if source in {f"{form} minor" for form in MINOR_FORMS}:
        return f"It comes from {source}."
    return _SPECIAL.get(source, "It is chromatic.")


_SPECIAL = {
    "Neapolitan": "It is the Neapolitan sixth.",
    "augmented sixth": "It is an augmented sixth.",
    "tritone substitute": "It slides down a half step.",
    "backdoor dominant": "It goes up a whole step to the tonic.",
    "common-tone diminished": "It is a common-tone diminished chord.",
    "chromatic mediant": "It is a chromatic mediant.",
}
"""Sources that a chord has by what it does, in words."""


def _light(analysis: Analysis) -> str:
    """Darker when its foreign notes are lowered degrees, brighter when raised (common practice, no source)."""
    degrees = analysis.mode.degrees
    shift = sum(place - degrees[degree_number(place) - 1] for place in analysis.chord.places)
    return ": darker" if shift < 0 else ": brighter" if shift > 0 else ""
