"""Applied chords (secondary dominants): a dominant or leading-tone chord of a degree other than the tonic.

Recogniser: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Secondary Dominants" and "Secondary
Diminished Chords": a major triad or dominant seventh whose root lies a fifth above a degree with a major or minor
triad, or a diminished chord whose root lies a minor second below it. A foreign minor or half-diminished chord a fifth
above an applied dominant that follows is the ii of the same degree (common practice, no source).
"""

from __future__ import annotations

from nearhand.harmony.sources import own_source
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, RAISED_SIXTH, SUBTONIC, SUPERTONIC, Mode
from nearhand.theory.record import NamedTuple

_AUGMENTED_FIFTH = 8
_DIMINISHED_FIFTH, _DIMINISHED_SEVENTH = -6, -9


class Target(NamedTuple):
    """The degree an applied chord belongs to: its place above the tonic, and whether its own chord is minor."""

    place: int
    is_small: bool


def applied_target(
    chord: RelativeChord,
    mode: Mode,
    after: RelativeChord | None = None,
    target_after: Target | None = None,
    tonic_is_seventh: bool = False,
) -> Target | None:
    """The degree to which a chord is applied; None when it is no applied chord.

    ``after`` is the chord that follows and ``target_after`` what that one is applied to. A chord of the key itself is
    taken at its word, but in minor the major IV and vi° before VII belong to VII. The tonic as a dominant seventh is V7
    of IV, unless the piece takes that seventh for its home chord (``tonic_is_seventh``, as a blues does); a major tonic
    triad in minor is applied to iv only where iv follows.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> applied_target(parse_numeral("II7", MAJOR), MAJOR)
    Target(place=1, is_small=False)
    """
    is_own = own_source(chord, mode) is not None
    if target_after is not None and after is not None and _shares_target(chord, is_own, after, target_after):
        return target_after
    distance = _distance_to_target(chord, after)
    if distance is None:
        return None
    target = chord.root - distance
    if is_own:
        before_subtonic = after is not None and after.root == target == SUBTONIC and _raised_root(chord, mode)
        return Target(target, is_small=False) if before_subtonic else None
    is_small = triad_is_minor(target, mode)
    if is_small is None and after is not None and _leads_to_a_lent_degree(chord, target, after):
        is_small = after.quality.has_minor_third
    if target == 0 or is_small is None or _is_second_before_dominant(chord, after):
        return None
    if chord.root == 0 and (tonic_is_seventh or (7 not in chord.quality.numbers and not _resolves(target, after))):
        return None
    return Target(target, is_small)


_LENT_DEGREES = (-2, -3, -4, -5)
"""The lowered seventh, third, sixth and second degree: what parallel modes and the Neapolitan lend."""


def _leads_to_a_lent_degree(chord: RelativeChord, target: int, after: RelativeChord) -> bool:
    """Whether a dominant seventh goes down a fifth to a major or minor chord on a degree that a parallel mode lends."""
    has_third = after.quality.interval(3) in (4, -3) and after.quality.interval(5) != _DIMINISHED_FIFTH
    return target in _LENT_DEGREES and after.root == target and chord.quality.is_dominant_seventh and has_third


def _shares_target(chord: RelativeChord, is_own: bool, after: RelativeChord, target: Target) -> bool:
    """Whether a chord belongs with the applied dominant that follows: as its ii, or as itself with its third suspended.

    A chord of the key itself is a ii only where it is half-diminished: vii of C before V7/vi is ii of vi.
    """
    is_half_diminished = chord.quality.interval(5) == _DIMINISHED_FIFTH and 7 in chord.quality.numbers
    is_suspended = chord.root == after.root and 4 in chord.quality.numbers and 3 not in chord.quality.numbers
    prepares = (not is_own or is_half_diminished) and _prepares(chord, after, target)
    return prepares or (is_suspended and after.root - target.place == DOMINANT)


def _prepares(chord: RelativeChord, after: RelativeChord | None, target: Target) -> bool:
    """Whether a minor or half-diminished chord is the ii of a degree whose applied dominant follows it."""
    is_dominant = after is not None and after.root == target.place + DOMINANT
    is_second = chord.root == target.place + SUPERTONIC and chord.quality.has_minor_third
    return is_dominant and is_second and chord.quality.interval(7) != _DIMINISHED_SEVENTH


def _distance_to_target(chord: RelativeChord, after: RelativeChord | None) -> int | None:
    """Fifths from the target up to the root: 1 for a dominant, 5 for a leading-tone chord, None for any other.

    An augmented triad is a dominant only where its root falls a fifth.
    """
    quality = chord.quality
    third, fifth, seventh = (quality.interval(number) for number in (3, 5, 7))
    falls_a_fifth = after is not None and after.root == chord.root - DOMINANT
    is_plain_triad = quality.numbers == (1, 3, 5) and (fifth != _AUGMENTED_FIFTH or falls_a_fifth)
    if quality.is_dominant_seventh or (third == 4 and is_plain_triad):
        return DOMINANT
    if (third, fifth) == (-3, -6) and seventh in (None, -2, _DIMINISHED_SEVENTH):
        return LEADING_TONE
    return None


def _raised_root(chord: RelativeChord, mode: Mode) -> bool:
    """In minor: whether the chord uses the raised sixth degree, as IV and vi° do."""
    return mode.is_minor and RAISED_SIXTH in chord.places


def triad_is_minor(place: int, mode: Mode) -> bool | None:
    """Whether the mode's triad on a degree (its place) is minor; None where it is diminished or there is none.

    The fifth degree of minor counts as major: its dominant is what one leads to.
    """
    degrees = mode.degrees
    if place not in degrees or place + 1 not in degrees:
        return None
    return place - 3 in degrees and not (mode.is_minor and place == DOMINANT)


def _is_second_before_dominant(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """Whether a diminished chord on the second degree goes to the dominant: then it is ii, whatever the mode."""
    return after is not None and (chord.root, after.root) == (SUPERTONIC, DOMINANT) and chord.quality.has_minor_third


def _resolves(target: int, after: RelativeChord | None) -> bool:
    return after is not None and after.root == target
