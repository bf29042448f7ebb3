"""What is hard about a key for a tune, and the few keys that teach most.

A key is hard by what stands in its signature, what is written beside it, what lies on black keys, and above all by the
chords that the hand does not have yet. What sounds alike counts as one: F♯ is no new chord after G♭. Of all choices of
a few keys that one teaches most which brings most new chords together (common practice, no source). A melody without
chords has steps instead: a step is new where its notes lie otherwise on black and white keys than the same degrees do
in the known keys, for then the hand lies otherwise, too (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from itertools import combinations

from nearhand.melody.hand_steps import HandStep, hand_steps, places_of
from nearhand.theory.chord import Chord
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.pitch_class import BLACK_KEYS, PitchClass
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

Sound = tuple[int, frozenset[int]]
"""A chord as the hand knows it, whatever it is called: its root and all its tones, in semitones above C."""
Lesson = Sound | HandStep


class KeyDifficulty(NamedTuple):
    """What is hard about one key.

    ``accidentals``: how many stand in the signature. ``beside``: the notes that are written beside it, each once.
    ``double_accidentals``: how many of the ``tones`` need one, ``black``: how many lie on black keys. ``new``: the
    chords that no known key has. ``is_known``: whether it sounds as one of those. ``new_steps``: of a melody without
    chords the steps that lie otherwise on black and white keys in every known key.
    """

    key: Key
    accidentals: int
    beside: tuple[PitchClass, ...]
    double_accidentals: int
    black: int
    tones: int
    new: tuple[Chord, ...]
    is_known: bool
    new_steps: tuple[HandStep, ...] = ()

    @property
    def load(self) -> tuple[int, int, int]:
        """By what keys that bring as much that is new are told apart: accidentals, double ones, black keys."""
        return self.accidentals, self.double_accidentals, self.black


class KeyToLearn(NamedTuple):
    """A key that is worth learning, and the chords that it brings after the keys before it, or the steps."""

    key: Key
    brings: tuple[Chord, ...]
    steps: tuple[HandStep, ...] = ()

    @property
    def learned(self) -> frozenset[Lesson]:
        """All that it brings, as the hand knows it."""
        return frozenset((*map(sound_of, self.brings), *self.steps))


class Difficulty(NamedTuple):
    """The keys asked for, in their order; those to learn, the one that brings most first; and those that are known.

    ``tones_beside``: how many tones stand beside the signature, which is the same in every key. ``new``: how many
    chords are new in all the keys together. ``steps``: how many steps a melody without chords has, ``new_steps``: how
    many are new in all the keys together; None and 0 where chords are learned.
    """

    keys: tuple[KeyDifficulty, ...]
    to_learn: tuple[KeyToLearn, ...]
    known: tuple[Key, ...]
    tones_beside: int
    new: int
    steps: int | None = None
    new_steps: int = 0


def difficulty_of(
    progression: Progression, melody: Melody | None, keys: Sequence[Key], known: Sequence[Key], choose: int
) -> Difficulty:
    """What is hard about each of some keys for chords and a melody (None where there is none), and which to learn.

    ``choose``: how many keys to choose at most; fewer are chosen where another one would bring nothing new.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> c, *others = [parse_key(name) for name in ("C", "F", "G", "E")]
    >>> found = difficulty_of(resolve(read_chart("| C | F | G |"), c), None, (c, *others), (c,), 2)
    >>> [(str(each.key.tonic), each.accidentals, each.black, len(each.new)) for each in found.keys]
    [('C', 0, 0, 0), ('F', 1, 1, 1), ('G', 1, 1, 1), ('E', 4, 4, 3)]
    >>> [(str(each.key.tonic), len(each.brings)) for each in found.to_learn]
    [('E', 3), ('F', 1)]
    """
    tones = (*_chord_tones(progression), *places_of(melody))
    beside = [tone for tone in tones if tone not in progression.key.mode.degrees]
    met = {sound_of(chord) for key in known for chord in progression.in_key(key).chords()}
    alone = None if progression.relative_chords else melody
    steps = {key: hand_steps(alone, key) for key in (*known, *keys)}
    met_steps = {step for key in known for step in steps[key]}
    sounding = {key.tonic.semitones for key in known}
    rows = tuple(
        KeyDifficulty(
            key,
            abs(key.signature),
            tuple(dict.fromkeys(key.tonic.up(tone) for tone in beside)),
            sum(abs(key.tonic.up(tone).alteration) > 1 for tone in tones),
            sum(key.tonic.up(tone).semitones in BLACK_KEYS for tone in tones),
            len(tones),
            _new_chords(progression.in_key(key), met),
            key.tonic.semitones in sounding,
            tuple(step for step in steps[key] if step not in met_steps),
        )
        for key in keys
    )
    new = {sound_of(chord) for row in rows for chord in row.new}
    to_learn = keys_that_teach_most(rows, choose)
    found = Difficulty(rows, to_learn, tuple(known), len(beside), len(new))
    if alone is None:
        return found
    new_steps = {step for row in rows for step in row.new_steps}
    return found._replace(steps=len(steps[keys[0]]), new_steps=len(new_steps))


def _chord_tones(progression: Progression) -> Iterable[int]:
    """The tones of all chords, foreign basses included, in fifths above the tonic."""
    for chord in progression.relative_chords:
        yield from chord.places
        if chord.bass not in (chord.root, *chord.places):
            yield chord.bass


def _new_chords(progression: Progression, met: set[Sound]) -> tuple[Chord, ...]:
    """The chords that sound as none of those met, each once, without slash basses."""
    found: dict[Sound, Chord] = {}
    for chord in progression.chords():
        found.setdefault(sound_of(chord), chord._replace(bass=chord.root))
    return tuple(chord for sound, chord in found.items() if sound not in met)


def sound_of(chord: Chord) -> Sound:
    """A chord as the hand knows it: another name or another bass makes no new one.

    >>> from nearhand.notation.chord_symbols import parse_chord
    >>> sound_of(parse_chord("F#7")) == sound_of(parse_chord("Gb7/Fb"))
    True
    """
    return chord.root.semitones, frozenset(tone.semitones for tone in chord.tones)


def keys_that_teach_most(rows: Sequence[KeyDifficulty], choose: int) -> tuple[KeyToLearn, ...]:
    """The few keys, ``choose`` at most, that together bring most new chords, or steps where there are no chords.

    Of choices that bring as many, the one with fewest accidentals is taken, then fewest double ones, fewest tones on
    black keys, and fewest keys. All choices are looked at: twelve keys sound differently, which makes 4,095 at most.
    """
    teaching = _one_a_sound(row for row in rows if row.new or row.new_steps)
    lessons = [_to_learn(row, frozenset()).learned for row in teaching]
    numbers = {each: place for place, each in enumerate(dict.fromkeys(each for learned in lessons for each in learned))}
    masks = [sum(1 << numbers[each] for each in learned) for learned in lessons]
    best: tuple[int, ...] = ()
    least = _cost(best, teaching, masks)
    for count in range(1, min(choose, len(teaching)) + 1):
        for chosen in combinations(range(len(teaching)), count):
            cost = _cost(chosen, teaching, masks)
            if cost < least:
                best, least = chosen, cost
    return _in_order([teaching[place] for place in best])


def _one_a_sound(rows: Iterable[KeyDifficulty]) -> list[KeyDifficulty]:
    """Of keys that sound alike the easiest."""
    found: dict[int, KeyDifficulty] = {}
    for row in rows:
        other = found.setdefault(row.key.tonic.semitones, row)
        if row.load < other.load:
            found[row.key.tonic.semitones] = row
    return list(found.values())


def _cost(chosen: Sequence[int], rows: Sequence[KeyDifficulty], masks: Sequence[int]) -> tuple[int, ...]:
    """What the best choice has least of: what is new below zero, its loads, and its keys."""
    together = 0
    for place in chosen:
        together |= masks[place]
    loads = [rows[place].load for place in chosen]
    return -together.bit_count(), *(sum(load[part] for load in loads) for part in range(3)), len(chosen)


def _in_order(rows: list[KeyDifficulty]) -> tuple[KeyToLearn, ...]:
    """The chosen keys, each time the one that brings most after those before it (of equal ones the easier)."""
    found: list[KeyToLearn] = []
    met: frozenset[Lesson] = frozenset()
    while rows:
        left = [_to_learn(row, met) for row in rows]
        place = min(range(len(rows)), key=lambda place: (-len(left[place].learned), rows[place].load))
        found.append(left[place])
        met |= left[place].learned
        del rows[place]
    return tuple(found)


def _to_learn(row: KeyDifficulty, met: frozenset[Lesson]) -> KeyToLearn:
    """What a key brings beside all that was met before."""
    chords = tuple(chord for chord in row.new if sound_of(chord) not in met)
    return KeyToLearn(row.key, chords, tuple(step for step in row.new_steps if step not in met))
