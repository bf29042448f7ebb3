"""In every family, whatever is asked for, the path that is found costs the least of all paths."""

from __future__ import annotations

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from plain_costs import (
    best_of_all,
    count_of,
    drift,
    layers_of,
    matched,
    own_amounts,
    rules_of,
    step_amounts,
    wanted,
    weighed,
    whole_cost,
)
from voicing_examples import C_MAJOR, least_motion, progressions, tune

from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.mode import MINOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.account import amounts_of, costs_of, total_of
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.costs import Makeup, Pull, alone, between
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.four_part_steps import four_part_table
from nearhand.voicing.path import least_path
from nearhand.voicing.searches import search_for
from nearhand.voicing.steps import step_table
from nearhand.voicing.task import Task
from nearhand.voicing.weights import BASS, COST, NAMES, Weights
from nearhand.voicing.wishes import Wishes

MOST_PATHS = 12000
TUNES = (
    tune("| Dm7 | G7 | Cmaj7 |"),
    tune("| C/E | Fm6 | G7b9 |"),
    tune("| Am | D7/F# | G |"),
    tune("| Fm | Dm7b5 | G7 |", Key(PitchClass(0), MINOR)),
)


def take(place, part):
    """Pins a chord to the highest of its voicings, told by some of its notes."""

    def wish(layers):
        chosen = layers[place][-1]
        notes = {"all": chosen.notes, "upper": chosen.upper, "right": chosen.right or chosen.upper}[part]
        return {"pins": ((place % len(layers), notes),)}

    return wish


def tops(*ranks):
    """A melody of the highest (-1) or lowest (0) top notes that the chords can carry, None where it is free."""

    def wish(layers):
        notes = [sorted({each.upper[-1] for each in layer}) for layer in layers]
        return {"melody": tuple(None if rank is None else own[rank] for rank, own in zip(ranks, notes, strict=False))}

    return wish


def together(*wishes):
    """Several wishes in one."""
    return lambda layers: {name: value for wish in wishes for name, value in wish(layers).items()}


def plain(**wishes):
    """Wishes that need no look at the layers."""
    return lambda layers: wishes


OPTIONS = {
    "nothing": plain(),
    "narrow": plain(low=52, high=70),
    "high": plain(low=60),
    "low": plain(high=67),
    "small hands": plain(span=10),
    "large hands": plain(span=17),
    "first pinned": take(0, "all"),
    "inner pinned": take(1, "upper"),
    "last pinned": take(-1, "right"),
    "two pinned": lambda layers: {"pins": take(0, "all")(layers)["pins"] + take(2, "all")(layers)["pins"]},
    "melody": tops(-1, -1, -1),
    "part of a melody": tops(None, 0),
    "melody and pin": together(take(-1, "all"), tops(0, None)),
    "rising": plain(top="rising"),
    "falling": plain(top="falling"),
    "still": plain(top="still"),
    "pinned and falling": together(take(1, "all"), plain(top="falling")),
    "root": plain(left="root"),
    "octave": plain(left="octave"),
    "fifth": plain(left="fifth"),
    "tenth": plain(left="tenth", span=16),
    "no left hand": plain(left="none"),
    "leaps": plain(weights=(("leap", 5), ("shift", 2))),
    "bass": plain(weights=(("bass", 3), ("common", 4))),
    "no movement": plain(weights=(("movement", 0), ("common", 1))),
    "parallels": plain(weights=(("parallels", 9), ("hidden", 7), ("overlap", 2))),
    "tendencies": plain(weights=(("tendency", 8), ("doubling", 3))),
    "augmented intervals": plain(weights=(("melody", 9),)),
    "ranges": plain(weights=(("range", 2), ("spacing", 5), ("crossing", 5))),
    "rules and root": plain(left="root", weights=(("parallels", 9), ("bass", 0)), low=55),
}


def check(task):
    """Holds the search of a task against all paths; the path, or None where there is none."""
    best = best_of_all(task)
    if best is None:
        with pytest.raises(InputError):
            search_for(task).path()
        return None
    search = search_for(task)
    path = search.path()
    makeups, pulls = rules_of(task)
    cost, bass, expected = best

    assert whole_cost(path, task.weights, task.loop, makeups, pulls) == (cost, bass)
    assert total_of(search, path) == sum(costs_of(search, path)) == cost
    if len(search.strands) == 1:
        far = sum(drift(each, task.register.centre) for each in path)
        assert path == expected
        assert least_path(search.strands[0].trellis)[0] == COST * cost + BASS * bass + far
    return path


@pytest.mark.parametrize("option", OPTIONS)
@pytest.mark.parametrize("style", FAMILIES)
def test_the_path_costs_the_least_of_all_paths(style, option):
    for number, progression in enumerate(TUNES):
        asked = OPTIONS[option](layers_of(Task(progression, Wishes(style=style))))
        check(Task(progression, Wishes(style=style, **asked), loop=number % 2 == 1))


@pytest.mark.parametrize("option", [option for option in OPTIONS if option != "nothing"])
def test_each_of_these_wishes_changes_some_path(option):
    for progression in TUNES:
        for style in FAMILIES:
            task = Task(progression, Wishes(style=style))
            path = check(task._replace(wishes=Wishes(style=style, **OPTIONS[option](layers_of(task)))))
            if path is not None and path != check(task):
                return
    pytest.fail(f"{option} changes nothing")


weights = st.dictionaries(st.sampled_from(NAMES), st.sampled_from([0, 1, 2, 7, 30]), max_size=4)


@st.composite
def tasks(draw):
    """Short progressions with any wishes, of which some cannot be met."""
    style = draw(st.sampled_from(sorted(FAMILIES)))
    progression = draw(progressions(most=3))
    own = FAMILIES[style].register
    low = draw(st.none() | st.integers(own.low - 2, own.low + 7))
    high = draw(st.none() | st.integers(own.high - 9, own.high + 2))
    wishes = Wishes(
        style=style,
        left=draw(st.sampled_from(["bass", "bass", "root", "octave", "fifth", "none"])),
        span=draw(st.integers(12, 17)),
        low=low,
        high=high,
        top=draw(st.sampled_from(["free", "free", "falling", "rising", "still"])),
        weights=tuple(draw(weights).items()),
    )
    task = Task(progression, wishes, draw(st.booleans()))
    layers = layers_of(task)
    pins, melody = [], []
    for place, layer in enumerate(layers):
        chosen = draw(st.sampled_from(layer)) if layer else None
        pins += [(place, chosen.upper)] if chosen and draw(st.integers(0, 3)) == 0 else []
        melody.append(chosen.upper[-1] if chosen and draw(st.integers(0, 2)) == 0 else None)
    asked = wishes._replace(pins=tuple(pins), melody=tuple(melody) if draw(st.booleans()) else ())
    assume(count_of(wanted(layers, asked)) <= MOST_PATHS)
    return task._replace(wishes=asked)


@settings(max_examples=250)
@given(tasks())
def test_so_it_does_whatever_the_chords_and_the_wishes(task):
    check(task)


@st.composite
def candidates(draw, size=None, bass=None):
    """A bass, or none, below some upper notes; the lowest of them may be the bass itself."""
    count = size or draw(st.integers(1, 5))
    upper = tuple(sorted(draw(st.sets(st.integers(50, 74), min_size=count, max_size=count))))
    has_bass = draw(st.booleans()) if bass is None else bass
    return Candidate((draw(st.integers(36, upper[0])),) if has_bass else (), upper)


pulls = st.builds(
    Pull,
    st.integers(0, 11),
    st.lists(st.integers(0, 11), max_size=2).map(tuple),
    st.booleans(),
    st.lists(st.integers(-7, 7), max_size=3, unique=True).map(tuple),
)
some_pulls = st.lists(pulls, max_size=3).map(tuple)
any_weights = st.builds(Weights, **dict.fromkeys(Weights._fields, st.integers(0, 40)))
makeups = st.builds(
    Makeup,
    st.dictionaries(st.integers(0, 11), st.integers(1, 3), max_size=4).map(lambda prices: tuple(prices.items())),
    st.lists(st.integers(0, 11), max_size=2, unique=True).map(tuple),
)


@settings(max_examples=150)
@given(candidates(), candidates(), some_pulls)
def test_the_named_costs_of_a_step_are_what_their_sentences_say(before, after, of_chord):
    amounts, expected = between(before, after, of_chord), step_amounts(before, after, of_chord)

    assert amounts == Weights(**expected)
    assert amounts.movement == least_motion(before.upper, after.upper)


@given(candidates(), makeups)
def test_so_are_those_of_a_voicing_by_itself(candidate, makeup):
    assert alone(candidate, makeup) == Weights(**own_amounts(candidate, makeup))


def layers_with(**wanted_shape):
    return st.lists(candidates(**wanted_shape), min_size=1, max_size=4).map(tuple)


@settings(max_examples=100)
@given(layers_with(size=3, bass=True), layers_with(size=3, bass=True), any_weights, some_pulls)
def test_the_table_for_four_voices_holds_the_same_sums(before, after, each, of_chord):
    expected = tuple(
        tuple(
            COST * weighed(step_amounts(old, new, of_chord), each) + BASS * abs(new.bass[0] - old.bass[0])
            for old in before
        )
        for new in after
    )

    assert four_part_table(before, after, each, of_chord) == expected
    assert step_table(before, after, each, of_chord) == expected


@settings(max_examples=60)
@given(layers_with() | layers_with(size=4), layers_with() | layers_with(size=4), any_weights, some_pulls)
def test_so_does_the_table_for_any_others(before, after, each, of_chord):
    expected = []
    for new in after:
        amounts = [step_amounts(old, new, of_chord) for old in before]
        expected.append(tuple(COST * weighed(own, each) + BASS * own["bass"] for own in amounts))

    assert step_table(before, after, each, of_chord) == tuple(expected)


def test_where_voices_enter_or_leave_those_that_stay_are_matched_low_to_high():
    assert matched((60, 64, 67, 71), (60, 64, 69)) == ((60, 60), (64, 64), (67, 69))


def test_the_costs_of_each_chord_are_its_own_and_those_of_the_step_into_it():
    task = Task(TUNES[0], Wishes(style="four-part"), loop=True)
    search = search_for(task)
    path = search.path()
    makeups_, pulls_ = rules_of(task)
    for place, row in enumerate(amounts_of(search, path)):
        step = step_amounts(path[place - 1], path[place], pulls_[place - 1])

        assert row == Weights(**step, **own_amounts(path[place], makeups_[place]))


def test_an_empty_progression_has_an_empty_path():
    for style in FAMILIES:
        for loop in (False, True):
            assert search_for(Task(tune("| N.C. |", C_MAJOR), Wishes(style=style), loop)).path() == ()
