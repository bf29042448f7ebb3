"""Chorales by J. S. Bach with the analyses that music21's package ships: soprano and chords as our values.

Analyses: A. Jones, proofread by D. Tymoczko and H. Robb, in RomanText.
"""

from __future__ import annotations

from fractions import Fraction
from functools import lru_cache
from pathlib import Path

from music21 import converter, corpus
from music21 import key as keys
from music21.roman import RomanNumeral
from romantext import CORPUS
from strategies import key

from nearhand.notation.conventions import Conventions
from nearhand.notation.numerals import parse_numeral
from nearhand.theory.chord import relative_to
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody, MelodyBar, MelodyNote, home_tonic
from nearhand.theory.pitch import Pitch, interval_between
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS, pitch_class
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.theory.record import NamedTuple

ANALYSED = {"001": "269", "002": "347", "003": "153.1", "005": "267", "006": "281", "013": "33.6", "018": "318"}
"""The number of an analysis, after A. Riemenschneider's edition, and of the chorale, after the catalogue of works."""
OF_THE_SCALE = Conventions(sevenths="scale")


class Chorale(NamedTuple):
    """A soprano over its chords, both as ours; and every numeral as music21 reads it, with its offset in quarters."""

    melody: Melody
    progression: Progression
    numerals: tuple[tuple[Fraction, RomanNumeral], ...]

    def numeral_at(self, onset: Fraction) -> RomanNumeral:
        """The numeral that sounds at an offset."""
        return [numeral for offset, numeral in self.numerals if offset <= onset][-1]


def beats(quarters: float) -> int | Fraction:
    length = Fraction(quarters).limit_denominator(64)
    return int(length) if length.denominator == 1 else length


def our_key(tonic: keys.Key) -> Key:
    return key(tonic.tonicPitchNameWithCase.replace("-", "b"))


def our_pitch(pitch) -> Pitch:  # type: ignore[no-untyped-def]  # music21 gives no types
    fifths = LETTERS_IN_FIFTHS.index(pitch.step) - 1 + 7 * int(pitch.alter)
    return Pitch(pitch_class(fifths), pitch.octave)


@lru_cache
def chorale(number: str) -> Chorale:
    """The chorale of a number in ``ANALYSED``; it begins at beat 0, a pickup included."""
    folder = Path(CORPUS) / "bach" / "choraleAnalyses"
    analysis = converter.parse(folder / f"riemenschneider{number}.rntxt")
    numerals = analysis.recurse().getElementsByClass(RomanNumeral)
    found = [(beats(each.getOffsetInHierarchy(analysis)), each) for each in numerals]
    home = our_key(found[0][1].key)
    score = corpus.parse(f"bach/bwv{ANALYSED[number]}")
    return Chorale(soprano(score, home), chords(found, home), tuple(found))


def soprano(score, home: Key) -> Melody:  # type: ignore[no-untyped-def]
    tonic = home_tonic(home)
    notes = []
    for each in score.parts[0].recurse().notesAndRests:
        interval: Interval | None = None if each.isRest else interval_between(tonic, our_pitch(each.pitch))
        is_held = each.tie is not None and each.tie.type in ("stop", "continue")
        notes.append(MelodyNote(interval, beats(each.quarterLength), is_held))
    return Melody(tonic, (MelodyBar(tuple(notes)),))


def chords(found: list[tuple[Fraction, RomanNumeral]], home: Key) -> Progression:
    """All chords in one bar, so that beats are counted from its start."""
    slots = []
    for _, each in found:
        here = our_key(each.key)
        chord = parse_numeral(each.figure, here.mode, OF_THE_SCALE).in_key(here)
        slots.append(Slot(relative_to(chord, home), beats(each.quarterLength)))
    return Progression(home, (Bar(tuple(slots)),))
