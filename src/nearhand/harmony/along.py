"""What happens along a progression: cadences at their bars, turns between the forms of minor, cross relations."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.harmony.analysis import analyse
from nearhand.harmony.cadences import Cadence, Phrase, cadences, phrases
from nearhand.harmony.minor_forms import TELLING_WORDS, CrossRelation, Turn, cross_relations, turns
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS
from nearhand.notation.notes import note_name
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import Mode
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple


class Along(NamedTuple):
    """What happens along a progression; ``bars`` are the bar numbers of its chords, rests left out."""

    bars: tuple[int, ...]
    phrases: tuple[Phrase, ...]
    cadences: tuple[Cadence, ...]
    turns: tuple[Turn, ...]
    cross_relations: tuple[CrossRelation, ...]


def along(progression: Progression, voicings: Sequence[Sequence[Pitch]] | None = None) -> Along:
    """Find what happens along a progression.

    ``voicings`` are each chord's pitches, low to high: with them an authentic cadence is perfect or not, and a cross
    relation lies between two voices.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| Am | Em | Dm | E7 | Am |"), parse_key("A minor"))
    >>> [turn.position for turn in along(tune).turns]
    [3]
    """
    chords = progression.relative_chords
    readings = [analysis.reading for analysis in analyse(chords, progression.key.mode)]
    top_notes = None if voicings is None else [pitches[-1].midi for pitches in voicings]
    bars = tuple(moment.bar for moment in progression.moments if moment.slot.chord is not None)
    return Along(
        bars,
        phrases(progression),
        cadences(progression, top_notes),
        turns(readings, progression.key.mode),
        tuple(
            relation
            for relation in cross_relations(chords, voicings)
            if _is_in_both(relation, readings) and not _is_mere_spelling(relation, progression.key.mode)
        ),
    )


def _is_in_both(relation: CrossRelation, readings: Sequence[RelativeChord]) -> bool:
    """Whether both notes are in the chords as they are named: a mere spelling crosses nothing."""
    before, chord = readings[relation.position - 1], readings[relation.position]
    return relation.place_before in (*before.places, before.bass) and relation.place in (*chord.places, chord.bass)


def _is_mere_spelling(relation: CrossRelation, mode: Mode) -> bool:
    """Whether one of the notes is a note of the scale by another name: C flat in C is B, the leading tone."""
    places = (relation.place_before, relation.place)
    return any(place not in mode.degrees and {place - 12, place + 12} & set(mode.degrees) for place in places)


def along_in_words(found: Along, key: Key, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """One sentence for each thing that happens, in order of the chords.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("| Am | Em | C | E |"), parse_key("A minor"))
    >>> for sentence in along_in_words(along(tune), tune.key):
    ...     print(sentence)
    Bar 4, chord 4: half cadence: the phrase stops on the dominant.
    Bar 4, chord 4: the 7th degree turns from G, the subtonic, to G♯, the leading tone.
    Bar 4, chord 4: G and G♯ meet between this chord and the one before: a cross relation, unless one voice plays both.
    """
    lines = [
        (cadence.goal, f"{_place(found, cadence.goal)}: {cadence.kind} cadence: {cadence.reason}.")
        for cadence in found.cadences
    ]
    return _in_order(lines + _turns(found, key, conventions))


def turns_in_words(found: Along, key: Key, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """As ``along_in_words``, without the cadences."""
    return _in_order(_turns(found, key, conventions))


def cadence_in_words(cadence: Cadence) -> str:
    """A cadence with what decided it."""
    return f"{cadence.kind} cadence in bar {cadence.bar}, chord {cadence.goal + 1}: {cadence.reason}."


def _turns(found: Along, key: Key, conventions: Conventions) -> list[tuple[int, str]]:
    lines = [
        (turn.position, f"{_place(found, turn.position)}: {_turn(turn, key, conventions)}") for turn in found.turns
    ]
    lines += [
        (relation.position, f"{_place(found, relation.position)}: {_cross_relation(relation, key, conventions)}")
        for relation in found.cross_relations
    ]
    return lines


def _place(found: Along, position: int) -> str:
    return f"Bar {found.bars[position]}, chord {position + 1}"


def _in_order(lines: list[tuple[int, str]]) -> tuple[str, ...]:
    return tuple(sentence for _, sentence in sorted(lines, key=lambda line: line[0]))


def _turn(turn: Turn, key: Key, conventions: Conventions) -> str:
    old, new = (
        f"{_note(place, key, conventions)}, the {TELLING_WORDS[place]}," for place in (turn.place_before, turn.place)
    )
    return f"the {ORDINALS[turn.degree - 1]} degree turns from {old} to {new.rstrip(',')}."


def _cross_relation(relation: CrossRelation, key: Key, conventions: Conventions) -> str:
    old, new = (_note(place, key, conventions) for place in (relation.place_before, relation.place))
    return f"{old} and {new} meet between this chord and the one before: a cross relation, unless one voice plays both."


def _note(place: int, key: Key, conventions: Conventions) -> str:
    return note_name(key.tonic.up(place), conventions)
