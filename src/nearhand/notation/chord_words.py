"""The table behind chord symbols, number charts and the tails of numerals: what may follow a root.

A tail is one **base** (``m7``, ``maj9``, ``°7`` ...) and any number of **changes** (``b9``, ``sus4``, ``add9`` ...).
Spellings: MusicXML 4.0 kind-value; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Chord Basics"
and "Chord Symbol Specifics". A new spelling is a new row here, and nothing else.
"""

from __future__ import annotations

from nearhand.theory.quality import NATURAL_INTERVALS, QUALITIES, Quality, quality

MAJOR_WORDS = ("maj", "Maj", "ma", "M", "Δ", "△", "^", "j")
MINOR_WORDS = ("m", "min", "mi", "-")
DIMINISHED_WORDS = ("dim", "°", "º", "o")
HALF_DIMINISHED_WORDS = ("ø", "Ø")
AUGMENTED_WORDS = ("aug", "+")

_SEVENTH_KINDS = {
    "7": ("dominant", "major-seventh", "minor-seventh"),
    "9": ("dominant-ninth", "major-ninth", "minor-ninth"),
    "11": ("dominant-11th", "major-11th", "minor-11th"),
    "13": ("dominant-13th", "major-13th", "minor-13th"),
}


def _with_tones(kind: str, *tones: tuple[int, int]) -> Quality:
    changed = {number for number, _ in tones}
    return quality([tone for tone in QUALITIES[kind].tones if tone[0] not in changed] + list(tones))


MAJOR_SIXTH_NINTH = _with_tones("major-sixth", (9, 2))
MINOR_SIXTH_NINTH = _with_tones("minor-sixth", (9, 2))
AUGMENTED_MAJOR_SEVENTH = _with_tones("augmented", (7, 5))


def _bases() -> dict[str, Quality]:
    bases = {"": QUALITIES["major"], "5": QUALITIES["power"], "2": _with_tones("major", (9, 2))}
    bases |= {"4": QUALITIES["suspended-fourth"], "6": QUALITIES["major-sixth"]}
    bases |= dict.fromkeys(("69", "6/9"), MAJOR_SIXTH_NINTH)
    for word in MAJOR_WORDS:
        bases[word] = QUALITIES["major-seventh" if word in "Δ△^j" else "major"]
    bases |= {word + "6": QUALITIES["major-sixth"] for word in MAJOR_WORDS}
    for word in MINOR_WORDS:
        bases |= {word: QUALITIES["minor"], word + "6": QUALITIES["minor-sixth"]}
        bases |= dict.fromkeys((word + "69", word + "6/9"), MINOR_SIXTH_NINTH)
    for number, (dominant, major, minor) in _SEVENTH_KINDS.items():
        bases[number] = QUALITIES[dominant]
        bases |= {word + number: QUALITIES[major] for word in MAJOR_WORDS}
        bases |= {word + number: QUALITIES[minor] for word in MINOR_WORDS}
        bases |= {word + number: _with_tones(minor, (5, -6)) for word in HALF_DIMINISHED_WORDS}
        bases |= {word + number: _with_tones(dominant, (5, 8)) for word in AUGMENTED_WORDS}
    for word in DIMINISHED_WORDS:
        bases |= {word: QUALITIES["diminished"], word + "7": QUALITIES["diminished-seventh"]}
    bases |= dict.fromkeys(HALF_DIMINISHED_WORDS, QUALITIES["half-diminished"])
    bases |= dict.fromkeys(AUGMENTED_WORDS, QUALITIES["augmented"])
    return bases


BASES = _bases()
"""Spelling to quality. Accidentals stand as ``#`` and ``b`` here; signs are turned into them before looking up."""


def _changes() -> dict[str, tuple[str, int, int]]:
    changes = {"sus": ("suspend", 4, -1), "sus4": ("suspend", 4, -1), "sus2": ("suspend", 2, 2)}
    for number in (5, 9, 11, 13):
        for shift, signs in ((-1, ("b", "-")), (1, ("#", "+"))):
            place = NATURAL_INTERVALS[number] + 7 * shift
            changes |= {f"{sign}{number}": ("alter", number, place) for sign in signs}
    for word, number in (("2", 9), ("4", 11), ("6", 6), ("9", 9), ("11", 11), ("13", 13)):
        changes["add" + word] = ("add", number, NATURAL_INTERVALS[number])
    for number in (9, 11, 13):
        changes[str(number)] = ("add", number, NATURAL_INTERVALS[number])
    for number in (3, 5):
        changes |= dict.fromkeys((f"no{number}", f"omit{number}"), ("omit", number, 0))
    for number in (7, 9, 11, 13):
        changes |= {f"{word}{number}": ("seventh", number, 5) for word in MAJOR_WORDS}
    return changes


CHANGES = _changes()
"""Spelling to (what to do, tone number, place in fifths above the root)."""

LONGEST_BASE = max(map(len, BASES))
LONGEST_CHANGE = max(map(len, CHANGES))


def apply_change(chord_quality: Quality, change: tuple[str, int, int]) -> Quality:
    """Apply one row of ``CHANGES`` to a quality.

    An alteration takes the place of the plain tone of its number; a suspension that of the third (and of an eleventh);
    a major seventh that of any other, with every odd tone up to its number.

    >>> apply_change(BASES["13"], CHANGES["sus4"]).numbers
    (1, 4, 5, 7, 9, 13)
    """
    act, number, place = change
    tones = set(chord_quality.tones)
    if act == "alter":
        tones.discard((number, NATURAL_INTERVALS[number]))
    elif act == "suspend":
        tones = {tone for tone in tones if tone[0] not in ((3, 11) if number == 4 else (3,))}
    elif act == "omit":
        return quality([tone for tone in tones if tone[0] != number])
    elif act == "seventh":
        below = [(odd, NATURAL_INTERVALS[odd]) for odd in (9, 11, 13) if odd <= number]
        return quality([*(tone for tone in tones if tone[0] != 7), (7, place), *below])
    return quality([*tones, (number, place)])
