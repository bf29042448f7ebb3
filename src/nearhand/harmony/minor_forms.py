"""The forms of minor along a progression: which form holds a chord, the note that tells, and where the form turns.

Forms: Open Music Theory, "Scales"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Diatonic chords in
minor". Cross relations may occur in any mode, and are told here because the two forms of minor make most of them.
"""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.degrees import degree_number
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import LOWERED_SIXTH, MINOR_FORMS, RAISED_SEVENTH, RAISED_SIXTH, SUBTONIC, Mode
from nearhand.theory.pitch import Pitch
from nearhand.theory.record import NamedTuple

TELLING_WORDS = {
    LOWERED_SIXTH: "lowered sixth",
    RAISED_SIXTH: "raised sixth",
    SUBTONIC: "subtonic",
    RAISED_SEVENTH: "leading tone",
}
"""The notes that tell the forms of minor apart, in fifths above the tonic, and their names."""
_TWO_FORMS = ((6, (LOWERED_SIXTH, RAISED_SIXTH)), (7, (SUBTONIC, RAISED_SEVENTH)))


class Turn(NamedTuple):
    """Where a degree of minor takes its other form: at chord ``position``, degree 6 or 7, from one place to the other.

    ``position_before``: the last chord before that used the degree, in its other form. Positions count from 0.
    """

    position: int
    degree: int
    place_before: int
    place: int
    position_before: int


class CrossRelation(NamedTuple):
    """A letter in two alterations in neighbouring chords: in chord ``position`` and in the one before it."""

    position: int
    place_before: int
    place: int


def forms_of(chord: RelativeChord, mode: Mode) -> tuple[str, ...]:
    """The forms of minor that hold all of a chord's tones and its bass: any of natural, harmonic, melodic.

    Empty outside the minor mode, and where no form holds the chord.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> [forms_of(parse_numeral(text, MINOR), MINOR) for text in ("iv", "V7", "IV", "I")]
    [('natural', 'harmonic'), ('harmonic', 'melodic'), ('melodic',), ()]
    """
    if not mode.is_minor:
        return ()
    tones = {*chord.places, chord.bass}
    return tuple(form for form, scale in MINOR_FORMS.items() if tones.issubset(scale))


def telling_notes(chord: RelativeChord, mode: Mode) -> tuple[int, ...]:
    """The sixth and seventh degrees among a chord's tones and its bass, as places above the tonic; minor mode only.

    ``TELLING_WORDS`` has their names.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> [TELLING_WORDS[place] for place in telling_notes(parse_numeral("viio7", MINOR), MINOR)]
    ['lowered sixth', 'leading tone']
    """
    if not mode.is_minor:
        return ()
    tones = {*chord.places, chord.bass}
    return tuple(place for place in TELLING_WORDS if place in tones)


def turns(chords: Sequence[RelativeChord], mode: Mode) -> tuple[Turn, ...]:
    """Where the sixth or the seventh degree changes its form, in order of the chords; minor mode only.

    A degree turns at a chord that uses its other form than the last chord that used the degree. A chord that holds
    both forms at once settles nothing: neither it nor the next one is a turn.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> turns([parse_numeral(text, MINOR) for text in ("i", "v6", "iv6", "V7", "i")], MINOR)
    (Turn(position=3, degree=7, place_before=-2, place=5, position_before=1),)
    """
    found: list[Turn] = []
    last: dict[int, tuple[int, int] | None] = {}
    for position, chord in enumerate(chords):
        notes = telling_notes(chord, mode)
        for degree, forms in _TWO_FORMS:
            used = [place for place in forms if place in notes]
            if not used:
                continue
            before = last.get(degree)
            if len(used) == 1 and before is not None and before[0] != used[0]:
                found.append(Turn(position, degree, before[0], used[0], before[1]))
            last[degree] = (used[0], position) if len(used) == 1 else None
    return tuple(found)


def cross_relations(
    chords: Sequence[RelativeChord], voicings: Sequence[Sequence[Pitch]] | None = None
) -> tuple[CrossRelation, ...]:
    """Where the same letter stands in two alterations in neighbouring chords, as G and then G sharp; any mode.

    A cross relation (false relation) proper lies between two voices: one has a note, another takes it up chromatically
    altered. When the same voice moves from one to the other, that is a chromatic step and no cross relation (common
    practice, from memory). Chords alone cannot tell the voices apart; without ``voicings`` every meeting is named. A
    chord that holds both forms of the letter itself is left out.

    ``voicings``: for each chord its pitches low to high, in any one key, the chord's bass lowest. Two chords of as many
    voices are matched voice by voice; otherwise the bass is one voice and the others are counted from the top. A note
    that its voicing leaves out makes no cross relation. Raises ValueError unless there is one voicing a chord.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MINOR
    >>> cross_relations([parse_numeral(text, MINOR) for text in ("v", "V", "i")])
    (CrossRelation(position=1, place_before=-2, place=5),)
    """
    if voicings is not None and len(voicings) != len(chords):
        raise ValueError(f"one voicing a chord is needed ({len(chords)} chords, {len(voicings)} voicings)")
    meetings = [
        CrossRelation(position, place_before, place)
        for position in range(1, len(chords))
        for place_before, place in _two_alterations(chords[position - 1], chords[position])
    ]
    if voicings is None:
        return tuple(meetings)
    return tuple(meeting for meeting in meetings if _lies_between_voices(meeting, chords, voicings))


def _two_alterations(before: RelativeChord, after: RelativeChord) -> list[tuple[int, int]]:
    """Pairs of places of one letter that differ, for every letter that has a single form in each of two chords."""
    old, new = _by_degree(before), _by_degree(after)
    pairs = [(*old[degree], *new[degree]) for degree in sorted(old.keys() & new.keys()) if _is_single(degree, old, new)]
    return [(place_before, place) for place_before, place in pairs if place_before != place]


def _by_degree(chord: RelativeChord) -> dict[int, set[int]]:
    found: dict[int, set[int]] = {}
    for place in (*chord.places, chord.bass):
        found.setdefault(degree_number(place), set()).add(place)
    return found


def _is_single(degree: int, old: dict[int, set[int]], new: dict[int, set[int]]) -> bool:
    return len(old[degree]) == len(new[degree]) == 1


def _lies_between_voices(
    meeting: CrossRelation, chords: Sequence[RelativeChord], voicings: Sequence[Sequence[Pitch]]
) -> bool:
    before, after = voicings[meeting.position - 1], voicings[meeting.position]
    old = _voices_with(meeting.place_before, chords[meeting.position - 1], before, after)
    new = _voices_with(meeting.place, chords[meeting.position], after, before)
    return bool(old) and bool(new) and old.isdisjoint(new)


def _voices_with(place: int, chord: RelativeChord, voicing: Sequence[Pitch], neighbour: Sequence[Pitch]) -> set[int]:
    """The voices that have a note; counted from the bass, or from the top as -1, -2 ... where the numbers differ."""
    if not voicing:
        return set()
    tonic = voicing[0].pitch_class.fifths - chord.bass
    voices = [voice for voice, pitch in enumerate(voicing) if pitch.pitch_class.fifths == tonic + place]
    if len(voicing) == len(neighbour):
        return set(voices)
    return {voice and voice - len(voicing) for voice in voices}
