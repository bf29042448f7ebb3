"""Where a chord comes from, in one plain sentence: one function a source, in one table."""

from __future__ import annotations

from nearhand.harmony import special_chords as special
from nearhand.harmony.analysis import APPLIED, NEAPOLITAN, Analysis
from nearhand.harmony.line_cliches import LINE_CLICHE
from nearhand.harmony.minor_forms import TELLING_WORDS, forms_of
from nearhand.harmony.sources import BORROWED, CHROMATIC, DIATONIC, lenders_of
from nearhand.notation.accidentals import write_accidental
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.counting import listed
from nearhand.notation.degrees import degree_number
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name
from nearhand.notation.numeral_writing import write_degree
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import LEADING_TONE, LOWERED_SIXTH, RAISED_SEVENTH, RAISED_SIXTH, SUBTONIC, SUPERTONIC
from nearhand.theory.quality import AUGMENTED_SIXTHS, QUALITIES
from nearhand.theory.record import NamedTuple

_NATIONS = {"It": "Italian", "Fr": "French", "Ger": "German", "Sw": "Swiss"}
_NATION_OF = {quality: _NATIONS[name] for name, quality in AUGMENTED_SIXTHS.items()}
_DOMINANT_SEVENTH, _TRITONE = QUALITIES["dominant"], 6


class Scene(NamedTuple):
    """One chord's analysis in the key it is shown in, and how its notes are written."""

    analysis: Analysis
    key: Key
    conventions: Conventions = DEFAULT

    def note(self, place: int) -> str:
        """The note of a place above the tonic."""
        return note_name(self.key.tonic.up(place), self.conventions)

    def symbol(self, chord: RelativeChord) -> str:
        """A chord's symbol."""
        return write_chord(chord.in_key(self.key), self.conventions)

    def degree(self, place: int, is_small: bool) -> str:
        """A degree as a bare numeral."""
        return write_degree(place, is_small, self.key.mode, self.conventions)

    def altered(self) -> tuple[tuple[str, str], ...]:
        """The chord tones outside the key's own scale (natural form in minor): pairs of degree and note."""
        counted_in = self.conventions.counting_mode(self.key.mode).degrees
        found = []
        for place in self.analysis.reading.places:
            if place not in self.key.mode.degrees:
                number = degree_number(place)
                sign = write_accidental((place - counted_in[number - 1]) // 7, self.conventions.plain)
                found.append((f"{sign}{number}", self.note(place)))
        return tuple(found)


def origin(scene: Scene) -> str:
    """The sentence on where a chord comes from.

    >>> from nearhand.harmony.analysis import analyse
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.numerals import parse_numeral
    >>> key = parse_key("C")
    >>> row = [parse_numeral(text, key.mode) for text in ("bII7", "I")]
    >>> origin(Scene(analyse(row, key.mode)[0], key))
    'It is the tritone substitute of G7: it has F and C♭ (for B) in common with it and slides down a half step to C.'
    """
    source = scene.analysis.source
    if source in _SENTENCES:
        return _SENTENCES[source](scene)
    return _borrowed(scene) if source.startswith(BORROWED) else _minor_form(scene)


def _own(scene: Scene) -> str:
    every = "every form of " if scene.key.mode.is_minor else ""
    return f"It belongs to {every}{key_name(scene.key, scene.conventions)}."


def _minor_form(scene: Scene) -> str:
    analysis = scene.analysis
    forms = forms_of(analysis.reading._replace(bass=analysis.reading.root), scene.key.mode)
    wordings = {
        LOWERED_SIXTH: "the 6th degree {} is the lowered one",
        RAISED_SIXTH: "the 6th degree is raised to {}",
        SUBTONIC: "the 7th degree {} is the lowered one, the subtonic",
        RAISED_SEVENTH: "the 7th degree is raised to {}, the leading tone",
    }
    facts = [wordings[place].format(scene.note(place)) for place in TELLING_WORDS if place in analysis.reading.places]
    also = f" {_held_too(forms[1:], ' minor')}" if forms[1:] else ""
    return f"It comes from {forms[0]} minor: {'; '.join(facts)}.{also}"


def _borrowed(scene: Scene) -> str:
    lenders = lenders_of(scene.analysis.reading, scene.key.mode)
    also = f" {_held_too(lenders[1:])}" if lenders[1:] else ""
    analysis = scene.analysis
    closes_in_major = scene.key.mode.has_minor_third and analysis.chord.root == 0 and analysis.after is None
    picardy = " At the close it is the Picardy third." if closes_in_major and lenders[0] == "major" else ""
    return f"It is borrowed from {lenders[0]} on the same tonic: {_altered(scene)}.{also}{picardy}"


def _chromatic(scene: Scene) -> str:
    return f"It is chromatic: {_altered(scene)}.{_passing(scene)}"


def _passing(scene: Scene) -> str:
    """What to say of a chord whose bass goes by half steps from the chord before to the one behind; else empty."""
    before, chord, after = scene.analysis.before, scene.analysis.chord, scene.analysis.after
    if before is None or after is None:
        return ""
    steps = {special.sound(chord.bass - before.bass), special.sound(after.bass - chord.bass)}
    if steps not in ({1}, {11}):
        return ""
    walk = " ".join(scene.note(each.bass) for each in (before, chord, after))
    return f" It is a passing chord: the bass goes {walk} by half steps."


def _altered(scene: Scene) -> str:
    notes = [f"{note} is {degree}" for degree, note in scene.altered()]
    return ", ".join(notes) if notes else "its notes lie in no one scale on this tonic"


def _held_too(scales: tuple[str, ...], ending: str = "") -> str:
    return f"{listed(scales).capitalize()}{ending} {'hold' if len(scales) > 1 else 'holds'} it too."


def _neapolitan(scene: Scene) -> str:
    chord = scene.analysis.chord
    over = ("Neapolitan", "") if chord.bass == chord.root else ("Neapolitan sixth", ", over its third")
    return f"It is the {over[0]}: the major chord on {scene.note(chord.root)}, the lowered 2nd degree{over[1]}."


def _applied(scene: Scene) -> str:
    analysis = scene.analysis
    target = analysis.target
    assert target is not None  # what makes a chord applied
    leading_tone, goal = scene.note(target.place + LEADING_TONE), scene.note(target.place)
    degree = scene.degree(*target)
    above = analysis.reading.root - target.place
    if above == SUPERTONIC:
        return f"It is the ii of {degree}: with the dominant of {degree} behind it, it leads to {goal}."
    kind = "dominant" if above == 1 else "leading-tone chord"
    if analysis.reading.quality.interval(7) == -2 and above != 1:
        kind = "half-diminished leading-tone chord"
    follows = analysis.after
    is_resolved = follows is not None and (
        follows.root == target.place or (follows.root, follows.bass) == (0, target.place)
    )
    resolved = "" if is_resolved else ", though another chord follows here" if follows else ""
    spelled = _spelled_otherwise(scene, leading_tone) if analysis.named_as is not None else ""
    return f"It is the {kind} of {degree}, an applied chord: {leading_tone} leads to {goal}{resolved}.{spelled}"


def _spelled_otherwise(scene: Scene, wanted: str) -> str:
    """What a chord's own spelling has in place of a note it is named by."""
    analysis = scene.analysis
    place = next((place for place in analysis.reading.places if scene.note(place) == wanted), None)
    twin = place is not None and next(
        (own for own in analysis.chord.places if special.sound(own) == special.sound(place) and own != place), None
    )
    return f" The chord is spelled with {scene.note(twin)} for {wanted}." if twin else ""


def _augmented_sixth(scene: Scene) -> str:
    analysis = scene.analysis
    low = analysis.reading.root
    nation = _NATION_OF[analysis.reading.quality]
    bottom, top, goal = scene.note(low), scene.note(low + 10), scene.note(low + 5)
    charts = "" if analysis.named_as is None else f" Charts write it as {scene.symbol(analysis.chord)}."
    spelled = _spelled_otherwise(scene, top) if analysis.named_as is not None else ""
    article = "an" if nation == "Italian" else "a"
    return f"It is {article} {nation} augmented sixth: {bottom} and {top} open outwards to {goal}.{charts}{spelled}"


def _tritone_substitute(scene: Scene) -> str:
    analysis = scene.analysis
    goal = analysis.goal
    assert goal is not None  # what makes a chord a substitute
    dominant = RelativeChord(goal.place + 1, _DOMINANT_SEVENTH, goal.place + 1)
    third, seventh = dominant.places[1], dominant.places[3]
    shared = []
    for place in (seventh, third):
        own = next((own for own in analysis.chord.places if special.sound(own) == special.sound(place)), place)
        shared.append(scene.note(own) + ("" if own == place else f" (for {scene.note(place)})"))
    return (
        f"It is the tritone substitute of {scene.symbol(dominant)}: it has {' and '.join(shared)} in common with it "
        f"and slides down a half step to {scene.note(goal.place)}."
    )


def _backdoor(scene: Scene) -> str:
    root, tonic = scene.note(scene.analysis.chord.root), scene.note(0)
    return f"It is the backdoor dominant: from {root}, the lowered 7th degree, it goes up a whole step to {tonic}."


def _common_tone(scene: Scene) -> str:
    analysis = scene.analysis
    heard = {special.sound(place) for place in analysis.chord.places}
    after, before = analysis.after, analysis.before
    is_after = after is not None and special.sound(after.root) in heard
    kept = after if is_after else before
    assert kept is not None  # a common tone is common with a neighbour
    which = "after" if is_after else "before"
    return (
        f"It is a common-tone diminished chord: it keeps {scene.note(kept.root)}, the root of the chord {which} it, "
        f"while its other notes lean on that chord's.{_passing(scene)}"
    )


def _chromatic_mediant(scene: Scene) -> str:
    analysis = scene.analysis
    home = (0, -3 if scene.key.mode.has_minor_third else 4, 1)
    common = [scene.note(place) for place in analysis.chord.places if place in home]
    keeps = f"it keeps {' and '.join(common)} of the tonic chord" if common else "it keeps no note of the tonic chord"
    return f"It is a chromatic mediant: its root lies a third from the tonic, and {keeps}."


def _pedal(scene: Scene) -> str:
    chord = scene.analysis.chord
    upper = scene.symbol(chord._replace(bass=chord.own_bass))
    return (
        f"It is {upper} over a pedal: {scene.note(chord.bass)} stays in the bass and belongs to the chords around it."
    )


def _line_cliche(scene: Scene) -> str:
    walk = " ".join(scene.note(place) for place in scene.analysis.line)
    cliche = "cliche" if scene.conventions.plain else "cliché"
    return f"It is part of a line {cliche}: one voice walks {walk} while the chord stays."


_SENTENCES = {
    DIATONIC: _own,
    CHROMATIC: _chromatic,
    APPLIED: _applied,
    NEAPOLITAN: _neapolitan,
    special.AUGMENTED_SIXTH: _augmented_sixth,
    special.TRITONE_SUBSTITUTE: _tritone_substitute,
    special.BACKDOOR: _backdoor,
    special.COMMON_TONE: _common_tone,
    special.CHROMATIC_MEDIANT: _chromatic_mediant,
    special.PEDAL: _pedal,
    LINE_CLICHE: _line_cliche,
}
"""Source to its sentence; the forms of minor and what is borrowed are told by the names of their scales."""
