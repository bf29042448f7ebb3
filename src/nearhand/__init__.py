"""Move chord progressions between keys: numerals, numbers, correct spelling, and the smoothest voicings.

>>> import nearhand
>>> tune = nearhand.parse_progression("| Em | Bm/D | Am/C | B7 |", nearhand.parse_key("E minor"))
>>> tune.numerals()
('i', 'v6', 'iv6', 'V7')
>>> tune.in_key(nearhand.parse_key("C minor")).symbols()
('Cm', 'Gm/B♭', 'Fm/A♭', 'G7')
>>> [str(pitch) for pitch in nearhand.voice(tune, style="close").pitches[0]]
['E3', 'E4', 'G4', 'B4']
"""

__version__ = "0.1.0"
__all__ = [
    "Conventions",
    "InputError",
    "Key",
    "Tune",
    "VoicedProgression",
    "Wishes",
    "__version__",
    "best_paths",
    "borrow",
    "cadences",
    "degrees",
    "difficulty",
    "explain",
    "find_keys",
    "instead",
    "lines",
    "next_best",
    "parse_key",
    "parse_melody",
    "parse_progression",
    "regions",
    "singers_keys",
    "tones",
    "voice",
    "with_melody",
    "written_for",
]


TYPE_CHECKING = False  # as in typing, which is not worth 9 ms here
if TYPE_CHECKING:
    from nearhand.library import (
        Conventions,
        InputError,
        Key,
        Tune,
        VoicedProgression,
        Wishes,
        best_paths,
        borrow,
        cadences,
        degrees,
        difficulty,
        explain,
        find_keys,
        instead,
        lines,
        next_best,
        parse_key,
        parse_melody,
        parse_progression,
        regions,
        singers_keys,
        tones,
        voice,
        with_melody,
        written_for,
    )


def __getattr__(name: str) -> object:
    """Load the library when a name of it is first asked for, so that ``import nearhand`` costs nothing."""
    if name in __all__:
        from nearhand import library

        return getattr(library, name)
    raise AttributeError(f"module 'nearhand' has no attribute {name!r}")
