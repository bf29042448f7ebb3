"""Reading Roman numerals: degree, quality by case and mark, figures of inversion, applied chords, bass degrees.

After a slash a numeral names the degree an applied chord belongs to (``V7/V``), a digit the degree in the bass
(``v/7``). Digits that are figures stay figures (``V6/5``). A capital with a bare 7 is a dominant seventh; a major
seventh is written ``maj7`` (the other convention, in which 7 means the seventh of the scale, is named in
docs/why.md). Figures: Open Music Theory, "Thoroughbass figures".
"""

from __future__ import annotations

from functools import lru_cache

from nearhand.notation.accidentals import MOST_ACCIDENTALS, SIGNS, read_accidentals
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.chord_words import AUGMENTED_WORDS, DIMINISHED_WORDS, MAJOR_WORDS
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import bass_place, root_place
from nearhand.notation.errors import InputError
from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import MAJOR, MINOR, Mode
from nearhand.theory.quality import Quality

NUMERALS = {"I": 1, "II": 2, "III": 3, "IV": 4, "V": 5, "VI": 6, "VII": 7}
NEAPOLITAN = "N"
NEAPOLITAN_PLACE = -5
FIGURES = {
    **dict.fromkeys(("6", "63", "6/3"), ("", 1)),
    **dict.fromkeys(("64", "6/4"), ("", 2)),
    **dict.fromkeys(("53", "5/3"), ("", 0)),
    **dict.fromkeys(("65", "6/5"), ("7", 1)),
    **dict.fromkeys(("43", "4/3"), ("7", 2)),
    **dict.fromkeys(("42", "4/2", "2"), ("7", 3)),
}
"""Figure to (the tail it stands for, which chord tone lies in the bass)."""
_LONGEST_FIGURE = max(map(len, FIGURES))
_SLASHED = {figure for figure in FIGURES if "/" in figure}
_BEFORE_FIGURE = frozenset("IVivN°ºoøØ+mjaMΔ△^(")
"""What may stand before a figure: a numeral or a mark, not the number of an added or suspended tone."""
_AFTER_SLASH = ("o", "ø", "°")
"""What follows a slash in /o, the half-diminished mark in keyboard characters."""
_HINT = "write a numeral such as i, V7, vii°7, bVII, V65 or V7/V"


@lru_cache(maxsize=8192)
def parse_numeral(text: str, mode: Mode, conventions: Conventions = DEFAULT) -> RelativeChord:
    """Read one numeral in a mode.

    Raises InputError with the place of the first character that cannot be read.

    >>> parse_numeral("V65", MINOR).bass, parse_numeral("v6", MINOR).bass      # leading tone, subtonic
    (5, -2)
    """
    parts = _parts(text)
    mode = conventions.counting_mode(mode)
    bass_start = parts[-1][0] if len(parts) > 1 and _is_bass_degree(text, *parts[-1]) else None
    chain = parts if bass_start is None else parts[:-1]
    chord_mode, above = mode, 0
    for start, end in reversed(chain[1:]):
        target, is_small, stop = _read_root(text, start, end, chord_mode)
        if stop < end:
            raise _no_part(text, stop, end)
        above, chord_mode = above + target, MINOR if is_small else MAJOR
    chord = _read_chord(text, *chain[0], chord_mode).above(above)
    if bass_start is None:
        return chord
    return chord._replace(bass=read_bass_degree(text, bass_start, mode, chord))


def _parts(text: str) -> list[tuple[int, int]]:
    """Offsets of the parts between slashes; slashes of figures and of /o part nothing."""
    cuts = [
        at
        for at, character in enumerate(text)
        if character == "/"
        and text[at + 1 : at + 2] not in _AFTER_SLASH
        and not (text[at - 1 : at + 2] in _SLASHED and text[at - 2 : at - 1] in _BEFORE_FIGURE)
        and at > 0
    ]
    return list(zip([0] + [cut + 1 for cut in cuts], [*cuts, len(text)], strict=True))


def _is_bass_degree(text: str, start: int, end: int) -> bool:
    _, at = read_accidentals(text, start)
    return at < end and text[at].isdigit()


def _read_root(text: str, start: int, end: int, mode: Mode) -> tuple[int, bool, int]:
    """The place of the root, whether the numeral is small, and the offset behind it."""
    if text.startswith(NEAPOLITAN, start):
        return NEAPOLITAN_PLACE, False, start + 1
    accidental, at = read_accidentals(text, start)
    if accidental is not None and abs(accidental) > MOST_ACCIDENTALS:
        raise InputError("a numeral takes three accidentals at most", text, start, end, wanted="a numeral", hint=_HINT)
    for size in (3, 2, 1):
        word = text[at : min(at + size, end)]
        if word.upper() in NUMERALS and word in (word.upper(), word.lower()):
            is_small = word.islower()
            return root_place(NUMERALS[word.upper()], accidental, mode, is_small), is_small, at + len(word)
    shown = text[at:end][:24]
    what = f"{shown!r} is no numeral" if shown else "a numeral is missing"
    raise InputError(what, text, at, max(end, at + 1), wanted="a numeral I to VII or i to vii", hint=_HINT)


def _read_chord(text: str, start: int, end: int, mode: Mode) -> RelativeChord:
    root, is_small, at = _read_root(text, start, end, mode)
    tail, inversion, places = _plain_tail(text, at, end)
    try:
        quality = _read_small(tail) if is_small else read_tail(tail)
    except InputError as error:
        place = places[error.start]
        if error.wanted == ")":
            raise InputError(error.what, text, place, place + 1, wanted=error.wanted, hint=error.hint) from None
        raise _no_part(text, place, end) from None
    return RelativeChord(root, quality, root + quality.intervals[inversion])


def _no_part(text: str, start: int, end: int) -> InputError:
    what = f"{text[start:end][:12]!r} is no part of a chord"
    return InputError(what, text, start, start + 1, wanted="a chord quality or a figure", hint=_HINT)


def _read_small(tail: str) -> Quality:
    """A small numeral is minor where its tail allows that; a mark (°, ø, +), 5 or sus speaks for itself."""
    try:
        return read_tail("m" + tail)
    except InputError:
        return read_tail(tail)


def _plain_tail(text: str, start: int, end: int) -> tuple[str, int, list[int]]:
    """A tail as a chord symbol would have it, the inversion its figure names, and the place of each character."""
    tail, places = "", []
    for at in range(start, end):
        if text[at - 1] == "/" and at > start and tail.endswith("ø"):
            continue  # the second character of /o
        tail += "ø" if text[at] == "/" and text[at + 1 : at + 2] in _AFTER_SLASH else text[at]
        places.append(at)
    places.append(end)
    for cut in range(max(0, len(tail) - _LONGEST_FIGURE - 1), len(tail)):
        closing = ")" if tail.endswith(")") else ""
        figure = tail[cut:].removesuffix(closing)
        if figure in FIGURES and _may_carry_figure(tail[:cut]):
            stands_for, inversion = FIGURES[figure]
            behind = cut + len(figure)
            places = places[:cut] + [places[cut]] * len(stands_for) + places[behind:]
            return tail[:cut] + stands_for + closing, inversion, places
    return tail, 0, places


def _may_carry_figure(before: str) -> bool:
    """Whether what stands between numeral and figure is a mark, a word for major, both, or nothing."""
    after_marks = {
        before.removeprefix(mark).removeprefix("(") for mark in ("", "ø", "Ø", *DIMINISHED_WORDS, *AUGMENTED_WORDS)
    }
    return not after_marks.isdisjoint(("", *MAJOR_WORDS))


def read_bass_degree(text: str, start: int, mode: Mode, chord: RelativeChord) -> int:
    """Read a bass degree 1 to 7 with its accidentals to the end of the text; answer its place above the tonic.

    Raises InputError.

    >>> read_bass_degree("v/7", 2, MINOR, parse_numeral("v", MINOR))
    -2
    """
    accidental, at = read_accidentals(text, start)
    digits = text[at:]
    if len(digits) != 1 or digits not in "1234567":
        raise InputError(
            f"{digits[:12]!r} is no bass degree" if digits else "a bass degree is missing",
            text,
            at,
            max(len(text), at + 1),
            wanted="a bass degree 1 to 7",
            hint="a slash and a digit name the scale degree in the bass, as in v/7",
        )
    if accidental is not None and abs(accidental) > MOST_ACCIDENTALS:
        raise InputError("a degree takes three accidentals at most", text, start, at, wanted="a bass degree", hint="")
    return bass_place(int(digits), accidental, mode, chord.places)


def starts_numeral(text: str) -> bool:
    """Whether a token's first characters are those of a numeral (after any accidental)."""
    bare = text.lstrip("".join(SIGNS) + "♮")
    return bare[:1] in ("I", "V", "i", "v") or text in (NEAPOLITAN, NEAPOLITAN + "6") or text.startswith("N6")
