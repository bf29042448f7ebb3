"""Keys in words: ``E minor``, ``Em``, ``e``, ``Bb``, ``D dorian``."""

from __future__ import annotations

from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.notes import note_name, read_pitch_class, write_pitch_class
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES, Mode
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS

MODE_WORDS: dict[str, Mode] = {
    **MODES,
    **dict.fromkeys(("maj", "M", "dur"), MAJOR),
    **dict.fromkeys(("m", "min", "-", "moll"), MINOR),
}
_HINT = "write a key such as E minor, Bb major, F#m, or D dorian"


def parse_key(text: str) -> Key:
    """Read a key. A capital letter alone is major, a small one minor; a word for the mode decides over the letter.

    Raises InputError with the place of the first character that cannot be read.

    >>> [str(parse_key(text)) for text in ("E minor", "Em", "e", "Bb", "f# minor", "D dorian", "E flat")]
    ['E minor', 'E minor', 'E minor', 'Bb major', 'F# minor', 'D dorian', 'Eb major']
    """
    start = len(text) - len(text.lstrip())
    letter = text[start : start + 1]
    if spoken := _accidental_word(text, start + 1):
        word_end, sign = spoken
        mode = _read_mode(text, word_end, small_letter=letter.islower())
        return Key(parse_key(letter.upper() + sign).tonic, mode)
    raised = text[:start] + letter.upper() + text[start + 1 :]
    if not letter or letter.upper() not in LETTERS_IN_FIFTHS or len(raised) != len(text):
        what = "a key is missing" if not letter else f"{text.strip()[:40]!r} is no key"
        raise InputError(what, text, start, start + 1, wanted="a key", hint=_HINT)
    try:
        tonic, end = read_pitch_class(raised, start, "key")
    except InputError as error:
        raise error.within(text, 0) from None
    return Key(tonic, _read_mode(text, end, small_letter=letter.islower()))


def _accidental_word(text: str, at: int) -> tuple[int, str] | None:
    """The end of ``flat`` or ``sharp`` behind a letter, and its sign, as in ``E flat``, ``e-flat`` or ``Fsharp``."""
    begin = at + 1 if text[at : at + 1] in (" ", "-") else at
    for word, sign in (("flat", "b"), ("sharp", "#")):
        end = begin + len(word)
        if (
            text[begin:end].lower() == word
            and text[at - 1].upper() in LETTERS_IN_FIFTHS
            and not text[end : end + 1].isalpha()
        ):
            return end, sign
    return None


def _read_mode(text: str, end: int, small_letter: bool) -> Mode:
    word = text[end:].strip()
    if not word:
        return MINOR if small_letter else MAJOR
    if word == "M":
        return MAJOR
    mode = MODE_WORDS.get(word.lower())
    if mode is None:
        start = end + len(text[end:]) - len(text[end:].lstrip())
        raise InputError(f"{word[:40]!r} is no mode", text, start, wanted="a mode", hint=_mode_hint(word))
    return mode


def _mode_hint(word: str) -> str:
    from difflib import get_close_matches

    near = get_close_matches(word.lower()[:40], MODES, n=1)
    return f"did you mean {near[0]}?" if near else f"the modes are {', '.join(MODES)}"


def write_key(key: Key, plain: bool = False) -> str:
    """Write a key in words.

    >>> write_key(parse_key("Bbm")), write_key(parse_key("Bbm"), plain=True)
    ('B♭ minor', 'Bb minor')
    """
    return f"{write_pitch_class(key.tonic, plain)} {key.mode.name}"


def key_name(key: Key, conventions: Conventions) -> str:
    """A key in words as pages write it: its tonic is named as notes are.

    >>> key_name(parse_key("Bm"), Conventions(names="german"))
    'H minor'
    """
    return f"{note_name(key.tonic, conventions)} {key.mode.name}"


def short_key_name(key: Key, conventions: Conventions) -> str:
    """A key as players say it: a major one by its tonic alone.

    >>> [short_key_name(parse_key(text), Conventions()) for text in ("Bb", "Bbm")]
    ['B♭', 'B♭ minor']
    """
    return note_name(key.tonic, conventions) if key.mode == MAJOR else key_name(key, conventions)
