"""The table behind chord symbols, number charts and the tails of numerals: what may follow a root.

A tail is one **base** (``m7``, ``maj9``, ``°7`` ...) and any number of **changes** (``b9``, ``sus4``, ``add9`` ...).
Spellings: MusicXML 4.0 kind-value; R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Chord Basics"
and "Chord Symbol Specifics". A new spelling is a new row here, and nothing else. Accidentals stand as ``#`` and ``b``;
signs are turned into them before looking up.
"""

from __future__ import annotations

from nearhand.theory.quality import AUGMENTED_SIXTHS, NATURAL_INTERVALS, QUALITIES, Quality, quality

TRIANGLES = ("Δ", "△", "∆", "^", "j")
MAJOR_WORDS = ("maj", "Maj", "MAJ", "ma", "Ma", "MA", "mj", "M", *TRIANGLES)
MINOR_WORDS = ("m", "min", "Min", "MIN", "mi", "Mi", "MI", "-", "−")
DIMINISHED_WORDS = ("dim", "°", "º", "o")
HALF_DIMINISHED_WORDS = ("ø", "Ø", "hdim")
AUGMENTED_WORDS = ("aug", "+")
DOMINANT_WORDS = ("dom", "d")
_ALTERED_WORDS = ("alt", "7alt", "7(alt)", "altered", "7altered")
_PEDAL_WORDS = ("ped", "pedal")

_SEVENTH_KINDS = {
    "7": ("dominant", "major-seventh", "minor-seventh", "diminished-seventh"),
    "9": ("dominant-ninth", "major-ninth", "minor-ninth", ""),
    "11": ("dominant-11th", "major-11th", "minor-11th", ""),
    "13": ("dominant-13th", "major-13th", "minor-13th", ""),
}


def _with_tones(kind: str, *tones: tuple[int, int]) -> Quality:
    changed = {number for number, _ in tones}
    return quality([tone for tone in QUALITIES[kind].tones if tone[0] not in changed] + list(tones))


MAJOR_SIXTH_NINTH = _with_tones("major-sixth", (9, 2))
MINOR_SIXTH_NINTH = _with_tones("minor-sixth", (9, 2))
AUGMENTED_MAJOR_SEVENTH = _with_tones("augmented", (7, 5))
DIMINISHED_MAJOR_SEVENTH = _with_tones("diminished", (7, 5))
ALTERED_DOMINANT = quality([(1, 0), (3, 4), (5, -6), (5, 8), (7, -2), (9, -5), (9, 9)])
"""alt: a dominant seventh whose fifth and ninth are altered; which way is left open, so all four are named."""


def _bases() -> dict[str, Quality]:
    bases = {"": QUALITIES["major"], "5": QUALITIES["power"], "2": _with_tones("major", (9, 2))}
    bases |= {
        "4": QUALITIES["suspended-fourth"],
        "6": QUALITIES["major-sixth"],
        "ped": QUALITIES["pedal"],
        "pedal": QUALITIES["pedal"],
    }
    bases |= dict.fromkeys(("69", "6/9"), MAJOR_SIXTH_NINTH)
    bases |= dict.fromkeys(_ALTERED_WORDS, ALTERED_DOMINANT)
    for word in MAJOR_WORDS:
        bases[word] = QUALITIES["major-seventh" if word in TRIANGLES else "major"]
        bases[word + "6"] = QUALITIES["major-sixth"]
        bases |= dict.fromkeys((word + "69", word + "6/9"), MAJOR_SIXTH_NINTH)
    for word in MINOR_WORDS:
        bases |= {word: QUALITIES["minor"], word + "6": QUALITIES["minor-sixth"]}
        bases |= dict.fromkeys((word + "69", word + "6/9"), MINOR_SIXTH_NINTH)
    for number, (dominant, major, minor, diminished) in _SEVENTH_KINDS.items():
        bases |= dict.fromkeys((number, *(word + number for word in DOMINANT_WORDS)), QUALITIES[dominant])
        bases |= dict.fromkeys((number + "M", *(word + number for word in MAJOR_WORDS)), QUALITIES[major])
        bases |= {word + number: QUALITIES[minor] for word in MINOR_WORDS}
        fully_diminished = QUALITIES[diminished] if diminished else _with_tones(minor, (5, -6), (7, -9))
        for words, base in (
            (HALF_DIMINISHED_WORDS, _with_tones(minor, (5, -6))),
            (AUGMENTED_WORDS, _with_tones(dominant, (5, 8))),
            (DIMINISHED_WORDS, fully_diminished),
        ):
            bases |= dict.fromkeys((word + number for word in words), base)
        bases["sus" + number] = _suspended(QUALITIES[dominant])
    bases["sus9"] = QUALITIES["suspended-second"]
    bases |= dict.fromkeys(DIMINISHED_WORDS, QUALITIES["diminished"])
    bases |= dict.fromkeys(HALF_DIMINISHED_WORDS, QUALITIES["half-diminished"])
    bases |= dict.fromkeys(AUGMENTED_WORDS, QUALITIES["augmented"])
    bases |= {word: AUGMENTED_SIXTHS[name] for name, words in _SIXTH_WORDS.items() for word in words}
    bases["Tristan"] = QUALITIES["Tristan"]
    return bases


SIXTH_FIGURES = {"It": "6", "Fr": "43", "Ger": "65", "Sw": "43"}
"""The figures of the augmented sixths as they usually stand, on the lowered sixth degree."""
_SIXTH_WORDS = {
    name: (f"7({name}{figures})", name, f"{name}6", f"{name}{figures}") for name, figures in SIXTH_FIGURES.items()
}


def _suspended(dominant: Quality) -> Quality:
    return quality([tone for tone in dominant.tones if tone[0] not in (3, 11)] + [(4, -1)])


BASES = _bases()
"""Spelling to quality."""
COMPLETE = frozenset(
    ("ped", "pedal", "Tristan", "alt", "7alt", *(word for words in _SIXTH_WORDS.values() for word in words))
)
"""Bases that say everything: no change may follow them."""


def _changes() -> dict[str, tuple[str, int, int]]:
    changes = {"sus": ("suspend", 4, -1), "sus4": ("suspend", 4, -1), "sus2": ("suspend", 2, 2)}
    changes |= {"+": ("alter", 5, 8), "aug": ("alter", 5, 8), "b6": ("add", 6, -4), "b10": ("add", 10, -3)}
    for number in (5, 9, 11, 13):
        for shift, signs in ((-1, ("b", "-", "−")), (1, ("#", "+"))):
            place = NATURAL_INTERVALS[number] + 7 * shift
            changes |= {f"{sign}{number}": ("alter", number, place) for sign in signs}
    for word, number in {"2": 9, "4": 11, **{str(number): number for number in (3, 5, 6, 7, 9, 10, 11, 13)}}.items():
        for shift, accidentals in ((0, ("",)), (-1, ("b", "-")), (1, ("#", "+")), (-2, ("bb",)), (2, ("##",))):
            place = NATURAL_INTERVALS[number] + 7 * shift
            changes |= {f"add{sign}{word}": ("add", number, place) for sign in accidentals}
    for number in (9, 11, 13):
        changes[str(number)] = ("add", number, NATURAL_INTERVALS[number])
    for number, ending in ((1, ""), (3, "rd"), (5, "th"), (7, "th"), (9, "th"), (11, "th")):
        for word in ("no", "omit"):
            changes |= dict.fromkeys((f"{word}{number}", f"{word}{number}{ending}"), ("omit", number, 0))
    for number in (7, 9, 11, 13):
        changes |= {f"{word}{number}": ("seventh", number, 5) for word in MAJOR_WORDS}
    changes |= dict.fromkeys((*TRIANGLES[:3], "#7", "+7", "7M"), ("seventh", 7, 5))
    changes |= dict.fromkeys(("/maj7", "/Maj7", "/ma7", "/M7", "/Δ7", "/Δ"), ("seventh", 7, 5))
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
        kept = [tone for tone in tones if tone[0] != number]
        return quality(kept) if kept else chord_quality
    elif act == "seventh":
        below = [(odd, NATURAL_INTERVALS[odd]) for odd in (9, 11, 13) if odd <= number]
        return quality([*(tone for tone in tones if tone[0] != 7), (7, place), *below])
    return quality([*tones, (number, place)])
