"""Values: tuples with named fields that can be compared, hashed, copied and replaced, but not changed."""

from __future__ import annotations

import copy
import pickle

import pytest
from strategies import key, note

from nearhand.theory.chord import Chord, RelativeChord
from nearhand.theory.interval import Interval
from nearhand.theory.key import Key
from nearhand.theory.mode import MAJOR
from nearhand.theory.pitch import Pitch
from nearhand.theory.progression import Bar, Meter, Progression, Slot
from nearhand.theory.quality import QUALITIES

SLOT = Slot(RelativeChord(0, QUALITIES["major"], 0), 4)
VALUES = [
    note("Bb"),
    Interval(1, 0),
    Pitch(note("C"), 4),
    MAJOR,
    key("e"),
    QUALITIES["dominant"],
    Chord(note("C"), QUALITIES["major"], note("E")),
    SLOT.chord,
    Meter(3, 4),
    SLOT,
    Bar((SLOT,)),
    Progression(key("e"), (Bar((SLOT,)),)),
]


@pytest.mark.parametrize("value", VALUES, ids=[type(value).__name__ for value in VALUES])
def test_a_value_is_equal_to_its_copies_and_hashes_alike(value):
    kept = pickle.loads(pickle.dumps(value))

    for same in (copy.copy(value), copy.deepcopy(value), kept, type(value)(*value)):
        assert same == value
        assert hash(same) == hash(value)
        assert type(same) is type(value)


@pytest.mark.parametrize("value", VALUES, ids=[type(value).__name__ for value in VALUES])
def test_a_value_cannot_be_changed(value):
    with pytest.raises(AttributeError):
        setattr(value, value._fields[0], value[0])


@pytest.mark.parametrize("value", VALUES, ids=[type(value).__name__ for value in VALUES])
def test_a_value_shows_its_class_and_its_fields(value):
    assert repr(value).startswith(f"{type(value).__name__}({value._fields[0]}=")


def test_fields_may_have_defaults_and_be_named():
    assert Bar((SLOT,)) == Bar(slots=(SLOT,), meter=Meter(4, 4), opens_repeat=False, section="")
    assert Bar((SLOT,))._replace(section="A").section == "A"
    assert Key(tonic=note("C"), mode=MAJOR) == key("C")
    with pytest.raises(TypeError):
        Key(note("C"))
