"""Paths, lines and reasons of voicings as JSON."""

from __future__ import annotations

from nearhand.notation.chord_symbols import write_chord
from nearhand.theory.pitch import Pitch
from nearhand.verbs.others import OthersAnswer
from nearhand.verbs.voice_lines import LinesAnswer
from nearhand.verbs.why import Choice, WhyAnswer, decided_by
from nearhand.voicing.account import Broken, broken_rules, parts_of, where_it_pulls
from nearhand.voicing.voice import VoicedProgression, Voicing

TYPE_CHECKING = False
if TYPE_CHECKING:
    from typing import Any


def voicing_fields(voiced: VoicedProgression) -> dict[str, Any]:
    """The style of a path, what it costs by name, the rules it breaks, and the family each chord is from."""
    parts = dict(parts_of(voiced.costs)) or {"movement": 0}
    fields: dict[str, Any] = {"style": voiced.style, "cost": {"total": sum(parts.values()), **parts}}
    broken = broken_rules(voiced.search, [voicing.candidate for voicing in voiced.voicings])
    fields["broken"] = [_broken(each, voiced) for each in broken]
    fields["styles"] = list(voiced.search.styles)
    on_top = voiced.search.on_top
    if on_top is not None:
        carried = zip(voiced.voicings, on_top.notes, strict=True)
        tops = [None if note is None else str(voicing.upper[-1]) for voicing, note in carried]
        fields["melody_on_top"] = {"octaves": on_top.octaves, "notes": tops}
    return fields


def _broken(broken: Broken, voiced: VoicedProgression) -> dict[str, Any]:
    """A broken rule with its voices, counted from the bass as 0; of a tendency tone its name and where it should go."""
    row: dict[str, Any] = {"chord": broken.place + 1, "rule": broken.rule, "voices": list(broken.voices)}
    pull = where_it_pulls(broken, tuple(voiced.search.task.progression.chords()))
    if pull is not None:
        row |= {"tone": str(pull[0]), "goals": [str(goal) for goal in pull[1]]}
    return row


def hands_fields(voicing: Voicing) -> dict[str, Any]:
    """The notes of both hands, low to high."""
    return {"left": _names(voicing.left), "right": _names(voicing.right)}


def paths_document(answer: OthersAnswer) -> dict[str, Any]:
    """The best paths in order."""
    return {
        "key": str(answer.key),
        "paths": [
            {
                "path": path.number,
                "differs": [place + 1 for place in path.differs],
                "voicings": [hands_fields(voicing) for voicing in path.voiced.voicings],
                "voicing": voicing_fields(path.voiced),
            }
            for path in answer.paths
        ],
    }


def why_document(answer: WhyAnswer) -> dict[str, Any]:
    """The voicing of a chord and the next best ones."""
    return {
        "key": str(answer.key),
        "chord": answer.number,
        "symbol": write_chord(answer.chord, answer.conventions._replace(plain=True)),
        "taken": _choice(answer.taken),
        "next_best": [{**_choice(other), "decided_by": decided_by(answer.taken, other)} for other in answer.others],
    }


def lines_document(answer: LinesAnswer) -> dict[str, Any]:
    """The voices, highest first; ``outer_motion`` leads from each chord to the next."""
    assert answer.view.voiced is not None
    return {
        "key": str(answer.view.key),
        "lines": [
            {
                "voice": voice.name,
                "notes": [None if pitch is None else str(pitch) for pitch in voice.pitches],
                "held": list(voice.held),
            }
            for voice in answer.lines.voices
        ],
        "outer_motion": list(answer.lines.motions),
        "voicing": voicing_fields(answer.view.voiced),
    }


def _choice(choice: Choice) -> dict[str, Any]:
    return {
        **hands_fields(choice.voicing),
        "arriving": choice.arriving,
        "leaving": choice.leaving,
        "cost": {"total": choice.cost, **dict(choice.parts)},
    }


def _names(pitches: tuple[Pitch, ...]) -> list[str]:
    return [str(pitch) for pitch in pitches]
