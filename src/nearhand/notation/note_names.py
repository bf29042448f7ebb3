"""Names of notes other than the English ones: German, and solfege with a fixed do.

German: the letters, H for B natural; a sharp adds ``is``, a flat ``es``, or ``s`` behind E and A; one flat on H is B
alone. Fixed do: Do is C in every key, and signs stay signs. Common practice, no source; the tests hold both beside
music21's. Octaves are counted as with English names: middle C is C4 and Do4 (French books call it Do3).
"""

from __future__ import annotations

from nearhand.notation.accidentals import write_accidental
from nearhand.theory.pitch_class import PitchClass

SYLLABLES = {"C": "Do", "D": "Re", "E": "Mi", "F": "Fa", "G": "Sol", "A": "La", "B": "Si"}
_VOWELS = "EA"
"""Letters behind which the first flat is ``s`` alone: Es, As."""


def german_name(note: PitchClass, plain: bool = False) -> str:
    """A note's German name; it has no signs, so that ``plain`` changes nothing.

    >>> [german_name(PitchClass(fifths)) for fifths in (5, -2, -9, 6, -3, -4)]
    ['H', 'B', 'Heses', 'Fis', 'Es', 'As']
    """
    letter, alteration = note.letter, note.alteration
    if letter == "B":
        if alteration == -1:
            return "B"
        letter = "H"
    if alteration < 0 and letter in _VOWELS:
        return f"{letter}s{'es' * (-alteration - 1)}"
    return letter + ("is" * alteration if alteration > 0 else "es" * -alteration)


def solfege_name(note: PitchClass, plain: bool = False) -> str:
    """A note's syllable with its sign.

    >>> [solfege_name(PitchClass(fifths)) for fifths in (0, 5, -2, 6)]
    ['Do', 'Si', 'Si♭', 'Fa♯']
    """
    return SYLLABLES[note.letter] + write_accidental(note.alteration, plain)


NAMERS = {"german": german_name, "solfege": solfege_name}
"""Choice of names to its writer. English ones are written by ``notes.write_pitch_class``."""

WHICH = {
    "german": (
        "Notes and keys have their German names: H is B natural, B is B flat. Chord symbols and what you type stay "
        "English."
    ),
    "solfege": (
        "Notes and keys have their fixed-do names: Do is C, Si is B. Chord symbols and what you type stay English; "
        "middle C is Do4."
    ),
}
"""Choice of names to the sentence that says which is shown."""
