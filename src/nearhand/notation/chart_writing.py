"""Writing a progression as the text of a chart, and as a chart file."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import PLAIN
from nearhand.notation.keys import write_key
from nearhand.theory.chord import RelativeChord
from nearhand.theory.progression import COMMON_TIME, Bar, Meter, Progression, Slot, even_beats

TYPE_CHECKING = False
if TYPE_CHECKING:
    from nearhand.theory.melody import Melody
    from nearhand.theory.progression import Beats

BARS_IN_A_LINE = 4
NO_CHORD = "N.C."


def write_chart(progression: Progression, write: Callable[[RelativeChord], str] | None = None) -> str:
    """Write bars, meters, repeats and chords (as chord symbols unless ``write`` says otherwise), four bars a line.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> tune = resolve(read_chart("|: i | V7 / / i6 :|"), parse_key("G minor"))
    >>> print(write_chart(tune))
    |: Gm | D7 / / Gm/Bb :|
    """
    key = progression.key
    written = write or (lambda chord: write_chord(chord.in_key(key), PLAIN))
    lines, meter = [], COMMON_TIME
    for start in range(0, len(progression.bars), BARS_IN_A_LINE):
        bars = progression.bars[start : start + BARS_IN_A_LINE]
        parts = [_opening(bars[0])]
        for place, bar in enumerate(bars):
            parts += [f"[{bar.meter}]"] if bar.meter != meter else []
            meter = bar.meter
            after = bars[place + 1] if place + 1 < len(bars) else None
            parts += [_bar(bar, written), _closing(bar, after)]
        lines.append(" ".join(parts))
    return "\n".join(lines)


def _opening(bar: Bar) -> str:
    return "|:" if bar.opens_repeat else "|"


def _closing(bar: Bar, after: Bar | None) -> str:
    opens = after is not None and after.opens_repeat
    return ":" * bar.closes_repeat + ("||" if bar.ends_section else "|") + ":" * opens


def _bar(bar: Bar, written: Callable[[RelativeChord], str]) -> str:
    names = [bracketed(NO_CHORD if slot.chord is None else written(slot.chord), slot) for slot in bar.slots]
    beats = tuple(slot.beats for slot in bar.slots)
    if beats == even_beats(len(beats), bar.meter):
        return " ".join(names)
    return " ".join(
        name + " /" * (shares - 1) for name, shares in zip(names, _shares(bar.slots, bar.meter), strict=True)
    )


def bracketed(name: str, slot: Slot) -> str:
    """A chord's name, in round brackets where it may be left out."""
    return f"({name})" if slot.is_optional else name


def _shares(slots: Sequence[Slot], meter: Meter) -> list[int]:
    """Whole shares in which the bar's beats can be told: the fewest that need a ``/`` to be written."""
    for total in range(len(slots) + 1, 1 + meter.beats * 64):
        shares: list[Beats] = [slot.beats * total / meter.beats for slot in slots]  # type: ignore[misc]
        if all(share == int(share) for share in shares):
            return [int(share) for share in shares]
    return [1] * len(slots)


def write_chart_file(
    progression: Progression, title: str, tempo_bpm: int | None, notes: str, melody: Melody | None = None
) -> str:
    """Write a chart file; read again it gives the same progression, and the same melody over it.

    >>> from nearhand.notation.chart import read_chart, resolve
    >>> from nearhand.notation.keys import parse_key
    >>> print(write_chart_file(resolve(read_chart("| I | V |"), parse_key("D")), "Two Doors", 90, ""))
    title = "Two Doors"
    key = "D major"
    tempo = 90
    <BLANKLINE>
    [[sections]]
    chords = \"\"\"
    | D | A |
    \"\"\"
    <BLANKLINE>
    """
    head = [f"title = {_quoted(title)}"] if title else []
    head.append(f"key = {_quoted(write_key(progression.key, plain=True))}")
    head += [f"tempo = {tempo_bpm}"] if tempo_bpm else []
    head += [f"notes = {_quoted(notes)}"] if notes else []
    parts = ["\n".join(head)]
    bars = list(melody.bars) if melody is not None else []
    for place, (name, section) in enumerate(_by_section(progression)):
        count = len(section.bars) + (place == 0 and melody is not None and melody.has_pickup)
        own = melody and melody._replace(bars=tuple(bars[: count if section.bars else None]))
        bars = bars[count:]
        parts.append("\n".join(["[[sections]]", *_fields(name, section, own)]))
    return "\n\n".join(parts) + "\n"


def _fields(name: str, section: Progression, melody: Melody | None) -> list[str]:
    """The fields of a section: its name, its chords and its melody, where it has them."""
    fields = [f"name = {_quoted(name)}"] if name else []
    fields += [f'chords = """\n{write_chart(section)}\n"""'] if section.bars else []
    if melody is not None and (not section.bars or any(note.interval is not None for note in melody.notes)):
        from nearhand.notation.melody_writing import stored

        text = stored(melody, is_alone=not section.bars)
        fields.append(f'melody = """\n{text}\n"""')
    return fields


def _by_section(progression: Progression) -> list[tuple[str, Progression]]:
    starts = [place for place, bar in enumerate(progression.bars) if bar.section or place == 0]
    if not starts:
        return [("", progression)]
    return [
        (progression.bars[start].section, progression._replace(bars=progression.bars[start:end]))
        for start, end in zip(starts, [*starts[1:], len(progression.bars)], strict=True)
    ]


def _quoted(text: str) -> str:
    """A TOML basic string."""
    escapes = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t"}
    return (
        '"'
        + "".join(
            escapes.get(character, character if character.isprintable() else f"\\U{ord(character):08x}")
            for character in text
        )
        + '"'
    )
