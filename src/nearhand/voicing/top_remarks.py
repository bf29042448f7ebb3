"""What is to be said where the melody is to lie on top: another octave, a wider register, chords with another top."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.voicing.refusals import note_named
from nearhand.voicing.voice import VoicedProgression

_MOST_NAMED = 4
_OCTAVES = {1: "an octave higher", 2: "two octaves higher", -1: "an octave lower", -2: "two octaves lower"}


def remarks_on_top(voiced: VoicedProgression, conventions: Conventions = DEFAULT) -> list[str]:
    """Sentences on where the melody lies on top, and over which chords it does not."""
    task, on_top = voiced.search.task, voiced.search.on_top
    if on_top is None or task.tops is None:
        return ["There is no melody, so that the top line is free."]
    found = []
    if on_top.octaves:
        found.append(f"On top the melody lies {_OCTAVES[on_top.octaves]} than written: more chords carry it there.")
    if on_top.register is not None:
        low, high = (note_named(note, task, conventions) for note in on_top.register)
        found.append(f"The register is widened for the melody: upper notes from {low} to {high}.")
    pinned = {place for place, _ in task.wishes.pins}
    reasons: dict[str, list[int]] = {}
    for place, (note, notes) in enumerate(zip(on_top.notes, task.tops.notes, strict=True)):
        if note is None:
            has_none = f"no {voiced.style} voicing has a note of the melody on top"
            reason = "pinned without a note of the melody on top" if place in pinned else has_none
            reasons.setdefault(reason if notes else "no note of the melody belongs here", []).append(place)
    for reason, places in reasons.items():
        found.append(f"{_chords(places, voiced, conventions)}: {reason}; the top is free.")
    return found


def _chords(places: list[int], voiced: VoicedProgression, conventions: Conventions) -> str:
    """Chords by their numbers and symbols."""
    progression = voiced.search.task.progression
    named = [
        f"{place + 1} ({write_chord(progression.relative_chords[place].in_key(progression.key), conventions)})"
        for place in places[:_MOST_NAMED]
    ]
    more = len(places) - len(named)
    return f"Chord{'s' * (len(places) > 1)} {', '.join(named)}" + (f" and {more} more" if more else "")
