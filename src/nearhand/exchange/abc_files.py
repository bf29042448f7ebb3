"""Reading ABC files, standard 2.1: a tune with its melody, its chords, and what is worth saying about the reading.

Repeats are kept as written, once; ornaments and grace notes stay with their notes. Words, dynamics and the rest of what
a page of music has are left out.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from nearhand.exchange.abc_bars import written_bars
from nearhand.exchange.abc_chords import chords_of
from nearhand.exchange.abc_fields import (
    SHORTHANDS,
    default_unit,
    read_meter,
    read_shorthand,
    read_tempo,
    read_title,
    read_unit,
)
from nearhand.exchange.abc_key_fields import KeyField, read_key_field
from nearhand.exchange.abc_lengths import timed
from nearhand.exchange.abc_line_ends import with_line_ends
from nearhand.exchange.abc_melody import melody_of
from nearhand.exchange.abc_pitches import PITCH, holding_of, pitched
from nearhand.exchange.abc_remarks import (
    on_the_bars,
    on_the_chords,
    on_the_file,
    on_the_key,
    on_the_notes,
    on_what_moves,
)
from nearhand.exchange.abc_signs import Sign, signs_of
from nearhand.exchange.abc_text import Field, TuneText, tune_text
from nearhand.exchange.abc_voices import first_voice
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Meter, Progression
from nearhand.theory.record import NamedTuple


class AbcTune(NamedTuple):
    """A tune of an ABC file: ``meter`` is its first one (None in free meter), ``progression`` None without chords.

    Beats of notes and chords count in units of their bar's meter. ``remarks`` are sentences for the player.
    """

    title: str
    key: Key
    meter: Meter | None
    melody: Melody
    progression: Progression | None
    tempo_bpm: int | None
    remarks: tuple[str, ...]


class _Header(NamedTuple):
    """What the fields before the music say."""

    title: str
    key: KeyField
    meter: Meter | None
    unit: Fraction
    tempo_bpm: int | None
    shorthands: dict[str, str]


def read_abc(text: str, source: str, number: int | None = None, conventions: Conventions = DEFAULT) -> AbcTune:
    """Read a tune of an ABC file, named ``source`` in errors: the first one, or the one with the ``number`` (``X:``).

    Raises InputError with the line and column in the file; where there is no such tune, or none with notes.

    >>> tune = read_abc('X:1\\nT:Two Doors\\nM:3/4\\nL:1/4\\nK:G\\nD|"G"G2 B|"D7"A F2|]', "doors.abc")
    >>> tune.title, str(tune.key), [str(note.pitch) for note in tune.melody.sounding()]
    ('Two Doors', 'G major', ['D4', 'G4', 'B4', 'A4', 'F#4'])
    >>> [str(chord.root) for chord in tune.progression.chords()]
    ['G', 'D']
    """
    tune = tune_text(text, source, number)
    header = _header(tune)
    all_signs = signs_of(tune.body)
    signs, voices = first_voice(tune.header, all_signs)
    if not any(sign.kind == "note" for sign in signs):
        last = tune.header[-1]
        raise last.refusal("this tune has no notes", len(last.value), "notes", "write them below: C D E F |")
    barred = with_line_ends(timed(signs, header.unit, header.meter), header.meter)
    sounding = pitched(barred, header.key, _holding(tune))
    written = written_bars(sounding, header.meter, header.shorthands)
    key = header.key.key
    fitted = melody_of(written.bars, key)
    chords = chords_of(written.bars, fitted.melody, key)
    remarks = (
        *on_the_file(tune, number),
        *voices,
        *on_the_key(header.key, written, fitted, conventions),
        *on_the_bars(written, fitted),
        *on_the_notes(signs, written),
        *on_what_moves(_fields_of_the_voice(tune, signs)),
        *on_the_chords(chords),
    )
    melody, progression = fitted.melody, chords.progression
    return AbcTune(header.title, key, header.meter, melody, progression, header.tempo_bpm, remarks)


def _header(tune: TuneText) -> _Header:
    """The header's fields, those before all tunes of the file first."""
    fields = {field.letter: field for field in (*tune.before, *tune.header) if field.letter in "MLQ"}
    titles = [field.value for field in tune.header if field.letter == "T"]
    titles += [field.value for field in tune.before if field.letter == "T"]
    shorthands = dict(SHORTHANDS)
    for field in (*tune.before, *tune.header):
        if field.letter == "U":
            shorthands |= read_shorthand(field.value)
    meter = read_meter(fields["M"]) if "M" in fields else None
    unit = read_unit(fields["L"]) if "L" in fields else default_unit(meter)
    tempo = read_tempo(fields["Q"].value, meter) if "Q" in fields else None
    title = read_title(titles[0]) if titles else ""
    return _Header(title, read_key_field(tune.header[-1]), meter, unit, tempo, shorthands)


def _fields_of_the_voice(tune: TuneText, signs: Sequence[Sign]) -> Iterator[Field]:
    """All fields but those of other voices: the signs hold what the header says of their own."""
    yield from (field for field in (*tune.before, *tune.header) if field.letter != "V")
    yield from (sign.field for sign in signs if sign.field is not None)


def _holding(tune: TuneText) -> str:
    """What accidentals hold for, as an instruction of the file sets it."""
    holds_for = PITCH
    for field in (*tune.before, *tune.header):
        holds_for = holding_of(field) or holds_for
    return holds_for
