"""What a chord is and does, in plain sentences: what it is and does, where its notes go, what it stands for."""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis
from nearhand.harmony.functions import (
    COLOUR,
    DOMINANT,
    PREDOMINANT,
    TONIC,
    is_cadential,
    is_suspended_over_dominant,
    leads_to_mediant,
)
from nearhand.harmony.origins import Scene, origin
from nearhand.harmony.replacement import diatonic_replacement, differing_tones, unmatched_tones
from nearhand.harmony.sources import own_source
from nearhand.harmony.special_chords import sound
from nearhand.harmony.tendencies import (
    CHORDAL_SEVENTH,
    ENDS,
    FALLS,
    RAISED_FOURTH,
    RISES,
    STAYS,
    Tendency,
    tendencies,
)
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS, degree_number
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT as FIFTH
from nearhand.theory.mode import LEADING_TONE, LOWERED_SIXTH, RAISED_SEVENTH, RAISED_SIXTH, SUBDOMINANT, SUPERTONIC
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES

_OF_FUNCTION = {
    TONIC: "It is at rest: tonic.",
    PREDOMINANT: "It prepares the dominant: predominant.",
    DOMINANT: "It pulls towards the tonic: dominant.",
    COLOUR: "It adds colour; its pull depends on what follows.",
}


def sentences(analysis: Analysis, key: Key, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """Where the chord comes from, what it does, and what lies in the bass.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("E minor")
    >>> for sentence in sentences(analyse([parse_numeral("V65", key.mode)], key.mode)[0], key):
    ...     print(sentence)
    It comes from harmonic minor: the 7th degree is raised to D♯, the leading tone. Melodic minor holds it too.
    It pulls towards the tonic: dominant.
    D♯ lies in the bass: first inversion.
    """
    scene = Scene(analysis, key, conventions)
    lines = (origin(scene), _effect(scene), _bass(scene))
    return tuple(line for line in lines if line)


def altered_degrees(analysis: Analysis, key: Key, conventions: Conventions = DEFAULT) -> tuple[tuple[str, str], ...]:
    """The chord tones outside the key's own scale (natural form in minor): pairs of degree and note.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("E minor")
    >>> altered_degrees(analyse([parse_numeral("V7", key.mode)], key.mode)[0], key)
    (('♯7', 'D♯'),)
    """
    return Scene(analysis, key, conventions).altered()


def tendencies_of(analysis: Analysis) -> tuple[Tendency, ...]:
    """The tendency tones of a chord as it is named, and where they went in the next one."""
    found = tendencies(analysis.reading, analysis.after, analysis.mode, analysis.target)
    return tuple(tendency._replace(kinds=_kinds(tendency)) for tendency in found)


def _kinds(tendency: Tendency) -> tuple[str, ...]:
    """A raised fourth is one by its spelling: the lowered fifth of a substitute dominant is its seventh."""
    if tendency.kind == RAISED_FOURTH and tendency.place < 0:
        return (CHORDAL_SEVENTH,)
    return tendency.kinds


def where_tones_go(analysis: Analysis, key: Key, conventions: Conventions = DEFAULT) -> str:
    """One sentence on the tendency tones and where they went; empty where there are none, or no chord follows.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> where_tones_go(analyse([parse_numeral(text, key.mode) for text in ("V7", "I")], key.mode)[0], key)
    'B, the leading tone, rises to C; F, the chordal seventh, falls to E.'
    """
    scene = Scene(analysis, key, conventions)
    parts = [_went(tendency, scene) for tendency in tendencies_of(analysis) if tendency.how != ENDS]
    return f"{'; '.join(parts)}." if parts else ""


def _went(tendency: Tendency, scene: Scene) -> str:
    named = f"{scene.note(tendency.place)}, the {tendency.kind}"
    if tendency.how in (RISES, FALLS) and tendency.went is not None:
        return f"{named}, {tendency.how} to {scene.note(tendency.went)}"
    if tendency.how == STAYS:
        return f"{named}, stays"
    expected = " or ".join(scene.note(place) for place in tendency.expected)
    return f"{named}, would go to {expected} but does not find it here"


def own_chord_in_place(analysis: Analysis) -> RelativeChord | None:
    """The key's own chord on the degree of a foreign one; None for a chord of the key itself.

    An augmented sixth stands for the fourth chord over its third, the French one for the second over its fifth: it is
    made from them by raising the fourth degree.
    """
    chord, mode = analysis.reading, analysis.mode
    if own_source(chord, mode) is not None:
        return None
    if chord.root == LOWERED_SIXTH and chord.quality in _MADE_FROM:
        root, kind = _MADE_FROM[chord.quality]
        chord = RelativeChord(root, QUALITIES[kind], LOWERED_SIXTH)
        return chord if own_source(chord, mode) else diatonic_replacement(chord, mode)
    return diatonic_replacement(chord, mode)


_MADE_FROM = {
    AUGMENTED_SIXTHS["It"]: (SUBDOMINANT, "minor"),
    AUGMENTED_SIXTHS["Ger"]: (SUBDOMINANT, "minor-seventh"),
    AUGMENTED_SIXTHS["Fr"]: (SUPERTONIC, "half-diminished"),
}


def instead_of_own(analysis: Analysis, key: Key, conventions: Conventions = DEFAULT) -> str:
    """One sentence on the key's own chord in a foreign chord's place, and which notes differ; else empty.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> instead_of_own(analyse([parse_numeral("iv", key.mode)], key.mode)[0], key)
    'The key itself has F (IV) in its place: this chord has A♭ for A.'
    """
    other = own_chord_in_place(analysis)
    if other is None:
        return ""
    scene, chord = Scene(analysis, key, conventions), analysis.reading
    parts = [f"{scene.note(new)} for {scene.note(old)}" for new, old in differing_tones(chord, other)]
    parts += [f"{scene.note(new)} besides" for new in unmatched_tones(chord, other)]
    parts += [f"no {scene.note(old)}" for old in unmatched_tones(other, chord)]
    numeral = Analysis(other, key.mode, "", "", None, None).numeral(conventions)
    differs = f": this chord has {', '.join(parts)}" if parts else ""
    return f"The key itself has {scene.symbol(other)} ({numeral}) in its place{differs}."


def between_neighbours(
    before: Analysis | None, analysis: Analysis, after: Analysis | None, key: Key, conventions: Conventions = DEFAULT
) -> str:
    """One sentence that names the chords before and after.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> row = analyse([parse_numeral(text, key.mode) for text in ("I", "iv", "V")], key.mode)
    >>> between_neighbours(*row, key)
    'It stands between C (I) and G (V).'
    """
    scene = Scene(analysis, key, conventions)
    named = [other and f"{scene.symbol(other.chord)} ({other.numeral(conventions)})" for other in (before, after)]
    if named[0] and named[1]:
        return f"It stands between {named[0]} and {named[1]}."
    if named[0]:
        return f"It comes after {named[0]} and closes the progression."
    return f"It opens the progression; {named[1]} follows." if named[1] else ""


def _effect(scene: Scene) -> str:
    analysis = scene.analysis
    chord, function, after = analysis.reading, analysis.function, analysis.after
    goal = analysis.target or analysis.goal
    if goal is not None and goal.place and function == DOMINANT:
        return f"It pulls towards {scene.degree(*goal)}: a dominant of that degree."
    if function == TONIC:
        return _rest(chord)
    is_plain = function == PREDOMINANT and analysis.target is None
    if is_plain and after is not None and after.root == 0 and after.bass != FIFTH:
        return _goes_home(analysis)
    return (function == DOMINANT and _dominant(scene)) or _OF_FUNCTION[function]


def _dominant(scene: Scene) -> str:
    """What is to be said of a dominant that is not the plain one; else empty."""
    chord, after = scene.analysis.reading, scene.analysis.after
    if is_cadential(chord, after):
        return "It stands over the dominant's bass and delays it: a cadential six-four, dominant in function."
    if is_suspended_over_dominant(chord):
        return "It stands over the 5th degree in place of a suspended dominant: dominant in function."
    if leads_to_mediant(chord, after):
        mediant = scene.degree(chord.root - FIFTH, is_small=False)
        return f"It leads to {mediant} as its dominant; V7/{mediant} is another name for it: dominant."
    if chord.root == FIFTH and LEADING_TONE not in chord.places and chord.quality.has_minor_third:
        return "It stands in the dominant's place without the leading tone, and so pulls less: dominant."
    return ""


def _goes_home(analysis: Analysis) -> str:
    """A predominant that goes to the tonic without a dominant."""
    chord, before, after = analysis.reading, analysis.before, analysis.after
    if chord.root == SUBDOMINANT and chord.bass == 0 and before and after and before.bass == after.bass == 0:
        return "It decorates the tonic over the bass that stays, a pedal six-four: predominant."
    if chord.root == SUBDOMINANT:
        return "It goes straight to the tonic, a plagal step: predominant."
    return "It would prepare the dominant, but goes straight to the tonic: predominant."


def _rest(chord: RelativeChord) -> str:
    if chord.root:
        return "It stands in for the tonic: tonic."
    if 3 not in chord.quality.numbers and {2, 4} & set(chord.quality.numbers):
        return "It is the tonic with its third still to come: tonic."
    if chord.quality.is_dominant_seventh:
        return "It is home, with a seventh that need not resolve: tonic."
    return _OF_FUNCTION[TONIC]


def _is_degree(place: int, key: Key) -> bool:
    """Whether a note is a degree of the key: in minor of any of its forms."""
    return place in key.mode.degrees or (key.mode.is_minor and place in (RAISED_SIXTH, RAISED_SEVENTH))


def _bass(scene: Scene) -> str:
    chord = scene.analysis.reading
    if chord.bass == chord.own_bass or scene.analysis.source == "pedal":
        return ""
    note = scene.note(chord.bass)
    heard = [sound(place) for place in chord.places]
    if sound(chord.bass) in heard:  # spelled as the chord has it, or otherwise
        number = chord.quality.numbers[heard.index(sound(chord.bass))]
        inversion = {3: "first", 5: "second", 7: "third"}.get(number)
        return (
            f"{note} lies in the bass: {inversion} inversion."
            if inversion
            else f"{note}, a chord tone, lies in the bass."
        )
    degree = f"the {ORDINALS[degree_number(chord.bass) - 1]} degree"
    where = degree if _is_degree(chord.bass, scene.key) else "outside the key"
    return f"{note}, {where}, lies in the bass and is no chord tone."
