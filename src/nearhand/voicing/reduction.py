"""Which tones of a large chord the right hand keeps: the third, the seventh and the colour."""

from __future__ import annotations

from functools import lru_cache
from itertools import pairwise

from nearhand.theory.quality import Quality

MOST_TONES = 4
_NINTH = 9
_ROOT, _MAJOR_THIRD, _PERFECT_FIFTH = (1, 0), (3, 4), (5, 1)
_PLAIN_SIXTH, _PLAIN_NINTH, _PLAIN_ELEVENTH, _PLAIN_THIRTEENTH = (6, 3), (9, 2), (11, -1), (13, 3)


@lru_cache(maxsize=1024)
def right_hand_intervals(quality: Quality, most: int = MOST_TONES, bass_has_root: bool = True) -> tuple[int, ...]:
    """The intervals above the root that the right hand plays, root first where it is kept: ``most`` at most.

    Dropped in this order until no more are left over: the root of a ninth chord, which the bass holds; a perfect fifth;
    of an eleventh and a major third that rub against each other the third in an eleventh chord, the eleventh in a
    thirteenth chord; the root; the plain ninth, thirteenth, eleventh and sixth; then altered tones from the highest
    down. Third and seventh go last. Of two forms of one tone (alt has both fifths and both ninths) the lower goes
    behind the root. Of a chord over a chord the right hand plays the upper one, and third and seventh of the lower as
    far as there is room.
    (R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Voicings": over the bass the right hand has
    third, fifth or thirteenth, seventh and ninth; "Chord Symbol Specifics": a 13 omits the 11. The order behind these
    is common practice, no source.)

    >>> from nearhand.notation.chord_tails import read_tail
    >>> right_hand_intervals(read_tail("9")), right_hand_intervals(read_tail("13"))      # 3 5 7 9, and 3 7 9 13
    ((4, 1, -2, 2), (4, -2, 2, 3))
    """
    if quality.layers is not None:
        return _of_layers(*quality.layers)[:most]
    tones = list(quality.tones)
    rub: list[tuple[int, int]] = []
    if _MAJOR_THIRD in tones and _PLAIN_ELEVENTH in tones:
        rub = [_MAJOR_THIRD if quality.interval(13) is None else _PLAIN_ELEVENTH]
    last = [tone for tone in reversed(quality.tones) if tone[0] not in (3, 7)]
    plain = (_PLAIN_NINTH, _PLAIN_THIRTEENTH, _PLAIN_ELEVENTH, _PLAIN_SIXTH)
    lower_twins = [tone for tone, above in pairwise(quality.tones) if tone[0] == above[0] not in (3, 7)]
    is_ninth = bass_has_root and quality.numbers[-1] == _NINTH
    for tone in (*((_ROOT,) if is_ninth else ()), _PERFECT_FIFTH, *rub, _ROOT, *lower_twins, *plain, *last):
        if len(tones) > most and tone in tones:
            tones.remove(tone)
    return tuple(place for _, place in tones)


def _of_layers(lower: Quality, interval: int, upper: Quality) -> tuple[int, ...]:
    """What the right hand plays of a chord over a chord, in fifths above the lower root."""
    found = [interval + place for place in right_hand_intervals(upper)]
    guide_tones = [place for number, place in lower.tones if number in (3, 7) and place not in found]
    return (*found, *guide_tones)[:MOST_TONES]
