"""Measure voicings: every family, four parts against music21's realiser, growth and memory.

Run as ``python tests/benchmarks/measure_voicing.py`` with the interpreter of an environment in which nearhand is
installed. The realiser gets the same basses and figures and writes one of its realisations; it does not look for the
best.
"""

from __future__ import annotations

import gc
import random
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from functools import _lru_cache_wrapper
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from nearhand.theory.progression import Progression

EIGHT_CHORDS = "| Em7 | Bm/D | Am/C | B7 | C | F#m7b5 | B7b9 | Em9 |"
TEXTBOOK = "| I | IV | V | vi | ii6 | I64 | V7 | I |"
FIGURES = ("", "", "", "", "6", "6,4", "7", "")
MANY = [
    *("C", "Dm7", "Em", "F", "G7", "Am9", "B7", "D7", "E7", "A7"),
    *("Fm", "Bb", "C13", "F#m7b5", "Gm7", "Abmaj7", "Db"),
]
_IN_A_PROCESS = """
import resource, sys
sys.path[:0] = [{folder!r}]
from measure_voicing import long_progression
from nearhand.voicing.voice import voice_progression
voice_progression(long_progression({count}), {style!r})
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss // 1024)
"""


def first_call(work: Callable[[], object]) -> float:
    """Milliseconds of a call that finds all caches empty."""
    for each in gc.get_objects():
        if isinstance(each, _lru_cache_wrapper):
            each.cache_clear()
    return milliseconds(work)


def milliseconds(work: Callable[[], object]) -> float:
    """Milliseconds of one call."""
    start = time.perf_counter()
    work()
    return 1000 * (time.perf_counter() - start)


def progression_of(text: str, key: str) -> Progression:
    """A progression from a chart's text."""
    from nearhand.notation.chart import read_chart, resolve
    from nearhand.notation.keys import parse_key

    return resolve(read_chart(text), parse_key(key))


def long_progression(count: int) -> Progression:
    """Chords in a random but fixed order."""
    chance = random.Random(7)
    return progression_of(" ".join(chance.choice(MANY) for _ in range(count)), "C")


def measure_families() -> None:
    """Each family on eight chords, first call, and on a thousand."""
    from nearhand.voicing.families import FAMILIES
    from nearhand.voicing.voice import voice_progression

    short, long = progression_of(EIGHT_CHORDS, "E minor"), long_progression(1000)
    for style in FAMILIES:
        cold = first_call(lambda style=style: voice_progression(short, style))  # type: ignore[misc]
        whole = first_call(lambda style=style: voice_progression(long, style))  # type: ignore[misc]
        print(f"{style:16s} 8 chords, cold {cold:7.1f} ms   1,000 chords {whole:7.1f} ms")


def measure_keys() -> None:
    """Eight chords in twelve keys, first call."""
    from nearhand.harmony.moving import all_keys
    from nearhand.voicing.voice import voice_progression

    tune = progression_of(EIGHT_CHORDS, "E minor")
    for style in ("close", "drop2", "four-part"):
        took = first_call(lambda style=style: [voice_progression(tune.in_key(key), style) for key in all_keys(tune)])  # type: ignore[misc]
        print(f"8 chords, 12 keys, {style:12s}     {took:7.1f} ms")


def measure_growth() -> None:
    """Four parts and close position on ever longer progressions, with the peak of memory in a process of its own."""
    from nearhand.voicing.voice import voice_progression

    folder = __file__.rpartition("/")[0]
    for style in ("close", "four-part"):
        for count in (1000, 10000):
            tune = long_progression(count)
            took = first_call(lambda style=style, tune=tune: voice_progression(tune, style))  # type: ignore[misc]
            code = _IN_A_PROCESS.format(folder=folder, count=count, style=style)
            peak = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout
            print(f"{style:10s} {count:6,d} chords {took:8.1f} ms   {int(peak):4d} MB at the peak, all included")


def measure_realiser() -> None:
    """Four parts on eight chords against music21's realiser on the same basses and figures."""
    from music21.figuredBass.realizer import FiguredBassLine
    from music21.key import Key
    from music21.meter import TimeSignature
    from music21.note import Note

    from nearhand.voicing.voice import voice_progression

    tune = progression_of(TEXTBOOK, "C")
    voiced = voice_progression(tune, "four-part")
    first = statistics.median(first_call(lambda: voice_progression(tune, "four-part")) for _ in range(7))
    again = statistics.median(milliseconds(lambda: voice_progression(tune, "four-part")) for _ in range(31))

    def realise() -> None:
        line = FiguredBassLine(Key("C"), TimeSignature("4/4"))
        for pitches, figures in zip(voiced.pitches, FIGURES, strict=True):
            line.addElement(Note(str(pitches[0]).replace("b", "-")), figures)
        realised = line.realize()
        realised.generateRealizationFromPossibilityProgression(realised.getAllPossibilityProgressions()[0])

    realise()
    theirs = statistics.median(milliseconds(realise) for _ in range(7))
    for name, ours in (("first call", first), ("median of calls", again)):
        print(f"8 textbook chords, {name:16s} {ours:6.2f} ms   music21 {theirs:6.1f} ms ({theirs / ours:.0f} x)")


if __name__ == "__main__":
    measure_keys()
    measure_families()
    measure_realiser()
    measure_growth()
