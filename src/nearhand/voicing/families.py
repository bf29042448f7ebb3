"""Families of voicings as tables: which tones, in which order from low to high, in which hand, over which bass.

Definitions: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz voicings", "Guide tones", "Quartal
harmony" (guide tones, spread, quartal); Open Music Theory, "Triads" (close and open). Drop voicings, shells, rootless
forms and upper structures: common practice, no source (M. Levine, *The Jazz Theory Book*, 1995, from memory).
"""

from __future__ import annotations

from nearhand.theory.record import NamedTuple
from nearhand.voicing.hands import RIGHT_HAND, Register

FREE, REACHED, STACKED, NO_BASS = "free", "reached", "stacked", "none"
"""Where the bass lies: anywhere below in the left hand; in the left hand together with the lowest upper notes; as the
lowest note of the stack itself; or nowhere, because the bass player has it."""


class Family(NamedTuple):
    """One family.

    ``register`` is that of the upper notes, ``bass`` says where the bass lies. ``places``: for families made from close
    position, orders of the close chord's places, low to high; ``+`` stands between the hands (``2 + 0 1 3``: the third
    note of the close chord lies lowest, in the left hand). ``voices``: how many upper notes the close chord has; 0: as
    many as the chord keeps, four at most. ``orders``: for the others, orders of chord members; parentheses mean every
    rotation; ``members`` names the chains of ``voicing/members.py`` that say which tone is meant. ``otherwise``: the
    family that voices a chord which has no voicing in this one.
    """

    name: str
    help: str
    register: Register
    bass: str = FREE
    places: tuple[str, ...] = ()
    voices: int = 0
    orders: tuple[str, ...] = ()
    members: str = "plain"
    otherwise: str = "close"


CLOSE, FOUR_PART, ANY, UPPER_STRUCTURE = "close", "four-part", "any", "upper-structure"
_WIDE = Register(48, 79, 64)
_DROP_2, _DROP_3, _DROP_2_AND_4 = "2 + 0 1 3", "1 + 0 2 3", "0 2 + 1 3"

FAMILIES = {
    family.name: family
    for family in (
        Family(CLOSE, "the right hand's tones as near together as they can be, over a bass", RIGHT_HAND, places=("",)),
        Family(
            "open",
            "three tones, the middle one of the close chord an octave lower",
            _WIDE,
            REACHED,
            places=("1 + 0 2",),
            voices=3,
        ),
        Family("drop2", "close, the 2nd note from the top an octave lower", _WIDE, REACHED, (_DROP_2,), 4),
        Family("drop3", "close, the 3rd note from the top an octave lower", _WIDE, REACHED, (_DROP_3,), 4),
        Family("drop2and4", "close, the 2nd and 4th from the top lower", _WIDE, REACHED, (_DROP_2_AND_4,), 4),
        Family(
            ANY,
            "close in four notes, drop 2, drop 3 and drop 2 and 4 mixed",
            _WIDE,
            REACHED,
            ("+ 0 1 2 3", _DROP_2, _DROP_3, _DROP_2_AND_4),
            4,
        ),
        Family(
            "spread",
            "root, third and seventh lowest, fifth and ninth above",
            Register(43, 81, 62),
            STACKED,
            orders=("3 7 + 5 9", "3 7 + 9 5", "7 + 3 5 9", "7 + 3 9 5"),
            members="spread",
        ),
        Family(
            "shell",
            "root with third and seventh",
            Register(43, 69, 56),
            STACKED,
            orders=("3 7 +", "7 + 3", "7 3 +"),
        ),
        Family(
            "rootless",
            "third or seventh lowest, with ninth and thirteenth, in the left hand alone",
            Register(47, 74, 60),
            NO_BASS,
            orders=("3 5 7 9 +", "7 9 3 5 +"),
            members="extended",
        ),
        Family(
            "guide-tones",
            "third and seventh alone, moving by step over the bass",
            Register(53, 72, 62),
            FREE,
            orders=("+ 3 7", "+ 7 3"),
        ),
        Family(
            "two-hand",
            "left hand root or shell, right hand the rest",
            Register(43, 79, 64),
            STACKED,
            orders=("7 + (3 5 9)", "3 + (7 9 5)", "+ (3 5 7 9)"),
        ),
        Family(
            "quartal",
            "stacked in fourths",
            Register(50, 79, 65),
            FREE,
            orders=(
                "+ 1 4 7 3",
                "+ 4 7 3",
                "+ 4 7 3 5",
                "+ 7 3 6 9",
                "+ 7 3 6",
                "+ 3 6 9 5",
                "+ 3 6 9",
                "+ 7 3 13 9",
                "+ 7 3 13",
                "+ 1 sus 7",
                "+ 5 1 sus 7",
                "+ 5 1 sus",
            ),
            members="strict",
            otherwise="open",
        ),
        Family(
            UPPER_STRUCTURE,
            "over a dominant, a triad of its upper tones; other chords lie in close position",
            Register(48, 81, 66),
            STACKED,
            orders=(
                "3 7 + (9 #11 13)",
                "3 7 + (13 b9 3)",
                "3 7 + (b13 1 #9)",
                "3 7 + (#9 5 7)",
                "3 7 + (b9 3 b13)",
                "3 7 + (#11 7 b9)",
                "3 7 + (#11 13 b9)",
            ),
            members="upper",
        ),
        Family(FOUR_PART, "soprano, alto, tenor and bass by the textbook's rules", Register(48, 79, 64), STACKED),
    )
}
"""Every family by its name."""
