"""What the notes of a melody are over their chords, in words: kinds, clashes, and how many are chord tones."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.melody.against import ADDED, CHORD_TONE, CLASH, NO_CHORD, OUTSIDE, TENSION, Tone
from nearhand.melody.standing import FALSE_RELATION, SEMITONE_ABOVE
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.notes import note_name, pitch_name
from nearhand.theory.key import Key

_HOW = {FALSE_RELATION: "a false relation with", SEMITONE_ABOVE: "a minor ninth above"}
_BELOW = "a semitone below"


def kind_in_words(tone: Tone, key: Key, conventions: Conventions = DEFAULT) -> str:
    """What a note is over its chord, in a few words.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> from nearhand.melody.against import against
    >>> key = parse_key("C")
    >>> tones = against(parse_melody("E4 F E Ab"), resolve(read_chart("| C |"), key))
    >>> [kind_in_words(tone, key) for tone in tones]
    ['chord tone: third', 'upper neighbour', 'chord tone: third', 'clash with G']
    """
    if tone.kind == CLASH:
        return f"clash with {_rubbed(tone, key, conventions)}"
    if not tone.tone:
        return {NO_CHORD: "no chord here"}.get(tone.kind, tone.kind)
    if tone.kind in (CHORD_TONE, TENSION, ADDED):
        return f"{tone.kind}: {in_signs(tone.tone, conventions)}"
    return f"{tone.kind} {tone.tone}"


def in_signs(tension: str, conventions: Conventions) -> str:
    """The name of a tension with its signs, or in plain characters; the words of chord tones stay as they are.

    >>> in_signs("b9", DEFAULT), in_signs("#11", DEFAULT), in_signs("flat ninth", DEFAULT)
    ('♭9', '♯11', 'flat ninth')
    """
    if conventions.plain or not tension[-1].isdigit():
        return tension
    return tension.replace("b", "♭").replace("#", "♯")


def clash_in_words(tone: Tone, key: Key, conventions: Conventions = DEFAULT) -> str:
    """One sentence on a clash, without its bar.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> from nearhand.melody.against import against
    >>> key = parse_key("C")
    >>> for tone in against(parse_melody("F4 - - - | Bb4 - - - |"), resolve(read_chart("| C | Cmaj7 |"), key)):
    ...     print(clash_in_words(tone, key))
    F4 against the E of C: a minor ninth above its third.
    B♭4 against the B of Cmaj7: a false relation with its seventh.
    """
    assert tone.chord is not None and tone.rub is not None
    note, symbol = pitch_name(tone.note.pitch, conventions), write_chord(tone.chord.in_key(key), conventions)
    how = f"{_HOW.get(tone.rub.how, _BELOW)} its {tone.rub.member}"
    return f"{note} against the {_rubbed(tone, key, conventions)} of {symbol}: {how}."


def _rubbed(tone: Tone, key: Key, conventions: Conventions) -> str:
    assert tone.chord is not None and tone.rub is not None
    return note_name(key.tonic.up(tone.chord.root + tone.rub.place), conventions)


def over_chords(tones: Sequence[Tone]) -> tuple[Tone, ...]:
    """Those that sound over a chord."""
    return tuple(tone for tone in tones if tone.kind not in (NO_CHORD, OUTSIDE))


def clashes(tones: Sequence[Tone]) -> tuple[Tone, ...]:
    """Those that clash."""
    return tuple(tone for tone in tones if tone.kind == CLASH)


def count_in_words(tones: Sequence[Tone]) -> tuple[str, ...]:
    """How many of the notes are chord tones, and how many have no chord.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.notation.melody_reading import parse_melody
    >>> from nearhand.melody.against import against
    >>> tones = against(parse_melody("E4 D E C - - r r"), resolve(read_chart("| C | Am |"), parse_key("C")))
    >>> count_in_words(tones)
    ('4 of 5 notes over chords are chord tones; a note held over a change of chord counts for each chord.',)
    """
    heard = over_chords(tones)
    lines = []
    if heard:
        count = sum(tone.kind == CHORD_TONE for tone in heard)
        is_held = len({tone.note for tone in heard}) < len(heard)
        held = "; a note held over a change of chord counts for each chord" if is_held else ""
        notes = "note over chords is a chord tone" if len(heard) == 1 else "notes over chords are chord tones"
        lines.append(f"{count} of {len(heard)} {notes}{held}.")
    if silent := len(tones) - len(heard):
        lines.append(f"{silent} note{'s sound' if silent > 1 else ' sounds'} without a chord.")
    return tuple(lines)
