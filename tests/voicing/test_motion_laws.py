"""Laws of the motion between two chords, against all assignments of voices."""

from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st
from voicing_examples import ascending, least_motion

from nearhand.voicing.motion import Motion, motion, motion_size


@given(ascending(), ascending())
def test_the_size_is_the_least_over_all_assignments_of_voices(before, after):
    assert motion_size(before, after) == least_motion(before, after)
    assert motion(before, after).size == least_motion(before, after)


@given(ascending(), ascending())
def test_the_moves_tell_where_every_voice_came_from(before, after):
    moved = motion(before, after)
    came_from = [note - move for note, move in zip(after, moved.moves, strict=True) if move is not None]

    assert len(moved.moves) == len(after)
    assert sorted([*came_from, *moved.left]) == sorted(before)
    assert came_from == sorted(came_from)  # voices never cross
    assert moved.moves.count(None) == max(0, len(after) - len(before))
    assert len(moved.left) == max(0, len(before) - len(after))


@given(ascending(), ascending())
def test_a_voice_is_held_where_its_move_is_zero(before, after):
    moved = motion(before, after)

    assert moved.held == tuple(move == 0 for move in moved.moves)
    for note, held in zip(after, moved.held, strict=True):
        assert not held or note in before


@given(ascending(), ascending())
def test_there_and_back_are_as_far(before, after):
    assert motion_size(before, after) == motion_size(after, before) == motion(after, before).size


@given(st.integers(2, 4).flatmap(lambda size: st.tuples(*[ascending(size)] * 3)))
def test_a_way_round_is_never_shorter(chords):
    first, second, third = chords

    assert motion_size(first, third) <= motion_size(first, second) + motion_size(second, third)


@given(st.integers(2, 4).flatmap(lambda size: st.tuples(*[ascending(size)] * 2)))
def test_no_motion_means_the_same_notes(chords):
    before, after = chords

    assert motion_size(before, before) == 0
    assert (motion_size(before, after) == 0) == (before == after)


@given(ascending(4), st.integers(2, 3))
def test_voices_that_enter_or_leave_cost_nothing(notes, size):
    for part in combinations(notes, size):
        assert motion_size(part, notes) == motion_size(notes, part) == 0
        assert all(move in (0, None) for move in motion(part, notes).moves)


@given(ascending(), ascending(), st.integers(-12, 12))
def test_moving_both_chords_alike_changes_no_motion(before, after, by):
    moved = motion(tuple(note + by for note in before), tuple(note + by for note in after))

    assert moved.moves == motion(before, after).moves
    assert moved.left == tuple(note + by for note in motion(before, after).left)


def test_a_move_of_nothing_has_no_size():
    assert Motion((None, None), ()).size == 0
    assert Motion((0, None, -3, 2), ()).size == 5
    assert Motion((0, None, -3), ()).held == (True, False, False)
