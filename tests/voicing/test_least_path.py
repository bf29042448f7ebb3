"""The cheapest path, against every path there is."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from voicing_examples import best_path, close_positions, least_motion, least_path, path_cost, progressions

from nearhand.voicing.hands import RIGHT_HAND, Register
from nearhand.voicing.motion import motion_size
from nearhand.voicing.reduction import right_hand_intervals

MOST_PATHS = 4000
NARROW = Register(58, 72, 65)
CENTRES = st.sampled_from([60, 65, 66, 70])


def layers_of(progression, register):
    return tuple(
        close_positions(
            tuple(
                chord.root.up(place).semitones
                for place in right_hand_intervals(chord.quality, 4, chord.bass == chord.root)
            ),
            register,
        )
        for chord in progression.chords()
    )


def count_of_paths(layers):
    count = 1
    for layer in layers:
        count *= len(layer)
    return count


close_layers = (
    (
        progressions(most=6).map(lambda each: layers_of(each, NARROW))
        | progressions(most=4).map(lambda each: layers_of(each, RIGHT_HAND))
    )
    .filter(all)
    .filter(lambda layers: count_of_paths(layers) <= MOST_PATHS)
)
notes = st.lists(st.integers(60, 66), min_size=1, max_size=3, unique=True).map(sorted).map(tuple)
any_layers = st.lists(st.lists(notes, min_size=1, max_size=4, unique=True).map(tuple), min_size=1, max_size=5)


@settings(max_examples=60)
@given(close_layers, CENTRES, st.booleans())
def test_the_path_through_close_positions_is_the_cheapest_of_all(layers, centre, loop):
    found, best = least_path(layers, motion_size, centre, loop), best_path(layers, centre, loop)

    assert path_cost(layers, found, centre, loop)[0] == path_cost(layers, best, centre, loop)[0]


@settings(max_examples=60)
@given(close_layers, CENTRES, st.booleans())
def test_of_paths_that_move_as_little_the_one_nearest_the_centre_is_taken(layers, centre, loop):
    found, best = least_path(layers, motion_size, centre, loop), best_path(layers, centre, loop)

    assert path_cost(layers, found, centre, loop)[:2] == path_cost(layers, best, centre, loop)[:2]


@given(any_layers, CENTRES)
def test_if_that_is_equal_too_the_last_chord_comes_first_in_its_layer_then_the_one_before(layers, centre):
    assert least_path(layers, motion_size, centre) == best_path(layers, centre, loop=False)


@given(any_layers, CENTRES)
@example([((60, 64), (61, 63)), ((60, 64), (61, 63))], 62)
def test_the_same_holds_for_a_loop(layers, centre):
    assert least_path(layers, motion_size, centre, loop=True) == best_path(layers, centre, loop=True)


def unlike(before, after):
    """A cost that asks for neighbours of different bottom notes."""
    return int(before[0] == after[0])


def test_among_equal_loops_the_last_chord_decides_before_the_first():
    # Only two paths cost nothing: 0 then 1, and 1 then 0. By the rule the last chord takes its first place.
    layers = [((60, 64), (61, 63)), ((60, 64), (61, 63))]

    assert best_path(layers, 62, loop=True, cost=unlike) == (1, 0)
    assert least_path(layers, unlike, 62, loop=True) == (1, 0)
    assert least_path(layers, unlike, 62) == (1, 0)


@settings(max_examples=60)
@given(progressions(most=12), st.booleans())
def test_going_to_the_nearest_chord_each_time_is_never_better(progression, loop):
    layers = layers_of(progression, RIGHT_HAND)
    exact = least_path(layers, motion_size, RIGHT_HAND.centre, loop)
    cost = path_cost(layers, exact, RIGHT_HAND.centre, loop)[0]
    for start in layers[0]:
        taken = [start]
        for layer in layers[1:]:
            taken.append(min(layer, key=lambda position: least_motion(taken[-1], position)))
        steps = [*pairwise(taken), *([(taken[-1], taken[0])] if loop else [])]
        assert cost <= sum(least_motion(*step) for step in steps)


@settings(max_examples=40)
@given(progressions(most=10))
def test_closing_the_loop_never_shortens_the_way_there(progression):
    layers = layers_of(progression, RIGHT_HAND)
    opened, closed = (
        path_cost(layers, least_path(layers, motion_size, 65, loop), 65, False)[0] for loop in (False, True)
    )

    assert opened <= closed


@given(any_layers, CENTRES, st.booleans())
def test_the_path_takes_one_candidate_of_each_layer(layers, centre, loop):
    found = least_path(layers, motion_size, centre, loop)

    assert len(found) == len(layers)
    assert all(0 <= place < len(layer) for place, layer in zip(found, layers, strict=True))


def test_the_nearest_step_can_lead_the_long_way_round():
    # 60 to 59 is one semitone and 60 to 62 two, but from there 65 is nearer.
    layers = [((60,),), ((59,), (62,)), ((65,),), ((65,),)]
    best = least_path(layers, motion_size, 60)

    assert best == (0, 1, 0, 0)
    assert path_cost(layers, best, 60, False)[0] == 5
    assert path_cost(layers, (0, 0, 0, 0), 60, False)[0] == 7


@pytest.mark.parametrize("loop", [False, True])
def test_no_layers_have_no_path_and_one_layer_takes_what_is_nearest_the_centre(loop):
    assert least_path([], motion_size, 65, loop) == ()
    assert least_path([((55, 59), (60, 64), (67, 71))], motion_size, 62, loop) == (1,)
    assert least_path([((60, 62), (64, 66))], motion_size, 63, loop) == (0,)  # as near: the first


def test_movement_outweighs_any_drift():
    far = tuple([((60,), (127,)), ((0,), (127,))] * 200)

    assert least_path(far, motion_size, 0) == (1, 1) * 200
