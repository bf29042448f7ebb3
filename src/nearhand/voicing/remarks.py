"""What else is to be said of a path: what it costs where more than movement counts, broken rules, stand-ins."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.notes import note_name, write_pitch_class
from nearhand.voicing.account import Broken, broken_rules, parts_of, where_it_pulls
from nearhand.voicing.families import FOUR_PART, UPPER_STRUCTURE
from nearhand.voicing.lines import FOUR_PARTS
from nearhand.voicing.refusals import note_named
from nearhand.voicing.task import Task
from nearhand.voicing.voice import VoicedProgression
from nearhand.voicing.weights import KEYBOARD
from nearhand.voicing.wishes import MELODY_TOP, Wishes


def remarks_on(voiced: VoicedProgression, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """Sentences on the costs of a path, the rules it breaks, and the chords that another family voices."""
    search = voiced.search
    found = [*_costs(voiced), *_broken(voiced, conventions), *_asked(search.task, conventions), *_unused(search.task)]
    if search.task.wishes.top == MELODY_TOP:
        from nearhand.voicing.top_remarks import remarks_on_top

        found += remarks_on_top(voiced, conventions)
    found += _triads(voiced, conventions)
    own = voiced.style
    strange = [place for place, style in enumerate(search.styles) if style != own]
    for place in strange[:_MOST_REMARKS]:
        found.append(f"{chord_named(voiced, place, conventions)} has no {own} voicing; it is {search.styles[place]}.")
    if len(strange) > _MOST_REMARKS:
        found.append(f"{len(strange) - _MOST_REMARKS} more chords have no {own} voicing.")
    return tuple(found)


_MOST_REMARKS = 4


def _triads(voiced: VoicedProgression, conventions: Conventions) -> list[str]:
    """The triads of upper structures."""
    if voiced.style != UPPER_STRUCTURE:
        return []
    from nearhand.voicing.upper_structures import triad_on_top

    found = []
    for place, voicing in enumerate(voiced.voicings):
        names = {pitch.midi % 12: pitch.pitch_class for pitch in voicing.pitches}
        triad = triad_on_top([pitch.midi for pitch in voicing.right], names)
        if triad is not None and voicing.style == UPPER_STRUCTURE:
            name = write_pitch_class(triad.root, conventions.plain) + "m" * triad.is_minor
            found.append(f"{chord_named(voiced, place, conventions)} has the triad {name} on top.")
    return found


def _unused(task: Task) -> list[str]:
    """A pattern of the left hand that the family has no place for."""
    wishes, own = task.wishes, Wishes()
    if wishes.left in (own.left, "none") or task.uses_left:
        return []
    return [f"The left hand of {wishes.style} has notes of its own, so that left {wishes.left} is not played."]


def _asked(task: Task, conventions: Conventions) -> list[str]:
    """What is asked for beside the style, so that a player sees what is set."""
    wishes, own = task.wishes, Wishes()
    parts = []
    if wishes.left != own.left and task.uses_left:
        parts.append(f"left hand {wishes.left}")
    if wishes.span != own.span:
        parts.append(f"span {wishes.span} semitones")
    if wishes.low is not None or wishes.high is not None:
        low, high = (note_named(note, task, conventions) for note in task.register[:2])
        parts.append(f"upper notes from {low} to {high}")
    if wishes.moves:
        parts.append("registers that move with the key")
    if wishes.top != own.top:
        parts.append("the melody on top" if wishes.top == MELODY_TOP else f"top line {wishes.top}")
    if wishes.melody:
        parts.append("a given top line")
    if wishes.pins:
        places = sorted({place + 1 for place, _ in wishes.pins})
        parts.append(f"chord{'s' * (len(places) > 1)} {', '.join(map(str, places))} pinned")
    parts += [f"{name} weighs {weight}" for name, weight in wishes.weights]
    if wishes.path > 1:
        parts.append(f"path {wishes.path}")
    return [f"Asked for: {'; '.join(parts)}."] if parts else []


def _costs(voiced: VoicedProgression) -> list[str]:
    if voiced.search.task.weights._replace(top=0) == KEYBOARD or not voiced.voicings:
        return []
    parts = parts_of(voiced.costs)
    if not parts:
        return ["It costs nothing."]
    listed = ", ".join(f"{name} {value}" for name, value in parts)
    return [f"Cost {sum(value for _, value in parts)}: {listed}."]


def _broken(voiced: VoicedProgression, conventions: Conventions) -> list[str]:
    weights = voiced.search.task.weights
    if not (weights.parallels or weights.hidden or weights.tendency or weights.overlap or weights.spacing):
        return []
    broken = broken_rules(voiced.search, [voicing.candidate for voicing in voiced.voicings])
    found = [
        f"{chord_named(voiced, each.place, conventions)}: {_told(each, voiced, conventions)}."
        for each in broken[:_MOST_REMARKS]
    ]
    if len(broken) > _MOST_REMARKS:
        found.append(f"{len(broken) - _MOST_REMARKS} more rules are broken further on.")
    is_best = voiced.search.task.wishes.path == 1
    return [*found, "No path under these wishes breaks less."] if found and is_best else found


def _told(broken: Broken, voiced: VoicedProgression, conventions: Conventions) -> str:
    """A broken rule with the voices that break it; of a tendency tone, which one and where it should go."""
    is_four_part = voiced.style == FOUR_PART
    names = [f"the {FOUR_PARTS[voice]}" if is_four_part else f"voice {voice + 1}" for voice in broken.voices]
    found = where_it_pulls(broken, tuple(voiced.search.task.progression.chords()))
    if found is None:
        return f"{broken.rule} {_among(names)}" if names else broken.rule
    tone, goals = found
    named = " or ".join(note_name(goal, conventions) for goal in goals)
    return f"{note_name(tone, conventions)} in {names[0]} does not go to {named}"


def _among(names: list[str]) -> str:
    return f"in {names[0]}" if len(names) == 1 else f"between {' and '.join(names)}"


def chord_named(voiced: VoicedProgression, place: int, conventions: Conventions = DEFAULT) -> str:
    """A chord by its number and its symbol."""
    progression = voiced.search.task.progression
    chord = progression.relative_chords[place].in_key(progression.key)
    return f"Chord {place + 1} ({write_chord(chord, conventions)})"
