"""Chords that neither the key nor a parallel mode nor a plain applied dominant explains: recognised by what they do.

Each recogniser looks at a chord between its neighbours. Sources: augmented sixths, Open Music Theory, "Altered
subdominants", and R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Types of augmented sixth chords";
tritone substitutes, Hutchinson, "Turnaround progression"; common-tone diminished sevenths, handouts of N. Rogers and
S. Birch (second-hand); backdoor dominants, chromatic mediants and pedals, common practice, no source.
"""

from __future__ import annotations

from nearhand.harmony.applied import Target, triad_is_minor
from nearhand.harmony.functions import COLOUR, DOMINANT, PREDOMINANT
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import DOMINANT as FIFTH
from nearhand.theory.mode import LEADING_TONE, LOWERED_SIXTH, RAISED_FOURTH, SUBTONIC, Mode
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES, SWISS
from nearhand.theory.record import NamedTuple

AUGMENTED_SIXTH = "augmented sixth"
TRITONE_SUBSTITUTE = "tritone substitute"
BACKDOOR = "backdoor dominant"
COMMON_TONE = "common-tone diminished"
CHROMATIC_MEDIANT = "chromatic mediant"
PEDAL = "pedal"
RESPELLED = "applied"

_SPELLED_AS_SEVENTH = -6
"""How a chart spells the raised fourth of an augmented sixth: in A minor E flat for D sharp."""
_SIXTHS_BY_FIFTH = {1: AUGMENTED_SIXTHS["Ger"], None: AUGMENTED_SIXTHS["It"], -6: AUGMENTED_SIXTHS["Fr"]}
_SPELLED_SIXTHS = {
    frozenset(LOWERED_SIXTH + interval for interval in sixth.intervals): sixth for sixth in AUGMENTED_SIXTHS.values()
}
"""The notes of the augmented sixths, whatever chord symbol spells them (D7b5 over A flat in C is the French one)."""
_THIRD_RELATED = (4, -3, 3, -4)


class Special(NamedTuple):
    """What a chord turned out to be: its source, the chord as it is named, its function, and what it leads to.

    ``function`` is empty where the degree decides it.
    """

    source: str
    reading: RelativeChord
    function: str = ""
    target: Target | None = None


class Place(NamedTuple):
    """A chord between its neighbours (None at the ends), and whether its spelling makes it an applied chord."""

    chord: RelativeChord
    mode: Mode
    before: RelativeChord | None
    after: RelativeChord | None
    is_applied: bool

    @property
    def goal(self) -> int | None:
        """The root of what follows; a six-four over the fifth degree counts as the dominant."""
        if self.after is None:
            return None
        return FIFTH if (self.after.root, self.after.bass) == (0, FIFTH) else self.after.root


def special(place: Place) -> Special | None:
    """What a chord is by what it does; None where no recogniser knows it.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> substitute, tonic = parse_numeral("bII7", MAJOR), parse_numeral("I", MAJOR)
    >>> special(Place(substitute, MAJOR, None, tonic, False)).source
    'tritone substitute'
    """
    for recognise in _RECOGNISERS:
        found = recognise(place)
        if found is not None:
            return found
    return None


def sound(place: int) -> int:
    """Semitones above the tonic, whatever the spelling."""
    return place * 7 % 12


def _augmented_sixth(place: Place) -> Special | None:
    """Spelled with its augmented sixth anywhere; written as a dominant seventh only before V or its six-four.

    A dominant seventh that goes on to another one is an augmented sixth in minor, a tritone substitute in major.
    """
    chord, after = place.chord, place.after
    spelled = _SPELLED_SIXTHS.get(frozenset(chord.places))
    if spelled is not None and chord.root != LOWERED_SIXTH and chord.bass == LOWERED_SIXTH and place.goal == FIFTH:
        reading = RelativeChord(LOWERED_SIXTH, spelled, chord.bass)
        return Special(AUGMENTED_SIXTH, reading, PREDOMINANT, Target(FIFTH, is_small=False))
    if chord.quality in (*AUGMENTED_SIXTHS.values(), SWISS):
        return Special(AUGMENTED_SIXTH, chord, PREDOMINANT, Target(chord.root - LOWERED_SIXTH + FIFTH, is_small=False))
    if after is None or chord.root != LOWERED_SIXTH or place.goal != FIFTH or chord.quality.layers is not None:
        return None
    is_seventh = chord.quality.is_dominant_seventh and chord.quality.numbers in ((1, 3, 5, 7), (1, 3, 7))
    quality = _SIXTHS_BY_FIFTH.get(chord.quality.interval(5))
    to_seventh = after.root == FIFTH and 7 in after.quality.numbers and not place.mode.has_minor_third
    is_dominant = after.root == 0 or (after.quality.interval(3) or 4) == 4
    if not is_seventh or quality is None or to_seventh or not is_dominant or chord.bass not in chord.places:
        return None
    bass = RAISED_FOURTH if chord.bass == _SPELLED_AS_SEVENTH else chord.bass
    return Special(
        AUGMENTED_SIXTH, RelativeChord(LOWERED_SIXTH, quality, bass), PREDOMINANT, Target(FIFTH, is_small=False)
    )


def _backdoor(place: Place) -> Special | None:
    chord, after = place.chord, place.after
    goes_home = after is not None and after.root == 0 and after.quality.interval(3) == 4
    if goes_home and chord.root == SUBTONIC and chord.quality.is_dominant_seventh and not place.mode.has_minor_third:
        return Special(BACKDOOR, chord, DOMINANT, Target(0, is_small=False))
    return None


def _tritone_substitute(place: Place) -> Special | None:
    """A dominant seventh that falls a half step to what its tritone partner would lead to.

    A chord whose spelling makes it an applied dominant stays one: in E7 E flat 7 D7 only the second is a substitute.
    """
    chord, after, goal = place.chord, place.after, place.goal
    if after is None or goal is None or not chord.quality.is_dominant_seventh or sound(chord.root - goal) != 1:
        return None
    if place.is_applied or after.quality.interval(3) not in (4, -3):
        return None
    own = triad_is_minor(goal, place.mode) if goal else None
    is_small = after.quality.has_minor_third if own is None else own
    return Special(TRITONE_SUBSTITUTE, chord, PREDOMINANT if goal == FIFTH else DOMINANT, Target(goal, is_small))


def _respelled_leading_tone_chord(place: Place) -> Special | None:
    """A diminished seventh spelled from another of its tones than the leading tone of what follows."""
    chord, after, goal = place.chord, place.after, place.goal
    if chord.quality != QUALITIES["diminished-seventh"] or after is None or goal is None:
        return None
    if after.quality.interval(5) == -6 or not any(sound(goal - tone) == 1 for tone in chord.places):
        return None
    root = goal + LEADING_TONE
    quality = chord.quality
    tones = {sound(root + interval): root + interval for interval in quality.intervals}
    reading = RelativeChord(root, quality, tones.get(sound(chord.bass), chord.bass))
    if reading == chord or (place.is_applied and chord.root == root):
        return None
    is_small = after.quality.has_minor_third if goal == 0 else triad_is_minor(goal, place.mode)
    if is_small is None:
        return None
    return Special(RESPELLED, reading, "", Target(goal, is_small))


def _common_tone(place: Place) -> Special | None:
    """A diminished seventh that holds the root of a neighbour; a diminished triad only on that very root."""
    chord = place.chord
    before = None if chord.root == LEADING_TONE else place.before  # the key's own vii°7 keeps its name
    neighbours = [other for other in (place.after, before) if other is not None]
    if chord.quality == QUALITIES["diminished-seventh"]:
        if place.goal is not None and any(sound(place.goal - tone) == 1 for tone in chord.places):
            return None  # it is the leading-tone chord of what follows
        heard = {sound(tone) for tone in chord.places}
    elif chord.quality == QUALITIES["diminished"] and not place.is_applied:
        heard = {sound(chord.root)}
    else:
        return None
    if any(sound(other.root) in heard and other.quality.interval(5) != -6 for other in neighbours):
        return Special(COMMON_TONE, chord, COLOUR)
    return None


def _chromatic_mediant(place: Place) -> Special | None:
    """A triad a third from the tonic chord beside it that keeps its quality, or, foreign altogether, changes it."""
    chord, before, after = place.chord, place.before, place.after
    triads = (QUALITIES["major"], QUALITIES["minor"])
    if chord.root not in _THIRD_RELATED or chord.quality not in triads:
        return None
    goes_home = after is not None and after.root == 0 and after.quality in triads
    comes_from_home = before is not None and before.root == 0 and before.quality in triads
    beside_another = after is not None and after.root in _THIRD_RELATED and after.quality == chord.quality
    if goes_home or (
        comes_from_home and (after is None or (beside_another and sound(after.root - chord.root) in (4, 8)))
    ):
        return Special(CHROMATIC_MEDIANT, chord, COLOUR)
    return None


_RECOGNISERS = (
    _augmented_sixth,
    _backdoor,
    _tritone_substitute,
    _respelled_leading_tone_chord,
    _common_tone,
    _chromatic_mediant,
)


def is_over_pedal(chord: RelativeChord, before: RelativeChord | None, after: RelativeChord | None) -> bool:
    """Whether a chord stands over a held bass that is none of its own tones."""
    if chord.bass in chord.places or before is None or before.bass != chord.bass:
        return False
    return (after is None or after.bass == chord.bass) and before.root != chord.root
