"""What the tests of harmony share: keys and chords from short names, analysed lines, and strategies."""

from __future__ import annotations

from pathlib import Path

from hypothesis import strategies as st

from nearhand.harmony.analysis import analyse
from nearhand.notation.chart import resolve
from nearhand.notation.chart_files import read_chart_file
from nearhand.notation.chord_symbols import parse_chord, write_chord
from nearhand.notation.chord_tails import read_tail
from nearhand.notation.conventions import PLAIN
from nearhand.theory.chord import RelativeChord, relative_to
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR, MODES
from nearhand.theory.pitch_class import PitchClass
from nearhand.theory.progression import Bar, Progression, Slot

LETTER_PLACES = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}
CHARTS = sorted((Path(__file__).parents[2] / "progressions").glob("*.toml"))


def note(name):
    """A pitch class from a plain name such as ``F##``, read here and not by the code under test."""
    return PitchClass(LETTER_PLACES[name[0]] + 7 * (name.count("#") - name.count("b")))


def notes(names):
    """Pitch classes from names with blanks between."""
    return tuple(note(name) for name in names.split())


def key(name):
    """``Eb`` is E flat major, ``eb`` E flat minor, ``D dorian`` a mode by its name."""
    tonic, _, mode = name.partition(" ")
    plain = MINOR if name[0].islower() else MAJOR
    return Key(note(tonic[0].upper() + tonic[1:]), MODES[mode] if mode else plain)


def chords(text):
    """Chord symbols with blanks between, as chords."""
    return tuple(parse_chord(symbol) for symbol in text.split())


def key_free(text, home):
    """Chord symbols with blanks between, as chords counted from the tonic of a key."""
    return tuple(relative_to(chord, home) for chord in chords(text))


def analysed(text, home):
    """The analyses of chord symbols in a key."""
    return analyse(key_free(text, home), home.mode)


def numerals(text, home):
    """The numerals of chord symbols in a key, with blanks between."""
    return " ".join(analysis.numeral() for analysis in analysed(text, home))


def in_twelve_keys(text, home):
    """Chord symbols of a key, moved to twelve keys and written and read anew there: pairs of key and chords."""
    lowest = -3 if home.mode.has_minor_third else -6  # E flat minor to G sharp minor, G flat major to B major
    for fifths in range(lowest, lowest + 12):
        new = Key(PitchClass(fifths), home.mode)
        symbols = [write_chord(chord.in_key(new), PLAIN) for chord in key_free(text, home)]
        yield new, tuple(relative_to(parse_chord(symbol), new) for symbol in symbols)


def signs(text):
    """A table's ``b`` and ``#`` as the signs that are written by default."""
    return text.replace("b", "♭").replace("#", "♯")


def in_bars(relative_chords, home):
    """A progression with one chord in each bar."""
    return Progression(home, tuple(Bar((Slot(chord, 4),)) for chord in relative_chords))


def demo(path):
    """A demo chart as a progression in its own key."""
    chart_file = read_chart_file(path.read_text(encoding="utf-8"), path.name)
    bars = [bar for section in chart_file.sections for bar in resolve(section.chart, chart_file.key).bars]
    return Progression(chart_file.key, tuple(bars))


WORDS = (
    "|m|dim|aug|sus2|sus4|5|6|m6|6/9|m6/9|7|maj7|m7|m7b5|dim7|m(maj7)|maj7#5|7#5|7b5|7sus4|add9|m(add9)|9|maj9|m9|"
    "7b9|7#9|9sus4|7#11|maj7#11|11|m11|13|maj13|m13|13b9|7(b9,b13)|9#5|m9b5|6add9|7(no3)|7(no5)"
)
TAILS = WORDS.split("|")
qualities = st.sampled_from([read_tail(tail) for tail in TAILS])
common_qualities = st.sampled_from([read_tail(tail) for tail in ("", "m", "dim", "7", "m7", "maj7", "m7b5", "dim7")])
modes = st.sampled_from(list(MODES.values()))
keys = st.builds(Key, st.integers(-6, 6).map(PitchClass), modes)


@st.composite
def relative_chords(draw, qualities=qualities):
    """Any chord near its tonic, its bass a chord tone or any degree."""
    root, kind = draw(st.integers(-6, 8)), draw(qualities)
    tones = [root + interval for interval in kind.intervals]
    return RelativeChord(root, kind, draw(st.just(root) | st.sampled_from(tones) | st.integers(-6, 8)))


@st.composite
def falling_fifths(draw):
    """Common chords whose roots fall by fifths, as applied chords and what prepares them do."""
    start, kinds = draw(st.integers(0, 7)), draw(st.lists(common_qualities, min_size=2, max_size=5))
    return [RelativeChord(start - place, kind, start - place) for place, kind in enumerate(kinds)]


lines_of_chords = st.lists(relative_chords(), min_size=1, max_size=6) | falling_fifths()


def decorates(melody, at):
    """Whether a note goes from one note to another by half steps, or back to the one a half step above it."""
    if not 0 < at < len(melody) - 1:
        return False
    before, after = ((melody[each].fifths - melody[at].fifths) for each in (at - 1, at + 1))
    return {abs(before), abs(after)} <= {5, 7} and (before != after or before == -5)
