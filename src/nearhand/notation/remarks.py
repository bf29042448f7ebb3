"""What a player should know about how a chart was read: forms that have another reading, and how to write that."""

from __future__ import annotations

from nearhand.notation.chart import Chart, read_token
from nearhand.notation.chart_bars import Token
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.degrees import ORDINALS
from nearhand.notation.numerals import NUMERALS, starts_numeral
from nearhand.theory.key import Key


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
            found.append(_bare_number(chart, token, key, conventions))
        elif token.kind == "numeral":
            found.append(_applied_or_bass(token))
    return tuple(remark for remark in found if remark)


def _bare_number(chart: Chart, token: Token, key: Key, conventions: Conventions) -> str:
    """A bare digit is a major chord; where the scale has another chord, say so."""
    if token.text not in map(str, NUMERALS.values()):
        return ""
    chord = read_token(chart, token, key, conventions)
    degrees = key.mode.degrees
    if chord is None or chord.root not in degrees or set(chord.places) <= set(degrees):
        return ""
    if chord.root + 1 in degrees:
        if key.mode.is_minor and chord.root == 1:  # the major dominant is at home in minor
            return ""
        return f"{token.text} is read as a major chord; the minor chord is written {token.text}-"
    return f"{token.text} is read as a major chord; the diminished chord is written {token.text}°"


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
