"""Which of two conventions a notation is read and written by, where the trade has two."""

from __future__ import annotations

from nearhand.theory.mode import MAJOR, Mode
from nearhand.theory.record import NamedTuple

DEGREES = ("mode", "major", "relative")
SEVENTHS = ("chord", "scale")
SYMBOLS = ("plain", "jazz", "long", "compact", "ascii")
FIGURES = ("line", "raised")
SING = ("numbers", "syllables")
NATURAL, HARMONIC, MELODIC = MINOR = ("natural", "harmonic", "melodic")
NAMES = ("english", "german", "solfege")
SPOKEN = "spoken"
LAYOUTS = ("drawn", SPOKEN)


class Conventions(NamedTuple):
    """The choices of a reader or writer; the defaults are the common ones.

    ``degrees``: ``mode`` counts degrees in the mode's own scale (minor reads 1 3 6 7), ``major`` against the major
    scale of the tonic (minor reads 1 ♭3 ♭6 ♭7); with ``relative`` numbers are those of the relative major (minor
    reads 6- 1 4 5), while numerals stay with the mode. ``plain`` writes with keyboard characters only (``Bb``,
    ``viio7``). ``sevenths``: a bare 7, 9, 11 or 13 behind a numeral is that of a chord symbol (``chord``: I7 is a
    dominant seventh), or that of the scale (``scale``, as in RomanText: I7 is Imaj7). ``symbols`` is the style of
    chord symbols: ``plain`` Cm7b5, ``jazz`` Cø7, ``long`` Cmin7b5, ``compact`` Cø7 CM7, ``ascii`` plain with b and #.
    ``figures`` behind numerals and numbers stand on the ``line`` or ``raised``. ``layout``: answers are ``drawn`` as
    grids and keyboards, or ``spoken``, one fact a line and signs as words, for ears. ``names`` are those of listed
    notes and of keys: ``english``, ``german`` (H is B natural), ``solfege`` (Do is C); symbols and input stay English.
    ``sing``: the degrees of a melody as ``numbers``, or as movable ``syllables`` (do is the tonic in every key).
    ``minor``: the form of minor in which the bare sixths and sevenths of a melody are read, where degrees are counted
    in the mode: ``natural``, ``harmonic`` or ``melodic`` (as in ``notation.melody_minor``).
    """

    degrees: str = "mode"
    plain: bool = False
    sevenths: str = "chord"
    symbols: str = "plain"
    figures: str = "line"
    layout: str = "drawn"
    names: str = "english"
    sing: str = "numbers"
    minor: str = NATURAL

    def choosing(self, name: str, choice: str) -> Conventions:
        """The same conventions with another choice of one that has a name: degrees, sevenths, symbols ..."""
        return Conventions(**{**self._asdict(), name: choice})

    def counting_mode(self, mode: Mode) -> Mode:
        """The mode whose scale the degrees of numerals are counted in."""
        return MAJOR if self.degrees == "major" else mode

    @property
    def sevenths_of_scale(self) -> bool:
        """Whether a bare 7 behind a numeral is the seventh of the scale."""
        return self.sevenths == "scale"


DEFAULT = Conventions()
PLAIN = Conventions(plain=True)
