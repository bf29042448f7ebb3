"""What a chord is and does, in two or three plain sentences."""

from __future__ import annotations

from nearhand.harmony.analysis import APPLIED, NEAPOLITAN, Analysis
from nearhand.harmony.functions import COLOUR, DOMINANT, PREDOMINANT, TONIC, is_cadential
from nearhand.harmony.sources import BORROWED, CHROMATIC, DIATONIC
from nearhand.notation.accidentals import write_accidental
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS, degree_number
from nearhand.notation.keys import write_key
from nearhand.notation.notes import write_pitch_class
from nearhand.notation.numeral_writing import write_degree
from nearhand.theory.key import Key
from nearhand.theory.mode import LEADING_TONE, LOWERED_SIXTH, RAISED_SEVENTH, RAISED_SIXTH, SUBTONIC, SUPERTONIC

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
    It comes from harmonic minor: the 7th degree is raised to D♯, the leading tone.
    It pulls towards the tonic: dominant.
    D♯ lies in the bass: first inversion.
    """
    lines = [
        _origin(analysis, key, conventions),
        _effect(analysis, key, conventions),
        _bass(analysis, key, conventions),
    ]
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
    counted_in = conventions.counting_mode(key.mode).degrees
    found = []
    for place in analysis.chord.places:
        if place not in key.mode.degrees:
            number = degree_number(place)
            sign = write_accidental((place - counted_in[number - 1]) // 7, conventions.plain)
            found.append((f"{sign}{number}", _note(place, key, conventions)))
    return tuple(found)


def _note(place: int, key: Key, conventions: Conventions) -> str:
    return write_pitch_class(key.tonic.up(place), conventions.plain)


def _origin(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    source = analysis.source
    if source == DIATONIC:
        every = "every form of " if key.mode.is_minor else ""
        return f"It belongs to {every}{write_key(key, conventions.plain)}."
    if source == APPLIED:
        return _applied(analysis, key, conventions)
    if source == NEAPOLITAN:
        root = _note(analysis.chord.root, key, conventions)
        return f"It is the Neapolitan sixth: the major chord on {root}, the lowered 2nd degree, over its third."
    if source.startswith(BORROWED):
        return f"It is {source} on the same tonic: {_altered(analysis, key, conventions)}."
    if source == CHROMATIC:
        return f"It is chromatic: {_altered(analysis, key, conventions)}."
    return f"It comes from {source}: {_minor_form(analysis, key, conventions)}."


def _altered(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    notes = [f"{note} is {degree}" for degree, note in altered_degrees(analysis, key, conventions)]
    return ", ".join(notes) if notes else "its notes lie in no one scale on this tonic"


def _minor_form(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    places = analysis.chord.places
    facts = []
    for place, wording in (
        (LOWERED_SIXTH, "the 6th degree {} is the lowered one"),
        (RAISED_SIXTH, "the 6th degree is raised to {}"),
        (SUBTONIC, "the 7th degree {} is the lowered one, the subtonic"),
        (RAISED_SEVENTH, "the 7th degree is raised to {}, the leading tone"),
    ):
        if place in places:
            facts.append(wording.format(_note(place, key, conventions)))
    return "; ".join(facts)


def _applied(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    target = analysis.target
    assert target is not None  # what makes a chord applied
    leading_tone = _note(target.place + LEADING_TONE, key, conventions)
    goal = _note(target.place, key, conventions)
    degree = write_degree(target.place, target.is_small, key.mode, conventions)
    if analysis.chord.root - target.place == SUPERTONIC:
        return f"It is the ii of {degree}: with the dominant of {degree} behind it, it leads to {goal}."
    kind = "dominant" if analysis.chord.root - target.place == 1 else "leading-tone chord"
    resolved = "" if _resolves(analysis) else ", though another chord follows here" if analysis.after else ""
    return f"It is the {kind} of {degree}, an applied chord: {leading_tone} leads to {goal}{resolved}."


def _resolves(analysis: Analysis) -> bool:
    return analysis.target is not None and analysis.after is not None and analysis.after.root == analysis.target.place


def _effect(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    if is_cadential(analysis.chord, analysis.after):
        return "It stands over the dominant's bass and delays it: a cadential six-four, dominant in function."
    if analysis.target is not None and analysis.function == DOMINANT:
        degree = write_degree(analysis.target.place, analysis.target.is_small, key.mode, conventions)
        return f"It pulls towards {degree}: a dominant of that degree."
    return _OF_FUNCTION[analysis.function]


def _is_degree(place: int, key: Key) -> bool:
    """Whether a note is a degree of the key: in minor of any of its forms."""
    return place in key.mode.degrees or (key.mode.is_minor and place in (RAISED_SIXTH, RAISED_SEVENTH))


def _bass(analysis: Analysis, key: Key, conventions: Conventions) -> str:
    chord = analysis.chord
    if chord.bass == chord.root:
        return ""
    note = _note(chord.bass, key, conventions)
    if chord.bass in chord.places:
        number = chord.quality.numbers[chord.places.index(chord.bass)]
        inversion = {3: "first", 5: "second", 7: "third"}.get(number)
        return (
            f"{note} lies in the bass: {inversion} inversion."
            if inversion
            else f"{note}, a chord tone, lies in the bass."
        )
    degree = f"the {ORDINALS[degree_number(chord.bass) - 1]} degree"
    where = degree if _is_degree(chord.bass, key) else "outside the key"
    return f"{note}, {where}, lies in the bass and is no chord tone."
