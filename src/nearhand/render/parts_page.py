"""The parts of a band as a page: a line for the leader, then the chart as each instrument reads it."""

from __future__ import annotations

from nearhand.harmony.key_reasons import signature_in_words
from nearhand.melody.capo import Capo
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.chord_symbols import write_chord
from nearhand.notation.conventions import Conventions
from nearhand.notation.keys import key_name
from nearhand.render.answers import head
from nearhand.render.page import Cell, Line, Page, line, wrapped
from nearhand.theory.key import Key
from nearhand.theory.progression import Progression
from nearhand.verbs.parts import Part, PartsAnswer

_INDENT = 4
_OCTAVE = 12


def draw_parts(answer: PartsAnswer, page: Page) -> list[Line]:
    """Each instrument with the key it reads, its chart, and for frets the best capos."""
    conventions = answer.conventions
    lines = head(answer.tune, conventions, page, answer.introduces)
    lines.append(line(Cell(f"sounds in {key_name(answer.key, conventions)}", "key")))
    for part in answer.parts:
        lines += wrapped(reads_in_words(part, answer.key, conventions), page.width)
        lines += wrapped(_chart(part.written, conventions), page.width, _INDENT, "chord")
        for capo in part.capos:
            lines += wrapped(capo_in_words(capo, conventions), page.width, _INDENT)
    return lines


def reads_in_words(part: Part, key: Key, conventions: Conventions) -> str:
    """What an instrument reads, and where it sounds."""
    written = part.written.key
    text = f"{part.instrument.name}: reads {key_name(written, conventions)}, {signature_in_words(written)}"
    if part.instrument.fifths:
        return f"{text}; sounds in {key_name(key, conventions)}"
    octaves = part.instrument.semitones // _OCTAVE
    if octaves:
        return f"{text}; sounds {_octaves(abs(octaves))} {'lower' if octaves > 0 else 'higher'} than written"
    return text


def _octaves(count: int) -> str:
    return "an octave" if count == 1 else f"{count} octaves"


def capo_in_words(capo: Capo, conventions: Conventions) -> str:
    """A capo, the shapes that are played, and how many of the chords lie open.

    >>> from nearhand.melody.capo import capos
    >>> from nearhand.verbs.tune import tune_from_text
    >>> capo_in_words(capos(tune_from_text("Eb: | Eb | Ab | Bb |").progression)[0], Conventions())
    'capo 1, shapes of D major: 3 of 3 chords lie open, D G A'
    """
    names = " ".join(write_chord(chord, conventions) for chord in capo.chords)
    where = f"capo {capo.fret}" if capo.fret else "no capo"
    counted = f"{capo.open_chords} of {len(capo.chords)} chord{'s' * (len(capo.chords) != 1)}"
    lie = "lies" if capo.open_chords == 1 else "lie"
    return f"{where}, shapes of {key_name(capo.shapes, conventions)}: {counted} {lie} open, {names}"


def _chart(progression: Progression, conventions: Conventions) -> str:
    return write_chart(progression, lambda relative: write_chord(relative.in_key(progression.key), conventions))
