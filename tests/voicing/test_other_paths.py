"""The best paths in order, against all paths there are."""

from __future__ import annotations

from itertools import product

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from plain_costs import all_paths, layers_of, rules_of, wanted, whole_cost
from voicing_examples import tune

from nearhand.notation.errors import InputError
from nearhand.voicing.account import total_of
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.others import MOST_PATHS, least_paths, numbered_path, other_paths
from nearhand.voicing.path import NEVER, Trellis, least_path
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.voice import voice_progression
from nearhand.voicing.wishes import Wishes

CADENCE = tune("| Dm7 | G7 | Cmaj7 |")


@st.composite
def trellises(draw):
    """One to four layers of one to four choices; equal costs are common, some steps are forbidden."""
    sizes = draw(st.lists(st.integers(1, 4), min_size=1, max_size=4))
    step = st.integers(0, 3) | st.integers(0, 3) | st.just(NEVER)
    statics = [draw(st.lists(st.integers(0, 2), min_size=size, max_size=size)) for size in sizes]
    tables = [
        draw(st.lists(st.lists(step, min_size=before, max_size=before), min_size=after, max_size=after))
        for before, after in zip([sizes[-1], *sizes[:-1]], sizes, strict=True)
    ]
    return Trellis(statics, tables.__getitem__, draw(st.booleans()))


def in_order(trellis):
    """All paths that are not forbidden, cheapest first; of equals the one whose last choice, then ..., comes first."""
    found = []
    for path in product(*(range(len(own)) for own in trellis.statics)):
        cost = sum(own[choice] for own, choice in zip(trellis.statics, path, strict=True))
        for place in range(0 if trellis.loop else 1, len(path)):
            cost += trellis.steps(place)[path[place]][path[place - 1]]
        if cost < NEVER:
            found.append((cost, path))
    return sorted(found, key=lambda row: (row[0], row[1][::-1]))


ALIKE = Trellis([(0, 0), (0, 0), (0, 0)], lambda place: ((1, 1), (1, 1)), loop=True)


@settings(max_examples=300)
@given(trellises(), st.integers(1, 60))
@example(ALIKE, 3)
@example(ALIKE._replace(loop=False), 8)
def test_they_are_the_cheapest_of_all_paths_in_order(trellis, count):
    assert list(least_paths(trellis, count)) == in_order(trellis)[:count]


@given(trellises())
def test_no_two_are_alike_and_there_are_as_many_as_there_are(trellis):
    everything, found = in_order(trellis), least_paths(trellis, 5000)

    assert len(found) == len({path for _, path in found}) == len(everything)
    assert least_paths(trellis, len(everything) + 1) == found


@given(trellises(), st.integers(1, 20))
def test_more_paths_begin_with_the_fewer(trellis, count):
    assert least_paths(trellis, count) == least_paths(trellis, count + 7)[:count]


@settings(max_examples=200)
@given(trellises())
def test_the_first_is_the_least_path(trellis):
    found, (cost, path) = least_paths(trellis, 1), least_path(trellis)

    assert found == (((cost, path),) if cost < NEVER else ())


def test_no_layers_have_no_paths():
    assert least_paths(Trellis([], lambda place: ()), 3) == ()
    assert least_paths(Trellis([], lambda place: (), loop=True), 3) == ()


WISHES = {
    "nothing": Wishes(),
    "high": Wishes(low=60),
    "rising": Wishes(top="rising"),
    "weights": Wishes(weights=(("parallels", 9), ("leap", 2), ("common", 3))),
    "octave": Wishes(left="octave"),
    "melody": Wishes(melody=(None, 67)),
    "pin": Wishes(pins=((2, (60, 64, 67, 71)),)),
}


@pytest.mark.parametrize("loop", [False, True], ids=["open", "loop"])
@pytest.mark.parametrize("style", FAMILIES)
def test_in_every_family_they_are_the_cheapest_of_all_in_order(style, loop):
    for asked in WISHES.values():
        task = Task(CADENCE, asked._replace(style=style), loop, linked=True)
        layers = wanted(layers_of(task), task.wishes)
        if not all(layers):
            with pytest.raises(InputError):
                search_for(task)
            continue
        search = search_for(task)
        everything = sorted(all_paths(layers, task, *rules_of(task)))
        if not everything:
            with pytest.raises(InputError, match=r"^(the|a) top line"):
                other_paths(search, MOST_PATHS)
            continue
        paths = [tuple(layer[at] for layer, at in zip(layers, row[4], strict=True)) for row in everything[:MOST_PATHS]]
        found = other_paths(search, MOST_PATHS)

        assert found == tuple((row[0], path) for row, path in zip(everything, paths, strict=False))
        assert len({path for _, path in found}) == min(MOST_PATHS, len(everything))
        for number in {1, min(2, len(found)), len(found)}:
            assert numbered_path(search, number) == paths[number - 1]


@pytest.mark.parametrize("loop", [False, True], ids=["open", "loop"])
def test_where_the_hands_go_apart_the_right_hand_alone_differs(loop):
    search = search_for(Task(CADENCE, Wishes(), loop))
    best = search.path()
    found = other_paths(search, MOST_PATHS)
    rights = [tuple(candidate.upper for candidate in path) for _, path in found]

    assert found[0][1] == best
    assert {tuple(candidate.bass for candidate in path) for _, path in found} == {tuple(each.bass for each in best)}
    assert len(set(rights)) == len(rights) == MOST_PATHS
    assert [whole_cost(path, search.task.weights, loop)[0] for _, path in found] == [cost for cost, _ in found]


@pytest.mark.parametrize("style", FAMILIES)
def test_the_cost_of_each_is_that_of_its_account(style):
    for changed in ((), (("bass", 3),), (("spacing", 2), ("shift", 1))):
        search = search_for(Task(CADENCE, Wishes(style=style, weights=changed)))

        assert [total_of(search, path) for _, path in other_paths(search, 4)] == [
            cost for cost, _ in other_paths(search, 4)
        ]


def test_a_voicing_takes_the_path_of_the_number_that_is_wished():
    search = search_for(Task(CADENCE, Wishes()))
    for number, (_, path) in enumerate(other_paths(search, 5), start=1):
        voiced = voice_progression(CADENCE, wishes=Wishes(path=number))

        assert tuple(voicing.candidate for voicing in voiced.voicings) == path


def test_all_paths_of_a_small_register_are_counted_out():
    # Between C4 and C5 both chords lie in two ways. Semitones by hand: 0 + 1 + 2, 1 + 2 + 0, 4 + 2 + 3, 5 + 5 + 5;
    # of the equal ones the first is nearer to F#4, the middle.
    low, high = {"C": (60, 64, 67), "F": (60, 65, 69)}, {"C": (64, 67, 72), "F": (65, 69, 72)}
    found = other_paths(search_for(Task(tune("| C | F |"), Wishes(low=60, high=72))), MOST_PATHS)

    assert [(cost, tuple(each.upper for each in path)) for cost, path in found] == [
        (3, (low["C"], low["F"])),
        (3, (high["C"], high["F"])),
        (9, (high["C"], low["F"])),
        (15, (low["C"], high["F"])),
    ]


REFUSED = [
    ("| C | F |", Wishes(path=MOST_PATHS + 1), "paths are counted up to 50 (got 51)\nwrite a smaller number"),
    (
        "| C | F |",
        Wishes(path=5, low=60, high=72),
        "there are only 4 paths, so there is no path 5\nothers lists them",
    ),
    (
        "| C |",
        Wishes(path=2, low=60, high=67),
        "there is only one path, so there is no path 2\nothers lists them",
    ),
    (
        "| F | C |",
        Wishes(path=2, low=60, high=69, top="rising"),
        "the top line cannot rise all the way: nothing as high or higher is left at chord 2 (C)\n"
        "give it more room with register, or write top still",
    ),
]


@pytest.mark.parametrize(("text", "wishes", "expected"), REFUSED)
def test_a_path_that_does_not_exist_is_refused(text, wishes, expected):
    with pytest.raises(InputError) as error:
        voice_progression(tune(text), wishes=wishes)

    assert str(error.value) == expected


def test_rests_alone_have_no_second_path():
    with pytest.raises(InputError):
        voice_progression(tune("| N.C. |"), wishes=Wishes(path=2))
