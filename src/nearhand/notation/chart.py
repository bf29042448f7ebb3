"""Charts: chords in bars, as text.

Bars stand between ``|``; ``||`` ends a section, ``|:`` and ``:|`` enclose a repeat, ``%`` alone repeats the bar before,
``N.C.`` is no chord, ``[3/4]`` sets the meter from its bar on. Without any bar line each chord fills a bar. Chords in a
bar share its beats in whole beats, the earlier ones taking the rest (common practice, no source); a lone ``/`` is one
more beat of the chord before it, and then every chord and every ``/`` is one equal share. Without bar lines, chords in
square brackets share a bar, as underlined numbers do on a number chart: ``1 4 [5 1] 6-``. A chord in round brackets may
be left out. ``E minor:`` in front names the key.
"""

from __future__ import annotations

from nearhand.notation.chart_bars import (
    LONGER,
    NO_CHORD_WORDS,
    Token,
    WrittenBar,
    bars_of,
    is_optional,
    without_brackets,
)
from nearhand.notation.chart_signs import Sign, signs_of
from nearhand.notation.chord_symbols import parse_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.keys import parse_key
from nearhand.notation.numbers import parse_number, starts_number
from nearhand.notation.numeral_words import starts_numeral
from nearhand.theory.chord import RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.pitch_class import LETTERS_IN_FIFTHS
from nearhand.theory.progression import COMMON_TIME, Bar, Meter, Progression, Slot, even_beats, shared_beats
from nearhand.theory.record import NamedTuple

FARTHEST_PLACE = 19
"""A chord whose root or bass lies farther than this from its tonic, in fifths, cannot sensibly be spelled."""


class Chart(NamedTuple):
    """A chart as written, before any key is known: its text, its bars, and the key named in front of them."""

    text: str
    bars: tuple[WrittenBar, ...]
    key: Key | None

    @property
    def keyless(self) -> Token | None:
        """The first token that needs a key (a numeral or a number); None when all are chord symbols."""
        return next((token for token in self.tokens if token.kind in ("numeral", "number")), None)

    @property
    def tokens(self) -> tuple[Token, ...]:
        """All tokens in written order."""
        return tuple(token for bar in self.bars for token in bar.tokens)


def read_chart(text: str, meter: Meter = COMMON_TIME) -> Chart:
    """Read the bars and tokens of a chart; the chords themselves are read by ``resolve``.

    Raises InputError.

    >>> chart = read_chart("E minor: | Em | Bm/D Am/C | B7 |")
    >>> [[token.text for token in bar.tokens] for bar in chart.bars]
    [['Em'], ['Bm/D', 'Am/C'], ['B7']]
    """
    key, offset = _key_in_front(text)
    signs = signs_of(text, offset)
    if not any(sign.kind == "word" for sign in signs):
        raise InputError(
            "there are no chords here", text, len(text), wanted="chords", hint="write for example | C | F G7 | C |"
        )
    return Chart(text, bars_of(text, _with_bars(text, signs), meter), key)


_BAR = Sign("bar", "|", 0)


def _with_bars(text: str, signs: list[Sign]) -> list[Sign]:
    """The signs with a bar line before each chord where none is written; chords in brackets share a bar."""
    split = next((sign for sign in signs if sign.kind == "split"), None)
    if any(sign.kind == "bar" for sign in signs):
        if split is None:
            return signs
        what, hint = "brackets around chords stand where there are no bar lines", "write | 5 1 | or leave out the lines"
        raise InputError(what, text, split.start, split.start + 1, wanted="a chord", hint=hint)
    found, is_split = [], False
    for sign in signs:
        if sign.kind == "split":
            is_split = sign.text == "["
            found += [_BAR] if is_split else []
        else:
            found += [sign] if is_split or sign.text == LONGER else [_BAR, sign]
    return found


def key_colon(text: str) -> int:
    """Where the colon stands that ends a key in front of a chart; -1 where none does.

    >>> key_colon("E minor: i V7"), key_colon("|: Em | B7 :|"), key_colon("Em B7")
    (7, -1, -1)
    """
    colon = text.find(":")
    return -1 if "|" in text[: colon + 2] else colon


def _key_in_front(text: str) -> tuple[Key | None, int]:
    colon = key_colon(text)
    if colon < 0:
        return None, 0
    try:
        return parse_key(text[:colon]), colon + 1
    except InputError as error:
        raise error.within(text, 0) from None


def read_token(chart: Chart, token: Token, key: Key, conventions: Conventions = DEFAULT) -> RelativeChord | None:
    """Read one token in a key; None for no chord.

    Raises InputError, placed in the chart's text.
    """
    written = without_brackets(token.text)
    try:
        if token.kind == "rest":
            return None
        if token.kind == "numeral":
            from nearhand.notation.numerals import parse_numeral  # most charts are in chord symbols

            chord = parse_numeral(written, key.mode, conventions)
        elif token.kind == "number":
            chord = parse_number(written, key.mode, conventions)
        else:
            chord = relative_to(parse_chord(written), key)
    except InputError as error:
        raise error.within(chart.text, token.start + (written != token.text)) from None
    if max(abs(chord.root), abs(chord.bass)) > FARTHEST_PLACE:
        what, hint = f"{token.text[:24]!r} lies too far from the key to be spelled", "use a name nearer to the key"
        end = token.start + len(token.text)
        raise InputError(what, chart.text, token.start, end, wanted="a chord", hint=hint)
    return chord


def resolve(chart: Chart, key: Key, conventions: Conventions = DEFAULT) -> Progression:
    """Read all tokens of a chart in a key.

    Raises InputError, placed in the chart's text.
    """
    bars = []
    for bar in chart.bars:
        chords = [read_token(chart, token, key, conventions) for token in bar.tokens]
        if bar.by_shares:
            beats = shared_beats([token.shares for token in bar.tokens], bar.meter)
        else:
            beats = even_beats(len(chords), bar.meter)
        slots = tuple(
            Slot(chord, length, is_optional(token.text))
            for chord, length, token in zip(chords, beats, bar.tokens, strict=True)
        )
        bars.append(Bar(slots, bar.meter, bar.opens_repeat, bar.closes_repeat, bar.ends_section))
    return Progression(key, tuple(bars))


def looks_like_a_chord(text: str) -> bool:
    """Whether a word's first character could begin a chord, a numeral, a number or a chart sign."""
    text = text.removeprefix("(")
    is_sign = text[:1] in tuple(LETTERS_IN_FIFTHS + "|:%[") or text.upper() in NO_CHORD_WORDS
    return is_sign or starts_numeral(text) or starts_number(text)
