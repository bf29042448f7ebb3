"""Which keys lie well for an instrument, and for a band."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from strategies import signature_keys

from nearhand.harmony.moving import all_keys
from nearhand.melody.capo import capos
from nearhand.melody.friendly_keys import SIGNATURES, friendly_keys, shared_keys
from nearhand.melody.instruments import INSTRUMENTS
from nearhand.melody.readings import spelled_for
from nearhand.notation.chart import read_chart, resolve
from nearhand.notation.keys import parse_key
from nearhand.theory.progression import Progression

instruments = st.sampled_from(list(INSTRUMENTS.values()))
bands = st.lists(instruments, min_size=1, max_size=4, unique=True)


def in_key(name):
    return Progression(parse_key(name), ())


def told(found):
    return " ".join(f"{friendly.key.tonic}{friendly.fret or ''}" for friendly in found)


# Common practice, no source: the keys that band arrangers give to each kind of player. For a trumpet concert B flat,
# E flat, F are the first three scales learned (written C, F, G), for an alto saxophone E flat, B flat, A flat; strings
# have their open notes G D A E in sharp keys; guitars their open shapes. Their order is ours, worked out by hand: the
# lower capo first, then fewer accidentals as written (a guitar's part is written in the key that sounds), then fewer
# half steps from the own key, and up before down.
FRIENDLY = [
    ("trumpet", "C", "Bb Eb F C Ab Db"), ("alto sax", "C", "Eb Bb Ab Db F C Gb"), ("trombone", "C", "C F G Bb Eb Ab"),
    ("violin", "C", "C F G D Bb A E"), ("guitar", "C", "C G D A E F1 Bb1 Eb1 Ab1 Db1 B2 Gb2"),
    ("clarinet in A", "C", "A D E B G C F#"), ("oboe d'amore", "Bb", "A D E B G C F#"),
    ("baritone sax", "E", "Eb Ab Bb F Db Gb C"), ("clarinet in Eb", "B", "Eb Bb Ab Db F C Gb"),
    ("clarinet in A", "A minor", "F# B C# G# E A D#"), ("alto sax", "B minor", "C G F Bb D A Eb"),
    ("trumpet", "A minor", "G C D A F Bb"), ("guitar", "A minor", "A D E F1 Bb1 Eb1 B2 F#2 G3 C3 C#4 G#4"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "key", "expected"), FRIENDLY)
def test_these_keys_are_friendly_in_this_order(name, key, expected):
    assert told(friendly_keys(INSTRUMENTS[name], in_key(key))) == expected


@given(instruments, signature_keys)
def test_a_friendly_key_lies_the_interval_of_the_instrument_from_the_key_that_is_read(instrument, key):
    """F sharp for a clarinet in A that reads A, for A lies a minor third above it. The own key keeps its name."""
    found = friendly_keys(instrument, Progression(key, ()))
    for friendly in found:
        reads = instrument.written_key(Progression(friendly.key, ()))
        assert friendly.key == key or reads == friendly.key.moved(instrument.fifths)
        assert abs(friendly.key.signature) <= 7
    assert not {friendly.key for friendly in found} & {key.moved(12), key.moved(-12)}


# Twelve semitones make six sharps and six flats one sound: by hand, from the interval of each instrument.
SIX = [
    ("F# Gb", "clarinet in A", "F#"), ("F# Gb", "oboe d'amore", "F#"), ("F# Gb", "alto sax", "Gb"),
    ("F# Gb", "horn", "Gb"), ("F# Gb", "trumpet", "Gb"), ("F# Gb", "trumpet in D", "F#"), ("F# Gb", "alto flute", "F#"),
    ("F# Gb", "clarinet in A, oboe d'amore, alto sax", "F#"), ("F# Gb", "clarinet in A, alto sax, trumpet", "Gb"),
    ("D# Eb", "clarinet in A", "D#"), ("D# Eb", "alto sax", "Eb"),
]  # fmt: skip


@pytest.mark.parametrize(("names", "band", "name"), SIX)
def test_six_sharps_or_six_flats_are_chosen_by_what_the_most_players_read(names, band, name):
    mode = " minor" if names.startswith("D") else ""
    players = [INSTRUMENTS[each] for each in band.split(", ")]

    assert {str(spelled_for(in_key(each + mode), players).tonic) for each in names.split()} == {name}


@given(signature_keys)
def test_where_no_player_minds_a_key_keeps_its_name(key):
    assert spelled_for(Progression(key, ()), ()) == key
    assert spelled_for(Progression(key, ()), (INSTRUMENTS["flute"], INSTRUMENTS["guitar"])) == key


@given(instruments, signature_keys)
def test_a_friendly_key_is_one_whose_written_signature_lies_well(instrument, key):
    found = friendly_keys(instrument, Progression(key, ()))
    written = [abs(instrument.written_key(Progression(each.key, ())).signature) for each in found]

    assert len({each.key.tonic.semitones for each in found}) == len(found)
    assert all(each.key.mode == key.mode for each in found)
    if instrument.has_frets:
        assert len(found) == 12
        for each in found:
            music = resolve(read_chart("| 1 | 4 |"), each.key)
            assert each.fret == min(capo.fret for capo in capos(music)) <= 4
    else:
        low, high = SIGNATURES[instrument.family]
        signatures = {
            each: instrument.written_key(Progression(each, ())).signature for each in all_keys(Progression(key, ()))
        }
        sounds = {each.tonic.semitones for each in signatures if low <= signatures[each] <= high}
        assert {each.key.tonic.semitones for each in found} == sounds
        assert written == sorted(written)


@given(bands, signature_keys)
def test_a_shared_key_is_friendly_to_all_and_the_nearest_comes_first(band, key):
    music = Progression(key, ())
    found = shared_keys(band, music)
    friendly = [
        {each.key.tonic.semitones: each.fret for each in friendly_keys(instrument, music)} for instrument in band
    ]
    distances = [(each.key.tonic.semitones - key.tonic.semitones) % 12 for each in found]

    for shared in found:
        assert [
            one for one, keys in zip(band, friendly, strict=True) if shared.key.tonic.semitones not in keys
        ] == list(shared.hard_for)
        assert shared.fret == max(keys.get(shared.key.tonic.semitones, 0) for keys in friendly)
    assert len({len(shared.hard_for) for shared in found}) == 1
    everyone = set.intersection(*(set(keys) for keys in friendly))
    if everyone:
        assert {shared.key.tonic.semitones for shared in found} == everyone
    nearest = [min(distance, 12 - distance) for distance in distances]
    assert nearest == sorted(nearest)


def test_where_no_key_is_friendly_to_all_the_fewest_are_left_out():
    # Concert C to B lie well for the one, concert G flat to F for the other: computed from the table.
    names = ("piccolo trumpet in A", "tuba in Eb treble clef", "piano")
    band = [INSTRUMENTS[name] for name in names]
    found = shared_keys(band, in_key("D"))

    assert {len(shared.hard_for) for shared in found} == {1}
    assert [(str(shared.key.tonic), shared.hard_for[0].name) for shared in found[:3]] == [
        ("D", "tuba in Eb treble clef"), ("Eb", "piccolo trumpet in A"), ("C", "tuba in Eb treble clef")
    ]  # fmt: skip


def test_a_key_for_all_has_the_name_that_most_of_them_read_from():
    both = shared_keys([INSTRUMENTS["clarinet in A"], INSTRUMENTS["oboe d'amore"]], in_key("F"))

    assert "F#" in {str(shared.key.tonic) for shared in both}
    assert "Gb" not in {str(shared.key.tonic) for shared in both}


def test_the_tunes_own_key_comes_first_where_it_is_friendly():
    assert shared_keys([INSTRUMENTS["trumpet"]], in_key("Bb"))[0].key == parse_key("Bb")
