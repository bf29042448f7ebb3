"""Which tone of a chord stands for a member that a family names: third, seventh, ninth ..., and what stands in for it.

A suspended fourth stands for the third and a sixth for the seventh (R. Hutchinson, *Music Theory for the 21st-Century
Classroom*, "Jazz voicings"). A ninth and a thirteenth that the chord has not are those of the key: common practice.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from nearhand.theory.chord import RelativeChord
from nearhand.theory.mode import Mode
from nearhand.theory.quality import Quality

_CHAINS: dict[str, dict[str, tuple[str, ...]]] = {
    "plain": {
        "1": ("1",),
        "3": ("3", "4", "2", "5"),
        "5": ("13", "5", "1!"),
        "7": ("7", "6", "1", "5"),
        "9": ("9", "11", "4"),
    },
    "extended": {
        "3": ("3", "4", "2"),
        "5": ("13", "key 13", "5", "1"),
        "7": ("7", "6", "1"),
        "9": ("9", "key 9", "1"),
    },
    "spread": {
        "3": ("3", "4", "2", "5"),
        "5": ("13", "5", "1!"),
        "7": ("7", "6", "1", "5"),
        "9": ("9", "11", "4", "key 9 over 7"),
    },
    "strict": {
        "1": ("1",),
        "3": ("3",),
        "4": ("4", "11", "key 11"),
        "5": ("5",),
        "6": ("6", "13", "key 6"),
        "7": ("7",),
        "9": ("9", "key 9"),
        "13": ("any 13", "any b13"),
        "sus": ("4",),
    },
    "upper": {
        "1": ("1",),
        "3": ("3!",),
        "5": ("5!",),
        "7": ("7!",),
        "9": ("any 9",),
        "b9": ("any b9",),
        "#9": ("any #9",),
        "#11": ("any #11",),
        "13": ("any 13",),
        "b13": ("any b13",),
    },
}
"""Member to the tones that may stand for it: the first that the chord has and the order has not; ``!`` may double."""
_COMPLETE = ("strict", "upper")
"""In these an order lives only when every member is there; in the others a missing one is left out."""
_NATURAL_NINTH, _FLAT_NINTH, _SHARP_NINTH = 2, -5, 9
_NATURAL_THIRTEENTH, _FLAT_THIRTEENTH, _SHARP_FIFTH = 3, -4, 8
_SHARP_ELEVENTH, _FLAT_FIFTH, _FOURTH = 6, -6, -1


def orders_of(
    chord: RelativeChord, mode: Mode, orders: tuple[str, ...], chains: str, bass: int | None
) -> tuple[tuple[tuple[int, ...], int], ...]:
    """The orders that a chord can fill: tones low to high in fifths above the root, and how many the left hand takes.

    ``bass``: the tone already in the bass, in fifths above the root, or None. ``chains``: a row of the table above.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> orders_of(parse_numeral("V7", MAJOR), MAJOR, ("3 5 7 9 +",), "extended", None)       # B E F A on G
    (((4, 3, -2, 2), 4),)
    """
    ninth, thirteenth = (_key_tone(chord, mode, plain) for plain in (_NATURAL_NINTH, _NATURAL_THIRTEENTH))
    return _filled(chord.quality, (ninth, thirteenth), orders, chains, bass)


def upper_tones(chord: RelativeChord, mode: Mode) -> tuple[int, ...]:
    """The tones of the key that a family may add to a chord, in fifths above its root.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> upper_tones(parse_numeral("ii7", MAJOR), MAJOR)          # on Dm7 the ninth E and the eleventh G
    (2, -1)
    """
    ninth, thirteenth = (_key_tone(chord, mode, plain) for plain in (_NATURAL_NINTH, _NATURAL_THIRTEENTH))
    tones = _tones(chord.quality, ninth, thirteenth)
    return tuple(dict.fromkeys(tone for name, tone in tones.items() if name.startswith(("key", "any"))))


@lru_cache(maxsize=4096)
def _filled(
    quality: Quality, of_key: tuple[int, int], orders: tuple[str, ...], chains: str, bass: int | None
) -> tuple[tuple[tuple[int, ...], int], ...]:
    tones = _tones(quality, *of_key)
    found: dict[tuple[tuple[int, ...], int], None] = {}
    for text in orders:
        for members, left in _read(text):
            filled = _fill(members, tones, _CHAINS[chains], bass)
            if len(filled) == len(members) or (filled and chains not in _COMPLETE):
                kept = len([place for place, _ in filled if place < left])
                found[tuple(tone for _, tone in filled), kept] = None
    return tuple(found)


def _read(text: str) -> Iterator[tuple[tuple[str, ...], int]]:
    """The orders that one row of a table means, rotations written out, with the number of notes in the left hand."""
    left, _, right = text.partition("+")
    lower = tuple(left.split())
    if "(" not in right:
        yield (*lower, *right.split()), len(lower)
        return
    upper = right.strip(" ()").split()
    for turn in range(len(upper)):
        yield (*lower, *upper[turn:], *upper[:turn]), len(lower)


def _fill(
    members: tuple[str, ...], tones: dict[str, int], chains: dict[str, tuple[str, ...]], bass: int | None
) -> list[tuple[int, int]]:
    """Pairs of a member's place in its order and the tone that fills it; members that nothing fills are left out."""
    used = set() if bass is None else {_sound(bass)}
    filled = []
    for place, member in enumerate(members):
        for name in chains[member]:
            tone = tones.get(name.rstrip("!"))
            if tone is not None and (name.endswith("!") or _sound(tone) not in used):
                filled.append((place, tone))
                used.add(_sound(tone))
                break
    return filled


def _tones(quality: Quality, ninth: int, thirteenth: int) -> dict[str, int]:
    """A chord's tones by name: its own by their numbers, those of the key, and what may lie over a dominant."""
    tones = {str(number): place for number, place in quality.tones}
    is_dominant = quality.is_dominant_seventh
    if ninth == _NATURAL_NINTH or (is_dominant and ninth == _FLAT_NINTH):
        tones["key 9"] = ninth
        if quality.interval(7) is not None or quality.interval(6) is not None:
            tones["key 9 over 7"] = ninth
    if is_dominant:
        tones["key 13"] = thirteenth
    if quality.has_minor_third and quality.interval(5) == 1:
        tones["key 11"] = _FOURTH
    if quality.interval(3) == 4 and quality.interval(5) in (1, None) and not is_dominant:
        tones["key 6"] = _NATURAL_THIRTEENTH
    return tones | (_over_dominant(quality, ninth, thirteenth) if is_dominant else {})


def _over_dominant(quality: Quality, ninth: int, thirteenth: int) -> dict[str, int]:
    """The upper tones of a dominant: its own, and those of the key where it leaves them open."""
    places = {place for number, place in quality.tones if number >= 9}
    ninths = places & {_NATURAL_NINTH, _FLAT_NINTH, _SHARP_NINTH} or {ninth}
    if _FLAT_NINTH in ninths:
        ninths = ninths | {_SHARP_NINTH}
    thirteenths = places & {_NATURAL_THIRTEENTH, _FLAT_THIRTEENTH} or {thirteenth}
    if _SHARP_FIFTH in quality.intervals:
        thirteenths = {_SHARP_FIFTH}
    found = {"any #11": _FLAT_FIFTH if _FLAT_FIFTH in quality.intervals else _SHARP_ELEVENTH}
    return found | {_UPPER_NAMES[place]: place for place in (*ninths, *thirteenths)}


_UPPER_NAMES = {
    _NATURAL_NINTH: "any 9",
    _FLAT_NINTH: "any b9",
    _SHARP_NINTH: "any #9",
    _NATURAL_THIRTEENTH: "any 13",
    _FLAT_THIRTEENTH: "any b13",
    _SHARP_FIFTH: "any b13",
}


def _key_tone(chord: RelativeChord, mode: Mode, plain: int) -> int:
    """The ninth or thirteenth that the key has above a root, in fifths above it; ``plain`` is the natural one.

    Where the key's tone is neither the plain nor the flat one, as above most roots outside the key, the plain one.
    """
    letter = (chord.root + plain) * 4 % 7
    own = next(degree for degree in mode.degrees if degree * 4 % 7 == letter) - chord.root
    return own if own in (plain, plain - 7) else plain


def _sound(place: int) -> int:
    return place * 7 % 12
