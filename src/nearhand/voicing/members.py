"""Which tone of a chord stands for a member that a family names: third, seventh, ninth ..., and what stands in for it.

A suspended fourth stands for the third and a sixth for the seventh (R. Hutchinson, *Music Theory for the 21st-Century
Classroom*, "Jazz voicings"). What a symbol names as altered goes before what is plain, that before what is added.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from nearhand.theory.chord import RelativeChord
from nearhand.theory.quality import Quality, alteration

_COLOURS = ("altered 5", "13", "altered 11", "11")
_CHAINS: dict[str, dict[str, tuple[str, ...]]] = {
    "plain": {
        "1": ("1",),
        "3": ("3", "4", "2", "5"),
        "5": (*_COLOURS, "5", "1!"),
        "7": ("7", "6", "1", "5"),
        "9": ("altered 9", "altered 11", "9", "11", "4"),
    },
    "extended": {
        "3": ("3", "4", "2"),
        "5": (*_COLOURS, "key 13", "5", "1"),
        "7": ("7", "6", "1"),
        "9": ("altered 9", "altered 11", "9", "11", "key 9", "1"),
    },
    "spread": {
        "3": ("3", "4", "2", "5"),
        "5": (*_COLOURS, "5", "1!"),
        "7": ("7", "6", "1", "5"),
        "9": ("altered 9", "altered 11", "9", "11", "4", "key 9 over 7"),
    },
    "strict": {
        "1": ("1",),
        "3": ("3",),
        "4": ("4", "11", "key 11"),
        "5": ("5",),
        "6": ("6", "13", "key 6"),
        "7": ("7", "key 7"),
        "9": ("9", "key 9"),
        "13": ("any 13", "any b13"),
        "sus": ("4",),
    },
    "upper": {
        "1": ("1!",),
        "3": ("3!",),
        "5": ("plain 5!",),
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
"""In these an order lives only when every member is there, and with them every tone that the symbol names as altered,
or as its thirteenth; in the others a missing member is left out."""
_NATURAL_NINTH, _FLAT_NINTH, _SHARP_NINTH = 2, -5, 9
_NATURAL_THIRTEENTH, _FLAT_THIRTEENTH, _SHARP_FIFTH = 3, -4, 8
_SHARP_ELEVENTH, _FLAT_FIFTH, _FOURTH = 6, -6, -1
_MAJOR_THIRD, _MINOR_SEVENTH, _DIMINISHED_FIFTH = 4, -2, -6
_SEVENTH, _THIRTEENTH = 7, 13


def orders_of(
    chord: RelativeChord, added: tuple[int, int], orders: tuple[str, ...], chains: str, bass: int | None
) -> tuple[tuple[tuple[int, ...], int], ...]:
    """The orders that a chord can fill: tones low to high in fifths above the root, and how many the left hand takes.

    ``added``: the ninth and thirteenth that may be added. ``bass``: the tone that is lowest already, in fifths above
    the root, or None. ``chains``: a row of the table above.

    >>> from nearhand.notation.numerals import parse_numeral
    >>> from nearhand.theory.mode import MAJOR
    >>> orders_of(parse_numeral("V7", MAJOR), (2, 3), ("3 5 7 9 +",), "extended", None)       # B E F A on G
    (((4, 3, -2, 2), 4),)
    """
    found = _filled(chord.quality, added, orders, chains, bass)
    if bass is None and chord.bass != chord.root and chains == "strict":
        return tuple(order for order in found if 0 in order[0])
    return found


@lru_cache(maxsize=4096)
def _filled(
    quality: Quality, added: tuple[int, int], orders: tuple[str, ...], chains: str, bass: int | None
) -> tuple[tuple[tuple[int, ...], int], ...]:
    tones = _tones(quality, *added)
    if bass:
        tones.pop("key 9 over 7", None)  # it would lie beside the root
    is_complete = chains in _COMPLETE
    named = _named(quality) if is_complete else set()
    found: dict[tuple[tuple[int, ...], int], None] = {}
    for text in orders:
        for members, left in _read(text):
            filled = _fill(members, tones, _CHAINS[chains], bass)
            if is_complete and (len(filled) < len(members) or not named <= {_sound(tone) for _, tone in filled}):
                continue
            kept = len([place for place, _ in filled if place < left])
            order = tuple(tone for _, tone in filled)
            if not is_complete and bass and 0 not in order:  # over another bass the root sounds above
                found.update({((*order[:at], 0, *order[at:]), kept): None for at in range(kept, len(order) + 1)})
            elif order:
                found[order, kept] = None
    return tuple(found)


def _named(quality: Quality) -> set[int]:
    """Tones that a symbol names and no voicing may leave out: altered ones, and a thirteenth, in semitones."""
    tones = dict(quality.tones)
    return {_sound(place) for number, place in tones.items() if number >= 5 and _stands_out(number, place)}


def _stands_out(number: int, place: int) -> bool:
    return number == _THIRTEENTH or (number != _SEVENTH and alteration(number, place) != 0)


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
    """Pairs of a member's place in its order and the tone that fills it; members that nothing fills are left out.

    A bass that is not the root takes a member's tone away: the root stands there in its place.
    """
    used = set() if bass is None else {_sound(bass)}
    filled: list[tuple[int, int]] = []
    for place, member in enumerate(members):
        for name in chains[member]:
            tone = tones.get(name.rstrip("!"))
            if bass and tone is not None and _sound(tone) == _sound(bass) and 0 not in used:
                tone = 0  # what the bass has already makes room for the root
            if tone is not None and (name.endswith("!") or _sound(tone) not in used):
                filled.append((place, tone))
                used.add(_sound(tone))
                break
    return filled


def _tones(quality: Quality, ninth: int, thirteenth: int) -> dict[str, int]:
    """A chord's tones by name: its own by their numbers, altered ones twice, those it may be given, and upper ones.

    Of a major third and a plain eleventh that rub, the eleventh goes in a thirteenth chord; an eleventh chord is played
    as a suspended one.
    """
    tones = {str(number): place for number, place in quality.tones}
    if tones.get("3") == _MAJOR_THIRD and tones.get("11") == _FOURTH:
        if "13" not in tones:
            tones["4"] = _FOURTH
            del tones["3"]
        del tones["11"]
    for number, place in quality.tones:
        if number in (5, 9, 11) and alteration(number, place):
            tones[f"altered {number}"] = place
    if tones.get("5") == 1:
        tones["plain 5"] = 1
    is_dominant = quality.is_dominant_seventh
    if quality.interval(5) != _DIMINISHED_FIFTH and (ninth == _NATURAL_NINTH or (is_dominant and ninth == _FLAT_NINTH)):
        tones["key 9"] = ninth
        if "7" in tones or "6" in tones:
            tones["key 9 over 7"] = ninth
    if is_dominant:
        tones["key 13"] = thirteenth
    if quality.has_minor_third and tones.get("5") == 1:
        tones["key 11"] = _FOURTH
        if "7" not in tones and "6" not in tones:
            tones["key 7"] = _MINOR_SEVENTH
    if tones.get("3") == _MAJOR_THIRD and quality.interval(5) in (1, None) and not is_dominant:
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


def _sound(place: int) -> int:
    return place * 7 % 12
