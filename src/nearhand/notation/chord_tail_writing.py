"""Writing what follows a root: the tail of a chord symbol, of a number, of a numeral."""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.chord_tails import LOWERED_DIGITS, RAISED_DIGITS, read_tail
from nearhand.notation.chord_words import AUGMENTED_MAJOR_SEVENTH, COMPLETE
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.symbol_styles import STYLES, TYPED, tails_of
from nearhand.theory.quality import NATURAL_INTERVALS, QUALITIES, Quality, alteration

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
def symbol_tail(chord_quality: Quality, symbols: str = "plain") -> str:
    """Write a quality as the tail of a chord symbol; it reads back to the same quality. Accidentals are b and #.

    Raises ValueError for what no symbol can say, as a lone tone that is altered twice.

    >>> [symbol_tail(read_tail(tail)) for tail in ("-7", "7(b13,b9)", "9sus", "+7", "madd9")]
    ['m7', '7(b9,b13)', '9sus4', '7#5', 'm(add9)']
    >>> [symbol_tail(read_tail(tail), "jazz") for tail in ("m7", "maj7", "m7b5", "m(maj7)", "dim7", "madd9")]
    ['-7', 'Δ7', 'ø7', '-Δ7', '°7', '-(add9)']
    """
    tails = tails_of("plain" if symbols == "ascii" else symbols)
    if chord_quality in tails:
        return tails[chord_quality]
    major = STYLES["plain" if symbols == "ascii" else symbols].major
    candidates = (_from_base(chord_quality, base, tail, major) for base, tail in tails.items() if _may_go_on(tail))
    return min((words for words in candidates if words is not None), key=lambda words: (words[0], len(words[1])))[1]


def _may_go_on(tail: str) -> bool:
    """Whether changes may follow a written tail, so that they are read as meant."""
    return tail not in COMPLETE and not any(sign in tail for sign in ("#", "(", "+7", "aug7", "-Δ"))


_OUT_OF_THE_WAY = 10
"""What counts against a way of writing that leaves out or adds tones which chord symbols seldom name."""


def _from_base(target: Quality, base: Quality, tail: str, major: str) -> tuple[int, str] | None:
    """The target as a base with changes: what it costs, and the written tail. None where it cannot be said so.

    Costs count changes twice; a minor third that is left out again costs one more than a major one.
    """
    suspension, changes, is_odd = "", [], False
    missing = [tone for tone in base.tones if tone not in target.tones]
    for number, place in target.tones:
        if (number, place) in base.tones:
            continue
        shift = alteration(number, place)
        if number in (2, 4) and shift == 0:
            suspension += f"sus{number}"
            missing = [tone for tone in missing if tone[0] not in ((3, 11) if number == 4 else (3,))]
        elif number in (5, 9, 11, 13) and shift in (-1, 1):
            changes.append(("#" if shift > 0 else "b") + str(number))
            missing = [tone for tone in missing if tone != (number, NATURAL_INTERVALS[number])]
        elif (number, place) == (7, 5):
            changes.append("maj7")
        else:
            is_odd |= shift != 0 or number not in (6, 9, 11, 13)
            changes.append(f"add{'#' * shift or 'b' * -shift}{number}")
    for low, high in ((7, 9), (9, 11), (11, 13)):
        if f"maj{low}" in changes and f"add{high}" in changes:
            changes.remove(f"add{high}")
            changes[changes.index(f"maj{low}")] = f"maj{high}"
    is_odd |= any(number not in (3, 5) for number, _ in missing)
    # an alteration takes the plain tone's place, so additions follow; no5 would take an altered fifth as well
    changes.sort(key=lambda change: change.startswith("add"))
    omitted = [f"no{number}" for number, _ in missing]
    cost = 2 * (len(omitted) + len(changes) + bool(suspension) + _OUT_OF_THE_WAY * is_odd) + ((3, -3) in missing)
    orders = [changes + omitted, omitted + changes]  # what is left out goes last where nothing would be left before
    for order in reversed(orders) if is_odd or "#5" in changes or "b5" in changes else orders:
        words = [change.replace("maj", major) for change in order]
        written = tail + suspension + _join(words, (tail + suspension)[-1:].isdigit())
        if _reads_back(written, target):
            return cost, written
    return None


def _reads_back(written: str, target: Quality) -> bool:
    try:
        return read_tail(written) == target
    except InputError:
        return False


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
    if chord_quality.has_minor_third and tail.startswith("m") and not tail.startswith("maj"):
        tail = ("" if numeral else "-") + tail[1:]
    if numeral:
        for sixth, spelled_out in _NUMERAL_SIXTHS.items():
            if tail.startswith(sixth):
                return spelled_out + tail.removeprefix(sixth)
    return tail


def signed(tail: str, conventions: Conventions) -> str:
    """A tail with signs for its accidentals, unless plain characters are wanted."""
    return tail if conventions.plain else tail.replace("b", "♭").replace("#", "♯")


def written_tail(chord_quality: Quality, conventions: Conventions) -> str:
    """Write a quality as the tail of a chord symbol in the style and the characters of the conventions.

    >>> written_tail(read_tail("m7b5"), Conventions(symbols="jazz")), written_tail(read_tail("7b9"), Conventions())
    ('ø7', '7♭9')
    """
    tail = symbol_tail(chord_quality, conventions.symbols)
    if not conventions.plain:
        return tail if conventions.symbols == "ascii" else signed(tail, conventions)
    for sign, typed in TYPED.items():
        tail = tail.replace(sign, typed)
    return tail


def raised(tail: str) -> str:
    """A tail of a number or a numeral with its digits raised; of the two digits of a figure the second is lowered.

    >>> raised("7"), raised("65"), raised("maj7"), raised("7♭9")
    ('⁷', '⁶₅', 'maj⁷', '⁷♭⁹')
    """
    if tail[-2:] in TWO_DIGIT_FIGURES and not tail[-3:-2].isdigit():
        return tail[:-2] + RAISED_DIGITS[int(tail[-2])] + LOWERED_DIGITS[int(tail[-1])]
    return "".join(RAISED_DIGITS[int(sign)] if sign in "0123456789" else sign for sign in tail)


TWO_DIGIT_FIGURES = ("64", "65", "43", "42")
