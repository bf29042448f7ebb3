"""Scale degrees: where a numeral or a number lies on the line of fifths above its tonic, and the way back.

Degrees are counted in the mode's own scale. In minor the sixth and seventh degree have two forms, and the chord
decides: a minor or diminished chord stands on the raised one (``vi°``, ``vii°``), any other on the lowered one
(``VI``, ``VII``). An accidental forces the form: ♭ the lowered, ♯ the raised, a further sign goes further. So
``bVII`` and ``#vii°`` mean no more than ``VII`` and ``vii°``. Source: When in Rome corpus, syntax.md, minor-mode
option "cautionary"; RomanText, Gotham et al., ISMIR 2019 (second-hand).
"""

from __future__ import annotations

from collections.abc import Collection

from nearhand.theory.mode import RAISED_SEVENTH, RAISED_SIXTH, Mode

ORDINALS = ("1st", "2nd", "3rd", "4th", "5th", "6th", "7th")
RAISED = {6: RAISED_SIXTH, 7: RAISED_SEVENTH}
"""The raised forms of minor, in fifths above the tonic."""


def has_two_forms(number: int, mode: Mode) -> bool:
    """Whether a degree is one of the two movable ones of minor."""
    return mode.is_minor and number in RAISED


def root_place(number: int, accidental: int | None, mode: Mode, is_small: bool) -> int:
    """The place of a chord's root: ``accidental`` as written (None for none), ``is_small`` for minor and diminished.

    >>> from nearhand.theory.mode import MINOR
    >>> root_place(7, None, MINOR, is_small=True), root_place(7, None, MINOR, is_small=False)
    (5, -2)
    """
    return _place(number, accidental, mode, raised_by_default=is_small)


def bass_place(number: int, accidental: int | None, mode: Mode, chord_places: Collection[int]) -> int:
    """The place of a bass degree: bare 6 and 7 in minor follow the chord that stands over them.

    >>> from nearhand.theory.mode import MINOR
    >>> bass_place(7, None, MINOR, (1, -2, 2)), bass_place(7, None, MINOR, (1, 5, 2))       # under v, under V
    (-2, 5)
    """
    return _place(number, accidental, mode, raised_by_default=RAISED.get(number) in chord_places)


def melody_place(number: int, accidental: int | None, mode: Mode) -> int:
    """The place of a note of a melody: bare 6 and 7 in minor are those of the natural form.

    >>> from nearhand.theory.mode import MINOR
    >>> melody_place(7, None, MINOR), melody_place(7, 1, MINOR), melody_place(7, -1, MINOR)
    (-2, 5, -2)
    """
    return _place(number, accidental, mode, raised_by_default=False)


def _place(number: int, accidental: int | None, mode: Mode, raised_by_default: bool) -> int:
    plain = mode.degrees[number - 1]
    if not has_two_forms(number, mode):
        return plain + 7 * (accidental or 0)
    if accidental is None:
        return plain + 7 * raised_by_default
    return plain + 7 * (accidental + 1 if accidental < 0 else accidental)


def written_root(place: int, mode: Mode, is_small: bool) -> tuple[int, int]:
    """The degree's number and the accidental to write for a root: the way back from ``root_place``.

    >>> from nearhand.theory.mode import MINOR
    >>> written_root(5, MINOR, is_small=True), written_root(-2, MINOR, is_small=True)       # vii°, bvii
    ((7, 0), (7, -1))
    """
    return _written(place, mode, raised_by_default=is_small)


def written_bass(place: int, mode: Mode, chord_places: Collection[int]) -> tuple[int, int]:
    """The degree's number and the accidental to write for a bass: the way back from ``bass_place``."""
    return _written(place, mode, raised_by_default=RAISED.get(degree_number(place)) in chord_places)


def written_melody(place: int, mode: Mode) -> tuple[int, int]:
    """The degree's number and the accidental to write for a note of a melody: the way back from ``melody_place``."""
    return _written(place, mode, raised_by_default=False)


def _written(place: int, mode: Mode, raised_by_default: bool) -> tuple[int, int]:
    number = degree_number(place)
    shift = (place - mode.degrees[number - 1]) // 7
    if not has_two_forms(number, mode):
        return number, shift
    if shift == raised_by_default:
        return number, 0
    return number, shift if shift > 0 else shift - 1


def degree_number(place: int) -> int:
    """The number 1 to 7 of a place in fifths above the tonic, whatever its accidental.

    >>> [degree_number(place) for place in (0, 2, 4, -1, 1, 3, 5, -5)]
    [1, 2, 3, 4, 5, 6, 7, 2]
    """
    return place * 4 % 7 + 1
