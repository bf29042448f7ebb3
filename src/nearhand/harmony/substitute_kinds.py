"""The kinds of substitutes for a chord, and which chords each kind offers.

Tritone substitution: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Turnaround progression" (D♭7 for
G7 in C) and "Guide tones" (the two share their guide tones by sound). Leading-tone chords for dominants: the same,
"Secondary diminished chords". Modal mixture: the same, "Mode mixture"; Open Music Theory, "Modal mixture". Triads that
keep two tones are those of the neo-Riemannian operations P, L and R. The rest is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.analysis import APPLIED, Analysis
from nearhand.harmony.applied import Target
from nearhand.harmony.dominants import (
    LOWERED_SECOND,
    dominant_target,
    is_dominant_of,
    is_suspended_dominant,
    leading_tone_target,
)
from nearhand.harmony.functions import PREDOMINANT
from nearhand.harmony.scale_chords import SEVENTH_CHORD, TRIAD, chord_on
from nearhand.harmony.sources import BORROWED, PARALLEL_SCALES
from nearhand.notation.degrees import degree_number
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import (
    DOMINANT,
    LEADING_TONE,
    LOWERED_SIXTH,
    MAJOR_DEGREES,
    MINOR_FORMS,
    SUBDOMINANT,
    SUBTONIC,
    SUPERTONIC,
)
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES, Quality
from nearhand.theory.record import NamedTuple

MAJOR_TRIAD, MINOR_TRIAD, DIMINISHED_TRIAD = (QUALITIES[kind] for kind in ("major", "minor", "diminished"))
DOMINANT_SEVENTH = QUALITIES["dominant"]
_SUSPENDED_SEVENTH = Quality((1, 4, 5, 7), (0, -1, 1, -2))
_SWAPS: dict[Quality, tuple[tuple[int, Quality], ...]] = {
    MAJOR_TRIAD: ((0, MINOR_TRIAD), (4, MINOR_TRIAD), (3, MINOR_TRIAD)),
    MINOR_TRIAD: ((0, MAJOR_TRIAD), (-4, MAJOR_TRIAD), (-3, MAJOR_TRIAD)),
}
"""P, L and R: where the new root lies, in fifths above the old one, and the new quality."""
_AUGMENTED_FIFTH = 8


class Kind(NamedTuple):
    """A kind of substitute: its name, what it is in words, whether by its nature it does a dominant's work."""

    name: str
    words: str
    stands_in: bool = False


KINDS = {
    kind.name: kind
    for kind in (
        Kind("tritone", "tritone substitute", stands_in=True),
        Kind("diminished", "leading-tone chord for the dominant", stands_in=True),
        Kind("dominant", "dominant for the leading-tone chord", stands_in=True),
        Kind("suspended", "the dominant with its third suspended", stands_in=True),
        Kind("restored", "the same dominant with its third", stands_in=True),
        Kind("backdoor", "backdoor dominant, a whole step below the tonic", stands_in=True),
        Kind("relative", "relative: a third away in the key"),
        Kind("mixture", "twin: the same degree in the other mode"),
        Kind("secondary", "its own ii and V put before it"),
        Kind("common", "common tones"),
        Kind("way", "another way to the dominant"),
    )
}
"""In the order in which equally distant substitutes stand; a chord of two kinds is told under the first."""


def proposals(original: Analysis, before: RelativeChord | None) -> Iterator[tuple[str, tuple[RelativeChord, ...]]]:
    """Pairs of kind and chords for one chord of a progression, in the order of ``KINDS``; some may come twice.

    ``before`` is the chord before it. All chords are in root position but for the Neapolitan sixth and the augmented
    sixths, which have their usual bass; the kind ``secondary`` has two.
    """
    target = dominant_target(original)
    if target is not None:
        yield from _for_dominants(original, target)
    elif (led_to := leading_tone_target(original)) is not None:
        yield "dominant", (_rooted(led_to.place + DOMINANT, DOMINANT_SEVENTH),)
    chord = original.chord
    if chord.quality.interval(3) is None:
        if is_suspended_dominant(original):
            yield "restored", (_rooted(chord.root, DOMINANT_SEVENTH if 7 in chord.quality.numbers else MAJOR_TRIAD),)
        return
    for kind, found in (("relative", _relatives(original)), ("mixture", _twins(original))):
        yield from ((kind, (substitute,)) for substitute in found)
    if chord.quality.triad in _SWAPS and not is_dominant_of(before, chord):
        yield "secondary", own_second_and_dominant(chord)
    yield from (("common", (substitute,)) for substitute in _with_common_tones(original, target))
    if original.function == PREDOMINANT and _goes_to_dominant(original):
        ways = (way for way in _ways_to_dominant(original) if way != original.reading)
        yield from (("way", (substitute,)) for substitute in ways)


def _goes_to_dominant(original: Analysis) -> bool:
    after = original.after
    return after is not None and (after.root == DOMINANT or (after.root, after.bass) == (0, DOMINANT))


def _ways_to_dominant(original: Analysis) -> tuple[RelativeChord, ...]:
    """The predominants that may stand before V: ii and IV of the mode, V7/V, the Neapolitan and augmented sixths."""
    in_minor = original.mode.has_minor_third
    if len(original.chord.quality.numbers) > TRIAD:
        own = ("half-diminished", "minor-seventh") if in_minor else ("minor-seventh", "major-seventh")
    else:
        own = ("diminished", "minor") if in_minor else ("minor", "major")
    sixths = (RelativeChord(LOWERED_SIXTH, sixth, LOWERED_SIXTH) for sixth in (*AUGMENTED_SIXTHS.values(),)[:3])
    return (
        _rooted(SUPERTONIC, QUALITIES[own[0]]),
        _rooted(SUBDOMINANT, QUALITIES[own[1]]),
        _rooted(SUPERTONIC, DOMINANT_SEVENTH),
        RelativeChord(LOWERED_SECOND, MAJOR_TRIAD, SUBDOMINANT),
        *sixths,
    )


def own_second_and_dominant(chord: RelativeChord) -> tuple[RelativeChord, RelativeChord]:
    """The ii and the V of a chord: half-diminished and dominant sevenths when it is minor.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> [chord.root for chord in own_second_and_dominant(parse_numeral("vi", MAJOR))]      # Bm7b5 E7 before Am
    [5, 4]
    """
    second = QUALITIES["half-diminished" if chord.quality.has_minor_third else "minor-seventh"]
    return _rooted(chord.root + SUPERTONIC, second), _rooted(chord.root + DOMINANT, DOMINANT_SEVENTH)


def _rooted(root: int, quality: Quality) -> RelativeChord:
    return RelativeChord(root, quality, root)


def _size(chord: RelativeChord) -> int:
    return SEVENTH_CHORD if 7 in chord.quality.numbers else TRIAD


def _for_dominants(original: Analysis, target: Target) -> Iterator[tuple[str, tuple[RelativeChord, ...]]]:
    chord, goal, after = original.chord, target.place, original.after
    if chord.quality.is_dominant_seventh:
        for root in (goal + LOWERED_SECOND, goal + DOMINANT):
            if root != chord.root:
                yield "tritone", (_rooted(root, DOMINANT_SEVENTH),)
    elif chord.quality == MAJOR_TRIAD:
        yield "diminished", (_rooted(goal + LEADING_TONE, DIMINISHED_TRIAD),)
    yield "diminished", (_rooted(goal + LEADING_TONE, QUALITIES["diminished-seventh"]),)
    if not target.is_small:
        yield "diminished", (_rooted(goal + LEADING_TONE, QUALITIES["half-diminished"]),)
    is_seventh = chord.quality.is_dominant_seventh
    yield "suspended", (_rooted(chord.root, _SUSPENDED_SEVENTH if is_seventh else QUALITIES["suspended-fourth"]),)
    resolves = after is not None and after.root == 0 and not after.quality.has_minor_third
    if chord.root == DOMINANT and resolves and not original.mode.has_minor_third:
        yield "backdoor", (_rooted(SUBTONIC, DOMINANT_SEVENTH),)


def _home_scales(original: Analysis, with_lent: bool) -> tuple[tuple[int, ...], ...]:
    """The scale that holds the chord: the key's own (in minor its first such form), or that of the lending mode."""
    places, mode, source = set(original.chord.places), original.mode, original.source
    if source == APPLIED:
        return ()
    if source.startswith(BORROWED):
        return (PARALLEL_SCALES[source.removeprefix(BORROWED)],) if with_lent else ()
    own = tuple(MINOR_FORMS.values()) if mode.is_minor else (mode.degrees,)
    return tuple(scale for scale in own if places.issubset(scale))[:1]


def _relatives(original: Analysis) -> list[RelativeChord]:
    """The key's own chords a third below and a third above, augmented ones left out."""
    chord = original.chord
    found = [
        chord_on(scale, scale.index(chord.root) + 1 + steps, _size(chord))
        for scale in _home_scales(original, with_lent=False)
        for steps in (-2, 2)
    ]
    return [relative for relative in found if not _is_augmented(relative)]


def _is_augmented(chord: RelativeChord) -> bool:
    return chord.quality.interval(5) == _AUGMENTED_FIFTH


def _twins(original: Analysis) -> list[RelativeChord]:
    """The chord on the same degree in the parallel major or minor; for a borrowed chord also the key's own."""
    chord, mode = original.chord, original.mode
    number = degree_number(chord.root)
    if not original.source.startswith(BORROWED) and not _home_scales(original, with_lent=False):
        return []
    scales: list[tuple[int, ...]] = [MAJOR_DEGREES] if mode.has_minor_third else [MINOR_FORMS["natural"]]
    if number == 7 and not mode.has_minor_third:
        scales.append(MINOR_FORMS["harmonic"])
    if original.source.startswith(BORROWED):
        scales.insert(0, mode.degrees)
    found = [chord_on(scale, number, _size(chord)) for scale in scales]
    return [twin for twin in found if not set(twin.places) <= set(chord.places)]  # V7 is no twin of V7b9


def _with_common_tones(original: Analysis, target: Target | None) -> Iterator[RelativeChord]:
    """For a triad: those that keep two tones, and seventh chords that hold it. For a seventh chord: triads in it.

    Augmented ones are left out.
    """
    chord = original.chord
    if chord.quality in _SWAPS:
        for fifths, quality in _SWAPS[chord.quality]:
            yield _rooted(chord.root + fifths, quality)
        for scale in _home_scales(original, with_lent=True):
            number = scale.index(chord.root) + 1
            sevenths = (chord_on(scale, number, SEVENTH_CHORD), chord_on(scale, number - 2, SEVENTH_CHORD))
            yield from (seventh for seventh in sevenths if not _is_augmented(seventh))
        if original.source == APPLIED and target is not None:
            yield _rooted(chord.root, DOMINANT_SEVENTH)
    elif chord.quality.numbers == (1, 3, 5, 7):
        for places in (chord.places[:3], chord.places[1:]):
            triad = Quality((1, 3, 5), tuple(place - places[0] for place in places))
            if triad in _SWAPS:
                yield _rooted(places[0], triad)
