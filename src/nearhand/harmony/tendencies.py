"""Tendency tones: the notes of a chord that want to move, where they should go, and where the next chord lets them go.

Sources: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "V7 to I" (leading tone, chordal seventh), "The
cadential six-four chord", "Voice leading augmented sixth chords", "Voice leading borrowed chords"; Open Music Theory,
"Altered subdominants" and "Cadence types". Suspended fourths: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.harmony.applied import Target
from nearhand.harmony.functions import is_cadential
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, LOWERED_SIXTH, SUBDOMINANT, SUPERTONIC, Mode
from nearhand.theory.mode import RAISED_FOURTH as SHARP_FOURTH
from nearhand.theory.record import NamedTuple

KEY_LEADING_TONE = "leading tone"
APPLIED_LEADING_TONE = "applied leading tone"
FOURTH_OVER_BASS = "fourth of the cadential six-four"
SIXTH_OVER_BASS = "sixth of the cadential six-four"
SUSPENDED_FOURTH = "suspended fourth"
RAISED_FOURTH = "raised fourth"
LOWERED_SECOND = "lowered second"
FALLING_SIXTH = "lowered sixth"
CHORDAL_SEVENTH = "chordal seventh"
RISES, FALLS, STAYS, LEAVES, ENDS = "rises", "falls", "stays", "leaves", "ends"
"""What a tendency tone does: it moves by step, it is held, the next chord does not take it up, no chord follows."""

_MEDIANT_IN_MINOR, _LOWERED_SECOND = -3, -5
_MAJOR_THIRD, _MINOR_THIRD, _MAJOR_SEVENTH, _MINOR_SEVENTH = 4, -3, 5, -2
_DIMINISHED_FIFTH, _AUGMENTED_FIFTH = -6, 8
_DOWN_A_STEP = (5, -2)
"""A minor and a major second down, in fifths: to the same letter."""
_CHROMATIC_SEMITONE = 7
_UNDER_LOWERED_SIXTH = frozenset((SUPERTONIC, SUBDOMINANT, DOMINANT, LEADING_TONE, _LOWERED_SECOND))
"""Roots of the predominants and dominants in which the lowered sixth falls."""


class Tendency(NamedTuple):
    """One tendency tone, its places in fifths above the tonic.

    ``kinds``: what makes it one, the strongest first. ``expected``: where it may go, likeliest first. ``went``: the
    tone of the next chord it reaches, spelled as that chord has it; None when it reaches none. ``how``: one of RISES,
    FALLS, STAYS, LEAVES, ENDS.
    """

    place: int
    kinds: tuple[str, ...]
    expected: tuple[int, ...]
    went: int | None
    how: str

    @property
    def kind(self) -> str:
        """The strongest of its kinds."""
        return self.kinds[0]

    @property
    def is_resolved(self) -> bool:
        """Whether it went where it was expected, whatever the spelling."""
        return self.went is not None and _sound(self.went) in map(_sound, self.expected)


def tendencies(
    chord: RelativeChord, after: RelativeChord | None, mode: Mode, target: Target | None = None
) -> tuple[Tendency, ...]:
    """The tendency tones of a chord, each once, and where they went in the chord ``after`` (None at the end).

    ``target`` is the degree the chord is applied to, as ``harmony.analysis`` finds it. A tone goes to the first of its
    expected tones that the next chord has, by sound, a minor or major second away; else it stays where the next chord
    has it too; else it slips by a chromatic semitone. Chords do not tell voices apart: this is what the chords allow.

    In a chain of dominant sevenths the leading tone slips down to become the next seventh (common practice).

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> for tendency in tendencies(parse_numeral("V7", MAJOR), parse_numeral("I", MAJOR), MAJOR):
    ...     print(tendency.place, tendency.kind, tendency.how, tendency.went)
    5 leading tone rises 0
    -1 chordal seventh falls 4
    """
    kinds: dict[int, list[str]] = {}
    expected: dict[int, list[int]] = {}
    for kind, place, goals in _tendency_tones(chord, after, mode, target):
        kinds.setdefault(place, []).append(kind)
        known = expected.setdefault(place, [])
        known += [goal for goal in goals if goal not in known]
    return tuple(
        Tendency(place, tuple(names), tuple(expected[place]), *_way(place, expected[place], after))
        for place, names in kinds.items()
    )


def is_augmented_sixth(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """Whether a chord over the lowered sixth degree is an augmented sixth: it has 1 and the raised 4 besides.

    Charts write it as a dominant seventh on the lowered sixth degree (A flat 7 in C; Hutchinson, "Types of augmented
    sixth chords"); spelled so, it is one only where the dominant or a six-four on the fifth degree follows.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> sixth, dominant, neapolitan = (parse_numeral(text, MAJOR) for text in ("bVI7", "V", "bII"))
    >>> is_augmented_sixth(sixth, dominant), is_augmented_sixth(sixth, neapolitan)
    (True, False)
    """
    if chord.bass != LOWERED_SIXTH or not {LOWERED_SIXTH, 0} <= set(chord.places):
        return False
    if SHARP_FOURTH in chord.places:
        return True
    stands_on_dominant = after is not None and (after.root, after.bass) in ((DOMINANT, DOMINANT), (0, DOMINANT))
    return stands_on_dominant and _raised_fourth(chord) is not None


def _tendency_tones(
    chord: RelativeChord, after: RelativeChord | None, mode: Mode, target: Target | None
) -> Iterator[tuple[str, int, tuple[int, ...]]]:
    """Kind, place and goals of every tendency, the strongest first; a place may come more than once."""
    goal = 0 if target is None else target.place
    if _is_of_dominant_kind(chord.above(-goal)):
        kind, place = KEY_LEADING_TONE if target is None else APPLIED_LEADING_TONE, goal + LEADING_TONE
        slips = _is_link_of_a_chain(chord, after)
        yield kind, place, (place - _CHROMATIC_SEMITONE, goal) if slips else (goal,)
    if is_cadential(chord, after):
        yield FOURTH_OVER_BASS, 0, (LEADING_TONE,)
        for third in {_MAJOR_THIRD, _MINOR_THIRD}.intersection(chord.places):
            yield SIXTH_OVER_BASS, third, (SUPERTONIC,)
    fourth = chord.quality.interval(4)
    if fourth is not None and chord.quality.interval(3) is None:
        thirds = (chord.root + _MAJOR_THIRD, chord.root + _MINOR_THIRD)
        yield SUSPENDED_FOURTH, chord.root + fourth, _of_letter(thirds, mode, after)
    is_sixth = is_augmented_sixth(chord, after)
    raised = _raised_fourth(chord) if is_sixth or _leads_to_dominant(chord, mode, target) else None
    if raised is not None:
        yield RAISED_FOURTH, raised, (DOMINANT, SUBDOMINANT)
    if target is None and chord.root == _LOWERED_SECOND and _LOWERED_SECOND + _MAJOR_THIRD in chord.places:
        yield LOWERED_SECOND, _LOWERED_SECOND, (0, LEADING_TONE)
    if LOWERED_SIXTH in chord.places and (is_sixth or _lets_sixth_fall(chord, mode, target)):
        yield FALLING_SIXTH, LOWERED_SIXTH, (DOMINANT,)
    for place in _sevenths(chord):
        if place != raised:
            yield CHORDAL_SEVENTH, place, _of_letter(tuple(place + step for step in _DOWN_A_STEP), mode, after)


def _is_of_dominant_kind(chord: RelativeChord) -> bool:
    """Whether a chord is V, vii° or III+ with the leading tone, seen from the tonic it is counted from."""
    third, fifth, seventh = (chord.quality.interval(number) for number in (3, 5, 7))
    return (
        (chord.root == DOMINANT and third == _MAJOR_THIRD and seventh != _MAJOR_SEVENTH)
        or (chord.root == LEADING_TONE and (third, fifth) == (_MINOR_THIRD, _DIMINISHED_FIFTH))
        or (chord.root == _MEDIANT_IN_MINOR and (third, fifth) == (_MAJOR_THIRD, _AUGMENTED_FIFTH))
    )


def _is_link_of_a_chain(chord: RelativeChord, after: RelativeChord | None) -> bool:
    """Whether a dominant seventh is followed by the dominant seventh a fifth below."""
    if after is None or after.root != chord.root - DOMINANT:
        return False
    return chord.quality.is_dominant_seventh and after.quality.is_dominant_seventh


def _leads_to_dominant(chord: RelativeChord, mode: Mode, target: Target | None) -> bool:
    """Whether a chord has the raised fourth as the leading tone of V: applied to V, or diminished upon it."""
    if SHARP_FOURTH not in chord.places or SHARP_FOURTH in mode.degrees:
        return False
    if target is None:
        return chord.root == SHARP_FOURTH and chord.quality.interval(5) == _DIMINISHED_FIFTH
    return target.place == DOMINANT and _is_of_dominant_kind(chord.above(-DOMINANT))


def _lets_sixth_fall(chord: RelativeChord, mode: Mode, target: Target | None) -> bool:
    """Whether the lowered sixth falls in a chord: in predominants and dominants, and on the root of a borrowed one."""
    if target is not None and target.place != DOMINANT:
        return False
    is_borrowed_root = chord.root == LOWERED_SIXTH and not mode.has_minor_third
    return is_borrowed_root or chord.root in _UNDER_LOWERED_SIXTH


def _raised_fourth(chord: RelativeChord) -> int | None:
    """The tone that sounds as the raised fourth degree, however it is spelled."""
    return next((place for place in chord.places if _sound(place) == _sound(SHARP_FOURTH)), None)


def _sevenths(chord: RelativeChord) -> Iterator[int]:
    """The chordal seventh; in a chord without one a seventh that lies in the bass."""
    seventh = chord.quality.interval(7)
    if seventh is not None:
        yield chord.root + seventh
    elif chord.bass - chord.root in (_MINOR_SEVENTH, _MAJOR_SEVENTH):
        yield chord.bass


def _of_letter(goals: tuple[int, ...], mode: Mode, after: RelativeChord | None) -> tuple[int]:
    """Of two goals of one letter that which the next chord has, or else that of the key (in minor: V has its third)."""
    own = {*mode.degrees, LEADING_TONE} if mode.is_minor else set(mode.degrees)
    sounds = set() if after is None else {_sound(tone) for tone in (after.bass, *after.places)}
    return (min(goals, key=lambda goal: (_sound(goal) not in sounds, goal not in own)),)


def _way(place: int, expected: list[int], after: RelativeChord | None) -> tuple[int | None, str]:
    """Which tone of the next chord a tendency tone reaches, and how."""
    if after is None:
        return None, ENDS
    tones = {_sound(tone): tone for tone in (after.bass, *after.places)}
    for goal in expected:
        semitones = (_sound(goal) - _sound(place)) % 12
        if _sound(goal) in tones and semitones in (1, 2, 10, 11):
            return tones[_sound(goal)], RISES if semitones <= 2 else FALLS
    if _sound(place) in tones:
        return tones[_sound(place)], STAYS
    for slip, how in ((-_CHROMATIC_SEMITONE, FALLS), (_CHROMATIC_SEMITONE, RISES)):
        if place + slip in tones.values():
            return place + slip, how
    return None, LEAVES


def _sound(place: int) -> int:
    """Semitones above the tonic, 0 to 11."""
    return 7 * place % 12
