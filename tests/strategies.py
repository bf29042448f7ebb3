"""What the tests share: words for expectations, and Hypothesis strategies for the values of music theory."""

from __future__ import annotations

from hypothesis import settings
from hypothesis import strategies as st

from nearhand.notation.chord_words import BASES, CHANGES, COMPLETE, apply_change
from nearhand.notation.conventions import DEGREES, FIGURES, SEVENTHS, SYMBOLS, Conventions
from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.pitch import Pitch
from nearhand.theory.pitch_class import PitchClass

settings.register_profile("nearhand", deadline=None)  # a slow machine is no broken law
settings.load_profile("nearhand")

LETTER_PLACES = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}
"""D. Temperley, *The Cognition of Basic Musical Structures*, 2001, ch. 5 (from memory)."""


def note(name: str) -> PitchClass:
    """A pitch class from a plain name such as ``F##``, read here and not by the code under test."""
    return PitchClass(LETTER_PLACES[name[0]] + 7 * (name.count("#") - name.count("b")))


def notes(names: str) -> tuple[PitchClass, ...]:
    """Pitch classes from names with blanks between."""
    return tuple(note(name) for name in names.split())


def key(name: str) -> Key:
    """``Eb`` is E flat major, ``eb`` E flat minor, as textbooks write keys in tables."""
    return Key(note(name[0].upper() + name[1:]), MINOR if name[0].islower() else MAJOR)


def names(tones: tuple[PitchClass, ...]) -> str:
    """Plain names with blanks between: the way back from ``notes``."""
    return " ".join(map(str, tones))


MAJOR_TONICS = ("Cb", "Gb", "Db", "Ab", "Eb", "Bb", "F", "C", "G", "D", "A", "E", "B", "F#", "C#")
MINOR_TONICS = ("ab", "eb", "bb", "f", "c", "g", "d", "a", "e", "b", "f#", "c#", "g#", "d#", "a#")

pitch_classes = st.integers(-22, 26).map(PitchClass)
"""Every pitch class of at most three accidentals."""
common_pitch_classes = st.integers(-15, 19).map(PitchClass)
"""The 35 pitch classes of at most two accidentals."""
pitches = st.builds(Pitch, common_pitch_classes, st.integers(0, 8))
intervals = st.builds(Interval, st.integers(-19, 19), st.integers(-14, 14))
keys = st.builds(Key, st.integers(-8, 12).map(PitchClass), st.sampled_from(list(MODES.values())))
signature_keys = st.builds(key, st.sampled_from([*MAJOR_TONICS, *MINOR_TONICS]))
"""The thirty major and minor keys that have a plain signature."""

base_qualities = st.sampled_from(sorted(set(BASES.values())))
open_bases = sorted({quality for word, quality in BASES.items() if word not in COMPLETE})
changed_qualities = st.builds(apply_change, st.sampled_from(open_bases), st.sampled_from(sorted(set(CHANGES.values()))))
qualities = base_qualities | changed_qualities
chords = st.builds(Chord, common_pitch_classes, qualities, common_pitch_classes)
relative_chords = st.builds(RelativeChord, st.integers(-10, 10), qualities, st.integers(-10, 10))
conventions = st.builds(
    Conventions,
    st.sampled_from(DEGREES),
    st.booleans(),
    st.sampled_from(SEVENTHS),
    st.sampled_from(SYMBOLS),
    st.sampled_from(FIGURES),
)
modes = st.sampled_from(list(MODES.values()))
