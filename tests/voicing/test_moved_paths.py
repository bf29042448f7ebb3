"""A tune in other keys: voiced afresh in one register, or in one that moves; what is asked for moves along."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from plain_costs import layers_of, rules_of, wanted, whole_cost
from voicing_examples import C_MAJOR, keys, midi, progressions, tune

from nearhand.notation.errors import InputError
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR
from nearhand.theory.pitch_class import PitchClass
from nearhand.voicing.candidates import Candidate
from nearhand.voicing.families import FAMILIES
from nearhand.voicing.layers import layer_at
from nearhand.voicing.searches import search_for
from nearhand.voicing.task import Task
from nearhand.voicing.voice import voice_progression
from nearhand.voicing.wishes import Wishes

CADENCE = tune("| Dm7 | G7 | Cmaj7 |")
ALL_KEYS = [Key(PitchClass(place), MAJOR) for place in range(-6, 7)]
A_MAJOR, D_MAJOR, F_MAJOR, D_FLAT_MAJOR = (Key(PitchClass(place), MAJOR) for place in (3, 2, -1, -5))
styles = st.sampled_from(sorted(FAMILIES))
keyboard_styles = st.sampled_from(sorted({*FAMILIES} - {"four-part"}))
LOWEST = {1: 52, 2: 51, 3: 48, 4: 47, 5: 45, 6: 35, 7: 37, 8: 41, 9: 41, 10: 41, 11: 41}
"""Interval to its lowest place: a retailer's glossary, second-hand, as MIDI numbers with middle C as 60."""


def taken(voiced):
    return tuple(voicing.candidate for voicing in voiced.voicings)


def shifts(home, key):
    """Semitones from one key to the other, the nearer way first, up where both are as far."""
    up = (key.tonic.semitones - home.tonic.semitones) % 12
    return sorted([up, up - 12], key=abs) if up else [0]


def moved(path, by):
    return tuple(
        Candidate(tuple(note + by for note in bass), tuple(note + by for note in upper), reached)
        for bass, upper, reached in path
    )


def along(wishes, by):
    """Pins and melody moved by semitones."""
    return wishes._replace(
        pins=tuple((place, tuple(note + by for note in notes)) for place, notes in wishes.pins),
        melody=tuple(None if note is None else note + by for note in wishes.melody),
    )


def cost(voiced, task):
    return whole_cost(taken(voiced), task.weights, task.loop, *rules_of(task))


@settings(max_examples=80)
@given(styles, progressions(most=4), keys, st.booleans())
def test_in_the_same_register_another_key_is_voiced_as_if_it_were_the_first(style, progression, home, loop):
    try:
        fresh = voice_progression(progression, style, loop)
    except InputError:
        assume(False)

    assert taken(voice_progression(progression, style, loop, home)) == taken(fresh)


@settings(max_examples=120)
@given(keyboard_styles, progressions(most=4), keys, st.booleans(), st.sampled_from(["free", "rising", "still"]))
def test_where_registers_move_the_positions_are_those_of_the_home_key(style, progression, home, loop, top):
    # But where something would be muddy in one of the two keys. Singers' ranges, in four parts, stay where they are.
    at_home = progression.in_key(Key(home.tonic, progression.key.mode))
    wishes = Wishes(style=style, moves=True, top=top)
    by, *_ = shifts(home, progression.key)
    own, others = (layers_of(Task(each, wishes, loop, at_home.key)) for each in (progression, at_home))
    assume(own == [moved(layer, by) for layer in others])
    try:
        expected = moved(taken(voice_progression(at_home, wishes, loop, at_home.key)), by)
    except InputError:
        with pytest.raises(InputError):
            voice_progression(progression, wishes, loop, at_home.key)
        return

    assert taken(voice_progression(progression, wishes, loop, at_home.key)) == expected


def is_muddy(notes):
    return any(low < LOWEST.get(high - low, 0) for low, high in pairwise(notes))


@settings(max_examples=120)
@given(keyboard_styles, progressions(most=1), keys)
def test_where_registers_move_the_candidates_are_those_of_the_home_key_but_for_mud(style, progression, home):
    at_home = progression.in_key(Key(home.tonic, progression.key.mode))
    wishes = Wishes(style=style, moves=True)
    by, *_ = shifts(home, progression.key)
    (own, family), (others, other_family) = (
        layer_at(0, Task(each, wishes, home=at_home.key)) for each in (progression, at_home)
    )
    if family == other_family:
        here, there = set(own), set(moved(others, by))

        assert all(is_muddy([note - by for note in each.notes]) for each in here - there)
        assert all(is_muddy(each.notes) for each in there - here)


@pytest.mark.parametrize("key", ALL_KEYS, ids=lambda key: str(key.tonic))
@pytest.mark.parametrize("style", ["close", "drop2", "drop3", "guide-tones", "quartal"])
def test_a_cadence_goes_to_all_keys_in_the_same_positions_the_nearer_way(style, key):
    wishes = Wishes(style=style, moves=True)
    at_home = voice_progression(CADENCE, wishes, home=C_MAJOR)
    voiced = voice_progression(CADENCE.in_key(key), wishes, home=C_MAJOR)

    assert taken(voiced) == moved(taken(at_home), shifts(C_MAJOR, key)[0])
    assert voiced.movement == at_home.movement


def test_at_home_and_in_the_same_key_by_another_name_nothing_moves():
    wishes = Wishes(moves=True)
    flats, sharps = (CADENCE.in_key(Key(PitchClass(place), MAJOR)) for place in (-6, 6))

    assert taken(voice_progression(CADENCE, wishes, home=C_MAJOR)) == taken(voice_progression(CADENCE))
    assert taken(voice_progression(CADENCE, wishes)) == taken(voice_progression(CADENCE))
    assert taken(voice_progression(flats, wishes, home=sharps.key)) == taken(voice_progression(flats))


def test_a_register_that_is_asked_for_moves_with_the_others():
    # From C4 to G4 there is one way to play C E G; a tone higher, one to play D F# A.
    wishes = Wishes(low=midi("C4"), high=midi("G4"), moves=True)
    found = [voice_progression(tune("| I |", key), wishes, home=C_MAJOR) for key in (C_MAJOR, D_MAJOR)]

    assert [" ".join(map(str, each.voicings[0].right)) for each in found] == ["C4 E4 G4", "D4 F#4 A4"]
    with pytest.raises(InputError):
        voice_progression(tune("| I |", D_MAJOR), wishes._replace(moves=False), home=C_MAJOR)


@pytest.mark.parametrize("moves", [False, True])
def test_the_hint_of_a_register_that_is_too_narrow_can_be_followed(moves):
    wishes = Wishes(low=midi("C4"), high=midi("F4"), moves=moves)
    with pytest.raises(InputError) as error:
        voice_progression(tune("| I |", D_MAJOR), wishes, home=C_MAJOR)
    low, high = (midi(name) - 2 * moves for name in error.value.hint.split()[-2:])  # as they sound in C

    voice_progression(tune("| I |", D_MAJOR), wishes._replace(low=low, high=high), home=C_MAJOR)


@pytest.mark.parametrize("moves", [False, True])
def test_a_register_that_holds_no_voicing_at_home_refuses_no_other_key(moves):
    # Between C4 and G4 the tonic triad of C lies well, that of F does not.
    wishes = Wishes(low=midi("C4") + 5 * moves, high=midi("G4") + 5 * moves, moves=moves)
    voiced = voice_progression(tune("| I |"), wishes, home=F_MAJOR)

    assert [str(pitch) for pitch in voiced.voicings[0].right] == ["C4", "E4", "G4"]


pinned_styles = st.sampled_from(["close", "drop2", "spread", "shell", "rootless", "two-hand", "four-part"])


@settings(max_examples=120)
@given(st.data(), pinned_styles, progressions(most=3), keys, st.booleans())
def test_pins_and_melody_of_the_home_key_are_moved_along_by_one_shift_for_all(data, style, progression, home, moves):
    home = Key(home.tonic, progression.key.mode)
    task = Task(progression, Wishes(style=style, moves=moves), home=home)
    layers, own = layers_of(task._replace(progression=progression.in_key(home))), layers_of(task)
    assume(all(layers) and all(own))
    pins, melody = [], []
    for place, layer in enumerate(layers):
        chosen = data.draw(st.sampled_from(layer))
        pins += [(place, chosen.notes)] if data.draw(st.booleans()) else []
        melody.append(chosen.upper[-1] if data.draw(st.booleans()) else None)
    wishes = task.wishes._replace(pins=tuple(pins), melody=tuple(melody))
    good = [by for by in shifts(home, progression.key) if all(wanted(own, along(wishes, by)))]
    if not good:
        with pytest.raises(InputError):
            voice_progression(progression, wishes, home=home)
        return
    voiced = voice_progression(progression, wishes, home=home)
    here = along(wishes, good[0])

    for place, notes in here.pins:
        assert notes in (taken(voiced)[place].notes, taken(voiced)[place].upper, taken(voiced)[place].right)
    for candidate, note in zip(taken(voiced), here.melody, strict=True):
        assert note is None or candidate.upper[-1] == note
    if not moves:
        assert cost(voiced, task) == cost(voice_progression(progression, here), task)


def test_all_pins_move_the_same_way():
    # From C to A down a third is nearer; but below G3 the right hand does not go, and so both go up a sixth.
    low, high = (tuple(map(midi, text.split())) for text in ("G3 C4 E4", "C4 E4 G4"))
    home, wishes = tune("| C | C |"), Wishes(pins=((0, low), (1, high)))

    assert [each.upper for each in taken(voice_progression(home, wishes, home=C_MAJOR))] == [low, high]
    voiced = voice_progression(home.in_key(A_MAJOR), wishes, home=C_MAJOR)
    assert [" ".join(map(str, each.right)) for each in voiced.voicings] == ["E4 A4 C#5", "A4 C#5 E5"]
    alone = voice_progression(home.in_key(A_MAJOR), Wishes(pins=((1, high),)), home=C_MAJOR)
    assert " ".join(map(str, alone.voicings[1].right)) == "A3 C#4 E4"


def test_pins_that_lie_in_no_key_together_are_refused():
    # G3 C4 E4 can only go up to A major, C5 E5 only down.
    low, high = (tuple(map(midi, text.split())) for text in ("G3 C4 E4", "G4 C5 E5"))
    with pytest.raises(InputError) as error:
        voice_progression(tune("| I | I |", A_MAJOR), Wishes(pins=((0, low), (1, high))), home=C_MAJOR)

    assert str(error.value).splitlines()[0] == "E3 A3 C#4 lies outside the register between G3 and E5"


def test_a_melody_moves_along_and_is_spelled_in_the_key():
    wishes = Wishes(melody=(midi("C5"), None, midi("B4")))
    voiced = voice_progression(CADENCE.in_key(D_FLAT_MAJOR), wishes, home=C_MAJOR)

    assert [str(voiced.voicings[place].right[-1]) for place in (0, 2)] == ["Db5", "C5"]


def test_the_search_is_told_its_home_key():
    task = Task(CADENCE.in_key(A_MAJOR), Wishes(moves=True), home=C_MAJOR)

    assert search_for(task).task.shifts[:2] == (-3, 9)
