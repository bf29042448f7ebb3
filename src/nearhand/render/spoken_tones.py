"""A melody against its chords for ears: each chord, then its notes one by one."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.melody.against import NO_CHORD, Tone
from nearhand.melody.tone_words import kind_in_words
from nearhand.notation.keys import key_name
from nearhand.notation.melody_writing import write_as_degrees
from nearhand.notation.notes import pitch_name
from nearhand.render.spoken import chord_in_words
from nearhand.render.spoken_hands import opening
from nearhand.render.spoken_melody import degree_in_words
from nearhand.render.tones_page import closing_in_words
from nearhand.verbs.tones import TonesAnswer


def tones(answer: TonesAnswer) -> Iterator[str]:
    """The chords with their notes, what each note is, the clashes, and how many notes are chord tones."""
    conventions, key = answer.conventions, answer.key
    yield from opening(answer.tune, conventions, answer.introduces)
    yield f"In {key_name(key, conventions)}."
    write = write_as_degrees(key.mode, conventions)
    heading = ""
    for tone in answer.tones:
        told = _heading(tone, answer)
        if told != heading:
            yield told
            heading = told
        degree = degree_in_words(write(tone.note.interval))
        what = kind_in_words(tone, key, conventions).replace(": ", ", ")
        yield f"{pitch_name(tone.note.pitch, conventions)}, degree {degree}: {what}."
    yield from closing_in_words(answer) or ["No note of the melody sounds here."]
    yield from answer.tune.all_remarks if answer.introduces else ()


def _heading(tone: Tone, answer: TonesAnswer) -> str:
    bar = f"Bar {tone.bar}" if tone.bar else "Pickup"
    if tone.chord is not None:
        return f"{bar}, chord {tone.number}: {chord_in_words(tone.chord.in_key(answer.key), answer.conventions)}."
    return f"{bar}: no chord." if tone.kind == NO_CHORD else f"{bar}, outside the chords."
