"""The kinds of cadence: which two chords make which, at the end of a phrase and within it.

Definitions: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Perfect authentic cadence" and its
neighbours (imperfect authentic, half, plagal, deceptive) and "The deceptive cadence with flat six"; Open Music Theory,
"Cadence types". From memory: Phrygian half, evaded, and V7 to IV6 as a deceptive cadence. Common practice, no source:
the subtonic cadence, and what counts within a phrase.
"""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis
from nearhand.harmony.functions import PREDOMINANT, is_cadential
from nearhand.harmony.tendencies import is_augmented_sixth
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT, LEADING_TONE, LOWERED_SIXTH, RAISED_SIXTH, SUBDOMINANT, SUBTONIC
from nearhand.theory.record import NamedTuple

PERFECT_AUTHENTIC, IMPERFECT_AUTHENTIC, AUTHENTIC = "perfect authentic", "imperfect authentic", "authentic"
HALF, PHRYGIAN_HALF, PLAGAL = "half", "Phrygian half", "plagal"
DECEPTIVE, EVADED, SUBTONIC_CADENCE = "deceptive", "evaded", "subtonic"
MEANINGS = {
    PERFECT_AUTHENTIC: "dominant to tonic, both in root position, with the tonic in the top voice",
    IMPERFECT_AUTHENTIC: "dominant to tonic, less final than a perfect one",
    AUTHENTIC: "dominant to tonic, both in root position; the top voice decides whether it is perfect",
    HALF: "the phrase stops on the dominant",
    PHRYGIAN_HALF: "the minor fourth chord over its third goes to the dominant, the bass down a half step",
    PLAGAL: "the fourth chord goes to the tonic",
    DECEPTIVE: "the dominant goes to another chord in the tonic's place",
    EVADED: "the dominant slips past its tonic, and the phrase goes on",
    SUBTONIC_CADENCE: "the major chord on the lowered seventh degree goes to the tonic (common practice)",
}
"""Every kind of cadence, and what it is in plain words."""

_MAJOR_THIRD, _MINOR_THIRD, _MAJOR_SEVENTH, _MINOR_SEVENTH = 4, -3, 5, -2
_PERFECT_FIFTH, _DIMINISHED_FIFTH, _LOWERED_SECOND = 1, -6, -5


class Named(NamedTuple):
    """A kind of cadence, the chord from which it reaches its goal (an index), and what decided, in plain words."""

    kind: str
    before: int
    reason: str


class Passage(NamedTuple):
    """A phrase within its piece: what is known of all chords, and the phrase's first chord and the one behind its last.

    ``opens_bar`` and ``tonic_on_top`` (None where the top notes are not known) speak of each chord of the piece.
    """

    analyses: tuple[Analysis, ...]
    opens_bar: tuple[bool, ...]
    tonic_on_top: tuple[bool, ...] | None
    start: int
    end: int

    def chord(self, index: int) -> RelativeChord:
        """The chord at an index of the piece."""
        return self.analyses[index].chord

    def behind_root(self, root: int, index: int) -> int | None:
        """From ``index`` back: the nearest chord of the phrase that stands on another root; None without one."""
        while index >= self.start and self.chord(index).root == root:
            index -= 1
        return index if index >= self.start else None


def at_end(phrase: Passage, before: int, goal: int) -> Named | None:
    """The cadence that two chords make at the end of a phrase."""
    for judge in (_authentic, _half, _plagal, _deceptive, _subtonic):
        named = judge(phrase, before, goal)
        if named is not None:
            return named
    return None


def within(phrase: Passage, before: int, goal: int) -> Named | None:
    """The cadence that two neighbouring chords make where a phrase goes on: only from a prepared dominant.

    V-I counts in root position and where I opens a bar; V-vi and evasions count anywhere.
    """
    moves = _is_dominant(phrase.chord(before)) and phrase.chord(goal).root != DOMINANT
    if not moves or not _is_prepared(phrase, before):
        return None
    if phrase.opens_bar[goal] and phrase.chord(before).bass == DOMINANT and phrase.chord(goal).bass == 0:
        named = _authentic(phrase, before, goal)
        if named is not None:
            return named
    return _deceptive(phrase, before, goal) or _evaded(phrase, before, goal)


def _authentic(phrase: Passage, before: int, goal: int) -> Named | None:
    first, last = phrase.chord(before), phrase.chord(goal)
    if first.root == first.bass == _LOWERED_SECOND and first.quality.is_dominant_seventh and _is_goal(phrase, goal):
        return Named(IMPERFECT_AUTHENTIC, before, "the tritone substitute stands for the dominant")
    is_leading_tone_chord = _is_leading_tone_chord(first)
    is_dominant = _is_dominant(first) or _is_suspended_dominant(first)
    if not (is_leading_tone_chord or is_dominant) or not _is_goal(phrase, goal):
        return None
    if is_leading_tone_chord:
        return Named(IMPERFECT_AUTHENTIC, before, "the leading-tone chord stands for the dominant")
    if first.bass == first.root and last.bass == last.root:
        return _by_top_voice(phrase, before, goal)
    inverted = "dominant" if first.bass != first.root else "tonic"
    return Named(IMPERFECT_AUTHENTIC, before, f"the {inverted} chord is inverted")


def _by_top_voice(phrase: Passage, before: int, goal: int) -> Named:
    """An authentic cadence in root position: its top voice decides."""
    if phrase.tonic_on_top is None:
        return Named(AUTHENTIC, before, "both chords are in root position; the top voice is not known")
    if phrase.tonic_on_top[goal]:
        return Named(
            PERFECT_AUTHENTIC, before, "both chords are in root position, with the tonic on top in this voicing"
        )
    return Named(IMPERFECT_AUTHENTIC, before, "another note than the tonic is on top in this voicing")


def _half(phrase: Passage, before: int, goal: int) -> Named | None:
    last = phrase.chord(goal)
    come_from = phrase.behind_root(DOMINANT, before)
    if come_from is None or last.bass != DOMINANT or not _is_dominant(last):
        return None
    first, mode = phrase.chord(come_from), phrase.analyses[goal].mode
    is_minor_fourth = first.root == SUBDOMINANT and first.quality.has_minor_third
    if mode.has_minor_third and is_minor_fourth and first.bass == LOWERED_SIXTH:
        return Named(PHRYGIAN_HALF, come_from, "the bass falls a half step to the dominant")
    if 7 in last.quality.numbers:
        return Named(HALF, come_from, "the phrase stops on the dominant, with its seventh")
    target = phrase.analyses[come_from].target
    if target is not None and target.place == DOMINANT:
        return Named(HALF, come_from, "the phrase stops on the dominant, reached from a chord applied to it")
    return Named(HALF, come_from, "the phrase stops on the dominant")


def _plagal(phrase: Passage, before: int, goal: int) -> Named | None:
    first = phrase.chord(before)
    if first.root != SUBDOMINANT or first.bass != first.root or not _is_sound_chord(first):
        return None
    come_from = phrase.behind_root(SUBDOMINANT, before)
    is_after_dominant = come_from is not None and phrase.chord(come_from).root == DOMINANT
    if is_after_dominant or not _is_goal(phrase, goal) or phrase.chord(goal).bass != 0:
        return None
    reason = "the minor fourth chord" if first.quality.has_minor_third else "the fourth chord"
    return Named(PLAGAL, before, f"{reason} goes to the tonic, both in root position")


def _deceptive(phrase: Passage, before: int, goal: int) -> Named | None:
    first, last = phrase.chord(before), phrase.chord(goal)
    if not _is_dominant(first) or first.bass != DOMINANT:
        return None
    if last.bass == last.root and _is_submediant(last, phrase.analyses[goal].mode.has_minor_third):
        lowered = last.root == LOWERED_SIXTH and not phrase.analyses[goal].mode.has_minor_third
        return Named(DECEPTIVE, before, f"the {'lowered ' * lowered}sixth degree comes in the tonic's place")
    is_fourth_chord = last.root == SUBDOMINANT and last.bass == last.root + (last.quality.interval(3) or 0)
    if 7 in first.quality.numbers and is_fourth_chord and _is_sound_chord(last) and last.bass != last.root:
        return Named(DECEPTIVE, before, "the fourth chord over its third comes in the tonic's place")
    return None


def _evaded(phrase: Passage, before: int, goal: int) -> Named | None:
    first, last = phrase.chord(before), phrase.chord(goal)
    target = phrase.analyses[goal].target
    is_seventh_in_bass = last.quality.is_dominant_seventh and last.bass == last.root + _MINOR_SEVENTH
    if target is not None and is_seventh_in_bass and last.root == target.place + DOMINANT and first.bass == DOMINANT:
        return Named(EVADED, before, "another dominant, its seventh in the bass, comes in the tonic's place")
    if not _is_goal(phrase, goal) or last.bass == 0 or first.bass not in (DOMINANT, DOMINANT + _MINOR_SEVENTH):
        return None
    if not _has_root_position(phrase, before):
        return None
    return Named(EVADED, before, "the tonic comes over its third, and the phrase goes on")


def _subtonic(phrase: Passage, before: int, goal: int) -> Named | None:
    first = phrase.chord(before)
    is_subtonic = first.root == first.bass == SUBTONIC and first.quality.interval(3) == _MAJOR_THIRD
    if not is_subtonic or not _is_goal(phrase, goal) or phrase.chord(goal).bass != 0:
        return None
    return Named(SUBTONIC_CADENCE, before, "the lowered seventh degree rises to the tonic without a leading tone")


def _is_dominant(chord: RelativeChord) -> bool:
    """Whether a chord is V with its leading tone, over one of its own tones."""
    has_leading_tone = chord.root == DOMINANT and chord.quality.interval(3) == _MAJOR_THIRD
    return has_leading_tone and chord.quality.interval(7) != _MAJOR_SEVENTH and chord.bass in chord.places


def _is_suspended_dominant(chord: RelativeChord) -> bool:
    """Whether a chord is V7 with its third suspended."""
    numbers = chord.quality.numbers
    return chord.root == chord.bass == DOMINANT and 3 not in numbers and {4, 7} <= set(numbers)


def _is_leading_tone_chord(chord: RelativeChord) -> bool:
    return chord.root == LEADING_TONE and chord.quality.interval(5) == _DIMINISHED_FIFTH and chord.bass in chord.places


def _is_sound_chord(chord: RelativeChord) -> bool:
    """Whether a chord has a major or minor third and a perfect fifth (or none), or is a bare fifth."""
    third, fifth = chord.quality.interval(3), chord.quality.interval(5)
    is_bare = chord.quality.numbers == (1, 5)
    return (third in (_MAJOR_THIRD, _MINOR_THIRD) or is_bare) and fifth in (_PERFECT_FIFTH, None)


def _is_goal(phrase: Passage, goal: int) -> bool:
    """Whether a chord is a tonic to close on, over its root or third; as dominant seventh only where the piece ends."""
    chord = phrase.chord(goal)
    ends_piece = phrase.end == len(phrase.analyses)
    is_at_rest = not chord.quality.is_dominant_seventh or (ends_piece and _is_last_harmony(phrase, goal))
    return chord.root == 0 and chord.bass in (0, _MAJOR_THIRD, _MINOR_THIRD) and _is_sound_chord(chord) and is_at_rest


def _is_last_harmony(phrase: Passage, goal: int) -> bool:
    return all(phrase.chord(index).root == 0 for index in range(goal, phrase.end))


def _is_submediant(chord: RelativeChord, in_minor: bool) -> bool:
    """Whether a chord is vi of major, or VI of minor (borrowed in major)."""
    third = chord.quality.interval(3)
    is_plain = chord.root == RAISED_SIXTH and third == _MINOR_THIRD and not in_minor
    return _is_sound_chord(chord) and (is_plain or (chord.root == LOWERED_SIXTH and third == _MAJOR_THIRD))


def _is_prepared(phrase: Passage, dominant: int) -> bool:
    """Whether a predominant chord or a cadential six-four stands before a dominant and what V chords lead to it."""
    index = phrase.behind_root(DOMINANT, dominant)
    if index is None:
        return False
    chord, after = phrase.chord(index), phrase.chord(index + 1)
    is_predominant = phrase.analyses[index].function == PREDOMINANT or is_augmented_sixth(chord, after)
    return is_predominant or is_cadential(chord, after)


def _has_root_position(phrase: Passage, dominant: int) -> bool:
    """Whether a dominant, or one of the V chords that lead to it, is in root position."""
    while dominant >= phrase.start and phrase.chord(dominant).root == DOMINANT:
        if phrase.chord(dominant).bass == DOMINANT:
            return True
        dominant -= 1
    return False
