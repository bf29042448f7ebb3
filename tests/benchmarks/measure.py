"""Measure what the budgets name, as ratios within one run: ``python tests/benchmarks/measure.py``.

Run it with the interpreter of an environment in which nearhand is installed (not from the source tree: an installed
copy has its byte code). music21 and mingus are the peers for reading; they are never imported by the package.
"""

from __future__ import annotations

import random
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from nearhand.theory.progression import Progression

PROGRAM = str(Path(sys.executable).with_name("nearhand"))
CHART = "| Em | Bm/D | Am/C | B7 |"
EIGHT_CHORDS = "| Em7 | Bm/D | Am/C | B7 | C | F#m7b5 | B7b9 | Em9 |"
SIXTEEN_CHORDS = "| Dm7 G7 | Cmaj7 Am7 | Fm7 Bb7 | Ebmaj7 | Am7b5 D7 | Gm7 C7 | Fmaj7 | G7sus4 G7 |"
HUNDRED_NOTES = "E4 F#4 [G4 A4] B - " * 20
SYMBOLS = ("C", "Am7", "F#m7b5", "E7", "Dmaj7", "G7", "Cm", "Fdim7", "A6", "D9")
PEER_SYMBOLS = ("C", "Am7", "F#m7b5", "E7", "Dmaj7", "G7", "Cm", "Fdim7", "A6", "D9")
NUMERALS = ("I", "ii", "iii", "IV", "V", "vi", "V7", "ii7", "I6", "V65", "viio", "V7/V")
MINGUS_NUMERALS = ("I", "II", "III", "IV", "V", "VI", "V7", "II7", "I", "V7", "VII", "V7")


def process_ms(commands: dict[str, list[str]], runs: int = 31) -> dict[str, float]:
    """Median wall time of each command, taken in turns so that a busy moment hits all of them."""
    times: dict[str, list[float]] = {name: [] for name in commands}
    for _ in range(runs):
        for name, command in commands.items():
            start = time.perf_counter()
            subprocess.run(command, stdout=subprocess.DEVNULL, stdin=subprocess.DEVNULL, check=True)
            times[name].append(time.perf_counter() - start)
    return {name: 1000 * statistics.median(values) for name, values in times.items()}


def call_us(work: Callable[[], object], runs: int = 7, repeats: int = 50) -> float:
    """Median time of a call in microseconds, caches warm."""
    work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        for _ in range(repeats):
            work()
        times.append((time.perf_counter() - start) / repeats)
    return 1e6 * statistics.median(times)


def cold_ms(work: Callable[[], object]) -> float:
    """Time of one first call in milliseconds."""
    start = time.perf_counter()
    work()
    return 1000 * (time.perf_counter() - start)


def measure_processes() -> None:
    """Whole commands against a bare interpreter and against the imports they cannot do without."""
    python = [sys.executable, "-c"]
    screen = "import os; os.isatty = lambda _: True; "
    times = process_ms(
        {
            "bare python": [*python, "pass"],
            "version": [PROGRAM, "--version"],
            "show, plain": [PROGRAM, "show", CHART, "--key", "E minor"],
            "show, plain, key inferred": [PROGRAM, "show", CHART, "--to", "C minor"],
            "show --json": [PROGRAM, "show", CHART, "--key", "E minor", "--to", "C minor", "--json"],
            "import rich": [*python, "import rich.console, rich.table"],
            "show with rich": [*python, screen + _FORCED_SCREEN],
            "import PromptSession": [*python, "from prompt_toolkit import PromptSession"],
            "first prompt": [*python, _FIRST_PROMPT],
        }
    )
    bases = {"show with rich": "import rich", "first prompt": "import PromptSession"}
    for name, milliseconds in times.items():
        base = bases.get(name, "bare python")
        print(f"{name:28s} {milliseconds:7.1f} ms   {milliseconds / times[base]:5.2f} x {base}")


_FORCED_SCREEN = f"""
import io, sys
from nearhand.cli import main
class Screen(io.TextIOWrapper):
    def isatty(self): return True
import os
os.environ["TERM"] = "xterm-256color"
os.environ["COLUMNS"] = "80"
sys.stdout = Screen(sys.stdout.buffer, encoding="utf-8")
main(["show", {CHART!r}, "--key", "E minor"])
sys.stdout.flush()
"""
_FIRST_PROMPT = """
import tempfile, os
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput
from nearhand.shell.terminal import run
with create_pipe_input() as keys:
    keys.send_bytes(b"\\x04")
    run(keys, DummyOutput(), os.path.join(tempfile.gettempdir(), "nearhand-benchmark", "history"))
"""


def measure_reading() -> None:
    """Symbols and numerals to spelled notes, against music21 and mingus on the same list."""
    from mingus.core import chords as mingus_chords
    from mingus.core import progressions as mingus_progressions
    from music21 import harmony, key, roman

    from nearhand.notation.chord_symbols import parse_chord
    from nearhand.notation.numerals import parse_numeral
    from nearhand.theory.key import Key
    from nearhand.theory.mode import MAJOR
    from nearhand.theory.pitch_class import PitchClass

    own_key, peer_key = Key(PitchClass(0), MAJOR), key.Key("C")
    rows = {
        "symbols": (
            lambda: [parse_chord(text).tones for text in SYMBOLS],
            lambda: [harmony.ChordSymbol(text).pitches for text in PEER_SYMBOLS],
            lambda: [mingus_chords.from_shorthand(text) for text in PEER_SYMBOLS],
            len(SYMBOLS),
        ),
        "numerals": (
            lambda: [parse_numeral(text, MAJOR).in_key(own_key).tones for text in NUMERALS],
            lambda: [roman.RomanNumeral(text, peer_key).pitches for text in NUMERALS],
            lambda: [mingus_progressions.to_chords(text, "C") for text in MINGUS_NUMERALS],
            len(NUMERALS),
        ),
    }
    for name, (own, music21, mingus, count) in rows.items():
        ours = call_us(own) / count
        theirs, others = call_us(music21, runs=3, repeats=2) / count, call_us(mingus) / count
        peers = f"music21 {theirs:8.1f} us ({theirs / ours:6.0f} x)   mingus {others:6.2f} us"
        print(f"{name:10s} {ours:6.2f} us each   {peers}")


def measure_typing() -> None:
    """What is worked out after every key while sixteen chords, or a melody of a hundred notes, stand on the line."""
    from nearhand.shell.completion import candidates
    from nearhand.shell.highlighting import spans_of
    from nearhand.shell.preview import preview
    from nearhand.verbs.session import Session

    line, notes, session = SIXTEEN_CHORDS, f"melody {HUNDRED_NOTES}", Session()
    for name, work in (
        ("16 chords, preview", lambda: preview(line, session)),
        ("16 chords, kinds of words", lambda: spans_of(line, session)),
        ("16 chords, likely next chords", lambda: candidates(f"{line} ", session)),
        ("100 notes, preview", lambda: preview(notes, session)),
        ("100 notes, kinds of words", lambda: spans_of(notes, session)),
    ):
        first = cold_ms(work)
        print(f"{name:30s} {first:7.2f} ms at first, then {call_us(work, repeats=5) / 1000:5.2f} ms")


def measure_search() -> None:
    """The exact path: eight chords in twelve keys cold, long progressions, and how time grows."""
    from nearhand.harmony.key_finding import rank_keys
    from nearhand.harmony.moving import all_keys
    from nearhand.notation.chart import read_chart, resolve
    from nearhand.notation.keys import parse_key
    from nearhand.voicing.voice import voice_progression

    tune = resolve(read_chart(EIGHT_CHORDS), parse_key("E minor"))
    twelve = cold_ms(lambda: [voice_progression(tune.in_key(key)) for key in all_keys(tune)])
    print(f"8 chords, 12 keys, close, cold {twelve:7.1f} ms")
    chance = random.Random(7)
    names = (
        "C",
        "Dm7",
        "Em",
        "F",
        "G7",
        "Am9",
        "B7",
        "D7",
        "E7",
        "A7",
        "Fm",
        "Bb",
        "C13",
        "F#m7b5",
        "Gm7",
        "Abmaj7",
        "Db",
    )
    text = " ".join(chance.choice(names) for _ in range(1000))
    long = resolve(read_chart(text), parse_key("C"))
    longer = long._replace(bars=long.bars * 10)
    print(f"1,000 chords, close            {cold_ms(lambda: voice_progression(long)):7.1f} ms")
    print(f"10,000 chords, close           {cold_ms(lambda: voice_progression(longer)):7.1f} ms")
    print(f"10,000 chords, close, loop     {cold_ms(lambda: voice_progression(longer, loop=True)):7.1f} ms")
    ranked = call_us(lambda: rank_keys(list(long.chords())[:64]), repeats=5) / 1000
    print(f"key of 64 chords               {ranked:7.2f} ms")
    measure_reasoning(long, chance)


def measure_reasoning(long: Progression, chance: random.Random) -> None:
    """What harmony takes on a thousand chords, and substitutes of one chord."""
    from nearhand.harmony.along import along
    from nearhand.harmony.analysis import analyse
    from nearhand.harmony.modulation import regions_of
    from nearhand.harmony.words import sentences, where_tones_go
    from nearhand.verbs.instead import offers_for

    chords, key = long.relative_chords, long.key
    print(f"1,000 chords, analysed         {cold_ms(lambda: analyse(chords, key.mode)):7.1f} ms")
    analyses = analyse(chords, key.mode)
    told = cold_ms(lambda: [(sentences(each, key), where_tones_go(each, key)) for each in analyses])
    print(f"1,000 chords, in words         {told:7.1f} ms")
    print(f"1,000 chords, cadences, turns  {cold_ms(lambda: along(long)):7.1f} ms")
    print(f"1,000 chords, where keys turn  {cold_ms(lambda: regions_of(long)):7.1f} ms")
    print(f"substitutes of one of 8 chords {cold_ms(lambda: offers_for(chords[:8], 4, key)):7.1f} ms")
    measure_melodies(chance)


def measure_melodies(chance: random.Random) -> None:
    """The key of melodies with lengths, beside music21's analysis of the same notes; and from text to answer."""
    from music21 import stream
    from music21.note import Note

    from nearhand.harmony.melody_keys import rank_keys_of_melody
    from nearhand.notation.melody_reading import parse_melody
    from nearhand.verbs.respond import respond
    from nearhand.verbs.session import Session

    for count in (64, 100):
        names = [chance.choice(["C", "D", "E", "F", "G", "A", "B", "F#", "Bb"]) for _ in range(count)]
        lengths = [chance.choice([1, 1, 2, 3]) for _ in names]
        notes = [note.pitch.pitch_class for note in parse_melody(" ".join(names)).sounding()]
        theirs = stream.Stream(
            [Note(name.replace("b", "-"), quarterLength=length) for name, length in zip(names, lengths, strict=True)]
        )
        ours = call_us(lambda notes=notes, lengths=lengths: rank_keys_of_melody(notes, lengths))
        peer = call_us(lambda theirs=theirs: theirs.analyze("key"), 3, 2)
        row = f"{ours / 1000:7.3f} ms   music21 {peer / 1000:7.2f} ms ({peer / ours:.0f} x)"
        print(f"key of {count:3d} notes               {row}")
    text = " ".join(f"{name}:{length}" for name, length in zip(names, lengths, strict=True))
    answered = call_us(lambda: respond(Session(), f'keys --melody "{text}"'), repeats=5)
    print(f"the same, read from text       {answered / 1000:7.2f} ms")


if __name__ == "__main__":
    measure_processes()
    measure_typing()
    measure_reading()
    measure_search()
