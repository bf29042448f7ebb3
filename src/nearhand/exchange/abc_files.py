"""Reading ABC files, standard 2.1: a tune with its melody, its chords, and what is worth saying about the reading.

Repeats are kept as written, once; ornaments and grace notes stay with their notes. Words, dynamics and the rest of what
a page of music has are left out.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from nearhand.exchange.abc_bars import WrittenTune, written_bars
from nearhand.exchange.abc_chords import Chords, chords_of
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
from nearhand.exchange.abc_melody import Fitted, melody_of
from nearhand.exchange.abc_pitches import NOT, OCTAVE, PITCH, pitched
from nearhand.exchange.abc_signs import Sign, signs_of
from nearhand.exchange.abc_text import TuneText, tune_text
from nearhand.exchange.abc_voices import first_voice
from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.counting import listed
from nearhand.notation.keys import key_name
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Meter, Progression
from nearhand.theory.record import NamedTuple

_MOST_NAMED = 6
_HOLDS_FOR = "propagate-accidentals"


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
        *_on_the_file(tune, number),
        *voices,
        *_on_the_key(header.key, written, fitted, conventions),
        *_on_the_bars(written, fitted),
        *_on_the_notes(signs, written),
        *_on_the_chords(chords),
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


def _holding(tune: TuneText) -> str:
    """What accidentals hold for, as an instruction of the file sets it."""
    holds_for = PITCH
    for field in (*tune.before, *tune.header):
        words = field.value.split()
        if field.letter == "I" and words[:1] == [_HOLDS_FOR] and words[-1] in (PITCH, OCTAVE, NOT):
            holds_for = words[-1]
    return holds_for


def _on_the_file(tune: TuneText, number: int | None) -> list[str]:
    remarks = []
    if len(tune.numbers) > 1 and number is None:
        remarks.append(
            f"The file holds {len(tune.numbers)} tunes; this is the first. "
            "For another write its number (X:) behind the name of the file."
        )
    if not tune.is_whole:
        remarks.append("There is more music behind an empty line, which ends a tune; it is left out.")
    return remarks


def _on_the_key(key: KeyField, written: WrittenTune, fitted: Fitted, conventions: Conventions) -> list[str]:
    home = key_name(key.key, conventions)
    remarks = [] if key.is_named else [f"The file names no key; the tune is read in {home}."]
    current = key.key
    for place, field in written.key_changes:
        changed = read_key_field(field).key
        if changed != current and place < len(written.bars):
            bar = place + (not fitted.melody.has_pickup)
            new = key_name(changed, conventions)
            remarks.append(f"From bar {bar} the key is {new}; the degrees stay in {home}.")
        current = changed
    return remarks


def _on_the_bars(written: WrittenTune, fitted: Fitted) -> list[str]:
    remarks = []
    if written.has_endings:
        remarks.append("First and second endings stand one after the other, as they are written.")
    if fitted.odd_bars:
        bars = _listed([str(number) for number in fitted.odd_bars])
        if len(fitted.odd_bars) == 1:
            remarks.append(f"Bar {bars} is not as long as its meter; it keeps the length that is written.")
        else:
            remarks.append(f"Bars {bars} are not as long as their meter; they keep the lengths that are written.")
    if written.is_cut:
        remarks.append("A bar of more than 64 beats is cut into shorter ones.")
    return remarks


def _on_the_notes(signs: Sequence[Sign], written: WrittenTune) -> list[str]:
    remarks = []
    if any(len(sign.notes) > 1 for sign in signs if sign.kind == "note"):
        remarks.append("Of notes that sound together the highest is the melody's.")
    if written.has_rolls:
        remarks.append("Rolls (~) are left out: a melody has no word for them.")
    if written.unknown:
        stand = (
            "stands for nothing in this file, and is"
            if len(written.unknown) == 1
            else "stand for nothing in this file, and are"
        )
        remarks.append(f"{_listed(written.unknown)} {stand} left out.")
    return remarks


def _on_the_chords(chords: Chords) -> list[str]:
    remarks = []
    if chords.unread:
        what = "is no chord symbol and is" if len(chords.unread) == 1 else "are no chord symbols and are"
        quoted = [f'"{text[:20]}"' for text in chords.unread]
        remarks.append(f"{_listed(quoted)} {what} left out.")
    if chords.left_out:
        has = "has no time of its own and is" if len(chords.left_out) == 1 else "have no time of their own and are"
        remarks.append(f"{_listed(chords.left_out)} {has} left out.")
    return remarks


def _listed(texts: Sequence[str]) -> str:
    """Words in a row, the first few of many.

    >>> _listed(["3"]), _listed(["3", "5", "8"]), _listed([str(number) for number in range(9)])
    ('3', '3, 5 and 8', '0, 1, 2, 3, 4, 5 and 3 more')
    """
    if len(texts) > _MOST_NAMED:
        return f"{', '.join(texts[:_MOST_NAMED])} and {len(texts) - _MOST_NAMED} more"
    return listed(texts)
