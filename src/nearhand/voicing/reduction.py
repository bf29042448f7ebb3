"""Which tones of a large chord the right hand keeps: the third, the seventh and the colour; the fifth goes first."""

from __future__ import annotations

from functools import lru_cache

from nearhand.theory.quality import Quality

MOST_TONES = 4
_PERFECT_FIFTH, _MAJOR_THIRD, _PLAIN_NINTH, _PLAIN_ELEVENTH = (5, 1), (3, 4), (9, 2), (11, -1)


@lru_cache(maxsize=1024)
def right_hand_intervals(quality: Quality) -> tuple[int, ...]:
    """The intervals above the root that the right hand plays, root first where it is kept: four at most.

    Dropped in this order until four are left: a perfect fifth; of an eleventh and a major third that rub against each
    other the third in an eleventh chord, the eleventh in a thirteenth chord; the root, which the bass holds; the plain
    ninth; then what stands lowest. (R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Voicings":
    the fifth is dropped; "Chord Symbol Specifics": a 13 omits the 11. The order behind these is common practice, no
    source.)

    >>> from nearhand.notation.chord_tails import read_tail
    >>> right_hand_intervals(read_tail("9")), right_hand_intervals(read_tail("13"))      # 1 3 7 9, and 3 7 9 13
    ((0, 4, -2, 2), (4, -2, 2, 3))
    """
    tones = list(quality.tones)
    rub = (
        [_MAJOR_THIRD if quality.interval(13) is None else _PLAIN_ELEVENTH]
        if {_MAJOR_THIRD, _PLAIN_ELEVENTH} <= {*tones}
        else []
    )
    for tone in (_PERFECT_FIFTH, *rub, (1, 0), _PLAIN_NINTH, *quality.tones):
        if len(tones) <= MOST_TONES:
            break
        if tone in tones:
            tones.remove(tone)
    return tuple(place for _, place in tones)
