"""The key field of an ABC tune: ``K:G``, ``K:Em``, ``K:D dorian``, ``K:A mix ^g``, ``K:D exp _b ^f``, ``K:none``.

ABC standard 2.1, sections 3.1.14 and 4.6, from memory.
"""

from __future__ import annotations

import re

from nearhand.exchange.abc_text import Field
from nearhand.theory.key import C_MAJOR, Key
from nearhand.theory.mode import MAJOR, MINOR, MODES, Mode
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS, PitchClass, pitch_class
from nearhand.theory.record import NamedTuple

KEY_HINT = "write a key such as K:G, K:Em, K:Bb or K:D dorian"
ACCIDENTALS = {"^^": 2, "^": 1, "=": 0, "_": -1, "__": -2}
"""The accidentals of ABC, in semitones."""
_PIPES = ("HP", "Hp")
_TONIC = re.compile(r"([A-Ga-g])([#b♯♭]?)")
_MODE = re.compile(r"[A-Za-z]*")
_ALTERED = re.compile(r"(\^\^?|__?|=)([A-Ga-g])")
_CLEF = re.compile(
    r"(?:clef=)?(?:(?:treble|bass|alto|tenor|perc|none|auto)[1-58]?([+-]8)?|([+-]8)(?:va)?)", re.IGNORECASE
)
_PROPERTY = re.compile(r"(clef|middle|m|transpose|t|octave|stafflines|staffscale|score|sound|shift|style)=(.*)")
_MOVING = re.compile(r"(?:transpose|t|sound|shift|score)=(?![+-]?0$).+")
_INSTRUCTED = re.compile(r"(?:MIDI\s+)?transpose\s+(?![+-]?0$).+")
_WORD = re.compile(r"\S+")


class KeyField(NamedTuple):
    """A key with what it does to the letters of the staff: semitones by which each is altered.

    ``octaves``: how much higher the clef makes the notes sound. ``is_named``: False where the field names no key.
    """

    key: Key
    alterations: dict[str, int]
    octaves: int = 0
    is_named: bool = True


def read_key_field(field: Field) -> KeyField:
    """Read a key field.

    Raises InputError, placed in the file.

    >>> from nearhand.exchange.abc_text import Row, field_of
    >>> read = read_key_field(field_of(Row("it.abc", 1, "K:Dmix ^c")))
    >>> str(read.key), read.alterations["F"], read.alterations["C"]
    ('D mixolydian', 1, 1)
    """
    words = [(found[0], found.start()) for found in _WORD.finditer(field.value)]
    rest = [word for word in words if not _is_for_the_staff(word[0])]
    octaves = octaves_of(field.value)
    if not rest or rest[0][0][0] in ACCIDENTALS:
        return KeyField(C_MAJOR, _altered({}, rest, field), octaves, is_named=False)
    if rest[0][0] in _PIPES:
        key = Key(pitch_class(LETTERS_IN_FIFTHS.index("A") - 1), MODES["mixolydian"])
        return KeyField(key, alterations_of(key), octaves)
    tonic, end = _tonic(field, *rest[0])
    words_behind = [(rest[0][0][end:], rest[0][1] + end), *rest[1:]]
    mode, accidentals, is_explicit = _mode_and_accidentals(field, words_behind)
    if mode is None and not is_explicit and rest[0][0].islower():
        what = f"{rest[0][0][:20]!r} may be a major or a minor key"
        capital = rest[0][0].capitalize()
        raise field.refusal(what, rest[0][1], "a key", f"write K:{capital} for major, K:{capital}m for minor")
    key = Key(tonic, mode or MAJOR)
    altered = _altered({} if is_explicit else alterations_of(key), accidentals, field)
    return KeyField(Key(tonic, mode or (_mode_of(tonic, altered) if is_explicit else MAJOR)), altered, octaves)


def _is_for_the_staff(word: str) -> bool:
    """Whether a word of the field tells clefs and the like, not the key."""
    return _CLEF.fullmatch(word) is not None or _PROPERTY.fullmatch(word) is not None


def octaves_of(value: str) -> int:
    """How much higher a clef or ``octave=`` makes the notes of a voice sound, in octaves.

    >>> octaves_of("G treble-8"), octaves_of("1 clef=bass octave=-2"), octaves_of("G")
    (-1, -2, 0)
    """
    octaves = 0
    for found in _WORD.finditer(value):
        word = found[0]
        clef, named = _CLEF.fullmatch(word), _PROPERTY.fullmatch(word)
        if clef and (clef[1] or clef[2]):
            octaves += 1 if "+8" in (clef[1], clef[2]) else -1
        elif named and named[1] == "octave" and re.fullmatch(r"[+-]?\d", named[2]):
            octaves += int(named[2])
    return octaves


def moves_of(field: Field) -> tuple[str, ...]:
    """What a key, a voice or an instruction says that moves the notes by other than octaves where they are played.

    >>> from nearhand.exchange.abc_text import Row, field_of
    >>> [moves_of(field_of(Row("it.abc", 1, text))) for text in ("K:D transpose=-2", "I:MIDI transpose 3", "K:D t=0")]
    [('transpose=-2',), ('MIDI transpose 3',), ()]
    """
    if field.letter == "I":
        return (field.value,) if _INSTRUCTED.fullmatch(field.value) else ()
    return tuple(word for word in field.value.split() if _MOVING.fullmatch(word)) if field.letter in "KV" else ()


def _tonic(field: Field, word: str, start: int) -> tuple[PitchClass, int]:
    found = _TONIC.match(word)
    if found is None:
        raise field.refusal(f"{word[:20]!r} is no key", start, "a key", KEY_HINT)
    natural = LETTERS_IN_FIFTHS.index(found[1].upper()) - 1
    alteration = {"": 0, "#": 7, "♯": 7, "b": -7, "♭": -7}[found[2]]
    return pitch_class(natural + alteration), found.end()


def _mode_and_accidentals(
    field: Field, words: list[tuple[str, int]]
) -> tuple[Mode | None, list[tuple[str, int]], bool]:
    """The mode, None where no word names it; the words of accidentals; and whether they are the whole signature."""
    mode: Mode | None = None
    accidentals: list[tuple[str, int]] = []
    is_explicit = False
    for word, start in words:
        named = _MODE.match(word)
        letters = named[0] if named else ""
        if letters.lower() == "exp":
            is_explicit = True
        elif letters and mode is None and not is_explicit and not accidentals:
            mode = _mode(letters)
            if mode is None:
                raise field.refusal(f"{letters[:20]!r} is no mode", start, "a mode", _mode_hint())
        if word[len(letters) :]:
            accidentals.append((word[len(letters) :], start + len(letters)))
    return mode, accidentals, is_explicit


def _mode(letters: str) -> Mode | None:
    """The mode that a word names: three letters tell, and m is minor."""
    if letters in ("m", "M"):
        return MINOR if letters == "m" else MAJOR
    short = letters[:3].lower()
    return next((mode for name, mode in MODES.items() if name.startswith(short)), None) if len(short) == 3 else None


def _mode_hint() -> str:
    return f"the modes are {', '.join(MODES)}"


def alterations_of(key: Key) -> dict[str, int]:
    """Semitones by which each letter is altered in a key's signature.

    >>> from nearhand.notation.keys import parse_key
    >>> alterations_of(parse_key("G minor"))
    {'G': 0, 'A': 0, 'B': -1, 'C': 0, 'D': 0, 'E': -1, 'F': 0}
    """
    return {note.letter: note.alteration for note in key.scale()}


def _altered(signature: dict[str, int], words: list[tuple[str, int]], field: Field) -> dict[str, int]:
    """A signature with the accidentals that the field adds."""
    altered = dict(signature)
    for word, start in words:
        at = 0
        while at < len(word):
            found = _ALTERED.match(word, at)
            if found is None:
                what = f"{word[at:][:20]!r} is no accidental of a key"
                raise field.refusal(what, start + at, "an accidental", "write them as in K:D dorian ^c _e")
            altered[found[2].upper()] = ACCIDENTALS[found[1]]
            at = found.end()
    return altered


def _mode_of(tonic: PitchClass, alterations: dict[str, int]) -> Mode:
    """The mode whose signature these accidentals are; where none is, major or minor by the third."""
    whole = {letter: alterations.get(letter, 0) for letter in LETTERS_IN_FIFTHS}
    for mode in MODES.values():
        if all(whole[letter] == by for letter, by in alterations_of(Key(tonic, mode)).items()):
            return mode
    third = Key(tonic, MINOR).degree(3)
    return MINOR if whole[third.letter] <= third.alteration else MAJOR
