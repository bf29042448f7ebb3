"""What a player should know about how a chart was read: forms that have another reading, and how to write that.

Readings of chord symbols: R. Hutchinson, *Music Theory for the 21st-Century Classroom*, "Jazz Chord Basics" and "Chord
Symbol Specifics", where it speaks of them; the rest is common practice, no source.
"""

from __future__ import annotations

from nearhand.notation.chart import Chart, read_token
from nearhand.notation.chart_bars import Token, is_optional, without_brackets
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.chord_tails import plain_digits
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS, has_two_forms
from nearhand.notation.numeral_words import NUMERALS, starts_numeral
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR

_OF_TAILS = {
    "2": "{0}(add9), with its third; some charts mean {0}sus2",
    "4": "{0}sus4; {0}(add4) keeps the third",
    "sus9": "{0}sus2; some charts mean {0}9sus4",
    "11": "a full eleventh chord; in playing its third is left out",
    "13": "a full thirteenth chord; in playing its eleventh is left out",
    "7+": "{0}7#5; some charts write 7+ for a major seventh, which is {0}maj7 here",
    "9+": "{0}9#5; some charts write 9+ for a raised ninth, which is {0}7#9 here",
    "+9": "a ninth chord with a raised fifth; a raised ninth is written {0}7(#9)",
    "7M": "{0}maj7",
    "#7": "{0}maj7; the seventh chord on a sharp root has its sharp before any other sign",
    "m#7": "{0}m(maj7)",
    "-5": "{0}(b5), a major third and a lowered fifth; {0}- alone is minor",
    "alt": "a dominant seventh with fifth and ninth lowered or raised; which of them is left to the player",
}
_OF_TAILS |= {"7alt": _OF_TAILS["alt"], "aug9": _OF_TAILS["+9"], "−5": _OF_TAILS["-5"]}
_OF_TAILS |= dict.fromkeys(("°", "º", "o"), "a diminished triad; many jazz charts mean {0}dim7")
_OF_TAILS |= dict.fromkeys(("ø", "Ø"), "{0}m7b5: half-diminished has its seventh")
_OF_TAILS |= dict.fromkeys(("Δ", "△", "∆", "^", "j"), "{0}maj7; some charts write the triangle for the triad")
_RARE_ROOTS = ("Cb", "C♭", "Fb", "F♭", "E#", "E♯", "B#", "B♯")


def has_other_readings(symbol: str) -> bool:
    """Whether a chord symbol as typed has another reading.

    >>> [has_other_readings(text) for text in ("C2", "Cb5", "Cm7", "G°/B")]
    [True, True, False, True]
    """
    return bool(_of_symbol(symbol))


def _of_symbol(text: str) -> str:
    """The remark on a chord symbol; empty where it can be read in one way only."""
    upper, slash, lower = text.partition("/")
    if slash and not lower.startswith("/") and parse_chord(text).quality.layers is not None:
        return f"{text} is read as {upper} over the chord {lower}; with two slashes it says so: {upper}//{lower}"
    symbol = text.partition("/")[0]
    tail = symbol[1:].lstrip("#b♯♭𝄪𝄫")
    root = symbol[: len(symbol) - len(tail)]
    if symbol.startswith(_RARE_ROOTS) and tail[:1] in ("5", "9", "1"):
        kind = "a power chord" if tail == "5" else "a chord"
        return f"{text} is read as {kind} on {root}; an altered tone is put in brackets: {root[0]}({symbol[1:]})"
    reading = _OF_TAILS.get(plain_digits(tail))
    return f"{text} is read as {reading.format(root)}" if reading else ""


def remarks_on(chart: Chart, key: Key, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
    """Sentences on the forms of a chart that could be read otherwise, each once.

    >>> from nearhand.notation.chart import read_chart
    >>> from nearhand.notation.keys import parse_key
    >>> remarks_on(read_chart("| 1 | 6 |"), parse_key("C"))
    ('6 is read as a major chord; the minor chord is written 6-',)
    """
    found = []
    for token in dict.fromkeys(token._replace(start=0, shares=1) for token in chart.tokens):
        if token.kind == "number":
            found += [_bare_number(chart, token, key, conventions), _lowered_further(token, key, conventions)]
        elif token.kind == "numeral":
            found += [_applied_or_bass(token), _over_third(token), _lowered_further(token, key, conventions)]
        elif token.kind == "chord":
            found.append(_of_symbol(without_brackets(token.text)))
        if is_optional(token.text):
            found.append(f"{token.text} may be left out: its brackets are kept")
    return tuple(remark for remark in found if remark)


def _bare_number(chart: Chart, token: Token, key: Key, conventions: Conventions) -> str:
    """A bare digit is a major chord; where the scale has another chord, say so."""
    number = without_brackets(token.text)
    if number not in map(str, NUMERALS.values()):
        return ""
    chord = read_token(chart, token, key, conventions)
    degrees = key.mode.degrees
    if chord is None or chord.root not in degrees or set(chord.places) <= set(degrees):
        return ""
    if chord.root + 1 in degrees:
        if key.mode.is_minor and chord.root == 1:  # the major dominant is at home in minor
            return ""
        return f"{number} is read as a major chord; the minor chord is written {number}-"
    return f"{number} is read as a major chord; the diminished chord is written {number}°"


def _over_third(token: Token) -> str:
    """V/3 stands over the third degree; the chord over its own third has a figure."""
    left, slash, right = without_brackets(token.text).rpartition("/")
    if not slash or right != "3" or left.upper() not in NUMERALS or left.upper() == "I":
        return ""
    return f"{token.text} is read as {left} over the 3rd degree; over its own 3rd it is written {left}6 or {left}/3rd"


def _lowered_further(token: Token, key: Key, conventions: Conventions) -> str:
    """A flat before a degree that the mode has lowered already (bIII in minor) lowers it once more, as in RomanText."""
    bare = without_brackets(token.text).lstrip("b♭")
    accidentals = len(without_brackets(token.text)) - len(bare)
    name = next(
        (name for name in ("VII", "III", "VI", "II", "IV", "V", "I") if bare.upper().startswith(name)), bare[:1]
    )
    number = NUMERALS.get(name) or (int(name) if name in "1234567" and name else 0)
    if accidentals != 1 or not number or conventions.degrees != "mode" or has_two_forms(number, key.mode):
        return ""
    own = key.mode.degrees[number - 1]
    if own >= MAJOR.degrees[number - 1]:
        return ""
    numeral = bare[: len(name)]
    return (
        f"{token.text} lowers {key.mode.name}'s own degree once more; the chord on that degree is written {numeral} "
        "(degrees major counts flats against the major scale)"
    )


def _applied_or_bass(token: Token) -> str:
    """A numeral over a numeral is an applied chord; where it is none of the usual ones, name the other reading."""
    left, slash, right = token.text.partition("/")
    if not slash or not starts_numeral(right) or right.upper() not in NUMERALS or left[:1] in "Vv" or left[:2] == "ii":
        return ""
    number = NUMERALS[right.upper()]
    return (
        f"{token.text} is read as {left} of {right}; "
        f"the chord {left} over the {ORDINALS[number - 1]} degree is written {left}/{number}"
    )
