"""Writing what follows a root: the tail of a chord symbol, of a number, of a numeral."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import AUGMENTED_MAJOR_SEVENTH, MAJOR_SIXTH_NINTH, MINOR_SIXTH_NINTH
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.quality import NATURAL_INTERVALS, QUALITIES, Quality, alteration

_SYMBOL_TAILS = {
    "major": "",
    "minor": "m",
    "augmented": "aug",
    "diminished": "dim",
    "suspended-second": "sus2",
    "suspended-fourth": "sus4",
    "power": "5",
    "major-sixth": "6",
    "minor-sixth": "m6",
    "dominant": "7",
    "major-seventh": "maj7",
    "minor-seventh": "m7",
    "diminished-seventh": "dim7",
    "augmented-seventh": "7#5",
    "half-diminished": "m7b5",
    "major-minor": "m(maj7)",
    "dominant-ninth": "9",
    "major-ninth": "maj9",
    "minor-ninth": "m9",
    "dominant-11th": "11",
    "major-11th": "maj11",
    "minor-11th": "m11",
    "dominant-13th": "13",
    "major-13th": "maj13",
    "minor-13th": "m13",
}
_WRITTEN = {QUALITIES[kind]: tail for kind, tail in _SYMBOL_TAILS.items()}
_WRITTEN |= {MAJOR_SIXTH_NINTH: "6/9", MINOR_SIXTH_NINTH: "m6/9"}
_MARKS = {
    QUALITIES["diminished"]: "°",
    QUALITIES["diminished-seventh"]: "°7",
    QUALITIES["half-diminished"]: "ø7",
    QUALITIES["augmented"]: "+",
    QUALITIES["augmented-seventh"]: "+7",
    AUGMENTED_MAJOR_SEVENTH: "+maj7",
}
"""How numerals and numbers mark what a chord symbol spells out."""
_NUMERAL_SIXTHS = {"6/9": "(add6,add9)", "6": "(add6)"}
"""A bare 6 after a numeral is an inversion, so an added sixth is spelled out."""


@lru_cache(maxsize=1024)
def symbol_tail(chord_quality: Quality) -> str:
    """Write a quality as the tail of a chord symbol, in keyboard characters; it reads back to the same quality.

    >>> [symbol_tail(read_tail(tail)) for tail in ("-7", "7(b13,b9)", "9sus", "+7", "madd9")]
    ['m7', '7(b9,b13)', '9sus4', '7#5', 'm(add9)']
    """
    if chord_quality in _WRITTEN:
        return _WRITTEN[chord_quality]
    candidates = (_from_base(chord_quality, base, tail) for base, tail in _WRITTEN.items() if "#" not in tail)
    return min((words for words in candidates if words is not None), key=lambda words: (words[0], len(words[1])))[1]


def _from_base(target: Quality, base: Quality, tail: str) -> tuple[int, str] | None:
    """The target as a base with changes: how many, and the written tail. None where it cannot be said so."""
    suspension, changes = "", []
    missing = [tone for tone in base.tones if tone not in target.tones]
    for number, place in target.tones:
        if (number, place) in base.tones:
            continue
        shift = alteration(number, place)
        if number in (2, 4):
            suspension += f"sus{number}"
            missing = [tone for tone in missing if tone[0] not in ((3, 11) if number == 4 else (3,))]
        elif number in (5, 9, 11, 13) and shift in (-1, 1):
            changes.append(("#" if shift > 0 else "b") + str(number))
            missing = [tone for tone in missing if tone != (number, NATURAL_INTERVALS[number])]
        elif shift == 0 and number in (6, 9, 11, 13):
            changes.append(f"add{number}")
        elif (number, place) == (7, 5):
            changes.append("maj7")
        else:
            return None
    if any(number not in (3, 5) for number, _ in missing):
        return None
    # an alteration takes the plain tone's place, so additions follow; no5 would take an altered fifth as well
    changes.sort(key=lambda change: change.startswith("add"))
    omitted = [f"no{number}" for number, _ in missing]
    changes = omitted + changes if "#5" in changes else changes + omitted
    written = tail + suspension + _join(changes, (tail + suspension)[-1:].isdigit())
    try:
        if read_tail(written) != target:
            return None
    except InputError:
        return None
    return len(changes) + bool(suspension), written


def _join(changes: list[str], after_digit: bool) -> str:
    """One accidental stands bare behind a digit (7b9), all else in brackets: Cb5 would be a C flat."""
    if len(changes) == 1 and after_digit and changes[0][0] in "#b":
        return changes[0]
    return f"({','.join(changes)})" if changes else ""


def mark_tail(chord_quality: Quality, plain: bool, numeral: bool) -> str:
    """Write a quality as the tail of a number, or of a numeral (whose case already shows the minor third).

    >>> [mark_tail(read_tail(tail), plain=False, numeral=False) for tail in ("m", "m7", "dim7", "m7b5", "maj7")]
    ['-', '-7', '°7', 'ø7', 'maj7']
    >>> [mark_tail(read_tail(tail), plain=True, numeral=True) for tail in ("m", "m7", "dim7", "m7b5", "m6")]
    ['', '7', 'o7', '/o7', '(add6)']
    """
    if chord_quality in _MARKS:
        mark = _MARKS[chord_quality]
        if not plain:
            return mark
        return mark.replace("°", "o").replace("ø", "/o") if numeral else mark.replace("°", "o").replace("ø7", "-7b5")
    tail = symbol_tail(chord_quality)
    if tail.startswith("m") and not tail.startswith("maj"):
        tail = ("" if numeral else "-") + tail[1:]
    if numeral:
        for sixth, spelled_out in _NUMERAL_SIXTHS.items():
            if tail.startswith(sixth):
                return spelled_out + tail.removeprefix(sixth)
    return tail


def signed(tail: str, conventions: Conventions) -> str:
    """A tail with signs for its accidentals, unless plain characters are wanted."""
    return tail if conventions.plain else tail.replace("b", "♭").replace("#", "♯")
