"""Every analysis in RomanText that music21's package ships: its figures are read, and are the same pitches.

The package (music21 10.5.1) holds analyses of chorales by J. S. Bach and of madrigals by C. Monteverdi, made by several
analysts, and short analyses for its own tests. Its converter takes 25 seconds for all of them, for it builds scores;
its tokens alone take a twentieth of a second, so they are read here, and compared with the converter on three files.
"""

from __future__ import annotations

from collections import Counter
from functools import lru_cache

import pytest
from music21 import converter, roman
from music21 import key as m21_key
from music21.romanText import testFiles
from romantext import FILES, tokens
from strategies import key

from nearhand.notation.conventions import DEFAULT, Conventions
from nearhand.notation.errors import InputError
from nearhand.notation.numeral_writing import write_numeral
from nearhand.notation.numerals import parse_numeral

OF_THE_SCALE = Conventions(sevenths="scale")
SHORT = {name: text for name, text in vars(testFiles).items() if isinstance(text, str) and "\nm1 " in text}

# Words in the place of a figure that are none: music21 refuses the first three as well and reads the last as v.
NO_FIGURES = {
    (":", "a"): "a colon behind the label of a variant (m48var1:)",
    (":", "G"): "the same (m50var1:)",
    ("D", "G"): "a key without its colon",
    ("1", "a"): "a slip for i",
    ("var", "a"): "the label of a variant without its number (m53var)",
}
# Figures that are not read; each stands once. music21 reads the first as VII, the second as viio7/4/3/vi, that is as
# viio43/vi, the third as viio43.
UNREAD = {
    ("VIII", "d"): "there is no eighth degree",
    ("viio/4/3/vi", "Bb"): "a slash too many, for viio4/3/vi",
    ("viiio4/3", "d"): "an i too many, for viio4/3",
}
# Figures with other pitches: music21's names from the bass up, ours.
DIFFERENT = {
    # no form of RomanText; music21 loses tones, and we read a major seventh as in a chord symbol
    ("bVII7[maj7]", "E"): ("D C# C#", "D A C# F#"),
    # the 4 of a triad: music21 leaves out the fifth, which a suspension keeps
    ("I4", "a"): ("A D", "A D E"),
    # a plus behind the figure: music21 drops it; the analyst means III+6
    ("III6+", "d"): ("A C F", "A C# F"),
}


@lru_cache(maxsize=1)
def figures() -> Counter[tuple[str, str]]:
    """How often each figure stands in each key, in all the files."""
    texts = [path.read_text(encoding="utf-8") for path in FILES]
    found = Counter(pair for text in [*texts, *SHORT.values()] for pair in tokens(text))
    return Counter({pair: count for pair, count in found.items() if pair not in NO_FIGURES})


def theirs(figure: str, name: str) -> tuple[str, ...]:
    """music21's pitches from the bass up, in its cautionary setting, which is ours."""
    cautionary = roman.Minor67Default.CAUTIONARY
    home = m21_key.Key(name[0] + name[1:].replace("b", "-"))
    chord = roman.RomanNumeral(figure, home, sixthMinor=cautionary, seventhMinor=cautionary)
    return tuple(pitch.name.replace("-", "b") for pitch in chord.pitches)


def ours(figure: str, name: str) -> tuple[str, ...]:
    """Our names, the bass first, the others in the order of the alphabet."""
    home = key(name)
    chord = parse_numeral(figure, home.mode, OF_THE_SCALE).in_key(home)
    return (str(chord.bass), *sorted(str(tone) for tone in chord.tones if tone != chord.bass))


def is_read(figure: str, name: str) -> bool:
    try:
        ours(figure, name)
    except InputError:
        return False
    return True


def test_the_package_ships_what_we_think_it_does():
    assert len(FILES) == 68
    assert len(SHORT) == 7
    assert sum(figures().values()) == 8741


def test_at_least_999_of_a_thousand_figures_are_read():
    unread = {pair: count for pair, count in figures().items() if not is_read(*pair)}

    assert unread == dict.fromkeys(UNREAD, 1)
    assert 1 - sum(unread.values()) / sum(figures().values()) >= 0.999


def test_every_figure_that_is_read_has_the_pitches_and_the_bass_that_music21_gives():
    different = {}
    for pair in figures():
        if pair not in UNREAD:
            bass, *others = theirs(*pair)
            if ours(*pair) != (bass, *sorted(set(others) - {bass})):
                different[pair] = " ".join((bass, *others)), ours(*pair)

    assert {pair: answer for pair, (answer, _) in different.items()} == {
        pair: answer for pair, (answer, _) in DIFFERENT.items()
    }
    assert {pair: " ".join(answer) for pair, (_, answer) in different.items()} == {
        pair: answer for pair, (_, answer) in DIFFERENT.items()
    }


@pytest.mark.parametrize("pair", NO_FIGURES)
def test_what_is_no_figure_is_refused(pair):
    assert not is_read(*pair)


def test_every_beginning_of_every_figure_is_read_or_refused_in_its_place():
    for figure in {figure for figure, _ in figures()}:
        for text in {figure[:end] for end in range(len(figure))} | {figure[start:] for start in range(len(figure))}:
            for home in (key("C"), key("c")):
                for conventions in (DEFAULT, OF_THE_SCALE):
                    try:
                        chord = parse_numeral(text, home.mode, conventions)
                    except InputError as error:
                        assert 0 <= error.start <= len(text)
                        assert error.start <= error.end <= len(text) + 1
                    else:
                        written = write_numeral(chord, home.mode, conventions)
                        assert parse_numeral(written, home.mode, conventions) == chord, text


# Two chorales and a madrigal, with variants, pivot chords and changes of key. The converter leaves variants out,
# repeats the bars that a line such as m8-11 = m4-7 names, and writes /o as ø.
CHECKED = ["riemenschneider011.rntxt", "riemenschneider014.rntxt", "madrigal.3.8.rntxt"]


@pytest.mark.parametrize("name", CHECKED)
def test_the_tokens_are_those_of_the_converter(name):
    (path,) = (path for path in FILES if path.name == name)
    score = converter.parse(path, format="romanText")
    found = {
        (chord.figure, chord.key.tonicPitchNameWithCase.replace("-", "b"))
        for numeral in score.recurse().getElementsByClass(roman.RomanNumeral)
        for chord in (numeral, numeral.pivotChord)
        if chord is not None
    }
    lines = path.read_text(encoding="utf-8").splitlines()
    without_variants = "\n".join(line for line in lines if "var" not in line.partition(" ")[0])

    assert found == {(figure.replace("/o", "ø"), home) for figure, home in tokens(without_variants)}
