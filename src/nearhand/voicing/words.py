"""How far a voiced progression moves, in a sentence."""

from __future__ import annotations

from nearhand.notation.counting import semitones_in_words
from nearhand.voicing.families import FOUR_PART
from nearhand.voicing.voice import VoicedProgression


def movement_sentence(voiced: VoicedProgression) -> str:
    """How far the moving voices go, and how far plain root positions would.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> from nearhand.voicing.voice import voice_progression
    >>> movement_sentence(voice_progression(resolve(read_chart("| I | IV | I |"), parse_key("C"))))
    'The right hand moves 6 semitones over 3 chords; plain root positions would move 30.'
    """
    count = len(voiced.voicings)
    loop = ", the way back to the first included" if voiced.loops else ""
    text = f"{_movers(voiced)} {semitones_in_words(voiced.movement)} over {count} chord{'s' * (count > 1)}{loop}"
    if count == 1:
        return f"{text}."
    from nearhand.voicing.root_positions import root_position_movement

    plain = root_position_movement(tuple(voiced.search.task.progression.chords()), voiced.loops)
    return f"{text}; plain root positions would move {plain}."


def _movers(voiced: VoicedProgression) -> str:
    if voiced.style == FOUR_PART:
        return "The upper voices move"
    reached = {voicing.candidate.reached for voicing in voiced.voicings}
    if reached == {0}:
        return "The right hand moves"
    if all(not voicing.right for voicing in voiced.voicings):
        return "The left hand moves"
    return "The upper voices move"
