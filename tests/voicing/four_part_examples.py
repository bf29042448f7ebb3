"""What the tests of four-part writing share: the search by its text, what paths cost, and all of them tried."""

from __future__ import annotations

from itertools import pairwise, product

from voicing_examples import C_MAJOR, tune

from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR, MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.costs import alone, between, total
from nearhand.voicing.voice import voice_progression
from nearhand.voicing.wishes import Wishes

C_MINOR = Key(PitchClass(0), MINOR)
HOMES = {"major": C_MAJOR, "minor": C_MINOR}
TWELVE_KEYS = {
    "major": [Key(PitchClass(place), MAJOR) for place in range(-5, 7)],
    "minor": [Key(PitchClass(place), MINOR) for place in range(-3, 9)],
}
"""D flat to F sharp major, E flat to G sharp minor."""
LETTER_PLACES = {"F": -1, "C": 0, "G": 1, "D": 2, "A": 3, "E": 4, "B": 5}


def place_of(name):
    """A plain name such as ``F#`` in fifths above C, read here and not by the code under test."""
    return LETTER_PLACES[name[0]] + 7 * (name.count("#") - name.count("b"))


def voiced(progression, loop=False, **wishes):
    """A progression in four parts: the search, the candidate of each chord, and its parts as pitches, bass first."""
    found = voice_progression(progression, Wishes("four-part", **wishes), loop)
    voicings = found.voicings
    return found.search, tuple(each.candidate for each in voicings), [each.pitches for each in voicings]


def searched(text, key=C_MAJOR, loop=False, **wishes):
    """A chart's text in four parts: the search, and the candidate of each chord."""
    search, path, _ = voiced(tune(text, key), loop, **wishes)
    return search, path


def places_in(text, key):
    """The four parts of each chord in fifths above the tonic, so that all keys are C, and as MIDI numbers."""
    tonic = key.tonic.fifths
    return [
        ([pitch.pitch_class.fifths - tonic for pitch in pitches], [pitch.midi for pitch in pitches])
        for pitches in voiced(tune(text, key))[2]
    ]


def candidate(notes):
    """A bass with three parts above it."""
    return Candidate(tuple(notes[:1]), tuple(notes[1:]))


def cost_of(search, path):
    """What voices cost that need not be among the candidates, summed from the plain counts of ``costs``."""
    (strand,), weights = search.strands, search.task.weights
    own = sum(total(alone(*each), weights) for each in zip(path, strand.makeups, strict=True))
    steps = zip(pairwise(path), strand.pulls, strict=False)
    return own + sum(total(between(*step, pulls), weights) for step, pulls in steps)


def all_costs(search, cost):
    """The cost of every path through the layers: ``cost`` tells that of a chord by its place, and that of a step."""
    (strand,) = search.strands
    own = [[cost(place, each) for each in layer] for place, layer in enumerate(strand.layers)]
    steps = [
        [[cost(place, old, new) for new in after] for old in before]
        for place, (before, after) in enumerate(pairwise(strand.layers))
    ]
    for choices in product(*(range(len(layer)) for layer in strand.layers)):
        found = sum(own[place][choice] for place, choice in enumerate(choices))
        yield found + sum(steps[place][old][new] for place, (old, new) in enumerate(pairwise(choices)))
