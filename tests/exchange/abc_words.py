"""Words for the tests of ABC files: a tune around some music, its notes as one line, and its refusal."""

from __future__ import annotations

import pytest

from nearhand.exchange.abc_files import AbcTune, read_abc
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.errors import InputError

NAME = "it.abc"


def abc(body: str, meter: str = "4/4", unit: str = "1/4", key: str = "C") -> str:
    """The text of a file with one tune."""
    return f"X:1\nT:Two Doors\nM:{meter}\nL:{unit}\nK:{key}\n{body}\n"


def tune_of(body: str, meter: str = "4/4", unit: str = "1/4", key: str = "C") -> AbcTune:
    """The tune that some music is under a header."""
    return read_abc(abc(body, meter, unit, key), NAME)


def notes_of(tune: AbcTune) -> str:
    """The notes of a tune, bar by bar: lengths in beats where they are not one, ``z`` a rest, ``&`` a note held on."""
    meter, bars = None, []
    for bar in tune.melody.bars:
        sign = "" if bar.meter == meter else f"[{bar.meter}] "
        meter = bar.meter
        bars.append(sign + " ".join(_note(tune, note) for note in bar.notes))
    return " | ".join(bars)


def _note(tune, note):
    tonic = tune.melody.tonic
    name = "z" if note.interval is None else str(tonic.up(note.interval))
    graces = "".join(f"{{{tonic.up(grace)}}}" for grace in note.graces)
    length = "" if note.beats == 1 else f":{note.beats}"
    ornament = f"({note.ornament})" if note.ornament else ""
    return f"{'&' * note.is_held}{graces}{name}{ornament}{length}"


def chords_of(tune: AbcTune) -> str:
    """The chords of a tune on one line."""
    return "" if tune.progression is None else write_chart(tune.progression).replace("\n", " ")


def refusal(text: str) -> InputError:
    """The error that refuses a file's text."""
    with pytest.raises(InputError) as caught:
        read_abc(text, NAME)
    assert type(caught.value) is InputError
    return caught.value
