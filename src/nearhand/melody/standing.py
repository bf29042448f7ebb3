"""What a note is to a chord by itself: a tone of it, a tension that its quality lets stand, or what it rubs against.

A tension stands a whole tone above a chord tone and not a semitone above one; dominants also take their altered ones,
the flat and the sharp ninth and the flat thirteenth (common practice; B. Nettles and R. Graf, *The Chord Scale Theory
and Jazz Harmony*, from memory). A member that a symbol leaves open, as the seventh of a triad or the third of a power
chord, may be added where it is no semitone above a chord tone. With a seventh the sixth is called 13, without a third
the eleventh is called 4 (R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Chord Symbol Specifics").
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.chord import RelativeChord
from nearhand.theory.quality import Quality, alteration
from nearhand.theory.record import NamedTuple

_NAMES = {
    1: "root", 2: "second", 3: "third", 4: "fourth", 5: "fifth", 6: "sixth", 7: "seventh", 8: "octave", 9: "ninth",
    10: "tenth", 11: "eleventh", 12: "twelfth", 13: "thirteenth", 14: "fourteenth",
}  # fmt: skip
BASS = "bass"
_FLAT_NINTH, _NINTH, _SHARP_NINTH, _THIRD, _FOURTH, _SHARP_ELEVENTH = 1, 2, 3, 4, 5, 6
_FIFTH, _FLAT_THIRTEENTH, _SIXTH, _MINOR_SEVENTH, _MAJOR_SEVENTH = 7, 8, 9, 10, 11
"""Semitones above the root."""
_TENSIONS = {_NINTH: "9", _FOURTH: "11", _SHARP_ELEVENTH: "#11", _FLAT_THIRTEENTH: "b13", _SIXTH: "13"}
_OF_DOMINANTS = {_FLAT_NINTH: "b9", _SHARP_NINTH: "#9", _FLAT_THIRTEENTH: "b13"}
_OTHER_FORMS = (
    (_FLAT_NINTH, _NINTH),
    (_SHARP_NINTH, _NINTH),
    (_NINTH, _SHARP_NINTH),
    (_FLAT_THIRTEENTH, _SIXTH),
)
"""A tension of a dominant, and the tone of its symbol that keeps it out: a ninth chord takes no flat ninth."""
_WITHOUT_SEVENTH = {"13": "6", "b13": "b6"}
_RESPELLED = {
    ("#11", -6): "b5",
    ("b13", 8): "#5",
    ("b6", 8): "#5",
    ("b3", 9): "#9",
    ("6", -9): "dim7",
    ("7", 10): "#6",
}
"""The usual name of a sound, and fifths above the root to a note that is spelled otherwise, to the name by its letter.
What is not here keeps the usual name: E♭ over C7 is a sharp ninth, C♯ a flat one (common practice, no source)."""
_OPEN_THIRDS = {_SHARP_NINTH: "b3", _THIRD: "3", _FOURTH: "4"}
_OPEN_SEVENTHS = {_MINOR_SEVENTH: "7", _MAJOR_SEVENTH: "maj7"}
FALSE_RELATION, SEMITONE_ABOVE, SEMITONE_BELOW = "false relation", "semitone above", "semitone below"


class Rub(NamedTuple):
    """What a note rubs against: the chord tone in fifths above the root, what it is there, and how they lie."""

    place: int
    member: str
    how: str


def member_of(chord: RelativeChord, place: int) -> str:
    """Which tone of a chord a note is, by its sound; empty where it is none.

    ``place`` in fifths above the tonic. Of a tone that is spelled otherwise than in the chord, the one of its sound.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> dominant = parse_numeral("V7b9", MAJOR)
    >>> [member_of(dominant, place) for place in (1, 5, -1, -4, 8, 0)]       # G B F Ab G# C over G7b9
    ['root', 'third', 'seventh', 'flat ninth', 'flat ninth', '']
    """
    above = sound(place - chord.root)
    tones = _members(chord.quality, chord.bass - chord.root)
    return next((member for tone, member in tones if sound(tone) == above), "")


@lru_cache(maxsize=1024)
def _members(quality: Quality, bass: int) -> tuple[tuple[int, str], ...]:
    """The tones of a quality, in fifths above the root, with what each of them is; a foreign bass is one of them.

    The eleventh that a thirteenth chord leaves out when it is played, for it rubs against the third, is none (R.
    Hutchinson, as above).
    """
    tones = [(number, tone) for number, tone in quality.tones if (number, tone) != _ELEVENTH or not _omits(quality)]
    found = tuple((tone, _named(number, tone)) for number, tone in tones)
    is_foreign = sound(bass) not in {sound(tone) for tone, _ in found}
    return (*found, (bass, BASS)) if is_foreign else found


_ELEVENTH, _MAJOR_THIRD = (11, -1), 4


def _omits(quality: Quality) -> bool:
    return quality.interval(3) == _MAJOR_THIRD and 13 in quality.numbers


def _named(number: int, place: int) -> str:
    """A member by its number; from the ninth on with what alters it."""
    shift = alteration(number, place)
    word = {-1: "flat ", 1: "sharp "}.get(shift, "") if number > 8 else ""
    return word + _NAMES[number]


def tension_of(chord: RelativeChord, place: int) -> str:
    """The tension or added member that a note is over a chord which lets it stand; empty where it does not.

    Whether it stands depends on its sound, what it is called on its letter: over G7 a C♯ is ♯11, a D♭ is ♭5.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> tonic, dominant = parse_numeral("Imaj7", MAJOR), parse_numeral("V7", MAJOR)
    >>> [tension_of(tonic, place) for place in (2, 6, 3, -1, -2)]            # D F# A F Bb over Cmaj7
    ['9', '#11', '13', '', '']
    >>> [tension_of(dominant, place) for place in (-4, -2, -3, 0)]           # Ab Bb Eb C over G7
    ['b9', '#9', 'b13', '']
    >>> [tension_of(dominant, place) for place in (7, -5, 9)]                # C# Db D# over G7
    ['#11', 'b5', '#5']
    """
    above = place - chord.root
    usual = _standing(chord.quality, chord.bass - chord.root).get(sound(above), "")
    return _RESPELLED.get((usual, above), usual)


@lru_cache(maxsize=1024)
def _standing(quality: Quality, bass: int) -> dict[int, str]:
    """What stands over a quality with a bass: semitones above the root to the usual name of what sounds there."""
    tones = {sound(tone) for tone, _ in _members(quality, bass)}
    found = {semitones: name for semitones, name in _TENSIONS.items() if (semitones - 2) % 12 in tones}
    if not tones & {_MINOR_SEVENTH, _MAJOR_SEVENTH} and 7 not in quality.numbers:
        found = {semitones: _WITHOUT_SEVENTH.get(name, name) for semitones, name in found.items()}
    found |= _open_members(quality, tones)
    standing = {semitones: name for semitones, name in found.items() if (semitones - 1) % 12 not in tones}
    if quality.is_dominant_seventh:
        standing |= _OF_DOMINANTS
        tones |= {semitones for semitones, other in _OTHER_FORMS if other in tones}
    return {semitones: name for semitones, name in standing.items() if semitones not in tones}


def _open_members(quality: Quality, tones: set[int]) -> dict[int, str]:
    """The plain members that a quality leaves open; over a diminished seventh chord the major seventh stands, too."""
    found: dict[int, str] = {}
    if not tones & {_SHARP_NINTH, _THIRD}:
        found |= _OPEN_THIRDS
    if 5 not in quality.numbers and not tones & {_SHARP_ELEVENTH, _FIFTH, _FLAT_THIRTEENTH}:
        found |= {_FIFTH: "5"}
    if quality.interval(7) == _DIMINISHED_SEVENTH:
        found |= {_MAJOR_SEVENTH: "maj7"}
    elif 7 not in quality.numbers and not tones & {_MINOR_SEVENTH, _MAJOR_SEVENTH}:
        is_diminished = tones >= {_SHARP_NINTH, _SHARP_ELEVENTH}
        found |= _OPEN_SEVENTHS | ({_SIXTH: "6"} if is_diminished else {})
    return found


_DIMINISHED_SEVENTH = -9
_PLAIN = ("3", "b3", "4", "5", "6", "b6", "#6", "7", "maj7", "dim7")


def is_added(tension: str) -> bool:
    """Whether the name of what stands over a chord is that of a plain member which its symbol leaves open.

    >>> [is_added(name) for name in ("9", "b13", "7", "maj7", "b3", "6")]
    [False, False, True, True, True, True]
    """
    return tension in _PLAIN


def rub_of(chord: RelativeChord, place: int) -> Rub | None:
    """The chord tone that a note rubs against, None where it rubs against none.

    First the other form of a third, fifth or seventh, which has the same letter: a false relation. Then a tone that
    lies a semitone below the note, which sounds a minor ninth above it. Then one that lies a semitone above the note.
    Of the same letter they are false relations, too.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> rub_of(parse_numeral("I", MAJOR), -1)                                # F over C
    Rub(place=4, member='third', how='semitone above')
    >>> [rub_of(parse_numeral("Imaj7", MAJOR), place).how for place in (-2, 10)]     # Bb A# over Cmaj7
    ['false relation', 'semitone below']
    """
    above = place - chord.root
    tones = _members(chord.quality, chord.bass - chord.root)
    for tone, member in tones:
        if member in _TELLING and _is_of_one_letter(tone, above):
            return Rub(tone, member, FALSE_RELATION)
    for semitones, how in ((1, SEMITONE_ABOVE), (-1, SEMITONE_BELOW)):
        for tone, member in tones:
            if sound(tone) == (sound(above) - semitones) % 12:
                return Rub(tone, member, FALSE_RELATION if _is_of_one_letter(tone, above) else how)
    return None


_TELLING = ("third", "fifth", "seventh")


def _is_of_one_letter(place: int, other: int) -> bool:
    return (place - other) % 7 == 0


def sound(place: int) -> int:
    """Semitones above the root, or above the tonic, 0 to 11, of a place in fifths."""
    return place * 7 % 12
