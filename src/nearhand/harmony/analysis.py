"""What every chord of a progression is in its key, among its neighbours: numeral, number, source and function."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.applied import Target, applied_target
from nearhand.harmony.functions import DOMINANT as DOMINANT_FUNCTION
from nearhand.harmony.functions import function_of
from nearhand.harmony.sources import DIATONIC, is_borrowed, own_source, source_of
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.numbers import write_number
from nearhand.notation.numeral_words import NEAPOLITAN_PLACE
from nearhand.notation.numeral_writing import write_applied, write_neapolitan, write_numeral
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, LOWERED_SIXTH, RAISED_FOURTH, SUBTONIC, Mode
from nearhand.theory.quality import QUALITIES
from nearhand.theory.record import NamedTuple

NEAPOLITAN = "Neapolitan"
APPLIED = "applied"


class Analysis(NamedTuple):
    """One chord in its key. ``target`` is the degree it is applied to; ``before`` and ``after`` are its neighbours.

    ``named_as`` is the chord as it is named, where that is not the chord as spelled: an augmented sixth that a chart
    writes as a dominant seventh, a diminished seventh spelled from another tone, a triad over its own seventh. ``goal``
    is what a tritone substitute or a backdoor dominant leads to; ``line`` the walking voice of a line cliché.
    """

    chord: RelativeChord
    mode: Mode
    source: str
    function: str
    target: Target | None
    after: RelativeChord | None
    before: RelativeChord | None = None
    named_as: RelativeChord | None = None
    goal: Target | None = None
    line: tuple[int, ...] = ()

    @property
    def reading(self) -> RelativeChord:
        """The chord as it is named."""
        return self.chord if self.named_as is None else self.named_as

    def numeral(self, conventions: Conventions = DEFAULT) -> str:
        """The Roman numeral as one of the key, or as applied to a degree; a Neapolitan sixth is N6."""
        if self.target is not None and self.chord.quality.layers is None:
            return write_applied(self.reading, *self.target, self.mode, conventions)
        if self.source == NEAPOLITAN and self.chord.bass != self.chord.root:
            return write_neapolitan(self.chord, conventions)
        return write_numeral(self.reading, self.mode, conventions)

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
    for place in range(len(chords) - 1, -1, -1):  # from the end: what a chord is applied to may depend on the next
        before = chords[place - 1] if place else None
        found.append(_analyse(chords[place], mode, before, found[-1] if found else None, tonic_is_seventh))
    found.reverse()
    return _with_lines(found) if _may_hold_lines(chords) else tuple(found)


def _analyse(
    chord: RelativeChord, mode: Mode, before: RelativeChord | None, behind: Analysis | None, tonic_is_seventh: bool
) -> Analysis:
    after, target_after = (behind.chord, behind.target) if behind else (None, None)
    read = _over_its_seventh(chord)
    target = applied_target(read, mode, after, target_after, tonic_is_seventh)
    if target is None and (read.root != DOMINANT or own_source(read, mode) is None):
        read = chord
    named_as = None if read == chord else read
    if target is not None:
        source = APPLIED
    elif _is_neapolitan(chord, after):
        source = NEAPOLITAN
    else:
        source = source_of(read, mode)
    function = function_of(read, source, target, after)
    found = Analysis(chord, mode, source, function, target, after, before, named_as)
    own = own_source(chord, mode)
    is_plain = chord.bass in chord.places and (own is not None or _is_resolved(found))
    has_augmented_sixth = chord.bass == LOWERED_SIXTH and RAISED_FOURTH in chord.places
    return found if is_plain and not has_augmented_sixth else _refined(found, own)


def _refined(found: Analysis, own: str | None) -> Analysis:
    """What a chord is by what it does, where its tones alone do not say it."""
    from nearhand.harmony import special_chords  # most progressions hold none of these chords

    chord, mode, before, after = found.chord, found.mode, found.before, found.after
    if special_chords.is_over_pedal(chord, before, after) and (found.target is None or after is not None):
        source = special_chords.PEDAL
        return found._replace(
            source=source, function=function_of(chord, own or source, None, after), target=None, named_as=None
        )
    if own is not None:
        return found
    special = special_chords.special(special_chords.Place(chord, mode, before, after, found.target is not None))
    if special is None or (special.source == special_chords.CHROMATIC_MEDIANT and is_borrowed(chord, mode)):
        return found
    named_as = None if special.reading == chord else special.reading
    if special.source == APPLIED:
        return _respelled(found, special.reading, special.target)
    root = special.reading.root
    is_applied_sixth = special.source == special_chords.AUGMENTED_SIXTH and root != LOWERED_SIXTH
    target = Target(root - LOWERED_SIXTH, is_small=False) if is_applied_sixth else None
    refined = found._replace(source=special.source, function=special.function, target=target)
    return refined._replace(named_as=named_as, goal=special.target)


def _respelled(found: Analysis, reading: RelativeChord, target: Target | None) -> Analysis:
    """A leading-tone chord that is spelled from another of its tones: of the key itself, or applied."""
    if target is not None and target.place == 0:
        own = source_of(reading, found.mode)
        return found._replace(source=own, function=DOMINANT_FUNCTION, target=None, named_as=reading)
    function = function_of(reading, APPLIED, target, found.after)
    return found._replace(source=APPLIED, function=function, target=target, named_as=reading)


def _over_its_seventh(chord: RelativeChord) -> RelativeChord:
    """A major triad over the minor seventh of its root is the dominant seventh over its seventh: C/B flat is C7/B flat.

    Any other chord is itself.
    """
    if chord.quality == QUALITIES["major"] and chord.bass == chord.root + SUBTONIC:
        return chord._replace(quality=QUALITIES["dominant"])
    return chord


def _may_hold_lines(chords: Sequence[RelativeChord]) -> bool:
    """Whether three chords in a row stand on one root: only then a line cliché can be among them."""
    roots = [chord.root for chord in chords]
    return any(first == second == third for first, second, third in zip(roots, roots[1:], roots[2:], strict=False))


def _with_lines(analyses: list[Analysis]) -> tuple[Analysis, ...]:
    from nearhand.harmony.line_cliches import LINE_CLICHE, line_cliches

    lines = line_cliches([analysis.chord for analysis in analyses])
    return tuple(
        analysis
        if place not in lines
        else analysis._replace(line=lines[place])
        if lines.get(place - 1) != lines[place] or analysis.chord == analyses[place - 1].chord or _is_resolved(analysis)
        else analysis._replace(
            source=LINE_CLICHE,
            line=lines[place],
            target=None,
            named_as=None,
            function=function_of(analysis.chord, DIATONIC, None, analysis.after),
        )
        for place, analysis in enumerate(analyses)
    )


def _is_resolved(analysis: Analysis) -> bool:
    """Whether an applied chord goes to the degree it is applied to."""
    target, after = analysis.target, analysis.after
    return target is not None and after is not None and after.root == target.place


def _is_neapolitan(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """A major triad on the lowered second degree over its third; over its root where the dominant follows."""
    if chord.root != NEAPOLITAN_PLACE or chord.quality != QUALITIES["major"]:
        return False
    to_dominant = after is not None and (
        after.root in (DOMINANT, LEADING_TONE) or (after.root, after.bass) == (0, DOMINANT)
    )
    return chord.bass == NEAPOLITAN_PLACE + 4 or (chord.bass == chord.root and to_dominant)


def _tonic_is_seventh(chords: Sequence[RelativeChord]) -> bool:
    """Whether the piece opens or closes on its tonic as a dominant seventh in root position, as a blues does."""
    ends = [chord for chord in (*chords[:1], *chords[-1:]) if chord.root == chord.bass == 0]
    return any(chord.quality.is_dominant_seventh for chord in ends)
