"""Why music may be in a key, in short phrases: membership, signature, leading tone, cadences, first and last."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence

from nearhand.harmony.key_finding import is_cadence, is_predominant, is_tonic
from nearhand.harmony.key_profiles import DEFAULT_PROFILE
from nearhand.harmony.melody_evidence import correlation, misses_third, weighed
from nearhand.harmony.percents import percent
from nearhand.harmony.signatures import accidentals_in_words
from nearhand.harmony.sources import own_source
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.notes import note_name
from nearhand.notation.numeral_writing import write_numeral
from nearhand.theory.chord import Chord, RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.mode import DOMINANT, LEADING_TONE, Mode
from nearhand.theory.pitch_class import PitchClass

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_TIMES = {1: "once", 2: "twice"}
_MOST_NAMED = 3


def reasons_for(  # noqa: PLR0913  # chords and a melody, and how the latter is weighed
    key: Key,
    chords: Sequence[Chord] = (),
    melody: Sequence[PitchClass] = (),
    conventions: Conventions = DEFAULT,
    *,
    lengths: Sequence[Beats] | None = None,
    profile: str = DEFAULT_PROFILE,
) -> tuple[str, ...]:
    """What speaks for a key and what it leaves unexplained, from chords, from a melody, or from both.

    ``lengths`` are those of the melody's notes in beats; without them the notes are counted. Raises ValueError for a
    length that is not above 0, KeyError for an unknown profile.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> from nearhand.notation.keys import parse_key
    >>> for reason in reasons_for(parse_key("E minor"), [parse_chord(text) for text in ("Em", "Am", "B7", "Em")]):
    ...     print(reason)
    all chords belong to it
    its signature, one sharp, fits every note but D♯
    D♯, its leading tone, sounds once
    it cadences iv-V7-i once
    it opens and closes on its tonic
    """
    placed = [relative_to(chord, key) for chord in chords]
    weights = weighed(melody, lengths)
    found = [
        _membership(placed, key.mode),
        _signature(key, chords, melody, conventions),
        _leading_tone(key, chords, melody, conventions),
        _cadences(placed, key.mode, conventions),
        _ends_of_chords(placed, key.mode),
        _ends_of_melody(key, melody, "the melody" if chords else "it"),
        _tonic_chord(key, weights, conventions),
        _profile(key, weights, profile, "the melody" if chords else "it"),
    ]
    return tuple(reason for reason in found if reason)


def _membership(chords: Sequence[RelativeChord], mode: Mode) -> str:
    if not chords:
        return ""
    own = sum(own_source(chord, mode) is not None for chord in chords)
    return f"{own} of {len(chords)} chords belong to it" if own < len(chords) else "all chords belong to it"


def _signature(key: Key, chords: Sequence[Chord], melody: Sequence[PitchClass], conventions: Conventions) -> str:
    notes = {note for chord in set(chords) for note in (*chord.tones, chord.bass)} | set(melody)
    degrees = key.mode.degrees
    outside = sorted(note for note in notes if note.fifths - key.tonic.fifths not in degrees)
    fitting = len(notes) - len(outside)
    if not outside:
        fits = "every note"
    elif len(outside) <= _MOST_NAMED:
        *others, last = [note_name(note, conventions) for note in outside]
        fits = f"every note but {', '.join(others)} and {last}" if others else f"every note but {last}"
    else:
        fits = f"{fitting} of {len(notes)} notes"
    return f"its signature, {signature_in_words(key)}, fits {fits}"


def signature_in_words(key: Key) -> str:
    """How many sharps or flats a key has.

    >>> from nearhand.notation.keys import parse_key
    >>> [signature_in_words(parse_key(text)) for text in ("C", "E minor", "Bb")]
    ['no sharps or flats', 'one sharp', 'two flats']
    """
    return accidentals_in_words(key.signature)


def _leading_tone(key: Key, chords: Sequence[Chord], melody: Sequence[PitchClass], conventions: Conventions) -> str:
    if not key.mode.is_minor and LEADING_TONE not in key.mode.degrees:
        return ""
    note = key.tonic.up(LEADING_TONE)
    count = sum(note in chord.tones for chord in chords) + sum(note == other for other in melody)
    where = " in chords and melody" if chords and melody else ""
    return f"{note_name(note, conventions)}, its leading tone, sounds {_times(count)}{where}" if count else ""


def _times(count: int) -> str:
    return _TIMES.get(count, f"{count} times")


def _cadences(chords: Sequence[RelativeChord], mode: Mode, conventions: Conventions) -> str:
    names = Counter(
        _cadence_name(chords, place, mode, conventions)
        for place in range(1, len(chords))
        if is_cadence(chords[place - 1], chords[place], mode) and chords[place].bass != DOMINANT
    )
    counted = [f"{name} {_times(count)}" for name, count in names.most_common(_MOST_NAMED)]
    return f"it cadences {', '.join(counted)}" if counted else ""


def _cadence_name(chords: Sequence[RelativeChord], goal: int, mode: Mode, conventions: Conventions) -> str:
    """The steps of a cadence: what prepares it, the dominant, the tonic."""
    parts = [_dominant(chords[goal - 1], mode, conventions), "i" if chords[goal].quality.has_minor_third else "I"]
    before = chords[goal - 2] if goal > 1 else None
    if before is not None and before.root == 0 and before.bass == DOMINANT:
        parts.insert(0, "i64" if before.quality.has_minor_third else "I64")
    elif before is not None and is_predominant(before):
        parts.insert(0, write_numeral(_on_root(before._replace(quality=before.quality.triad)), mode, conventions))
    return "-".join(parts)


def _dominant(chord: RelativeChord, mode: Mode, conventions: Conventions) -> str:
    if chord.root == DOMINANT:
        return "V7" if chord.quality.is_dominant_seventh else "V"
    return write_numeral(_on_root(chord), mode, conventions)


def _on_root(chord: RelativeChord) -> RelativeChord:
    return chord._replace(bass=chord.root)


def _ends_of_chords(chords: Sequence[RelativeChord], mode: Mode) -> str:
    if not chords:
        return ""
    first, last = chords[0], chords[-1]
    opens, closes = (
        is_tonic(chord, mode) and (not chord.quality.is_dominant_seventh or other.root == 0)
        for chord, other in ((first, last), (last, first))
    )
    if opens and closes:
        return "it opens and closes on its tonic"
    half_close = last.root == DOMINANT and LEADING_TONE in last.places
    end = "closes on its tonic" if closes else "closes on its dominant" if half_close else ""
    both = " and ".join(part for part in ("opens on its tonic" if opens else "", end) if part)
    return f"it {both}" if both else ""


def _ends_of_melody(key: Key, melody: Sequence[PitchClass], name: str) -> str:
    if not melody:
        return ""
    ends = [word for word, note in (("opens", melody[0]), ("closes", melody[-1])) if note == key.tonic]
    return f"{name} {' and '.join(ends)} on its tonic" if ends else ""


def _tonic_chord(key: Key, weights: Mapping[PitchClass, float], conventions: Conventions) -> str:
    """How much of a melody lies on the tonic chord, or that its third is missing."""
    if not weights:
        return ""
    notes = [key.degree(number) for number in (1, 3, 5)]
    if misses_third(weights, key):
        return f"its third, {note_name(notes[1], conventions)}, is missing from the melody"
    share = percent(sum(weights.get(note, 0) for note in notes), sum(weights.values()))
    names = " ".join(note_name(note, conventions) for note in notes)
    return f"its tonic chord, {names}, takes {share} percent of the melody"


def _profile(key: Key, weights: Mapping[PitchClass, float], profile: str, name: str) -> str:
    if not weights:
        return ""
    kind = "minor" if key.mode.has_minor_third else "major"
    return f"{name} fits the profile of a {kind} key with r={correlation(weights, key, profile):.2f}"
