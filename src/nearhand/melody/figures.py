"""Notes that decorate: what a note outside its chord is by the notes before and after it.

Definitions: Open Music Theory, "Embellishing tones"; R. Hutchinson, *Music Theory for the 21st-Century Classroom*,
"Non-Chord Tones" (both from memory). Steps are those of ``figuration``; what follows a rest is taken as leapt to.

An appoggiatura resolves to a chord tone. A light note that is leapt to and goes by step to a tension, and one that is
reached by step on a weak place and leaps onwards, are incomplete neighbours: step on one side, leap on the other.
"""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.melody.figuration import Figuration, Place

SUSPENSION, RETARDATION, ANTICIPATION = "suspension", "retardation", "anticipation"
PASSING, UPPER_NEIGHBOUR, LOWER_NEIGHBOUR = "passing tone", "upper neighbour", "lower neighbour"
DOUBLE_NEIGHBOUR, INCOMPLETE_NEIGHBOUR = "double neighbour", "incomplete neighbour"
APPOGGIATURA, ESCAPE, PEDAL = "appoggiatura", "escape tone", "pedal"
FIGURES = (
    SUSPENSION, RETARDATION, ANTICIPATION, PASSING, UPPER_NEIGHBOUR, LOWER_NEIGHBOUR, DOUBLE_NEIGHBOUR, APPOGGIATURA,
    ESCAPE, INCOMPLETE_NEIGHBOUR, PEDAL,
)  # fmt: skip


def figures(music: Figuration, place: Place, is_light: bool) -> Iterator[str]:
    """What a note outside its harmony may be called, in the order in which the kinds are asked.

    A light note may be any of the figures. A heavy one is one only where it resolves, and no escape tone.
    """
    if suspended := suspension(music, place):
        yield suspended
    if _anticipates(music, place):
        yield ANTICIPATION
    if not is_light and music.resolution(place.note, or_stands=True) is None:
        return
    yield from _between(music, place.note)
    if _is_in_double_neighbour(music, place.note):
        yield DOUBLE_NEIGHBOUR
    if _is_appoggiatura(music, place.note):
        yield APPOGGIATURA
    if is_light and _is_escape(music, place):
        yield ESCAPE


def suspension(music: Figuration, place: Place) -> str:
    """Suspension or retardation, empty where a note is neither.

    Its pitch was a tone of the chord before, is held or struck again where the chord changes, and goes a step down (or
    up) to a tone of the chord.
    """
    if place.harmony == 0:
        return ""
    before, harmony = music.line.harmonies[place.harmony - 1 : place.harmony + 1]
    begin, _ = music.sounding_through(place.note)
    if not begin < harmony.onset or not music.is_tone_at(place.note, before.onset):
        return ""
    after = music.next_pitch(place.note, 1)
    if after is None or not music.is_tone_at(after, music.notes[after].onset):
        return ""
    return {-1: SUSPENSION, 1: RETARDATION, 0: ""}[music.step(place.note, after)]


def resolves_within(music: Figuration, place: Place) -> bool:
    """Whether the next pitch comes while the harmony lasts."""
    after = music.next_pitch(place.note, 1)
    return after is not None and music.notes[after].onset < music.line.harmonies[place.harmony].end


def _sounds_on(music: Figuration, place: Place) -> bool:
    """Whether the pitch sounds on, or again, where the harmony ends."""
    _, end = music.sounding_through(place.note)
    return place.end == music.line.harmonies[place.harmony].end < end


def _anticipates(music: Figuration, place: Place) -> bool:
    """A note struck after its chord or off the beat, and right before the next chord, of which it is a tone."""
    is_late = place.onset > music.line.harmonies[place.harmony].onset or not music.line.is_on_the_beat(place.onset)
    return is_late and _sounds_on(music, place) and music.is_tone_at(place.note, place.end)


def _between(music: Figuration, index: int) -> Iterator[str]:
    """Passing tones and neighbours: a step to the note, and a step from it.

    Steps that pass go on to another letter in the end: C D D♯ passes, C♭ C C♯ does not. A neighbour may come back to
    its letter with another accidental, as F G F♯ where the chord changes.
    """
    before, after = music.next_pitch(index, -1), music.next_pitch(index, 1)
    if before is None or after is None:
        return
    is_same_letter = music.notes[before].interval.steps == music.notes[after].interval.steps
    into, out = -music.wide_step(index, before), music.wide_step(index, after)
    if into and into == out and not is_same_letter:
        yield PASSING
    away, back = -music.step(index, before), music.step(index, after)
    if away and away == -back and is_same_letter and _are_home(music, before, after):
        yield UPPER_NEIGHBOUR if away > 0 else LOWER_NEIGHBOUR


def _are_home(music: Figuration, before: int, after: int) -> bool:
    """Whether of two notes one is a tone of its chord, or both stand over theirs: what a neighbour decorates."""
    around = (before, after)
    return any(map(music.is_tone, around)) or all(music.is_tone(each, or_stands=True) for each in around)


def _is_in_double_neighbour(music: Figuration, index: int) -> bool:
    """Whether a note is the first or the second of a double neighbour."""
    before, after = music.next_pitch(index, -1), music.next_pitch(index, 1)
    return _is_double_neighbour(music, index, after) or _is_double_neighbour(music, before, index)


def _is_double_neighbour(music: Figuration, first: int | None, second: int | None) -> bool:
    """Two light notes outside their chords, a step above and a step below the tone before and after them.

    That tone belongs to its chord or stands over it.
    """
    if first is None or second is None:
        return False
    before, after = music.next_pitch(first, -1), music.next_pitch(second, 1)
    if before is None or after is None or not music.is_same(before, after):
        return False
    if not all(music.is_light(each) and not music.is_tone(each) for each in (first, second)):
        return False
    away = music.step(before, first)
    is_around = bool(away) and music.step(after, second) == -away
    return is_around and all(music.is_tone(each, or_stands=True) for each in (before, after))


def _is_appoggiatura(music: Figuration, index: int) -> bool:
    """Leapt to, or struck after a rest, and resolved by step to a chord tone."""
    return _is_leapt_to(music, index) and music.resolution(index) is not None


def _is_leapt_to(music: Figuration, index: int) -> bool:
    return not music.step(index, music.next_pitch(index, -1))


def _is_escape(music: Figuration, place: Place) -> bool:
    """On a weak place, a step away from a chord tone, and left by a leap the other way."""
    before, after = music.next_pitch(place.note, -1), music.next_pitch(place.note, 1)
    if before is None or after is None or not _leaves_weakly(music, place):
        return False
    away = music.step(before, place.note)
    turns = (music.notes[after].pitch.midi - music.notes[place.note].pitch.midi) * away < 0
    return turns and music.is_tone_at(before, place.onset)


def _leaves_weakly(music: Figuration, place: Place) -> bool:
    """Whether a note stands on a weak place and is left by leap."""
    after = music.next_pitch(place.note, 1)
    is_left_by_leap = after is not None and not music.step(place.note, after)
    return is_left_by_leap and not music.line.is_strong(place.onset)


def is_incomplete_neighbour(music: Figuration, place: Place) -> bool:
    """Whether a light note is a step away from a tone that belongs to its chord or stands over it, on one side alone.

    It is leapt to and goes on to that tone by step, or it stands on a weak place, comes from it, and is left by leap.
    """
    before = music.next_pitch(place.note, -1)
    if _is_leapt_to(music, place.note):
        return music.resolution(place.note, or_stands=True) is not None
    assert before is not None
    return _leaves_weakly(music, place) and music.is_tone_at(before, place.onset, or_stands=True)


def is_pedal(music: Figuration, place: Place) -> bool:
    """Whether the pitch sounds through the harmony, from one before of which it is a tone to one after of which it is.

    Notes of one pitch that follow at once sound through.
    """
    begin, end = music.sounding_through(place.note)
    harmonies = music.line.harmonies
    if not begin < harmonies[place.harmony].onset or not end > harmonies[place.harmony].end:
        return False
    before = [each for each in harmonies[: place.harmony] if each.end > begin]
    after = [each for each in harmonies[place.harmony + 1 :] if each.onset < end]
    return all(any(music.is_tone_at(place.note, each.onset) for each in row) for row in (before, after))
