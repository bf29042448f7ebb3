"""Which of two conventions a notation is read and written by, where the trade has two."""

from __future__ import annotations

from nearhand.theory.mode import MAJOR, Mode
from nearhand.theory.record import NamedTuple


class Conventions(NamedTuple):
    """The choices of a reader or writer; the defaults are the common ones.

    ``degrees``: ``mode`` counts degrees in the mode's own scale (minor reads 1 3 6 7), ``major`` against the major
    scale of the tonic (minor reads 1 ♭3 ♭6 ♭7). ``plain`` writes with keyboard characters only (``Bb``, ``viio7``).
    """

    degrees: str = "mode"
    plain: bool = False

    def counting_mode(self, mode: Mode) -> Mode:
        """The mode whose scale the degrees are counted in."""
        return MAJOR if self.degrees == "major" else mode


DEFAULT = Conventions()
PLAIN = Conventions(plain=True)
