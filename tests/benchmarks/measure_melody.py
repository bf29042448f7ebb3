"""A thousand notes read, moved to twelve keys and named, beside music21's transposition of the same stream.

Run it as ``python tests/benchmarks/measure_melody.py``; it prints medians, and how many times as long music21 takes.
"""

from __future__ import annotations

import statistics
import time
from collections.abc import Callable

BARS = ("5_ 1 2 [3 4]", "5 - #4 5", "[6 7 1'] b7 6 r", "{2}1(tr) [3 5:2] 4 -", "b3 2 [7_ 1] 2")
NOTES = 1000
KEYS = ("C", "F", "Bb", "Eb", "Ab", "Db", "Gb", "B", "E", "A", "D", "G")


def text_of_notes(count: int) -> str:
    """A melody of at least so many notes, in degrees and bars."""
    from nearhand.notation.melody_reading import read_melody

    bars: list[str] = []
    while sum(sign.kind == "note" for sign in read_melody(" | ".join(bars) or "r").signs) < count:
        bars += BARS * 10
    return "C: " + " | ".join(bars)


def median_ms(work: Callable[[], object], runs: int) -> float:
    """Median time of a call in milliseconds, caches warm."""
    work()
    times = []
    for _ in range(runs):
        start = time.perf_counter()
        work()
        times.append(time.perf_counter() - start)
    return 1000 * statistics.median(times)


def measure_moving() -> None:
    """Reading, moving and naming a thousand notes in twelve keys, and each part of it."""
    from music21 import interval, note, pitch, stream

    from nearhand.notation.keys import parse_key
    from nearhand.notation.melody_reading import parse_melody
    from nearhand.notation.melody_writing import write_as_notes, write_melody

    text, keys = text_of_notes(NOTES), [parse_key(name) for name in KEYS]
    melody = parse_melody(text)
    heard = melody.sounding()
    theirs = stream.Stream()
    for each in heard:
        theirs.append(note.Note(str(each.pitch).replace("b", "-"), quarterLength=float(each.beats)))
    tonics = [melody.in_key(key).tonic for key in keys]
    first, *others = (pitch.Pitch(str(tonic).replace("b", "-")) for tonic in tonics)
    ways = [interval.Interval(first, other) for other in (first, *others)]

    def whole() -> object:
        read = parse_melody(text)
        return [read.in_key(key).pitches() for key in keys]

    ours = median_ms(lambda: [melody.in_key(key).pitches() for key in keys], runs=15)
    peer = median_ms(lambda: [theirs.transpose(way) for way in ways], runs=3)
    print(f"{len(heard)} notes in {len(keys)} keys")
    print(f"read, moved, named    {median_ms(whole, runs=15):8.2f} ms")
    print(f"read                  {median_ms(lambda: parse_melody(text), runs=15):8.2f} ms")
    print(f"moved and named       {ours:8.2f} ms   music21 {peer:8.0f} ms ({peer / ours:.0f} x)")
    print(f"heard (held as one)   {median_ms(melody.sounding, runs=15):8.2f} ms")
    print(f"written as notes      {median_ms(lambda: write_melody(melody, write_as_notes(melody.tonic)), 15):8.2f} ms")


if __name__ == "__main__":
    measure_moving()
