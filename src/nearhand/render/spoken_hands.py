"""What lies under the hands, for ears: progressions in their keys, voices as lines, paths and their reasons."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.notation.notes import note_name, pitch_name
from nearhand.render.answers import total
from nearhand.render.heads import head, key_line
from nearhand.render.page import Page, text_of
from nearhand.render.paths_page import cost_of, difference, parts_of_cost, ways
from nearhand.render.spoken import chord_in_words, number_in_words, numeral_in_words
from nearhand.theory.chord import Chord
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import COMMON_TIME, Meter
from nearhand.verbs.answers import ChordView, View, ViewsAnswer
from nearhand.verbs.others import OthersAnswer, Path
from nearhand.verbs.tune import Tune
from nearhand.verbs.voice_lines import LinesAnswer
from nearhand.verbs.why import WhyAnswer
from nearhand.voicing.voice import Voicing

_WIDE = Page(100_000)
"""Sentences are broken to the screen later."""


def views(answer: ViewsAnswer) -> Iterator[str]:
    """A tune in one key or several: for each chord its names, its hands, its motion."""
    tune, conventions = answer.tune, answer.conventions
    yield from opening(tune, conventions, answer.introduces)
    for place, view in enumerate(answer.views):
        if place:
            yield ""
        yield text_of(key_line(view.key, tune, conventions, _WIDE, view.melody)) + "."
        yield from _chords(view, conventions)
        yield from text_of(total(view, conventions, _WIDE)).split("\n") if view.voiced else ()
        if view.melody is not None:
            from nearhand.render.spoken_melody import melody_sentences

            yield "The melody."
            yield from melody_sentences(view.melody, view.key.mode, conventions)
    yield from tune.all_remarks if answer.introduces else ()
    if answer.advice:
        yield answer.advice


def opening(tune: Tune, conventions: Conventions, introduces: bool) -> Iterator[str]:
    """A tune's title, and how its key was found."""
    text = text_of(head(tune, conventions, _WIDE, introduces))
    if text:
        for sentence in text.split("\n"):
            yield sentence if sentence.endswith(".") else f"{sentence}."


def named(number: int, view: ChordView, conventions: Conventions) -> str:
    """A chord by its number, its names, its numeral and its number in the key."""
    assert view.chord is not None and view.analysis is not None
    numeral = numeral_in_words(view.analysis.numeral(conventions))
    chart_number = number_in_words(view.analysis.number(conventions))
    optional = ", may be left out" if view.moment.slot.is_optional else ""
    return f"chord {number}: {chord_in_words(view.chord, conventions)}, {numeral}, number {chart_number}{optional}."


def _chords(view: View, conventions: Conventions) -> Iterator[str]:
    before: ChordView | None = None
    number, meter = 0, COMMON_TIME
    for seen in view.chords:
        bar = view.bars[seen.moment.bar - 1]
        if seen.moment.is_first:
            yield from _bar_opens(view, seen.moment.bar, meter)
            meter = bar.meter
        if seen.chord is None:
            yield f"Bar {seen.moment.bar}: no chord."
        else:
            number += 1
            yield f"Bar {seen.moment.bar}, {named(number, seen, conventions)}"
            yield from _hands(seen, before, conventions)
            before = seen
        if bar.closes_repeat and seen is _last_of(view, seen.moment.bar):
            yield "The repeat ends."


def _bar_opens(view: View, number: int, meter: Meter) -> Iterator[str]:
    """What is to be said before a bar: its section, a new meter, a repeat."""
    bar = view.bars[number - 1]
    if bar.section:
        yield f"Section {bar.section}."
    if bar.meter != meter:
        yield f"From here {bar.meter.beats} {bar.meter.unit} time."
    if bar.opens_repeat:
        yield "A repeat begins."


def _last_of(view: View, bar: int) -> ChordView:
    return [seen for seen in view.chords if seen.moment.bar == bar][-1]


def _hands(seen: ChordView, before: ChordView | None, conventions: Conventions) -> Iterator[str]:
    chord, voicing = seen.chord, seen.voicing
    assert chord is not None
    if voicing is None:
        yield f"Notes {' '.join(note_name(tone, conventions) for tone in chord.tones)}{_foreign(chord, conventions)}."
        return
    if voicing.right:
        yield f"Right hand {notes(voicing.right, conventions)}."
    if voicing.left:
        moves = ""
        if before and before.voicing and voicing.candidate.bass and before.voicing.candidate.bass:
            moves = f", the bass {_move(voicing.left[0].midi - before.voicing.left[0].midi)}"
        yield f"Left hand {notes(voicing.left, conventions)}{moves}."
    if voicing.motion is not None:
        who = "Right hand" if voicing.right == voicing.upper else "Upper voices"
        yield f"{who}, low to high: {', '.join(map(_move, voicing.motion.moves))}."


def _foreign(chord: Chord, conventions: Conventions) -> str:
    return "" if chord.bass in chord.tones else f" over {note_name(chord.bass, conventions)}"


def _move(semitones: int | None) -> str:
    if semitones is None:
        return "enters"
    if not semitones:
        return "held"
    return f"{'up' if semitones > 0 else 'down'} {abs(semitones)}"


def notes(pitches: tuple[Pitch, ...], conventions: Conventions) -> str:
    """Notes with their octaves, low to high, a comma between them."""
    return ", ".join(pitch_name(pitch, conventions) for pitch in pitches)


def hands(voicing: Voicing, conventions: Conventions) -> str:
    """Both hands of a voicing in one sentence."""
    right, left = (notes(hand, conventions) for hand in (voicing.right, voicing.left))
    parts = [f"right hand {right}" * bool(right), f"left hand {left}" * bool(left)]
    return "; ".join(part for part in parts if part)


def voices(answer: LinesAnswer) -> Iterator[str]:
    """Each voice as a line: its notes, chord by chord; then how the outer voices move."""
    conventions = answer.conventions
    yield from opening(answer.tune, conventions, answer.introduces)
    yield text_of(key_line(answer.view.key, answer.tune, conventions, _WIDE)) + "."
    chords = [seen for seen in answer.view.chords if seen.chord is not None]
    for number, seen in enumerate(chords, start=1):
        yield f"Bar {seen.moment.bar}, {named(number, seen, conventions)}"
    for voice in answer.lines.voices:
        name = voice.name if voice.name.isalpha() else f"voice {voice.name} from below"
        row = zip(voice.pitches, voice.held, strict=True)
        yield f"{name.capitalize()}: {', '.join(_sung(pitch, held, conventions) for pitch, held in row)}."
    motions = [f"to chord {place} {kind}" for place, kind in enumerate(answer.lines.motions, start=2) if kind]
    if motions:
        yield f"Bass and top voice move: {', '.join(motions)}."
    yield from text_of(total(answer.view, conventions, _WIDE)).split("\n")


def _sung(pitch: Pitch | None, held: bool, conventions: Conventions) -> str:
    if pitch is None:
        return "silent"
    return f"{pitch_name(pitch, conventions)}{' held' * held}"


def paths(answer: OthersAnswer) -> Iterator[str]:
    """Each path with its cost; the first in full, of the others the chords that differ from it."""
    conventions = answer.conventions
    yield from opening(answer.tune, conventions, answer.introduces)
    yield f"In {key_name(answer.key, conventions)}."
    for path in answer.paths:
        here = ", the one you see" if path.number == answer.number and not answer.introduces else ""
        yield f"Path {path.number}: {cost_of(path)}{here}."
        for place in path.differs or range(len(path.voiced.voicings)):
            yield f"Chord {place + 1}, {_chord(path, place, conventions)}."
    if len(answer.paths) == 1:
        yield "There is no other path."
    elif len(answer.paths) > 1:
        yield "Of paths 2 and on only the chords that differ from path 1 are told."


def _chord(path: Path, place: int, conventions: Conventions) -> str:
    progression = path.voiced.search.task.progression
    chord = progression.relative_chords[place].in_key(progression.key)
    return f"{chord_in_words(chord, conventions)}: {hands(path.voiced.voicings[place], conventions)}"


def reasons(answer: WhyAnswer) -> Iterator[str]:
    """The voicing that was taken, then the next best, each with what the whole path would cost."""
    conventions, taken = answer.conventions, answer.taken
    name = chord_in_words(answer.chord, conventions)
    yield f"In {key_name(answer.key, conventions)}."
    yield f"Chord {answer.number}, {name}: {hands(taken.voicing, conventions)}."
    yield ways(taken)
    yield f"The whole path costs {parts_of_cost(taken)}."
    if not answer.others:
        yield "It has no other voicing under these wishes."
        return
    yield "Next best, each on the best path that takes it:"
    for number, other in enumerate(answer.others, start=1):
        yield f"Choice {number}: {hands(other.voicing, conventions)}."
        yield ways(other)
        yield difference(taken, other)
        yield f"The whole path would cost {parts_of_cost(other)}."
