"""Melodies for ears: one note a sentence, with its degree and its length."""

from __future__ import annotations

from collections.abc import Iterator

from nearhand.notation.conventions import Conventions
from nearhand.notation.counting import counted
from nearhand.notation.keys import key_name
from nearhand.notation.melody_degrees import HIGHER, LOWER
from nearhand.notation.melody_writing import write_as_degrees
from nearhand.notation.notes import pitch_name
from nearhand.theory.melody import Melody
from nearhand.theory.mode import Mode
from nearhand.verbs.answers import MelodyAnswer

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.progression import Beats

_ORNAMENTS = {
    "tr": "with a trill",
    "mordent": "with a mordent",
    "inverted-mordent": "with an inverted mordent",
    "turn": "with a turn",
    "inverted-turn": "with an inverted turn",
}


def melodies(answer: MelodyAnswer) -> Iterator[str]:
    """The melody in each key, key by key."""
    if answer.tune.title:
        yield f"{answer.tune.title}."
    for view in answer.views:
        yield f"The melody in {key_name(view.key, answer.conventions)}."
        yield from melody_sentences(view.melody, view.key.mode, answer.conventions, is_alone=not answer.bars)
        yield ""


def melody_sentences(melody: Melody, mode: Mode, conventions: Conventions, is_alone: bool = False) -> Iterator[str]:
    """Each bar, then its notes one by one; of a melody alone its repeats, too."""
    write = write_as_degrees(mode, conventions)
    pitches = iter(melody.pitches())
    for number, bar in enumerate(melody.bars, start=0 if melody.has_pickup else 1):
        if is_alone and bar.opens_repeat:
            yield "A repeat begins."
        yield f"Bar {number}:" if number else "Pickup:"
        for note in bar.notes:
            pitch = next(pitches)
            if pitch is None or note.interval is None:
                yield f"rest, {_beats(note.beats)}."
                continue
            if note.graces:
                names = ", ".join(pitch_name(melody.tonic.up(grace), conventions) for grace in note.graces)
                yield f"grace note{'s' * (len(note.graces) > 1)} {names}."
            told = f"{degree_in_words(write(note.interval))}, {pitch_name(pitch, conventions)}, {_beats(note.beats)}"
            yield f"{'held on: ' * note.is_held}{told}{_ornament(note.ornament)}."
        if is_alone and bar.closes_repeat:
            yield "The repeat ends."


def _ornament(ornament: str) -> str:
    return f", {_ORNAMENTS[ornament]}" if ornament else ""


def degree_in_words(text: str) -> str:
    """A degree with its octave marks as words.

    >>> degree_in_words("5_"), degree_in_words("♭3''"), degree_in_words("1")
    ('5 below', '♭3 two octaves up', '1')
    """
    bare = text.rstrip(HIGHER + LOWER)
    octaves = len(text) - len(bare)
    if not octaves:
        return bare
    if text.endswith(LOWER):
        return f"{bare} below" if octaves == 1 else f"{bare} {_count(octaves)} octaves down"
    return f"{bare} above" if octaves == 1 else f"{bare} {_count(octaves)} octaves up"


def _count(octaves: int) -> str:
    return "two" if octaves == 2 else str(octaves)


def _beats(beats: Beats) -> str:
    """A length in words.

    >>> from fractions import Fraction
    >>> _beats(1), _beats(Fraction(1, 2)), _beats(Fraction(3, 2)), _beats(Fraction(2, 3))
    ('1 beat', 'half a beat', '1 and a half beats', '2 thirds of a beat')
    """
    whole, rest = divmod(beats, 1)
    if not rest:
        return counted(whole, "beat")
    if not whole:
        return f"{_part(rest)} a beat" if rest.numerator == 1 and rest.denominator == 2 else f"{_part(rest)} of a beat"
    return f"{whole} and {'a ' * (rest.denominator == 2)}{_part(rest)} beats"


_PARTS = {2: "half", 3: "third", 4: "quarter", 6: "sixth", 8: "eighth"}


def _part(rest: Beats) -> str:
    name = _PARTS.get(rest.denominator)
    if name is None:
        return f"{rest.numerator} over {rest.denominator}"
    if rest.denominator == 2:
        return name
    return f"{rest.numerator} {name}{'s' * (rest.numerator != 1)}"
