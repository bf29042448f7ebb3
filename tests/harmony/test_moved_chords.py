"""Chords moved to another key, spelled as the interval demands."""

from __future__ import annotations

import pytest
from harmony_examples import in_bars, key, key_free, relative_chords
from hypothesis import given
from hypothesis import strategies as st

from nearhand.harmony.moving import distance_in_words
from nearhand.notation.chart_writing import write_chart
from nearhand.notation.keys import parse_key
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR
from nearhand.theory.pitch_class import PitchClass

# From; to; chords; the same chords there. By arithmetic on the line of fifths and by music21: every chord moves by
# the same interval, letter and accidental.
VECTORS = """
C ; Db ; C F#dim7 G7 C/E ; Db Gdim7 Ab7 Db/F
C ; B ; C F#dim7 G7 C/E ; B E#dim7 F#7 B/D#
C ; Gb ; C F#dim7 G7 C/E ; Gb Cdim7 Db7 Gb/Bb
C ; F# ; C F#dim7 G7 C/E ; F# B#dim7 C#7 F#/A#
a ; f ; Am Dm/F E7 G#dim7 ; Fm Bbm/Db C7 Edim7
a ; c# ; Am Dm/F E7 G#dim7 ; C#m F#m/A G#7 B#dim7
a ; g# ; Am Dm/F E7 G#dim7 ; G#m C#m/E D#7 F##dim7
Eb ; A ; Eb Cm7 Fm7 Bb7 ; A F#m7 Bm7 E7
G ; Ab ; G Em7 Am7 D7/F# ; Ab Fm7 Bbm7 Eb7/G
D ; Eb ; D D/F# G A7 ; Eb Eb/G Ab Bb7
E ; F ; E A B7 C#m ; F Bb C7 Dm
C ; Eb ; C E7/G# Am Ab7 ; Eb G7/B Cm Cb7
"""
ROWS = [tuple(field.strip() for field in line.split(";")) for line in VECTORS.strip().splitlines()]


def written(progression):
    return write_chart(progression).replace("|", " ").split()


@pytest.mark.parametrize(("old", "new", "before", "after"), ROWS)
def test_chords_move_by_one_interval(old, new, before, after):
    tune = in_bars(key_free(before, key(old)), key(old))

    assert written(tune) == before.split()
    assert written(tune.in_key(key(new))) == after.split()


@pytest.mark.parametrize(("old", "new", "before", "after"), ROWS)
def test_chords_move_back_by_the_same_interval(old, new, before, after):
    tune = in_bars(key_free(after, key(new)), key(new))

    assert written(tune.in_key(key(old))) == before.split()


tonics = st.integers(-7, 7).map(PitchClass)


@given(st.lists(relative_chords(), min_size=1, max_size=4), tonics, tonics, tonics)
def test_two_moves_are_one_and_the_way_back_leads_home(chords, first, second, third):
    homes = [Key(tonic, MAJOR) for tonic in (first, second, third)]
    tune = in_bars(chords, homes[0])

    assert tune.in_key(homes[1]).in_key(homes[2]) == tune.in_key(homes[2])
    assert tune.in_key(homes[1]).in_key(homes[0]) == tune


# From, to, words: the shortest way, a tritone upwards (common practice, no source). Names of intervals by distance
# on the line of fifths.
DISTANCES = """
C C the same pitch
C Db up a minor second
C B down a minor second
C D up a major second
C Bb down a major second
C Eb up a minor third
C A down a minor third
C E up a major third
C Ab down a major third
C F up a perfect fourth
C G down a perfect fourth
C F# up an augmented fourth
C Gb up a diminished fifth
C C# up a chromatic half step
C Cb down a chromatic half step
A F down a major third
A C# up a major third
A G# down a minor second
Eb A up an augmented fourth
G Ab up a minor second
D Eb up a minor second
E F up a minor second
Eb D# an enharmonic change
F# Gb an enharmonic change
Db C# an enharmonic change
B Cb an enharmonic change
Bb C# up an augmented second
C# Bb down an augmented second
"""


@pytest.mark.parametrize("line", DISTANCES.strip().splitlines())
def test_the_shortest_way_between_two_tonics_is_told_in_words(line):
    old, new, words = line.split(maxsplit=2)

    assert distance_in_words(parse_key(old), parse_key(new)) == words
    assert distance_in_words(parse_key(f"{old} minor"), parse_key(f"{new} minor")) == words


@given(tonics, tonics)
def test_the_way_back_is_the_same_interval_the_other_way_round(old, new):
    there, back = (distance_in_words(Key(a, MAJOR), Key(b, MAJOR)) for a, b in ((old, new), (new, old)))
    tritone = (new.semitones - old.semitones) % 12 == 6
    if tritone:
        assert there.startswith("up") and back.startswith("up")
    elif old.semitones == new.semitones:
        assert there == back
    else:
        assert {there.split()[0], back.split()[0]} == {"up", "down"}
        assert there.split()[1:] == back.split()[1:]
