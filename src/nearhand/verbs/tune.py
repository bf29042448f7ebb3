"""A tune: chords, a melody or both, with how the key was found, and what a chart file says about it."""

from __future__ import annotations

from nearhand.harmony.analysis import Analysis, analyse
from nearhand.notation.chart import Chart, read_chart, resolve
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.theory.key import C_MAJOR, Key
from nearhand.theory.melody import NEAREST, Melody
from nearhand.theory.progression import Progression
from nearhand.theory.record import NamedTuple

GIVEN, INFERRED = "given", "inferred"
_NO_KEY_HINT = 'put the key in front, as in "E minor: i iv V7", or add --key "E minor" (in the shell: key E minor)'


class Tune(NamedTuple):
    """A progression and its story. ``runner_up`` is the second likeliest key when the key was inferred.

    ``melody`` is the tune's melody in the same key, None where it has none; its bars are those of the progression,
    with a pickup before them where it has one. A melody without chords has a progression without bars.
    """

    progression: Progression
    key_source: str = GIVEN
    runner_up: Key | None = None
    title: str = ""
    tempo_bpm: int | None = None
    notes: str = ""
    remarks: tuple[str, ...] = ()
    melody: Melody | None = None
    melody_remarks: tuple[str, ...] = ()

    @property
    def all_remarks(self) -> tuple[str, ...]:
        """What could be read otherwise, in its chords and in its melody."""
        return self.remarks + self.melody_remarks

    @property
    def key(self) -> Key:
        """The key the tune stands in."""
        return self.progression.key

    @property
    def bar_count(self) -> int:
        """How many bars it has: those of its chords, or of its melody where it has none; a pickup is no bar."""
        if self.progression.bars or self.melody is None:
            return len(self.progression.bars)
        return len(self.melody.bars) - self.melody.has_pickup

    def in_key(self, key: Key, way: str = NEAREST, octaves: int = 0) -> Tune:
        """The same tune in another key of its mode; its melody goes there by the ``way``, and some octaves on.

        Raises ValueError for a key of another mode: a tune in minor does not become one in major by being moved; and
        where a note of the melody would lie outside the MIDI numbers.
        """
        if key.mode.degrees != self.key.mode.degrees:
            raise ValueError(f"a tune in {self.key} can only move to a key in {self.key.mode.name} (got {key})")
        melody = self.melody and self.melody.in_key(key, way, octaves)
        return self._replace(progression=self.progression.in_key(key), melody=melody)

    def read_in(self, key: Key) -> Tune:
        """The same chords read in another key: their names stay, their numerals change.

        >>> from nearhand.notation.keys import parse_key
        >>> tune_from_text("| Am | E7 |").read_in(parse_key("C")).numerals()
        ('vi', 'V7/vi')
        """
        old = self.progression
        shift = old.key.tonic.fifths - key.tonic.fifths
        bars = tuple(
            bar._replace(slots=tuple(slot._replace(chord=slot.chord and slot.chord.above(shift)) for slot in bar.slots))
            for bar in old.bars
        )
        return self._replace(
            progression=Progression(key, bars),
            key_source=GIVEN,
            runner_up=None,
            melody=self.melody and self.melody.read_in(key),
            melody_remarks=(),
        )

    def analyses(self) -> tuple[Analysis, ...]:
        """What each chord is in the key, rests left out."""
        return analyse(self.progression.relative_chords, self.key.mode)

    def symbols(self, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
        """The chord symbols in order, rests left out."""
        return tuple(write_chord(chord, conventions) for chord in self.progression.chords())

    def numerals(self, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
        """The Roman numerals in order, rests left out.

        >>> tune_from_text("| Em | Bm/D | Am/C | B7 |").numerals()
        ('i', 'v6', 'iv6', 'V7')
        """
        return tuple(analysis.numeral(conventions) for analysis in self.analyses())

    def numbers(self, conventions: Conventions = DEFAULT) -> tuple[str, ...]:
        """The chords in numbers, in order, rests left out."""
        return tuple(analysis.number(conventions) for analysis in self.analyses())


def tune_from_text(
    text: str, key: Key | None = None, conventions: Conventions = DEFAULT, known: Key | None = None
) -> Tune:
    """Read a chart. Without a key in front or in ``key`` it is inferred from the chord symbols.

    Numerals and numbers, from which none can be inferred, are read in the ``known`` key. Raises InputError; also when
    numerals or numbers stand there and no key is known.

    >>> tune = tune_from_text("| Am | Dm | E7 | Am |")
    >>> str(tune.key), tune.key_source
    ('A minor', 'inferred')
    """
    chart = read_chart(text)
    if key is None and chart.key is None and chart.keyless:
        key = known
    return tune_from_charts([chart], key, conventions)


def tune_from_charts(charts: list[Chart], key: Key | None = None, conventions: Conventions = DEFAULT) -> Tune:
    """Read charts that follow one another, in one key.

    Raises InputError, placed in the text of the chart at fault.
    """
    named = key or next((chart.key for chart in charts if chart.key), None)
    second, turns = None, ""
    if named is None:
        named, second, turns = _inferred(charts, conventions)
    bars = [bar for chart in charts for bar in resolve(chart, named, conventions).bars]
    source = GIVEN if second is None else INFERRED
    remarks = _remarks(charts, named, conventions)
    return Tune(Progression(named, tuple(bars)), source, second, remarks=(*remarks, turns) if turns else remarks)


_PLAIN_TAILS = {"", "m", "7", "m7", "maj7", "6", "m6", "9", "m7b5", "dim", "dim7", "aug", "sus4", "7sus4", "sus2"}
"""Tails of chord symbols on which nothing is to be remarked: a short cut for most charts."""


def _remarks(charts: list[Chart], key: Key, conventions: Conventions) -> tuple[str, ...]:
    """What could be read otherwise; most charts in chord symbols hold nothing of that kind."""
    symbols = [token.text for chart in charts for token in chart.tokens if token.kind == "chord"]
    tails = {symbol.partition("/")[0].lstrip("ABCDEFG#b♯♭") for symbol in symbols}
    if all(chart.keyless is None for chart in charts) and tails <= _PLAIN_TAILS:
        return ()
    from nearhand.notation.remarks import remarks_on

    return tuple(dict.fromkeys(remark for chart in charts for remark in remarks_on(chart, key, conventions)))


def _inferred(charts: list[Chart], conventions: Conventions) -> tuple[Key, Key, str]:
    """The likeliest key of charts in chord symbols, the runner-up, and where the key turns (empty where it does not).

    A tune that turns is named by the key it opens in.
    """
    for chart in charts:
        if token := chart.keyless:
            what = f"{token.text[:24]} needs a key to be read in"
            end = token.start + len(token.text)
            raise InputError(what, chart.text, token.start, end, wanted="a key", hint=_NO_KEY_HINT)
    progression = Progression(C_MAJOR, tuple(bar for chart in charts for bar in resolve(chart, C_MAJOR).bars))
    if not progression.relative_chords:
        raise InputError(
            "there are no chords here to find a key from", charts[0].text, 0, wanted="chords", hint=_NO_KEY_HINT
        )
    from nearhand.harmony.key_finding import keys_of, runner_up

    fits = keys_of(progression)
    best, second = fits[0].key, runner_up(fits).key
    if not _LONG_ENOUGH_TO_TURN <= len(progression.relative_chords) <= _TOO_LONG_TO_ASK:
        return best, second, ""
    from nearhand.harmony.modulation import regions_of

    first, *others = regions_of(progression)
    if not others or first.last_chord - first.first_chord < _SETTLED:
        return best, second, ""
    from nearhand.notation.keys import key_name

    home, new = (key_name(key, conventions) for key in (first.key, others[0].key))
    turns = f"From bar {others[0].first_bar} the music turns to {new}; the numerals stay in {home} (keys tells more)."
    return first.key, second if first.key == best else best, turns


_LONG_ENOUGH_TO_TURN, _TOO_LONG_TO_ASK, _SETTLED = 8, 1000, 3
"""A progression is asked for changes of key with so many chords, at least and at most; so many steps within its first
key make that one home."""
