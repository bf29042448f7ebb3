"""The values of an ABC file's fields: meters, the unit note length, the tempo, titles and the names of decorations.

ABC standard 2.1, sections 3.1, 4.16 and 8.2, from memory.
"""

from __future__ import annotations

import re
from fractions import Fraction

from nearhand.exchange.abc_text import Field
from nearhand.notation.chart_bars import parse_meter
from nearhand.notation.errors import InputError
from nearhand.theory.progression import COMMON_TIME, Meter

_METER_HINT = "write for example M:4/4, M:6/8, M:C or M:none"
_UNIT = re.compile(r"(\d{1,4})(?:\s*/\s*(\d{1,4}))?")
_TEMPO = re.compile(r"(?:\"[^\"]*\"\s*)?(\d{1,4})/(\d{1,4})\s*=\s*(\d{1,4})")
_TEMPO_LIMITS = range(10, 401)
_SHORT_METER = Fraction(3, 4)
SHORTHANDS = {
    ".": "staccato",
    "~": "roll",
    "H": "fermata",
    "L": "accent",
    "M": "lowermordent",
    "O": "coda",
    "P": "uppermordent",
    "S": "segno",
    "T": "trill",
    "u": "upbow",
    "v": "downbow",
}
"""Decorations of one sign, as the standard sets them."""


def read_meter(field: Field) -> Meter | None:
    """Read a meter; None for free meter.

    Raises InputError, placed in the file.

    >>> from nearhand.exchange.abc_text import Row, field_of
    >>> [str(read_meter(field_of(Row("it.abc", 1, f"M:{text}")))) for text in ("6/8", "C|", "(2+3)/8", "none")]
    ['6/8', '2/2', '5/8', 'None']
    """
    value = field.value
    if value.lower() in ("", "none"):
        return None
    if value in ("C", "C|"):
        return COMMON_TIME if value == "C" else Meter(2, 2)
    beats, slash, unit = value.partition("/")
    groups = [group.strip(" ()") for group in beats.split("+")]
    if slash and all(group.isascii() and group.isdigit() and len(group) < 3 for group in groups):
        try:
            return parse_meter(f"{sum(map(int, groups))}/{unit.strip()}")
        except InputError:
            pass
    raise field.refusal(f"{value[:20]!r} is no meter", 0, "a meter", _METER_HINT)


def read_unit(field: Field) -> Fraction:
    """Read the unit note length, as a part of a whole note.

    Raises InputError, placed in the file.
    """
    found = _UNIT.fullmatch(field.value)
    if found and int(found[1]) and int(found[2] or 1):
        return Fraction(int(found[1]), int(found[2] or 1))
    raise field.refusal(f"{field.value[:20]!r} is no note length", 0, "a note length", "write for example L:1/8")


def default_unit(meter: Meter | None) -> Fraction:
    """The unit note length where no ``L:`` sets one: a sixteenth in meters shorter than 3/4, else an eighth.

    >>> default_unit(Meter(2, 4)), default_unit(Meter(6, 8)), default_unit(None)
    (Fraction(1, 16), Fraction(1, 8), Fraction(1, 8))
    """
    is_short = meter is not None and Fraction(meter.beats, meter.unit) < _SHORT_METER
    return Fraction(1, 16 if is_short else 8)


def read_tempo(value: str, meter: Meter | None) -> int | None:
    """Beats a minute, in beats of the meter; None where the tempo counts dotted notes, or in words alone.

    >>> read_tempo('"Lively" 1/2=80', COMMON_TIME), read_tempo("3/8=100", Meter(6, 8)), read_tempo("Slow", None)
    (160, None, None)
    """
    found = _TEMPO.search(value)
    if found is None or int(found[1]) != 1 or not int(found[2]):
        return None
    beats = Fraction(int(found[3]) * (meter or COMMON_TIME).unit, int(found[2]))
    return int(beats) if beats in _TEMPO_LIMITS else None


_ACCENTS = {"`": 0x300, "'": 0x301, "^": 0x302, "~": 0x303, "=": 0x304, "u": 0x306, '"': 0x308, "v": 0x30C, "c": 0x327}
_LETTERS = {"ss": "ß", "ae": "æ", "AE": "Æ", "oe": "œ", "OE": "Œ", "aa": "å", "AA": "Å", "/o": "ø", "/O": "Ø"}
_ESCAPE = re.compile(r"\\u([0-9a-fA-F]{4})|\\(ss|ae|AE|oe|OE|aa|AA|/o|/O)|\\([`'^~=u\"vc])([A-Za-z])|\\([%&\\])")


def read_title(value: str) -> str:
    r"""A text with its accents: ``\'e``, ``&eacute;`` and ``\u00e9`` are all é.

    >>> read_title(r"Caf\'e, M\"uller &amp; \u00c5se")
    'Café, Müller & Åse'
    """
    if "\\" not in value and "&" not in value:
        return value
    from html import unescape

    return _ESCAPE.sub(_character, unescape(value)).strip()


def _character(found: re.Match[str]) -> str:
    from unicodedata import normalize

    code, letters, accent, letter, sign = found.groups()
    if code:
        return chr(int(code, 16))
    return _LETTERS[letters] if letters else sign or normalize("NFC", letter + chr(_ACCENTS[accent]))


def read_shorthand(value: str) -> dict[str, str]:
    """What a ``U:`` field sets: one sign and the decoration it stands for; nothing where it cannot be read.

    >>> read_shorthand("T = !turn!"), read_shorthand("what")
    ({'T': 'turn'}, {})
    """
    sign, equals, decoration = value.partition("=")
    sign = sign.strip()
    return {sign: decoration.strip(' !+"')} if equals and len(sign) == 1 else {}
