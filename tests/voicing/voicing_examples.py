"""What the tests of voicing share: progressions from chord symbols, exhaustive answers, and strategies."""

from __future__ import annotations

from itertools import combinations, pairwise, permutations, product
from pathlib import Path

from hypothesis import strategies as st

from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.chart_files import read_chart_file
from nearhand.notation.chord_tails import read_tail
from nearhand.theory.chord import RelativeChord
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Bar, Progression, Slot
from nearhand.voicing import path
from nearhand.voicing.candidates import turned, uppers
from nearhand.voicing.hands import SPAN

CHARTS = sorted((Path(__file__).parents[2] / "progressions").glob("*.toml"))
LETTERS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}
C_MAJOR = Key(PitchClass(0), MAJOR)


def midi(name):
    """The MIDI number of a plain name such as ``Bb3``, read here and not by the code under test."""
    letter, signs, octave = name[0], name[1:-1], int(name[-1])
    return 12 * (octave + 1) + LETTERS[letter] + signs.count("#") - signs.count("b")


def tune(text, home=C_MAJOR):
    """A chart's text as a progression."""
    return resolve(read_chart(text), home)


def demo(path):
    """A demo chart as a progression in its own key."""
    chart_file = read_chart_file(path.read_text(encoding="utf-8"), path.name)
    bars = [bar for section in chart_file.sections for bar in resolve(section.chart, chart_file.key).bars]
    return Progression(chart_file.key, tuple(bars))


def close_positions(semitones, register):
    """The placings of a close chord, as the code under test finds them."""
    tones = tuple(tone % 12 for tone in semitones)
    return tuple(notes for notes, _ in uppers(turned(tones, ("",), 0, ()), register, SPAN))


def least_path(layers, cost, centre, loop=False):
    """The path that the code under test takes through layers of notes: least cost, then least drift from a centre."""
    statics = [[abs(notes[0] + notes[-1] - 2 * centre) for notes in layer] for layer in layers]

    def steps(place):
        return [[(cost(old, new) << 40) for old in layers[place - 1]] for new in layers[place]]

    return path.least_path(path.Trellis(statics, steps, loop))[1]


def least_motion(before, after):
    """The least sum of semitones over all ways to let the voices of the smaller chord go to the larger one."""
    small, large = sorted((tuple(before), tuple(after)), key=len)
    return min(
        sum(abs(new - old) for old, new in zip(small, chosen, strict=True))
        for notes in combinations(large, len(small))
        for chosen in permutations(notes)
    )


def path_cost(layers, path, centre, loop, cost=least_motion):
    """What a path costs: movement, then drift from the centre, then the places from the last chord back."""
    taken = [layer[place] for layer, place in zip(layers, path, strict=True)]
    steps = [*pairwise(taken), *([(taken[-1], taken[0])] if loop else [])]
    drift = sum(abs(notes[0] + notes[-1] - 2 * centre) for notes in taken)
    return sum(cost(*step) for step in steps), drift, tuple(reversed(path))


def best_path(layers, centre, loop, cost=least_motion):
    """The cheapest path of all, found by trying every one."""
    paths = product(*(range(len(layer)) for layer in layers))
    return min(paths, key=lambda path: path_cost(layers, path, centre, loop, cost))


WORDS = (
    "|m|dim|aug|sus2|sus4|5|6|m6|6/9|m6/9|7|maj7|m7|m7b5|dim7|m(maj7)|maj7#5|7#5|7b5|7sus4|add9|m(add9)|9|maj9|m9|"
    "7b9|7#9|9sus4|7#11|maj7#11|11|m11|13|maj13|m13|13b9|7(b9,b13)|9#5|m9b5|6add9|7(no3)|7(no5)|13sus4"
)
TAILS = WORDS.split("|")
qualities = st.sampled_from([read_tail(tail) for tail in TAILS])
"""Chords a player reads, from power chords to thirteenths."""
triads_and_sevenths = st.sampled_from([read_tail(tail) for tail in TAILS[:4] + TAILS[11:18]])


@st.composite
def relative_chords(draw, qualities=qualities):
    """Any chord near its tonic, its bass a chord tone or any degree."""
    root, kind = draw(st.integers(-6, 8)), draw(qualities)
    tones = [root + interval for interval in kind.intervals]
    return RelativeChord(root, kind, draw(st.just(root) | st.sampled_from(tones) | st.integers(-6, 8)))


keys = st.builds(Key, st.integers(-5, 6).map(PitchClass), st.sampled_from([MAJOR, MINOR]))


@st.composite
def progressions(draw, most=6):
    """One to ``most`` chords, one in each bar, in any key."""
    chords = draw(st.lists(relative_chords(), min_size=1, max_size=most))
    return Progression(draw(keys), tuple(Bar((Slot(chord, 4),)) for chord in chords))


@st.composite
def ascending(draw, size=None):
    """Ascending MIDI numbers of one hand: two to four different notes."""
    count = size if size is not None else draw(st.integers(2, 4))
    return tuple(sorted(draw(st.sets(st.integers(50, 80), min_size=count, max_size=count))))
