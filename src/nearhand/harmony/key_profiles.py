"""Profiles of keys: how much each note weighs in a major and in a minor key, as published.

Numbers: Albrecht, Shanahan, Music Perception 31, 2013; Krumhansl, Kessler, Psychological Review 89, 1982; Temperley,
Music Perception 17, 1999 (revised in *The Cognition of Basic Musical Structures*, 2001) and *Music and Probability*,
2007 (Kostka-Payne corpus); Aarden, Ohio State, 2003 (Essen folk songs); Bellman, CMMR 2005, after Budge 1943.
"""

from __future__ import annotations

from nearhand.theory.record import NamedTuple


class Profile(NamedTuple):
    """Who published it and when; then twelve numbers for a major and a minor key, semitones 0 to 11 above the tonic."""

    source: str
    major: tuple[float, ...]
    minor: tuple[float, ...]


PROFILES = {
    "albrecht-shanahan": Profile(
        "Albrecht-Shanahan 2013",
        (0.238, 0.006, 0.111, 0.006, 0.137, 0.094, 0.016, 0.214, 0.009, 0.080, 0.008, 0.081),
        (0.220, 0.006, 0.104, 0.123, 0.019, 0.103, 0.012, 0.214, 0.062, 0.022, 0.061, 0.052),
    ),
    "krumhansl-kessler": Profile(
        "Krumhansl-Kessler 1982",
        (6.35, 2.23, 3.48, 2.33, 4.38, 4.09, 2.52, 5.19, 2.39, 3.66, 2.29, 2.88),
        (6.33, 2.68, 3.52, 5.38, 2.60, 3.53, 2.54, 4.75, 3.98, 2.69, 3.34, 3.17),
    ),
    "temperley": Profile(
        "Temperley 2007",
        (0.748, 0.060, 0.488, 0.082, 0.670, 0.460, 0.096, 0.715, 0.104, 0.366, 0.057, 0.400),
        (0.712, 0.084, 0.474, 0.618, 0.049, 0.460, 0.105, 0.747, 0.404, 0.067, 0.133, 0.330),
    ),
    "temperley-2001": Profile(
        "Temperley 2001",
        (5, 2, 3.5, 2, 4.5, 4, 2, 4.5, 2, 3.5, 1.5, 4),
        (5, 2, 3.5, 4.5, 2, 4, 2, 4.5, 3.5, 2, 1.5, 4),
    ),
    "aarden": Profile(
        "Aarden 2003",
        (17.7661, 0.145624, 14.9265, 0.160186, 19.8049, 11.3587,
         0.291248, 22.062, 0.145624, 8.15494, 0.232998, 4.95122),
        (18.2648, 0.737619, 14.0499, 16.8599, 0.702494, 14.4362,
         0.702494, 18.6161, 4.56621, 1.93186, 7.37619, 1.75623),
    ),
    "bellman-budge": Profile(
        "Bellman-Budge 2005",
        (16.80, 0.86, 12.95, 1.41, 13.49, 11.93, 1.25, 20.28, 1.80, 8.04, 0.62, 10.57),
        (18.16, 0.69, 12.99, 13.34, 1.07, 11.15, 1.38, 21.07, 7.49, 1.53, 0.92, 10.21),
    ),
}  # fmt: skip
"""Profiles by the names by which they are asked for."""
DEFAULT_PROFILE = "albrecht-shanahan"
