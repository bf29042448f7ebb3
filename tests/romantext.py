"""The analyses in RomanText that music21's package ships (chorales by J. S. Bach, madrigals by C. Monteverdi)."""

from __future__ import annotations

from pathlib import Path

import music21
from music21.romanText import rtObjects

CORPUS = Path(music21.__file__).parent / "corpus"
FILES = sorted(path for ending in ("rntxt", "rntext", "romantext") for path in CORPUS.rglob(f"*.{ending}"))


def tokens(text: str) -> list[tuple[str, str]]:
    """Figures with the key they stand in, in the order of the text, variants and pivot chords included."""
    found, home = [], "C"
    for token in rtObjects.RTFile().readstr(text).tokens:
        if token.isMeasure():
            here = home
            for atom in token.atoms:
                if isinstance(atom, rtObjects.RTKeyTypeAtom):
                    here = atom.src.rstrip(":;")
                elif isinstance(atom, rtObjects.RTChord):
                    found.append((atom.src, here))
            if token.variantNumber is None and token.variantLetter is None:
                home = here
    return found
