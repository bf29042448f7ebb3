"""Tunes of chart files whose sections have melodies, over their chords or alone."""

from __future__ import annotations

from collections.abc import Sequence

from nearhand.notation.chart_files import ChartFile, Section
from nearhand.notation.conventions import Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.melody_reading import WrittenMelody, no_key_for, resolve_melody
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.melody import Melody
from nearhand.theory.progression import Bar, Meter, Progression, Slot
from nearhand.verbs.melodies import inferred_keys, joined, refuse_longer, sounds_at_the_end
from nearhand.verbs.sections import sectioned
from nearhand.verbs.tune import GIVEN, INFERRED, Tune, tune_from_charts


def tune_with_melody(chart_file: ChartFile, key: Key | None, conventions: Conventions) -> Tune:
    """The tune of a chart file with melodies; ``key`` goes before the file's own.

    A section without chords rests under its melody where others have chords. A melody may hold on what sounds at the
    end of the section before. Raises InputError, placed in the file, or in the text of the chart at fault.
    """
    sections = chart_file.sections
    charts = [section.chart for section in sections if section.chart is not None]
    named = key or chart_file.key
    tune = tune_from_charts(charts, named, conventions) if charts else _without_chords(sections, named, conventions)
    chords = sectioned(tune.progression.bars, sections)
    bars: list[Bar] = []
    melodies: list[tuple[Melody | None, Sequence[Meter]]] = []
    start, held = 0, None
    for section in sections:
        count = len(section.chart.bars) if section.chart is not None else 0
        own = chords[start : start + count]
        start += count
        try:
            melody = _melody(section, own, tune.key, conventions, held)
            _refuse_late_pickup(section, melody, is_later=bool(melodies))
        except InputError as error:
            raise chart_file.in_melody(error, section) from None
        if charts and not own and melody is not None:
            own = _resting(melody, section.name)
        melodies.append((melody, [bar.meter for bar in own]))
        held = sounds_at_the_end(*melodies[-1])
        bars += own
    return tune._replace(progression=Progression(tune.key, tuple(bars)), melody=joined(melodies))


def _without_chords(sections: Sequence[Section], named: Key | None, conventions: Conventions) -> Tune:
    """A tune without chords in the key of its melodies: the one that is named, or inferred from names of notes."""
    written = [(section.melody, section.meter) for section in sections if section.melody is not None]
    key = named or next((melody.key for melody, _ in written if melody.key is not None), None)
    if key is not None:
        return Tune(Progression(key, ()), GIVEN)
    for melody, _ in written:
        if melody.keyless is not None:
            raise no_key_for(melody, melody.keyless)
    best, second = inferred_keys(written, conventions)
    return Tune(Progression(best, ()), INFERRED, second)


def _melody(
    section: Section, bars: Sequence[Bar], key: Key, conventions: Conventions, held: Interval | None
) -> Melody | None:
    if section.melody is None:
        return None
    _refuse_other_key(section.melody, key)
    melody = resolve_melody(section.melody, key, [bar.meter for bar in bars], section.meter, conventions, held=held)
    if section.chart is not None:
        refuse_longer(melody, len(bars), section.melody)
    return melody


def _refuse_other_key(written: WrittenMelody, key: Key) -> None:
    if written.key is not None and written.key != key:
        what, hint = f"this melody is in {written.key}, and the chart is in {key}", "leave the key to the chart"
        raise InputError(what, written.text, 0, written.text.find(":"), wanted=f"a melody in {key}", hint=hint)


def _refuse_late_pickup(section: Section, melody: Melody | None, is_later: bool) -> None:
    if melody is not None and melody.has_pickup and is_later and section.melody is not None:
        what, hint = (
            "a pickup stands before the first section alone",
            "put its notes in the bar before, the last of its section",
        )
        raise InputError(what, section.melody.text, 0, wanted="a full bar", hint=hint)


def _resting(melody: Melody, name: str) -> tuple[Bar, ...]:
    """Bars without chords under a melody."""
    full = melody.bars[1:] if melody.has_pickup else melody.bars
    bars = [Bar((Slot(None, bar.meter.beats),), bar.meter) for bar in full]
    return (bars[0]._replace(section=name), *bars[1:])
