"""Names of instruments as players write them: in any order, in the plural, with or without the pitch they stand in."""

from __future__ import annotations

from functools import lru_cache

from nearhand.melody.instruments import INSTRUMENTS, Instrument
from nearhand.theory.pitch_class import PitchClass

_FILLERS = frozenset(("in", "the", "and"))
_SAME = {"saxophone": "sax", "bari": "baritone"}
_FLAT = "flat"
_SIGNS = str.maketrans({"♭": "b", "'": "", "’": "", "-": " ", ",": " "})
_MOST_NAMED = 6


def find_instrument(name: str) -> Instrument | None:
    """The instrument of a name; None where there is none.

    >>> names = ("Saxes, alto", "Bb trumpet", "trumpets in B flat", "clarinet in A", "cor anglais", "kazoo")
    >>> [found and found.name for found in map(find_instrument, names)]
    ['alto sax', 'trumpet', 'trumpet', 'clarinet in A', 'English horn', None]
    """
    return _by_words().get(_words(name))


def nearest_instruments(name: str) -> tuple[str, ...]:
    """The names nearest to one that is none: by its letters, or else those that have its words, or one of them.

    >>> nearest_instruments("hron"), nearest_instruments("sax")[:2], nearest_instruments("kazoo")
    (('horn',), ('soprano sax', 'alto sax'), ())
    """
    from difflib import get_close_matches

    words = _words(name)
    by_small_letters = {each.lower(): each for each in INSTRUMENTS}
    near = get_close_matches(name.strip()[:40].lower(), by_small_letters, n=1, cutoff=0.7)
    if near and not any(map(_is_pitch, words)):  # another pitch is no slip of the pen
        return (by_small_letters[near[0]],)
    whole = [each for each in INSTRUMENTS if words and words <= _words(each)]
    shared = [each for each in INSTRUMENTS if any(len(word) > 2 for word in words & _words(each))]
    return tuple((whole or shared)[:_MOST_NAMED])


@lru_cache(maxsize=1)
def _by_words() -> dict[frozenset[str], Instrument]:
    """Every name and alias as a set of words, also with the pitch that the instrument stands in."""
    known: dict[frozenset[str], Instrument] = {}
    for instrument in INSTRUMENTS.values():
        pitch = str(PitchClass(-instrument.fifths)).lower()
        for name in (instrument.name, *instrument.aliases):
            known.setdefault(_words(name) | {pitch}, instrument)
    plain = {_words(name): each for each in INSTRUMENTS.values() for name in (each.name, *each.aliases)}
    return known | plain


@lru_cache(maxsize=512)
def _words(name: str) -> frozenset[str]:
    """The words of a name: small letters, the singular, ``B flat`` as one word, without what says nothing."""
    parts = name.lower().translate(_SIGNS).split()
    words: list[str] = []
    for part in parts:
        if part == _FLAT and words:
            words[-1] = f"{words[-1]}b"
        elif part not in _FILLERS:
            words.append(_singular(part))
    return frozenset(_SAME.get(word, word) for word in words)


def _is_pitch(word: str) -> bool:
    return word[0] in "abcdefg" and word[1:] in ("", "b", "#")


def _singular(word: str) -> str:
    if word.endswith(_FLAT) and len(word) == len(_FLAT) + 1:
        return f"{word[0]}b"
    if word.endswith(("xes", "sses")):
        return word[:-2]
    return word[:-1] if word.endswith("s") and not word.endswith("ss") and len(word) > 2 else word
